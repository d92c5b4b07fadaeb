"""In how many samples plants were found, by phase and kind of context, and where each reading was made."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass

from narrate.model.claims import GRADE_NAMES
from narrate.model.ids import PhaseId, Subject
from narrate.model.measurement import Measurement
from narrate.model.plant_groups import PlantGroup
from narrate.model.sampling import Sample
from narrate.telling import english, manner, numbers
from narrate.telling.foods_once import is_told_with_another_food
from narrate.telling.page import Dig, Page
from narrate.telling.plan import TOO_FEW, Reading, is_hint


@dataclass(frozen=True, slots=True, kw_only=True)
class Presence:
    """Samples that hold a group, of the samples looked at."""

    group: PlantGroup
    phase: PhaseId | None
    kind: str
    k: int
    n: int
    ubiquity: Measurement | None
    """With its 95 % interval; None where no sample was looked at."""
    refs: tuple[str, ...]
    contexts: tuple[int, int] = (0, 0)
    """Contexts that hold it, of those that were sampled."""
    only_cf: int = 0
    """Samples of the k in which it was named only as cf."""

    @property
    def share(self) -> float:
        return self.k / self.n if self.n else 0.0


def presences(dig: Dig, phase: PhaseId | None = None, kind: str = "") -> list[Presence]:
    """Of each group, in the order of telling: over the dig, a phase, a kind of context, or a kind in a phase."""
    return [presence(dig, group, phase, kind) for group in dig.packs.plant_groups]


def presence(dig: Dig, group: PlantGroup, phase: PhaseId | None = None, kind: str = "") -> Presence:
    """Samples with at least one find of the group, as they were measured."""
    meant = (group.id, phase, kind)
    found = next((s for s in dig.findings.spreads if (s.group, s.phase, s.kind) == meant), None)
    k, n, refs = (found.with_it, found.of_samples, found.refs) if found else (0, 0, ())
    ubiquity = found.ubiquity if found else None
    contexts = found.contexts if found else (0, 0)
    return Presence(
        group=group, phase=phase, kind=kind, k=k, n=n, ubiquity=ubiquity, refs=refs, contexts=contexts,
        only_cf=found.only_cf if found else 0,
    )  # fmt: skip


def samples_where(dig: Dig, wanted: Callable[[Sample], bool]) -> list[Sample]:
    return [sample for sample in dig.project.samples if wanted(sample)]


def samples_of_phase(dig: Dig, phase: PhaseId) -> list[Sample]:
    contexts = {c.id for c in dig.project.contexts if c.phase == phase}
    return samples_where(dig, lambda sample: sample.context in contexts)


def difference(dig: Dig, first: Presence, second: Presence) -> tuple[float, float]:
    """95 % interval of the second share minus the first, of one group and kind in two phases."""
    meant = (first.group.id, first.phase, second.phase, first.kind)
    for change in dig.findings.changes:
        if (change.group, change.first, change.last, change.kind) == meant:
            low, high = change.difference.low, change.difference.high
            return (-1.0 if low is None else low, 1.0 if high is None else high)
    return (-1.0, 1.0)


def name_of(page: Page, group: PlantGroup) -> str:
    return group.plain if page.is_plain else group.name


def k_of_n(page: Page, found: Presence, *, short: bool = False) -> str:
    """'15 of 20 samples (75%, 95% interval 53–89%)'; in short '14 (70%)'. What is only cf. is counted and told."""
    if short:
        return f"{numbers.count(found.k)} ({numbers.percent(found.share)}{as_cf(page, found)})"
    text = of_samples(found)
    doubt = as_cf(page, found).removeprefix(", ")
    if not page.audience.shows_intervals or found.n < 5:
        return f"{text} ({doubt})" if doubt else text
    ends = found.ubiquity
    if ends is None or ends.low is None or ends.high is None:
        return f"{text} ({doubt})" if doubt else text
    span = f"{ends.low * 100:.0f}{manner.dash(page.audience)}{ends.high * 100:.0f}%"
    return f"{text} ({numbers.percent(found.share)}, 95% interval {span}{as_cf(page, found)})"


def as_cf(page: Page, found: Presence) -> str:
    """', in one of them only as cf.'; empty where all is named firmly, and for visitors."""
    if not found.only_cf or page.is_plain:
        return ""
    if found.only_cf == found.k:
        return ", only as cf."
    return f", in {numbers.count(found.only_cf)} of them only as cf."


def unsure(page: Page, found: Presence) -> str:
    """' (in one of them not for sure)': for visitors, samples of those told in which the plant is only named cf."""
    if not found.only_cf or not page.is_plain:
        return ""
    if found.only_cf == found.k:
        return " (not for sure)" if found.k == 1 else " (in none of them for sure)"
    return f" (in {numbers.count(found.only_cf)} of them not for sure)"


def of_samples(found: Presence) -> str:
    """'15 of 20 samples', 'the one sample'."""
    if found.n == 1:
        return "the one sample" if found.k else "none of the one sample"
    return f"{out_of(found)} samples"


def out_of(found: Presence) -> str:
    """'15 of 20', 'two of nine', 'none of three', 'all eight'."""
    return out_of_text(found.k, found.n)


def out_of_text(k: int, n: int) -> str:
    """
    So many of so many.

    >>> out_of_text(15, 20), out_of_text(2, 9), out_of_text(0, 3), out_of_text(8, 8)
    ('15 of 20', 'two of nine', 'none of three', 'all eight')
    """
    if k == n and n > 1:
        return f"all {numbers.count(n)}"
    if n == 1:
        return "the only one" if k else "none of one"
    if k == 0:
        return f"none of {numbers.count(n)}"
    if n < 10:
        return f"{numbers.count(k)} of {numbers.count(n)}"
    return f"{k} of {n}"


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
        for claim in page.dig.claims.holding(Subject(level="context", id=id)):
            is_asked = claim.question in questions and claim.statement in packs.statements
            if not is_asked or claim.statement in NOT_LISTED:
                continue
            if is_too_few(page.dig, id) or is_told_with_another_food(page.dig, claim):
                continue
            reading = Reading(claim=claim, statement=packs.statements[claim.statement], behind=())
            if reading.rank > 1 and not is_hint(claim):
                found.setdefault(claim.statement, []).append((id, reading))
    placed = []
    for statement, at in found.items():
        known = packs.statements[statement]  # type: ignore[index]
        ordered = tuple(sorted(at, key=lambda pair: (-pair[1].rank, -pair[1].claim.support)))
        if len(ordered) > 1:
            noun = page.in_own_words(known.plain_noun if page.is_plain else known.noun)
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
        for claim in page.dig.claims.holding(Subject(level="context", id=context))
        if claim.question in questions and claim.verdict == "holds" and claim.statement in page.dig.packs.statements
        and claim.statement not in NOT_LISTED and not is_too_few(page.dig, context)
        and GRADE_NAMES.index(claim.grade) > 1 and not is_told_with_another_food(page.dig, claim)
        and not is_hint(claim)
    }  # fmt: skip
