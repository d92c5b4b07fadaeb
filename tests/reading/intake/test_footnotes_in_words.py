"""Footnotes that say in words what no field holds, kept with the cells that carry their sign. All are invented."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from narrate.model.packs import Packs
from narrate.reading.intake.project_intake import naming_packs
from narrate.reading.intake.take_in import TakenIn, take_in

_TABLE = "Taxon,Part,S1,S2\nTriticum spelta,grain,{a},12\nHordeum vulgare,grain,3,{b}\nAvena,grain,7,8\n,,,\n"


@cache
def packs() -> Packs:
    return naming_packs(("temperate-europe",))


def taken(folder: Path, text: str) -> TakenIn:
    path = folder / "lab.csv"
    path.write_text(text, encoding="utf-8")
    return take_in(path, packs())


def told(found: TakenIn) -> dict[str, str]:
    return {str(p.place.cell): p.message for p in found.problems if p.code == "N313"}


NOTES = (
    ("12a", "a = from the fine sieve"), ("12a", "a: from the fine sieve"), ("12 a", "(a) from the fine sieve"),
    ("12ᵃ", "ᵃ from the fine sieve"), ("12(a)", "a = from the fine sieve"), ("12*", "* from the fine sieve"),
    ("12a", "Notes: a = from the fine sieve; b = counted by another hand"), ("12a", "a,from the fine sieve"),
)  # fmt: skip


@pytest.mark.parametrize(("cell", "note"), NOTES)
def test_a_footnote_is_kept_with_the_cell_and_shown(tmp_path: Path, cell: str, note: str) -> None:
    """The number stays, the words of the footnote stand in the note of the find, and the cell is pointed at."""
    found = taken(tmp_path, _TABLE.format(a=cell, b="5") + f"{note}\n")

    sign = "*" if "*" in cell else "a"
    assert (found.rows[0].count.number, found.rows[0].note) == (12, f"{sign}: from the fine sieve")
    assert set(told(found)) == {"C2"}
    assert f"carries the footnote '{sign}', which says 'from the fine sieve'" in told(found)["C2"]
    assert [row.note for row in found.rows[1:]] == [""] * 5


def test_a_footnote_of_fragments_says_that_they_are_fragments(tmp_path: Path) -> None:
    """What a field of a find holds goes there, and there is nothing to tell."""
    found = taken(tmp_path, _TABLE.format(a="12a", b="5b") + "a = fragments only; b = uncharred\n")

    rows = {row.count.written: (row.completeness, row.condition) for row in found.rows}
    assert rows["12a"] == ("fragment", "charred")
    assert rows["5b"] == ("whole", "uncharred")
    assert told(found) == {}


def test_letters_that_stand_beside_no_amount_are_no_footnotes(tmp_path: Path) -> None:
    """'a = …' under a table without such a letter, and names that end in one."""
    table = _TABLE.format(a="12", b="5").replace("Avena", "Indet. type a")
    found = taken(tmp_path, table + "a = from the fine sieve\n")

    assert [row.note for row in found.rows if "fine sieve" in row.note] == []
    assert {row.identification.written for row in found.rows} == {"Triticum spelta", "Hordeum vulgare", "Indet. type a"}


def test_a_letter_that_nobody_explains_is_told_as_before(tmp_path: Path) -> None:
    """The number is read, and the letter stands in the note."""
    found = taken(tmp_path, _TABLE.format(a="12a", b="5"))

    assert (found.rows[0].count.number, found.rows[0].note) == (12, "a")
    assert told(found)["C2"].startswith("'12a' carries the remark 'a'")
