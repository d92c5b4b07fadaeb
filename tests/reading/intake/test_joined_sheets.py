"""Sheets of a database joined by keys, and tables of statistical programs. All invented."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import openpyxl

from narrate.model.packs import Packs
from narrate.reading.intake.project_intake import naming_packs
from narrate.reading.intake.take_in import TakenIn, take_in

TAXA = [["taxon_key", "latin"], [11, "Zea mays"], [12, "Iva annua"], [13, "Vitis sp."], [40, "gastropod"]]
SAMPLES = [["sample_key", "sample no", "litres"], [501, "FL-1", 10], [502, "FL-2", 8], [503, "FL-3", 4]]
FINDS = [
    ["rec", "sample_key", "taxon_key", "part", "n"],
    [1, 501, 11, "kernel", 7], [2, 501, 12, "achene", 2], [3, 502, 11, "kernel", 4], [4, 502, 13, "seed", 1],
    [5, 502, 40, "shell", 9], [6, 501, 12, "achene", 3], [7, 502, 12, "achene", 1], [8, 501, 11, "cupule", 6],
    [9, 599, 11, "kernel", 5], [10, 501, 77, "seed", 1], [11, 502, 11, "cupule", 3], [12, 501, 13, "seed", 1],
]  # fmt: skip


@cache
def packs() -> Packs:
    return naming_packs(("eastern-north-america",))


def a_database(folder: Path) -> TakenIn:
    book = openpyxl.Workbook()
    book.remove(book.active)
    for name, rows in (("Taxa", TAXA), ("Finds", FINDS), ("Samples", SAMPLES)):
        sheet = book.create_sheet(name)
        for row in rows:
            sheet.append(row)
    book.save(folder / "lab.xlsx")
    return take_in(folder / "lab.xlsx", packs())


def test_keys_are_names_and_ids_and_never_counts(tmp_path: Path) -> None:
    """Each find has the name and the sample that its keys stand for; the shell among them is set aside."""
    found = a_database(tmp_path)
    given = found.layout.names if found.layout is not None else {}

    read = [(str(r.sample), given.get(r.identification.written, "?"), r.part, r.count.number) for r in found.rows]
    assert sorted(read)[:4] == [
        ("599", "Zea mays", "kernel", 5), ("FL-1", "?", "seed", 1), ("FL-1", "Iva annua", "achene", 5),
        ("FL-1", "Vitis sp.", "seed", 1),
    ]  # fmt: skip
    assert sum(number or 0 for *_, number in read) == sum(row[4] for row in FINDS[1:] if row[2] != 40)
    assert [said.text for said in found.facts["FL-3"]["volume"]] == ["4"]


def test_keys_that_stand_in_no_list_are_told(tmp_path: Path) -> None:
    """By sheet and key, and they are kept as they are written."""
    assert [doubt for doubt in a_database(tmp_path).doubts if "no line" in doubt] == [
        "DOUBTFUL: sample_key 599 stands in no line of sheet Samples",
        "DOUBTFUL: taxon_key 77 stands in no line of sheet Taxa",
    ]


def test_the_head_of_a_table_with_row_names_is_over_the_cells_behind_them(tmp_path: Path) -> None:
    """One head less than cells in every line, as statistical programs write it: told, and read so."""
    (tmp_path / "x.txt").write_text(
        '"sample" "taxon" "part" "n"\n"1" "S1" "Zea.mays" "kernel" 4\n"4" "S1" "Iva.annua" "achene" NA\n'
        '"7" "S2" "Zea.mays" "kernel" 2\n"9" "S2" "Vitis.sp." "seed" 1e+02\n',
        encoding="utf-8",
    )
    found = take_in(tmp_path / "x.txt", packs())

    assert [(str(r.sample), r.count.number) for r in found.rows] == [("S1", 4), ("S1", None), ("S2", 2), ("S2", 100)]
    assert [(p.code, p.place.cell, p.message.split(",")[0]) for p in found.problems if p.code != "N315"] == [
        ("N312", "", "the first line has 4 cells and every other 5; its words are taken as the heads of the cells "
                     "behind the first"),
        ("N313", "E3", "'NA' stands for a number that nobody gives; the find is in no count and in no presence"),
        ("N313", "E5", "'1e+02' is a number in short"),
    ]  # fmt: skip
