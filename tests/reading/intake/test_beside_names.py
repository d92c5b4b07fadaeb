"""What stands beside names and over them: states, parts in everyday names, grams, results of other sheets. Invented."""

from __future__ import annotations

import re
import zipfile
from pathlib import Path

import pytest
from openpyxl import Workbook

from narrate.reading.intake.header_words import heading
from narrate.reading.intake.not_plants import not_a_plant
from narrate.reading.intake.take_in import TakenIn, take_in
from tests.reading.intake.test_blind import packs
from tests.reading.intake.test_silent_faults import taken


def read(found: TakenIn, sample: str) -> list[tuple[str, str, str, str, float | None]]:
    """What was read of one sample: name, part, completeness, condition, and number or grams."""
    return [
        (row.identification.written, str(row.part), row.completeness, str(row.condition),
         row.count.number or row.mass_g)
        for row in found.rows if str(row.sample) == sample
    ]  # fmt: skip


# ---- states and columns that tell lines apart

STATES = """
Taxon,Rest,{head},P1,P2,P3
Hordeum vulgare,Korn,{charred},12,3,5
Hordeum vulgare,Korn,{other},4,1,2
Linum usitatissimum,Same,{charred},14,1,2
Linum usitatissimum,Same,{other},5,1,2
Papaver somniferum,Same,{charred},6,1,2
Papaver somniferum,Same,{other},7,1,2
"""


@pytest.mark.parametrize("head", ["Erh.", "Erhalt.", "Zst"])
def test_vk_and_uv_say_what_is_charred(tmp_path: Path, head: str) -> None:
    """Short forms of 'verkohlt' and 'unverkohlt' are states under any head, and their finds are not added up."""
    found = taken(tmp_path, STATES.format(head=head, charred="vk", other="uv"))

    assert [(one[3], one[4]) for one in read(found, "P1")] == [
        ("charred", 12), ("uncharred", 4), ("charred", 14), ("uncharred", 5), ("charred", 6), ("uncharred", 7),
    ]  # fmt: skip


def test_a_column_that_tells_lines_apart_and_says_nothing_known_is_told(tmp_path: Path) -> None:
    """Beside a column of parts it is no second one; what is added up for want of it is told as doubtful."""
    found = taken(tmp_path, STATES.format(head="Zst", charred="qq", other="zz"))

    assert [one[4] for one in read(found, "P1")] == [16, 19, 13]
    assert ["column C ('qq', 'zz') tells lines of the same name apart" in doubt for doubt in found.doubts] == [True]


# ---- grams

CHARCOAL_OVER_NAMES = """
,,Probe,B1,B2,B3
,,Volumen (l),"2,5",3,2
,,{label},"2,8","5,2","0,9"
Taxon,Resttyp,Erh.,,,
Hordeum vulgare,Korn,vk,12,3,5
Linum usitatissimum,Same,uv,4,1,2
Corylus avellana,Schale,vk,3,,2
"""


@pytest.mark.parametrize("label", ["Holzkohle > 4 mm (g)", "Charcoal (g)"])
def test_charcoal_weighed_among_the_litres_is_a_find(tmp_path: Path, label: str) -> None:
    """Its words stand where those for litres do, under the head of the states; it is weighed, and charred."""
    found = taken(tmp_path, CHARCOAL_OVER_NAMES.format(label=label))

    assert [one for one in read(found, "B2") if one[1] == "charcoal"] == [(label, "charcoal", "whole", "charred", 5.2)]
    assert found.facts["B2"]["volume"][0].text == "3"


@pytest.mark.parametrize(
    ("head", "role"),
    [
        ("Lt frac (g)", "flot mass"), ("Hvy frac (g)", "flot mass"), ("Fr. liviana (g)", "flot mass"),
        ("Volume flottato (l)", "volume"), ("部位／水洗量（L）", "volume"), ("Maglia min. (mm)", "method"),
        ("X-nr.", "sample"), ("Fracción ligera", ""), ("Fraction légère", ""),
        ("Leichtfraktion (g)", "flot mass"), ("Plant wt (g)", "total"), ("Plant", "taxon"), ("Erh.", "condition"),
    ],
)  # fmt: skip
def test_heads_of_flots_and_of_all_plants(head: str, role: str) -> None:
    """Common practice, no source."""
    assert heading(head) == role


LINES_OF_GRAMS = """
Flot #,Plant g,Wood ct,Wood g,Hickory ct,Hickory g,Contaminant g
101,2.36,75,1.71,24,0.65,9.75
102,{all},33,0.87,26,0.31,2.82
103,3.41,108,2.9,41,0.51,3.12
104,1.5,12,1.1,9,0.4,4.4
105,2.2,40,1.9,11,0.3,6.1
"""


@pytest.mark.parametrize(("stored", "told"), [("1.18", []), ("1.81", ["B3"])])
def test_counts_and_grams_of_one_name_and_what_is_no_plant(tmp_path: Path, stored: str, told: list[str]) -> None:
    """'Wood ct' and 'Wood g' are of one thing, 'Plant g' is checked, and contaminants are set aside."""
    found = taken(tmp_path, LINES_OF_GRAMS.format(all=stored))

    assert [(row.part, row.count.number, row.mass_g) for row in found.rows if row.sample == "101"] == [
        ("wood", 75, None), ("wood", None, 1.71), ("nutshell", 24, None), ("nutshell", None, 0.65),
    ]  # fmt: skip
    assert [p for p in found.problems if p.code == "N316"] == []
    assert [p.place.cell for p in found.problems if p.code == "N317"] == told


# ---- everyday names that say more than the Latin ones

EVERYDAY = """
种属,拉丁学名,H1,H2,H3
粟,Setaria italica,47,24,12
粟（未成熟）,Setaria italica,9,6,3
稻米,Oryza sativa,4,2,1
稻米碎块,Oryza sativa,7,3,5
稻小穗轴,Oryza sativa,6,1,20
酸枣核,Ziziphus jujuba,1,1,2
藜属,Chenopodium sp.,32,3,2
"""


def test_everyday_names_say_parts_and_pieces(tmp_path: Path) -> None:
    """The Latin name is the same for grains, pieces and spikelet bases of rice; the name before it is not."""
    found = taken(tmp_path, EVERYDAY)

    assert [(one[1], one[2], one[4]) for one in read(found, "H1") if one[0] == "Oryza sativa"] == [
        ("grain", "whole", 4), ("grain", "fragment", 7), ("rice spikelet base", "whole", 6),
    ]  # fmt: skip
    assert [one[1] for one in read(found, "H1") if one[0] == "Ziziphus jujuba"] == ["fruit stone"]
    said = [p.message for p in found.problems if p.code == "N316"]
    assert [re.findall(r"'([^']+)'", message)[:2] for message in said] == [
        ["setaria italica 粟", "setaria italica 粟（未成熟）"]
    ]


@pytest.mark.parametrize("name", ["Schaf-/Ziegenkot", "Rinderdung", "Estiércol camélido (n)", "estiércol de camélido"])
def test_dung_is_dung_in_one_word_or_two(tmp_path: Path, name: str) -> None:
    """Common practice, no source."""
    found = taken(tmp_path, f"Taxon,S1,S2,S3\nZea mays kernel,4,2,1\nGalium seed,1,1,\n{name},3,1,2")

    assert [one[1] for one in read(found, "S1") if one[0] == name] == ["dung"]


@pytest.mark.parametrize(
    ("name", "kind"),
    [("debitage, quartz", "artefacts"), ("flakes, charcoal", ""), ("beads, Coix", ""), ("textile, flax", "")],
)
def test_chips_are_of_stone(name: str, kind: str) -> None:
    """What else stands behind a comma may be a find."""
    assert not_a_plant(name) == kind


def test_words_of_treatment_are_no_states(tmp_path: Path) -> None:
    """'sub' over a sample says how much of it was looked at; only a column of states has it for subfossil."""
    rows = "Sample,S1,S2,S3,S4\nTreatment,sub,sub,full,sub\nZea mays kernel,4,2,1,3\nGalium seed,1,1,2,5"
    found = taken(tmp_path, rows)

    assert {str(row.condition) for row in found.rows} == {"charred"}
    assert len(found.rows) == 8


@pytest.mark.parametrize(
    "name", ["Recente frø", "Rezente Samen", "graines récentes", "semillas modernas", "Recente rødder"]
)
def test_seeds_and_roots_of_today_are_set_aside_in_other_languages(name: str) -> None:
    """As 'modern seeds' are. Common practice, no source."""
    assert not_a_plant(name) == "modern or mineral matter"


# ---- keys


@pytest.mark.parametrize(
    "key",
    [
        "x = few (1-5), xx = some (6-25), xxx = many (over 25)",
        "x = få (1-5), xx = en del (6-25), xxx = mange (over 25). Tal = optalt. fr. = fragmenter",
        "x = wenige (1-5), xx = mehrere (6-25), xxx = viele (über 25)",
        "x = pocos (1-5), xx = varios (6-25), xxx = muchos (más de 25)",
    ],
)
def test_what_classes_mean_stands_in_brackets_behind_their_words(tmp_path: Path, key: str) -> None:
    """'over 25' in brackets is an open class, and 'x' is a sign of the key and no footnote."""
    found = taken(tmp_path, f'"{key}"\nTaxon,S1,S2,S3\nZea mays kernel,x,xx,xxx\nGalium seed,3,x,x\nRubus seed,1,,2')

    assert found.layout is not None
    marks = found.layout.tables[0].marks
    assert (marks.key, marks.footnotes) == ({"x": "1-5", "xx": "6-25", "xxx": ">25"}, {})


SIGNS_WITH_LETTERS = """
Sample,1,2,3
Litres,14,14ss,10
Cereal grain,x,xx,xxxx
Eleocharis sp. seed,,xxw,xw
Sambucus nigra seed,xpmc,x,
Carex sp. seed,xx,,(+++)
Mollusc shells,,,
Cepaea sp.,x,xx,x
Vallonia sp.,x,x,
Trichia hispida group,,x,x
Key: x = 1-10 xx = 11-50 xxx = 51-100 xxxx = 100+ specimens,,,
w = waterlogged,,,
ss = sub-sample,,,
pmc = possible modern contaminant,,,
"""


def test_letters_behind_signs_say_what_the_key_says(tmp_path: Path) -> None:
    """'xxw' is waterlogged, what nobody knows stays in the note, and names under 'Mollusc shells' are no plants."""
    found = taken(tmp_path, SIGNS_WITH_LETTERS)
    of_second = [(row.identification.written, str(row.condition)) for row in found.rows if row.sample == "2"]

    assert found.layout is not None
    assert found.layout.tables[0].marks.key == {"x": "1-10", "xx": "11-50", "xxx": "51-100", "xxxx": "100+"}
    assert of_second == [
        ("Cereal grain", "charred"), ("Eleocharis sp. seed", "waterlogged"), ("Sambucus nigra seed", "charred"),
    ]  # fmt: skip
    assert ["pmc" in row.note for row in found.rows if row.count.written == "xpmc"] == [True]
    assert [p for p in found.problems if p.severity == "error"] == []


# ---- lists and blocks

LIST_WITH_TOTALS = """
FS No.,Volume (L),Taxon,Part,Count,Weight (g)
18,10,Carya sp.,nutshell,13,0.28
,,Zea mays,cupule,1,0.01
,,"Debitage, quartz",N/A,2,0.12
"FS 18 Total, carbonized plant",,,,14,0.29
19,8,Carya sp.,nutshell,4,0.05
,,Juglans nigra,nutshell,7,0.18
"FS 19 Total, carbonized plant",,,,11,0.23
20,8,Carya sp.,nutshell,6,0.07
,,Juglans nigra,nutshell,9,0.2
"FS 20 Total, carbonized plant",,,,15,0.27
"""


def test_totals_under_the_id_of_their_sample_are_no_finds(tmp_path: Path) -> None:
    """'FS 18 Total, carbonized plant' is a total, and chips of quartz are no plants."""
    found = taken(tmp_path, LIST_WITH_TOTALS)

    assert found.layout is not None
    assert [row + 1 for row, role in found.layout.tables[0].rows.items() if role.name == "total"] == [5, 8, 11]
    assert sorted({str(row.sample) for row in found.rows}) == ["18", "19", "20"]
    assert sum(row.count.number or 0 for row in found.rows) == 40
    assert [p for p in found.problems if p.severity == "error" or p.code == "N317"] == []


FEATURES = """
Feature,2,5,9
Liters floated,15,10,20
Maygrass seed,9,,8
Knotweed seed,,16,3
Grape seed,1,2,5

TABLE 23 -- Continued,,,
Feature,23,24,31
Liters floated,15,n.r.,10
Maygrass seed,12,10,6
Knotweed seed,,11,1
Grape seed,2,2,7
"""


def test_features_of_a_second_page_are_other_samples(tmp_path: Path) -> None:
    """Heads that come again over other features begin a table; litres 'n.r.' are not recorded, and count nothing."""
    found = taken(tmp_path, FEATURES)
    sums: dict[str, float] = {}
    for row in found.rows:
        sums[str(row.sample)] = sums.get(str(row.sample), 0) + (row.count.number or 0)

    assert sums == {"2": 10, "5": 18, "9": 16, "23": 14, "24": 23, "31": 14}


BLOCKS = """
X1021,A455,posthole,8.0 l,
Art,Del,Hele,Fragm.,Bemærkning
Hordeum vulgare,kerne,3,,
Cerealia indet.,kerne,,5,
Trækul,,x,,

X1022,A457,posthole,9.5 l,
Art,Del,Hele,Fragm.,Bemærkning
Hordeum vulgare,kerne,18,2,
Avena sp.,kerne,12,,
Slagge/forglasset materiale,,x,,
"""


def test_ids_without_a_label_over_lists_are_of_their_samples(tmp_path: Path) -> None:
    """One list beneath another, each under a line of id, feature, kind and litres."""
    found = taken(tmp_path, BLOCKS)

    assert [one[1:3] + one[4:] for one in read(found, "X1022")] == [
        ("grain", "whole", 18), ("grain", "fragment", 2), ("grain", "whole", 12),
    ]  # fmt: skip
    assert len(read(found, "X1021")) == 3
    assert found.facts["X1022"]["volume"][0].text == "9.5 l"


PIECES_OF_LAKES = """
Taxon,Resttyp,Erh.,M1,M2,M3
Hordeum vulgare,Korn,vk,25,16,49
Cerealia indet.,Korn Fr.,vk,32,3,211
Linum usitatissimum,Same,sf,87,21,62
Corylus avellana,Nussschale Fr.,sf,12,5,7
Triticum dicoccum,Hüllspelzbasis,vk,3,1,7
"""


def test_fr_behind_a_part_is_a_piece_and_sf_is_waterlogged(tmp_path: Path) -> None:
    """As lists of Swiss lakeshores write it. Common practice, no source."""
    found = taken(tmp_path, PIECES_OF_LAKES)

    assert [one[1:4] for one in read(found, "M1")] == [
        ("grain", "whole", "charred"), ("grain", "fragment", "charred"), ("seed", "whole", "waterlogged"),
        ("nutshell", "fragment", "waterlogged"), ("glume base", "whole", "charred"),
    ]  # fmt: skip


# ---- results of other sheets


def _workbook(path: Path, *, is_linked: bool, typed: str = "") -> TakenIn:
    """Counts on one sheet and what contexts have of them on another, by formulas with saved results or as numbers."""
    book = Workbook()
    counts = book.active
    counts.title = "Flots"
    lines = [("S1", "Pit 1", 4, 2, 9), ("S2", "Pit 1", 31, 8, 12), ("S3", "Pit 2", 1, 2, 3), ("S4", "Pit 2", 5, 1, 2)]
    for line in (("Sample", "Context", "Zea mays kernel", "Galium seed", "Rubus seed"), *lines):
        counts.append(line)
    summary = book.create_sheet("By context")
    summary.append(("Context", "Zea mays kernel", "Galium seed", "Rubus seed"))
    sums = {}
    for row, (name, first, last) in enumerate((("Pit 1", 2, 3), ("Pit 2", 4, 5)), start=2):
        summary.cell(row, 1, name)
        for column, letter in enumerate("CDE", start=2):
            added = sum(lines[n - 2][column] for n in range(first, last + 1))
            summary.cell(row, column, f"=SUM(Flots!{letter}{first}:{letter}{last})" if is_linked else added)
            sums[summary.cell(row, column).coordinate] = added
    if typed:
        summary[typed] = sums.pop(typed) + 1
    book.save(path)
    if is_linked:
        _save_results(path, "xl/worksheets/sheet2.xml", sums)
    return take_in(path, packs())


def _save_results(path: Path, sheet: str, results: dict[str, int]) -> None:
    with zipfile.ZipFile(path) as archive:
        parts = {name: archive.read(name) for name in archive.namelist()}
    xml = parts[sheet].decode("utf-8")
    for cell, value in results.items():
        xml, times = re.subn(rf'(<c r="{cell}"[^>]*><f>[^<]*</f>)<v ?/?>(?:</v>)?', rf"\g<1><v>{value}</v>", xml)
        assert times == 1
    with zipfile.ZipFile(path, "w") as archive:
        for part, content in parts.items():
            archive.writestr(part, xml.encode("utf-8") if part == sheet else content)


def test_a_sheet_worked_out_from_another_one_holds_no_finds(tmp_path: Path) -> None:
    """Sums by context that formulas take from the sheet of counts are left out and told; its samples are no samples."""
    found = _workbook(tmp_path / "lab.xlsx", is_linked=True)

    assert sorted({str(row.sample) for row in found.rows}) == ["S1", "S2", "S3", "S4"]
    assert any("sheet By context is worked out by formulas from sheet 'Flots'; it" in doubt for doubt in found.doubts)


def test_a_number_typed_among_formulas_is_told(tmp_path: Path) -> None:
    """What somebody typed over a formula is no sum of the other sheet for sure."""
    found = _workbook(tmp_path / "lab.xlsx", is_linked=True, typed="C3")

    assert sorted({str(row.sample) for row in found.rows}) == ["S1", "S2", "S3", "S4"]
    assert any("from sheet 'Flots', but for what was typed in C3, which is DOUBTFUL" in doubt for doubt in found.doubts)


def test_sheets_worked_out_from_results_hold_no_finds_either(tmp_path: Path) -> None:
    """A table that links to sums of another sheet, which links to the counts, is worked out from these."""
    book = Workbook()
    counts, by_phase, printed = book.active, book.create_sheet("By phase"), book.create_sheet("Table 1")
    counts.title = "Flots"
    numbers = [("S1", 4, 2, 9), ("S2", 31, 8, 12), ("S3", 1, 2, 3), ("S4", 5, 1, 2)]
    for line in (("Sample", "Zea mays kernel", "Galium seed", "Rubus seed"), *numbers):
        counts.append(line)
    for sheet in (by_phase, printed):
        sheet.append(("Phase", "Zea mays kernel", "Galium seed", "Rubus seed"))
    sums: dict[str, int] = {}
    for row, (name, first) in enumerate((("early", 2), ("late", 4)), start=2):
        by_phase.cell(row, 1, name)
        printed.cell(row, 1, name)
        for column, letter in enumerate("BCD", start=2):
            by_phase.cell(row, column, f"=SUM(Flots!{letter}{first}:{letter}{first + 1})")
            printed.cell(row, column, f"='By phase'!{letter}{row}")
            sums[f"{letter}{row}"] = sum(numbers[n - 2][column - 1] for n in (first, first + 1))
    book.save(tmp_path / "lab.xlsx")
    for sheet in ("sheet2", "sheet3"):
        _save_results(tmp_path / "lab.xlsx", f"xl/worksheets/{sheet}.xml", sums)
    found = take_in(tmp_path / "lab.xlsx", packs())

    assert sorted({str(row.sample) for row in found.rows}) == ["S1", "S2", "S3", "S4"]
    assert sum("is worked out by formulas" in doubt for doubt in found.doubts) == 2


def test_the_same_sums_typed_in_are_looked_at_by_their_numbers(tmp_path: Path) -> None:
    """Without formulas nothing says that the sheet is worked out, but that it adds up: the reader tells it so."""
    found = _workbook(tmp_path / "lab.xlsx", is_linked=False)

    assert not any("worked out by formulas" in doubt for doubt in found.doubts)
