"""Small heads and short words of sheets: weights, shares of pieces, keys. All sheets here are invented."""

# ruff: noqa: E501

from __future__ import annotations

from pathlib import Path

import pytest

from narrate.reading.intake.take_in import TakenIn, name_reader, take_in
from tests.reading.intake.test_blind import packs


def taken(folder: Path, *lines: str) -> TakenIn:
    (folder / "table.csv").write_text("\n".join(lines) + "\n", encoding="utf-8")
    return take_in(folder / "table.csv", packs())


@pytest.mark.parametrize("head", ["M (g)", "Masse (g)", "P (g)", "Masse", "Poids", "masa (g)", "Waga [g]", "W (g)"])
def test_a_unit_of_mass_in_a_small_head_is_of_weights(tmp_path: Path, head: str) -> None:
    """Beside 'N', whatever letter stands before the unit; the words for weights alone too."""
    found = taken(
        tmp_path, "Sample,12,,14,", f"Taxon,N,{head},N,{head}", "Quercus sp.,21,4.02,3,0.61", "Fagus sylvatica,9,1.87,12,2.5",
        "Corylus avellana,4,0.33,,", "Acer sp.,,,7,1.02",
    )  # fmt: skip

    of_oak = [(str(r.sample), r.count.number, r.mass_g) for r in found.rows if r.identification.written == "Quercus sp."]
    assert of_oak == [("12", 21, 4.02), ("14", 3, 0.61)]
    assert round(sum(row.mass_g or 0 for row in found.rows), 2) == 10.35


@pytest.mark.parametrize(
    ("key", "signs"),
    [
        ("+ 1-10 fragmentów, ++ 11-50, +++ powyżej 50", [">50", "11-50", "1-10"]),
        ("+ = 1-10, ++ = 11-50, +++ = oltre 50", [">50", "11-50", "1-10"]),
        ("+ 1-10; ++ 11-50; +++ über 50", [">50", "11-50", "1-10"]),
        ("+ 1-10; ++ 11-50; +++ más de 50", [">50", "11-50", "1-10"]),
        ("+ moins de 10; ++ 10-50; +++ plus de 50", [">50", "10-50", "<10"]),
        ("+ 1-10; ++ 11-50; +++ over 50", [">50", "11-50", "1-10"]),
    ],
)
def test_a_key_says_over_in_many_languages(tmp_path: Path, key: str, signs: list[str]) -> None:
    """With and without a sign between the mark and its meaning; the open end is kept as one."""
    found = taken(
        tmp_path, "Sample,1,2,3", "Hordeum vulgare grain,3,2,1", "Triticum dicoccum glume base,4,5,6", "Quercus sp. charcoal,+++,++,+",
        "", f'"{key}"',
    )  # fmt: skip

    assert [(row.count.at_least, row.count.at_most) for row in found.rows if row.identification.written.startswith("Quercus")] == [
        {">50": (51, None), "11-50": (11, 50), "10-50": (10, 50), "1-10": (1, 10), "<10": (None, 9)}[sign] for sign in signs
    ]
    assert not [problem for problem in found.problems if problem.code == "N313" and "no key" in problem.message]


@pytest.mark.parametrize(
    ("name", "taxon", "part"),
    [
        ("Olea europaea nocciolo frammento", "Olea europaea", "fruit stone"),
        ("Olea europaea nocciolo frammenti", "Olea europaea", "fruit stone"),
        ("Cerealia indet. frammenti", "Cerealia indet.", ""),
        ("Cerealia indet. – fragmenty", "Cerealia indet.", ""),
        ("Hordeum vulgare caryopse fragment", "Hordeum vulgare", "grain"),
        ("Corylus avellana, cáscara, fragmentos", "Corylus avellana", "nutshell"),
        ("Corylus avellana Nussschale Bruchstücke", "Corylus avellana", "nutshell"),
        ("Hordeum vulgare ziarniak fragmenty", "Hordeum vulgare", "grain"),
    ],
)
def test_a_word_for_pieces_behind_a_part_is_completeness(name: str, taxon: str, part: str) -> None:
    """Whatever the language; the part stays what it is, and 'indet.' of a name that is known is no part."""
    found = name_reader(packs()).read(name)

    assert (found.identification.taxon, found.part, found.completeness) == (taxon, part, "fragment")
