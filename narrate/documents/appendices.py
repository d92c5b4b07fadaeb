"""Appendices: measures with their intervals, and how the rules came out."""

from __future__ import annotations

from collections import Counter

from narrate.documents.blocks import Table
from narrate.documents.inline import literal
from narrate.model.edition import Edition
from narrate.model.ids import SITE, Subject
from narrate.model.measurement import Measurement


def measures(edition: Edition) -> Table:
    """The measures of the dig, its phases and its contexts, each with its interval or the reason why there is none."""
    project, titles = edition.project, {shown.name: shown.title for shown in edition.packs.shown}
    subjects = [("all samples", Subject(level="site", id=SITE))]
    subjects += [(p.name, Subject(level="phase", id=p.id)) for p in project.phases]
    subjects += [(c.id, Subject(level="context", id=c.id)) for c in project.contexts]
    rows = []
    for name, subject in subjects:
        found = edition.findings.subjects.get(subject)
        for key, measured in found.measurements.items() if found else ():
            if measured.value is not None:
                rows.append((literal(name), titles.get(key, key), *_cells(measured)))
    note = "Interval: 95%; –: none is worked out. n: what the value rests on. Measures without a value are left out."
    return Table(
        caption="Measures of the dig, its phases and its contexts.",
        columns=("Subject", "Measure", "Value", "Unit", "Interval", "n"),
        rows=tuple(rows),
        note=note,
        anchor="measures",
        numbers=(2, 4, 5),
        is_dense=True,
        widths=(14, 40, 10, 14, 16, 8),
    )


def _cells(measured: Measurement) -> tuple[str, str, str, str]:
    if measured.low is None:
        interval = "–"
    else:
        high = "open" if measured.is_open_above or measured.high is None else _number(measured.high)
        interval = f"{_number(measured.low)} to {high}"
    value = "–" if measured.value is None else _number(measured.value)
    return value, measured.unit or "–", interval, "–" if measured.n is None else f"{measured.n:,}"


def _number(value: float) -> str:
    return f"{value:,.0f}" if abs(value) >= 100 else f"{value:.3g}"


def rules(edition: Edition) -> Table:
    """One row a rule that was asked of contexts, phases or the dig: where it held, failed, or could not be told."""
    found: dict[str, dict[str, dict[str, None]]] = {}
    shown = {SITE: "all samples"} | {phase.id: phase.name for phase in edition.project.phases}
    for argument in edition.claims.came_out():
        level, id = argument.about.level, argument.about.id
        if level in ("site", "phase", "context"):
            where = found.setdefault(argument.rule, {}).setdefault(argument.verdict, {})
            where.setdefault(shown.get(id, id) if level != "context" else id)
    rows = []
    titles = Counter(edition.packs.rules[id].title for id in found)  # type: ignore[index]
    for id, line in sorted(found.items()):
        rule = edition.packs.rules[id]  # type: ignore[index]
        title = f"{rule.title} ({id})" if titles[rule.title] > 1 else rule.title
        held = line.get("holds", ())
        rows.append(
            (
                literal(title),
                rule.status,
                literal(", ".join(held)) or "–",
                str(len(line.get("fails", ()))),
                str(len(line.get("cannot tell", ()))),
            )
        )
    note = (
        "A rule that fails is no proof of the opposite. Undecided: too few remains, or something that the rule needs "
        "is not recorded. Draft rules alone never carry a reading above 'supports'."
    )
    return Table(
        caption="Rules of interpretation and how they came out for contexts, phases and the dig.",
        columns=("Rule", "Status", "Held for", "Failed for (n)", "Undecided for (n)"),
        rows=tuple(rows),
        note=note,
        anchor="rules",
        numbers=(3, 4),
        widths=(38, 11, 37, 9, 11),
    )
