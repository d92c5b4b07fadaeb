"""How much of the plants that changed there was for each litre of soil: presence says how often, and not how much."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from narrate.model.measurement import Measurement
from narrate.model.narrative import Sentence
from narrate.model.plant_groups import GroupAmount
from narrate.model.stratigraphy import Phase
from narrate.telling import english, manner, numbers, setting
from narrate.telling.page import Page
from narrate.telling.spread import Presence, name_of

TOLD = 2
"""Groups of plants whose amounts are told."""
FAR = 5
"""Times as many items from which visitors are told of far more or fewer (judgement of the makers)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Between:
    """Items of a group per litre in two phases, over all contexts or those of one kind."""

    before: GroupAmount
    after: GroupAmount

    @property
    def rises(self) -> bool:
        return (self.after.per_litre.value or 0.0) > (self.before.per_litre.value or 0.0)

    @property
    def is_apart(self) -> bool:
        """Whether the two intervals do not touch: a stricter sign than a test of the difference."""
        low, high = (self.before, self.after) if self.rises else (self.after, self.before)
        ends = (low.per_litre.high, high.per_litre.low)
        return ends[0] is not None and ends[1] is not None and ends[0] < ends[1]

    @property
    def times(self) -> float:
        """How many times the one holds of the other; without end where the one holds none."""
        few, many = sorted((self.before.per_litre.value or 0.0, self.after.per_litre.value or 0.0))
        return many / few if few else float("inf")


def between(page: Page, group: str, first: Phase, last: Phase, kind: str = "") -> Between | None:
    """The amounts of a group in two phases; None where one of them has no litres, or neither holds any."""
    known = {(a.group, a.phase, a.kind): a for a in page.dig.findings.amounts}
    before, after = (known.get((group, phase.id, kind)) for phase in (first, last))
    if before is None or after is None or before.per_litre.value is None or after.per_litre.value is None:
        return None
    return Between(before=before, after=after) if before.items or after.items else None


def per_litre_sentences(
    page: Page, changed: Sequence[tuple[Presence, Presence]], first: Phase, last: Phase
) -> list[Sentence]:
    """Items per litre of the groups that changed most, and what is left without the richest context of each phase."""
    found = [(a, b, amounts) for a, b in changed if (amounts := between(page, a.group.id, first, last)) is not None]
    if page.is_plain or not found:
        return []
    texts, refs = [], []
    for i, (a, b, amounts) in enumerate(found[:TOLD]):
        refs += [*a.refs, *b.refs]
        values = [per_litre(page, one.per_litre, in_full=i == 0 and one is amounts.before) for one in _both(amounts)]
        where = [f" in {setting.phase_name(phase)}" if i == 0 else "" for phase in (first, last)]
        unit = f" items per {page.litre}" if i == 0 else ""
        verb = "went " if i == 0 else ""
        texts.append(f"{name_of(page, a.group)} {verb}from {values[0]}{unit}{where[0]} to {values[1]}{where[1]}")
    litres = [numbers.figure(one.litres, 0) for one in _both(found[0][2])]
    unit = manner.litre(page.audience, plural=True)
    soil = f"over {litres[0]} and {litres[1]} {unit}" if litres[0] != litres[1] else f"over {litres[0]} {unit} each"
    scaled = "the unsorted share allowed for"
    sentences = page.say(refs, f"by number ({soil}, {scaled}), {page.listed(texts)}")
    return sentences + _without_the_richest(page, [amounts for *_, amounts in found[:TOLD]], refs)


def _without_the_richest(page: Page, told: Sequence[Between], refs: Sequence[str]) -> list[Sentence]:
    """The leading change without the richest context of each phase: one dump can make a phase look rich."""
    texts: list[str] = []
    for found in told:
        left = [one.without_richest for one in _both(found)]
        if any(one.value is None for one in left):
            continue
        ids = [english.literal(str(one.richest)) for one in _both(found) if one.richest and one.items]
        group = next(g for g in page.dig.packs.plant_groups if g.id == found.before.group)
        low, high = (page.figure(one) if one.value else "none" for one in left)
        verb = "go " if not texts and not group.is_singular else "goes " if not texts else ""
        texts.append(f"{name_of(page, group)} {verb}from {low} to {high} (without {page.listed(ids)})")
    caution = "these are intervals of counts, and items that came down together make them narrower than they should be"
    if not texts:
        return page.say(refs, caution)
    return page.say(refs, f"{caution}; with the richest context of each phase left out, {page.listed(texts)}")


def kinds_sentences(page: Page, lead: Presence, kinds: Sequence[str], first: Phase, last: Phase) -> list[Sentence]:
    """The leading change by number within each kind of context: a store that holds two seeds still holds some."""
    found = [(kind, b) for kind in kinds if (b := between(page, lead.group.id, first, last, kind)) is not None]
    whole = between(page, lead.group.id, first, last)
    if page.is_plain or not found or whole is None:
        return []
    same = sorted((f for f in found if f[1].is_apart and f[1].rises == whole.rises), key=lambda f: -f[1].times)
    rest = [f for f in found if f not in same]
    way = "rise" if whole.rises else "fall"
    refs = [*lead.refs] or [page.record]
    texts = [_kind_told(page, kind, amounts, is_first=i == 0) for i, (kind, amounts) in enumerate(same)]
    others = [_kind_told(page, kind, amounts) for kind, amounts in rest]
    if not same:
        shown = page.listed(_kind_told(page, k, b, is_first=i == 0) for i, (k, b) in enumerate(rest))
        return page.say(refs, f"by number no kind of context shows the same {way} beyond what counts allow: {shown}")
    every = " of them" if not rest and len(same) > 1 else ""
    which = f"each{every}" if not rest else page.listed(page.names.kind(kind, plural=True) for kind, _ in same)
    other = f", but not beyond what counts allow {page.listed(others)}" if others else ""
    return page.say(refs, f"by number the {way} holds for {which}: {page.listed(texts)}{other}")


def far_fewer(page: Page, lead: Presence, kinds: Sequence[str], first: Phase, last: Phase) -> bool:
    """Whether each of some kinds of context held many times more or fewer of a group, litre for litre."""
    found = [between(page, lead.group.id, first, last, kind) for kind in kinds]
    whole = between(page, lead.group.id, first, last)
    return bool(found) and whole is not None and all(
        b is not None and b.is_apart and b.times >= FAR and b.rises == whole.rises for b in found
    )  # fmt: skip


def _kind_told(page: Page, kind: str, amounts: Between, *, is_first: bool = False) -> str:
    low, high = (per_litre(page, one.per_litre, in_full=is_first and one is amounts.before) for one in _both(amounts))
    opened = f"items per {page.litre} went " if is_first else ""
    return f"{opened}from {low} to {high} for {page.names.kind(kind, plural=True)}"


def per_litre(page: Page, value: Measurement, *, in_full: bool = False) -> str:
    """'7.1 (95% interval 6.9–7.4)', in short '0.06 (0.03–0.11)'; of nothing found '0 (at most 0.02)'."""
    span = page.interval(value)
    if not value.value:
        most = numbers.figure(value.high, numbers.decimals_for(None, None, value.high)) if value.high else ""
        return f"none (at most {most})" if span and most else "none"
    if not span:
        return page.figure(value)
    return f"{page.figure(value)} ({'95% interval ' if in_full else ''}{span})"


def _both(amounts: Between) -> tuple[GroupAmount, GroupAmount]:
    return amounts.before, amounts.after
