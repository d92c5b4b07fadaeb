"""Ubiquity and spread over samples against tables of published sites, counts as printed."""

from __future__ import annotations

import math

import pytest

from narrate.measures.diversity import taxa
from narrate.measures.shares import richest_share
from narrate.measures.ubiquity import samples_with, ubiquity
from narrate.model.rules import Selector
from tests.measures.digs import a_dig, units

THING = Selector(taxon=("Carya",))


def half_up(share: float) -> int:
    return math.floor(share * 100 + 0.5)


def percent(present: tuple[int, ...], looked_at: tuple[int, ...]) -> list[int]:
    """Ubiquity of one plant by group and over all, as whole percentages."""
    samples, groups = [], []
    for i, (k, n) in enumerate(zip(present, looked_at, strict=True)):
        samples += [[("Carya", "wood", 1)]] * k + [[]] * (n - k)
        groups += [f"group {i}"] * n
    dig = a_dig(samples, phases=groups)
    found = [*ubiquity(units(dig, "phase"), THING).value[0], *ubiquity(units(dig, "site"), THING).value[0]]
    return [half_up(v) for v in found]


@pytest.mark.parametrize(
    ("taxon", "early", "late", "early_percent", "late_percent"),
    [
        # Adams, Kuckelman & Bowyer 2007, Sand Canyon Pueblo, Table 14: samples with each taxon in the earliest (10),
        # early (15), late (38) and latest (12) period, each with the percentage printed, pooled to 25 and to 50.
        ("Juniperus", (10, 15), (32, 9), [100, 100, 100], [84, 75, 82]),
        ("Pinus", (6, 15), (16, 3), [60, 100, 84], [42, 25, 38]),
        ("Cercocarpus", (1, 3), (10, 1), [10, 20, 16], [26, 8, 22]),
        ("Amelanchier/Peraphyllum", (2, 5), (6, 2), [20, 33, 28], [16, 17, 16]),
        ("Artemisia", (1, 6), (4, 2), [10, 40, 28], [11, 17, 12]),
        ("Prunus/Rosa", (4, 4), (4, 3), [40, 27, 32], [11, 25, 14]),
    ],
)
def test_ubiquity_by_period_is_the_printed_one(
    taxon: str, early: tuple[int, int], late: tuple[int, int], early_percent: list[int], late_percent: list[int]
) -> None:
    """Every percentage of the table, singly and pooled."""
    assert percent(early, (10, 15)) == early_percent
    assert percent(late, (38, 12)) == late_percent


@pytest.mark.parametrize(
    ("part", "present", "expected"),
    [
        # Rainey & Jezik 2002, Woods Canyon Pueblo, Table 14: in situ secondary refuse, 3, 21, 8 and 8 samples (counts
        # as printed; percentages worked out).
        ("cupule", (1, 13, 5, 1), 50),
        ("kernel", (1, 5, 3, 1), 25),
    ],
)
def test_maize_of_woods_canyon(part: str, present: tuple[int, ...], expected: int) -> None:
    """Cupules in 20 of 40 samples, kernels in 10."""
    assert percent(present, (3, 21, 8, 8))[-1] == expected


@pytest.mark.parametrize(("kinds", "expected"), [(9, 60), (12, 80), (10, 67)])
def test_kinds_of_fuel_by_feature(kinds: int, expected: int) -> None:
    """
    9, 12 and 10 of 15 types of fuel in burned spots, firepits and hearths are printed as 60, 80 and 67 % (Adams,
    Kuckelman & Bowyer 2007, Table 6).
    """
    found = taxa(units(a_dig([[(f"fuel {i}", "wood", 1) for i in range(kinds)]])), Selector())

    assert half_up(found.value[0, 0] / 15) == expected


def test_one_rich_context_does_not_drive_a_total_unsaid() -> None:
    """
    Corn made up 2.6 to 68.3 % by context and 41.0 % overall at Fredricks (Gremillion, Excavating Occaneechi Town,
    "Crops"):
    a total tells little without the share of the richest sample, which stands beside it. The counts here are made up.
    """
    dig = units(a_dig([[("Carya", "nutshell", 683)], [("Carya", "nutshell", 26)], [("Carya", "nutshell", 41)]]), "site")

    assert richest_share(dig, THING).value[0, 0] == pytest.approx(683 / 750)
    assert samples_with(dig, THING).value[0, 0] == 3
