"""Tables with one row for each sample or context and no finds: worked out from their heads."""

from __future__ import annotations

import re

from narrate.model.grids import Area
from narrate.model.layouts import DERIVED_ROLES, SAMPLE_ROLES, Role
from narrate.reading.intake.answers import asks_of_a_sample
from narrate.reading.intake.evidence import Look
from narrate.reading.intake.header_words import heading, unit
from narrate.reading.intake.heads_of_list import heads_in
from narrate.reading.intake.long_columns import contexts_of_kinds, contexts_told_apart, is_filled
from narrate.reading.intake.long_table import OF_SAMPLE, Long, rows_below


def guess_records(look: Look, area: Area) -> Long | None:
    """A table of samples or contexts without any finds: a head with at least two words for samples."""
    for row in range(area.top, min(area.top + 30, area.bottom) + 1):
        heads = heads_in(look, area, row)
        if any(role in ("taxon", "count", "genus") for role in heads.values()):
            continue
        said = [role for role in heads.values() if role in SAMPLE_ROLES]
        if len(said) < 2 or not any(role in ("sample", "context") for role in said):
            continue
        below = [r for r in rows_below(look, area, row) if any((r, c) in look.cells for c in heads)]
        if not below or _are_plants(look, below, [c for c, role in heads.items() if role in ("sample", "context")]):
            continue
        columns: dict[int, Role] = {}
        has_sample = "sample" in said
        for column, role in heads.items():
            name = {"note": "sample note", "size class": "ignored", "mass": "ignored"}.get(role, role)
            if name in SAMPLE_ROLES and not (name == "sample" and any(r.name == "sample" for r in columns.values())):
                qualifiers: tuple[str, ...] = ()
                if name in ("volume", "flot volume", "flot mass"):
                    usual = {"volume": "l", "flot volume": "ml", "flot mass": "g"}[name]
                    found = unit(look.text(row, column))
                    qualifiers = (found if found not in ("", "%", "mm") else usual,)
                if role == "note" and asks_of_a_sample(look.text(row, column)):
                    qualifiers = (look.text(row, column),)
                columns[column] = Role(
                    name=name, qualifiers=qualifiers, filled=name in OF_SAMPLE and is_filled(look, below, column)
                )
            elif name in DERIVED_ROLES:
                columns[column] = Role(name=name)
            else:
                columns[column] = Role(name="ignored", qualifiers=("no field of a record holds it",))
        if not has_sample:
            at = next(c for c, role in columns.items() if role.name == "context")
            columns[at] = Role(name="context")
        if has_sample:
            _join_numbers(look, row, below, columns)
            columns.update(contexts_of_kinds(look, below, columns))
            columns.update(contexts_told_apart(look, row, columns))
        rows = {row: Role(name="header"), **{r: Role(name="finds") for r in below}}
        rows.update(
            {
                r: Role(name="title")
                for r in range(area.top, row)
                if any((r, c) in look.cells for c in range(area.left, area.right + 1))
            }
        )
        for r in below:
            alone = [look.text(r, c) for c in range(area.left, area.right + 1) if (r, c) in look.own]
            if len(alone) == 1 and len(heads) > 2 and (len(alone[0]) > 20 or re.search(r"[:=;]", alone[0])):
                rows[r] = Role(name="notes")
            if (
                re.match(r"note|key|\*", look.text(r, min(heads)), re.IGNORECASE)
                or heading(look.text(r, min(heads))) == "total"
            ):
                rows[r] = Role(name="notes")
        if not any(role.name == "finds" for role in rows.values()):
            continue
        return Long(
            shape="records", rows=dict(sorted(rows.items())), columns=dict(sorted(columns.items())),
            area=Area(top=area.top, left=area.left, bottom=below[-1], right=area.right), explained=0, score=0.0,
        )  # fmt: skip
    return None


def _are_plants(look: Look, below: list[int], columns: list[int]) -> bool:
    """Whether plants or further heads stand where the ids should: an empty form of the bench, no list of samples."""
    ids = [text for c in columns[:1] for r in below if (text := look.text(r, c))]
    plants = sum(look.names.read(text).is_known for text in ids)
    return bool(ids) and (plants >= 0.3 * len(ids) or all(heading(text) for text in ids))


def _join_numbers(look: Look, row: int, below: list[int], columns: dict[int, Role]) -> None:
    """Where numbers of samples begin anew in each context, the two of them together are the id."""
    at = next(c for c, role in columns.items() if role.name == "sample")
    texts = [look.text(r, at) for r in below if look.text(r, at)]
    is_within = re.search(r"\b(?:in|per|within)\b|/", look.text(row, at), re.IGNORECASE)  # 'Sample no. in context'
    if len(set(texts)) == len(texts) and not is_within:
        return
    for column, role in columns.items():
        both = [(look.text(r, column), look.text(r, at)) for r in below if look.text(r, at)]
        if role.name in ("context", "feature") and all(all(pair) for pair in both) and len(set(both)) == len(both):
            columns[column] = Role(name="sample", also=(role.name,), filled=role.filled)
            return
