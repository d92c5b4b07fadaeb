"""Names as sheets write them."""

from __future__ import annotations

from functools import cache

import pytest

from narrate.reading.intake.not_plants import not_a_plant
from narrate.reading.intake.project_intake import naming_packs
from narrate.reading.intake.written_names import NameReader
from narrate.reading.taxa import Identifier


@cache
def reader(**given: str) -> NameReader:
    packs = naming_packs(("eastern-north-america",))
    return NameReader(packs=packs, identifier=Identifier(packs.taxa, packs.taxon_lookup))


@pytest.mark.parametrize(
    ("written", "taxon", "qualifier"),
    [
        ("cf. Zea mays", "Zea mays", "cf."),
        ("Chenopodium cf. berlandieri", "Chenopodium berlandieri", "cf."),
        ("cf_Setaria", "Setaria", "cf."),
        ("cf. Gramineae", "Poaceae", "cf."),
        ("Poaceae undet.", "Poaceae", "indet."),
        ("Carya sp.", "Carya", "sp."),
        ("Polygonum erectum-type", "Polygonum erectum", "type"),
        ("Polygonum erectum agg.", "Polygonum erectum", "agg."),
        ("Polygonum erectum gp.", "Polygonum erectum", "agg."),
        ("Chenopodium s.l.", "Chenopodium", "s.l."),
        ("Chenopodium berlandieri Moq.", "Chenopodium berlandieri", ""),
        ("Chenopodium/Amaranthus", "Chenopodium/Amaranthus", ""),
        ("Chenopodium_Amaranthus", "Chenopodium/Amaranthus", ""),
        ("Chenopodium & Amaranthus", "Chenopodium/Amaranthus", ""),
        ("Chenopodium or Amaranthus", "Chenopodium/Amaranthus", ""),
        ("Chenopodium, Amaranthus", "Chenopodium/Amaranthus", ""),
        ("Zea_mays", "Zea mays", ""),
        ("Zea.mays", "Zea mays", ""),
        ("corn", "Zea mays", ""),
        ("Leguminosae", "Fabaceae", ""),
    ],
)
def test_a_name_finds_its_taxon(written: str, taxon: str, qualifier: str) -> None:
    """Signs, spellings, authorities and old families all lead to the taxon, with the doubt kept."""
    found = reader().read(written).identification

    assert (found.taxon, found.qualifier, found.written) == (taxon, qualifier, written)


@pytest.mark.parametrize(
    ("written", "taxon", "part", "completeness"),
    [
        ("Zea mays (kernel)", "Zea mays", "kernel", ""),
        ("Zea mays, cupules", "Zea mays", "cupule", ""),
        ("Maize cupule", "Zea mays", "cupule", ""),
        ("Hickory nutshell", "Carya", "nutshell", ""),
        ("Carya nutshell frags", "Carya", "nutshell", "fragment"),
        ("Wood charcoal", "Indeterminate", "charcoal", ""),
        ("Vitis pips", "Vitis", "seed", ""),
    ],
)
def test_a_part_in_a_name_is_taken_off(written: str, taxon: str, part: str, completeness: str) -> None:
    """In brackets, behind a comma or as a suffix."""
    found = reader().read(written)

    assert (found.identification.taxon, found.part, found.completeness) == (taxon, part, completeness)


def test_a_shortened_genus_is_that_of_the_row_above() -> None:
    """'C. album' below Chenopodium is Chenopodium album; below another genus it is nobody's."""
    assert reader().read("C. album", "Chenopodium").identification.taxon == "Chenopodium album"
    assert reader().read("C. album", "Zea").identification.taxon is None


def test_size_classes_and_conditions_in_a_name_are_kept() -> None:
    """'(>2mm)' is a size class, 'uncharred' a condition."""
    assert reader().read("Poaceae (>2mm)").size_class == ">2mm"
    assert reader().read("WOOD CHARCOAL OVER 2 MM").size_class == ">2 mm"
    assert reader().read("WOOD CHARCOAL OVER 2 MM").part == "charcoal"
    assert reader().read("Rubus sp. (uncharred)").condition == "uncharred"


def test_a_misspelling_is_not_taken_for_what_it_is_near_to() -> None:
    """A near match is offered elsewhere, and accepted by the analyst alone."""
    assert reader().read("Chenopodum berlandieri").identification.taxon is None


@pytest.mark.parametrize(
    ("written", "kind"),
    [
        ("Fish bone", "bone"),
        ("Land snails", "shell"),
        ("Hammerscale", "metal working and fuel waste"),
        ("Insect remains", "insects and other small animals"),
        ("Rodent droppings", "droppings"),
        ("Pottery", "artefacts"),
        ("Rootlets", "modern or mineral matter"),
        ("Carya nutshell", ""),
        ("Bottle gourd", ""),
        ("Boneset", ""),
    ],
)
def test_what_is_no_plant_is_known_by_kind(written: str, kind: str) -> None:
    """Other finds are set aside by kind, and no plant among them."""
    assert not_a_plant(written) == kind


@pytest.mark.parametrize(
    ("written", "part", "note"),
    [
        ("Chenopodium sp. (pinnule frag.)", "indeterminate", "part written pinnule frag."),
        ("Poaceae indet. (straw/stem)", "indeterminate", "part written straw/stem"),
        ("Hordeum vulgare (hulled frag.)", "", "hulled"),
        ("Zea mays cupule (8-row)", "cupule", "8-row"),
        ("Oryza spikelet base (wild)", "spikelet fork", "wild"),
    ],
)
def test_words_in_brackets_are_never_lost(written: str, part: str, note: str) -> None:
    """A part that no list knows is no seed: it is kept as it is written; what is no part is a note."""
    read = reader().read(written)

    assert (read.part, read.note) == (part, note)


@pytest.mark.parametrize(
    ("written", "part"), [("Wood n", "wood"), ("Maize kernel n", "kernel"), ("Acorn shell n", "nutshell")]
)
def test_a_small_n_behind_a_name_says_that_it_is_counted(written: str, part: str) -> None:
    """As 'g' says that it is weighed; a large letter may be the name of a type."""
    read = reader().read(written)

    assert (read.part, read.quantity) == (part, "count")
    assert reader().read(f"{written[:-2]} g").quantity == "mass"
    assert reader().read("Unknown N").quantity == ""
