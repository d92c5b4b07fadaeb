"""What a cell of a workbook shows, from its value and its number format. No digit of the value is ever lost."""

from __future__ import annotations

import datetime
import re


def shown_number(value: float, format: str) -> str:
    """
    A number as the sheet shows it.

    >>> shown_number(14, "000"), shown_number(0.25, "0%"), shown_number(8.0, "0.00"), shown_number(12, '0" L"')
    ('014', '25%', '8.00', '12 L')
    >>> shown_number(0.126, "0.0"), shown_number(1234, "#,##0"), shown_number(3.0, "General")
    ('0.126', '1234', '3')
    """
    plain = plain_text(value)
    section = format.split(";")[0]
    words = "".join(re.findall(r'"([^"]*)"|\\(.)', section) and _literals(section))
    bare = re.sub(r'"[^"]*"|\\.|\[[^\]]*\]|_.|\*.', "", section)
    if "%" in bare:
        return f"{plain_text(round(value * 100, 10))}%"
    zeros = re.fullmatch(r"0{2,}", bare.strip())
    if zeros and value >= 0 and float(value).is_integer():
        return plain.zfill(len(bare.strip())) + words
    decimals = re.fullmatch(r"[#,]*0\.(0+)", bare.strip())
    if decimals:
        rounded = f"{value:.{len(decimals[1])}f}"
        if abs(float(rounded) - value) < 1e-12 * max(1.0, abs(value)):
            plain = rounded
    return plain + words


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
