"""The pages for visitors of the example say no more than its records, and say it with care."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

import pytest

from narrate.model.ids import SITE
from narrate.telling.tell import narratives

if TYPE_CHECKING:
    from narrate.pipeline.judged import Judged


@pytest.fixture(scope="module")
def told(open_example: Judged) -> dict[str, str]:
    levels = ("context", "phase", "site")
    found = narratives(
        open_example.project, open_example.packs, open_example.findings, open_example.claims, "public", levels
    )
    return {subject.id: narrative.text for subject, narrative in found.items()}


def test_a_list_of_charcoal_that_is_cut_short_says_so(open_example: Judged, told: dict[str, str]):
    """The page names every tree of which two pieces were named, or says 'mostly' or 'other trees'."""
    for id, text in told.items():
        if not (said := re.search(r"[^.]*charcoal[^.]* came ([^.]*)\.", text)):
            continue
        rows = [r for r in open_example.project.counts if _context_of(open_example, r.sample) == id]
        trees = {r.identification.taxon for r in rows if r.part == "wood" and r.identification.taxon}
        broad = {t for t in trees if open_example.packs.taxa[t].rank == "broad"}
        named = len(re.split(r", | and ", re.sub(r"\([^)]*\)", "", said[1])))
        assert named >= len(trees - broad) or "mostly" in said[1] or "other trees" in said[1], id


def _context_of(whole: Judged, sample: str) -> str:
    return next((s.context for s in whole.project.samples if s.id == sample), "")


def test_what_is_less_than_sure_is_told_with_the_headline(told: dict[str, str]):
    """One of six early samples with corn holds only cf. corn, and one of seven late ones only a cf. small seed."""
    assert "6 of 23 samples held corn (in one of them not for sure)" in told[SITE]
    assert "from 22 of 23 samples to 7 of 25 (in one of them not for sure)" in told[SITE]
    assert "six held corn (in one of them not for sure)" in told["early"]


def test_the_richest_place_is_no_richest_soil(told: dict[str, str]):
    """C05 is the richest place; a single sample of C13 is richer, so that no soil is called the richest."""
    assert "this place gave more plants than any other" in told["C05"]
    assert not [id for id, text in told.items() if "richest soil" in text]


def test_heavy_fractions_that_wait_are_told(told: dict[str, str]):
    """The records of S023 and S036 say `sorted: false`; no other place speaks of what sank."""
    said = "What sank when we washed some of this soil still waits to be sorted."

    assert {id for id, text in told.items() if said in text} == {"C10", "C15"}


def test_signs_of_corn_are_signs_of_corn_as_food(told: dict[str, str]):
    """Corn lay in nine of ten late places, and in four of them it was read as food."""
    assert "Signs of corn as food came from hearth C12" in told["late"]


def test_a_disturbance_is_told_as_the_diggers_saw_it(told: dict[str, str]):
    """The record calls C21 plough soil and says that a modern field drain cuts C20."""
    assert "A plough had once turned this soil." in told["C21"]
    assert "A drain of our own times cuts through this soil, so we trust it less." in told["C20"]


def test_what_most_seeds_were_is_not_told_of_all(told: dict[str, str]):
    """The note on C01's goosefoot says 'most with thin smooth coats'; that on C05's stands beside 377 of the 540."""
    assert "Many of the seed coats were thin" in told["C01"]
    assert "Most of the seed coats were thin" in told["C05"]


def test_what_one_row_says_is_not_told_of_all_rows(told: dict[str, str]):
    """In C06 'free of husk' stands beside 42 maygrass grains of one sample, of 134 in all."""
    assert "Some of the maygrass grains had lost their husks." in told["C06"]


def test_numbers_that_hold_fragments_say_so(told: dict[str, str]):
    """The sheets have 465 whole goosefoot seeds and 75 fragments for C05, and 64 and 16 barley grains for C06."""
    assert re.search(r"goosefoot seeds and bits of seed \([^)]*\), 540 in all", told["C05"])
    assert "80 little barley grains and bits of grain" in told["C06"]


def test_words_of_a_grade_are_those_of_its_frames(judged_example: Judged):
    """What is told of a deposit's state goes by a frame of its grade: 'good grounds' of the strongest alone."""
    for id in ("public", "label"):
        audience = judged_example.packs.audiences[id]
        for grade, frames in audience.frames.items():
            assert audience.words[f"state {grade}"] in frames, (id, grade)


def test_found_nowhere_else_is_of_burned_finds(told: dict[str, str]):
    """C08 held a pokeweed seed that no fire had touched, so C14 is only the one place with burned ones."""
    assert "the only place where we found burned panicgrass" in told["C14"]


def test_what_a_plant_means_to_people_stands_apart_from_its_poison(told: dict[str, str]):
    """That tobacco is sacred follows the find, and that it can poison stands at the foot of the page."""
    sacred, poison = "To many Native people tobacco is a sacred plant.", "Tobacco"
    for id in ("C07", "early", "late", SITE):
        food = told[id].split("## Food")[1].split("\n## ")[0]
        care = told[id].split("## A word of care")[1]
        assert sacred in food and poison in care, id
    assert not [text for text in told.values() if re.search(r"tobacco \([^)]*poison", text)]


def test_what_a_page_warns_of_it_tells_as_a_find(told: dict[str, str]):
    """A poisonous plant in the warning of a place is named before as a find."""
    for id in ("C11", "C14", "C16", "C22"):
        finds, care = told[id].split("## A word of care")
        warned = re.search(r"(\w.*) can poison people", care)
        assert warned
        for plant in re.split(r", | and ", warned[1]):
            assert re.search(plant.removesuffix("ies").removesuffix("s"), finds, re.IGNORECASE), (id, plant)


def test_what_looks_like_a_plant_that_is_eaten_is_named_beside_it(told: dict[str, str]):
    """Spotted spurge, which looks like purslane, lay in C14 and C16, where purslane is told as eaten elsewhere."""
    said = "Spotted spurge, a poisonous plant that looks much like purslane, lay here too."

    assert {id for id, text in told.items() if said in text} == {"C14", "C16"}
    assert {id for id, text in told.items() if "known to have eaten them" in text} == {"C14", "C16"}


def test_nothing_stands_under_a_heading_that_it_is_no_part_of(told: dict[str, str]):
    """What was found is told as found, a hint under what is not known, and a caution at the foot."""
    with_season = [text.split("## The time of year")[1] for text in told.values() if "## The time of year" in text]
    seasons = [text.split("\n## ")[0] for text in with_season]

    assert len(seasons) > 8
    assert not [text for text in seasons if re.search(r"can poison|guide|nowhere|only place|people cracked", text)]
    assert re.search(r"We found burned beans [^.]*nowhere else", told["C12"].split("\n## ")[0])
    assert "people cracked nuts" in told["C07"].split("## What we do not know")[1]


def test_early_corn_and_squash_are_told_as_finds(told: dict[str, str]):
    """The count sheet has corn in C01, C04, C07 and C08, and rind of squash in C01, a few pieces of each."""
    assert "one bit of corn cob and six pieces of squash rind" in told["C01"]
    for id, corn in (("C04", "two bits of corn kernel"), ("C07", "three bits of corn cob"), ("C08", "corn kernel")):
        assert corn in told[id], id


def test_what_the_diggers_saw_of_pots_and_ears_is_told(told: dict[str, str]):
    """The records have a jar mouth down and crust on sherds in C12, and ears as if hung from a rafter in C17."""
    assert "Part of a pot lay there, mouth down." in told["C12"] and "a burned crust of food" in told["C12"]
    assert "ears lying as if they had hung from a rafter" in told["C17"]
    assert "ears of corn lying here" not in told["C17"]
    assert "saw many broken pots" in told["C07"]


def test_that_the_plough_cut_a_place_is_told(told: dict[str, str]):
    """The record says that the old plough cut the top of C16; no reading of a disturbance is made of it."""
    assert "saw that a plough had cut into this soil." in told["C16"]


def test_ground_that_fire_left_as_it_was_speaks_for_little_air(told: dict[str, str]):
    """The record of C13 says 'no reddening of the walls: whatever burned here smouldered with little air'."""
    assert "no earth turned red by heat, and a fire with little air leaves none." in told["C13"]


def test_a_food_that_one_place_alone_speaks_for_is_told_of_its_phase(told: dict[str, str]):
    """C06 speaks for wild fruit as food, which the early phase as a whole does not."""
    alone = "Storage pit C06 alone speaks for wild fruit as food, and we cannot say it of the Early hamlet as a whole."
    assert alone in told["early"]
    assert "alone speaks for" not in told["late"]


def test_small_finds_stand_with_the_list_of_finds(told: dict[str, str]):
    """Squash rind of C06 and C12 is told before anything is read of these places."""
    for id in ("C02", "C06", "C12"):
        finds = told[id].split("mong the smaller finds")[0]
        assert not re.search(r"charcoal|it may be|looks as if|fit well|hint", finds.split("besides wood")[1]), id


def test_wood_is_told_of_by_what_was_named(told: dict[str, str]):
    """97 of 349 pieces that were named were pine, and not a quarter of all that burned."""
    assert "More than a quarter of the pieces of wood that we could name were pine." in told["late"]


def test_wild_kin_counted_with_the_crops_is_told(told: dict[str, str]):
    """The sheet has a goosefoot seed with a thick coat in C16, of the late samples with small-seeded crops."""
    thick = "In rubbish heap C16 at least one goosefoot seed had a thick coat, as the wild plant has, and we count it"
    assert thick in told["late"]
    assert "thick coat" not in told["early"]


def test_litres_keep_their_half(told: dict[str, str]):
    """The samples of the dig have 411.5 litres."""
    assert "411.5 litres" in told[SITE]


def test_a_plant_told_by_itself_is_told_with_its_samples(told: dict[str, str]):
    """Purslane was in none of 23 early samples and in 14 of 25 late ones."""
    assert re.search(r"Purslane [^.]*more samples than before, from none of 23 to 14 of 25\.", told[SITE])


def test_three_samples_are_several(told: dict[str, str]):
    """Kernels in three samples of one pit did not turn up 'again and again'."""
    assert "Several of our soil samples from here held kernels of corn" in told["C14"]
    assert "A sample is soil" not in told["C14"]
    assert not [text for text in told.values() if "again and again" in text]


def test_timber_is_told_apart_from_firewood(told: dict[str, str]):
    """The wood of C17 is noted as of roof and walls, so the late hamlet's burned wood is not all told as firewood."""
    fire = told["late"].split("## The fire")[1].split("\n## ")[0]

    assert re.search(r"Not all burned wood was firewood: some of it, in burned building C17, had been part of a", fire)
    assert "part of a building" not in told["early"]
