"""What was worked out of the things that were asked about last: every audience is told of the same dig."""

from __future__ import annotations

from typing import Any


class LastAsked:
    """
    Keeps answers about one dig; asked about another, it forgets them.

    >>> kept, packs, others = LastAsked(), ["packs"], ["packs"]
    >>> kept.about(packs)["a question"] = "its answer"
    >>> kept.about(packs), kept.about(others)
    ({'a question': 'its answer'}, {})
    """

    def __init__(self) -> None:
        self._of: tuple[object, ...] = ()
        self._known: dict[Any, Any] = {}

    def about(self, *of: object) -> dict[Any, Any]:
        """The answers known so far about just these things, by what was asked; whoever works one out adds it."""
        if len(of) != len(self._of) or any(one is not other for one, other in zip(of, self._of, strict=True)):
            self._of, self._known = of, {}
        return self._known
