"""Densities and weights in a table that does not say so. All sheets are invented."""

from __future__ import annotations

from pathlib import Path

from tests.reading.intake.test_silent_faults import finds, problems, taken

DENSITIES = """
taxa,H1,H2,H3,H4
Amaranthus,0,0.125,2,0.364
Chenopodium,0.0625,0.625,0.297,2.364
Rumex,0.125,2.5,4.208,14.909
Zea mays,0,1.75,1,0.385
"""
DOUBT = (
    "DOUBTFUL: of the 14 numbers of rows 1 to 5 that are not 0, 11 are no whole ones and no halves: densities "
    "(items or grams a litre), weights or shares, in all likelihood, and no counts. All are kept as presence; write "
    "'mass, g' in place of counts in the layout if they are weights, or give the counts that they are of"
)


def test_no_number_among_densities_is_a_count(tmp_path: Path) -> None:
    """Whole ones among them are presence like the others, and the table is told."""
    found = taken(tmp_path, DENSITIES)

    assert {r.count.amount for r in found.rows} == {"noted as present", "looked for and absent"}
    assert [doubt for doubt in found.doubts if "densities" in doubt] == [DOUBT]


def test_the_help_speaks_of_densities_and_of_halves_where_one_stands(tmp_path: Path) -> None:
    """0.125 of a seed is no half of one."""
    helps = [one.help for one in taken(tmp_path, DENSITIES).problems if "no whole number" in one.message]
    of_half = [one.help for one in taken(tmp_path, "Taxon,S1,S2\nRumex,4.5,2\nZea mays,3.25,1").problems]

    plain = (
        "say 'mass' for the row or column if it was weighed, or 'density' or 'percent' if these are densities (items "
        "or grams a litre) or shares, and give the counts that they are of; or say under 'mend' what was counted"
    )
    assert helps == [plain]
    assert f"write 'halves: fragment' under cells in the layout if a half is a piece; {plain}" in of_half


def test_weights_beside_counts_make_no_densities_of_them(tmp_path: Path) -> None:
    """Lines whose words say grams are not asked."""
    lines = [f"Wood {n} (g),0.{n}2,0.{n}3,1.{n}4" for n in "1234"]
    found = taken(tmp_path, "\n".join(["Taxon,S1,S2,S3", "Rumex,4,2,1", "Zea mays kernel,3,2,9", *lines]))

    assert [doubt for doubt in found.doubts if "densities" in doubt] == []
    assert [n for _, taxon, _, n in finds(found) if taxon == "Rumex"] == [4, 2, 1]
    assert problems(found, "N313") == []
