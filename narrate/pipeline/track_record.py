"""`narrate check --track-record`: how often claims under a project's rules are right on simulated digs."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path

from narrate.deposit.track_record_file import plain_track_record
from narrate.pipeline.judged import Progress, read, silent
from narrate.problems import Problem, has_errors
from narrate.telling.track_record import track_record_text
from narrate.trials.run import REGIONS, track_record


@dataclass(frozen=True, slots=True, kw_only=True)
class Tried:
    """The record, as text and plain data, or why there is none."""

    text: str = ""
    plain: Mapping[str, object] = field(default_factory=dict)
    refusal: str = ""
    problems: tuple[Problem, ...] = ()


def tried(folder: Path, *, digs: int = 100, progress: Progress = silent) -> Tried:
    """
    The rules in force in a project, its own among them, tried on simulated digs of its region.

    digs:  usual digs of 20 contexts each; a third as many of every other sort.
    """
    reading = read(folder)
    if reading.packs is None or has_errors(reading.problems):
        return Tried(problems=reading.problems)
    packs = reading.packs
    regions = [region for region in packs.regions if region in REGIONS]
    if not regions:
        return Tried(refusal=f"there are simulated digs of {', '.join(REGIONS)}; expected one of them as the region")
    record = track_record({region: packs for region in regions}, digs=digs, progress=progress)
    return Tried(text=track_record_text(record, packs), plain=plain_track_record(record), problems=reading.problems)
