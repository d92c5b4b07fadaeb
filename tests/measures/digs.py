"""Small digs for tests of measures, written as what each sample holds."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.measures.count_table import count_table
from narrate.measures.units import Units
from narrate.model.counts import Count, CountRow
from narrate.model.ids import ContextId, Level, PartId, PhaseId, SampleId
from narrate.model.packs import Packs
from narrate.model.plants import Identification
from narrate.model.project import Project
from narrate.model.sampling import Sample
from narrate.model.stratigraphy import Context, Phase
from narrate.problems import Place
from tests.small_packs import small_packs

HERE = Place(path="counts/test.csv", line=2)

Found = tuple[str, str, int]
"""Taxon, part, count."""


def a_row(
    sample: str,
    taxon: str,
    part: str,
    count: int | None,
    *,
    mass_g: float | None = None,
    condition: str = "charred",
    share: float = 1.0,
    line: int = 2,
    packs: Packs | None = None,
) -> CountRow:
    """One row of a count sheet; a count of None notes presence, or a mass alone."""
    known = (packs or small_packs()).taxon_lookup
    certain = taxon.removeprefix("cf. ")
    if count is not None:
        read = Count(written=str(count), amount="counted" if count else "looked for and absent", number=count)
    else:
        read = Count(written="x", amount="noted as present" if mass_g is None else "weighed only")
    return CountRow(
        sample=SampleId(sample),
        identification=Identification(
            written=taxon, taxon=known.get(certain.lower()), qualifier="cf." if certain != taxon else ""
        ),
        part=PartId(part),
        count=read,
        mass_g=mass_g,
        condition=condition,
        proportion_sorted=share,
        place=Place(path="counts/test.csv", line=line),
    )


def a_dig(
    samples: Sequence[Sequence[Found]],
    *,
    phases: Sequence[str] = (),
    contexts: Sequence[str] = (),
    litres: float | None = 10.0,
    rows: Sequence[CountRow] = (),
) -> Project:
    """
    A project with one entry of `samples` a sample (S1, S2 …), each in a context of its own unless `contexts` says.

    phases:  one phase name a sample, in order of time.
    rows:    further rows, for what a triple cannot say.
    """
    of_context = list(contexts) or [f"C{i}" for i, _ in enumerate(samples, start=1)]
    of_phase = list(phases) or ["one"] * len(samples)
    names = list(dict.fromkeys(of_phase))
    phase_of = dict(zip(of_context, of_phase, strict=True))
    return Project(
        title="test",
        phases=tuple(
            Phase(id=PhaseId(n), name=n, start=900 + 100 * i, end=1000 + 100 * i, place=HERE)
            for i, n in enumerate(names)
        ),
        contexts=tuple(
            Context(id=ContextId(c), kind="pit", phase=PhaseId(phase_of[c]), place=HERE)
            for c in dict.fromkeys(of_context)
        ),
        samples=tuple(
            Sample(id=SampleId(f"S{i}"), context=ContextId(c), volume_l=litres, place=HERE)
            for i, c in enumerate(of_context, start=1)
        ),
        counts=(
            *(
                a_row(f"S{i}", taxon, part, count)
                for i, found in enumerate(samples, start=1)
                for taxon, part, count in found
            ),
            *rows,
        ),
        place=HERE,
    )


def units(project: Project, level: Level = "sample", packs: Packs | None = None) -> Units:
    packs = packs or small_packs()
    return Units(count_table(project, packs), level, packs, project.preservation)
