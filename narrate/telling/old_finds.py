"""The finds of a subject: those of old plants, wood apart or with it, and by plant."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.findings import Tally
from narrate.telling.finds import total
from narrate.telling.page import Page
from narrate.telling.plant_names import UNKNOWN


def ancient_tallies(page: Page) -> list[Tally]:
    """Tallies in the conditions that are old under the project's preservation, most items first."""
    return [tally for tally in page.found.tallies if tally.condition in page.dig.ancient]


def plant_tallies(page: Page) -> list[Tally]:
    """Old remains other than wood."""
    return [tally for tally in ancient_tallies(page) if not is_wood(page, tally)]


def is_wood(page: Page, tally: Tally) -> bool:
    part = page.dig.packs.words.parts.get(tally.part)
    return part is not None and "wood" in part.roles


def has_wood(page: Page) -> bool:
    """Whether any old wood was counted or weighed."""
    return any(t.counted or t.mass_g for t in ancient_tallies(page) if is_wood(page, t))


def by_plant(page: Page, tallies: Sequence[Tally]) -> list[list[Tally]]:
    """Tallies by plant, most items first, those that could not be identified last."""
    groups: dict[str, list[Tally]] = {}
    for tally in tallies:
        plant = page.names.plant(tally.taxon, tally.written)
        key = f"{plant} {tally.part}" if plant in UNKNOWN else f"{tally.taxon or tally.written}"
        groups.setdefault(key, []).append(tally)
    return sorted(groups.values(), key=lambda group: (is_unknown(page, group[0]), -total(group)))


def is_unknown(page: Page, tally: Tally) -> bool:
    """Whether nobody could name the plant."""
    return page.names.plant(tally.taxon, tally.written) in UNKNOWN
