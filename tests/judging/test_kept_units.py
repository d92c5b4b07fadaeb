"""What was worked out of units and kept, found again by keys of all that it reads."""

from __future__ import annotations

import random
from dataclasses import replace

import numpy as np
import pytest

from narrate.judging.judge import judge
from narrate.judging.kept_units import KeptUnits, columns_found, turnings_read, turnings_written
from narrate.model.claims import Turning
from narrate.model.ids import StatementId
from narrate.model.packs import Packs
from narrate.model.rules import Selector
from narrate.reading.packs import read_packs
from tests.builders import a_context, a_project, a_row, a_sample
from tests.judging.edited import a_small_dig, differing, edited
from tests.judging.rules import a_rule, bound

KEY = bytes(range(16))
A_CHANGE = Turning(
    items=-2, taxon=None, part="kernel", condition="charred", sample="S1", verdict="fails", says="two fewer",
    by_sample=(("S1", -1), ("S2", -1)),
)  # fmt: skip


@pytest.fixture(scope="module")
def packs() -> Packs:
    """The packs of the East with every sixth rule, which is enough to ask every kind of thing."""
    whole = read_packs(("eastern-north-america",))[0]
    assert whole is not None
    return replace(whole, rules=dict(list(whole.rules.items())[::6]))


def two_digs(kernels: int) -> tuple:  # type: ignore[type-arg]
    """Two samples of two contexts, of which the second holds so many kernels."""
    rows = [a_row("S1", part="cupule", count=30), a_row("S1", count=3), a_row("S2", count=kernels)]
    return a_project([a_context("C1"), a_context("C2")], [a_sample("S1", "C1"), a_sample("S2", "C2")], rows)


def test_edited_projects_are_judged_as_if_anew(packs: Packs) -> None:
    """After random edits every column is that of judging anew, bit for bit; few are tried here, and as many as wanted
    by `python -m tests.judging.edited`."""
    found, known = edited(15, packs, seed=3, replicates=20)

    assert found == []
    assert known > 0.3


def test_rules_that_hold_units_against_each_other_are_judged_as_if_anew(packs: Packs) -> None:
    """Where a rule asks for the median of the dig, or for its pool of plants, an edit elsewhere is not missed."""
    everything, few = Selector(), bound("items", Selector(), at_least=1)
    across = (
        a_rule(
            "fuel.rich", bound("times_median_density", everything, at_least=1.2, judged_on="value"), needs=(few,)
        ),
        a_rule("fuel.varied", bound("taxa_against_pool", everything, at_least=0.0), needs=(few,), direction="against"),
    )
    one = replace(next(iter(packs.statements.values())), prior=0.0)
    rules = {rule.id: replace(rule, statement=one.id) for rule in across}
    own = replace(packs, rules=rules, statements={**packs.statements, one.id: one})

    found, known = edited(10, own, seed=5, replicates=20)

    assert found == []
    assert known > 0.1
    assert any(claim.turnings for claim in judge(a_small_dig(random.Random(5)), own, replicates=0))


def test_only_what_was_edited_is_judged_again(packs: Packs) -> None:
    """Another count in one sample leaves all that was kept of another sample and its context."""
    kept = KeptUnits()
    judge(two_digs(4), packs, replicates=20, kept=kept)
    later = KeptUnits(kept.now)

    judge(two_digs(5), packs, replicates=20, kept=later)

    # Draws and turnings of sample and context S1 and C1 are found; those of S2 and C2, and draws of phase and dig, new.
    assert (len(kept.now), len(later.now), len(later.now.keys() & kept.now.keys())) == (10, 10, 4)


def test_kept_values_are_not_worked_out_again(packs: Packs) -> None:
    """A unit whose key is known takes what is kept, whatever it is: so a key must hold all that is read."""
    project, kept = two_digs(4), KeptUnits()
    judge(project, packs, replicates=20, kept=kept)
    draws = {key: value for key, value in kept.now.items() if not value.startswith(b"{")}
    other = KeptUnits({**kept.now, **{key: bytes(len(value)) for key, value in draws.items()}})

    found = judge(project, packs, replicates=20, kept=other)

    assert {claim.stability for claim in found} == {0.0}


def test_other_replicates_and_seeds_have_keys_of_their_own(packs: Packs) -> None:
    """Draws that were made otherwise are not found."""
    project, kept = a_project(counts=[a_row(part="cupule", count=12)]), KeptUnits()
    judge(project, packs, replicates=20, seed=1, kept=kept)
    for replicates, seed in ((21, 1), (20, 2)):
        other = KeptUnits(kept.now)
        found = judge(project, packs, replicates=replicates, seed=seed, kept=other)

        assert differing(found, judge(project, packs, replicates=replicates, seed=seed)) == []


def test_values_are_packed_and_unpacked() -> None:
    """What was kept is found in what was packed, and nothing else is; nothing at all can be packed too."""
    assert KeptUnits.unpacked(KeptUnits().packed()).found(KEY) is None
    kept = KeptUnits()
    kept.add(KEY, b"draws")
    kept.add(KEY[::-1], b"")
    again = KeptUnits.unpacked(kept.packed())

    assert (again.found(KEY), again.found(KEY[::-1]), again.found(bytes(16))) == (b"draws", b"", None)


@pytest.mark.parametrize("raw", [b"", b"\1", KeptUnits().packed() + b"x", (10**15).to_bytes(8) + bytes(100)])
def test_values_that_are_cut_are_refused(raw: bytes) -> None:
    """Bytes that are not as long as they say are no kept values."""
    with pytest.raises(ValueError, match="kept values"):
        KeptUnits.unpacked(raw)


def test_turnings_are_written_and_read() -> None:
    """The smallest changes of a unit come back as they were."""
    found = {StatementId("fuel.maize-cob"): (A_CHANGE,)}

    assert turnings_read(turnings_written(found)) == found


def test_columns_of_another_length_are_not_believed() -> None:
    """A kept column that does not fit is worked out again."""
    kept = KeptUnits({KEY: bytes(2)})
    out = np.zeros((3, 1), np.uint8)

    assert columns_found(kept, [KEY], out).tolist() == [0]
