"""Rows behind a claim: named one by one where they are few, by their samples where those are many."""

from __future__ import annotations

from dataclasses import replace

from narrate.model.ids import SampleId
from narrate.web.links import Links
from narrate.web.rows import NUMBERED_AT_MOST, Rows, rows_of
from narrate.web.writing import Writing
from tests.web.editions import a_project, a_row


def rows_of_samples(many: int) -> Rows:
    sample = a_project().samples[0]
    samples = tuple(replace(sample, id=SampleId(f"S{number}")) for number in range(1, many + 1))
    counts = tuple(a_row(one.id, "Zea mays", "cupule", "4", 10 + line) for line, one in enumerate(samples))
    return rows_of(a_project(samples=samples, counts=counts), Links(), Writing(), is_public=False)


def test_rows_of_some_samples_are_numbered() -> None:
    """As many samples as may be numbered have each the numbers of their rows."""
    rows = rows_of_samples(NUMBERED_AT_MOST)
    found = rows.behind(row.place for row in rows.counts.values())

    assert found is not None
    assert [(group.label, group.rows) for group in found.groups[:2]] == [("S1", "1"), ("S2", "1")]
    assert len(found.groups) == NUMBERED_AT_MOST


def test_of_more_samples_the_samples_are_named_in_runs() -> None:
    """Seventy samples of seventy-two, without the tenth and the last: two runs, in the order of the sheets."""
    rows = rows_of_samples(72)
    found = rows.behind(row.place for row in rows.counts.values() if row.sample not in ("S10", "S72"))

    assert found is not None
    assert found.says == "70 rows of 70 samples"
    assert [group.label for group in found.groups] == ["S1 to S9", "S11 to S71"]
