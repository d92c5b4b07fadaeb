"""No text, however it repeats itself, keeps a pattern busy: a rule of dashes over a page once kept one for hours."""

from __future__ import annotations

import re
import signal
from collections.abc import Iterator
from contextlib import contextmanager

import pytest

from tests.hostile.pumped import patterns, texts

_SECONDS = 2.0
"""Of the processor for one text of some hundred letters, where a pattern that does not run away takes a thousandth."""


class _RunsAwayError(Exception):
    pass


def _stop(*_: object) -> None:
    raise _RunsAwayError


@contextmanager
def _bounded() -> Iterator[None]:
    before = signal.signal(signal.SIGVTALRM, _stop)
    signal.setitimer(signal.ITIMER_VIRTUAL, _SECONDS)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_VIRTUAL, 0)
        signal.signal(signal.SIGVTALRM, before)


def _runs_away(pattern: re.Pattern[str]) -> str:
    """The first text that keeps a pattern busy; empty for none."""
    for text in dict.fromkeys(texts(pattern)):
        for whole in (text, f"{text}\0"):
            try:
                with _bounded():
                    pattern.fullmatch(whole)
                    pattern.search(whole)
            except _RunsAwayError:
                return whole
    return ""


@pytest.mark.parametrize("pattern", [r"(?:\w+-?)+!", r"(?:plant |charred |charred plant )*seed", r"(?:[a-z]*\d?)*;"])
def test_a_pattern_that_runs_away_is_seen(pattern: str) -> None:
    assert _runs_away(re.compile(pattern))


def test_no_pattern_that_reads_runs_away() -> None:
    found = list(patterns())

    assert len(found) > 500
    told = ((module, pattern.pattern[:60], _runs_away(pattern)[:60]) for module, pattern in found)
    assert [one for one in told if one[-1]] == []
