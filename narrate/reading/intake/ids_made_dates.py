"""Ids of samples that a spreadsheet has made dates of, such as '3-1' that became the first of March."""

# ruff: noqa: E501

from __future__ import annotations

import datetime
import re
from functools import lru_cache
from itertools import pairwise

from narrate.model.grids import address
from narrate.model.layouts import Table
from narrate.reading.intake.evidence import Look
from narrate.reading.intake.number_formats import typed_before


@lru_cache(maxsize=4096)
def typed_ids(shown: str) -> tuple[str, ...]:
    """
    What was probably typed, day first and month first; nothing for a text that shows no date.

    >>> typed_ids("1 Mar 2011"), typed_ids("11-Dec"), typed_ids("Mar 1"), typed_ids("S14")
    (('1-3', '3-1'), ('11-12', '12-11'), ('1-3', '3-1'), ())
    """
    try:
        return typed_before(datetime.datetime.strptime(shown, "%d %b %Y"))
    except ValueError:
        pass
    match = re.fullmatch(r"(?:(\d{1,2})[-. /])?([^\W\d_]{3,4})\.?(?:[-. /](\d{1,2}))?", shown.strip())
    month = _MONTHS.get(match[2].lower()) if match else None
    day = int(match[1] or match[3] or 0) if match and bool(match[1]) != bool(match[3]) else 0
    if month is None or not 1 <= day <= 31:
        return ()
    return (f"{day}-{month}",) if day == month else (f"{day}-{month}", f"{month}-{day}")


_MONTHS = {
    name: number
    for number, names in enumerate(
        (
            "jan ene janv gen", "feb fév févr", "mar mär mrt mars mrz", "apr abr avr", "may mai mei mag maj", "jun juin giu", "jul juil lug",
            "aug ago août", "sep sept set", "oct okt ott", "nov", "dec dez dic déc des",
        ),
        start=1,
    )
    for name in names.split()
}  # fmt: skip
"""Short names of months as spreadsheets show them in English, German, French, Spanish, Dutch, Italian and Scandinavian."""


def mended_ids(look: Look, table: Table, known: frozenset[str] = frozenset()) -> tuple[dict[str, str], list[str]]:
    """
    (cell -> id, doubts) for ids that became dates, where something tells whether day or month was written first.

    '14-1' stays a text where the month is written first, and would have become a date where the day is.

    known:  ids that lists of samples give, with '/' between context and number: they tell first of all.
    """
    across = table.has_samples_across
    ids, lines = (table.rows, table.columns) if across else (table.columns, table.rows)
    at = [n for n, role in ids.items() if "sample" in role.names]
    counted = [n for n, role in lines.items() if role.name in ("counts", "finds")]
    cells = [(n, line) if across else (line, n) for n in at for line in counted]
    dates = [cell for cell in cells if (one := look.cells.get(cell)) is not None and (one.kind == "date" or typed_ids(one.text))]
    if not dates:
        return {}, []
    texts = [look.text(*cell) for cell in cells]
    mark = _mark_of(texts)
    told = _order(texts, known, mark)
    if told is None:
        return {}, []
    is_month_first, why = told
    before = f"{look.grid.sheet}!" if look.grid.sheet else ""
    found = {}
    for row, column in dates:
        typed = typed_ids(look.text(row, column))
        if typed:
            found[f"{before}{address(row, column)}"] = (typed[-1] if is_month_first else typed[0]).replace("-", mark)
    first = next(iter(found.items()), ("", ""))
    doubt = (
        f"DOUBTFUL: {len(found)} ids of samples became dates in the spreadsheet; by {why} they were "
        f"typed with the {'month' if is_month_first else 'day'} first, such as {first[1]} in {first[0]}, and stand so under "
        "'mend' in the layout; look whether they are right"
    )
    return found, [doubt] if found else []


def _mark_of(texts: list[str]) -> str:
    """What stands between the numbers of the ids that stayed texts."""
    marks = [match[1] for text in texts if (match := re.fullmatch(r"\d+([-/.])\d+", text))]
    return max(set(marks), key=marks.count) if marks else "-"


def _order(texts: list[str], known: frozenset[str], mark: str) -> tuple[bool, str] | None:
    """Whether the month was written first, and what tells it; None where nothing does."""
    both = [(typed_ids(text), text) for text in texts]
    days = [(typed[0] if typed else text).replace("-", mark) for typed, text in both]
    months = [(typed[-1] if typed else text).replace("-", mark) for typed, text in both]
    flat = {re.sub(r"[-.]", "/", id) for id in known}
    listed = [sum(re.sub(r"[-.]", "/", id) in flat for id in ids) for ids in (days, months)]
    if listed[0] != listed[1] and max(listed) >= _LISTED * len(texts):
        return listed[1] > listed[0], "the list of samples"
    is_month_first = _is_month_first(texts)
    if is_month_first is not None:
        return is_month_first, "the ids that stayed texts"
    falls = [_falls(ids) for ids in (days, months)]
    if min(falls) == 0 and max(falls) >= 2:
        return falls[1] == 0, "their order, which rises so,"
    return None


_LISTED = 0.6
"""Share of the ids that a list of samples must hold."""


def _falls(ids: list[str]) -> int:
    """How often an id stands behind a higher one."""
    numbers = [tuple(map(int, re.findall(r"\d+", id)[:2])) for id in ids]
    return sum(a > b for a, b in pairwise(numbers))


def _is_month_first(texts: list[str]) -> bool | None:
    """By the ids that stayed texts; None where none of them tells."""
    pairs = [re.fullmatch(r"(\d{1,2})[-/.](\d{1,2})", text) for text in texts]
    numbers = [(int(match[1]), int(match[2])) for match in pairs if match]
    is_month_first = any(12 < first <= 31 and second <= 12 for first, second in numbers)
    is_day_first = any(first <= 12 and 12 < second <= 31 for first, second in numbers)  # nothing makes a day of 40
    return None if is_month_first == is_day_first else is_month_first
