"""The columns of a sheet in which names most likely run down."""

from __future__ import annotations

from collections import Counter

from narrate.model.grids import Area
from narrate.model.layouts import DERIVED_ROLES, SAMPLE_ROLES
from narrate.reading.intake.evidence import Look, plain_label
from narrate.reading.intake.header_words import heading


def columns_of_names(look: Look, area: Area) -> list[int]:
    """The most likely columns of names, best first; words that nobody knows are taken only where no names are seen."""
    scores: dict[int, float] = {}
    plain: dict[int, float] = {}
    lines, across = range(area.top, area.bottom + 1), range(area.left, min(area.right, area.left + 400) + 1)
    given = Counter(column for row, column in look.own if row in lines and column in across)
    amounts = [(row, column) for row, column in look.amounts() if row in lines and area.left <= column <= area.right]
    rows_with_amounts = {row for row, _ in amounts}
    counted = Counter(column for row, column in amounts if (row, column) in look.own)
    words: dict[int, list[int]] = {column: [] for column, cells in sorted(given.items()) if cells > counted[column]}
    for row, column in sorted(at for at in look.own if at[1] in words and at[0] in lines):
        if look.cells[row, column].kind != "number":
            words[column].append(row)
    head = _head_of_records(look, area)
    for column, rows in words.items():
        texts = [look.cells[row, column].text for row in rows]
        weights: dict[str, float] = {}
        for row, text in zip(rows, texts, strict=True):
            weights[text] = weights.get(text, 0.0) + (1.0 if row in rows_with_amounts else 0.1)
        first_at = dict(zip(reversed(texts), reversed(rows), strict=True))
        scores[column] = sum(look.name_score(first_at[text], column) * weight for text, weight in weights.items())
        plain[column] = sum(plain_label(text) * weight for text, weight in weights.items())
        heads = {heading(text) for text in weights}
        parts = sum(bool(look.names.part_of(text)) for text in texts)
        # 'seed' and 'grain' down a column are parts beside names; 'Taxon' over it says names.
        if heads & {"taxon", "genus"}:
            scores[column] *= 1.5
        elif "part" in heads or parts >= 0.8 * given[column]:
            scores[column] *= 0.3
        if head is not None and heading(look.text(head, column)) in SAMPLE_ROLES:
            if scores[column] < 0.9 or not any(look.names.read(text).is_known for text in texts):
                scores[column] = plain[column] = 0.0  # 'Finale ligure' under 'Site' has the look of a name
    # A few stray words are no list of names.
    named = [c for c, score in sorted(scores.items(), key=lambda item: (-item[1], item[0])) if score >= 0.9][:3]
    unknown = [c for c, score in sorted(plain.items(), key=lambda item: (-item[1], item[0])) if score >= 0.4][:2]
    return named + [c for c in unknown if c not in named]


def _head_of_records(look: Look, area: Area) -> int | None:
    """The first row of heads of a list of samples, such as 'Kind' beside 'Sample', 'Litres', 'Phase'; None for none."""
    for row in range(area.top, min(area.top + 30, area.bottom) + 1):
        heads = [heading(text) for text in look.texts(row, area.left, area.right) if text]
        of_samples = {role for role in heads if role in SAMPLE_ROLES}
        said = sum(role in (*SAMPLE_ROLES, *DERIVED_ROLES, "location", "condition", "note") for role in heads)
        if len(of_samples) >= 3 and said >= 0.6 * len(heads) and not {"taxon", "count"} & set(heads):
            return row
    return None
