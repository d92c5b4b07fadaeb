"""Words for conditions as sheets write them: a known one is taken, anything else sets its finds aside and is told."""

# ruff: noqa: E501

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from narrate.model.packs import Packs
from narrate.problems import ProblemList
from narrate.reading.intake.layout_file import read_layout
from narrate.reading.intake.layout_written import layout_text
from narrate.reading.intake.project_intake import naming_packs
from narrate.reading.intake.take_in import TakenIn, take_in
from narrate.reading.source_text import SourceText

EXPECTED = "charred, partly charred, uncharred, mineralised, waterlogged or desiccated"
LAYOUT = """format: narrate layout 1
tables:
  - shape: long
    rows: {1: header, "2-9": finds}
    columns: {A: sample, B: taxon, C: part, D: condition, E: count, F: note}
"""


@cache
def packs() -> Packs:
    return naming_packs(("eastern-north-america",))


def taken(folder: Path, condition: str, *, note: str = "", taxon: str = "Zea mays", more: str = "") -> TakenIn:
    (folder / "lab.csv").write_text(
        f'sample,taxon,part,condition,count,note\nS1,"{taxon}",kernel,"{condition}",3,"{note}"\n', encoding="utf-8"
    )
    (folder / "lab.csv.layout.yaml").write_text(LAYOUT + more, encoding="utf-8")
    return take_in(folder / "lab.csv", packs())


def conditions(found: TakenIn) -> list[str]:
    return [row.condition for row in found.rows]


@pytest.mark.parametrize(
    ("written", "condition"),
    [
        ("", "charred"),
        ("-", "charred"),
        ("charred", "charred"),
        ("carb.", "charred"),
        ("Burned", "charred"),
        ("vitrified", "charred"),  # charred so hot that it turned glassy: common practice, no source
        ("charred, eroded", "charred"),
        ("charred/vitrified", "charred"),
        ("not charred", "uncharred"),
        ("non-carbonised", "uncharred"),
        ("un-charred", "uncharred"),
        ("modern", "uncharred"),
        ("probably modern", "uncharred"),
        ("partially charred", "partly charred"),
        ("semi charred", "partly charred"),
        ("mineral replaced", "mineralised"),
        ("verkohlt", "charred"),
        ("well preserved", "charred"),  # how well it is kept says nothing of what kept it
    ],
)
def test_a_known_word_is_its_condition(tmp_path: Path, written: str, condition: str) -> None:
    """Spellings, refusals and remarks lead to the one condition that they name."""
    assert conditions(taken(tmp_path, written)) == [condition]


@pytest.mark.parametrize(
    ("written", "why"),
    [
        ("toasted", "is not in the list of conditions"),
        ("unknown", "is not in the list of conditions"),
        ("?", "is not in the list of conditions"),
        ("not vitrified", "is not in the list of conditions"),
        ("neuhlené", "is not in the list of conditions"),
        ("charred and uncharred", "names two conditions at once"),
        ("charred/mineralised", "names two conditions at once"),
        ("carbonised or modern", "names two conditions at once"),
        ("mostly charred", "names two conditions at once"),
        ("verkohlt, mineralisiert", "names two conditions at once"),
    ],
)
def test_an_unknown_or_double_word_sets_its_finds_aside(tmp_path: Path, written: str, why: str) -> None:
    """Nothing becomes charred that nobody called charred; the place and the way to mend it are told."""
    found = taken(tmp_path, written)

    assert found.rows == ()
    assert [(str(p.place), p.severity, p.code, p.message, p.help) for p in found.problems if p.severity == "error"] == [(
        "lab.csv, cell D2", "error", "N402",
        f"condition '{written}' {why}; its finds are set aside and are in no count, expected {EXPECTED}",
        f'write under conditions in the layout which is meant: "{written}": charred; or mend the cell under \'mend\'',
    )]  # fmt: skip


def test_the_analyst_says_what_a_word_means(tmp_path: Path) -> None:
    """The layout's own mapping is obeyed before every list."""
    assert conditions(taken(tmp_path, "Toasted", more="conditions: {toasted: partly charred}\n")) == ["partly charred"]


def test_a_mapping_to_no_condition_is_told(tmp_path: Path) -> None:
    """A slip in the mapping is an error of the layout, and the finds stay aside."""
    found = taken(tmp_path, "toasted", more="conditions: {toasted: chared}\n")

    assert found.rows == ()
    assert found.problems[-1].message == f"conditions says that 'toasted' is 'chared', expected {EXPECTED}"


def test_a_condition_of_a_table_that_nobody_knows_is_told(tmp_path: Path) -> None:
    """A slip in the table's own condition takes nothing for charred."""
    (tmp_path / "lab.csv").write_text("s,t,p,c,n,o\nS1,Zea mays,kernel,,3,\n", encoding="utf-8")
    (tmp_path / "lab.csv.layout.yaml").write_text(LAYOUT + "    condition: chared\n", encoding="utf-8")
    found = take_in(tmp_path / "lab.csv", packs())

    assert found.rows == ()
    assert [p.message for p in found.problems if p.severity == "error"] == [
        f"condition is 'chared'; finds whose condition the sheet does not say are set aside, expected {EXPECTED}"
    ]


def test_the_mapping_is_written_and_read_back() -> None:
    """A layout as text gives the same mapping back."""
    source = SourceText("lab.csv.layout.yaml", LAYOUT + 'conditions: {"half burnt?": partly charred}\n')
    layout = read_layout(source, ProblemList())
    assert layout is not None
    again = read_layout(SourceText("lab.csv.layout.yaml", layout_text(layout, "lab.csv")), ProblemList())

    assert again is not None and again.conditions == {"half burnt?": "partly charred"}


@pytest.mark.parametrize(
    ("note", "condition"),
    [
        ("uncharred", "uncharred"),
        ("modern", "uncharred"),
        ("probably modern", "uncharred"),
        ("held against modern seeds", "charred"),
        ("compared with uncharred reference seeds", "charred"),
        ("near modern field edge", "charred"),
        ("2 of them uncharred", "charred"),
        ("mineralised", "mineralised"),
    ],
)
def test_a_note_changes_the_condition_only_where_it_says_so(tmp_path: Path, note: str, condition: str) -> None:
    """A note that holds the word 'modern' is not yet a note that calls the find modern."""
    assert conditions(taken(tmp_path, "", note=note)) == [condition]


def test_a_note_that_changes_the_condition_is_told(tmp_path: Path) -> None:
    """The analyst sees which note spoke, and of what."""
    found = taken(tmp_path, "", note="uncharred")

    assert [p.message for p in found.problems if "note" in p.message] == [
        "the note 'uncharred' says that 'Zea mays' is uncharred, and it is taken so, expected the condition in a "
        "column of its own"
    ]


def test_a_note_does_not_outvote_the_column(tmp_path: Path) -> None:
    """What stands under 'condition' is closer than a remark."""
    assert conditions(taken(tmp_path, "waterlogged", note="modern")) == ["waterlogged"]


@pytest.mark.parametrize(
    ("name", "condition"),
    [
        ("Zea mays (uncharred)", ["uncharred"]),
        ("Zea mays, not charred", ["uncharred"]),
        ("Zea mays (partially charred)", ["partly charred"]),
        ("Zea mays, modern", ["uncharred"]),
        ("Zea mays (charred and uncharred)", []),
        ("Zea mays charred/mineralised", []),
    ],
)
def test_a_condition_in_a_name_is_taken_or_told(tmp_path: Path, name: str, condition: list[str]) -> None:
    """One condition is the find's; two set it aside."""
    found = taken(tmp_path, "", taxon=name)

    assert conditions(found) == condition
    assert sum(p.code == "N402" and "two conditions" in p.message for p in found.problems) == (not condition)
    assert all(row.identification.taxon == "Zea mays" for row in found.rows)


@pytest.mark.parametrize(
    "head",
    [
        "Taxon,Part,S1 charred,S1 uncharred,S2 charred,S2 uncharred",
        "Taxon,Part,S1,S1,S2,S2\n,,charred,not charred,charred,not charred",
    ],
)
def test_a_condition_in_the_heading_of_a_sample_is_that_of_its_finds(tmp_path: Path, head: str) -> None:
    """Where it is taken for a piece of the id, it holds all the same."""
    (tmp_path / "lab.csv").write_text(
        f"{head}\nRubus sp.,seed,7,1,2,3\nCarya sp.,nutshell,5,3,1,2\nVitis sp.,seed,2,1,1,3\n", encoding="utf-8"
    )
    found = take_in(tmp_path / "lab.csv", packs())

    assert [(r.count.number, r.condition) for r in found.rows if r.identification.taxon == "Rubus"] == [
        (7, "charred"), (1, "uncharred"), (2, "charred"), (3, "uncharred"),
    ]  # fmt: skip


@pytest.mark.parametrize(("id", "condition"), [("burnt layer 3", "waterlogged"), ("S1 charred", "charred"), ("S1", "waterlogged")])
def test_only_the_end_of_an_id_says_a_condition(tmp_path: Path, id: str, condition: str) -> None:
    """'burnt layer' names a layer."""
    (tmp_path / "lab.csv").write_text(f"s,t,p,c,n,o\n{id},Zea mays,kernel,,3,\n", encoding="utf-8")
    (tmp_path / "lab.csv.layout.yaml").write_text(LAYOUT + "    condition: waterlogged\n", encoding="utf-8")

    assert conditions(take_in(tmp_path / "lab.csv", packs())) == [condition]


def test_sections_hold_for_the_lines_below_them(tmp_path: Path) -> None:
    """One that names two conditions sets its lines aside."""
    (tmp_path / "lab.csv").write_text(
        "Taxon,Part,S1,S2,S3\nCHARRED\nRubus sp.,seed,7,1,2\nCarya sp.,nutshell,5,3,1\nUNCHARRED\nVitis sp.,seed,2,1,1\n"
        "Iva annua,seed,2,1,1\nCHARRED AND UNCHARRED\nZea mays,kernel,1,1,1\nQuercus sp.,wood,2,2,2\n",
        encoding="utf-8",
    )
    found = take_in(tmp_path / "lab.csv", packs())

    assert {(r.identification.written, r.condition) for r in found.rows} == {
        ("Rubus sp.", "charred"), ("Carya sp.", "charred"), ("Vitis sp.", "uncharred"), ("Iva annua", "uncharred"),
    }  # fmt: skip


def test_a_column_of_conditions_behind_each_sample_is_of_that_sample(tmp_path: Path) -> None:
    """Under 'No.' and 'Pres.' for each sample, each number has the condition behind it and no other."""
    sheet = "Sample,31,,32,\nLitres,1,,1,\n,No.,Pres.,No.,Pres.\nVitis sp. seed,8,wl,12,min\nZea mays kernel,3,ch,,\nRubus sp. seed,4,wl,2,ch\n"
    (tmp_path / "lab.csv").write_text(sheet, encoding="utf-8")

    found = take_in(tmp_path / "lab.csv", packs())

    assert [(str(row.sample), row.count.written, row.condition) for row in found.rows] == [
        ("31", "8", "waterlogged"), ("32", "12", "mineralised"), ("31", "3", "charred"),
        ("31", "4", "waterlogged"), ("32", "2", "charred"),
    ]  # fmt: skip
