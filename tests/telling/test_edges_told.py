"""What a peer would ask of single readings: how near their edge, on which arguments, by which plants."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

import pytest

from narrate.model.ids import Subject
from narrate.model.narrative import Narrative
from narrate.telling.tell import narratives

if TYPE_CHECKING:
    from narrate.pipeline.judged import Judged

Told = Mapping[Subject, Narrative]


@pytest.fixture(scope="module")
def report(told_of_example: Mapping[str, Told]) -> Told:
    return told_of_example["report"]


def _of(told: Told, id: str, level: str = "context") -> str:
    return told[Subject(level=level, id=id)].text  # type: ignore[arg-type]


def test_a_reading_near_its_edge_says_so(report: Told):
    """C15 held 2 kernels beside 23 cob parts, and the heavy fraction of S036 is recorded as not sorted."""
    edge = "Two more maize kernels would unsettle maize cobs as fuel; the heavy fraction of S036"

    assert edge in _of(report, "C15")
    assert "unsettle" not in _of(report, "C11")


def test_the_strongest_grade_gives_two_arguments(report: Told):
    """Cobs in the fire of C11: 145 cupules and 3 cobs lay there, and 148 cob parts outnumber 11 kernels."""
    (strong,) = [s.text for s in report[Subject(level="context", id="C11")].sentences() if "strongly" in s.text]

    assert "in a feature made for fire" in strong and "far outnumber kernels (148 to 11)" in strong


@pytest.mark.parametrize("context", ["C01", "C03", "C11", "C12", "C13"])
def test_wood_as_fuel_is_told_once_of_the_phase(report: Told, context: str):
    """Charcoal in a hearth is no news where anything else is read of it; the phases tell it of every fire."""
    assert "wood as fuel" not in _of(report, context)
    assert "wood as fuel" in _of(report, "early", "phase") and "wood as fuel" in _of(report, "late", "phase")


def test_a_note_that_leaves_a_reading_as_it_is_says_so(report: Told):
    """'No reddening of the walls' of C13 speaks for a smouldering fire and not against one."""
    assert "That does not speak against burning in place, for a fire that smoulders" in _of(report, "C13")


def test_daub_of_a_burned_house_is_told(report: Told):
    """2,650, 1,980 and 840 g in the heavy fractions of S040 to S042 (records/samples-late.yaml)."""
    text = _of(report, "C17")

    assert "aub (5,470 g)" in text
    assert "Cane is on record for walls, mats and baskets as well as for" in text


def test_few_plants_of_open_ground_are_named_and_suggest_nothing(report: Told):
    """Early: amaranth 18, bedstraw 12 and dock 2. Late: ten kinds, of which maypop (21) counts as fruit as well."""
    early, late = _of(report, "early", "phase"), _of(report, "late", "phase")

    assert "consistent with open, disturbed ground" in early
    assert "three ruderal plants, namely amaranth, bedstraw, and dock, were charred (32 seeds; see " in early
    assert "amaranth (*Amaranthus* sp., 18)" in early and "gathered to be eaten" in early
    assert "suggest open, disturbed ground" in late
    assert "21) and groundcherry" in late and "counted among the weeds and the fruits alike" in late


def test_a_species_beside_its_genus_is_asked_about(judged_example: Judged):
    """The tobacco of C07 is named to the species by a coat that is the genus's; that of C15 is left at the genus."""
    whole = judged_example
    told = narratives(whole.project, whole.packs, whole.findings, whole.claims, "review", ("context",))

    asked = "those of C15 to the genus alone: the ground for the species is worth a note"
    assert asked in _of(told, "C07")
    assert not [s.id for s in told if s.id != "C07" and "the ground for the species" in told[s].text]
