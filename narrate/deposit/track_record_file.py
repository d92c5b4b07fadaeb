"""The record on simulated digs as plain data."""

from __future__ import annotations

import json

from narrate.model.track_record import Hits, TrackRecord


def plain_track_record(record: TrackRecord) -> dict[str, object]:
    """For JSON: shares with four digits, an interval without claims as null."""
    return {
        "contexts": record.contexts,
        "claims": record.claims,
        "false_claims": record.false_claims,
        "seed": record.seed,
        "lines": [
            {"table": n.table, "name": n.name, "grade": n.grade, **_plain_hits(n.hits)} for n in record.lines
        ],
        "missed": [
            {"statement": n.statement, "there": n.there, "without_claim": n.without_claim} for n in record.missed
        ],
    }  # fmt: skip


def track_record_json(record: TrackRecord) -> str:
    """One line of the record a line of text, so that a change of one is seen as one."""
    plain = plain_track_record(record)
    lines = ",\n".join("  " + json.dumps(n, ensure_ascii=False) for n in plain.pop("lines"))  # type: ignore[attr-defined]
    missed = ",\n".join("  " + json.dumps(n, ensure_ascii=False) for n in plain.pop("missed"))  # type: ignore[attr-defined]
    head = ",\n".join(f' "{key}": {json.dumps(value)}' for key, value in plain.items())
    return f'{{\n{head},\n "lines": [\n{lines}\n ],\n "missed": [\n{missed}\n ]\n}}\n'


def _plain_hits(hits: Hits) -> dict[str, object]:
    ends = (None, None) if hits.claims == 0 else (round(hits.low, 4), round(hits.high, 4))
    return {"claims": hits.claims, "right": hits.right, "low": ends[0], "high": ends[1]}
