"""The manual is made from docstrings, and leaves nothing out."""

from __future__ import annotations

import pytest

from narrate.measures.catalogue import MEASURES
from narrate.measures.manual import manual, page_of
from narrate.reading.packs import read_packs


@pytest.mark.parametrize("id", MEASURES)
def test_every_measure_says_what_it_is_and_when_it_misleads(id: str) -> None:
    """Meaning, formula, unit, interval, when there is no value, what misleads, and a source."""
    page = page_of(MEASURES[id])

    for part in ("meaning", "formula", "unit", "interval", "no_value", "misleads", "source"):
        assert getattr(page, part), f"{id} says nothing of {part}"
    assert "\n" not in page.meaning and page.meaning.endswith((".", "!", ":"))


def test_the_parts_of_a_page_do_not_run_into_each_other() -> None:
    """The page of the ratio, part by part."""
    page = next(page for page in manual() if page.id == "ratio")

    assert page.formula == "ratio = k / m;   k items of the one, m of the other"
    assert page.unit == "Items per item."
    assert page.no_value == "Where m is 0; no bounds either where both are."
    assert page.source.startswith("Miller 1988")


def test_every_measure_can_be_had_by_a_name() -> None:
    """The shown and the tabled measurements ask for every measure of the catalogue."""
    packs = read_packs(("eastern-north-america",))[0]

    assert {shown.measure for shown in (*packs.shown, *packs.tabled)} == set(MEASURES)


def test_names_of_measurements_are_unique() -> None:
    """Shown and tabled together."""
    packs = read_packs(("eastern-north-america",))[0]
    names = [shown.name for shown in (*packs.shown, *packs.tabled)]

    assert len(names) == len(set(names))
