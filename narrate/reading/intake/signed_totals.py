"""Stored totals that are written with a sign, such as '>100' and 'c. 200': checked as bounds, never as numbers."""

from __future__ import annotations

import re

from narrate.reading.intake.cell_marks import number_of

_SIGNED = re.compile(r"\s*(>=|<=|[><≥≤~≈±]|c\.|ca\.?|circa|about)\s*(\d.*?)\s*\Z", re.IGNORECASE)


def bounds_of(text: str, decimal: str) -> tuple[float, float] | None:
    """
    The least and the most that a signed number allows; None where there is no sign.

    'c. 200' is good to half a unit of its last figure that is not 0 (judgement), so it stands for 150 to 250.

    >>> bounds_of("c. 200", "."), bounds_of(">= 100", "."), bounds_of("<10", "."), bounds_of("12", ".")
    ((150.0, 250.0), (100.0, inf), (0.0, 9.999999), None)
    """
    found = _SIGNED.match(text)
    number = number_of(found[2], decimal) if found else None
    if found is None or number is None:
        return None
    match found[1].lower():
        case ">":
            return number + 1e-6, float("inf")
        case ">=" | "≥":
            return number, float("inf")
        case "<":
            return 0.0, number - 1e-6
        case "<=" | "≤":
            return 0.0, number
    half = 0.5 * _last_figure(number)
    return number - half, number + half


def _last_figure(number: float) -> float:
    """The worth of one in the last figure that is not 0: 100 in 200, 10 in 250, 1 in 7, 0.1 in 2.5."""
    digits = f"{number:.6f}".rstrip("0").rstrip(".")
    if "." in digits:
        return 10.0 ** -len(digits.partition(".")[2])
    return 10.0 ** (len(digits) - len(digits.rstrip("0"))) if number else 1.0
