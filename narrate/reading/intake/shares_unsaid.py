"""Numbers that add up to 100 and that nobody calls shares: told, and no counts; whole ones stay counts, and that is told."""

# ruff: noqa: E501

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace

from narrate.model.grids import column_name
from narrate.model.layouts import Role, Table
from narrate.reading.intake.evidence import Look
from narrate.reading.intake.header_words import quantity
from narrate.reading.intake.sums_of_lines import amount

_COUNTED = ("counts", "count")
_MEND = "write counts for {} in the layout if {} counts"


@dataclass(frozen=True, slots=True, kw_only=True)
class _Line:
    """The numbers of one sample, or of one name."""

    at: int
    numbers: tuple[float, ...]
    """Those that are not nought."""
    digits: int
    """The most digits behind the point."""
    broken: float
    """Share of the numbers that are no whole ones and no halves, or are written with digits behind the point."""
    has_signs: bool

    def adds_up_to(self, whole: float) -> bool:
        """Whether the numbers add up, as far as their digits allow; signs such as '+' may stand for a little."""
        added = sum(self.numbers)
        rounded = 0.5 * 10.0**-self.digits * len(self.numbers)
        loose = max(0.005 * whole, min(0.02 * whole, rounded))
        least = whole * 0.95 if self.has_signs else whole - loose
        return len(self.numbers) > 1 and least <= added <= whole + loose and max(self.numbers) < whole


def with_shares_unsaid(look: Look, table: Table) -> tuple[Table, list[str]]:
    """The table with what can only be shares as such, and what is told of it and of what may be shares."""
    said = [*table.rows.values(), *table.columns.values()]
    if table.shape == "long":
        return _of_list(look, table)
    if table.shape != "crossed" or any(role.name == "mass" for role in said):
        return table, []
    lines = _lines(look, table, of_samples=True)
    where = f"rows {min(table.rows) + 1} to {max(table.rows) + 1}"
    sides = (("sample", True), ("name", False)) if _are_broken(lines) else ()
    for of, of_samples in sides:
        whole = _whole(lines if of_samples else _lines(look, table, of_samples=False))
        if whole:
            text = f"the table of {where} adds up to {whole} in each {of}, in numbers that are no whole ones: shares, not counts; it is left out"
            return _all_as_shares(table), [f"DOUBTFUL: {text}; {_MEND.format('its columns', 'they are')}"]
    few = [line for line in lines if line.broken >= 0.6 and len(line.numbers) > 2 and line.adds_up_to(100)]
    rest = [line for line in lines if line not in few]
    if few and rest and all(line.broken == 0 for line in rest):
        return _lines_as_shares(table, few)
    given = [line for line in lines if line.numbers]
    if len(given) > 2 and all(line.adds_up_to(100) and len(line.numbers) > 2 for line in given):
        return table, [
            f"DOUBTFUL: the amounts of the table of {where} add up to 100 in each sample; they are read as counts: write "
            "percent for its columns in the layout if they are shares"
        ]
    return table, []


def _lines(look: Look, table: Table, *, of_samples: bool) -> list[_Line]:
    rows = [r for r, role in table.rows.items() if role.name in _COUNTED]
    columns = [c for c, role in table.columns.items() if role.name in _COUNTED]
    are_columns = table.has_samples_across == of_samples
    small = next((n for n, role in (table.rows if are_columns else table.columns).items() if "quantity" in role.names), None)
    found = []
    for n in columns if are_columns else rows:
        head = "" if small is None else look.text(small, n) if are_columns else look.text(n, small)
        if quantity(head) in ("mass", "percent", "density"):
            continue
        texts = [look.text(r, n) for r in rows] if are_columns else [look.text(n, c) for c in columns]
        found.append(_line(n, texts, table.marks.decimal))
    return found


def _line(at: int, texts: Sequence[str], decimal: str) -> _Line:
    values = [(text, amount(text, decimal)) for text in texts]
    given = [(text, value) for text, value in values if value]
    pointed = [(text, value) for text, value in given if (2 * value) % 1 or "." in text or "," in text]
    broken = [text for text, value in pointed if (2 * value) % 1 or (re.search(r"[.,]\d", text) and value % 1 != 0.5)]
    digits = [len(match[1]) for text, _ in pointed if (match := re.search(r"[.,](\d+)", text))]
    return _Line(
        at=at, numbers=tuple(value for _, value in given), digits=max(digits, default=0),
        broken=len(broken) / len(given) if given else 0.0, has_signs=any(value is None for _, value in values),
    )  # fmt: skip


def _whole(lines: Sequence[_Line]) -> int:
    """100 or 1 where nearly all lines add up to it: one of several may be wrong; 0 for neither."""
    given = [line for line in lines if line.numbers]
    for whole in (100, 1):
        fits = sum(line.adds_up_to(whole) for line in given)
        if fits and fits >= len(given) - (len(given) > 3) - len(given) // 10:
            return whole
    return 0


def _are_broken(lines: Sequence[_Line]) -> bool:
    """Whether many of the numbers, and more than a few, are such as no count is."""
    numbers = sum(len(line.numbers) for line in lines)
    return numbers > 3 and sum(line.broken * len(line.numbers) for line in lines) >= max(3.0, 0.3 * numbers)


def _all_as_shares(table: Table) -> Table:
    columns = {c: Role(name="percent") if role.name in _COUNTED else role for c, role in table.columns.items()}
    return replace(table, columns=columns)


def _lines_as_shares(table: Table, lines: Sequence[_Line]) -> tuple[Table, list[str]]:
    """Lines of shares beside lines of counts, as a column behind that of each sample."""
    as_share = {line.at: Role(name="percent") for line in lines}
    across = table.has_samples_across
    made = replace(table, columns={**table.columns, **as_share}) if across else replace(table, rows={**table.rows, **as_share})
    named = ", ".join(column_name(at) if across else str(at + 1) for at in as_share)
    what = f"{'column' if across else 'row'}{'s' if len(as_share) > 1 else ''} {named}"
    verb = "add" if len(as_share) > 1 else "adds"
    return made, [f"DOUBTFUL: {what} {verb} up to 100, in numbers that are no whole ones: taken for shares, not counts; "
                  + _MEND.format("them" if len(as_share) > 1 else "it", "they are" if len(as_share) > 1 else "it is")]  # fmt: skip


def _of_list(look: Look, table: Table) -> tuple[Table, list[str]]:
    """The same of a list of finds: the amounts of each sample."""
    samples = [c for c, role in table.columns.items() if "sample" in role.names]
    doubts: list[str] = []
    for column, role in list(table.columns.items()):
        if role.name != "count" or not samples:
            continue
        by_sample = _by_sample(look, table, samples, lambda r, at=column: look.text(r, at))  # type: ignore[misc]
        lines = [_line(n, texts, table.marks.decimal) for n, texts in enumerate(by_sample.values())]
        whole = _whole(lines)
        if whole and _are_broken(lines):
            table = replace(table, columns={**table.columns, column: Role(name="percent")})
            doubts.append(
                f"DOUBTFUL: column {column_name(column)} adds up to {whole} in each sample, in numbers that are no whole ones: "
                "shares, not counts; it is not read: write count for it in the layout if they are counts"
            )
    return table, doubts


def _by_sample(
    look: Look, table: Table, samples: Sequence[int], text: Callable[[int], str]
) -> Mapping[str, list[str]]:
    found: dict[str, list[str]] = {}
    last = ""
    for r, role in table.rows.items():
        if role.name == "finds":
            last = "/".join(filter(None, (look.text(r, c) for c in samples))) or last
            found.setdefault(last, []).append(text(r))
    return found
