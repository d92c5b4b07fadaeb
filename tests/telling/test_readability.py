"""The reading grade, against sentences whose grade is published."""

from __future__ import annotations

import pytest

from narrate.telling.readability import grade, readability, syllables


@pytest.mark.parametrize(
    ("text", "published"),
    [
        ("The cat sat on the mat.", -1.45),
        ("This sentence, taken as a reading passage unto itself, is being used to prove a point.", 7.6),
        ("The Australian platypus is seemingly a hybrid of a mammal and reptilian creature.", 11.3),
    ],
)
def test_grade_of_published_sentences(text: str, published: float):
    """
    Sentences quoted with their Flesch-Kincaid grade in general reference works on readability (grades from memory);
    formula: Kincaid et al. 1975, Research Branch Report 8-75.
    """
    assert grade(text) == pytest.approx(published, abs=0.05)


def test_words_sentences_and_syllables_are_counted():
    """16 words, one sentence, 23 syllables, counted by hand."""
    counted = readability("This sentence, taken as a reading passage unto itself, is being used to prove a point.")

    assert (counted.words, counted.sentences, counted.syllables) == (16, 1, 23)


def test_latin_and_headings_do_not_count():
    """A Latin name in brackets and a heading leave the grade as it was."""
    plain = "We found corn."

    assert grade("## What we found here\n\nWe found corn (*Zea mays*).") == grade(plain)


@pytest.mark.parametrize(
    ("word", "number"),
    [
        ("cat", 1), ("hearth", 1), ("kernels", 2), ("burned", 1), ("hickory", 3), ("goosefoot", 2), ("autumn", 2),
        ("people", 2), ("gathered", 2), ("fires", 1), ("seeds", 1), ("planted", 2), ("dishes", 2), ("little", 2),
        ("persimmon", 3), ("1,402", 1), ("S014", 1), ("nutshell", 2), ("charcoal", 2), ("littered", 2), ("places", 2),
    ],
)  # fmt: skip
def test_syllables_as_spoken(word: str, number: int):
    """Syllables agree with the word said aloud (counted by hand)."""
    assert syllables(word) == number


def test_no_text_has_grade_zero():
    """An empty text has no grade to speak of."""
    assert grade("") == 0.0
