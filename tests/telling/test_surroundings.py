"""How contexts are summed up, so that each can be set against the others."""

from __future__ import annotations

import statistics

import pytest

from narrate.model.ids import Subject
from narrate.telling.surroundings import ALL_NAMED, Surroundings


def of_densities(values: list[float]) -> Surroundings:
    densities = {Subject(level="context", id=f"C{n}"): value for n, value in enumerate(values)}
    return Surroundings(densities, {}, {}, {}, len(values))


def test_every_context_of_a_small_dig_stands_behind_the_median() -> None:
    """What a median rests on is named context by context while they are few."""
    assert len(of_densities([float(n) for n in range(ALL_NAMED)]).behind_median) == ALL_NAMED


@pytest.mark.parametrize("many", [ALL_NAMED + 1, ALL_NAMED + 2, 5000])
def test_a_large_dig_names_those_from_which_the_median_can_be_read(many: int) -> None:
    """Of many contexts the middle ones, whose densities make the median, are named with the lowest and the highest;
    so that what is cited for each of them does not grow with the dig."""
    values = [float(n * 7919 % many) for n in range(many)]
    around = of_densities(values)

    named = sorted(values[int(subject.id[1:])] for subject in around.behind_median)

    assert len(named) <= 4
    assert (named[0], named[-1]) == (min(values), max(values))
    assert statistics.median(named) == around.median_density
