"""What the sheets of a file say of their signs: keys in one cell, over cells or rows, on a sheet of notes; footnotes."""

# ruff: noqa: E501

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from functools import lru_cache
from typing import NamedTuple

from narrate.model.grids import Grid
from narrate.model.layouts import Marks
from narrate.problems import Place
from narrate.reading.intake.cell_marks import looks_like_amount
from narrate.reading.intake.footnotes_in_words import footnotes_in_words, signs_beside_amounts
from narrate.reading.intake.keys import Entry, find_marks, key_entries, meaning_of
from narrate.reading.intake.remarks import conditions_in, remark
from narrate.reading.intake.values_by_field import classes_by_field, heads_of, values_by_field


@dataclass(frozen=True, slots=True, kw_only=True)
class Disagreement:
    """What a file says in two ways: one sign with two meanings, neither of which is used, or a sum that is none."""

    place: Place
    message: str
    help: str
    code: str = "N313"


@dataclass(frozen=True, slots=True, kw_only=True)
class Keys:
    """The marks of each sheet, by its name, and what disagrees."""

    marks: Mapping[str, Marks] = field(default_factory=dict)
    rows: Mapping[str, frozenset[int]] = field(default_factory=dict)
    """Rows of each sheet that hold a key spread over cells and nothing else, so that no name and no count is in them."""
    disagreements: tuple[Disagreement, ...] = ()


def without_keys(grid: Grid, keys: Keys) -> Grid:
    """The grid without the rows that hold nothing but a key."""
    rows = keys.rows.get(grid.sheet, frozenset())
    if not rows or _is_notes(_lines_of(grid)):
        return grid
    return replace(grid, cells={at: cell for at, cell in grid.cells.items() if at[0] not in rows})


_SIGN = re.compile(r"\++|\*{1,5}|#{1,5}|[xX]{1,5}|•{1,5}|●{1,5}|[-–—.]|[PRFCADO]|V[ARF]")
_FOOTNOTE_SIGN = re.compile(r"\*{1,5}|[†‡§¹²³°ª]+|\([a-z]{1,4}\)|\[[a-z]{1,4}\]|(?!x|p\b)[a-z]{1,3}")
_HEAD = re.compile(
    r"(?:key|legend|abundance|scale|symbols?|signs?|explanation|abbreviations?|footnotes?|codes?|semi-?quantitative|quantification)"
    r"(?:[ -](?:to|of|for|used|key|scale|classes|class|signs?|symbols?|codes?|in|the|counts?|abundance|table|tables|quantities|estimates?))*\s*[:.]?",
    re.IGNORECASE,
)
"""A cell that announces a key."""
_CLASS_WORD = re.compile(
    r"(?:very |muy |sehr |très |molto |zeer |muito )?(?:rare?|scarce|few|several|some|occasional|common|frequent|many|abundant|dominant|regular|"
    r"escas[oa]|abundante|frecuente|rar[oa]|poc[oa]s?|much[oa]s?|selten|häufig|wenig|viele?|einzelne?|massenhaft|peu|rares?|fréquent|abondant|nombreux|"
    r"scars[oa]|frequente|abbondante|weinig|veel|enkele?|few|nieliczne|liczne|enstaka|rikligt)", re.IGNORECASE)
"""Words that stand for classes of abundance where a list says of how many."""
_WORD = re.compile(r"sign|symbol|mark|code|key|class|meaning|means|abundance|count|number|range|quantity|items|no\.?|value|explanation", re.IGNORECASE)
_FOOTNOTES = re.compile(
    r"(?:^|(?<=[;,.:])\s*|(?<=\s))(?P<sign>\*{1,5}|[†‡§¹²³]+|\([a-z]{1,4}\)|\[[a-z]{1,4}\]|\b(?:[a-z]\.){2,4}|\b[a-z]{1,3}|\b[A-Z]{1,3}(?=\s*[=:]))\s*(?P<link>=|:|\bis\b|\bmeans\b|\bindicates\b|\bdenotes\b|\s[-–]\s|\s)\s*"
    r"(?P<meaning>[^\W\d_](?:[^\W\d_]|[ /().-])*)"
)

_UNLESS = re.compile(
    r"\b(?:charred|carboni[sz]ed|burn(?:t|ed))\b,?\s+(?:unless|except (?:where|when|those|if))\s+(?:(?:marked|labell?ed|noted|indicated|followed|given|shown|with|by|as|an?|otherwise)\s+)*"
    r"[\"'“‘(\[]?(?P<sign>(?!(?:as|by|so|in|the|it|not|a)\b)[a-z]{1,3}|[*†‡§]{1,3})[\"'”’)\]]?(?=[\s.,;)]|$)",
    re.IGNORECASE,
)
"""'Charred unless marked u': what carries the sign is not charred."""


def keys_of_file(grids: Iterable[Grid]) -> Keys:
    """What is said of the signs of every sheet. A sheet of notes speaks for all sheets, one with counts for itself."""
    all_grids = list(grids)
    lines = {id(grid): _lines_of(grid) for grid in all_grids}
    of_words = {id(grid): _is_notes(lines[id(grid)]) for grid in all_grids}
    said = {id(grid): _said(grid, lines[id(grid)], is_alone=of_words[id(grid)]) for grid in all_grids}
    of_notes = [(grid, entry) for grid in all_grids if of_words[id(grid)] and len(all_grids) > 1 for entry in said[id(grid)][0]]
    notes_of_notes = [(grid, entry) for grid in all_grids if of_words[id(grid)] and len(all_grids) > 1 for entry in said[id(grid)][1]]
    marked = {id(grid): find_marks(grid) for grid in all_grids}
    notes = [marked[id(grid)] for grid in all_grids if of_words[id(grid)]]
    signs = signs_beside_amounts(all_grids)
    notes_alone = [grid for grid in all_grids if of_words[id(grid)] and len(all_grids) > 1]
    found: dict[str, Marks] = {}
    disagreements: dict[str, Disagreement] = {}
    values = [(grid, listed) for grid in all_grids if (listed := values_by_field(grid, all_grids))]
    for grid in all_grids:
        own = [(grid, entry) for entry in said[id(grid)][0]]
        own_footnotes = [(grid, entry) for entry in said[id(grid)][1]]
        others = [] if of_words[id(grid)] else of_notes
        others = [*others, *((of, Entry(one.sign, meaning_of(one.meaning), one.at))
                             for of, listed in values if of is not grid for one in classes_by_field(listed, heads_of([grid])))]  # fmt: skip
        more_notes = [] if of_words[id(grid)] else notes_of_notes
        key = _agreed([*own, *others], disagreements)
        footnotes = _agreed([*own_footnotes, *more_notes], disagreements)
        told = [(one, entry) for one in (grid, *notes_alone) for entry in footnotes_in_words(one, signs)]
        footnotes = {**_agreed([pair for pair in told if pair[1].sign not in footnotes], disagreements), **footnotes}
        marks = marked[id(grid)]
        for note in notes if not of_words[id(grid)] else ():
            # What is said of brackets and slashes on a sheet of notes holds for sheets that say nothing of them.
            marks = replace(
                marks, slash=marks.slash or note.slash,
                brackets=note.brackets if marks.brackets == "note" else marks.brackets,
            )  # fmt: skip
        found[grid.sheet] = replace(
            marks, key=key, footnotes={sign: text for sign, text in footnotes.items() if sign not in key}
        )
    rows = {grid.sheet: frozenset(said[id(grid)][2]) for grid in all_grids}
    return Keys(marks=found, rows=rows, disagreements=tuple(disagreements.values()))


def _agreed(entries: list[tuple[Grid, Entry]], disagreements: dict[str, Disagreement]) -> dict[str, str]:
    """Signs whose meaning is the same wherever it is said."""
    first: dict[str, tuple[Grid, Entry]] = {}
    dropped = set()
    for grid, entry in entries:
        before = first.setdefault(entry.sign, (grid, entry))
        if not _is_the_same(before[1].meaning, entry.meaning):
            dropped.add(entry.sign)
            place, other = before[0].place(*before[1].at), grid.place(*entry.at)
            disagreements.setdefault(
                f"{entry.sign} {place} {other}",
                Disagreement(
                    place=other,
                    message=f"'{entry.sign}' means '{entry.meaning}' here and '{before[1].meaning}' in "
                    f"{_in(place, other)}; neither is used, expected one key",
                    help=f'say which holds under cells in the layout: key: {{"{entry.sign}": {entry.meaning}}}',
                ),
            )
    return {sign: entry.meaning for sign, (_, entry) in first.items() if sign not in dropped}


def _is_the_same(one: str, other: str) -> bool:
    """
    Whether two meanings of a sign are one: the same words, or the same condition, pieces or doubt.

    >>> _is_the_same("fragment", "fragments"), _is_the_same("un-charred", "not charred"), _is_the_same("1-5", "6-20")
    (True, True, False)
    """
    return one.lower() == other.lower() or (remark(one) == remark(other) and not remark(one).says_nothing)


def _in(place: Place, other: Place) -> str:
    return f"sheet {place.sheet}, cell {place.cell}" if place.sheet != other.sheet else f"{place.cell}"


class _Line(NamedTuple):
    """A row of a sheet."""

    row: int
    cells: list[tuple[int, str]]
    """Column and text of each cell."""
    pairs: list[tuple[int, str, str, bool]]
    """What of it reads as a sign and its meaning; see `_pairs`."""


def _lines_of(grid: Grid) -> list[_Line]:
    rows: dict[int, list[tuple[int, str]]] = {}
    for row, column in sorted(grid.cells):
        rows.setdefault(row, []).append((column, grid.cells[row, column].text))
    return [_Line(row, cells, _pairs(cells)) for row, cells in rows.items()]


def _is_notes(lines: list[_Line]) -> bool:
    """A sheet of words: hardly an amount stands in it but for those that a key explains."""
    amounts = sum(looks_like_amount(text) for line in lines for _, text in line.cells)
    return amounts - sum(2 * len(line.pairs) for line in lines) <= 2


def _said(grid: Grid, lines: list[_Line], *, is_alone: bool) -> tuple[list[Entry], list[Entry], set[int]]:
    """Entries of keys and of footnotes that a sheet holds, and the rows that hold nothing else."""
    taken: set[int] = set()
    footnotes = _footnotes(grid)
    # '* some uncharred' is a footnote, although 'some' alone would be a key.
    of_footnotes = {(entry.sign, entry.at) for entry in footnotes}
    keys = [entry for entry in key_entries(grid) if (entry.sign, entry.at) not in of_footnotes]
    under: int | None = None
    words_above: list[int] = []
    for row, cells, pairs in lines:
        if under is not None and cells[0][0] < under:
            pairs = _pairs([(column, text) for column, text in cells if column >= under])
        heads = [column for column, text in cells if _is_head(text)]
        others = [text for _, text in cells if not _is_head(text) and not _WORD.fullmatch(text.strip())]
        is_of_words = not others
        # A head of a list, such as 'abundance' beside 'sample' and 'taxon', announces no key.
        if heads and len([t for t in others if t.strip() not in ("=", ":", "-", "–")]) <= 2 * len(pairs):
            under = min(heads)
        elif not pairs and not is_of_words:
            under, words_above = None, []
        if under is not None and not pairs and is_of_words:
            words_above.append(row)
        used = 0
        plain = len(pairs) * 2 == len(cells)
        is_linked = [link for *_, link in pairs]
        for column, sign, text, link in pairs:
            if not (under is not None or link or (is_alone and plain) or (all(is_linked) and plain)):
                continue
            is_worded = is_alone and plain and bool(_CLASS_WORD.fullmatch(sign)) and bool(re.search(r"\d", text))
            meaning = meaning_of(text) if _SIGN.fullmatch(sign) or is_worded else ""
            if meaning and not (meaning.isdecimal() and under is None and not link):
                keys.append(Entry(sign, meaning, (row, column)))
                used += 1
            elif _FOOTNOTE_SIGN.fullmatch(sign) and not remark(text).says_nothing:
                footnotes.append(Entry(sign.strip("()[]"), text.strip(), (row, column)))
                used += 1
        beside = [text for _, text in cells if not _is_head(text) and text.strip() not in "=:-–"] if used else []
        if used and len(beside) == 2 * used:
            taken |= {row, *words_above}
            words_above = []
    return keys, footnotes, taken


@lru_cache(maxsize=4096)
def _is_head(text: str) -> bool:
    """Whether a cell announces a key."""
    return bool(_HEAD.fullmatch(text.strip()))


@lru_cache(maxsize=4096)
def _may_be_sign(text: str) -> bool:
    return bool(_SIGN.fullmatch(text) or _FOOTNOTE_SIGN.fullmatch(text))


def _pairs(cells: list[tuple[int, str]]) -> list[tuple[int, str, str, bool]]:
    """Neighbours that read as a sign and its meaning: (column, sign, meaning, whether '=' stands between them)."""
    found = []
    at = 0
    while at + 1 < len(cells):
        (column, sign), (_, text) = cells[at], cells[at + 1]
        bare, words = sign.strip().rstrip("=: ").strip(), text.strip().lstrip("=: ").strip()
        link = bare != sign.strip() or words != text.strip()
        if bare == "" and at + 2 < len(cells):
            bare, words, link = "", "", False
        if words in ("",) and at + 2 < len(cells) and text.strip() in ("=", ":", "-", "–"):
            words, link, at = cells[at + 2][1].strip(), True, at + 1
        is_sign = _may_be_sign(bare)
        is_sign = is_sign or (len(bare) > 2 and bare[0].isalpha() and bool(_CLASS_WORD.fullmatch(bare)) and bool(re.match(r"[<>≤≥]?\s*\d+\s*(?:[-–+]|to|a|à|bis|tot|o|or|und|ou|of)", words)))
        if is_sign and words and (meaning_of(words) or not remark(words).says_nothing):
            found.append((column, bare, words, link))
            at += 2
        else:
            at += 1
    return found


def _footnotes(grid: Grid) -> list[Entry]:
    """
    Signs that a text explains by a condition, by pieces or by a doubt: '* = uncharred', '(uc) uncharred'.

    A footnote that says something else explains nothing that a find could hold; the sign is told where it stands.
    """
    found = []
    for at, cell in grid.cells.items():
        if cell.kind != "text" or not 5 <= len(cell.text) <= 400:
            continue
        for match in _FOOTNOTES.finditer(cell.text):
            sign, link = match["sign"], match["link"].strip()
            is_word = sign.replace(".", "").isalpha()
            if (is_word and link not in ("=", ":", "means", "indicates", "denotes")) or (not link and match.start("sign") > 0 and is_word):
                continue
            said = match["meaning"]
            if cell.text[match.end() :].lstrip()[:1] in ("=", ":") and " " in said.strip():
                said = said.strip().rpartition(" ")[0]  # 'ch=charred un=uncharred'
            meaning = re.split(r"[.;]|,\s|\s(?=[(\[]?\w{1,4}[)\]]?\s*[=:])", said)[0].strip()
            if sign.isupper() and not conditions_in(meaning):
                continue  # capitals are most often codes; 'UN = uncharred' says something of a find
            if not remark(meaning).says_nothing and sign not in ("cf", "in", "of", "and", "the"):
                found.append(Entry(sign.strip("()[]"), meaning, at))
        found += [Entry(match["sign"], "uncharred", at) for match in _UNLESS.finditer(cell.text)]
    return found
