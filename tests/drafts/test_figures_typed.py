"""Numbers that the analyst typed: those that disagree are named, and nothing else is."""

from __future__ import annotations

from dataclasses import replace

import pytest

from narrate.drafts.figures_typed import strange_numbers
from narrate.drafts.number_words import numbers_in
from tests.drafts.told import LANGUAGES

ENGLISH, SPANISH = LANGUAGES["en"], LANGUAGES["es"]
DRAFT = "12 cupules to 3 kernels (1,402 items; 45%, 95% interval 38–58) lay in three samples."
FIGURES = {"cupules": "12", "density": "8.22", "maize share": "0.453", "items": "1402"}
NAMES = ("maize cupules", "maize kernels")
COMMON = {"litres": (10.0,), "grams": (0.32, 1.85), "samples": (3.0,)}
ELSEWHERE = (("maize cupules", 12.0), ("maize kernels", 3.0), ("maize stalks", 7.0), ("oak wood", 21.0))

STRANGE = {
    "a count": ("There were 15 cupules.", ("15",)),
    "a count in words": ("There were fifteen cupules.", ("fifteen",)),
    "a small count in words": ("There were four cupules.", ("four",)),
    "joined words": ("Twenty-three kernels lay there.", ("Twenty-three",)),
    "hundreds in words": ("A hundred and five cupules lay there.", ("A hundred and five",)),
    "a dozen": ("Two dozen cupules lay there.", ("Two dozen",)),
    "thousands with a comma": ("In all 1,420 items.", ("1,420",)),
    "thousands with a thin space": ("In all 1\u202f420 items.", ("1\u202f420",)),
    "a count that could be a year": ("In all 1420 items lay there.", ("1420",)),
    "a percentage": ("Maize makes up 54% of it.", ("54",)),
    "a percentage with a space": ("Maize makes up 54 % of it.", ("54",)),
    "a percentage in words": ("Maize makes up 54 per cent of it.", ("54",)),
    "one end of a range": ("The interval is 38–55.", ("55",)),
    "both ends of a range": ("The interval is 30 to 35.", ("30", "35")),
    "a range of a count": ("Between them lay 14 to 18 cupules.", ("14", "18")),
    "a decimal": ("A density of 9.4 per litre.", ("9.4",)),
    "litres": ("From 12 litres of soil.", ("12",)),
    "grams": ("It weighed 2.85 g.", ("2.85",)),
    "samples": ("It lay in 15 samples.", ("15",)),
    "samples out of samples": ("It lay in 3 of 15 samples.", ("15",)),
    "hedged and far off": ("Some 50 cupules of about AD 1300.", ("50",)),
    "a full stop after it": ("The cupules number 15.", ("15",)),
    "in brackets": ("Cupules (n=15) lay there.", ("15",)),
    "after a colon": ("Cupules: 15; kernels: 3.", ("15",)),
    "fragments of a thing": ("There were 15 fragments of cupules.", ("15",)),
    "with an adjective": ("15 charred and broken cupules lay there.", ("15",)),
    "beside a year": ("In 2024 the team sorted 15 cupules.", ("15",)),
    "beside a mesh": ("In the 2 mm sieve lay 15 cupules.", ("15",)),
}
RIGHT = {
    "the count": "There were 12 cupules.",
    "the count in words": "There were twelve cupules and three kernels.",
    "a dozen": "A dozen cupules lay there.",
    "a count of the draft's sentence and its sum": "There were 15 cupules and kernels of maize in all.",
    "another find of the subject": "Beside them lay 7 maize stalks.",
    "thousands with and without mark": "In all 1,402 or 1402 or 1\u202f402 items.",
    "hedged thousands": "About 1,400 items, more than 1,000 in all.",
    "a percentage": "Maize makes up 45% (38–58%) of it; 45.3 per cent to be exact.",
    "a percentage with a space": "Maize makes up 45 % of it.",
    "a rounded decimal": "A density of 8.2, or about 8, per litre.",
    "a range that holds the count": "Between 10 and 15 cupules lay there, or 10–15 maize cupules.",
    "litres that are right": "From 10 litres of soil, a 10-litre sample, 10 L.",
    "grams that are right": "Nutshell weighed 0.32 g and wood 1.85 g.",
    "samples that are right": "It lay in all 3 samples, and in one, or in 2 of them.",
    "n of N samples": "It lay in 2 of 3 samples (2/3).",
}
NO_COUNT = {
    "fragments of nothing here": "The team set 12 fragments aside.",
    "fragments of something else": "Beside them lay 40 fragments of daub and 6 pieces of fired clay.",
    "other things": "Eleven diggers and 23 students sorted for 40 days.",
    "a confidence": "The interval is a 95% interval, at 68 % probability.",
    "a share of another thing": "About 40% sorted, 60 % of the slope; 25 % excavated.",
    "n of N of other things": "This is so in 14 of 31 villages, and in nine out of ten houses.",
    "fractions": "1/4 of the heavy fraction was sorted, 3/8 of another.",
    "years": "It dates to AD 950–1050, cal AD 1300, 1200 BC, 650 cal BP, or the 1990s.",
    "years ago": "This was 900 years ago, or some 1,000 years BP.",
    "a radiocarbon age": "One seed gave 650 ± 30 BP (Beta-123456, on maize kernels).",
    "a stable isotope": "Its ratio was –9.5 ± 0.3.",
    "a citation": "This agrees with Miller 1988 and with others (Scarry and Steponaitis 1997, 107; 1993: 12–15).",
    "a bare year": "It was dug in 2024 and again in 2026.",
    "years of digs": "They dug it in 1998 and 1999.",
    "a date": "It was floated on 25 November 2026, 2026-11-25, 25/11/2026 and November 25, 2026.",
    "an hour": "At 14:30 the fire was lit.",
    "centuries": "In the 13th century, or the thirteenth, after 2 centuries.",
    "ordinals": "The twenty-first cupule, the 12th kernel and the third sample.",
    "ids": "C12 and S014 agree with context 7, samples 4 and 5, pit 23 and feature 104.",
    "tables and figures": "See table 4, fig. 15 and p. 72, Tables 3 and 4.",
    "meshes and sizes": "Sieves of 0.25 mm and 1 mm; cupules 4–6 mm long; a pit 40 cm deep and 1.2 m wide.",
    "lengths by widths": "Kernels of 8 × 6 mm, and a pit of 2 x 3 m.",
    "heat": "Kernels pop at 180 °C, and char at 250–300 °C or 400 degrees.",
    "land": "A field of 2 ha would yield 30 kg, or 500 ml.",
    "enlargement": "Seen at 40× and x200.",
    "colours": "The fill was 10YR 3/2.",
    "a grid": "Square 4 at N 104 E 52.",
    "small words of no count": "The two readings differ; one may be right; there are four questions.",
    "parts of one": "Two thirds were broken, and nine times out of ten that is so.",
    "numbers that stand alone": "Nine of them differ. Some say 40.",
    "an address": "See https://example.org/a/2019/45 and doi:10.1234/5678.",
    "litres of each": "Cores of 2 litres each were taken.",
    "no number at all": "Somebody often wonders; none knows.",
}
"""Ways of writing years, ages, citations and sizes: common practice, no source."""
SPANISH_DRAFT = "Entre ellos había unos 270 granos de maíz, 17 trozos de olote y 1.402 restos en 17,5 litros."
SPANISH_FIGURES = {"C12/found.zea-mays.kernel": "268", "C12/found.zea-mays.cupule": "17"}
SPANISH_COMMON = {"litres": (17.5,), "grams": (), "samples": (2.0,)}
SPANISH_STRANGE = {
    "una cifra": ("Había 19 trozos de olote.", ("19",)),
    "en palabras": ("Había veintitrés trozos de olote.", ("veintitrés",)),
    "con y": ("Había treinta y un trozos de olote.", ("treinta y un",)),
    "cientos": ("Había doscientos noventa granos de maíz.", ("doscientos noventa",)),
    "miles": ("En total 1.420 restos.", ("1.420",)),
    "litros con coma": ("De 18,5 litros de tierra.", ("18,5",)),
    "muestras": ("En 12 muestras.", ("12",)),
    "una docena": ("Dos docenas de granos de maíz.", ("Dos docenas",)),
}
SPANISH_RIGHT = {
    "la cifra": "Había 268 granos de maíz y 17 trozos de olote.",
    "en palabras": "Había diecisiete trozos de olote.",
    "más o menos": "Unos 270 granos de maíz, más de 200 granos.",
    "miles": "En total 1402, 1.402 o 1\u202f402 restos.",
    "litros": "De 17,5 litros de tierra, en dos muestras.",
    "años": "Hacia 1250–1350 d. C., 300 a. C., hace 700 años, en el siglo 13.",
    "fechas": "Se excavó el 25 de noviembre de 2026 y en 1998.",
    "medidas": "Una fosa de 40 cm, granos de 5 mm, 200 °C.",
    "ordinales": "El vigésimo grano, el 3.er día y la 2ª muestra.",
    "artículos": "Un grano de maíz y una semilla.",
    "otras cosas": "Doce personas y 40 fragmentos de cerámica.",
    "porcentajes de otra cosa": "El 40 % de las casas, con 95 % de confianza.",
}


@pytest.mark.parametrize("case", STRANGE)
def test_a_number_that_disagrees_is_named_as_it_was_written(case: str) -> None:
    """Digits, words, percentages, ranges and thousands marks: each is found."""
    text, expected = STRANGE[case]

    found = strange_numbers(text, DRAFT, FIGURES, ENGLISH, names=NAMES, common=COMMON, elsewhere=ELSEWHERE)
    assert found == expected


@pytest.mark.parametrize("case", {**RIGHT, **NO_COUNT})
def test_a_number_that_agrees_or_is_no_figure_is_let_pass(case: str) -> None:
    """What is right, rounded, a year, a name, a size or a count of other things is no false alarm."""
    text = {**RIGHT, **NO_COUNT}[case]

    assert strange_numbers(text, DRAFT, FIGURES, ENGLISH, names=NAMES, common=COMMON, elsewhere=ELSEWHERE) == ()


@pytest.mark.parametrize("case", SPANISH_STRANGE)
def test_a_spanish_number_that_disagrees_is_named(case: str) -> None:
    """Decimal commas, 'treinta y uno', 'doscientos': read by the tables of the language."""
    text, expected = SPANISH_STRANGE[case]

    assert strange_numbers(text, SPANISH_DRAFT, SPANISH_FIGURES, SPANISH, common=SPANISH_COMMON) == expected


@pytest.mark.parametrize("case", SPANISH_RIGHT)
def test_a_spanish_number_that_agrees_or_is_no_figure_is_let_pass(case: str) -> None:
    """Years, ordinals, articles and sizes are no false alarm in Spanish either."""
    text = SPANISH_RIGHT[case]

    assert strange_numbers(text, SPANISH_DRAFT, SPANISH_FIGURES, SPANISH, common=SPANISH_COMMON) == ()


def test_a_language_without_a_table_of_numbers_is_not_read() -> None:
    """Nothing is called strange by the rules of another language."""
    silent = replace(ENGLISH, typed={})

    assert strange_numbers("There were 15 cupules.", DRAFT, FIGURES, silent, names=NAMES) == ()


WORDS = {
    "twelve": 12,
    "twenty-three": 23,
    "ninety nine": 99,
    "a hundred and five": 105,
    "two hundred and forty-one": 241,
    "three thousand and six": 3006,
    "two thousand four hundred": 2400,
    "a dozen": 12,
    "two dozen": 24,
}
SPANISH_WORDS = {
    "doce": 12,
    "veintitrés": 23,
    "treinta y una": 31,
    "ciento cinco": 105,
    "doscientas cuarenta y una": 241,
    "tres mil seis": 3006,
    "mil cuatrocientos": 1400,
    "una docena": 12,
}


@pytest.mark.parametrize("words", WORDS)
def test_numbers_in_words_have_their_value(words: str) -> None:
    """Tens, hundreds, thousands and dozens."""
    assert [number.value for number in numbers_in(f"There were {words} of them.", ENGLISH)] == [WORDS[words]]


@pytest.mark.parametrize("words", SPANISH_WORDS)
def test_spanish_numbers_in_words_have_their_value(words: str) -> None:
    """Tens with 'y', hundreds that agree with their noun, thousands and dozens."""
    assert [number.value for number in numbers_in(f"Había {words} ahí.", SPANISH)] == [SPANISH_WORDS[words]]


@pytest.mark.parametrize(
    "text", ["S014 and C12", "version 1.2.3", "Figure A-1x", "mankind, often, atone, weight", "the twenty-first, 12th"]
)
def test_what_only_looks_like_a_number_is_none(text: str) -> None:
    """Ids, versions, ordinals, and words that hold the letters of a number."""
    assert numbers_in(text, ENGLISH) == ()
