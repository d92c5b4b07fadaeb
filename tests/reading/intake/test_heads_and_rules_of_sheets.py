"""
Heads of groups, estimates, brackets and rules that ordinary sheets write in words, read as a person reads them.

All sheets are invented; what is expected is written beside each, before it was tried.
"""

# ruff: noqa: E501

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from narrate.model.packs import Packs
from narrate.reading.intake.project_intake import naming_packs
from narrate.reading.intake.take_in import TakenIn, take_in


@cache
def packs() -> Packs:
    return naming_packs(("temperate-europe",))


def taken(folder: Path, text: str) -> TakenIn:
    (folder / "lab.csv").write_text(text.strip() + "\n", encoding="utf-8")
    return take_in(folder / "lab.csv", packs())


def wrong_totals(found: TakenIn) -> list[str]:
    return [problem.place.cell for problem in found.problems if problem.code == "N317"]


GROUPS = """
Taxon,Part,S1,S2,S3
{0},,,,
Triticum spelta,grain,4,5,2
Hordeum vulgare,grain,1,3,6
Total {0},,5,8,8
{1},,,,
Chenopodium album,seed,3,1,2
Rumex sp.,seed,2,2,4
Total {1},,5,3,6
"""


@pytest.mark.parametrize(
    ("first", "second"),
    [
        ("Cereal grain", "Other edible plants"), ("Crops", "Fruit seeds"), ("Céréales", "Plantes sauvages"),
        ("Getreide", "Sonstige Wildpflanzen"), ("Cereales", "Plantas silvestres"), ("Cereali", "Piante spontanee"),
        ("Granen", "Overige wilde planten"), ("Zboża", "Rośliny dzikie"), ("Cultigens", "Ruderal communities"),
    ],
)  # fmt: skip
def test_a_head_of_a_group_is_no_species_in_any_language(tmp_path: Path, first: str, second: str) -> None:
    """Two words of which the second is written small look like a species; the totals of both groups hold."""
    found = taken(tmp_path, GROUPS.format(first, second))

    assert found.layout is not None
    assert [found.layout.tables[0].rows[row].name for row in (1, 5)] == ["section", "section"]
    assert wrong_totals(found) == []


def test_a_group_whose_total_is_wrong_is_told_at_that_cell_alone(tmp_path: Path) -> None:
    """The 6 of the last line made 9."""
    sheet = GROUPS.format("Céréales", "Plantes sauvages").replace("5,3,6", "5,3,9")

    assert wrong_totals(taken(tmp_path, sheet)) == ["E9"]


def test_a_species_without_finds_stays_a_species(tmp_path: Path) -> None:
    """A line of a known plant that is blank in all samples is no head of those below it."""
    sheet = GROUPS.format("Cereals", "Weeds").replace("Rumex sp.,seed,2,2,4", "Agrostemma githago,seed,,,\nRumex sp.,seed,2,2,4")
    found = taken(tmp_path, sheet)

    assert found.layout is not None
    assert found.layout.tables[0].rows[7].name == "counts"
    assert wrong_totals(found) == []


@pytest.mark.parametrize(
    "written",
    [
        "env. 450", "environ 450", "ca 450", "ca. 450", "circa 450", "cca. 450", "~450", "± 450", "+/- 450", "about 450",
        "ungefähr 450", "ungef. 450", "etwa 450", "aprox. 450", "unos 450", "alrededor de 450", "cerca de 450",
        "all'incirca 450", "ong. 450", "ongeveer 450", "ok. 450", "około 450", "450 env.", "450 (ca.)", "450 (est.)",
        "450 (geschätzt)", "450 (estimés)", "450±",
    ],
)  # fmt: skip
def test_an_estimate_is_its_number_with_a_note_in_any_language(tmp_path: Path, written: str) -> None:
    """450, kept as written, with the note that it is estimated; and that is told."""
    found = taken(tmp_path, f"Taxon,Part,S1,S2\nPanicum miliaceum,grain,{written},3\nRumex sp.,seed,2,1\nAvena sp.,grain,4,1")
    first = next(row for row in found.rows if str(row.sample) == "S1")

    assert (first.count.number, first.count.written) == (450, written)
    assert first.note == f"estimated: {written}"
    assert [p.message for p in found.problems] == [f"'{written}' is an estimate, taken as 450 with a note, expected a count"]
