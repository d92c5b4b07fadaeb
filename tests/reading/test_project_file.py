"""project.yaml: phases, disclosure, and slips in them."""

from __future__ import annotations

from pathlib import Path

import pytest

from narrate.model.project import Author
from narrate.problems import written
from tests.reading.folders import PROJECT, reading_of, told


def test_every_field_of_the_project_is_read(tmp_path: Path) -> None:
    """Free keys of the report stay text, and location is restricted whatever is listed."""
    more = (
        "summary: A hamlet.\npreservation: mixed\nauthors: [{name: A. Analyst, role: archaeobotanist}]\n"
        'report: {number: "WH-7", year: 2026}\n'
        "disclosure: {restricted_contexts: [C1], restricted_fields: [description]}\n"
    )
    project = reading_of(tmp_path, {"project.yaml": PROJECT + more}).project

    assert project is not None
    assert (project.summary, project.preservation) == ("A hamlet.", "mixed")
    assert project.authors == (Author(name="A. Analyst", role="archaeobotanist"),)
    assert project.report == {"number": "WH-7", "year": "2026"}
    assert project.disclosure.restricted_contexts == {"C1"}
    assert project.disclosure.restricted_fields == {"location", "description"}
    assert (project.phases[0].start, project.phases[0].end) == (950, 1050)


MESSAGES = {
    "start after end": (
        PROJECT.replace("start: 950", "start: 1950"),
        "project.yaml:4:44: error N203: phase 'early': start is 1950 and end is 1050, expected a start before the end\n"
        "    4 |   - {id: early, name: Early hamlet, start: 1950, end: 1050}\n"
        "                                                   ^^^^\n"
        "      help: exchange the two; years BC are negative, so 1200 BC is -1200",
    ),
    "same phase twice": (
        PROJECT + "  - {id: early, name: Again}\n",
        "project.yaml:5:5: error N204: phase 'early' is described twice, first in project.yaml:4, expected each id "
        "once\n"
        "    5 |   - {id: early, name: Again}\n"
        "            ^\n"
        "      help: give one of them another id",
    ),
    "unknown restricted context": (
        PROJECT + "disclosure:\n  restricted_contexts: [C11]\n",
        "project.yaml:6:25: error N205: project, disclosure: restricted context 'C11' is described by no record; did "
        "you "
        "mean 'C1'?\n"
        "    6 |   restricted_contexts: [C11]\n"
        "                                ^^^\n"
        "      help: write 'C1'",
    ),
    "unknown restricted field": (
        PROJECT + "disclosure:\n  restricted_fields: [locations]\n",
        "project.yaml:6:23: error N202: project, disclosure: restricted_fields names 'locations', which cannot be "
        "withheld; did you mean 'location'?\n"
        "    6 |   restricted_fields: [locations]\n"
        "                              ^^^^^^^^^\n"
        "      help: write 'location'",
    ),
}


@pytest.mark.parametrize("case", MESSAGES)
def test_each_slip_in_the_project_file_is_told_whole(tmp_path: Path, case: str) -> None:
    """Place, whose, what was read, what was expected, the line with a pointer, how to mend it."""
    text, expected = MESSAGES[case]

    assert told(reading_of(tmp_path, {"project.yaml": text})) == expected


def test_a_project_file_of_remarks_alone_is_told(tmp_path: Path) -> None:
    """A file without a field says what it needs."""
    reading = reading_of(tmp_path, {"project.yaml": "# nothing yet\n"})

    assert written(next(p for p in reading.problems if p.severity == "error")) == (
        "project.yaml:1:1: error N201: the project file holds no fields, expected at least 'title', 'region_packs' and "
        "'phases'\n"
        "    1 | # nothing yet\n"
        "        ^^^^^^^^^^^^^\n"
        "      help: write 'title: …' in its first line; 'narrate begin' lays out a whole one"
    )
