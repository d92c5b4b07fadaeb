"""What a reviewer is told of names in doubt, of wood that nobody named, and of two sums that differ."""

from __future__ import annotations

import pytest

from narrate.model.ids import Subject
from narrate.model.narrative import Narrative
from narrate.pipeline.judged import Judged
from narrate.telling.tell import narratives


@pytest.fixture(scope="module")
def review(judged_example: Judged) -> dict[Subject, Narrative]:
    w = judged_example
    return dict(narratives(w.project, w.packs, w.findings, w.claims, "review", ("context",)))


@pytest.mark.parametrize(
    ("context", "told"),
    [
        ("C02", "Named only as cf. are two of the 6 maygrass grains."),
        ("C08", "Named only as cf. is one of the 2 maize kernels."),
        ("C02", "Of four samples with wood it was named in one; that of S004, S005, and S006 was not named."),
        ("C08", "Name the wood of S020: none of the other work that is weighed here would change a reading"),
        ("C13", "Four items of other kinds (pine bark scales) are left out of that sum;"),
        ("C17", "Twenty-seven items of other kinds (grass culms and cane stems) are left out of that sum;"),
        ("C17", "items of one dump lie in clusters, so that shares are less sure than single draws would make them"),
    ],
)
def test_doubts_are_told_by_name_and_number(review: dict[Subject, Narrative], context: str, told: str):
    """As the count sheets of the example have it, counted by hand."""
    assert told in review[Subject(level="context", id=context)].text
