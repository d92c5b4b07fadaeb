"""What the cells of a crossed table add up to, of counts or of weights, of all finds or of those of a group."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from narrate.reading.intake.sheet_finds import Find
from narrate.reading.intake.stored_ledger import Ledger
from narrate.reading.intake.stored_lines import Line, Worked, half_of_last
from narrate.reading.intake.stored_places import At, CellsSaid, cells_said
from narrate.reading.intake.stored_states import Belongs

WEIGHT = re.compile(r"(?<![^\W_])(?:weights?|wt|mass|m?g|grams?|gewicht|poids|peso)(?![^\W_])", re.IGNORECASE)


class Added:
    """A crossed table and the sums of its cells, each worked out once."""

    def __init__(self, ledger: Ledger) -> None:
        self.ledger = ledger
        self.taxa, self.lines_of_samples = ledger.taxon_lines, ledger.sample_lines
        self.first_find = {
            t: next((f for s in self.lines_of_samples for f in ledger.finds_at.get(ledger.at(t, s), ())), None)
            for t in self.taxa
        }
        self._counted: dict[tuple[tuple[int, ...], tuple[int, ...]], bool] = {}
        self._known: dict[tuple[object, ...], Worked | None] = {}
        self._cells: dict[tuple[Belongs | None, str], dict[At, tuple[float | None, bool, list[float]]]] = {}
        """What each cell adds to a group of finds, once it was asked for."""

    def _sum(
        self, taxa: list[int], of: list[int], group: Belongs | None, line: Line, total: int | None = None
    ) -> Worked | None:
        """
        The sum of counts, or of weights where the line is of weights or nothing else is there.

        total:  for the sum of sums, the line that it crosses.
        """
        ledger = self.ledger
        lane = self._lane(line, taxa, of, total)
        if ledger.across or not line.is_row:  # else small headings stand over the taxa, and not over what is added
            of = [s for s in of if (ledger.small_heading(self._column(line, s)) == "mass") == (lane == "mass")] or of
        if lane == "mass" and not ledger.mass:
            line.why_not = line.why_not or "the table has no weights"
            return None
        key = (tuple(taxa), tuple(of), group, lane)
        if key not in self._known:
            self._known[key] = self._added(taxa, of, group, lane)
        found = self._known[key]
        if found is not None and lane == "mass" and self._is_of_milligrams(line, of, total):
            return replace(found, value=1000 * found.value, perhaps=tuple(1000 * more for more in found.perhaps))
        return found

    def _is_of_milligrams(self, line: Line, of: list[int], total: int | None) -> bool:
        """Whether the small heading or the label of what is stored says mg; weights are read as grams."""
        own = total if total is not None else of[0] if line.is_row and of else line.at
        heading = self.ledger.small_text(own) if self.ledger.across else ""
        return any(re.search(r"(?<![^\W_])mg(?![^\W_])", text, re.IGNORECASE) for text in (heading, line.label))

    def _added(self, taxa: list[int], of: list[int], group: Belongs | None, lane: str) -> Worked | None:
        at, ledger = self.ledger.at, self.ledger
        added, cells, more, doubtful = 0.0, list[At](), list[float](), list[At]()
        if group is None:
            amounts = ledger.mass if lane == "mass" else ledger.count
            cells = [at(t, s) for t in taxa for s in of]
            values = [amounts.get(one, 0.0) for one in cells]
            return None if None in values else self._worked(sum(filter(None, values)), cells, lane)
        known = self._cells.setdefault((group, lane), {})
        for t in taxa:
            for s in of:
                one = at(t, s)
                found = known.get(one)
                if found is None:
                    found = known[one] = self._of_cell(one, t, group, lane)
                value, is_in, perhaps = found
                if value is None:
                    return None
                if is_in:
                    added += value
                    cells.append(one)
                if perhaps:
                    more.extend(perhaps)
                    doubtful.append(one)
        worked = self._worked(added, cells, lane)
        return replace(worked, perhaps=tuple(more), perhaps_said=cells_said(doubtful)) if doubtful else worked

    def _worked(self, value: float, cells: list[At], lane: str) -> Worked:
        ledger, is_mass = self.ledger, lane == "mass"
        shown = [half_of_last(ledger.cells[at].text) for at in cells if ledger.mass.get(at)] if is_mass else []
        said = CellsSaid("weights" if is_mass else "counts", cells)
        return Worked(value=value, said=said, slack=min(shown, default=0.0) * len(shown))

    def _of_cell(self, at: At, t: int, group: Belongs | None, lane: str) -> tuple[float | None, bool, list[float]]:
        """What a cell adds to a group, None where it is a sign; whether it belongs to it; and what it may add."""
        ledger = self.ledger
        finds = ledger.finds_at.get(at, ())
        value = ledger.mass.get(at, 0.0) if lane == "mass" else ledger.count.get(at, 0.0)
        if group is None:
            return value, True, []
        if len(finds) > 1 and ledger.count.get(at, 0.0) is not None:
            # '12 (3)' gives two finds, and a group may hold one of them.
            each = each_amount(finds, value or 0.0, is_mass=lane == "mass")
            held = [(group.holds(find), amount) for find, amount in each]
            own = [amount or 0.0 for belongs, amount in held if belongs == "yes"]
            perhaps = [float(amount) for belongs, amount in held if belongs == "perhaps" and amount]
            return sum(own), bool(own), perhaps
        first = next(iter(finds), None) or self.first_find[t]
        answer = group.holds(first) if first is not None else "no"
        if answer == "no" or value is None:
            return (0.0 if answer == "no" else None), False, []
        return value if answer == "yes" else 0.0, answer == "yes", [value] if answer == "perhaps" and value else []

    def _column(self, line: Line, s: int) -> int:
        """The column whose small heading says what is added: of a sample, or the line's own."""
        return s if self.ledger.across else line.at

    def _lane(self, line: Line, taxa: list[int], of: list[int], total: int | None) -> str:
        ledger = self.ledger
        columns = [total] if total is not None and ledger.across else of if ledger.across and line.is_row else [line.at]
        if not ledger.across and line.is_row:
            columns = taxa  # a row of shares among the samples: each of its own column
        own = {ledger.small_heading(column) for column in columns}
        if own == {"mass"} or WEIGHT.search(line.label):
            return "mass"
        key = (tuple(taxa), tuple(of))
        if key not in self._counted:
            cells = [ledger.at(t, s) for t in taxa for s in of]
            has_counts = any(ledger.count.get(at, 0.0) != 0 for at in cells)
            is_weighed = not has_counts and any(ledger.mass.get(at) for at in cells)
            self._counted[key] = not is_weighed and any(at in ledger.count for at in cells)
        return "count" if self._counted[key] or not ledger.mass else "mass"

    def _is_there(self, at: At, group: Belongs | None = None) -> bool:
        if group is not None and not any(group.holds(find) != "no" for find in self.ledger.finds_at.get(at, ())):
            return False
        return bool(self.ledger.mass.get(at)) or self.ledger.count.get(at, 0.0) != 0


def each_amount(finds: Sequence[Find], all_of: float, *, is_mass: bool) -> list[tuple[Find, float | None]]:
    """The amount of each find of one cell; of a class, as in '>50+12f', what the others leave of the cell."""
    if is_mass:
        return [(find, find.found.mass_g) for find in finds]
    numbers = [find.found.count.number if find.found.count is not None else None for find in finds]
    left = all_of - sum(number or 0 for number in numbers)
    return [(find, left if n == 0 and number is None else number)
            for n, (find, number) in enumerate(zip(finds, numbers, strict=True))]  # fmt: skip
