"""Groups over pairs of columns, rows of totals under them, and totals of pieces and of taxa. All sheets are invented."""

# ruff: noqa: E501

from __future__ import annotations

from pathlib import Path

import pytest
from openpyxl import Workbook

from narrate.reading.intake.take_in import TakenIn, take_in
from tests.reading.intake.test_blind import packs

_GROUPS = ("Wood charcoal", None, "Nutshell", *[None] * 7, "Maize", *[None] * 3, "Fruits and weeds", None, None)
_NAMES = ("Wood", None, "Hickory", None, "Black walnut", None, "Acorn", None, "Total nutshell", None, "Kernel", None, "Cupule", None,
          "Grape", "Sumac", "Purslane")  # fmt: skip
_SMALL = (*("ct.", "wt. (g)") * 7, "ct.", "ct.", "ct.")
_LINES = (
    (139, 1.5, 3, 0.2, 7, 0.11, None, None, 10, 0.31, 9, 0.1, None, None, 14, None, 4),
    (297, 5.7, None, None, 5, 0.25, 2, 0.04, 7, 0.29, None, None, 4, 0.05, None, 7, 5),
    (239, 3.3, 12, 0.61, None, None, 8, 0.1, 20, 0.71, 3, 0.04, 2, 0.03, 6, None, None),
    (100, 1.1, 4, 0.15, 9, 0.3, None, None, 13, 0.45, None, None, 7, 0.08, None, 13, 2),
    (88, 0.9, None, None, 6, 0.2, 3, 0.05, 9, 0.25, 5, 0.06, None, None, 2, 1, 30),
)


def of_pairs(folder: Path, wrong: int = 0) -> TakenIn:
    book = Workbook()
    sheet = book.active
    sheet.append(("FS No.", "Vol. (L)", *_GROUPS))
    sheet.append((None, None, *_NAMES))
    sheet.append((None, None, *_SMALL))
    for n, line in enumerate(_LINES):
        sheet.append((1180 + 7 * n, 9.5, *line))
    totals = [round(sum(line[c] or 0 for line in _LINES), 2) for c in range(len(_SMALL))]
    totals[2] += wrong
    sheet.append(("TOTAL", None, *totals))
    for first, last, row in [("C", "D", 1), ("E", "L", 1), ("M", "P", 1), ("Q", "S", 1), ("A", "A", 3), ("B", "B", 3)]:
        sheet.merge_cells(f"{first}1:{last}{row}")
    for first, last in ("CD", "EF", "GH", "IJ", "KL", "MN", "OP"):
        sheet.merge_cells(f"{first}2:{last}2")
    book.save(folder / "pairs.xlsx")
    return take_in(folder / "pairs.xlsx", packs())


def test_names_are_read_under_the_groups_over_them(tmp_path: Path) -> None:
    """The row of names is the one with the most names; a subtotal among them is checked and not added."""
    found = of_pairs(tmp_path)

    assert {row.identification.written for row in found.rows} == set(_NAMES) - {None, "Total nutshell"}
    own = [c for c in range(len(_SMALL)) if c not in (8, 9)]
    assert sum(row.count.number or 0 for row in found.rows) == sum(line[c] or 0 for line in _LINES for c in own if _SMALL[c] == "ct.")
    assert round(sum(row.mass_g or 0 for row in found.rows), 2) == round(
        sum(line[c] or 0 for line in _LINES for c in own if _SMALL[c] != "ct."), 2
    )
    assert not [problem for problem in found.problems if problem.code in ("N316", "N317")]


def test_a_wrong_total_under_a_pair_is_told_alone(tmp_path: Path) -> None:
    """Small heads over the plants say nothing of the lines that a row of totals adds up."""
    found = of_pairs(tmp_path, wrong=20)

    assert [problem.place.cell for problem in found.problems if problem.code == "N317"] == ["E9"]


@pytest.mark.parametrize(("stored", "told"), [((9, 5, 4), []), ((9, 6, 4), ["D3"])])
def test_a_total_of_fragments_in_a_list_of_samples_is_of_the_pieces(
    tmp_path: Path, stored: tuple[int, ...], told: list[str]
) -> None:
    """Beside 'Total whole', and of a sheet of pairs of whole ones and pieces."""
    book = Workbook()
    summary, counts = book.active, book.create_sheet("Counts")
    summary.title = "Summary"
    wholes = (20, 21, 13)
    summary.append(("Sample", "Litres", "Total whole", "Total fragments"))
    for n in range(3):
        summary.append((f"FL {n + 1}", 10, wholes[n], stored[n]))
    counts.append(("Sample", "FL 1", None, "FL 2", None, "FL 3", None))
    counts.append(("Taxon", "W", "F", "W", "F", "W", "F"))
    counts.append(("Hordeum vulgare grain", 12, 9, 10, 2, 3, None))
    counts.append(("Panicum miliaceum grain", 8, None, 4, None, 6, 1))
    counts.append(("Chenopodium album seed", None, None, 7, 3, 4, 3))
    counts.append(("W = whole or more than half, F = fragments",))
    book.save(tmp_path / "pieces.xlsx")

    found = take_in(tmp_path / "pieces.xlsx", packs())
    assert [problem.place.cell for problem in found.problems if problem.code == "N317"] == told


@pytest.mark.parametrize(("of_c", "told"), [(3, []), (5, ["C8"])])
def test_a_number_of_taxa_leaves_out_what_nobody_could_name(tmp_path: Path, of_c: int, told: list[str]) -> None:
    """'Feuillu indéterminé' and 'Conifère indéterminé' are no taxa of their own."""
    lines = ["Taxon,US 4,US 7,US 9", "Quercus sp.,21,20,3", "Fagus sylvatica,9,30,", "Acer sp.,4,2,7", "Feuillu indéterminé,3,,6",
             "Conifère indéterminé,,8,2", "Indéterminé,7,3,", f"Nombre de taxons,3,{of_c},2"]  # fmt: skip
    (tmp_path / "table.csv").write_text("\n".join(lines) + "\n", encoding="utf-8")

    found = take_in(tmp_path / "table.csv", packs())
    assert [problem.place.cell for problem in found.problems if problem.code == "N317"] == told
