"""Numbers that add up to 100 and that nobody calls shares: told, and no counts. All sheets are invented."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.reading.intake.test_sums_without_words import COUNTS, NAMES, SAMPLES, WAYS, Rows, added, taken, turned

TOTALS = [sum(own[s] for own in COUNTS) for s in range(7)]


def shares(digits: int, whole: float = 100) -> Rows:
    """Of each sample, rounded as sheets round them."""
    rows: Rows = [["Taxon", *SAMPLES]]
    for name, own in zip(NAMES, COUNTS, strict=True):
        pairs = zip(own, TOTALS, strict=True)
        rows.append([name, *(round(whole * n / total, digits) if n else "" for n, total in pairs)])
    return rows


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("rows", [shares(1), shares(2), shares(3, whole=1), [*shares(1), ["Whole lot", *[100] * 7]]])
def test_broken_numbers_that_add_up_to_100_are_no_counts(tmp_path: Path, rows: Rows, way: str) -> None:
    """In percent or in parts of 1, with a line of 100 or without: it is told with how to mend it."""
    found = taken(tmp_path, WAYS[way](rows))

    assert [row for row in found.rows if row.count.amount != "looked for and absent"] == []
    said = [one for one in found.doubts if "adds up to" in one]
    assert [("shares, not counts" in one, "write counts" in one) for one in said] == [(True, True)]


def test_one_sample_that_does_not_add_up_changes_nothing(tmp_path: Path) -> None:
    """One of seven may have been typed wrongly."""
    rows = shares(1)
    rows[1][1] = 31.7

    assert added(taken(tmp_path, rows)) == 0


def test_shares_of_a_name_over_the_samples_are_no_counts(tmp_path: Path) -> None:
    """The lines of the names add up to 100, not those of the samples."""
    rows: Rows = [["Taxon", *SAMPLES]]
    rows += [[name, *(round(100 * n / sum(own), 1) for n in own)] for name, own in zip(NAMES, COUNTS, strict=True)]

    assert added(taken(tmp_path, rows)) == 0


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("head", ["", "the same id"])
def test_shares_beside_each_count_are_no_counts(tmp_path: Path, head: str, way: str) -> None:
    """Every second column adds up to 100, under no head or under that of the sample once more."""
    rows: Rows = [["Taxon", *(cell for id in SAMPLES for cell in (id, id if head else ""))]]
    for own, of in zip(lines := shares(1)[1:], COUNTS, strict=True):
        rows.append([own[0], *(cell for pair in zip(of, own[1:], strict=True) for cell in pair)])
    found = taken(tmp_path, WAYS[way](rows))

    assert len(lines) == len(COUNTS)
    assert added(found) == sum(TOTALS)
    assert [one for one in found.doubts if "taken for shares" in one] != []


def test_shares_in_a_list_are_no_counts(tmp_path: Path) -> None:
    """The amounts of each sample add up to 100."""
    of = shares(1)
    rows = [[id, row[0], row[s]] for s, id in enumerate(SAMPLES, start=1) for row in of[1:] if row[s]]
    found = taken(tmp_path, [["Sample", "Taxon", "Count"], *rows])

    assert added(found) == 0
    assert [one for one in found.doubts if "column C adds up to 100 in each sample" in one] != []


@pytest.mark.parametrize("way", WAYS)
def test_whole_numbers_that_add_up_to_100_stay_counts_and_are_told(tmp_path: Path, way: str) -> None:
    """Who counts a hundred pieces of charcoal of each sample has such numbers too."""
    woods = {"Quercus": (60, 25, 71), "Corylus": (30, 55, 9), "Fraxinus": (10, 20, 20)}
    rows: Rows = [["Taxon", "S1", "S2", "S3"], *([f"{wood} charcoal", *own] for wood, own in woods.items())]
    found = taken(tmp_path, WAYS[way](rows))

    assert added(found) == 300
    assert [one for one in found.doubts if one.startswith("DOUBTFUL") and "add up to 100" in one] != []


HALVES: Rows = [["Taxon", "S1", "S2"], [NAMES[0], 40.5, 12], [NAMES[1], 3, 7.5]]


@pytest.mark.parametrize("rows", [shares(0, whole=250), HALVES])
def test_what_adds_up_to_no_hundred_is_no_share(tmp_path: Path, rows: Rows) -> None:
    """Nothing is told of shares."""
    for sheet in (rows, turned(rows)):
        assert [one for one in taken(tmp_path, sheet).doubts if "add up" in one or "adds up" in one] == []
