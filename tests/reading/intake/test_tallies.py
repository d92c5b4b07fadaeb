"""Tally strokes among the counts. Invented sheets; how strokes are typed is common practice, no source."""

# ruff: noqa: E501

from pathlib import Path

import pytest

from narrate.reading.intake.take_in import TakenIn, take_in
from tests.reading.intake.test_blind import packs

NAMES = ("Triticum spelta", "Hordeum vulgare", "Avena sp.", "Galium aparine")


def read(text: str, folder: Path) -> TakenIn:
    path = folder / "tally.csv"
    path.write_text(text, encoding="utf-8")
    return take_in(path, packs())


def form(head: str, *lines: str, total: str = "") -> str:
    rows = [f"{name},{line}" for name, line in zip(NAMES, lines, strict=False)]
    return "\n".join(["Sample,14,Context,32", "Litres,10,,", f"Taxon,{head}", *rows, *([f"Total,{total}"] if total else []), ""])


@pytest.mark.parametrize(
    ("seven", "two"),
    [("IIII/ II", "II"), ("||||/ ||", "||"), ("llll/ ll", "ll"), ("卌 ||", "||"), ("||||| ||", "||"), ("正 ||", "||"), ("//// ///", "//")],
)
def test_strokes_alone_are_counted(seven: str, two: str, tmp_path: Path) -> None:
    """However they are typed, a slash through four being the fifth."""
    found = read(form("Part,Tally", f"grain,{seven}", f"grain,{two}", f"grain,{seven}", f"seed,{two}"), tmp_path)

    assert [row.count.number for row in found.rows] == [7, 2, 7, 2]


@pytest.mark.parametrize("head", ["Tally,N", "Strichliste,Anzahl", "Pointage,Nombre", "Palotes,Cantidad", "Turven,Aantal"])
def test_a_number_beside_strokes_is_taken(head: str, tmp_path: Path) -> None:
    """And not added to them; where it is blank the strokes are counted."""
    found = read(form(f"Part,{head}", "grain,IIII/ II,7", "grain,II,2", "grain,IIII,4", "seed,III,"), tmp_path)

    assert [row.count.number for row in found.rows] == [7, 2, 4, 3]


def test_strokes_that_disagree_with_their_number_are_told(tmp_path: Path) -> None:
    """At the strokes, with both numbers."""
    found = read(form("Part,Tally,N", "grain,IIII/ II,8", "grain,II,2", "grain,IIII,4", "seed,III,3"), tmp_path)

    assert [(p.place.cell, p.message) for p in found.problems if p.code == "N317"] == [
        ("C4", "the tally 'IIII/ II' has 7 strokes, and D4 says 8, expected them to agree")
    ]


def test_a_table_tallied_across_its_samples_is_read(tmp_path: Path) -> None:
    """Strokes are amounts wherever they stand in a sheet that is tallied in."""
    found = read(
        "Taxon,S1,S2,S3\nTriticum spelta,IIII/ I,II,\nHordeum vulgare,III,IIII/ IIII/,I\nGalium aparine,,I,IIII\n", tmp_path
    )

    assert {(str(r.sample), r.identification.written): r.count.number for r in found.rows if r.count.number} == {
        ("S1", "Triticum spelta"): 6, ("S2", "Triticum spelta"): 2, ("S1", "Hordeum vulgare"): 3, ("S2", "Hordeum vulgare"): 10,
        ("S3", "Hordeum vulgare"): 1, ("S2", "Galium aparine"): 1, ("S3", "Galium aparine"): 4,
    }  # fmt: skip


def test_roman_numbers_of_phases_are_no_strokes(tmp_path: Path) -> None:
    """'I', 'II' and 'III' in a sheet that is not tallied in stay what they are."""
    found = read("Sample,Phase,Litres,Hordeum vulgare,Avena sp.\n1,I,10,4,2\n2,II,8,3,1\n3,III,12,6,5\n", tmp_path)

    assert {id: said["phase"][0].text for id, said in found.facts.items()} == {"1": "I", "2": "II", "3": "III"}


def test_state_over_letters_of_conditions_is_a_condition(tmp_path: Path) -> None:
    """'State' may be a part of a country; over 'ch' and 'un' it is not."""
    found = read(form("Part,State,N", "grain,ch,7", "grain,ch,2", "grain,ch,4", "seed,un,3") + ",,,\n\"ch = charred, un = uncharred\",,,\n", tmp_path)

    assert [str(row.condition) for row in found.rows] == ["charred", "charred", "charred", "uncharred"]


def test_totals_of_forms_are_read_by_what_most_of_them_do(tmp_path: Path) -> None:
    """Signs add nothing to the total of any form, so the one that is wrong is told, and no other."""
    forms = [
        f"Sample,{n},Context,{n + 30},\nTaxon,Part,N,Notes,\nTriticum spelta,grain,{n + 4},,\nHordeum vulgare,grain,3,,\n"
        f"Charcoal,,++,,\nTotal,,{n + 7 + (n == 3)},,\n,,,,\n"
        for n in range(1, 6)
    ]

    assert [p.place.cell for p in read("".join(forms), tmp_path).problems if p.code == "N317"] == ["C20"]


@pytest.mark.parametrize(
    "heads", ["Taxon,Part,S1 tally,S1 N,S2 tally,S2 N", "Sample,,S1,S1,S2,S2\nTaxon,Part,Tally,N,Tally,N"]
)
def test_strokes_beside_the_number_of_each_sample_are_not_added_to_it(heads: str, tmp_path: Path) -> None:
    """Pairs of columns, strokes and number; a blank number is the strokes, and the totals know it."""
    found = read(
        f"{heads}\nHordeum vulgare,grain,IIII/ I,6,II,2\nAvena sp.,grain,III,3,IIII/,\nGalium aparine,seed,I,1,,\nTotal,,,10,,7\n",
        tmp_path,
    )

    assert {(str(r.sample), r.identification.written): r.count.number for r in found.rows} == {
        ("S1", "Hordeum vulgare"): 6, ("S2", "Hordeum vulgare"): 2, ("S1", "Avena sp."): 3, ("S2", "Avena sp."): 5, ("S1", "Galium aparine"): 1,
    }  # fmt: skip
    assert [p.place.cell for p in found.problems if p.code == "N317"] == []


def test_a_german_part_behind_a_latin_name_is_no_author(tmp_path: Path) -> None:
    """'Triticum spelta Spelzbasis' names a part."""
    found = read("Taxon,S1,S2\nHordeum vulgare Korn,4,2\nTriticum spelta Spelzbasis,3,5\nChenopodium album Same,1,6\n", tmp_path)

    assert [str(row.part) for row in found.rows] == ["grain", "grain", "glume base", "glume base", "seed", "seed"]
