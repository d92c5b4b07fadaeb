"""Count sheets in the plain long form."""

from __future__ import annotations

from pathlib import Path

import pytest

from narrate.problems import ProblemList
from narrate.reading.count_columns import Known
from narrate.reading.count_sheets import read_count_sheet
from narrate.reading.folder import Reading
from narrate.reading.packs import read_packs
from narrate.reading.source_text import SourceText
from narrate.reading.taxa import Identifier
from tests.builders import a_sample
from tests.reading.folders import RECORDS, packs_in, reading_of, told

HEADER = "sample,taxon,part,count,mass_g,condition,completeness,size_class,fraction,note\n"


def sheet_of(tmp_path: Path, text: str | bytes) -> str:
    return told(reading_of(tmp_path, {"counts/light.csv": text}))


def test_every_column_is_read(tmp_path: Path) -> None:
    """A full row arrives whole; words are read in any spelling, case and spaces of the header do not matter."""
    text = " Sample,TAXON,Part,Count,Mass g,condition,completeness,size_class,fraction,note\n" + (
        'S1,cf. Zea mays,Corn kernels,3,0.12,Burnt,Fragment,>2 mm,Heavy,"puffed, two\nlines"\n'
    )
    project = reading_of(tmp_path, {"counts/light.csv": text}).project
    assert project is not None
    row = project.counts[0]

    assert (row.sample, row.part, row.count.number, row.mass_g) == ("S1", "kernel", 3, 0.12)
    assert (row.condition, row.completeness, row.size_class, row.fraction) == ("charred", "fragment", ">2 mm", "heavy")
    assert (row.identification.taxon, row.identification.qualifier) == ("Zea mays", "cf.")
    assert row.note == "puffed, two\nlines"


def test_blank_cells_mean_their_default(tmp_path: Path) -> None:
    """Charred, whole, light; a blank count with a mass is 'weighed only'."""
    project = reading_of(tmp_path, {"counts/light.csv": HEADER + "S1,Zea mays,kernel,,0.5,,,,,\n"}).project
    assert project is not None
    row = project.counts[0]

    assert (row.condition, row.completeness, row.fraction) == ("charred", "whole", "light")
    assert (row.count.amount, row.count.number, row.mass_g) == ("weighed only", None, 0.5)


def test_a_tsv_sheet_with_a_byte_order_mark_is_read(tmp_path: Path) -> None:
    """Tabs part the cells of a .tsv; the mark of 'CSV UTF-8' and Windows line ends do not matter."""
    text = "\ufeffsample\ttaxon\tpart\tcount\r\nS1\tZea mays\tcupule\t4\r\n"
    reading = reading_of(tmp_path, {"counts/b.tsv": text})

    assert told(reading) == ""
    assert reading.project is not None
    assert [row.count.number for row in reading.project.counts] == [4, 3]


def test_blank_lines_and_rows_of_blank_cells_are_passed_over(tmp_path: Path) -> None:
    """Spreadsheets leave rows of commas behind; their lines still count."""
    reading = reading_of(tmp_path, {"counts/light.csv": "\nsample,taxon,part,count,\n\n,,,,\nS1,Zea mays,kernel,3,\n"})

    assert told(reading) == ""
    assert reading.project is not None
    assert reading.project.counts[0].place.line == 5


def test_the_share_sorted_comes_from_the_samples_record(tmp_path: Path) -> None:
    """A row takes the share of its size class, whatever its spacing; the heavy fraction has none."""
    records = RECORDS + '    size_classes: [{name: "0.5-1 mm", proportion_sorted: 1/4}]\n'
    rows = "S1,Zea mays,kernel,1,,,,0.5–1mm,,\nS1,Zea mays,cupule,1,,,,,,\nS1,Zea mays,seed,1,,,,>2 mm,heavy,\n"
    project = reading_of(tmp_path, {"records/all.yaml": records, "counts/light.csv": HEADER + rows}).project

    assert project is not None
    assert [row.proportion_sorted for row in project.counts] == [0.25, 1.0, 1.0]


MESSAGES = {
    "header of other words": (
        "Sample No,Species,part,N\nS1,Zea mays,kernel,3\n",
        "counts/light.csv:1:1: error N301: the column 'Sample No' is not known; did you mean 'sample'?\n"
        "    1 | Sample No,Species,part,N\n"
        "        ^^^^^^^^^\n"
        "      help: write 'sample'\n"
        "counts/light.csv:1:1: error N301: the header has no column 'sample' or 'taxon' or 'count', expected sample, "
        "taxon, part, count\n"
        "    1 | Sample No,Species,part,N\n"
        "        ^^^^^^^^^^^^^^^^^^^^^^^^\n"
        "      help: name the columns in the first line: sample,taxon,part,count; or run 'narrate intake "
        "counts/light.csv' if the sheet is a laboratory's own\n"
        "counts/light.csv:1:11: error N301: the column 'Species' is not known; did you mean 'taxon'?\n"
        "    1 | Sample No,Species,part,N\n"
        "                  ^^^^^^^\n"
        "      help: write 'taxon'\n"
        "counts/light.csv:1:24: error N301: the column 'N' is not known; did you mean 'count'?\n"
        "    1 | Sample No,Species,part,N\n"
        "                               ^\n"
        "      help: write 'count'",
    ),
    "semicolons": (
        "sample;taxon;part;count\nS1;Zea mays;kernel;3\n",
        "counts/light.csv:1:7: error N301: the columns are parted by semicolons, expected commas\n"
        "    1 | sample;taxon;part;count\n"
        "              ^\n"
        "      help: save the sheet again with commas between the columns; or run 'narrate intake counts/light.csv' if "
        "the sheet is a laboratory's own",
    ),
    "a column that is not read": (
        "sample,taxon,part,count,finder\nS1,Zea mays,kernel,3,B.\n",
        "counts/light.csv:1:25: warning N301: the column 'finder' is not known and is not read; known are sample, "
        "taxon, "
        "part, count, mass_g, condition, completeness, size_class, fraction, note\n"
        "    1 | sample,taxon,part,count,finder\n"
        "                                ^^^^^^\n"
        "      help: delete the column, or put what it says under 'note'",
    ),
    "a column twice": (
        "sample,taxon,part,count,count\nS1,Zea mays,kernel,3,4\n",
        "counts/light.csv:1:25: error N301: the column 'count' stands in the header twice, expected once\n"
        "    1 | sample,taxon,part,count,count\n"
        "                                ^^^^^\n"
        "      help: delete or rename one of them",
    ),
    "ragged row": (
        "sample,taxon,part,count\nS1,Zea mays,kernel,3,4\n",
        "counts/light.csv:2:1: error N302: the row has 5 cells, more than the header, expected 4\n"
        "    2 | S1,Zea mays,kernel,3,4\n"
        "        ^^^^^^^^^^^^^^^^^^^^^^\n"
        "      help: put a text that holds the separator in quotation marks",
    ),
    "endless cell": (
        "sample,taxon,part,count\nS1,Zea mays,kernel,3\nS1," + "Z" * 200_000 + ",cupule,4\n",
        "counts/light.csv:3: error N302: a cell holds more than 131,072 signs, expected a name, a number or a remark; "
        "the rows from here on were not read\n"
        f"    3 | S1,{'Z' * 157}…\n"
        "      help: shorten the cell, or look whether a separator or a line end is missing",
    ),
    "open quote": (
        'sample,taxon,part,count\nS1,Zea mays,kernel,3\nS1,"Zea mays,cupule,4\n',
        "counts/light.csv:3:4: error N302: a quotation mark is opened and not closed, expected marks around whole "
        "cells; "
        "the rows from here on were not read\n"
        '    3 | S1,"Zea mays,cupule,4\n'
        "           ^\n"
        '      help: write a quotation mark inside a cell twice: ""',
    ),
    "decimal count": (
        "sample,taxon,part,count\nS1,Zea mays,kernel,12.5\n",
        "counts/light.csv:2:20: error N303: count is 12.5, expected a whole number, a presence mark such as x, or an "
        "abundance class such as >100\n"
        "    2 | S1,Zea mays,kernel,12.5\n"
        "                           ^^^^\n"
        "      help: count whole items; pieces go in rows of their own with 'fragment' under completeness, weights "
        "under "
        "mass_g",
    ),
    "nothing counted": (
        "sample,taxon,part,count\nS1,Zea mays,kernel,\n",
        "counts/light.csv:2:20: error N303: count is empty and no mass is given, expected a whole number, a presence "
        "mark "
        "such as x, or an abundance class such as >100\n"
        "    2 | S1,Zea mays,kernel,\n"
        "                           ^\n"
        "      help: write 0 if it was looked for and not found; else leave the row out",
    ),
    "absent with a mass": (
        "sample,taxon,part,count,mass_g\nS1,Zea mays,kernel,0,0.3\n",
        "counts/light.csv:2:20: error N303: count is 0 and mass_g is 0.3, expected no mass where there is nothing\n"
        "    2 | S1,Zea mays,kernel,0,0.3\n"
        "                           ^\n"
        "      help: leave count blank if it was weighed and not counted",
    ),
    "decimal comma": (
        'sample,taxon,part,count,mass_g\nS1,Zea mays,kernel,3,"0,3"\n',
        "counts/light.csv:2:22: error N303: mass_g is '0,3', expected a number of grams\n"
        '    2 | S1,Zea mays,kernel,3,"0,3"\n'
        "                             ^^^^^\n"
        "      help: write 0.3 with a point, or without the comma if it parts thousands",
    ),
    "slip in a part": (
        "sample,taxon,part,count\nS1,Zea mays,glum base,3\n",
        "counts/light.csv:2:13: error N402: part 'glum base' is not in the list of parts; did you mean 'glume base'?\n"
        "    2 | S1,Zea mays,glum base,3\n"
        "                    ^^^^^^^^^\n"
        "      help: write 'glume base'",
    ),
    "unknown sample": (
        "sample,taxon,part,count\nS1,Zea mays,kernel,3\nX99,Zea mays,kernel,3\n",
        "counts/light.csv:3:1: error N304: sample 'X99' is described by no record\n"
        "    3 | X99,Zea mays,kernel,3\n"
        "        ^^^\n"
        "      help: describe the sample in records/, or mend its id here",
    ),
    "unknown name": (
        "sample,taxon,part,count\nS1,Zea mais,kernel,3\nS1,Zea mais,cupule,3\n",
        "counts/light.csv:2:4: warning N401: taxon 'Zea mais' is in no taxon pack in use; its 2 rows are counted as "
        "written, and no rule can speak of it; did you mean 'Zea mays'?\n"
        "    2 | S1,Zea mais,kernel,3\n"
        "           ^^^^^^^^\n"
        "      help: write 'Zea mays', or describe the plant in packs/taxa/ of the project",
    ),
    "a dash": (
        "sample,taxon,part,count\nS1,Zea mays,kernel,-\nS1,Zea mays,cupule,-\n",
        "counts/light.csv:2:20: warning N303: count is '-', here and below read as looked for and absent, expected 0 "
        "for "
        "that\n"
        "    2 | S1,Zea mays,kernel,-\n"
        "                           ^\n"
        "      help: write 0; leave the row out if it was not looked for",
    ),
    "empty sheet": (
        "\n\n",
        "counts/light.csv: error N307: the sheet is empty, expected a header and rows\n"
        "      help: write a first line such as sample,taxon,part,count, or delete the file",
    ),
    "header alone": (
        "sample,taxon,part,count\n",
        "counts/light.csv: error N307: the sheet has a header and no rows, expected at least one row\n"
        "      help: add the rows, or delete the file",
    ),
    "cell under no column": (
        "sample,taxon,part,count,\nS1,Zea mays,kernel,3,4\n",
        "counts/light.csv:2:22: error N303: 4 stands under a column without a name, expected nothing there\n"
        "    2 | S1,Zea mays,kernel,3,4\n"
        "                             ^\n"
        "      help: name the column, or empty the cell",
    ),
    "binary": (
        b"\x00\x01\x02",
        "counts/light.csv:1: error N102: the file holds the byte 0x00 at position 1, so it is not text, expected UTF-8 "
        "text\n"
        "      help: if it is a spreadsheet, open it and save the sheet as 'CSV UTF-8'",
    ),
}


@pytest.mark.parametrize("case", MESSAGES)
def test_each_slip_in_a_sheet_is_told_whole(tmp_path: Path, case: str) -> None:
    """Place with column, what was read, what was expected, the line with a pointer, how to mend it."""
    text, expected = MESSAGES[case]
    reading = reading_of(tmp_path, {"counts/light.csv": text})
    # Whether samples have rows is another matter, tested with the cross-checks.
    kept = Reading(problems=tuple(p for p in reading.problems if p.code not in ("N113", "N206")))

    assert told(kept) == expected


def test_all_problems_of_a_row_are_told(tmp_path: Path) -> None:
    """A row with three faults gives three problems."""
    told_here = sheet_of(tmp_path, "sample,taxon,part,count\nS2,Zea mays,kernal,many\n")

    assert [line.split()[2] for line in told_here.splitlines() if " error " in line] == ["N304:", "N402:", "N303:"]


def test_a_size_class_that_the_sample_lacks_is_told(tmp_path: Path) -> None:
    """The share that was sorted hangs on the size class, so a slip in its name is an error."""
    records = RECORDS + '    size_classes: [{name: "1-2 mm", proportion_sorted: 1}]\n'
    sheet = "sample,taxon,part,count,size_class\nS1,Zea mays,kernel,3,1-2 m\n"

    assert told(reading_of(tmp_path, {"records/all.yaml": records, "counts/light.csv": sheet})).startswith(
        "counts/light.csv:2:22: error N306: size_class '1-2 m' is none of sample 'S1'; did you mean '1-2 mm'?\n"
    )


def test_rows_without_a_size_class_are_told_where_it_matters(tmp_path: Path) -> None:
    """Where one of several classes was sorted in part, a row without a class could belong to either."""
    records = RECORDS + "    size_classes: [{name: big, proportion_sorted: 1}, {name: small, proportion_sorted: 1/4}]\n"
    reading = reading_of(tmp_path, {"records/all.yaml": records})

    assert [(p.severity, p.code) for p in reading.problems] == [("warning", "N306")]


def test_problems_of_one_sheet_are_bounded_and_the_rest_is_counted(tmp_path: Path) -> None:
    """Ten thousand problems are told one by one; of the others the number is told."""
    rows = "".join(f"X{i},Zea mays,kernel,1\n" for i in range(10_050))
    reading = reading_of(tmp_path, {"counts/light.csv": "sample,taxon,part,count\n" + rows})

    assert sum(p.code == "N304" for p in reading.problems) == 10_000
    assert (
        "counts/light.csv: error N303: 50 more problems in this sheet are not listed, expected a sheet without any\n"
        "      help: mend those that are listed first; many of one kind often have one cause"
    ) in told(reading)


def test_rows_given_twice_by_the_thousand_are_counted(tmp_path: Path) -> None:
    """A sheet that was copied into itself: ten thousand rows are told one by one, and how many more there are."""
    reading = reading_of(tmp_path, {"counts/light.csv": "sample,taxon,part,count\n" + "S1,Zea mays,kernel,1\n" * 10_052})

    assert sum(p.code == "N305" and p.place.line > 0 for p in reading.problems) == 10_000
    assert "counts/light.csv: error N305: 51 more like those told of this file, of the kind N305\n" in told(reading)


def test_half_a_million_cells_are_worked_out_once_each(tmp_path: Path) -> None:
    """Each distinct text of a column is read once, which is what makes long sheets quick."""
    packs, _ = read_packs(("valley",), shipped=packs_in(tmp_path))
    identifier = Identifier(packs.taxa, packs.taxon_lookup)
    known = Known(words=packs.words, samples={"S1": a_sample()}, sample_ids=frozenset({"S1"}), identifier=identifier)
    text = "sample,taxon,part,count\n" + "S1,Zea mays,kernel,3\n" * 2000
    rows = read_count_sheet(SourceText("counts/a.csv", text), known, ProblemList())

    assert len(rows) == 2000
    assert len({id(row.identification) for row in rows}) == 1
    assert len({id(row.count) for row in rows}) == 1
