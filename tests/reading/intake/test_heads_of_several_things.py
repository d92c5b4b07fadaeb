"""Heads and lists that say several things at once are told apart by what stands in them. All sheets are invented."""

# ruff: noqa: E501

from __future__ import annotations

import re
from functools import cache
from pathlib import Path

import pytest
from openpyxl import Workbook

from narrate.model.packs import Packs
from narrate.reading.intake.project_intake import intake_packs
from narrate.reading.intake.take_in import TakenIn, take_in
from narrate.reading.intake.volumes_drafted import litres
from narrate.reading.layout_beside import new_layout_path


@cache
def packs() -> Packs:
    return intake_packs(None)


def taken(folder: Path, text: str, name: str = "lab.csv") -> TakenIn:
    sheet = folder / name
    sheet.write_text(text.strip("\n").replace("|", "," if name.endswith("csv") else "\t") + "\n", encoding="utf-8")
    return take_in(sheet, packs())


def finds(found: TakenIn) -> list[str]:
    rows = [row for row in found.rows if row.count.amount not in ("looked for and absent", "not looked for")]
    return [
        f"{row.sample} {row.identification.taxon or row.identification.written} {row.part}"
        + (f" {row.condition}" if row.condition != "charred" else "")
        + (" fragment" if row.completeness == "fragment" else "")
        + (f" {row.count.number:g}" if row.count.number is not None else f" {row.count.written}" if row.count.written else "")
        + (f" {row.mass_g:g} g" if row.mass_g is not None else "")
        for row in rows
    ]


def told(found: TakenIn, code: str) -> list[str]:
    return [f"{problem.place.cell} {problem.message}" for problem in found.problems if problem.code == code]


ROWS_OF_SAMPLES = """
Sample|Zea mays cupule||Zea mays kernel||Chenopodium album seed||Rumex seed||Total C|Phase
|ct|wt (g)|ct|wt (g)|C|U|C|U||
S1|12|0.12|3|0.04|5|2|1||21|I
S2|20+|0.31|1|tr||4||1|21|I
S3|4|0.05|||2||3||9|I
S4|7|0.08|2|0.01||1|1||12|
"""
COLUMNS_OF_SAMPLES = """
Taxon|Unit|S1|S2|S3|S4
Zea mays cupule|ct|12|20+|4|7
|wt (g)|0.12|0.31|0.05|0.08
Chenopodium album seed|C|5||2|
|U|2|4||1
Rumex seed|C|1||3|1
|U||1||
"""


@pytest.mark.parametrize(
    ("sheet", "of_first"),
    [(ROWS_OF_SAMPLES, ["S1 Zea mays cupule 12 0.12 g", "S1 Zea mays kernel 3 0.04 g", "S1 Chenopodium album seed 5",
                        "S1 Chenopodium album seed uncharred 2", "S1 Rumex seed 1"]),
     (COLUMNS_OF_SAMPLES, ["S1 Zea mays cupule 12 0.12 g", "S1 Chenopodium album seed 5",
                           "S1 Chenopodium album seed uncharred 2", "S1 Rumex seed 1"])],
)  # fmt: skip
def test_small_heads_of_quantities_and_of_conditions_stand_side_by_side(
    tmp_path: Path, sheet: str, of_first: list[str]
) -> None:
    """'ct' and 'wt' under some names and 'C' and 'U' under others lose nothing and set nothing aside."""
    found = taken(tmp_path, sheet)

    assert sorted(one for one in finds(found) if one.startswith("S1")) == sorted(of_first)
    assert [problem for problem in found.problems if problem.severity == "error"] == []


def test_a_total_may_take_the_numbers_of_signs(tmp_path: Path) -> None:
    """'20+' is 20 in a stored total that most lines bear out, and a wrong total is told."""
    found = taken(tmp_path, ROWS_OF_SAMPLES.replace("|12|\n", "|13|\n"))

    assert told(found, "N317") == [
        "J6 the stored Total C is 13, and the counts in B6 to F6 and H6 give 10, expected them to agree"
    ]


def test_a_phase_that_every_line_repeats_is_not_taken_on_where_it_is_blank(tmp_path: Path) -> None:
    """'I, I, I, blank' leaves the last without a phase: a phase written once over several would not be repeated."""
    found = taken(tmp_path, ROWS_OF_SAMPLES)

    assert ["phase" in found.facts[id] for id in ("S1", "S2", "S3", "S4")] == [True, True, True, False]


CODED = {
    "heads of columns": """
# Teile: K=Korn SG=Spindelglied; Erhaltung: vk=verkohlt uv=unverkohlt
Probe|Secale_cereale_K_vk|Secale_cereale_SG_vk|Rubus_idaeus_uv|Holzkohle_g_vk|Summe_vk|Bearbeiter
P1|12|3|4|0.5|15|A-B
P2|2|1||0.25|3|A-B
""",
    "rows": """
parts: K=grain SG=rachis segment; state: vk=charred uv=uncharred
taxon|P1|P2
Secale_cereale_K_vk|12|2
Secale_cereale_SG_vk|3|1
Rubus_idaeus_uv|4|
charcoal_g_vk|0.5|0.25
total_vk|15|3
""",
}


@pytest.mark.parametrize("sheet", CODED)
def test_codes_behind_names_are_read_by_the_key_of_the_sheet(tmp_path: Path, sheet: str) -> None:
    """The last pieces of 'Secale_cereale_SG_vk' are a part and a condition, and what nobody names is no part."""
    found = taken(tmp_path, CODED[sheet])

    assert set(finds(found)) == {
        "P1 Rubus idaeus seed uncharred 4", "P1 Secale cereale grain 12", "P1 Secale cereale rachis internode 3",
        "P1 Indeterminate charcoal 0.5 g", "P2 Secale cereale grain 2", "P2 Secale cereale rachis internode 1",
        "P2 Indeterminate charcoal 0.25 g",
    }  # fmt: skip
    assert told(found, "N317") == []


LISTING = """
MOUND SEEDS                                  PAGE 1

SMP     CTX    VOL     HVUg   TDIb   LENc
A1      12     100        3      .      1
A2      12      55      999      2      .
A3      14       ?        .      .      4
A4      15      80        1      6      .

MOUND SEEDS                                  PAGE 2

SMP     CHEa   GALa    SUM
A1        2      .       6
A2        .      5       7
A3        .      1       6
A4       10      .      17

  HVUg  Hordeum vulgare, grain
  TDIb  Triticum dicoccum, glume base
  LENc  Lens culinaris, seed
  CHEa  Chenopodium album, seed
  GALa  Galium aparine, mericarp

  .   = none       999 = present in quantity, not counted
  VOL = soil floated, in {unit};   ? = not known
"""


def test_pages_of_a_listing_with_codes_are_read_by_its_key(tmp_path: Path) -> None:
    """Each page has columns of its own, the list of codes needs no head, and 999 is what the key says, and no count."""
    found = taken(tmp_path, LISTING.format(unit="tenths of a litre"), "lab.txt")

    assert finds(found)[:3] == ["A1 Hordeum vulgare grain 3", "A1 Lens culinaris seed 1", "A2 Hordeum vulgare grain 999"]
    assert sum(row.count.number or 0 for row in found.rows) == 35
    assert [len(said["volume"]) for said in found.facts.values()] == [1, 1, 1, 1]
    assert found.facts["A1"]["volume"][0].unit == "dl"


def test_the_total_on_the_last_page_is_held_against_all_pages(tmp_path: Path) -> None:
    """A sum of both pages that most lines bear out is taken for one, and the line that it does not fit is told."""
    assert told(taken(tmp_path, LISTING.format(unit="ml"), "lab.txt"), "N317") == [
        "D14 the stored SUM is 6, and the counts in B14 to C14 with those of A3 in the other tables of the sheet give 5, "
        "expected them to agree"
    ]


def test_volumes_in_buckets_are_no_litres(tmp_path: Path) -> None:
    """What a note calls buckets is told and left out of the volumes."""
    found = taken(tmp_path, LISTING.format(unit="buckets"), "lab.txt")

    assert not any("volume" in said for said in found.facts.values())
    assert [doubt for doubt in found.doubts if "VOL" in doubt] == [
        "DOUBTFUL: the sheet says of 'VOL': 'soil floated, in buckets;'; its numbers are no litres and are left out: "
        "give them the role 'volume, l' once they are litres"
    ]


def book(folder: Path, **sheets: str) -> TakenIn:
    made = Workbook()
    made.remove(made.active)
    for name, text in sheets.items():
        sheet = made.create_sheet(name.replace("_", " "))
        for line in text.strip("\n").split("\n"):
            sheet.append([int(cell) if cell.isdigit() else cell or None for cell in line.split("|")])
    path = folder / "lab.xlsx"
    made.save(path)
    return take_in(path, packs())


REGISTER = "sample|context|phase|litres\n1|100|early|10\n2|101|early|20\n3|102|late|5\n4|103|late|8"
COUNTS = "taxon|{0}1|{0}2|{0}3|{0}4\nHordeum vulgare grain|3||1|2\nTriticum spelta glb|4|5||6\nRumex sp.|1||2|1"
SUMS = "Totals by phase\n|early|late\nHordeum vulgare grain|3|3\nTriticum spelta glb|9|6\nRumex sp.|1|3"


@pytest.mark.parametrize("before", ["", "S.", "Probe ", "Smp-"])
def test_sums_by_phase_and_sheets_not_in_use_add_nothing(tmp_path: Path, before: str) -> None:
    """Ids that carry a word or letter more than the register are its ids; each count is read once, and all is told."""
    old = COUNTS.format(before).replace("taxon", "superseded 2012, do not use\ntaxon").replace("|6", "|7")
    found = book(tmp_path, Summary=SUMS, register=REGISTER, counts=COUNTS.format(before), counts_before=old)

    assert sum(row.count.number or 0 for row in found.rows) == 25
    assert set(found.facts) == {"1", "2", "3", "4"}
    assert [one.split(":")[0] for one in found.layout.left_out] == ["sheet Summary", "sheet counts before"]  # type: ignore[union-attr]
    assert {row.part for row in found.rows if "Triticum" in row.identification.written} == {"glume base"}


def test_a_copy_of_most_amounts_is_told_as_doubtful(tmp_path: Path) -> None:
    """A second sheet of the same samples and taxa with other numbers here and there is not added to the first."""
    found = book(tmp_path, counts=COUNTS.format("S"), counts_2=COUNTS.format("S").replace("|6", "|7"))

    assert sum(row.count.number or 0 for row in found.rows) == 25
    assert any("1 of its amounts differ, which is DOUBTFUL" in doubt for doubt in found.doubts)


def test_a_part_that_says_how_large_is_no_part(tmp_path: Path) -> None:
    """'fragment' and '>4mm' under 'Part' leave the part open, and are kept as completeness and size."""
    found = taken(tmp_path, "Taxon|Part|S1|S2\nHordeum vulgare|grain|3|1\nHordeum vulgare|fragment|2|\nCharcoal|>4mm|5|1")

    assert finds(found)[::-1][0:1] == ["S2 Indeterminate charcoal 1"]
    assert "S1 Hordeum vulgare grain fragment 2" in finds(found)
    assert told(found, "N402") == []


DATES = "Context/sample|{}|40/1|52/2\nHordeum vulgare grain|3|1|2|4\nTriticum spelta grain|1|2||3\nRumex seed|1|1|2|5"


@pytest.mark.parametrize(
    ("ids", "register", "read"),
    [
        ("3-Feb|7-Jan", "Context|Sample no. in context|Litres\n3|2|10\n7|1|5\n40|1|8\n52|2|9", ["3/2", "7/1"]),
        ("3-Feb|7-Jan", "Context|Sample no. in context|Litres\n2|3|10\n1|7|5\n40|1|8\n52|2|9", ["2/3", "1/7"]),
        ("3-Feb|3-Jan|7-Feb|7-Jan|9-Jan", "", ["3-Feb", "3-Jan", "7-Feb", "7-Jan", "9-Jan"]),
        ("1-Mar|2-Mar|1-Apr|2-Apr|1-May", "", ["3/1", "3/2", "4/1", "4/2", "5/1"]),
    ],
)
def test_ids_made_dates_are_read_by_the_register_or_by_their_order(
    tmp_path: Path, ids: str, register: str, read: list[str]
) -> None:
    """The list of samples tells which number was first; without one their rising order does; else they stay dates."""
    several = ids.count("|") - 1
    sheet = DATES.format(ids).replace("|3|1|2|4", "|3|1" + "|2" * several + "|2|4").replace("|1|2||3", "|1" * (several + 2) + "||3")
    found = book(tmp_path, counts=sheet, **({"register": register} if register else {}))

    assert list(dict.fromkeys(str(row.sample) for row in found.rows))[: len(read)] == read
    assert [problem for problem in found.problems if problem.code == "N314"] == [] or read[0] == "3-Feb"


IN_PIECES = {
    "French": "Taxon|US 4 Prél. 1 12 L|US 4 Prél. 2 8 L|US 9 Prél. 3 3 x 5 L",
    "German": "Taxon|Bef. 4, Pr. 1 (12 l)|Bef. 4, Pr. 2 (8 l)|Bef. 9, Pr. 3 (3 x 5 l)",
    "English": "Taxon|<1> Sample 1 (104) 12 litres|Sample 2 (104) 8 litres|Sample 3 (109) 3 buckets of 5 L",
    "Spanish": "Taxón|Muestra 1; UE 4; 12 litros|Muestra 2; UE 4; 8 litros|Muestra 3; UE 9; 3 x 5 l",
}


@pytest.mark.parametrize("language", IN_PIECES)
def test_a_head_that_says_context_sample_and_litres_is_taken_apart(tmp_path: Path, language: str) -> None:
    """Each cell over the counts gives an id, a context and litres, and none of them is lost in another."""
    rows = "\nHordeum vulgare grain|3||1\nTriticum spelta grain|4|5|\nRumex seed|1||2"
    found = taken(tmp_path, IN_PIECES[language].replace(", ", " ") + rows)

    ids = list(found.facts)
    assert [id.split(" ")[-1] for id in ids] == ["1", "2", "3"]
    assert [re.sub(r"\D", "", found.facts[id]["context"][0].text)[-1] for id in ids] == ["4", "4", "9"]
    assert [litres(found.facts[id]["volume"][0].text, "l") for id in ids] == [12, 8, 15]


LISTS = """
Sample 1|Trench A, (101), 40 L, Period I||
|Hordeum vulgare|grain|3
|Rumex sp.|seed|1 + 2 fr.
|Total||6
|||
Sample 2|Trench B, (101), 2 buckets of 10 L||
|no plant remains||
|||
Sample 3|Trench B, (104), vol. not noted, Period II||
|Triticum spelta|glume base|7
|Rumex sp.|seed|2
|Total||10
"""


def test_lists_under_the_lines_of_their_samples_need_no_heads(tmp_path: Path) -> None:
    """A sample without finds is kept, its line gives context, litres and phase, and a wrong total is told."""
    found = taken(tmp_path, LISTS, "lab.tsv")

    assert finds(found) == [
        "1 Hordeum vulgare grain 3", "1 Rumex seed 1", "1 Rumex seed fragment 2", "3 Triticum spelta glume base 7",
        "3 Rumex seed 2",
    ]  # fmt: skip
    assert {id: said["context"][0].text for id, said in found.facts.items()} == {
        "1": "Trench A (101)", "2": "Trench B (101)", "3": "Trench B (104)",
    }  # fmt: skip
    assert [id for id, said in found.facts.items() if "volume" in said] == ["1", "2"]
    assert [one.split(",")[0] for one in told(found, "N317")] == ["D12 the stored Total is 10"]


def test_a_condition_over_sections_holds_for_the_sections_under_it(tmp_path: Path) -> None:
    """'UNCHARRED' over 'Fruits' over the lines: the condition stays although another head stands between."""
    sheet = (
        "Taxon|S1|S2|S3\nCHARRED||\nCereals||\nHordeum vulgare grain|3|1|2\nTriticum spelta grain|1|2|2\n"
        "UNCHARRED||\nFruits||\nRubus idaeus seed|5|2|1\nWeeds||\nRumex seed|1||4"
    )

    assert {row.condition for row in taken(tmp_path, sheet).rows if row.part == "seed"} == {"uncharred"}


@pytest.mark.parametrize("text", [LISTS, IN_PIECES["French"] + "\nHordeum vulgare grain|3||1\nRumex seed|1||2"])
def test_the_layout_that_is_written_is_obeyed(tmp_path: Path, text: str) -> None:
    """What was worked out, samples without finds too, is read the same from the layout beside the sheet."""
    first = taken(tmp_path, text, "lab.tsv")
    new_layout_path(tmp_path / "lab.tsv").write_text(first.text, encoding="utf-8")
    again = take_in(tmp_path / "lab.tsv", packs())

    assert again.is_given
    assert finds(again) == finds(first)
    assert again.facts == first.facts


def test_numbers_that_begin_anew_in_each_pit_carry_the_pit(tmp_path: Path) -> None:
    """'Grube 1 Pr. 1' and 'Grube 2 Pr. 1' are two samples of two pits, and their litres are no part of the id."""
    found = taken(tmp_path, "Probe|Grube 1 Pr. 1 10 l|Grube 1 Pr. 2 8 l|Grube 2 Pr. 1 5 l\nGerste Korn|3||1\nRumex|1|2|2")

    assert {id: (said["feature"][0].text, said["volume"][0].text) for id, said in found.facts.items()} == {
        "Grube 1 Pr. 1": ("Grube 1", "10 l"), "Grube 1 Pr. 2": ("Grube 1", "8 l"), "Grube 2 Pr. 1": ("Grube 2", "5 l"),
    }  # fmt: skip


def test_a_head_over_the_names_of_its_list_gives_the_context_too(tmp_path: Path) -> None:
    """'Muestra 3; UE 12; 10 litros' over names and counts: the context and the litres are those of the sample."""
    sheet = "Muestra 3; UE 12; 10 litros|\nZea mays grano|5\nRumex semilla|2\n|\nMuestra 4; UE 13; 8 litros|\nZea mays grano|1\nRumex semilla|3"
    found = taken(tmp_path, sheet)

    assert [(said["context"][0].text, said["volume"][0].text) for said in found.facts.values()] == [
        ("UE 12", "10 litros"), ("UE 13", "8 litros"),
    ]  # fmt: skip


@pytest.mark.parametrize("word", ["undated", "-", "?", "undatiert", "non daté"])
def test_a_word_for_no_phase_is_no_phase(tmp_path: Path, word: str) -> None:
    """What says that nobody knows the phase makes none."""
    found = taken(tmp_path, f"Sample|Phase|Hordeum vulgare grain|Rumex seed\nS1|II|3|1\nS2|{word}|4|2\nS3|II|1|")

    assert ["phase" in said for said in found.facts.values()] == [True, False, True]


def test_codes_of_phases_that_the_sheet_explains_are_told(tmp_path: Path) -> None:
    """'1 = early, 9 = unknown': the codes stay as written, and what they mean is told, as 9 means no phase."""
    sheet = "# phase: 1=early 2=late 9=unknown\nSample|Phase|Hordeum vulgare grain|Rumex seed\nS1|1|3|1\nS2|9|4|2\nS3|2|1|"

    assert [doubt.split(";")[0] for doubt in taken(tmp_path, sheet).doubts if "phases" in doubt] == [
        "DOUBTFUL: the phases are codes that the sheet explains (1 = early, 2 = late, 9 = unknown)"
    ]


@pytest.mark.parametrize(("late", "read"), [("9", 25), ("3", 44)])
def test_a_sheet_that_calls_itself_totals_is_left_out_where_it_adds_up(tmp_path: Path, late: str, read: int) -> None:
    """'Total counts' of two areas that are no sums of the samples are counts, and are read."""
    own = f"Total counts\ntaxon|north|south\nHordeum vulgare grain|3|3\nTriticum spelta glb|6|{late}\nRumex sp.|1|3"
    found = book(tmp_path, counts=COUNTS.format("S"), totals=own)

    assert sum(row.count.number or 0 for row in found.rows) == read
