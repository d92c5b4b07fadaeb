"""Small findings, projects and packs for the tests of charts, naming only what matters."""

from __future__ import annotations

from math import sqrt
from typing import Any

from narrate.model.findings import Findings, SubjectFindings, Tally
from narrate.model.ids import ContextId, PartId, PhaseId, SourceKey, Subject, TaxonId
from narrate.model.measurement import Measurement
from narrate.model.packs import Packs, Source, Words
from narrate.model.plants import Condition, Part, Taxon, Window
from narrate.model.project import Project
from narrate.model.stratigraphy import Context, Phase
from narrate.problems import Place

HERE = Place(path="made-up.yaml", line=1)


def a_part(id: str, plural: str, *roles: str) -> Part:
    return Part(id=PartId(id), plural=plural, plain=id, plain_plural=plural, roles=frozenset(roles))


def a_taxon(id: str, name: str = "", windows: tuple[Window, ...] = (), rank: Any = "species") -> Taxon:
    return Taxon(id=TaxonId(id), rank=rank, family="", trade_name=name, windows=windows, place=HERE)


def a_window(part: str, months: tuple[int, ...], *keeping: Any) -> Window:
    return Window(part=PartId(part), months=months, keeping=keeping, sources=(SourceKey("a-2001"),), known="memory-M")


def some_packs(*taxa: Taxon) -> Packs:
    """Packs with a few parts and the plants given, or a handful of plants whose months are made up."""
    given = taxa or (
        a_taxon("Zea mays", "maize", (a_window("kernel", (8, 9, 10), "stored"),)),
        a_taxon("Chenopodium berlandieri", "goosefoot", (a_window("seed", (9, 10, 11), "stored", "persists"),)),
        a_taxon("Phalaris caroliniana", "maygrass", (a_window("seed", (5, 6), "stored"),)),
        a_taxon("Hordeum pusillum", "little barley", (a_window("seed", (5, 6), "stored"),)),
        a_taxon("Fragaria virginiana", "wild strawberry", (a_window("seed", (5, 6), "perishable"),)),
        a_taxon("Vitis", "grape", (a_window("seed", (8, 9, 10), "perishable"),), "genus"),
        a_taxon(
            "Rhus",
            "sumac",
            (a_window("seed", (7, 8, 9), "persists"), a_window("seed", (9, 10, 11, 12, 1, 2), "persists")),
            "genus",
        ),
        a_taxon("Carya", "hickory", (a_window("nutshell", (10, 11), "stored"),), "genus"),
        a_taxon("Quercus", "oak", (a_window("nutshell", (9, 10, 11), "stored"),), "genus"),
        a_taxon("Amphicarpaea bracteata", "", (a_window("seed", (11, 12, 1), "stored"),)),
        a_taxon("Portulaca oleracea", "purslane", (a_window("seed", (6, 7, 8, 9, 10), "with the crop"),)),
    )
    parts = (
        a_part("kernel", "kernels", "edible"), a_part("cupule", "cupules", "byproduct"), 
        a_part("seed", "seeds", "propagule"),
        a_part("nutshell", "nutshell", "nutshell"), a_part("wood", "wood", "wood"), a_part("rind", "rind"),
    )  # fmt: skip
    words = Words(
        parts={part.id: part for part in parts},
        conditions={
            "charred": Condition(id="charred", is_ancient_at_dry_sites=True),
            "mineralised": Condition(id="mineralised", is_ancient_at_dry_sites=True),
            "uncharred": Condition(id="uncharred", is_ancient_at_dry_sites=False),
        },
        context_kinds={}, methods={}, preservations={"charred": ("charred", "mineralised")},
    )  # fmt: skip
    source = Source(key=SourceKey("a-2001"), authors="Author, A.", year="2001", title="A made-up work", place=HERE)
    return Packs(
        words=words, taxa={taxon.id: taxon for taxon in given}, taxon_lookup={}, statements={}, rules={}, audiences={},
        sources={source.key: source}, weights={}, limits=(), shown=(), questions={},
    )  # fmt: skip


def a_tally(taxon: str | None, part: str = "seed", counted: int = 1, condition: str = "charred", **more: Any) -> Tally:
    """`written` stands in for a taxon that no pack knows; a quarter of everything was sorted."""
    given: dict[str, Any] = {"written": taxon or "unknown", "estimated": counted * 4.0, "samples": 1, "of_samples": 1}
    return Tally(
        taxon=TaxonId(taxon) if taxon else None, part=PartId(part), condition=condition, counted=counted, **given | more
    )


def found_in(level: Any, id: str, *tallies: Tally, samples: int = 1, **measurements: Measurement) -> SubjectFindings:
    return SubjectFindings(
        subject=Subject(level=level, id=id), samples=samples, samples_with_remains=samples, litres=10.0,
        tallies=tallies, measurements=measurements,
    )  # fmt: skip


def a_measurement(value: float | None, low: float | None = None, high: float | None = None, **more: Any) -> Measurement:
    return Measurement(measure="any", value=value, low=low, high=high, **more)


def a_density(items: int, litres: float = 10.0) -> Measurement:
    """Items per litre with a rough interval of two root n: enough to draw."""
    spread = 2 * sqrt(items)
    return a_measurement(items / litres, max(items - spread, 0.0) / litres, (items + spread + 3.7) / litres, n=items)


def a_share(k: int, n: int) -> Measurement:
    """Share with Wilson's interval, written out anew."""
    z, p = 1.959964, k / n
    middle, half = p + z * z / (2 * n), z * sqrt(p * (1 - p) / n + z * z / (4 * n * n))
    return a_measurement(p, max((middle - half) / (1 + z * z / n), 0), min((middle + half) / (1 + z * z / n), 1), n=n)


def a_project(contexts: dict[str, tuple[str, str | None]], phases: tuple[str, ...] = ("Early", "Late")) -> Project:
    """Contexts by id: kind and phase. Phases have their names in lower case for ids."""
    return Project(
        title="Wend Hollow",
        phases=tuple(Phase(id=PhaseId(name.lower()), name=name, place=HERE) for name in phases),
        contexts=tuple(
            Context(id=ContextId(id), kind=kind, phase=PhaseId(phase) if phase else None, place=HERE)
            for id, (kind, phase) in contexts.items()
        ),
        place=HERE,
    )


def some_findings(*found: SubjectFindings) -> Findings:
    return Findings(subjects={each.subject: each for each in found})
