"""Crops are harvested and wild plants gathered."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

import pytest

from narrate.model.ids import Subject
from narrate.telling.tell import narratives

if TYPE_CHECKING:
    from narrate.pipeline.judged import Judged


@pytest.mark.parametrize(
    ("audience", "level", "id", "word"),
    [
        # What ripens in autumn is maize, and hickory nuts and amaranth beside it.
        ("report", "context", "C11", r"harvesting and gathering in (autumn|that season)"),
        ("public", "context", "C11", r"people harvested and gathered plants"),
        # Maygrass and little barley were sown, strawberries were not.
        ("report", "phase", "early", r"harvesting and gathering in early summer"),
        # Persimmon, grape and nuts were not.
        ("report", "context", "C03", r"(?<!and )gathering in (autumn|that season)"),
        ("public", "context", "C03", r"people gathered plants"),
    ],
)
def test_the_word_for_a_season_is_that_of_its_plants(
    judged_example: Judged, audience: str, level: str, id: str, word: str
):
    """By the plants that the reading rests on (status of the plants in the packs)."""
    w = judged_example
    told = narratives(w.project, w.packs, w.findings, w.claims, audience)
    text = told[Subject(level=level, id=id)].text  # type: ignore[arg-type]

    assert re.search(word, text)
