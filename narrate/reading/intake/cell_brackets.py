"""Cells of counts with brackets that a sheet gives a condition: '12 (3)', '(3)', 'x (3)', '12 (x)'."""

from __future__ import annotations

import re
from typing import Any

from narrate.reading.intake.cell_marks import Found, Meanings, Reading, number_of
from narrate.reading.intake.cell_signs import counted, keyed, present, unkeyed

_OTHERS = ("note", "fragment", "more", "aside", "of which")


def state_in_brackets(by: Meanings) -> str:
    """The condition of what stands in brackets; empty where the sheet gives none."""
    return "" if by.brackets in _OTHERS else by.brackets.removeprefix("of which ")


def read_beside_brackets(first: str, inside: str, written: str, by: Meanings) -> Reading | None:
    """What stands before the brackets as the table says, and what is in them in the state that the sheet gives it."""
    state, number, part = state_in_brackets(by), number_of(first, by.decimal), number_of(inside, by.decimal)
    if part is None and not re.fullmatch(r"x{1,5}|\+{1,6}", inside, re.IGNORECASE):
        return None
    if number is not None and part is not None and by.brackets.startswith("of which"):
        if part > number:
            return None
        first = f"{number - part:g}"
    note = f"written {written}"
    found = [_amount(first, written, by, note, ""), _amount(inside, written, by, note, state)]
    if (first and found[0] is None) or found[1] is None:
        return None
    signs = [text for text in (first, inside) if text and number_of(text, by.decimal) is None]
    unknown = [sign for sign in dict.fromkeys(signs) if keyed(sign, written, by) is None]
    quirks = tuple(quirk for sign in unknown for quirk in unkeyed(sign))
    kept = tuple(one for one in found if one is not None)
    there = tuple(one for one in kept if one.count is None or one.count.amount != "looked for and absent")
    return Reading(found=there or kept[:1], quirks=quirks)


def _amount(text: str, written: str, by: Meanings, note: str, state: str) -> Found | None:
    if not text:
        return None
    said: dict[str, Any] = {"is_doubtful": True} if state == "in doubt" else {"condition": state}
    if number_of(text, by.decimal) is not None:
        return counted(written, text, by, note=note, **said)
    count = keyed(text, written, by)
    return Found(count=count, note=note, **said) if count else present(written, note=note, **said)
