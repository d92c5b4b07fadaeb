"""Units judged in shares come out as units judged in one go."""

from __future__ import annotations

import random
from collections.abc import Callable, Sequence
from typing import Any

import numpy as np
import pytest

from narrate.judging import at_once
from narrate.judging.at_once import shares_of
from narrate.judging.judge import judge
from narrate.reading.packs import read_packs
from tests.judging.edited import a_small_dig, differing


def the_last_first(jobs: Sequence[Callable[[], Any]]) -> list[Any]:
    """The jobs done in the other order."""
    return [job() for job in reversed(jobs)][::-1]


def test_shares_change_no_column(monkeypatch: pytest.MonkeyPatch) -> None:
    """Draws and turnings worked out of three units at a time, in any order, are those of all units in one go."""
    packs = read_packs(("eastern-north-america",))[0]
    assert packs is not None
    dig = a_small_dig(random.Random(7))
    whole = judge(dig, packs, replicates=20)
    monkeypatch.setattr(at_once, "MANY", 2)

    shared = judge(dig, packs, replicates=20, at_once=the_last_first)

    assert differing(shared, whole) == []
    assert len(shares_of(np.arange(6))) == 2


def test_few_units_are_not_shared_out() -> None:
    """Work on fewer units than pay for it stays in one piece."""
    assert [part.tolist() for part in shares_of(np.arange(3))] == [[0, 1, 2]]
