"""The tables of a package, each field with its type, unit, keys and the term of Darwin Core where one fits."""

from __future__ import annotations

from collections.abc import Callable
from typing import get_args

from narrate.deposit.judged_tables import arguments, claims_made, measures, rules, sources
from narrate.deposit.lessened import Lessened, generalized, withheld
from narrate.deposit.package_table import PackageField as F
from narrate.deposit.package_table import PackageTable
from narrate.model.claims import Claims
from narrate.model.counts import Amount
from narrate.model.findings import Findings
from narrate.model.packs import Packs
from narrate.model.project import Project


def package_tables(
    project: Project, packs: Packs, findings: Findings, claims: Claims, lessened: Lessened | None = None
) -> tuple[PackageTable, ...]:
    """lessened: for an open edition, what was taken out of its records."""
    less = lessened or {}
    makers: tuple[Callable[..., PackageTable], ...] = (
        _taxa, _counts, measures, claims_made, arguments, rules, sources,
    )  # fmt: skip
    judged = (make(project, packs, findings, claims) for make in makers)
    return (_phases(project), _contexts(project, less), _samples(project, less), *judged)


def _phases(project: Project) -> PackageTable:
    fields = (
        F(name="phase", about="id of the phase", is_needed=True),
        F(name="name", about="as people say it"),
        F(name="start", type="integer", about="calendar year; below 0: BC; there is no year 0"),
        F(name="end", type="integer", about="calendar year"),
        F(name="dates", about="calendar as written"),
        F(name="basis", about="what the dates rest on"),
    )
    rows = tuple((p.id, p.name, p.start, p.end, p.dates, p.basis.strip()) for p in project.phases)
    return PackageTable(name="phases", about="Phases of the site", fields=fields, rows=rows, key=("phase",))


def _contexts(project: Project, less: Lessened) -> PackageTable:
    fields = (
        F(name="context", about="id of the smallest excavated unit", is_needed=True, term="locationID"),
        F(name="feature", about="id of the feature that it belongs to"),
        F(name="kind", about="kind of context, in the words of the packs", term="habitat"),
        F(name="phase", about="id of the phase; empty: none was given"),
        F(name="deposit", about="how the remains came there: primary, secondary, tertiary, de facto or unknown"),
        F(name="security", about="how well closed it was: sealed, open, disturbed or unknown"),
        F(name="description", about="as recorded", term="locationRemarks"),
        F(name="note", about="as recorded"),
        F(name="location", about="as recorded; empty in the open edition", term="verbatimCoordinates"),
        F(
            name="information_withheld",
            about="what the open edition leaves out, and whom to ask",
            term="informationWithheld",
        ),
        F(name="data_generalizations", about="what the open edition says less exactly", term="dataGeneralizations"),
    )
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
            withheld("context", c.id, less),
            generalized("context", c.id, less),
        )
        for c in project.contexts
    )
    refers = (("phase", "phases", "phase"),)
    about = "Contexts. Restricted contexts stand in the restricted edition alone."
    return PackageTable(name="contexts", about=about, fields=fields, rows=rows, key=("context",), refers=refers)


def _samples(project: Project, less: Lessened) -> PackageTable:
    fields = (
        F(name="sample", about="id of the sample", is_needed=True, term="eventID"),
        F(name="context", about="id of the context", is_needed=True, term="locationID"),
        F(name="volume", type="number", unit="litre", about="sediment as floated", term="sampleSizeValue"),
        F(name="volume_unit", about="of volume", term="sampleSizeUnit"),
        F(name="method", about="how it was floated, as recorded", term="samplingProtocol"),
        F(name="mesh_light", about="width of the mesh that held the light fraction", type="number", unit="mm"),
        F(name="mesh_heavy", about="width of the mesh that held the heavy fraction", type="number", unit="mm"),
        F(name="light_fraction_mass", about="as weighed", type="number", unit="g"),
        F(name="light_fraction_volume", about="as measured", type="number", unit="ml"),
        F(name="sorted_shares", about="share sorted of each size class, as written", term="samplingEffort"),
        F(name="heavy_fraction_sorted", about="whether the heavy fraction was sorted", type="boolean"),
        F(name="sterile", type="boolean", about="looked through and nothing found"),
        F(name="seeds_added", type="integer", unit="items", about="recovery test"),
        F(name="seeds_recovered", type="integer", unit="items", about="recovery test"),
        F(name="note", about="as recorded", term="eventRemarks"),
        F(name="data_generalizations", about="what the open edition says less exactly", term="dataGeneralizations"),
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
                generalized("sample", s.id, less),
            )
        )
    refers = (("context", "contexts", "context"),)
    return PackageTable(
        name="samples", about="Flotation samples", fields=fields, rows=tuple(rows), key=("sample",), refers=refers
    )


def _taxa(project: Project, packs: Packs, findings: Findings, claims: Claims) -> PackageTable:
    used = sorted({row.identification.taxon for row in project.counts if row.identification.taxon})
    fields = (
        F(name="taxon", about="scientific name", is_needed=True, term="scientificName"),
        F(name="authority", about="who gave the name", term="scientificNameAuthorship"),
        F(name="rank", about="species, genus, family, or a wider group", term="taxonRank"),
        F(name="family", about="scientific name of the family", term="family"),
        F(name="name", about="common name in the region", term="vernacularName"),
        F(name="status", about="in the region: crop, native, introduced or either"),
    )
    rows = tuple((t.id, t.authority, t.rank, t.family, t.name, t.status) for t in (packs.taxa[id] for id in used))
    return PackageTable(name="taxa", about="Plants as the packs name them", fields=fields, rows=rows, key=("taxon",))


def _counts(project: Project, packs: Packs, findings: Findings, claims: Claims) -> PackageTable:
    fields = (
        F(name="row", about="number of the row in the project", type="integer", is_needed=True),
        F(name="sample", about="id of the sample", is_needed=True, term="eventID"),
        F(name="name_as_written", about="name in the count sheet", is_needed=True, term="verbatimIdentification"),
        F(name="taxon", about="as read; empty: either of several, or known to no pack", term="scientificName"),
        F(name="qualifier", about="doubt about the name, such as cf.", term="identificationQualifier"),
        F(name="part", about="part of the plant, in the words of the packs", is_needed=True),
        F(name="count_as_written", about="cell of the count sheet"),
        F(name="amount", about="how the cell of the sheet was read", values=get_args(Amount)),
        F(name="count", type="integer", unit="items", about="as counted, never scaled up", term="organismQuantity"),
        F(name="count_type", about="what was counted", term="organismQuantityType"),
        F(name="mass", about="as weighed", type="number", unit="g"),
        F(name="condition", about="state of preservation"),
        F(name="completeness", about="whole or fragment"),
        F(name="size_class", about="name of a size class of the sample"),
        F(name="fraction", about="light or heavy"),
        F(name="proportion_sorted", type="number", unit="1", about="share of the size class that was sorted"),
        F(name="note", about="as written", term="occurrenceRemarks"),
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
    return PackageTable(name="counts", about=about, fields=fields, rows=rows, key=("row",), refers=refers)
