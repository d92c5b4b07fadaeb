"""Heads of groups of plants, such as 'Crops': no finds, and no names that nobody knows. All sheets are invented."""

from __future__ import annotations

from pathlib import Path

from narrate.reading.intake.project_intake import naming_packs
from narrate.reading.intake.take_in import take_in

SECTIONED = (
    "Sample 12,,\nTaxon,Part,Count\nCrops,,\nTriticum spelta,grain,1\nHordeum vulgare,grain,3\nWild plants,,\n"
    "Chenopodium album,seed,4\nRumex sp.,seed,1\n",
    "Taxon,Part,S1,S2,S3\nCrops,,0,0,0\nTriticum spelta,grain,1,12,3\nHordeum vulgare,grain,3,25,2\n"
    "Wild plants,,0,0,0\nChenopodium album,seed,4,5,6\nRumex sp.,seed,1,,2\n",
    "Taxon,Part,S1,S2,S3\nCrops,,4,37,5\nTriticum spelta,grain,1,12,3\nHordeum vulgare,grain,3,25,2\n"
    "Wild plants,,5,5,8\nChenopodium album,seed,4,5,6\nRumex sp.,seed,1,,2\n",
)


def test_heads_of_groups_are_neither_finds_nor_names_that_nobody_knows(tmp_path: Path) -> None:
    """Over blanks, over noughts, and over sums of what stands below them."""
    for n, text in enumerate(SECTIONED):
        sheet = tmp_path / f"lab{n}.csv"
        sheet.write_text(text, encoding="utf-8")
        found = take_in(sheet, naming_packs(("temperate-europe",)))

        names = {row.identification.written for row in found.rows}
        assert names == {"Triticum spelta", "Hordeum vulgare", "Chenopodium album", "Rumex sp."}
        assert [p.message for p in found.problems if p.code in ("N313", "N401", "N315")] == []
