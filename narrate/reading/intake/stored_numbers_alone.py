"""Stored results that leave signs and estimates out: '>100' adds nothing to them, or 'c. 200' does not."""

from __future__ import annotations

import copy
import re
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import replace

from narrate.reading.intake.amounts_in_pieces import pieced
from narrate.reading.intake.stored_ledger import Ledger
from narrate.reading.intake.stored_lines import Line, Target, Worked
from narrate.reading.intake.stored_places import At, Later

LinesOf = Callable[[Ledger, Sequence[Ledger]], Iterable[Line]]
_LEAST = "signs taken as the numbers in them"
_SIGNS = "signs left out"
_DOUBTS = "signs and numbers with ? left out"
_ESTIMATES = "signs and estimates left out"
_ALL = "signs, estimates and numbers with ? left out"


def with_numbers_alone(ledger: Ledger, ledgers: Sequence[Ledger], lines_of: LinesOf) -> list[Line]:
    """The lines of a table; each with the readings in which signs, or signs and estimates, add nothing."""
    lines = list(lines_of(ledger, ledgers))
    for said, taken in (
        (_LEAST, _at_least), (_SIGNS, _without_signs), (_DOUBTS, _without_doubts), (_ESTIMATES, _without_estimates),
        (_ALL, lambda one: _without_doubts(_without_estimates(one))),
    ):  # fmt: skip
        plain = {id(one): taken(one) for one in ledgers}
        if all(one is plain[id(one)] for one in ledgers):
            continue
        others = lines_of(plain[id(ledger)], [plain[id(one)] for one in ledgers])
        lines = [_joined(line, other, said) for line, other in zip(lines, others, strict=True)]
    return lines


def _at_least(ledger: Ledger) -> Ledger:
    """The table with the number for each sign that holds one, such as 20 for '20+' and '>20', and nought for others."""
    signs = [at for at, number in ledger.count.items() if number is None]
    least = {at: _number_in(ledger.cells[at].text) for at in signs if at in ledger.cells}
    return _with(ledger, {at: least.get(at) or 0.0 for at in signs} if any(least.values()) else {})


def _without_signs(ledger: Ledger) -> Ledger:
    """The table with nought for each sign, and with the twelve pieces of '>50+12f'."""
    return _with(ledger, {at: _beside_signs(ledger, at) for at, number in ledger.count.items() if number is None})


def _beside_signs(ledger: Ledger, at: At) -> float:
    counts = [find.found.count for find in ledger.finds_at.get(at, ())]
    return float(sum(count.number or 0 for count in counts if count is not None))


def _without_doubts(ledger: Ledger) -> Ledger:
    """The table with nought for each sign and for each number such as '21?'; the same where there are none."""
    cells = ((at, ledger.cells.get(at)) for at in ledger.count)
    doubted = [at for at, cell in cells if cell is not None and _DOUBTED.fullmatch(cell.text)]
    signs = [at for at, number in ledger.count.items() if number is None]
    return _with(ledger, dict.fromkeys((*signs, *doubted), 0.0) if doubted else {})


def _without_estimates(ledger: Ledger) -> Ledger:
    """The table with nought for each sign and for each estimate."""
    estimates = {
        at for at, finds in ledger.finds_at.items()
        if at in ledger.count and any("estimated:" in find.found.note for find in finds)
    }  # fmt: skip
    signs = {at for at, number in ledger.count.items() if number is None}
    return _with(ledger, dict.fromkeys(signs | estimates, 0.0))


def _with(ledger: Ledger, numbers: Mapping[At, float]) -> Ledger:
    """The table with other numbers in some cells; the same where there are none."""
    if not numbers:
        return ledger
    plain = copy.copy(ledger)
    plain.count = {**ledger.count, **numbers}
    return plain


_DOUBTED = re.compile(r"\s*(?:\?\s*\d+|\d+\s*\?|\d+\s*\(\?\))\s*")


def _number_in(text: str) -> float | None:
    """The one number of a sign such as '>100', '20+' or 'ca. 50', with pieces beside it; None for a range or none."""
    both = pieced(text, ".")
    if both is not None:
        return both.whole + both.pieces
    found = re.findall(r"\d+(?:[.,]\d+)?", text)
    return float(found[0]) if len(found) == 1 and re.fullmatch(r"\d+", found[0]) else None


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
    return replace(worked, said=Later(lambda: f"{worked.said}, {said},"), is_least=said == _LEAST)
