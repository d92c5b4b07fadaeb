"""Cells of the count column: numbers, marks, classes; nothing guessed."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from narrate.model.counts import Count
from narrate.reading.count_cells import Refusal, read_count

MEANT = [
    ("12", "counted", 12, None, None),
    (" 7 ", "counted", 7, None, None),
    ("0", "looked for and absent", None, None, None),
    ("-", "looked for and absent", None, None, None),
    ("x", "noted as present", None, None, None),
    ("X", "noted as present", None, None, None),
    ("+", "noted as present", None, None, None),
    ("p", "noted as present", None, None, None),
    ("present", "noted as present", None, None, None),
    ("++", "noted as present", None, None, None),
    ("+++", "noted as present", None, None, None),
    (">100", "noted as present", None, 101, None),
    (">= 100", "noted as present", None, 100, None),
    ("100+", "noted as present", None, 100, None),
    ("<10", "noted as present", None, None, 9),
    ("10-50", "noted as present", None, 10, 50),
    ("not looked for", "not looked for", None, None, None),
]


@pytest.mark.parametrize(("written", "amount", "number", "at_least", "at_most"), MEANT, ids=[m[0] for m in MEANT])
def test_cells_mean_what_they_say(
    written: str, amount: str, number: int | None, at_least: int | None, at_most: int | None
) -> None:
    """Presence is never a number, and a class has only the ends that its sign gives it."""
    found = read_count(written)

    assert isinstance(found, Count)
    assert (found.written, found.amount, found.number) == (written.strip(), amount, number)
    assert (found.at_least, found.at_most) == (at_least, at_most)


REFUSED = [
    (
        "12.5",
        "count whole items; pieces go in rows of their own with 'fragment' under completeness, weights under mass_g",
    ),
    ("12.0", "write 12"),
    ("1,200", "write 1200"),
    ("c. 200", "write 200 if it was counted, x if it was noted, and the rest in the note"),
    ("~200", "write 200 if it was counted, x if it was noted, and the rest in the note"),
    ("5?", "write 5 if it was counted, and the doubt in the note"),
    ("-3", "a count cannot be below 0"),
    ("0.3 g", "write the number of items, x if it was only noted, 0 if it was looked for and not found"),
    ("4 frags", "write 4 alone; words belong in the note"),
    ("=A1+B1", "write the number itself; a formula is not read"),
    ("2-May", "a spreadsheet has made a date of it; write what was typed, such as 2-5"),
    ("many", "write the number of items, x if it was only noted, 0 if it was looked for and not found"),
    ("<1", "write the number of items, x if it was only noted, 0 if it was looked for and not found"),
    ("50-10", "write the number of items, x if it was only noted, 0 if it was looked for and not found"),
    ("٣", "write the number of items, x if it was only noted, 0 if it was looked for and not found"),
    ("9" * 5000, "the number is too large to be a count; write how many items there were"),
]


@pytest.mark.parametrize(("written", "help"), REFUSED, ids=[r[0][:9] for r in REFUSED])
def test_other_cells_are_refused_with_a_way_to_mend_them(written: str, help: str) -> None:
    """Estimates, decimals, dates and words are never turned into a number."""
    assert read_count(written) == Refusal(help=help)


@given(written=st.text(max_size=12) | st.from_regex(r"[<>=+xp0-9 .,~c-]{1,8}"))
def test_a_number_is_only_read_from_digits_alone(written: str) -> None:
    """Whatever is written, a number comes out only if the cell holds that number and nothing else."""
    found = read_count(written)

    assert not isinstance(found, Count) or found.number is None or str(found.number) == written.strip().lstrip("0")
