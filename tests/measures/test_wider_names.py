"""Names that may stand for a plant which is there under a closer one are no further kinds (common practice, no source)."""

from __future__ import annotations

import numpy as np

from narrate.measures import diversity
from narrate.measures.studies import rarefaction_curves
from narrate.model.rules import Selector
from narrate.reading.packs import read_packs
from tests.measures.digs import a_dig, a_row, units

ALL = Selector()
CHENO_AM, CHENOPOD, PIGWEED, GOOSEFOOT = (
    "Chenopodium/Amaranthus", "Chenopodium berlandieri", "Amaranthus", "Chenopodium",
)  # fmt: skip


def kinds(*found: tuple[str, str, int]) -> float:
    return float(diversity.taxa(units(a_dig([list(found)])), ALL).value[0, 0])


def test_either_of_two_beside_one_of_them_is_no_further_kind() -> None:
    """Cheno-am beside the seeds of a pigweed may be that pigweed."""
    assert kinds((CHENO_AM, "seed", 2), (PIGWEED, "seed", 5)) == 1


def test_a_genus_beside_its_species_is_no_further_kind() -> None:
    """A goosefoot beside the chenopod of the crop may be that one."""
    assert kinds((GOOSEFOOT, "seed", 2), (CHENOPOD, "seed", 5)) == 1


def test_a_wider_name_alone_is_a_kind() -> None:
    """Cheno-am without goosefoot or pigweed is one kind beside maize."""
    assert kinds((CHENO_AM, "seed", 2), ("Zea mays", "kernel", 5)) == 2


def test_a_wider_name_of_another_part_is_a_kind() -> None:
    """Wood of a genus cannot be what its species' seeds are named for, as a grass seed is no kernel of maize."""
    assert kinds((GOOSEFOOT, "wood", 2), (CHENOPOD, "seed", 5)) == 2


def test_a_wider_name_is_covered_only_where_the_closer_one_lies() -> None:
    """Each unit is asked by itself: pigweed in one sample covers no cheno-am in another."""
    apart = units(a_dig([[(CHENO_AM, "seed", 2)], [(PIGWEED, "seed", 5)]]))

    assert diversity.taxa(apart, ALL).value[0].tolist() == [1, 1]


def test_a_wider_name_is_no_kind_in_rarefaction() -> None:
    """Thirty items of one plant, and some that may be of it, are one taxon among any number of items."""
    found = units(a_dig([[(CHENO_AM, "seed", 20), (PIGWEED, "seed", 30)]]))

    assert diversity.taxa_at_30(found, ALL).value[0, 0] == 1
    assert diversity.shannon(found, ALL).value[0, 0] == 0
    assert rarefaction_curves(found)[0].taxa == 1


def test_a_draw_that_lost_the_closer_name_counts_the_wider_one() -> None:
    """In a draw without pigweed the cheno-am is a kind again; in one with both it is none."""
    found = units(a_dig([[(CHENO_AM, "seed", 2), (PIGWEED, "seed", 1)]]))
    drawn = found.with_table(found.table.with_counts(np.array([[2.0, 1.0], [2.0, 0.0]]), np.zeros((2, 2))))

    assert diversity.taxa(drawn, ALL).value[:, 0].tolist() == [1, 1]
    assert drawn.taxa(Selector(taxon=(CHENO_AM,))).tolist() == [[1], [1]]


def test_either_name_is_no_weed_where_the_crop_it_may_be_was_found() -> None:
    """Cheno-am is left out of plants that are no crop where the dig has the chenopod of the crop."""
    weeds = Selector(tag=("small-seed",), not_tag=("native-crop",))
    with_crop = units(a_dig([[(CHENO_AM, "seed", 2), (PIGWEED, "seed", 4)], [(CHENOPOD, "seed", 9)]]))
    without = units(a_dig([[(CHENO_AM, "seed", 2), (PIGWEED, "seed", 4)]]))

    assert with_crop.counted(weeds)[0].tolist() == [4, 0]
    assert without.counted(weeds)[0].tolist() == [6]


def test_stems_of_a_wider_name_are_no_further_kind() -> None:
    """Stems of grass beside maygrass grains may be of maygrass; beside goosefoot seeds they are a kind."""
    packs = read_packs(("eastern-north-america",))[0]
    for other, many in ((("Phalaris caroliniana", "grain"), 1), (("Chenopodium berlandieri", "seed"), 2)):
        rows = [a_row("S1", taxon, part, 3, packs=packs) for taxon, part in (("Poaceae", "culm"), other)]
        dig = units(a_dig([[]], rows=rows), packs=packs)

        assert diversity.taxa(dig, ALL).value[0, 0] == many
