"""Sheets of a database joined by keys, and tables of statistical programs. All invented."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import openpyxl
import pytest

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


TIDY: dict[str, list[list[object]]] = {
    "taxa": [
        ["taxon_code", "taxon", "family", "group"], ["ORYSAT", "Oryza sativa", "Poaceae", "crop"],
        ["PANSUM", "Panicum sumatrense", "Poaceae", "crop"], ["RUMSPP", "Rumex sp.", "Polygonaceae", "wild"],
        ["WOOD", "Wood charcoal", None, "wood"], ["TYPE9", "Type 9", None, "non-plant"],
        ["GASTRO", "Gastropoda", None, "non-plant"],
    ],
    "codes": [
        ["field", "code", "meaning"], ["element", "GR", "grain"], ["element", "HSK", "husk fragments"],
        ["element", "NT", "nutlet"], ["element", "CH", "charcoal"], ["preservation", "C", "charred"],
        ["preservation", "S", "silicified (ash white)"], ["abund", "R", "rare"], ["abund", "A", "abundant"],
    ],
    "records": [
        ["rec", "sample_id", "taxon_code", "element", "preservation", "n_whole", "n_frag", "wt_g", "abund", "fraction"],
        [1, "K-01", "ORYSAT", "GR", "C", 9, None, None, None, 1],
        [2, "K-01", "PANSUM", "GR", "C", 6, 2, None, None, 1],
        [3, "K-01", "PANSUM", "GR", "C", 3, None, None, None, 0.5],
        [4, "K-01", "WOOD", "CH", "C", None, None, 0.4, None, 2],
        [5, "K-01", "ORYSAT", "HSK", "S", None, None, None, "A", 0.5],
        [6, "K-01", "TYPE9", None, "C", 2, None, None, None, 1],
        [7, "K-02", "ORYSAT", "GR", "C", 2, None, None, None, 1],
        [8, "K-02", "RUMSPP", "NT", "C", 5, None, None, None, 1],
        [9, "K-02", "ORYSAT", "HSK", "S", None, None, None, "R", 0.5],
        [10, "K-02", "GASTRO", None, "C", 8, None, None, None, 1],
    ],
}  # fmt: skip
"""Invented: records, with their codes of taxa on one sheet and all others, by the head they stand under, on another."""


def once_over_its_codes(rows: list[list[object]]) -> list[list[object]]:
    """The same with each field written once."""
    return [[None if n and row[0] == rows[n - 1][0] else row[0], *row[1:]] for n, row in enumerate(rows)]


@pytest.mark.parametrize("is_once", [False, True])
def test_signs_that_a_sheet_of_codes_explains_stand_for_counts(tmp_path: Path, is_once: bool) -> None:
    """'A' where nothing is counted is a presence; the sheets of codes hold no finds, and sieves tell lines apart."""
    sheets = {**TIDY, "codes": once_over_its_codes(TIDY["codes"]) if is_once else TIDY["codes"]}
    found = a_workbook(tmp_path, sheets)

    assert found.layout is not None
    assert [table.sheet for table in found.layout.tables] == ["records"]
    assert [(r.sample, r.part, r.completeness, r.condition) for r in found.rows] == [
        ("K-01", "grain", "whole", "charred"), ("K-01", "grain", "whole", "charred"),
        ("K-01", "grain", "fragment", "charred"), ("K-01", "grain", "whole", "charred"),
        ("K-01", "charcoal", "whole", "charred"), ("K-01", "husk", "fragment", "mineralised"),
        ("K-02", "grain", "whole", "charred"), ("K-02", "nutlet", "whole", "charred"),
        ("K-02", "husk", "fragment", "mineralised"),
    ]  # fmt: skip
    assert [(r.count.written, r.mass_g, r.size_class) for r in found.rows] == [
        ("9", None, "1"), ("6", None, "1"), ("2", None, "1"), ("3", None, "0.5"), ("", 0.4, "2"), ("A", None, "0.5"),
        ("2", None, "1"), ("5", None, "1"), ("R", None, "0.5"),
    ]  # fmt: skip
    assert {r.count.amount for r in found.rows if r.count.written in ("A", "R")} == {"noted as present"}


def test_codes_that_their_list_calls_no_plants_are_set_aside(tmp_path: Path) -> None:
    """By the class beside the name, and the layout keeps it."""
    found = a_workbook(tmp_path, TIDY)
    assert found.layout is not None
    assert found.layout.names["TYPE9"] == "Type 9 (non-plant)"
    (tmp_path / "lab.xlsx.layout.yaml").write_text(layout_text(found.layout, "lab.xlsx"), encoding="utf-8")
    again = a_workbook(tmp_path, TIDY)

    for one in (found, again):
        aside = [problem.message.split(" is set aside")[0] for problem in one.problems if problem.code == "N315"]
        assert aside == ["other things", "shell"]
        assert not {"TYPE9", "GASTRO"} & {r.identification.written for r in one.rows}
    assert [r.count.written for r in again.rows] == [r.count.written for r in found.rows]


def test_lists_of_the_same_plants_on_several_sheets_are_finds(tmp_path: Path) -> None:
    """'Zea mays, 3, kernel' recurs from sheet to sheet as values under heads do, and says what was found."""
    plants = ("Zea mays", "kernel"), ("Iva annua", "achene"), ("Vitis sp.", "seed"), ("Rubus sp.", "seed")
    sheets = {
        id: [["Taxon", "n", "Part"], *([name, n + more, part] for n, (name, part) in enumerate(plants))]
        for id, more in (("S1", 1), ("S2", 3))
    }
    found = a_workbook(tmp_path, {id: [list(row) for row in rows] for id, rows in sheets.items()})

    assert [r.count.number for r in found.rows] == [1, 2, 3, 4, 3, 4, 5, 6]


def test_a_class_beside_each_count_is_not_a_second_count(tmp_path: Path) -> None:
    """Where signs stand in the lines that are counted, they say it again."""
    records = [row[:8] + (["A"] if row[5] == 9 else [row[8]]) + row[9:] for row in TIDY["records"]]
    found = a_workbook(tmp_path, {**TIDY, "records": records})

    assert [r.count.written for r in found.rows].count("A") == 0


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
