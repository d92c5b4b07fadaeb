"""Counts such as '1.000': a thousand where the point parts thousands, one where it parts decimals."""

from __future__ import annotations

import re
from collections.abc import Iterable

from narrate.model.counts import Count
from narrate.reading.intake.cell_marks import Found, Quirk, Reading


def may_be_thousands(text: str, decimal: str) -> bool:
    """
    Whether three digits behind the decimal mark of a sheet may be thousands.

    >>> may_be_thousands("1.000", "."), may_be_thousands("1,000", "."), may_be_thousands("0.125", ".")
    (True, False, False)
    >>> may_be_thousands("12.500", "."), may_be_thousands("1.25", "."), may_be_thousands("1,000", ",")
    (True, False, True)
    """
    return bool(re.fullmatch(rf"[1-9]\d{{0,2}}{re.escape(decimal)}\d{{3}}", text.strip()))


def has_decimals(texts: Iterable[str]) -> bool:
    """
    Whether counts are written with decimals, as programs write them out: most with three, or any with one or two.

    >>> has_decimals(["1.000", "12.000", "0.000"]), has_decimals(["1.000", "12", "3"]), has_decimals(["1.000", "68.00"])
    (True, False, True)
    """
    listed = list(texts)
    if not any("." in text or "," in text for text in listed):
        return False
    numbers = [text.strip() for text in listed if re.fullmatch(r"\d+(?:[.,]\d+)?", text.strip())]
    of_three = [text for text in numbers if re.fullmatch(r"\d+[.,]\d{3}", text)]
    is_parted = any(re.fullmatch(r"\d+[.,](?:\d{1,2}|\d{4,})", text) for text in numbers)
    return is_parted or (bool(of_three) and 2 * len(of_three) > len(numbers))


def in_two_ways(written: str, decimal: str) -> Reading:
    """A count that may be thousands: kept as presence, and told with both readings."""
    whole, _, rest = written.partition(decimal)
    other = "," if decimal == "." else "."
    plain = f"{whole}.{rest}".rstrip("0").rstrip(".")
    quirk = Quirk(
        kind="thousands",
        message=f"'{written}' may be {whole}{rest} or {plain}; it is kept as presence and is in no sum, expected a "
        "number that reads in one way",
        help=f"write 'decimal: \"{other}\"' under cells in the layout if the '{decimal}' parts thousands; else say "
        "under 'mend' what was counted",
    )
    return Reading(found=(Found(count=Count(written=written, amount="noted as present", at_least=1)),), quirks=(quirk,))
