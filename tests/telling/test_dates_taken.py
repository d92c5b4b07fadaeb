"""Dates that were taken stand where their contexts are told."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from narrate.model.ids import Subject
from narrate.model.narrative import Narrative
from narrate.telling.tell import narratives

if TYPE_CHECKING:
    from narrate.pipeline.judged import Judged

Told = dict[str, dict[Subject, Narrative]]


@pytest.fixture(scope="module")
def told(judged_example: Judged) -> Told:
    w = judged_example
    return {a: dict(narratives(w.project, w.packs, w.findings, w.claims, a)) for a in ("report", "public")}


@pytest.mark.parametrize(
    ("id", "laboratory"),
    [
        ("C03", ("VRL-0417", "VRL-0418")),
        ("C05", ("VRL-0419",)),
        ("C12", ("VRL-0423", "VRL-0424")),
        ("C13", ("VRL-0422",)),
        ("C17", ("VRL-0427",)),
    ],
)
def test_a_context_has_its_dates(told: Told, id: str, laboratory: tuple[str, ...]):
    """As project.yaml lists them, and no date of another context."""
    text = told["report"][Subject(level="context", id=id)].text

    assert [number for number in range(410, 430) if f"VRL-0{number}" in text] == [int(n[4:]) for n in laboratory]


def test_the_date_on_the_bean_is_quoted_whole(told: Told):
    """A bean found in few samples was dated itself."""
    entry = "VRL-0424: bean cotyledon, one, from hearth C12; 690 ± 20 BP; cal AD 1275–1305 (74.7%), 1365–1385 (21.0%)"

    assert f"“{entry}”" in told["report"][Subject(level="context", id="C12")].text


def test_visitors_are_told_no_laboratory_numbers(told: Told):
    """Years are enough for them."""
    assert not [s for s, narrative in told["public"].items() if "VRL-" in narrative.text]
