"""The words of certainty, as the section explains them."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
import pytest

from narrate.documents.blocks import Paragraph
from narrate.documents.certainty import certainty
from narrate.documents.outline import outline
from narrate.judging.judge import REPLICATES
from narrate.judging.weigh import grade_of, support
from narrate.model.claims import GRADE_NAMES
from narrate.pipeline.editions import edition_of
from narrate.pipeline.judged import Judged


@pytest.fixture(scope="module")
def said(judged_example: Judged) -> list[str]:
    edition = edition_of("review", judged_example, {}, (), "test")
    return [block.text for block in certainty(edition) if isinstance(block, Paragraph)]


def test_the_section_explains_its_words(judged_example: Judged, said: list[str]) -> None:
    """What is said of certainty stands in the one outline from which all four media are made."""
    texts = [b.text for b in outline(edition_of("review", judged_example, {}, (), "test")) if isinstance(b, Paragraph)]

    assert said and set(said) <= set(texts)


def test_the_four_grades_stand_in_their_order(said: list[str]) -> None:
    """Each grade has a line of its own, the weakest first, with the support from which it may be used."""
    starts = [next(i for i, text in enumerate(said) if text.startswith(f"'{grade}' (")) for grade in GRADE_NAMES[1:]]

    assert all(later - before == 1 for before, later in pairwise(starts))
    assert said[starts[0]].startswith("'consistent with' (support from 0.50): ")
    assert said[starts[3]].startswith("'strongly supports' (support from 0.93): ")


@pytest.mark.parametrize(
    ("weights", "grade"),
    [
        (("weak",), "consistent with"),
        (("moderate",), "suggests"),
        (("strong",), "supports"),
        (("weak", "weak"), "suggests"),
        (("moderate", "weak"), "supports"),
        (("moderate", "moderate"), "strongly supports"),
        (("strong", "strong"), "strongly supports"),
    ],
)
def test_what_a_grade_asks_is_what_it_is_given_for(judged_example: Judged, weights: list[str], grade: str) -> None:
    """One strong argument supports, as a moderate and a weak one do; two moderate ones strongly support."""
    held = [np.array([True]) for _ in weights]
    weighed = support(-0.9, [judged_example.packs.weights[name] for name in weights], held)

    assert grade_of(float(weighed[0])) == grade


def test_limits_are_told_by_the_grade_that_they_hold(said: list[str]) -> None:
    """A tertiary deposit holds a reading at 'suggests', one sample at 'supports', a disturbed context lower still."""
    (text,) = [one for one in said if one.startswith("Whatever the sum")]
    weak, rest = text.split("t 'suggests'")
    middle, firm = rest.split("t 'supports'")

    assert "context is disturbed" in weak
    assert "deposit is tertiary" in middle
    assert "only one sample was taken" in firm


def test_draws_are_explained_with_their_number(said: list[str]) -> None:
    """The number of draws is that which judging makes, and the phrase is the one that the text uses."""
    (text,) = [one for one in said if "drawn anew at random" in one]

    assert f"every count was replaced {REPLICATES} times" in text
    assert "Where it is below 80%, what is supported is told with that share" in text
    assert any("this track record comes with narrate test" in one for one in said)
