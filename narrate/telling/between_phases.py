"""What lies between phases: that the remains of each do not say why the one ended or the other began."""

from __future__ import annotations

from itertools import pairwise

from narrate.model.narrative import Sentence
from narrate.model.stratigraphy import Phase
from narrate.telling import numbers, setting
from narrate.telling.page import Page
from narrate.telling.through_time import sampled_phases


def gaps(page: Page) -> list[tuple[Phase, Phase, int]]:
    """Neighbouring phases with years between them from which no phase is known, and how many."""
    found = []
    phases = sampled_phases(page)
    for before, after in pairwise(phases):
        if before.end is None or after.start is None or before.dates != after.dates or "BP" in before.dates:
            continue
        if after.start > before.end:
            found.append((before, after, after.start - before.end))
    return found


def gap_sentences(page: Page) -> list[Sentence]:
    """For visitors: how long a time lies between two phases that are compared, of which nothing is known."""
    if not page.is_plain:
        return []
    sentences: list[Sentence] = []
    for before, after, years in gaps(page):
        names = page.listed(setting.phase_name(one) for one in (before, after))
        sentences += page.say([page.record], f"some {numbers.count(years)} years lie between {names}")
    return sentences


def unanswered_sentences(page: Page, phase: Phase | None = None) -> list[Sentence]:
    """
    Why a place was left and lived in again, as far as plants go: a question that every such dig asks is answered.

    phase: of a page of one phase, that of its own end or beginning alone.
    """
    sentences: list[Sentence] = []
    for before, after, years in gaps(page):
        names = [setting.phase_name(one) for one in (before, after)]
        if phase is None:
            why = f"why {names[0]} ended or why {names[1]} began"
        elif phase == before:
            why = f"why {names[0]} ended"
        elif phase == after:
            why = f"why {names[1]} began"
        else:
            continue
        if page.is_plain:
            sentences += page.say([page.record], f"burned plants cannot tell us {why}")
            continue
        long = f"the {numbers.count(years)} years or so between them"
        held = f"; no phase fills {long}" if phase is None else ""
        sentences += page.say(
            [page.record],
            f"{why} is a question that these plants do not answer, for they record what was burned while people were "
            f"there{held}",
        )
    return sentences
