"""Short forms that a sheet itself explains: 'v = verkoold, o = onverkoold', 'K = Korn, HS = Hüllspelzenbasis'."""

# ruff: noqa: E501

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from typing import Protocol

from narrate.model.grids import Grid
from narrate.model.layouts import Table
from narrate.reading.intake.fractions_of_flots import fraction_of
from narrate.reading.intake.header_words import quantity
from narrate.reading.intake.remarks import conditions_in
from narrate.reading.intake.values_by_field import values_by_field
from narrate.reading.intake.words_in_names import FRAGMENTS, whole_of_pieces

_SIGN = r"(?:[^\W\d_]\.){1,3}[^\W\d_]|[^\W\d_]{1,5}(?:[/-][^\W\d_]{1,3})?"
_ENTRY = re.compile(
    rf"(?<![\w.])(?P<sign>{_SIGN})\.?[)\]]?\s*(?P<link>=|:|(?<=\s)[-–](?=\s))\s*(?P<meaning>[^\W\d_](?:[^=:;,|\n()]|\((?![^()]*=)[^()]*\)?){{1,60}}?)"
    rf"(?=\s*(?:[;,|)]|\.\s|\.?$|[\s.,;]+(?:and |und |et |en |y |e )?{_SIGN}\.?\s*[=:]))"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class ShortWords:
    """Short forms by what they mean."""

    conditions: Mapping[str, str] = field(default_factory=dict)
    """Short form -> the condition as the word packs name it."""
    parts: Mapping[str, str] = field(default_factory=dict)
    fractions: Mapping[str, str] = field(default_factory=dict)
    """Short form -> 'light' or 'heavy'."""
    completeness: Mapping[str, str] = field(default_factory=dict)
    """Short form -> 'whole' or 'fragment', as a sheet of values says it."""


class Meaning(Protocol):
    """What the reader of names knows of words."""

    def condition_of(self, text: str) -> str: ...

    def part_of(self, text: str) -> str: ...


def short_words(grids: Iterable[Grid], names: Meaning) -> ShortWords:
    """The short forms that the sheets of a file explain; one that is explained in two ways is left out."""
    found: dict[str, set[tuple[str, str, str]]] = {}
    all_grids = list(grids)
    of_pieces: dict[str, set[str]] = {}
    for grid in all_grids:
        of_fields = values_by_field(grid, all_grids)
        by_field = [(one.sign, one.meaning) for one in of_fields if re.fullmatch(_SIGN, one.sign)]
        for sign, meaning in (*_in_cells(grid), *_over_cells(grid), *by_field):
            if pieces := _pieces(meaning):
                of_pieces.setdefault(sign, set()).add(pieces)
            condition = _condition(meaning, names)
            part = "" if condition else _part(meaning, names)
            part = f"{part}{OF_PIECES}" if part and FRAGMENTS.search(meaning) else part
            fraction = fraction_of(meaning)
            if condition or part or fraction:
                found.setdefault(sign, set()).add((condition, part, fraction))
    once = {sign: next(iter(meanings)) for sign, meanings in found.items() if len(meanings) == 1}
    completeness = {sign: next(iter(said)) for sign, said in of_pieces.items() if len(said) == 1}
    return ShortWords(
        conditions={sign: condition for sign, (condition, _, _) in once.items() if condition},
        parts=_with_pieces({sign: part for sign, (_, part, _) in once.items() if part}, completeness),
        fractions={sign: fraction for sign, (_, _, fraction) in once.items() if fraction},
        completeness=completeness,
    )


def _with_pieces(parts: Mapping[str, str], completeness: Mapping[str, str]) -> dict[str, str]:
    """Short forms of parts, alone and with those of pieces and wholes behind them: 'K', 'K Fr'."""
    behind = {
        f"{sign}{between}{piece}": part.removesuffix(OF_PIECES) + (OF_PIECES if said == "fragment" else "")
        for sign, part in parts.items()
        for piece, said in completeness.items()
        for between in (" ", "-", "/")
    }
    return {**behind, **parts}


def said_under(
    role: str, tables: Iterable[Table], short: Mapping[str, str], grids: Mapping[str, Grid]
) -> dict[str, str]:
    """Short forms that stand in lines of a role, with what they mean."""
    found: dict[str, str] = {}
    for table in tables if short else ():
        rows = {r for r, one in table.rows.items() if role in one.names}
        columns = {c for c, one in table.columns.items() if role in one.names}
        heads = [text for one in (*table.rows.values(), *table.columns.values()) for text in one.qualifiers]
        if role == "condition":
            found |= {text: short[text] for text in heads if text in short}  # 'Un' over a column of counts
        for (r, c), cell in grids[table.sheet].cells.items():
            if not (r in rows or c in columns):
                continue
            flat = cell.text.strip(" ().?")
            behind = re.search(r"[(\[]([^()\[\]]{1,6})[)\]]$", cell.text)  # 'seed (u)': the condition, behind the part
            sign = flat if flat in short else behind[1].strip(" .?") if behind and role == "condition" else ""
            if sign in short:
                found[cell.text] = short[sign]
            elif role == "part" and (of := whole_of_pieces(flat)) in short:
                found[of] = short[of]  # 'Ns Fg'
    return dict(sorted(found.items()))


_SUBFOSSIL = {"sf": "waterlogged", "sub": "waterlogged"}
"""How lists of lakeshores write 'subfossil' in a column of states. Common practice, no source."""


def states_said(
    tables: Iterable[Table], short: Mapping[str, str], grids: Mapping[str, Grid], doubts: list[str]
) -> dict[str, str]:
    """The short forms of conditions in columns and rows of conditions, by the sheet, else as lakeshores write them."""
    found = said_under("condition", tables, {**_SUBFOSSIL, **short}, grids)
    taken = [text for text in found if text.strip(" ().?") in _SUBFOSSIL and text.strip(" ().?") not in short]
    if taken:
        named = " and ".join(f"'{text}'" for text in taken)
        doubts.append(f"DOUBTFUL: {named} in a column of states is taken for subfossil (waterlogged); see 'conditions' in the layout")
    return found


def with_pieces_said(tables: Iterable[Table], grids: Mapping[str, Grid], explained: Mapping[str, str]) -> list[Table]:
    """The tables with what codes for wholes and pieces mean beside the roles of their columns: 'completeness, B is fragment'."""
    made = []
    for table in tables:
        columns = dict(table.columns)
        for c, role in table.columns.items() if explained else ():
            if "completeness" in role.names:
                met = {cell.text for (_, column), cell in grids[table.sheet].cells.items() if column == c}
                told = tuple(f"{code} is {explained[code]}" for code in sorted(met & explained.keys()))
                columns[c] = replace(role, qualifiers=(*role.qualifiers, *told))
        made.append(replace(table, columns=columns))
    return made


def _in_cells(grid: Grid) -> Iterable[tuple[str, str]]:
    """Entries within one text; after a colon only where the text has several, as a key has."""
    for cell in grid.cells.values():
        if cell.kind != "text" or not 5 <= len(cell.text) <= 1000 or not re.search(r"[=:]|\s[-–]\s", cell.text):
            continue
        entries = list(_ENTRY.finditer(cell.text))
        for entry in entries:
            if entry["link"] == "=" or len(entries) > 1:
                yield entry["sign"], entry["meaning"].strip()


def _over_cells(grid: Grid) -> Iterable[tuple[str, str]]:
    """Rows that hold a short form and its meaning, and nothing else."""
    rows: dict[int, list[str]] = {}
    for (row, _), cell in sorted(grid.cells.items()):
        rows.setdefault(row, []).append(cell.text.strip())
    for texts in rows.values():
        texts = [text for text in texts if text not in ("=", ":", "-", "–")]
        if len(texts) == 2 and re.fullmatch(rf"{_SIGN}\.?\s*[=:]?", texts[0]):
            yield texts[0].rstrip(".=: "), texts[1].lstrip("=: ")


def _pieces(meaning: str) -> str:
    """'whole' or 'fragment' for words that say nothing else."""
    if re.fullmatch(r"frag\w*|broken|pieces?|bits?|incomplete", meaning, re.IGNORECASE):
        return "fragment"
    said = quantity(meaning) if len(meaning) > 2 else ""
    return said.removeprefix("count, ") if said in ("count, whole", "count, fragment") else ""


def _part(meaning: str, names: Meaning) -> str:
    """The part that an explanation names; of 'Same/Frucht' both, which is the grain of a cereal, else the first."""
    if seed_or_fruit(meaning, names):
        return SEED_OR_FRUIT
    pieces = (meaning, *re.split(r"[/:(),;]", meaning))
    return next((part for part in (names.part_of(piece.strip()) for piece in pieces if piece.strip()) if part), "")


OF_PIECES = " fragment"
"""Stands behind a part where a sign is of its pieces alone: 'GF = grain fragment'."""
SEED_OR_FRUIT = "seed/fruit"
"""What a key says where one sign stands for whichever of the two a plant sheds: the grain of a cereal is a fruit."""


def seed_or_fruit(text: str, names: Meaning) -> bool:
    """Whether words for a part name a seed or a fruit, whichever it is: 'Same/Frucht', 'seeds or fruits'."""
    pieces = [piece for piece in re.split(r"\s*[/&+]\s*|\s+(?:or|oder|ou|of|o|and|und|et|e|y|en|i|lub)\s+", text.strip()) if piece]
    return len(pieces) == 2 and {names.part_of(piece) for piece in pieces} == {"seed", "fruit"}


def _condition(meaning: str, names: Meaning) -> str:
    """The condition that an explanation names; 'onverkoold (waterverzadigd)' is the more telling of the two."""
    whole = names.condition_of(meaning)
    pieces = [piece for piece in re.split(r"[()/,]|\s(?:or|oder|ou|of|o|en|et|und|and)\s", meaning) if piece.strip()]
    said = [names.condition_of(piece.strip()) for piece in pieces]
    found = dict.fromkeys([*(one for one in said if one), *conditions_in(meaning)])
    if whole and len(found) < 2:
        return whole
    if len(found) == 2 and not re.search(r"sub-?fossil", meaning, re.IGNORECASE):
        found.pop("uncharred", None)
    elif "uncharred" in found:
        return "uncharred"  # 'unverkohlt (subfossil)' does not say what has kept it instead
    return next(iter(found)) if len(found) == 1 else ""
