"""Samples, their ids and their volumes as sheets write them; all sheets are invented, one for each quirk."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import openpyxl
import pytest
import yaml

from narrate.model.packs import Packs
from narrate.pipeline.intake import intake
from narrate.pipeline.judged import read
from narrate.reading.intake.project_intake import naming_packs
from narrate.reading.intake.take_in import TakenIn, take_in


@cache
def packs() -> Packs:
    return naming_packs(("eastern-north-america",))


def taken(folder: Path, text: str) -> TakenIn:
    path = folder / "lab.csv"
    path.write_text(text.replace("|", ","), encoding="utf-8")
    return take_in(path, packs())


def drafted(folder: Path, text: str) -> dict[str, dict[str, object]]:
    """Sample -> the record that is drafted of it."""
    path = folder / "lab.csv"
    path.write_text(text.replace("|", ","), encoding="utf-8")
    intake(path, folder / "dig")
    records = (folder / "dig" / "records" / "drafted-from-sheets.yaml").read_text(encoding="utf-8")
    return {one.pop("id"): one for one in yaml.load(records, yaml.BaseLoader)["samples"]}


def told(found: TakenIn, code: str) -> list[str]:
    return [f"{p.place.cell}: {p.message}" for p in found.problems if p.code == code]


HEADERS = (
    "Volume (l)", "Vol. (L)", "Vol (litres)", "Litres", "Liters floated", "Soil volume (l)", "Sample volume (L)",
    "Volume of soil (l)", "Sediment vol.", "Volume processed (l)", "Processed vol (L)", "Sample size (l)",
    "Amount floated (l)",
    "Total volume (l)", "Flotation volume (L)", "Sample vol. in litres", "L floated", "Bulk volume (l)",
    "Matrix volume (L)",
)  # fmt: skip


@pytest.mark.parametrize("head", HEADERS)
def test_a_heading_of_a_volume_of_soil_is_known(tmp_path: Path, head: str) -> None:
    """Spellings of common practice, no source; the volume comes to the sample and into no count."""
    found = taken(tmp_path, f"Sample|{head}|Zea mays kernel|Carya nutshell\nS1|10|3|4\nS2|7.5||2\nS3|12|1|\n")

    assert [found.facts[s]["volume"][0].text for s in ("S1", "S2", "S3")] == ["10", "7.5", "12"]
    assert sum(row.count.number or 0 for row in found.rows) == 10


@pytest.mark.parametrize("head", ["Flot vol (ml)", "Flot volume (ml)", "Light fraction vol. (ml)", "Vol. of flot (ml)"])
def test_the_volume_of_a_flot_is_no_volume_of_soil(tmp_path: Path, head: str) -> None:
    """It goes to the light fraction, in millilitres, and no density is made of it."""
    made = drafted(tmp_path, f"Sample|Context|{head}|Zea mays kernel|Carya nutshell\nS1|C1|60|3|4\nS2|C1|25||2\n")

    assert made["S1"] == {"context": "C1", "light_fraction": {"volume_ml": "60"}}


@pytest.mark.parametrize(
    ("written", "litres"), [("10", "10"), ("7.5", "7.5"), ("10 L", "10"), ("2,5 l", "2.5"), ("500 ml", "0.5")]
)
def test_volumes_are_read_with_their_units(tmp_path: Path, written: str, litres: str) -> None:
    """Litres, litres with a comma, and millilitres."""
    sheet = f'Sample|Context|Volume|Zea mays kernel|Carya nutshell\nS1|C1|"{written}"|3|4\nS2|C1|10|3|4\n'

    assert drafted(tmp_path, sheet)["S1"]["volume_l"] == litres


def test_a_volume_below_one_litre_is_kept_in_the_note_and_gives_no_density(tmp_path: Path) -> None:
    """'<1' is no number; what was written stands in the note, and the cell is pointed at."""
    path = tmp_path / "lab.csv"
    path.write_text("Sample,Context,Volume (l),Zea mays kernel,Carya nutshell\nS1,C1,<1,3,4\n", encoding="utf-8")
    found = intake(path, tmp_path / "dig")
    records = (tmp_path / "dig" / "records" / "drafted-from-sheets.yaml").read_text(encoding="utf-8")

    assert yaml.safe_load(records)["samples"] == [{"id": "S1", "context": "C1", "note": "volume written <1"}]
    assert [f"{p.place}: {p.message}" for p in found.problems if p.code == "N318"] == [
        "counts/lab.csv, cell C2: sample S1: the volume is '<1', kept in the note, and no density is made of it, "
        "expected litres"
    ]


@pytest.mark.parametrize(
    ("head", "written", "share"),
    [("% sorted", "50", "0.5"), ("% of flot sorted", "25%", "0.25"), ("Fraction sorted", "1/8", "0.125"),
     ("Proportion sorted", "0.5", "0.5"), ("% sorted", "12.5", "0.125")],
)  # fmt: skip
def test_the_share_sorted_goes_into_the_record(tmp_path: Path, head: str, written: str, share: str) -> None:
    """Counts stay as counted; the record says that the whole flot was sorted to a share."""
    head_row = f"Sample|Context|{head}|Zea mays kernel|Carya nutshell"
    made = drafted(tmp_path, f"{head_row}\nS1|C1|{written}|3|4\nS2|C1|100|1|2\n")

    assert made["S1"]["size_classes"] == [{"name": "whole flot", "proportion_sorted": share}]
    assert "size_classes" not in made["S2"]


def test_a_sample_floated_again_is_kept_apart_and_told(tmp_path: Path) -> None:
    """'4-1*' and '4-1' are two samples until the analyst says that they are one."""
    found = taken(tmp_path, "Taxon|4-1|4-1*|4-2\nZea mays kernel|3|1|2\nCarya nutshell|1|1|1\nVitis seed|1||\n")

    assert {str(row.sample) for row in found.rows} == {"4-1", "4-1*", "4-2"}
    assert told(found, "N314") == [
        "C1: the sample ids '4-1*' and '4-1' differ by a sign alone; they are kept as two samples, expected ids that "
        "tell why"
    ]


def test_an_id_that_stands_twice_is_told_and_its_litres_are_not_added(tmp_path: Path) -> None:
    """The counts are added; the ten litres stay ten."""
    found = taken(tmp_path, "Sample|Volume (l)|Zea mays kernel|Carya nutshell\nS1|10|3|4\nS2|8||2\nS1|10|1|\n")

    assert told(found, "N314") == [
        "A4: the sample id 'S1' stands here and in A2; their counts are added and their litres are not, expected each "
        "id once"
    ]
    assert {said.text for said in found.facts["S1"]["volume"]} == {"10"}
    assert [row.count.number for row in found.rows if row.sample == "S1" and row.part == "kernel"] == [4]


def test_counts_without_an_id_are_told_and_not_read(tmp_path: Path) -> None:
    """Nobody knows which sample they are of; the cell where the id should stand is pointed at."""
    found = taken(tmp_path, "Sample|Volume (l)|Zea mays kernel|Carya nutshell\nS1|10|3|4\n|8||2\nS3|10|1|\n")

    assert told(found, "N314") == ["A3: row 3 holds counts and has no sample id; it is not read, expected an id"]
    assert {str(row.sample) for row in found.rows} == {"S1", "S3"}


def test_a_context_taken_for_a_missing_id_is_told(tmp_path: Path) -> None:
    """Ids of two columns, and one of them without the sample's own: the context alone stands for it, not in silence."""
    rows = "S1|C1|10|3|4\nS2|C2|5|5|6\n|C3|8|1|0\nS4|C4|9|2|\nS2|C4|9|1|2\n"
    found = taken(tmp_path, f"Sample|Context|Vol L|Zea mays kernel|Iva annua achene\n{rows}")

    assert told(found, "N314") == [
        "A4: no sample id stands here; 'C3', which stands beside it, is taken for it, expected an id"
    ]
    assert [str(row.sample) for row in found.rows if row.part == "kernel"] == ["S1/C1", "S2/C2", "C3", "S4/C4", "S2/C4"]


@pytest.mark.parametrize("ids", [("007", "012", "0120"), ("1.10", "1.1", "1.20"), ("1e3", "2e3", "3e3")])
def test_ids_keep_their_noughts_and_points(tmp_path: Path, ids: tuple[str, ...]) -> None:
    """An id is text: 007 is not 7, and 1.10 is not 1.1."""
    rows = "".join(f"{id}|10|3|4\n" for id in ids)
    found = taken(tmp_path, f"Sample|Volume (l)|Zea mays kernel|Carya nutshell\n{rows}")

    assert [str(row.sample) for row in found.rows if row.part == "kernel"] == list(ids)


def test_noughts_that_a_number_format_shows_belong_to_the_id(tmp_path: Path) -> None:
    """A workbook that stores 7 under the format 000 shows 007, which is what the analyst reads on the bag."""
    book = openpyxl.Workbook()
    for row in (["Sample", "Volume (l)", "Zea mays kernel", "Carya nutshell"], [7, 10, 3, 4], [12, 8, 1, 2]):
        book.active.append(row)
    for at in ("A2", "A3"):
        book.active[at].number_format = "000"
    path = tmp_path / "lab.xlsx"
    book.save(path)

    assert {str(row.sample) for row in take_in(path, packs()).rows} == {"007", "012"}


def two_sheets(path: Path, listed: tuple[str, ...], counted: tuple[object, ...]) -> Path:
    """A workbook of a list of samples and a sheet of counts, with one kernel more in each sample; invented."""
    book = openpyxl.Workbook()
    book.active.title = "Samples"
    for row in (["Sample", "Context", "Litres"], *([id, f"C{n}", 10] for n, id in enumerate(listed))):
        book.active.append(row)
    counts = book.create_sheet("Counts")
    for row in (["Taxon", "Part", *counted], ["Zea mays", "kernel", *range(1, len(counted) + 1)],
                ["Carya sp.", "nutshell", *[2] * len(counted)]):  # fmt: skip
        counts.append(row)
    book.save(path)
    return path


def test_ids_that_differ_by_noughts_are_joined_one_to_one_and_told(tmp_path: Path) -> None:
    """12 of the counts is 0012 of the list of samples: the layout says so, and no sample is drafted as sterile."""
    found = intake(two_sheets(tmp_path / "lab.xlsx", ("0012", "0013", "S1"), (12, 13, "S1")), tmp_path / "dig")
    reading = read(tmp_path / "dig")

    assert (
        "sheet Counts: ids that differ by noughts before the number are taken for those of the list of samples, "
        "'12' for 0012 and 1 more; see 'ids' in the layout"
    ) in found.taken.doubts
    assert reading.project is not None
    assert {str(s.id): (s.context, s.sterile) for s in reading.project.samples} == {
        "0012": ("C0", False), "0013": ("C1", False), "S1": ("C2", False),
    }  # fmt: skip
    kernels = {str(row.sample): row.count.number for row in reading.project.counts if row.part == "kernel"}
    assert kernels == {"0012": 1, "0013": 2, "S1": 3}


@pytest.mark.parametrize(
    ("listed", "counted"), [(("0012", "S1"), (12, "012", "S1")), (("0012", "012", "S1"), (12, "S1"))]
)
def test_ids_that_differ_by_noughts_and_are_several_are_told_and_not_joined(
    tmp_path: Path, listed: tuple[str, ...], counted: tuple[object, ...]
) -> None:
    """Nobody can say which of them are the same sample."""
    found = take_in(two_sheets(tmp_path / "lab.xlsx", listed, counted), packs())

    assert {str(row.sample) for row in found.rows} == {str(id) for id in counted}
    assert [doubt.partition(":")[0] for doubt in found.doubts if "noughts alone" in doubt] == ["DOUBTFUL"]


LETTERS = (("Проба 1", "Проба 2"), ("試料1", "試料2"), ("Δ-1", "Δ-2"), ("عينة ١", "عينة ٢"), ("Ä1", "Ö1"))


@pytest.mark.parametrize("ids", LETTERS)
def test_ids_in_any_letters_are_kept_through_the_records(tmp_path: Path, ids: tuple[str, ...]) -> None:
    """From the sheet to the drafted record and back they are the same samples."""
    rows = "".join(f"{id}|C{n}|10|3|4\n" for n, id in enumerate(ids))
    made = drafted(tmp_path, f"Sample|Context|Volume (l)|Zea mays kernel|Carya nutshell\n{rows}")

    assert set(made) == set(ids)
    reading = read(tmp_path / "dig")
    assert reading.project is not None
    assert {str(row.sample) for row in reading.project.counts} == set(ids)


@pytest.mark.parametrize(
    ("head", "ids", "role"),
    [("Locus", ("L1", "L2", "L3"), "context"), ("Phase", ("Early", "Middle", "Late"), "phase"),
     ("Site", ("Mill Run", "Oak Bend", "Low Field"), "site"), ("Feature", ("F1", "F2", "F3"), "feature")],
)  # fmt: skip
def test_rows_that_are_no_samples_are_read_and_said_to_be_none(
    tmp_path: Path, head: str, ids: tuple[str, ...], role: str
) -> None:
    """A table by locus, phase or site has no samples: each line stands for one, and it is told what it is."""
    rows = "".join(f"{id}|{n}|4\n" for n, id in enumerate(ids, 1))
    found = taken(tmp_path, f"{head}|Zea mays kernel|Carya nutshell\n{rows}")

    assert [str(row.sample) for row in found.rows if row.part == "kernel"] == list(ids)
    assert f"the table names no samples; each {role} is taken as one, and ubiquity counts those" in found.doubts


def of_project(folder: Path, text: str) -> list[str]:
    """What intake tells of samples that it drafts as sterile."""
    path = folder / "lab.csv"
    path.write_text(text, encoding="utf-8")
    found = intake(path, folder / "dig").problems
    return [f"{p.place.cell}: {p.message}" for p in found if p.code == "N315" and "sterile" in p.message]


WHY = (
    "it is drafted as sterile on the word of the sheet that it is a sample, expected a nought or a word where nothing "
    "was found"
)


def test_a_sample_of_blanks_is_drafted_as_sterile_and_told(tmp_path: Path) -> None:
    """Blank cells may mean that nobody looked; a nought says that somebody did, so S3 is not told."""
    rows = "S1,C1,3,4\nS2,C1,,\nS3,C2,0,\nS4,C2,,\n"

    assert of_project(tmp_path, f"Sample,Context,Zea mays kernel,Carya nutshell\n{rows}") == [
        f"A3: sample S2 has no count, no sign and no nought; {WHY}; the same in A5"
    ]


@pytest.mark.parametrize(("taxon", "count"), [("No plant remains", "0"), ("No plant remains", ""), ("", "")])
def test_words_that_nothing_was_found_are_enough(tmp_path: Path, taxon: str, count: str) -> None:
    """'No plant remains' is the word of somebody who looked; a line of blanks is none."""
    rows = f"S1,C1,10,Zea mays,kernel,3\nS1,C1,10,Iva annua,achene,4\nS2,C2,8,{taxon},,{count}\n"
    heads = "sample,context,volume_l,taxon,part,count"
    told = [f"A4: sample S2 has no count, no sign and no nought; {WHY}"]

    assert of_project(tmp_path, f"{heads}\n{rows}") == ([] if taxon else told)


def test_a_sterile_sample_like_one_with_finds_but_for_noughts_is_told(tmp_path: Path) -> None:
    """The list of samples in a file of its own says 0012, the counts say 12: two samples for all that anybody knows."""
    of_project(tmp_path, "Taxon,Part,12,S1\nZea mays,kernel,3,2\nCarya sp.,nutshell,1,4\n")
    (tmp_path / "samples.csv").write_text("Sample,Context,Litres\n0012,C1,10\nS1,C2,8\n", encoding="utf-8")
    found = intake(tmp_path / "samples.csv", tmp_path / "dig").problems

    assert [p.message for p in found if "sterile" in p.message] == [
        "sample 0012 has no count, no sign and no nought; '12', which has finds, differs from it by noughts alone; "
        + WHY
    ]


def test_sterile_samples_are_kept(tmp_path: Path) -> None:
    """A sample of noughts or blanks is drafted as sterile and counts in ubiquity."""
    made = drafted(
        tmp_path, "Taxon|S1|S2|S3\nContext|C1|C1|C2\nVolume (l)|10|8|9\nZea mays kernel|3|0|\nCarya nutshell|4|0|\n"
    )
    reading = read(tmp_path / "dig")

    assert {id: one.get("sterile") for id, one in made.items()} == {"S1": None, "S2": "true", "S3": "true"}
    assert reading.project is not None
    assert {s.id: s.sterile for s in reading.project.samples} == {"S1": False, "S2": True, "S3": True}
