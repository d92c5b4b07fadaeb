"""How long judging takes on large digs, held against one grouping of the same rows by pandas."""

from __future__ import annotations

import numpy as np
import pytest

from narrate.judging.criteria import Look, rule_verdicts
from narrate.judging.facts import recorded
from narrate.judging.judge import rules_of
from narrate.judging.resample import drawn_samples, resampled
from narrate.measures.count_table import count_table
from narrate.measures.units import Units
from narrate.model.packs import Packs
from narrate.reading.packs import read_packs
from tests.benchmarks.large_digs import a_large_dig
from tests.benchmarks.yardsticks import grouped_by_pandas, timed


@pytest.fixture(scope="module")
def packs() -> Packs:
    return read_packs(("eastern-north-america",))[0]


def test_ten_thousand_samples_are_judged_in_sixty_groupings(packs: Packs) -> None:
    """All rules on samples give their verdicts for 10,000 samples of 25 rows while pandas groups those 60 times."""
    project = a_large_dig(packs, samples=10_000, contexts=1_000)
    table = count_table(project, packs)
    records = recorded(project, packs)

    with timed() as taken:
        units, phases = (Units(table, level, packs, project.preservation) for level in ("sample", "phase"))
        look = Look(units, phases, records)
        codes = [rule_verdicts(rule, look) for rules in rules_of("sample", packs).values() for rule in rules]
    seconds = taken()
    grouped = grouped_by_pandas(table)
    print(f"{len(codes)} rules, 10,000 samples: {seconds:.2f} s, {seconds / grouped:.0f} groupings of {grouped:.3f} s")

    assert all(c.shape == (1, 10_000) for c in codes)
    assert len({int(c) for code in codes for c in np.unique(code)}) == 3
    assert seconds < 60 * grouped


def test_a_thousand_resamples_of_a_hundred_contexts_take_no_longer(packs: Packs) -> None:
    """All rules on contexts give their verdicts for 1,000 draws of 100 contexts while pandas groups 125,000 rows 140 times."""
    project = a_large_dig(packs, samples=200, contexts=100)
    table = count_table(project, packs)
    records = recorded(project, packs)

    with timed() as taken:
        draws = resampled(table, 1_000, 1)
        units, phases = (Units(table, level, packs, project.preservation) for level in ("context", "phase"))
        redrawn = [u.with_table(draws, drawn_samples(u, 1_000, 1)) for u in (units, phases)]
        look = Look(*redrawn, records)
        codes = [rule_verdicts(rule, look) for rules in rules_of("context", packs).values() for rule in rules]
    seconds = taken()
    grouped = grouped_by_pandas(count_table(a_large_dig(packs, samples=5_000, contexts=500), packs))
    print(f"{len(codes)} rules, 1,000 draws: {seconds:.2f} s, {seconds / grouped:.0f} groupings of {grouped:.3f} s")

    assert all(c.shape == (1_000, 100) for c in codes)
    assert seconds < 140 * grouped
