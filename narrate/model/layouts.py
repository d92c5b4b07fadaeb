"""How a laboratory's sheet is laid out: a role for each row and column, and what its signs mean."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from narrate.problems import Place

Shape = Literal["crossed", "long", "records"]
"""crossed: taxa against samples, either way; long: one row a find; records: one row a sample, no finds."""

SAMPLE_ROLES = (
    "sample", "context", "feature", "phase", "site", "kind", "deposit", "description", "volume", "flot volume", "flot mass",
    "sorted", "method", "sample note",
)  # fmt: skip
"""What a row or column may say of the samples."""
TAXON_ROLES = ("taxon", "genus", "epithet", "cf", "family", "common name", "authority", "code", "group", "taxon note")
"""What a row or column may say of the taxa."""
FIND_ROLES = ("part", "condition", "completeness", "size class", "fraction", "quantity", "note")
"""What a row or column may say of single finds; it may run along the samples or along the taxa."""
AMOUNT_ROLES = ("counts", "count", "mass", "finds")
"""'counts': cells of a crossed table; 'count' and 'mass': columns of a long form; 'finds': its rows."""
DERIVED_ROLES = ("total", "percent", "density", "ubiquity", "derived")
OTHER_ROLES = ("title", "header", "section", "blank", "notes", "not plants", "ignored")
ROLES = (*SAMPLE_ROLES, *TAXON_ROLES, *FIND_ROLES, *AMOUNT_ROLES, *DERIVED_ROLES, *OTHER_ROLES)

PERCENT, SHARE = "%", "share"
"""Scales of what was sorted, behind the role: 'sorted, %' and 'sorted, share' (of one)."""
PERCENT_OR_SHARE, SHARE_OR_PERCENT = "% or share", "share or %"
"""The same where numbers up to one, or above one, gainsay the scale that the head names: those are not taken."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Role:
    """What one row or column is."""

    name: str
    also: tuple[str, ...] = ()
    """Further roles: 'sample and context'."""
    qualifiers: tuple[str, ...] = ()
    """Behind a comma: a unit ('volume, ml'), or what is true of all its cells ('counts, fragment', 'count, >2 mm')."""
    filled: bool = False
    """A blank in it means the same as the cell before: 'sample, filled'."""

    @property
    def names(self) -> tuple[str, ...]:
        return (self.name, *self.also)

    def __str__(self) -> str:
        return ", ".join([" and ".join(self.names), *self.qualifiers, *(["filled"] if self.filled else [])])


@dataclass(frozen=True, slots=True, kw_only=True)
class Marks:
    """What the signs of a sheet mean, by its own key or by the analyst's word."""

    key: Mapping[str, str] = field(default_factory=dict)
    """Sign -> present, absent, not looked for, or a range such as 1-5 or >100."""
    footnotes: Mapping[str, str] = field(default_factory=dict)
    """Sign beside an amount or a name -> what the footnote says: '*' -> uncharred."""
    blank: Literal["absent", "not looked for"] = "absent"
    decimal: Literal[".", ","] = "."
    slash: Literal["", "whole/fragment", "fragment/whole"] = ""
    """What 1/6 means; empty: nobody has said."""
    brackets: str = "note"
    """
    What the 3 of '12 (3)' is: kept as a note, fragments beside them, more of the same, or, in '12 (2 uncharred)', two
    of the twelve; a condition such as 'uncharred' where three more are in it; 'of which uncharred' where three of the
    twelve are; 'aside': like a note, and '(3)' alone is presence.
    """
    estimates: Literal["counted", "present"] = "counted"
    """How 'c. 200' is taken."""
    halves: Literal["", "fragment"] = ""
    """What the half of 4.5 is: a piece beside four whole ones; empty: nobody has said."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """One table of a sheet."""

    sheet: str = ""
    shape: Shape
    rows: Mapping[int, Role]
    """Row, counted from 0 -> its role. Rows that are not named are no part of the table."""
    columns: Mapping[int, Role]
    marks: Marks = Marks()
    parts: Mapping[str, str] = field(default_factory=dict)
    """Part where the sheet names none: 'any', a tag of the packs or a taxon -> part."""
    condition: str = "charred"
    """Condition where the sheet names none."""
    about: Mapping[str, str] = field(default_factory=dict)
    """'sample', 'volume, l' and the like -> the cell that says it of all finds of the table, as forms have it."""
    ids: Mapping[str, str] = field(default_factory=dict)
    """Key of a sample as written -> the id that the sample is known by, where a database joins its sheets by keys."""

    @property
    def has_samples_across(self) -> bool:
        """True where samples are columns."""
        return any(set(role.names) & {"sample"} for role in self.rows.values())


@dataclass(frozen=True, slots=True, kw_only=True)
class Layout:
    """All tables of one file, and what an analyst said about single names and cells."""

    tables: tuple[Table, ...]
    names: Mapping[str, str] = field(default_factory=dict)
    """Name or code as written -> the name that it stands for."""
    conditions: Mapping[str, str] = field(default_factory=dict)
    """Word for a condition as the sheet writes it -> the condition that it stands for."""
    mend: Mapping[str, str] = field(default_factory=dict)
    """'Sheet!H4' or 'H4' -> what was typed there."""
    left_out: tuple[str, ...] = ()
    """What is not read, and why, in words."""
    place: Place = Place(path="")
