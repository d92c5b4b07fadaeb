"""Names of a listing that do not fit their column and go on in the next line, set in: 'Zea mays, kernel' over 'fragments'."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.reading.intake.cell_marks import looks_like_amount
from narrate.reading.intake.words_in_names import says_pieces


def joined_names(texts: Sequence[str], rows: list[list[str]]) -> None:
    """
    Puts the words of a line that is set in and begins small behind the name over it, where one of the two has numbers.

    A name goes on where it cannot end so, or where pieces of what it names follow; heads over lines stay what they are.

    texts:  the lines as they are written; rows: their cells, which change.

    >>> lines = ["Zea mays, kernel", "   fragments   21", "Carya, shell     4", "Polygonum (dock   1", "   or knotweed)", "Oak  3"]
    >>> rows = [["Zea mays, kernel", ""], ["fragments", "21"], ["Carya, shell", "4"],
    ...         ["Polygonum (dock", "1"], ["or knotweed)", ""], ["Oak", "3"]]
    >>> joined_names(lines, rows)
    >>> rows[:2], rows[3:5]
    ([['', ''], ['Zea mays, kernel fragments', '21']], [['Polygonum (dock or knotweed)', '1'], ['', '']])
    """
    for n in range(len(rows) - 1):
        first, second = rows[n], rows[n + 1]
        if not (first and second and _goes_on(texts, n)):
            continue
        has_numbers = _holds_amounts(first), _holds_amounts(second)
        if has_numbers == (False, True) and not any(first[1:]) and (_is_open(first[0]) or says_pieces(second[0])):
            rows[n + 1] = [f"{first[0]} {second[0]}", *second[1:]]
            rows[n] = [""] * len(first)
        elif has_numbers == (True, False) and not any(second[1:]) and _is_open(first[0]):
            rows[n] = [f"{first[0]} {second[0]}", *first[1:]]
            rows[n + 1] = [""] * len(second)


def _goes_on(texts: Sequence[str], n: int) -> bool:
    """Whether a line is set in under the one before it, begins with a small letter, and stands so alone."""
    first, second = texts[n], texts[n + 1]
    if not (first.strip() and second.strip() and _indent(second) > _indent(first)):
        return False
    after = next((text for text in texts[n + 2 :] if text.strip()), "")
    is_alone = not after or _indent(after) < _indent(second)
    begins = second.strip()
    return is_alone and begins[0].islower() and len(begins.split()[0]) > 1


def _is_open(name: str) -> bool:
    """Whether a name cannot end so: with a bracket that nobody closed, a comma, or a word that asks for another."""
    return name.count("(") > name.count(")") or name.endswith((",", "/", "-", " or", " and", " cf."))


def _holds_amounts(row: Sequence[str]) -> bool:
    return any(map(looks_like_amount, row[1:]))


def _indent(text: str) -> int:
    flat = text.expandtabs()
    return len(flat) - len(flat.lstrip())
