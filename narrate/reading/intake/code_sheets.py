"""Sheets of a workbook that say what the codes of the counts mean: 'HORVUL, Hordeum vulgare, grain'."""

# ruff: noqa: E501

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable

from narrate.reading.intake.code_columns import columns_of_list
from narrate.reading.intake.evidence import NAMED, Look, name_score
from narrate.reading.intake.header_words import heading

_CODE = re.compile(r"(?=.*[A-Z])[A-Z0-9][A-Za-z0-9._-]{1,11}")
_CODE_IN_WORDS = re.compile(r"[A-Z0-9][A-Za-z0-9._-]{1,11}(?: [A-Za-z0-9._-]{1,6}){0,3}")
"""'ORY SAT gr', under a head that says code."""
_LEAST = 0.5
"""Share of the lines of a list that must be a code beside a name, and of the codes that must be in use."""


def codes_in_use(looks: Iterable[Look]) -> tuple[dict[str, str], set[str]]:
    """Code -> name (and part) for the codes that other sheets use, and the names of the sheets that say so."""
    all_looks = list(looks)
    found: dict[str, str] = {}
    sheets: set[str] = set()
    for look in all_looks if len(all_looks) > 1 else []:
        listed = _listed(look)
        others = {cell.text for other in all_looks if other is not look for cell in other.cells.values()}
        used = {code: name for code, name in listed.items() if code in others and code != name}
        if len(used) >= 2:
            found.update(used)
            sheets.add(look.grid.sheet)
    return found, sheets


_IN_PROSE = re.compile(r"(?<![\w-])(?P<code>[A-Z](?=\w*[A-Z0-9])[A-Za-z0-9_-]{2,11})\s*=\s*(?P<name>[^=;.:]{3,60}?)\s*(?=[;.]|$)")
_IN_GRAMS = re.compile(r",?\s+(?:in )?(?P<unit>g|gr|grams?|mg)$", re.IGNORECASE)


def codes_in_prose(looks: Iterable[Look]) -> dict[str, str]:
    """Code -> name of plants for codes in use that a line of words explains: 'WOODG = wood charcoal, grams'."""
    all_looks = list(looks)
    texts = {cell.text for look in all_looks for cell in look.cells.values()}
    return {code: name for code, name in codes_explained(all_looks).items() if code in texts}


def codes_explained(looks: Iterable[Look]) -> dict[str, str]:
    """The same for all codes that lines of words explain, be they in use alone or within longer ones: 'TRIDIC_GB'."""
    found: dict[str, set[str]] = {}
    for look in looks:
        for matches in (list(_IN_PROSE.finditer(cell.text)) for cell in look.cells.values() if "=" in cell.text):
            plants = {m["code"] for m in matches if name_score(_IN_GRAMS.sub("", m["name"]), look.names) >= NAMED}
            # In a key most of whose names are known the others are names that no pack knows.
            is_key = len(plants) >= 3 and len(plants) >= _LEAST * len(matches)
            for match in matches:
                if (is_key or match["code"] in plants) and not heading(match["code"]):
                    unit = _IN_GRAMS.search(match["name"])
                    bare = _IN_GRAMS.sub("", match["name"])
                    name = f"{bare} ({'mg' if unit['unit'].lower() == 'mg' else 'g'})" if unit else bare
                    found.setdefault(match["code"], set()).add(name)
    return {code: next(iter(names)) for code, names in sorted(found.items()) if len(names) == 1}


def codes_beside(look: Look) -> tuple[dict[str, str], set[int]]:
    """
    Code -> name (and part) of a list with a head of its own in the sheet of the counts, and the rows that it takes.

    Codes count only where they stand outside the list too; the list itself may stand above or below the counts.
    """
    for head in range(look.rows):
        texts = {c: look.text(head, c) for c in range(min(look.columns, 12)) if look.text(head, c)}
        codes = [c for c, text in texts.items() if heading(text) == "code"]
        named = [c for c, text in texts.items() if heading(text) in ("taxon", "common name")]
        if not codes or not named or not 2 <= len(texts) <= 6:
            continue
        rows = []
        for row in range(head + 1, look.rows):
            if not (_ANY_CODE.fullmatch(look.text(row, codes[0])) and look.text(row, named[0])):
                break
            rows.append(row)
        if any(look.is_amount(r, c) for r in rows for c in texts if c != codes[0]):
            continue
        of = columns_of_list(look, rows, codes[0], named[0])
        listed = {look.text(r, codes[0]): of.name(look, r) for r in rows}
        own = {head, *rows}
        others = {cell.text for (r, _), cell in look.cells.items() if r not in own}
        used = {code: name for code, name in listed.items() if code in others and code != name}
        if len(used) >= 2 and len(used) >= _LEAST * len(listed):
            return used, own
    return _unheaded(look)


def _unheaded(look: Look) -> tuple[dict[str, str], set[int]]:
    """The same for a list without a head: lines of a code, a name and at most its part, and nothing else."""
    cells = Counter(row for row, _ in look.own)
    lines: dict[int, list[int]] = {}
    for row, column in sorted(at for at in look.own if 2 <= cells[at[0]] <= 4):
        lines.setdefault(row, []).append(column)
    listed: dict[str, str] = {}
    rows: dict[str, int] = {}
    named = 0
    for row, columns in lines.items():
        texts = [look.text(row, c) for c in columns]
        code = texts[0].rstrip(" =:")
        is_line = _CODE.fullmatch(code) and not any(look.is_amount(row, c) for c in columns[1:])
        words = " ".join(text.lstrip(" =:") for text in texts[1:])
        if not is_line or "=" in words or code in listed or heading(code) or not re.search(r"[^\W\d_]{3}", words):
            continue
        listed[code], rows[code] = words, row
        named += name_score(words, look.names) >= NAMED
    if len(listed) < _LEAST_UNHEADED:
        return {}, set()
    own = set(rows.values())
    others = {cell.text for (r, _), cell in look.cells.items() if r not in own}
    used = {code: words for code, words in listed.items() if code in others}
    if len(used) < _LEAST_UNHEADED or len(used) < _LEAST * len(listed) or named < _LEAST * len(listed):
        return {}, set()
    return used, {rows[code] for code in used}
_LEAST_UNHEADED = 4


def _listed(look: Look) -> dict[str, str]:
    """The codes and names of a list; empty for a sheet that is none."""
    for code in range(min(look.columns, 8)):
        texts = {r: look.text(r, code) for r in range(look.rows) if look.text(r, code)}
        form = _CODE_IN_WORDS if _is_headed(look, code) else _CODE
        rows = [r for r, text in texts.items() if form.fullmatch(text) and not heading(text)]
        if len(rows) < 2 or len(rows) < _LEAST * len(texts) or len({texts[r] for r in rows}) < len(rows):
            continue
        names = _column_of_names(look, code, rows)
        if names is not None:
            of = columns_of_list(look, rows, code, names)
            return {texts[r]: of.name(look, r) for r in rows if look.text(r, names)}
    return {}


def _is_headed(look: Look, column: int) -> bool:
    """Whether a head in the first rows of a column calls it one of codes."""
    return any(heading(look.text(row, column)) == "code" for row in range(min(look.rows, 6)))


def lists_of_codes(look: Look) -> list[tuple[str, str, int]]:
    """
    (code, name with its part, row) of a list that an analyst hands over as a list of codes.

    Codes may be of any form there, small letters and numbers too: the column before all others that hold one word each.
    """
    best: list[tuple[str, str, int]] = []
    for code in range(min(look.columns, 8)):
        is_headed = _is_headed(look, code)
        rows = [
            row
            for row in range(look.rows)
            if _ANY_CODE.fullmatch(look.text(row, code)) and not heading(look.text(row, code)).strip()
        ]
        names = _column_of_names(look, code, rows) if rows else None
        if names is None:
            continue
        of = columns_of_list(look, rows, code, names)
        found = [(look.text(r, code), of.name(look, r), r) for r in rows if look.text(r, names)]
        if is_headed:
            return found
        best = best or found
    return best


_ANY_CODE = re.compile(r"[\w.*#/-]{1,16}")


def _column_of_names(look: Look, code: int, rows: list[int]) -> int | None:
    others = [c for c in range(min(look.columns, 12)) if c != code]
    scores = {c: sum(look.name_score(r, c) for r in rows) / len(rows) for c in others}
    likely = [c for c in others if scores[c] >= _LEAST]
    best = max(likely, key=lambda c: (_says_names(look, c, rows), scores[c]), default=None)
    has_counts = any(sum(look.is_amount(r, c) for r in rows) >= _LEAST * len(rows) for c in others)
    return None if has_counts else best


def _says_names(look: Look, column: int, rows: list[int]) -> float:
    """How well a column tells the codes apart: families and genera beside the names come again and again."""
    heads = {heading(look.text(row, column)) for row in range(min(rows))}
    several = len({look.text(row, column) for row in rows}) / len(rows)
    return several if heads & {"family", "genus", "group"} else several + ("taxon" in heads)
