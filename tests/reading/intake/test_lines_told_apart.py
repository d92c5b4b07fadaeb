"""Lines of samples, ratios, animals, weights and short forms are told apart. All sheets are invented."""

# ruff: noqa: E501

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from narrate.model.packs import Packs
from narrate.reading.intake.project_intake import naming_packs
from narrate.reading.intake.take_in import TakenIn, take_in


@cache
def packs() -> Packs:
    return naming_packs(("eastern-north-america",))


def taken(folder: Path, text: str, name: str = "lab.csv") -> TakenIn:
    sheet = folder / name
    sheet.write_text("\n".join(line.replace("|", ",") for line in text.strip("\n").split("\n")), encoding="utf-8")
    return take_in(sheet, packs())


def finds(found: TakenIn) -> list[str]:
    return [
        f"{row.sample} {row.identification.written}" for row in found.rows if row.count.amount != "looked for and absent"
    ]


MARKS = (
    """
Taxón|Fase I||Fase II|
|M-1|M-2|M-5|M-8
Hordeum vulgare|x|x||x
Triticum aestivum/durum|x||cf.|x
Vitis vinifera|||x|
x = presente
""",
    """
Sample|S1|S2|S5
Hordeum vulgare|x|x|
Triticum spelta|x|x|cf.
Vitis vinifera|x||cf
""",
    """
Probe|P 1|P 2|P 3
Gerste|x|vh.|x
Emmer|x|vh.|x
Linse|x||x
""",
)


@pytest.mark.parametrize("sheet", MARKS)
def test_a_column_headed_like_its_neighbours_is_a_sample(tmp_path: Path, sheet: str) -> None:
    """Marks such as 'cf.' or words of a laboratory's own under the id of a sample lose that sample nothing."""
    found = taken(tmp_path, sheet)

    columns = found.layout.tables[0].columns  # type: ignore[union-attr]
    assert [role.name for role in columns.values()].count("counts") == len(columns) - 1


def test_a_mark_of_doubt_under_a_sample_is_presence_in_doubt(tmp_path: Path) -> None:
    """'cf.' in a table of presence notes the plant with its name in doubt."""
    found = taken(tmp_path, MARKS[0])

    assert [
        (str(row.sample), row.count.amount, row.identification.qualifier) for row in found.rows if row.place.cell == "D4"
    ] == [("M-5", "noted as present", "cf.")]


@pytest.mark.parametrize("head", ["grain:chaff", "weeds : cereals", "Verhältnis Korn/Spreu", "wheat: grain", "LOI"])
def test_a_ratio_is_no_taxon(tmp_path: Path, head: str) -> None:
    """Ratios and other fractions under words that name no plant are of no find."""
    found = taken(tmp_path, f"Sample|Hordeum vulgare|Secale cereale|{head}\n1|12|3|0.65\n2|4|8|0.92\n5|7|2|2.3")

    assert finds(found) == [
        "1 Hordeum vulgare", "1 Secale cereale", "2 Hordeum vulgare", "2 Secale cereale", "5 Hordeum vulgare",
        "5 Secale cereale",
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("name", "part"), [("Bos taurus", "tooth"), ("Ovis/Capra", ""), ("Helix aspersa", "shell"), ("Indet.", "vertebra")]
)
def test_animals_are_set_aside(tmp_path: Path, name: str, part: str) -> None:
    """Animals in a list of finds are no plants, by their names or by their bones."""
    found = taken(tmp_path, f"Sample|Taxon|Part|n\n1|Secale cereale|grain|4\n1|{name}|{part}|2\n2|Zea mays|kernel|3")

    assert finds(found) == ["1 Secale cereale", "2 Zea mays"]


@pytest.mark.parametrize("note", ["cf.", "tentative ID", "abraded; cf."])
def test_a_doubt_in_the_comments_is_kept_as_cf(tmp_path: Path, note: str) -> None:
    """A comment that says no more than that the name is in doubt makes it 'cf.'."""
    found = taken(tmp_path, f"Sample|Taxon|Part|n|Comments\n1|Rumex sp.|nutlet|1|{note}\n1|Zea mays|kernel|2|")

    assert [row.identification.qualifier for row in found.rows] == ["cf.", ""]


KEYS = (
    ("v = verkoold; o = onverkoold (waterverzadigd)", "v", "o", "waterlogged"),
    ("Key: c = carbonised. m = mineralised", "c", "m", "mineralised"),
    ("vk = verkohlt und uv = unverkohlt", "vk", "uv", "uncharred"),
    ("C: carbonisé; D: desséché", "C", "D", "desiccated"),
)


@pytest.mark.parametrize(("key", "first", "second", "other"), KEYS)
def test_a_column_of_letters_is_what_the_key_below_says(
    tmp_path: Path, key: str, first: str, second: str, other: str
) -> None:
    """Letters beside the names, explained under the table, are conditions and no parts."""
    lines = ["Sample||S1|S2", f"Hordeum vulgare|{first}|12|3", f"Linum usitatissimum|{second}|8|2"]
    lines += [f"Persicaria lapathifolia|{second}|45|", f"Persicaria lapathifolia|{first}|2|1", "|||", key]
    found = taken(tmp_path, "\n".join(lines))

    assert {(row.place.cell[1:], row.condition) for row in found.rows} >= {
        ("2", "charred"), ("3", other), ("4", other), ("5", "charred"),
    }  # fmt: skip
    assert found.layout.conditions == {first: "charred", second: other}  # type: ignore[union-attr]


def test_a_column_of_letters_may_be_of_parts(tmp_path: Path) -> None:
    """Letters that the key explains as parts stand under 'parts' in the layout."""
    sheet = "Probe||P1|P2\nEmmer|K|3|1\nEmmer|HS|12|8\nDinkel|HS|4|2\nGerste|K|9|\nK = Korn; HS = Hüllspelzenbasis"
    found = taken(tmp_path, sheet)

    assert [row.part for row in found.rows if row.place.cell.startswith("C")] == [
        "grain", "glume base", "glume base", "grain",
    ]  # fmt: skip


@pytest.mark.parametrize("behind", [" ", "-", "/"])
def test_letters_of_a_part_and_of_pieces_stand_together(tmp_path: Path, behind: str) -> None:
    """'K Fr' where the key says K = Korn and Fr = Fragment, though 'Fr' alone is a fruit in many sheets."""
    lines = ["Taxon,Rest,P1,P2", "Hordeum vulgare,K,12,3", f"Hordeum vulgare,K{behind}Fr,4,1"]
    lines += [f"Corylus avellana,Ns{behind}Fr,9,2", "Linum usitatissimum,S,1,8"]
    lines += ["K = Korn; Ns = Nussschale; S = Samen; Fr = Fragment"]
    found = taken(tmp_path, "\n".join(lines).replace(",", "|").replace('"', ""))

    assert [(row.part, row.completeness) for row in found.rows if row.place.cell.startswith("C")] == [
        ("grain", "whole"), ("grain", "fragment"), ("nutshell", "fragment"), ("seed", "whole"),
    ]  # fmt: skip
    assert [problem for problem in found.problems if problem.code == "N402"] == []


def test_words_for_kinds_of_context_are_no_ids(tmp_path: Path) -> None:
    """'waterput', 'greppel' and 'kuil' under 'context' say what was dug, where features carry the numbers."""
    sheet = "vondstnummer|V1|V2|V3\nspoor|S12|S15|S40\ncontext|waterput|greppel|kuil\nGerst|12|3|1\nRogge|4||2"
    found = taken(tmp_path, sheet)

    assert [found.facts["V1"][role][0].text for role in ("feature", "kind")] == ["S12", "waterput"]


@pytest.mark.parametrize("head", ["Wood weight (g)", "Charcoal wt. (g)", "Wood (weight in g)"])
def test_a_row_of_weights_is_of_the_wood_that_was_weighed(tmp_path: Path, head: str) -> None:
    """The word for weighing is no part of the name."""
    found = taken(tmp_path, f"Sample|S1|S2\nZea mays kernel|12|3\nIva annua seed|2|1\n{head}|6.2|0.4")

    weighed = [row for row in found.rows if row.mass_g]
    assert [(row.identification.taxon, row.mass_g) for row in weighed] == [("Indeterminate", 6.2), ("Indeterminate", 0.4)]


@pytest.mark.parametrize("written", ["Galium.sp.", "Galium_sp", "Galium.spp"])
def test_points_between_words_of_a_name_are_blanks(tmp_path: Path, written: str) -> None:
    """Names as programs write them are the names that they stand for."""
    found = taken(tmp_path, f"Sample|Zea.mays|{written}|Iva.annua\nS1|1|2|3\nS2|2|1|4")

    assert {str(row.identification.taxon) for row in found.rows} == {"Zea mays", "Galium", "Iva annua"}


@pytest.mark.parametrize("written", ["Indeterminable", "unbestimmbar", "indéterminé", "no identificado"])
def test_what_nobody_could_name_is_indeterminate(tmp_path: Path, written: str) -> None:
    """Words of several languages for what nobody could name."""
    found = taken(tmp_path, f"Sample|S1|S2\nZea mays|12|3\nIva annua|2|1\n{written}|2|4")

    assert str(found.rows[-1].identification.taxon) == "Indeterminate"


def test_features_over_several_samples_need_no_label(tmp_path: Path) -> None:
    """'F. 12' twice over two samples is their feature."""
    found = taken(tmp_path, "|F. 12|F. 12|F. 31\n|FS 7|FS 9|FS 22\nZea mays kernel|12|3|1\nIva annua seed|2|1|4\nVitis sp. seed|1||2")

    assert {id: said["feature"][0].text for id, said in found.facts.items()} == {"FS 7": "F. 12", "FS 9": "F. 12", "FS 22": "F. 31"}


def test_a_total_of_seeds_may_leave_kernels_out(tmp_path: Path) -> None:
    """'Total seeds' that is the sum of all seeds but the maize is no disagreement."""
    sheet = "|FS 7|FS 9|FS 22\nZea mays kernel|12|3|1\nIva annua seed|2|1|4\nVitis sp. seed|1|5|2\nTotal seeds|3|6|6"
    found = taken(tmp_path, sheet)

    assert [one.message for one in found.problems if one.code == "N317"] == []


@pytest.mark.parametrize("written", ["cf. Roggen (Secale cereale)", "Roggen cf. (Secale cereale)", "Roggen? (Secale cereale)"])
def test_a_doubt_before_the_latin_name_is_kept(tmp_path: Path, written: str) -> None:
    """A common name with the Latin one in brackets is that plant, in doubt where either says so."""
    found = taken(tmp_path, f"Sample|S1|S2\nZea mays|12|3\nIva annua|2|1\n{written}|2|4")

    assert found.rows[-1].identification.qualifier == "cf."


def test_a_note_beside_the_title_is_no_note_of_a_plant(tmp_path: Path) -> None:
    """'still to do: 33' in a margin over the column of a plant says nothing of that plant."""
    (tmp_path / "sheet.csv").write_text(
        "Invented ford: working copy,,,still to do: 33,,,\n"
        "Smp,Context,Vitis sp.,Rubus sp.,Rhus sp.,Iva annua,Carya sp.\n"
        "3,C1,4,2,1,,3\n4,C1,1,3,,2,\n5,C2,,4,2,1,6\n9,C3,2,,7,1,\n"
    )

    assert {row.note for row in take_in(tmp_path / "sheet.csv", packs()).rows} == {""}
