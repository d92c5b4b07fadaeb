"""Work that is done by two processes at once, where the system can copy a process and there is a second core."""

from __future__ import annotations

import gc
import os
import pickle
import sys
import threading
import warnings
from collections.abc import Callable, Sequence
from typing import TypeVar

from narrate.pipeline.rubbish import give_back

Given = TypeVar("Given")


def side_by_side(jobs: Sequence[Callable[[], Given]], *, is_large: bool) -> list[Given]:
    """
    What each job gives, in their order; the last is done here and the others by copies of this process.

    A copy sees everything that was read and judged without anything being sent; only what it gives goes through a
    pipe, so that has to be small. Small work is done in turn, as is all work where a process cannot be copied safely.
    Raises what a job raised, and RuntimeError where a copy died.
    """
    if len(jobs) < 2 or not is_large or not _can_be_copied():
        return [job() for job in jobs]
    give_back()
    gc.freeze()  # what stands now stays shared: no look for rubbish touches it
    try:
        started = [_started(job) for job in jobs[:-1]]
        try:
            last = jobs[-1]()
        finally:
            given = [_ended(child, pipe) for child, pipe in started]
    finally:
        gc.unfreeze()
    return [*(_unpacked(raw) for raw in given), last]


def _can_be_copied() -> bool:
    # Another thread of ours may hold a lock that a copy would wait for for ever: the preview builds in a thread.
    is_enough = len(os.sched_getaffinity(0)) > 1 if sys.platform.startswith("linux") else False
    return is_enough and threading.active_count() == 1


def _started(job: Callable[[], object]) -> tuple[int, int]:
    sys.stdout.flush()
    sys.stderr.flush()
    receiving, sending = os.pipe()
    with warnings.catch_warnings():
        warnings.simplefilter("ignore", DeprecationWarning)  # threads of numpy, which survive a copy
        child = os.fork()
    if child:
        os.close(sending)
        return child, receiving
    try:
        os.close(receiving)
        with os.fdopen(sending, "wb") as pipe:
            pickle.dump(_done(job), pipe, pickle.HIGHEST_PROTOCOL)
    except BaseException:
        sys.excepthook(*sys.exc_info())
        os._exit(1)
    os._exit(0)


def _done(job: Callable[[], object]) -> tuple[object, OSError | None]:
    """What the job gave, or what the system refused it."""
    try:
        return job(), None
    except OSError as fault:
        return None, fault


def _ended(child: int, receiving: int) -> bytes:
    with os.fdopen(receiving, "rb") as pipe:
        raw = pipe.read()
    _, status = os.waitpid(child, 0)
    return raw if status == 0 else b""


def _unpacked(raw: bytes) -> Given:  # type: ignore[type-var]
    if not raw:
        raise RuntimeError("a process that built pages died; what it wrote is whole, and the next run goes on")
    value, fault = pickle.loads(raw)
    if fault is not None:
        raise fault
    return value  # type: ignore[no-any-return]
