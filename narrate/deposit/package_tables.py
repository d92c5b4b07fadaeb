"""The tables of a package, each field with its type, unit, keys and the term of Darwin Core where one fits."""

from __future__ import annotations

import csv
import io
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass

from narrate.model.claims import Claims
from narrate.model.findings import Findings
from narrate.model.packs import Packs
from narrate.model.project import Project

DWC = "http://rs.tdwg.org/dwc/terms/"


@dataclass(frozen=True, slots=True, kw_only=True)
class PackageField:
    name: str
    type: str = "string"
    """string, number, integer or boolean of Table Schema."""
    about: str = ""
    unit: str = ""
    term: str = ""
    """Name of the Darwin Core term that it fits."""
    is_needed: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class PackageTable:
    name: str
    about: str
    fields: tuple[PackageField, ...]
    rows: tuple[Sequence[object], ...]
    key: str = ""
    refers: tuple[tuple[str, str, str], ...] = ()
    """Foreign keys: field, table, field there."""

    def text(self) -> str:
        """CSV; an empty cell is a missing value. Cells stay as they are: the package is for programs."""
        out = io.StringIO()
        writer = csv.writer(out, lineterminator="\n")
        writer.writerow([field.name for field in self.fields])
        for row in self.rows:
            writer.writerow([_cell(value) for value in row])
        return out.getvalue()


def _cell(value: object) -> str:
    if value is None:
        return ""
    if isinstance(value, bool):
        return "true" if value else "false"
    return repr(value) if isinstance(value, float) else str(value)


def package_tables(project: Project, packs: Packs, findings: Findings, claims: Claims) -> tuple[PackageTable, ...]:
    makers: tuple[Callable[..., PackageTable], ...] = (
        _phases, _contexts, _samples, _taxa, _counts, _measures, _claims, _arguments, _rules, _sources,
    )  # fmt: skip
    return tuple(make(project, packs, findings, claims) for make in makers)


F = PackageField


def _phases(project: Project, packs: Packs, findings: Findings, claims: Claims) -> PackageTable:
    fields = (
        F(name="phase", is_needed=True),
        F(name="name"),
        F(name="start", type="integer", about="calendar year; below 0: BC; there is no year 0"),
        F(name="end", type="integer", about="calendar year"),
        F(name="dates", about="calendar as written"),
        F(name="basis"),
    )
    rows = tuple((p.id, p.name, p.start, p.end, p.dates, p.basis.strip()) for p in project.phases)
    return PackageTable(name="phases", about="Phases of the site", fields=fields, rows=rows, key="phase")


def _contexts(project: Project, packs: Packs, findings: Findings, claims: Claims) -> PackageTable:
    fields = (
        F(name="context", is_needed=True, term="locationID"),
        F(name="feature"),
        F(name="kind", term="habitat"),
        F(name="phase"),
        F(name="deposit"),
        F(name="security"),
        F(name="description", term="locationRemarks"),
        F(name="note"),
        F(name="location", about="as recorded; empty in the open edition", term="verbatimCoordinates"),
        F(name="information_withheld", term="informationWithheld"),
        F(name="data_generalizations", term="dataGeneralizations"),
    )
    withheld = "Location. Ask the holder of the restricted edition." if project.is_withheld_in_part else ""
    known = {phase.id for phase in project.phases}
    rows = tuple(
        (
            c.id,
            c.feature,
            c.kind,
            c.phase if c.phase in known else None,
            c.deposit,
            c.security,
            c.description.strip(),
            c.note,
            "; ".join(f"{key} {value}" for key, value in sorted(c.location.items())),
            withheld,
            "",
        )
        for c in project.contexts
    )
    refers = (("phase", "phases", "phase"),)
    about = "Contexts. Restricted contexts stand in the restricted edition alone."
    return PackageTable(name="contexts", about=about, fields=fields, rows=rows, key="context", refers=refers)


def _samples(project: Project, packs: Packs, findings: Findings, claims: Claims) -> PackageTable:
    fields = (
        F(name="sample", is_needed=True, term="eventID"),
        F(name="context", is_needed=True, term="locationID"),
        F(name="volume", type="number", unit="litre", about="sediment as floated", term="sampleSizeValue"),
        F(name="volume_unit", term="sampleSizeUnit"),
        F(name="method", term="samplingProtocol"),
        F(name="mesh_light", type="number", unit="mm"),
        F(name="mesh_heavy", type="number", unit="mm"),
        F(name="light_fraction_mass", type="number", unit="g"),
        F(name="light_fraction_volume", type="number", unit="ml"),
        F(name="sorted_shares", about="share sorted of each size class, as written", term="samplingEffort"),
        F(name="heavy_fraction_sorted", type="boolean"),
        F(name="sterile", type="boolean", about="looked through and nothing found"),
        F(name="seeds_added", type="integer", unit="items", about="recovery test"),
        F(name="seeds_recovered", type="integer", unit="items", about="recovery test"),
        F(name="note", term="eventRemarks"),
    )
    rows = []
    for s in project.samples:
        light, heavy, test = s.light_fraction, s.heavy_fraction, s.recovery_test
        rows.append(
            (
                s.id,
                s.context,
                s.volume_l,
                None if s.volume_l is None else "litre",
                s.method,
                s.mesh_mm.get("light"),
                s.mesh_mm.get("heavy"),
                light.mass_g if light else None,
                light.volume_ml if light else None,
                "; ".join(f"{c.name}: {c.written or c.proportion_sorted}" for c in s.size_classes),
                heavy.sorted if heavy else None,
                s.sterile,
                test.added if test else None,
                test.recovered if test else None,
                s.note,
            )
        )
    refers = (("context", "contexts", "context"),)
    return PackageTable(
        name="samples", about="Flotation samples", fields=fields, rows=tuple(rows), key="sample", refers=refers
    )


def _taxa(project: Project, packs: Packs, findings: Findings, claims: Claims) -> PackageTable:
    used = sorted({row.identification.taxon for row in project.counts if row.identification.taxon})
    fields = (
        F(name="taxon", is_needed=True, term="scientificName"),
        F(name="authority", term="scientificNameAuthorship"),
        F(name="rank", term="taxonRank"),
        F(name="family", term="family"),
        F(name="name", term="vernacularName"),
        F(name="status"),
    )
    rows = tuple((t.id, t.authority, t.rank, t.family, t.name, t.status) for t in (packs.taxa[id] for id in used))
    return PackageTable(name="taxa", about="Plants as the packs name them", fields=fields, rows=rows, key="taxon")


def _counts(project: Project, packs: Packs, findings: Findings, claims: Claims) -> PackageTable:
    fields = (
        F(name="row", type="integer", is_needed=True),
        F(name="sample", is_needed=True, term="eventID"),
        F(name="name_as_written", is_needed=True, term="verbatimIdentification"),
        F(name="taxon", about="as read; empty: either of several, or known to no pack", term="scientificName"),
        F(name="qualifier", term="identificationQualifier"),
        F(name="part", is_needed=True),
        F(name="count_as_written"),
        F(name="amount", about="counted, noted as present, looked for and absent, not looked for, weighed only"),
        F(name="count", type="integer", unit="items", about="as counted, never scaled up", term="organismQuantity"),
        F(name="count_type", term="organismQuantityType"),
        F(name="mass", type="number", unit="g"),
        F(name="condition"),
        F(name="completeness"),
        F(name="size_class"),
        F(name="fraction"),
        F(name="proportion_sorted", type="number", unit="1", about="share of the size class that was sorted"),
        F(name="note", term="occurrenceRemarks"),
    )
    rows = tuple(
        (
            number,
            r.sample,
            r.identification.written,
            r.identification.taxon,
            r.identification.qualifier,
            r.part,
            r.count.written,
            r.count.amount,
            r.count.number,
            "items" if r.count.number is not None else None,
            r.mass_g,
            r.condition,
            r.completeness,
            r.size_class,
            r.fraction,
            r.proportion_sorted,
            r.note,
        )
        for number, r in enumerate(project.counts, start=1)
    )
    refers = (("sample", "samples", "sample"), ("taxon", "taxa", "taxon"))
    about = "Counts as written and as read"
    return PackageTable(name="counts", about=about, fields=fields, rows=rows, key="row", refers=refers)


def _measures(project: Project, packs: Packs, findings: Findings, claims: Claims) -> PackageTable:
    fields = (
        F(name="level", is_needed=True),
        F(name="subject", is_needed=True),
        F(name="measure", is_needed=True, term="measurementType"),
        F(name="value", type="number", term="measurementValue"),
        F(name="low", type="number", about="lower end of the 95 % interval"),
        F(name="high", type="number", about="upper end; empty where it is open or there is none"),
        F(name="unit", term="measurementUnit"),
        F(name="n", type="integer"),
        F(name="reason", about="why there is no value"),
    )
    rows = tuple(
        (subject.level, subject.id, name, m.value, m.low, m.high, m.unit, m.n, m.reason)
        for subject, found in findings.subjects.items()
        for name, m in found.measurements.items()
    )
    return PackageTable(name="measures", about="Measures of every subject", fields=fields, rows=_plain(rows))


def _claims(project: Project, packs: Packs, findings: Findings, claims: Claims) -> PackageTable:
    fields = (
        F(name="claim", is_needed=True),
        F(name="level"),
        F(name="subject"),
        F(name="question"),
        F(name="statement"),
        F(name="verdict"),
        F(name="grade", about="what may be said, after limits; empty unless it holds"),
        F(name="support", type="number", unit="1", about="weighed evidence from 0 to 1, not a probability"),
        F(name="limits"),
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
    return PackageTable(name="claims", about="Statements judged", fields=fields, rows=_plain(rows), key="claim")


def _arguments(project: Project, packs: Packs, findings: Findings, claims: Claims) -> PackageTable:
    fields = (
        F(name="claim", is_needed=True),
        F(name="rule", is_needed=True),
        F(name="direction"),
        F(name="verdict"),
        F(name="weight", type="number", about="log-odds that it adds or takes away when it holds"),
    )
    rows = tuple((c.id, a.rule, a.direction, a.verdict, a.weight) for c in claims for a in c.arguments)
    refers = (("claim", "claims", "claim"), ("rule", "rules", "rule"))
    return PackageTable(
        name="arguments", about="How each rule came out", fields=fields, rows=_plain(rows), refers=refers
    )


def _rules(project: Project, packs: Packs, findings: Findings, claims: Claims) -> PackageTable:
    used = sorted({a.rule for c in claims for a in c.arguments})
    fields = (
        F(name="rule", is_needed=True),
        F(name="title"),
        F(name="status"),
        F(name="why"),
        F(name="sources", about="keys of the table sources"),
        F(name="known", about="how well it is known that the sources say so"),
    )
    rows = tuple(
        (r.id, r.title, r.status, " ".join(r.why.split()), "; ".join(r.sources), r.known)
        for r in (packs.rules[id] for id in used)
    )
    return PackageTable(name="rules", about="Rules that were asked", fields=fields, rows=rows, key="rule")


def _sources(project: Project, packs: Packs, findings: Findings, claims: Claims) -> PackageTable:
    used = {a.rule for c in claims for a in c.arguments}
    keys = sorted({key for id in used for key in packs.rules[id].sources if key in packs.sources})
    fields = (
        F(name="source", is_needed=True),
        F(name="authors"),
        F(name="year"),
        F(name="title"),
        F(name="container"),
        F(name="pages"),
        F(name="known"),
    )
    rows = tuple(
        (s.key, s.authors, s.year, s.title, s.container, s.pages, s.known) for s in (packs.sources[k] for k in keys)
    )
    return PackageTable(name="sources", about="Works behind the rules", fields=fields, rows=rows, key="source")


def _plain(rows: Iterable[Sequence[object]]) -> tuple[Sequence[object], ...]:
    """Rows with numbers of Python in place of those of numpy."""

    def one(row: Sequence[object]) -> Iterator[object]:
        for value in row:
            yield value.item() if hasattr(value, "item") else value

    return tuple(tuple(one(row)) for row in rows)
