"""Cells among counts: what each writing means, and that a sign is never a number without a key."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from narrate.model.grids import Cell
from narrate.model.layouts import Marks
from narrate.reading.intake.cell_marks import number_of
from narrate.reading.intake.cell_masses import read_mass
from narrate.reading.intake.cell_reading import read_cell


def meaning(text: str, **marks: Any) -> list[tuple[object, ...]]:
    """(amount, number, at least, at most) of each thing that a cell gives."""
    found = read_cell(Cell(text), Marks(**marks)).found
    return [
        (f.count.amount, f.count.number, f.count.at_least, f.count.at_most) if f.count else ("grams", f.mass_g)
        for f in found
    ]


PRESENT = ("noted as present", None, None, None)
ABSENT = ("looked for and absent", None, None, None)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("12", [("counted", 12, None, None)]),
        ("0", [ABSENT]),
        ("-", [ABSENT]),
        ("x", [PRESENT]),
        ("P", [PRESENT]),
        ("+", [PRESENT]),
        ("+++++", [PRESENT]),
        ("#", [PRESENT]),
        ("?", [PRESENT]),
        (">100", [("noted as present", None, 101, None)]),
        ("<10", [("noted as present", None, None, 9)]),
        ("c. 200", [("counted", 200, None, None)]),
        ("0.5", [("noted as present", None, None, 1)]),
        ("1/6", [PRESENT]),
        ("12 (3)", [("counted", 12, None, None)]),
        ("21?", [("counted", 21, None, None)]),
        ("2ml", [PRESENT]),
        ("0.002g", [("grams", 0.002)]),
        ("8.00", [("counted", 8, None, None)]),
        ("2.6e+06", [("counted", 2_600_000, None, None)]),
        ("1,234", [("counted", 1234, None, None)]),
        ("1 234", [("counted", 1234, None, None)]),
        ("12*", [("counted", 12, None, None)]),
        ("x (roots)", [PRESENT]),
        ("3 uncharred", [("counted", 3, None, None)]),
        ("10+2f", [("counted", 10, None, None), ("counted", 2, None, None)]),
        ("n/a", [("not looked for", None, None, None)]),
        ("200 est.", [("counted", 200, None, None)]),
        ("12 (0.03g)", [("counted", 12, None, None), ("grams", 0.03)]),
        ("<0.1g", [PRESENT]),
        ("1½", [("noted as present", None, 1, 2)]),
        (">1,000", [("noted as present", None, 1001, None)]),
        ("x?", [PRESENT]),
        (">100?", [("noted as present", None, 101, None)]),
        ("5 to 10", [("noted as present", None, 5, 10)]),
        ("1 whole 6 frags", [("counted", 1, None, None), ("counted", 6, None, None)]),
        ("1w/6f", [("counted", 1, None, None), ("counted", 6, None, None)]),
        ("200ish", [("counted", 200, None, None)]),
    ],
)
def test_each_writing_has_its_meaning(text: str, expected: list[tuple[object, ...]]) -> None:
    """Without a key, signs are presence, classes keep their ends, and only plain numbers and estimates are counts."""
    assert meaning(text) == expected


@pytest.mark.parametrize("text", ["C36", "see notes", "12%", "-3", "2-Oct", "ca", "1.2.3", "5+3"])
def test_what_cannot_be_read_is_refused_with_help(text: str) -> None:
    """Nothing is guessed; the help names the way to mend it."""
    found = read_cell(Cell(text), Marks())

    assert found.found == ()
    assert found.refusal is not None
    assert found.refusal.help


@pytest.mark.parametrize(
    ("text", "marks", "expected"),
    [
        ("+", {"key": {"+": "1-5"}}, [("noted as present", None, 1, 5)]),
        ("++", {"key": {"++": ">20"}}, [("noted as present", None, 21, None)]),
        ("-", {"key": {"-": "present"}}, [PRESENT]),
        ("1", {"key": {"1": "present"}}, [PRESENT]),
        ("1/6", {"slash": "whole/fragment"}, [("counted", 1, None, None), ("counted", 6, None, None)]),
        ("12 (3)", {"brackets": "fragment"}, [("counted", 12, None, None), ("counted", 3, None, None)]),
        ("c. 200", {"estimates": "present"}, [("noted as present", None, 1, None)]),
        ("0,5", {"decimal": ","}, [("noted as present", None, None, 1)]),
        ("1.234", {"decimal": ","}, [("counted", 1234, None, None)]),
    ],
)
def test_a_key_of_the_sheet_or_the_analyst_is_obeyed(
    text: str, marks: dict[str, Any], expected: list[tuple[object, ...]]
) -> None:
    """The same sign means different things in different laboratories; the layout says which."""
    assert meaning(text, **marks) == expected


@pytest.mark.parametrize(
    "text", ["-", "+", "+++", "#", "?", "c. 200", "0.5", "1/6", "12 (3)", "21?", "2ml", "2.6e+06", "12*", "x*", "12 toasted", "12m"]
)
def test_what_means_less_than_it_seems_is_told(text: str) -> None:
    """Signs without a key, estimates, remarks and odd numbers each carry a warning."""
    assert read_cell(Cell(text), Marks()).quirks


@pytest.mark.parametrize("text", ["x", "+", "++", "P", "#", "?", ">100", "<10", "1-5", "50+", "0.5", "2ml", "1/6"])
def test_presence_never_becomes_a_count(text: str) -> None:
    """No sign and no class has a number."""
    assert all(f.count is None or f.count.number is None for f in read_cell(Cell(text), Marks()).found)


def test_a_date_is_told_with_what_was_probably_typed() -> None:
    """A spreadsheet that made a date of 10-12 is caught."""
    found = read_cell(Cell("10 Dec 2026", None, "date", "d-mmm"), Marks())

    assert found.refusal is not None
    assert found.refusal.help == (
        "a spreadsheet has made a date of it; probably 10-12 or 12-10 was typed; say it under 'mend' in the layout"
    )


def test_a_formula_without_a_result_is_refused() -> None:
    """It is never read as nothing."""
    found = read_cell(Cell("", None, "no result", "", "=SUM(B2:B9)"), Marks())

    assert found.refusal is not None
    assert "=SUM(B2:B9) has no saved result" in found.refusal.help


def test_weights_are_grams() -> None:
    """Milligrams are divided; a trace is presence."""
    assert read_mass(Cell("250", 250.0, "number"), Marks(), "mg").found[0].mass_g == 0.25
    assert read_mass(Cell("1,5"), Marks(decimal=","), "g").found[0].mass_g == 1.5
    assert read_mass(Cell(".02"), Marks(), "g").found[0].mass_g == 0.02
    assert read_mass(Cell("<0.01"), Marks(), "g").found[0].mass_g is None


@pytest.mark.parametrize(
    ("text", "expected"),
    [("*", (1, 5)), ("+", (6, 20)), *((sign, (None, None)) for sign in ("***", "x", "•", "t"))],
)
def test_signs_among_weights_are_presence(text: str, expected: tuple[int | None, int | None]) -> None:
    """With the ends that the key of the sheet gives, if those are of items; it is told that nothing was weighed."""
    read = read_mass(Cell(text), Marks(key={"*": "1-5", "+": "6-20", "t": "<1 g"}), "g")

    assert [(f.mass_g, f.count.amount, f.count.at_least, f.count.at_most) for f in read.found if f.count] == [
        (None, "noted as present", *expected)
    ]
    assert [quirk.message for quirk in read.quirks] == [
        f"the weight is '{text}', kept in the note and as presence, expected a number"
    ]


@pytest.mark.parametrize("text", ["a", "see bag", "??"])
def test_what_nobody_knows_among_weights_is_refused(text: str) -> None:
    assert read_mass(Cell(text), Marks(key={"*": "1-5"}), "g").refusal is not None


@pytest.mark.parametrize(("text", "decimal"), [("0,5", "."), ("12,34", "."), ("1,2,3", "."), ("", ".")])
def test_marks_that_do_not_stand_as_they_should_give_no_number(text: str, decimal: str) -> None:
    """A decimal comma in a sheet of points is not quietly taken for thousands."""
    assert number_of(text, decimal) is None


@pytest.mark.parametrize(
    ("text", "footnotes", "expected"),
    [
        ("12*", {"*": "uncharred"}, (12, "uncharred", "", False)),
        ("12*", {"*": "identified from fragments"}, (12, "", "fragment", False)),
        ("3†", {"†": "identification uncertain"}, (3, "", "", True)),
        ("12 (uc)", {"uc": "uncharred"}, (12, "uncharred", "", False)),
        ("12 (cf.)", {}, (12, "", "", True)),
        ("3 uncharred", {}, (3, "uncharred", "", False)),
        ("3 not charred", {}, (3, "uncharred", "", False)),
        ("3 (mineralised)", {}, (3, "mineralised", "", False)),
        ("4 frags", {}, (4, "", "fragment", False)),
    ],
)
def test_a_footnote_says_what_its_key_says(
    text: str, footnotes: dict[str, str], expected: tuple[int, str, str, bool]
) -> None:
    """A footnote sign with a key, and a remark in words, give condition, completeness or doubt."""
    found = read_cell(Cell(text), Marks(footnotes=footnotes)).found[0]

    assert found.count is not None
    assert (found.count.number, found.condition, found.completeness, found.is_doubtful) == expected
    assert found.count.written == text


def test_a_remark_about_some_of_the_items_changes_none_of_them() -> None:
    """'12 (2 uncharred)' leaves all twelve in one state, and the analyst is asked."""
    read = read_cell(Cell("12 (2 uncharred)"), Marks())

    assert [(f.count and f.count.number, f.condition, f.note) for f in read.found] == [(12, "", "2 uncharred")]
    assert [quirk.kind for quirk in read.quirks] == ["of some"]


def test_a_sheet_may_say_that_brackets_are_some_of_the_number() -> None:
    """'12 (2 uncharred)' are ten and two where the layout says 'brackets: of which'."""
    read = read_cell(Cell("12 (2 uncharred)"), Marks(brackets="of which"))

    assert [(f.count and f.count.number, f.condition) for f in read.found] == [(10, ""), (2, "uncharred")]
    assert read.quirks == ()


def test_a_sign_with_a_remark_is_still_read_by_the_key() -> None:
    """'++ (uncharred)' keeps the ends that the key gives to '++'."""
    found = read_cell(Cell("++ (uncharred)"), Marks(key={"++": "6-25"})).found[0]

    assert found.count is not None
    assert (found.count.at_least, found.count.at_most, found.condition) == (6, 25, "uncharred")


LIKE_CELLS = st.text(alphabet="0123456789+xXpP#*?<>~.,/()[]-–cf gmlwest½'%=éü\u00a0", max_size=16)


@given(st.one_of(st.text(max_size=40), LIKE_CELLS), st.sampled_from([".", ","]))
def test_no_text_is_a_fault_and_none_without_a_digit_is_a_count(text: str, decimal: Any) -> None:
    """Reading any cell ends in finds or in a refusal; without a digit and a key nothing is counted."""
    flat = " ".join(text.split())
    read = read_cell(Cell(flat), Marks(decimal=decimal))

    assert read.found or read.refusal is not None or not any(c.isdigit() and c != "0" for c in flat)
    for found in read.found:
        if found.count is not None and found.count.amount != "counted":
            assert found.count.number is None
        if found.count is not None and found.count.amount == "counted":
            assert any(sign.isdigit() for sign in flat)


@given(st.sampled_from(["x", "xx", "+", "++", "+++", "p", "P", "#", "?", "tr", "rare", "✓"]), st.text(max_size=12))
def test_a_sign_stays_presence_whatever_stands_beside_it(sign: str, beside: str) -> None:
    """A sign without a key has no number, with any remark that holds none."""
    remark = "".join(c for c in beside if not c.isnumeric())
    read = read_cell(Cell(f"{sign} {remark}".strip()), Marks())

    assert all(f.count is None or f.count.number is None for f in read.found)
    assert all(f.mass_g is None for f in read.found)


@given(LIKE_CELLS, st.sampled_from(["g", "mg", "kg", ""]))
def test_no_weight_is_a_fault(text: str, unit: str) -> None:
    """A weight is above nothing, or it is refused or kept as presence."""
    read = read_mass(Cell(" ".join(text.split())), Marks(), unit)

    assert all(f.mass_g is None or f.mass_g > 0 for f in read.found)


@pytest.mark.parametrize("text", ["12 (of which 2 uncharred)", "12 (2 of them uncharred)", "12, including 2 uncharred"])
def test_some_of_a_number_are_counted_in_their_own_state(text: str) -> None:
    """Words that say 'of them' part the number: ten stay with the table, two are uncharred, and none is added."""
    read = read_cell(Cell(text), Marks())

    assert [(one.count.number, one.condition) for one in read.found if one.count] == [(10, ""), (2, "uncharred")]


def test_a_half_is_a_piece_where_the_layout_says_so() -> None:
    """Four whole and a piece; without the word of the layout it is presence between its ends."""
    said = read_cell(Cell("4.5"), Marks(halves="fragment"))
    assert [(f.count and f.count.number, f.completeness) for f in said.found] == [(4, ""), (1, "fragment")]
    unsaid = read_cell(Cell("4.5"), Marks()).found[0].count
    assert unsaid is not None
    assert (unsaid.amount, unsaid.at_least, unsaid.at_most) == ("noted as present", 4, 5)


def test_other_parts_of_an_item_stay_presence() -> None:
    """4.2 is no count of halves, whatever the layout says."""
    found = read_cell(Cell("4.2"), Marks(halves="fragment")).found[0].count
    assert found is not None
    assert found.amount == "noted as present"
