"""Rows behind a claim: named one by one where they are few, by their samples where those are many."""

from __future__ import annotations

from dataclasses import replace

from narrate.model.ids import SampleId
from narrate.web.links import Links
from narrate.web.rows import NUMBERED_AT_MOST, Rows, RowSet
from narrate.web.writing import Writing
from tests.web.editions import a_project, a_row


def rows_of_samples(many: int, *, without: tuple[str, ...] = ()) -> RowSet:
    """The rows of many samples, one each, but for those of some."""
    sample = a_project().samples[0]
    samples = tuple(replace(sample, id=SampleId(f"S{number}")) for number in range(1, many + 1))
    counts = tuple(a_row(one.id, "Zea mays", "cupule", "4", 10 + line) for line, one in enumerate(samples))
    rows = Rows(a_project(samples=samples, counts=counts), Links(), Writing(), is_public=False)
    found = rows.behind(row.place for row in counts if row.sample not in without)
    assert found is not None
    return found


def test_rows_of_some_samples_are_numbered() -> None:
    """As many samples as may be numbered have each the numbers of their rows."""
    groups = rows_of_samples(NUMBERED_AT_MOST).groups

    assert [(group.label, group.rows) for group in groups[:2]] == [("S1", "1"), ("S2", "1")]
    assert len(groups) == NUMBERED_AT_MOST


def test_of_more_samples_the_samples_are_named_in_runs() -> None:
    """Seventy samples of seventy-two, without the tenth and the last: two runs, in the order of the sheets."""
    found = rows_of_samples(72, without=("S10", "S72"))

    assert found.says == "70 rows of 70 samples"
    assert [group.label for group in found.groups] == ["S1 to S9", "S11 to S71"]


def test_the_same_rows_are_equal_however_often_they_are_found() -> None:
    """Sets that were made, forgotten and made again are one set, so that no page shows the rows twice."""
    sample = a_project().samples[0]
    counts = (a_row(sample.id, "Zea mays", "cupule", "4", 10), a_row(sample.id, "Iva annua", "achene", "2", 11))
    rows = Rows(a_project(counts=counts), Links(), Writing(), is_public=False)
    found = rows.behind(row.place for row in counts)
    rows.forget()
    again, fewer = rows.behind(row.place for row in counts), rows.behind([counts[0].place])

    assert again is not found and again == found and hash(again) == hash(found)
    assert fewer != found
