"""Memory that nobody holds any more: how often Python looks for it, and when the system gets it back."""

from __future__ import annotations

import ctypes
import gc
import sys
from collections.abc import Iterator
from contextlib import contextmanager

_SELDOM = (100_000, 20, 100)


@contextmanager
def seldom_looked_for() -> Iterator[None]:
    """
    Within it Python looks for such rings seldom.

    A dig is millions of values that stay until the end. To walk through them again and again as they are made takes a
    sixth of a run, and there is hardly a ring among them: everything else is freed as soon as nobody holds it.
    """
    before = gc.get_threshold()
    gc.set_threshold(*_SELDOM)
    try:
        yield
    finally:
        gc.set_threshold(*before)


def give_back() -> None:
    """
    Gives the system what was freed and lies between values that stay, where its C library can do that.

    Numbers of a whole dig come and go while it is judged: at 300 samples they leave a fifth of the process free.
    """
    if sys.platform.startswith("linux"):
        trim = getattr(ctypes.CDLL(None), "malloc_trim", None)
        if trim is not None:
            trim(0)
