"""Lines of a table as they are weighed for sums: their numbers, words and order; and what is told of those that are."""

# ruff: noqa: E501

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

from narrate.reading.intake.cell_marks import ABSENT, number_of
from narrate.reading.intake.evidence import Look, form_of_id, looks_like_id, name_score
from narrate.reading.intake.sums_by_numbers import DOUBTED, TAKEN, Summed, sums_among
from narrate.reading.intake.sums_held import Amounts, Held, added_up

_BORNE_OUT = 24.0
"""Bits from which lines of one form are sums together (judgement)."""
_HARDLY = 4.0
"""Bits from which a line may be one of several that are sums together (judgement)."""
_PLANT = -8.0
"""Bits that the name of a plant takes off, or an id among ids (judgement)."""
_STRANGE = 4.0
"""Bits that a word adds which is none of both (judgement)."""
_FIRST_NUMBER = re.compile(r"(?:c(?:a|irca)?\.? ?|[~<>≥≤]=? ?)?(\d+(?:[.,]\d+)?)(?![\d/])")


@dataclass(frozen=True, slots=True, kw_only=True)
class Lines:
    """Lines of one kind of a table, side by side or below each other."""

    across: str
    """What the cells of a line are of: 'sample' or 'name'."""
    role: str
    """What a line is where it is no total: 'counts'."""
    lines: Sequence[int]
    labels: Mapping[int, str]
    forms: Mapping[int, str]
    """The labels with the small heads beside them: 'S1 both'."""
    places: Mapping[int, str]
    """'row 7', 'column C'."""
    crosses: Sequence[str]
    """Of what sample, or name, each number of a line is: ''Rumex' (row 7)'."""
    amounts: Mapping[int, Amounts]
    likelier: Mapping[int, float]
    ends: frozenset[int]
    runs: Mapping[str, Sequence[int]]


def found_in(lines: Lines, of: int | None = None) -> list[Summed]:
    """
    The sums among lines; those under words of one form bear each other out, as 'Pit 1', 'Pit 2' and 'Pit 3' do.

    of:  the one line that is asked about; None: all.
    """
    near = sums_among(
        lines.lines, lines.amounts, likelier=lines.likelier, ends=lines.ends, runs=lines.runs, of=of, least=_HARDLY
    )
    forms: dict[str, list[int]] = {}
    for line in lines.lines:
        forms.setdefault(form_of_id(lines.forms[line]), []).append(line)
    by_line = {one.line: one for one in near}
    together: list[Summed] = []
    for one in near:
        of_form = forms[form_of_id(lines.forms[one.line])]
        others = [by_line[line] for line in of_form if line in by_line]
        bits = sum(other.bits for other in others)
        are_all = len(others) == len(of_form) > 1 and bits >= _BORNE_OUT
        together.append(replace(one, bits=max(one.bits, bits)) if are_all else one)
    found = [one for one in together if one.bits >= DOUBTED]
    unnamed = [line for line in lines.lines if not lines.labels[line]]
    if 2 * len(unnamed) > len(lines.lines):
        return found
    # What alone has no id, or no name, and is the sum of those that have one can be nothing else.
    return [replace(one, bits=max(one.bits, TAKEN)) if one.line in unnamed and one.agreeing == one.given else one for one in found]


def said_of(one: Summed, lines: Lines, of_what: str = "") -> str:
    """What is told of a sum; of_what: the part of the cells that it adds up, such as 'pieces'."""
    added = [n for n in one.of if any(lines.amounts[n]) or None not in lines.amounts[n]] or one.of  # and no signs
    label, first, last = (lines.labels[n] or lines.places[n] for n in (one.line, added[0], added[-1]))
    own = lines.places[one.line]
    named = f"'{label}' ({own})" if label != own else own
    often = f"every {lines.across}" if one.agreeing == one.given else f"{one.agreeing} of {one.given} {lines.across}s"
    of = f"'{first}' to '{last}'" if len(added) > 2 else f"'{first}' and '{last}'"
    of = f"the {of_what} of {of}" if of_what else of
    if one.is_taken:
        return f"{named} is in {often} the sum of {of}: taken for a stored total; write {lines.role} for it in the layout if it is none"
    return (
        f"DOUBTFUL: {named} is in {often} the sum of {of}, and is read as counts: write total for it in the layout if it "
        "is their sum, or they count twice"
    )


def said_of_block(block: tuple[int, ...], held: Held, lines: Lines) -> str:
    """What is told of lines that together add up all others."""
    first, last = (f"'{lines.labels[n]}' ({lines.places[n]})" for n in (block[0], block[-1]))
    said = f"{first} {'to' if len(block) > 2 else 'and'} {last} are together in "
    mend = f"write {lines.role} for them in the layout if they are none"
    if held.agreeing == held.given:
        return f"{said}every {lines.across} the sum of all others: taken for stored totals; {mend}"
    own, rest = (added_up([lines.amounts[n] for n in lines.lines if (n in block) == is_own]) for is_own in (True, False))
    pairs = [(cross, a, b) for cross, a, b in zip(lines.crosses, own, rest, strict=True) if a is not None and b is not None]
    wrong = [f"{cross} {a:.6g} for {b:.6g}" for cross, a, b in pairs if abs(a - b) > 0.01]
    return (
        f"DOUBTFUL: {said}{held.agreeing} of {held.given} {lines.across}s the sum of all others ({'; '.join(wrong[:6])}): "
        f"taken for stored totals; {mend}"
    )


def likelier_by_words(look: Look, lines: Sequence[int], labels: Mapping[int, str], of_taxa: bool) -> dict[int, float]:
    """Bits that the words at lines add or take off: a plant or a sample is hardly a sum, and a strange word may be one."""
    if of_taxa:
        scores = {n: name_score(labels[n].split(" ")[0] if " " not in labels[n] else labels[n], look.names) for n in lines}
        return {n: _PLANT if score >= 0.8 else _STRANGE if score < 0.3 else 0.0 for n, score in scores.items()}
    ids = {n: form_of_id(labels[n]) if looks_like_id(labels[n]) else "" for n in lines}
    if not lines or sum(map(bool, ids.values())) < 0.6 * len(lines):
        return {}
    usual = max(filter(None, ids.values()), key=list(ids.values()).count)
    are_alike = list(ids.values()).count(usual) >= 0.6 * len(lines)
    return {n: _STRANGE if not form else 0.0 if are_alike and form != usual else _PLANT for n, form in ids.items()}


@lru_cache(maxsize=1 << 16)
def amount(text: str, decimal: str) -> float | None:
    """
    The number of a cell of counts, by the first of several; 0.0 for a blank and None for a sign.

    >>> [amount(t, ".") for t in ("12", "", "-", "12 (3)", "c. 200", "x", "1/6")]
    [12.0, 0.0, 0.0, 12.0, 200.0, None, None]
    """
    flat = text.strip()
    if not flat or flat.lower() in ABSENT:
        return 0.0
    number = number_of(flat, decimal)
    if number is not None:
        return number
    first = _FIRST_NUMBER.match(flat)
    return number_of(first[1], decimal) if first else None
