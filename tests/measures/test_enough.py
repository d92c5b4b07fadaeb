"""How many items are enough: the worked numbers of the literature."""

from __future__ import annotations

import math

import numpy as np
import pytest

from narrate.measures import enough
from narrate.measures.diversity import rarefied
from narrate.measures.enough import items_for_share, items_for_shares, items_to_see
from narrate.model.rules import Selector
from tests.measures.digs import a_dig, a_row, units

ALL = Selector()
UNKNOWN = math.inf


@pytest.mark.parametrize(
    ("of_items", "half_width", "at_95", "at_98", "at_99"),
    [
        # van der Veen & Fieller 1982, Journal of Archaeological Science 9:287-298: the formula (from memory); numbers
        # worked out from it with exact quantiles and rounded up. Their printed table was not seen.
        (100, 0.05, 80, 85, 88),
        (200, 0.05, 132, 147, 154),
        (250, 0.05, 152, 172, 182),
        (500, 0.05, 218, 261, 286),
        (750, 0.05, 255, 315, 353),
        (1000, 0.05, 278, 352, 400),
        (2000, 0.05, 323, 427, 499),
        (2500, 0.05, 334, 446, 525),
        (5000, 0.05, 357, 489, 586),
        (10_000, 0.05, 370, 514, 623),
        (50_000, 0.05, 382, 536, 655),
        (100_000, 0.05, 383, 539, 660),
        (UNKNOWN, 0.05, 385, 542, 664),
        (UNKNOWN, 0.10, 97, 136, 166),
        (UNKNOWN, 0.02, 2401, 3383, 4147),
    ],
)
def test_items_for_one_share(of_items: float, half_width: float, at_95: int, at_98: int, at_99: int) -> None:
    """For a share of a half, of so many items in all, at three confidences."""
    found = [math.ceil(items_for_share(0.5, half_width, c, of_items)) for c in (0.95, 0.98, 0.99)]

    assert found == [at_95, at_98, at_99]


def test_the_numbers_541_and_384_are_the_same_formula_rounded_to_the_nearest() -> None:
    """541.19 and 384.15: reports that quote 541 and 384 round to the nearest; we round up and say so."""
    assert items_for_share(confidence=0.98) == pytest.approx(541.19, abs=5e-3)
    assert items_for_share(confidence=0.95) == pytest.approx(384.15, abs=5e-3)


@pytest.mark.parametrize(
    ("share", "numbers"),
    [
        (0.5, (270.55, 384.15, 541.19, 663.49)),
        (0.3, (227.27, 322.68, 454.60, 557.33)),
        (0.2, (173.15, 245.85, 346.36, 424.63)),
        (0.1, (97.40, 138.29, 194.83, 238.86)),
        (0.05, (51.41, 72.99, 102.83, 126.06)),
    ],
)
def test_items_for_shares_other_than_a_half(share: float, numbers: tuple[float, ...]) -> None:
    """The same formula at 90, 95, 98 and 99 % (van der Veen & Fieller 1982; worked out)."""
    found = [items_for_share(share, confidence=c) for c in (0.90, 0.95, 0.98, 0.99)]

    assert found == pytest.approx(numbers, abs=6e-3)


@pytest.mark.parametrize(
    ("alpha", "worst", "items", "d2n"),
    [
        # Thompson 1987, American Statistician 41:42-46, its table (from memory; every value worked out again).
        (0.50, 4, 177, 0.44129),
        (0.40, 4, 203, 0.50729),
        (0.30, 3, 241, 0.60123),
        (0.20, 3, 299, 0.74739),
        (0.10, 3, 403, 1.00635),
        (0.05, 3, 510, 1.27359),
        (0.02, 2, 664, 1.65872),
        (0.01, 2, 788, 1.96986),
    ],
)
def test_items_for_all_shares_at_once(alpha: float, worst: int, items: int, d2n: float) -> None:
    """Several proportions at once need 510 items for five points at 95 %."""
    assert items_for_shares(0.05, alpha) == (items, worst)
    assert items_for_shares(0.001, alpha)[0] * 0.001**2 == pytest.approx(d2n, abs=2e-5)


@pytest.mark.parametrize(("share", "items"), [(0.01, 299), (0.02, 149), (0.05, 59), (0.10, 29)])
def test_items_for_seeing_a_taxon_once(share: float, items: int) -> None:
    """ln 0.05 / ln(1 - p), rounded up (worked out); one item fewer is not enough."""
    assert items_to_see(share) == items
    assert (1 - share) ** items <= 0.05 < (1 - share) ** (items - 1)


def test_items_wanting_are_within_what_the_sample_holds() -> None:
    """200 seeds counted in a quarter stand for 800: 260 are needed of 800 (259.58), so 60 are wanting."""
    dig = units(a_dig([[]], rows=[a_row("S1", "Chenopodium", "seed", 200, share=0.25)]))

    assert enough.items_wanting(dig, ALL).value[0, 0] == math.ceil(items_for_share(of_items=800)) - 200 == 60


def test_a_sample_that_was_sorted_whole_wants_nothing() -> None:
    """There is nothing left to count."""
    assert enough.items_wanting(units(a_dig([[("Chenopodium", "seed", 12)]])), ALL).value[0, 0] == 0


def test_sorting_the_rest_of_a_quarter_halves_the_width_of_a_share() -> None:
    """Four times the items give half the width, nearly."""
    rows = [a_row("S1", t, "seed", 200, share=0.25) for t in ("Chenopodium", "Amaranthus")]
    left = enough.width_if_sorted(units(a_dig([[]], rows=rows)), Selector(taxon=("Chenopodium",)), ALL)

    assert left.value[0, 0] == pytest.approx(0.5, abs=0.01)


def test_nothing_is_gained_where_all_was_sorted() -> None:
    """The width stays, and no new taxon is foretold."""
    dig = units(a_dig([[("Chenopodium", "seed", 1), ("Amaranthus", "seed", 1), ("Carya", "nutshell", 9)]]))

    assert enough.width_if_sorted(dig, Selector(taxon=("Chenopodium",)), ALL).value[0, 0] == pytest.approx(1)
    assert enough.new_taxa_if_sorted(dig, ALL).value[0, 0] == 0


def test_wood_saturation_is_the_end_of_the_rarefaction_curve() -> None:
    """What the last ten pieces added is E(S_N) - E(S_N-10) by Hurlbert 1971."""
    counts = [20, 9, 6, 3, 1, 1]
    dig = units(a_dig([[(f"tree {i}", "wood", n) for i, n in enumerate(counts)]]))
    total = np.array(float(sum(counts)))
    gained = len(counts) - float(rarefied(np.array(counts, float), total, sum(counts) - 10))

    assert enough.taxa_in_last_ten(dig, ALL).value[0, 0] == pytest.approx(gained)


def test_fewer_than_twenty_pieces_of_wood_say_nothing_of_saturation() -> None:
    """Twenty pieces are the least that is named in a flotation sample (Miksicek 1987 and others; from memory)."""
    column = enough.taxa_in_last_ten(units(a_dig([[("oak", "wood", 19)]])), ALL)

    assert np.isnan(column.value[0, 0]) and column.reason == "fewer than 20 items were named"
