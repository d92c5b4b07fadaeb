"""Least numbers of individuals, 'NMI': worked out beside counts, and the counts of a sheet that gives no others."""

from __future__ import annotations

import re
from collections.abc import Mapping

from narrate.reading.intake.header_words import heading, quantity

# Common practice, no source: 'nombre minimum d'individus', 'número mínimo de individuos' and the like.
_LEAST = re.compile(r"(?:n\.?m\.?[ir]|m\.?n\.?i)\.?(?:\s*\(n\))?", re.IGNORECASE)


def is_least_number(text: str) -> bool:
    """
    Whether a head is one of least numbers.

    >>> is_least_number("NMI"), is_least_number("N.M.I."), is_least_number("NMI (%)"), is_least_number("NR")
    (True, True, False, False)
    """
    return bool(_LEAST.fullmatch(text.strip()))


def with_least_numbers(heads: Mapping[int, str], texts: Mapping[int, str], doubts: list[str]) -> dict[int, str]:
    """
    The heads of a list with what its least numbers are: results beside counts, and else the counts, which is told.

    >>> with_least_numbers({0: "taxon", 1: "count", 2: "derived"}, {0: "Taxon", 1: "NISP", 2: "MNI"}, [])
    {0: 'taxon', 1: 'count', 2: 'derived'}
    >>> with_least_numbers({0: "taxon", 3: "derived"}, {0: "Taxon", 1: "Enteros", 2: "Fragm.", 3: "NMI"}, [])
    {0: 'taxon', 3: 'derived'}
    >>> with_least_numbers({0: "taxon", 1: "derived"}, {0: "Taxon", 1: "MNI"}, [])
    {0: 'taxon', 1: 'count'}
    """
    least = [column for column, text in texts.items() if is_least_number(text) and column in heads]
    is_counted = any(
        heads.get(column) == "count" or quantity(text).startswith("count, ")
        for column, text in texts.items() if column not in least
    )  # fmt: skip
    if least and not is_counted:
        doubts.append(
            f"'{texts[least[0]]}' gives least numbers, which are worked out and not counted; they are taken for "
            "counts, because the table gives no others"
        )
    return {**heads, **dict.fromkeys(least, "derived" if is_counted else "count")}


def counted_by_least(heads: Mapping[int, str]) -> set[int]:
    """
    The columns of least numbers that are the counts, since no other column is.

    >>> counted_by_least({1: "NMI", 2: "%", 3: "NMI", 4: "%"}), counted_by_least({1: "NR", 2: "NMI"})
    ({1, 3}, set())
    """
    least = {column for column, text in heads.items() if is_least_number(text)}
    others = [text for column, text in heads.items() if column not in least]
    derived = ("percent", "density", "ubiquity", "derived", "total")
    is_alone = all(quantity(text) in ("percent", "density") or heading(text) in derived for text in others)
    return least if is_alone else set()
