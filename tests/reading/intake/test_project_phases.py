"""Phases that a sheet names come into a project file that is there; nothing in it is lost."""

from __future__ import annotations

from pathlib import Path

import pytest
import yaml

from narrate.pipeline.intake import intake
from narrate.pipeline.judged import read
from narrate.reading.intake.project_phases import add_phases, known_phases

HEAD = "# of mine\ntitle: Invented   # by hand\nregion_packs: [eastern-north-america]\npreservation: charred\n"
TAIL = "# after\nauthors:\n  - {name: A. Analyst, role: archaeobotanist}  # me\n"

FORMS = {
    "a list in braces": "phases:\n  - {id: Early, name: Early hamlet, start: 950, end: 1050}   # sure\n  # more\n",
    "a list in lines": "phases:\n  - id: Early\n    name: Early hamlet   # sure\n    start: 950\n    end: 1050\n\n",
    "a list without indent": "phases:\n- id: Early\n  name: Early hamlet\n  start: 950\n  end: 1050\n",
    "a list in brackets": "phases: [{id: Early, name: Early hamlet, start: 950, end: 1050}]   # sure\n",
    "a list in brackets over lines": "phases: [\n  {id: Early, name: Early hamlet},\n]\n",
    "an empty list": "phases: []   # none yet\n",
    "nothing behind the key": "phases:   # none yet\n",
    "no key": "",
}


@pytest.mark.parametrize("form", FORMS)
@pytest.mark.parametrize("end", ["\n", "\r\n"])
def test_phases_are_added_and_all_else_stays_as_it_is(form: str, end: str) -> None:
    """The old text is the new one without what was put in; what it says of all else is the same."""
    text = (HEAD + FORMS[form] + TAIL).replace("\n", end)
    made = add_phases(text, ["Late", 'of "doubt": 3']).text
    old, new = yaml.safe_load(text), yaml.safe_load(made)

    assert new.pop("phases") == [
        *(old.pop("phases", None) or []), {"id": "Late", "name": "Late"},
        {"id": 'of "doubt": 3', "name": 'of "doubt": 3'},
    ]  # fmt: skip
    assert new == old
    added = len(made) - len(text)
    assert any(made[:n] + made[n + added :] == text for n in range(len(text) + 1))
    assert made.count("\n") == made.count(end)


def test_a_file_that_ends_without_a_line_break_is_added_to() -> None:
    """Nothing is written onto the last line."""
    assert add_phases("title: A", ["Late"]).text == 'title: A\nphases:\n  - {id: "Late", name: "Late"}\n'


UNSAFE = {
    "a text in lines at the end": ("title: A\nphases:\n  - id: Early\n    basis: |\n      two dates\n      and coins\n",
                                   "its phases are written in a way that it is not safe to add to"),
    "a key twice": ("title: A\nphases: []\nphases: []\n", "a field of it is given twice"),
    "faulty yaml": ("title: 'A\nphases: []\n", "it cannot be read as YAML"),
    "phases that are no list": ("title: A\nphases: {Early: 950}\n",
                                "its phases are written in a way that it is not safe to add to"),
    "a comment in the brackets": ("phases: [{id: a} # one\n]\n",
                                  "its phases are written in a way that it is not safe to add to"),
}  # fmt: skip


@pytest.mark.parametrize("form", UNSAFE)
def test_a_file_that_is_not_safe_to_add_to_is_left_and_the_lines_are_said(form: str) -> None:
    """No text comes back, and the lines have no second key 'phases'."""
    text, why = UNSAFE[form]
    found = add_phases(text, ["Late"])

    assert (found.text, found.why_not, found.lines) == ("", why, '  - {id: "Late", name: "Late"}\n')


def test_ids_that_are_there_are_known_by_their_text() -> None:
    """An id such as 012 is text."""
    assert known_phases("phases:\n  - {id: 012, name: A}\n  - id: no\n") == {"012", "no"}


SHEET = (
    "Taxon,Part,S1,S2\nContext,,C1,C2\nPhase,,Early,Late\nVolume (l),,10,8\n"
    "Zea mays,kernel,3,1\nCarya sp.,nutshell,,4\n"
)


def a_project(folder: Path, phases: str) -> Path:
    project = folder / "dig"
    project.mkdir()
    (project / "project.yaml").write_text(HEAD + phases + TAIL, encoding="utf-8")
    sheet = folder / "lab.csv"
    sheet.write_text(SHEET, encoding="utf-8")
    return sheet


def test_intake_adds_the_phases_of_the_sheet_to_the_project(tmp_path: Path) -> None:
    """The phase that is missing is added, the project is whole, and it is said what was added."""
    sheet = a_project(tmp_path, FORMS["a list in braces"])
    found = intake(sheet, tmp_path / "dig")
    made = (tmp_path / "dig" / "project.yaml").read_text(encoding="utf-8")

    first = FORMS["a list in braces"].split("\n")
    added = "\n".join([*first[:2], '  - {id: "Late", name: "Late"}', *first[2:]])
    assert made == HEAD + added + TAIL
    assert "added to the phases in project.yaml: Late; give them names and years" in found.text
    assert [p.message for p in read(tmp_path / "dig").problems if p.severity == "error"] == []


def test_a_second_run_of_intake_adds_nothing(tmp_path: Path) -> None:
    """The file is written once."""
    sheet = a_project(tmp_path, FORMS["a list in lines"])
    intake(sheet, tmp_path / "dig")
    made = (tmp_path / "dig" / "project.yaml").read_bytes()
    again = intake(sheet, tmp_path / "dig")

    assert (tmp_path / "dig" / "project.yaml").read_bytes() == made
    assert tmp_path / "dig" / "project.yaml" not in again.written


def test_intake_says_what_to_add_where_it_cannot(tmp_path: Path) -> None:
    """The project file is left as it is, with the reason and the lines."""
    phases = "phases:\n  - id: Early\n    name: >\n      Early hamlet\n      and before\n"
    sheet = a_project(tmp_path, phases)
    found = intake(sheet, tmp_path / "dig")

    assert (tmp_path / "dig" / "project.yaml").read_text(encoding="utf-8") == HEAD + phases + TAIL
    assert (
        "project.yaml was left as it is, because its phases are written in a way that it is not safe to add to; add "
        'these lines where its phases stand:\n  - {id: "Late", name: "Late"}\n'
    ) in found.text
