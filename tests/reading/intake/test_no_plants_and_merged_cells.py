"""What stands among bones and shells, sums that formulas explain, and merged cells of signs and heads. All invented."""

from __future__ import annotations

import re
import zipfile
from pathlib import Path

import pytest
from openpyxl import Workbook
from openpyxl.worksheet.worksheet import Worksheet

from narrate.reading.intake.take_in import TakenIn, take_in
from tests.reading.intake.test_blind import packs

HEAD = "Taxon,Part,S1,S2,S3\n"
PLANTS = "Zea mays,kernel,4,2,9\nChenopodium sp.,seed,12,3,7\nPortulaca oleracea,seed,1,,5\n"


def plain(folder: Path, text: str) -> TakenIn:
    (folder / "lab.csv").write_text(text, encoding="utf-8")
    return take_in(folder / "lab.csv", packs())


def names(found: TakenIn) -> set[str]:
    return {row.identification.written for row in found.rows}


def test_an_unknown_word_between_bones_and_shells_is_set_aside_and_told(tmp_path: Path) -> None:
    found = plain(tmp_path, HEAD + PLANTS + "Bone,,3,,1\nGrummelkrabs,,2,5,\nSnails,,,1,1\n")
    assert names(found) == {"Zea mays", "Chenopodium sp.", "Portulaca oleracea"}
    assert any("Grummelkrabs" in doubt and "write counts" in doubt for doubt in found.doubts)
    assert any(p.code == "N315" and p.place.cell == "A6" for p in found.problems)


@pytest.mark.parametrize(
    "line",
    ["Quiscoma sp.,,2,5,\n", "Grummelkrabs,nutshell,2,5,\n", "Grummelkrabs charcoal (g),,2,5,\n", "Unknown 3,,2,5,\n"],
)
def test_what_may_be_a_plant_stays_among_bones(tmp_path: Path, line: str) -> None:
    found = plain(tmp_path, HEAD + PLANTS + "Bone,,3,,1\n" + line + "Snails,,,1,1\n")
    assert line.partition(",")[0].removesuffix(" charcoal (g)") in " ".join(names(found))


def test_unknown_words_are_kept_before_bones_and_where_they_are_more_than_those(tmp_path: Path) -> None:
    before = plain(tmp_path, HEAD + PLANTS + "Grummelkrabs,,2,5,\nBone,,3,,1\nSnails,,,1,1\n")
    assert "Grummelkrabs" in names(before)
    many = plain(tmp_path, HEAD + PLANTS + "Bone,,3,,1\nGrummelkrabs,,2,5,\nWupsel,,4,,\n")
    assert {"Grummelkrabs", "Wupsel"} <= names(many)


def test_a_section_of_things_that_are_no_plants_takes_its_unknown_lines_with_it(tmp_path: Path) -> None:
    others = "OTHER FINDS,,,,\nGrummelkrabs,,2,5,\nSnail shell,,,1,1\nFish bone,,1,,\n"
    assert "Grummelkrabs" not in names(plain(tmp_path, HEAD + PLANTS + others))


def test_a_row_that_the_layout_sets_aside_is_told_whatever_its_name(tmp_path: Path) -> None:
    found = plain(tmp_path, HEAD + PLANTS + "Bone,,3,,1\nGrummelkrabs,,2,5,\nSnails,,,1,1\n")
    (tmp_path / "lab.csv.layout.yaml").write_text(found.text, encoding="utf-8")
    again = take_in(tmp_path / "lab.csv", packs())
    assert names(again) == names(found)
    assert any(p.code == "N315" and p.place.cell == "A6" for p in again.problems)


# ---- formulas


def with_stored(book: Workbook, path: Path, stored: dict[str, float]) -> TakenIn:
    """Saves a workbook with the results of its formulas, as a spreadsheet program does."""
    book.save(path)
    with zipfile.ZipFile(path) as archive:
        parts = {name: archive.read(name) for name in archive.namelist()}
    name = next(name for name in parts if name.startswith("xl/worksheets/sheet"))
    xml = parts[name].decode("utf-8")
    for cell, value in stored.items():
        xml, times = re.subn(rf'(<c r="{cell}"[^>]*><f>[^<]*</f>)<v ?/?>(?:</v>)?', rf"\g<1><v>{value}</v>", xml)
        assert times == 1
    with zipfile.ZipFile(path, "w") as archive:
        for part, content in parts.items():
            archive.writestr(part, xml.encode("utf-8") if part == name else content)
    return take_in(path, packs())


CROPS = (("Zea mays", "kernel", 4, 2, 9), ("Zea mays", "cupule", 31, 8, 12), ("Phaseolus vulgaris", "seed", 1, 2, 3))
WILD = (("Galium sp.", "seed", 5, 1, 2), ("Portulaca oleracea", "seed", 7, 4, 8))


def sums_in_words_of_their_own(last_crop_of_s3: int) -> tuple[Workbook, dict[str, float]]:
    """Sums of two sections under heads in another language; one of them may forget the first line of its section."""
    book = Workbook()
    page = book.active
    assert isinstance(page, Worksheet)
    lines = [("Taxon", "Part", "S1", "S2", "S3"), ("CROPS / TARIM",), *CROPS, ("WILD / YABANI",), *WILD]
    for line in lines:
        page.append(line)
    stored: dict[str, float] = {}
    for n, column in enumerate("CDE"):
        first = last_crop_of_s3 if column == "E" else 3
        page[f"{column}9"], page[f"{column}10"] = f"=SUM({column}{first}:{column}5)", f"=SUM({column}7:{column}8)"
        stored[f"{column}9"] = sum(line[2 + n] for line in CROPS[first - 3 :])  # type: ignore[misc]
        stored[f"{column}10"] = sum(line[2 + n] for line in WILD)  # type: ignore[misc]
    page["A9"], page["A10"] = "Total crops (n)", "Total wild and weedy (n)"
    return book, stored


def test_what_a_sum_adds_up_is_taken_from_the_formulas_of_its_line(tmp_path: Path) -> None:
    book, stored = sums_in_words_of_their_own(3)
    found = with_stored(book, tmp_path / "lab.xlsx", stored)
    assert [p for p in found.problems if p.code == "N317"] == []


def test_the_one_formula_that_forgets_a_line_is_told(tmp_path: Path) -> None:
    book, stored = sums_in_words_of_their_own(4)
    found = with_stored(book, tmp_path / "lab.xlsx", stored)
    told = [p for p in found.problems if p.code == "N317"]
    assert [p.place.cell for p in told] == ["E9"]
    assert "is 15" in told[0].message and "give 24" in told[0].message


# ---- merged cells


def page_of(book: Workbook) -> Worksheet:
    page = book.active
    assert isinstance(page, Worksheet)
    return page


def of_pairs(sign: object) -> Workbook:
    book = Workbook()
    page = page_of(book)
    page.append(["Sample", "", 1, "", 2, ""])
    page.append(["Taxon", "Part", "whole", "frag.", "whole", "frag."])
    page.append(["Zea mays", "kernel", 4, 2, 9, 1])
    page.append(["Galium sp.", "seed", 5, 1, 2, 3])
    page.append(["Portulaca oleracea", "seed", 7, None, 8, 1])
    page.append(["Wood charcoal", "", sign, None, sign, None])
    for cells in ("C1:D1", "E1:F1", "C6:D6", "E6:F6"):
        page.merge_cells(cells)
    return book


def test_a_sign_merged_over_the_columns_of_one_sample_is_of_that_sample(tmp_path: Path) -> None:
    of_pairs("xx").save(tmp_path / "lab.xlsx")
    found = take_in(tmp_path / "lab.xlsx", packs())
    signs = [str(row.sample) for row in found.rows if row.part == "charcoal" and row.count.amount == "noted as present"]
    assert signs == ["1", "2"]
    assert not [p for p in found.problems if p.code == "N313" and "merged" in p.message]


def test_a_number_merged_over_whole_ones_and_pieces_is_given_to_neither(tmp_path: Path) -> None:
    of_pairs(14).save(tmp_path / "lab.xlsx")
    found = take_in(tmp_path / "lab.xlsx", packs())
    assert not [row for row in found.rows if row.part == "charcoal"]
    assert [p.place.cell for p in found.problems if p.code == "N313"] == ["C6", "E6"]


def test_a_weight_merged_over_the_columns_of_one_sample_is_of_that_sample(tmp_path: Path) -> None:
    book = of_pairs(1.25)
    page_of(book)["A6"] = "Charcoal > 4 mm (g)"
    book.save(tmp_path / "lab.xlsx")
    found = take_in(tmp_path / "lab.xlsx", packs())
    grams = {str(row.sample): row.mass_g for row in found.rows if row.part == "charcoal"}
    assert grams == {"1": 1.25, "2": 1.25}


def test_heads_merged_over_a_list_and_sums_under_its_everyday_names_are_no_finds(tmp_path: Path) -> None:
    book = Workbook()
    page = page_of(book)
    page.append(["FS No.", "Feature", "Liters", "Common name", "Scientific name", "Part", "Ct", "Wt (g)"])
    row = 2
    for feature, head in ((7, "FEATURE 7 - storage pit"), (12, "FEATURE 12 - earth oven")):
        page.append([head])
        page.merge_cells(f"A{row}:H{row}")
        page.append([110 + feature, feature, 10, "Hickory", "Carya sp.", "nutshell", 3, 0.5])
        page.append([None, None, None, "Maize", "Zea mays", "cupule", 4, 0.2])
        page.append([None, None, None, f"Subtotal plant remains, FS {110 + feature}", None, None, 7, 0.7])
        for column in "ABC":
            page.merge_cells(f"{column}{row + 1}:{column}{row + 3}")
        row += 4
    book.save(tmp_path / "lab.xlsx")
    found = take_in(tmp_path / "lab.xlsx", packs())
    assert sorted((str(r.sample), str(r.part), r.count.number) for r in found.rows) == [
        ("117", "cupule", 4), ("117", "nutshell", 3), ("122", "cupule", 4), ("122", "nutshell", 3),
    ]  # fmt: skip
    assert not [p for p in found.problems if p.code in ("N313", "N317")]


# ---- sheets beside the counts


def beside_counts(folder: Path, name: str, lines: list[list[object]]) -> TakenIn:
    book = Workbook()
    page = page_of(book)
    page.title = "Restes"
    page.append(["Mostra", "Zea mays", "Galium sp.", "Portulaca oleracea"])
    for n, line in enumerate(((3, 1, 4), (2, 7, 1), (8, 2, 8), (1, 5, 9))):
        page.append([f"M-0{n + 1}", *line])
    other = book.create_sheet(name)
    for line in lines:
        other.append(line)
    book.save(folder / "lab.xlsx")
    return take_in(folder / "lab.xlsx", packs())


def test_a_list_of_pictures_of_finds_holds_no_counts(tmp_path: Path) -> None:
    pictures: list[list[object]] = [["Foto", "Mostra", "Tàxon", "Augments"]]
    pictures += [[f"F0{n}", f"M-0{n}", "Zea mays", 10 * n] for n in (1, 2, 3)]
    found = beside_counts(tmp_path, "Fotos", pictures)
    assert {str(row.sample) for row in found.rows} == {"M-01", "M-02", "M-03", "M-04"}
    assert sum(row.count.number or 0 for row in found.rows) == 51
    assert any("Fotos" in said for said in found.layout.left_out)
    assert any("Augments" in doubt for doubt in found.doubts)


def test_a_second_sheet_of_one_sample_with_an_id_is_read(tmp_path: Path) -> None:
    more: list[list[object]] = [["Tàxon", "M-05"], ["Zea mays", 4], ["Galium sp.", 2], ["Portulaca oleracea", 3]]
    found = beside_counts(tmp_path, "Mes", more)
    assert sum(row.count.number or 0 for row in found.rows if str(row.sample) == "M-05") == 9


def test_numbers_of_buckets_are_no_plants(tmp_path: Path) -> None:
    register: list[list[object]] = [["Mostra", "spoor", "datum bemonstering", "aantal emmers"]]
    register += [[f"M-0{n}", 10 + n, "3-6-2022", 1] for n in (1, 2, 3, 4)]
    found = beside_counts(tmp_path, "Monsterlijst", register)
    assert "emmers" not in " ".join(names(found))
    assert any("aantal emmers" in doubt for doubt in found.doubts)


@pytest.mark.parametrize("key", ["+:1-9、++:10-49、+++:50以上", "+ = 1-9; ++ = 10-49; +++ = 50+"])
def test_so_many_or_more_is_a_class_with_an_open_end(tmp_path: Path, key: str) -> None:
    found = plain(tmp_path, "Taxon,S1,S2\nZea mays,+++,4\nGalium sp.,2,++\n" + f'"{key}",,\n')
    least = {row.count.written: (row.count.amount, row.count.at_least, row.count.at_most) for row in found.rows}
    assert least["+++"] == ("noted as present", 50, None)
    assert least["++"] == ("noted as present", 10, 49)


def test_pieces_said_in_everyday_names_are_pieces(tmp_path: Path) -> None:
    nuts = 'Taxon,Component / common name,S1,S2\nCorylus avellana,"hazel, nutshell fragments",4,2\n'
    seeds = 'Cereal indet.,grain,3,1\nCereal indet.,grain fragments,5,6\nGalium sp.,"bedstraw, seed",1,2\n'
    found = plain(tmp_path, nuts + seeds)
    pieces = {(row.identification.written, str(row.part)) for row in found.rows if row.completeness == "fragment"}
    assert pieces == {("Corylus avellana", "nutshell"), ("Cereal indet.", "grain")}


# ---- words of columns


def test_a_column_of_conditions_that_says_whole_and_fragment_says_no_condition(tmp_path: Path) -> None:
    lines = "7,Zea mays,kernel,whole,4\n7,Zea mays,kernel,fragment,9\n8,Galium sp.,seed,whole,2\n"
    found = plain(tmp_path, "Sample,Taxon,Part,Condition,Count\n" + lines)
    assert sorted((str(r.sample), r.completeness, r.count.number, r.condition) for r in found.rows) == [
        ("7", "fragment", 9, "charred"), ("7", "whole", 4, "charred"), ("8", "whole", 2, "charred"),
    ]  # fmt: skip


def test_counts_and_grams_under_a_row_that_says_parts_elsewhere_are_one_find(tmp_path: Path) -> None:
    book = Workbook()
    page = page_of(book)
    page.append(["Muestra", "Semillas", None, None, "Carbón de leña", None, None, None])
    page.append([None, "Zea mays", "Zea mays", "Galium sp.", "Pinus sp.", None, "Quercus sp.", None])
    page.append([None, "grano", "cúpula", "semilla", "n", "g", "n", "g"])
    page.append(["MB-01", 4, 2, 1, 21, 0.66, 5, 0.62])
    page.append(["MB-02", 1, 7, 2, 9, 0.31, 0, 0])
    page.append(["MB-03", 3, 1, 5, 2, 0.08, 7, 0.4])
    for cells in ("B1:D1", "E1:H1", "E2:F2", "G2:H2"):
        page.merge_cells(cells)
    book.save(tmp_path / "lab.xlsx")
    found = take_in(tmp_path / "lab.xlsx", packs())
    wood = {(str(r.sample), r.identification.written): (r.count.number, r.mass_g) for r in found.rows if r.mass_g}
    assert wood == {
        ("MB-01", "Pinus sp."): (21, 0.66), ("MB-01", "Quercus sp."): (5, 0.62), ("MB-02", "Pinus sp."): (9, 0.31),
        ("MB-03", "Pinus sp."): (2, 0.08), ("MB-03", "Quercus sp."): (7, 0.4),
    }  # fmt: skip
    assert not [p for p in found.problems if p.code in ("N313", "N316")]


def test_columns_of_a_database_without_accents_say_what_they_hold(tmp_path: Path) -> None:
    head = "id_nalez,id_vzorek,taxon,cast,pocet,hmotnost_g\n"
    lines = "1,V001,Zea mays,kernel,4,0.2\n2,V001,Galium sp.,seed,2,\n3,V002,Zea mays,kernel,7,0.4\n"
    found = plain(tmp_path, head + lines + "4,V003,Galium sp.,seed,1,\n")
    assert {(str(r.sample), r.identification.written, str(r.part), r.count.number, r.mass_g) for r in found.rows} == {
        ("V001", "Zea mays", "kernel", 4, 0.2), ("V001", "Galium sp.", "seed", 2, None),
        ("V002", "Zea mays", "kernel", 7, 0.4), ("V003", "Galium sp.", "seed", 1, None),
    }  # fmt: skip


def test_wood_that_is_weighed_together_is_a_find_and_groups_say_what_is_wood(tmp_path: Path) -> None:
    book = Workbook()
    page = page_of(book)
    groups = ["Wood > 2 mm", None, None, "Nutshell > 2 mm", None, "Crops", None, "Seeds", None]
    page.append(["FS No.", "Vol. (L)", *groups])
    page.append([
        None, None, "Total wood", "Carya sp.", "Ulmus sp.", "Carya sp.", None, "Zea mays kernel", "Zea mays cupule",
        "Galium sp.", "Vitis sp.",
    ])  # fmt: skip
    page.append([None, None, "Wt.", "Ct.", "Ct.", "Ct.", "Wt.", "Ct.", "Ct.", "Ct.", "Ct."])
    page.append([114, 10, 1.28, 5, 2, 14, 0.27, 4, 2, 1, 3])
    page.append([117, 10, 3.67, 11, 4, 69, 1.3, 7, 10, 2, 1])
    page.append([121, 8, 2.03, 9, 1, 22, 0.41, 1, 6, 5, 2])
    for cells in ("C1:E1", "F1:G1", "H1:I1", "J1:K1", "F2:G2"):
        page.merge_cells(cells)
    book.save(tmp_path / "lab.xlsx")
    found = take_in(tmp_path / "lab.xlsx", packs())
    own = [row for row in found.rows if str(row.sample) == "114"]
    first = {(row.identification.written, str(row.part)): (row.count.number, row.mass_g) for row in own}
    assert first == {
        ("Total wood", "wood"): (None, 1.28), ("Carya sp.", "wood"): (5, None), ("Ulmus sp.", "wood"): (2, None),
        ("Carya sp.", "nutshell"): (14, 0.27), ("Zea mays kernel", "kernel"): (4, None),
        ("Zea mays cupule", "cupule"): (2, None), ("Galium sp.", "seed"): (1, None), ("Vitis sp.", "seed"): (3, None),
    }  # fmt: skip
    assert any("Total wood" in doubt for doubt in found.doubts)


def test_grams_that_a_column_of_parts_says_are_grams(tmp_path: Path) -> None:
    head = "Taxon;Resttyp;Erh.;P 3;P 4\n;;;n;n\nTriticum dicoccum;Korn;vk;4;2\nGalium aparine;Same;vk;1;5\n"
    (tmp_path / "lab.csv").write_text(head + "Holzkohle > 2 mm;Gewicht (g);vk;3,75;0,87\n", encoding="utf-8")
    found = take_in(tmp_path / "lab.csv", packs())
    assert {str(r.sample): r.mass_g for r in found.rows if r.part == "charcoal"} == {"P 3": 3.75, "P 4": 0.87}


def test_dung_is_a_find_and_droppings_of_mice_are_none(tmp_path: Path) -> None:
    found = plain(tmp_path, HEAD + PLANTS + "Dung pellets,,3,,1\nMouse droppings,,2,5,\n")
    assert {str(row.part) for row in found.rows if "ung" in row.identification.written} == {"dung"}
    assert not [row for row in found.rows if "droppings" in row.identification.written]


@pytest.mark.parametrize("word", ["Estiércol de camélido", "Fumier", "Mist", "gödsel", "Crottin"])
def test_dung_in_other_languages_is_a_find_too(tmp_path: Path, word: str) -> None:
    found = plain(tmp_path, HEAD + PLANTS + f"{word},,3,,1\n")
    own = [row for row in found.rows if row.identification.written == word and row.count.number]
    assert [str(row.part) for row in own] == ["dung", "dung"]


def test_a_total_behind_pairs_is_of_the_pairs_and_not_of_what_names_its_plant_beside_it(tmp_path: Path) -> None:
    lines = (
        ";;Zea mays;;Phaseolus vulgaris;;;;",
        "Muestra;Volumen (L);entero;frag.;entero;frag.;Total restos;Carbón (g);Estiércol (g)",
        "M-01;4;1;9;2;4;16;4.0;8.3", "M-02;8;3;1;5;1;10;3.1;1.7", "M-03;5;2;2;6;3;13;3.4;7.2",
    )  # fmt: skip
    (tmp_path / "lab.txt").write_text("\n".join(lines).replace(";", "\t") + "\n", encoding="utf-8")
    found = take_in(tmp_path / "lab.txt", packs())
    assert sum(row.count.number or 0 for row in found.rows) == 39
    assert sorted(round(row.mass_g, 1) for row in found.rows if row.mass_g) == [1.7, 3.1, 3.4, 4.0, 7.2, 8.3]
    assert not [p for p in found.problems if p.code == "N317"]
