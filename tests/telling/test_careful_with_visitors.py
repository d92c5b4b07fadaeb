"""The pages for visitors of the example say no more than its records, and say it with care."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

import pytest

from narrate.model.ids import SITE
from narrate.pipeline.judged import disclosed_part
from narrate.telling.tell import narratives

if TYPE_CHECKING:
    from narrate.pipeline.judged import Judged


@pytest.fixture(scope="module")
def whole(judged_example: Judged) -> Judged:
    return disclosed_part(judged_example)


@pytest.fixture(scope="module")
def told(whole: Judged) -> dict[str, str]:
    levels = ("context", "phase", "site")
    found = narratives(whole.project, whole.packs, whole.findings, whole.claims, "public", levels)
    return {subject.id: narrative.text for subject, narrative in found.items()}


def test_a_list_of_charcoal_that_is_cut_short_says_so(whole: Judged, told: dict[str, str]):
    """The page names every tree of which two pieces were named, or says 'mostly' or 'other trees'."""
    for id, text in told.items():
        if not (said := re.search(r"[^.]*charcoal[^.]* came ([^.]*)\.", text)):
            continue
        rows = [r for r in whole.project.counts if _context_of(whole, r.sample) == id]
        trees = {r.identification.taxon for r in rows if r.part == "wood" and r.identification.taxon}
        broad = {t for t in trees if whole.packs.taxa[t].rank == "broad"}
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
    """The note on C01's goosefoot says 'most with thin smooth coats', that on C05's has no such word."""
    assert "Many of the seed coats were thin" in told["C01"]
    assert "The seed coats were thin" in told["C05"]


def test_found_nowhere_else_is_of_burned_finds(told: dict[str, str]):
    """C08 held a pokeweed seed that no fire had touched, so C14 is only the one place with burned ones."""
    assert "the only place where we found burned panicgrass" in told["C14"]
