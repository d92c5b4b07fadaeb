"""Names that no pack knows: what is offered for them, and what is not. All sheets are invented."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from narrate.model.packs import Packs
from narrate.reading.intake.names_offered import name_offered
from narrate.reading.intake.project_intake import naming_packs
from narrate.reading.intake.take_in import name_reader, take_in


@cache
def packs() -> Packs:
    return naming_packs(("eastern-north-america",))


@pytest.mark.parametrize(
    ("written", "offered"),
    [
        ("Chenopodum berlandieri", "Chenopodium berlandieri"),
        ("Juglans niger shell", "Juglans nigra"),
        ("Maíz", "Zea mays"),
        ("Phalaria sp.", "Phalaris"),
        ("Ficus sp.", ""),
        ("Carum carvi", ""),
    ],
)
def test_a_name_is_offered_where_it_may_be_the_one_misspelt(written: str, offered: str) -> None:
    """Genus and epithet are alike, or the everyday word means one plant; another genus is no misspelling."""
    assert name_offered(written, name_reader(packs())) == offered


def test_an_everyday_word_of_another_language_is_offered_and_not_taken(tmp_path: Path) -> None:
    """Only the analyst says that 'Maíz' is maize."""
    (tmp_path / "lab.csv").write_text("Muestra,Maíz,Zea mays cúpula\nM1,12,3\nM2,4,1\n", encoding="utf-8")
    found = take_in(tmp_path / "lab.csv", packs())

    assert [f"{p.place}: {p.message}" for p in found.problems if p.code == "N401"] == [
        "lab.csv, cell B1: taxon 'Maíz' is in no taxon pack in use; 2 finds are counted as written, and no rule can "
        "speak of it; did you mean 'Zea mays'?"
    ]
    assert [row.identification.taxon for row in found.rows if row.place.cell.startswith("B")] == [None, None]


def test_shares_of_roots_in_the_flot_are_set_aside_once(tmp_path: Path) -> None:
    """'Roots 60%' says how much of the flot they fill; one warning tells of all such cells, and nothing is counted."""
    text = "".join(
        f"Sample,{n}\nTaxon,Count\nZea mays kernel,{n}\nVitis sp. seed,2\nRoots,{n}0%\n\n" for n in (3, 5, 7)
    )
    (tmp_path / "lab.csv").write_text(text, encoding="utf-8")
    found = take_in(tmp_path / "lab.csv", packs())

    assert [p.message for p in found.problems if p.severity == "error" or p.code == "N315"] == [
        "a share of the flot is set aside: it is no plant, and is in no count, expected remains of plants; the same in "
        "A11, A17"
    ]
    assert sum(row.count.number or 0 for row in found.rows) == 3 + 5 + 7 + 6
