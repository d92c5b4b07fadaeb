"""What the project says in its own words under `report:`, and what it has yet to say."""

from __future__ import annotations

from narrate.documents.blocks import Paragraph


def missing(text: str) -> Paragraph:
    """What nobody has recorded yet and a report must say."""
    return Paragraph(text=f"To be written: {text}", kind="missing")


def told_of(report: object, *keys: str) -> str:
    """The first of the project's own report keys that says something."""
    return next((str(report[key]) for key in keys if report.get(key)), "")  # type: ignore[attr-defined, index]
