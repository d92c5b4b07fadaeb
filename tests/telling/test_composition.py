"""What a deposit is made of, held against the rows of the count sheets of the example."""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from narrate.model.ids import SITE, Subject
from narrate.model.narrative import Narrative
from tests.telling.told_once import ToldOnce

Told = Mapping[str, Mapping[Subject, Narrative]]


def _text(told_of_example: ToldOnce, audience: str, id: str) -> str:
    return told_of_example[audience][Subject(level="context", id=id)].text


@pytest.mark.parametrize(
    ("id", "grams"),
    [("C18", ", 0.26 g in all: "), ("C09", ", the wood charcoal weighing 0.02 g in all; so few remains")],
)
def test_a_weight_of_all_wood_is_no_find_beside_the_fragments_named(told_of_example: ToldOnce, id: str, grams: str):
    """S044 of C18 notes "all wood over 2 mm" beside the 0.26 g: the nine fragments named are part of it."""
    text = _text(told_of_example, "report", id)

    assert grams in text
    assert "of indeterminate charcoal" not in text


@pytest.mark.parametrize(
    ("id", "told_as"),
    [
        ("C01", "sumpweed (*Iva annua* L., 4, 2 of them cf.)"),
        ("C06", "wild strawberry (*Fragaria virginiana* Mill., 39, one of them cf.)"),
        ("C16", "chenopod (*Chenopodium berlandieri*, 4, one of them cf.)"),
    ],
)
def test_names_that_are_only_cf_are_counted_and_told_in_short_lists_too(
    told_of_example: ToldOnce, id: str, told_as: str
):
    """As counts/light_fraction.csv has them: two of S001, one of S015, one of S037."""
    assert told_as in _text(told_of_example, "report", id)


def test_finds_that_are_only_partly_charred_are_told_as_such(told_of_example: ToldOnce):
    """Of five bramble seeds of C16 one, of S038, is partly charred."""
    assert "bramble (*Rubus* sp., 5, one of them partly charred)" in _text(told_of_example, "report", "C16")


def test_samples_in_which_a_plant_is_only_cf_are_counted_and_told(told_of_example: ToldOnce):
    """Of the six early samples with maize S019 has one kernel "cf. Zea mays" alone."""
    early = told_of_example["report"][Subject(level="phase", id="early")].text
    site = told_of_example["report"][Subject(level="site", id=SITE)].text

    assert "maize in six (26%, in one of them only as cf.)" in early
    assert "Maize rose from 6 of 23 samples (26%, in one of them only as cf.) to 24 of 27 (89%)" in site


@pytest.mark.parametrize(
    ("id", "told_as"),
    [
        ("C11", "145 cupules (55 of them fragments)"),
        ("C11", "3 cobs (all of them fragments)"),
        ("C13", "880 cupules (252 of them fragments)"),
        ("C13", "26 cobs (14 of them fragments)"),
        ("C13", "3 stalks (all of them fragments)"),
        ("C17", "9 cobs (5 of them fragments)"),
    ],
)
def test_fragments_of_cobs_and_stalks_are_told_as_those_of_kernels(told_of_example: ToldOnce, id: str, told_as: str):
    """The rows of counts/light_fraction.csv with `fragment` under completeness, summed."""
    assert told_as in _text(told_of_example, "report", id)


@pytest.mark.parametrize(
    ("id", "told_as"),
    [
        ("C11", "three pieces of corn cob"),
        ("C13", "12 corn cobs and 14 pieces of corn cob"),
        ("C13", "three pieces of corn stalk"),
        ("C14", "one corn cob and one piece of corn cob"),
        ("C17", "four corn cobs and five pieces of corn cob"),
    ],
)
def test_visitors_are_told_pieces_of_cob_as_pieces(told_of_example: ToldOnce, id: str, told_as: str):
    """A fragment of a cob is no cob."""
    assert told_as.lower() in _text(told_of_example, "public", id).lower()


@pytest.mark.parametrize(
    ("id", "told_as"),
    [
        ("C14", "we found seeds of grapes and persimmons"),
        ("C06", "We found seeds of strawberries and red mulberries"),
        ("C16", "burned seeds of hawthorns"),
    ],
)
def test_fruits_are_not_found_where_only_their_seeds_were(told_of_example: ToldOnce, id: str, told_as: str):
    """The count sheets have seeds and stones of fruit, and no flesh."""
    assert told_as.lower() in _text(told_of_example, "public", id).lower()


def test_nobody_is_told_that_fruit_was_found(told_of_example: ToldOnce):
    """On no page of a context."""
    pages = [n.text.lower() for subject, n in told_of_example["public"].items() if subject.level == "context"]

    assert not [text for text in pages if "we found grapes" in text or "we found persimmons" in text]


def test_a_density_that_is_a_minimum_has_no_interval(told_of_example: ToldOnce):
    """S037 of C16 returned 21 of 50 marked seeds: what was lost has no upper end."""
    first = _text(told_of_example, "report", "C16").split(" The commonest")[0]

    assert "at least 7.8 items per litre" in first
    assert "interval" not in first


def test_stems_of_grass_make_no_further_taxon(told_of_example: ToldOnce):
    """C05: chenopod, erect knotweed, maygrass, sumpweed, hickory, and oak; the stems of grass may be of maygrass."""
    assert "at least six taxa besides wood" in _text(told_of_example, "report", "C05")


@pytest.mark.parametrize(
    ("id", "quote"), [("C14", "in three tips"), ("C04", "basket-loads of ash and kitchen sweepings tipped in")]
)
def test_tips_and_basket_loads_do_not_agree_with_slow_build_up(told_of_example: ToldOnce, id: str, quote: str):
    """A tip is thrown in at once: it is told as the record has it, and such a fill is not read as slow build-up."""
    about = [s for s in _text(told_of_example, "report", id).replace("; ", ". ").split(". ") if quote in s]

    assert len(about) == 1
    assert "slow build-up" not in _text(told_of_example, "report", id)


@pytest.mark.parametrize(
    ("id", "quote"),
    [
        ("C12", "some fused in pairs"),
        ("C12", "bubbly crust with kernel skin in it; stuck to sherds"),
        ("C06", "free of husk"),
        ("C11", "the last fire was left in it"),
        ("C06", "several still in clusters"),
    ],
)
def test_what_the_records_note_is_told_where_it_bears_on_a_reading(told_of_example: ToldOnce, id: str, quote: str):
    """The notes of counts/light_fraction.csv and records/, in their own words."""
    assert quote.lower() in _text(told_of_example, "report", id).lower()


def test_a_block_that_was_kept_whole_is_told_among_the_work_left(told_of_example: ToldOnce):
    """The record of S012 of C05: no count is of the block."""
    told = dict(told_of_example["review"])
    quote = "“A block was lifted in plaster before the rest was floated”, and no result of that is on record"

    assert quote in told[Subject(level="context", id="C05")].text
