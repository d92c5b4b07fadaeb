"""Photographs that a record lists."""

from __future__ import annotations

from dataclasses import dataclass

from narrate.problems import Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Image:
    file: str
    """Path relative to the project folder."""
    caption: str
    credit: str
    alt: str
    place: Place
