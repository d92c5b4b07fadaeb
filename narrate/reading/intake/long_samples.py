"""The column of a list of finds that tells its samples apart, by its head and by what stands in it."""

from __future__ import annotations

import re

from narrate.reading.intake.evidence import Look, looks_like_id
from narrate.reading.intake.header_words import sample_rank
from narrate.reading.intake.long_table import OF_SAMPLE

_NUMBERED = re.compile(
    r"[^\W\d_]{3}.*(?:\bno\.?|\bnr\.?|#|\bnumber|\bid|n[º°])$|(?:n\.? ?[º°o]\.?|nr\.?|n[uú]m\.?)\s+[^\W\d_]{3}.*",
    re.IGNORECASE,
)


def column_of_samples(look: Look, row: int, heads: dict[int, str], below: list[int]) -> int | None:
    """The column that tells samples apart: one headed so before bags and lots, else contexts, features, phases."""
    for wanted in (*OF_SAMPLE, "phase"):
        columns = [c for c, role in heads.items() if role == wanted]
        if wanted == "sample":
            given = [c for c in columns if any(look.text(r, c) for r in below)]
            if given and all(_is_of_few(look, heads, below, c) for c in given):
                continue  # 'sample_number' filled in for the finds of one context only
            columns = sorted(given or columns, key=lambda c: -sample_rank(look.text(row, c)))
            if given and _is_of_all(look, heads, below, columns[0]):
                continue  # 'sample_number' 0 for whatever context
            if given and _is_coarse(look, row, heads, below, columns[0]):
                continue  # 'id' for all phases of a site
        if columns:
            return columns[0] if wanted == "sample" else _numbered(look, row, heads, below, columns[0])
    return None


def _is_of_few(look: Look, heads: dict[int, str], below: list[int], column: int) -> bool:
    """Whether ids stand in few lines and not in the first, while contexts or features stand in nearly all."""
    lines = [r for r in below if any((r, c) in look.cells for c in heads)]
    others = [c for c in heads if heads[c] in ("context", "feature")]
    if not lines or look.text(lines[0], column) or sum(bool(look.text(r, column)) for r in lines) >= 0.5 * len(lines):
        return False
    return any(sum(bool(look.text(r, c)) for r in lines) >= 0.9 * len(lines) for c in others)


def _is_of_all(look: Look, heads: dict[int, str], below: list[int], column: int) -> bool:
    """Whether one id stands in all lines, which are of several contexts or features: no sample is of two of them."""
    others = [c for c in heads if heads[c] in ("context", "feature")]
    kinds = {c: {look.text(r, c) for r in below} - {""} for c in (column, *others)}
    return len(kinds[column]) == 1 and any(len(kinds[c]) > 1 for c in others)


def _is_coarse(look: Look, row: int, heads: dict[int, str], below: list[int], column: int) -> bool:
    """Whether a bare 'id' is of several contexts or phases each, of which none has two ids: it is a site's."""
    if look.text(row, column).strip().lower() not in ("id", "no", "no.", "nr", "nr."):
        return False
    for other in (c for c in heads if heads[c] in ("context", "feature", "phase")):
        pairs = {(look.text(r, column), look.text(r, other)) for r in below if look.text(r, other)}
        ids, finer = ({pair[k] for pair in pairs} for k in (0, 1))
        if len(ids) < len(finer) == len(pairs):
            return True
    return False


def _numbered(look: Look, row: int, heads: dict[int, str], below: list[int], known: int) -> int:
    """The column of a numbered thing that nobody knows ('Post No.'), where it parts more than the known one does."""

    def several(column: int) -> int:
        return len({look.text(r, column) for r in below} - {""})

    numbered = [
        c for c, role in heads.items()
        if not role and _NUMBERED.search(look.text(row, c).strip())
        and _are_ids([look.text(r, c) for r in below if look.text(r, c)])
    ]  # fmt: skip
    return next((c for c in numbered if several(c) > several(known) - (c < known)), known)


def _are_ids(texts: list[str]) -> bool:
    """Whether nearly all of a column reads as ids; a key may stand under it."""
    return bool(texts) and sum(map(looks_like_id, texts)) >= 0.8 * len(texts)
