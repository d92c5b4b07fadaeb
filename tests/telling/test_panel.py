"""Exhibit panels: one file of packs, texts of 60 to 90 words."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import TYPE_CHECKING

import pytest

from narrate.model.ids import SITE, Subject
from narrate.model.narrative import Narrative
from narrate.pipeline.judged import disclosed_part
from narrate.telling.readability import grade
from narrate.telling.tell import narratives
from tests.telling.told_once import ToldOnce

if TYPE_CHECKING:
    from narrate.pipeline.judged import Judged


@pytest.fixture(scope="module")
def panels(told_of_example: ToldOnce) -> dict[Subject, Narrative]:
    return told_of_example["label"]


def test_a_panel_has_sixty_to_ninety_words(panels: dict[Subject, Narrative]):
    """Words parted by spaces, title left out, in every panel of the example."""
    lengths = {subject.id: len(narrative.text.split()) for subject, narrative in panels.items()}

    assert {id: words for id, words in lengths.items() if not 60 <= words <= 90} == {}


def test_every_context_with_something_to_tell_has_a_panel(panels: dict[Subject, Narrative], judged_example: Judged):
    """Only contexts that held next to nothing, or were never sampled, go without."""
    without = set()
    for context in judged_example.project.contexts:
        subject = Subject(level="context", id=context.id)
        items = judged_example.findings.subjects[subject].measurements["items"].value or 0
        if subject not in panels:
            without.add(context.id)
            assert items < 30, context.id

    assert without == {"C09", "C18", "C19", "C20", "C21"}
    assert Subject(level="site", id=SITE) in panels


def test_a_panel_is_easy_to_read(panels: dict[Subject, Narrative]):
    """Reading grade 8 or below, Latin and figures of intervals nowhere."""
    for narrative in panels.values():
        assert grade(narrative.text) <= 8.0, (narrative.title, grade(narrative.text))
        assert not re.search(r"[*%]|interval|\{", narrative.text), narrative.text


def test_a_panel_that_names_food_carries_a_caution(panels: dict[Subject, Narrative]):
    """No panel leaves its readers to think that a wild plant is safe to eat (common practice, no source)."""
    for narrative in panels.values():
        last = narrative.sentences()[-1].text
        assert last == "Please do not eat or use wild plants because of this label.", narrative.title


def test_no_panel_tells_that_people_still_gather_wild_food(panels: dict[Subject, Narrative]):
    """A word of gathering nuts or fruit today would undo the caution behind it."""
    for narrative in panels.values():
        assert not re.search(r"still (?:gather|pick|fall|ripen)", narrative.text), narrative.title


def test_a_panel_says_who_did_what(panels: dict[Subject, Narrative]):
    """Half of the sentences or more have people or the team in them."""
    for narrative in panels.values():
        sentences = narrative.sentences()
        people = [s for s in sentences if re.search(r"\b(we|our|people|you|someone|farmers|please)\b", s.text, re.I)]
        assert len(people) * 2 >= len(sentences), narrative.text


def test_the_panel_of_the_dig_sets_corn_beside_the_garden_crops(panels: dict[Subject, Narrative]):
    """The overview tells the one change that the dig is about."""
    assert (
        "corn burned more widely than before, and small-seeded crops less widely"
        in panels[Subject(level="site", id=SITE)].text
    )


@pytest.mark.parametrize(
    ("id", "story"),
    [
        ("C05", "people lost stored food to a fire"),
        ("C12", "someone burned food by accident while cooking or drying it"),
        ("C13", "people kept a slow fire here for its smoke: both may be true"),
        ("C17", "people lost stored food to a fire"),
    ],
)
def test_a_panel_tells_what_happened_before_what_was_eaten(judged_example: Judged, id: str, story: str):
    """Where a burned store, a spilled meal or a smoke fire is read as firmly as a food or a fuel, it goes first."""
    whole = judged_example
    told = narratives(whole.project, whole.packs, whole.findings, whole.claims, "label", ("context",))

    assert story in told[Subject(level="context", id=id)].text


def test_a_panel_tells_no_more_than_the_page(open_example: Judged):
    """Of a context a panel makes no reading that the page for visitors leaves out as too slight."""
    whole = open_example
    label, public = (
        narratives(whole.project, whole.packs, whole.findings, whole.claims, audience, ("context",))
        for audience in ("label", "public")
    )
    claims = whole.claims.by_id
    for subject, narrative in label.items():
        told = {ref for s in public[subject].sentences() for ref in s.refs}
        read = {ref for s in narrative.sentences() for ref in s.refs if ref in claims}
        assert read - told == set(), (subject.id, read - told)
        assert all(claims[ref].grade != "consistent with" for ref in read), subject.id


def test_a_panel_leads_with_what_was_found_or_read(panels: dict[Subject, Narrative], judged_example: Judged):
    """How much soil was washed opens no panel: its first sentence rests on a reading of the place."""
    for subject, narrative in panels.items():
        first = narrative.sentences()[0]
        assert "litres" not in first.text and any(ref in judged_example.claims.by_id for ref in first.refs), subject.id


def test_a_panel_of_a_place_leads_with_its_chief_plant(panels: dict[Subject, Narrative]):
    """C14 and C16 held more of corn than of any other plant that is read as food there as firmly."""
    for id in ("C14", "C16"):
        first = [s.text for s in panels[Subject(level="context", id=id)].sentences()[:2]]
        found = "Several of our soil samples from here held kernels of corn"
        assert f"{found}, so it may be that people used corn as food." in first


def test_the_only_beans_are_on_their_panel(panels: dict[Subject, Narrative]):
    """Beans were found in C12 alone: its panel tells of them, as the hint that they are."""
    assert "There are hints that people used beans as food." in panels[Subject(level="context", id="C12")].text


@pytest.mark.parametrize(
    ("id", "lead"), [("C03", "people burned nutshells in"), ("C13", "people burned corn cobs in their fires")]
)
def test_a_panel_of_a_fire_leads_as_its_page_does(panels: dict[Subject, Narrative], id: str, lead: str):
    """What fed the fire comes first, and the other account of the same remains in the next breath."""
    first, second, *_ = (s.text for s in panels[Subject(level="context", id=id)].sentences())
    assert lead in first
    assert "both may be true" in second


def test_a_panel_explains_what_few_have_seen(panels: dict[Subject, Narrative]):
    """Small-seeded crops, goosefoot and maygrass, an earth oven, and what it is to burn more widely."""
    text = {subject.id: narrative.text for subject, narrative in panels.items()}
    for id, said in text.items():
        if re.search(r"small-seeded crops|goosefoot|maygrass|knotweed", said, re.IGNORECASE):
            assert "plants that people grew for tiny seeds" in said or "a plant that people grew" in said, id
    assert "hot stones" in text["C03"]
    assert "More widely means in more of our soil samples." in text[SITE]


def test_panels_of_like_places_differ(panels: dict[Subject, Narrative]):
    """C01, C04, C06 and C07 each held small-seeded crops: no two of their panels begin alike."""
    first = [panels[Subject(level="context", id=id)].sentences()[0].text for id in ("C01", "C04", "C06", "C07")]

    assert len(set(first)) == len(first), first
    assert "earth here that fire had turned red" in first[0]


def test_a_stirred_pit_has_no_panel(panels: dict[Subject, Narrative]):
    """C20 was cut by a drain: a label of 90 words has no room for the doubts that its finds ask for."""
    assert Subject(level="context", id="C20") not in panels


def test_a_panel_tells_of_what_came_later(judged_example: Judged):
    """Wheat in a deposit that is older than ships is told as late, and why, were the pit not known to be stirred."""
    text = _of_an_open_pit(judged_example)

    assert "got into the soil in later times, since wheat came from overseas later." in text
    assert "autumn" not in text


def _of_an_open_pit(judged_example: Judged) -> str:
    """The panel of C20 as if its record did not say that it was dug again."""
    whole = disclosed_part(judged_example)
    contexts = tuple(replace(c, security="open") if c.id == "C20" else c for c in whole.project.contexts)
    project = replace(whole.project, contexts=contexts)
    told = narratives(project, whole.packs, whole.findings, whole.claims, "label", ("context",))
    return told[Subject(level="context", id="C20")].text


def test_most_is_said_of_more_than_half(open_example: Judged):
    """Bits of cob are 44 % of the Late hamlet, though parts of corn are more than half: they are not 'most'."""
    whole = open_example
    told = narratives(whole.project, whole.packs, whole.findings, whole.claims, "label", ("phase",))

    assert "Most were" not in told[Subject(level="phase", id="late")].text


def test_a_single_find_on_a_panel_is_one(judged_example: Judged):
    """C20 held one amaranth seed (counts/light_fraction.csv): its panel does not speak of seeds."""
    text = _of_an_open_pit(judged_example)

    assert "one pigweed seed" in text
    assert "pigweed seeds" not in text


def test_the_panel_of_a_dig_dates_its_times(panels: dict[Subject, Narrative]):
    """Those who stand before the panel of the whole dig read when its two hamlets were, and not only how far apart."""
    text = panels[Subject(level="site", id=SITE)].text

    assert "the Early hamlet (about AD 950 to 1050) and the Late hamlet (about AD 1250 to 1350)" in text
