"""Problems in the one format, sorted, each code with its paragraph."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from narrate.problems import CODES, Place, Problem, ProblemList, as_plain_data, has_errors, written

ROOT = Path(__file__).parents[1]


def test_a_problem_reads_as_place_message_pointer_and_mend() -> None:
    """Line 1 has place, severity, code and message; then the line with a pointer; then one way to mend it."""
    problem = Problem(
        place=Place(path="records/samples/S014.yaml", line=5, column=22),
        severity="error",
        code="N203",
        message="sample 'S014', light fraction: proportion_sorted is 25, expected a number above 0 and at most 1",
        excerpt="  proportion_sorted: 25",
        width=2,
        help="write 0.25 if a quarter of the light fraction was sorted",
    )

    assert written(problem).splitlines() == [
        "records/samples/S014.yaml:5:22: error N203: sample 'S014', light fraction: proportion_sorted is 25, "
        "expected a number above 0 and at most 1",
        "    5 |   proportion_sorted: 25",
        "                             ^^",
        "      help: write 0.25 if a quarter of the light fraction was sorted",
    ]


@pytest.mark.parametrize(
    ("place", "text"),
    [
        (Place(path="a.yaml"), "a.yaml"),
        (Place(path="a.yaml", line=3), "a.yaml:3"),
        (Place(path="a.yaml", line=3, column=7), "a.yaml:3:7"),
        (Place(path="lab.xlsx", line=4, column=8, sheet="Flots", cell="H4"), "lab.xlsx, sheet Flots, cell H4"),
    ],
)
def test_a_place_says_as_much_as_it_knows(place: Place, text: str) -> None:
    """A file, a line, a column, or a cell of a workbook."""
    assert str(place) == text


def test_problems_come_sorted_and_each_once() -> None:
    """The list is sorted by place, and the same problem found twice is told once."""
    problems = ProblemList()
    for line in (9, 2, 9):
        problems.error(Place(path="a.yaml", line=line), "N203", "message")
    problems.warning(Place(path="a.yaml", line=1), "N207", "message")

    assert [(p.place.line, p.severity) for p in problems.sorted()] == [(1, "warning"), (2, "error"), (9, "error")]
    assert has_errors(problems.sorted())


def test_an_unknown_code_is_a_fault_of_ours() -> None:
    """A problem cannot be made with a code that the manual has no paragraph for."""
    with pytest.raises(KeyError, match="N999"):
        ProblemList().error(Place(path="a.yaml"), "N999", "message")


def test_what_is_said_of_a_file_as_a_whole_is_told_after_any_number_alike() -> None:
    """A reader's own word on how many more there are stays, however many of its kind were told before it."""
    problems = ProblemList()
    for line in range(1, 10_002):
        problems.error(Place(path="a.csv", line=line), "N303", f"message {line}")
    problems.error(Place(path="a.csv"), "N303", "50 more problems in this sheet are not listed")

    assert "50 more problems in this sheet are not listed" in [problem.message for problem in problems.sorted()]


def test_of_a_long_line_the_part_around_the_pointer_is_shown() -> None:
    """A line of thousands of signs is cut on both sides, with a mark for what is left out, and points at the same signs."""
    line = "a" * 5000 + "ten" + "b" * 5000
    place = Place(path="a.yaml", line=5, column=5001)

    shown = written(Problem(place=place, severity="error", code="N203", message="m", excerpt=line, width=3)).split("\n")

    assert shown[1] == "    5 | …" + "a" * 60 + "ten" + "b" * 177 + "…"
    assert shown[1][shown[2].index("^") :][: len(shown[2].strip())] == "ten"


def test_a_million_problems_alike_are_counted() -> None:
    """Of problems of one kind in one file ten thousand are told one by one, the others as one with their number."""
    problems = ProblemList()
    for line in range(1, 30_001):
        problems.error(Place(path="a.yaml", line=line), "N105", f"message {line}")
    problems.error(Place(path="b.yaml", line=7), "N105", "message")

    told = problems.sorted()

    assert len(told) == 10_002
    assert [problem.place.path for problem in told[10_001:]] == ["b.yaml"]
    assert written(told[0]) == (
        "a.yaml: error N105: 20,000 more like those told of this file, of the kind N105\n"
        "      help: mend the first 10,000; the others are told then"
    )


def test_every_code_used_in_the_package_has_a_paragraph_and_every_paragraph_is_used() -> None:
    """No code without a paragraph, no paragraph without a code that can be met."""
    used = {
        code
        for path in (ROOT / "narrate").rglob("*.py")
        if path.name != "problems.py"
        for code in re.findall(r'"(N\d{3})"', path.read_text(encoding="utf-8"))
    }

    assert used == set(CODES)


def test_plain_data_has_null_for_what_is_not_known() -> None:
    """For --json missing things are null, not 0 or empty text."""
    data = as_plain_data(Problem(place=Place(path="a.yaml"), severity="warning", code="N207", message="m"))

    assert data == {
        "path": "a.yaml",
        "line": None,
        "column": None,
        "sheet": None,
        "cell": None,
        "severity": "warning",
        "code": "N207",
        "message": "m",
        "help": None,
    }
