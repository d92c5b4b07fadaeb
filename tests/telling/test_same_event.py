"""One event that rules and notes tell of is told once: of building C17 five sentences had the same fire."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from narrate.telling.tell import narratives

if TYPE_CHECKING:
    from narrate.pipeline.judged import Judged


@pytest.mark.parametrize("audience", ["public", "label"])
def test_a_fire_is_told_once(open_example: Judged, audience: str):
    """That the house burned stands in one sentence, and what else the diggers saw is told as itself."""
    whole = open_example
    found = narratives(whole.project, whole.packs, whole.findings, whole.claims, audience, ("context",))
    told = [s.text for subject, n in found.items() if subject.id == "C17" for s in n.sentences()]

    assert len([text for text in told if "house" in text and "burned" in text]) == 1
    assert not [text for text in told if "building that burned" in text]
    assert any("ears lying as if they had hung from a rafter" in text for text in told)


def test_a_fire_is_told_once_in_spanish(open_example: Judged):
    """Two rules tell of the house that burned, and one of them is enough."""
    whole = open_example
    found = narratives(whole.project, whole.packs, whole.findings, whole.claims, "public-es", ("context",))
    text = next(narrative.text for subject, narrative in found.items() if subject.id == "C17")

    assert text.count("una casa") == 1
