"""Words for how widely something turned up keep to the share of samples."""

from __future__ import annotations

import re

import pytest

from narrate.model.claims import Evidence
from narrate.model.ids import SITE
from narrate.telling.how_widely import share_word, widely_told
from tests.telling.told_once import ToldOnce


@pytest.fixture(scope="module")
def told(told_of_open: ToldOnce) -> dict[str, str]:
    found = told_of_open["public"]
    return {subject.id: narrative.text for subject, narrative in found.items()}


def _evidence(k: float, n: int) -> Evidence:
    return Evidence(measure="ubiquity", of=k, n=n, verdict="holds")


@pytest.mark.parametrize(
    ("k", "n", "word"),
    [(10, 10, "all"), (9, 10, "nearly all"), (33, 49, "most"), (11, 25, "many"), (9, 23, "several"), (1, 10, "a few")],
)
def test_a_word_keeps_to_its_share(k: int, n: int, word: str):
    """Nine tenths are nearly all, six tenths most, four tenths many (judgement of the makers)."""
    assert share_word(k, n) == word


def test_the_smallest_share_gives_the_word():
    """Of two plants that both turned up, the rarer one is the measure."""
    text = "field weeds and corn both turned up in many places"

    assert widely_told(text, [_evidence(20, 20), _evidence(3, 20)]).endswith("both turned up in several of the samples")


@pytest.mark.parametrize(
    ("share", "word"), [(0.28, "more than a quarter"), (0.36, "more than a third"), (0.6, "more than half")]
)
def test_much_is_told_as_its_share(share: float, word: str):
    """28 of 100 pieces of wood are more than a quarter, and 'much' says nobody how many."""
    evidence = Evidence(measure="share.pine", value=share, verdict="holds")

    assert widely_told("much of the burned wood was pine", [evidence]) == f"{word} of the burned wood was pine"
    assert widely_told("many of the pieces were pine", [evidence]) == f"{word} of the pieces were pine"


def test_a_text_is_kept_where_no_share_is_known():
    """A rule that looked at no samples says what it says."""
    assert widely_told("seeds turned up in many places", []) == "seeds turned up in many places"


def test_no_public_page_says_how_widely_without_the_share(told: dict[str, str]):
    """How widely a thing turned up is told of the samples, by its share of them."""
    assert [id for id, text in told.items() if re.search(r"nearly everywhere|in (?:many|several) places", text)] == []
    assert "its of corn cob turned up in most of the samples" in told["late"]


def test_tobacco_of_both_hamlets_is_no_difference(told: dict[str, str]):
    """One seed in C07 of the Early hamlet is enough that tobacco is not told of the Late hamlet alone."""
    assert "But the Early hamlet gave one tobacco seed too (rubbish pit C07), and these finds are too few" in told[SITE]
    assert not re.search(r"[Oo]nly in the Late hamlet[^.]*tobacco", told[SITE])


def test_what_one_phase_hints_at_is_told_as_a_hint(told: dict[str, str]):
    """Wild fruit as food is upheld in too few draws for the dig: visitors see which places speak for it, and how far."""
    assert "as a whole hint that people used wild fruit as food" not in told[SITE]
    assert "Storage pit C06 speaks for wild fruit as food, and storage pit C14, rubbish heap C16" in told[SITE]
    assert "But for the dig as a whole these are faint signs, " in told[SITE]


def test_one_strength_of_wild_fruit_on_all_pages(told: dict[str, str]):
    """C06 speaks for it, three late places hint at it, and of neither hamlet as a whole it can be said."""
    assert "Storage pit C06 alone speaks for wild fruit as food, and we cannot say it of the Early hamlet" in told["early"]
    assert "Of wild fruit we cannot say it for the Late hamlet as a whole." in told["late"]
    assert "as a whole, the signs of fruit picked in old fields and clearings are faint, and" in told["late"]


def test_hearths_share_their_wood_fires(told: dict[str, str]):
    """Two hearths that both burned wood have that in common, and each has its own story beside it."""
    assert "Apart from wood fires, the two hearths tell different stories: in hearth C11 " in told["late"]
    assert "no one story" not in told["early"]


def test_a_near_empty_deposit_lists_what_could_be_counted(told: dict[str, str]):
    """Charcoal that was only weighed lay there too."""
    for id in ("C09", "C18", "C21"):
        assert "e found only " in told[id] and "All we found" not in told[id]
