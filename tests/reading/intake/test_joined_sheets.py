"""Sheets of a database joined by keys, and tables of statistical programs. All invented."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import openpyxl

from narrate.model.packs import Packs
from narrate.reading.intake.layout_written import layout_text
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
    return a_workbook(folder, {"Taxa": TAXA, "Finds": FINDS, "Samples": SAMPLES})


def a_workbook(folder: Path, sheets: dict[str, list[list[object]]]) -> TakenIn:
    book = openpyxl.Workbook()
    book.remove(book.active)
    for name, rows in sheets.items():
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


EXPORT: dict[str, list[list[object]]] = {
    "tblFinds": [
        ["RecID", "SampleNo", "Fraction", "mm", "TaxonCode", "cf", "PartCode", "Pres", "Compl", "Qty", "Wt_g", "By"],
        [640, "B.3", "LF", 2, 21, False, "KN", "C", "W", 4, None, "RO"],
        [641, "B.3", "LF", 2, 23, False, "SD", "U", "W", 1, None, "RO"],
        [643, "B.3", "HF", 1, 22, True, "AC", "C", "F", 6, None, "TVL"],
        [644, "B.3", "HF", 1, 90, False, "CH", "C", "F", None, 2.41, "RO"],
        [646, "B.11", "LF", 2, 21, False, "CU", "C", "W", 9, None, "TVL"],
        [647, "B.11", "LF", 1, 22, False, "AC", "C", "W", 3, None, "TVL"],
        [648, "B.11", "HF", 2, 91, False, "ND", "U", "F", 12, 0.83, "RO"],
        [650, "B.11", "HF", 1, 90, False, "CH", "C", "F", None, 0.6, "RO"],
        [651, "B.12", "LF", 2, 23, False, "SD", "M", "W", 2, None, "RO"],
        [652, "B.12", "LF", 1, 21, False, "KN", "C", "F", 7, None, "TVL"],
    ],
    "tblSamples": [["SampleNo", "Volume_L"], ["B.3", 10], ["B.11", 8], ["B.12", 12.5]],
    "lkpTaxon": [
        ["Code", "Taxon", "Family"], [21, "Zea mays", "Poaceae"], [22, "Iva annua", "Asteraceae"],
        [23, "Vitis sp.", "Vitaceae"], [90, "Wood charcoal", None], [91, "Animal bone", None],
    ],
    "lkpPart": [
        ["PartCode", "Description"], ["KN", "kernel"], ["CU", "cupule"], ["AC", "achene"], ["SD", "seed"],
        ["CH", "charcoal"], ["ND", "not determined"],
    ],
}  # fmt: skip


def test_codes_under_heads_that_name_their_list_are_looked_up_in_it(tmp_path: Path) -> None:
    """'TaxonCode' is the 'Code' of 'lkpTaxon'; running numbers are no samples, and initials no plants."""
    found = a_workbook(tmp_path, EXPORT)
    given = found.layout.names if found.layout is not None else {}

    counted = [r for r in found.rows if r.mass_g is None]
    assert [
        (r.sample, given[r.identification.written], r.part, r.condition, r.completeness, r.fraction, r.count.number)
        for r in counted
    ] == [
        ("B.3", "Zea mays", "kernel", "charred", "whole", "light", 4),
        ("B.3", "Vitis sp.", "seed", "uncharred", "whole", "light", 1),
        ("B.3", "Iva annua", "achene", "charred", "fragment", "heavy", 6),
        ("B.11", "Zea mays", "cupule", "charred", "whole", "light", 9),
        ("B.11", "Iva annua", "achene", "charred", "whole", "light", 3),
        ("B.12", "Vitis sp.", "seed", "mineralised", "whole", "light", 2),
        ("B.12", "Zea mays", "kernel", "charred", "fragment", "light", 7),
    ]  # fmt: skip
    assert [r.identification.qualifier == "cf." for r in counted] == [False, False, True, False, False, False, False]
    assert [(str(r.sample), r.part, r.mass_g) for r in found.rows if r.mass_g is not None] == [
        ("B.3", "charcoal", 2.41), ("B.11", "charcoal", 0.6),
    ]  # fmt: skip
    litres = {id: facts["volume"][0].text for id, facts in found.facts.items()}
    assert litres == {"B.3": "10", "B.11": "8", "B.12": "12.5"}


def test_a_list_may_have_another_name_and_other_heads(tmp_path: Path) -> None:
    """'TaxonCode' is looked up where one column has codes and another what 'taxon' means: 'Latin name'."""
    heads = [["Code", "Latin name", "Family"], *EXPORT["lkpTaxon"][1:]]
    sheets = {("Lookup1" if name == "lkpTaxon" else name): rows for name, rows in EXPORT.items()}
    found = a_workbook(tmp_path, {**sheets, "Lookup1": heads})

    assert found.layout is not None
    assert {code: found.layout.names[code] for code in ("21", "22")} == {"21": "Zea mays", "22": "Iva annua"}
    assert {str(r.sample) for r in found.rows} == {"B.3", "B.11", "B.12"}


def test_codes_that_no_sheet_explains_are_names_and_never_initials(tmp_path: Path) -> None:
    """A list whose heads say samples, codes of taxa and amounts is one; its codes stay as written, and that is told."""
    found = a_workbook(tmp_path, {name: rows for name, rows in EXPORT.items() if name != "lkpTaxon"})

    counted = [(r.identification.written, r.count.number) for r in found.rows if r.sample == "B.3" and r.mass_g is None]
    assert counted == [("21", 4), ("23", 1), ("22", 6)]
    assert [doubt for doubt in found.doubts if "no sheet says what they mean" in doubt] != []


def test_values_are_looked_up_by_the_head_that_a_sheet_gives_them(tmp_path: Path) -> None:
    """A sheet of field, code and meaning says what letters for states, wholes and pieces are; the layout keeps them."""
    values: list[list[object]] = [
        ["Field", "Code", "Meaning"], ["Pres", "K", "charred"], ["Pres", "Z", "mineralised"],
        ["Pres", "N", "uncharred"], ["Compl", "A", "whole"], ["Compl", "B", "broken"], ["Fraction", "LF", "light"],
    ]  # fmt: skip
    codes = {"C": "K", "M": "Z", "U": "N", "W": "A", "F": "B"}
    finds = [[codes.get(value, value) if at in (7, 8) else value for at, value in enumerate(row)]
             for row in EXPORT["tblFinds"]]  # fmt: skip
    found = a_workbook(tmp_path, {**EXPORT, "tblFinds": finds, "lkpValues": values})
    plain = a_workbook(tmp_path, EXPORT)

    assert [(r.condition, r.completeness, r.count.number) for r in found.rows] == [
        (r.condition, r.completeness, r.count.number) for r in plain.rows
    ]
    assert found.layout is not None
    table = next(table for table in found.layout.tables if table.sheet == "tblFinds")
    assert table.columns[8].qualifiers == ("A is whole", "B is fragment")
    (tmp_path / "lab.xlsx.layout.yaml").write_text(layout_text(found.layout, "lab.xlsx"), encoding="utf-8")
    book = a_workbook(tmp_path, {**EXPORT, "tblFinds": finds, "lkpValues": values})
    assert [(r.completeness, r.condition, r.part) for r in book.rows] == [
        (r.completeness, r.condition, r.part) for r in found.rows
    ]


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
