"""Light and heavy fractions by their words and codes, and least numbers beside wholes and fragments. Invented."""

# ruff: noqa: E501

from __future__ import annotations

from pathlib import Path

import pytest

from narrate.reading.intake.take_in import TakenIn, take_in
from tests.reading.intake.test_blind import packs


def taken(folder: Path, text: str) -> TakenIn:
    (folder / "lab.csv").write_text(text, encoding="utf-8")
    return take_in(folder / "lab.csv", packs())


LIST = "{head},Taxon,N\nP1,{light},Triticum dicoccum,3\nP1,{heavy},Triticum dicoccum,2\nP1,{light},Lens culinaris,4\nP2,{heavy},Lens culinaris,1\n"


@pytest.mark.parametrize(
    ("head", "light", "heavy", "key"),
    [
        ("Muestra,Fracción", "FL", "FP", ""),
        ("Muestra,Fr.", "FL", "FP", "FL = fracción ligera; FP = fracción pesada"),
        ("Probe,Fraktion LF/SF", "LF", "SF", ""),
        ("Probe,Fraktion", "leicht", "schwer", ""),
        ("Campione,Frazione", "leggera", "pesante", ""),
        ("Échantillon,Fraction", "FL", "R", "FL = fraction légère; R = fraction lourde"),
        ("Prøve,LF/HF", "LF", "HF", ""),
        ("Próbka,Frakcja", "frakcja lekka", "frakcja ciężka", ""),
        ("Monster,Fractie", "LF", "ZF", ""),
        ("Örnek,Fraksiyon", "HF", "AF", ""),
    ],
)
def test_rows_of_two_fractions_stay_apart(tmp_path: Path, head: str, light: str, heavy: str, key: str) -> None:
    """By words, by codes that the sheet explains, and by usual codes under a head that says fraction."""
    found = taken(tmp_path, LIST.format(head=head, light=light, heavy=heavy) + (f",,,\n{key},,,\n" if key else ""))

    assert [(str(row.sample), row.fraction, row.count.number) for row in found.rows] == [
        ("P1", "light", 3), ("P1", "heavy", 2), ("P1", "light", 4), ("P2", "heavy", 1),
    ]  # fmt: skip
    assert [p.message for p in found.problems if p.code == "N316"] == []


def test_what_codes_of_fractions_mean_stands_in_the_layout(tmp_path: Path) -> None:
    """The layout is obeyed without the words of the sheet, and can be mended."""
    found = taken(tmp_path, LIST.format(head="Muestra,Fracción", light="FL", heavy="FP"))
    assert "B: fraction, FL is light, FP is heavy" in found.text.replace('"', "")

    (tmp_path / "lab.csv.layout.yaml").write_text(found.text.replace("FP is heavy", "FP is light"), encoding="utf-8")
    again = take_in(tmp_path / "lab.csv", packs())
    assert again.is_given
    assert {row.fraction for row in again.rows} == {"light"}


def test_a_row_of_fractions_over_counts_is_one(tmp_path: Path) -> None:
    """Below the ids of the samples, in the usual codes of its language."""
    found = taken(tmp_path, "Probe,P1,P1,P2,P2\nFraktion,LF,SF,LF,SF\nTriticum dicoccum,3,1,4,2\nLens culinaris,5,2,,9\n")

    assert [(str(row.sample), row.fraction, row.count.number) for row in found.rows if row.count.number][:4] == [
        ("P1", "light", 3), ("P1", "heavy", 1), ("P2", "light", 4), ("P2", "heavy", 2),
    ]  # fmt: skip


@pytest.mark.parametrize("codes", [("1/4", "1/2"), ("2 mm", "1 mm")])
def test_shares_and_sieves_under_the_same_head_are_no_fractions(tmp_path: Path, codes: tuple[str, str]) -> None:
    """'Fracción' may head what was sorted, or the mesh."""
    found = taken(tmp_path, LIST.format(head="Muestra,Fracción", light=codes[0], heavy=codes[1]))

    assert {row.fraction for row in found.rows} == {"light"}
    assert {row.size_class for row in found.rows} == (set(codes) if "mm" in codes[0] else {""})


@pytest.mark.parametrize(
    "heads",
    ["Enteros,Fragm.", "Entiers,Fragments", "Ganze,Bruchstücke", "Interi,Frammenti", "Całe,Fragmenty", "Hele,Fragmenter",
     "Целые,Фрагменты", "Ολόκληρα,Θραύσματα", "Completas,Trozos", "Whole,Broken"],
)  # fmt: skip
def test_least_numbers_beside_wholes_and_fragments_are_worked_out(tmp_path: Path, heads: str) -> None:
    """They are not added to what was counted."""
    found = taken(
        tmp_path,
        f"Sample,Taxon,{heads},NMI\nP1,Vitis vinifera,3,4,4\nP1,Lens culinaris,2,,2\nP2,Lens culinaris,,6,3\n",
    )

    assert [(row.completeness, row.count.number) for row in found.rows] == [
        ("whole", 3), ("fragment", 4), ("whole", 2), ("fragment", 6),
    ]  # fmt: skip
    assert not any("least numbers" in doubt for doubt in found.doubts)
