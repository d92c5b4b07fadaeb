"""What lines such as 'Sample, 12.3, Context, 1045' over the list of a form say of its one sample."""

from __future__ import annotations

import re

from narrate.model.grids import Area
from narrate.model.layouts import SAMPLE_ROLES
from narrate.reading.intake.crossed_body import with_unit
from narrate.reading.intake.evidence import Look, looks_like_id
from narrate.reading.intake.header_words import heading
from narrate.reading.intake.kind_words_abroad import kind_of

_DAY = re.compile(r"\d{1,4}[-/.]\d{1,2}[-/.]\d{1,4}|\d{1,2} [A-Z][a-z]{2} \d{4}")


def said_over(look: Look, area: Area, rows: range) -> dict[str, tuple[int, int]]:
    """Role -> the cell behind its label, of all labels in some rows; 'Sample' before 'Context' and 'Volume'."""
    found: dict[str, tuple[int, int]] = {}
    for row in rows:
        plain = _labels_and_values(look, area, row)
        if plain:
            found.update({role: at for role, at in plain.items() if role not in found})
            continue
        column = area.left
        pairs: dict[str, tuple[int, int]] = {}
        known = 0
        while column < area.right:
            role = heading(look.text(row, column)) if (row, column) in look.own else ""
            value = next((c for c in range(column + 1, min(column + 3, area.right) + 1) if (row, c) in look.own), None)
            said = look.text(row, value) if value is not None else ""
            is_value = bool(said) and (not heading(said) or looks_like_id(said) or _is_kind_under(look, role, said))
            if role == "phase" and _DAY.fullmatch(said):
                role = "note"  # the day of the work, and no date of the remains
            if role in SAMPLE_ROLES and value is not None and is_value:
                pairs.setdefault(role, (row, value))
                known += 2
                column = value + 1
            elif role and value is not None and is_value:
                known += 2  # 'Date', 'Sorted by'
                column = value + 1
            else:
                column += 1
        known += _kind_behind(look, area, pairs, row)
        # A row with more in it than labels and what they head, such as several ids, is of a table.
        if known == sum((row, c) in look.own for c in range(area.left, area.right + 1)):
            found.update({role: at for role, at in pairs.items() if role not in found})
    return found


def _kind_behind(look: Look, area: Area, pairs: dict[str, tuple[int, int]], row: int) -> int:
    """1 where the last cell of a row says what was dug, behind its number ('Befund, 41, Grube'); it joins the pairs."""
    last = max((c for c in range(area.left, area.right + 1) if (row, c) in look.own), default=area.left)
    is_behind = any(role in ("feature", "context") and at[1] == last - 1 for role, at in pairs.items())
    said = look.text(row, last)
    is_kind = bool(kind_of(said, look.names.packs.words))
    if not is_behind or len(pairs) < 2 or not _WORDS.fullmatch(said) or (heading(said) and not is_kind):
        return 0
    pairs.setdefault("kind" if is_kind else "sample note", (row, last))
    return 1


_WORDS = re.compile(r"[^\W\d_]{3,}(?:[ -][^\W\d_]+){0,3}")


def _labels_and_values(look: Look, area: Area, row: int) -> dict[str, tuple[int, int]]:
    """
    Role -> the cell behind its label, in a row of labels and values by turns; empty for other rows.

    Labels that nobody knows ('Datum', 'Fototag') are passed over where others of the row are known.
    """
    pairs = _pairs_of(look, row, [c for c in range(area.left, area.right + 1) if (row, c) in look.own])
    if not 1 <= len(pairs) <= 6:
        return {}
    labels = [look.text(row, c) for c, _ in pairs]
    roles = [heading(label) for label in labels]
    is_worded = all(look.is_text(row, c) and re.search(r"[^\W\d_]{2}", look.text(row, c)) for c, _ in pairs)
    is_worded = is_worded and not any(looks_like_id(label) and not heading(label) for label in labels)  # 'Am. 2'
    if not is_worded or not set(roles) & set(SAMPLE_ROLES) or 2 * sum(map(bool, roles)) < len(roles):
        return {}
    values = [look.text(row, c) for _, c in pairs]
    if any(role in SAMPLE_ROLES and heading(value) in ("taxon", "count", "part", "sample") and not looks_like_id(value)
           for role, value in zip(roles, values, strict=True)):
        return {}  # a head of a list
    found: dict[str, tuple[int, int]] = {}
    for (_, at), role, value in zip(pairs, roles, values, strict=True):
        if role in SAMPLE_ROLES and not (role == "phase" and _DAY.fullmatch(value)):
            found.setdefault(role, (row, at))
    return found


def _pairs_of(look: Look, row: int, columns: list[int]) -> list[tuple[int, int]]:
    """Labels and the values behind them, by turns; a day of work may stand between them without a label."""
    pairs: list[tuple[int, int]] = []
    n = 0
    while n < len(columns):
        if _is_day(look, row, columns[n]):
            n += 1
            continue
        is_kind = n + 1 < len(columns) and _is_kind_under(
            look, heading(look.text(row, columns[n])), look.text(row, columns[n + 1])
        )
        is_last = n + 1 == len(columns) or (_is_label(look, row, columns[n + 1]) and not is_kind)
        if _is_label(look, row, columns[n]) and is_last:
            n += 1  # 'Vol (L)' with nothing behind it
            continue
        if n + 1 == len(columns):
            return []
        pairs.append((columns[n], columns[n + 1]))
        n += 2
    return pairs


def _is_kind_under(look: Look, role: str, said: str) -> bool:
    """Whether 'Pit' behind 'Feature' says what was dug, and heads nothing itself."""
    return role in ("feature", "kind") and bool(kind_of(said, look.names.packs.words))


def _is_label(look: Look, row: int, column: int) -> bool:
    text = look.text(row, column)
    return heading(text) in ("sample", "context", "volume", "feature", "phase") and not looks_like_id(text)


def _is_day(look: Look, row: int, column: int) -> bool:
    return look.cells[row, column].kind == "date" or bool(_DAY.fullmatch(look.text(row, column)))


_SAMPLE = re.compile(
    r"(?:sample|smp|flot|flotation sample|soil sample|fs|bag|probe|muestra|échantillon|campione|monster|prøve)"
    r"\s*(?:no\.?|nr\.?|number|n°|#|:)?\s*(?P<id>(?=[\w.-]*\d)[\w.-]+(?:/[\w.-]+)?|(?<=\s)[^\W\d_])",
    re.IGNORECASE,
)
_LITRES = re.compile(r"(?:ca\.?|c\.|~)?\s*\d+(?:[.,]\d+)?\s*(?:l|lt|ltrs?|lit(?:re|er|ro)s?)\.?", re.IGNORECASE)


OF_ID = re.compile(r"(?:fs|bag)\b", re.IGNORECASE)
"""Before the number of a field specimen, and part of it."""


def is_labelled(look: Look, row: int, column: int) -> bool:
    return any(heading(look.text(row, c)) == "sample" for c in range(max(0, column - 2), column))


def id_in_words(look: Look, row: int, column: int) -> str:
    """The id in a cell that says 'Sample 12'; empty for a cell that holds nothing but the id."""
    match = _SAMPLE.fullmatch(look.text(row, column).strip())
    return match["id"] if match else ""


def behind_label(text: str, role: str) -> str:
    """The value in a cell that says 'Context: 1008'; empty where no label of that role stands before it."""
    label, colon, value = text.partition(":")
    said = heading(label) if colon else ""
    return value.strip() if said and (said == role or (said, role) == ("context", "kind")) else ""


def said_in_words(look: Look, area: Area, row: int) -> dict[str, tuple[int, int]]:
    """Role -> cell of a line whose cells carry their labels: 'Sample 3, Feature 8, 12 litres, zone A'."""
    columns = [c for c in range(area.left, area.right + 1) if (row, c) in look.own]
    if row < area.top or [c for c in columns if id_in_words(look, row, c)] != columns[:1] or not columns:
        return {}  # several ids in a row are of a table with samples across
    found = {"sample": (row, columns[0])}
    for column in columns[1:]:
        text = look.text(row, column)
        role = heading(re.sub(r"\s*#?\s*[\w.-]*\d[\w.-]*$", "", text)) if re.search(r"\d", text) else ""
        label, colon, value = (piece.strip() for piece in text.partition(":"))
        labelled = heading(label) if colon and value else ""
        if labelled == "context" and "context" in found:
            labelled = "kind"  # 'Lote 12, Contexto: basurero'
        if _LITRES.fullmatch(text):
            found.setdefault("volume", (row, column))
        elif labelled in SAMPLE_ROLES and labelled != "sample" and not (labelled == "phase" and _DAY.fullmatch(value)):
            found.setdefault(labelled, (row, column))
        elif role in SAMPLE_ROLES and role != "sample":
            found.setdefault(role, (row, column))
        elif not heading(text):
            found.setdefault("sample note", (row, column))
    return found


def said_behind_colons(look: Look, area: Area, rows: range) -> dict[str, tuple[int, int]]:
    """Role -> cell of lines whose cells say 'Sample: 12', 'Volume: 8 L'; empty where none gives the sample."""
    found: dict[str, tuple[int, int]] = {}
    for row in rows:
        for column in [c for c in range(area.left, area.right + 1) if (row, c) in look.own]:
            label, _, value = look.text(row, column).partition(":")
            role = heading(label.strip())
            if role in SAMPLE_ROLES and value.strip() and not (role == "phase" and _DAY.fullmatch(value.strip())):
                found.setdefault(role, (row, column))
    return found if "sample" in found else {}


def remarks_below(look: Look, area: Area, rows: range) -> dict[str, tuple[int, int]]:
    """Label -> the cell behind it, of lines such as 'Comments, Many modern roots.' below the list of a form."""
    found: dict[str, tuple[int, int]] = {}
    for row in rows:
        own = [c for c in range(area.left, area.right + 1) if (row, c) in look.own]
        if len(own) != 2 or heading(look.text(row, own[0])) not in ("note", "sample note"):
            continue
        if look.is_text(row, own[1]) and re.search(r"[^\W\d_]{2}", look.text(row, own[1])):
            found.setdefault(re.sub(r"[\s,:]+", " ", look.text(row, own[0])).strip(), (row, own[1]))
    return found


def rows_of_work(look: Look, area: Area, rows: range) -> list[int]:
    """Lines that say who did the work and when, and nothing else: 'Sorted by, AB, Date, 14/03/2016'."""
    found = []
    for row in rows:
        own = [c for c in range(area.left, area.right + 1) if (row, c) in look.own]
        pairs = list(zip(own[::2], own[1::2], strict=False))
        if own and len(own) % 2 == 0 and all(
            heading(look.text(row, c)) == "note" or (heading(look.text(row, c)) == "phase" and _is_day(look, row, at))
            for c, at in pairs
        ):
            found.append(row)
    return found


def role_at(look: Look, role: str, at: tuple[int, int]) -> str:
    label = next((look.text(at[0], c) for c in range(at[1] - 1, -1, -1) if look.text(at[0], c)), "")
    return str(with_unit(role, label))
