"""Records, counts and project file held against each other."""

from __future__ import annotations

from pathlib import Path

import pytest

from narrate.problems import written as as_read
from narrate.reading.asking import NearWords
from narrate.reading.folder import read_folder
from tests.reading.folders import PROJECT, RECORDS, SHEET, packs_in, reading_of, told, write

S1 = "      help: "
MESSAGES: dict[str, tuple[dict[str, str], str]] = {
    "phase outside the project": (
        {"records/all.yaml": RECORDS.replace("phase: early", "phase: erly")},
        "records/all.yaml:2:35: error N205: context 'C1': phase 'erly' is none of the project's; did you mean "
        "'early'?\n"
        "    2 |   - {id: C1, kind: hearth, phase: erly}\n"
        "                                          ^^^^\n"
        "      help: write 'early'",
    ),
    "context without a record": (
        {"records/all.yaml": RECORDS.replace("context: C1", "context: C2")},
        "records/all.yaml:5:14: error N205: sample 'S1': context 'C2' is described by no record\n"
        "    5 |     context: C2\n"
        "                     ^^\n"
        "      help: write 'C1', or describe the context in records/",
    ),
    "no volume": (
        {"records/all.yaml": RECORDS.replace("    volume_l: 10\n", "")},
        "records/all.yaml:4:5: warning N207: sample 'S1' has no volume_l, expected litres of sediment; without it "
        "there is "
        "no density\n"
        "    4 |   - id: S1\n"
        "            ^\n"
        "      help: add 'volume_l: …' if it was measured",
    ),
    "volume in millilitres": (
        {"records/all.yaml": RECORDS.replace("volume_l: 10", "volume_l: 10000")},
        "records/all.yaml:6:15: warning N207: sample 'S1': volume_l is 10000, expected between 0.05 and 1000 litres\n"
        "    6 |     volume_l: 10000\n"
        "                      ^^^^^\n"
        "      help: millilitres are divided by 1000 to give litres",
    ),
    "more recovered than added": (
        {"records/all.yaml": RECORDS + "    recovery_test: {added: 46, recovered: 50}\n"},
        "records/all.yaml:7:43: error N208: sample 'S1', recovery_test: recovered is 50, expected at most the 46 that "
        "were added\n"
        "    7 |     recovery_test: {added: 46, recovered: 50}\n"
        "                                                  ^^\n"
        "      help: exchange the two if they were mixed up",
    ),
    "size class twice": (
        {
            "records/all.yaml": RECORDS
            + "    size_classes: [{name: a, proportion_sorted: 1}, {name: a, proportion_sorted: 1/2}]\n",
            "counts/light.csv": "sample,taxon,part,count,size_class\nS1,Zea mays,kernel,3,a\n",
        },
        "records/all.yaml:7:60: error N204: sample 'S1': size class 'a' is given 2 times, expected once\n"
        "    7 |     size_classes: [{name: a, proportion_sorted: 1}, {name: a, proportion_sorted: 1/2}]\n"
        "                                                                   ^\n"
        "      help: give each size class its own name",
    ),
    "sample without rows": (
        {"records/all.yaml": RECORDS + "  - {id: S2, context: C1, volume_l: 4}\n"},
        "records/all.yaml:7:10: warning N206: sample 'S2' has no rows in any count sheet; it counts as a sample in "
        "which "
        "nothing was found\n"
        "    7 |   - {id: S2, context: C1, volume_l: 4}\n"
        "                 ^^\n"
        "      help: add 'sterile: true' if it was looked through and nothing found; else leave it out until it is "
        "sorted",
    ),
    "sterile with rows": (
        {"records/all.yaml": RECORDS + "    sterile: true\n"},
        "records/all.yaml:7:14: error N203: sample 'S1': sterile is true, and counts/light.csv:2 has something in it, "
        "expected one or the other\n"
        "    7 |     sterile: true\n"
        "                     ^^^^\n"
        "      help: delete 'sterile: true', or mend the sample's id in the count sheet",
    ),
    "same row twice": (
        {"counts/light.csv": SHEET + "S1,Zea mays,cupule,1\nS1,zea mays,kernels,4\n"},
        "counts/light.csv:4: error N305: sample 'S1': zea mays, kernel, charred, whole is given twice, first in "
        "counts/light.csv:2, expected one row\n"
        "    4 | S1,zea mays,kernels,4\n"
        "      help: add the two together if they are parts of one count, delete one, or part them by size_class or "
        "fraction",
    ),
    "picture outside": (
        {"records/all.yaml": RECORDS + "    images: [{file: ../a.png, caption: A, credit: B, alt: C}]\n"},
        "records/all.yaml:7:21: error N106: sample 'S1', image '../a.png' lies outside the project folder, expected "
        "a file "
        "inside it\n"
        "    7 |     images: [{file: ../a.png, caption: A, credit: B, alt: C}]\n"
        "                            ^^^^^^^^\n"
        "      help: copy the picture into images/",
    ),
    "title that names a restricted context": (
        {
            "project.yaml": PROJECT.replace("Wend Hollow", "Wend Hollow C1")
            + "disclosure: {restricted_contexts: [C1]}\n"
        },
        "project.yaml:1:20: error N210: project: title names 'C1', which is restricted, and a title is always public\n"
        "    1 | title: Wend Hollow C1\n"
        "                           ^^\n"
        "      help: take the id out of the title",
    ),
    "text that names a restricted sample": (
        {
            "project.yaml": PROJECT + "disclosure: {restricted_contexts: [C9]}\nsummary: See s9 too.\n",
            "records/more.yaml": "contexts: [{id: C9, kind: pit}]\n"
            "samples: [{id: S9, context: C9, volume_l: 1, sterile: true}]\n",
        },
        "project.yaml:6:14: warning N210: project: summary names 's9', which is restricted; the whole text is left "
        "out of "
        "public outputs\n"
        "    6 | summary: See s9 too.\n"
        "                     ^^\n"
        "      help: take the id out of the text if the rest may be public",
    ),
}


@pytest.mark.parametrize("case", MESSAGES)
def test_what_does_not_fit_together_is_told_whole(tmp_path: Path, case: str) -> None:
    """Place, whose, what was read, what was expected, the line, how to mend it."""
    files, expected = MESSAGES[case]

    assert told(reading_of(tmp_path, files)) == expected


def test_a_picture_that_is_not_there_and_lacks_alt_text_is_told_twice(tmp_path: Path) -> None:
    """A missing file and a missing text are two things to mend."""
    records = RECORDS + "    images: [{file: images/a.png, caption: A, credit: B}]\n"
    reading = reading_of(tmp_path, {"records/all.yaml": records})

    assert [p.message for p in reading.problems] == [
        "sample 'S1', image 'images/a.png' has no alt, expected caption, credit and alt",
        "sample 'S1', image 'images/a.png' is not there, expected a picture",
    ]


def test_a_picture_that_is_there_and_described_is_fine(tmp_path: Path) -> None:
    """Nothing is told of a picture with caption, credit and alt text."""
    records = RECORDS + "    images: [{file: images/a.png, caption: A, credit: B, alt: C}]\n"

    assert told(reading_of(tmp_path, {"records/all.yaml": records, "images/a.png": b"\x89PNG"})) == ""


def test_a_number_and_a_mass_alone_may_stand_in_two_rows(tmp_path: Path) -> None:
    """Counts on one sheet and weights on another say different things of the same remains."""
    weights = "sample,taxon,part,count,mass_g\nS1,Zea mays,kernel,,0.4\n"

    assert told(reading_of(tmp_path, {"counts/weights.csv": weights})) == ""


def test_a_row_given_on_two_sheets_is_told(tmp_path: Path) -> None:
    """The same row on another sheet is the same row twice."""
    reading = reading_of(tmp_path, {"counts/light copy.csv": SHEET})

    assert [(p.code, p.place.row) for p in reading.problems] == [("N305", "counts/light.csv:2")]


def test_a_sterile_sample_needs_no_rows(tmp_path: Path) -> None:
    """A sample that was looked through and held nothing is not told to lack rows."""
    more = RECORDS + "  - {id: S2, context: C1, volume_l: 4, sterile: true}\n"

    assert told(reading_of(tmp_path, {"records/all.yaml": more})) == ""


HELD_BACK = "      help: mend that first, then check again"
TAB = RECORDS.replace("    context: C1", "\tcontext: C1")
UNREAD: dict[str, tuple[dict[str, str], str]] = {
    "tab in the records": (
        {
            "records/all.yaml": TAB,
            "counts/more.csv": SHEET.replace("S1", "S2").replace("3\n", "3\nS2,Zea mays,seed,1\n"),
        },
        "records/all.yaml: warning N113: because of what is wrong in this record file, it was not checked whether 2 "
        f"samples of count sheets ('S1', 'S2') are described\n{HELD_BACK}\n"
        "records/all.yaml:5:1: error N103: the YAML cannot be read: a tab stands here, expected spaces\n"
        "    5 |  context: C1\n"
        "        ^\n"
        "      help: replace each tab by two spaces",
    ),
    "contexts under another name": (
        {"records/all.yaml": RECORDS.replace("contexts:", "context:")},
        "records/all.yaml: warning N113: because of what is wrong in this record file, it was not checked whether 1 "
        f"context of samples and of the project file ('C1') is described\n{HELD_BACK}\n"
        "records/all.yaml:1:1: error N202: record file has a field 'context' that is not known; did you mean "
        "'contexts'?\n"
        "    1 | context:\n"
        "        ^^^^^^^\n"
        "      help: write 'contexts'",
    ),
    "sample without an id": (
        {"records/all.yaml": RECORDS.replace("- id: S1", "- note: S1")},
        "records/all.yaml:4: warning N113: because of what is wrong in this record file, it was not checked whether 1 "
        "sample of count sheets ('S1') is described\n"
        f"    4 |   - note: S1\n{HELD_BACK}\n"
        "records/all.yaml:4:5: error N201: sample 1 of this file has no 'id', expected the id of the sample\n"
        "    4 |   - note: S1\n"
        "            ^\n"
        "      help: add 'id: …'",
    ),
    "header of another sheet": (
        {"counts/light.csv": SHEET.replace("sample", "smple")},
        "counts/light.csv: warning N113: because of what is wrong in this sheet, it was not checked whether 1 sample "
        f"of records ('S1') has rows\n{HELD_BACK}\n"
        "counts/light.csv:1:1: error N301: the column 'smple' is not known; did you mean 'sample'?\n"
        "    1 | smple,taxon,part,count\n"
        "        ^^^^^\n"
        "      help: write 'sample'\n"
        "counts/light.csv:1:1: error N301: the header has no column 'sample', expected sample, taxon, part, count\n"
        "    1 | smple,taxon,part,count\n"
        "        ^^^^^^^^^^^^^^^^^^^^^^\n"
        "      help: name the columns in the first line: sample,taxon,part,count; or run 'narrate intake "
        "counts/light.csv' if the sheet is a laboratory's own",
    ),
    "broken project file": (
        {"project.yaml": PROJECT.replace("title: ", 'title: "')},
        "project.yaml: warning N113: because of what is wrong in this project file, it was not checked whether 1 phase "
        "of contexts ('early') is one of the project's and whether 1 name of count sheets ('Zea mays') is in a taxon "
        f"pack in use\n{HELD_BACK}\n"
        "project.yaml:1:8: error N103: the YAML cannot be read: a quotation mark is opened here and not closed\n"
        '    1 | title: "Wend Hollow\n'
        "               ^\n"
        "      help: close it at the end of the text",
    ),
}


@pytest.mark.parametrize("case", UNREAD)
def test_what_depends_on_a_file_that_could_not_be_read_is_held_back_and_told_once(tmp_path: Path, case: str) -> None:
    """One slip is told as one slip, with what could not be checked because of it, and nothing false beside it."""
    files, expected = UNREAD[case]

    assert told(reading_of(tmp_path, files)) == expected


def test_a_restricted_id_is_pointed_at_in_a_text_of_several_lines(tmp_path: Path) -> None:
    """The pointer stands under the id, not under the record."""
    records = RECORDS + "    note: >-\n      First line.\n      See C9.\n"
    more = "contexts: [{id: C9, kind: pit}]\n"
    project = PROJECT + "disclosure: {restricted_contexts: [C9]}\n"
    files = {"records/all.yaml": records, "records/more.yaml": more, "project.yaml": project}

    assert told(reading_of(tmp_path, files)) == (
        "records/all.yaml:9:11: warning N210: sample 'S1': note names 'C9', which is restricted; the whole text is "
        "left out of public outputs\n"
        "    9 |       See C9.\n"
        "                  ^^\n"
        "      help: take the id out of the text if the rest may be public"
    )


def test_samples_that_are_sterile_need_no_count_sheet(tmp_path: Path) -> None:
    """A dig in which nothing was found is a finding."""
    records = RECORDS + "    sterile: true\n"
    folder = write(tmp_path / "dig", {"project.yaml": PROJECT, "records/all.yaml": records})
    reading = read_folder(folder, shipped=packs_in(tmp_path))

    assert told(reading) == ""
    assert reading.project is not None
    assert reading.project.counts == ()


def test_a_project_with_neither_counts_nor_sterile_samples_is_told(tmp_path: Path) -> None:
    """One problem, and nothing claimed of its samples."""
    folder = write(tmp_path / "dig", {"project.yaml": PROJECT, "records/all.yaml": RECORDS})

    assert told(read_folder(folder, shipped=packs_in(tmp_path))) == (
        "counts: error N101: there is no file counts/*.csv in the folder and no sample is sterile, expected at least "
        "one of them\n"
        "      help: put a count sheet there, take a laboratory's own sheet in with 'narrate intake SHEET --project "
        "FOLDER', or add 'sterile: true' to samples in which nothing was found"
    )


def test_an_empty_record_file_is_a_warning(tmp_path: Path) -> None:
    """Somebody may have lost its records."""
    assert told(reading_of(tmp_path, {"records/more.yaml": "# to come\n"})) == (
        "records/more.yaml:1: warning N201: the record file holds nothing, expected 'contexts:' or 'samples:' with "
        "records\n"
        "      help: write the records, or delete the file"
    )


SAID = "records/all.yaml:6:15: error N203: sample 'S1': volume_l is {}, expected a number above 0\n"
VOLUMES = {
    "-1": ("-1", "nothing measured or counted is below 0; leave it out if it was not measured"),
    "0": ("0", "leave it out if it was not measured"),
    ".inf": ("'.inf'", "write the number; leave it out if it was not measured"),
    ".nan": ("'.nan'", "write the number; leave it out if it was not measured"),
    "1e999": ("'1e999'", "the number is far too large; write what was measured or counted"),
}


@pytest.mark.parametrize("written", VOLUMES)
def test_a_volume_that_is_none_comes_with_a_way_to_mend_it(tmp_path: Path, written: str) -> None:
    """What no vessel can hold is refused, with what to do when nothing was measured."""
    shown, help = VOLUMES[written]
    expected = (
        SAID.format(shown)
        + f"    6 |     volume_l: {written}\n"
        + f"                      {'^' * len(written)}\n"
        + f"      help: {help}"
    )

    assert told(reading_of(tmp_path, {"records/all.yaml": RECORDS.replace("10", written)})) == expected


SHARES = {
    "0": "write the share that was sorted; leave out a class of which nothing was sorted, and say so in the note",
    "1/0": "write how many parts were sorted and how many there were, such as 1/4",
    "5/4": "write the part that was sorted, such as 0.25 or 1/4; 1 means that all was sorted",
    "-0.5": "a share is not below 0; write the part that was sorted, such as 0.25 or 1/4",
    "half": "write the part that was sorted, such as 0.25 or 1/4",
}


@pytest.mark.parametrize("written", SHARES)
def test_a_share_that_is_none_comes_with_a_way_to_mend_it(tmp_path: Path, written: str) -> None:
    """None of these is a part of a whole."""
    records = RECORDS + f"    size_classes: [{{name: a, proportion_sorted: {written}}}]\n"
    sheet = "sample,taxon,part,count,size_class\nS1,Zea mays,kernel,3,a\n"
    reading = reading_of(tmp_path, {"records/all.yaml": records, "counts/light.csv": sheet})

    assert [(p.place.line, p.place.column, p.help) for p in reading.problems] == [(7, 49, SHARES[written])]


def test_region_packs_are_listed_where_none_is_named(tmp_path: Path) -> None:
    """An empty list is told with what it may hold."""
    reading = reading_of(tmp_path, {"project.yaml": PROJECT.replace("[valley]", "[]")})

    assert as_read(next(p for p in reading.problems if p.severity == "error")) == (
        "project.yaml:2:15: error N203: project: region_packs is an empty list, expected at least one region pack; "
        "there are valley\n"
        "    2 | region_packs: []\n"
        "                      ^\n"
        "      help: write [valley]"
    )


def test_a_number_that_is_too_large_to_be_a_count_is_told_as_such(tmp_path: Path) -> None:
    """Nobody counted so many."""
    reading = reading_of(tmp_path, {"counts/light.csv": SHEET.replace("3", "1" + 23 * "0")})

    assert [p.help for p in reading.problems] == [
        "the number is too large to be a count; write how many items there were"
    ]


def test_a_slip_in_every_row_is_offered_its_near_match_in_every_row(tmp_path: Path) -> None:
    """The answer for a word is worked out once and given as often as it is asked."""
    sheet = "sample,taxon,part,count\n" + "S1,Zea mays,kernl,3\n" * 5_000
    reading = reading_of(tmp_path, {"counts/light.csv": sheet})

    assert len(reading.problems) == 5_000
    assert {p.help for p in reading.problems} == {"write 'kernel'"}


def test_answers_for_near_words_are_kept_apart_by_list() -> None:
    """The same word among other words has another answer, and a word that was answered costs nothing more."""
    near = NearWords(left=4)
    parts, kinds = ["kernel", "seed"], ["kerbstone", "pit"]

    assert [near.to("kernl", parts), near.to("kernl", kinds, 0.3), near.to("kernl", parts)] == [
        "kernel",
        "kerbstone",
        "kernel",
    ]
    assert (near.left, near.to("sed", parts)) == (0, "")


def test_a_sheet_without_a_header_is_told_once(tmp_path: Path) -> None:
    """Its first row is listed, not refused cell by cell."""
    reading = reading_of(tmp_path, {"counts/light.csv": "S1,Zea mays,kernel,3\n"})

    assert [p.message for p in reading.problems if p.code != "N113"] == [
        "the header has no column 'sample' or 'taxon' or 'part' or 'count', expected sample, taxon, part, count; not "
        "known are 'S1', 'Zea mays', 'kernel', 3"
    ]


def test_a_header_that_stands_again_is_told_once(tmp_path: Path) -> None:
    """Sheets put together by copying have it."""
    assert told(reading_of(tmp_path, {"counts/light.csv": SHEET + SHEET.splitlines()[0] + "\n"})) == (
        "counts/light.csv:3:1: error N302: the header stands here again, expected it in the first row alone\n"
        "    3 | sample,taxon,part,count\n"
        "        ^^^^^^^^^^^^^^^^^^^^^^^\n"
        "      help: delete the row"
    )


def test_a_file_of_another_kind_among_the_records_is_told(tmp_path: Path) -> None:
    """An editor that adds .txt must not make records vanish."""
    assert told(reading_of(tmp_path, {"records/more.yaml.txt": RECORDS})) == (
        "records/more.yaml.txt: warning N102: files of this kind are not read among the records, expected names that "
        "end in .yaml\n"
        "      help: write the records as YAML, in a file NAME.yaml"
    )
