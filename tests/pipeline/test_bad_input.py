"""Bad input through the command line: a clear list, status 1, no traceback, nothing written."""

from __future__ import annotations

from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from narrate.cli import commands
from tests.conftest import EXAMPLE


def run(*arguments: str) -> Result:
    return CliRunner().invoke(commands, list(arguments))


def a_project(folder: Path) -> Path:
    """A small whole project, from `begin`."""
    assert run("begin", str(folder)).exit_code == 0
    return folder


def empty_folder(folder: Path) -> None:
    folder.mkdir()


def no_project_file(folder: Path) -> None:
    a_project(folder)
    (folder / "project.yaml").unlink()


def wrong_header(folder: Path) -> None:
    a_project(folder)
    (folder / "counts" / "first-sheet.csv").write_text(
        "Sample No,Species,Bit,N\nS1,Zea mays,kernel,3\n", encoding="utf-8"
    )


def binary_sheet(folder: Path) -> None:
    a_project(folder)
    (folder / "counts" / "first-sheet.csv").write_bytes(bytes(range(256)) * 40)


def windows_1252(folder: Path) -> None:
    a_project(folder)
    (folder / "counts" / "first-sheet.csv").write_bytes(
        "sample,taxon,part,count,note\nS1,Zea mays,kernel,3,très petit – à voir\n".encode("cp1252")
    )


def many_problems(folder: Path) -> None:
    a_project(folder)
    rows = "\n".join(f"S{i},Zea mays,kernel,{i}" for i in range(2, 10_002))
    (folder / "counts" / "first-sheet.csv").write_text(f"sample,taxon,part,count\n{rows}\n", encoding="utf-8")


def a_file_instead(folder: Path) -> None:
    folder.write_text("not a folder", encoding="utf-8")


CASES = [empty_folder, no_project_file, wrong_header, binary_sheet, windows_1252, many_problems, a_file_instead]


@pytest.mark.parametrize("command", ["check", "tell", "rank"])
@pytest.mark.parametrize("case", CASES, ids=lambda case: case.__name__)
def test_bad_input_is_a_list_and_status_1(tmp_path: Path, case, command: str) -> None:  # type: ignore[no-untyped-def]
    """Every kind of bad input ends with status 1 and a message that has a place, a code and a way to mend it."""
    folder = tmp_path / "project"
    case(folder)
    result = run(command, str(folder))

    assert result.exit_code == 1, result.output
    assert "error N" in result.stderr
    assert "help:" in result.stderr
    assert "Traceback" not in result.output
    assert not (folder / "out").exists()


def test_ten_thousand_problems_are_all_told_at_once(tmp_path: Path) -> None:
    """A sheet with ten thousand unknown samples gives ten thousand places, or says how many it left out."""
    folder = tmp_path / "project"
    many_problems(folder)
    result = run("check", str(folder))

    assert result.stderr.count("error N304") >= 1000
    assert "10000" in result.output.replace(",", "") or result.stderr.count("error N304") == 10_000


def test_bad_input_leaves_an_older_site_alone(tmp_path: Path) -> None:
    """When a sheet breaks after a good run, the site of the good run stays as it was."""
    folder = a_project(tmp_path / "project")
    assert run("tell", str(folder)).exit_code == 0
    before = {p: p.read_bytes() for p in sorted((folder / "out").rglob("*")) if p.is_file()}
    (folder / "counts" / "first-sheet.csv").write_bytes(b"\x00\x01\x02")
    result = run("tell", str(folder))

    assert result.exit_code == 1
    assert before == {p: p.read_bytes() for p in sorted((folder / "out").rglob("*")) if p.is_file()}


def test_a_foreign_out_folder_is_not_written_into(tmp_path: Path) -> None:
    """A folder in the way that narrate did not make is refused."""
    folder = a_project(tmp_path / "project")
    (folder / "out" / "review").mkdir(parents=True)
    (folder / "out" / "review" / "thesis.txt").write_text("years of work", encoding="utf-8")
    result = run("tell", str(folder))

    assert result.exit_code == 1
    assert "N108" in result.stderr
    assert (folder / "out" / "review" / "thesis.txt").read_text(encoding="utf-8") == "years of work"
    assert list((folder / "out" / "review").iterdir()) == [folder / "out" / "review" / "thesis.txt"]


def test_the_example_checks_clean_through_the_command_line() -> None:
    """`narrate check example_project` ends with status 0."""
    result = run("check", str(EXAMPLE))

    assert result.exit_code == 0, result.stderr


def test_check_as_json_is_json(tmp_path: Path) -> None:
    """`--json` writes problems with stable keys to standard output."""
    import json

    folder = tmp_path / "project"
    wrong_header(folder)
    result = run("check", str(folder), "--json")
    problems = json.loads(result.stdout)["problems"]

    assert result.exit_code == 1
    assert set(problems[0]) == {"path", "line", "column", "sheet", "cell", "severity", "code", "message", "help"}


def test_a_wrong_call_is_status_2() -> None:
    """An unknown command is a wrong call, with the near match offered."""
    result = run("chek", "x")

    assert result.exit_code == 2


def test_strict_makes_warnings_errors(tmp_path: Path) -> None:
    """With --strict a project that only has warnings ends with status 1."""
    folder = a_project(tmp_path / "project")
    sheet = folder / "counts" / "first-sheet.csv"
    sheet.write_text(sheet.read_text(encoding="utf-8") + "S1,Nobodyknowsia,seed,1,,charred,whole,,\n", encoding="utf-8")

    assert run("check", str(folder)).exit_code == 0
    assert run("check", str(folder), "--strict").exit_code == 1


def test_begin_refuses_a_folder_that_holds_something(tmp_path: Path) -> None:
    """`begin` never writes over what is there."""
    (tmp_path / "notes.txt").write_text("mine", encoding="utf-8")
    result = run("begin", str(tmp_path))

    assert result.exit_code == 1
    assert "N108" in result.stderr
    assert [p.name for p in tmp_path.iterdir()] == ["notes.txt"]


def test_a_begun_project_is_told_at_once(tmp_path: Path) -> None:
    """What `begin` lays out checks clean and can be told."""
    folder = a_project(tmp_path / "my dig")

    assert run("check", str(folder)).stdout.strip() == "No problems found."
    assert run("tell", str(folder)).exit_code == 0


def test_explain_leads_to_rows(tmp_path: Path) -> None:
    """`explain` prints the rows of the sheet behind a claim, as written."""
    folder = a_project(tmp_path / "project")
    result = run("explain", str(folder), "C1/fuel.maize-cob")

    assert result.exit_code == 0, result.stderr
    assert "counts/first-sheet.csv:2  S1,Zea mays,cupule,42,,charred,whole,," in result.stdout


def test_explain_offers_the_near_match(tmp_path: Path) -> None:
    """An unknown claim is answered with claims near it."""
    folder = a_project(tmp_path / "project")
    result = run("explain", str(folder), "C1/fuel.maize-cobs")

    assert result.exit_code == 1
    assert "C1/fuel.maize-cob" in result.output


def test_a_project_in_a_folder_with_odd_letters_is_told(tmp_path: Path) -> None:
    """Spaces and non-Latin letters in the path change nothing; of the example `test_tell` compares every byte."""
    folder = a_project(tmp_path / "Grabung Süd – 窯 1")

    assert run("tell", str(folder)).exit_code == 0
    assert (folder / "out" / "public" / "index.html").is_file()
