"""What sorting the rest of a size class would bring."""

from __future__ import annotations

from dataclasses import replace

import pytest

from narrate.measures.count_table import count_table
from narrate.measures.sorting import narrowings, sorting_gains
from narrate.measures.units import Units
from narrate.model.project import Project
from narrate.model.rules import Selector, ShownMeasure
from narrate.model.sampling import SizeClass
from narrate.model.sorting import SortingGain
from tests.measures.digs import HERE, a_dig, a_row
from tests.small_packs import small_packs

CLASSES = (
    SizeClass(name=">2 mm", proportion_sorted=1.0),
    SizeClass(name="1-2 mm", proportion_sorted=0.5),
    SizeClass(name="0.5-1 mm", proportion_sorted=0.25),
)
SHARE = {c.name: c.proportion_sorted for c in CLASSES}


def a_sample(*rows: tuple[str, str, int, str], litres: float | None = 10.0) -> tuple[Units, Project]:
    """Rows of one sample: taxon, part, count, size class."""
    packs = small_packs()
    made = [replace(a_row("S1", t, p, n, share=SHARE[c]), size_class=c) for t, p, n, c in rows]
    dig = a_dig([[]], rows=made, litres=litres)
    dig = replace(dig, samples=(replace(dig.samples[0], size_classes=CLASSES),))
    return Units(count_table(dig, packs), "sample", packs, "charred"), dig


def gains(*rows: tuple[str, str, int, str], litres: float | None = 10.0) -> dict[str, SortingGain]:
    return {gain.size_class: gain for gain in sorting_gains(*a_sample(*rows, litres=litres))}


def test_only_classes_sorted_in_part_are_told() -> None:
    """What was sorted whole brings nothing."""
    assert set(gains(("Zea mays", "kernel", 3, ">2 mm"))) == {"1-2 mm", "0.5-1 mm"}


def test_the_total_of_a_class_has_its_exact_interval() -> None:
    """Ten in a quarter: 40 in all, 22 to 69."""
    gain = gains(("Chenopodium", "seed", 10, "0.5-1 mm"))["0.5-1 mm"]

    assert (gain.items, gain.total, gain.total_low, gain.total_high) == (10, 40, 22, 69)


def test_the_class_that_holds_most_of_the_doubt_comes_first() -> None:
    """The quarter rules the doubt of the density, so that sorting it narrows most."""
    found = gains(("Zea mays", "kernel", 5, "1-2 mm"), ("Chenopodium", "seed", 40, "0.5-1 mm"))

    assert list(found) == ["0.5-1 mm", "1-2 mm"]
    assert found["0.5-1 mm"].density_width_left == pytest.approx(0.52, abs=0.03)
    assert found["1-2 mm"].density_width_left > 0.95  # type: ignore[operator]


def test_a_share_narrows_with_the_items_that_are_added() -> None:
    """200 seeds in a quarter, half of them of a crop: four times as many halve the width."""
    found = gains(("Chenopodium berlandieri", "seed", 100, "0.5-1 mm"), ("Amaranthus", "seed", 100, "0.5-1 mm"))

    assert found["0.5-1 mm"].share_width_left == pytest.approx(0.5, abs=0.01)


def test_new_taxa_are_foretold_from_those_seen_once() -> None:
    """Four taxa seen once and none twice foretell more; taxa seen often foretell none."""
    rare = gains(*[(f"plant {i}", "seed", 1, "0.5-1 mm") for i in range(4)])["0.5-1 mm"]
    common = gains(*[(f"plant {i}", "seed", 9, "0.5-1 mm") for i in range(4)])["0.5-1 mm"]

    assert rare.new_taxa > 3 and common.new_taxa == 0


def test_without_a_volume_there_is_no_density_to_narrow() -> None:
    """Nor without a seed a share."""
    gain = gains(("Carya", "nutshell", 4, "0.5-1 mm"), litres=None)["0.5-1 mm"]

    assert gain.density_width_left is None and gain.share_width_left is None


def test_every_interval_is_told_that_would_narrow() -> None:
    """By class and measurement: forty in a quarter narrow the density, Shannon's index and what is scaled up; ten in a
    class that was sorted whole narrow nothing, and a plain count has no interval."""
    named = [
        ShownMeasure(name=id, title=id, measure=id, of=Selector(), place=HERE)
        for id in ("items", "density", "shannon", "scaled_up")
    ]
    units, dig = a_sample(("Chenopodium", "seed", 40, "0.5-1 mm"), ("Zea mays", "kernel", 10, ">2 mm"))

    found = narrowings(units, dig, named)

    assert {(n.subject.id, n.size_class, n.measurement) for n in found} == {
        ("S1", "0.5-1 mm", "density"), ("S1", "0.5-1 mm", "shannon"), ("S1", "0.5-1 mm", "scaled_up"),
    }  # fmt: skip
    assert all(0 <= n.left < 1 and n.width_then == pytest.approx(n.left * n.width) for n in found)
