"""A line of stored results held against what the counts give: which reading fits it, and where it does not agree."""

from __future__ import annotations

import itertools
import math
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace

from narrate.model.grids import Cell, Grid, address
from narrate.reading.intake.cell_marks import number_of
from narrate.reading.intake.signed_totals import bounds_of
from narrate.reading.intake.stored_places import At, CellsSaid, Later, line_name
from narrate.reading.intake.told import Told

_TOLERANCE = 0.006
"""Half a unit of the last digit that is shown is allowed; this is for numbers that show no digits after the point."""
_MOST_LISTED = 24
"""Disagreements of one line that a warning lists."""
_ALL_WRONG = 4
"""Stored results of one line, none of which agrees: they are told together."""
_MOST_PERHAPS = 12
"""Finds that may belong to a group, of which every choice is tried; of more only the ends are."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Worked:
    """What the counts give for one stored result."""

    value: float
    said: str | CellsSaid | Later
    """Where from: 'the counts in B2 to D2'."""
    perhaps: tuple[float, ...] = ()
    """What finds would add that may belong to it and may not."""
    perhaps_said: str = ""
    of: int = 0
    """For ubiquity as n/N: the N."""
    slack: float = 0.0
    """What the rounding of the numbers that were added may make it differ."""
    is_least: bool = False
    """Open signs such as '>200' are in it, by the numbers in them."""

    @property
    def shown(self) -> str:
        own = f"{self.value:.6g}/{self.of}" if self.of else f"{self.value:.6g}"
        if not self.perhaps:
            return own
        return f"{own}, or up to {self.value + sum(self.perhaps):.6g} with what may belong to it in {self.perhaps_said}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Target:
    """One stored result, and what it may be by each way of reading its line."""

    at: At
    readings: Mapping[str, Worked | None]


@dataclass(slots=True, kw_only=True)
class Line:
    """One row or column of stored results."""

    kind: str
    is_row: bool
    at: int
    label: str
    targets: list[Target] = field(default_factory=list)
    guesses: frozenset[str] = frozenset()
    """Readings that only hold if most of the line agrees with them: nothing in the sheet says them."""
    least: int = 2
    """Cells that must agree with a guess."""
    why_not: str = ""
    """Why it cannot be worked out, where there is no reading of it."""
    of: str = "count"
    """What is added up: a count, or a volume."""


def tell_line(line: Line, grid: Grid, cells: Mapping[At, Cell], decimal: str, told: Told, joint: str = "") -> str:
    """
    Tells where a line disagrees with the reading that fits it best; gives why it was not checked, '' if it was.

    joint:  the reading that fits the same line of most of its sister tables, where one does.
    """
    stored = {t.at: read_stored(cells.get(t.at), decimal) for t in line.targets}
    if line.kind == "total":
        stored = with_digits_of_line(stored, cells)
    given = [t for t in line.targets if stored[t.at] is not None]
    if not given:
        return "it holds no numbers" if not line.why_not else line.why_not
    best = _best(line, given, stored)
    if joint and any(t.readings.get(joint) for t in given) and not _agrees_once(best, given, stored):
        best = joint
    if not best:
        _tell_short([(t.at, own, least) for t in given if (own := stored[t.at]) is not None
                     and (least := _least(t, "", line.guesses)) is not None and own.is_under(least)],
                    line, grid, told)  # fmt: skip
        return line.why_not or "a sign among the counts has no number"
    unread = agreed = 0
    short: list[tuple[At, Stored, Worked]] = []
    wrong: list[tuple[At, Stored, Worked]] = []
    for target in given:
        worked, own = target.readings.get(best), stored[target.at]
        if worked is None or own is None:
            unread += 1
            if own is not None and (least := _least(target, best)) is not None and own.is_under(least):
                short.append((target.at, own, least))
        elif own.agrees(worked):
            agreed += worked.value != 0 and not own.is_nought  # '0%' of a little says nothing
        elif all(cells[target.at] is not cells[at] for at, *_ in wrong):  # a merged cell is told once
            wrong.append((target.at, own, worked))
    what = line.label or {"percent": "%"}.get(line.kind, line.kind)
    is_another = len(wrong) >= _ALL_WRONG and not agreed
    for at, own, worked in wrong[:1] if is_another else wrong:
        others = f"; nor does any other of the line: {_listed(wrong[1:])}"
        told.warning(
            "N317", f"stored {line.kind} {grid.sheet} {address(*at)}", grid.place(*at),
            f"the stored {what} is {own.text}, and {worked.said} give {worked.shown}, expected them to agree"
            + (others if is_another else ""),
            "narrate uses the counts; look what the line is of, and write derived for it in the layout if it is "
            "worked out from something else" if is_another
            else f"narrate uses the {line.of}s; look whether a {line.of} or the stored number is wrong",
        )  # fmt: skip
    _tell_short(short, line, grid, told)
    if not unread:
        return ""
    why = line.why_not or "a sign among the counts has no number"
    return why if unread == len(given) else f"{unread} of its {len(given)} cells: {why}"


def fits(line: Line, reading: str, cells: Mapping[At, Cell], decimal: str) -> bool:
    """Whether any stored result of a line agrees with a reading of it."""
    stored = {t.at: read_stored(cells.get(t.at), decimal) for t in line.targets}
    return _agrees_once(reading, [t for t in line.targets if stored[t.at] is not None], stored)


def _agrees_once(reading: str, given: list[Target], stored: Mapping[At, Stored | None]) -> bool:
    """Whether any stored result of a line agrees with a reading of it."""
    pairs = [(stored[t.at], t.readings.get(reading)) for t in given]
    return any(own is not None and worked is not None and own.agrees(worked) for own, worked in pairs)


def joint_reading(lines: Sequence[tuple[Line, Mapping[At, Cell], str]]) -> str:
    """
    The reading that most results of the same line agree with, over sister tables such as forms of one laboratory.

    lines:  the line of each table, with the cells and the decimal mark of its sheet.
    """
    targets: list[Target] = []
    stored: dict[At, Stored | None] = {}
    for n, (line, cells, decimal) in enumerate(lines):
        for target in line.targets:
            at = (target.at[0] + n * _SHEET, target.at[1])
            stored[at] = read_stored(cells.get(target.at), decimal)
            targets.append(Target(at=at, readings=target.readings))
    first = lines[0][0]
    guesses = frozenset(name for line, *_ in lines for name in line.guesses)
    all_of_them = Line(kind=first.kind, is_row=first.is_row, at=first.at, label=first.label, guesses=guesses, least=2)
    return _best(all_of_them, [t for t in targets if stored[t.at] is not None], stored)


_SHEET = 10**7
"""More rows than any sheet has."""


def _least(target: Target, reading: str, guesses: frozenset[str] = frozenset()) -> Worked | None:
    """What the plain numbers beside a sign give at least, by the reading of the line or one that is no guess."""
    names = [name for name in target.readings if name.endswith(", signs left out")]
    names = [name for name in names if name.removesuffix(", signs left out") not in guesses]
    own = [name for name in names if name == f"{reading}, signs left out"]
    known = (target.readings[name] for name in own or (names if not reading else ()))
    return min((one for one in known if one is not None), key=lambda one: one.value, default=None)


def _tell_short(short: list[tuple[At, Stored, Worked]], line: Line, grid: Grid, told: Told) -> None:
    """A total below the sum of the plain numbers that it covers is wrong, whatever the signs beside them stand for."""
    for at, own, least in short if line.kind == "total" else ():
        told.warning(
            "N317", f"stored {line.kind} {grid.sheet} {address(*at)}", grid.place(*at),
            f"the stored {line.label or line.kind} is {own.text}, and {least.said} give {least.shown} at least, "
            "expected them to agree",
            f"narrate uses the {line.of}s; look whether a {line.of} or the stored number is wrong",
        )  # fmt: skip


def _listed(wrong: list[tuple[At, Stored, Worked]]) -> str:
    """Each stored number with its cell, and what the counts in theirs give; the rest is counted."""
    first = wrong[:_MOST_LISTED]
    shown = [f"{address(*at)} {own.text}, {worked.said} give {worked.shown}" for at, own, worked in first]
    return "; ".join(shown) + (f"; and {len(wrong) - len(shown)} more" if len(wrong) > len(shown) else "")


def _best(line: Line, given: list[Target], stored: Mapping[At, Stored | None]) -> str:
    """The reading that most cells agree with, of those the one that leaves least open, the first; empty for none."""
    names = list(dict.fromkeys(name for t in given for name, worked in t.readings.items() if worked is not None))
    found, most = "", (-1, -1, -1)
    for name in names:
        full = agreed = telling = plain = 0
        for target in given:
            worked, own = target.readings.get(name), stored[target.at]
            if worked is None or own is None:
                continue
            # Noughts agree with every reading, and '0%' with every small share.
            is_same = own.agrees(worked)
            is_telling = not own.is_nought or (worked.value != 0 and not is_same)
            telling += is_telling
            if is_same:
                agreed += 1
                plain += not any(worked.perhaps)
                full += is_telling and not own.is_nought  # '0' for 0.2 is rounded, and says little
        if name in line.guesses and (full < line.least or full < 0.6 * telling):
            continue
        if (full, agreed, plain) > most:
            found, most = name, (full, agreed, plain)
    return found


@dataclass(frozen=True, slots=True, kw_only=True)
class Stored:
    """A stored result as written."""

    text: str
    number: float | None = None
    least: float = -math.inf
    most: float = math.inf
    of: int = 0
    beside: float = 0.0
    """What stands in brackets behind it: fragments beside whole ones, which a sum may take in."""
    digits: int = 0
    """Digits behind the point that its line shows, where the spreadsheet shows none of a whole number."""

    @property
    def is_nought(self) -> bool:
        return self.number == 0

    def agrees(self, worked: Worked) -> bool:
        if self.of and worked.of and self.of != worked.of:
            return False
        if worked.is_least and self.number is None and self.most == math.inf and worked.value >= self.least - 2e-6:
            return True  # '>312' of 112 and '>200'
        return any(self._is(worked.value + more, worked.slack) for more in _sums(worked.perhaps)) or (
            len(worked.perhaps) > _MOST_PERHAPS and self._lies_within(worked)
        )

    def is_under(self, worked: Worked) -> bool:
        """Whether a total is less than what it adds up, beyond what rounding makes of it."""
        return self.number is not None and self.number + half_of_last(self.text) + worked.slack < worked.value

    def _is(self, value: float, slack: float) -> bool:
        if self.number is None or not math.isfinite(value):  # a count of hundreds of digits
            return self.least <= value <= self.most and (self.number is None or self.number == value)
        decimals = re.search(r"[.,](\d+)", self.text)
        shown = min(half_of_last(self.text), 0.5 * 10.0**-self.digits)
        allowed = shown + 1e-9 if decimals or abs(value - round(value)) > 1e-9 else _TOLERANCE
        return any(abs(number - value) <= allowed + slack for number in (self.number, self.number + self.beside))

    def _lies_within(self, worked: Worked) -> bool:
        ends = worked.value, worked.value + sum(worked.perhaps)
        return self.number is not None and ends[0] - 0.5 <= self.number <= ends[1] + 0.5


def with_digits_of_line(stored: Mapping[At, Stored | None], cells: Mapping[At, Cell]) -> dict[At, Stored | None]:
    """A spreadsheet writes 1.00 as 1: where others of a line have digits behind the point, a whole one has them too."""
    numbers = {at: own for at, own in stored.items() if own is not None and cells[at].number is not None}
    shown = {at: len(match[1]) for at, own in numbers.items() if (match := re.search(r"[.,](\d+)", own.text))}
    if len(shown) < 2:
        return dict(stored)
    least = min(shown.values())
    whole = {at: replace(own, digits=least) for at, own in numbers.items() if at not in shown}
    return {**stored, **whole}


def half_of_last(text: str) -> float:
    """
    Half a unit of the last digit that is shown.

    >>> half_of_last("12.3"), half_of_last("7")
    (0.05, 0.5)
    """
    decimals = re.search(r"[.,](\d+)", text)
    return 0.5 * 10.0 ** -len(decimals[1]) if decimals else 0.5


def _sums(perhaps: tuple[float, ...]) -> set[float]:
    if len(perhaps) > _MOST_PERHAPS:
        return {0.0, sum(perhaps)}
    return {sum(some) for n in range(len(perhaps) + 1) for some in itertools.combinations(perhaps, n)}


def read_stored(cell: Cell | None, decimal: str) -> Stored | None:
    """
    A stored result read; None for what is no number.

    >>> found = read_stored(Cell("3/4"), "."); found.number, found.of
    (3.0, 4)
    >>> [read_stored(Cell(text), ".").number for text in ("12.3", "66.7%", "3 of 4", "3 (75%)", "75 %")]
    [12.3, 66.7, 3.0, 3.0, 75.0]
    >>> read_stored(Cell("many"), ".")
    """
    if cell is None or cell.kind in ("date", "fault", "no result", "truth"):
        return None
    text = cell.text.strip()
    if cell.number is not None:
        return Stored(text=text, number=cell.number * (100 if text.endswith("%") else 1))
    shared = re.fullmatch(r"(\d{1,6})\s*(?:/|of|out of)\s*(\d{1,6})(?:\s*\(.{1,9}\))?", text)
    if shared:
        return Stored(text=text, number=float(shared[1]), of=int(shared[2]))
    number = number_of(re.sub(r"\s*\([^()]{1,9}\)$", "", text).rstrip("% "), decimal)
    if number is not None:
        pieces = re.fullmatch(r"\d+\s*\((\d+)\)", text)
        return Stored(text=text, number=number, beside=float(pieces[1]) if pieces else 0.0)
    bounds = bounds_of(text, decimal)
    return Stored(text=text, least=bounds[0], most=bounds[1]) if bounds is not None else None


def named(line: Line) -> str:
    """How a line is named where it is told that it was not checked."""
    return line_name(line.is_row, line.at) + (f" ({line.label})" if line.label else "")
