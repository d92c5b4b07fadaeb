"""Large invented digs, the same on every machine, for measuring how long judging takes."""

from __future__ import annotations

import numpy as np

from narrate.model.counts import Count, CountRow
from narrate.model.ids import ContextId, PartId, PhaseId, SampleId, TaxonId
from narrate.model.packs import Packs
from narrate.model.plants import Identification
from narrate.model.project import Project
from narrate.model.sampling import HeavyFraction, Sample, SizeClass
from narrate.model.stratigraphy import Context, Phase
from narrate.problems import Place

KINDS = ("hearth", "storage pit", "midden", "floor", "refuse pit", "ditch")
DEPOSITS = ("primary", "secondary", "tertiary", "de facto", "unknown")
ROWS_A_SAMPLE = 25


def a_large_dig(packs: Packs, samples: int, contexts: int, seed: int = 1) -> Project:
    """A dig of so many samples of 25 rows each, spread over so many contexts; plants are drawn from the packs."""
    generator = np.random.default_rng(seed)
    place = Place(path="counts/large.csv", line=2)
    phases = tuple(
        Phase(id=PhaseId(name), name=name, start=start, end=start + 100, place=place)
        for name, start in (("early", 950), ("late", 1150))
    )
    dug = tuple(
        Context(
            id=ContextId(f"C{i}"),
            kind=KINDS[i % len(KINDS)],
            phase=phases[i % 2].id,
            deposit=DEPOSITS[i % len(DEPOSITS)],  # type: ignore[arg-type]
            security="sealed" if i % 3 else "disturbed",
            place=place,
        )
        for i in range(contexts)
    )
    floated = tuple(
        Sample(
            id=SampleId(f"S{i}"),
            context=dug[i % contexts].id,
            volume_l=10.0,
            size_classes=(SizeClass(name="all", proportion_sorted=1.0 if i % 4 else 0.5),),
            heavy_fraction=HeavyFraction(sorted=bool(i % 5)),
            place=place,
        )
        for i in range(samples)
    )
    things = _things(packs)
    which = generator.integers(0, len(things), (samples, ROWS_A_SAMPLE))
    counts = generator.geometric(0.12, (samples, ROWS_A_SAMPLE))
    rows = tuple(
        CountRow(
            sample=sample.id,
            identification=Identification(written=things[k][0], taxon=things[k][0]),
            part=things[k][1],
            count=Count(written=str(n), amount="counted", number=n),
            size_class="all",
            proportion_sorted=sample.size_classes[0].proportion_sorted,
            place=place,
        )
        for i, sample in enumerate(floated)
        for k, n in zip(which[i].tolist(), counts[i].tolist(), strict=True)
    )
    return Project(
        title="Large dig", phases=phases, contexts=dug, samples=floated, counts=rows, place=Place(path="project.yaml")
    )


def _things(packs: Packs) -> list[tuple[TaxonId, PartId]]:
    """A plant and a part each: the parts that its uses and seasons name, else seeds or wood."""
    found: list[tuple[TaxonId, PartId]] = []
    for taxon in packs.taxa.values():
        parts = {window.part for window in taxon.windows} | {use.part for use in taxon.uses if use.part}
        usual = PartId("wood") if "wood" in taxon.tags else PartId("seed")
        found.extend((taxon.id, part) for part in sorted(parts or {usual}))
    return found[:200]
