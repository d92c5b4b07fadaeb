"""A ratio of weights held like with like: what it is without pieces of size classes in which the second has no weight."""

from __future__ import annotations

from collections.abc import Iterable

from narrate.model.claims import Argument
from narrate.model.counts import CountRow
from narrate.model.findings import Tally
from narrate.telling import numbers
from narrate.telling.behind import bounds_of, is_meant
from narrate.telling.page import Page


def held_like_with_like(page: Page, argument: Argument, text: str) -> str:
    """
    'nutshell weighs 0.58 g to a gram of wood charcoal (0.53 for size classes weighed of both)'.

    Only where every weight of the second names its size class: a weight without one may be of all of them.
    """
    rule = page.dig.packs.rules.get(argument.rule)
    if page.is_plain or not page.audience.shows_figures or rule is None:
        return text
    for bound in bounds_of(rule.criteria):
        if bound.measure != "mass_ratio" or bound.of is None or bound.to is None:
            continue
        told = page.found.tallies
        first = _weighed(page, (t for t in told if is_meant(bound.of, t, page.dig.packs)))
        second = _weighed(page, (t for t in told if is_meant(bound.to, t, page.dig.packs)))
        classes = {row.size_class for row in second}
        if not second or "" in classes:
            continue
        unlike = [row for row in first if row.size_class and row.size_class not in classes]
        if not unlike or len(unlike) == len(first):
            continue
        left, of = _sum(row for row in first if row not in unlike), _sum(second)
        value = numbers.figure(left / of, 2)
        return f"{text} ({value} for size classes weighed of both)"
    return text


def _weighed(page: Page, tallies: Iterable[Tally]) -> list[CountRow]:
    places = {place for tally in tallies if tally.condition in page.dig.ancient for place in tally.places}
    return [row for row in page.dig.project.counts if row.place in places and row.mass_g]


def _sum(rows: Iterable[CountRow]) -> float:
    return sum((row.mass_g or 0.0) / row.proportion_sorted for row in rows)
