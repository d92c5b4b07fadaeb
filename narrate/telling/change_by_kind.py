"""Whether a change shows too where like is compared with like, kind of context by kind."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.narrative import Sentence
from narrate.model.stratigraphy import Phase
from narrate.telling import english
from narrate.telling.amounts_told import far_fewer, kinds_sentences
from narrate.telling.one_feature import features_of
from narrate.telling.page import Page
from narrate.telling.spread import (
    Presence,
    name_of,
    out_of,
    out_of_text,
    presence,
    presences,
    samples_of_phase,
)
from narrate.telling.through_time import ENOUGH, _is_change, _of


def alike_sentences(page: Page, first: Phase, last: Phase) -> list[Sentence]:
    """The leading change within one kind of context, lest a change of kinds sampled be taken for one of plants."""
    before, after = samples_of_phase(page.dig, first.id), samples_of_phase(page.dig, last.id)
    pairs = zip(presences(page.dig, first.id), presences(page.dig, last.id), strict=True)
    changed = sorted((p for p in pairs if _is_change(page, *p)), key=lambda p: -abs(p[1].share - p[0].share))
    if not changed:
        return []
    group = changed[0][0].group
    kinds = sorted(
        {page.dig.project.context(s.context).kind for s in before}
        & {page.dig.project.context(s.context).kind for s in after}
    )
    compared = []
    for kind in kinds:
        a, b = (presence(page.dig, group, phase.id, kind) for phase in (first, last))
        if a.n >= ENOUGH and b.n >= ENOUGH:
            compared.append((kind, a, b))
    if not compared:
        if page.is_plain:
            return []
        refs = [page.record]
        return page.say(
            refs,
            "the phases share too few samples from contexts of one kind to compare like with like, so a change in what "
            "was dug cannot be ruled out as the cause",
        )
    refs = [ref for _, a, b in compared for ref in (*a.refs, *b.refs)] or [page.record]
    same_way = [c for c in compared if (c[2].share > c[1].share) == (changed[0][1].share > changed[0][0].share)]
    holds = len(same_way) == len(compared)
    name = name_of(page, group)
    if page.is_plain:
        stay = [kind for kind, a, b in compared if not _is_marked(a, b)]
        is_far = bool(stay) and far_fewer(page, changed[0][0], stay, first, last)
        return _alike_for_visitors(page, name, compared, refs, is_far=is_far) if holds else []
    texts = [f"{page.names.kind(kind, plural=True)} ({out_of(a)}, then {out_of(b)})" for kind, a, b in compared]
    marked = [c for c in compared if _is_marked(c[1], c[2])]
    if holds and marked:
        marked.sort(key=lambda c: -abs(c[2].share - c[1].share))
        slight = [c for c in compared if c not in marked]
        way = "rise" if changed[0][1].share > changed[0][0].share else "fall"
        shown = [f"from {_of(a)} to {_of(b)} for {page.names.kind(kind, plural=True)}" for kind, a, b in marked]
        verb = english.agreed(len(texts), "number is", "numbers are")
        few = _features_behind(page, [kind for kind, _, _ in compared], first, last)
        amounts = kinds_sentences(page, changed[0][0], [kind for kind, _, _ in compared], first, last)
        where = page.listed(page.names.kind(kind, plural=True) for kind, _, _ in marked)
        rest = page.listed(f"{page.names.kind(k, plural=True)} ({_of(a)}, then {_of(b)})" for k, a, b in slight)
        little = "little" if amounts else "none to speak of"
        apart = "one sample of difference" + (" each" if len(slight) > 1 else "")
        shows = english.agreed(len(slight), "shows", "show")
        none = f"; by presence {rest} {shows} {little}, {apart}" if slight else ""
        holding = f"the samples that hold {'it' if group.is_singular else 'them'} went"
        return [
            *page.say(
                refs,
                f"like compared with like, the {way} of {name} holds for {where}: {holding} {page.listed(shown)}{none}",
            ),
            *amounts,
            *page.say(refs, f"the {verb} small, and few features stand behind them: {few}"),
        ]
    return page.say(
        refs,
        f"like compared with like, the picture is less even: samples with {name} number, by kind of context, "
        f"{page.listed(texts)}",
    )


def _alike_for_visitors(
    page: Page, name: str, compared: Sequence[tuple[str, Presence, Presence]], refs: Sequence[str], *, is_far: bool
) -> list[Sentence]:
    """
    'On hearths the fall of it is steep (all eight samples, then one of eight), though these numbers are small'.

    is_far: whether kinds of context of which most samples hold some at both times hold far more or fewer, by number.
    """
    marked = [(a, b) for _, a, b in compared if _is_marked(a, b)]
    if not marked:
        return []
    sides = [
        page.listed(page.names.kind(kind, plural=True) for kind, a, b in compared if _is_marked(a, b) == is_marked)
        for is_marked in (True, False)
    ]
    before, after = ((sum(pair[i].k for pair in marked), sum(pair[i].n for pair in marked)) for i in (0, 1))
    way = "rise" if marked[0][1].share > marked[0][0].share else "fall"
    much = "steep" if abs(after[0] / after[1] - before[0] / before[1]) >= STEEP else "clear"
    slight = f"; in {sides[1]} it is slight" if sides[1] else ""
    if is_far:
        more = "more" if way == "rise" else "less"
        slight = f"; {sides[1]} held some at both times, but far {more} in each {page.litre} of soil later on"
    figures = f"{out_of_text(*before)} samples, then {out_of_text(*after)}"
    few = "though these numbers are small"
    return page.say(refs, f"on {sides[0]} the {way} of {name} is {much} ({figures}), {few}{slight}")


STEEP = 0.5
"""Change in the share of samples from which visitors read of a steep rise or fall (judgement of the makers)."""


def _is_marked(before: Presence, after: Presence) -> bool:
    """Whether a kind of context changed by more than one of its samples, which chance alone may bring."""
    return abs(after.share - before.share) * min(before.n, after.n) > 1.0001


def _features_behind(page: Page, kinds: Sequence[str], first: Phase, last: Phase) -> str:
    """How many features the samples of each kind come from, for samples of one feature are not independent."""
    sampled = {s.context for s in page.dig.project.samples}
    told = []
    for kind in kinds:
        found = [c for c in page.dig.project.contexts if c.kind == kind and c.id in sampled]
        before, after = (features_of(c for c in found if c.phase == phase.id) for phase in (first, last))
        both = {c.feature for c in before[0]} & {c.feature for c in after[0]} - {None} if before and after else set()
        one, many = page.names.kind(kind), page.names.kind(kind, plural=True)
        if bool(both) and len(before) == len(after) == 1:
            told.append(f"one {one} that the phases share")
        elif len(before) == len(after):
            told.append(f"{page.count(len(before), one, many)} of each phase")
        else:
            early = page.count(len(before), one, many)
            told.append(f"{early} of the first phase and {page.count(len(after))} of the last")
    return "; ".join(told[:-1]) + f"; and {told[-1]}" if len(told) > 1 else told[0]
