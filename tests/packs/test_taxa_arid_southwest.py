"""The plants of the arid Southwest of North America that every dig may use."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from functools import lru_cache
from pathlib import Path
from typing import Any

import pytest
import yaml

import narrate
from narrate.measures.count_table import count_table
from narrate.measures.units import Units
from narrate.model.packs import Packs
from narrate.model.plants import KEEPING, KNOWN, Taxon, Window
from narrate.model.rules import Selector
from narrate.problems import Problem
from narrate.reading.packs import read_packs
from narrate.reading.taxa import Identifier
from narrate.reading.taxon_packs import HABITS, TAGS
from tests.measures.digs import a_dig, a_row

REGION = "arid-southwest"

SPRING, SUMMER, FALL = (4, 5, 6), (6, 7, 8), (9, 10)
"""The three seasons by their months; half months are counted whole, and the first frost is taken to end October."""

# Season of availability as printed (Adams, Kuckelman & Bowyer 2007, Sand Canyon Pueblo, Table 17: read in its stored
# page). Names are those of the table.
SAND_CANYON = [
    ("Stipa-type", "grain", SPRING),
    ("Stipa-type", "floret base", SPRING),
    ("Amelanchier-type", "fruit", SUMMER),
    ("Capparaceae-type", "seed", SUMMER),
    ("Cheno-am", "seed", SUMMER),
    ("Plantago-type", "seed", SUMMER),
    ("Portulaca retusa-type", "seed", SUMMER),
    ("Purshia-type", "seed", SUMMER),
    ("Rhus aromatica-type", "seed", SUMMER),
    ("Cycloloma-type", "seed", FALL),
    ("Helianthus-type", "achene", FALL),
    ("Opuntia-type", "seed", FALL),
    ("Physalis longifolia-type", "fruit", FALL),
    ("Physalis longifolia-type", "seed", FALL),
    ("Juniperus-type", "fruit", tuple(range(1, 13))),
]
# Seed-times of A. E. Georgia 1914, A Manual of Weeds (each read in a stored page of the book).
GEORGIA = [
    ("Cycloloma atriplicifolium", (8, 9, 10, 11)),
    ("Chenopodium murale", (8, 9, 10, 11)),
    # "earliest flowers mature as early as September, later ones clinging to the plant until nearly springtime"
    ("Salsola", (9, 10, 11, 12, 1, 2)),
]
# Shorthands of the trade and the narrowest honest group; the lists of names are those of the Sand Canyon, Site Testing
# and Yellow Jacket reports (read), the rest is common practice, no source.
SHORTHANDS = [
    ("cheno-am", "Chenopodium/Amaranthus"),
    ("Chenopodium/Amaranthus-type", "Chenopodium/Amaranthus"),
    ("Stipa-type", "Stipa s.l."),
    ("Stipa hymenoides-type", "Achnatherum hymenoides"),
    ("Oryzopsis hymenoides", "Achnatherum hymenoides"),
    ("Opuntia (Platyopuntia)", "Opuntia"),
    ("Opuntia (Cylindropuntia)", "Cylindropuntia"),
    ("Opuntia/Cylindropuntia", "Opuntia s.l."),
    ("Cactaceae", "Cactaceae"),
    ("Poaceae indet.", "Poaceae"),
    ("Gramineae", "Poaceae"),
    ("Capparaceae", "Cleomaceae"),
    ("Cleome-type", "Cleome s.l."),
    ("Peritoma serrulata", "Cleomella serrulata"),
    ("Malvaceae-type", "Malvaceae"),
    ("Amelanchier/Peraphyllum-type", "Amelanchier/Peraphyllum"),
    ("Prunus/Rosa-type", "Prunus/Rosa"),
    ("Populus/Salix-type", "Populus/Salix"),
    ("Scirpus-type", "Scirpus s.l."),
    ("Artemisia/A. tridentata-type", "Artemisia"),
    ("Quercus/Q. gambelii-type", "Quercus"),
    ("Chrysothamnus-type", "Chrysothamnus s.l."),
    ("Acacia", "Acacia s.l."),
    ("piñon", "Pinus (pinyon)"),
    ("Nicotiana trigonophylla", "Nicotiana obtusifolia"),
    ("Datura meteloides", "Datura wrightii"),
    ("Boerhaavia", "Boerhavia"),
    ("Kochia scoparia", "Bassia scoparia"),
    ("diffuse porous-type", "Diffuse-porous hardwood"),
    ("Monocotyledon-type", "Monocotyledon"),
]
# A name as written, and a species that it may be but does not say.
NOT_SO_CLOSE = [
    ("cheno-am", "seed", "Chenopodium berlandieri"),
    ("cheno-am", "seed", "Chenopodium"),
    ("cheno-am", "seed", "Amaranthus"),
    ("Amaranthus", "seed", "Amaranthus hypochondriacus"),
    ("Stipa-type", "grain", "Achnatherum hymenoides"),
    ("Opuntia/Cylindropuntia", "seed", "Opuntia"),
    ("Cactaceae", "seed", "Opuntia"),
    ("Cactaceae", "seed", "Carnegiea gigantea"),
    ("Poaceae indet.", "grain", "Zea mays"),
    ("Poaceae indet.", "grain", "Sporobolus"),
    ("Capparaceae", "seed", "Cleomella serrulata"),
    ("Cleome-type", "seed", "Cleomella serrulata"),
    ("Malvaceae-type", "seed", "Gossypium"),
    ("Malvaceae-type", "seed", "Sphaeralcea"),
    ("Populus/Salix", "wood", "Populus"),
    ("Pinus", "wood", "Pinus edulis"),
    ("Cucurbita", "rind", "Cucurbita pepo"),
    ("Phaseolus", "seed", "Phaseolus vulgaris"),
    ("Yucca/Agave", "leaf", "Agave"),
    ("Agave", "leaf", "Agave murpheyi"),
    ("Erodium", "seed", "Erodium cicutarium"),
    ("Convolvulus", "seed", "Convolvulus arvensis"),
    ("Physalis", "seed", "Physalis longifolia"),
    ("Nicotiana", "seed", "Nicotiana attenuata"),
]


@lru_cache(maxsize=1)
def _read() -> tuple[Packs, tuple[Problem, ...]]:
    return read_packs((REGION,), None)


@lru_cache(maxsize=1)
def _identifier() -> Identifier:
    packs = _read()[0]
    return Identifier(packs.taxa, packs.taxon_lookup)


def _taxa() -> list[Taxon]:
    return [taxon for taxon in _read()[0].taxa.values() if taxon.region == REGION]


def _named(written: str) -> Taxon:
    id = _identifier().identify(written).taxon
    assert id is not None, f"{written} is not known"
    return _read()[0].taxa[id]


def _windows(written: str, part: str, source: str) -> list[Window]:
    return [w for w in _named(written).windows if w.part == part and source in w.sources]


def _written() -> list[dict[str, Any]]:
    """Every entry as the files have it, before any reader made a mapping of them."""
    folder = Path(narrate.__file__).parent / "packs" / "taxa" / REGION
    files = sorted(folder.glob("*.yaml"))
    return [entry for path in files for entry in yaml.safe_load(path.read_text(encoding="utf-8"))["taxa"]]


def _is_meant(written: str, part: str, selector: Selector) -> bool:
    """True if the selector counts one charred item of the name as an analyst wrote it."""
    row = replace(a_row("S1", written, part, 1), identification=_identifier().identify(written))
    packs, dig = _read()[0], a_dig([[]], rows=[row])
    table = Units(count_table(dig, packs), "sample", packs, dig.preservation)
    return len(table.rows(selector)) > 0


def test_the_taxa_of_the_region_read_without_problems() -> None:
    """The taxa of the region, and the sources that they name, read without problems."""
    ours = (f"packs/taxa/{REGION}", "packs/sources")

    about_these = [p for p in _read()[1] if any(place in p.place.path for place in ours)]
    assert [f"{p.place}: {p.message}" for p in about_these] == []


def test_the_region_has_at_least_130_taxa() -> None:
    """At least 130 taxa of the region are known."""
    assert len(_taxa()) >= 130


def test_every_entry_of_the_files_becomes_a_taxon() -> None:
    """No entry of a file is lost when it is read."""
    assert {str(taxon.id) for taxon in _taxa()} == {entry["id"] for entry in _written()}


def test_no_name_means_two_taxa() -> None:
    """No id or synonym of the region is given twice."""
    spellings: Counter[str] = Counter()
    for entry in _written():
        spellings.update({str(name).lower() for name in [entry["id"], *entry.get("synonyms", [])]})

    assert [name for name, times in spellings.items() if times > 1] == []


@pytest.mark.parametrize(("written", "part", "months"), SAND_CANYON)
def test_seasons_agree_with_sand_canyon(written: str, part: str, months: tuple[int, ...]) -> None:
    """A window agrees with the season of Table 17, and says that it is from there (Adams et al. 2007)."""
    windows = _windows(written, part, "adams-et-al-2007")

    assert [(window.months, window.known) for window in windows] == [(months, "read")]


@pytest.mark.parametrize(("taxon", "months"), GEORGIA)
def test_months_agree_with_the_manual_of_weeds(taxon: str, months: tuple[int, ...]) -> None:
    """A window agrees with the seed-time that Georgia 1914 gives, and says that it is from there."""
    windows = _windows(taxon, "seed", "georgia-1914")

    assert [(window.months, window.known) for window in windows] == [(months, "read")]


def test_where_sources_disagree_on_cheno_ams_both_windows_stand() -> None:
    """Sand Canyon puts cheno-am seed in summer (Table 17, read), floras put it in August to October (from memory)."""
    told = {(w.months, w.known) for w in _named("cheno-am").windows if w.part == "seed"}

    assert told == {((6, 7, 8), "read"), ((8, 9, 10), "memory-H")}


def test_juniper_berries_tell_no_season() -> None:
    """Berries stay on the tree: every window of juniper fruit says so (Table 17: a year-round resource)."""
    juniper = [w for t in _taxa() if t.genus == "Juniperus" for w in t.windows if w.part in ("fruit", "seed")]

    assert {w.keeping for w in juniper} == {("persists",)}


def test_wood_has_no_season() -> None:
    """Wood, charcoal, twigs and bark are to be had all year, so no taxon gives them months (Table 17)."""
    woody = ("wood", "charcoal", "twig", "bark", "bark scale", "needle")

    assert [str(t.id) for t in _taxa() if any(w.part in woody for w in t.windows)] == []


def test_the_little_barley_of_the_desert_ripens_before_maize() -> None:
    """Little barley ripens in late winter or early spring (Adams & Graham 2019, abstract), long before maize."""
    barley = {month for w in _named("Hordeum pusillum").windows for month in w.months}
    maize = {month for w in _named("Zea mays").windows for month in w.months}

    assert max(barley) < min(maize)


def test_maize_is_known_from_2100_bc() -> None:
    """Maize was in the region by 2100 BC (Merrill et al. 2009, abstract)."""
    assert (_named("maize").earliest, _named("maize").earliest_known) == (-2100, "read")


@pytest.mark.parametrize("written", ["Cucurbita argyrosperma", "cultivated amaranth"])
def test_crops_of_the_lower_desert_are_known_by_ad_500(written: str) -> None:
    """Cushaw squash and amaranth are in the crop complex that Ford 1981 (abstract) puts at AD 500."""
    assert (_named(written).earliest, _named(written).status) == (500, "crop")


@pytest.mark.parametrize(
    "written", ["Salsola", "Kochia", "Convolvulus arvensis", "Erodium cicutarium", "Triticum-type", "Tamarix", "peach"]
)
def test_old_world_plants_are_later_than_contact(written: str) -> None:
    """What came from the Old World is not known before the Spanish came in 1540 (year from memory)."""
    assert (_named(written).earliest or 0) >= 1540
    assert "old-world" in _named(written).tags


def test_everything_from_the_old_world_has_its_year() -> None:
    """Every taxon tagged as brought since contact has a year of 1540 or later, and says how well that is known."""
    early = [str(t.id) for t in _taxa() if "old-world" in t.tags and (t.earliest or 0) < 1540]
    unsaid = [str(t.id) for t in _taxa() if t.earliest is not None and t.earliest_known not in KNOWN]

    assert (early, unsaid) == ([], [])


@pytest.mark.parametrize("written", ["Erodium", "Convolvulus", "Portulaca", "Chenopodium", "Setaria", "Descurainia"])
def test_a_genus_with_native_kinds_is_no_sign_of_recent_soil(written: str) -> None:
    """Native kinds exist beside the brought ones, so the genus alone is not out of period (from memory)."""
    assert "old-world" not in _named(written).tags
    assert _named(written).earliest is None


def test_wheat_in_a_phase_before_contact_is_found_out() -> None:
    """Wheat is listed among remains of small old sites (Adams 1999): in a phase of AD 900 to 1000 it is too late."""
    names = (("Triticum-type", "grain"), ("Zea mays", "kernel"), ("cheno-am", "seed"), ("Salsola", "seed"))

    assert [name for name, part in names if _is_meant(name, part, Selector(later_than_phase=True))] == [
        "Triticum-type",
        "Salsola",
    ]


@pytest.mark.parametrize(("written", "id"), SHORTHANDS)
def test_shorthands_lead_to_the_narrowest_honest_group(written: str, id: str) -> None:
    """A shorthand or an older name leads to the group that it can stand for, and no further down."""
    assert _identifier().identify(written).taxon == id


@pytest.mark.parametrize(("written", "part", "species"), NOT_SO_CLOSE)
def test_a_rule_for_the_species_does_not_fire_on_the_group(written: str, part: str, species: str) -> None:
    """A selector for one taxon counts its own items, and none of a group that it may belong to."""
    selector = Selector(taxon=(species,))

    assert not _is_meant(written, part, selector)
    assert _is_meant(species, part, selector)


@pytest.mark.parametrize(
    ("written", "part", "group"),
    [
        ("Chenopodium berlandieri", "seed", "Chenopodium/Amaranthus"),
        ("Amaranthus", "seed", "Chenopodium/Amaranthus"),
        ("Achnatherum hymenoides", "grain", "Stipa s.l."),
        ("Cylindropuntia", "seed", "Cactaceae"),
        ("Cleomella serrulata", "seed", "Cleomaceae"),
        ("Salix", "wood", "Populus/Salix"),
        ("Schoenoplectus", "achene", "Scirpus s.l."),
    ],
)
def test_a_rule_for_the_group_fires_on_what_lies_below(written: str, part: str, group: str) -> None:
    """A selector for a group counts its members too."""
    assert _is_meant(written, part, Selector(taxon=(group,)))


# Weeds of maize fields of the region: common practice, no source for the strength; that the first four are weedy and
# rich in seed is said by Adams et al. 2007, Table 12 (read).
@pytest.mark.parametrize(
    "written", ["cheno-am", "Portulaca", "Physalis longifolia", "Cycloloma", "Cleomella serrulata", "Helianthus"]
)
def test_weeds_of_maize_fields_are_field_weeds_and_foods(written: str) -> None:
    """In the Southwest the weeds of fields were gathered too: each is a field weed and has a use as food or greens."""
    taxon = _named(written)

    assert taxon.ecology.field_weed in ("strong", "moderate")
    assert {use.use for use in taxon.uses} & {"food", "greens"}


@pytest.mark.parametrize("written", ["Datura", "Datura wrightii"])
def test_datura_is_never_a_food_nor_a_sign_of_fields(written: str) -> None:
    """All parts of datura are poisonous (Colorado State University, page read): it has no use as food or greens."""
    taxon = _named(written)

    assert {use.use for use in taxon.uses} == {"ritual"}
    assert taxon.ecology.field_weed == "none"
    assert any("very poisonous" in caution for caution in taxon.cautions)


@pytest.mark.parametrize("tag", ["toxic", "nut", "medicine", "greens", "fruit", "root-tuber", "tobacco"])
def test_what_can_hurt_has_a_caution(tag: str) -> None:
    """Every poisonous plant, and every plant that a reader might eat, smoke or take, has a caution."""
    tagged = [t for t in _taxa() if tag in t.tags]

    assert tagged
    assert [str(t.id) for t in tagged if not t.cautions] == []


def test_every_wild_food_has_a_caution() -> None:
    """Every wild plant that is said to have been eaten or drunk has a caution, whatever its tags."""
    eaten = [t for t in _taxa() if t.status != "crop" and {u.use for u in t.uses} & {"food", "greens", "drink"}]

    assert len(eaten) > 60
    assert [str(t.id) for t in eaten if not t.cautions] == []


def test_cautions_are_whole_sentences() -> None:
    """Every caution begins with a capital and ends with a full stop."""
    cautions = {caution for taxon in _taxa() for caution in taxon.cautions}

    assert [c for c in cautions if not (c[0].isupper() and c.endswith("."))] == []


def test_raw_acorns_carry_the_warning_that_they_must_be_leached() -> None:
    """Every oak tells that raw acorns must be leached."""
    oaks = [t for t in _taxa() if t.genus == "Quercus"]

    assert len(oaks) >= 3
    assert [str(t.id) for t in oaks if not any("leached" in c for c in t.cautions)] == []


def test_every_taxon_and_every_fact_names_a_known_source() -> None:
    """Every taxon, use and window has a source, and each source named anywhere is in the list of sources."""
    named = {key for t in _taxa() for key in t.sources}
    named |= {key for t in _taxa() for fact in (*t.uses, *t.windows, t.ecology) for key in fact.sources}

    assert [str(t.id) for t in _taxa() if not t.sources] == []
    assert [str(t.id) for t in _taxa() if any(not fact.sources for fact in (*t.uses, *t.windows))] == []
    assert sorted(named - set(_read()[0].sources)) == []


def test_nothing_is_called_read_whose_sources_were_not() -> None:
    """A fact that is called read names at least one work of which something was seen."""
    sources = _read()[0].sources
    facts = [(t, fact) for t in _taxa() for fact in (*t.uses, *t.windows, t.ecology) if fact.known == "read"]

    assert len(facts) > 50
    assert [str(t.id) for t, fact in facts if all(sources[key].known != "read" for key in fact.sources)] == []


def test_facts_use_listed_words_only() -> None:
    """Tags, habits, parts, keeping and how well a fact is known are all words from the lists."""
    parts = set(_read()[0].words.parts)
    odd = [
        str(t.id)
        for t in _taxa()
        if not t.tags <= set(TAGS)
        or t.habit not in (*HABITS, "")
        or any(use.part is not None and use.part not in parts for use in t.uses)
        or any(window.part not in parts or not set(window.keeping) <= set(KEEPING) for window in t.windows)
        or any(fact.known not in KNOWN for fact in (*t.uses, *t.windows, t.ecology))
    ]

    assert odd == []


def test_only_weeds_of_fields_carry_the_tag() -> None:
    """The tag 'field-weed' and the strength with which the ecology speaks of fields agree."""
    tagged = {str(t.id) for t in _taxa() if "field-weed" in t.tags and t.rank != "group"}
    speaks = {str(t.id) for t in _taxa() if t.ecology.field_weed in ("strong", "moderate") and t.rank != "group"}

    assert sorted(speaks - tagged) == []
    assert sorted(name for name in tagged if _read()[0].taxa[name].ecology.field_weed == "none") == []  # type: ignore[index]


def test_members_of_groups_and_look_alikes_are_taxa() -> None:
    """Every member of a group and every look-alike is itself a taxon of the packs."""
    taxa = _read()[0].taxa

    assert [(str(t.id), name) for t in _taxa() for name in (*t.members, *t.look_alikes) if name not in taxa] == []


def test_no_synonym_of_a_species_is_a_species_of_the_pack() -> None:
    """No species answers to the id of another taxon."""
    ids = {str(t.id).lower() for t in _taxa()}

    assert [(str(t.id), s) for t in _taxa() for s in t.synonyms if s.lower() in ids - {str(t.id).lower()}] == []


def test_every_name_has_a_plural() -> None:
    """Every taxon has a common name and its plural, so that it can stand in a sentence."""
    assert [str(t.id) for t in _taxa() if not (t.name and t.plural)] == []
