"""The inks that charts are drawn with: charred specks and field colours on pale paper, and the same on dark ground."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Ink:
    """One colour by its use. Pages may set the property; the light colour stands in where they do not."""

    property: str
    """CSS custom property, such as '--chart-1'."""
    light: str
    """On pale paper; at least 3:1 against the light ground. Doubles as the marker that the svg is drawn with."""
    dark: str
    """On dark ground; at least 3:1 against it."""


# Every mark keeps 3:1 and every text 4.5:1 against the ground in both modes (WCAG 2.2, 1.4.3 and 1.4.11), so a
# hatch drawn in the ground colour over a mark keeps 3:1 as well.
INKS: dict[str, Ink] = {
    "ground": Ink(property="--chart-ground", light="#faf6ed", dark="#1d1a17"),
    "ink": Ink(property="--chart-ink", light="#2a2521", dark="#efe8db"),
    "soft": Ink(property="--chart-soft", light="#6a6056", dark="#b3a89a"),
    "faint": Ink(property="--chart-faint", light="#ded6c7", dark="#3b3631"),
    "charcoal": Ink(property="--chart-1", light="#4b443d", dark="#cbbfb0"),
    "clay": Ink(property="--chart-2", light="#ad5230", dark="#e39166"),
    "leaf": Ink(property="--chart-3", light="#58722f", dark="#a5c26d"),
    "berry": Ink(property="--chart-4", light="#8b3060", dark="#dd8db3"),
    "ochre": Ink(property="--chart-5", light="#a2741a", dark="#deb352"),
    "creek": Ink(property="--chart-6", light="#3c6a82", dark="#88b8cf"),
}

SERIES = ("charcoal", "clay", "leaf", "berry", "ochre", "creek")
SHAPES = ("circle", "diamond", "square", "triangle", "cross", "wedge", "hexagon")
"""As many as SERIES plus one, so that shape and ink together repeat only after 42."""


def series(number: int) -> tuple[str, str]:
    """Ink and shape of a series by its number: they never tell apart by colour alone."""
    return SERIES[number % len(SERIES)], SHAPES[number % len(SHAPES)]


def stylesheet(scheme: str) -> str:
    """The custom properties of one scheme, 'light' or 'dark', as CSS declarations for a page that wants to set them."""
    return " ".join(f"{ink.property}: {ink.dark if scheme == 'dark' else ink.light};" for ink in INKS.values())


def with_fixed_inks(svg: str, scheme: str = "light") -> str:
    """The svg with plain colours of one scheme, for documents whose readers know no custom properties."""
    for ink in INKS.values():
        svg = svg.replace(f"var({ink.property},{ink.light})", ink.dark if scheme == "dark" else ink.light)
    return svg
