"""What rows and columns say of a find beside its name: whole or in pieces, its sieve class, its fraction."""

from __future__ import annotations

import re
from dataclasses import replace
from functools import cached_property

from narrate.reading.intake.amounts_of_finds import Amounts
from narrate.reading.intake.fractions_of_flots import fraction_of, fractions_said
from narrate.reading.intake.header_words import quantity
from narrate.reading.intake.heads_by_content import SIZES
from narrate.reading.intake.parts_of_finds import PIECES_ONLY, without_weight
from narrate.reading.intake.plant_words_abroad import WIDE_PARTS
from narrate.reading.intake.remarks import conditions_in
from narrate.reading.intake.said import Line
from narrate.reading.intake.shares_in_heads import SORTED, size_and_share
from narrate.reading.intake.sheet_finds import Find
from narrate.reading.intake.tallies import TALLY
from narrate.reading.intake.volumes_of_finds import unit_of_volume
from narrate.reading.intake.words_in_names import FRAGMENTS, whole_of_pieces

_OF_PIECES = re.compile(r"fr|f$|broken|bits?")
_OF_WHOLES = re.compile(r"w|complete|intact|entire")
_HEAVY = re.compile(r"h|resid")
_LIGHT = re.compile(r"l|flot|float|fine|coarse|$")


class Pieces(Amounts):
    """The lines of one table with what they say of the pieces of a find."""

    @cached_property
    def _fractions(self) -> dict[str, str]:
        return fractions_said(self.table)

    @cached_property
    def _pieces_said(self) -> dict[str, str]:
        """Code -> 'whole' or 'fragment', as the roles of the layout say."""
        roles = (*self.table.rows.values(), *self.table.columns.values())
        said = [text.rpartition(" is ") for role in roles if "completeness" in role.names for text in role.qualifiers]
        return {code: name for code, _, name in said if name in ("whole", "fragment")}

    @cached_property
    def _completeness_known(self) -> dict[tuple[str, str], str]:
        """What was worked out of the words for pieces and for parts, each pair of them once."""
        return {}

    def _first(self, role: str, by_row: Line, by_column: Line) -> str:
        said = by_row.get(role) or by_column.get(role)
        return said[0].text if said else ""

    def _qualifiers(self, row: int, column: int, by_row: Line, by_column: Line) -> dict[str, str]:
        found: dict[str, str] = {}
        for role in (self.table.columns.get(column), self.table.rows.get(row)):
            for text in role.qualifiers if role is not None and role.name in ("counts", "count") else ():
                if text != TALLY and not text.startswith(SORTED) and not unit_of_volume((text,)):
                    self._qualify(text, found)
        for line in (by_column, by_row):
            for said in line.get("quantity", ()):
                what = quantity(said.text)
                if what.startswith("count, ") and what != "count, tally":
                    found["completeness"] = what.removeprefix("count, ")
        return found

    def _qualify(self, text: str, found: dict[str, str]) -> None:
        """Adds what a word beside a role of counts says: pieces, a condition, a part; else it is a sieve class."""
        lower = text.lower().rstrip("s.")
        if lower.startswith("frag") or lower in ("fr", "f"):
            found["completeness"] = "fragment"
        elif lower in ("whole", "w", "complete"):
            found["completeness"] = "whole"
        elif self.names.condition_of(text) or conditions_in(text) or text.lower() in self.conditions.given:
            found["condition"] = text
        elif lower in WIDE_PARTS:
            found["part"], found["note"] = "indeterminate", f"part written {text}"
        elif self.names.part_of(text.replace("_", " ")):
            found["part"] = self.names.part_of(text.replace("_", " "))
            if re.search(r"(?:\b|_)frags?", text, re.IGNORECASE):
                found["completeness"] = "fragment"
        else:
            found["size class"] = text

    def _completeness(self, by_row: Line, by_column: Line) -> str:
        part = self._first("part", by_row, by_column) or self._first("common name", by_row, by_column)
        key = (self._first("completeness", by_row, by_column), part)
        found = self._completeness_known.get(key)
        if found is None:
            found = self._completeness_known[key] = self._completeness_said(*key)
        return found

    def _completeness_said(self, word: str, part: str) -> str:
        if word in self._pieces_said:
            return self._pieces_said[word]
        text = word.lower()
        part = self.table.parts.get(part, part)  # 'Fr = Frucht'
        part = self.names.condition_behind(without_weight(part.strip())[0])[0]
        if not text and (PIECES_ONLY.fullmatch(part) or FRAGMENTS.search(f" {part}") or whole_of_pieces(part)):
            return "fragment"
        if _OF_PIECES.match(text):
            return "fragment"
        return "whole" if _OF_WHOLES.match(text) else ""

    def _size(self, by_row: Line, by_column: Line) -> str:
        """The sieve class that a line says, or that stands where it says a part."""
        in_part = self._first("part", by_row, by_column).strip()
        size = size_and_share(self._first("size class", by_row, by_column))[0]
        return size or (in_part if SIZES.fullmatch(in_part) else "")

    def _fraction(self, by_row: Line, by_column: Line, notes: list[str]) -> str:
        text = self._first("fraction", by_row, by_column)
        known = self._fractions.get(text.strip(" ().")) or fraction_of(text)
        if known:
            return known
        lower = text.lower()
        if _HEAVY.match(lower):
            return "heavy"
        if text and not _LIGHT.match(lower):
            notes.append(f"fraction {text}")
        return "light"


def weights_of_pieces(finds: list[Find]) -> list[Find]:
    """The finds of a list; a weight beside fragments alone is of them: '0, 4, 0.1' under whole, fragments and grams."""
    lines: dict[str, list[Find]] = {}
    for find in finds:
        lines.setdefault(re.sub(r"\D", "", find.place.cell or ""), []).append(find)
    alone = {
        line for line, own in lines.items()
        if line and {f.completeness for f in own if _is_there(f)} == {"fragment"}
    }  # fmt: skip
    return [
        replace(find, completeness="fragment")
        if find.found.count is None and re.sub(r"\D", "", find.place.cell or "") in alone else find
        for find in finds
    ]  # fmt: skip


def _is_there(find: Find) -> bool:
    count = find.found.count
    return count is not None and count.amount in ("counted", "noted as present")
