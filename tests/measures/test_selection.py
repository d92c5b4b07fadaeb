"""Which rows a selector means: below a name, never above it; groups only if all their members answer."""

from __future__ import annotations

import pytest

from narrate.measures.selection import lies_below
from narrate.model.ids import TaxonId
from narrate.model.rules import Selector
from tests.measures.digs import a_dig, a_row, units
from tests.small_packs import small_packs


@pytest.mark.parametrize(
    ("taxon", "name", "is_below"),
    [
        ("Chenopodium berlandieri", "Chenopodium", True),
        ("Chenopodium berlandieri", "Amaranthaceae", True),
        ("Chenopodium", "Chenopodium berlandieri", False),
        ("Poaceae", "Zea mays", False),
        ("Zea mays", "Poaceae", True),
        ("Chenopodium/Amaranthus", "Chenopodium", False),
        ("Chenopodium", "Chenopodium/Amaranthus", True),
        ("Chenopodium berlandieri", "Chenopodium/Amaranthus", True),
        ("Chenopodium/Amaranthus", "Amaranthaceae", True),
        ("Poaceae", "Poaceae", True),
    ],
)
def test_what_lies_below_a_name(taxon: str, name: str, is_below: bool) -> None:
    """A rule that needs the species does not fire on the genus, the group or the family."""
    assert lies_below(TaxonId(taxon), name, small_packs()) is is_below


@pytest.mark.parametrize(
    ("selector", "meant"),
    [
        (Selector(taxon=("Chenopodium",)), {"Chenopodium berlandieri", "Chenopodium"}),
        (Selector(tag=("native-crop",)), {"Chenopodium berlandieri"}),
        (Selector(tag=("small-seed",)), {"Chenopodium", "Amaranthus", "Chenopodium/Amaranthus"}),
        (Selector(field_weed=("strong",)), {"Chenopodium", "Amaranthus", "Chenopodium/Amaranthus"}),
        (Selector(ripens_within=(8, 9, 10)), {"Zea mays"}),
        (Selector(ripens_in=(11,)), {"Chenopodium berlandieri"}),
        (Selector(use=("food",)), {"Zea mays"}),
        (Selector(status=("crop",)), {"Zea mays", "Chenopodium berlandieri"}),
        (Selector(family=("Poaceae",)), {"Zea mays", "Poaceae"}),
        (Selector(not_taxon=("Amaranthaceae",)), {"Zea mays", "Poaceae", "Nobodyknowsia"}),
        (Selector(is_certain=True, taxon=("Zea mays",)), {"Zea mays"}),
        (Selector(later_than_phase=True), set()),
    ],
)
def test_what_a_selector_means(selector: Selector, meant: set[str]) -> None:
    """Each key narrows as it says; a name that no pack knows answers to nothing that asks about plants."""
    names = (
        "Zea mays",
        "Chenopodium berlandieri",
        "Chenopodium",
        "Amaranthus",
        "Chenopodium/Amaranthus",
        "Poaceae",
        "Nobodyknowsia",
    )
    dig = a_dig([[]], rows=[a_row("S1", n, "kernel" if n == "Zea mays" else "seed", 1) for n in names])
    table = units(dig)
    rows = table.rows(selector)

    assert {table.table.written[row] for row in rows} == meant


def test_cf_names_are_meant_unless_certainty_is_asked_for() -> None:
    """'cf. Zea mays' is maize for a rule, but not for one that asks for certain names."""
    table = units(a_dig([[]], rows=[a_row("S1", "cf. Zea mays", "kernel", 4)]))

    assert table.counted(Selector(taxon=("Zea mays",))).tolist() == [[4]]
    assert table.counted(Selector(taxon=("Zea mays",), is_certain=True)).tolist() == [[0]]


def test_a_plant_that_came_later_than_the_phase_is_found_out() -> None:
    """Chickweed came with ships about 1600; charred in a phase that ends in 1000 it is out of period."""
    dig = a_dig([[("Stellaria media", "seed", 2), ("Zea mays", "kernel", 1)]])
    table = units(dig)
    rows = table.rows(Selector(later_than_phase=True))

    assert {table.table.written[row] for row in rows} == {"Stellaria media"}
