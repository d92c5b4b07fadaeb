"""`narrate report`: the interpretive section."""

from __future__ import annotations

from pathlib import Path

from narrate.documents.markdown import markdown
from narrate.documents.outline import outline
from narrate.pipeline.editions import edition_of, words_of
from narrate.pipeline.judged import Progress, judged_folder, silent
from narrate.pipeline.writing import write
from narrate.problems import Problem


def report(
    folder: Path, *, version: str, progress: Progress = silent
) -> tuple[Path | None, tuple[Problem, ...]]:
    """Writes the interpretive section as Markdown; no path where the project has errors."""
    found = judged_folder(folder, progress=progress)
    whole = found.whole
    if whole is None:
        return None, found.problems
    edition = edition_of("review", whole, words_of(folder, "review", whole).narratives, found.problems, version)
    path = folder / "out" / "report" / "section.md"
    write(path, markdown(outline(edition)))
    return path, found.problems
