"""`narrate report`: the interpretive section."""

from __future__ import annotations

from pathlib import Path

from narrate.documents.markdown import markdown
from narrate.documents.outline import outline
from narrate.pipeline.editions import approved_alone, edition_of, with_those_of_drafts, words_of
from narrate.pipeline.judged import Progress, judged_folder, silent
from narrate.pipeline.writing import write
from narrate.problems import Problem, has_errors


def report(
    folder: Path, *, version: str, approved_only: bool = False, progress: Progress = silent
) -> tuple[Path | None, tuple[Problem, ...]]:
    """
    Writes the interpretive section as Markdown; no path where the project has errors.

    approved_only:  from approved sentences alone, as project.yaml may also say.
    """
    found = judged_folder(folder, progress=progress)
    whole = found.whole
    if whole is None:
        return None, found.problems
    is_strict = approved_only or "report" in whole.project.approved_only
    words = words_of(folder, "review", whole, frozenset({"report"}) if is_strict else frozenset())
    problems = with_those_of_drafts(found.problems, [words], strict=False)
    if has_errors(problems):
        return None, problems
    told = approved_alone(words.narratives) if is_strict else words.narratives
    edition = edition_of("review", whole, told, problems, version, approved_only=is_strict)
    path = folder / "out" / "report" / "section.md"
    write(path, markdown(outline(edition)))
    return path, problems
