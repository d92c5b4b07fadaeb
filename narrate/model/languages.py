"""What telling needs of a language: its words and tables as data, and the phrases that claim more than is known."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from narrate.model.claims import Grade
from narrate.model.ids import PartId, RuleId, StatementId, TaxonId
from narrate.problems import Place

Gender = Literal["", "f", "m"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Overclaim:
    """A manner of speaking, and the firmest that it may be used of."""

    pattern: str
    """A regular expression, read without regard to case, at the borders of words."""
    sort: str
    """certainty, grade, absence, eating or season."""
    needs: Grade | None = None
    """The grade from which it is fair; None: no grade allows it."""
    why: str
    instead: str
    """What may be written in its place."""
    place: Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Noun:
    """A name in a language: one, many, and its gender where the language has one."""

    one: str
    many: str = ""
    gender: Gender = ""
    is_mass: bool = False
    """Told in the singular however much there is of it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Language:
    """
    One language, from all files of `packs/languages/<id>/`.

    English has its grammar in `telling.english` and its words in every pack; any other language has both here.
    """

    id: str
    title: str = ""
    overclaims: tuple[Overclaim, ...] = ()
    negations: tuple[str, ...] = ()
    """Words that take back what follows: 'no', 'cannot'."""
    numbers: tuple[str, ...] = ()
    """Names of the numbers from 0 on; above them figures are written."""
    grammar: Mapping[str, str] = field(default_factory=dict)
    """Tables of the grammar by name: articles, joining words, contractions."""
    plants: Mapping[TaxonId, Noun] = field(default_factory=dict)
    described: Mapping[TaxonId, str] = field(default_factory=dict)
    """What is said in brackets of a plant that has no name in the language and is told by its Latin one."""
    parts: Mapping[PartId, Noun] = field(default_factory=dict)
    kinds: Mapping[str, Noun] = field(default_factory=dict)
    statements: Mapping[StatementId, str] = field(default_factory=dict)
    """Statement -> its clause for visitors, with a person and an action."""
    reasons: Mapping[RuleId, str] = field(default_factory=dict)
    """Rule -> what it saw, as a clause for visitors."""
    sentences: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    """What can be said -> its wordings, with holes to be filled."""
    number_words: Mapping[str, int] = field(default_factory=dict)
    """Words of numbers that are added up, with their value."""
    number_times: Mapping[str, int] = field(default_factory=dict)
    """Words that multiply what stands before them: 'hundred'."""
    typed: Mapping[str, str] = field(default_factory=dict)
    """How figures are written by hand, as regular expressions: units, months, words of doubt."""
