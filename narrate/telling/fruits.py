"""Seeds of fruit as fruits: one of them may hold many, so that many seeds may be of few."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

from narrate.model.claims import Claim
from narrate.model.findings import Tally
from narrate.model.narrative import Sentence
from narrate.model.plants import seeds_in_one_fruit
from narrate.telling import english
from narrate.telling.behind import heaviest, remains_counted
from narrate.telling.finds import total
from narrate.telling.page import Page

DOZENS, HUNDRED = 20, 100
"""Seeds of one fruit from which their number is told in round words; that it is from memory stands in the packs."""
MANY_KINDS = "food.fruit_of_many_kinds"
"""The rule by which many seeds speak for fruit as food."""
FEW = 10
"""Fruits below which seeds are told to be of few: the limit of readings of few items."""


def chief_finds(page: Page, claim: Claim) -> list[Tally]:
    """What the arguments count that speak most for a claim, each find once."""
    tallies = [t for t in page.found.tallies if t.condition in page.dig.ancient]
    counted = (t for a in heaviest(claim) for t in remains_counted(a, page.dig.packs, tallies) if t.counted)
    return list({tally.ref: tally for tally in counted}.values())


def least_fruits(page: Page, tallies: Iterable[Tally]) -> int:
    """The fewest items, fruits for seeds of which one holds many, that could have left what was found."""
    found: dict[tuple[str, int], int] = {}
    for tally in tallies:
        seeds = seeds_in_one_fruit(page.dig.packs.taxa, tally.taxon, tally.part)
        key = (str(tally.taxon) if seeds > 1 else "", seeds)
        found[key] = found.get(key, 0) + tally.counted
    return sum(math.ceil(items / seeds) for (_, seeds), items in found.items())


def few_fruits_sentences(page: Page, claims: Sequence[Claim]) -> list[Sentence]:
    """'One persimmon may hold up to eight seeds and one grape up to four, so that these may be of two fruits'."""
    if page.subject.level in ("phase", "site"):
        return []
    found = [(claim, chief_finds(page, claim)) for claim in claims]
    few = [(c, tallies) for c, tallies in found if _held(page, tallies) and _is_of_few(page, tallies)]
    if not few or page.is_plain:
        return _for_visitors(page, few)
    claim, tallies = few[0]
    held, of = _held(page, tallies), page.count(least_fruits(page, tallies), "fruit", "fruits")
    return page.say(
        [claim.id],
        f"{page.listed(held[:2])}, so that these {page.count(total(tallies))} seeds may be of no more than {of}",
        f"these {page.count(total(tallies))} seeds may be of no more than {of}, for {page.listed(held[:2])}",
    )


def _is_of_few(page: Page, tallies: Sequence[Tally]) -> bool:
    return least_fruits(page, tallies) < min(FEW, total(tallies))


def _for_visitors(page: Page, few: Sequence[tuple[Claim, Sequence[Tally]]]) -> list[Sentence]:
    """'But one fruit can hold many seeds, so the elderberry seeds may come from just two fruits, and …'."""
    if not few or page.has_told("one fruit can hold"):
        return []
    parts: dict[str, str] = {}
    for _, tallies in few:
        # Of one plant the seeds are named: 'these' might point at those of another season.
        is_one = len({(t.taxon, t.part) for t in tallies}) == 1
        seeds = f"the {page.names.remains(tallies[0], with_number=False, latin=False)}" if is_one else "these"
        fruits = least_fruits(page, tallies)
        of = page.count(fruits) if parts else page.count(fruits, "fruit", "fruits")
        parts.setdefault(seeds, f"{seeds} {'' if parts else 'may come '}from just {of}")
    told = ", and ".join(list(parts.values())[:2])
    return page.say([claim.id for claim, _ in few], f"but one fruit can hold many seeds, so {told}")


def _held(page: Page, tallies: Sequence[Tally]) -> list[str]:
    """'one persimmon may hold up to eight seeds', 'one grape up to four', of the plants with most seeds first."""
    told: list[str] = []
    for tally in sorted(tallies, key=lambda t: -t.counted):
        most = seeds_in_one_fruit(page.dig.packs.taxa, tally.taxon, tally.part)
        if most == 1 or tally.only_cf:
            continue
        number = f"up to {page.count(most)}" if most < DOZENS else "dozens" if most < HUNDRED else "a hundred or more"
        many = "" if told else " of seeds" if number == "dozens" else " seeds"
        holds = "" if told else " may hold"
        told.append(f"one {english.lowered(page.names.plant(tally.taxon, tally.written))}{holds} {number}{many}")
    return list(dict.fromkeys(told))
