"""Columns of a count sheet: what a cell of each may hold, and what it means."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from narrate.model.counts import Count
from narrate.model.ids import SampleId
from narrate.model.packs import Words
from narrate.model.plants import Identification
from narrate.model.sampling import Sample
from narrate.reading.abundance import by_scale
from narrate.reading.asking import offered
from narrate.reading.count_cells import EXPECTED, Refusal, is_dash, read_count
from narrate.reading.numbers_written import number_help, plain_number
from narrate.reading.sheet_problems import SheetProblems, UnknownName
from narrate.reading.source_text import shown
from narrate.reading.taxa import Identifier
from narrate.reading.values import find_word


@dataclass(frozen=True, slots=True, kw_only=True)
class Known:
    """What rows are held against."""

    words: Words
    samples: Mapping[SampleId, Sample]
    sample_ids: frozenset[str]
    """Also those whose records could not be read whole."""
    has_unread_records: bool = False
    """True where a record file could not be read, so that any sample may be described in it."""
    has_unread_regions: bool = False
    """True where the region packs are not known, so that any name may be known in them."""
    identifier: Identifier


@dataclass(slots=True, kw_only=True)
class Cells:
    """What the readers of cells need: the known things, and where problems go."""

    known: Known
    problems: SheetProblems
    has_dash: bool = False


Reader = Callable[[str, Cells, Sequence[str]], Any]
"""Text of a cell, and all cells of its row -> what it means; RefusedRow, with a problem, where it means nothing."""

_COMPLETENESS = {
    "whole": "whole",
    "w": "whole",
    "fragment": "fragment",
    "fragments": "fragment",
    "frag": "fragment",
    "f": "fragment",
}
_FRACTIONS = {
    "light": "light",
    "light fraction": "light",
    "lf": "light",
    "heavy": "heavy",
    "heavy fraction": "heavy",
    "hf": "heavy",
}


def read_sample(text: str, on: Cells, cells: Sequence[str]) -> Sample | None:
    """None for a sample whose record could not be read whole: what is wrong there is told there."""
    sample = on.known.samples.get(SampleId(text))
    if sample is None and text not in on.known.sample_ids:
        if on.known.has_unread_records:
            on.problems.unread.undescribed.add(text)
            return None
        meant = on.problems.near(text, on.known.samples, 0.75)
        on.problems.refuse(
            "sample",
            cells,
            f"sample {_quoted(text)} is described by no record{offered(meant)}",
            f"write '{meant}'" if meant else "describe the sample in records/, or mend its id here",
            "N304",
        )
    return sample


def read_taxon(text: str, on: Cells, cells: Sequence[str]) -> Identification | UnknownName:
    found = on.known.identifier.identify(text)
    return found if on.known.identifier.is_known(found) else UnknownName(found)


def read_amount(text: str, on: Cells, cells: Sequence[str]) -> Count:
    found = by_scale(text, on.known.words.abundance) or read_count(text)
    if isinstance(found, Refusal):
        on.problems.refuse("count", cells, f"count is {shown(text)}, expected {EXPECTED}", found.help)
    if is_dash(text) and not on.has_dash:
        on.has_dash = True
        on.problems.cell(
            "count",
            cells,
            f"count is '{text}', here and below read as looked for and absent, expected 0 for that",
            "write 0; leave the row out if it was not looked for",
            severity="warning",
        )
    return found  # type: ignore[return-value]


def read_mass(text: str, on: Cells, cells: Sequence[str]) -> float:
    found = plain_number(text)
    if found is None or found < 0:
        help = (
            number_help(text) or "write grams as a number with a point; what was too light to weigh belongs in the note"
        )
        on.problems.refuse("mass_g", cells, f"mass_g is {shown(text)}, expected a number of grams", help)
    return found  # type: ignore[return-value]


def read_text(text: str, on: Cells, cells: Sequence[str]) -> str:
    return text


def _word(column: str, list_name: str, lookup_of: Callable[[Words], Mapping[str, str]]) -> Reader:
    def read(text: str, on: Cells, cells: Sequence[str]) -> str | None:
        lookup = lookup_of(on.known.words)
        found = find_word(lookup, text)
        if found is None:
            meant = on.problems.near(text, lookup)
            on.problems.refuse(
                column,
                cells,
                f"{column} {_quoted(text)} is not in the list of {list_name}{offered(meant)}",
                f"write '{lookup[meant]}'" if meant else "write another word, or add it to packs/words/ of the project",
                "N402",
            )
        return found

    return read


def _one_of(column: str, words: Mapping[str, str]) -> Reader:
    def read(text: str, on: Cells, cells: Sequence[str]) -> str | None:
        found = words.get(text.lower())
        if found is None:
            known = list(dict.fromkeys(words.values()))
            meant = on.problems.near(text, known)
            on.problems.refuse(
                column,
                cells,
                f"{column} is {shown(text)}, expected {' or '.join(known)}{offered(meant)}",
                f"write '{meant}'" if meant else "",
            )
        return found

    return read


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """How a column is read, and what a blank cell means; a needed cell may not be blank."""

    read: Reader
    blank: Any = ""
    needed: str = ""
    """What is expected where a blank cell is refused."""


COLUMN_READERS: dict[str, Column] = {
    "sample": Column(read=read_sample, needed="the id of a sample"),
    "taxon": Column(read=read_taxon, needed="a scientific name"),
    "part": Column(read=_word("part", "parts", lambda words: words.part_lookup), needed="a plant part"),
    "count": Column(read=read_amount, blank=None),
    "mass_g": Column(read=read_mass, blank=None),
    "condition": Column(read=_word("condition", "conditions", lambda words: words.condition_lookup), blank="charred"),
    "completeness": Column(read=_one_of("completeness", _COMPLETENESS), blank="whole"),
    "size_class": Column(read=read_text),
    "fraction": Column(read=_one_of("fraction", _FRACTIONS), blank="light"),
    "note": Column(read=read_text),
}
"""All columns, in the order in which `count_sheets` takes them."""


def _quoted(text: str) -> str:
    return f"'{text}'" if len(text) <= 60 else f"'{text[:57]}…'"
