"""Single values: what is taken, and how what is not is told."""

from __future__ import annotations

from typing import Any

import pytest

from narrate.problems import ProblemList
from narrate.reading.asking import Asking, Reads
from narrate.reading.source_text import SourceText
from narrate.reading.values import id_text, number, one_of, share, truth, whole, year
from narrate.reading.yaml_nodes import read_nodes, value_of
from tests.reading.folders import told_by


def take(reads: Reads, written: str) -> tuple[Any, str]:
    """The value read from `field: written`, and what is told."""
    source = SourceText("r.yaml", f"field: {written}\n")
    problems = ProblemList()
    node = read_nodes(source, problems)
    value = value_of(node, "field") if node else None
    assert value is not None
    found = reads.take(value, Asking(source=source, problems=problems), "sample 'S1'", "field")
    return found, told_by(problems)


TAKEN = [
    (number(above=0), "10.0", 10.0),
    (number(), "-3e2", -300.0),
    (whole(at_least=0), "46", 46),
    (share(), "1/4", (0.25, "1/4")),
    (share(), "0.25", (0.25, "0.25")),
    (share(), "1", (1.0, "1")),
    (year(), "-1200", -1200),
    (year(), '"950"', 950),
    (truth(), "True", True),
    (one_of(("de facto", "primary")), "De  Facto", "de facto"),
    (id_text(), "012", "012"),
    (id_text(), "no", "no"),
]


@pytest.mark.parametrize(("reads", "written", "expected"), TAKEN)
def test_values_are_taken_as_their_field_asks(reads: Reads, written: str, expected: object) -> None:
    """The same text is a number in one field and an id in another."""
    assert take(reads, written) == (expected, "")


REFUSED = [
    (
        number(above=0),
        "10,5",
        "field is '10,5', expected a number above 0",
        "write 10.5 with a point, or without the comma if it parts thousands",
    ),
    (number(above=0), "ten", "field is 'ten', expected a number above 0", "write 10"),
    (
        number(above=0),
        "10 l",
        "field is '10 l', expected a number above 0",
        "write 10 alone; the unit is in the field's name",
    ),
    (
        number(above=0),
        "c. 200",
        "field is 'c. 200', expected a number above 0",
        "write 200 and say in the note that it is an estimate",
    ),
    (number(above=0), "0", "field is 0, expected a number above 0", "leave it out if it was not measured"),
    (
        number(),
        ".nan",
        "field is '.nan', expected a number",
        "write the number; leave it out if it was not measured",
    ),
    (
        number(),
        "inf",
        "field is 'inf', expected a number",
        "write the number; leave it out if it was not measured",
    ),
    (
        number(),
        "1e999",
        "field is '1e999', expected a number",
        "the number is far too large; write what was measured or counted",
    ),
    (number(), "true", "field is 'true', expected a number", ""),
    (number(), "[1]", "field is a list, expected a number", ""),
    (whole(at_least=0), "12.5", "field is 12.5, expected a whole number of at least 0", ""),
    (share(), "25", "field is 25, expected a number above 0 and at most 1", "write 0.25 if 25 % was sorted"),
    (share(), "25 %", "field is '25 %', expected a number above 0 and at most 1", "write 0.25 if 25 % was sorted"),
    (
        share(),
        "0",
        "field is 0, expected a number above 0 and at most 1",
        "write the share that was sorted; leave out a class of which nothing was sorted, and say so in the note",
    ),
    (
        share(),
        "1/0",
        "field is '1/0', expected a number above 0 and at most 1",
        "write how many parts were sorted and how many there were, such as 1/4",
    ),
    (
        share(),
        "5/4",
        "field is '5/4', expected a number above 0 and at most 1",
        "write the part that was sorted, such as 0.25 or 1/4; 1 means that all was sorted",
    ),
    (
        year(),
        "0",
        "field is 0, expected a calendar year, negative for BC",
        "there is no year 0: 1 BC is -1, and the year after it is 1",
    ),
    (year(), "1200 BC", "field is '1200 BC', expected a calendar year, negative for BC", "write -1200"),
    (year(), "cal AD 950", "field is 'cal AD 950', expected a calendar year, negative for BC", "write 950"),
    (truth(), "yes", "field is 'yes', expected true or false", "write true"),
    (
        one_of(("sealed", "open")),
        "seald",
        "field is 'seald', expected sealed or open; did you mean 'sealed'?",
        "write 'sealed'",
    ),
    (id_text(), '" "', "field is ' ', expected an id, which is a text of one line", ""),
]


@pytest.mark.parametrize(("reads", "written", "message", "help"), REFUSED, ids=[r[1] for r in REFUSED])
def test_other_values_are_told_whole(reads: Reads, written: str, message: str, help: str) -> None:
    """Whose, what was read, what was expected, the line with a pointer, and a way to mend it where one is known."""
    found, told = take(reads, written)
    lines = [
        f"r.yaml:1:8: error N203: sample 'S1': {message}",
        f"    1 | field: {written}",
        "               " + "^" * (1 if written.startswith("[") else len(written)),
        *([f"      help: {help}"] if help else []),
    ]

    assert (found, told) == (None, "\n".join(lines))
