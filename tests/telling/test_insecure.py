"""Samples of disturbed and unknown deposits: how the shares stand without them."""

from __future__ import annotations

from collections.abc import Mapping

from narrate.model.ids import SITE, Subject
from narrate.model.narrative import Narrative
from narrate.pipeline.judged import Judged

LATE = Subject(level="phase", id="late")


def test_shares_without_them_are_those_of_the_sheets(
    told_of_example: Mapping[str, Mapping[Subject, Narrative]], judged_example: Judged
):
    """Without disturbed C20 and unknown C19 maize is in 21 of 23 samples, counted from the sheets."""
    project = judged_example.project
    kept = [
        s.id for s in project.samples
        if project.context(s.context).phase == "late" and s.context not in ("C19", "C20")
    ]  # fmt: skip
    maize = {r.sample for r in project.counts if r.identification.taxon == "Zea mays" and r.condition == "charred"}
    k = sum(s in maize for s in kept)

    assert (k, len(kept)) == (21, 23)
    assert f"without them maize is in {k} of {len(kept)} samples, nuts in 19" in told_of_example["report"][LATE].text


def test_how_far_shares_move_is_told(told_of_example: Mapping[str, Mapping[Subject, Narrative]]):
    """Fleshy fruit moves most: 11 of 27 is 40.7%, 11 of 23 is 47.8%, more than seven points and under eight."""
    most = "no share moves by more than eight percentage points"

    assert most in told_of_example["report"][LATE].text
    site = told_of_example["report"][Subject(level="site", id=SITE)].text
    assert "no share of a phase moves by more than eight" in site
