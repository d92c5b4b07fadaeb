"""Correspondence analysis and likeness against printed examples and two libraries."""

from __future__ import annotations

import numpy as np
import pandas as pd
import prince
import pytest
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra.numpy import arrays
from skbio.stats.ordination import ca

from narrate.measures.order import brainerd_robinson, correspondence, likeness, ordination, sorensen
from tests.measures.digs import a_dig, units

# Greenacre 1984, Theory and Applications of Correspondence Analysis: five staff groups by four classes of smoking
# (cells from memory; they give every printed result below).
SMOKING = np.array([[4, 2, 3, 2], [4, 3, 7, 4], [25, 10, 12, 4], [18, 24, 33, 13], [10, 6, 7, 2]])
STAFF = ("senior managers", "junior managers", "senior employees", "junior employees", "secretaries")
CLASSES = ("none", "light", "medium", "heavy")


def array_of(rows) -> np.ndarray:  # type: ignore[no-untyped-def]
    return np.array([[np.nan if x is None else x for x in row] for row in rows], float)


FOUND = correspondence(SMOKING, STAFF, CLASSES)


def test_inertias_are_the_printed_ones() -> None:
    """0.074759, 0.010017, 0.000414: 87.76, 11.76 and 0.49 % of 0.0851899 (Greenacre 1984)."""
    assert FOUND.inertias == pytest.approx((0.074759, 0.010017, 0.000414), abs=5e-7)
    assert FOUND.total_inertia == pytest.approx(0.0851899, abs=5e-8)
    assert np.array(FOUND.inertias) / FOUND.total_inertia * 100 == pytest.approx([87.76, 11.76, 0.49], abs=5e-3)


def test_items_times_inertia_are_chi_square() -> None:
    """193 x 0.0851899 = 16.4416."""
    assert FOUND.items * FOUND.total_inertia == pytest.approx(16.4416, abs=5e-5)


def test_masses_distances_and_inertias_of_rows_are_the_printed_ones() -> None:
    """
    As the ca package prints them for these data (Nenadic & Greenacre 2007, Journal of Statistical Software 20(3)).
    """
    rows = FOUND.rows
    assert rows is not None

    assert rows.masses == pytest.approx((0.056995, 0.093264, 0.264249, 0.455959, 0.129534), abs=5e-7)
    assert rows.distances == pytest.approx((0.216559, 0.356921, 0.380779, 0.240025, 0.216169), abs=5e-7)
    assert rows.inertias == pytest.approx((0.002673, 0.011881, 0.038314, 0.026269, 0.006053), abs=5e-7)


def test_coordinates_are_the_published_ones_but_for_their_sign() -> None:
    """Principal coordinates of the first two axes (worked out; the first standard one, -0.24053, is printed)."""
    rows, columns = array_of(FOUND.rows.coordinates), array_of(FOUND.columns.coordinates)  # type: ignore[union-attr]

    assert np.abs(rows[:, 0]) == pytest.approx([0.065768, 0.258958, 0.380595, 0.232952, 0.201089], abs=5e-7)
    assert np.abs(rows[:, 1]) == pytest.approx([0.193737, 0.243305, 0.010660, 0.057744, 0.078911], abs=5e-7)
    assert np.abs(columns[:, 0]) == pytest.approx([0.393308, 0.099456, 0.196321, 0.293776], abs=5e-7)
    assert np.abs(columns[:, 1]) == pytest.approx([0.030492, 0.141064, 0.007359, 0.197766], abs=5e-7)
    assert abs(rows[0, 0]) / np.sqrt(FOUND.inertias[0]) == pytest.approx(0.24053, abs=5e-5 * 2)


def test_signs_are_set_so_that_pictures_do_not_flip() -> None:
    """On each axis the row farthest from the middle lies on the positive side, as do columns that go with it."""
    rows, columns = array_of(FOUND.rows.coordinates), array_of(FOUND.columns.coordinates)  # type: ignore[union-attr]
    expected = SMOKING / SMOKING.sum(axis=1, keepdims=True) @ (columns / np.sqrt(FOUND.inertias))

    assert np.all(rows[np.argmax(np.abs(rows), axis=0), np.arange(3)] > 0)
    assert rows == pytest.approx(expected)


def test_contributions_and_qualities_add_up() -> None:
    """Contributions to an axis make 1; qualities of a point over all axes make 1."""
    for points in (FOUND.rows, FOUND.columns):
        assert points is not None
        assert array_of(points.contributions).sum(axis=0) == pytest.approx(np.ones(3))
        assert array_of(points.qualities).sum(axis=1) == pytest.approx(np.ones(len(points.names)))


OPEN_DATA = {
    "punctuation marks by chapter": prince.datasets.load_punctuation_marks().select_dtypes("number").to_numpy(float),
    "votes by department": prince.datasets.load_french_elections().select_dtypes("number").fillna(0).to_numpy(float),
}
"""Tables that the prince package carries."""


@pytest.mark.parametrize("name", OPEN_DATA)
def test_open_tables_come_out_as_in_scikit_bio_and_prince(name: str) -> None:
    """Inertias, coordinates and contributions of both libraries."""
    table = OPEN_DATA[name]
    table = table[:, table.sum(axis=0) > 0]
    frame = pd.DataFrame(table, [f"r{i}" for i in range(len(table))], [f"c{j}" for j in range(table.shape[1])])
    axes = min(3, min(table.shape) - 1)
    found = correspondence(table, list(frame.index), list(frame.columns))
    theirs = ca(frame, scaling=1)
    fitted = prince.CA(n_components=axes).fit(frame)
    rows, columns = (array_of(p.coordinates)[:, :axes] for p in (found.rows, found.columns))  # type: ignore[union-attr]

    assert found.inertias[:axes] == pytest.approx(theirs.eigvals.to_numpy()[:axes])
    assert np.abs(rows) == pytest.approx(np.abs(theirs.samples.to_numpy()[:, :axes]), abs=1e-9)
    assert found.inertias[:axes] == pytest.approx(tuple(fitted.eigenvalues_))
    assert np.abs(columns) == pytest.approx(np.abs(fitted.column_coordinates(frame).to_numpy()), abs=1e-9)
    assert array_of(found.rows.contributions)[:, :axes] == pytest.approx(  # type: ignore[union-attr]
        fitted.row_contributions_.to_numpy(), abs=1e-9
    )


def test_poor_samples_and_rare_plants_are_set_aside_and_named() -> None:
    """A sample of 12 items and a plant of one sample are left out, and told."""
    dig = a_dig(
        [
            [("a", "seed", 30), ("b", "seed", 20), ("c", "seed", 4)],
            [("a", "seed", 5), ("b", "seed", 40), ("c", "seed", 9)],
            [("a", "seed", 20), ("c", "seed", 30), ("rare", "seed", 7)],
            [("b", "seed", 12)],
        ]
    )
    found = ordination(units(dig))

    assert found.samples_set_aside == ("S4",)
    assert found.plants_set_aside == ("rare, seed",)
    assert found.rows is not None and found.rows.names == ("S1", "S2", "S3")


def test_too_little_for_an_analysis_has_a_reason() -> None:
    """Two samples make no order."""
    found = ordination(units(a_dig([[("a", "seed", 40), ("b", "seed", 9)]] * 2)))

    assert found.rows is None and found.reason == "fewer than three samples or plants are left"


def test_a_table_with_an_empty_row_is_refused() -> None:
    """A fault of the caller, said at once."""
    with pytest.raises(ValueError, match="every row and every column"):
        correspondence(np.array([[1, 2], [0, 0]]), "ab", "xy")


@pytest.mark.parametrize(
    ("first", "second", "expected"),
    [
        # Worked out from Robinson 1951, American Antiquity 16:293-301 (formula from memory).
        ((50, 30, 20), (40, 40, 20), 180.0),
        ((10, 0), (0, 10), 0.0),
        ((1, 2, 3), (2, 4, 6), 200.0),
        ((8, 6, 6), (2, 3, 5), 160.0),
        ((25, 10, 12, 4), (18, 24, 33, 13), 142.8699),
    ],
)
def test_brainerd_robinson(first: tuple[int, ...], second: tuple[int, ...], expected: float) -> None:
    """200 the same percentages, 0 nothing shared."""
    assert brainerd_robinson(np.array([first, second]))[0, 1] == pytest.approx(expected, abs=5e-5)


def test_sorensen_is_twice_the_shared_over_all() -> None:
    """
    2c/(a + b): Gremillion, Excavating Occaneechi Town, "Site comparisons" (after King 1982). Sites of 9 and 6 taxa
    that share
    5: 10/15.
    """
    first, second = np.arange(10) < 9, np.arange(10) >= 4
    assert sorensen(np.array([first, second]))[0, 1] == pytest.approx(10 / 15)


@given(arrays(np.int64, (4, 5), elements=st.integers(0, 60)))
def test_likeness_is_symmetric_and_does_not_depend_on_size(counts: np.ndarray) -> None:
    """BR lies between 0 and 200, is 200 with itself, and stays when a unit is counted twice over."""
    found = brainerd_robinson(counts)
    twice = brainerd_robinson(counts * np.array([[1], [2], [1], [3]]))
    filled = counts.sum(axis=1) > 0

    assert np.allclose(found, found.T, equal_nan=True) and np.allclose(found, twice, equal_nan=True)
    assert np.all(found[np.ix_(filled, filled)] >= -1e-9) and np.allclose(np.diag(found)[filled], 200)
    assert np.all(np.isnan(found[~filled]))


def test_a_unit_with_nothing_is_like_none() -> None:
    """No value in place of a likeness with nothing."""
    found = likeness(units(a_dig([[("a", "seed", 3)], []])))

    assert found.brainerd_robinson[0] == (200.0, None)
