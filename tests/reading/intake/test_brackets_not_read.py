"""Brackets behind a name of which nothing is read are told: they may hold the state or the part of what was counted."""

from __future__ import annotations

from pathlib import Path

import pytest

from narrate.reading.intake.brackets_not_read import brackets_not_read
from narrate.reading.intake.project_intake import naming_packs
from narrate.reading.intake.take_in import name_reader, take_in

PACKS = naming_packs(("eastern-north-america",))
NAMES = name_reader(PACKS)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("Chenopodium sp. (zq)", ("zq",)),  # invented code
        ("Galium aparine [sx]", ("sx",)),  # invented code
        ("Triticum aestivum (grain)", ()),
        ("Hordeum vulgare (hulled)", ()),
        ("Stellaria media (L.) Vill.", ()),
        ("Roggen (Secale cereale)", ()),
        ("Chenopodium berlandieri (charred)", ()),
        ("Carex sp. (2 mm)", ()),
        ("Poaceae (cf.)", ()),
        ("Vicia sp. (incl. Lathyrus)", ()),
        ("Nobody knows this (zq)", ()),  # told as a whole, N401
    ],
)
def test_only_what_nobody_reads_is_told(text: str, told: tuple[str, ...]):
    """Parts, sorts, states, authors, sizes and qualifiers are read; invented names otherwise."""
    assert brackets_not_read(text, NAMES.read(text), NAMES) == told


def test_it_is_told_once_a_word_and_at_its_cells(tmp_path: Path):
    """An invented sheet: the same letters behind two names are one warning, with both cells."""
    path = tmp_path / "sheet.csv"
    path.write_text(
        "Sample,M1,M2\nLitres,10,12\nTriticum aestivum grain,4,5\nChenopodium sp. (zq),3,\nGalium aparine (zq),3,2\n"
    )
    said = [p for p in take_in(path, PACKS).problems if p.code == "N313"]

    assert len(said) == 1
    assert "'zq' in 'Chenopodium sp. (zq)' is not understood" in said[0].message
    assert said[0].place.cell == "A4" and "A5" in said[0].message
