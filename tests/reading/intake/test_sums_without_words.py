"""
Rows and columns that are sums by their numbers, under words that nobody knows: totals, checked, and never counted.

All sheets are invented; what is a sum was added up from the counts beside it, but for what is made wrong on purpose.
"""

from __future__ import annotations

import csv
from collections.abc import Callable, Sequence
from pathlib import Path

import pytest

from narrate.reading.intake.sums_by_numbers import sums_among
from narrate.reading.intake.take_in import TakenIn, take_in
from tests.reading.intake.test_blind import packs

Rows = list[list[str | int | float]]

NAMES = (
    "Hordeum vulgare grain", "Triticum dicoccum grain", "Triticum dicoccum glume base", "Avena sp. grain",
    "Lens culinaris seed", "Corylus avellana nutshell", "Chenopodium album seed", "Galium aparine seed",
)  # fmt: skip
COUNTS = (
    (12, 0, 31, 4, 7, 22, 0), (3, 18, 9, 0, 14, 5, 2), (0, 27, 6, 11, 0, 8, 15), (5, 0, 0, 19, 2, 0, 4),
    (0, 3, 8, 0, 1, 6, 0), (21, 0, 14, 5, 0, 9, 30), (7, 16, 0, 2, 25, 0, 11), (0, 1, 4, 13, 6, 17, 0),
)  # fmt: skip
SAMPLES = [f"S{n}" for n in range(1, 8)]
ALL = sum(map(sum, COUNTS))


def as_it_is(rows: Rows) -> Rows:
    return rows


def turned(rows: Rows) -> Rows:
    return [list(column) for column in zip(*rows, strict=True)]


def lines(numbers: Sequence[Sequence[int]] = COUNTS) -> Rows:
    return [["Taxon", *SAMPLES], *([name, *own] for name, own in zip(NAMES, numbers, strict=True))]


def sums(of: Sequence[int] = range(8), wrong: int | None = None) -> list[int]:
    """What the lines of some names add up to in each sample; three more in one of them."""
    return [sum(COUNTS[n][s] for n in of) + (3 if s == wrong else 0) for s in range(7)]


def taken(folder: Path, rows: Rows) -> TakenIn:
    sheet = folder / "lab.csv"
    with sheet.open("w", encoding="utf-8", newline="") as out:
        csv.writer(out).writerows(rows)
    return take_in(sheet, packs())


def added(found: TakenIn) -> float:
    return sum(row.count.number or 0 for row in found.rows)


def told(found: TakenIn) -> list[tuple[str, str]]:
    return [(one.place.cell, one.message) for one in found.problems if one.code == "N317"]


WAYS = {"taxa down": as_it_is, "taxa across": turned}
WORDS = ("Charred sum", "Whole lot", "Ne", "Alles", "Sigma", "N", "Zeta")


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("at", [1, 9])
@pytest.mark.parametrize("word", WORDS)
def test_a_line_of_sums_with_one_wrong_number_is_a_total(tmp_path: Path, word: str, at: int, way: str) -> None:
    """At the head or the foot of the names, under any word: nothing is counted twice, and the wrong one is told."""
    rows = lines()
    rows.insert(at, [word, *sums(wrong=2)])
    found = taken(tmp_path, WAYS[way](rows))

    assert added(found) == ALL
    assert len(told(found)) == 1
    assert "75" in told(found)[0][1] and "give 72" in told(found)[0][1]


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("at", [1, 8])
@pytest.mark.parametrize("word", [*WORDS, "S8", "Pit 4"])
def test_sums_of_samples_with_one_wrong_number_are_a_total(tmp_path: Path, word: str, at: int, way: str) -> None:
    """Before or behind the samples, under any word and even under an id."""
    rows = lines()
    of_names = [word, *(sum(own) + (3 if n == 3 else 0) for n, own in enumerate(COUNTS))]
    for row, cell in zip(rows, of_names, strict=True):
        row.insert(at, cell)
    found = taken(tmp_path, WAYS[way](rows))

    assert added(found) == ALL
    assert len(told(found)) == 1
    assert "33" in told(found)[0][1] and "give 30" in told(found)[0][1]


@pytest.mark.parametrize("way", WAYS)
def test_sums_taken_for_ids_are_no_ids(tmp_path: Path, way: str) -> None:
    """A line of sums without a word stands between the ids and the names: the samples keep their ids."""
    rows = lines()
    rows.insert(1, ["", *sums(wrong=2)])
    found = taken(tmp_path, WAYS[way](rows))

    assert {str(row.sample) for row in found.rows} == set(SAMPLES)
    assert added(found) == ALL


PITS = {
    "pits": lambda n: [f"Pit {n}", ""], "contexts": lambda n: [f"Ctx {100 + n} all", str(100 + n)],
    "blank": lambda n: ["", ""], "context alone": lambda n: ["", str(100 + n)], "ids": lambda n: [f"S{n}00", ""],
}  # fmt: skip


def with_pits(label: Callable[[int], list[str]], wrong: int = 0) -> Rows:
    """Samples down, and behind those of each context a row of their sums."""
    rows: Rows = [["Sample", "Context", *NAMES]]
    for n, of in enumerate((range(3), range(3, 5), range(5, 7)), start=1):
        rows += [[SAMPLES[s], str(100 + n), *(own[s] for own in COUNTS)] for s in of]
        in_all = [sum(own[s] for s in of) for own in COUNTS]
        rows.append([*label(n), *(number + (wrong if (n, k) == (2, 1) else 0) for k, number in enumerate(in_all))])
    return rows


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("label", PITS)
def test_sums_of_the_samples_of_a_context_are_no_samples(tmp_path: Path, label: str, way: str) -> None:
    """Whatever they are called, and where nothing is called at all."""
    found = taken(tmp_path, WAYS[way](with_pits(PITS[label])))

    assert {str(row.sample).split("/")[-1] for row in found.rows} == set(SAMPLES)
    assert (added(found), told(found)) == (ALL, [])


@pytest.mark.parametrize("way", WAYS)
def test_a_wrong_sum_among_those_of_contexts_is_told(tmp_path: Path, way: str) -> None:
    """Both numbers and both places are said."""
    found = taken(tmp_path, WAYS[way](with_pits(PITS["pits"], wrong=5)))

    assert added(found) == ALL
    assert [message.split(", expected")[0] for _, message in told(found)] == [
        {"taxa down": "the stored Pit 2 is 19, and the counts in D6 to D7 give 14",
         "taxa across": "the stored Pit 2 is 19, and the counts in F4 to G4 give 14"}[way]
    ]  # fmt: skip


GROUPS = {"Cereals all": range(4), "Kitchen": range(4, 6), "Outdoors": range(6, 8)}


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("is_above", [True, False])
def test_sums_of_groups_of_names_are_no_plants(tmp_path: Path, is_above: bool, way: str) -> None:
    """Above their group or below it, with a sum of all behind them; one wrong number is told."""
    rows: Rows = [["Taxon", *SAMPLES]]
    for word, of in GROUPS.items():
        own = [word, *sums(of, wrong=4 if word == "Kitchen" else None)]
        members = [[NAMES[n], *COUNTS[n]] for n in of]
        rows += [own, *members] if is_above else [*members, own]
    rows.append(["Everything", *sums()])
    found = taken(tmp_path, WAYS[way](rows))

    assert added(found) == ALL
    assert [("is 4," in message, "give 1," in message) for _, message in told(found)] == [(True, True)]


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("left_out", [(3,), (5,), (3, 5)])
def test_a_sum_that_leaves_out_what_is_doubtful_is_a_total(tmp_path: Path, left_out: tuple[int, ...], way: str) -> None:
    """'Assured' is of all lines but one or two; no word says so."""
    rows = [*lines(), ["Assured", *sums([n for n in range(8) if n not in left_out], wrong=1)]]
    found = taken(tmp_path, WAYS[way](rows))

    assert added(found) == ALL
    assert len(told(found)) == 1


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("word", ["Both", "LF+HF", "All", "Whole"])
def test_what_stands_behind_two_fractions_is_their_sum(tmp_path: Path, word: str, way: str) -> None:
    """'LF, HF, Both' under each sample: the third is no find, and one wrong number of it is told."""
    ids = [text for n in range(3) for text in (f"S{n + 1}", "", "")]
    heads: Rows = [["Sample", *ids], ["Taxon", *["LF", "HF", word] * 3]]
    rows = [
        [name, *(cell for s in (0, 2, 4) for cell in (own[s], own[s + 1], own[s] + own[s + 1]))]
        for name, own in zip(NAMES, COUNTS, strict=True)
    ]
    rows[1][3] = 99
    found = taken(tmp_path, WAYS[way]([*heads, *rows]))

    assert added(found) == sum(sum(own[:6]) for own in COUNTS)
    assert [("is 99," in message, "give 21," in message) for _, message in told(found)] == [(True, True)]


@pytest.mark.parametrize("way", WAYS)
def test_columns_of_phases_behind_the_samples_are_their_sums(tmp_path: Path, way: str) -> None:
    """The samples of a phase need not stand side by side."""
    phases = ((0, 3), (1, 2, 6), (4, 5))
    rows = lines()
    rows[0] += ["Early", "Middle", "Late"]
    for row, own in zip(rows[1:], COUNTS, strict=True):
        row.extend(sum(own[s] for s in of) for of in phases)
    found = taken(tmp_path, WAYS[way](rows))

    assert (added(found), told(found)) == (ALL, [])


WEIGHTS = ((0.42, 0.63, 1.61, 0.37, 0.9), (1.11, 0.43, 3.71, 0.08, 2.2), (1.25, 2.93, 0.51, 1.04, 0.03))


@pytest.mark.parametrize("way", WAYS)
def test_sums_of_grams_are_totals_too(tmp_path: Path, way: str) -> None:
    """Beside numbers of pieces, each kind by itself, and with a wrong one of either told."""
    heads: Rows = [["Taxon", *(text for n in range(5) for text in (f"S{n + 1}", ""))], ["", *["n", "g"] * 5]]
    woods = ("Quercus charcoal", "Corylus charcoal", "Fraxinus charcoal")
    rows = [
        [wood, *(cell for g in own for cell in (round(10 * g), g))] for wood, own in zip(woods, WEIGHTS, strict=True)
    ]
    grams = [round(sum(own[s] for own in WEIGHTS), 2) for s in range(5)]
    pieces = [sum(round(10 * own[s]) for own in WEIGHTS) for s in range(5)]
    last = ["Whole lot", *(cell for pair in zip(pieces, grams, strict=True) for cell in pair)]
    last[3], last[6] = pieces[1] + 4, 9.99
    found = taken(tmp_path, WAYS[way]([*heads, *rows, last]))

    assert added(found) == sum(pieces)
    assert len(told(found)) == 2


LIST = [(f"S{s + 1}", NAMES[n], COUNTS[n][s]) for s in range(7) for n in range(8) if COUNTS[n][s]]


@pytest.mark.parametrize("word", ["Whole lot", "Everything", ""])
def test_sums_of_samples_in_a_list_are_no_finds(tmp_path: Path, word: str) -> None:
    """A row of sums ends each sample; one of them is wrong, and told."""
    rows: Rows = [["Sample", "Taxon", "Count"]]
    for s, id in enumerate(SAMPLES):
        rows += [list(line) for line in LIST if line[0] == id]
        rows.append([id, word, sums(wrong=3)[s]])
    found = taken(tmp_path, rows)

    assert added(found) == ALL
    assert len(told(found)) == 1


@pytest.mark.parametrize("word", ["Site", "Everything"])
def test_sums_of_names_in_a_list_are_no_sample(tmp_path: Path, word: str) -> None:
    """Under one more id each name stands again with all that was found of it; one is wrong, and told."""
    of_names = [[word, NAMES[n], sum(own) + (4 if n == 2 else 0)] for n, own in enumerate(COUNTS)]
    found = taken(tmp_path, [["Sample", "Taxon", "Count"], *map(list, LIST), *of_names])

    assert (added(found), word in {str(row.sample) for row in found.rows}) == (ALL, False)
    assert [("is 71," in message, "give 67," in message) for _, message in told(found)] == [(True, True)]


def test_sums_in_doubt_stay_counts_and_are_told(tmp_path: Path) -> None:
    """Few cells may agree by chance: nothing is taken away, and how to mend it is said."""
    rows: Rows = [["Taxon", "S1", "S2"], [NAMES[0], 12, 5], [NAMES[4], 9, 7], [NAMES[6], 4, 6], ["Zeta", 25, 18]]
    found = taken(tmp_path, rows)

    doubts = [doubt for doubt in found.doubts if "'Zeta'" in doubt]
    assert doubts != []
    assert added(found) == (86 if doubts[0].startswith("DOUBTFUL") else 43)


@pytest.mark.parametrize("way", WAYS)
def test_counts_that_add_up_to_no_other_are_counts(tmp_path: Path, way: str) -> None:
    """Nothing is told of sums where there are none."""
    found = taken(tmp_path, WAYS[way](lines()))

    assert added(found) == ALL
    assert [doubt for doubt in found.doubts if "sum of" in doubt] == []


def test_small_numbers_are_no_sums() -> None:
    """Ones and twos agree by chance again and again."""
    amounts = {1: [1, 0, 1, 0], 2: [0, 1, 0, 1], 3: [1, 1, 1, 1], 4: [0, 2, 0, 1], 5: [1, 0, 2, 0]}

    assert sums_among(list(amounts), amounts) == []


@pytest.mark.parametrize("word", ["Total", "Whole lot"])
@pytest.mark.parametrize("way", WAYS)
def test_a_sum_that_lacks_a_name_of_one_sample_is_wrong(tmp_path: Path, way: str, word: str) -> None:
    """A seed that was added later, in one sample alone, is not taken for one that the sum leaves out on purpose."""
    late = ["Rubus sp. seed", 0, 0, 0, 9, 0, 0, 0]
    found = taken(tmp_path, WAYS[way]([*lines(), late, [word, *sums()]]))
    first = taken(tmp_path, WAYS[way]([lines()[0], late, *lines()[1:], [word, *sums()]]))

    assert [("is 54," in message, "give 63," in message) for _, message in told(found)] == [(True, True)]
    assert [message for _, message in told(first)] != []
