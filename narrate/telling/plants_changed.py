"""Which single plants lie in more samples of one phase than of another, all plants that were tested allowed for."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial

from narrate.model.findings import CHANCE
from narrate.model.narrative import Sentence
from narrate.model.plant_groups import PlantChange
from narrate.model.stratigraphy import Phase
from narrate.telling import english, numbers
from narrate.telling.change_for_visitors import Pair, plants_for_visitors
from narrate.telling.changes_listed import near_sentences
from narrate.telling.page import Page

NOT_INDEPENDENT = "samples of one context are not independent"
"""Why contexts are counted beside samples."""


def plant_sentences(page: Page, first: Phase, last: Phase, changed: Sequence[Pair] = ()) -> list[Sentence]:
    """
    Plants that changed beyond chance once all that were tested are allowed for; then those that alone would seem to.

    Classes of plants can stand still while plants within them come and go. The figures of each stand in the table of
    plants that were tested. changed: classes told before, for visitors.
    """
    tested = [c for c in page.dig.findings.plants if (c.first, c.last) == (first.id, last.id)]
    alone = {c.what for c in page.dig.findings.only_in_part if (c.first, c.last) == (first.id, last.id)}
    sure = [c for c in tested if c.p_holm < CHANCE and c.taxon not in alone]
    if not sure:
        return []
    name = partial(_name, page)
    if page.is_plain:
        return plants_for_visitors(page, sure, changed)
    fell, rose = ([c for c in sure if c.rises is rises] for rises in (False, True))
    told = [
        f"{page.listed(map(name, changes))} {way}" for changes, way in ((fell, "fell"), (rose, "rose")) if changes
    ]
    many = english.agreed(len(sure), "differs", "differ")
    text = (
        f"plant by plant, {numbers.count(len(sure))} of the {numbers.count(tested[0].tested)} named at least to genus "
        f"and found in five samples or more (wood left aside) {many} beyond chance (Fisher's exact test, with "
        f"Holm's correction for all {numbers.count(tested[0].tested)}): {'; '.join(told)}"
    )
    refs = [ref for change in sure for ref in change.refs]
    return page.say(refs, text) + _by_context(page, tested, sure) + near_sentences(page, tested, sure, name)


def _by_context(page: Page, tested: Sequence[PlantChange], sure: Sequence[PlantChange]) -> list[Sentence]:
    """
    Which plants outlast the same test with contexts, which are independent, in the place of samples; all that were
    tested are asked. Then those of which leaving out a single context undoes the difference by samples.
    """
    name = partial(_name, page)
    (_, n), (_, m) = sure[0].contexts
    near = _near_the_edge(page, sure)
    told = [change for change in sure if change.hangs_on]
    if not n or not m or (n, m) == sure[0].of_samples:
        return page.say([ref for change in told for ref in change.refs[:1]], f"of these {near}") if near else []
    still = [change for change in tested if change.p_contexts_holm < CHANCE]
    named = page.listed(map(name, still)) if still else "none of them"
    alone = " alone" if 0 < len(still) < len(tested) else ""
    remain = english.agreed(max(len(still), 1), "remains", "remain")
    return page.say(
        [ref for change in (*(still or sure), *told) for ref in change.refs[:1]],
        f"{'' if page.has_told(NOT_INDEPENDENT) else f'{NOT_INDEPENDENT} of each other; '}with contexts in the place "
        f"of samples ({numbers.count(n)}, then {numbers.count(m)}) {named}{alone} {remain} significant"
        + (f"; by samples {near}" if near else ""),
    )


def _near_the_edge(page: Page, sure: Sequence[PlantChange]) -> str:
    """'acorns lie near the edge, for without any one of 12 contexts they fall short'; '' where none is."""
    near = [change for change in sure if change.hangs_on]
    if not near:
        return ""
    contexts = [set(change.hangs_on) for change in near]
    every = set.intersection(*contexts)
    fewest, most = min(map(len, contexts)), max(map(len, contexts))
    if most == 1 and len(every) == 1:
        without = f"without {english.literal(next(iter(every)))} alone"
    elif most == 1:
        without = "without one context"
    else:
        without = f"without any one of {numbers.count(most) if fewest == most else f'{fewest} to {most}'} contexts"
    lie, fall = english.agreed(len(near), "lies", "lie"), english.agreed(len(near), "it falls", "they fall")
    return f"{page.listed(_name(page, change) for change in near)} {lie} near the edge, for {without} {fall} short"


def _name(page: Page, change: PlantChange) -> str:
    return page.names.food(change.taxon)
