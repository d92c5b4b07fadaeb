"""Tables whose numbers are no counts in all likelihood: 0 and 1 for presence, 0 to 4 for how much of a class there was."""

# ruff: noqa: E501

from __future__ import annotations

import re

from narrate.model.layouts import Table
from narrate.reading.intake.classes_explained import classes_explained
from narrate.reading.intake.evidence import Look

# Common practice, no source: classes of remains that registers of assessed samples score.
_CLASS = re.compile(
    r"(?:cereals?|grains?|chaff|glumes?|rachis|straw|culms?|weeds?|seeds?|wild|other|crops?|plants?|remains|fruits?|nuts?|nutshells?|stones?"
    r"|charcoal|wood|charred|uncharred|carboni[sz]ed|waterlogged|mineralised|desiccated|roots?|rootlets|rhizomes?|moss|buds?|thorns?|flots?|residue|lf|hf"
    r"|molluscs?|snails?|shells?|insects?|beetles?|bones?|fish|small|large|mammals?|burnt|macros?|macrofossils?|cpr|wpr|and|of|mm)+",
    re.IGNORECASE,
)
_HIGHEST, _LOWEST = 5, 3
_LEAST_SAMPLES, _LEAST_CLASSES = 5, 3


def meaning_of_numbers(look: Look, table: Table) -> tuple[dict[str, str], str]:
    """(what the numbers of a table mean, what is told of it), where they are no counts; ({}, '') for counts."""
    rows = [r for r, role in table.rows.items() if role.name in ("counts", "finds")]
    columns = [c for c, role in table.columns.items() if role.name in ("counts", "count")]
    texts = [cell.text for r in rows for c in columns if (cell := look.cells.get((r, c))) is not None]
    if scale := classes_explained(look.grid, table, texts):
        words = ", ".join(f"{sign} = {meaning}" for sign, meaning in scale.items())
        return scale, (
            f"DOUBTFUL: the sheet explains its numbers as classes ({words}), and no amount is above them, so they are "
            "read as classes and not as counts; if they are counts, take the numbers out of cells, key in the layout"
        )
    written = set(texts)
    if written <= {"0", "1", "1.0", "0.0"} and texts.count("1") >= 8:
        return {"1": "present"}, (
            "every amount is 0 or 1, so 1 is taken as present and not as a count; see cells, key in the layout"
        )
    highest = max((int(text) for text in written if text.isdecimal()), default=0)
    are_scores = all(text.isdecimal() for text in written) and _LOWEST <= highest <= _HIGHEST
    if not are_scores or table.shape != "crossed" or not _names_only_classes(look, table, rows, columns):
        return {}, ""
    return {str(n): "present" for n in range(1, highest + 1)}, (
        f"DOUBTFUL: no name is of a plant and no amount above {highest}: scores for classes of remains, in all "
        "likelihood, and taken as presence; if they are counts, take the numbers out of cells, key in the layout"
    )


def _names_only_classes(look: Look, table: Table, rows: list[int], columns: list[int]) -> bool:
    """Whether all names of a table with samples enough are words for classes of remains."""
    if table.has_samples_across:
        at = [c for c, role in table.columns.items() if "taxon" in role.names]
        labels, samples = [look.text(r, c) for r in rows for c in at[:1]], len(columns)
    else:
        at = [r for r, role in table.rows.items() if "taxon" in role.names]
        labels, samples = [look.text(r, c) for c in columns for r in at[:1]], len(rows)
    words = [re.findall(r"[^\W\d_]+", label) for label in labels]
    are_classes = all(own and all(map(_CLASS.fullmatch, own)) for own in words)
    return are_classes and len(labels) >= _LEAST_CLASSES and samples >= _LEAST_SAMPLES
