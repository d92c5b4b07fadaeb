"""What was worked out before, asked for by a key."""

from __future__ import annotations

from typing import Protocol


class Kept(Protocol):
    """Values by a key of sixteen bytes, of this run and the one before."""

    now: dict[bytes, bytes]

    def found(self, key: bytes) -> bytes | None: ...

    def add(self, key: bytes, value: bytes) -> None: ...
