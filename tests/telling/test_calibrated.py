"""
Words that claim more than the evidence.

The rules are those of calibrated language: readings by rules bear no likelihood and no certainty (Mastrandrea, M. D. et
al. 2010, Guidance Note for Lead Authors of the IPCC Fifth Assessment Report, on evidence kept apart from likelihood;
from memory). That absence is no non-use, and that edible is not eaten, are common practice, no source.
"""

from __future__ import annotations

import pytest

from narrate.model.languages import Language
from narrate.reading.packs import read_packs
from narrate.telling.calibrated import overclaimed


@pytest.fixture(scope="module")
def english() -> Language:
    return read_packs(("eastern-north-america",))[0].languages["en"]


@pytest.mark.parametrize(
    ("text", "words", "sort"),
    [
        ("The cupules prove that cobs were burned.", "prove", "certainty"),
        ("This shows that maize was grown here.", "shows that", "certainty"),
        ("They must have stored nuts.", "must have", "certainty"),
        ("Certainly this was a hearth.", "Certainly", "certainty"),
        ("It was definitely fuel.", "definitely", "certainty"),
        ("There is no doubt about it.", "no doubt", "certainty"),
        ("The hamlet was occupied in autumn.", "occupied in autumn", "season"),
        ("People lived here during the winter.", "lived here during the winter", "season"),
        ("It was an autumn camp.", "autumn camp", "season"),
        ("The pit was filled in late summer.", "filled in late summer", "season"),
        ("They did not use maize.", "did not use", "absence"),
        ("Beans were not grown.", "were not grown", "absence"),
        ("They never ate nuts.", "never ate", "absence"),
        ("People ate persimmons.", "ate", "eating"),
        ("Persimmons were eaten.", "were eaten", "eating"),
    ],
)
def test_no_grade_allows_these_words(text: str, words: str, sort: str, english: Language):
    """Certainty, non-use, eating and seasons of living are refused even of the firmest reading."""
    found = overclaimed(text, english, ["strongly supports"])

    assert [(one.words, one.sort) for one in found] == [(words, sort)]
    assert text[found[0].start : found[0].end] == words


@pytest.mark.parametrize(
    ("text", "grade", "words"),
    [
        ("The remains strongly support it.", "supports", ["strongly support"]),
        ("The remains strongly support it.", "strongly supports", []),
        ("The remains support it.", "suggests", ["support"]),
        ("The remains support it.", "supports", []),
        ("The remains suggest it.", "consistent with", ["suggest"]),
        ("The remains suggest it.", "suggests", []),
        ("The remains are consistent with it.", "consistent with", []),
        ("It looks very much as if it was so.", "supports", ["very much as if"]),
    ],
)
def test_words_of_a_grade_need_the_grade(text: str, grade: str, words: list[str], english: Language):
    """A firmer word than the reading's own is found; the reading's own is not."""
    assert [one.words for one in overclaimed(text, english, [grade])] == words  # type: ignore[list-item]


@pytest.mark.parametrize(
    "text",
    [
        "This does not prove that cobs were burned.",
        "The counts cannot show that maize was grown.",
        "That is no proof.",
        "This is kept as a result and is no sign that plants were not used.",
        "That does not mean that people used no plants here.",
        "The analyst wrote “certainly maize” on the sheet.",
        "Persimmons are eaten to this day.",
        "The remains support gathering in autumn.",
        "The provenance of the improved sample is known.",
    ],
)
def test_denials_quotations_and_the_present_are_left(text: str, english: Language):
    """What denies a proof, quotes another or speaks of today claims nothing."""
    assert overclaimed(text, english, ["supports"]) == ()


def test_without_grades_only_the_words_that_none_allows(english: Language):
    """A sentence of which nobody knows what it rests on may say 'supports' and may not say 'proves'."""
    found = overclaimed("This supports it and proves it.", english)

    assert [one.words for one in found] == ["proves"]
    assert found[0].says == (
        "'proves' claims more than the evidence bears: remains of plants weigh for a reading and do not prove it"
    )
