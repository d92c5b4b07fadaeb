"""What changed between two states, laid out for a terminal and as plain data."""

from __future__ import annotations

import textwrap
from dataclasses import asdict

from narrate.model.changes import Change, Changes, Part, State
from narrate.problems import as_plain_data

FOR_THE_TEAM = "For the team alone: restricted contexts and locations are in here."
FORMAT = "narrate changes 1"
_WIDTH = 110


def changes_text(changes: Changes) -> str:
    """Both states, then part by part what changed; '-' is the old and '+' the new."""
    lines = [*_state("old", changes.old), *_state("new", changes.new), FOR_THE_TEAM]
    if changes.is_nothing:
        lines += ["", "Nothing changed."]
    for part in changes.parts:
        if part.changes or part.note:
            lines += ["", *_part(part)]
    return "\n".join(lines)


def in_one_line(change: Change) -> str:
    """
    A change of data or of a claim.

    >>> in_one_line(Change(kind="changed", subject="sample S1", what="volume_l", before="10", after="12"))
    'sample S1, volume_l: 10, now 12'
    """
    whose = f"{change.subject}, {change.what}" if change.what else change.subject
    if change.kind == "renamed":
        return f"{whose} is now {change.after}"
    if change.kind == "changed":
        return f"{whose}: {change.before}, now {change.after}" if change.before or change.after else f"{whose}: changed"
    came = {"added": "new", "removed": "gone"}[change.kind]
    said = change.after if change.kind == "added" else change.before
    was = change.before if change.kind == "added" else change.after
    once = f" (before: {was})" if was and change.kind == "added" else f" (now: {was})" if was else ""
    return f"{whose}: {came}" + (f", {said}" if said else "") + once


def changes_plain(changes: Changes) -> dict[str, object]:
    """The same as plain data, for --json."""
    return {
        "format": FORMAT,
        "old": _plain_state(changes.old),
        "new": _plain_state(changes.new),
        "parts": [
            {
                "title": part.title,
                "note": part.note or None,
                "changes": [asdict(change) for change in part.changes],
            }
            for part in changes.parts
        ],
    }


def _state(which: str, state: State) -> list[str]:
    lines = [f"{which}  {state.name}"]
    errors = state.errors
    if errors:
        many = f"{len(errors)} error{'s' * (len(errors) != 1)}"
        lines.append(f"     {many}, the first: {errors[0].place}: {errors[0].message}")
    return lines


def _part(part: Part) -> list[str]:
    many = len(part.changes)
    counted = f"{many:,} change{'s' * (many != 1)}"
    said = [*([counted] if many or not part.note else []), *([part.note] if part.note else [])]
    lines = [f"{part.title}: {'; '.join(said)}"]
    is_words = part.title.startswith("Words")
    subject = ""
    for change in part.changes:
        if is_words:
            if change.subject != subject:
                subject = change.subject
                lines.append(f"  {subject}")
            lines += _sentence(change)
        else:
            lines += _wrapped(in_one_line(change), "  ")
            where = change.after_at or change.before_at
            if change.before_at and change.after_at and change.before_at != change.after_at:
                where = f"{change.before_at}, now {change.after_at}"
            lines += _wrapped(where, "      ") if where else []
        lines += [row for reason in change.reasons for row in _wrapped(f"because {reason}", "      ")]
    return lines


def _sentence(change: Change) -> list[str]:
    if change.before == change.after:
        return [*_wrapped(change.after, "    = "), *_wrapped(f"[{change.before_at}; now {change.after_at}]", "      ")]
    lines = []
    for sign, text, by in (("-", change.before, change.before_at), ("+", change.after, change.after_at)):
        if text:
            lines += _wrapped(f"{text} [{by}]", f"    {sign} ")
    return lines


def _wrapped(text: str, lead: str) -> list[str]:
    return textwrap.wrap(text, _WIDTH, initial_indent=lead, subsequent_indent=" " * (len(lead) + 2)) or [lead]


def _plain_state(state: State) -> dict[str, object]:
    return {
        "name": state.name,
        "is_read": state.is_read,
        "problems": [as_plain_data(problem) for problem in state.problems],
    }
