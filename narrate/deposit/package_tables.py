"""The tables of a package, each field with its type, unit, keys and the term of Darwin Core where one fits."""

from __future__ import annotations

from collections.abc import Callable

from narrate.deposit.judged_tables import arguments, claims_made, measures, rules, sources
from narrate.deposit.lessened import Lessened, generalized, withheld
from narrate.deposit.package_table import PackageField as F
from narrate.deposit.package_table import PackageTable
from narrate.model.claims import Claims
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
        F(name="phase", is_needed=True),
        F(name="name"),
        F(name="start", type="integer", about="calendar year; below 0: BC; there is no year 0"),
        F(name="end", type="integer", about="calendar year"),
        F(name="dates", about="calendar as written"),
        F(name="basis"),
    )
    rows = tuple((p.id, p.name, p.start, p.end, p.dates, p.basis.strip()) for p in project.phases)
    return PackageTable(name="phases", about="Phases of the site", fields=fields, rows=rows, key="phase")


def _contexts(project: Project, less: Lessened) -> PackageTable:
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
    return PackageTable(name="contexts", about=about, fields=fields, rows=rows, key="context", refers=refers)


def _samples(project: Project, less: Lessened) -> PackageTable:
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
        F(name="data_generalizations", term="dataGeneralizations"),
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
