"""Finds in a language of its own: how many, whole or in pieces, of which plant, and how sure that is."""

from __future__ import annotations

import re
from collections.abc import Sequence

from narrate.model.findings import Tally
from narrate.model.languages import Noun
from narrate.telling import english, old_finds
from narrate.telling.names import FEW_SEEDS
from narrate.telling.page import Page
from narrate.telling.translated_words import grammar_of, remains_noun, worded

SHOWN = 4
"""Plants that are listed, as in English."""

EVERYTHING = 6
"""Kinds of finds up to which a place with next to nothing in it is told whole."""


def finds_told(page: Page, tallies: Sequence[Tally], *, at_most: int) -> str:
    """'unas 40 semillas de quenopodio, diez granos de alpiste silvestre y …'; what nobody could name is left out."""
    return _listed(page, [t for t in tallies if is_named(page, t)][:at_most] or list(tallies[:1]))


def everything_told(page: Page, tallies: Sequence[Tally]) -> tuple[str, bool]:
    """All that was counted, named or not, and whether that is all: nothing is called the only find that is not."""
    counted = [t for t in tallies if t.counted]
    is_all = len(counted) <= EVERYTHING and all(t.counted or old_finds.is_unknown(page, t) for t in tallies)
    return _listed(page, counted if is_all else counted[:SHOWN]), is_all


def _listed(page: Page, tallies: Sequence[Tally]) -> str:
    texts: list[str] = []
    for tally in tallies:
        gloss = _gloss(page, tally)
        told = not gloss or page.has_told(gloss) or gloss in " ".join(texts)
        find, doubt = find_told(page, tally), _doubtful(page, tally)
        if doubt and not told and not tally.only_cf:
            # Two things of unlike kinds share no brackets: 'cuatro (quizá seis) semillas de galio (planta …)'.
            find, doubt = _NUMBER.sub(rf"\1 ({doubt})", find, count=1), ""
        within = "; ".join(text for text in (doubt, "" if told else gloss) if text)
        texts.append(f"{find}{f' ({within})' if within else ''}")
    return grammar_of(page).listed(texts)


_NUMBER = re.compile(r"^((?:\w+ )?\d[\d.,\s]*(?<=\d)|\w+)")
"""The number at the head of a find: 'cuatro', 'unos 40'."""


def _doubtful(page: Page, tally: Tally) -> str:
    """'quizá 14' of 11 that are sure; where all is in doubt, that it is; empty where all is told as sure."""
    if tally.only_cf:
        said = worded(page, "in doubt")
    elif tally.counted > page.names.surely(tally):
        words = grammar_of(page).language.numbers
        count = words[tally.counted] if tally.counted < len(words) else grammar_of(page).figure(tally.counted)
        said = worded(page, "perhaps", count=count)
    else:
        said = []
    return said[0] if said else ""


def _gloss(page: Page, tally: Tally) -> str:
    """
    What the audience's glossary says of a find, by the name of its part or of its plant; of a plant without a name in
    the language, how the language describes it; empty where nothing.
    """
    described = grammar_of(page).language.described.get(tally.taxon) if tally.taxon is not None else None
    if described:
        return described
    plant = grammar_of(page).language.plants.get(tally.taxon) if tally.taxon is not None else None
    own = grammar_of(page).language.parts.get(f"{tally.taxon} {tally.part}")  # type: ignore[call-overload]
    nouns = [noun for noun in (own, plant) if noun is not None]
    return next((page.audience.glossary[noun.one] for noun in nouns if noun.one in page.audience.glossary), "")


def find_told(page: Page, tally: Tally) -> str:
    """'unas 40 semillas y trozos de semilla de quenopodio', '12 olotes y 14 trozos de olote de maíz'."""
    text = _counted(page, tally)
    plant = _plant(page, tally) if not has_own_part(page, tally) else ""
    if not is_named(page, tally):
        return (worded(page, "unidentified", find=text) or [text])[0]
    return f"{text} {grammar_of(page).table('of')} {plant}" if plant else text


def finds_summed(page: Page, tallies: Sequence[Tally]) -> str:
    """'una semilla de tabaco'; finds of several kinds or places as so many remains of their plant."""
    if len(tallies) == 1:
        return find_told(page, tallies[0])
    text = grammar_of(page).quantity(sum(t.counted for t in tallies), remains_noun(page))
    plant = _plant(page, tallies[0])
    return f"{text} ({plant})" if plant else text


def _counted(page: Page, tally: Tally) -> str:
    """
    The number with its part. What was recorded in pieces is never told as so many whole ones: of few seeds, and of what
    is no seed, both are counted; of many seeds they are told together.
    """
    grammar, sure = grammar_of(page), page.names.surely(tally)
    whole, pieces, both = (_part_noun(page, tally, kind) for kind in ("", PIECES, WITH_PIECES))
    fragments = tally.fragments if pieces is not None else page.names.fragments_of(tally)
    if not fragments and whole is not None:
        return grammar.quantity(sure, whole)
    if fragments == tally.counted and pieces is not None:
        return grammar.quantity(sure, pieces)
    if whole is None or pieces is None or both is None:
        return grammar.quantity(sure, remains_noun(page))
    part = page.dig.packs.words.parts.get(tally.part)
    is_seed = part is not None and bool({"propagule", "edible"} & part.roles)
    if sure < tally.counted or (is_seed and tally.counted >= FEW_SEEDS):
        return grammar.quantity(sure, both)
    return grammar.listed([grammar.quantity(sure - fragments, whole), grammar.quantity(fragments, pieces)])


PIECES, WITH_PIECES = "pieces of ", "whole and pieces of "
"""What stands before the name of a part, as a key of the pack, where a find is in pieces altogether or in part."""


def _part_noun(page: Page, tally: Tally, kind: str) -> Noun | None:
    noun = grammar_of(page).language.parts.get(f"{kind}{own_key(page, tally)}")  # type: ignore[call-overload]
    return noun if noun is not None or kind else remains_noun(page)


def own_key(page: Page, tally: Tally) -> str:
    """The name of a part in the pack: that of one plant ('Vitis seed', a grape pip) before that of all."""
    own = f"{tally.taxon} {tally.part}"
    return own if own in grammar_of(page).language.parts else tally.part


def has_own_part(page: Page, tally: Tally) -> bool:
    """Whether the language has a name for this part of this plant, which names the plant as well."""
    return own_key(page, tally) != tally.part


def _plant(page: Page, tally: Tally) -> str:
    noun = grammar_of(page).language.plants.get(tally.taxon) if tally.taxon is not None else None
    taxon = page.dig.packs.taxa.get(tally.taxon) if tally.taxon is not None else None
    return noun.one if noun is not None else english.italic(taxon.id) if taxon is not None else ""


def own_part(page: Page, part: str) -> bool:
    return any(key.endswith(f" {part}") for key in grammar_of(page).language.parts)


def is_named(page: Page, tally: Tally) -> bool:
    return tally.taxon is not None and not old_finds.is_unknown(page, tally)
