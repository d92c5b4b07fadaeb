"""From values to places on a sheet, and where to put ticks."""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, floor, log10


@dataclass(frozen=True, slots=True, kw_only=True)
class LinearScale:
    """From 0 to `top`."""

    top: float
    start: float
    end: float

    def at(self, value: float) -> float:
        return self.start + (self.end - self.start) * value / self.top

    def ticks(self, about: int = 4) -> tuple[float, ...]:
        """0 and round steps up to the top."""
        rough = self.top / about
        decade = 10.0 ** floor(log10(rough))
        step = next(step * decade for step in (1, 2, 5, 10) if step * decade >= rough * 0.999)
        return tuple(step * i for i in range(int(self.top / step * 1.0001) + 1))


@dataclass(frozen=True, slots=True, kw_only=True)
class LogScale:
    """From `low` to `high`, both above 0."""

    low: float
    high: float
    start: float
    end: float

    def at(self, value: float) -> float:
        """Place of the value; beyond the ends it lies on the end."""
        share = log10(min(max(value, self.low), self.high) / self.low) / log10(self.high / self.low)
        return self.start + (self.end - self.start) * share

    def ticks(self) -> tuple[float, ...]:
        """1, 2 and 5 of every decade, or the decades alone where there are more than two."""
        decades = range(floor(log10(self.low)), ceil(log10(self.high)) + 1)
        steps = (1,) if log10(self.high / self.low) > 2.3 else (1, 2, 5)
        every = (step * 10.0**decade for decade in decades for step in steps)
        return tuple(tick for tick in every if self.low * 0.999 <= tick <= self.high * 1.001)


def log_scale(values: list[float], start: float, end: float) -> LogScale:
    """A log scale from the round value below all of them to the one above; every value is above 0."""
    low, high = _round_down(min(values)), _round_up(max(values))
    if high / low < 5:
        high = _round_up(low * 5)
    return LogScale(low=low, high=high, start=start, end=end)


def _round_down(value: float) -> float:
    decade = 10.0 ** floor(log10(value))
    return max((step * decade for step in (1, 2, 5) if step * decade <= value * 1.0001), default=decade)


def _round_up(value: float) -> float:
    decade = 10.0 ** floor(log10(value))
    return min(step * decade for step in (1, 2, 5, 10) if step * decade >= value * 0.9999)
