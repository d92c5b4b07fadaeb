"""Seasons of subjects and the windows that they rest on, as tables."""

from __future__ import annotations

from collections.abc import Iterable

from narrate.deposit.csv_text import Table
from narrate.model.seasons import Seasons

_MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")


def seasons_table(found: Iterable[Seasons]) -> Table:
    columns = (
        "level",
        "subject",
        *(f"open in {m} (plant parts)" for m in _MONTHS),
        "fewest gatherings",
        "in the months",
        "fewest where sources agree",
        "fewest of what does not keep",
        "months that only storage speaks of",
        "sources disagree on",
        "no months known for",
    )
    rows = [
        (
            s.subject.level,
            s.subject.id,
            *s.support,
            s.all_fresh.fewest,
            " or ".join(" + ".join(_MONTHS[m - 1] for m in plan) for plan in s.all_fresh.plans[:6])
            + (f" or {len(s.all_fresh.plans) - 6} more" if len(s.all_fresh.plans) > 6 else ""),
            s.agreed_only.fewest,
            s.binding.fewest,
            _months(s.left_open),
            _names(s.disputed),
            _names(s.unknown),
        )
        for s in found
    ]
    return columns, rows


def windows_table(found: Iterable[Seasons]) -> Table:
    columns = ("taxon", "part", "items", "source", "months", "keeping", "known", "sources agree")
    rows = [
        (
            w.taxon,
            w.part,
            w.items,
            "; ".join(s.sources),
            _months(s.months),
            "; ".join(s.keeping),
            s.known,
            not w.is_disputed,
        )
        for one in found
        for w in one.windows
        for s in w.by_source
    ]
    return columns, rows


def _months(months: Iterable[int]) -> str:
    return " ".join(_MONTHS[m - 1] for m in months)


def _names(pairs: Iterable[tuple[str, str]]) -> str:
    return "; ".join(f"{taxon}, {part}" for taxon, part in pairs)
