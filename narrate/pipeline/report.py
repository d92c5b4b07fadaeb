"""`narrate report`: the interpretive section in the medium that is asked for."""

from __future__ import annotations

from collections.abc import Mapping
from functools import partial
from pathlib import Path

from narrate.documents.blocks import Block, Unfit
from narrate.documents.outline import outline
from narrate.files import write
from narrate.judging.depth import Depth
from narrate.model.ids import FILED
from narrate.pipeline.editions import approved_alone, bare_edition, with_those_of_drafts, words_of
from narrate.pipeline.held import Unwritable, broken_off, held, in_use
from narrate.pipeline.judged import Progress, disclosed_part, judged_folder, silent
from narrate.pipeline.kept_units import WORDS, kept_before
from narrate.pipeline.report_parts import photographs_of, told_openly
from narrate.pipeline.rubbish import seldom_looked_for
from narrate.pipeline.side_by_side import side_by_side
from narrate.problems import Place, Problem, has_errors
from narrate.telling.kept_words import KeptWords

MEDIA: Mapping[str, str] = {
    "markdown": "section.md",
    "html": "section.html",
    "word": "section.docx",
    "pdf": "section.pdf",
}
"""Medium -> name of the file in out/report; the open copy has '-open' in its name."""


DEPTH = Depth(drawn=FILED, turned=("context",), only_held=True)
"""What the section tells: claims of samples and features have no place in it, nor has what would make one hold."""

LEFT_OUT = (
    "Words that the analyst wrote or approved are left out of {n} text{s} of this copy, because restricted records "
    "were in view when they were written; what the rules draft from the open records stands there."
)
"""Notice at the head of an open copy."""


@seldom_looked_for()
def report(
    folder: Path,
    *,
    version: str,
    medium: str = "markdown",
    template: Path | None = None,
    approved_only: bool = False,
    is_open: bool = False,
    progress: Progress = silent,
) -> tuple[Path | None, tuple[Problem, ...]]:
    """
    Writes the interpretive section; no path where something stands in the way, and what stood there before stays.

    medium:         a key of `MEDIA`.
    template:       a Word document that lends its styles; for 'word' alone.
    approved_only:  from approved sentences alone, as project.yaml may also say.
    is_open:        from what may be disclosed alone, into a file of its own.
    """
    found = judged_folder(folder, progress=progress, depth=DEPTH)
    whole = found.whole
    if whole is None:
        return None, found.problems
    is_strict = approved_only or "report" in whole.project.approved_only
    strict = frozenset({"report"}) if is_strict else frozenset()
    part = disclosed_part(whole, kept=found.kept, depth=DEPTH) if is_open else whole
    # What the last telling left is believed where it is still true; nothing is added to it.
    before = kept_before(folder, found.ground, WORDS)
    known = KeptWords(before, found.ground) if before else None
    at_once = partial(side_by_side, is_large=part.is_large)
    words = words_of(
        folder, "review", part, strict, audiences=("report",), levels=FILED, known=known, at_once=at_once
    )
    narratives_told, left_out = told_openly(words.narratives, whole, part) if is_open else (words.narratives, ())
    problems = with_those_of_drafts(found.problems, [words], strict=False)
    files, lacking = photographs_of(folder, part.project)
    problems = tuple(sorted((*problems, *lacking, *left_out), key=Problem.in_order))
    if has_errors(problems):
        return None, problems
    told = approved_alone(narratives_told) if is_strict else narratives_told
    name = "public" if is_open else "review"
    edition = bare_edition(name, part, told, problems, version, approved_only=is_strict)
    notices = (LEFT_OUT.format(n=len(left_out), s="s" * (len(left_out) > 1)),) if left_out else ()
    path = folder / "out" / "report" / named(MEDIA[medium], is_open)
    progress(f"writing {path.name}")
    try:
        made = _files(outline(edition, files, notices), medium, template, is_open)
        with held(folder):
            if why := in_use(path):
                raise OSError(0, why)
            for name, content in made.items():
                write(path.parent / name, content)
    except Unwritable as refusal:
        return None, (*problems, refusal.problem)
    except Unfit as unfit:
        place = Place(path=str(template) if template else "project.yaml")
        return None, (
            *problems,
            _error(place, "N119", str(unfit), "nothing was written; the file of before is as it was"),
        )
    except OSError as fault:
        return None, (*problems, broken_off(folder, f"out/report/{path.name}", fault, "the section"))
    return path, problems


def named(name: str, is_open: bool) -> str:
    """
    Name of the file of an edition.

    >>> named("section.md", True)
    'section-open.md'
    """
    stem, _, ending = name.rpartition(".")
    return f"{stem}-open.{ending}" if is_open else name


def _files(blocks: tuple[Block, ...], medium: str, template: Path | None, is_open: bool) -> Mapping[str, str | bytes]:
    """Name of a file in out/report -> what it holds; the section itself comes last."""
    from narrate.documents.pdf import file_name, pdf, pictures

    name, drawn = named(MEDIA[medium], is_open), pictures(blocks)
    if medium == "word":
        from narrate.documents.word import word

        return {name: word(blocks, drawn, template)}
    if medium == "pdf":
        return {name: pdf(blocks, drawn)}
    if medium == "html":
        from narrate.documents.html import html

        return {name: html(blocks, drawn)}
    from narrate.documents.markdown import markdown

    where = "figures-open" if is_open else "figures"
    paths = {anchor: f"{where}/{file_name(anchor, picture)}" for anchor, picture in drawn.items()}
    files: dict[str, str | bytes] = {paths[anchor]: picture for anchor, picture in drawn.items()}
    return {**files, name: markdown(blocks, paths)}


def _error(place: Place, code: str, message: str, help: str) -> Problem:
    return Problem(place=place, severity="error", code=code, message=message, help=help)
