"""Columns that stand under the head of a group that says their unit: 'Weights (g)' over plants that are counted elsewhere."""

# ruff: noqa: E501

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace

from narrate.model.layouts import Role, Table
from narrate.reading.intake.evidence import Look
from narrate.reading.intake.header_words import heading, quantity, unit
from narrate.reading.intake.kinds_of_amounts import kind_of_amount
from narrate.reading.intake.left_over import lines_named

_OF_GROUPS = ("group", "taxon note")
_OVER_ALL = ("title", "ignored", "section", "header")
"""Roles that a row of heads has where it says nothing of most columns."""
_WOODS = ("wood", "charcoal", "bark")
_OWN_AMOUNT = ("quantity", "part", "taxon")
"""Roles of rows whose words may say themselves what is counted or weighed."""


def with_weights_under_heads(look: Look, table: Table) -> tuple[Table, list[str]]:
    """The table with columns of counts under such a head as columns of grams, or of shares, and what is told of them."""
    if table.shape != "crossed" or table.has_samples_across:
        return table, []
    counted = [c for c, role in table.columns.items() if role.name == "counts" and not role.qualifiers]
    first = min((r for r, role in table.rows.items() if role.name == "counts"), default=0)
    names = max((r for r, role in table.rows.items() if r < first and {"taxon", "genus"} & set(role.names)), default=0)
    columns, doubts = dict(table.columns), list[str]()
    for row in [r for r, role in table.rows.items() if r < names and role.name in (*_OF_GROUPS, *_OVER_ALL)]:
        for head in sorted(c for r, c in look.own if r == row):
            role = _role_under(look.text(row, head), is_group=table.rows[row].name in _OF_GROUPS)
            under = _under(look, table, row, head, counted) if role is not None else []
            under = [c for c in under if look.text(names, c) not in ("", look.text(row, head))]  # 'Charcoal (g)' merged down
            if role is None or not under or len(under) == len(counted) or _say_themselves(look, table.rows, under):
                continue
            columns.update(dict.fromkeys(under, role))
            what = "weights" if role.name == "mass" else "results"
            doubts.append(f"{lines_named('column', under)} stand{'s' if len(under) == 1 else ''} under '{look.text(row, head)}': taken for {what}")
    for at in _weights_called_total(look, table, names):
        columns[at] = Role(name="counts")
        doubts.append(
            f"'{look.text(names, at)}' ({lines_named('column', [at])}) is weighed and nothing that it adds up is: taken for a "
            "find; write total for it in the layout if it is none"
        )
    return replace(table, columns=columns), doubts


def _weights_called_total(look: Look, table: Table, names: int) -> list[int]:
    """Columns such as 'Total wood, wt.' over counts of woods that nobody weighed one by one: the wood, weighed together."""
    small = next((r for r, role in table.rows.items() if role.names == ("quantity",)), None)
    over = next((r for r, role in table.rows.items() if role.name == "group"), None)
    if small is None or over is None:
        return []
    found = []
    for at in (c for c, role in table.columns.items() if role.name == "total" and quantity(look.text(small, c)) == "mass"):
        said = re.sub(r"\btotal\b", "", look.text(names, at), flags=re.IGNORECASE).strip()
        beside = [c for c, role in table.columns.items() if role.name == "counts" and look.text(over, c) == look.text(over, at)]
        is_alone = bool(beside) and not any(quantity(look.text(small, c)) == "mass" for c in beside)
        if said and look.names.part_of(said) in _WOODS and is_alone:
            found.append(at)
    return found


def _role_under(text: str, *, is_group: bool) -> Role | None:
    """What the columns under a head hold, where it says an amount that is no count; None for any other head."""
    said = unit(text) if unit(text) in ("g", "mg", "kg") else ""
    if quantity(text) in ("percent", "density"):
        return Role(name=quantity(text))
    if "mass" in (quantity(text), heading(text), kind_of_amount(text)) or (is_group and said):
        return Role(name="mass", qualifiers=(said or "g",))
    return None


def _under(look: Look, table: Table, row: int, head: int, counted: list[int]) -> list[int]:
    """The columns of counts that a head is merged over, else those up to the next head or result."""
    if (row, head + 1) in look.cells and (row, head + 1) not in look.own:
        end = head + 1
        while (row, end) in look.cells and (row, end) not in look.own:
            end += 1
        return [c for c in counted if head <= c < end]
    found = []
    for column in range(head, max(table.columns) + 1):
        if column not in counted or (column > head and (row, column) in look.cells):
            break
        found.append(column)
    return found


def _say_themselves(look: Look, rows: Mapping[int, Role], under: list[int]) -> bool:
    """Whether a small head below says of one of the columns that it is counted: 'Charcoal (g)' over 'n' and 'g'."""
    small = [r for r, role in rows.items() if set(role.names) & set(_OWN_AMOUNT)]
    return any(quantity(look.text(r, c)) for r in small for c in under)
