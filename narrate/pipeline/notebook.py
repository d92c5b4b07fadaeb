"""A project folder for work in a notebook."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from narrate.pipeline.judged import read
from narrate.problems import has_errors, written

if TYPE_CHECKING:
    from narrate.deposit.frames import OpenProject


def open_project(folder: Path) -> OpenProject:
    """
    A project folder for work in a notebook.

    Raises ValueError with every problem where the project has errors.
    """
    from narrate.deposit.frames import OpenProject

    reading = read(folder)
    if reading.project is None or reading.packs is None or has_errors(reading.problems):
        raise ValueError("the project has errors:\n" + "\n".join(written(p) for p in reading.problems))
    return OpenProject(reading.project, reading.packs, reading.problems)
