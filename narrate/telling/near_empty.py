"""Everything that a deposit with next to nothing in it held, as one list."""

from __future__ import annotations

import re
from collections.abc import Sequence

from narrate.model.findings import Tally
from narrate.telling.charcoal import trees_told
from narrate.telling.finds import grams, total
from narrate.telling.old_finds import ancient_tallies, by_plant, is_unknown, is_wood
from narrate.telling.page import Page


def only_text(page: Page) -> tuple[str, list[str]]:
    """Everything that a near-empty deposit held, as a list, with its refs."""
    tallies = [t for t in ancient_tallies(page) if t.counted or t.mass_g is not None or t.is_noted]
    if page.is_plain:
        # A trace that was only weighed or noted, of nobody knows what, says nothing to visitors.
        tallies = [t for t in tallies if t.counted or not is_unknown(page, t)] or tallies
        page.names.has_glosses = False
    refs = [t.ref for t in tallies if t.ref]
    whole = [] if page.is_plain else [t for t in tallies if _is_weight_of_all_wood(page, t)]
    in_all = f", the wood charcoal weighing {grams(whole[0].mass_g)} g in all" if whole and whole[0].mass_g else ""
    tallies = [t for t in tallies if t not in whole]
    if not page.is_plain:
        return _in_full(page, tallies, in_all), refs
    groups = by_plant(page, tallies)
    ordered = [tally for group in groups for tally in group]
    most = 4
    if len(groups) <= most + 1:
        return page.listed(page.names.grouped(ordered, at_most=len(groups))), refs
    others = page.count(len(groups) - most, "other kind", "other kinds")
    return page.listed([*page.names.grouped(ordered, at_most=most), f"finds of {others}"]), refs


def _in_full(page: Page, tallies: Sequence[Tally], in_all: str) -> str:
    """
    Every find for specialists, the wood after the rest: 'one piece of hickory nutshell and nine fragments of wood
    charcoal, 0.26 g in all: hickory (5), pine (2), …'. A lone cupule is news, and is hidden behind no 'other kinds'.
    """
    named = [t for t in tallies if is_wood(page, t) and t.counted and t.condition == "charred"]
    if len({t.taxon for t in named}) < SEVERAL or any(t.only_cf or t.taxon is None for t in named):
        ordered = [t for group in by_plant(page, [t for t in tallies if not is_wood(page, t)]) for t in group]
        ordered += [t for group in by_plant(page, [t for t in tallies if is_wood(page, t)]) for t in group]
        # Nutshell and wood of one tree are told apart, or a reader takes them for one find.
        seeds, woods = [t for t in ordered if not is_wood(page, t)], [t for t in ordered if is_wood(page, t)]
        return page.listed([*_grouped(page, seeds), *_grouped(page, woods)]) + in_all
    rest = [t for t in tallies if t not in named]
    listed = _grouped(page, [t for group in by_plant(page, rest) for t in group])
    fragments = page.count(total(named), "fragment of wood charcoal", "fragments of wood charcoal")
    weight = in_all.replace(", the wood charcoal weighing ", ", ")
    return f"{page.listed([*listed, fragments])}{weight}: {trees_told(page, named)}"


SEVERAL = 2
"""Kinds of wood that are told as one list."""


def _grouped(page: Page, tallies: Sequence[Tally]) -> list[str]:
    return page.names.grouped(tallies, at_most=len(tallies))


_ALL_WOOD = re.compile(r"\ball\b[^.;,]*\b(wood|charcoal)\b", re.IGNORECASE)


def _is_weight_of_all_wood(page: Page, tally: Tally) -> bool:
    """
    Whether a weight stands for all the wood of a deposit, the fragments that were named and counted among it.

    Then it is no find beside them. Only what the laboratory noted says so, in every row of the weight.
    """
    if not is_wood(page, tally) or tally.counted or not tally.mass_g or not is_unknown(page, tally):
        return False
    if not any(t.counted for t in ancient_tallies(page) if is_wood(page, t)):
        return False
    rows = [row for rows in page.dig.notes.values() for row in rows if row.place in tally.places]
    return len(rows) == len(tally.places) and all(_ALL_WOOD.search(row.note) for row in rows)
