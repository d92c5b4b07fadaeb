"""A subject in one sentence."""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from narrate.model.ids import Subject
from narrate.model.narrative import Narrative
from tests.telling.told_once import ToldOnce

Told = Mapping[str, Mapping[Subject, Narrative]]


@pytest.mark.parametrize("id", ["C14", "C16"])
def test_what_people_did_with_plants_comes_before_when_they_ripened(told_of_example: ToldOnce, id: str) -> None:
    """Among readings of one grade, the use of a thing is told in short before its season and its field."""
    summary = told_of_example["report"][Subject(level="context", id=id)].summary

    assert summary is not None
    assert "as food" in summary.text
    assert "autumn" not in summary.text
