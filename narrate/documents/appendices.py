"""Appendices: measures with their intervals, and how the rules came out."""

from __future__ import annotations

from collections.abc import Mapping

from narrate.documents.absent_things import is_of_what_is_absent
from narrate.documents.blocks import Table
from narrate.documents.inline import literal
from narrate.model.edition import Edition
from narrate.model.ids import SITE, RuleId, Subject
from narrate.model.measurement import Measurement
from narrate.model.rules import Rule


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
    note = (
        "Interval: 95%; –: none is worked out. n: what the value rests on. Measures without a value are left out. "
        "What each measure is stands in {measures-meant}."
    )
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


def measures_meant(edition: Edition) -> Table:
    """What each measure of the table before it is, in the words of the packs."""
    subjects = edition.findings.subjects.values()
    held = {key for found in subjects for key, measured in found.measurements.items() if measured.value is not None}
    kept = (shown for shown in edition.packs.shown if shown.name in held)
    rows = tuple((literal(shown.title), literal(shown.explained)) for shown in kept)
    return Table(
        caption="What the measures are.", columns=("Measure", "What it is, and where it may mislead"), rows=rows,
        anchor="measures-meant", is_dense=True, widths=(28, 72),
    )  # fmt: skip


def rules(edition: Edition) -> Table:
    """
    One row a rule that was asked of contexts, phases or the dig: what it argues for or against, and how it came out.

    A title names what a rule looks for and is no finding; beside what it argues it is not read as one. Rules on what
    the dig has not are left out, and so are those against a reading for which nothing spoke.
    """
    found: dict[str, dict[str, dict[str, None]]] = {}
    shown = {SITE: "all samples"} | {phase.id: phase.name for phase in edition.project.phases}
    spoken_for = set[str]()
    for argument in edition.claims.came_out():
        level, id = argument.about.level, argument.about.id
        if level in ("site", "phase", "context"):
            where = found.setdefault(argument.rule, {}).setdefault(argument.verdict, {})
            where.setdefault(shown.get(id, id) if level != "context" else id)
            if argument.verdict == "holds" and argument.direction == "for":
                spoken_for.add(edition.packs.rules[argument.rule].statement)  # type: ignore[index]
    known = {id: edition.packs.rules[id] for id in sorted(found)}  # type: ignore[index]
    idle = {id for id, rule in known.items() if rule.direction == "against" and rule.statement not in spoken_for}
    silent = (id for id in known if id not in idle and "holds" not in found[id])
    absent = {id for id in silent if is_of_what_is_absent(edition, RuleId(id))}
    rows = [_rule_row(edition, rule, found[id]) for id, rule in known.items() if id not in idle | absent]
    note = (
        "The title of a rule says what it looks for and is no finding: where it held stands in its row. A rule that "
        "fails is no proof of the opposite. Undecided: too few remains, or something that the rule needs is not "
        "recorded. Draft rules alone never carry a reading above 'supports', but for the state of a "
        "deposit (disturbance, later remains) and the work to do."
    )
    note += _left_out(len(absent), len(idle))
    return Table(
        caption="Rules of interpretation and how they came out for contexts, phases and the dig.",
        columns=("Rule looks for", "Argues", "Status", "Held for", "Failed for (n)", "Undecided for (n)"),
        rows=tuple(rows),
        note=note,
        anchor="rules",
        numbers=(4, 5),
        widths=(28, 24, 10, 26, 8, 10),
    )


def _rule_row(edition: Edition, rule: Rule, came_out: Mapping[str, Mapping[str, None]]) -> tuple[str, ...]:
    statement = edition.packs.statements[rule.statement]
    held = came_out.get("holds", ())
    counts = (str(len(came_out.get(verdict, ()))) for verdict in ("fails", "cannot tell"))
    argues = literal(f"{rule.direction}: {statement.noun}")
    return literal(rule.title), argues, rule.status, literal(", ".join(held)) or "–", *counts


def _left_out(absent: int, idle: int) -> str:
    parts = [f"{absent:,} on things that the dig has not"] if absent else []
    parts += [f"{idle:,} against readings for which nothing spoke"] if idle else []
    many = "One rule is" if absent + idle == 1 else "Rules are"
    return f" {many} left out: {', and '.join(parts)}; all of them stand in the data package." if parts else ""
