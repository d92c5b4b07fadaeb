"""Names as databases write them, with '_' between their words. All sheets are invented."""

from __future__ import annotations

from pathlib import Path

import pytest

from narrate.reading.intake.take_in import name_reader
from tests.reading.intake.test_silent_faults import packs, taken


@pytest.mark.parametrize(
    ("name", "taxon"),
    [
        ("Indeterminate_Cereal", "Cerealia indet."),
        ("Triticum_mono_di", "Triticum monococcum/dicoccum"),
        ("Triticum_aestivum_durum", "Triticum (free-threshing)"),
        ("Chenopodium_Atriplex", "Chenopodium/Atriplex"),
        ("Indeterminate_Fruit", "Indeterminate"),
        ("Setaria_italica_viridis", None),
    ],
)
def test_words_with_a_dash_below_between_them_name_one_taxon(name: str, taxon: str | None) -> None:
    """What nobody could name further is no choice of two, and two species are one where packs know them together."""
    assert name_reader(packs()).read(name).identification.taxon == taxon


@pytest.mark.parametrize("name", ["Indeterminate_Cereal", "Triticum_mono_di", "Triticum_quuxii_di", "Hordeum_sp"])
def test_cereals_of_databases_are_grain(tmp_path: Path, name: str) -> None:
    """Also those that no pack knows."""
    found = taken(tmp_path, f"Sample,Litres,{name},Rumex_sp\nS1,10,4,1\nS2,12,2,3")

    assert {str(r.identification.written): r.part for r in found.rows} == {name: "grain", "Rumex_sp": "seed"}


def test_a_short_genus_is_that_of_the_name_above(tmp_path: Path) -> None:
    """Behind a name with 'gp.' or a part in brackets, too; another letter is of another genus."""
    rows = "Taxon,S1\nTriticum dicoccum (glume base),3\nT. spelta L. (grain),2\nRumex crispus gp.,1\nR. acetosella L.,4"
    found = taken(tmp_path, rows)

    assert [r.identification.taxon for r in found.rows][1::2] == ["Triticum spelta", "Rumex acetosella"]
