"""What an open edition holds less of than the records: fields that were emptied, by the record they were in."""

from __future__ import annotations

from collections.abc import Mapping

from narrate.model.project import Project

Lessened = Mapping[tuple[str, str], tuple[str, ...]]
"""'context' or 'sample' and id -> names of fields that hold less than was recorded."""

_FIELDS = {
    "context": ("location", "feature", "description", "note", "images"),
    "sample": ("method", "heavy_fraction", "note", "images"),
}
_SHOWN = {"images": "photographs", "heavy_fraction": "finds of the heavy fraction"}


def lessened(whole: Project, part: Project) -> Lessened:
    """Records of the part that hold less than those of the whole; records that are gone are not named."""
    found: dict[tuple[str, str], tuple[str, ...]] = {}
    for level, before, after in (
        ("context", whole.contexts, part.contexts),
        ("sample", whole.samples, part.samples),
    ):
        kept = {record.id: record for record in after}
        for record in before:
            if record.id in kept:
                names = (n for n in _FIELDS[level] if getattr(record, n) != getattr(kept[record.id], n))
                if less := tuple(names):
                    found[(level, record.id)] = less
    return found


def withheld(level: str, id: str, less: Lessened) -> str:
    """Text of informationWithheld; empty where nothing is."""
    return "Location. Ask the holder of the restricted edition." if "location" in less.get((level, id), ()) else ""


def generalized(level: str, id: str, less: Lessened) -> str:
    """Text of dataGeneralizations: what of the record is left out or shortened in this edition."""
    names = [_SHOWN.get(name, name) for name in less.get((level, id), ()) if name != "location"]
    return f"Left out or shortened, against the records: {', '.join(names)}." if names else ""
