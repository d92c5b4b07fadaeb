"""Laws that every measure of the catalogue keeps, whatever was found."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from narrate.judging.resample import resampled
from narrate.measures.catalogue import MEASURES, measured
from narrate.measures.column import Column
from narrate.measures.count_table import count_table
from narrate.measures.units import Units
from narrate.model.counts import CountRow
from narrate.model.ids import Level
from narrate.model.project import Project
from narrate.model.rules import Selector
from tests.measures.digs import a_dig, a_row
from tests.small_packs import small_packs

PACKS = small_packs()
ALL = Selector()
THINGS = (
    ("Zea mays", "kernel"), ("Zea mays", "cupule"), ("Chenopodium", "seed"), ("Amaranthus", "seed"),
    ("Carya", "nutshell"),
    ("Carya", "wood"), ("Triticum dicoccum", "grain"), ("Triticum dicoccum", "glume base"), ("nobody knows", "seed"),
)  # fmt: skip
SELECTORS = {
    "log_ratio": (Selector(part=("kernel",)), Selector(part=("cupule",))),  # type: ignore[arg-type]
    "chaff_against_ear": (Selector(part=("glume base",)), Selector(part=("grain",))),  # type: ignore[arg-type]
}
PER_UNIT = tuple(id for id, measure in MEASURES.items() if not measure.needs_phases)


@st.composite
def sheets(draw: st.DrawFn) -> list[CountRow]:
    """Up to twelve rows of three samples: counted, weighed or noted, sorted whole or in part."""
    rows = []
    for sample in ("S1", "S2", "S3"):
        for taxon, part in draw(st.lists(st.sampled_from(THINGS), max_size=4, unique=True)):
            count = draw(st.one_of(st.none(), st.integers(0, 300)))
            mass = draw(st.one_of(st.none(), st.floats(0.01, 9)))
            share = draw(st.sampled_from([1.0, 0.5, 0.25]))
            rows.append(a_row(sample, taxon, part, count, mass_g=mass, share=share, packs=PACKS))
    return rows


def column(id: str, dig: Project, level: Level = "sample") -> Column:
    of, to = SELECTORS.get(id, (ALL, Selector(role=("wood",)) if id in ("items_per_g", "mass_ratio") else ALL))
    return measured(id, Units(count_table(dig, PACKS), level, PACKS, dig.preservation), of=of, to=to)


def dig_of(rows: list[CountRow], **more) -> Project:  # type: ignore[no-untyped-def]
    return a_dig([[], [], []], rows=rows, **more)


def same(first: np.ndarray, second: np.ndarray) -> bool:
    return np.allclose(first, second, rtol=1e-9, atol=1e-12, equal_nan=True)


@pytest.mark.parametrize("id", PER_UNIT)
@settings(max_examples=12, deadline=None)
@given(rows=sheets())
def test_the_ends_hold_the_value(id: str, rows: list[CountRow]) -> None:
    """Low ≤ value ≤ high wherever there is a value; without an interval both ends are the value."""
    found = column(id, dig_of(rows))
    known = np.isfinite(found.value)

    assert np.all(found.low[known] <= found.value[known] + 1e-9)
    assert np.all(found.high[known] >= found.value[known] - 1e-9)
    assert found.has_interval or same(found.low, found.value)
    assert found.reason or np.all(known)


@pytest.mark.parametrize("id", PER_UNIT)
@settings(max_examples=8, deadline=None)
@given(rows=sheets(), data=st.data())
def test_the_order_of_rows_does_not_matter(id: str, rows: list[CountRow], data: st.DataObject) -> None:
    """Rows of a sheet may stand in any order."""
    shuffled = data.draw(st.permutations(rows))
    first, second = column(id, dig_of(rows)), column(id, dig_of(shuffled))

    assert same(first.value, second.value) and same(first.low, second.low) and same(first.high, second.high)


@pytest.mark.parametrize("id", [id for id in PER_UNIT if id != "items_with_classes"])
@settings(max_examples=8, deadline=None)
@given(rows=sheets())
def test_a_row_of_nought_changes_no_value(id: str, rows: list[CountRow]) -> None:
    """'Looked for and not found', in a class that was sorted whole, adds nothing to any value."""
    nought = [a_row(s, "Polygonum", "seed", 0, line=99) for s in ("S1", "S2", "S3")]

    assert same(column(id, dig_of(rows)).value, column(id, dig_of([*rows, *nought])).value)


SUMS = ("items", "scaled_up", "samples", "samples_with", "litres")


@pytest.mark.parametrize("id", SUMS)
@settings(max_examples=8, deadline=None)
@given(rows=sheets())
def test_what_is_summed_over_samples_is_the_context(id: str, rows: list[CountRow]) -> None:
    """Merging three samples of one context adds what can be added."""
    dig = dig_of(rows, contexts=["C1", "C1", "C1"])

    assert same(column(id, dig, "context").value[:, 0], np.nansum(column(id, dig).value, axis=1))


@settings(max_examples=12, deadline=None)
@given(rows=sheets())
def test_doubling_counts_and_litres_keeps_densities_and_shares(rows: list[CountRow]) -> None:
    """Twice the same deposit has the same density, mass per litre, share and ratio."""
    twice = [
        replace(
            r,
            count=replace(r.count, number=r.count.number * 2) if r.count.number else r.count,
            mass_g=None if r.mass_g is None else 2 * r.mass_g,
        )
        for r in rows
    ]
    once, double = dig_of(rows, litres=8.0), dig_of(twice, litres=16.0)
    for id in ("density", "mass_per_l", "share", "ratio", "mass_ratio", "items_per_g", "dominance", "evenness"):
        assert same(column(id, once).value, column(id, double).value), id


@pytest.mark.parametrize("id", PER_UNIT)
def test_replicates_of_what_was_counted_give_what_was_counted(id: str) -> None:
    """Thirty replicates that are all the sheet itself give thirty times the sheet's value: the axis changes nothing."""
    rows = [
        a_row("S1", "Zea mays", "kernel", 12),
        a_row("S1", "Zea mays", "cupule", 30, share=0.25),
        a_row("S1", "Chenopodium", "seed", 2),
        a_row("S2", "Amaranthus", "seed", 1),
        a_row("S2", "Carya", "nutshell", 40, mass_g=1.5),
        a_row("S2", "Carya", "wood", None, mass_g=2.5),
        a_row("S3", "Triticum dicoccum", "grain", 9),
        a_row("S3", "Triticum dicoccum", "glume base", 5, share=0.5),
    ]
    dig = dig_of(rows)
    table = count_table(dig, PACKS)
    many = table.with_counts(np.repeat(table.counted, 30, axis=0), np.repeat(table.unsorted, 30, axis=0))
    of, to = SELECTORS.get(id, (ALL, Selector(role=("wood",)) if id in ("items_per_g", "mass_ratio") else ALL))
    plain = Units(table, "sample", PACKS, "charred")
    once, drawn = measured(id, plain, of=of, to=to), measured(id, plain.with_table(many), of=of, to=to)
    for part in ("value", "low", "high"):
        wide = np.broadcast_to(getattr(drawn, part), (30, 3))

        assert same(wide, np.broadcast_to(getattr(once, part), (30, 3))), part


@settings(max_examples=10, deadline=None)
@given(rows=sheets(), seed=st.integers(0, 99))
def test_every_measure_takes_resampled_counts(rows: list[CountRow], seed: int) -> None:
    """Forty redrawn sheets give forty rows of values, none of them below what can be."""
    dig = dig_of(rows)
    table = count_table(dig, PACKS)
    drawn = Units(table, "sample", PACKS, "charred").with_table(resampled(table, 40, seed))
    for id in PER_UNIT:
        of, to = SELECTORS.get(id, (ALL, Selector(role=("wood",)) if id in ("items_per_g", "mass_ratio") else ALL))
        found = measured(id, drawn, of=of, to=to)

        assert np.broadcast_shapes(found.value.shape, (40, 3)) == (40, 3), id
