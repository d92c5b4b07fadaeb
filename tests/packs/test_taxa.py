"""The words and the plants of eastern North America that every dig may use."""

from __future__ import annotations

from collections import Counter
from functools import lru_cache
from pathlib import Path
from typing import Any

import pytest
import yaml

import narrate
from narrate.model.packs import Packs
from narrate.model.plants import KEEPING, KNOWN, Taxon
from narrate.problems import Problem
from narrate.reading.packs import read_packs

REGION = "eastern-north-america"

# The fixed list of words that records and sheets may use (interfaces, version 1).
KINDS = """hearth, firepit, roasting pit, earth oven, oven, kiln, corn dryer, smudge pit, storage pit, pit,
cess pit, refuse pit, posthole, wall trench, floor, burned structure, midden, ditch, gully, well,
layer, occupation surface, burial, other"""
PARTS = """seed, grain, sprouted grain, detached sprout, embryo, kernel, cupule, cob, glume, shank, stalk,
husk, glume base, spikelet fork, rachis internode, basal rachis, floret base, awn, culm node, culm
base, culm, straw, straw fragment, pod, pod segment, capsule, calyx, achene, nutlet, fruit, fruit
stone, fruit flesh, nutshell, acorn shell, nutmeat, cotyledon, rind, peduncle, tuber, rhizome, root,
stem, twig, leaf, bud, flower, needle, bark, bark scale, wood, charcoal, fungal sclerotium, dung,
porridge or bread crumb, amorphous, indeterminate"""
CONDITIONS = "charred, partly charred, uncharred, mineralised, waterlogged, desiccated"

ROLES = {
    "edible", "byproduct", "wood", "chaff", "straw", "cob", "nutshell", "propagule", "underground",
    "prepared", "vegetative", "dung", "fungus", "sprouted"
}  # fmt: skip
TRAITS = {
    "thermal", "storage", "refuse", "structure", "cut", "surface", "burial", "water"
}  # fmt: skip
TAGS = {
    "crop", "native-crop", "tropical-crop", "cereal", "pulse", "starchy-seed", "oily-seed",
    "early-season-seed", "nut", "fruit", "old-field-fruit", "greens", "small-seed", "root-tuber", "tobacco",
    "medicine", "toxic", "wetland", "woodland", "wood", "softwood", "hardwood", "old-world", "field-weed",
    "ruderal", "thatch", "indeterminate"
}  # fmt: skip
HABITS = {
    "grass", "herb", "vine", "shrub", "tree", "aquatic", "fungus", ""
}  # fmt: skip

# Months of ripening that the Fredricks site report gives, itself from Radford et al. 1968
# (Gremillion, "Seasonal variation", in Excavating Occaneechi Town: read in its stored page).
OCCANEECHI = [
    ("Vitis", "seed", range(8, 11)),
    ("Crataegus", "fruit stone", range(8, 11)),
    ("Sambucus canadensis", "seed", range(7, 9)),
    ("Passiflora incarnata", "seed", range(7, 11)),
    ("Prunus persica", "fruit stone", range(6, 8)),
    ("Diospyros virginiana", "seed", range(9, 11)),
    ("Vaccinium", "seed", range(6, 11)),
]
# Seed-times of A. E. Georgia 1914, A Manual of Weeds (each read in a stored page of the book).
GEORGIA = [
    ("Portulaca oleracea", "seed", range(7, 12)),  # "until frost": November is our reading of frost
    ("Polygonum aviculare", "achene", range(7, 12)),
    ("Anthemis cotula", "achene", range(7, 12)),
    ("Cycloloma atriplicifolium", "seed", range(8, 12)),
    ("Calystegia sepium", "seed", range(7, 11)),
    ("Chenopodium murale", "seed", range(8, 12)),
    ("Ambrosia trifida", "achene", range(8, 12)),
    ("Ambrosia artemisiifolia", "achene", range(8, 12)),
    ("Mollugo verticillata", "seed", range(6, 11)),
    ("Euphorbia maculata", "seed", range(7, 12)),
    ("Phytolacca americana", "seed", range(8, 12)),
    ("Passiflora incarnata", "seed", range(7, 11)),
    ("Stellaria media", "seed", range(1, 13)),
]


@lru_cache(maxsize=1)
def _read() -> tuple[Packs, tuple[Problem, ...]]:
    packs, problems = read_packs((REGION,), None)
    assert packs is not None
    return packs, tuple(problems)


def _taxa() -> list[Taxon]:
    return [taxon for taxon in _read()[0].taxa.values() if taxon.region == REGION]


def _written() -> list[tuple[str, dict[str, Any]]]:
    """Every entry as the files have it, before any reader made a mapping of them."""
    folder = Path(narrate.__file__).parent / "packs" / "taxa" / REGION
    return [
        (path.name, entry)
        for path in sorted(folder.glob("*.yaml"))
        for entry in yaml.safe_load(path.read_text(encoding="utf-8"))["taxa"]
    ]


def _listed(words: str) -> list[str]:
    return [" ".join(word.split()) for word in words.split(",")]


def test_the_taxa_of_the_region_read_without_problems() -> None:
    """The taxa, words and sources of the region read without problems."""
    problems = _read()[1]

    ours = ("packs/taxa/", "packs/words/", "packs/sources")
    about_these = [p for p in problems if any(place in p.place.path for place in ours)]
    assert [f"{p.place}: {p.message}" for p in about_these] == []


def test_the_region_has_at_least_120_taxa() -> None:
    """At least 120 taxa of the region are known."""
    assert len(_taxa()) >= 120


def test_every_entry_of_the_files_becomes_a_taxon() -> None:
    """No entry of a file is lost when it is read."""
    written = {entry["id"] for _, entry in _written()}

    assert {str(taxon.id) for taxon in _taxa()} == written


def test_no_name_means_two_taxa() -> None:
    """No id or synonym of the region is given twice."""
    spellings: Counter[str] = Counter()
    for _, entry in _written():
        spellings.update({str(name).lower() for name in [entry["id"], *entry.get("synonyms", [])]})

    assert [name for name, times in spellings.items() if times > 1] == []


@pytest.mark.parametrize(
    ("written", "taxon"),
    [
        ("cheno-am", "Chenopodium/Amaranthus"),
        ("Chenopodium/Amaranthus", "Chenopodium/Amaranthus"),
        ("polygonum s.l.", "Polygonum s.l."),
        ("hickory", "Carya"),
        ("carya sp.", "Carya"),
        ("maize", "Zea mays"),
        ("maypop", "Passiflora incarnata"),
        ("phytolacca decandra", "Phytolacca americana"),
        ("polygonum convolvulus", "Fallopia convolvulus"),
    ],
)
def test_shorthands_of_the_trade_are_understood(written: str, taxon: str) -> None:
    """A shorthand or an older name leads to its taxon."""
    assert _read()[0].taxon_lookup[written.lower()] == taxon


@pytest.mark.parametrize("kind", _listed(KINDS))
def test_every_kind_of_context_is_a_word(kind: str) -> None:
    """Every kind of context that records may use is known, with words for visitors."""
    known = _read()[0].words.context_kinds[kind]

    assert known.plural and known.plain and known.plain_plural and known.explained
    assert known.traits <= TRAITS


@pytest.mark.parametrize("part", _listed(PARTS))
def test_every_part_is_a_word(part: str) -> None:
    """Every part that sheets may use is known, with words for visitors and a rule of counting with its source."""
    words = _read()[0].words
    known = words.parts[part]  # type: ignore[index]

    assert known.plural and known.plain and known.plain_plural and known.counting and known.sources
    assert known.roles <= ROLES


def test_the_glume_of_maize_is_known_by_its_long_name() -> None:
    """'glume (of maize)' means the glume, not the glume base of a hulled cereal."""
    assert _read()[0].words.part_lookup["glume (of maize)"] == "glume"


@pytest.mark.parametrize("condition", _listed(CONDITIONS))
def test_every_condition_is_a_word(condition: str) -> None:
    """Every condition that sheets may use is known."""
    assert condition in _read()[0].words.conditions


def test_uncharred_remains_are_never_ancient_by_default() -> None:
    """Under no preservation does an uncharred seed count as old (Minnis 1981; Miller 1989)."""
    preservations = _read()[0].words.preservations

    assert set(preservations) == {"charred", "waterlogged", "desiccated", "mixed"}
    assert all("charred" in ancient and "uncharred" not in ancient for ancient in preservations.values())


def test_burials_carry_the_trait_that_keeps_them_restricted() -> None:
    """A burial has the trait 'burial', by any of its names."""
    words = _read()[0].words

    assert {words.kind_lookup[name] for name in ("burial", "grave", "inhumation", "cremation")} == {"burial"}
    assert "burial" in words.context_kinds["burial"].traits


@pytest.mark.parametrize(("taxon", "part", "months"), OCCANEECHI)
def test_months_agree_with_the_occaneechi_report(taxon: str, part: str, months: range) -> None:
    """A window agrees with the months that Gremillion gives, and says that it is from there."""
    windows = [w for w in _read()[0].taxa[taxon].windows if w.part == part and "gremillion-occaneechi" in w.sources]  # type: ignore[index]

    assert [(window.months, window.known) for window in windows] == [(tuple(months), "read")]


@pytest.mark.parametrize(("taxon", "part", "months"), GEORGIA)
def test_months_agree_with_the_manual_of_weeds(taxon: str, part: str, months: range) -> None:
    """A window agrees with the seed-time that Georgia 1914 gives, and says that it is from there."""
    windows = [w for w in _read()[0].taxa[taxon].windows if w.part == part and "georgia-1914" in w.sources]  # type: ignore[index]

    assert [(window.months, window.known) for window in windows] == [(tuple(months), "read")]


def test_where_sources_disagree_both_windows_stand() -> None:
    """Pokeweed keeps the months of the manual of weeds and those of common knowledge side by side."""
    months = {w.months for w in _read()[0].taxa["Phytolacca americana"].windows if w.part == "seed"}  # type: ignore[index]

    assert months == {(8, 9, 10, 11), (8, 9, 10)}


def test_maygrass_and_little_barley_ripen_before_the_other_native_crops() -> None:
    """The early-season crops are ripe before July, the other native seed crops are not (Smith 1992, from memory)."""
    crops = [t for t in _taxa() if "native-crop" in t.tags]
    ripe_early = {str(t.id) for t in crops if any(w.months[-1] < 7 and "seed" in w.part for w in t.windows)}

    assert ripe_early == {str(t.id) for t in crops if "early-season-seed" in t.tags}
    assert ripe_early == {"Phalaris caroliniana", "Hordeum pusillum"}


def test_the_native_seed_crops_are_crops() -> None:
    """The native seed crops count as crops (Smith 1992, from memory; Smith & Yarnell 2009, abstract)."""
    wanted = {
        "Chenopodium berlandieri",
        "Chenopodium berlandieri ssp. jonesianum",
        "Iva annua",
        "Helianthus annuus",
        "Polygonum erectum",
        "Phalaris caroliniana",
        "Hordeum pusillum",
        "Cucurbita pepo",
    }

    assert {str(t.id) for t in _taxa() if "native-crop" in t.tags} == wanted
    assert {t.status for t in _taxa() if "native-crop" in t.tags} == {"crop"}


def test_beans_are_later_than_maize_in_the_region() -> None:
    """Beans reached the north of the region in the late thirteenth century AD (Hart et al. 2002, abstract)."""
    taxa = _read()[0].taxa

    assert taxa["Phaseolus vulgaris"].earliest == 1250  # type: ignore[index]
    assert (taxa["Zea mays"].earliest or 0) < 1250  # type: ignore[index]


def test_old_world_plants_are_not_known_before_contact() -> None:
    """Whatever came from the Old World has an earliest year of 1500 or later, and it is said how well that is known."""
    early = [str(t.id) for t in _taxa() if "old-world" in t.tags and (t.earliest or 0) < 1500]
    unsaid = [str(t.id) for t in _taxa() if t.earliest is not None and t.earliest_known not in KNOWN]

    assert (early, unsaid) == ([], [])


def test_purslane_and_carpetweed_are_native() -> None:
    """Both were in the region 2500 to 3000 years ago (Chapman et al. 1974, conclusions)."""
    taxa = _read()[0].taxa

    assert [taxa[name].status for name in ("Portulaca oleracea", "Mollugo verticillata")] == ["native", "native"]  # type: ignore[index]


def test_a_clover_seed_by_itself_is_no_sign_of_recent_soil() -> None:
    """Native clovers exist (Britton & Brown 1913, Trifolium), so only the named Old World kinds carry the tag."""
    taxa = _read()[0].taxa

    assert "old-world" not in taxa["Trifolium"].tags  # type: ignore[index]
    assert "old-world" in taxa["Trifolium repens"].tags  # type: ignore[index]


@pytest.mark.parametrize("tag", ["toxic", "nut", "medicine", "greens", "fruit", "root-tuber", "tobacco"])
def test_what_can_hurt_has_a_caution(tag: str) -> None:
    """Every poisonous plant, and every plant that a reader might eat, smoke or take, has a caution."""
    assert [str(t.id) for t in _taxa() if tag in t.tags and not t.cautions] == []


def test_cautions_are_whole_sentences() -> None:
    """Every caution begins with a capital and ends with a full stop."""
    cautions = {caution for taxon in _taxa() for caution in taxon.cautions}

    assert [c for c in cautions if not (c[0].isupper() and c.endswith("."))] == []


def test_raw_acorns_carry_the_warning_that_they_must_be_leached() -> None:
    """Every oak tells that raw acorns must be leached."""
    oaks = [t for t in _taxa() if t.genus == "Quercus" or str(t.id).startswith("Quercus (")]

    assert len(oaks) >= 3
    assert [str(t.id) for t in oaks if not any("leached" in c for c in t.cautions)] == []


def test_every_taxon_and_every_fact_names_a_known_source() -> None:
    """Every taxon has a source, and each source named anywhere is in the list of sources."""
    packs = _read()[0]
    named = {key for t in _taxa() for key in t.sources}
    named |= {key for t in _taxa() for fact in (*t.uses, *t.windows, t.ecology) for key in fact.sources}
    named |= {key for part in packs.words.parts.values() for key in part.sources}

    assert [str(t.id) for t in _taxa() if not t.sources] == []
    assert [str(t.id) for t in _taxa() if any(not fact.sources for fact in (*t.uses, *t.windows))] == []
    assert sorted(named - set(packs.sources)) == []


def test_facts_use_listed_words_only() -> None:
    """Tags, habits, parts, keeping and how well a fact is known are all words from the lists."""
    parts = set(_read()[0].words.parts)
    odd = [
        str(t.id)
        for t in _taxa()
        if not t.tags <= TAGS
        or t.habit not in HABITS
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


def test_no_group_is_its_own_member() -> None:
    """No group has its own genus as its only member: the genus would then lie within the group."""
    alone = [t for t in _taxa() if t.rank == "group" and len(t.members) == 1]

    assert [str(t.id) for t in alone if str(t.id).startswith(f"{t.members[0]} ")] == []


def test_every_name_has_a_plural() -> None:
    """Every taxon has a common name and its plural, so that it can stand in a sentence."""
    assert [str(t.id) for t in _taxa() if not (t.name and t.plural)] == []
