"""`narrate check`: every problem at once, and how the words stand."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from narrate.judging.kept_units import KeptUnits
from narrate.model.standing import Standing
from narrate.pipeline.editions import all_told, with_those_of_drafts
from narrate.pipeline.judged import disclosed_part, judged, read
from narrate.problems import Problem, has_errors


@dataclass(frozen=True, slots=True, kw_only=True)
class Checked:
    problems: tuple[Problem, ...]
    words: str = ""
    """Who said what, one line an audience; empty where there are no narratives yet."""


def check(folder: Path, *, strict: bool = False) -> tuple[Problem, ...]:
    """All problems: of records, sheets and rules, and of what the analyst edited or approved."""
    return checked(folder, strict=strict).problems


def checked(folder: Path, *, strict: bool = False) -> Checked:
    """The same, and how the words stand."""
    reading = read(folder, strict=strict)
    if reading.project is None or reading.packs is None or has_errors(reading.problems):
        return Checked(problems=reading.problems)
    if not (folder / "narratives").is_dir():
        return Checked(problems=reading.problems)
    kept = KeptUnits()
    whole = judged(reading.project, reading.packs, kept=kept)
    told = all_told(folder, whole, disclosed_part(whole, kept=kept))
    return Checked(
        problems=with_those_of_drafts(reading.problems, told.values(), strict=strict),
        words="\n".join(standing_text(a, s) for part in told.values() for a, s in part.standings.items()),
    )


def standing_text(audience: str, standing: Standing) -> str:
    """One line: how much is drafted, edited, approved, and what waits for a person."""
    hers = standing.edited + standing.own
    parts = [
        f"{hers} in the analyst's words",
        f"{standing.approved} approved",
        f"{standing.waiting} not approved",
        *([f"{standing.stale} stale"] if standing.stale else []),
        *([f"{standing.lapsed} approval{'s' * (standing.lapsed != 1)} lapsed"] if standing.lapsed else []),
    ]
    told = f"{standing.sentences:,} sentences in {standing.narratives} narratives"
    return f"words for {audience}: {told}: {', '.join(parts)}"
