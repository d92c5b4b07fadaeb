"""Ratios with names of their own, against published numbers and whole ears."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from scipy.stats import beta, chi2

from narrate.measures import ratios, shares
from narrate.measures.count_table import count_table
from narrate.measures.units import Units
from narrate.model.counts import CountRow
from narrate.model.plants import Taxon
from narrate.model.rules import Selector
from narrate.problems import Place
from narrate.reading.packs import read_packs
from tests.measures.digs import a_dig, a_row, units
from tests.small_packs import small_packs

HERE = Place(path="test")
KERNELS = Selector(taxon=("Zea mays",), part=("kernel",))
CUPULES = Selector(taxon=("Zea mays",), part=("cupule",))
GLUMES = Selector(part=("glume base", "spikelet fork"))
RACHIS = Selector(part=("rachis internode",))
GRAIN = Selector(part=("grain", "kernel"))
WORDS = read_packs(("eastern-north-america",))[0].words
CEREALS = (
    "Triticum spelta", "Triticum monococcum", "Hordeum vulgare var. hexastichum", "Secale cereale", "Quercus",
)  # fmt: skip


def units_of(*rows: CountRow) -> Units:
    """Small packs with the whole ears, the worth of forks and the exchanges that come with narrate, and cereals."""
    packs = small_packs()
    extra = {id: Taxon(id=id, rank="species", family="", status="crop", place=HERE) for id in CEREALS}  # type: ignore[arg-type]
    words = replace(
        packs.words,
        ears=WORDS.ears,
        exchanges=WORDS.exchanges,
        parts={**packs.words.parts, "spikelet fork": WORDS.parts["spikelet fork"]},  # type: ignore[index]
    )
    packs = replace(
        packs,
        words=words,
        taxa={**packs.taxa, **extra},
        taxon_lookup={**packs.taxon_lookup, **{id.lower(): id for id in extra}},
    )
    named = [
        replace(
            row,
            identification=replace(row.identification, taxon=packs.taxon_lookup[row.identification.written.lower()]),
        )
        for row in rows
    ]
    dig = a_dig([[]], rows=named)
    return Units(count_table(dig, packs), "sample", packs, dig.preservation)


def maize(kernels: int, cupules: int) -> Units:
    return units(a_dig([[("Zea mays", "kernel", kernels), ("Zea mays", "cupule", cupules)]]))


@pytest.mark.parametrize(("kernels", "cupules", "ratio", "log"), [(40, 20, 2.0, 0.301), (12, 96, 0.125, -0.903)])
def test_kernels_to_cupules_and_their_logarithm(kernels: int, cupules: int, ratio: float, log: float) -> None:
    """
    40 kernels to 20 cupules are 2, an intact ear; 12 to 96 are an eighth.

    The plot of log ratios is that of Scarry & Steponaitis 1997, in Gremillion (ed.), People, Plants, and Landscapes
    (from memory); the numbers are arithmetic.
    """
    dig = maize(kernels, cupules)

    assert shares.ratio(dig, KERNELS, CUPULES).value[0, 0] == pytest.approx(ratio)
    assert ratios.log_ratio(dig, KERNELS, CUPULES).value[0, 0] == pytest.approx(log, abs=5e-4)


def test_no_cupule_gives_a_bound_and_does_not_drop_the_sample() -> None:
    """40 kernels and no cupule: no value, but at least 10 to 1 and at least 1 in powers of ten; open above."""
    column = ratios.log_ratio(maize(40, 0), KERNELS, CUPULES)
    least = beta.ppf(0.025, 40, 1)

    assert np.isnan(column.value[0, 0]) and np.isposinf(column.high[0, 0])
    assert column.low[0, 0] == pytest.approx(np.log10(least / (1 - least)))
    assert column.n[0, 0] == 40  # type: ignore[index]


def test_neither_gives_neither_value_nor_bound() -> None:
    """Where nothing was found nothing is known of the ratio."""
    column = ratios.log_ratio(maize(0, 0), KERNELS, CUPULES)

    assert np.isnan(column.value[0, 0]) and np.isnan(column.low[0, 0]) and np.isnan(column.high[0, 0])


def test_seeds_to_wood_have_the_doubt_of_the_seeds() -> None:
    """10 seeds and 2 g of wood: 5 per gram, from 4.795/2 to 18.390/2 (Garwood's ends by scipy)."""
    dig = units(a_dig([[("Chenopodium", "seed", 10)]], rows=[a_row("S1", "Carya", "wood", None, mass_g=2.0)]))
    column = ratios.items_per_g(dig, Selector(role=("propagule",)), Selector(role=("wood",)))

    assert column.value[0, 0] == 5
    assert column.low[0, 0] == pytest.approx(chi2.ppf(0.025, 20) / 4)
    assert column.high[0, 0] == pytest.approx(chi2.ppf(0.975, 22) / 4)


@pytest.mark.parametrize(
    ("acorn_to_hickory_weight", "printed"),
    [
        # Gremillion, Excavating Occaneechi Town (University of North Carolina), "Nuts" and "Additional data": acorn
        # shell weight times 50 over hickory shell weight: Wall, Mitchum, Fredricks, Upper Saratown, Fredricks screened.
        # The weights are not printed beside them; they are taken back from the printed ratio, to test the factor.
        (5.72 / 50, 5.72),
        (2.97 / 50, 2.97),
        (0.42 / 50, 0.42),
        (0.94 / 50, 0.94),
        (0.17 / 50, 0.17),
    ],
)
def test_acorn_to_hickory_with_the_published_factor_and_its_range(
    acorn_to_hickory_weight: float, printed: float
) -> None:
    """The factor is 50; its range, 5 to 200, is the only interval, and does not narrow with weight."""
    dig = units_of(
        a_row("S1", "Quercus", "acorn shell", None, mass_g=acorn_to_hickory_weight * 10),
        a_row("S1", "Carya", "nutshell", None, mass_g=10.0),
    )
    column = ratios.acorn_to_hickory(dig)

    assert column.value[0, 0] == pytest.approx(printed)
    assert (column.low[0, 0], column.high[0, 0]) == (pytest.approx(printed / 10), pytest.approx(printed * 4))


def cereal(taxon: str, **parts: int) -> Units:
    return units_of(*(a_row("S1", taxon, part.replace("_", " "), n) for part, n in parts.items()))


@pytest.mark.parametrize(
    ("taxon", "parts", "chaff", "ratio", "times"),
    [
        # Whole ears: van der Veen 1992, Crop Husbandry Regimes, p. 82, and Hillman 1984 (from memory): spelt 0.67 to 1
        # glume base a grain, emmer 1, einkorn 1 to 2, six-row barley 1/3 internode, rye 1/2. The assemblages are made
        # up; ratio and times the line are arithmetic, the line of a range being its geometric middle.
        ("Triticum spelta", {"glume_base": 250, "spikelet_fork": 10, "grain": 30}, GLUMES, 9.0, 9.0 / 0.67**0.5),
        ("Triticum dicoccum", {"grain": 48, "spikelet_fork": 22, "glume_base": 3}, GLUMES, 0.979, 0.979),
        ("Triticum monococcum", {"grain": 100, "glume_base": 12}, GLUMES, 0.12, 0.12 / 2**0.5),
        ("Hordeum vulgare var. hexastichum", {"grain": 96, "rachis_internode": 31}, RACHIS, 0.323, 0.969),
        ("Hordeum vulgare var. hexastichum", {"grain": 12, "rachis_internode": 60}, RACHIS, 5.0, 15.0),
        ("Secale cereale", {"grain": 210, "rachis_internode": 9}, RACHIS, 0.043, 0.0857),
        # Two kernels to a cupule: Goette et al. 1994, Journal of Ethnobiology 14:1-21, for the terms (from memory).
        ("Zea mays", {"kernel": 40, "cupule": 20}, CUPULES, 0.5, 1.0),
    ],
)
def test_chaff_against_whole_ears(
    taxon: str, parts: dict[str, int], chaff: Selector, ratio: float, times: float
) -> None:
    """Chaff to grain, and how many times that of whole ears it is; forks count as two glume bases."""
    dig = cereal(taxon, **parts)

    assert shares.chaff_ratio(dig, chaff, GRAIN).value[0, 0] == pytest.approx(ratio, abs=6e-4)
    assert ratios.chaff_against_ear(dig, chaff, GRAIN).value[0, 0] == pytest.approx(times, rel=2e-3)


def test_the_range_of_an_ear_widens_the_interval() -> None:
    """Spelt has two grains a spikelet, sometimes three: the lower end takes 1 and the upper 0.67."""
    column = ratios.chaff_against_ear(cereal("Triticum spelta", glume_base=30, grain=30), GLUMES, GRAIN)
    low, high = (beta.ppf(p, a, b) for p, a, b in ((0.025, 30, 31), (0.975, 31, 30)))

    assert column.low[0, 0] == pytest.approx(low / (1 - low) / 1.0)
    assert column.high[0, 0] == pytest.approx(high / (1 - high) / 0.67)


def test_grain_whose_ear_is_not_known_gives_no_index() -> None:
    """No line for oats by rachis: no value and a reason, not a number from another crop."""
    column = ratios.chaff_against_ear(cereal("Secale cereale", glume_base=3, grain=30), GLUMES, GRAIN)

    assert np.isnan(column.value[0, 0]) and np.isnan(column.low[0, 0])
    assert column.reason == "no grain was found of a crop whose ear is known for this chaff"


def test_weeds_to_grain() -> None:
    """40 grains and 300 weed seeds: 7.5 to 1 (made up; arithmetic)."""
    dig = units(a_dig([[("Triticum dicoccum", "grain", 40), ("Chenopodium", "seed", 300)]]))
    weeds = Selector(field_weed=("strong",), role=("propagule",))

    assert shares.ratio(dig, weeds, Selector(part=("grain",))).value[0, 0] == 7.5


@pytest.mark.parametrize("line", WORDS.ears, ids=lambda line: f"{line.crop}, {line.byproduct[0]}")
def test_every_whole_ear_has_a_range_and_a_source(line) -> None:  # type: ignore[no-untyped-def]
    """Lines are ranges with a source."""
    assert 0 < line.low <= line.high and line.sources


def test_shell_that_was_not_weighed_leaves_no_upper_end() -> None:
    """Acorn shell of which a row was counted and not weighed weighs at least what was weighed: 0.1 g beside 10 g."""
    column = ratios.acorn_to_hickory(
        units_of(
            a_row("S1", "Quercus", "acorn shell", 8, mass_g=0.1),
            a_row("S1", "Quercus", "acorn shell", 6),
            a_row("S1", "Carya", "nutshell", 40, mass_g=10.0),
        )
    )

    assert column.value[0, 0] == pytest.approx(50 * 0.1 / 10)
    assert (column.low[0, 0], column.high[0, 0]) == (pytest.approx(5 * 0.1 / 10), np.inf)
