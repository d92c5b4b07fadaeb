"""How long all rules of each region pack take on 5,000 samples, held against one grouping of their rows by pandas."""

from __future__ import annotations

import pytest

from narrate.judging.criteria import Look, rule_verdicts
from narrate.judging.facts import recorded
from narrate.judging.judge import rules_of
from narrate.measures.count_table import count_table
from narrate.measures.units import Units
from narrate.model.ids import LEVELS
from narrate.reading.packs import read_packs
from tests.benchmarks.large_digs import a_large_dig
from tests.benchmarks.yardsticks import grouped_by_pandas, timed


@pytest.mark.parametrize("region", ["arid-southwest", "temperate-europe"])
def test_all_rules_of_a_pack_judge_while_pandas_groups_two_hundred_times(region: str) -> None:
    """Verdicts of every rule in force on every level it is about, for 5,000 samples of 25 rows."""
    packs = read_packs((region,))[0]
    project = a_large_dig(packs, samples=5_000, contexts=500)
    table, records = count_table(project, packs), recorded(project, packs)

    with timed() as taken:
        judged = 0
        for level in LEVELS:
            units = (Units(table, at, packs, project.preservation) for at in (level, "phase"))
            look = Look(*units, records)  # type: ignore[arg-type]
            for rule in (rule for rules in rules_of(level, packs).values() for rule in rules):
                assert rule_verdicts(rule, look).shape == look.units.shape
                judged += 1
    seconds, grouped = taken(), grouped_by_pandas(table)
    print(f"{region}: {judged} verdict arrays: {seconds:.2f} s, {seconds / grouped:.0f} groupings of {grouped:.3f} s")

    assert judged > 500
    assert seconds < 200 * grouped
