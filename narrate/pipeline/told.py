"""What came of `narrate tell`, in short."""

from __future__ import annotations

from dataclasses import dataclass

from narrate.problems import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    problems: tuple[Problem, ...]
    is_written: bool
    is_busy: bool = False
    """Nothing was written because another run is writing."""
    is_partly: bool = False
    """Not all was written: writing had begun when it was stopped. Every single file is whole, old or new."""
    contexts: int = 0
    samples: int = 0
    claims: int = 0
