"""`narrate check`: every problem at once."""

from __future__ import annotations

from pathlib import Path

from narrate.disclosure import disclosed
from narrate.pipeline.editions import all_told, with_those_of_drafts
from narrate.pipeline.judged import judged, read
from narrate.problems import Problem, has_errors


def check(folder: Path, *, strict: bool = False) -> tuple[Problem, ...]:
    """All problems: of records, sheets and rules, and of what the analyst edited or approved."""
    reading = read(folder, strict=strict)
    if reading.project is None or reading.packs is None or has_errors(reading.problems):
        return reading.problems
    if not (folder / "narratives").is_dir():
        return reading.problems
    whole = judged(reading.project, reading.packs)
    told = all_told(folder, whole, judged(disclosed(reading.project), reading.packs))
    return with_those_of_drafts(reading.problems, told.values(), strict=strict)
