"""Columns of a list of finds known by what they do, where no head explains them: keys of samples, counts said again."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from narrate.model.layouts import Role
from narrate.reading.intake.cell_marks import number_of
from narrate.reading.intake.evidence import Look

_LEAST_LINES = 6
_CODE = re.compile(r"(?=.*\d)\S{1,25}")


def code_of_samples(look: Look, heads: Mapping[int, str], below: Sequence[int], taxon: int) -> int | None:
    """
    The column of codes that stands for samples where no heading names any: each code is beside several names.

    A code of a plant stands beside one name, however often; a running number of the line comes once.
    """
    lines = [r for r in below if look.text(r, taxon)]
    for column, role in heads.items():
        if role != "code" or column >= taxon or len(lines) < _LEAST_LINES:
            continue
        names: dict[str, set[str]] = {}
        for r in lines:
            names.setdefault(look.text(r, column), set()).add(look.text(r, taxon))
        given = sum(bool(look.text(r, column)) for r in lines)
        several = sum(len(own) > 1 for own in names.values())
        is_of_ids = all(_CODE.fullmatch(code) for code in names if code)
        if given >= 0.9 * len(lines) and is_of_ids and 2 * len(names) <= len(lines) and 2 * several >= len(names):
            return column
    return None


def counts_said_again(look: Look, below: Sequence[int], columns: Mapping[int, Role]) -> dict[int, Role]:
    """
    Columns of counts that say what another of the list says in each line: one is read, the one with fewer cells is not.

    'NISP' and 'minimum number' are two measures, and of most finds the same number: added, they count each find twice.
    """
    plain = [c for c, role in columns.items() if role.name == "count" and not role.qualifiers and not role.also]
    found: dict[int, Role] = {}
    for n, column in enumerate(plain):
        for other in plain[:n]:
            if {column, other} & set(found) or not _are_same(look, below, column, other):
                continue
            fewer = min(column, other, key=lambda c: (sum(bool(look.text(r, c)) for r in below), -c))
            kept = other if fewer == column else column
            head = next((look.text(r, kept) for r in range(min(below) - 1, -1, -1) if look.text(r, kept)), "")
            found[fewer] = Role(name="ignored", qualifiers=(f"it says the counts of '{head}' again",))
    return found


def _are_same(look: Look, below: Sequence[int], column: int, other: int) -> bool:
    pairs = [(look.text(r, column), look.text(r, other)) for r in below]
    both = [(number_of(a, "."), number_of(b, ".")) for a, b in pairs if a and b]
    telling = [pair for pair in both if pair[0] is not None and pair[0] > 1]
    return len(both) >= _LEAST_LINES and len(telling) >= 3 and sum(a == b for a, b in both) >= 0.95 * len(both)
