"""Narratives that were told before, each with what it asked of the dig and a sum over the answers."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Callable
from dataclasses import dataclass

from narrate.model.ids import Subject
from narrate.model.kept import Kept
from narrate.model.narrative import Narrative, Section, Sentence
from narrate.telling.followed import Followed, Question


@dataclass(frozen=True, slots=True)
class KeptWords:
    """Where narratives are kept, and what they rest on besides the dig."""

    kept: Kept
    ground: str


def told_before_or_now(
    followed: Followed, kept: Kept, audience: str, subject: Subject, tell: Callable[[], Narrative | None]
) -> Narrative | None:
    """The narrative of a subject, told only where some answer to what it asked is another than before."""
    key = hashlib.blake2b(repr((audience, subject.level, str(subject.id))).encode(), digest_size=16).digest()
    head, _, body = (kept.found(key) or b"").partition(b"\n")
    if head:
        asked, summed = json.loads(head)
        if followed.sum_of(tuple(question) for question in asked) == summed:
            return _read(body, audience, subject)
    followed.begin()
    told = tell()
    kept.add(key, b"" if followed.is_open else _written(followed, told))
    return told


def _written(followed: Followed, told: Narrative | None) -> bytes:
    asked: list[Question] = list(followed.asked)
    head = json.dumps([asked, followed.sum_of(asked)], separators=(",", ":"))
    said = None if told is None else [told.title, _plain(told.summary), [_section(one) for one in told.sections]]
    return f"{head}\n{json.dumps(said, separators=(',', ':'))}".encode()


def _plain(sentence: Sentence | None) -> list[object] | None:
    return None if sentence is None else [sentence.text, sentence.refs]


def _section(section: Section) -> list[object]:
    return [section.id, section.heading, [[_plain(one) for one in paragraph] for paragraph in section.paragraphs]]


def _read(body: bytes, audience: str, subject: Subject) -> Narrative | None:
    said = json.loads(body)
    if said is None:
        return None
    title, summary, sections = said
    return Narrative(
        subject=subject,
        audience=audience,
        title=title,
        summary=None if summary is None else _sentence(*summary),
        sections=tuple(
            Section(
                id=id,
                heading=heading,
                paragraphs=tuple(tuple(_sentence(*one) for one in paragraph) for paragraph in paragraphs),
            )
            for id, heading, paragraphs in sections
        ),
    )


def _sentence(text: str, refs: list[str]) -> Sentence:
    return Sentence(text=text, refs=tuple(refs))
