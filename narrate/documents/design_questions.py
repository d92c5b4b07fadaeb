"""The questions of the project design, each with the author's answer and the readings that bear on it."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence

from narrate.documents.blocks import Block, Paragraph
from narrate.documents.dates import parts_of
from narrate.documents.inline import literal
from narrate.documents.unwritten import missing, told_of
from narrate.model.claims import GRADE_NAMES, Claim
from narrate.model.edition import Edition
from narrate.telling.told_readings import told_readings

BEARS: tuple[tuple[str, tuple[str, ...]], ...] = (
    (
        r"^(?!.*\b(?:handl|process)).*\b(grow|grew|grown|crops?|sow|sown|farm\w*)\b",
        ("food.maize", "food.native-seed", "food.cereal", "food.pulse", "change.maize-r", "change.maize-d",
         "change.native", "change.spelt", "change.emmer", "change.naked", "change.hulled"),
    ),
    (r"\bgather\w*\b|\bwild (plants?|food)\b", ("food.nut", "food.fruit", "field.old", "field.managed")),
    (
        r"\b(handl|process|clean|thresh|shell|dehusk|stor|cook)\w*\b",
        ("processing.", "food.burned-store", "food.cooking"),
    ),
    (r"\b(wood|fuel|burn|fire|clear)\w*\b", ("fuel.", "change.pine", "field.wood", "field.young", "field.cleared")),
    (r"\b(field|weed|soil|plough|till)\w*\b(?! and the pot)", ("field.weeds", "field.disturbed")),
    (r"\bseason\w*\b|\btime of (the )?year\b", ("season.",)),
)  # fmt: skip
"""Words of a question -> the statements that bear on it, by the beginning of their ids (judgement of the makers)."""

NOT_NEWS = ("season.stored-only", "fuel.brush")
SHOWN = 7
"""Readings that are named for one question, the firmest first."""
STANDING = {"suggests": "suggested", "supports": "supported", "strongly supports": "strongly supported"}


def questions_answered(edition: Edition) -> Iterator[Block]:
    """One entry a question of `report: aims`; nothing where the project asks none and answers none."""
    asked, (given, others) = questions_in(edition.project.report.get("aims", "")), answers(edition)
    if asked:
        yield Paragraph(
            text="The questions of the project design, each with its answer and with the readings whose words it "
            "shares:"
        )
    for question in asked:
        named = _bearing(edition, question)
        bears = f"Readings that bear on it: {'; '.join(named)}." if named else "No reading of the remains bears on it."
        if answer := given.get(question):
            yield Paragraph(text=f"“{literal(question)}” {literal(answer)} {bears}", kind="item")
        else:
            yield missing(f"the answer to “{literal(question)}” {bears}")
    yield from (Paragraph(text=literal(text), kind="item") for text in others)


def answers(edition: Edition) -> tuple[Mapping[str, str], tuple[str, ...]]:
    """
    What `report: answers` says: the answer to each question that is asked, and what answers none of them.

    Its items begin with the question as it is asked, whatever its capitals, and the answer follows.
    """
    asked = questions_in(edition.project.report.get("aims", ""))
    given: dict[str, str] = {}
    others = []
    for text in parts_of(told_of(edition.project.report, "answers")):
        question = next((one for one in asked if text.lower().startswith(one.lower())), None)
        if question is None or question in given:
            others.append(text)
        elif answer := text[len(question) :].strip():
            given[question] = answer
    return given, tuple(others)


def unanswered(edition: Edition) -> str:
    """What the answers lack, for the checklist; empty where every question is answered, or none is asked."""
    asked, (given, others) = questions_in(edition.project.report.get("aims", "")), answers(edition)
    left = len(asked) - len(given)
    said = []
    if left:
        said.append(
            f"{left} of {len(asked)} questions of report: aims not answered; write report: answers in project.yaml, "
            "'- ', the question as it is asked, and its answer"
        )
    if others:
        named = "; ".join(f"'{text[:40].rstrip()}…'" for text in others)
        said.append(f"report: answers has {named}, which begins with no question of report: aims that is still open")
    return "; ".join(said)


def questions_in(text: str) -> tuple[str, ...]:
    """
    The questions of a text, a lead before a colon left out.

    >>> questions_in("We asked two things. What grew? A further one came up: why was it left?")
    ('What grew?', 'Why was it left?')
    """
    flat = " ".join(text.split())
    found = [part for part in re.split(r"(?<=[.?!])\s+", flat) if part.endswith("?")]
    bare = [part.rsplit(": ", 1)[-1] for part in found]
    return tuple(part[:1].upper() + part[1:] for part in bare)


def _bearing(edition: Edition, question: str) -> list[str]:
    """'the use of maize as food (supported: Late hamlet, C12)' for the readings that bear on a question."""
    starts = tuple(s for words, ids in BEARS if re.search(words, question, re.IGNORECASE) for s in ids)
    by_statement: dict[str, list[Claim]] = {}
    for claim in told_readings(edition.project, edition.claims) if starts else ():
        if claim.statement.startswith(starts) and claim.statement not in NOT_NEWS and claim.grade in STANDING:
            by_statement.setdefault(claim.statement, []).append(claim)
    told = [(max(_rank(c) for c in claims), id, claims) for id, claims in by_statement.items()]
    told.sort(key=lambda one: (-one[0], -len(one[2]), one[1]))
    return [_told(edition, claims) for _, _, claims in told[:SHOWN]]


def _told(edition: Edition, claims: Sequence[Claim]) -> str:
    firmest = max(_rank(claim) for claim in claims)
    best = [claim for claim in claims if _rank(claim) == firmest]
    widest = next((lv for lv in ("site", "phase", "context") if any(c.about.level == lv for c in best)), "context")
    noun = edition.packs.statements[best[0].statement].noun
    where = [_named(edition, claim) for claim in best if claim.about.level == widest]
    return f"{literal(noun)} ({STANDING[best[0].grade]}: {literal(', '.join(where))})"


def _named(edition: Edition, claim: Claim) -> str:
    if claim.about.level == "site":
        return "the whole dig"
    phase = next((p for p in edition.project.phases if p.id == claim.about.id), None)
    return phase.name if phase is not None and claim.about.level == "phase" else claim.about.id


def _rank(claim: Claim) -> int:
    return GRADE_NAMES.index(claim.grade)  # type: ignore[arg-type]
