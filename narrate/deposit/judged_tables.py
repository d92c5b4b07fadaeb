"""The tables of a package that were worked out: measures, claims, how each rule came out, rules and their sources."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import get_args

from narrate.deposit.package_table import PackageField as F
from narrate.deposit.package_table import PackageTable
from narrate.model.claims import Claims
from narrate.model.findings import Findings
from narrate.model.ids import Level
from narrate.model.packs import Packs
from narrate.model.project import Project
from narrate.model.rules import Verdict

KNOWN_AS = (
    "read (seen in the work); memory-H, memory-M, memory-L (from memory, with high, medium, low confidence); calc "
    "(worked out); convention (common practice); judgement (of the makers of the rules)"
)


def measures(project: Project, packs: Packs, findings: Findings, claims: Claims) -> PackageTable:
    fields = (
        F(name="level", about="what the subject is", values=get_args(Level), is_needed=True),
        F(name="subject", about="id of the sample, context, feature or phase; site: all samples", is_needed=True),
        F(name="measure", about="id of the measure", is_needed=True, term="measurementType"),
        F(name="value", about="empty where there is none: see reason", type="number", term="measurementValue"),
        F(name="low", type="number", about="lower end of the 95 % interval"),
        F(name="high", type="number", about="upper end; empty where it is open or there is none"),
        F(name="unit", about="of value, low and high", term="measurementUnit"),
        F(name="n", about="what it rests on: items or samples", type="integer"),
        F(name="reason", about="why there is no value"),
    )
    rows = tuple(
        (subject.level, subject.id, name, m.value, m.low, m.high, m.unit, m.n, m.reason)
        for subject, found in findings.subjects.items()
        for name, m in found.measurements.items()
    )
    key = ("level", "subject", "measure")
    return PackageTable(name="measures", about="Measures of every subject", fields=fields, rows=_plain(rows), key=key)


def claims_made(project: Project, packs: Packs, findings: Findings, claims: Claims) -> PackageTable:
    fields = (
        F(name="claim", about="subject and statement", is_needed=True),
        F(name="level", about="what the subject is", values=get_args(Level)),
        F(name="subject", about="id of the subject"),
        F(name="question", about="what the statement answers"),
        F(name="statement", about="id of what may be true of the subject"),
        F(name="verdict", about="fails is no proof of the opposite", values=get_args(Verdict)),
        F(name="grade", about="what may be said, after limits; empty unless it holds"),
        F(name="support", type="number", unit="1", about="weighed evidence from 0 to 1, not a probability"),
        F(name="limits", about="what holds the grade down, in words"),
    )
    rows = tuple(
        (
            c.id,
            c.about.level,
            c.about.id,
            c.question,
            c.statement,
            c.verdict,
            c.grade if c.verdict == "holds" else None,
            c.support,
            "; ".join(limit.says for limit in c.limits),
        )
        for c in claims
    )
    return PackageTable(name="claims", about="Statements judged", fields=fields, rows=_plain(rows), key=("claim",))


def arguments(project: Project, packs: Packs, findings: Findings, claims: Claims) -> PackageTable:
    fields = (
        F(name="claim", about="key of the table claims", is_needed=True),
        F(name="rule", about="key of the table rules", is_needed=True),
        F(name="direction", about="of the rule, for or against the statement", values=("for", "against")),
        F(name="verdict", about="how the rule came out for the subject", values=get_args(Verdict)),
        F(name="weight", type="number", about="log-odds that it adds or takes away when it holds"),
    )
    rows = tuple((a.claim, a.rule, a.direction, a.verdict, a.weight) for a in claims.came_out())
    refers = (("claim", "claims", "claim"), ("rule", "rules", "rule"))
    about, key = "How each rule came out", ("claim", "rule")
    return PackageTable(name="arguments", about=about, fields=fields, rows=_plain(rows), refers=refers, key=key)


def rules(project: Project, packs: Packs, findings: Findings, claims: Claims) -> PackageTable:
    used = sorted({a.rule for a in claims.came_out()})
    fields = (
        F(name="rule", about="id of the rule", is_needed=True),
        F(name="title", about="in a few words"),
        F(name="status", about="draft until a named person checked its sources and cases"),
        F(name="why", about="the argument in words"),
        F(name="sources", about="keys of the table sources"),
        F(name="known", about=f"how well it is known that the sources say so: {KNOWN_AS}"),
    )
    rows = tuple(
        (r.id, r.title, r.status, " ".join(r.why.split()), "; ".join(r.sources), r.known)
        for r in (packs.rules[id] for id in used)
    )
    return PackageTable(name="rules", about="Rules that were asked", fields=fields, rows=rows, key=("rule",))


def sources(project: Project, packs: Packs, findings: Findings, claims: Claims) -> PackageTable:
    used = {a.rule for a in claims.came_out()}
    keys = sorted({key for id in used for key in packs.rules[id].sources if key in packs.sources})
    fields = (
        F(name="source", about="key of the work", is_needed=True),
        F(name="authors", about="as cited"),
        F(name="year", about="as cited"),
        F(name="title", about="of the work"),
        F(name="container", about="journal, book or series, place and publisher"),
        F(name="pages", about="as cited"),
        F(name="known", about=f"how well it is known that the work says what it is cited for: {KNOWN_AS}"),
        F(name="entry", about="read: title, container and pages were held against print; empty: as known"),
    )
    rows = tuple(
        (s.key, s.authors, s.year, s.title, s.container, s.pages, s.known, s.entry)
        for s in (packs.sources[k] for k in keys)
    )
    return PackageTable(name="sources", about="Works behind the rules", fields=fields, rows=rows, key=("source",))


def _plain(rows: Iterable[Sequence[object]]) -> tuple[Sequence[object], ...]:
    """Rows with numbers of Python in place of those of numpy."""

    def one(row: Sequence[object]) -> Iterator[object]:
        for value in row:
            yield value.item() if hasattr(value, "item") else value

    return tuple(tuple(one(row)) for row in rows)
