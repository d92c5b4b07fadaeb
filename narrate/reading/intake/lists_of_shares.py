"""Lists that give shares and ubiquities of taxa by site or phase, and no counts: they are told, and not read."""

from __future__ import annotations

from difflib import get_close_matches

from narrate.model.grids import Area
from narrate.reading.intake.evidence import Look
from narrate.reading.intake.header_words import flat_heading
from narrate.reading.intake.heads_of_list import heads_in
from narrate.reading.intake.long_table import OF_SAMPLE, rows_below

_SHARES = ("percent", "density", "ubiquity")
_WORDS = ("ubiquity", "proportion", "percentage", "density", "frequency")
_LEAST_LINES = 5


def list_of_shares(look: Look, area: Area) -> tuple[int, str]:
    """(the last row of a list of shares at the head of an area, what is told of it); (-1, '') for anything else."""
    heads = heads_in(look, area, area.top)
    said = set(heads.values())
    if len(heads) < 4 or "taxon" not in said or not said & {*OF_SAMPLE, "phase"} or said & {"count", "mass", "total"}:
        return -1, ""
    below = rows_below(look, area, area.top)
    lines = [r for r in below if any((r, c) in look.cells for c in heads)]
    numbers = [c for c in heads if _holds_numbers(look, lines, c) and heads[c] not in (*OF_SAMPLE, "phase", "code")]
    sure = [c for c in numbers if heads[c] in _SHARES]
    near = [c for c in numbers if get_close_matches(flat_heading(look.text(area.top, c)), _WORDS, 1, 0.85)]
    of = next(c for c, role in heads.items() if role in (*OF_SAMPLE, "phase"))
    is_list = len(lines) >= _LEAST_LINES and 2 * len({look.text(r, of) for r in lines}) <= len(lines)
    if not is_list or not sure or {*sure, *near} != set(numbers):
        return -1, ""
    named = " and ".join(f"'{look.text(area.top, c)}'" for c in numbers)
    return lines[-1], (
        f"rows {area.top + 1} to {lines[-1] + 1} give {named} of each taxon, and no counts: shares cannot be added or "
        "compared with counts, so nothing is read; the counts that they are of are needed"
    )


def _holds_numbers(look: Look, lines: list[int], column: int) -> bool:
    given = [r for r in lines if (r, column) in look.cells]
    return bool(given) and sum(look.is_amount(r, column) for r in given) >= 0.7 * len(given)
