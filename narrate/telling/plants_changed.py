"""Which single plants lie in more samples of one phase than of another, all plants that were tested allowed for."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.narrative import Sentence
from narrate.model.plant_groups import PlantChange
from narrate.model.stratigraphy import Phase
from narrate.telling import english, numbers
from narrate.telling.page import Page

CHANCE = 0.05
"""Chance of a difference from which it is not told as one."""
SHOWN = 5
"""Plants that are told of those which differ only by their own test."""


def plant_sentences(page: Page, first: Phase, last: Phase) -> list[Sentence]:
    """
    Plants that changed beyond chance once all that were tested are allowed for; then those that alone would seem to.

    Classes of plants can stand still while plants within them come and go.
    """
    tested = [c for c in page.dig.findings.plants if (c.first, c.last) == (first.id, last.id)]
    sure = [c for c in tested if c.p_holm < CHANCE]
    if not sure:
        return []
    fell, rose = ([c for c in sure if c.rises is rises] for rises in (False, True))
    refs = [ref for change in sure for ref in change.refs]
    if page.is_plain:
        sentences = []
        for changes, way in ((rose, "more"), (fell, "fewer")):
            own = [ref for change in changes for ref in change.refs]
            if changes:
                named = page.listed(_name(page, c) for c in changes)
                sentences += page.say(own, f"{named} turned up in {way} samples than before")
        return sentences
    told, is_first = [], True
    for changes, way in ((fell, "fell"), (rose, "rose")):
        if changes:
            told.append(f"{page.listed(_with_figures(page, changes, in_full=is_first))} {way}")
            is_first = False
    many = english.agreed(len(sure), "differs", "differ")
    text = (
        f"plant by plant, {numbers.count(len(sure))} of the {numbers.count(tested[0].tested)} found in five samples or "
        f"more (wood left aside) {many} beyond chance (Fisher's exact test, with Holm's correction for all "
        f"{numbers.count(tested[0].tested)}): {'; '.join(told)}"
    )
    return page.say(refs, text) + _alone(page, [c for c in tested if c.p < CHANCE <= c.p_holm])


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
