"""Damaged input: readers, rules, layouts and the merge answer with problems, never a traceback."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.hostile.damaged import KINDS, tried
from tests.reading.folders import packs_in


@pytest.mark.parametrize("kind", sorted(KINDS))
def test_damaged_input_is_no_traceback(tmp_path: Path, kind: str) -> None:
    """A hundred damaged inputs of each kind are answered; `tests.hostile.damaged` tries more."""
    packs_in(tmp_path)

    assert [(number, fault) for number in range(100) if (fault := tried(kind, number, 11, tmp_path))] == []
