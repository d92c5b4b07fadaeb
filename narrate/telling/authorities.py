"""Authorities of Latin names: given once in all the narratives of an audience, where the plant is first named."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

from narrate.model.ids import SITE, Subject
from narrate.model.narrative import Narrative, Sentence
from narrate.model.packs import Packs
from narrate.model.project import Project
from narrate.telling import english
from narrate.telling.names import Names


def _as_read(project: Project) -> Iterator[Subject]:
    """
    The order in which a report is read: each phase with its contexts, contexts without a phase, then the whole dig.

    Texts of samples and features stand in none, and name authorities anew.
    """
    for phase in project.phases:
        yield Subject(level="phase", id=phase.id)
        yield from (Subject(level="context", id=c.id) for c in project.contexts if c.phase == phase.id)
    yield from (Subject(level="context", id=c.id) for c in project.contexts if project.phase(c.phase) is None)
    yield Subject(level="site", id=SITE)


def authorities_once(
    told: Mapping[Subject, Narrative], names: Names, packs: Packs, project: Project
) -> dict[Subject, Narrative]:
    """
    The narratives, each authority left where a report names the plant first.

    A report gives 'Chenopodium berlandieri Moq.' once, and 'Chenopodium berlandieri' from then on.
    """
    if names.audience.words.get("authorities", "no") != "yes":
        return dict(told)
    latin = {
        f"{names.latin(taxon)} {english.literal(taxon.authority)}": names.latin(taxon)
        for taxon in packs.taxa.values()
        if taxon.rank == "species" and taxon.authority
    }
    given: set[str] = set()
    changed = dict(told)
    for subject in _as_read(project):
        if subject in told:
            changed[subject] = _without_those_given(told[subject], latin, given)
    return changed


def _without_those_given(narrative: Narrative, latin: Mapping[str, str], given: set[str]) -> Narrative:
    def bare(sentence: Sentence) -> Sentence:
        text = sentence.text
        for whole, name in latin.items():
            if whole in text:
                text = text.replace(whole, name) if whole in given else text
                given.add(whole)
        return sentence if text == sentence.text else replace(sentence, text=text)

    sections = tuple(
        replace(section, paragraphs=tuple(tuple(bare(s) for s in paragraph) for paragraph in section.paragraphs))
        for section in narrative.sections
    )
    return replace(narrative, sections=sections)
