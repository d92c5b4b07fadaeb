"""What came of `narrate tell`, in short."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

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


def in_short(told: Told, folder: Path) -> str:
    """What was told and where it lies, in the lines that the command line gives."""
    return (
        f"{many(told.samples, 'sample')} from {many(told.contexts, 'context')}; "
        f"{many(told.claims, 'claim')} in force. {summed(told.problems)}\n"
        f"for the team:    {folder / 'out' / 'review' / 'index.html'}\n"
        f"for the public:  {folder / 'out' / 'public' / 'index.html'}\n"
        f"every claim:     {folder / 'out' / 'claims.json'}"
    )


def many(number: int, what: str) -> str:
    """
    A number of things.

    >>> many(1, "sample"), many(1200, "claim")
    ('1 sample', '1,200 claims')
    """
    return f"{number:,} {what}{'s' * (number != 1)}"


def summed(problems: Iterable[Problem]) -> str:
    """How many errors and warnings there are."""
    severities = [problem.severity for problem in problems]
    errors, warnings = severities.count("error"), severities.count("warning")
    if not severities:
        return "No problems found."
    return f"{many(errors, 'error')}, {many(warnings, 'warning')}."
