"""What lies between phases: that the remains of each do not say why the one ended or the other began."""

from __future__ import annotations

from narrate.model.narrative import Sentence
from narrate.model.stratigraphy import Phase
from narrate.telling import numbers, setting
from narrate.telling.dates_used import gap_by_dates
from narrate.telling.page import Page
from narrate.telling.through_time import gaps_between, sampled_phases


def gap_sentences(page: Page) -> list[Sentence]:
    """For visitors: how long a time lies between two phases that are compared, and which years are theirs."""
    if not page.is_plain:
        return []
    sentences: list[Sentence] = []
    for before, after, years in gaps_between(page):
        names = page.listed(_with_years(page, one) for one in (before, after))
        sentences += page.say([page.record], f"some {numbers.count(years)} years lie between {names}")
    return sentences


def times_sentences(page: Page) -> list[Sentence]:
    """For visitors: the times of a dig of several, and how long lies between them, before anything is compared."""
    phases = sampled_phases(page)
    if len(phases) < 2:
        return []
    named = [_with_years(page, phase) for phase in phases]
    sentences = page.say([page.record], f"our finds come from {page.count(len(phases))} times: {page.listed(named)}")
    for before, after, years in gaps_between(page):
        names = f" {setting.phase_name(before)} and {setting.phase_name(after)}" if len(phases) > 2 else " the two"
        sentences += page.say(
            [page.record], f"some {numbers.count(years)} years lie between{names}, and of those years we know nothing"
        )
    return sentences


def _with_years(page: Page, phase: Phase) -> str:
    years = setting.phase_years(page, phase)
    return f"{setting.phase_name(phase)}{f' ({years})' if years else ''}"


def unanswered_sentences(page: Page, phase: Phase | None = None) -> list[Sentence]:
    """
    Why a place was left and lived in again, as far as plants go: a question that every such dig asks is answered.

    phase: of a page of one phase, that of its own end or beginning alone.
    """
    sentences: list[Sentence] = []
    for before, after, years in gaps_between(page):
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
        held = ""
        if phase is None:
            held = f"; no phase fills what lies between them, {_reckoned(page, before, after, years)}"
        sentences += page.say(
            [page.record],
            f"{why} is a question that these plants do not answer, for they record what was burned while people were "
            f"there{held}",
        )
    return sentences


def _reckoned(page: Page, before: Phase, after: Phase, years: int) -> str:
    """'some 200 years by those given to the phases, and at least 215 between the main ranges of their dates'."""
    by_dates = gap_by_dates(page, before, after)
    dates = f", and {numbers.count(by_dates)} between the main ranges of their radiocarbon dates" if by_dates else ""
    return f"some {numbers.count(years)} years by those given to the phases{dates}"
