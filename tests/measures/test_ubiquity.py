"""Ubiquity against a published table, sterile samples kept, and change between phases."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest

from narrate.measures.comparison import ubiquity_change
from narrate.measures.ubiquity import samples_with, ubiquity
from narrate.model.ids import TaxonId
from narrate.model.rules import Selector
from tests.measures.digs import a_dig, a_row, units
from tests.small_packs import small_packs

WOOD = Selector(role=("wood",))
CARYA = Selector(taxon=("Carya",))

# Samples with each taxon in burned spots (8), firepits (12), hearths (19), and the percentage printed for all 39.
# Source: Adams, Kuckelman & Bowyer 2007, Sand Canyon Pueblo, Table 6. The print gives 84 for juniper, which its own
# counts contradict (34 of 39 is 87 %); here the counts are followed.
SAND_CANYON = [
    ("juniper wood", (6, 11, 17), (75, 92, 89), 87),
    ("maize cob parts", (3, 7, 6), (38, 58, 32), 41),
    ("pine bark scale", (3, 4, 6), (38, 33, 32), 33),
    ("pine wood", (3, 4, 6), (38, 33, 32), 33),
    ("sagebrush wood", (1, 2, 1), (13, 17, 5), 10),
    ("serviceberry type wood", (2, 1, 1), (25, 8, 5), 10),
]
SAMPLES = (8, 12, 19)


def half_up(share: float) -> int:
    """Whole percent as the table rounds: halves go up (12.5 is printed as 13)."""
    return math.floor(share * 100 + 0.5)


@pytest.mark.parametrize(
    ("name", "present", "printed", "all_printed"), SAND_CANYON, ids=[row[0] for row in SAND_CANYON]
)
def test_ubiquity_meets_the_published_pueblo_table(
    name: str, present: tuple[int, ...], printed: tuple[int, ...], all_printed: int
) -> None:
    """Samples with a taxon over samples looked at give the printed percentages, by kind of feature and for all."""
    samples, phases = [], []
    for kind, (k, n) in enumerate(zip(present, SAMPLES, strict=True)):
        samples += [[("Carya", "wood", 2)]] * k + [[]] * (n - k)
        phases += [f"kind {kind}"] * n
    dig = a_dig(samples, phases=phases)

    assert [half_up(v) for v in ubiquity(units(dig, "phase"), CARYA).value[0]] == list(printed)
    assert half_up(ubiquity(units(dig, "site"), CARYA).value[0, 0]) == all_printed


def test_wilson_ends_of_the_pueblo_table() -> None:
    """Juniper in 34 of 39 and maize cobs in 16 of 39: Wilson 73.3-94.4 and 27.1-56.6 %, worked from the counts."""
    juniper = ubiquity(units(a_dig([[("Carya", "wood", 1)]] * 34 + [[]] * 5), "site"), CARYA)
    maize = ubiquity(units(a_dig([[("Carya", "wood", 1)]] * 16 + [[]] * 23), "site"), CARYA)

    assert [round(float(x[0, 0]) * 100, 1) for x in (juniper.low, juniper.high)] == [73.3, 94.4]
    assert [round(float(x[0, 0]) * 100, 1) for x in (maize.low, maize.high)] == [27.1, 56.6]


def test_sterile_samples_count() -> None:
    """One sample with hickory and three without anything: 25 %."""
    assert ubiquity(units(a_dig([[("Carya", "nutshell", 4)], [], [], []]), "site"), CARYA).value[0, 0] == 0.25


def test_a_noted_presence_counts_and_a_nought_does_not() -> None:
    """'x' is present, '0' is absent, a mass alone is present."""
    dig = a_dig(
        [[], [("Carya", "nutshell", 0)], []],
        rows=[a_row("S1", "Carya", "nutshell", None), a_row("S3", "Carya", "nutshell", None, mass_g=0.2)],
    )

    assert samples_with(units(dig, "site"), CARYA).value[0, 0] == 2


def test_change_between_phases_is_last_minus_first() -> None:
    """2 of 10 early and 8 of 10 late: a rise of 0.6, its interval clear of nought."""
    dig = a_dig(
        [[("Carya", "nutshell", 1)]] * 2 + [[]] * 8 + [[("Carya", "nutshell", 1)]] * 8 + [[]] * 2,
        phases=["early"] * 10 + ["late"] * 10,
    )
    column = ubiquity_change(units(dig, "site"), units(dig, "phase"), CARYA)

    assert column.value[0, 0] == pytest.approx(0.6)
    assert 0.1 < column.low[0, 0] < 0.6 < column.high[0, 0] < 0.9


def test_one_phase_has_no_change() -> None:
    """Without two phases there is no change and a reason."""
    dig = a_dig([[("Carya", "nutshell", 1)]] * 3)
    column = ubiquity_change(units(dig, "site"), units(dig, "phase"), CARYA)

    assert column.reason == "there are not two phases with samples"


def test_the_published_fall_of_pine_is_clear_of_nought() -> None:
    """
    Pine in 21 of 25 earlier and 19 of 50 later samples: the difference is firmly below nought.

    Source: Sand Canyon Pueblo, Table 14 (counts as printed: 84 and 38 %).
    """
    dig = a_dig(
        [[("Carya", "wood", 1)]] * 21 + [[]] * 4 + [[("Carya", "wood", 1)]] * 19 + [[]] * 31,
        phases=["earlier"] * 25 + ["later"] * 50,
    )
    column = ubiquity_change(units(dig, "site"), units(dig, "phase"), WOOD)

    assert column.value[0, 0] == pytest.approx(0.38 - 0.84)
    assert column.high[0, 0] < -0.2


def test_a_wood_is_a_share_of_the_samples_whose_wood_was_looked_at() -> None:
    """
    Charcoal that nobody identified is no absence of hickory: one of two samples, not one of four (common practice, no
    source). Wood of any kind is still a share of all samples.
    """
    packs = small_packs()
    unnamed = replace(packs.taxa[TaxonId("Poaceae")], id=TaxonId("Indeterminate"), rank="broad", family="")
    known = replace(
        packs,
        taxa={**packs.taxa, unnamed.id: unnamed},
        taxon_lookup={**packs.taxon_lookup, "indeterminate": unnamed.id},
    )
    found = [[("Carya", "wood", 3)], [("Poaceae", "wood", 2)], [], [("Carya", "nutshell", 4)]]
    rows = [a_row("S3", "Indeterminate", "wood", 9, packs=known)]
    dig = units(a_dig(found, contexts=["C1"] * 4, rows=rows), "context", packs=known)

    hickory, wood = ubiquity(dig, Selector(taxon=("Carya",), role=("wood",))), ubiquity(dig, WOOD)

    assert [(column.of[0, 0], column.n[0, 0]) for column in (hickory, wood)] == [(1, 2), (3, 4)]


def test_a_draw_without_looked_at_wood_has_no_change() -> None:
    """Of two draws of samples the second holds none of the first phase whose wood was named: no value, and no fault."""
    found = [[("Carya", "wood", 3)], [], [("Carya", "wood", 3)], []]
    dig = a_dig(found, phases=["early", "early", "late", "late"])
    hickory = Selector(taxon=("Carya",), role=("wood",))
    written, phases = units(dig, "site"), units(dig, "phase")
    weight = np.array([[1.0, 1, 1, 1], [0, 2, 1, 1]])
    table = written.table
    drawn = table.with_counts(np.repeat(table.counted, 2, axis=0), np.repeat(table.unsorted, 2, axis=0))

    change = ubiquity_change(written.with_table(drawn, weight), phases.with_table(drawn, weight), hickory)

    assert change.value[0, 0] == 0 and np.isnan(change.value[1, 0]) and np.isnan(change.low[1, 0])
