"""Authorities of Latin names: given once in all the narratives of an audience, where the plant is first named."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from narrate.model.ids import Subject
from narrate.model.narrative import Narrative, Sentence
from narrate.model.packs import Packs
from narrate.telling import english
from narrate.telling.names import Names

_READ_FIRST = ("site", "phase", "context")
"""The order in which a report is read. Texts of samples and features stand in none, and name authorities anew."""


def authorities_once(told: Mapping[Subject, Narrative], names: Names, packs: Packs) -> dict[Subject, Narrative]:
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
    for level in _READ_FIRST:
        for subject, narrative in told.items():
            if subject.level == level:
                changed[subject] = _without_those_given(narrative, latin, given)
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
