"""By-products of two foods set beside each other by weight, with what a gram of the one is held to be worth."""

from __future__ import annotations

from narrate.model.findings import Tally
from narrate.model.narrative import Sentence
from narrate.model.plants import Exchange
from narrate.telling import english, numbers
from narrate.telling.behind import is_within
from narrate.telling.citations import works_cited
from narrate.telling.finds import grams
from narrate.telling.page import Page


def exchange_sentences(page: Page) -> list[Sentence]:
    """Whether weights of shell rank two nuts as foods, over the whole range of factors that the literature gives."""
    sentences: list[Sentence] = []
    for exchange in page.dig.packs.words.exchanges if not page.is_plain else ():
        one = _weighed(page, exchange.taxon, exchange.part)
        other = _weighed(page, exchange.to_taxon, exchange.to_part)
        if one and other:
            sentences += _compared(page, exchange, one, other)
    return sentences


def _compared(page: Page, exchange: Exchange, one: list[Tally], other: list[Tally]) -> list[Sentence]:
    a, b = _mass(one), _mass(other)
    low, middle, high = (numbers.figure(factor * a / b, 1) for factor in (exchange.low, exchange.factor, exchange.high))
    what, beside = page.names.kind_of_find(one[0]), page.names.kind_of_find(other[0])
    foods = [page.names.food(tallies[0].taxon) for tallies in (one, other)]
    is_least, is_most = bool(_unweighed(page, one)[0]), bool(_unweighed(page, other)[0])
    refs = [t.ref for t in (*one, *other) if t.ref]
    weights = f"{what} weighed {_weight(page, one, a)} against {_weight(page, other, b)} of {beside}"
    unsaid = f"the shells do not say whether {foods[0]} or {foods[1]} mattered more as food"
    if is_least and is_most:
        return page.say(refs, f"{weights}; with so much unweighed {unsaid}")
    # What was not weighed can only add: a sum that leaves some out bounds the other way alone.
    lead = f"so that {unsaid}"
    if exchange.low * a / b > 1 and not is_most:
        lead = f"so that {foods[0]} come before {foods[1]} whatever the factor"
    elif exchange.high * a / b < 1 and not is_least:
        lead = f"so that {foods[1]} come before {foods[0]} whatever the factor"
    come_to = f"{middle} times {foods[1]} ({low} to {high})"
    if is_least:
        come_to = (
            f"at least {middle} times {foods[1]} (at least {low} at {exchange.low:g} and {high} at {exchange.high:g})"
        )
    elif is_most:
        come_to = (
            f"at most {middle} times {foods[1]} (at most {low} at {exchange.low:g} and {high} at {exchange.high:g})"
        )
    cited = works_cited(page, exchange.sources)
    behind = f" ({cited})" if cited else ""
    return page.say(
        refs,
        f"{weights}, yet a gram of it may stand for {exchange.low:g} to {exchange.high:g} times as much food{behind}: "
        f"reckoned at {exchange.factor:g}, {foods[0]} come to {come_to}, {lead}",
    )


def _weight(page: Page, tallies: list[Tally], mass: float) -> str:
    """'14.8 g', and where some were never weighed 'at least 0.45 g (63 of 149 pieces were not weighed)'."""
    unweighed, of = _unweighed(page, tallies)
    if not unweighed:
        return f"{grams(mass)} g"
    were = english.agreed(unweighed, "was", "were")
    return f"at least {grams(mass)} g ({unweighed:,} of {of:,} pieces {were} not weighed)"


def _unweighed(page: Page, tallies: list[Tally]) -> tuple[int, int]:
    """Pieces in rows of the count sheets without a weight, of all pieces counted."""
    places = {place for tally in tallies for place in tally.places}
    rows = [row for row in page.dig.project.counts if row.place in places]
    return sum(row.count.number or 0 for row in rows if row.mass_g is None), sum(t.counted for t in tallies)


def _weighed(page: Page, taxa: tuple[str, ...], parts: tuple[str, ...]) -> list[Tally]:
    found = [t for t in page.found.tallies if t.part in parts and t.mass_g and t.condition in page.dig.ancient]
    taxon_of = page.dig.packs.taxa.get
    return [t for t in found if t.taxon and any(is_within(taxon_of(t.taxon), name, page.dig.packs) for name in taxa)]


def _mass(tallies: list[Tally]) -> float:
    return sum(t.mass_g or 0.0 for t in tallies)
