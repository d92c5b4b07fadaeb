"""What the samples of sheets by somebody who does not know the reader are, and results of them made wrong; invented."""

from __future__ import annotations

from pathlib import Path

import pytest
import yaml
from openpyxl import load_workbook

from narrate.pipeline.intake import intake
from narrate.reading.intake.take_in import TakenIn, take_in
from tests.reading.intake.test_blind import HERE, packs, taken


def records(sheet: Path, project: Path) -> dict[str, tuple[object, object, object]]:
    """Sample -> litres, context and the phase of that context."""
    intake(sheet, project)
    drafted = yaml.safe_load((project / "records" / "drafted-from-sheets.yaml").read_text(encoding="utf-8"))
    phases = {str(one["id"]): one.get("phase") for one in drafted["contexts"]}
    return {
        str(one["id"]): (one.get("volume_l"), str(one["context"]), phases[str(one["context"])])
        for one in drafted["samples"]
    }


@pytest.mark.parametrize(
    ("sheet", "sample", "expected"),
    [
        ("o02.xlsx", "Q12/1", (3, "Pos. 31", "Schicht 3")),
        ("o05.xlsx", "VE10", (12, "[31]", "Islâmico")),
        ("o08.xlsx", "K4-21", (9.5, "121", "IV")),
        ("o10.xlsx", "H31②", (10, "H31", "Middle 中期")),
        ("o12.csv", "C1", (7.5, "212", "XIII sec.")),
    ],
)
def test_a_sample_has_the_litres_the_context_and_the_phase_of_its_sheet(
    tmp_path: Path, sheet: str, sample: str, expected: tuple[object, object, object]
) -> None:
    assert records(HERE / sheet, tmp_path / "dig")[sample] == expected


def with_cells(folder: Path, sheet: str, cells: dict[str, object]) -> TakenIn:
    """A sheet of one table with some cells written anew."""
    book = load_workbook(HERE / sheet)
    for cell, value in cells.items():
        book.worksheets[0][cell] = value
    book.save(folder / sheet)
    return take_in(folder / sheet, packs())


def test_a_total_under_each_state_that_is_wrong_is_told(tmp_path: Path) -> None:
    """'Summe' stands over charred and waterlogged; each is the sum of its own columns."""
    got = with_cells(tmp_path, "o02.xlsx", {"W13": 36, "V45": 9})

    assert [problem.place.cell for problem in got.problems if problem.code == "N317"] == ["W13", "V45"]


@pytest.mark.parametrize(
    "words", ["Ubiquidade (n.º amostras)", "N.º de amostras com presença", "Presenze (n. campioni)", "Ubikvitet"]
)
def test_a_line_of_ubiquity_under_the_samples_is_no_sample(tmp_path: Path, words: str) -> None:
    got = with_cells(tmp_path, "o05.xlsx", {"A23": words})

    assert len({row.sample for row in got.rows}) == 16
    assert len(got.rows) == 181


def test_unknown_words_behind_a_total_are_no_sample_and_are_told(tmp_path: Path) -> None:
    """No list of heads knows the words; nothing of contexts, phases and litres stands beside them."""
    got = with_cells(tmp_path, "o05.xlsx", {"A23": "Aparece em tantas unidades"})

    assert len(got.rows) == 181
    assert any("'Aparece em tantas unidades' stands behind a total" in doubt for doubt in got.doubts)


def test_a_sample_with_an_id_behind_a_total_is_a_sample(tmp_path: Path) -> None:
    """An id says that it is one, whatever else is not known of it."""
    got = with_cells(tmp_path, "o05.xlsx", {"A23": "VE30"})

    assert "VE30" in {str(row.sample) for row in got.rows}


def test_numbers_over_the_head_of_the_names_are_no_finds_and_are_told(tmp_path: Path) -> None:
    """The words look like a name in Latin and stand over 'Taxa': nobody knows them, and they are left out aloud."""
    got = with_cells(tmp_path, "o10.xlsx", {"A5": "Quantum terrae"})

    assert {row.identification.written for row in got.rows} == {
        row.identification.written for row in taken("o10.xlsx").rows
    }
    assert any("row 5 ('Quantum terrae') holds numbers and is left out" in doubt for doubt in got.doubts)


def test_an_unknown_plant_under_a_head_of_its_own_is_a_find(tmp_path: Path) -> None:
    """'WILD PLANTS' heads the second group and not the table; what the first group names is kept, known or not."""
    path = tmp_path / "lab.tsv"
    path.write_text(
        "Sample\tS1\tS2\tS3\nLitres\t3.5\t19.5\t2\nCEREALS AND NUTS\nQuantum terrae grain\t3\t2\t\n"
        "WILD PLANTS\nRumex acetosella nutlet\t\t4\t5\nIva annua achene\t1\t1\t3\n",
        encoding="utf-8",
    )
    found = take_in(path, packs())

    assert [row.count.number for row in found.rows if "Quantum" in row.identification.written] == [3, 2]
