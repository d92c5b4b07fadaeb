"""Pieces and grams stand together only where they are of the same rows of the count sheets."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import TYPE_CHECKING

import pytest

from narrate.model.findings import Tally
from narrate.model.ids import PartId, Subject, TaxonId
from narrate.telling.names import Names
from tests.telling.told_once import ToldOnce

if TYPE_CHECKING:
    from narrate.pipeline.judged import Judged

SHELL = Tally(
    taxon=TaxonId("Carya"), written="Carya", part=PartId("nutshell"), condition="charred", counted=42, estimated=42.0,
    mass_g=0.51,
)  # fmt: skip


@pytest.fixture
def names(judged_example: Judged) -> Names:
    packs = judged_example.packs
    return Names(audience=packs.audiences["report"], packs=packs)


@pytest.mark.parametrize(
    ("tally", "told"),
    [
        (SHELL, "42 pieces of hickory nutshell (0.51 g)"),
        (
            replace(SHELL, mass_g=1.63, uncounted_g=1.12),
            "42 pieces of hickory nutshell (0.51 g) and 1.1 g more that was not counted",
        ),
        (replace(SHELL, unweighed=30), "42 pieces of hickory nutshell (0.51 g for the 12 weighed)"),
        (
            replace(SHELL, mass_g=1.12, uncounted_g=1.12, unweighed=42),
            "42 pieces of hickory nutshell and 1.1 g more that was not counted",
        ),
    ],
)
def test_pieces_are_told_with_their_own_mass(names: Names, tally: Tally, told: str):
    """What was weighed and not counted is told apart, and what was counted and not weighed is said to be so."""
    assert names.remains(tally, with_mass=True, latin=False) == told


def test_the_walnut_family_of_the_oven_weighs_what_its_rows_say(told_of_example: ToldOnce, judged_example: Judged):
    """C03: 33, 5 and 4 pieces weigh 0.40, 0.04 and 0.07 g; 1.12 g were weighed alone (counts/light_fraction.csv)."""
    w = judged_example
    (tally,) = (t for t in w.findings.of(Subject(level="context", id="C03")).tallies if t.written == "Juglandaceae")
    text = told_of_example["report"][Subject(level="context", id="C03")].text

    assert (tally.counted, tally.mass_g, tally.uncounted_g, tally.unweighed) == (42, 1.63, 1.12, 0)
    assert re.search(r"42 pieces of .*?0\.51 g\) and 1\.1 g more that was not counted", text)
