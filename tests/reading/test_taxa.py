"""Names as analysts write them."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from narrate.model.ids import TaxonId
from narrate.model.plants import Taxon
from narrate.reading.taxa import Identifier
from tests.small_packs import HERE, small_packs


def identifier() -> Identifier:
    """The small packs, with wheats, a species of barley (no genus) and more spellings."""
    packs = small_packs()
    more = {
        id: Taxon(id=TaxonId(id), rank="species", family="Poaceae", place=HERE)
        for id in ("Hordeum pusillum", "Triticum spelta")
    }
    lookup = {**packs.taxon_lookup, **{id.lower(): TaxonId(id) for id in more}}
    lookup |= {
        "cheno-am": TaxonId("Chenopodium/Amaranthus"),
        "maize": TaxonId("Zea mays"),
        "carya sp.": TaxonId("Carya"),
    }
    return Identifier({**packs.taxa, **more}, lookup)  # type: ignore[dict-item]


NAMES = [
    ("Zea mays", "Zea mays", ""),
    ("  zea   MAYS ", "Zea mays", ""),
    ("maize", "Zea mays", ""),
    ("Zea mays L.", "Zea mays", ""),
    ("Zea mays ssp. mays", "Zea mays", ""),
    ("Triticum dicoccum (Schrank) Schübl.", "Triticum dicoccum", ""),
    ("cf. Zea mays", "Zea mays", "cf."),
    ("Zea cf. mays", "Zea mays", "cf."),
    ("cf Zea mays", "Zea mays", "cf."),
    ("Zea mays?", "Zea mays", "cf."),
    ("cf. Carya sp.", "Carya", "cf."),
    ("Carya sp.", "Carya", "sp."),
    ("Carya spp.", "Carya", "spp."),
    ("Carya", "Carya", ""),
    ("Carya Nutt.", "Carya", ""),
    ("Zea mays type", "Zea mays", "type"),
    ("Zea mays-type", "Zea mays", "type"),
    ("Stellaria media agg.", "Stellaria media", "agg."),
    ("Stellaria media s.l.", "Stellaria media", "s.l."),
    ("Poaceae indet.", "Poaceae", "indet."),
    ("cheno-am", "Chenopodium/Amaranthus", ""),
    ("Chenopodium/Amaranthus", "Chenopodium/Amaranthus", ""),
    ("Amaranthus / Chenopodium", "Chenopodium/Amaranthus", ""),
    ("Chenopodium sp./Amaranthus sp.", "Chenopodium/Amaranthus", "sp."),
    ("Hordeum sp.", "Hordeum", "sp."),
    ("Juglandaceae indet.", "Juglandaceae", "indet."),
]


@pytest.mark.parametrize(("written", "taxon", "qualifier"), NAMES, ids=[n[0] for n in NAMES])
def test_names_mean_their_taxon_and_keep_what_stands_beside_them(written: str, taxon: str, qualifier: str) -> None:
    """Qualifiers anywhere, authorities, case and spacing do not hide the taxon; the name stays as written."""
    found = identifier().identify(written)

    assert (found.taxon, found.qualifier, found.either) == (taxon, qualifier, ())
    assert found.written == " ".join(written.split())


UNKNOWN = [
    "Zea mais",
    "Chenopodium Berlandiery",
    "Carya Amaranthus",
    "Carya glabra",
    "sp.",
    "cf.",
    "/",
    "Rosaceae indet.",
    "Zea",
]


@pytest.mark.parametrize("written", [name for name in UNKNOWN if name != "Zea"])
def test_other_names_stay_as_written(written: str) -> None:
    """A slip in an epithet, two genera side by side or an unknown species are never taken for what they resemble."""
    names = identifier()
    found = names.identify(written)

    assert (found.taxon, found.either) == (None, ())
    assert not names.is_known(found)


def test_either_of_two_taxa_without_a_group_names_both() -> None:
    """'A/B' for which no group is defined is uncertain between two known taxa."""
    names = identifier()
    found = names.identify("Triticum dicoccum/spelta")

    assert (found.taxon, found.either) == (None, ("Triticum dicoccum", "Triticum spelta"))
    assert not found.is_certain
    assert names.is_known(found)


def test_an_unknown_half_is_kept_so_that_the_known_one_is_not_taken_for_certain() -> None:
    """'Carya/Nobodia' is not known, and is no hickory either."""
    names = identifier()
    found = names.identify("Carya/Nobodia")

    assert (found.taxon, found.either) == (None, ("Carya", "Nobodia"))
    assert not names.is_known(found)
    assert names.unknown_part(found) == "Nobodia"


def test_genera_and_families_made_on_the_fly_carry_nothing_but_their_family() -> None:
    """What the packs know of a species is not claimed for its genus."""
    names = identifier()
    names.identify("Hordeum sp.")
    names.identify("Juglandaceae indet.")

    assert names.made == {
        "Hordeum": Taxon(id=TaxonId("Hordeum"), rank="genus", family="Poaceae", status="either", place=HERE),
        "Juglandaceae": Taxon(
            id=TaxonId("Juglandaceae"), rank="family", family="Juglandaceae", status="either", place=HERE
        ),
    }


@given(written=st.text(max_size=40) | st.from_regex(r"(cf\. |sp\. |Zea |mays |/|\?| or |type ){1,6}"))
def test_no_name_raises_and_none_gets_a_taxon_that_packs_lack(written: str) -> None:
    """Whatever is written, a taxon that comes out is in the packs or was made from them."""
    names = identifier()
    found = names.identify(written)

    assert found.taxon is None or found.taxon in names.taxa or found.taxon in names.made


def test_the_value_is_the_same_each_time() -> None:
    """A name that comes again gives the very same value."""
    names = identifier()

    assert names.identify("cf. Zea mays") is names.identify("cf. Zea mays")
    assert replace(names.identify("Zea mays"), qualifier="cf.") == replace(
        names.identify("cf. Zea mays"), written="Zea mays"
    )
