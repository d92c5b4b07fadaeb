"""Numbers that the analyst typed: those that disagree are named, and nothing else is."""

from __future__ import annotations

import pytest

from narrate.drafts.figures_typed import strange_numbers
from narrate.drafts.number_words import numbers_in

DRAFT = "12 cupules to 3 kernels (1,402 items; 45%, 95% interval 38–58) lay in three samples."
FIGURES = {"cupules": "12", "density": "8.22", "maize share": "0.453", "items": "1402"}
NAMES = ("maize cupules", "maize kernels")
COMMON = {"litres": (10.0,), "grams": (0.32, 1.85), "samples": (3.0,)}

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
    "a percentage in words": ("Maize makes up 54 per cent of it.", ("54",)),
    "one end of a range": ("The interval is 38–55.", ("55",)),
    "both ends of a range": ("The interval is 30 to 55.", ("30", "55")),
    "a decimal": ("A density of 9.4 per litre.", ("9.4",)),
    "litres": ("From 12 litres of soil.", ("12",)),
    "grams": ("It weighed 2.85 g.", ("2.85",)),
    "samples": ("It lay in 15 samples.", ("15",)),
    "hedged and far off": ("Some 50 cupules of about AD 1300.", ("50",)),
    "a full stop after it": ("The cupules number 15.", ("15",)),
    "in brackets": ("Cupules (n=15) lay there.", ("15",)),
}
RIGHT = {
    "the count": "There were 12 cupules.",
    "the count in words": "There were twelve cupules and three kernels.",
    "a dozen": "A dozen cupules lay there.",
    "thousands with and without mark": "In all 1,402 or 1402 or 1\u202f402 items.",
    "hedged thousands": "About 1,400 items, more than 1,000 in all.",
    "a percentage": "Maize makes up 45% (38–58%) of it; 45.3 per cent to be exact.",
    "a rounded decimal": "A density of 8.2, or about 8, per litre.",
    "years": "It dates to AD 950–1050, cal AD 1300, 1200 BC, 650 cal BP, or the 1990s.",
    "a radiocarbon age": "One seed gave 650 ± 30 BP.",
    "a citation": "This agrees with Miller 1988 and with others (Scarry and Steponaitis 1997, 107).",
    "a bare year": "It was dug in 2024 and again in 2026.",
    "a date": "It was floated on 25 November 2026.",
    "ids": "C12 and S014 agree with context 7, samples 4 and 5, pit 23 and feature 104.",
    "tables and figures": "See table 4, fig. 15 and p. 72.",
    "meshes and sizes": "Sieves of 0.25 mm and 1 mm; grains 4–6 mm long; a pit 40 cm deep.",
    "litres that are right": "From 10 litres of soil, a 10-litre sample, 10 L.",
    "grams that are right": "Nutshell weighed 0.32 g and wood 1.85 g.",
    "samples that are right": "It lay in all 3 samples.",
    "small words of no count": "The two readings differ; one may be right; there are four questions.",
    "parts of one": "Two thirds were broken, and nine times out of ten that is so.",
    "two numbers in words": "Twelve and three of them.",
    "no number at all": "Somebody often wonders; none knows.",
}
"""Ways of writing years, ages, citations and sizes: common practice, no source."""


@pytest.mark.parametrize("case", STRANGE)
def test_a_number_that_disagrees_is_named_as_it_was_written(case: str) -> None:
    """Digits, words, percentages, ranges and thousands marks: each is found."""
    text, expected = STRANGE[case]

    assert strange_numbers(text, DRAFT, FIGURES, names=NAMES, common=COMMON) == expected


@pytest.mark.parametrize("case", RIGHT)
def test_a_number_that_agrees_or_is_no_figure_is_let_pass(case: str) -> None:
    """What is right, rounded, a year, a name or a size is no false alarm."""
    assert strange_numbers(RIGHT[case], DRAFT, FIGURES, names=NAMES, common=COMMON) == ()


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


@pytest.mark.parametrize("words", WORDS)
def test_numbers_in_words_have_their_value(words: str) -> None:
    """Tens, hundreds, thousands and dozens."""
    assert [number.value for number in numbers_in(f"There were {words} of them.")] == [WORDS[words]]


@pytest.mark.parametrize("text", ["S014 and C12", "version 1.2.3", "Figure A-1x", "mankind, often, atone, weight"])
def test_what_only_looks_like_a_number_is_none(text: str) -> None:
    """Ids, versions, and words that hold the letters of a number."""
    assert numbers_in(text) == ()
