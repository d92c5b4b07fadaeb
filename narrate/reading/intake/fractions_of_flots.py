"""Words and codes for the light and the heavy fraction of a flotation: 'fracción pesada', 'FL' and 'FP', 'LF/SF'."""

# ruff: noqa: E501

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import replace

from narrate.model.grids import Grid
from narrate.model.layouts import Role, Table

# Common practice, no source: words for fractions in the languages whose sheets are read.
_FRACTION = (
    r"fractions?|fracci[oó]n|fracciones|fracció|fra[cç][cç]ão|fra[cç]ões|frazion[ei]|fraktion(?:en)?|fraksjon(?:en)?|fracties?|frakcj[ai]|frakce|frakcia|frakcija|"
    r"frakció|fraksiyon(?:u)?|flotationsfraktion|flotatiefractie|κλάσμα|фракция|фракція"
)
_LIGHT = (
    r"light|ligera|légère|legere|lleugera|leve|leggera|leichte?|lette?|lätta?|lätt|lichte?|lekka|lehká|ľahká|laka|lahka|könnyű|hafif|ελαφρύ|лёгкая|легкая|легка"
)
_HEAVY = (
    r"heavy|pesada|lourde|pesant|pesante|schwere?|svære?|tunge?|tunga|zware?|zwaar|ciężka|těžká|ťažká|teška|težka|nehéz|ağır|βαρύ|тяжёлая|тяжелая|важка"
)
_WORDS = tuple(
    (name, re.compile(rf"(?:{words})(?:\s+(?:{_FRACTION}|fr))?\.?|(?:{_FRACTION}|fr)\.?\s+(?:{words})", re.IGNORECASE))
    for name, words in (("light", _LIGHT), ("heavy", _HEAVY))
)
_USUAL = (
    ("lf", "hf"), ("lf", "sf"), ("lf", "tf"), ("lf", "zf"), ("lf", "rf"), ("fl", "fp"), ("fl", "fc"), ("kf", "nf"), ("hf", "af"), ("lf", "ťf"), ("lf", "těf"),
)  # fmt: skip
"""Codes that stand for the light and the heavy fraction where both are met with under a head of fractions."""
_HEAD = re.compile(rf"(?:(?:type|tipo|typ|art|rodzaj) (?:de |di |der )?)?(?:{_FRACTION})(?:\s?typ)?(?P<codes> [^\W\d_]{{2}}/[^\W\d_]{{2}})?", re.IGNORECASE)


def fraction_of(text: str) -> str:
    """
    'light' or 'heavy' for words that name the one or the other; empty for all else, codes among them.

    >>> [fraction_of(t) for t in ("fracción pesada", "leichte Fraktion", "Light fr.", "lourde", "FL", "seed")]
    ['heavy', 'light', 'light', 'heavy', '', '']
    """
    flat = " ".join(text.split()).strip(" ()[]")
    return next((name for name, words in _WORDS if words.fullmatch(flat)), "")


def names_codes_of_fractions(flat: str) -> bool:
    """
    Whether a head in lower case says by which codes the two fractions stand below it.

    >>> [names_codes_of_fractions(t) for t in ("fraktion lf/sf", "lf/sf", "fracción fl/fp", "fracción", "lf/no")]
    [True, True, True, False, False]
    """
    codes = flat.rsplit(" ", 1)[-1]
    return _is_usual(codes.split("/")) and (codes == flat or _HEAD.fullmatch(flat) is not None)


def _is_usual(codes: Iterable[str]) -> bool:
    met = set(codes)
    return any(met == set(pair) for pair in _USUAL)


def are_fractions(head: str, texts: Iterable[str], explained: Mapping[str, str]) -> bool:
    """
    Whether words name fractions, or are codes that the sheet explains, or usual ones under a head that asks for them.

    >>> are_fractions("Fracción", ["FL", "FP", "FL"], {}), are_fractions("Fracción", ["1/4", "1/2"], {})
    (True, False)
    >>> are_fractions("Fr.", ["FL", "FL"], {"FL": "light"}), are_fractions("Lugar", ["FL", "FP"], {})
    (True, False)
    """
    met = {text.strip(" ().") for text in texts if text.strip()}
    if met and all(fraction_of(text) or text in explained for text in met):
        return True
    flat = " ".join(re.sub(r"[\[\](){}.:]", " ", head).lower().split())
    return bool(_HEAD.fullmatch(flat)) and _is_usual(text.lower() for text in met)


def with_fractions_said(
    tables: Iterable[Table], grids: Mapping[str, Grid], explained: Mapping[str, str]
) -> list[Table]:
    """The tables with what codes of fractions mean beside the roles of their lines: 'fraction, FP is heavy'."""
    return [
        replace(
            table,
            rows={r: _said(role, [c.text for (row, _), c in grids[table.sheet].cells.items() if row == r], explained) for r, role in table.rows.items()},
            columns={
                c: _said(role, [cell.text for (r, col), cell in grids[table.sheet].cells.items() if col == c and r in table.rows], explained)
                for c, role in table.columns.items()
            },
        )
        if any("fraction" in role.names for role in (*table.rows.values(), *table.columns.values())) else table
        for table in tables
    ]  # fmt: skip


def _said(role: Role, texts: Iterable[str], explained: Mapping[str, str]) -> Role:
    if "fraction" not in role.names:
        return role
    met = dict.fromkeys(text.strip(" ().") for text in texts)
    codes = {text.lower(): text for text in met}
    said = {text: explained[text] for text in met if text in explained}
    for pair in _USUAL:
        if set(pair) <= codes.keys() and not said:
            said = {codes[pair[0]]: "light", codes[pair[1]]: "heavy"}
    told = tuple(f"{code} is {name}" for code, name in said.items() if (code.lower(), name) not in _PLAIN)
    return replace(role, qualifiers=(*role.qualifiers, *told))


_PLAIN = {("lf", "light"), ("hf", "heavy")}


def fractions_said(table: Table) -> dict[str, str]:
    """Code -> 'light' or 'heavy', as the roles of a layout say."""
    roles = (*table.rows.values(), *table.columns.values())
    said = [text.rpartition(" is ") for role in roles if "fraction" in role.names for text in role.qualifiers]
    return {code: name for code, _, name in said if name in ("light", "heavy")}
