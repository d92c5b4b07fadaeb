"""
Sums over cells such as '5 (2)' and '12+3f': of the whole items, of the pieces, or of both; seen and never counted.

All sheets are invented; what is a sum was added up from the counts beside it.
"""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from narrate.reading.intake.take_in import TakenIn, take_in
from tests.reading.intake.test_blind import packs

NAMES = (
    "Hordeum vulgare grain", "Triticum dicoccum grain", "Avena sp. grain", "Lens culinaris seed",
    "Corylus avellana nutshell", "Chenopodium album seed", "Galium aparine seed",
)  # fmt: skip
WHOLE = ((12, 0, 31, 4), (3, 18, 9, 0), (5, 0, 0, 19), (0, 3, 8, 0), (21, 0, 14, 5), (7, 16, 0, 2), (0, 1, 4, 13))
PIECES = ((4, 0, 3, 11), (0, 5, 2, 0), (6, 0, 0, 8), (0, 9, 0, 7), (15, 0, 3, 0), (0, 2, 0, 6), (0, 0, 12, 1))
WRITTEN = {"brackets": ("{} ({})", "({})"), "letters": ("{}+{}f", "{}f")}


def cell(way: str, whole: int, pieces: int) -> str:
    both, alone = WRITTEN[way]
    if not pieces:
        return str(whole or "")
    return both.format(whole, pieces) if whole else alone.format(pieces)


def sheet(way: str, *, add: int = 0) -> list[list[str | int]]:
    """The sums of wholes and of pieces stand behind the samples, under small heads; add: what the first is off by."""
    rows: list[list[str | int]] = [["Sample", "S1", "S2", "S3", "S4", "", ""]]
    rows.append(["Taxon", "", "", "", "", "Whole", "Fragments"])
    for name, whole, pieces in zip(NAMES, WHOLE, PIECES, strict=True):
        cells = [cell(way, a, b) for a, b in zip(whole, pieces, strict=True)]
        rows.append([name, *cells, sum(whole) + (add if name == NAMES[0] else 0), sum(pieces)])
    columns = [list(zip(*of, strict=True)) for of in (WHOLE, PIECES)]
    for label, of in zip(("Total whole", "Total fragments"), columns, strict=True):
        rows.append([label, *map(sum, of), "", ""])
    return [*rows, [], ["Key: 5 (2) = 5 whole and 2 fragments; (2) = fragments only"] if way == "brackets" else []]


def taken(folder: Path, rows: list[list[str | int]]) -> TakenIn:
    path = folder / "lab.csv"
    with path.open("w", encoding="utf-8", newline="") as out:
        csv.writer(out).writerows(rows)
    return take_in(path, packs())


def added(found: TakenIn) -> dict[tuple[str, str], int]:
    sums: dict[tuple[str, str], int] = {}
    for row in found.rows:
        if row.count.number:
            key = str(row.sample), row.completeness
            sums[key] = sums.get(key, 0) + int(row.count.number)
    return sums


def told(found: TakenIn) -> list[str]:
    return [one.place.cell for one in found.problems if one.code == "N317"]


@pytest.mark.parametrize("way", WRITTEN)
def test_sums_of_wholes_and_of_pieces_are_not_added_to_the_last_sample(tmp_path: Path, way: str) -> None:
    """S4 holds 4 + 19 + 5 + 2 + 13 whole and 11 + 8 + 7 + 6 + 1 pieces, whatever stands behind it."""
    found = taken(tmp_path, sheet(way))

    assert (added(found)["S4", "whole"], added(found)["S4", "fragment"]) == (43, 33)
    assert told(found) == []


def test_totals_of_fragments_say_what_brackets_are(tmp_path: Path) -> None:
    """Without a key, 'Total fragments' over what stands in brackets says that it is fragments."""
    found = taken(tmp_path, sheet("brackets")[:-2])

    assert added(found)["S4", "fragment"] == 33
    assert any("as fragments, and no key says what it is" in doubt for doubt in found.doubts)
    assert told(found) == []


@pytest.mark.parametrize("way", WRITTEN)
def test_a_wrong_sum_of_wholes_is_told_alone(tmp_path: Path, way: str) -> None:
    """47 is written where the wholes give 51."""
    assert told(taken(tmp_path, sheet(way, add=-4))) == ["F3"]


@pytest.mark.parametrize(("label", "of"), [("Alles", (0, 1)), ("Ganz", (0,)), ("Splitter", (1,))])
def test_sums_of_either_are_seen_without_words(tmp_path: Path, label: str, of: tuple[int, ...]) -> None:
    """A last row that no word betrays adds up the wholes, the pieces or both in the cells above it."""
    rows = [row[:5] for row in sheet("letters")[2:9]]
    sums = [sum(line[s] for n in of for line in (WHOLE, PIECES)[n]) for s in range(4)]
    found = taken(tmp_path, [["Taxon", "S1", "S2", "S3", "S4"], *rows, [label, *sums]])

    assert (added(found)["S1", "whole"], added(found)["S1", "fragment"]) == (48, 25)
    assert told(found) == []


def test_a_small_head_behind_the_samples_is_of_no_sample(tmp_path: Path) -> None:
    """'Whole' over a last column without an id is no part of S4, though its numbers agree with nothing."""
    rows = [["Sample", "S1", "S2", "S3", "S4", "", ""], ["Taxon", "", "", "", "", "Whole", "Fragments"]]
    rows += [[name, *map(str, whole), "7", "1"] for name, whole in zip(NAMES, WHOLE, strict=True)]

    assert added(taken(tmp_path, [list(row) for row in rows]))["S4", "whole"] == 43


def across(head: str) -> list[list[str | int]]:
    """Taxa across, each with its state below; behind them a number of charred items, whole and in pieces."""
    states = ["ch", "unch", "ch", "ch", "unch", "ch", "ch"]
    rows: list[list[str | int]] = [["", *(name.rpartition(" ")[0] for name in NAMES), "Animals", ""]]
    rows.append(["", *(name.rpartition(" ")[2] for name in NAMES), "Bone", ""])
    rows.append(["Sample", *states, "n", head])
    for s in range(4):
        pairs = [(WHOLE[n][s], PIECES[n][s]) for n in range(7)]
        charred = sum(sum(pair) for pair, state in zip(pairs, states, strict=True) if state == "ch")
        rows.append([f"S{s + 1}", *(cell("letters", *pair) for pair in pairs), 4, charred])
    return [*rows, [], ["Key: ch charred, unch uncharred, f fragment"]]


@pytest.mark.parametrize("head", ["No. of items (ch)", "Zeta"])
def test_a_number_of_items_behind_taxa_is_no_plant(tmp_path: Path, head: str) -> None:
    """S1 holds 48 whole items and 25 pieces; 24 and 10 of them are charred, and stand again as 34 behind them."""
    found = taken(tmp_path, across(head))

    assert (added(found)["S1", "whole"], added(found)["S1", "fragment"]) == (48, 25)
    assert told(found) == []


def test_a_group_that_is_no_plant_is_set_aside(tmp_path: Path) -> None:
    """Snail shells under 'Non-plant' are no find of a plant of that name."""
    rows = across("No. of items (ch)")
    rows[0][8], rows[1][8] = "Non-plant", "Snail shell"
    found = taken(tmp_path, rows)

    assert not [row for row in found.rows if "Non-plant" in row.identification.written]


def test_pieces_beside_a_class_are_read(tmp_path: Path) -> None:
    """'>50+12f' is a class that no number stands for, and twelve pieces; a total may add up both."""
    rows: list[list[str | int]] = [["Taxon", "S1", "S2", "S3"], ["Hordeum vulgare grain", ">50+12f", 7, 3]]
    rows += [["Avena sp. grain", 5, "2f", 11], ["Total", 67, 9, 14]]
    found = taken(tmp_path, rows)
    both = [(row.count.at_least, row.count.number) for row in found.rows if ">" in row.count.written]

    assert both == [(51, None), (None, 12)]
    assert told(found) == []


def test_sums_of_pieces_in_a_list_are_no_finds(tmp_path: Path) -> None:
    """A list gives below the finds of each sample what they add up to, the whole ones and the pieces."""
    rows: list[list[str | int]] = [["Sample", "Taxon", "n"]]
    for s in range(4):
        for n, name in enumerate(NAMES):
            rows += [[f"S{s + 1}", name, text]] if (text := cell("letters", WHOLE[n][s], PIECES[n][s])) else []
        sums = (sum(line[s] for line in of) for of in (WHOLE, PIECES))
        rows += [[f"S{s + 1}", name, number] for name, number in zip(("Zeta", "Eta"), sums, strict=True)]
    found = taken(tmp_path, rows)

    assert (added(found)["S1", "whole"], added(found)["S1", "fragment"]) == (48, 25)
    assert told(found) == []
