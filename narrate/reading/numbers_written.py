"""Numbers as people write them, and how to mend those that are none."""

from __future__ import annotations

import math
import re
from fractions import Fraction


def plain_number(written: str) -> float | None:
    """
    The number that a text is, in digits with a point; None for anything else, such as 10,5 or nan or 1e999.

    >>> plain_number("10.5"), plain_number("10,5"), plain_number("inf"), plain_number("1e999")
    (10.5, None, None, None)
    """
    if not re.fullmatch(r"[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d{1,3})?", written, re.ASCII) or len(written) > 40:
        return None
    found = float(written)
    return found if math.isfinite(found) else None


def fraction_number(written: str) -> float | None:
    """
    A number, or a fraction of two whole numbers.

    >>> fraction_number("1/4"), fraction_number("0.25"), fraction_number("1/0")
    (0.25, 0.25, None)
    """
    match = re.fullmatch(r"(\d{1,6})\s*/\s*(\d{1,6})", written, re.ASCII)
    if match:
        return float(Fraction(int(match[1]), int(match[2]))) if int(match[2]) else None
    return plain_number(written)


_NUMBER_HELP: tuple[tuple[str, str], ...] = (
    (r"([+-]?\d+),(\d+)", r"write \1.\2 with a point, or without the comma if it parts thousands"),
    (
        r"([+-]?\d+(?:\.\d+)?)\s*(?:l|L|litres?|liters?|g|grams?|mm|ml|%)",
        r"write \1 alone; the unit is in the field's name",
    ),
    (r"(?:c\.?|ca\.?|circa|~|≈|about)\s*(\d+(?:\.\d+)?)", r"write \1 and say in the note that it is an estimate"),
    (r"(\d+)[ \u00a0](\d{3})", r"write \1\2"),
    (
        r"[+-]?\.?(?:inf|infinity|nan|na|n/a)|[?-]|unknown|none|null|~",
        "write the number; leave it out if it was not measured",
    ),
    (r"[+-]?[\d.]+e\d+|\d{13,}", "the number is far too large; write what was measured or counted"),
    (r"-\s*[\d.]+", "nothing measured or counted is below 0; leave it out if it was not measured"),
    (r"0(?:\.0*)?", "leave it out if it was not measured"),
)
_WORD_NUMBERS = (
    "zero",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
)


def number_help(written: str) -> str:
    """One way to mend a number as people write them; empty where none is known."""
    if written.lower() in _WORD_NUMBERS:
        return f"write {_WORD_NUMBERS.index(written.lower())}"
    for pattern, help in _NUMBER_HELP:
        match = re.fullmatch(pattern, written, re.IGNORECASE)
        if match:
            return match.expand(help)
    return ""


def share_help(written: str, found: float | None) -> str:
    percent = re.fullmatch(r"(\d+(?:\.\d+)?)\s*%?", written, re.ASCII)
    if percent and 1 < float(percent[1]) <= 100:
        part = f"{float(percent[1]) / 100:g}"
        return f"write {part} if {percent[1]} % was sorted"
    if found == 0:
        return "write the share that was sorted; leave out a class of which nothing was sorted, and say so in the note"
    if re.fullmatch(r"\d+\s*/\s*0+", written, re.ASCII):
        return "write how many parts were sorted and how many there were, such as 1/4"
    if found is not None and found > 1:
        return "write the part that was sorted, such as 0.25 or 1/4; 1 means that all was sorted"
    if found is not None:
        return "a share is not below 0; write the part that was sorted, such as 0.25 or 1/4"
    return number_help(written) or "write the part that was sorted, such as 0.25 or 1/4"


def year_help(written: str) -> str:
    if written == "0":
        return "there is no year 0: 1 BC is -1, and the year after it is 1"
    match = re.fullmatch(r"(?:cal\s*)?(?:(AD|CE)\s*)?(\d{1,6})\s*(?:cal\s*)?(BC|BCE|AD|CE)?", written, re.IGNORECASE)
    if match and (match[1] or match[3]):
        is_before = bool(match[3]) and match[3].upper() in ("BC", "BCE")
        return f"write {'-' if is_before else ''}{int(match[2])}"
    if re.search(r"\bBP\b", written, re.IGNORECASE):
        return "write the calibrated calendar year; years BP are not calendar years"
    return number_help(written)
