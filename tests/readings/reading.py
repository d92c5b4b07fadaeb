"""A published reading: what was found, as printed or summarised, and what its author concluded."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import lru_cache

from narrate.judging.depth import Depth
from narrate.judging.judge import judge
from narrate.model.claims import GRADE_NAMES, Claim
from narrate.model.ids import Subject
from narrate.model.packs import Packs
from narrate.reading.packs import read_packs
from narrate.reading.taxa import Identifier
from tests.builders import a_context, a_phase, a_project, a_row, a_sample

Found = tuple[str, str, int] | tuple[str, str, int, str]
"""Name as written, part, count, and the condition where it is not 'charred'."""

KNOWN = ("read", "from memory", "common practice, no source")


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """One context and what its samples held."""

    kind: str = "hearth"
    deposit: str = "primary"
    security: str = "sealed"
    phase: str = "early"
    rodents: str = "none"
    """Signs of rodents noted for every sample: none, few, some or many."""
    samples: Sequence[Sequence[Found]]


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """Counts that the source does not print are filled in as little as its summary allows, and `printed` says so."""

    id: str
    source: str
    known: str
    """One of KNOWN: how well it is known that the source says so."""
    printed: str
    """The remains as printed or summarised there."""
    concluded: str
    """What its author concluded."""
    region: str
    places: Sequence[Place]
    about: str = "context"
    """context (the first place) or site."""
    holds: Mapping[str, str] = field(default_factory=dict)
    """Statement -> the weakest grade that it must reach."""
    at_most: Mapping[str, str] = field(default_factory=dict)
    """Statement -> the strongest grade that it may reach."""
    must_not: Sequence[str] = ()
    """Statements that must not hold."""
    preservation: str = "charred"
    litres: float = 10.0
    years: Mapping[str, tuple[int, int]] = field(default_factory=lambda: {"early": (950, 1050)})


@lru_cache(maxsize=3)
def packs_of(region: str) -> Packs:
    packs, problems = read_packs((region,))
    assert not problems, problems[:3]
    return packs


def claims_of(reading: Reading) -> dict[str, Claim]:
    """Every claim of the reading's subject, through the real packs of its region."""
    packs = packs_of(reading.region)
    names = Identifier(taxa=packs.taxa, lookup=packs.taxon_lookup)
    contexts, samples, rows = [], [], []
    for number, place in enumerate(reading.places, start=1):
        contexts.append(
            a_context(f"C{number}", place.kind, deposit=place.deposit, security=place.security, phase=place.phase)
        )
        for held in place.samples:
            noted = {"rodent_signs": place.rodents} if place.rodents != "none" else {}
            sample = a_sample(f"S{len(samples) + 1}", f"C{number}", reading.litres, modern_intrusions=noted)
            samples.append(sample)
            for taxon, part, count, *condition in held:
                name = names.identify(taxon)
                assert name.taxon is not None or name.either, f"no pack knows {taxon}"
                rows.append(
                    a_row(
                        sample.id,
                        part=part,
                        count=count,
                        identification=name,
                        condition=condition[0] if condition else "charred",
                    )
                )
    project = a_project(
        contexts,
        samples,
        rows,
        phases=tuple(a_phase(id, *span) for id, span in reading.years.items()),
        region_packs=(reading.region,),
        preservation=reading.preservation,
    )
    claims = judge(project, packs, replicates=0, depth=Depth(turned=()))
    subject = Subject(level="site", id="site") if reading.about == "site" else Subject(level="context", id="C1")
    return {claim.statement: claim for claim in claims.by_subject[subject]}


def rank(grade: str) -> int:
    return GRADE_NAMES.index(grade)  # type: ignore[arg-type]
