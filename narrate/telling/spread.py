"""In how many samples plants were found, by phase and kind of context, and where each reading was made."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass

from narrate.model.claims import GRADE_NAMES
from narrate.model.ids import PhaseId, Subject
from narrate.model.rules import Selector
from narrate.model.sampling import Sample
from narrate.telling import english, numbers
from narrate.telling.behind import is_meant
from narrate.telling.intervals import newcombe, wilson
from narrate.telling.page import Dig, Page
from narrate.telling.plan import TOO_FEW, Reading

_EATEN_OR_LEFT = ("edible", "byproduct", "cob", "nutshell", "propagule", "chaff", "underground", "prepared")


@dataclass(frozen=True, slots=True, kw_only=True)
class PlantGroup:
    """Plants whose spread over the samples is told together."""

    id: str
    name: str
    plain: str
    selector: Selector
    is_singular: bool = False


GROUPS = (
    PlantGroup(
        id="maize", name="maize", plain="corn", is_singular=True,
        selector=Selector(taxon=("Zea mays",), role=_EATEN_OR_LEFT),
    ),
    PlantGroup(
        id="native-crop", name="seeds of the native crops", plain="seeds of garden crops",
        selector=Selector(tag=("native-crop",), role=("propagule",)),
    ),
    PlantGroup(
        id="cereal", name="cereals", plain="cereals",
        selector=Selector(tag=("cereal",), not_taxon=("Zea mays",), role=_EATEN_OR_LEFT),
    ),
    PlantGroup(id="pulse", name="pulses", plain="beans", selector=Selector(tag=("pulse",), role=_EATEN_OR_LEFT)),
    PlantGroup(id="nut", name="nuts", plain="nuts", selector=Selector(tag=("nut",), role=("nutshell", "edible"))),
    PlantGroup(
        id="fruit", name="fleshy fruits", plain="wild fruits",
        selector=Selector(tag=("fruit",), role=("propagule", "edible")),
    ),
)  # fmt: skip
"""Groups in the order of telling; a group that the dig does not have is not spoken of."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Presence:
    """Samples that hold a group, of the samples looked at."""

    group: PlantGroup
    k: int
    n: int
    refs: tuple[str, ...]

    @property
    def share(self) -> float:
        return self.k / self.n if self.n else 0.0


def presence(dig: Dig, group: PlantGroup, samples: Sequence[Sample]) -> Presence:
    """Samples with at least one find of the group that is old under the project's preservation."""
    k, refs = 0, []
    for sample in samples:
        found = dig.found(Subject(level="sample", id=sample.id))
        old = [t for t in (found.tallies if found else ()) if t.condition in dig.ancient]
        meant = [t for t in old if (t.counted or t.is_noted or t.mass_g) and is_meant(group.selector, t, dig.packs)]
        if meant:
            k += 1
            refs += [t.ref for t in meant[:1] if t.ref]
    return Presence(group=group, k=k, n=len(samples), refs=tuple(refs))


def samples_where(dig: Dig, wanted: Callable[[Sample], bool]) -> list[Sample]:
    return [sample for sample in dig.project.samples if wanted(sample)]


def samples_of_phase(dig: Dig, phase: PhaseId) -> list[Sample]:
    contexts = {c.id for c in dig.project.contexts if c.phase == phase}
    return samples_where(dig, lambda sample: sample.context in contexts)


def difference(first: Presence, second: Presence) -> tuple[float, float]:
    """95 % interval of the second share minus the first."""
    return newcombe((first.k, first.n), (second.k, second.n))


def name_of(page: Page, group: PlantGroup) -> str:
    return group.plain if page.is_plain else group.name


def k_of_n(page: Page, found: Presence, *, short: bool = False) -> str:
    """'15 of 20 samples (75%, 95% interval 53–89%)'; in short '14 (70%)'."""
    if short:
        return f"{numbers.count(found.k)} ({numbers.percent(found.share)})"
    text = of_samples(found)
    if not page.audience.shows_intervals or found.n < 5:
        return text
    low, high = wilson(found.k, found.n)
    return f"{text} ({numbers.percent(found.share)}, 95% interval {low * 100:.0f}–{high * 100:.0f}%)"


def of_samples(found: Presence) -> str:
    """'15 of 20 samples', 'the one sample'."""
    if found.n == 1:
        return "the one sample" if found.k else "none of the one sample"
    return f"{out_of(found)} samples"


def out_of(found: Presence) -> str:
    """'15 of 20', 'two of nine', 'none of three', 'all eight'."""
    if found.k == found.n and found.n > 1:
        return f"all {numbers.count(found.n)}"
    if found.n == 1:
        return "the only one" if found.k else "none of one"
    if found.k == 0:
        return f"none of {numbers.count(found.n)}"
    if found.n < 10:
        return f"{numbers.count(found.k)} of {numbers.count(found.n)}"
    return f"{found.k} of {found.n}"


# Where readings were made


@dataclass(frozen=True, slots=True, kw_only=True)
class Placed:
    """One statement and the contexts in which it holds."""

    statement: str
    noun: str
    at: tuple[tuple[str, Reading], ...]
    """Context id and reading, firmest first."""

    @property
    def refs(self) -> list[str]:
        return [reading.claim.id for _, reading in self.at]


NOT_LISTED = ("season.stored-only", "deposit.redeposited")
"""Statements that say what a deposit cannot tell, and are not listed over contexts."""


def is_too_few(dig: Dig, context: str) -> bool:
    """Whether a context's remains are too few to be read."""
    claim = dig.claims.find(Subject(level="context", id=context), TOO_FEW)
    return claim is not None and claim.verdict == "holds"


def placed_readings(page: Page, contexts: Iterable[str], questions: Sequence[str]) -> list[Placed]:
    """Statements of some questions that hold at least as 'suggests' in two or more of the contexts."""
    packs = page.dig.packs
    found: dict[str, list[tuple[str, Reading]]] = {}
    for id in contexts:
        for claim in page.dig.claims.about(Subject(level="context", id=id)):
            if claim.statement in NOT_LISTED or is_too_few(page.dig, id):
                continue
            if claim.question in questions and claim.verdict == "holds" and claim.statement in packs.statements:
                reading = Reading(claim=claim, statement=packs.statements[claim.statement], behind=())
                if reading.rank > 1:
                    found.setdefault(claim.statement, []).append((id, reading))
    placed = []
    for statement, at in found.items():
        known = packs.statements[statement]  # type: ignore[index]
        ordered = tuple(sorted(at, key=lambda pair: (-pair[1].rank, -pair[1].claim.support)))
        if len(ordered) > 1:
            noun = known.plain_noun if page.is_plain else known.noun
            placed.append(Placed(statement=statement, noun=noun, at=ordered))
    return sorted(placed, key=lambda p: (-len(p.at), p.statement))


def ids_listed(page: Page, ids: Iterable[str], *, at_most: int = 8) -> str:
    """'C12, C14, and C18', in the project's order."""
    place = {context.id: i for i, context in enumerate(page.dig.project.contexts)}
    named = [english.literal(id) for id in sorted(ids, key=lambda id: (place.get(id, len(place)), id))]  # type: ignore[call-overload]
    if len(named) > at_most:
        named = [*named[:at_most], f"{page.count(len(named) - at_most)} more"]
    return page.listed(named)


def statements_held(page: Page, context: str, questions: Sequence[str]) -> dict[str, Reading]:
    """Statements of some questions that hold at least as 'suggests' in one context."""
    return {
        claim.statement: Reading(claim=claim, statement=page.dig.packs.statements[claim.statement], behind=())
        for claim in page.dig.claims.about(Subject(level="context", id=context))
        if claim.question in questions and claim.verdict == "holds" and claim.statement in page.dig.packs.statements
        and claim.statement not in NOT_LISTED and not is_too_few(page.dig, context)
        and GRADE_NAMES.index(claim.grade) > 1
    }  # fmt: skip
