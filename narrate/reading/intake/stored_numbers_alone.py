"""Stored results that leave signs and estimates out: '>100' adds nothing to them, or 'c. 200' does not."""

from __future__ import annotations

import copy
from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace

from narrate.reading.intake.stored_ledger import Ledger
from narrate.reading.intake.stored_lines import Line, Target, Worked

LinesOf = Callable[[Ledger, Sequence[Ledger]], Iterable[Line]]
_SIGNS = "signs left out"
_ESTIMATES = "signs and estimates left out"


def with_numbers_alone(ledger: Ledger, ledgers: Sequence[Ledger], lines_of: LinesOf) -> list[Line]:
    """The lines of a table; each with the readings in which signs, or signs and estimates, add nothing."""
    lines = list(lines_of(ledger, ledgers))
    for said, keeps_estimates in ((_SIGNS, True), (_ESTIMATES, False)):
        plain = {id(one): _numbers_alone(one, keeps_estimates=keeps_estimates) for one in ledgers}
        if all(one is plain[id(one)] for one in ledgers):
            continue
        others = lines_of(plain[id(ledger)], [plain[id(one)] for one in ledgers])
        lines = [_joined(line, other, said) for line, other in zip(lines, others, strict=True)]
    return lines


def _numbers_alone(ledger: Ledger, *, keeps_estimates: bool) -> Ledger:
    """The table with nought for each sign, and for each estimate; the same where it has none of them."""
    noughts = {at for at, number in ledger.count.items() if number is None}
    if not keeps_estimates:
        noughts |= {
            at for at, finds in ledger.finds_at.items()
            if at in ledger.count and any("estimated:" in find.found.note for find in finds)
        }  # fmt: skip
    if not noughts:
        return ledger
    plain = copy.copy(ledger)
    plain.count = {at: 0.0 if at in noughts else number for at, number in ledger.count.items()}
    return plain


def _joined(line: Line, other: Line, said: str) -> Line:
    """
    A line with the readings of the same line of a table without signs.

    They hold only where most of the line agrees with them: no sheet says that it leaves its signs out.
    """
    targets = []
    for own, plain in zip(line.targets, other.targets, strict=True):
        more = {
            f"{name}, {said}": _told(worked, own.readings.get(name), said) for name, worked in plain.readings.items()
        }
        targets.append(Target(at=own.at, readings={**own.readings, **more}))
    line.targets = targets
    line.guesses |= {name for target in targets for name in target.readings if name.endswith(f", {said}")}
    return line


def _told(worked: Worked | None, before: Worked | None, said: str) -> Worked | None:
    """What is told of a sum says that signs were left out, where there were any in it."""
    if worked is None or (before is not None and before.value == worked.value):
        return worked
    return replace(worked, said=f"{worked.said}, {said},")
