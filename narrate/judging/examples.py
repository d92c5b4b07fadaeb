"""The examples inside rules, as small digs that the rules can be tried on."""

from __future__ import annotations

from narrate.model.counts import Count, CountRow
from narrate.model.ids import ContextId, FeatureId, PhaseId, SampleId
from narrate.model.packs import Packs
from narrate.model.plants import Identification
from narrate.model.project import Project
from narrate.model.rules import Example, Remains
from narrate.model.sampling import HeavyFraction, RecoveryTest, Sample, SizeClass
from narrate.model.stratigraphy import Context, Phase
from narrate.problems import Place

ONE_CLASS = "all"
_FIRST_YEARS = (900, 1200, 1500, 1800)


def example_project(example: Example, packs: Packs) -> Project:
    """
    A dig with one context for each phase and kind of context that the example names, and the example's samples.

    Raises KeyError for a name of a plant that no pack knows.
    """
    place = example.place
    names = tuple(dict.fromkeys(example.phases)) or ("only",)
    phases = tuple(_phase(example, name, i, place) for i, name in enumerate(names))
    of_sample = _phase_and_kind_of_samples(example, names[0])
    notes = _notes(example, packs)
    of_context = list(dict.fromkeys(of_sample)) or [(names[0], example.context_kind)]
    contexts = tuple(
        Context(
            id=ContextId(f"X{i}"),
            kind=kind,
            feature=FeatureId("F1"),
            phase=PhaseId(phase),
            deposit=example.deposit,  # type: ignore[arg-type]
            security=example.security,  # type: ignore[arg-type]
            description=" ".join(notes["ground"]),
            place=place,
        )
        for i, (phase, kind) in enumerate(of_context)
    )
    samples = tuple(
        _sample(example, number, ContextId(f"X{of_context.index(own)}"))
        for number, own in enumerate(of_sample, start=1)
    )
    return Project(
        title="example of a rule",
        preservation=example.preservation,
        phases=phases,
        contexts=contexts,
        samples=samples,
        counts=tuple(_row(remains, example, packs, " ".join(notes["find"])) for remains in example.remains),
        place=place,
    )


def _notes(example: Example, packs: Packs) -> dict[str, list[str]]:
    """
    The first phrase of each observation that the example names, as notes of the ground and of its finds.

    Raises KeyError for an observation that no pack knows.
    """
    known = {observation.id: observation for observation in packs.observations}
    found: dict[str, list[str]] = {"ground": [], "find": []}
    for id in example.noted:
        found[known[id].noted_of].append(f"{known[id].phrases[0].replace('*', '')}.")
    return found


def _phase_and_kind_of_samples(example: Example, only: str) -> list[tuple[str, str]]:
    number = max(len(example.phases), len(example.kinds)) or example.samples
    phases = example.phases or (only,) * number
    kinds = example.kinds or (example.context_kind,) * number
    return list(zip(phases, kinds, strict=False))


def identified(written: str, packs: Packs) -> Identification:
    """A name of a rule's example; KeyError if no pack knows it."""
    name = written.strip()
    qualifier = ""
    if name.lower().startswith("cf. "):
        qualifier, name = "cf.", name[4:]
    return Identification(written=written, taxon=packs.taxon_lookup[name.lower()], qualifier=qualifier)


def _phase(example: Example, name: str, number: int, place: Place) -> Phase:
    is_dated = example.phase_start is not None or example.phase_end is not None
    start = example.phase_start if is_dated else _FIRST_YEARS[min(number, 3)]
    end = example.phase_end if is_dated else _FIRST_YEARS[min(number, 3)] + 100
    return Phase(id=PhaseId(name), name=name, start=start, end=end, place=place)


def _sample(example: Example, number: int, context: ContextId) -> Sample:
    heavy = {"sorted": True, "not sorted": False}.get(example.heavy_fraction)
    return Sample(
        id=SampleId(f"S{number}"),
        context=context,
        volume_l=example.volume_l,
        size_classes=(SizeClass(name=ONE_CLASS, proportion_sorted=example.proportion_sorted),),
        heavy_fraction=HeavyFraction(sorted=heavy),
        modern_intrusions={"rootlets": example.intrusions},
        recovery_test=RecoveryTest(added=example.recovery[0], recovered=example.recovery[1])
        if example.recovery
        else None,
        place=example.place,
    )


def _row(remains: Remains, example: Example, packs: Packs, note: str) -> CountRow:
    count = (
        Count(written="", amount="weighed only")
        if remains.count == 0 and remains.mass_g is not None
        else Count(written=str(remains.count), amount="counted", number=remains.count)
    )
    return CountRow(
        sample=SampleId(f"S{remains.sample}"),
        identification=identified(remains.taxon, packs),
        part=remains.part,
        count=count,
        mass_g=remains.mass_g,
        condition=remains.condition,
        completeness=remains.completeness,  # type: ignore[arg-type]
        size_class=ONE_CLASS,
        note=note,
        proportion_sorted=example.proportion_sorted,
        place=example.place,
    )
