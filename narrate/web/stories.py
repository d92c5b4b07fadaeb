"""Narratives as pages show them: each sentence with a mark that leads to what it rests on."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass, replace

from markupsafe import Markup

from narrate.model.claims import GRADE_NAMES
from narrate.model.ids import Subject
from narrate.model.narrative import Narrative, Sentence
from narrate.model.standing import standing
from narrate.web.evidence import Behind, Opener
from narrate.web.filters import inline
from narrate.web.page_words import PageWords, page_words

SHOWN_ONE_BY_ONE = 5
"""Things behind a sentence up to which each is shown with what speaks for it; of more each is a line."""


LINKED_AT_MOST, NAMED_AT_MOST = 24, 300
"""Of how many subjects the same thing leads to its place, and how many are named at all."""

LINKS_OF_A_SENTENCE = 24
"""Where a sentence rests on many things of many subjects, fewer of each lead to their place; the plant's page has all."""


REFS_AT_MOST = 10
"""References that a sentence carries for programs; dozens of them would outweigh its words."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Gathered:
    """The same thing of several subjects: claims of one statement and grade, finds of one plant part, one measure."""

    title: str
    members: tuple[tuple[str, Behind], ...]
    """Each with its subject in short: 'S009', 'Late hamlet'."""
    others: tuple[str, ...] = ()
    """Of the same, what is only named."""
    further: int = 0
    """Of the same, what is only counted."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SentenceView:
    html: Markup
    refs: str
    anchor: str
    number: int
    """Counts the sentences of the narrative from 1."""
    strength: int | None
    """Specks of its firmest claim; None where it rests on counts and records alone."""
    behind: tuple[Behind, ...]
    """What no earlier sentence of the paragraph rests on."""
    gathered: tuple[Gathered, ...]
    """The same, gathered by what is claimed, where they are more than can be shown one by one; else empty."""
    behind_before: tuple[tuple[str, str], ...]
    """What an earlier sentence of the paragraph rests on too: its title, and the fragment where it stands."""
    standing: str
    """Who wrote it and who answers for it; empty for a draft of a narrative that nobody has approved."""
    stale: tuple[str, ...]
    """What changed behind an edited sentence since it was written; for the team alone."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ParagraphView:
    sentences: tuple[SentenceView, ...]
    first: int
    last: int


@dataclass(frozen=True, slots=True, kw_only=True)
class SectionView:
    anchor: str
    heading: str
    paragraphs: tuple[ParagraphView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class StoryView:
    audience: str
    words: PageWords
    """What the page says around it, in its language."""
    language: str
    title: str
    summary: Markup
    sections: tuple[SectionView, ...]
    standing: str
    """Who wrote and who approved the text, in one line; empty where it stands as drafted."""
    is_draft: bool
    """Of a site for the public: that nobody has approved the words yet."""
    stale: int
    """Sentences whose ground moved; for the team alone."""


def story(opener: Opener, audience: str, subject: Subject, told: set[str] | None = None) -> StoryView | None:
    """
    The narrative of a subject for an audience; None where none was written. One that waits says so.

    told:  what the page has shown in full already; what this narrative shows is added to it.
    """
    narrative = opener.edition.narrative(audience, subject)
    if narrative is None or not (narrative.sentences() or narrative.left_out):
        return None
    reader = opener.edition.packs.audiences.get(audience)
    return StoryView(
        audience=audience,
        words=page_words(opener.edition.packs, audience),
        language="en" if reader is None else reader.language,
        title=narrative.title,
        summary=summary(narrative),
        sections=_sections(opener, narrative, set() if told is None else told),
        standing=_standing(narrative, opener.writing.whole),
        is_draft=opener.edition.audience != "review" and not narrative.approved_by,
        stale=sum(bool(s.stale) for s in narrative.sentences()) if opener.edition.audience == "review" else 0,
    )


_WRITTEN_BY = {"drafted": "", "edited": "Edited by the analyst.", "own": "The analyst's own words."}


def _standing(narrative: Narrative, whole: Callable[[int], str]) -> str:
    found = standing((narrative,))
    hers = found.edited + found.own
    said = []
    if hers:
        said.append(f"{hers} of {found.sentences} sentences in the analyst's words, the others as drafted.")
    if narrative.approved_by and found.sentences:
        part = f"{found.approved} of {found.sentences} sentences approved" if found.waiting else "Approved"
        said.append(f"{part} by {_by(narrative)}.")
    if narrative.has_lapsed:
        said.append("What it rests on has changed since, so the approval has lapsed.")
    if narrative.left_out:
        many = "1 sentence" if narrative.left_out == 1 else f"{whole(narrative.left_out)} sentences"
        said.append(f"{many} that nobody has approved {'is' if narrative.left_out == 1 else 'are'} left out here.")
    return " ".join(said)


def _by(narrative: Narrative) -> str:
    return f"{narrative.approved_by} on {narrative.approved_on}" if narrative.approved_on else narrative.approved_by


def _said(sentence: Sentence, narrative: Narrative) -> str:
    """Who said one sentence and who answers for it; empty for a draft of a narrative that nobody has approved."""
    who = _WRITTEN_BY[sentence.standing]
    if not narrative.approved_by:
        return who
    answers = f"Approved by {_by(narrative)}." if sentence.is_approved else "Not approved."
    return f"{who or 'As drafted.'} {answers}"


def summary(narrative: Narrative | None) -> Markup:
    """One sentence for lists and heads of pages; empty where there is none."""
    if narrative is None or narrative.summary is None:
        return Markup("")
    return inline(narrative.summary.text)


def _sections(opener: Opener, narrative: Narrative, told: set[str]) -> tuple[SectionView, ...]:
    number = 0
    sections: list[SectionView] = []
    for place, section in enumerate(narrative.sections, start=1):
        paragraphs: list[ParagraphView] = []
        for paragraph in section.paragraphs:
            first = number + 1
            views: list[SentenceView] = []
            shown: dict[str, str] = {}
            for sentence in paragraph:
                number += 1
                view = _sentence(opener, f"{narrative.audience}-said-{number}", sentence, number, shown, told)
                views.append(replace(view, standing=_said(sentence, narrative)))
            if views:
                paragraphs.append(ParagraphView(sentences=tuple(views), first=first, last=number))
        name = f"{narrative.audience}-{place}"
        sections.append(SectionView(anchor=name, heading=section.heading, paragraphs=tuple(paragraphs)))
    return tuple(sections)


def _rows_once(behind: tuple[Behind, ...]) -> tuple[Behind, ...]:
    """Neighbours that rest on the same rows show them once, under the last of them."""
    following = (*behind[1:], None)[: len(behind)]
    return tuple(
        replace(one, rows=None) if after is not None and one.rows == after.rows else one
        for one, after in zip(behind, following, strict=True)
    )


def _gathered(behind: tuple[Behind, ...]) -> tuple[Gathered, ...]:
    found: dict[tuple[str, str], list[Behind]] = {}
    for one in behind:
        grade = one.claim.verdict + one.claim.grade if one.claim is not None else one.kind
        key = (one.title, grade)
        found.setdefault(key, []).append(one)
    linked = min(LINKED_AT_MOST, max(4, LINKS_OF_A_SENTENCE // len(found))) if found else 0
    return tuple(
        Gathered(
            title=members[0].title,
            members=tuple((_in_short(one.subject), one) for one in members[:linked]),
            others=tuple(_in_short(one.subject) for one in members[linked:NAMED_AT_MOST]),
            further=max(len(members) - NAMED_AT_MOST, 0),
        )
        for members in found.values()
    )


def _in_short(subject: str) -> str:
    """
    The subject where its kind is plain from what stands around it.

    >>> _in_short("Sample S009"), _in_short("Late hamlet")
    ('S009', 'Late hamlet')
    """
    return re.sub(r"^(Sample|Context|Feature) ", "", subject)


def _sentence(
    opener: Opener, anchor: str, sentence: Sentence, number: int, shown: dict[str, str], told: set[str]
) -> SentenceView:
    """`shown` maps what the panel already shows to where, `told` is what the page does; what is new is added."""
    behind = opener.behind(sentence.refs)
    grades = [GRADE_NAMES.index(b.claim.grade) for b in behind if b.claim and b.claim.verdict == "holds"]  # type: ignore[arg-type]
    before = tuple(dict.fromkeys((_title(one), shown[one.ref]) for one in behind if one.ref in shown))
    unseen = (one for one in behind if one.ref not in shown)
    new = tuple(replace(one, is_told=True) if one.ref in told else one for one in unseen)
    told.update(sentence.refs)
    shown.update((one.ref, anchor) for one in new)
    return SentenceView(
        html=inline(sentence.text),
        refs=" ".join(sentence.refs[:REFS_AT_MOST]),
        anchor=anchor,
        number=number,
        strength=max(grades) if grades else None,
        behind=_rows_once(new),
        gathered=_gathered(new) if len(new) > SHOWN_ONE_BY_ONE else (),
        behind_before=before,
        standing="",
        stale=sentence.stale if opener.edition.audience == "review" else (),
    )


def _title(one: Behind) -> str:
    return f"{one.title} ({one.claim.grade})" if one.claim and one.claim.verdict == "holds" else one.title
