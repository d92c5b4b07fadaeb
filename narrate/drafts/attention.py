"""What a person should look at in a narrative file: passages that moved, numbers that agree with nothing."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass

from narrate.drafts.basis import Ground, name_of
from narrate.drafts.draft_file import Line, unread_approval
from narrate.drafts.figures_typed import strange_numbers
from narrate.drafts.merge import Merged
from narrate.drafts.offered import Drafted
from narrate.model.claims import Grade
from narrate.model.ids import Subject
from narrate.model.languages import Language
from narrate.problems import Place, ProblemList

Overclaims = Callable[[str, Sequence[Grade]], Iterable[tuple[str, str]]]
"""A text and the grades of the claims behind it -> what claims more than they bear, and what may be written instead."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Look:
    """What one file is held against."""

    subject: Subject
    ground: Ground
    now: Sequence[Drafted]
    overclaims: Overclaims
    language: Language | None
    """That which the narrative is told in; None where no pack has it, and typed numbers are not read."""
    approved_only: bool
    """Where what is built from it takes approved sentences alone, each that waits is told."""


_UNMERGED = re.compile(r"^(?:<{7} |={7}$|>{7} )", re.MULTILINE)
"""Marks of a merge of two versions that nobody finished."""


def hers_as_written(raw: bytes | None, shown: str, problems: ProblemList) -> str | None:
    """The text of a narrative file, empty where there is none; None, with an error, where it may not be touched."""
    if raw is None:
        return ""
    try:
        text = raw.decode("utf-8")
    except UnicodeDecodeError as fault:
        problems.error(
            Place(path=shown, line=raw[: fault.start].count(b"\n") + 1),
            "N114",
            f"the narrative holds a byte {raw[fault.start]:#04x} that is not UTF-8, expected UTF-8 text; nothing of it "
            "was touched",
            help="save it as UTF-8 in your editor",
        )
        return None
    unfinished = _UNMERGED.search(text)
    if unfinished:
        line = text[: unfinished.start()].count("\n") + 1
        problems.error(
            Place(path=shown, line=line),
            "N114",
            "the narrative holds the marks of an unfinished merge, expected one text; nothing of it was touched",
            excerpt=text.splitlines()[line - 1],
            help="keep the lines that are meant and delete '<<<<<<<', '=======' and '>>>>>>>'",
        )
        return None
    return text


def tell_lost_side(path: str, side: str, problems: ProblemList) -> None:
    problems.warning(
        Place(path=path),
        "N112",
        f"the side file '{side}' is missing or not narrate's, expected it beside the narrative; every line is taken to "
        "be yours",
        help="bring it back from version control, or delete the narrative to have a new draft",
    )


def tell_standing(result: Merged, look: Look, path: str, problems: ProblemList) -> None:
    """Warnings about the lines of one file, each with its line."""
    for index, line in enumerate(result.file.lines()):
        place = Place(path=path, line=line.number, column=1 if line.number else 0)
        if index in result.stale:
            problems.warning(
                place,
                "N109",
                "an edited sentence rests on what has changed since: " + "; ".join(result.stale[index].reasons),
                excerpt=_as_read(line),
                help="reword it, or touch it once you have seen that it still holds",
            )
        if index in result.edited and line.keys:
            _tell_numbers(line, place, result, look, problems)
        if index in result.edited:
            _tell_overclaims(line, place, result, look, problems)
    _tell_approval(result, path, problems, approved_only=look.approved_only)


def _tell_numbers(line: Line, place: Place, result: Merged, look: Look, problems: ProblemList) -> None:
    texts = {draft.key: draft.text for draft in look.now}
    behind = {name: value for key in line.keys for name, value in result.base.latest.get(key, {}).items()}
    if look.language is None or not behind:
        return
    strange = strange_numbers(
        line.text,
        " ".join(texts.get(key, "") for key in line.keys),
        behind,
        look.language,
        names=[name_of(key, look.ground) for key in behind],
        common=_common(look),
        elsewhere=_elsewhere(look),
    )
    if strange:
        problems.warning(
            place,
            "N111",
            f"edited text says {', '.join(strange)}, expected figures behind the sentence: "
            + "; ".join(sorted(f"{name_of(key, look.ground)} {value}" for key, value in behind.items())),
            excerpt=_as_read(line),
            help="correct the number, or leave it if it comes from elsewhere",
        )


def _common(look: Look) -> dict[str, tuple[float, ...]]:
    """What is true of the whole subject, by unit, whatever the sentence rests on."""
    held = look.ground.findings.subjects.get(look.subject)
    if held is None:
        return {}
    masses = [tally.mass_g for tally in held.tallies if tally.mass_g is not None]
    masses += [m.value for name, m in held.measurements.items() if name.endswith("mass") and m.value is not None]
    return {
        "litres": (held.litres,) if held.litres is not None else (),
        "grams": tuple(masses),
        "samples": (held.samples, held.samples_with_remains),
    }


def _elsewhere(look: Look) -> list[tuple[str, float]]:
    """All that the subject holds, by name, told in this sentence or not."""
    held = look.ground.findings.subjects.get(look.subject)
    tallies = held.tallies if held is not None else ()
    return [(name_of(tally.ref, look.ground), float(tally.counted)) for tally in tallies if tally.ref]


def _tell_overclaims(line: Line, place: Place, result: Merged, look: Look, problems: ProblemList) -> None:
    refs = (ref for key in line.keys if key in result.base.sentences for ref in result.base.sentences[key].refs)
    claims = (look.ground.claims.by_id.get(ref) for ref in refs)
    grades = tuple(claim.grade for claim in claims if claim is not None)
    for says, instead in look.overclaims(line.text, grades):
        problems.warning(place, "N117", says, excerpt=_as_read(line), help=instead)


def _tell_approval(result: Merged, path: str, problems: ProblemList, *, approved_only: bool) -> None:
    unread = unread_approval(result.file)
    if unread:
        problems.warning(
            Place(path=path, line=_line_of(result.file.front, unread)),
            "N115",
            f"'{unread[:80]}' does not say who approved and when, expected approved: {{by: NAME, on: DATE}}; it counts "
            "for nothing",
            help="write approved: {by: A. Analyst, on: 2026-11-25}",
        )
    said, lines = result.file.approval, result.file.lines()
    waiting = [line for index, line in enumerate(lines) if index not in result.approved]
    if said is not None and result.lapses:
        problems.warning(
            Place(path=path, line=1),
            "N110",
            f"approved by {said.by} on {said.on or 'no date'}, and what it rests on has changed since: "
            + "; ".join(result.lapses),
            help="read it again and write a new date into 'approved'",
        )
    if waiting and (said is not None or approved_only):
        problems.warning(
            Place(path=path, line=waiting[0].number),
            "N116",
            f"{len(waiting)} of {len(lines)} sentence{'s' * (len(lines) != 1)} "
            f"{'is' if len(waiting) == 1 else 'are'} not approved"
            + (" and left out of what is built from approved words" if approved_only else ""),
            excerpt=_as_read(waiting[0]) if waiting[0].number else "",
            help="read the narrative, then write approved: {by: NAME, on: DATE} between two lines '---' at its head, "
            "or a new date",
        )


def _line_of(front: str, said: str) -> int:
    return next((n for n, row in enumerate(front.split("\n"), start=2) if row.strip() == said), 1)


def _as_read(line: Line) -> str:
    return (line.lead + line.text)[:160]
