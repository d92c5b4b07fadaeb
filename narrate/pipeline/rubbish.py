"""How often Python looks for values that refer to one another in a ring and that nobody holds any more."""

from __future__ import annotations

import gc
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
