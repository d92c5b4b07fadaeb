"""`explain` names the heads that a cell stands under. All sheets are invented."""

from __future__ import annotations

from pathlib import Path

from narrate.pipeline.explain import explain
from narrate.pipeline.intake import intake


def dig(folder: Path, text: str) -> Path:
    path = folder / "lab.csv"
    path.write_text(text, encoding="utf-8")
    intake(path, folder / "dig")
    return folder / "dig"


def test_a_find_far_down_a_list_is_explained_by_its_own_heads(tmp_path: Path) -> None:
    """Not by the counts of the lines above it: sample, name, part and unit, each under its head."""
    lines = "".join(f"S{n},C{n},Zea mays,kernel,n,{n}\n" for n in range(1, 40))
    heads = "List of the laboratory,,,,,\n,,,,,\nSample,Context,Taxon,Part,Unit,Amount\n"
    folder = dig(tmp_path, f"{heads}{lines}S40,C40,Carya sp.,nutshell,g,1.25\n")

    assert (
        "counts/lab.csv, cell F43  Sample: S40 | Context: C40 | Taxon: Carya sp. | Part: nutshell | Unit: g | "
        "Amount: 1.25"
    ) in explain(folder, "C40/found.carya.nutshell").text


def test_blanks_that_mean_as_before_are_explained_by_what_they_mean(tmp_path: Path) -> None:
    """The id of the sample stands once over its finds."""
    first = "S1,C1,Zea mays,kernel,3\n,,Iva annua,achene,4\n,,Zea mays,cupule,2\n"
    folder = dig(tmp_path, f"Sample,Context,Taxon,Part,Count\n{first}S2,C2,Zea mays,kernel,5\n,,Iva annua,achene,1\n")
    found = explain(folder, "C1/found.iva-annua.achene")

    assert "cell E3  Sample: S1 | Context: C1 | Taxon: Iva annua | Part: achene | Count: 4" in found.text


def test_small_heads_over_pairs_are_named_with_the_sample(tmp_path: Path) -> None:
    """'S2' over 'Ct' and 'Wt (g)': the count stands under the first."""
    text = "Taxon,Part,S1,,S2,\n,,Ct,Wt (g),Ct,Wt (g)\nZea mays,kernel,3,0.1,5,0.2\nIva annua,achene,4,0.1,2,0.1\n"
    found = explain(dig(tmp_path, text), "S2/found.zea-mays.kernel").text

    assert "cell E3  Zea mays | kernel | S2 | Ct: 5" in found
