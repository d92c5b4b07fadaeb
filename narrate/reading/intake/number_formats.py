"""What a cell of a workbook shows, from its value and its number format. No digit of the value is ever lost."""

from __future__ import annotations

import datetime
import re
from functools import lru_cache
from typing import NamedTuple


@lru_cache(maxsize=4096)
def shown_number(value: float, format: str) -> str:
    """
    A number as the sheet shows it.

    >>> shown_number(14, "000"), shown_number(0.25, "0%"), shown_number(8.0, "0.00"), shown_number(12, '0" L"')
    ('014', '25%', '8.00', '12 L')
    >>> shown_number(0.126, "0.0"), shown_number(1234, "#,##0"), shown_number(3.0, "General")
    ('0.126', '1234', '3')
    """
    plain = plain_text(value)
    shape = _shape_of(format)
    if shape.is_percent:
        return f"{plain_text(round(value * 100, 10))}%"
    if shape.digits and value >= 0 and float(value).is_integer():
        return plain.zfill(shape.digits) + shape.words
    if shape.decimals:
        rounded = f"{value:.{shape.decimals}f}"
        if abs(float(rounded) - value) < 1e-12 * max(1.0, abs(value)):
            plain = rounded
    return plain + shape.words


class _Shape(NamedTuple):
    """What a number format says of a positive number."""

    is_percent: bool
    digits: int
    """To be filled up with noughts; 0 for as many as there are."""
    decimals: int
    words: str


@lru_cache(maxsize=256)
def _shape_of(format: str) -> _Shape:
    section = format.split(";")[0]
    words = "".join(re.findall(r'"([^"]*)"|\\(.)', section) and _literals(section))
    bare = re.sub(r'"[^"]*"|\\.|\[[^\]]*\]|_.|\*.', "", section)
    zeros = re.fullmatch(r"0{2,}", bare.strip())
    decimals = re.fullmatch(r"[#,]*0\.(0+)", bare.strip())
    return _Shape("%" in bare, len(bare.strip()) if zeros else 0, len(decimals[1]) if decimals else 0, words)


def _literals(section: str) -> str:
    tail = re.search(r'[0#.?](?:"([^"]*)"|\\(.))+\s*$', section)
    if not tail:
        return ""
    return "".join(a or b for a, b in re.findall(r'"([^"]*)"|\\(.)', tail[0]))


def plain_text(value: float) -> str:
    """
    A number in digits, without the noise of binary fractions.

    >>> plain_text(3.0), plain_text(0.1 + 0.2), plain_text(2.6e6)
    ('3', '0.3', '2600000')
    """
    if float(value).is_integer() and abs(value) < 1e15:
        return str(int(value))
    return f"{value:.12g}"


_MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")


def shown_date(value: object) -> str:
    """
    A date in a form that every reader knows.

    >>> shown_date(datetime.datetime(2026, 12, 10))
    '10 Dec 2026'
    """
    if isinstance(value, datetime.datetime | datetime.date):
        return f"{value.day} {_MONTHS[value.month - 1]} {value.year}"
    return str(value)


def typed_before(value: object) -> tuple[str, ...]:
    """
    What was probably typed before the spreadsheet made a date of it.

    >>> typed_before(datetime.datetime(2026, 12, 10)), typed_before(datetime.datetime(2026, 3, 1))
    (('10-12', '12-10'), ('1-3', '3-1'))
    """
    if isinstance(value, datetime.datetime | datetime.date):
        day, month = value.day, value.month
        return (f"{day}-{month}",) if day == month else (f"{day}-{month}", f"{month}-{day}")
    return ()
