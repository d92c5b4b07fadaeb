"""
Grammar of Spanish from its tables.

Rules: Real Academia Española & Asociación de Academias de la Lengua Española, Nueva gramática de la lengua española
(2009) and Ortografía de la lengua española (2010), from memory: e for y before the sound i, u for o before the sound o,
el before stressed a, del and al, the comma of decimals, no mark in numbers of four figures.
"""

from __future__ import annotations

import pytest

from narrate.model.languages import Noun
from narrate.reading.packs import read_packs
from narrate.telling.grammar import Grammar


@pytest.fixture(scope="module")
def spanish() -> Grammar:
    return Grammar(language=read_packs(())[0].languages["es"])


@pytest.mark.parametrize(
    ("items", "word", "told"),
    [
        (["maíz"], "and", "maíz"),
        (["maíz", "frijoles"], "and", "maíz y frijoles"),
        (["maíz", "frijoles", "calabaza"], "and", "maíz, frijoles y calabaza"),
        (["nogal", "hicoria"], "and", "nogal e hicoria"),
        (["verdolaga", "iva"], "and", "verdolaga e iva"),
        (["agua", "hielo"], "and", "agua y hielo"),
        (["maíz", "hierba"], "and", "maíz y hierba"),
        (["arce", "olmo"], "or", "arce u olmo"),
        (["tallos", "hojas"], "or", "tallos u hojas"),
        (["robles", "pinos"], "or", "robles o pinos"),
    ],
)
def test_lists_join_as_they_are_spoken(items: list[str], word: str, told: str, spanish: Grammar):
    """'y' becomes 'e' before the sound i, but not before ie; 'o' becomes 'u' before the sound o."""
    assert spanish.listed(items, word=word) == told


@pytest.mark.parametrize(
    ("noun", "plural", "told"),
    [
        (Noun(one="hogar", many="hogares", gender="m"), False, "el hogar"),
        (Noun(one="fosa", many="fosas", gender="f"), False, "la fosa"),
        (Noun(one="hogar", many="hogares", gender="m"), True, "los hogares"),
        (Noun(one="fosa", many="fosas", gender="f"), True, "las fosas"),
        (Noun(one="área", many="áreas", gender="f"), False, "el área"),
        (Noun(one="área", many="áreas", gender="f"), True, "las áreas"),
    ],
)
def test_articles_agree_with_the_noun(noun: Noun, plural: bool, told: str, spanish: Grammar):
    """Gender and number; 'el' before a stressed a of a feminine noun in the singular."""
    assert spanish.the(noun, plural=plural) == told


@pytest.mark.parametrize(
    ("number", "feminine", "masculine"),
    [
        (1, "una semilla", "un grano"),
        (2, "dos semillas", "dos granos"),
        (10, "diez semillas", "diez granos"),
        (17, "17 semillas", "17 granos"),
        (43, "43 semillas", "43 granos"),
        (143, "unas 140 semillas", "unos 140 granos"),
        (60, "60 semillas", "60 granos"),
        (1038, "unas 1040 semillas", "unos 1040 granos"),
        (12344, "unas 12\u202f340 semillas", "unos 12\u202f340 granos"),
    ],
)
def test_quantities_agree_and_are_rounded_openly(number: int, feminine: str, masculine: str, spanish: Grammar):
    """Small numbers are words, great ones are rounded to ten and said to be so; four figures take no mark."""
    seed, grain = Noun(one="semilla", many="semillas", gender="f"), Noun(one="grano", many="granos", gender="m")

    assert (spanish.quantity(number, seed), spanish.quantity(number, grain)) == (feminine, masculine)


@pytest.mark.parametrize(
    ("start", "end", "told"),
    [
        (950, 1050, "950–1050 d. C."),
        (-1200, -1100, "1200–1100 a. C."),
        (-100, 50, "100 a. C.–50 d. C."),
        (None, 900, "900 d. C."),
        (None, None, ""),
    ],
)
def test_years_bear_their_era(start: int | None, end: int | None, told: str, spanish: Grammar):
    """d. C. and a. C. stand once behind a range of one era."""
    assert spanish.years(start, end) == told


@pytest.mark.parametrize(
    ("raw", "told"),
    [
        ("tierra de el hogar C12", "Tierra del hogar C12."),
        ("vamos a el horno", "Vamos al horno."),
        ("tierra de la fosa", "Tierra de la fosa."),
        ("data de hacia 950 d. C.", "Data de hacia 950 d. C."),
    ],
)
def test_a_finished_sentence_contracts_and_has_one_stop(raw: str, told: str, spanish: Grammar):
    """'de el' is 'del', 'a el' is 'al'; the full stop of an era ends the sentence."""
    assert spanish.finished(raw) == told
