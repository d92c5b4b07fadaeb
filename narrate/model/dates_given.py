"""Radiocarbon dates as `report: radiocarbon` gives them: code, what was dated, age, and calibrated ranges."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass

from narrate.model.ids import ContextId

_ENTRY = re.compile(r"^\s*[-*•]\s+", re.MULTILINE)
_CODE = re.compile(r"\b[A-Z][A-Za-z]{0,7}-\d{2,}(?:\.\d+)?\b")
_AGE = re.compile(r"\b(\d{2,5})\s*(?:±|\+/-|\+-)\s*(\d+)\s*BP\b")
_CALIBRATED = re.compile(r"\bcal\.?\s+(?:AD|CE)\s+(.*)")
_RANGE = re.compile(r"(?<![\d.])(\d{1,4})(?:\s*[–-]\s*(\d{1,4}))?\s*\((\d+(?:\.\d+)?)\s*%\)")


@dataclass(frozen=True, slots=True, kw_only=True)
class YearRange:
    """Calendar years AD, and the share of the probability that lies in them."""

    start: int
    end: int
    percent: float


@dataclass(frozen=True, slots=True, kw_only=True)
class DateGiven:
    """One date of the list."""

    code: str
    material: str
    """What was dated and where it lay, in the words of the account."""
    age: str
    """'690 ± 20 BP'; empty where none is given."""
    contexts: tuple[ContextId, ...]
    ranges: tuple[YearRange, ...] = ()
    """Empty where none is given, or in years other than cal AD."""

    @property
    def main(self) -> YearRange | None:
        """The range with most of the probability."""
        return max(self.ranges, key=lambda one: one.percent, default=None)

    def outside(self, start: int, end: int) -> float:
        """Percent of the probability in ranges that begin after `end` or end before `start`, as far as given."""
        return sum(one.percent for one in self.ranges if one.start >= end or one.end <= start)


def dates_given(account: str, contexts: Iterable[ContextId]) -> tuple[DateGiven, ...]:
    """
    The dates of a list; nothing where the account is no list, or an entry has no laboratory code.

    >>> (date,) = dates_given("Two.\\n- AB-12: maize kernel,\\n  from C12; 690 ± 20 BP; cal AD 1275–1305 (74.7%), "
    ...                       "1375 (21%)\\n\\nAll.", ["C1", "C12"])
    >>> date.code, date.material, date.age, date.contexts
    ('AB-12', 'maize kernel, from C12', '690 ± 20 BP', ('C12',))
    >>> date.main, date.outside(1250, 1350)
    (YearRange(start=1275, end=1305, percent=74.7), 21.0)
    """
    ids = tuple(contexts)
    texts = [" ".join(text.split("\n\n")[0].split()) for text in _ENTRY.split(account)[1:]]
    return tuple(date for text in texts if (date := _read(text, ids)) is not None)


def _read(text: str, contexts: tuple[ContextId, ...]) -> DateGiven | None:
    code = _CODE.search(text)
    if code is None:
        return None
    age, calibrated = _AGE.search(text), _CALIBRATED.search(text)
    material = text[code.end() :].lstrip(" :,").split(";")[0].strip()
    ranges = _RANGE.findall(calibrated[1]) if calibrated else []
    return DateGiven(
        code=code[0],
        material=material,
        age=f"{age[1]} ± {age[2]} BP" if age else "",
        contexts=tuple(id for id in contexts if re.search(rf"(?<![\w.-]){re.escape(id)}(?![\w-])", text)),
        ranges=tuple(YearRange(start=int(a), end=int(b or a), percent=float(p)) for a, b, p in ranges),
    )
