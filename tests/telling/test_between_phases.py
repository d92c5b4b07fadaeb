"""Phases with years between them: why the one ended and the other began."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import TYPE_CHECKING

import pytest

from narrate.model.ids import SITE, Subject
from narrate.model.narrative import Narrative
from narrate.telling.tell import narratives
from tests.telling.told_once import ToldOnce

if TYPE_CHECKING:
    from narrate.pipeline.judged import Judged

Told = Mapping[str, Mapping[Subject, Narrative]]


@pytest.fixture(scope="module")
def told(judged_example: Judged) -> Told:
    whole = judged_example
    return {
        audience: narratives(
            whole.project, whole.packs, whole.findings, whole.claims, audience, ("context", "phase", "site")
        )
        for audience in ("report", "public", "label")
    }


def test_what_is_chief_of_the_dig_is_found_in_more_than_one_context(told: Told):
    """All 39 strawberries of the example come from pit C06: they are not the chief fruit of the dig."""
    text = told["report"][Subject(level="site", id=SITE)].text

    assert "the use of fruit as food (69% for the dig as a whole; C06 by itself bears it out)" in text
    assert "strawberry" not in text


def test_a_phase_opens_with_the_plants_that_mark_it(told: Told):
    """What most samples of a phase held stands before how many samples there are."""
    for audience in ("report", "public"):
        first, *_ = told[audience][Subject(level="phase", id="early")].sentences()

        assert re.match(r"Most (?:soil )?samples of the Early hamlet \(", first.text)


def test_visitors_are_told_of_samples_and_not_of_places_where_samples_are_counted(told: Told):
    """A change that rests on shares of samples is no change in places."""
    for narrative in told["public"].values():
        assert "more places" not in narrative.text and "fewer places" not in narrative.text


def test_no_latin_name_reaches_visitors(judged_example: Judged, told: Told):
    """
    Each name of the example's count sheets has a common one in a taxon pack, but for the one that no pack knows: what
    visitors read does not name it.
    """
    whole = judged_example
    tallies = [t for held in whole.findings.subjects.values() for t in held.tallies]

    assert {t.written for t in tallies if t.taxon is None} == {"Ammannia coccinea"}
    assert not [t.taxon for t in tallies if t.taxon and whole.packs.taxa[t.taxon].name in ("", str(t.taxon))]
    assert not [s.id for s, n in told["public"].items() if "Ammannia" in n.text]


def test_the_dig_says_that_plants_do_not_tell_why_it_was_left(told: Told):
    """The question why a hamlet was left is answered as far as plants go: they do not tell."""
    site, early = (told["report"][Subject(level=n, id=id)].text for n, id in (("site", SITE), ("phase", "early")))

    assert (
        "Why the Early hamlet ended or why the Late hamlet began is a question that these plants do not answer, for "
        "they record what was burned while people were there; no phase fills what lies between them, some 200 years by "
        "those given to the phases, and 215 between the main ranges of their radiocarbon dates." in site
    )
    assert "Why the Early hamlet ended is a question that these plants do not answer" in early


def test_visitors_are_told_so_too(told: Told):
    """The page for visitors says in its own words what plants cannot tell."""
    text = told["public"][Subject(level="site", id=SITE)].text

    assert "Burned plants cannot tell us why the Early hamlet ended or why the Late hamlet began." in text


def test_visitors_read_the_same_in_spanish(told_of_example: ToldOnce):
    """That one crop is nearly all of a store, and that plants do not tell why a place was left, is in Spanish too."""
    spanish = told_of_example["public-es"]

    assert "cultivos de semilla pequeña, sobre todo quenopodio" in spanish[Subject(level="context", id="C05")].text
    assert "Las plantas quemadas no nos dicen por qué terminó" in spanish[Subject(level="site", id=SITE)].text


def test_a_panel_of_the_dig_tells_no_hint_of_a_phase_as_a_reading(told: Told):
    """Tobacco, a hint in the later hamlet alone, is not told on the panel of the whole dig."""
    assert "tobacco" not in told["label"][Subject(level="site", id=SITE)].text


@pytest.mark.parametrize(("audience", "between"), [("public", "the two"), ("label", "the Early hamlet (")])
def test_visitors_read_how_long_lies_between(judged_example: Judged, audience: str, between: str):
    """From about AD 1050 to 1250 nothing is known, which no 'as time went on' may hide; the page says it once."""
    whole = judged_example
    told = narratives(whole.project, whole.packs, whole.findings, whole.claims, audience, ("site",))

    text = told[Subject(level="site", id=SITE)].text
    assert text.count(f"Some 200 years lie between {between}") == 1 == text.count("200 years")
    assert "as time went on" not in text


def test_hints_of_several_themes_open_what_stays_open(told: Told):
    """Tobacco is of food and old fields are of fields: one sentence of both stands under neither."""
    late = told["report"][Subject(level="phase", id="late")]
    under = [section.id for section in late.sections for p in section.paragraphs for s in p if "hints" in s.text]

    assert under == ["open"]
    assert "tobacco" in late.sections[-1].paragraphs[0][0].text
