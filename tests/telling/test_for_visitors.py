"""The pages for visitors of the example: doubts, grades and finds told as they stand."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import TYPE_CHECKING

import pytest

from narrate.model.claims import GRADE_NAMES
from narrate.model.ids import SITE
from narrate.telling.plan import standing
from narrate.telling.tell import narratives
from tests.telling.told_once import ToldOnce

if TYPE_CHECKING:
    from narrate.pipeline.judged import Judged


@pytest.fixture(scope="module")
def told(told_of_open: ToldOnce) -> dict[str, str]:
    found = told_of_open["public"]
    return {subject.id: narrative.text for subject, narrative in found.items()}


@pytest.mark.parametrize(("id", "statement"), [("C03", "food.nut"), ("C13", "fuel.smudge")])
def test_a_rival_is_told_in_the_words_of_its_grade(open_example: Judged, id: str, statement: str):
    """What the remains support is no 'perhaps' beside the reading that they support as well."""
    claim = open_example.claims.by_id[f"{id}/{statement}"]  # type: ignore[index]
    part = open_example
    found = narratives(part.project, part.packs, part.findings, part.claims, "public", ("context",))
    said = [s.text for n in found.values() for s in n.sentences() if claim.id in s.refs and "both may be true" in s.text]

    assert claim.grade == "supports"
    assert len(said) == 1 and re.match(r"It also looks as if|We also think it likely|Our finds also fit", said[0])


def test_doubtful_and_broken_halves_are_told_apart(told: dict[str, str]):
    """C12 holds eleven halves of beans, some broken, and three cf.: the count sheet has 6 + 2 + 1 + 1 + 1, and 3."""
    assert "11 (perhaps 14) halves and bits of bean seeds" in told["C12"]
    assert "one (perhaps two) bits of acorn kernel" in told["C03"]


def test_what_was_noted_as_present_is_some(told: dict[str, str]):
    """Needles that were noted and not counted do not share the number of the flakes of bark."""
    assert "four flakes of pine bark and some pine needles" in told["C13"]


def test_stems_of_grass_are_no_cane(told: dict[str, str]):
    """Culms of grass are stems of grass, on the page that says where cane was found too."""
    assert not [id for id, text in told.items() if "or cane" in text]
    assert "14 pieces of grass stem" in told["C05"] and "cane (a tall native grass)" in told["C17"]


def test_a_store_is_filled_later_unless_it_burned(told: dict[str, str]):
    """What lies in a storage pit is what filled it, but for the pit whose store was lost to fire."""
    later = "a pit dug to keep food in; what lies in it now may be what filled it later."

    assert all(later in told[id] for id in ("C04", "C06", "C14"))
    assert "a pit dug to keep food in." in told["C05"]


def test_nearly_all_goosefoot_is_told_as_goosefoot(told: dict[str, str]):
    """540 of some 560 seeds of small-seeded crops are goosefoot."""
    assert "people used goosefoot above all, with some knotweed, maygrass and sumpweed" in told["C05"]


def test_a_smoke_pit_is_not_taken_as_proved(told: dict[str, str]):
    """What such pits were for is a reading and no part of the name."""
    assert "fuel may have been made to smoulder" in told["C13"]


def test_lost_test_seeds_are_told(told: dict[str, str]):
    """The test in C16 returned 21 of 50 seeds."""
    assert "we put 50 marked seeds into some of this soil, and only 21 came back" in told["C16"]


def test_many_seeds_may_be_of_one_fruit(told: dict[str, str]):
    """C06 is read by its many seeds of fruit, and a strawberry alone holds hundreds."""
    assert "But one fruit can hold hundreds of seeds." in told["C06"]


def test_small_numbers_are_called_small(told: dict[str, str]):
    """Early floors and hearths have eight samples with small-seeded crops of eight, late ones one of eight (sheets)."""
    said = "On floors and hearths the fall of small-seeded crops is steep (all eight samples, then one of eight)"
    few = "rubbish heaps and storage pits held some at both times, but far less in each litre of soil later on."
    assert f"{said}, though these numbers are small; {few}" in told[SITE]


def test_late_wheat_is_explained(told: dict[str, str]):
    """Why wheat in an old pit must be late."""
    assert "the one wheat grain we found here got into the soil in later times, since wheat came from overseas later." in told["C20"]


def test_every_exception_is_named(told: dict[str, str]):
    """C11 and C13 held bits of cob and hardly a kernel, and what each was instead is told of each."""
    cobs = "But in hearth C11 nearly all the corn was bits of cob, which nobody eats, and it speaks of fires fed with corn"
    smoke = "Smoke pit C13 speaks of a slow fire kept for its smoke instead: this looks like a pit for smoke"
    assert f"{cobs} cobs instead. {smoke}, and nearly all the corn in it was cob." in told["late"]


def test_plants_are_told_apart_by_their_glosses(open_example: Judged):
    """No two words of the glossary that name unlike plants of the dig are explained alike."""
    glossary = open_example.packs.audiences["public"].glossary
    names = ("goosefoot", "knotweed", "pigweed", "lambsquarters", "maygrass", "sumpweed", "little barley")

    assert len({glossary[name] for name in names}) == len(names)


def test_a_plant_is_explained_where_it_is_first_named(told: dict[str, str]):
    """Knotweed and little barley in C02, maypops and brambles in C14, which no list of finds has named before."""
    assert "knotweed (a cousin of buckwheat with three-sided seeds)" in told["C02"]
    assert "little barley (a small cousin of barley)" in told["C02"]
    assert "(such as brambles, wild berries, and maypops, sweet fruits of a wild vine)" in told["C14"]


def test_weeds_of_open_ground_tell_of_digging_and_clearing(told: dict[str, str]):
    """Such weeds need soil that was dug or cleared, and of ground that feet trod bare no page speaks."""
    weeds = [text for text in told.values() if "open ground" in text or "dug or cleared" in text]

    assert len(weeds) >= 4
    assert not [text for text in weeds if "trodden ground" in text]


@pytest.mark.parametrize(
    ("id", "plants"),
    [
        ("C14", ("Nightshade", "pokeweed", "elderberries")),
        ("C15", ("Tobacco",)),
        ("C07", ("Tobacco",)),
        ("late", ("Tobacco",)),
    ],
)
def test_what_can_poison_is_named(told: dict[str, str], id: str, plants: tuple[str, ...]):
    """Each poisonous plant of a place is called so, with the seeds that readings rest on and do not name."""
    poison = re.search(r"([^.]*) can poison people\.", told[id])

    assert poison and all(plant in poison[1] for plant in plants)


def test_tobacco_is_told_with_its_standing(told: dict[str, str]):
    """Wherever a page names tobacco it says what it is to many Native people, and speaks for no one nation."""
    pages = [text for text in told.values() if "obacco" in text]

    assert len(pages) >= 4
    assert all("To many Native people tobacco is a sacred plant." in text for text in pages)


def test_no_page_forbids_what_it_says_people_gather(told: dict[str, str]):
    """Nuts that do no harm are no matter of a caution, and no page says that people gather what it warns of."""
    cautions = [re.findall(r"[^.]*(?:eating or using)[^.]*\.", text) for text in told.values()]

    assert not [one for found in cautions for one in found if re.search(r"hickory|acorn|tobacco or any other wild", one)]
    assert not [text for text in told.values() if re.search(r"people still (?:gather|pick)", text)]


@pytest.mark.parametrize("id", ["late", SITE])
def test_who_grows_the_chief_crop_today_is_told(told: dict[str, str], id: str):
    """Corn lives on in Native farmers' fields, which is told behind corn as food and not behind a fire fed with cobs."""
    grown = r"Native farmers still grow corn today\.|Today Native farmers still grow corn\."
    before = re.split(r"(?<=[.?]) ", re.split(grown, told[id])[0].strip())[-1]

    assert re.search(grown, told[id])
    assert not re.search(r"in their fires|fires fed|both may be true", before), before


def test_small_seeded_crops_are_explained_once_a_page(told: dict[str, str]):
    """Which crops are meant, and that corn, beans and squash are not among them, each page says once."""
    pages = [text for id, text in told.items() if "mall-seeded crops" in text and not id.startswith("S")]

    assert len(pages) >= 8
    assert {text.count("small seeds, and not corn, beans or squash.") for text in pages} == {1}
    assert not [text for text in told.values() if "garden" in text]


def test_no_reading_is_no_sign_of_the_opposite(told: dict[str, str]):
    """What one phase alone bears out is not denied of the other: native crops lay in 7 of 25 late samples too."""
    assert "nly in the" not in told[SITE]
    assert "small-seeded crops served as food in the Early hamlet, and corn in the Late hamlet." in told[SITE]
    open_ = "Where we speak of one time alone, the finds of the other leave the matter open."
    assert told[SITE].count(open_) == 1
    assert told[SITE].index("people burned corn cobs in their fires.") < told[SITE].index(open_)


def test_tobacco_seeds_tell_of_handling(told: dict[str, str]):
    """Two seeds are a hint that tobacco was handled; who brought it, and that it was a whole plant, they do not say."""
    assert not [text for text in told.values() if "brought tobacco" in text]
    assert "handled tobacco" in told["C15"]


def test_a_grass_that_nobody_named_is_not_called_wild(told: dict[str, str]):
    """Poaceae indet. may be of a field, a roof or a bed; that it grew wild, only a closer name could say."""
    assert [id for id, text in told.items() if re.search(r"wild grass(?:es)?\b", text)] == []
    assert "grass stem" in told["C17"] and "grass grains" in told["C14"]


def test_visitors_read_nothing_firmer_than_the_team(open_example: Judged, judged_example: Judged):
    """Without the restricted context the late hamlet would read as eating wild fruit; with it it does not."""
    for claim in open_example.claims.all_holding():
        of_all = judged_example.claims.find(claim.about, claim.statement)
        assert of_all is not None and of_all.verdict == "holds", claim.id
        assert GRADE_NAMES.index(claim.grade) <= GRADE_NAMES.index(of_all.grade), claim.id
        assert standing(claim) == standing(of_all), claim.id
    assert open_example.claims.by_id["late/food.fruit"].verdict == "cannot tell"


def test_a_change_of_the_open_part_alone_is_not_told(open_example: Judged):
    """What the whole dig does not show as a change is none for visitors, of groups and of single plants."""
    of_corn = frozenset(c for c in open_example.findings.changed() if c.what in ("maize", "Zea mays"))
    assert {c.what for c in of_corn} == {"maize", "Zea mays"}
    alone = replace(open_example, findings=replace(open_example.findings, only_in_part=of_corn))
    found = narratives(alone.project, alone.packs, alone.findings, alone.claims, "public", ("site",))
    said = next(iter(found.values())).text

    assert "Maygrass" in said and not re.search(r"Corn (became|went|turned up|and purslane)", said)


@pytest.mark.parametrize("id", ["early", "late", SITE])
def test_places_are_called_what_they_are(told: dict[str, str], id: str):
    """The numbers of places are explained once on the pages of phases and the dig, and stand behind a kind of place."""
    text = re.sub(r" \([^)]*\)", "", told[id])
    kinds = {"hearth", "hearths", "floor", "oven", "pit", "pits", "heap", "building", "and", "as", "Hearth", "Floor"}
    before = set(re.findall(r"(\S+) C\d\d", re.sub(r"C\d\d, (?=C\d\d)", "", text)))

    assert len(re.findall(r"Numbers such as C\d\d are ours, one for each place that we dug\.", text)) == 1
    assert before <= kinds


@pytest.mark.parametrize("id", ["early", "late", SITE])
def test_the_public_voice_is_no_list_of_signs(told: dict[str, str], id: str):
    """What is found is told as found; 'signs that' and 'left behind' open no account of a phase or the dig."""
    assert not re.search(r"we saw signs that|there were signs that|signs in .* that|left .* behind", told[id])
    assert told[id].count("A hamlet is") + told[id].count("By a hamlet we mean") == 1


def test_purslane_is_told_as_debated(told: dict[str, str]):
    """
    Purslane of a time before AD 1492 is no settled matter, and the story of the dig says so once.

    Source: Chapman, Stewart and Yarnell 1974, on finds in eastern North America older than contact (from memory).
    """
    told_so = re.findall(r"urslane (?:was long taken for|for a newcomer)[^.]* debate", told[SITE])
    assert len(told_so) == 1
    assert not [id for id, text in told.items() if "still debate" in text and id != SITE]


@pytest.mark.parametrize("id", [SITE, "C12", "C14", "C15", "C16"])
def test_no_page_names_purslane_without_its_look_alike(told: dict[str, str], id: str):
    """Spotted spurge is poisonous, and the pack names it as what is taken for purslane."""
    assert re.search(r"poisonous look-alike|poisonous plant that looks much like purslane", told[id])


def test_words_of_parts_and_woods_are_explained(told: dict[str, str]):
    """Chaff, germs, sassafras, sweetgum and hardwood are no everyday words: each page explains them at first use."""
    for word, gloss in (
        ("corn chaff", "the thin scales around each kernel"),
        ("sassafras", "a small tree with sweet-smelling wood"),
        ("sweetgum", "a tree with star-shaped leaves"),
        ("hardwood", "wood of trees with broad leaves"),
    ):
        pages = [text for id, text in told.items() if re.search(rf"\b{word}\b", text) and not id.startswith("S")]
        assert pages and {text.count(gloss) for text in pages} == {1}, word


def test_no_page_speaks_of_a_plant_that_it_has_not_named(told: dict[str, str]):
    """C07 held one tobacco seed: the page says so before it says what tobacco is to people."""
    assert "One tobacco seed lay here too. To many Native people tobacco is a sacred plant." in told["C07"]


def test_what_was_not_sorted_is_told(open_example: Judged, told: dict[str, str]):
    """Where finds come from a class that was sorted in part, visitors read that their numbers are low; nowhere else."""
    said = re.compile(r"inest bits we sorted only a part|nly a part of the finest bits")
    context = {sample.id: sample.context for sample in open_example.project.samples}
    part = {
        context[row.sample] for row in open_example.project.counts
        if row.proportion_sorted < 1 and row.count.number and row.condition in ("charred", "partly charred")
    }

    assert {id for id, text in told.items() if said.search(text)} == part


def test_faint_signs_of_a_page_end_in_words_of_their_own(told: dict[str, str]):
    """Three hints of the dig, and no two sentences of them that close alike."""
    faint = re.findall(r"[^.]*faint signs[^.]*(?=\.)", told[SITE])
    ends = [" ".join(text.split()[-3:]) for text in faint]

    assert len(faint) > 2 and len(set(ends)) == len(ends)


def test_thatch_is_told_of_the_stems(told: dict[str, str]):
    """The note 'thatch' stands beside the stems of C17 in the count sheet, and beside nothing else of it."""
    assert "The laboratory took the pieces of grass stem for thatch." in told["C17"]


def test_what_lives_on_is_told_of_the_whole_and_not_of_each_pit(told: dict[str, str]):
    """Who grows corn today, and that kin of the old crops still grow, phases and the dig say, each of them once."""
    said = {id: len(re.findall(r"still grow\b", text)) for id, text in told.items() if "still grow" in text}

    assert said == {"early": 1, "late": 1, SITE: 1}


def test_what_stems_were_for_is_told_with_the_stems(told: dict[str, str]):
    """That grass stems lined C05 stands behind the list of finds that has them, and not at the end of the page."""
    _, _, after = told["C05"].partition("14 pieces of grass stem")

    assert "The laboratory took the stems for the lining of the pit." in ". ".join(after.split(". ")[:3])


def test_what_both_times_share_is_told_of_people_of_both(told: dict[str, str]):
    """Nuts were food early and late, which is told of people and not of a bare 'early and late'."""
    assert "people of both times used nuts as food." in told[SITE]
    assert not re.search(r"Early and late,", told[SITE])


def test_parts_of_one_pit_say_so(told: dict[str, str]):
    """C04 and C05 are fills of one feature, F4, in the records; C06 stands alone."""
    assert "C05 is our number for another part of the same pit." in told["C04"]
    assert "C04 is our number for another part of the same pit." in told["C05"]
    assert not re.search(r"of the same (?:pit|heap)", told["C06"] + told["C08"])


def test_work_is_no_weaker_than_the_fuel_made_of_its_waste(told: dict[str, str]):
    """Nuts were cracked and corn was stripped before shells and cobs could burn: nobody calls that a weaker reading."""
    assert all("weaker" not in told[id] and "such work came first" in told[id] for id in ("C03", "C11", "C13"))


def test_shells_in_a_fire_may_be_scraps(told: dict[str, str]):
    """The everyday account stands beside shells as fuel, be they the first reading of the page or a later one."""
    assert re.search(r"scraps of (?:food|a meal)", told["C01"])


def test_each_time_has_its_sentence_where_kinds_are_compared(told: dict[str, str]):
    """What early and late storage pits gave stands in two sentences, and in no list of both."""
    assert "Those of the Late hamlet gave us signs of corn as food" in told[SITE]
    assert not re.search(r"; those of the", told[SITE])


def test_several_fruits_are_explained_as_several(told: dict[str, str]):
    """Persimmons are fruits and no tree: a gloss agrees with the name that it stands behind."""
    assert "persimmons (sweet orange fruits)" in told["C03"]
    assert not [text for text in told.values() if re.search(r"(?:persimmons|elderberries|groundcherries) \(an? ", text)]


def test_what_was_made_ready_is_named(told: dict[str, str]):
    """Loose kernels stand behind the reading in C12, where beans are told just before, and goosefoot in C05."""
    assert "people had made the corn ready to use before it burned" in told["C12"]
    assert "people had made the goosefoot ready to use before it burned" in told["C05"]


def test_notes_on_finds_name_them(told: dict[str, str]):
    """In the sheet 'free of husk' stands beside maygrass and 'several still in clusters' beside strawberry."""
    assert "of the maygrass grains had lost their husks. Some of the strawberry seeds still clung together." in told["C06"]
    assert "Some some" not in told["C12"]


def test_few_whole_seeds_and_bits_are_counted_apart(told: dict[str, str]):
    """C15 has one corn kernel and one fragment of a kernel in the sheets."""
    assert "Also from corn: one corn kernel and one bit of kernel." in told["C15"]


def test_scorched_earth_is_told_once(told: dict[str, str]):
    """The record of C05 is the reason of its reading, and is not told again as a note."""
    assert told["C05"].count("scorched") == 1
    assert "The diggers saw ears lying as if they had hung from a rafter." in told["C17"]


def test_near_empty_places_belong_to_a_hamlet(told: dict[str, str]):
    """C09 is of the early phase and held four finds, told without a word of counting."""
    assert re.match(r"From post hole C09 of the Early hamlet we washed 4 litres of soil\. In it we found only ", told["C09"])


def test_what_all_places_share_is_no_news_of_two(told: dict[str, str]):
    """Small-seeded crops as food are told of the whole Early hamlet, and not again of the fills of two pits."""
    assert "have one thing in common" not in told["early"]


def test_nuts_that_ripen_with_the_fruit_are_not_passed_over(told: dict[str, str]):
    """C03 and C22 are read by a few seeds of soft fruit, and most of what lay there is hickory nutshell, which keeps."""
    assert "Hickory nuts ripen in autumn too, but they keep, so people may have burned them later." in told["C03"]
    assert "ripen in autumn too" in told["C22"]
    assert "ripen in autumn too" not in told["C06"]


def test_beans_are_told_from_wild_beans(told: dict[str, str]):
    """A seed of wild bean is in the sheets, so that beans of some kind lay in two places and grown ones in one."""
    assert "beans (of the kind that people grow)" in told["C12"]


def test_a_fragment_that_nobody_could_name_is_a_bit(told: dict[str, str]):
    """The sheet of post hole C09 has one indeterminate seed, and calls it a fragment."""
    assert "one bit of an unidentified seed" in told["C09"]
