"""The plants of temperate Europe that every dig there may use."""

from __future__ import annotations

from collections import Counter
from functools import lru_cache
from pathlib import Path
from typing import Any

import pytest
import yaml

import narrate
from narrate.measures.selection import lies_below
from narrate.model.ids import TaxonId
from narrate.model.packs import Packs
from narrate.model.plants import KEEPING, KNOWN, Taxon, Window
from narrate.problems import Problem
from narrate.reading.packs import read_packs
from narrate.reading.taxa import Identifier

REGION = "temperate-europe"

# Months of collecting seed in a table of native trees of Berkshire, England (the page was read); common names there.
BERKSHIRE = [
    ("Corylus avellana", "nutshell", (10,)),
    ("Quercus", "acorn shell", (9, 10, 11)),
    ("Fagus sylvatica", "nutshell", (9, 10, 11)),
    ("Castanea sativa", "nutshell", (10,)),
    ("Prunus avium", "fruit stone", (7, 8)),
    ("Crataegus", "fruit stone", (9, 10, 11)),
    ("Sorbus aucuparia", "seed", (7, 8, 9)),
    ("Taxus baccata", "seed", (9, 10, 11)),
    ("Ilex aquifolium", "seed", (11, 12, 1, 2)),
    ("Rhamnus cathartica", "seed", (10,)),
    ("Euonymus europaeus", "seed", (9, 10, 11)),
    ("Acer", "fruit", (10, 11, 12, 1)),
    ("Fraxinus excelsior", "fruit", (8, 9, 10, 11, 12, 1)),
    ("Pinus", "cone", (11, 12, 1, 2)),
]
# Months of gathering seed of wild shrubs in southern Styria, Austria (the pages were read).
STYRIA = [
    ("Prunus spinosa", "fruit stone", (9, 10, 11)),
    ("Rosa", "achene", (9, 10, 11)),
    ("Sambucus nigra", "seed", (8, 9)),
    ("Cornus sanguinea", "fruit stone", (8, 9, 10, 11)),
    ("Viburnum opulus", "fruit stone", (8, 9, 10, 11)),
]
# Months of harvest that the trade takes for granted (Zohary, Hopf & Weiss 2012 and Stace 2019, both from memory).
HARVEST = [
    ("Triticum dicoccum", "grain", (7, 8)),
    ("Triticum spelta", "glume base", (7, 8)),
    ("Hordeum vulgare", "grain", (6, 7, 8)),
    ("Avena sativa", "grain", (8, 9)),
    ("Panicum miliaceum", "grain", (8, 9)),
    ("Pisum sativum", "seed", (7, 8)),
    ("Linum usitatissimum", "seed", (8, 9)),
    ("Rubus fruticosus agg.", "seed", (7, 8, 9, 10)),
    ("Rubus idaeus", "seed", (7, 8)),
    ("Fragaria vesca", "achene", (6, 7, 8)),
    ("Malus", "seed", (9, 10)),
    ("Vitis vinifera", "seed", (9, 10)),
    ("Ficus carica", "seed", (6, 8, 9, 10)),
]
# Weeds that the trade reads for sowing season (Hillman 1981; Reynolds 1981; M. Jones 1981; all from memory).
AUTUMN = """Galium aparine, Agrostemma githago, Centaurea cyanus, Bromus secalinus, Lithospermum arvense,
Veronica hederifolia, Papaver rhoeas, Vicia hirsuta, Vicia tetrasperma, Avena sterilis, Ranunculus arvensis"""
SPRING = """Chenopodium album, Fallopia convolvulus, Polygonum aviculare, Persicaria maculosa, Persicaria lapathifolia,
Spergula arvensis, Sinapis arvensis, Avena fatua, Urtica urens, Solanum nigrum, Euphorbia helioscopia"""
EITHER = "Anthemis cotula, Tripleurospermum inodorum, Rumex acetosella, Stellaria media, Raphanus raphanistrum"
# Soil and height that the trade reads from weeds (M. Jones 1981, 1988; Hillman 1981; from memory).
SOIL = [
    ("Anthemis cotula", "clay"),
    ("Spergula arvensis", "sandy"),
    ("Spergula arvensis", "acid"),
    ("Scleranthus annuus", "acid"),
    ("Rumex acetosella", "poor"),
    ("Lithospermum arvense", "lime-rich"),
    ("Scandix pecten-veneris", "lime-rich"),
    ("Eleocharis palustris", "wet"),
    ("Montia fontana", "wet"),
    ("Chenopodium album", "rich"),
    ("Galium aparine", "rich"),
    ("Vicia hirsuta", "poor"),
]
HEIGHT = [
    ("Veronica hederifolia", "low"),
    ("Spergula arvensis", "low"),
    ("Aphanes arvensis", "low"),
    ("Agrostemma githago", "tall"),
    ("Centaurea cyanus", "tall"),
    ("Galium aparine", "twining"),
    ("Fallopia convolvulus", "twining"),
    ("Vicia tetrasperma", "twining"),
]
# Seed types of G. Jones 1984 (which type a weed has is from memory).
SEED_TYPES = [
    ("Galium aparine", ("big", "free", "heavy")),
    ("Bromus secalinus", ("big", "free", "heavy")),
    ("Agrostemma githago", ("big", "headed", "heavy")),
    ("Chenopodium album", ("small", "free", "heavy")),
    ("Stellaria media", ("small", "free", "heavy")),
    ("Anthemis cotula", ("small", "headed", "heavy")),
    ("Matricaria chamomilla", ("small", "headed", "light")),
    ("Urtica urens", ("small", "free", "light")),
]
# What a name as reports write it may honestly mean, and nothing narrower (common practice, no source).
SHORTHANDS = [
    ("Cerealia indet.", "Cerealia indet."),
    ("cereal indet.", "Cerealia indet."),
    ("Triticum/Hordeum", "Triticum/Hordeum"),
    ("Hordeum sp./Triticum sp.", "Triticum/Hordeum"),
    ("Triticum glume", "Triticum (glume)"),
    ("Triticum sp. (glume)", "Triticum (glume)"),
    ("Triticum sp.", "Triticum"),
    ("Triticum dicoccum/spelta", "Triticum dicoccum/spelta"),
    ("Triticum spelta/dicoccum", "Triticum dicoccum/spelta"),
    ("Triticum aestivum/durum", "Triticum (free-threshing)"),
    ("Hordeum sp.", "Hordeum"),
    ("Avena sp.", "Avena"),
    ("Avena/Bromus", "Avena/Bromus"),
    ("Vicia/Lathyrus", "Vicia/Lathyrus"),
    ("Vicia sp./Lathyrus sp.", "Vicia/Lathyrus"),
    ("Polygonum s.l.", "Polygonum s.l."),
    ("Rumex s.l.", "Rumex"),
    ("Chenopodium/Atriplex", "Chenopodium/Atriplex"),
    ("Brassica/Sinapis", "Brassica/Sinapis"),
    ("large legume", "large legume"),
    ("Legume >4mm", "large legume"),
    ("small legume", "small legume"),
    ("Leguminosae", "Fabaceae"),
    ("Gramineae", "Poaceae"),
    ("Pomoideae", "Maloideae"),
    ("Alnus/Corylus", "Corylus/Alnus"),
    ("Prunus sp.", "Prunus"),
]
# Older and newer names of one plant (Stace 2019, from memory).
SYNONYMS = [
    ("Triticum dicoccon", "Triticum dicoccum"),
    ("Triticum turgidum subsp. dicoccum", "Triticum dicoccum"),
    ("Triticum aestivum subsp. spelta", "Triticum spelta"),
    ("Hordeum vulgare var. nudum", "Hordeum vulgare (naked)"),
    ("Hordeum distichum", "Hordeum vulgare var. distichum"),
    ("Hordeum vulgare (six-row)", "Hordeum vulgare var. hexastichum"),
    ("Bilderdykia convolvulus", "Fallopia convolvulus"),
    ("Polygonum convolvulus", "Fallopia convolvulus"),
    ("Polygonum persicaria", "Persicaria maculosa"),
    ("Agropyron repens", "Elytrigia repens"),
    ("Matricaria inodora", "Tripleurospermum inodorum"),
    ("Matricaria recutita", "Matricaria chamomilla"),
    ("Buglossoides arvensis", "Lithospermum arvense"),
    ("Sieglingia decumbens", "Danthonia decumbens"),
    ("Chrysanthemum segetum", "Glebionis segetum"),
    ("Arrhenatherum elatius var. bulbosum", "Arrhenatherum elatius"),
    ("Vicia faba var. minor", "Vicia faba"),
]


@lru_cache(maxsize=1)
def _read() -> tuple[Packs, tuple[Problem, ...]]:
    packs, problems = read_packs((REGION,), None)
    return packs, tuple(problems)


def _packs() -> Packs:
    return _read()[0]


def _taxa() -> list[Taxon]:
    return [taxon for taxon in _packs().taxa.values() if taxon.region == REGION]


def _taxon(name: str) -> Taxon:
    return _packs().taxa[TaxonId(name)]


def _written() -> list[dict[str, Any]]:
    """Every entry as the files have it, before any reader made a mapping of them."""
    folder = Path(narrate.__file__).parent / "packs" / "taxa" / REGION
    files = sorted(folder.glob("*.yaml"))
    return [entry for path in files for entry in yaml.safe_load(path.read_text(encoding="utf-8"))["taxa"]]


def _listed(words: str) -> list[str]:
    return [" ".join(word.split()) for word in words.split(",")]


def _windows(taxon: str, part: str, source: str) -> list[Window]:
    return [window for window in _taxon(taxon).windows if window.part == part and source in window.sources]


def test_the_taxa_of_the_region_read_without_problems() -> None:
    """The taxa and sources of the region read without problems."""
    ours = (f"packs/taxa/{REGION}/", "packs/sources")
    about_these = [p for p in _read()[1] if any(place in p.place.path for place in ours)]

    assert [f"{p.place}: {p.message}" for p in about_these] == []


def test_the_region_has_at_least_150_taxa() -> None:
    """At least 150 taxa of the region are known, groups and broad names not counted."""
    assert sum(taxon.rank in ("species", "genus") for taxon in _taxa()) >= 150


def test_the_region_has_at_least_80_weeds_of_fields() -> None:
    """At least 80 weeds of fields say their seed type, and each of them one more of sowing, soil and height."""
    weeds = [t for t in _taxa() if "field-weed" in t.tags and t.rank != "group"]
    full = [
        t for t in weeds if len(t.ecology.seed) == 3 and (t.ecology.sow or t.ecology.soil or t.ecology.height)
    ]  # fmt: skip

    assert len(full) >= 80


def test_every_entry_of_the_files_becomes_a_taxon() -> None:
    """No entry of a file is lost when it is read."""
    assert {str(taxon.id) for taxon in _taxa()} == {entry["id"] for entry in _written()}


def test_no_name_means_two_taxa() -> None:
    """No id or synonym of the region is given twice."""
    spellings: Counter[str] = Counter()
    for entry in _written():
        spellings.update({str(name).lower() for name in [entry["id"], *entry.get("synonyms", [])]})

    assert [name for name, times in spellings.items() if times > 1] == []


@pytest.mark.parametrize(("taxon", "part", "months"), BERKSHIRE)
def test_months_agree_with_the_table_of_native_trees(taxon: str, part: str, months: tuple[int, ...]) -> None:
    """A window agrees with the Berkshire table of collection times, and says that it is from there."""
    windows = _windows(taxon, part, "wild-berks-seed")

    assert [(window.months, window.known) for window in windows] == [(months, "read")]


@pytest.mark.parametrize(("taxon", "part", "months"), STYRIA)
def test_months_agree_with_the_pages_on_wild_shrubs(taxon: str, part: str, months: tuple[int, ...]) -> None:
    """A window agrees with the Styrian pages on wild shrubs, and says that it is from there."""
    windows = _windows(taxon, part, "styria-wild-shrubs")

    assert [(window.months, window.known) for window in windows] == [(months, "read")]


@pytest.mark.parametrize(("taxon", "part", "months"), HARVEST)
def test_months_of_harvest_are_marked_as_memory(taxon: str, part: str, months: tuple[int, ...]) -> None:
    """A window of the common harvest has its months, and says that they are from memory."""
    windows = [window for window in _taxon(taxon).windows if window.part == part]

    assert [window.months for window in windows] == [months]
    assert {window.known for window in windows} <= {"memory-H", "memory-M"}


def test_fat_hen_ripens_as_the_guide_to_weeds_says() -> None:
    """Fat-hen ripens from August to October (page of a gardeners' guide, read)."""
    assert [window.months for window in _windows("Chenopodium album", "seed", "fat-hen-page")] == [(8, 9, 10)]


def test_where_sources_on_hazel_disagree_both_windows_stand() -> None:
    """Hazel keeps October of the British table and August to October of the German text side by side."""
    months = {window.months for window in _taxon("Corylus avellana").windows if window.part == "nutshell"}

    assert months == {(10,), (8, 9, 10)}


@pytest.mark.parametrize("weed", _listed(AUTUMN))
def test_classic_weeds_of_autumn_sowing(weed: str) -> None:
    """A classic weed of autumn-sown grain says so, and that it is a weed of fields (sources: see AUTUMN)."""
    assert (_taxon(weed).ecology.sow, _taxon(weed).ecology.field_weed) == ("autumn", "strong")


@pytest.mark.parametrize("weed", _listed(SPRING))
def test_classic_weeds_of_spring_sowing(weed: str) -> None:
    """A classic weed of spring-sown crops says so, and that it is a weed of fields (sources: see SPRING)."""
    assert _taxon(weed).ecology.sow == "spring"
    assert _taxon(weed).ecology.field_weed in ("strong", "moderate")


@pytest.mark.parametrize("weed", _listed(EITHER))
def test_weeds_of_either_season_argue_for_neither(weed: str) -> None:
    """A weed that grows with crops of either season says 'both' (M. Jones 1981, from memory)."""
    assert _taxon(weed).ecology.sow == "both"


@pytest.mark.parametrize(("weed", "soil"), SOIL)
def test_classic_weeds_name_their_soil(weed: str, soil: str) -> None:
    """A weed that the trade reads for soil names it (sources: see SOIL)."""
    assert soil in _taxon(weed).ecology.soil


@pytest.mark.parametrize(("weed", "height"), HEIGHT)
def test_classic_weeds_name_their_height(weed: str, height: str) -> None:
    """A weed that the trade reads for the height of the cut names it (sources: see HEIGHT)."""
    assert _taxon(weed).ecology.height == height


@pytest.mark.parametrize(("weed", "seed"), SEED_TYPES)
def test_weeds_have_the_seed_types_of_crop_processing(weed: str, seed: tuple[str, ...]) -> None:
    """A weed has its seed type (sources: see SEED_TYPES)."""
    assert _taxon(weed).ecology.seed == seed


def test_small_seeds_of_wild_plants_carry_the_tag() -> None:
    """The tag 'small-seed' stands where the ecology calls the seed small and not big, and never at a crop."""
    tagged = [t for t in _taxa() if "small-seed" in t.tags]
    herbs = [t for t in _taxa() if t.status != "crop" and t.rank != "group" and "small" in t.ecology.seed]
    untagged = [t for t in herbs if t.habit in ("herb", "grass") and "small-seed" not in t.tags]

    assert [str(t.id) for t in tagged if "big" in t.ecology.seed or "crop" in t.tags] == []
    assert [str(t.id) for t in untagged] == []


@pytest.mark.parametrize(("written", "taxon"), SHORTHANDS)
def test_shorthands_mean_the_narrowest_honest_group(written: str, taxon: str) -> None:
    """A shorthand of the trade leads to the narrowest group that it may honestly mean."""
    identifier = Identifier(_packs().taxa, _packs().taxon_lookup)

    assert identifier.identify(written).taxon == taxon


@pytest.mark.parametrize(("written", "taxon"), SYNONYMS)
def test_older_and_newer_names_lead_to_one_taxon(written: str, taxon: str) -> None:
    """An older or newer name leads to its taxon (sources: see SYNONYMS)."""
    identifier = Identifier(_packs().taxa, _packs().taxon_lookup)

    assert identifier.identify(written).taxon == taxon


def test_a_doubtful_name_keeps_its_doubt() -> None:
    """'Triticum cf. spelta' is spelt with a doubt, not spelt."""
    found = Identifier(_packs().taxa, _packs().taxon_lookup).identify("Triticum cf. spelta")

    assert (found.taxon, found.is_certain) == ("Triticum spelta", False)


@pytest.mark.parametrize(
    ("group", "narrower"),
    [
        ("Triticum", "Triticum spelta"),
        ("Triticum (glume)", "Triticum dicoccum"),
        ("Triticum dicoccum/spelta", "Triticum spelta"),
        ("Triticum/Hordeum", "Triticum"),
        ("Cerealia indet.", "Hordeum vulgare"),
        ("Vicia/Lathyrus", "Vicia hirsuta"),
        ("Polygonum s.l.", "Polygonum aviculare"),
        ("Chenopodium/Atriplex", "Chenopodium album"),
        ("Hordeum vulgare", "Hordeum vulgare var. hexastichum"),
        ("Maloideae", "Crataegus"),
    ],
)
def test_what_needs_the_species_is_not_met_by_the_group(group: str, narrower: str) -> None:
    """A group does not lie below the taxa in it, and they lie below the group."""
    assert not lies_below(TaxonId(group), narrower, _packs())
    assert lies_below(TaxonId(narrower), group, _packs())


def test_a_group_of_glume_wheats_is_wheat() -> None:
    """Emmer or spelt lies below wheat and below the glume wheats, for both of them do."""
    assert lies_below(TaxonId("Triticum dicoccum/spelta"), "Triticum", _packs())
    assert lies_below(TaxonId("Triticum dicoccum/spelta"), "Triticum (glume)", _packs())


def test_tags_of_a_group_are_those_that_all_its_members_have() -> None:
    """No group has a tag that one of its members lacks."""
    groups = [t for t in _taxa() if t.rank == "group" and t.members]
    odd = [(str(t.id), tag) for t in groups for tag in t.tags if any(tag not in _taxon(m).tags for m in t.members)]

    assert len(groups) >= 40
    assert odd == []


def test_a_group_is_as_old_as_its_oldest_member() -> None:
    """The year of a group is that of its oldest member, and it has none if one member was always there."""
    odd = []
    for group in (t for t in _taxa() if t.rank == "group" and t.members):
        years = [_taxon(member).earliest for member in group.members]
        if group.earliest != (None if None in years else min(year for year in years if year is not None)):
            odd.append(str(group.id))

    assert odd == []


def test_oats_of_unknown_kind_are_neither_crop_nor_weed() -> None:
    """'Avena sp.' counts neither as a cereal crop nor as a weed of fields (Jacomet 2006, from memory)."""
    assert not _taxon("Avena").tags & {"crop", "cereal", "field-weed"}
    assert _taxon("Avena").status == "either"


def test_crops_came_in_the_order_that_is_known() -> None:
    """Glume wheats came first, then spelt, then millet, then rye; figs, walnuts and chestnuts with the Romans.

    Sources: Akeret 2005 for spelt, Filipović et al. 2020 for millet, Behre 1992 for rye; all from memory.
    """
    names = ["Triticum dicoccum", "Triticum spelta", "Panicum miliaceum", "Secale cereale"]
    years = [_taxon(name).earliest or 0 for name in names]

    assert years == sorted(years)
    assert years[0] < -5000 < years[1] < -2000 < years[2] < -1500 < years[3] < 0
    assert all(
        -150 <= (_taxon(name).earliest or 0) <= 50 for name in ("Ficus carica", "Juglans regia", "Castanea sativa")
    )


def test_every_year_of_arrival_says_how_well_it_is_known() -> None:
    """Whatever has a year of arrival says how well that is known, and none of them was read in print."""
    dated = [t for t in _taxa() if t.earliest is not None]

    assert len(dated) >= 40
    assert [str(t.id) for t in dated if t.earliest_known not in ("memory-H", "memory-M", "memory-L")] == []


def test_plants_of_the_americas_are_later_than_columbus() -> None:
    """Nothing from the Americas is known before 1492 (common practice, no source)."""
    american = [t for t in _taxa() if "new-world" in t.tags]

    assert {"Zea mays", "Phaseolus vulgaris"} <= {str(t.id) for t in american}
    assert [str(t.id) for t in american if (t.earliest or 0) < 1492] == []


@pytest.mark.parametrize("tag", ["toxic", "nut", "medicine", "greens", "fruit", "root-tuber"])
def test_what_can_hurt_has_a_caution(tag: str) -> None:
    """Every poisonous plant, and every plant that a reader might gather, has a caution."""
    tagged = [t for t in _taxa() if tag in t.tags]

    assert tagged
    assert [str(t.id) for t in tagged if not t.cautions] == []


def test_what_was_eaten_wild_has_a_caution() -> None:
    """Every wild plant that was eaten, drunk or taken as medicine has a caution."""
    taken = {"food", "greens", "medicine", "drink"}
    wild = [t for t in _taxa() if t.status != "crop" and any(use.use in taken for use in t.uses)]

    assert [str(t.id) for t in wild if not t.cautions] == []


@pytest.mark.parametrize(
    ("taxon", "word"),
    [
        ("Agrostemma githago", "poisonous"),
        ("Lolium temulentum", "poisonous"),
        ("Claviceps purpurea", "poisonous"),
        ("Secale cereale", "ergot"),
        ("Lathyrus sativus", "cripples"),
        ("Vicia ervilia", "poisonous"),
        ("Quercus", "leached"),
        ("Prunus spinosa", "cyanide"),
        ("Sambucus nigra", "poisonous"),
        ("Taxus baccata", "poisonous"),
        ("Conium maculatum", "deadly"),
        ("Hyoscyamus niger", "poisonous"),
        ("Corylus avellana", "allergic"),
    ],
)
def test_the_known_dangers_are_named(taxon: str, word: str) -> None:
    """The caution of a dangerous plant names the danger."""
    assert any(word in caution for caution in _taxon(taxon).cautions)


def test_cautions_are_whole_sentences() -> None:
    """Every caution begins with a capital and ends with a full stop."""
    cautions = {caution for taxon in _taxa() for caution in taxon.cautions}

    assert [c for c in cautions if not (c[0].isupper() and c.endswith("."))] == []


def test_every_taxon_and_every_fact_names_a_known_source() -> None:
    """Every taxon, use and window has a source, and each source named is in the list of sources."""
    facts = [(str(t.id), fact) for t in _taxa() for fact in (*t.uses, *t.windows)]
    named = {key for t in _taxa() for key in (*t.sources, *t.ecology.sources)}
    named |= {key for _, fact in facts for key in fact.sources}

    assert [str(t.id) for t in _taxa() if not t.sources] == []
    assert [name for name, fact in facts if not fact.sources] == []
    assert [str(t.id) for t in _taxa() if t.ecology.habitat and not t.ecology.sources] == []
    assert sorted(named - set(_packs().sources)) == []


def test_only_what_was_seen_is_called_read() -> None:
    """A window that is called read rests on a source that was read itself."""
    sources = _packs().sources
    read = [(str(t.id), w) for t in _taxa() for w in t.windows if w.known == "read"]

    assert read
    assert [name for name, w in read if not any(sources[key].known == "read" for key in w.sources)] == []


def test_facts_use_listed_words_only() -> None:
    """Tags, parts, keeping and how well a fact is known are all words from the lists."""
    parts = set(_packs().words.parts)
    listed = (Path(narrate.__file__).parents[1] / "DEVELOPERS.md").read_text(encoding="utf-8")
    tags = {tag for t in _taxa() for tag in t.tags}
    odd = [
        str(t.id)
        for t in _taxa()
        if any(use.part is not None and use.part not in parts for use in t.uses)
        or any(window.part not in parts or not set(window.keeping) <= set(KEEPING) for window in t.windows)
        or any(fact.known not in KNOWN for fact in (*t.uses, *t.windows, t.ecology))
    ]

    assert odd == []
    assert sorted(tag for tag in tags if f"`{tag}`" not in listed) == []


def test_only_weeds_of_fields_carry_the_tag() -> None:
    """The tag 'field-weed' and the strength with which the ecology speaks of fields agree."""
    tagged = {str(t.id) for t in _taxa() if "field-weed" in t.tags and t.rank != "group"}
    speaks = {str(t.id) for t in _taxa() if t.ecology.field_weed in ("strong", "moderate") and t.rank != "group"}

    assert sorted(speaks - tagged) == []
    assert sorted(name for name in tagged if _taxon(name).ecology.field_weed == "none") == []


def test_members_of_groups_and_look_alikes_are_taxa() -> None:
    """Every member of a group and every look-alike is itself a taxon of the region."""
    taxa = _packs().taxa

    assert [(str(t.id), name) for t in _taxa() for name in (*t.members, *t.look_alikes) if name not in taxa] == []


def test_every_name_has_a_plural() -> None:
    """Every taxon has a common name and its plural, so that it can stand in a sentence."""
    assert [str(t.id) for t in _taxa() if not (t.name and t.plural)] == []
