"""Two groups of contexts held against each other by their samples, against published figures and other libraries."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from statsmodels.stats.contingency_tables import StratifiedTable

from narrate.measures.contrast import samples_of, ubiquity_apart, ubiquity_apart_p
from narrate.measures.count_table import count_table
from narrate.measures.units import Units
from narrate.model.project import Project
from narrate.model.rules import Selector
from tests.measures.digs import units
from tests.measures.test_apart import dig_of
from tests.small_packs import small_packs

AT_FIRES = Selector(taxon=("Zea mays",), context_kind=("hearth",))
IN_PITS = Selector(taxon=("Zea mays",), context_kind=("storage pit",))


def of_site(dig: Project) -> Units:
    return units(dig, "site")


def test_in_one_phase_it_is_the_difference_of_newcombe() -> None:
    """56 of 70 against 48 of 80: 0.2, from 0.0524 to 0.3339 (Newcombe 1998, example a, method 10; from memory)."""
    column = ubiquity_apart(of_site(dig_of({"hearth": (56, 70), "storage pit": (48, 80)})), AT_FIRES, IN_PITS)

    assert column.value[0, 0] == pytest.approx(0.2)
    assert (column.low[0, 0], column.high[0, 0]) == pytest.approx((0.0524, 0.3339), abs=5e-5)
    assert (column.of[0, 0], column.to[0, 0], column.n[0, 0]) == (56, 48, 150)  # type: ignore[index]


def test_phases_are_held_against_themselves() -> None:
    """
    Early 9 of 10 hearths and 18 of 20 pits, late 1 of 10 and 1 of 10: alike in each phase, so no difference.

    Pooled, the pits would look richer: 19 of 30 against 10 of 20 (worked out).
    """
    early = dig_of({"hearth": (9, 10), "storage pit": (18, 20)})
    late = dig_of({"hearth": (1, 10), "storage pit": (1, 10)}, phases=("two",))
    column = ubiquity_apart(of_site(_together(early, late)), AT_FIRES, IN_PITS)

    assert column.value[0, 0] == pytest.approx(0)
    assert column.low[0, 0] < 0 < column.high[0, 0]


def test_a_phase_without_one_of_the_groups_is_left_out() -> None:
    """Late pits have no late hearths to be held against, so only the early phase counts."""
    early = dig_of({"hearth": (9, 10), "storage pit": (2, 10)})
    late = dig_of({"storage pit": (10, 10)}, phases=("two",))
    column = ubiquity_apart(of_site(_together(early, late)), AT_FIRES, IN_PITS)

    assert (column.value[0, 0], column.n[0, 0]) == (pytest.approx(0.7), 20)  # type: ignore[index]


def test_no_phase_with_both_groups_gives_no_value() -> None:
    """Hearths of one phase and pits of another cannot be compared like with like."""
    early = dig_of({"hearth": (9, 10)})
    late = dig_of({"storage pit": (2, 10)}, phases=("two",))
    column = ubiquity_apart(of_site(_together(early, late)), AT_FIRES, IN_PITS)

    assert np.isnan(column.value[0, 0])
    assert column.reason == "there is no phase with samples of both groups of contexts"


def test_the_chance_agrees_with_mantel_and_haenszel() -> None:
    """Two groups in two phases give the p of statsmodels, without correction for continuity."""
    early = dig_of({"hearth": (9, 10), "storage pit": (6, 20)})
    late = dig_of({"hearth": (5, 12), "storage pit": (1, 10)}, phases=("two",))
    tables = [np.array([[9, 1], [6, 14]]), np.array([[5, 7], [1, 9]])]

    column = ubiquity_apart_p(of_site(_together(early, late)), AT_FIRES, IN_PITS)

    assert column.value[0, 0] == pytest.approx(StratifiedTable(tables).test_null_odds(correction=False).pvalue)


def test_samples_of_a_group_are_counted_whatever_they_hold() -> None:
    """Ten samples from hearths, nine of them with maize, are ten samples."""
    site = of_site(dig_of({"hearth": (9, 10), "storage pit": (6, 20)}))

    assert samples_of(site, AT_FIRES).value.tolist() == [[10]]


@pytest.mark.parametrize(
    ("selector", "items"),
    [
        (Selector(context_trait=("thermal",)), 27),
        (Selector(not_context_trait=("thermal",)), 18),
        (Selector(context_kind=("hearth", "storage pit")), 45),
        (Selector(context_kind=("midden",)), 0),
        (Selector(not_security=("disturbed",)), 45),
        (Selector(not_security=("unknown",)), 0),
        (Selector(not_deposit=("unknown",)), 0),
    ],
)
def test_a_selector_may_ask_for_contexts(selector: Selector, items: int) -> None:
    """Three cupules in each of nine hearths and six pits: only what lay in such contexts is counted."""
    dig = dig_of({"hearth": (9, 9), "storage pit": (6, 6)})
    site = Units(count_table(dig, small_packs()), "site", small_packs(), dig.preservation)

    assert site.counted(selector).tolist() == [[items]]


def _together(early: Project, late: Project) -> Project:
    def named(dig: Project, mark: str) -> Project:
        return replace(
            dig,
            contexts=tuple(replace(c, id=f"{mark}{c.id}") for c in dig.contexts),  # type: ignore[arg-type]
            samples=tuple(replace(s, id=f"{mark}{s.id}", context=f"{mark}{s.context}") for s in dig.samples),  # type: ignore[arg-type]
            counts=tuple(replace(r, sample=f"{mark}{r.sample}") for r in dig.counts),  # type: ignore[arg-type]
        )

    first, second = named(early, "E"), named(late, "L")
    return replace(
        first,
        phases=(*first.phases, *second.phases),
        contexts=(*first.contexts, *second.contexts),
        samples=(*first.samples, *second.samples),
        counts=(*first.counts, *second.counts),
    )
