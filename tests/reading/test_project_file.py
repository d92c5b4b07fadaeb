"""project.yaml: phases, disclosure, and slips in them."""

from __future__ import annotations

from pathlib import Path

import pytest

from narrate.model.project import Author
from narrate.model.style import Style
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


def test_choices_of_style_are_read(tmp_path: Path) -> None:
    """Whether it is 'cal' is said by each phase; the mark of thousands and the dash are kept by name."""
    more = "style: {era: cal CE, thousands: space, units: l, dash: en dash}\n"
    project = reading_of(tmp_path, {"project.yaml": PROJECT + more}).project

    assert project is not None
    assert project.style == Style(era="CE", thousands="space", litre="l", dash="en dash")


def test_the_sign_of_the_litre_keeps_its_case(tmp_path: Path) -> None:
    """L and l are two choices; any other word may be written in any case."""
    signs = {
        written: reading_of(tmp_path / written, {"project.yaml": PROJECT + f"style: {{units: {written}}}\n"}).project
        for written in ("L", "l", "LITERS")
    }

    assert {key: found.style.litre for key, found in signs.items() if found} == {"L": "L", "l": "l", "LITERS": "liter"}


def test_without_choices_of_style_the_audience_decides(tmp_path: Path) -> None:
    """A project that says nothing about style keeps every choice open."""
    project = reading_of(tmp_path, {"project.yaml": PROJECT}).project

    assert project is not None
    assert (project.style, project.approved_only) == (Style(), frozenset())


def test_what_is_built_from_approved_words_is_read(tmp_path: Path) -> None:
    """One name stands for a list of one."""
    project = reading_of(tmp_path, {"project.yaml": PROJECT + "approved_only: public\n"}).project

    assert project is not None
    assert project.approved_only == {"public"}


MESSAGES = {
    "style misspelt": (
        PROJECT + "style: {era: cal ADE}\n",
        "project.yaml:5:14: error N203: project, style: era is 'cal ADE', expected AD, CE, BP, cal AD, cal CE or cal "
        "BP; did you mean 'cal AD'?\n"
        "    5 | style: {era: cal ADE}\n"
        "                     ^^^^^^^\n"
        "      help: write 'cal AD'",
    ),
    "unknown choice of style": (
        PROJECT + "style: {thousand: comma}\n",
        "project.yaml:5:9: error N202: project, style has a field 'thousand' that is not known; did you mean "
        "'thousands'?\n"
        "    5 | style: {thousand: comma}\n"
        "                ^^^^^^^^\n"
        "      help: write 'thousands'",
    ),
    "approved only misspelt": (
        PROJECT + "approved_only: [publik]\n",
        "project.yaml:5:17: error N203: project: approved_only is 'publik', expected public or report; did you mean "
        "'public'?\n"
        "    5 | approved_only: [publik]\n"
        "                        ^^^^^^\n"
        "      help: write 'public'",
    ),
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


def test_the_address_of_the_site_is_kept(tmp_path: Path) -> None:
    """Where the public site will stand is read as it was written."""
    project = reading_of(tmp_path, {"project.yaml": PROJECT + "address: https://example.org/dig/\n"}).project

    assert project is not None
    assert project.address == "https://example.org/dig/"


def test_an_address_that_is_none_is_refused(tmp_path: Path) -> None:
    """A path of this machine, or an address with a question in it, is no place for a site."""
    for address in ("C:/site", "https://example.org/?a=1", "javascript:alert(1)"):
        found = reading_of(tmp_path, {"project.yaml": PROJECT + f"address: '{address}'\n"}).problems

        assert [problem.message for problem in found if problem.code == "N203"] == [
            f"project: address is '{address}', expected a web address such as https://example.org/dig/"
        ]
