"""What an agency reviewer, a visitor and an analyst may ask of every page of the example."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import replace
from typing import TYPE_CHECKING

import pytest

from narrate.model.ids import SITE, Subject
from narrate.model.measurement import Measurement
from narrate.model.narrative import Narrative
from narrate.model.style import Style
from narrate.telling.citations import author_year
from narrate.telling.page import OPENINGS_AT_MOST, opening
from narrate.telling.tell import narratives
from narrate.telling.through_time import beside_range
from tests.telling.told_once import ToldOnce

if TYPE_CHECKING:
    from narrate.pipeline.judged import Judged

AUDIENCES = ("report", "review", "public", "label", "public-es")
PEOPLE = re.compile(r"\b(we|our|us|people|someone|diggers|team|farmers|descendants|you|please)\b", re.IGNORECASE)


@pytest.fixture(scope="module")
def told(told_of_example: ToldOnce) -> dict[str, dict[Subject, Narrative]]:
    return {
        audience: told_of_example[audience]
        for audience in AUDIENCES
    }


@pytest.mark.parametrize("audience", AUDIENCES)
def test_no_two_contexts_of_the_example_share_a_paragraph(told: dict[str, dict[Subject, Narrative]], audience: str):
    """Every paragraph of every context is its own."""
    paragraphs = Counter(
        " ".join(sentence.text for sentence in paragraph)
        for subject, narrative in told[audience].items()
        if subject.level == "context"
        for section in narrative.sections
        for paragraph in section.paragraphs
    )

    assert [text for text, times in paragraphs.items() if times > 1] == []


def test_the_dig_is_set_beside_others_of_its_region_by_a_published_share(told: dict[str, dict[Subject, Narrative]]):
    """
    The share of samples with hickory nutshell stands beside the published range, with its work, and names no dig.

    Source: Gremillion 1998, plant remains of later villages in North Carolina: 83.3 %, 100 % and 100 % of samples.
    """
    said = [
        s.text
        for s in told["report"][Subject(level="site", id=SITE)].sentences()
        if s.text.startswith("Hickory nutshell")
    ]

    assert said == [
        "Hickory nutshell was in 46 of 51 samples here (90%, 95% interval 79–96%), within the range of three later "
        "villages of the North Carolina Piedmont: there it was in 83% to 100% of the flotation samples (see Gremillion "
        "1998)."
    ]


@pytest.mark.parametrize(
    ("value", "low", "high", "stands"),
    [
        (0.90, 0.79, 0.96, "within the range of"),
        (0.75, 0.47, 0.91, "which cannot be told from the range of"),
        (0.40, 0.28, 0.53, "less than at"),
    ],
)
def test_a_share_stands_apart_from_a_published_range_by_its_whole_interval(
    value: float, low: float, high: float, stands: str
):
    """Wilson's interval of 9 in 12 reaches into the range of 83 to 100 %; that of 20 in 50 does not."""
    share = Measurement(measure="ubiquity", value=value, low=low, high=high)

    assert beside_range(share, 0.833, 1.0) == stands


@pytest.mark.parametrize("audience", AUDIENCES)
def test_no_pattern_opens_more_than_three_sentences_of_a_page(told: dict[str, dict[Subject, Narrative]], audience: str):
    """The first two words of a sentence open three sentences of a page at most."""
    for narrative in told[audience].values():
        openings = Counter(opening(sentence.text) for sentence in narrative.sentences())
        assert max(openings.values(), default=0) <= OPENINGS_AT_MOST, (narrative.title, openings.most_common(2))


def test_works_cited_stand_behind_the_claim(told: dict[str, dict[Subject, Narrative]], judged_example: Judged):
    """
    Each work that a report cites is named by a rule that speaks for a claim of the sentence, and is no judgement.

    Notes of the field and laboratory, plants taken for newcomers and figures of other digs bring works of their own.
    """
    packs, claims = judged_example.packs, judged_example.claims.by_id
    noted = {key for seen in packs.observations for key in seen.sources}
    cited = 0
    for narrative in told["report"].values():
        for sentence in narrative.sentences():
            for said in re.findall(r"\bsee ([^()]*\d{4}[^()]*)\)", sentence.text):
                rules = [a.rule for ref in sentence.refs if ref in claims for a in claims[ref].held("for")]
                works = [packs.sources[key] for rule in rules for key in packs.rules[rule].sources]
                if "laboratory" in sentence.text or "record" in sentence.text or "note on" in sentence.text:
                    works += [packs.sources[key] for key in noted]
                if "times as much food" in sentence.text:
                    works += [packs.sources[key] for known in packs.words.exchanges for key in known.sources]
                if "since long before contact" in sentence.text:
                    works += [packs.sources[key] for taxon in packs.taxa.values() for key in taxon.long_here]
                if "as the list of plants has it" in sentence.text:
                    dated = [taxon for taxon in packs.taxa.values() if taxon.earliest is not None]
                    works += [packs.sources[key] for taxon in dated for key in taxon.sources]
                if "is on record, by which" in sentence.text:
                    works += [packs.sources[key] for key in noted]
                if any(known.where in sentence.text for known in packs.elsewhere):
                    works += [packs.sources[key] for known in packs.elsewhere for key in known.sources]
                behind = {author_year(work.authors, work.year) for work in works if work.kind == "work"}
                # A work of another region says that it is an analogy.
                bare = re.sub(r", by analogy from [^;]+", "", said)
                assert set(bare.split("; ")) <= behind, sentence.text
                cited += 1

    assert cited > 40


def test_a_work_is_cited_once_a_page(told: dict[str, dict[Subject, Narrative]]):
    """What was cited is known to the reader of the page."""
    for narrative in told["report"].values():
        works = [w for said in re.findall(r"\bsee ([^()]*\d{4}[a-z]?)\)", narrative.text) for w in said.split("; ")]
        assert len(works) == len(set(works)), narrative.title


def test_only_the_report_cites(told: dict[str, dict[Subject, Narrative]]):
    """Visitors and the review queue are not given works by author and year."""
    for audience in ("public", "label", "review"):
        assert not any(re.search(r"\bsee [A-Z]\w+", n.text) for n in told[audience].values())


def test_species_bear_their_authority_once_in_the_report(
    told: dict[str, dict[Subject, Narrative]], judged_example: Judged
):
    """
    With the Latin where the report names a species first, each phase before its contexts and the dig last.

    Maize is Zea mays L. (Linnaeus 1753, Species plantarum 2:971; from memory); the others have the pack's.
    """
    packs = judged_example.packs
    project = judged_example.project
    read: list[Subject] = []
    for phase in (*project.phases, None):
        read += [Subject(level="phase", id=phase.id)] if phase else []
        inside = [c.id for c in project.contexts if project.phase(c.phase) == phase]
        read += [Subject(level="context", id=id) for id in inside]
    read.append(Subject(level="site", id=SITE))
    whole = "\n".join(told["report"][subject].text for subject in read)
    named_in_latin = re.findall(r"\((?:cf\. )?\*([A-Z][a-z]+ [a-z-]+)\*", whole)
    seen = {latin for latin in named_in_latin if packs.taxa[latin].authority}
    for latin in seen:
        named = f"*{latin}* {packs.taxa[latin].authority}"
        assert whole.count(named) == 1, latin
        assert whole.index(named) == whole.index(f"*{latin}*"), latin

    assert "*Zea mays* L." in whole
    assert len(seen) > 15


def test_visitors_read_of_people(told: dict[str, dict[Subject, Narrative]]):
    """At least half of the sentences of each page, and six in ten of all, have a person in them."""
    people = sentences = 0
    for subject, narrative in told["public"].items():
        if subject.level == "sample":
            continue
        texts = [sentence.text for sentence in narrative.sentences()]
        with_people = sum(bool(PEOPLE.search(text)) for text in texts)
        people, sentences = people + with_people, sentences + len(texts)
        assert with_people * 2 >= len(texts), (narrative.title, with_people, len(texts))

    assert people / sentences > 0.6


def test_pages_that_name_food_end_with_a_caution(told: dict[str, dict[Subject, Narrative]]):
    """Contexts, phases and the dig that name nuts, fruit or greens say that the page is no guide to eating them."""
    plants = re.compile(r"\b(nuts?|acorns?|goosefoot|persimmons?|pokeweed|nightshade|tobacco|elderberr\w+)\b")
    for subject, narrative in told["public"].items():
        named = plants.search(re.sub(r"\w+ charcoal", "", narrative.text))
        if subject.level in ("context", "phase", "site") and named:
            last = narrative.sentences()[-1].text
            assert re.search(r"guide to eating or using", last), (narrative.title, last)


def test_living_people_and_plants_are_told_in_the_present(told: dict[str, dict[Subject, Narrative]]):
    """The dig and its phases end in the present: somebody grows, gathers or finds these plants today."""
    for subject, narrative in told["public"].items():
        if subject.level in ("phase", "site"):
            assert re.search(r"\b(?:still grow|still gather|can still find|still pick)\b", narrative.text), (
                narrative.title
            )


def test_every_context_has_a_next_step_in_review(told: dict[str, dict[Subject, Narrative]]):
    """Where something was found, the team reads what to do next, be it that nothing more is to be done."""
    for subject, narrative in told["review"].items():
        if subject.level == "context" and "held no charred" not in narrative.text:
            assert any(section.id == "next" for section in narrative.sections), narrative.title


def test_classes_of_plants_are_told_apart_from_single_plants(told: dict[str, dict[Subject, Narrative]]):
    """Nuts as a class stand still while acorns fall and purslane rises: no page says that gathering did not change."""
    site = Subject(level="site", id=SITE)
    text = told["report"][site].text
    assert re.search(
        r"nuts \(22 of 23, then 23 of 27\),? and fleshy fruits \(9 of 23, then 11 of 27\) show no difference", text
    )
    assert "nine of the 21 named at least to genus and found in five samples or more (wood left aside) differ beyond chance" in text
    assert "and acorns fell; maize and purslane rose." in text
    assert "By sample maypop (none, then 8), black nightshade (none, then 7)" in text
    assert "in gathering none" not in text
    plain = told["public"][site].text
    unglossed = re.sub(r" \([^()]*\)", "", plain)
    assert "Purslane turned up in more samples than before, from none of 23 to 14 of 27." in unglossed
    assert re.search(r"Maygrass and [a-z ]+ turned up in fewer samples than before\.", unglossed)
    assert "no clear one in what they gathered" not in plain


def test_poisonous_plants_are_warned_of_first(told: dict[str, dict[Subject, Narrative]]):
    """Pokeweed, all of which is poisonous raw, goes before nuts and fruit in the caution of the pit that held it."""
    assert "pokeweed" in told["public"][Subject(level="context", id="C14")].sentences()[-1].text


@pytest.mark.parametrize("audience", ["report", "public"])
def test_a_plant_is_told_as_food_once(told: dict[str, dict[Subject, Narrative]], audience: str):
    """Goosefoot of the full pit is not told as food a second time because it is a small seed as well."""
    sentences = told[audience][Subject(level="context", id="C05")].sentences()
    plant = "chenopod" if audience == "report" else "goosefoot"

    readings = [s.text for s in sentences if "laboratory" not in s.text]
    assert sum(plant in text and "as food" in text for text in readings) == 1


def test_a_phase_is_set_beside_the_other(told: dict[str, dict[Subject, Narrative]]):
    """Each phase says in how many more or fewer samples than the other it held the plants that changed."""
    early, late = (told["report"][Subject(level="phase", id=id)].text for id in ("early", "late"))

    assert (
        "ompared with the Late hamlet, the Early hamlet held" in early
        or "et beside the Late hamlet, the Early hamlet held" in early
    )
    assert "seeds of the native crops in more of its samples (22 of 23, against 7 of 27)" in early
    assert "maize in fewer (6 of 23, against 24 of 27)" in early
    assert "maize in more (24 of 27, against 6 of 23)" in late


def test_the_use_of_a_plant_as_food_is_said_in_short_after_the_first(told: dict[str, dict[Subject, Narrative]]):
    """After the first reading of food a page of the report says 'supports maize as food', not the whole phrase anew."""
    whole = re.compile(r"(?:supports?|suggests?|consistent with) the use of [^.]* as food")
    for narrative in told["report"].values():
        texts = [sentence.text for sentence in narrative.sentences()]
        first = next((i for i, text in enumerate(texts) if " as food" in text), len(texts))
        assert not [text for text in texts[first + 1 :] if whole.search(text)], narrative.title


def test_changes_name_the_samples_of_each_phase(told: dict[str, dict[Subject, Narrative]]):
    """A change is told as so many samples of the first phase and so many of the last; of wood, of those looked at."""
    texts = [sentence.text for narrative in told["report"].values() for sentence in narrative.sentences()]
    of_wood = "in 6 of 16 samples whose wood was looked at in the first phase and in 21 of 22 in the last"
    assert any(of_wood in text for text in texts)
    assert not [text for text in texts if "in both phases)" in text or "in the two phases together)" in text]


def test_small_seeds_that_are_native_crops_are_no_food_of_their_own(told: dict[str, dict[Subject, Narrative]]):
    """Chenopod is not told as a small seed beside the native seed crops, nor by the hearth, pit, phase or dig."""
    for audience in ("report", "public", "review"):
        for subject, narrative in told[audience].items():
            for sentence in narrative.sentences():
                chief = r"small seeds (?:of herbs and grasses )?\((?:such as|chiefly) (\w+)"
                told_as = re.findall(chief, sentence.text)
                assert not {"goosefoot", "chenopod"} & set(told_as), (audience, subject.id, sentence.text)


def test_the_deposit_is_told_with_the_place(told: dict[str, dict[Subject, Narrative]]):
    """The kind of deposit and its security stand beside phase and years, and need no sentence of their own."""
    for subject, narrative in told["report"].items():
        if subject.level == "context" and len(narrative.sentences()) > 2:
            first = narrative.sentences()[0].text
            assert re.search(r"; an? [a-z ]+ deposit, (?:sealed|open)\)", first) or "disturbed" in narrative.text
            assert "Excavation recorded a" not in narrative.text


def test_cautions_of_wet_ground_are_not_told_of_charred_remains(told: dict[str, dict[Subject, Narrative]]):
    """A rule's caution that cannot bear on the dig is left out."""
    assert not any("wet hollow" in n.text for a in ("report", "review") for n in told[a].values())


def test_wood_in_refuse_is_no_news(told: dict[str, dict[Subject, Narrative]]):
    """Charcoal lies in all refuse: a pit of it where more is read tells of its food and not of wood as fuel."""
    pit = told["report"][Subject(level="context", id="C14")].text

    assert "wood as fuel" not in pit and "as food" in pit
    assert "wood in their fires" in told["public"][Subject(level="context", id="C12")].text


def test_a_near_empty_posthole_is_one_sentence(told: dict[str, dict[Subject, Narrative]]):
    """C09 held four things, and that they carry no reading is said with them; the richest pit has three paragraphs."""
    posthole = told["report"][Subject(level="context", id="C09")]
    pit = told["report"][Subject(level="context", id="C06")]

    assert len(posthole.sentences()) == 1
    assert sum(len(section.paragraphs) for section in pit.sections) == 3


def test_plants_of_a_season_are_named(told: dict[str, dict[Subject, Narrative]]):
    """'Plants of early summer' are told by one or two of them, for the report and for visitors."""
    early = Subject(level="phase", id="early")

    assert "lants of early summer, chiefly maygrass and little barley, were in 19 of 23" in told["report"][early].text
    assert "lants that ripen in early summer, such as maygrass and little barley" in told["public"][early].text
    assert "which ripens in early summer, lay with" in told["public"][Subject(level="context", id="C08")].text


def test_one_change_is_told_once(told: dict[str, dict[Subject, Narrative]]):
    """Cob parts are maize: where maize spread, that its cobs spread is no second change."""
    site = told["report"][Subject(level="site", id="site")].text

    assert "a spread of maize between the phases" in site
    assert "a spread of cob parts" not in site


def test_the_panel_of_a_phase_tells_what_sets_it_apart(told: dict[str, dict[Subject, Narrative]]):
    """Garden seeds for the Early hamlet and corn for the Late, though nuts are as firm in both."""
    early, late = (told["label"][Subject(level="phase", id=id)].text for id in ("early", "late"))

    assert "people used small-seeded crops" in early
    assert "people used corn as food" in late


def test_contexts_where_a_thing_is_read_carry_it(told: dict[str, dict[Subject, Narrative]]):
    """Contexts carry a reading; no reading 'finds support', and no phase is told as 'across the dig'."""
    report = told["report"][Subject(level="phase", id="late")].text

    assert re.search(
        r"C11 and C13 (speak for|argue for|are evidence for) maize cobs as fuel, which C15 only suggests", report
    )
    assert "support in" not in report
    assert "cross the dig" not in told["public"][Subject(level="phase", id="late")].text


@pytest.mark.parametrize("audience", ["public", "label"])
def test_a_plant_is_explained_once_a_page(told: dict[str, dict[Subject, Narrative]], audience: str):
    """'goosefoot seeds (from a plant with tiny round seeds)' at the first use, and bare from then on."""
    for narrative in told[audience].values():
        glosses = r"\b(?!and\b|picked\b|of\b)(\w+)(?: (?!of\b)\w+)?(?: and bits of \w+)? \((?:from )?an? [a-z ]+\)"
        explained = Counter(re.findall(glosses, narrative.text))
        assert not explained or max(explained.values()) == 1, (narrative.title, explained)

    assert any("(from a plant with tiny round seeds)" in n.text for n in told["public"].values())


@pytest.mark.parametrize("audience", ["report", "review", "public", "label"])
def test_the_style_of_the_project_stands_in_all_words(judged_example: Judged, audience: str):
    """Era, thousands, unit and dash of project.yaml, in every sentence and summary for every audience."""
    whole = judged_example
    style = Style(era="CE", thousands="space", litre="liter", dash="hyphen")
    project = replace(whole.project, style=style)
    told = narratives(project, whole.packs, whole.findings, whole.claims, audience)
    texts = [s.text for n in told.values() for s in (*n.sentences(), *([n.summary] if n.summary else []))]
    # A quotation stands as it was written.
    whole_text = re.sub(r"“[^”]*”", "", "\n".join(texts))

    assert re.search(r"\bCE\b", whole_text)
    # A panel counts neither finds nor soil where something else is to be told.
    assert audience == "label" or (re.search(r"\d\u202f\d{3}", whole_text) and "liter" in whole_text)
    assert re.findall(r"\d,\d{3}\b|\d–\d|\blitres?\b|\bAD\b", whole_text) == []


def of_context(told: dict[str, dict[Subject, Narrative]], audience: str, id: str) -> str:
    return " ".join(s.text for s in told[audience][Subject(level="context", id=id)].sentences())


@pytest.mark.parametrize("audience", ["report", "review"])
def test_seasons_of_gathering_are_said_in_short(told: dict[str, dict[Subject, Narrative]], audience: str):
    """Specialists read 'gathering … in autumn', never 'the gathering of plants that ripen in autumn'."""
    texts = [sentence.text for narrative in told[audience].values() for sentence in narrative.sentences()]
    assert any("the gathering of soft fruit in autumn" in text for text in texts)
    assert not [text for text in texts if "gathering of plants" in text]


@pytest.mark.parametrize("audience", AUDIENCES)
def test_what_was_seen_in_the_ground_is_not_doubted_by_redraws(
    told: dict[str, dict[Subject, Narrative]], audience: str
):
    """Uncharred seeds and a grain of later times were seen: no redrawing of counts makes them less so."""
    texts = [sentence.text for narrative in told[audience].values() for sentence in narrative.sentences()]
    assert not [t for t in texts if "recent origin of the uncharred seeds in" in t or "fresh seeds that got in" in t]
    assert not [t for t in texts if "intrusion of later plant remains in" in t or "of plants from a later time" in t]


def test_cobs_as_fuel_do_not_weaken_a_smoke_fire(told: dict[str, dict[Subject, Narrative]]):
    """Where two readings of one grade can both be true of the same remains, neither is called the weaker."""
    for audience in ("public", "report"):
        texts = [s.text for s in told[audience][Subject(level="context", id="C13")].sentences()]
        weighed = [text for text in texts if "weaker" in text or "ess speaks for" in text]
        assert not [text for text in weighed if "smoke" in text or "slow fire" in text]


def test_groups_as_widespread_as_each_other_are_told_so(told: dict[str, dict[Subject, Narrative]]):
    """Nuts in as many samples as the native crops do not come after them."""
    early = {
        a: " ".join(s.text for s in told[a][Subject(level="phase", id="early")].sentences())
        for a in ("public", "report")
    }
    assert "Small-seeded crops turned up in 22 of 23 samples, and nuts in just as many; nine held" in early["public"]
    assert "next came nuts" not in early["report"]


def test_berries_of_weeds_are_not_told_as_fruit(told: dict[str, dict[Subject, Narrative]]):
    """Of C14 eight seeds are grape and persimmon; the eight of pokeweed and nightshade beside them are no fruit."""
    assert "namely grape and persimmon, was charred (8 seeds" in of_context(told, "report", "C14")
    assert "namely persimmon and grape, was charred (18 seeds)" in of_context(told, "report", "C06")


def test_firewood_is_no_food_to_be_warned_of(told: dict[str, dict[Subject, Narrative]]):
    """A page that names hickory and oak as charcoal alone warns of the plants it names as food."""
    text = of_context(told, "public", "C05")
    assert "oak" in text and "hickory" in text
    assert "hickory nuts" not in text and re.search(r"(?:eat or use|eating or using) any wild plant", text)


def test_unlike_readings_do_not_share_a_sentence(told: dict[str, dict[Subject, Narrative]]):
    """Tobacco and fruit have each their own reason, and so each their own sentence."""
    texts = [sentence.text for narrative in told["report"].values() for sentence in narrative.sentences()]
    assert not [t for t in texts if "tobacco in seed" in t and "fruit" in t]


def test_seeds_of_few_fruits_are_told_as_such(told: dict[str, dict[Subject, Narrative]]):
    """C22 held six seeds of persimmon and four of grape, C06 39 of strawberry; nutshell says nothing of fruits."""
    of_two = "One persimmon may hold up to eight seeds and one grape up to four"
    assert of_two in of_context(told, "report", "C22")
    assert "these 10 seeds may be of no more than two fruits" in of_context(told, "report", "C22")
    assert "one wild strawberry may hold dozens of seeds" in of_context(told, "report", "C06").lower()
    assert "may hold" not in of_context(told, "report", "C11")
