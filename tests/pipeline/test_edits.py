"""A project told again after each of many edits is what a fresh build of it would be."""

from __future__ import annotations

from pathlib import Path

from tests.bench.edits import differences


def test_edits_leave_what_a_fresh_build_would(tmp_path: Path) -> None:
    """After random edits, additions, renames and deletions every byte is that of a fresh build; few are tried here, and
    as many as wanted by `python -m tests.bench.edits`."""
    found, _ = differences(tmp_path, times=3, seed=5)

    assert found == []


def test_edits_of_a_larger_dig_leave_what_a_fresh_build_would(tmp_path: Path) -> None:
    """The same of a dig that two processes tell and whose contexts are set beside each other."""
    found, _ = differences(tmp_path, times=1, seed=8, samples=39)

    assert found == []
