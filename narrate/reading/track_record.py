"""The record of the packs on simulated digs, as it was last worked out."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

from narrate.model.track_record import Hits, Line, Missed, TrackRecord

SHIPPED = Path(__file__).parents[1] / "packs" / "track_record.json"


def shipped_track_record() -> TrackRecord:
    """The record that comes with the packs; a project with rules of its own works out its own."""
    return track_record_of(json.loads(SHIPPED.read_text(encoding="utf-8")))


def track_record_of(plain: dict[str, Any]) -> TrackRecord:
    """A record from plain data, as `plain_track_record` of `deposit.track_record_file` gives it."""
    return TrackRecord(
        contexts=plain["contexts"],
        claims=plain["claims"],
        false_claims=plain["false_claims"],
        seed=plain["seed"],
        lines=tuple(Line(table=n["table"], name=n["name"], grade=n["grade"], hits=_hits(n)) for n in plain["lines"]),
        missed=tuple(Missed(**n) for n in plain["missed"]),
    )


def _hits(line: dict[str, Any]) -> Hits:
    low, high = (float("nan") if line[end] is None else line[end] for end in ("low", "high"))
    return Hits(claims=line["claims"], right=line["right"], low=low, high=high)
