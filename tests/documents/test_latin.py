"""Latin names in texts of the records and titles of works: the whole of a species is in italics."""

from __future__ import annotations

from narrate.documents.latin import genera_of, with_latin
from narrate.reading.packs import read_packs


def test_every_species_of_the_packs_is_in_italics_as_a_whole() -> None:
    """'Chenopodium berlandieri' and its like of all regions: no epithet is left upright."""
    packs, _ = read_packs(("eastern-north-america", "arid-southwest", "temperate-europe"))
    assert packs is not None
    genera = genera_of(packs)
    species = [
        t.id for t in packs.taxa.values() if t.rank == "species" and len(t.id.split()) == 2 and t.genus in genera
    ]

    assert len(species) > 200
    assert [name for name in species if with_latin(name, genera) != f"*{name}*"] == []


def test_a_trade_name_behind_a_genus_stays_upright() -> None:
    """'Pinus wood' and 'Carya shell' are a genus and a word."""
    assert [with_latin(text, {"Pinus", "Carya"}) for text in ("Pinus wood", "Carya shell")] == [
        "*Pinus* wood",
        "*Carya* shell",
    ]
