"""Draft files of a project folder: hers where she changed them, new drafts elsewhere."""

from __future__ import annotations

import re
from collections.abc import Mapping
from pathlib import Path

from narrate.drafts.draft_file import draft_text, edited, is_untouched
from narrate.model.ids import Subject
from narrate.model.narrative import Narrative
from narrate.model.project import Project
from narrate.model.refs import subject_keys
from narrate.problems import Place

FOLDER = "narratives"
_LEVELS = ("context", "phase", "site")
"""Subjects whose narratives are written as files; those of samples are too short to be worth one."""


def merged(folder: Path, project: Project, drafted: Mapping[Subject, Narrative]) -> dict[Subject, Narrative]:
    """The narratives, with the analyst's text wherever she changed a file."""
    keys = subject_keys(project)
    found = dict(drafted)
    for subject, narrative in drafted.items():
        path = draft_path(folder, narrative.audience, keys[subject])
        if subject.level in _LEVELS and path.is_file():
            text = path.read_text(encoding="utf-8", errors="replace")
            if not is_untouched(text):
                found[subject] = edited(text, narrative, own_words=f"{keys[subject]}/words")
    return found


def write_drafts(folder: Path, project: Project, drafted: Mapping[Subject, Narrative]) -> None:
    """
    Writes a draft for every subject that has none, and renews drafts that nobody touched.

    A file that was changed by so much as a word is left alone.
    """
    keys = subject_keys(project)
    for subject, narrative in drafted.items():
        if subject.level not in _LEVELS:
            continue
        path = draft_path(folder, narrative.audience, keys[subject])
        text = draft_text(narrative)
        if path.is_file():
            before = path.read_text(encoding="utf-8", errors="replace")
            if before == text or not is_untouched(before):
                continue
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8", newline="\n")


def own_words(folder: Path, key: str) -> tuple[Place, ...]:
    """The draft files of a subject, for sentences that the analyst wrote herself."""
    root = folder / FOLDER
    audiences = sorted(path.name for path in root.iterdir() if path.is_dir()) if root.is_dir() else []
    files = [draft_path(folder, audience, key) for audience in audiences]
    return tuple(Place(path=path.relative_to(folder).as_posix(), line=1) for path in files if path.is_file())


def draft_path(folder: Path, audience: str, key: str) -> Path:
    """`narratives/<audience>/<subject>.md`, with a name that every file system takes."""
    name = re.sub(r"[^\w.-]+", "-", key).strip(".-") or "unnamed"
    return folder / FOLDER / audience / f"{name}.md"
