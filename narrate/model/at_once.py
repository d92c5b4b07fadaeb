"""Jobs that may be done all at once, by whoever was handed in to do so."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any

AtOnce = Callable[[Sequence[Callable[[], Any]]], list[Any]]
"""Does some jobs and gives what each gave, in their order; no job sees what another changes."""


def in_turn(jobs: Sequence[Callable[[], Any]]) -> list[Any]:
    """One job after another."""
    return [job() for job in jobs]
