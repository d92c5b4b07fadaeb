"""The reliability of claims, drawn: what the title states, and what is left out."""

from __future__ import annotations

import pytest

from narrate.charts import reliability
from narrate.model.track_record import Hits, Line, TrackRecord
from narrate.reading.track_record import shipped_track_record


def a_record(*steps: tuple[str, int, int]) -> TrackRecord:
    lines = tuple(
        Line(
            table="support",
            name=name,
            grade="",
            hits=Hits(claims=n, right=k, low=max(k / n - 0.1, 0), high=min(k / n + 0.1, 1)),
        )
        for name, n, k in steps
    )
    return TrackRecord(contexts=1, claims=1, false_claims=0, seed=1, lines=lines, missed=())


@pytest.mark.parametrize(
    ("steps", "title"),
    [
        ([("0.50 to 0.55", 100, 80)], "At no step of support were claims clearly right less often than it says"),
        (
            [("0.50 to 0.55", 100, 80), ("0.90 to 0.95", 100, 70)],
            "Claims were clearly right less often than their support says at 0.90 to 0.95",
        ),
    ],
)
def test_the_title_states_whether_claims_are_right_as_often_as_they_sound(
    steps: list[tuple[str, int, int]], title: str
) -> None:
    """A step counts as short where the interval of its share lies below the middle of the step."""
    drawn = reliability.draw(a_record(*steps), "reliability")

    assert drawn is not None
    assert drawn.title == title


def test_steps_of_few_claims_are_left_out() -> None:
    """Nineteen claims give no mark and no row; a record of such steps alone gives no chart."""
    drawn = reliability.draw(a_record(("0.50 to 0.55", 100, 80), ("0.60 to 0.65", 19, 19)), "reliability")

    assert drawn is not None
    assert [row[0] for row in drawn.rows] == ["0.50 to 0.55"]
    assert reliability.draw(a_record(("0.60 to 0.65", 19, 19)), "reliability") is None


def test_the_shipped_record_is_drawn_with_its_numbers_in_the_table() -> None:
    """Every step of the table says how many claims of it were right."""
    record = shipped_track_record()
    drawn = reliability.draw(record, "reliability")

    assert drawn is not None
    assert {row[0]: (row[1], row[2]) for row in drawn.rows} == {
        line.name: (f"{line.hits.claims:,}", f"{line.hits.right:,}")
        for line in record.of("support")
        if line.hits.claims >= reliability.FEW
    }
