"""What the section takes beside the records: photographs, and the words that an open copy may hold."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from narrate.disclosure import disclosed_narrative
from narrate.documents.photographs import images_of
from narrate.model.ids import FILED, SITE, Subject
from narrate.model.narrative import Narrative
from narrate.model.project import Project
from narrate.model.refs import subject_keys
from narrate.pipeline.judged import Judged
from narrate.problems import Place, Problem
from narrate.telling.tell import narratives


def photographs_of(folder: Path, project: Project) -> tuple[dict[str, bytes], tuple[Problem, ...]]:
    """Path as the record writes it -> bytes; a photograph that is missing, or has no alternative text, is an error."""
    found: dict[str, bytes] = {}
    problems: list[Problem] = []
    root = folder.resolve()
    for context in project.contexts:
        for id, image in images_of(context, project):
            path, fault, whose = (root / image.file).resolve(), "", f"the photograph '{image.file}' of {id}"
            if not path.is_relative_to(root) or not path.is_file():
                fault = f"{whose} is not there, expected a picture in the project"
                help = "put the file there, or take it out of the record; the section of before is as it was"
            elif not image.alt.strip():
                fault = f"{whose} has no alt, expected words for what is to be seen"
                help = "write alt in the record; without it no tagged document can be made; the one of before stays"
            if fault:
                problems.append(Problem(place=image.place, severity="error", code="N119", message=fault, help=help))
            else:
                found[image.file] = path.read_bytes()
    return found, tuple(problems)


def told_openly(
    told: Mapping[tuple[str, Subject], Narrative], whole: Judged, part: Judged
) -> tuple[dict[tuple[str, Subject], Narrative], tuple[Problem, ...]]:
    """
    Words for an open copy, and a warning for every narrative of the report from which somebody's words were left out.

    Sentences that name something restricted are left out. What an analyst wrote or approved of the whole dig, or of a
    phase with a restricted context, was written with everything in view, and its figures may hold what is withheld:
    there the draft from the open part stands in its place.
    """
    if not part.project.is_withheld_in_part:
        return dict(told), ()
    hidden = whole.project.disclosure.restricted_contexts
    phases = {context.phase for context in whole.project.contexts if context.id in hidden}
    drafted = narratives(part.project, part.packs, part.findings, part.claims, "report", FILED)
    found: dict[tuple[str, Subject], Narrative] = {}
    problems: list[Problem] = []
    for (audience, subject), narrative in told.items():
        is_mixed = hidden and (subject.id == SITE or (subject.level == "phase" and subject.id in phases))
        if is_mixed and audience == "report" and subject in drafted:
            found[(audience, subject)] = drafted[subject]
        else:
            found[(audience, subject)] = disclosed_narrative(narrative, whole.project)
        if audience == "report" and (narrative.is_edited or narrative.approved_by):
            left = set(_words(found[(audience, subject)]))
            out = sum(text not in left for text in _words(narrative))
            if out:
                problems.append(_left_out(subject, out, whole))
    return found, tuple(problems)


def _words(narrative: Narrative) -> tuple[str, ...]:
    """Sentences that somebody wrote, edited or approved."""
    return tuple(s.text for s in narrative.sentences() if s.standing != "drafted" or s.is_approved)


def _left_out(subject: Subject, sentences: int, whole: Judged) -> Problem:
    key = subject_keys(whole.project)[subject]
    many = f"{sentences:,} sentence{'s' * (sentences > 1)}"
    return Problem(
        place=Place(path=f"narratives/report/{key}.md"),
        severity="warning",
        code="N210",
        message=f"{many} that the analyst wrote or approved of '{key}' {'are' if sentences > 1 else 'is'} left out of "
        "the open copy, because something restricted was in view when it was written",
        help="read the open copy, and add by hand what may be said; the file itself is as it was",
    )
