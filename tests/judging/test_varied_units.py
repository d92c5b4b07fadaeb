"""Sums with a change added against the varied table itself, summed anew."""

from __future__ import annotations

import numpy as np
import pytest

from narrate.judging.candidates import Candidates
from narrate.judging.criteria import leaves
from narrate.judging.variants import varied, with_empty_rows
from narrate.judging.varied_look import OF_OWN_COUNTS
from narrate.judging.varied_units import ANSWERED, VariedUnits
from narrate.measures.catalogue import measured
from narrate.measures.count_table import count_table
from narrate.measures.units import Units
from narrate.model.rules import Bound, Selector
from narrate.pipeline.judged import Judged


@pytest.mark.parametrize("level", ["sample", "context"])
def test_sums_with_a_change_added_are_those_of_the_varied_table(judged_example: Judged, level: str) -> None:
    """Every measure answered from sums has the ends that the varied table gives, for every change that is possible."""
    project, packs = judged_example.project, judged_example.packs
    units = Units(count_table(project, packs), level, packs, project.preservation)  # type: ignore[arg-type]
    asked = {
        (leaf.measure, leaf.of, leaf.to)
        for rule in packs.rules.values()
        for leaf in leaves((*rule.needs, rule.criteria))
        if level in rule.about and isinstance(leaf, Bound) and leaf.measure in ANSWERED & OF_OWN_COUNTS
    }
    assert len(asked) > 100
    for measure, of, to in sorted(asked, key=repr)[::4]:
        selectors = tuple(s for s in (of or Selector(), to) if s is not None)
        kinds = Candidates(units).of(selectors, each=False)
        if not kinds.size:
            continue
        extended = units.over(with_empty_rows(units, kinds))
        changed = varied(extended, kinds)
        found = measured(measure, VariedUnits.of(extended, changed), of=of, to=to)
        expected = measured(measure, extended.with_table(changed.made()), of=of, to=to)
        is_possible = changed.is_possible.reshape(-1, len(units.ids))
        for end in ("value", "low", "high"):
            np.testing.assert_allclose(
                np.broadcast_to(getattr(found, end), is_possible.shape)[is_possible],
                np.broadcast_to(getattr(expected, end), is_possible.shape)[is_possible],
                rtol=1e-12,
                err_msg=f"{measure} {of} {to} {end}",
            )
