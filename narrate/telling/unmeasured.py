"""Marks that somebody would have written down had they been taken, and that nobody did: sizes of seeds of the crops."""

from __future__ import annotations

from narrate.model.narrative import Sentence
from narrate.model.observations import Observation
from narrate.telling import english
from narrate.telling.behind import is_meant
from narrate.telling.citations import works_cited
from narrate.telling.observations import notes_of
from narrate.telling.page import Page
from narrate.telling.plan import standing

NAMED = 4
"""Plants whose whole remains are counted for it."""


def unmeasured_sentences(page: Page) -> list[Sentence]:
    """
    What a mark is worth where a reading that it bears on is told and no note of the subject has it.

    'No size of these seeds is on record …: 711 of chenopod, 96 of sumpweed …'. The review says what to measure.
    """
    if page.is_plain or page.subject.level not in ("phase", "site"):
        return []
    sentences: list[Sentence] = []
    for seen in page.dig.packs.observations:
        if seen.wanting:
            sentences += _wanting(page, seen)
    return sentences


def _wanting(page: Page, seen: Observation) -> list[Sentence]:
    subjects = [page.subject]
    if page.subject.level == "site":
        subjects += [s for s in page.dig.findings.subjects if s.level == "phase"]
    claims = [page.dig.claims.find(subject, statement) for subject in subjects for statement in seen.agrees_with]
    held = [c for c in claims if c is not None and c.verdict == "holds" and standing(c) == "reading"]
    if not held or _is_on_record(page, seen):
        return []
    whole: dict[str, int] = {}
    refs: list[str] = []
    for tally in page.found.tallies:
        number = tally.counted - tally.fragments - tally.doubtful + tally.doubtful_fragments
        is_old = tally.condition in page.dig.ancient
        if is_old and number > 0 and seen.of is not None and is_meant(seen.of, tally, page.dig.packs):
            name = page.names.plant(tally.taxon, tally.written)
            whole[name] = whole.get(name, 0) + number
            refs += [tally.ref] if tally.ref else []
    if not whole:
        return []
    first = sorted(whole.items(), key=lambda pair: (-pair[1], pair[0]))[:NAMED]
    listed = page.listed([f"{name} ({page.names.figure(number)})" for name, number in first])
    refs = [held[0].id, *refs]
    if page.is_review:
        return page.say(refs, f"measure the whole seeds of {listed}: {seen.wanting}")
    text = english.in_last_brackets(seen.wanting, works_cited(page, seen.sources))
    return page.say(refs, f"{text}; whole seeds of {listed} wait to be measured")


def _is_on_record(page: Page, seen: Observation) -> bool:
    project = page.dig.project
    contexts = [c for c in project.contexts if page.subject.level == "site" or c.phase == page.subject.id]
    return any(note.observation.id == seen.id for context in contexts for note in notes_of(page, context))
