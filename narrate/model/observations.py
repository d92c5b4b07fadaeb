"""What people noted in words, and what other digs published: told beside what was counted, weighed if a rule asks."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from narrate.model.ids import SourceKey, StatementId
from narrate.model.rules import Selector
from narrate.problems import Place

NotedOf = Literal["ground", "find", "heavy"]
"""
Of the ground: descriptions and notes of contexts and samples. Of a find: the notes of count sheets. Heavy: the names of
what colleagues found in heavy fractions.
"""
ToldWith = Literal["readings", "finds"]
"""Beside the readings that a note bears on, or with the list of finds, whatever is read of the deposit."""
TOLD_WITH: tuple[ToldWith, ...] = ("readings", "finds")
NOTED_OF: tuple[NotedOf, ...] = ("ground", "find", "heavy")


@dataclass(frozen=True, slots=True, kw_only=True)
class Observation:
    """A sign that people put into words, and the statements that it agrees with or speaks against."""

    id: str
    noted_of: NotedOf
    phrases: tuple[str, ...]
    """Words as people write them; a word that ends in '*' takes any ending."""
    of: Selector | None = None
    """Of a find: which finds are meant; None: any."""
    agrees_with: tuple[StatementId, ...] = ()
    against: tuple[StatementId, ...] = ()
    not_against: tuple[StatementId, ...] = ()
    """Statements that a reader may take it to speak against, and that it leaves as they are, for what it means."""
    told_with: ToldWith = "readings"
    means: str = ""
    """Why it bears on them, as a clause that can follow 'because': 'earth reddens where it is heated'."""
    plain: str = ""
    """The same for visitors, a person and an action: 'the diggers saw earth that fire had turned red'."""
    wanting: str = ""
    """What it means that no note of a phase or dig has it, as a clause: told where what it agrees with is read."""
    known: str = "convention"
    sources: tuple[SourceKey, ...] = ()
    place: Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Elsewhere:
    """In what share of the flotation samples of other digs of the region a thing was found, as published."""

    id: str
    name: str
    """'hickory nutshell'."""
    of: Selector
    where: str
    """'three later villages of the North Carolina Piedmont'."""
    sites: Mapping[str, float]
    """Site -> share of its flotation samples, 0 to 1."""
    regions: tuple[str, ...] = ()
    """Region packs in which the comparison is fair; empty: all."""
    known: str = "memory-M"
    sources: tuple[SourceKey, ...] = ()
    place: Place
