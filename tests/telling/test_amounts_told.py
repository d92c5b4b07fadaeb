"""Of plants that changed between phases it is told how many there were per litre, and not in how many samples alone."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from narrate.model.measurement import Measurement
from narrate.model.plant_groups import GroupAmount
from narrate.telling.amounts_told import Between
from tests.telling.told_once import ToldOnce

if TYPE_CHECKING:
    from narrate.pipeline.judged import Judged


def _amount(low: float, value: float, high: float) -> GroupAmount:
    per_litre = Measurement(measure="density", value=value, low=low, high=high)
    return GroupAmount(group="maize", items=1, litres=10.0, per_litre=per_litre, without_richest=per_litre)


@pytest.fixture(scope="module")
def sentences(told_of_example: ToldOnce) -> list[str]:
    told = told_of_example["report"]
    site = next(subject for subject in told if subject.level == "site")
    return [sentence.text for sentence in told[site].sentences()]


def _per_litre(judged: Judged, phase: str, kind: str = "") -> float:
    """Seeds of native crops per litre, added up from the rows of the sheets by themselves."""
    project, packs = judged.project, judged.packs
    contexts = {c.id for c in project.contexts if c.phase == phase and kind in ("", c.kind)}
    samples = {s.id: s.volume_l for s in project.samples if s.context in contexts and s.volume_l}
    total = 0.0
    for row in project.counts:
        taxon = packs.taxa.get(row.identification.taxon) if row.identification.taxon else None
        is_seed = "propagule" in packs.words.parts[row.part].roles
        if row.sample in samples and taxon and "native-crop" in taxon.tags and is_seed and row.condition == "charred":
            total += (row.count.number or 0) / row.proportion_sorted
    return total / sum(samples.values())


def test_two_amounts_are_apart_where_their_intervals_do_not_touch():
    """0.03 to 0.1 lies apart from 8.3 to 9.5, and 1 to 3 does not lie apart from 2 to 4."""
    apart = Between(before=_amount(8.3, 8.9, 9.5), after=_amount(0.03, 0.06, 0.1))
    touching = Between(before=_amount(1, 2, 3), after=_amount(2, 3, 4))

    assert (apart.is_apart, apart.rises, touching.is_apart, touching.rises) == (True, False, False, True)


def test_the_fall_of_a_group_is_told_by_number(sentences: list[str], judged_example: Judged):
    """The figures per litre of both phases are those that the sheets add up to."""
    told = next(s for s in sentences if s.startswith("By number (") and "native crops" in s)
    early, late = (_per_litre(judged_example, phase.id) for phase in judged_example.project.phases[:2])

    assert f"went from {early:.1f} (95% interval" in told and f"to {late:.3f} (" in told, told


def test_a_kind_of_context_that_still_holds_some_is_told_by_number(sentences: list[str], judged_example: Judged):
    """Of storage pits, where most samples hold some in both phases, the fall per litre is told."""
    told = next(s for s in sentences if s.startswith("By number the fall holds"))
    early, late = (_per_litre(judged_example, p.id, "storage pit") for p in judged_example.project.phases[:2])

    assert f"from {early:.1f} (" in told and f"to {late:.2f} (" in told, told
    assert "for storage pits" in told


def test_no_kind_of_context_shows_none_of_a_fall_that_it_has_by_number(sentences: list[str]):
    """Presence alone shows little there, which is not nothing."""
    assert not any("none to speak of" in sentence for sentence in sentences)
