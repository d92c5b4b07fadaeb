"""Long lists, cut into pages that a phone can hold."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType
from typing import Generic, TypeVar

AT_ONCE = 250
"""Entries on one page of a list."""

MOST_SHOWN: Mapping[str, int] = MappingProxyType(
    {"queued": 60, "held": 25, "claims": 200, "ranked": 100, "matrix": 100, "contexts": 60, "layer": 24, "labels": 60}
)
"""Entries of a list that is part of a page; of more the page says so, and where all of them are."""

One = TypeVar("One")


@dataclass(frozen=True, slots=True, kw_only=True)
class ListView(Generic[One]):
    """One page of a list."""

    id: str
    """Its number, counted from 1."""
    items: tuple[One, ...]
    of: int
    """Entries of the whole list."""
    pages: int


def list_names(entries: int) -> dict[str, str]:
    """
    File names of the pages of a list; a list without entries has its first page all the same.

    >>> list_names(0), list_names(251)
    ({'1': 'index'}, {'1': 'index', '2': 'page-2'})
    """
    pages = max(1, -(-entries // AT_ONCE))
    return {str(number): "index" if number == 1 else f"page-{number}" for number in range(1, pages + 1)}


def cut(entries: Sequence[One]) -> tuple[ListView[One], ...]:
    """The list in pages, in its own order."""
    names = list_names(len(entries))
    return tuple(
        ListView(
            id=id,
            items=tuple(entries[(int(id) - 1) * AT_ONCE : int(id) * AT_ONCE]),
            of=len(entries),
            pages=len(names),
        )
        for id in names
    )
