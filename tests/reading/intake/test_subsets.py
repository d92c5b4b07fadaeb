"""Numbers that are in other numbers already, 'of which fragments' and least numbers: never added. All invented."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from narrate.model.packs import Packs
from narrate.reading.intake.project_intake import naming_packs
from narrate.reading.intake.take_in import TakenIn, take_in


@cache
def packs() -> Packs:
    return naming_packs(("eastern-north-america",))


def taken(folder: Path, text: str) -> TakenIn:
    path = folder / "lab.csv"
    path.write_text(text, encoding="utf-8")
    return take_in(path, packs())


def counted(found: TakenIn) -> list[int | None]:
    return [row.count.number for row in found.rows]


SHEETS = {
    "list": "Sample,Context,Taxon,Part,Count,{h}\nS1,C1,Zea mays,kernel,10,4\nS2,C2,Zea mays,cupule,22,9\n"
    "S2,C2,Iva annua,achene,3,0\n",
    "pairs": "Taxon,S1,,S2,\n,Count,{h},Count,{h}\nZea mays kernel,10,4,22,9\nIva annua achene,3,1,7,2\n",
    "form": "Sample 12,,\nTaxon,Count,{h}\nZea mays kernel,10,4\nZea mays cupule,22,9\nIva annua achene,3,1\n",
}
COUNTS = {"list": [10, 22, 3], "pairs": [10, 22, 3, 7], "form": [10, 22, 3]}
SUBSETS = (
    "of which fragments", "davon Fragmente", "dont fragments", "di cui frammenti", "de los cuales fragmentos",
    "waarvan fragmenten", "thereof charred", "incl. fragments",
)  # fmt: skip


@pytest.mark.parametrize("head", SUBSETS)
@pytest.mark.parametrize("shape", SHEETS)
def test_a_subset_of_the_counts_is_not_added_to_them(tmp_path: Path, shape: str, head: str) -> None:
    """In a list it is kept in the notes of the finds; in each shape it is told."""
    found = taken(tmp_path, SHEETS[shape].format(h=head))

    assert counted(found) == COUNTS[shape]
    assert [one for one in found.doubts if f"('{head}')" in one and "are not added" in one] != []
    assert [p for p in found.problems if p.code == "N316"] == []
    assert (shape == "pairs") == all(f"{head}: 4" not in row.note for row in found.rows)


@pytest.mark.parametrize("head", ["MNI", "NMI", "M.N.I."])
@pytest.mark.parametrize("shape", SHEETS)
def test_least_numbers_beside_counts_are_results(tmp_path: Path, shape: str, head: str) -> None:
    """They were worked out, and are listed among what is left out."""
    found = taken(tmp_path, SHEETS[shape].format(h=head))

    assert counted(found) == COUNTS[shape]
    assert [line for line in found.left_out if "worked out (derived)" in line and f"'{head}'" in line] != []


def test_least_numbers_alone_are_the_counts_and_that_is_told(tmp_path: Path) -> None:
    """A list that gives no others is read, and says what it counts."""
    lines = "S1,Zea mays,kernel,4\nS2,Zea mays,cupule,9\nS2,Iva annua,achene,2\n"
    found = taken(tmp_path, f"Sample,Taxon,Part,MNI\n{lines}")

    assert counted(found) == [4, 9, 2]
    assert (
        "'MNI' gives least numbers, which are worked out and not counted; they are taken for counts, because the table "
        "gives no others"
    ) in found.doubts


def test_fragments_beside_counts_are_finds_of_their_own(tmp_path: Path) -> None:
    """Without 'of which' they stand beside the whole ones."""
    found = taken(tmp_path, SHEETS["list"].format(h="Fragments"))

    pieces = [(row.count.number, row.completeness) for row in found.rows if row.count.number]
    assert pieces == [(10, "whole"), (4, "fragment"), (22, "whole"), (9, "fragment"), (3, "whole")]


WHOLE = (
    "kernel whole", '"kernels, whole"', "whole kernel", "Korn ganz", "grano entero", "grain entier", "kernel intact",
)  # fmt: skip


@pytest.mark.parametrize("part", WHOLE)
def test_a_word_for_whole_things_beside_a_part_leaves_the_part_known(tmp_path: Path, part: str) -> None:
    """Before or behind it, with or without a comma."""
    lines = f"S1,Zea mays,{part},4\nS2,Zea mays,cupule,9\nS2,Iva annua,achene,2\n"
    found = taken(tmp_path, f"Sample,Taxon,Part,Count\n{lines}")

    assert (found.rows[0].part, found.rows[0].completeness) == ("kernel", "whole")
    assert [p for p in found.problems if p.code == "N402"] == []


CELLS = (
    "12 davon 3 Frag.", "12 (davon 3 Fragmente)", "12, dont 3 fragments", "12 (incl. 3 frags)", "12 di cui 3 frammenti",
    "12 of which 3 broken",
)  # fmt: skip


@pytest.mark.parametrize("cell", CELLS)
def test_a_subset_in_a_cell_parts_its_number(tmp_path: Path, cell: str) -> None:
    """Nine whole ones and three fragments, and what was written stands in the notes."""
    found = taken(tmp_path, f'Taxon,S1,S2\nZea mays kernel,"{cell}",5\nIva annua achene,2,3\n')

    of_first = [row for row in found.rows if row.part == "kernel" and row.sample == "S1"]
    assert [(row.count.number, row.completeness) for row in of_first] == [(9, "whole"), (3, "fragment")]
    assert found.rows[0].note == f"written {cell}"


@pytest.mark.parametrize("head", ["Count incl. fragments", "Anzahl (mit Fragmenten)", "N including fragments"])
def test_fragments_that_a_head_puts_into_its_counts_are_not_added(tmp_path: Path, head: str) -> None:
    """'Fragments' beside such a column are a subset, though nothing says 'of which'."""
    heads = f"Sample,Context,Taxon,Part,{head},Fragments"
    lines = "S1,C1,Zea mays,kernel,10,4\nS2,C2,Zea mays,cupule,22,9\nS2,C2,Iva annua,achene,3,1\n"
    found = taken(tmp_path, f"{heads}\n{lines}")

    assert counted(found) == [10, 22, 3]
    assert [row.note for row in found.rows] == ["Fragments: 4", "Fragments: 9", "Fragments: 1"]
    assert [one for one in found.doubts if "('Fragments')" in one and "are not added" in one] != []
