"""A sequence whose parts are made when somebody reads them."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from typing import TypeVar, overload

Part = TypeVar("Part")


class Late(Sequence[Part]):
    """
    As many parts as `length`; `make` gives each of them when it is first read, and it is kept as long as this is.

    >>> late = Late(3, lambda at: at * at)
    >>> late[-1], late == (0, 1, 4), len(late)
    (4, True, 3)
    """

    __slots__ = ("_made", "_make")

    def __init__(self, length: int, make: Callable[[int], Part]) -> None:
        self._make = make
        self._made: list[Part | None] = [None] * length

    def __len__(self) -> int:
        return len(self._made)

    def __iter__(self) -> Iterator[Part]:
        return (self[at] for at in range(len(self._made)))

    @overload
    def __getitem__(self, at: int) -> Part: ...
    @overload
    def __getitem__(self, at: slice) -> Sequence[Part]: ...
    def __getitem__(self, at: int | slice) -> Part | Sequence[Part]:
        if isinstance(at, slice):
            return tuple(self[one] for one in range(*at.indices(len(self._made))))
        found = self._made[at]
        if found is None:
            found = self._made[at] = self._make(range(len(self._made))[at])
        return found

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Sequence) and len(other) == len(self) and tuple(self) == tuple(other)

    def __hash__(self) -> int:
        return hash(tuple(self))

    def __repr__(self) -> str:
        return repr(tuple(self))
