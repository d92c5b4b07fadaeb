"""How long judging takes on large digs, in seconds of one core, held against what is promised."""

from __future__ import annotations

import time

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


@pytest.fixture(scope="module")
def packs() -> Packs:
    return read_packs(("eastern-north-america",))[0]


def test_twenty_thousand_samples_are_judged_in_ten_seconds(packs: Packs) -> None:
    """All rules on samples give their verdicts for 20,000 samples of 25 rows in under 10 s."""
    project = a_large_dig(packs, samples=20_000, contexts=2_000)
    table = count_table(project, packs)
    records = recorded(project, packs)

    began = time.process_time()
    look = Look(
        Units(table, "sample", packs, project.preservation), Units(table, "phase", packs, project.preservation), records
    )
    codes = [rule_verdicts(rule, look) for rules in rules_of("sample", packs).values() for rule in rules]
    seconds = time.process_time() - began
    print(f"{len(codes)} rules, 20,000 samples: {seconds:.2f} s")

    assert all(c.shape == (1, 20_000) for c in codes)
    assert len({int(c) for code in codes for c in np.unique(code)}) == 3
    assert seconds < 10


def test_a_thousand_resamples_of_a_hundred_contexts_take_five_seconds(packs: Packs) -> None:
    """All rules on contexts give their verdicts for 1,000 draws of the counts of 100 contexts in under 5 s."""
    project = a_large_dig(packs, samples=200, contexts=100)
    table = count_table(project, packs)
    records = recorded(project, packs)

    began = time.process_time()
    draws = resampled(table, 1_000, 1)
    units, phases = (Units(table, level, packs, project.preservation) for level in ("context", "phase"))
    redrawn = [u.with_table(draws, drawn_samples(u, 1_000, 1)) for u in (units, phases)]
    look = Look(*redrawn, records)
    codes = [rule_verdicts(rule, look) for rules in rules_of("context", packs).values() for rule in rules]
    seconds = time.process_time() - began
    print(f"{len(codes)} rules, 1,000 draws of 100 contexts: {seconds:.2f} s")

    assert all(c.shape == (1_000, 100) for c in codes)
    assert seconds < 5
