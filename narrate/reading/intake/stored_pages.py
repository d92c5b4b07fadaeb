"""Stored totals of samples whose taxa stand in several tables, as on the pages of a listing: over all of them."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from narrate.reading.intake.stored_ledger import Ledger
from narrate.reading.intake.stored_lines import Line, Target, Worked

_OVER_ALL = "all tables"


def with_other_tables(lines: Iterable[Line], own: Ledger, ledgers: Sequence[Ledger]) -> list[Line]:
    """The lines of a crossed table; totals of samples also with what the samples have in other tables of the sheet."""
    others = [
        one for one in ledgers
        if one is not own and one.table.shape == "crossed" and one.table.sheet == own.table.sheet and one.columns
    ]  # fmt: skip
    elsewhere: dict[str, float | None] = {}
    for one in others:
        for at, number in one.count.items():
            id = one.sample_at(at)
            before = elsewhere.get(id, 0.0)
            elsewhere[id] = before + number if before is not None and number is not None else None
    found = list(lines)
    for line in found:
        if elsewhere and line.kind == "total" and line.is_row == own.across:
            line.targets = [_target(target, own, elsewhere) for target in line.targets]
            line.guesses |= {_OVER_ALL}
    return found


def _target(target: Target, own: Ledger, elsewhere: dict[str, float | None]) -> Target:
    id = own.sample_of_line(target.at[1] if own.across else target.at[0])
    here, other = target.readings.get("all"), elsewhere.get(id)
    if here is None or other is None:
        return target
    worked = Worked(value=here.value + other, said=f"{here.said} with those of {id} in the other tables of the sheet")
    return Target(at=target.at, readings={**target.readings, _OVER_ALL: worked})
