"""Volumes and shares sorted that leave open what they are: told, with how to mend them. All sheets are invented."""

from __future__ import annotations

from pathlib import Path

import pytest
import yaml

from narrate.pipeline.intake import Intake, intake

_PLANTS = "Zea mays kernel,Carya nutshell"


def sheet(head: str, *cells: str) -> str:
    """Samples down, with one column between the context and two plants."""
    rows = "".join(f'S{n},C{n},"{cell}",3,4\n' for n, cell in enumerate(cells, 1))
    return f'Sample,Context,"{head}",{_PLANTS}\n{rows}'


def taken(folder: Path, text: str) -> Intake:
    path = folder / "lab.csv"
    path.write_text(text, encoding="utf-8")
    return intake(path, folder / "dig")


def drafted(folder: Path) -> dict[str, dict[str, object]]:
    """Sample -> its record, without its id and its context."""
    records = (folder / "dig" / "records" / "drafted-from-sheets.yaml").read_text(encoding="utf-8")
    samples = yaml.load(records, yaml.BaseLoader)["samples"]
    return {one["id"]: {key: value for key, value in one.items() if key not in ("id", "context")} for one in samples}


def told(found: Intake, code: str) -> dict[str, str]:
    """Cell -> what is told of it."""
    return {str(p.place.cell): p.message for p in found.problems if p.code == code}


NO_SOIL = "nothing in the file gives litres of soil"
FLOTS = (
    "Flot volume (ml)", "Vol. flot", "Light fraction volume", "Volume du flot", "Flotvolumen", "Volumen del flotado",
    "Volume of flot (l)", "Vol. of the light fraction (l)",
)  # fmt: skip


@pytest.mark.parametrize("head", FLOTS)
def test_volumes_of_flots_are_no_soil_and_that_there_is_none_is_told(tmp_path: Path, head: str) -> None:
    """Whatever their unit; an analyst who looks for a density reads why there is none."""
    found = taken(tmp_path, sheet(head, "60", "25"))

    assert [set(record) for record in drafted(tmp_path).values()] == [{"light_fraction"}, {"light_fraction"}]
    assert [doubt for doubt in found.taken.doubts if NO_SOIL in doubt and f"'{head}'" in doubt] != []


def test_beside_litres_of_soil_nothing_is_told_of_flots(tmp_path: Path) -> None:
    """The sheet gives both, and each is taken for what it is."""
    text = f"Sample,Context,Soil (l),Flot (ml),{_PLANTS}\nS1,C1,10,60,3,4\nS2,C2,8,25,1,2\n"
    found = taken(tmp_path, text)

    assert drafted(tmp_path)["S1"] == {"volume_l": "10", "light_fraction": {"volume_ml": "60"}}
    assert [doubt for doubt in found.taken.doubts if NO_SOIL in doubt] == []


@pytest.mark.parametrize("cells", [("12000", "8500", "9000"), ("500", "250", "1000"), ("12000 ml", "8500", "900")])
def test_numbers_too_large_for_litres_are_no_litres_until_somebody_says_so(
    tmp_path: Path, cells: tuple[str, ...]
) -> None:
    """No unit at the head: the column is kept as notes, and the doubt says what to write."""
    found = taken(tmp_path, sheet("Volume", *cells))

    assert [record["note"] for record in drafted(tmp_path).values()] == [f"Volume: {cell}" for cell in cells]
    assert all("volume_l" not in record for record in drafted(tmp_path).values())
    loud = [doubt for doubt in found.taken.doubts if doubt.startswith("DOUBTFUL: 'Volume' names no unit")]
    assert len(loud) == 1 and "write 'volume, ml' in the layout" in loud[0]


def test_the_mend_that_is_offered_gives_the_litres(tmp_path: Path) -> None:
    """'volume, ml' in the layout, and intake run again."""
    taken(tmp_path, sheet("Volume", "12000", "8500"))
    layout = tmp_path / "dig" / "counts" / "lab.csv.layout.yaml"
    mended = layout.read_text(encoding="utf-8").replace("sample note, Volume", "volume, ml")
    layout.write_text(mended, encoding="utf-8")
    taken(tmp_path, sheet("Volume", "12000", "8500"))

    assert [record["volume_l"] for record in drafted(tmp_path).values()] == ["12", "8.5"]


@pytest.mark.parametrize("head", ["Volume (ml)", "Vol (cc)", "Volume in cm3"])
def test_millilitres_that_the_head_names_are_told_of_nobody(tmp_path: Path, head: str) -> None:
    """Divided by a thousand, they are litres."""
    found = taken(tmp_path, sheet(head, "12000", "8500"))

    assert [record["volume_l"] for record in drafted(tmp_path).values()] == ["12", "8.5"]
    assert [doubt for doubt in found.taken.doubts if "volume" in doubt] == []


@pytest.mark.parametrize(("head", "cells"), [("Volume", ("12", "2000", "9")), ("Volume (l)", ("10", "12000", "9"))])
def test_one_number_too_large_for_litres_is_kept_and_told(tmp_path: Path, head: str, cells: tuple[str, ...]) -> None:
    """It gives no density; with its unit under 'mend' it would."""
    found = taken(tmp_path, sheet(head, *cells))

    assert drafted(tmp_path)["S2"] == {"note": f"volume written {cells[1]}"}
    assert drafted(tmp_path)["S3"] == {"volume_l": "9"}
    assert told(found, "N318") == {
        "C3": f"sample S2: the volume is '{cells[1]}', more than the 1000 litres that a sample may hold, kept in the "
        "note, and no density is made of it, expected litres"
    }


TWO_READINGS = [("1.000", "1 or 1000"), ("1,000", "1 or 1000"), ("1,500", "1.5 or 1500")]


@pytest.mark.parametrize(("written", "may_be"), TWO_READINGS)
def test_three_digits_behind_one_mark_may_be_thousands(tmp_path: Path, written: str, may_be: str) -> None:
    """A litre, or a thousand of them: nobody can tell, and both are named."""
    found = taken(tmp_path, sheet("Volume (l)", written, "10"))

    assert drafted(tmp_path)["S1"] == {"note": f"volume written {written}"}
    assert told(found, "N318")["C2"].startswith(f"sample S1: the volume is '{written}', which may be {may_be}, kept")


@pytest.mark.parametrize(("head", "written"), [("Volume (l)", "1.500"), ("Volume (ml)", "1,500")])
def test_three_digits_are_read_where_only_one_reading_is_a_sample(tmp_path: Path, head: str, written: str) -> None:
    """Not 1500 litres, and not a millilitre and a half."""
    taken(tmp_path, sheet(head, written, "10"))

    assert drafted(tmp_path)["S1"] == {"volume_l": "1.5"}


UNKNOWN = ("?", "n/a", "unknown", "-", "n.d.", "nicht gemessen", "2 buckets", "c. 8 l", "10+")


@pytest.mark.parametrize("written", UNKNOWN)
def test_a_volume_that_is_no_number_is_kept_as_written_and_told(tmp_path: Path, written: str) -> None:
    """What was written stands in the note of the sample, and the cell is pointed at."""
    found = taken(tmp_path, sheet("Volume (l)", written, "10"))

    assert drafted(tmp_path)["S1"] == {"note": f"volume written {written}"}
    assert told(found, "N318") == {
        "C2": f"sample S1: the volume is '{written}', kept in the note, and no density is made of it, expected litres"
    }


@pytest.mark.parametrize(("head", "field"), [("Flot vol (ml)", "flot volume"), ("Flot wt (g)", "flot mass")])
def test_what_is_no_number_of_a_flot_is_kept_and_told(tmp_path: Path, head: str, field: str) -> None:
    """'c. 60' and '?' were once dropped without a word."""
    found = taken(tmp_path, sheet(head, "c. 60", "?"))

    assert [record["note"] for record in drafted(tmp_path).values()] == [f"{field} written c. 60", f"{field} written ?"]
    assert set(told(found, "N318")) == {"C2", "C3"}


def test_the_unit_in_the_cell_of_a_flot_holds_before_that_of_the_head(tmp_path: Path) -> None:
    """'60 ml' under a head in litres is not sixty litres."""
    taken(tmp_path, sheet("Light fraction volume (l)", "60 ml", "0.025"))

    volumes = [record["light_fraction"] for record in drafted(tmp_path).values()]
    assert volumes == [{"volume_ml": "60"}, {"volume_ml": "25"}]


SHARES = (
    ("% sorted", ("25", "50", "100"), ("0.25", "0.5", None)),
    ("% sorted", ("0.25", "50", "100"), ("?", "0.5", None)),
    ("% sorted", ("0.25", "0.5", "1"), ("?", "?", "?")),
    ("Fraction sorted", ("0.25", "0.5", "1"), ("0.25", "0.5", None)),
    ("Fraction sorted", ("12.5", "50", "100"), ("?", "?", None)),
    ("Fraction sorted", ("1/4", "25%", "0.5"), ("0.25", "0.25", "0.5")),
    ("Split", ("4", "8", "1"), ("?", "?", None)),
)


@pytest.mark.parametrize(("head", "cells", "shares"), SHARES)
def test_a_share_that_may_be_percent_or_of_one_is_not_guessed(
    tmp_path: Path, head: str, cells: tuple[str, ...], shares: tuple[str | None, ...]
) -> None:
    """The scale is the one of the head and of all numbers under it; what gainsays it stays a note and is told."""
    found = taken(tmp_path, sheet(head, *cells))

    records = drafted(tmp_path)
    for n, (cell, share) in enumerate(zip(cells, shares, strict=True), 1):
        classes = [{"name": "whole flot", "proportion_sorted": share}]
        expected = {"note": f"sorted written {cell}"} if share == "?" else {"size_classes": classes} if share else {}
        assert {key: value for key, value in records[f"S{n}"].items()} == expected
    assert [f"C{n}" for n, share in enumerate(shares, 2) if share == "?"] == sorted(told(found, "N318"))
    loud = [doubt for doubt in found.taken.doubts if "may be percent or a share of one" in doubt]
    assert len(loud) == ("?" in shares)


@pytest.mark.parametrize(("scale", "share"), [("%", "0.0025"), ("share", "0.25")])
def test_the_scale_that_the_layout_gives_is_obeyed(tmp_path: Path, scale: str, share: str) -> None:
    """A quarter of a percent, or a quarter: the analyst has said which."""
    text = sheet("% sorted", "0.25", "0.5")
    taken(tmp_path, text)
    layout = tmp_path / "dig" / "counts" / "lab.csv.layout.yaml"
    mended = layout.read_text(encoding="utf-8").replace("sorted, % or share", f"sorted, {scale}")
    layout.write_text(mended, encoding="utf-8")
    found = taken(tmp_path, text)

    assert drafted(tmp_path)["S1"]["size_classes"] == [{"name": "whole flot", "proportion_sorted": share}]
    assert told(found, "N318") == {}


CHARCOAL = ("Charcoal (ml)", "Charcoal vol. (cc)", "Charcoal volume", "Holzkohle (ml)", "Volume of charcoal (ml)")


@pytest.mark.parametrize("head", CHARCOAL)
def test_charcoal_in_millilitres_is_kept_in_the_note_of_its_sample_and_told(tmp_path: Path, head: str) -> None:
    """No field of a find holds it, and neither soil nor count is made of it."""
    found = taken(tmp_path, f"Sample,Context,{_PLANTS},{head}\nS1,C1,3,4,12\nS2,C2,1,2,2.5\n")

    assert [record for record in drafted(tmp_path).values()] == [{"note": f"{head}: 12"}, {"note": f"{head}: 2.5"}]
    assert {str(row.part) for row in found.taken.rows} == {"kernel", "nutshell"}
    assert f"column E ('{head}') gives volumes of remains" in " ".join(found.taken.doubts)


LISTS = {
    "unit beside the count": ("Count,Unit", "10,n", "12,ml", "3,n"),
    "column of its own": ("Count,Vol (ml)", "10,", ",12", "3,"),
    "beside the count": ("Count,Vol (ml)", "10,1", "3,12", "3,1"),
}


@pytest.mark.parametrize("shape", LISTS)
def test_volumes_of_finds_in_a_list_are_neither_counts_nor_soil(tmp_path: Path, shape: str) -> None:
    """Twelve millilitres of charcoal were once twelve pieces, or the soil of the sample."""
    heads, maize, charcoal, marsh_elder = LISTS[shape]
    rows = f"S1,C1,Zea mays,kernel,{maize}\nS1,C1,Charcoal,wood,{charcoal}\nS2,C2,Iva annua,achene,{marsh_elder}\n"
    found = taken(tmp_path, f"Sample,Context,Taxon,Part,{heads}\n{rows}")

    wood = next(row for row in found.taken.rows if row.part == "wood")
    assert wood.count.number == (3 if shape == "beside the count" else None)
    assert "volume 12 ml" in wood.note
    assert all("volume_l" not in record for record in drafted(tmp_path).values())
    assert [row.count.number for row in found.taken.rows if row.part != "wood"] == [10, 3]


SPELLED = (
    "Liters floated", "Vol. (L) processed", "Volume de terre (l)", "Bodenvolumen", "Volumen de tierra",
    "Volume terra (litri)", "Grondvolume (l)", "Menge Sediment (Liter)", "Litri flottati", "Erdmenge [l]",
    "Objętość próbki (l)", "Volume before flotation (l)",
)  # fmt: skip


@pytest.mark.parametrize("head", SPELLED)
def test_litres_of_soil_are_known_in_many_words(tmp_path: Path, head: str) -> None:
    """Spellings of common practice, no source; there is nothing to tell."""
    found = taken(tmp_path, sheet(head, "10", "8"))

    assert [record["volume_l"] for record in drafted(tmp_path).values()] == ["10", "8"]
    assert [doubt for doubt in found.taken.doubts if head in doubt] == []


NO_LITRES = (
    "Volume (buckets)", "Volume (gal)", "Volume (qt)", "Volume (kg)", "Volume (bags)", "No. of buckets", "Eimer",
    "Seaux",
)  # fmt: skip


@pytest.mark.parametrize("head", NO_LITRES)
def test_soil_by_the_bucket_is_kept_in_notes_and_told(tmp_path: Path, head: str) -> None:
    """Neither litres, nor a plant, nor a part of the id of a sample."""
    found = taken(tmp_path, sheet(head, "10", "8"))

    assert drafted(tmp_path) == {"S1": {"note": f"{head}: 10"}, "S2": {"note": f"{head}: 8"}}
    assert {str(row.part) for row in found.taken.rows} == {"kernel", "nutshell"}
    assert [doubt for doubt in found.taken.doubts if doubt.startswith(f"DOUBTFUL: '{head}' gives no litres")] != []


def test_emmer_is_a_wheat_and_no_bucket(tmp_path: Path) -> None:
    """In Dutch it would be one."""
    found = taken(tmp_path, "Sample,Context,Emmer,Einkorn\nS1,C1,3,4\nS2,C2,5,1\n")

    assert sum(row.count.number or 0 for row in found.taken.rows) == 13


@pytest.mark.parametrize("head", ["Soil weight (kg)", "Sediment wt (kg)", "Heavy residue volume (ml)", "HF weight (g)"])
def test_what_is_weighed_of_soil_and_heavy_fractions_is_a_note(tmp_path: Path, head: str) -> None:
    """The weight of soil is no find, and a heavy residue no light fraction."""
    found = taken(tmp_path, sheet(head, "10", "8"))

    assert drafted(tmp_path) == {"S1": {"note": f"{head}: 10"}, "S2": {"note": f"{head}: 8"}}
    assert {str(row.part) for row in found.taken.rows} == {"kernel", "nutshell"}


@pytest.mark.parametrize(("head", "litres"), [("Volume (dl)", "1"), ("Volume (cl)", "0.1"), ("Volume (dm3)", "10")])
def test_parts_of_litres_are_reckoned(tmp_path: Path, head: str, litres: str) -> None:
    """A decilitre is a tenth, a centilitre a hundredth."""
    taken(tmp_path, sheet(head, "10", "8"))

    assert drafted(tmp_path)["S1"] == {"volume_l": litres}


def test_units_that_differ_from_cell_to_cell_are_each_obeyed(tmp_path: Path) -> None:
    """What has none is in litres, as its head is."""
    taken(tmp_path, sheet("Volume", "10 l", "500 ml", "0.5", "2 dl", "75 cl"))

    assert [record["volume_l"] for record in drafted(tmp_path).values()] == ["10", "0.5", "0.5", "0.2", "0.75"]


def test_a_line_over_a_list_that_says_its_volume_is_read(tmp_path: Path) -> None:
    """'Sample vol 10 L' in the cell beside the sample."""
    taken(tmp_path, "Sample 12,Sample vol 10 L,\nTaxon,Part,Count\nZea mays,kernel,3\nCarya,nutshell,4\n")

    assert drafted(tmp_path) == {"12": {"volume_l": "10"}}


SPLITS = {"1/4": "0.25", "25%": "0.25", "1:4": "0.25", "1 in 4": "0.25", "½": "0.5", "half": "0.5", "50 %": "0.5"}


@pytest.mark.parametrize("written", SPLITS)
def test_splits_are_read_as_they_are_written(tmp_path: Path, written: str) -> None:
    """Shares of a sample that was split; 'entire' is all of it."""
    taken(tmp_path, sheet("Split", written, "entire"))

    classes = [{"name": "whole flot", "proportion_sorted": SPLITS[written]}]
    assert drafted(tmp_path) == {"S1": {"size_classes": classes}, "S2": {}}


def test_a_split_that_nobody_can_tell_says_what_it_is_taken_for(tmp_path: Path) -> None:
    """'x4' may be a factor or a quarter; until it is said, all counts as sorted."""
    found = taken(tmp_path, sheet("Split", "x4", "1/4"))

    assert drafted(tmp_path)["S1"] == {"note": "sorted written x4"}
    assert told(found, "N318") == {
        "C2": "sample S1: the share sorted is 'x4', kept in the note; until it is said all of it counts as sorted, "
        "expected a share or a percentage"
    }
