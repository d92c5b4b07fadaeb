"""How well a reading explains the heads over its columns: numbers under 'context_no' or 'volume' are no counts."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from narrate.model.layouts import SAMPLE_ROLES
from narrate.reading.intake.code_columns import is_code_of_taxa
from narrate.reading.intake.crossed_guess import Crossed
from narrate.reading.intake.evidence import Look
from narrate.reading.intake.header_words import heading
from narrate.reading.intake.long_columns import states_in
from narrate.reading.intake.long_guess import heads_in
from narrate.reading.intake.long_table import Long

_OF_FINDS = ("taxon", "genus", "common name")
_OF_AMOUNTS = ("count", "mass")
_NO_COUNTS = (*SAMPLE_ROLES, "count", "mass", "note", "code", "location", "cf", "condition", "part")

_KEY = re.compile(r"[^\W\d_]{3}[_ ]ids?$", re.IGNORECASE)


def is_against_heads(crossed: Crossed, long: Long | None) -> bool:
    """
    Whether taxa against samples is gainsaid by the heads of a list: a head names samples, taxa and amounts, and most
    columns that would have to hold counts of one sample each stand under words for something else.
    """
    if long is None or crossed.look.is_turned:
        return False
    head = next((row for row, role in long.rows.items() if role.name == "header"), None)
    if head is None:
        return False
    look = crossed.look
    roles = heads_in(look, long.area, head)
    said = set(roles.values())
    is_of_taxa = said & set(_OF_FINDS) or any(is_code_of_taxa(look.text(head, c)) for c in roles)
    if not (is_of_taxa and said & set(_OF_AMOUNTS) and said & {"sample", "context", "feature"}):
        return False
    lines = [row for row, role in crossed.rows.items() if role.name == "counts"]
    if 2 * sum(row > head for row in lines) < len(lines):
        return False  # another table over the list
    counted = [c for c, role in crossed.columns.items() if role.name == "counts"]
    counts = [c for c in counted if any(look.is_amount(row, c) for row in lines)]
    headed = [c for c in counts if _says_something_else(look.text(head, c), roles.get(c, ""))]
    return 2 * len(headed) > len(counts) or _repeats_its_samples(look, roles, lines, counts)


def _repeats_its_samples(look: Look, roles: Mapping[int, str], lines: Sequence[int], counts: Sequence[int]) -> bool:
    """Whether samples and names each stand in a column and come again line after line, beside a column of amounts."""
    amounts = [c for c, role in roles.items() if role in _OF_AMOUNTS]
    if set(amounts) <= set(counts):
        return False
    for wanted in (("sample",), _OF_FINDS):
        texts = [look.text(row, c) for c, role in roles.items() if role in wanted for row in lines]
        if not all(texts) or 2 * len(set(texts)) > len(texts):
            return False
    return True


def _says_something_else(text: str, role: str) -> bool:
    """Whether a head names what a column of a list holds ('n_frag' too), or keys of a database: 'parent_context_id'."""
    state, rest = states_in(text)
    is_of_state = bool(state) and heading(rest) in _OF_AMOUNTS
    return bool(role in _NO_COUNTS and heading(text)) or is_of_state or bool(_KEY.search(text))
