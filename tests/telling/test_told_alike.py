"""The report and the review tell the same readings of the example, and name every plant that carries one."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import TYPE_CHECKING

import pytest

from narrate.model.ids import SITE, Subject
from narrate.model.narrative import Narrative
from tests.telling.told_once import ToldOnce

if TYPE_CHECKING:
    from narrate.pipeline.judged import Judged

Told = Mapping[str, Mapping[Subject, Narrative]]
POOR = 50
"""Items below which the report tells hints in one sentence."""


@pytest.fixture(scope="module")
def told(told_of_example: ToldOnce) -> Told:
    return {
        audience: told_of_example[audience]
        for audience in ("report", "review", "public")
    }


def _context(id: str) -> Subject:
    return Subject(level="context", id=id)


def _texts(narrative: Narrative) -> list[str]:
    return [sentence.text for sentence in narrative.sentences()]


def test_the_same_readings_are_told_in_report_and_review(told: Told, judged_example: Judged):
    """Of a deposit with fifty items or more, and of a phase, both tell the same claims."""
    claims, looked_at = judged_example.claims.by_id, 0
    for subject in (s for s in told["report"] if s.level in ("context", "phase")):
        items = judged_example.findings.subjects[subject].measurements["items"].value or 0
        read = [
            {
                ref
                for s in told[audience][subject].sentences()
                for ref in s.refs
                if ref in claims and claims[ref].about == subject and claims[ref].verdict == "holds"
                # What the review says that work would serve is no reading.
                and claims[ref].question != "work" and "could then be " not in s.text
                    # A hint that is too slight to build on is none that the team would be told of.
                    and "too slight to build on" not in s.text
                and claims[ref].statement != "season.stored-only"
            }
            for audience in ("report", "review")
        ]  # fmt: skip
        assert items < POOR or read[0] == read[1], subject
        looked_at += items >= POOR
    assert looked_at > 10


def test_oily_crops_are_told_where_they_stand_by_themselves(told: Told):
    """Sumpweed and sunflower are suggested in C06 and told; where they are but crops among crops, not again."""
    for audience in ("report", "review"):
        assert "sumpweed and sunflower as food" in told[audience][_context("C06")].text
        for id in ("C01", "C07"):
            assert "sumpweed and sunflower as food" not in told[audience][_context(id)].text
            assert "sunflower and sumpweed as food" not in told[audience][_context(id)].text
    assert "oily seeds" not in told["report"][_context("C01")].text


def test_a_plant_that_carries_a_reading_is_named_among_the_finds(told: Told):
    """Squash, grape, mulberry and hickory of C06, read further down, stand in the list of what was found."""
    found = next(text for text in _texts(told["report"][_context("C06")]) if "Less common" in text or "added" in text)

    for plant in ("squash", "grape", "red mulberry", "hickory nutshell", "sunflower", "persimmon", "wild strawberry"):
        assert plant in found


def test_a_find_that_the_laboratory_wrote_of_is_named(told: Told):
    """The chenopod of C16, of which a thick coat was noted, is in the list of what was found."""
    assert any("chenopod (*Chenopodium berlandieri*" in text for text in _texts(told["report"][_context("C16")]))


def test_one_tobacco_seed_is_told_wherever_it_bears(told: Told):
    """The one early tobacco seed (S016, C07) stands on the page of its pit, its phase, the dig and the review."""
    assert "one tobacco seed (*Nicotiana rustica" in told["report"][_context("C07")].text
    assert "tobacco seed" in told["report"][Subject(level="phase", id="early")].text
    assert re.search(r"Early hamlet gave one tobacco seed \(\*Nicotiana rustica\*", told["report"][Subject(level="site", id=SITE)].text)
    assert "One tobacco seed (S016) is too little to read anything from." in told["review"][_context("C07")].text


def test_early_maize_is_told_with_its_number(told: Told):
    """The few pieces of maize of an early pit are counted in its own account, as the dig's account counts them."""
    assert "3 maize cupules" in told["report"][_context("C07")].text


def test_a_wild_goosefoot_is_not_passed_over_among_the_crops(told: Told):
    """Where late native crops are listed, the thick-coated seed of C16 is told as one that need not be a crop."""
    late = [text for text in _texts(told["report"][Subject(level="site", id=SITE)]) if "thick netted coat" in text]

    assert late == [
        "Of the chenopod seeds of S038 (C16) the laboratory notes “one with a thick netted coat” (a thick coat marks a "
        "wild or weedy goosefoot), so that not all of these need be of a crop."
    ]


def test_the_number_of_cob_parts_is_found_among_the_finds(told: Told):
    """A page that reads cob parts says once what they are: C11's 148 are the 145 cupules and 3 cobs of its list."""
    text = told["report"][_context("C11")].text

    assert "Cob parts (145 cupules and 3 cobs) lay" in text
    assert "cob parts (148)" in text
    assert "cob parts (880 cupules and 26 cobs; 82 per litre" in told["report"][_context("C13")].text


def test_shares_of_maize_name_what_they_are_shares_of(told: Told):
    """Where a phase sets contexts aside, 159 and 917 are told as kernels and cob parts, not as all parts of maize."""
    text = told["report"][Subject(level="phase", id="late")].text

    assert "11 of 159 kernels and cob parts" in text
    assert "906 of 917 kernels and cob parts" in text


def test_later_disturbance_is_told_of_a_near_empty_layer(told: Told):
    """The layer C21 carries no reading, yet report and visitors hear that it was stirred, as the review does."""
    for audience in ("report", "review"):
        assert "the deposit was disturbed after it had formed" in told[audience][_context("C21")].text
    assert "soil" in _texts(told["public"][_context("C21")])[2]


def test_lost_seeds_are_told_in_report_and_review(told: Told):
    """That flotation returned 21 of 50 marked seeds in S037 stands in both, for the context and for its phase."""
    for audience in ("report", "review"):
        assert "21 of 50 marked seeds in S037 (42%, 95% interval 29–56%)" in told[audience][_context("C16")].text
        assert "21 of 50 marked seeds in S037 of C16 (42%)" in told[audience][Subject(level="phase", id="late")].text
    assert "42% to 94%" in told["report"][Subject(level="site", id=SITE)].text


def test_items_enough_for_shares_are_called_what_they_are(told: Told):
    """They are parts of plants, unnamed ones among them: no item is called named, or of food, that is not."""
    said = [text for narrative in told["review"].values() for text in _texts(narrative) if "enough for shares" in text]

    assert len(said) == 4
    assert all("other parts of plants (unnamed ones among them) are enough" in text for text in said)


def test_the_review_tells_notes_that_bear_on_a_doubt(told: Told):
    """What the ground and the laboratory showed stands among the doubts: no reddening in C13, a thick coat in C16."""
    smoke, coat = (told["review"][_context(id)].sections[0].paragraphs[0] for id in ("C13", "C16"))

    assert [s.text for s in smoke if "no reddening" in s.text] == [
        "The excavation record has “no reddening of the walls: whatever burned here smouldered with little air”, which "
        "speaks for a smouldering fire kept for its smoke."
    ]
    assert any("“one with a thick netted coat”, which speaks for open, disturbed ground" in s.text for s in coat)


def test_the_review_is_not_filled_with_notes(told: Told):
    """Two notes at most on a page, and none where nothing is in doubt."""
    assert all(sum("“" in text and " has “" in text for text in _texts(one)) <= 2 for one in told["review"].values())
    assert "“" not in told["review"][_context("C09")].text


def test_rare_plants_are_told_with_their_numbers(told: Told):
    """What stands behind a sum stands in the list: the 47 pieces of shell of C01 are 38 of hickory and 9 of acorn."""
    text = told["report"][_context("C01")].text

    assert "38 pieces of hickory nutshell" in text and "acorn shell (*Quercus* sp., 9)" in text
    assert "nutshell was plentiful (47 pieces" in text


def test_a_single_find_is_not_numbered_twice(told: Told):
    """'One bread wheat grain' and '5 cane stems': the part is known, and no number stands in brackets as well."""
    assert "one bread wheat grain (*Triticum aestivum* L.)," in told["report"][_context("C20")].text
    assert "5 cane stems (*Arundinaria* sp., all of them fragments)," in told["report"][_context("C17")].text


def test_a_note_for_both_rivals_decides_nothing_and_is_not_told(told: Told):
    """Nutshell seen in the oven speaks for nuts as food and as fuel alike: the review, which doubts, leaves it out."""
    assert "nutshell visible" not in told["review"][_context("C03")].text
    assert "packed with charred cobs" not in told["review"][_context("C13")].text


def test_nobody_is_asked_to_identify_dust(told: Told):
    """The posthole's 0.02 g of charcoal are no eighteen fragments more."""
    text = told["review"][_context("C09")].text

    assert "Identify" not in text and "Nothing more is asked of C09" in text


def test_shares_over_all_parts_of_the_cob_say_so(told: Told):
    """The 98 % of the smudge pit counts glumes and shanks, which the 906 cob parts of the same page leave out."""
    assert "held little else (98% with glumes and shanks" in told["report"][_context("C13")].text


def test_material_of_dated_contexts_is_not_asked_for_again(told: Told):
    """Five contexts gave the dates of the project: the dig names them apart, and their reviews ask for none."""
    site = told["report"][Subject(level="site", id=SITE)].text
    assert "lies in four contexts (C01, C02, C11, and C15), beside C03, C05, C12, C13, and C17, from which" in site
    for id in ("C03", "C12"):
        assert "fit for radiocarbon dating" not in told["review"][_context(id)].text
    assert "fit for radiocarbon dating" in told["review"][_context("C01")].text


def test_a_heavy_fraction_that_was_not_sorted_is_work_left(told: Told):
    """S023 of hearth C10 has one: its review does not say that all is sorted."""
    text = told["review"][_context("C10")].text
    assert "heavy fraction of S023" in text and "is sorted" not in text
