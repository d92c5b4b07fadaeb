"""Lines, columns and sections among the counts that are no finds of plants. All sheets are invented."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from narrate.model.packs import Packs
from narrate.reading.intake.project_intake import intake_packs
from narrate.reading.intake.take_in import TakenIn, take_in


@cache
def packs() -> Packs:
    return intake_packs(None)


def taken(folder: Path, text: str) -> TakenIn:
    sheet = folder / "lab.csv"
    sheet.write_text(text.strip("\n") + "\n", encoding="utf-8")
    return take_in(sheet, packs())


def finds(found: TakenIn) -> list[tuple[str, str, float | None]]:
    return [(str(r.sample), r.identification.written, r.count.number) for r in found.rows]


def problems(found: TakenIn, code: str) -> list[tuple[str, str]]:
    return [(one.place.cell, one.message) for one in found.problems if one.code == code]


@pytest.mark.parametrize("label", ["Nutshell:wood (g/g)", "Estimated items in whole flot", "Clay sealings, n"])
def test_a_line_below_the_finds_is_no_plant(tmp_path: Path, label: str) -> None:
    """Ratios, counts that are scaled up, and things of clay are in no count."""
    sheet = f"Taxon,S1,S2\nZea mays kernel,3,4\nRubus seed,12,5\n{label},30,18"

    assert finds(taken(tmp_path, sheet)) == [
        ("S1", "Zea mays kernel", 3), ("S2", "Zea mays kernel", 4), ("S1", "Rubus seed", 12), ("S2", "Rubus seed", 5),
    ]  # fmt: skip


@pytest.mark.parametrize("head", ["NOT PLANT", "Non-botanical remains (heavy fraction)", "Nicht pflanzlich"])
def test_what_stands_under_a_head_that_calls_it_no_plant_is_set_aside(tmp_path: Path, head: str) -> None:
    """Whatever its names are; the lines of the next section are plants again."""
    sheet = f"Taxon,S1,S2\nZea mays kernel,3,4\n{head},,\nTiny white things,9,9\nWEEDS,,\nRubus seed,12,5"

    found = taken(tmp_path, sheet)

    assert {name for _, name, _ in finds(found)} == {"Zea mays kernel", "Rubus seed"}
    assert problems(found, "N315") == [("A4", (
        "what stands under a head that calls it no plant is set aside: it is no plant, and is in no count, expected "
        "remains of plants"
    ))]  # fmt: skip


def test_shell_beside_bones_is_of_animals(tmp_path: Path) -> None:
    """'Shell' alone may be of nuts; behind bones and beads it is not."""
    sheet = "Taxon,S1,S2\nZea mays kernel,3,4\nRubus seed,12,5\nBone splinters,7,1\nShell,3,3"

    assert {name for _, name, _ in finds(taken(tmp_path, sheet))} == {"Zea mays kernel", "Rubus seed"}


def test_remarks_whose_head_stands_in_a_row_of_records_are_remarks(tmp_path: Path) -> None:
    """'3 modern removed, not counted' makes no modern seeds of those that were counted."""
    sheet = (
        "Sample,,S1,S2,S3,\nLitres,,10,10,8,\nTaxon,Fraction sorted,1/1,1/2,1/1,Remarks\n"
        "Zea mays kernel,maize,3,4,1,\nRubus seed,bramble,12,5,2,\"3 modern removed, not counted\"\nVitis seed,grape,2,2,6,"
    )

    found = taken(tmp_path, sheet)

    assert {str(r.condition) for r in found.rows} == {"charred"}
    assert [r.note for r in found.rows if r.identification.taxon == "Rubus"] == ["3 modern removed, not counted"] * 3


def test_halves_written_with_a_stroke_are_pieces_where_wholes_stand_before_some(tmp_path: Path) -> None:
    """'6 1/2' tells that '1/2' is half a seed; the stored sums take halves for halves."""
    sheet = "Taxon,S1,S2,Total\nVigna seed,6 1/2,1/2,7\nLens seed,2,1/2,2.5\nRubus seed,12,5,17\nTotal,20.5,6,26.5"

    found = taken(tmp_path, sheet)

    assert [(str(r.sample), r.completeness, r.count.number) for r in found.rows if "Rubus" not in str(r.identification)] == [
        ("S1", "whole", 6), ("S1", "fragment", 1), ("S2", "fragment", 1), ("S1", "whole", 2), ("S2", "fragment", 1),
    ]  # fmt: skip
    assert problems(found, "N317") == []
    assert [cell for cell, _ in problems(found, "N313")] == ["B2"]


def test_what_stands_under_non_seed_material_is_taken_for_no_seed(tmp_path: Path) -> None:
    """A name without a part is a seed under other heads."""
    sheet = "Taxon,S1,S2\nNon-seed material,,\nHairs/fibres,3,4\nWEEDS,,\nRubus sp.,12,5\nVitis sp.,2,1"

    found = taken(tmp_path, sheet)

    assert {(r.identification.written, str(r.part)) for r in found.rows} == {
        ("Hairs/fibres", "indeterminate"), ("Rubus sp.", "seed"), ("Vitis sp.", "seed"),
    }  # fmt: skip


def test_a_raised_letter_behind_a_name_is_a_footnote_and_no_part_of_the_name(tmp_path: Path) -> None:
    """The part and the pieces are read as without it; what the footnote says goes into the note, or it is told."""
    sheet = (
        'Taxon,S1,S2\n"Triticum durum, rachis internodeᵃ",3,4\n"Cerealia indet., grain fragmentsᵇ",12,5\nRubus seed,2,1\n'
        "ᵃ from the lower half of the ear"
    )

    found = taken(tmp_path, sheet)

    assert {(str(r.part), r.completeness) for r in found.rows} == {
        ("rachis internode", "whole"), ("grain", "fragment"), ("seed", "whole"),
    }  # fmt: skip
    assert "A3" in [cell for cell, message in problems(found, "N313") if "footnote sign" in message]
