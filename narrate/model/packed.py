"""Texts and bytes that are read once, late: kept small until then."""

from __future__ import annotations

import zlib
from collections.abc import Iterable
from dataclasses import dataclass

_QUICK = 1
"""How hard it is tried: as quick as it goes, for tables and lists a tenth of their size all the same."""


@dataclass(frozen=True, slots=True)
class Packed:
    """
    Bytes kept compressed.

    >>> kept = Packed.of([b"12,Zea mays\\n"] * 1000)
    >>> kept.size, len(kept.raw) < 200, kept.content == b"12,Zea mays\\n" * 1000
    (12000, True, True)
    """

    raw: bytes
    size: int
    """Of the content, in bytes."""

    @classmethod
    def of(cls, pieces: Iterable[bytes]) -> Packed:
        """The pieces one after the other; none of them is held."""
        packer, packed, size = zlib.compressobj(_QUICK), list[bytes](), 0
        for piece in pieces:
            size += len(piece)
            packed.append(packer.compress(piece))
        return cls(b"".join((*packed, packer.flush())), size)

    @property
    def content(self) -> bytes:
        """What was packed, unpacked anew each time."""
        return zlib.decompress(self.raw, bufsize=max(self.size, 1))
