"""Every measure of the catalogue can be held against a bound by a rule."""

from __future__ import annotations

import pytest

from narrate.judging.criteria import Look, verdicts
from narrate.judging.facts import CANNOT_TELL, FAILS, HOLDS
from narrate.measures.catalogue import MEASURES
from narrate.measures.count_table import count_table
from narrate.measures.units import Units
from narrate.model.ids import Level
from narrate.model.rules import Bound, Selector
from tests.measures.digs import HERE, a_dig
from tests.small_packs import small_packs

KERNELS = Selector(taxon=("Zea mays",), part=("kernel",))  # type: ignore[arg-type]
CUPULES = Selector(taxon=("Zea mays",), part=("cupule",))  # type: ignore[arg-type]


def codes(bound: Bound, level: Level = "sample") -> list[int]:
    """Verdicts on 40 kernels and 20 cupules, 40 kernels alone, and nothing."""
    packs = small_packs()
    maize = [("Zea mays", "kernel", 40), ("Zea mays", "cupule", 20)]
    dig = a_dig([maize, maize[:1], []], phases=["early", "late", "late"])
    table = count_table(dig, packs)
    units, phases = (Units(table, one, packs, "charred") for one in (level, "phase"))  # type: ignore[arg-type]
    return verdicts(bound, Look(units, phases, ()))[0].tolist()


@pytest.mark.parametrize("id", MEASURES)
def test_a_rule_may_ask_for_it_by_name(id: str) -> None:
    """Whatever it is, the answer is one of three, and a bound that everything meets never fails."""
    measure = MEASURES[id]
    bound = Bound(
        measure=id,
        of=KERNELS if measure.needs_of else None,
        to=CUPULES if measure.needs_to else None,
        at_least=-1e9,
        place=HERE,
    )

    assert set(codes(bound, measure.levels[0])) <= {HOLDS, CANNOT_TELL}


def test_a_bound_is_enough_for_a_rule_where_there_is_no_value() -> None:
    """
    Forty kernels and no cupule have no log ratio, but it is at least 1: a rule that asks for 0.5 holds, one for 2
    cannot tell, and where nothing was found nothing can be told.
    """
    least = [Bound(measure="log_ratio", of=KERNELS, to=CUPULES, at_least=b, place=HERE) for b in (0.5, 2.0)]

    assert [codes(bound)[1] for bound in least] == [HOLDS, CANNOT_TELL]
    assert codes(least[0])[2] == CANNOT_TELL


def test_an_upper_bound_fails_on_what_is_open_above() -> None:
    """At most 0.3 fails where the ratio is at least ten to one, because its lower end says so."""
    most = Bound(measure="log_ratio", of=KERNELS, to=CUPULES, at_most=0.3, place=HERE)

    assert codes(most)[1] == FAILS


def test_the_other_way_round_a_nought_is_a_bound_from_above() -> None:
    """No cupule to forty kernels: at most a tenth, so that 'at most 0' in powers of ten holds."""
    most = Bound(measure="log_ratio", of=CUPULES, to=KERNELS, at_most=0.0, place=HERE)

    assert codes(most)[1] == HOLDS
