"""Plants that carry a reading in one phase alone and were found in another too, worked out once for the dig."""

from __future__ import annotations

from dataclasses import dataclass, field

from narrate.model.claims import GRADE_NAMES, Claims
from narrate.model.findings import Findings, Tally
from narrate.model.ids import Subject
from narrate.model.packs import Packs
from narrate.model.project import Project
from narrate.telling import english
from narrate.telling.behind import is_meant, remains_looked_at
from narrate.telling.surroundings import genus_of

_SUGGESTS = GRADE_NAMES.index("suggests")

Found = tuple[tuple[str, str], Tally]
"""Context and sample, as they are written, and what was found there."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Strays:
    """Asked again and again by the contexts of a phase, so that answers are kept."""

    project: Project
    packs: Packs
    findings: Findings
    claims: Claims
    ancient: frozenset[str]
    lone_plants: frozenset[str]
    _genera: dict[tuple[str, ...], tuple[str, ...]] = field(default_factory=dict)
    _finds: dict[tuple[str, str], tuple[Found, ...]] = field(default_factory=dict)

    def genera(self, phase: str, *questions: str) -> tuple[str, ...]:
        """Genera on which alone another phase's reading of some questions rests, and too few here to carry it."""
        known = self._genera.get((phase, *questions))
        if known is None:
            known = self._genera[phase, *questions] = tuple(dict.fromkeys(self._strayed(phase, questions)))
        return known

    def finds(self, phase: str, genus: str) -> tuple[Found, ...]:
        """Old finds of a genus in a phase, other than wood, in the order of the samples."""
        known = self._finds.get((phase, genus))
        if known is None:
            known = self._finds[phase, genus] = tuple(self._found(phase, genus))
        return known

    def _strayed(self, phase: str, questions: tuple[str, ...]) -> list[str]:
        here, found = Subject(level="phase", id=phase), list[str]()
        held = self.findings.subjects.get(here)
        for other in (p for p in self.project.phases if p.id != phase):
            for claim in self.claims.holding(Subject(level="phase", id=other.id)):
                own = self.claims.find(here, claim.statement)
                is_of_other = own is None or own.verdict != "holds"
                if claim.question not in questions or not is_of_other or GRADE_NAMES.index(claim.grade) < _SUGGESTS:
                    continue
                looked_at = remains_looked_at(claim, self.packs, held.tallies if held is not None else ())
                genera = {genus_of(t, self.packs) for t in looked_at if t.taxon is not None}
                if (
                    len(genera) == 1
                    and genera <= self.lone_plants
                    and not any(is_spread(tally, self.packs) for tally in looked_at)
                ):
                    found += genera
        return found

    def _found(self, phase: str, genus: str) -> list[Found]:
        found = []
        contexts = {c.id for c in self.project.contexts if c.phase == phase}
        for sample in (s for s in self.project.samples if s.context in contexts):
            held = self.findings.subjects.get(Subject(level="sample", id=sample.id))
            for tally in held.tallies if held is not None else ():
                part = self.packs.words.parts.get(tally.part)
                is_old = tally.counted and tally.condition in self.ancient
                is_plant = is_old and (part is None or "wood" not in part.roles)
                if is_plant and tally.taxon is not None and genus_of(tally, self.packs) == genus:
                    found.append(((english.literal(sample.context), english.literal(sample.id)), tally))
        return found


def is_spread(tally: Tally, packs: Packs) -> bool:
    """Whether the spread of its group over the samples is told anyway."""
    return any(is_meant(group.of, tally, packs) for group in packs.plant_groups)
