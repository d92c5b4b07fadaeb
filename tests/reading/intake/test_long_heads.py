"""Long tables whose heads are a database's own: columns are known by what stands in them."""

from __future__ import annotations

from pathlib import Path

from narrate.reading.intake.take_in import take_in
from narrate.reading.packs import read_packs

SHEET = """Lab_ID;Unit;Species_ID;Element;Cond;N;Wt_g;Remarks
LF-01;F3;Zea mays;cupule;carb;22;0,15;
LF-01;F3;cf Phaseolus;cotyledon;carb;1;0,03;small
LF-02;F3;Quercus;acorn shell;carb;12;0,08;
LF-02;F3;Chenopodium sp.;seed;mod;40;;modern
LF-03;F8;Carya;nutshell;carb;31;1,2;
"""
"""Invented, in the manner of an export from a database."""


def test_a_column_of_plant_names_is_known_by_its_cells(tmp_path: Path) -> None:
    """'Species_ID' reads like a code and holds names: it is the taxon column."""
    sheet = tmp_path / "export.txt"
    sheet.write_text(SHEET, encoding="utf-8")
    packs, _ = read_packs(("eastern-north-america",))
    taken = take_in(sheet, packs)

    assert taken.layout is not None
    assert [role.name for role in taken.layout.tables[0].columns.values()][:4] == ["sample", "context", "taxon", "part"]
