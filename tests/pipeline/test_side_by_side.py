"""Two processes give what one would."""

from __future__ import annotations

import os

import pytest

from narrate.pipeline.side_by_side import side_by_side


def test_what_jobs_give_comes_in_their_order() -> None:
    """Each job's value stands where the job stood, whichever process did it."""
    assert side_by_side([lambda: "first", lambda: "second", lambda: "third"], is_large=True) == [
        "first", "second", "third",
    ]  # fmt: skip


def test_small_work_is_done_here() -> None:
    """What would not pay for a second process is done by this one."""
    assert side_by_side([os.getpid, os.getpid], is_large=False) == [os.getpid()] * 2


def test_what_the_system_refuses_a_job_is_raised_here() -> None:
    """A disk that is full or a file that vanished stands in the way here as it does in the other process."""

    def refused() -> None:
        raise FileNotFoundError(2, "No such file or directory", "counts.csv")

    with pytest.raises(FileNotFoundError, match=r"counts\.csv"):
        side_by_side([refused, lambda: None], is_large=True)
