"""What radiocarbon dates bear out of the phases, and the crops that were dated themselves: for the discussion."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from narrate.model.dates_given import DateGiven, dates_given
from narrate.model.findings import Tally
from narrate.model.ids import Subject, TaxonId
from narrate.model.narrative import Sentence
from narrate.model.plants import Taxon
from narrate.model.stratigraphy import Phase
from narrate.telling import english, manner, setting
from narrate.telling.citations import works_cited
from narrate.telling.page import Page
from narrate.telling.spread import ids_listed
from narrate.telling.through_time import sampled_phases

NEAR_THE_FIRST = 100
"""Years after the earliest known of a plant within which a date of it is set beside that (judgement of the makers)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class DatedFind:
    """A date with the plant that was dated, as it was found in that context."""

    date: DateGiven
    find: Tally
    taxon: Taxon


def given(page: Page) -> tuple[DateGiven, ...]:
    project = page.dig.project
    return dates_given(project.report.get("radiocarbon", ""), [context.id for context in project.contexts])


def dates_sentences(page: Page) -> list[Sentence]:
    """How the dates stand to the years of the phases, and which crops were dated and not only what lay with them."""
    if page.is_plain or not given(page):
        return []
    return _beside_phases(page) + _crops_dated(page) + _near_the_first(page)


def dates_of(page: Page, phase: Phase) -> list[DateGiven]:
    """Those from contexts of a phase, and of no other."""
    own = {context.id for context in page.dig.project.contexts if context.phase == phase.id}
    return [date for date in given(page) if date.contexts and own.issuperset(date.contexts)]


def main_span(dates: Sequence[DateGiven]) -> tuple[int, int] | None:
    """From the first to the last year of the main ranges; None where one of the dates has none."""
    mains = [date.main for date in dates]
    if not mains or any(one is None for one in mains):
        return None
    return min(one.start for one in mains if one), max(one.end for one in mains if one)


def gap_by_dates(page: Page, before: Phase, after: Phase) -> int | None:
    """Years between the main ranges of two phases; None where they meet, or one phase has no such dates."""
    spans = [main_span(dates_of(page, phase)) for phase in (before, after)]
    if spans[0] is None or spans[1] is None or spans[1][0] <= spans[0][1]:
        return None
    return spans[1][0] - spans[0][1]


def _beside_phases(page: Page) -> list[Sentence]:
    """'Four dates of the Late hamlet have their main ranges within cal AD 1265–1310, and of those printed 33% …'"""
    sentences: list[Sentence] = []
    for phase in sampled_phases(page):
        dates = dates_of(page, phase)
        span = main_span(dates)
        is_of_ad = phase.dates.removeprefix("cal ").strip() in ("AD", "CE")
        if span is None or phase.start is None or phase.end is None or not is_of_ad:
            continue
        outside = {date.code: date.outside(phase.start, phase.end) for date in dates}
        most = max(outside, key=lambda code: outside[code])
        many = page.count(len(dates), "radiocarbon date", "radiocarbon dates")
        one_or_all = english.agreed(len(dates), "it", "them")
        has, each = ("has its", "") if len(dates) == 1 else ("have their", ", the most of any one of them")
        beside = (
            f", and of the ranges printed {_percent(outside[most])} ({most}{each}) lies outside the years given to the "
            "phase"
            if outside[most]
            else f", and nothing of what is given of {one_or_all} lies outside the years of the phase"
        )
        years = manner.calibrated(*span, page.audience)
        sentences += page.say(
            refs_of(page, dates),
            f"{many} of {setting.phase_name(phase)} {has} main range{'s' * (len(dates) > 1)} within {years}{beside}",
        )
    return sentences


def crops_dated(page: Page) -> dict[TaxonId, list[DatedFind]]:
    """Crops of which a piece was itself dated, in the order of the list."""
    found: dict[TaxonId, list[DatedFind]] = {}
    for date in given(page):
        find = _find_of(page, date)
        if find is not None and "crop" in find.taxon.tags:
            found.setdefault(find.taxon.id, []).append(find)
    return found


def _find_of(page: Page, date: DateGiven) -> DatedFind | None:
    """The find of the context that bears the name in the account; the longest name that is met."""
    best: tuple[int, Tally, Taxon] | None = None
    for id in date.contexts:
        held = page.dig.found(Subject(level="context", id=id))
        for tally in held.tallies if held is not None else ():
            taxon = page.dig.packs.taxa.get(tally.taxon) if tally.taxon else None
            met = len(_name_met(taxon, date.material)) if taxon is not None else 0
            if taxon is not None and tally.condition in page.dig.ancient and met and (best is None or met > best[0]):
                best = met, tally, taxon
    return DatedFind(date=date, find=best[1], taxon=best[2]) if best is not None else None


def _name_met(taxon: Taxon, text: str) -> str:
    names = (taxon.id, taxon.name, taxon.plural, taxon.trade_name, *taxon.other_names, *taxon.synonyms)
    met = [name for name in names if name and re.search(rf"(?<!\w){re.escape(name)}(?!\w)", text, re.IGNORECASE)]
    return max(met, key=len, default="")


def _crops_dated(page: Page) -> list[Sentence]:
    """'Crops dated themselves … are chenopod of C05 (VRL-0419; …) and common bean of C12 (VRL-0424; …).'"""
    crops = crops_dated(page)
    if not crops:
        return []
    texts = [_crop_told(page, finds) for finds in crops.values()]
    every = [find for finds in crops.values() for find in finds]
    refs = [*refs_of(page, [find.date for find in every]), *(ref for find in every if (ref := find.find.ref))]
    pieces = "a piece of its" if len(every) == 1 else "pieces of its"
    many = page.count(len(texts), f"crop was dated by {pieces}", "crops were dated by pieces of their")
    return page.say(refs, f"{many} own: {page.listed(texts)}")


def _crop_told(page: Page, finds: Sequence[DatedFind]) -> str:
    plant = page.names.plant(finds[0].find.taxon, finds[0].find.written)
    each = [(ids_listed(page, set(find.date.contexts)), find.date.code) for find in finds]
    if len(finds) == 1:
        (where, code), years = each[0], _ranges(page, finds[0].date)
        return f"{plant} of {where} ({'; '.join(part for part in (code, years) if part)})"
    span = main_span([find.date for find in finds])
    years = f", with main ranges within {manner.calibrated(*span, page.audience)}" if span else ""
    return f"{plant} of {page.listed([f'{where} ({code})' for where, code in each])}{years}"


def _ranges(page: Page, date: DateGiven) -> str:
    """'cal AD 1275–1305, 74.7%, or cal AD 1365–1385, 21.0%': the ranges that are more than slight."""
    told = [one for one in date.ranges if one.percent >= SLIGHT] or list(date.ranges)
    shown = [f"{manner.calibrated(one.start, one.end, page.audience)}, {_percent(one.percent)}" for one in told]
    return ", or ".join(shown) or date.age


SLIGHT = 5.0
"""Percent below which a range is left to the list of dates."""


def _near_the_first(page: Page) -> list[Sentence]:
    """A crop that the region has had for no long time, dated itself: the date that others will look for first."""
    sentences: list[Sentence] = []
    for finds in crops_dated(page).values():
        taxon = finds[0].taxon
        first = min(finds, key=lambda find: find.date.main.start if find.date.main else 9999)
        main = first.date.main
        if taxon.earliest is None or main is None or taxon.earliest_known not in ("read", "memory-H", "calc"):
            continue
        if main.start > taxon.earliest + NEAR_THE_FIRST:
            continue
        plant = page.names.plant(first.find.taxon, first.find.written)
        other = [one for one in first.date.ranges if one.start > main.start and one.percent >= SLIGHT]
        ranges = english.agreed(len(other), "range", "ranges")
        rest = f"; by itself it leaves the later {ranges} open" if other else ""
        cited = works_cited(page, taxon.sources[:1])
        by = f"as the list of plants has it{f' ({cited})' if cited else ''}"
        known = f"{plant} is known in the region {manner.since(taxon.earliest, page.audience)} on at the earliest, {by}"
        sentences += page.say(
            [*refs_of(page, [first.date]), *([first.find.ref] if first.find.ref else [])],
            f"{known}, so that this date stands near its beginning there{rest}",
        )
    return sentences


def undated(page: Page, names: Sequence[TaxonId], phase: Phase) -> bool:
    """Whether dates were taken, and none of these plants in a phase."""
    crops = crops_dated(page)
    dated = {id for name in names for find in crops.get(name, ()) for id in find.date.contexts}
    own = {context.id for context in page.dig.project.contexts if context.phase == phase.id}
    return bool(given(page)) and not dated & own


def refs_of(page: Page, dates: Sequence[DateGiven]) -> list[str]:
    """The account of the dates, and the records of the contexts that they are of."""
    ids = dict.fromkeys(id for date in dates for id in date.contexts)
    return [page.record, *(page.dig.record_ref(Subject(level="context", id=id)) for id in ids)]


def _percent(value: float) -> str:
    return f"{value:.1f}%"
