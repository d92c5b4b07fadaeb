"""What charts are made of: blocks, strokes, marks and words, in units of the svg, y downwards."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """A rectangle: a bar, or a stretch of months."""

    x: float
    y: float
    width: float
    height: float
    ink: str
    hatch: str = ""
    """Lines in the colour of the ground over the ink. Lines only: dots and circles make huge files."""
    is_open: bool = False
    """Outline only."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Stroke:
    """A line through two or more points."""

    points: tuple[tuple[float, float], ...]
    ink: str = "soft"
    width: float = 1.0
    dash: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Patch:
    """A closed shape of any outline, such as a month of a ring."""

    points: tuple[tuple[float, float], ...]
    ink: str
    hatch: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """A point, told apart by shape and ink."""

    x: float
    y: float
    shape: str = "circle"
    ink: str = "charcoal"
    is_open: bool = False
    size: float = 5.0
    """Half its width."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Words:
    """One line of text on its base line. Between ITALIC and ROMAN it is set in italics."""

    x: float
    y: float
    text: str
    ink: str = "ink"
    size: float = 13.0
    anchor: str = "left"
    """left, center or right."""
    is_bold: bool = False
    angle: float = 0.0
    """Degrees against the clock."""


ITALIC, ROMAN = "\ue000", "\ue001"
"""Marks of private use around Latin names; taken out of everything that a person wrote."""

Shape = Block | Patch | Stroke | Mark | Words
