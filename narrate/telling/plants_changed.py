"""Which single plants lie in more samples of one phase than of another, all plants that were tested allowed for."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.findings import CHANCE
from narrate.model.narrative import Sentence
from narrate.model.plant_groups import PlantChange
from narrate.model.stratigraphy import Phase
from narrate.telling import english, numbers
from narrate.telling.change_for_visitors import Pair, plants_for_visitors
from narrate.telling.page import Page

NOT_INDEPENDENT = "samples of one context are not independent"
"""Why contexts are counted beside samples."""
SHOWN = 5
"""Plants that are told of those which differ only by their own test."""


def plant_sentences(page: Page, first: Phase, last: Phase, changed: Sequence[Pair] = ()) -> list[Sentence]:
    """
    Plants that changed beyond chance once all that were tested are allowed for; then those that alone would seem to.

    Classes of plants can stand still while plants within them come and go. changed: classes told before, for visitors.
    """
    tested = [c for c in page.dig.findings.plants if (c.first, c.last) == (first.id, last.id)]
    alone = {c.what for c in page.dig.findings.only_in_part if (c.first, c.last) == (first.id, last.id)}
    sure = [c for c in tested if c.p_holm < CHANCE and c.taxon not in alone]
    if not sure:
        return []
    if page.is_plain:
        return plants_for_visitors(page, sure, changed)
    fell, rose = ([c for c in sure if c.rises is rises] for rises in (False, True))
    refs = [ref for change in sure for ref in change.refs]
    told, is_first = [], True
    for changes, way in ((fell, "fell"), (rose, "rose")):
        if changes:
            told.append(f"{page.listed(_with_figures(page, changes, in_full=is_first))} {way}")
            is_first = False
    many = english.agreed(len(sure), "differs", "differ")
    text = (
        f"plant by plant, {numbers.count(len(sure))} of the {numbers.count(tested[0].tested)} named at least to genus "
        f"and found in five samples or more (wood left aside) {many} beyond chance (Fisher's exact test, with "
        f"Holm's correction for all {numbers.count(tested[0].tested)}): {'; '.join(told)}"
    )
    return (
        page.say(refs, text)
        + _near_the_edge(page, sure)
        + _by_context(page, sure)
        + _alone(page, [c for c in tested if c.p < CHANCE <= c.p_holm])
    )


def _near_the_edge(page: Page, sure: Sequence[PlantChange]) -> list[Sentence]:
    """Plants of which leaving out a single context undoes the difference."""
    near = [change for change in sure if change.hangs_on]
    if not near:
        return []
    contexts = [set(change.hangs_on) for change in near]
    numbered = {change.taxon: _name(page, change) for change in near}
    every = set.intersection(*contexts)
    if all(len(ids) == 1 for ids in contexts) and len(every) == 1:
        without = f"without {english.literal(next(iter(every)))} alone"
    else:
        fewest, most = min(map(len, contexts)), max(map(len, contexts))
        of_one = english.agreed(most, "context", "contexts")
        many = f"{numbers.count(fewest)} {of_one}" if fewest == most else "that many"
        without = f"leave out any one of {many}, and"
        if fewest != most:
            numbered = {c.taxon: f"{_name(page, c)} ({of})" for c, of in zip(near, _numbered(contexts), strict=True)}
    are = english.agreed(len(near), "lies", "lie")
    it = english.agreed(len(near), "it", "they")
    edge = f"{page.listed(numbered.values())} {are} near the edge"
    return page.say(
        [ref for change in near for ref in change.refs[:1]],
        f"of these {edge}: {without} {it} no longer {english.agreed(len(near), 'outlasts', 'outlast')} the correction",
    )


def _numbered(contexts: Sequence[set[str]]) -> list[str]:
    """'8 contexts' of the first, and '10' of the others: how many there are of which each undoes a difference."""
    first, *rest = (str(len(ids)) for ids in contexts)
    return [f"{first} {english.agreed(len(contexts[0]), 'context', 'contexts')}", *rest]


def _by_context(page: Page, sure: Sequence[PlantChange]) -> list[Sentence]:
    """Which of the differences outlast the same test with contexts, which are independent, in the place of samples."""
    (_, n), (_, m) = sure[0].contexts
    if not n or not m or (n, m) == sure[0].of_samples:
        return []
    still = [change for change in sure if change.p_contexts_holm < CHANCE]
    named = page.listed(_name(page, c) for c in still) if still else "none of them"
    alone = " alone" if 0 < len(still) < len(sure) else ""
    outlast = english.agreed(max(len(still), 1), "outlasts", "outlast")
    lost = [change for change in sure if change not in still] if still else []
    does = english.agreed(len(lost), "does", "do")
    rest = f", and {page.listed(_by_its_contexts(page, c) for c in lost)} {does} not" if lost else ""
    by_own = "; each p is before the correction" if lost else ""
    return page.say(
        [ref for change in (still or sure) for ref in change.refs[:1]],
        f"{'' if page.has_told(NOT_INDEPENDENT) else f'{NOT_INDEPENDENT} of each other; '}with contexts in the place "
        f"of samples ({numbers.count(n)}, then {numbers.count(m)}) {named}{alone} {outlast} the test{rest}{by_own}",
    )


def _by_its_contexts(page: Page, change: PlantChange) -> str:
    """'maize (five contexts, then 10; p 0.063)': what stands behind a difference that contexts do not uphold."""
    (a, _), (b, _) = change.contexts
    return f"{_name(page, change)} ({_so_many(a)}, then {_so_many(b)}; p {_p(change.p_contexts)})"


def _p(value: float) -> str:
    """A probability with two figures that say something: '0.063', '0.0041', 'under 0.0001'."""
    if value < 0.0001:
        return "under 0.0001"
    return f"{value:.2f}" if value >= 0.1 else f"{value:.3f}" if value >= 0.01 else f"{value:.4f}"


def _alone(page: Page, near: Sequence[PlantChange]) -> list[Sentence]:
    """Plants whose own test finds a difference that the correction does not uphold."""
    if not near:
        return []
    shown = near[:SHOWN]
    texts = _with_figures(page, shown, in_full=False)
    more = f", and {numbers.count(len(near) - SHOWN)} more" if len(near) > SHOWN else ""
    listed = ", ".join(texts) if more else page.listed(texts)
    each = english.agreed(len(near), "", "each ")
    return page.say(
        [ref for change in shown for ref in change.refs],
        f"{listed}{more} would {each}by itself seem to have changed, but with so many plants "
        "tested chance alone brings some of that",
    )


def _with_figures(page: Page, changes: Sequence[PlantChange], *, in_full: bool) -> list[str]:
    """'maygrass (19 of 23 samples, then 1 of 27)', and in short 'purslane (none, then 14)'."""
    texts = []
    for i, change in enumerate(changes):
        (a, b), (n, m) = change.with_it, change.of_samples
        full = in_full and i == 0
        figures = f"{a} of {n} samples, then {b} of {m}" if full else f"{_so_many(a)}, then {_so_many(b)}"
        texts.append(f"{_name(page, change)} ({figures})")
    return texts


def _so_many(number: int) -> str:
    return str(number) if number else "none"


def _name(page: Page, change: PlantChange) -> str:
    return page.names.food(change.taxon)
