"""Lists of finds that name no sample: 'Taxon, Part, Condition, Quantity' and nothing beside. One sample, told as doubtful."""

# ruff: noqa: E501

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from narrate.model.grids import address
from narrate.model.layouts import SAMPLE_ROLES, Table
from narrate.reading.intake.evidence import Look
from narrate.reading.intake.header_words import heading

NO_SAMPLE = -1
"""Stands for the column of samples in a list that has none."""
_BESIDE = {"part", "condition", "common name", "family"}


def is_of_one_sample(heads: dict[int, str], amounts: Sequence[int], taxon: int) -> bool:
    """
    Whether heads name taxa and one count or weight of each, with what is said of a find, and nothing of samples.

    >>> is_of_one_sample({0: "taxon", 1: "part", 2: "count"}, [2], 0)
    True
    >>> is_of_one_sample({0: "taxon", 1: "part", 2: "count", 3: ""}, [2, 3], 0)
    False
    """
    said = list(heads.values())
    of_amounts = [heads[c] for c in amounts if heads[c] != "derived"]
    is_plain = sorted(of_amounts) in (["count"], ["mass"], ["count", "mass"])
    return heads[taxon] == "taxon" and is_plain and bool(_BESIDE & set(said)) and not set(said) & set(SAMPLE_ROLES)


def named_after_file(look: Look, table: Table) -> tuple[Table, dict[str, str], str]:
    """The list with its sheet or file for its sample, the mend that gives the id, and what is told of it."""
    if table.shape != "long" or table.about or any(set(role.names) & set(SAMPLE_ROLES) for role in table.columns.values()):
        return table, {}, ""
    head = next(row for row, role in table.rows.items() if role.name == "header")
    over = [row for row, role in table.rows.items() if role.name == "title" and row < head]
    if (said := _said_over(look, over)) is not None:
        return replace(table, about={"sample": said}), {}, ""
    at = min((at for at in look.own if at[0] == max(over, default=head)), default=(head, min(table.columns)))
    id = look.grid.sheet or re.sub(r".*[/\\]|\.[a-zA-Z]+\Z", "", look.grid.path)
    before = f"{look.grid.sheet}!" if look.grid.sheet else ""
    doubt = (
        f"DOUBTFUL: no heading names samples; the whole list is taken as one sample, '{id}', after the "
        f"{'sheet' if look.grid.sheet else 'file'}; if it is, write its id at {address(*at)} under mend in the layout; "
        "if it adds up several, ask for the list of each"
    )
    return replace(table, about={"sample": address(*at)}), {f"{before}{address(*at)}": id}, doubt


_SAMPLE_LINE = re.compile(r"(?P<head>[^\W\d_][^:=]{0,30}?)\s*[:=]\s*(?P<id>\S[^:=]{0,40})")


def _said_over(look: Look, over: Sequence[int]) -> str | None:
    """The one cell over a list that says its sample, 'Sample: 1072a', as a layout has it; None for none or several."""
    said = []
    for at, cell in look.cells.items():
        match = _SAMPLE_LINE.fullmatch(cell.text.strip()) if at[0] in over and at in look.own else None
        if match and heading(match["head"]) == "sample":
            said.append(f"{address(*at)}, {match['id'].strip()}")
    return said[0] if len(said) == 1 else None
