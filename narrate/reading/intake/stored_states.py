"""Totals that leave out what is not charred, or what is broken: readings that hold where most of a line agrees."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from typing import NotRequired, Protocol, TypedDict

from narrate.model.ids import PartId
from narrate.model.packs import Packs
from narrate.reading.intake.sheet_finds import Find
from narrate.reading.intake.stored_groups import Answer


class Belongs(Protocol):
    """What answers whether a find belongs to what is added up."""

    def holds(self, find: Find) -> Answer: ...


class OfState:
    """The finds of a group, or all, that are charred, or whole, or pieces, or in one condition."""

    def __init__(
        self, within: Belongs | None, *, charred: bool, whole: bool, pieces: bool = False, condition: str = ""
    ) -> None:
        self.within, self.charred, self.whole, self.pieces, self.condition = within, charred, whole, pieces, condition

    def holds(self, find: Find) -> Answer:
        if self.charred and find.condition not in ("charred", "partly charred"):
            return "no"
        if self.condition and find.condition != self.condition:
            return "no"
        if (self.whole and find.completeness == "fragment") or (self.pieces and find.completeness != "fragment"):
            return "no"
        return self.within.holds(find) if self.within is not None else "yes"


class State(TypedDict):
    """What a way to leave finds out asks of those that are added."""

    charred: bool
    whole: bool
    pieces: NotRequired[bool]
    condition: NotRequired[str]


def states_of(finds: Iterable[Find]) -> Mapping[str, State]:
    """The ways to leave finds of a table out of its totals: what is told of each -> what it asks for."""
    conditions, pieces = set(), set()
    for find in finds:
        conditions.add(find.condition)
        pieces.add(find.completeness)
    ways: dict[str, State] = {}
    has_others = "charred" in conditions and len(conditions - {"charred", "partly charred"}) > 0
    if has_others:
        ways["what is not charred left out"] = {"charred": True, "whole": False}
        for condition in sorted(conditions - {"charred", ""}):
            ways[f"what is not {condition} left out"] = {"charred": False, "whole": False, "condition": condition}
    if {"whole", "fragment"} <= pieces:
        ways["fragments left out"] = {"charred": False, "whole": True}
        ways["all but fragments left out"] = {"charred": False, "whole": False, "pieces": True}
        if has_others:
            ways["fragments and what is not charred left out"] = {"charred": True, "whole": True}
            ways["all but charred fragments left out"] = {"charred": True, "whole": False, "pieces": True}
    return ways


SEEDS = re.compile(
    r"(?:seeds?|grains?|fruits?|nuts?|nutlets?|caryopses|achenes|samen|körner|früchte|graines?|semences|semillas|granos|frutos|semi|frutti|cariossidi"
    r"|zaden|vruchten|granen|korrels|nasiona|owoce|ziarniaki)",
    re.IGNORECASE,
)
"""Words of a total that is of all that is sown or eaten, and of no chaff."""


class ButChaff:
    """All finds that are no chaff, straw, wood or dung: what 'seeds and grains' means beside a total of chaff."""

    def __init__(self, packs: Packs) -> None:
        self.packs = packs

    def holds(self, find: Find) -> Answer:
        known = self.packs.words.parts.get(PartId(find.part))
        roles: frozenset[str] = known.roles if known is not None else frozenset()
        return "no" if (roles & {"chaff", "straw", "wood", "dung"}) and "edible" not in roles else "yes"
