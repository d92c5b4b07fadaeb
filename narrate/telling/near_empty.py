"""Everything that a deposit with next to nothing in it held, as one list."""

from __future__ import annotations

import re

from narrate.model.findings import Tally
from narrate.telling.finds import grams
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
    groups = by_plant(page, tallies)
    ordered = [tally for group in groups for tally in group]
    most = 4 if page.is_plain else 6
    if len(groups) <= most + 1:
        return page.listed(page.names.grouped(ordered, at_most=len(groups))) + in_all, refs
    others = page.count(len(groups) - most, "other kind", "other kinds")
    return page.listed([*page.names.grouped(ordered, at_most=most), f"finds of {others}"]) + in_all, refs


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
