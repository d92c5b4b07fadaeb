"""
Stored totals of some of the columns of each sample, those of one state, and results merged over all of a sample.

All sheets are invented; what is a sum was added up from the counts beside it, but for what is made wrong on purpose.
"""

from __future__ import annotations

from pathlib import Path

import openpyxl
import pytest

from narrate.reading.intake.take_in import TakenIn, take_in
from tests.reading.intake.test_blind import packs

NAMES = ("Hordeum vulgare", "Avena sp.", "Lens culinaris", "Chenopodium album", "Galium aparine")
COUNTS = (
    (12, 0, 1, 31, 4, 0), (5, 3, 0, 0, 19, 2), (0, 2, 1, 8, 0, 6), (7, 16, 4, 0, 2, 9), (0, 11, 0, 4, 13, 5),
)  # fmt: skip
"""Of two samples, each with what is charred, uncharred and mineralised."""
LITRES = (10, 8)
Cells = dict[str, str | int | float]


def sheet(folder: Path, said: str, *, label: str = "Liczba na 1 litr", **changed: str | int | float) -> TakenIn:
    """A sheet of taxa; 'Suma X' behind each state, and below it the sum and the number per litre of each sample."""
    book = openpyxl.Workbook()
    page = book.active
    assert page is not None
    page.append(["Sample", "S1", "", "", "S2", "", ""])
    page.append(["Volume (L)", LITRES[0], "", "", LITRES[1], "", ""])
    page.append(["Taxon", *"SNMSNM", *(said.format(state) for state in "SNM"), "Suma"])
    for name, counts in zip(NAMES, COUNTS, strict=True):
        sums = [counts[n] + counts[n + 3] for n in range(3)]
        page.append([name, *counts, *sums, sum(sums)])
    columns = [sum(counts[n] for counts in COUNTS) for n in range(6)]
    of_states = [columns[n] + columns[n + 3] for n in range(3)]
    page.append(["Suma", *columns, *of_states, sum(columns)])
    of_samples = [sum(columns[:3]), sum(columns[3:])]
    page.append(["Suma prób", of_samples[0], "", "", of_samples[1]])
    page.append([label, of_samples[0] / LITRES[0], "", "", of_samples[1] / LITRES[1]])
    page.append(["S – charred, N – uncharred, M – mineralised"])
    for row in (1, 2, 10, 11):
        for first in ("B", "E"):
            page.merge_cells(f"{first}{row}:{chr(ord(first) + 2)}{row}")
    for at, value in changed.items():
        page[at] = value
    path = folder / "lab.xlsx"
    book.save(path)
    return take_in(path, packs())


def told(found: TakenIn) -> list[str]:
    return [one.place.cell for one in found.problems if one.code == "N317"]


@pytest.mark.parametrize("said", ["Suma {}", "{} total", "Summe {}"])
def test_totals_are_held_against_the_columns_of_their_state(tmp_path: Path, said: str) -> None:
    """'Suma N' is of the columns headed N, in the lines of taxa and in the line of sums."""
    assert told(sheet(tmp_path, said)) == []


def test_a_wrong_total_of_a_state_is_told(tmp_path: Path) -> None:
    """The mineralised goosefoot of both samples is 13, and 15 is written."""
    found = sheet(tmp_path, "Suma {}", J7=15)

    assert told(found) == ["J7"]
    assert [p.message for p in found.problems if p.place.cell == "J7"] == [
        "the stored Suma M is 15, and the counts in D7 and G7 give 13, expected them to agree"
    ]


def test_a_result_merged_over_a_sample_is_told_once(tmp_path: Path) -> None:
    """62 items in ten litres are 6.2 a litre, and 6.9 is written in the one cell of the three columns of S1."""
    found = sheet(tmp_path, "Suma {}", B11=6.9)

    assert told(found) == ["B11"]


def test_what_is_merged_over_the_columns_of_each_sample_is_no_find(tmp_path: Path) -> None:
    """A word that nobody knows, over one cell a sample, is a result, and the cells are no counts without an owner."""
    found = sheet(tmp_path, "Suma {}", label="Zeta Zeta", B11=7, E11=9)

    assert not [p for p in found.problems if p.severity == "error"]
    assert any("'Zeta Zeta' has one merged cell" in doubt for doubt in found.doubts)


def by_class(folder: Path, wrong: float | None = None) -> TakenIn:
    """Two samples, each with its sieve classes and all of them; below the sums, what each class holds of its sample."""
    book = openpyxl.Workbook()
    page = book.active
    assert page is not None
    page.append(["Sample", "S1", "", "", "", "S2"])
    page.append(["Taxon", *(">2 mm", "1-2 mm", "<1 mm", "all") * 2])
    for name, counts in zip(NAMES, COUNTS, strict=True):
        page.append([name, *counts[:3], sum(counts[:3]), *counts[3:], sum(counts[3:])])
    columns = [sum(counts[n] for counts in COUNTS) for n in range(6)]
    of_samples = [*columns[:3], sum(columns[:3]), *columns[3:], sum(columns[3:])]
    page.append(["Total", *of_samples])
    shares = [round(100 * n / of_samples[3 + k // 4 * 4], 1) for k, n in enumerate(of_samples)]
    page.append(["% of sample total", *shares])
    for first in ("B", "F"):
        page.merge_cells(f"{first}1:{chr(ord(first) + 3)}1")
    if wrong is not None:
        page["C9"] = wrong
    path = folder / "lab.xlsx"
    book.save(path)
    return take_in(path, packs())


def test_shares_of_sieve_classes_are_of_their_sample(tmp_path: Path) -> None:
    """What was in one sieve is a share of what its sample holds, and not of all samples."""
    assert told(by_class(tmp_path)) == []


def test_a_wrong_share_of_a_sieve_class_is_told_alone(tmp_path: Path) -> None:
    """32 of 62 are 51.6 percent, and 61.6 is written."""
    assert told(by_class(tmp_path, 61.6)) == ["C9"]


def test_a_number_of_hundreds_of_digits_is_no_count_and_breaks_no_total(tmp_path: Path) -> None:
    path = tmp_path / "huge.csv"
    lines = ("Taxon,S1,S2,S3", f"Zea mays kernel,{'9' * 400},3,4", "Zea mays cupule,9,4,1", "Total,12,7,5")
    path.write_text("\n".join(lines), encoding="utf-8")

    found = take_in(path, packs())

    assert [row.count.number for row in found.rows if row.count.number] == [3, 4, 9, 4, 1]
    assert [problem.code for problem in found.problems if problem.place.cell == "B2"] == ["N313"]


def test_a_raised_digit_before_a_number_is_no_number(tmp_path: Path) -> None:
    """'³' is a digit to Python and none to whoever counts."""
    path = tmp_path / "raised.csv"
    path.write_text("Sample,Taxon,Count\n³4,Zea mays,3\nS2,Zea mays,³4\nS3,Zea mays,5\n", encoding="utf-8")

    assert [row.count.number for row in take_in(path, packs()).rows if row.count.number] == [3, 5]
