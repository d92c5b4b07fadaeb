"""Lines that repeat the head of a section, and finds that are called totals. All sheets are invented."""

from __future__ import annotations

from pathlib import Path

from tests.reading.intake.test_silent_faults import finds, problems, taken

SHEET = """
Taxon,S1,S2,S3,S4
Crops,,,,
Triticum dicoccum,4,12,7,3
Hordeum vulgare,2,5,9,1
Nuts/fruits,,,,
Corylus avellana,3,0,2,6
Sambucus nigra,1,8,4,0
Rubus fruticosus,0,2,5,1
Rushes/sedges,,,,
Carex,2,0,3,1
Eleocharis palustris,1,4,0,2
small vetches total,3,1,4,2
Poaceae,5,2,0,3
All items,{all},34,34,19
With indeterminate,,,,
nuts/fruits,4,10,11,{fruits}
rushes/sedges,3,4,3,3
"""


def sheet(all_items: int = 21, fruits: int = 7) -> str:
    return SHEET.format(all=all_items, fruits=fruits).replace("All items", "Total number of items")


def test_lines_at_the_foot_that_repeat_heads_are_sums(tmp_path: Path) -> None:
    """They are no finds, and agree with their sections, behind which others may stand that have no head."""
    found = taken(tmp_path, sheet())

    assert {r.identification.written for r in found.rows} & {"nuts/fruits", "rushes/sedges"} == set()
    assert problems(found, "N317") == []
    assert "'nuts/fruits' repeats the head of a section and is its sum: taken for a stored total" in found.doubts


def test_a_sum_of_a_section_that_does_not_agree_is_told(tmp_path: Path) -> None:
    """It is held against its own section."""
    told = "the stored nuts/fruits is 8, and the counts in E6 to E8 give 7, expected them to agree"

    assert problems(taken(tmp_path, sheet(fruits=8)), "N317") == [("E16", told)]


def test_a_total_without_members_is_a_find(tmp_path: Path) -> None:
    """The grand total agrees only where it is added, and that is told."""
    found = taken(tmp_path, sheet())

    vetches = [r for r in found.rows if r.identification.written == "small vetches total"]
    assert [(str(r.sample), r.count.number) for r in vetches] == [("S1", 3), ("S2", 1), ("S3", 4), ("S4", 2)]
    told = (
        "'small vetches total' is the sum of no other lines, and 'Total number of items' agrees with the counts only "
        "where it is added: read as a find; write total for it in the layout if it is none"
    )
    assert told in found.doubts


def test_one_wrong_grand_total_is_told_all_the_same(tmp_path: Path) -> None:
    """What most columns say of the line holds for the others."""
    told = (
        "the stored Total number of items is 22, and the counts in B3 to B4, B6 to B8 and B10 to B13 give 21, "
        "expected them to agree"
    )

    assert [text for _, text in problems(taken(tmp_path, sheet(all_items=22)), "N317")] == [told]


def test_a_subtotal_that_a_grand_total_adds_once_more_is_no_find(tmp_path: Path) -> None:
    """It is the sum of lines of the sheet, whatever the grand total adds up."""
    rows = "Taxon,S1,S2,S3\nHordeum vulgare,4,5,6\nAvena sativa,2,1,7\nTotal crops,6,6,13\nRumex,3,2,1\nTotal,15,14,27"
    found = taken(tmp_path, rows)

    assert sorted({taxon for _, taxon, _, _ in finds(found)}) == ["Avena sativa", "Hordeum vulgare", "Rumex"]


def test_a_find_under_the_head_of_its_own_name_stays_one(tmp_path: Path) -> None:
    """'Poaceae' under 'Poaceae' is what nobody could name further."""
    rows = "Taxon,S1,S2,S3\nPoaceae,,,\nPoa annua,4,5,6\nLolium,2,1,7\nPoaceae,3,1,2\nRumex,3,2,1\nTotal,12,9,16"
    found = taken(tmp_path, rows)

    assert [(s, n) for s, taxon, _, n in finds(found) if taxon == "Poaceae"] == [("S1", 3), ("S2", 1), ("S3", 2)]
