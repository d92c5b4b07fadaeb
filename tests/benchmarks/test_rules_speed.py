"""How long all rules of each region pack take on 20,000 samples, held against what is promised for one core."""

from __future__ import annotations

import time

import pytest

from narrate.judging.criteria import Look, rule_verdicts
from narrate.judging.facts import recorded
from narrate.judging.judge import rules_of
from narrate.measures.count_table import count_table
from narrate.measures.units import Units
from narrate.model.ids import LEVELS
from narrate.reading.packs import read_packs
from tests.benchmarks.large_digs import a_large_dig


@pytest.mark.parametrize("region", ["arid-southwest", "temperate-europe"])
def test_all_rules_of_a_pack_judge_twenty_thousand_samples_in_ten_seconds(region: str) -> None:
    """Verdicts of every rule in force on every level it is about, for 20,000 samples of 25 rows, in under 10 s of one core."""
    packs = read_packs((region,))[0]
    project = a_large_dig(packs, samples=20_000, contexts=2_000)
    table, records = count_table(project, packs), recorded(project, packs)

    began = time.process_time()
    judged = 0
    for level in LEVELS:
        units = (Units(table, at, packs, project.preservation) for at in (level, "phase"))
        look = Look(*units, records)  # type: ignore[arg-type]
        for rule in (rule for rules in rules_of(level, packs).values() for rule in rules):
            assert rule_verdicts(rule, look).shape == look.units.shape
            judged += 1
    seconds = time.process_time() - began
    print(f"{region}: {judged} verdict arrays on all levels, 20,000 samples: {seconds:.2f} s")

    assert judged > 500
    assert seconds < 10
