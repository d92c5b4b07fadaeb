"""What a deposit is made of, held against the rows of the count sheets of the example."""

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


def _text(told: Told, audience: str, id: str) -> str:
    return told[audience][Subject(level="context", id=id)].text


@pytest.mark.parametrize(("id", "grams"), [("C18", "0.26"), ("C09", "0.02")])
def test_a_weight_of_all_wood_is_no_find_beside_the_fragments_named(told: Told, id: str, grams: str):
    """S044 of C18 notes "all wood over 2 mm" beside the 0.26 g: the nine fragments named are part of it."""
    text = _text(told, "report", id)

    assert f", the wood charcoal weighing {grams} g in all; so few remains" in text
    assert "of indeterminate charcoal" not in text
