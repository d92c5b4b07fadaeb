"""As counted, minimum number, scaled up: three numbers that never stand for each other."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from narrate.measures import amounts, counting
from narrate.measures.count_table import count_table
from narrate.measures.units import Units
from narrate.model.counts import Count, CountRow
from narrate.model.ids import Level
from narrate.model.rules import Selector
from narrate.reading.packs import read_packs
from tests.measures.digs import a_dig, a_row
from tests.small_packs import small_packs

EVERYTHING = Selector()
RULES = read_packs(("eastern-north-america",))[0].words.counting


def units_of(rows: list[CountRow], level: Level = "sample", samples: int = 1) -> Units:
    """Small packs with the counting rules that come with narrate."""
    packs = small_packs()
    packs = replace(packs, words=replace(packs.words, counting=RULES))
    dig = a_dig([[]] * samples, rows=rows, contexts=["C1"] * samples)
    return Units(count_table(dig, packs), level, packs, dig.preservation)


def pieces(
    part: str, count: int | None, whole: bool = True, taxon: str = "Triticum dicoccum", sample: str = "S1", **more
):
    return replace(a_row(sample, taxon, part, count, **more), completeness="whole" if whole else "fragment")


def least(rows: list[CountRow]) -> float:
    return float(counting.minimum_number(units_of(rows), EVERYTHING).value[0, 0])


def test_embryo_ends_count_with_whole_grains() -> None:
    """20 whole grains and 7 embryo ends are 27 (Jones 1990, Circaea 6:91-96; from memory)."""
    assert least([pieces("grain", 20), pieces("embryo end", 7, whole=False)]) == 27


def test_apical_ends_count_only_where_they_outnumber_embryo_ends() -> None:
    """7 embryo ends and 9 apical ends are 9 grains, not 16 (Jones 1990; from memory)."""
    assert least([pieces("embryo end", 7, whole=False), pieces("apical end", 9, whole=False)]) == 9
    assert least([pieces("embryo end", 7, whole=False), pieces("apical end", 4, whole=False)]) == 7


def test_grain_fragments_are_no_grains() -> None:
    """Fragments without an end add nothing to whole grains; alone they show that there was one."""
    assert least([pieces("grain", 3), pieces("grain", 40, whole=False)]) == 3
    assert least([pieces("grain", 40, whole=False)]) == 1


def test_a_spikelet_fork_is_two_glume_bases() -> None:
    """250 glume bases and 10 spikelet forks are 270 (Hillman 1984; from memory)."""
    assert least([pieces("glume base", 250), pieces("spikelet fork", 10)]) == 270


def test_two_cotyledons_are_one_pulse() -> None:
    """3 whole seeds and 5 cotyledons are at least 6 seeds; common practice, no source."""
    assert least([pieces("seed", 3, taxon="Vicia"), pieces("cotyledon", 5, taxon="Vicia")]) == 6


def test_of_straw_only_the_nodes_are_numbered() -> None:
    """4 culm nodes and 30 pieces between nodes are 4 (Jones 1990; from memory)."""
    assert least([pieces("culm node", 4), pieces("culm", 30)]) == 4


def test_nutshell_wood_and_rind_have_no_minimum_number() -> None:
    """Pieces of shell are no number of nuts, and the reason is said (Pearsall 2015; from memory)."""
    column = counting.minimum_number(units_of([pieces("nutshell", 60, taxon="Carya")]), EVERYTHING)

    assert np.isnan(column.value[0, 0])
    assert column.reason == "what was found is weighed and has no minimum number"


def test_halves_of_two_plants_make_no_whole() -> None:
    """One cotyledon each of two plants are two seeds."""
    assert least([pieces("cotyledon", 1, taxon="Vicia"), pieces("cotyledon", 1, taxon="Lens")]) == 2


def test_pooling_may_lower_the_minimum_and_never_raises_it() -> None:
    """A half in each of two samples: one seed at least in each sample, and one at least in their context."""
    rows = [pieces("cotyledon", 1, taxon="Vicia", sample=s) for s in ("S1", "S2")]

    assert counting.minimum_number(units_of(rows, "sample", 2), EVERYTHING).value.tolist() == [[1, 1]]
    assert counting.minimum_number(units_of(rows, "context", 2), EVERYTHING).value.tolist() == [[1]]


def test_the_three_numbers_are_told_apart() -> None:
    """10 whole and 6 broken grains in a quarter: 16 as counted, 10 at least, 64 scaled up."""
    units = units_of([pieces("grain", 10, share=0.25), pieces("grain", 6, whole=False, share=0.25)])

    assert amounts.items(units, EVERYTHING).value[0, 0] == 16
    assert counting.minimum_number(units, EVERYTHING).value[0, 0] == 10
    assert counting.scaled_up(units, EVERYTHING).value[0, 0] == 64


def test_the_scaled_number_rests_on_the_raw_count() -> None:
    """n is what was counted, and the ends are those of the binomial test inverted: 22 to 69 for ten in a quarter."""
    column = counting.scaled_up(units_of([pieces("grain", 10, share=0.25)]), EVERYTHING)

    assert (column.n[0, 0], column.low[0, 0], column.high[0, 0]) == (10, 22, 69)  # type: ignore[index]


def test_nothing_found_in_a_quarter_may_hide_a_dozen() -> None:
    """No item in a quarter: up to ln 0.025 / ln 0.75 = 12.8, so 12 items may be there."""
    packs = small_packs()
    dig = a_dig([[]])
    table = replace(count_table(dig, packs), sorted_share=np.array([0.25]))
    column = counting.scaled_up(Units(table, "sample", packs, "charred"), EVERYTHING)

    assert (column.value[0, 0], column.low[0, 0], column.high[0, 0]) == (0, 0, 12)


def noted(at_least: int | None, at_most: int | None, written: str) -> CountRow:
    count = Count(written=written, amount="noted as present", at_least=at_least, at_most=at_most)
    return replace(a_row("S1", "Zea mays", "kernel", None), count=count)


def test_a_class_is_held_by_its_ends_and_is_no_count() -> None:
    """7 counted and a class of 10 to 20: no value, but 17 to 27."""
    units = units_of([pieces("grain", 7), noted(10, 20, "10-20")])
    column = counting.items_with_classes(units, EVERYTHING)

    assert np.isnan(column.value[0, 0])
    assert (column.low[0, 0], column.high[0, 0]) == (17, 27)
    assert amounts.items(units, EVERYTHING).value[0, 0] == 7


def test_a_mark_of_presence_is_at_least_one_and_has_no_upper_end() -> None:
    """A bare x says one or more."""
    column = counting.items_with_classes(units_of([noted(None, None, "x")]), EVERYTHING)

    assert column.low[0, 0] == 1 and np.isinf(column.high[0, 0])


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.id)
def test_every_counting_rule_names_its_source(rule) -> None:  # type: ignore[no-untyped-def]
    """A rule of counting without a source would be a guess."""
    assert rule.sources and rule.terms()
