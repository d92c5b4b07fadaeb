"""What all finds of one name that stand among the same surroundings have in common, worked out once for them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

from narrate.problems import Place
from narrate.reading.intake.around_finds import Around, AroundFinds
from narrate.reading.intake.cell_marks import Found
from narrate.reading.intake.header_words import quantity
from narrate.reading.intake.not_plants import animal_part, not_a_plant, says_nothing_found
from narrate.reading.intake.parts_of_finds import PIECES_ONLY, without_weight
from narrate.reading.intake.said import Line, Said
from narrate.reading.intake.sheet_finds import Find
from narrate.reading.intake.written_names import WrittenName

Named = tuple[WrittenName, bool, Said]
"""The name of a line, its cf. from a column of its own, and where it stands."""


@dataclass(slots=True, kw_only=True)
class InCommon:
    """What finds have in common beside their name, with the condition once it is known."""

    part: str
    taken: str
    """The part, where it is taken because nothing names one."""
    completeness: str
    size_class: str
    label: str
    notes: Sequence[str]
    """What is noted of all of them."""
    condition: str = ""
    """What was told of none of them, whatever its sample; empty: each is asked."""
    times: int = 0
    """How many finds there are."""


@dataclass(slots=True, kw_only=True)
class Standing:
    """One name among its surroundings."""

    name: WrittenName
    is_cf: bool
    where: Said
    around: Around
    lines: tuple[Line, Line]
    says_nothing: bool
    """'No plant remains' in place of a name."""
    is_plant: bool
    aside: str
    """What it is that is no plant."""
    what: str
    """Counted or weighed."""
    unit: str
    common: InCommon | None = None
    """Made with the first find."""


class StandingFinds(AroundFinds):
    """The finds of one table, made of what stands in their cells and of what they have in common."""

    @cached_property
    def _standings(self) -> dict[tuple[int, int], Standing]:
        return {}

    @cached_property
    def _with_finds(self) -> list[Standing]:
        return []

    @cached_property
    def _everyday(self) -> dict[tuple[str, str], set[str]]:
        return {}

    def _standing(self, row: int, column: int, named: Named, by_row: Line, by_column: Line) -> Standing:
        around = self._around(row, column, by_row, by_column)
        if self.conditions.is_paired:  # nothing holds what stands around, and another may take its place
            return self._stood(row, column, named, around, (by_row, by_column))
        key = (id(around), id(named))
        found = self._standings.get(key)
        if found is None:
            found = self._standings[key] = self._stood(row, column, named, around, (by_row, by_column))
        return found

    def _stood(self, row: int, column: int, named: Named, around: Around, lines: tuple[Line, Line]) -> Standing:
        name, is_cf, where = named
        is_plant = name.is_known and name.identification.taxon not in ("Indeterminate", "Unidentified")
        aside = not_a_plant(self.layout.names.get(where.text, where.text))
        aside = "" if aside == "bone" and self.names.part_of(around.part) == "dung" else aside  # 'Ovis/Capra | dung'
        aside = aside or ("" if is_plant else animal_part(around.part)) or around.aside
        what, unit = ("", "") if aside else self._quantity(row, column, name, *lines)
        return Standing(
            name=name, is_cf=is_cf, where=where, around=around, lines=lines, is_plant=is_plant, aside=aside, what=what,
            unit=unit, says_nothing=says_nothing_found(where.text),
        )  # fmt: skip

    def _add(self, one: Found, sample: str, standing: Standing, place: Place) -> None:
        common = standing.common
        if common is None:
            common = standing.common = self._in_common(standing)
        if common.taken:
            self.out.missing_parts[common.taken] = self.out.missing_parts.get(common.taken, 0) + 1
            self.out.missing_at = self.out.missing_at or standing.where.place
        condition = self._condition(one, sample, standing, common, place)
        if condition is None:
            return
        if not common.times:
            self._with_finds.append(standing)
        common.times += 1
        notes = [one.note, *common.notes] if one.note else common.notes
        self.out.finds.append(
            Find(
                sample=sample,
                name=standing.name,
                label=common.label,
                is_cf=standing.is_cf or one.is_doubtful or standing.around.is_doubtful,
                part=common.part,
                condition=condition,
                completeness=one.completeness or common.completeness,
                size_class=common.size_class,
                fraction=standing.around.fraction,
                found=one,
                note="; ".join(dict.fromkeys(notes)) if notes else "",
                place=place,
            )
        )

    def _count_names(self) -> None:
        """How often each name is written beside finds, and where first."""
        for standing in self._with_finds:
            times = standing.common.times if standing.common is not None else 0
            written = standing.name.identification.written
            first = self.out.names.get(written)
            place, before = first[1:] if first else (standing.where.place, 0)
            self.out.names[written] = (standing.name, place, before + times)

    def _in_common(self, standing: Standing) -> InCommon:
        name, around = standing.name, standing.around
        qualifiers, section = around.qualifiers, around.section
        part_notes: list[str] = []
        said = qualifiers.get("part", "")
        part, taken = (said, "") if said else self.parts.of_find(name, section, *standing.lines, part_notes)
        completeness = around.completeness or name.completeness or qualifiers.get("completeness", "")
        if not completeness and PIECES_ONLY.fullmatch(standing.where.text.strip()):
            completeness = "fragment"  # 'fragm.' beside 'complete' under a group of plants
        completeness = completeness or self._of_everyday_names(standing)
        size = around.size_class or name.size_class or qualifiers.get("size class", "")
        of_section = section.size_class if section is not None and not size else ""
        notes = [note for note in (name.note, qualifiers.get("note", ""), *part_notes) if note]
        notes += [f"under a head that says {of_section}"] if of_section else []
        return InCommon(
            part=part,
            notes=[*notes, *around.notes],
            taken=taken,
            completeness=completeness or ("fragment" if around.are_pieces else "whole"),
            size_class=size,
            label=self._label(standing),
        )

    def _condition(
        self, one: Found, sample: str, standing: Standing, common: InCommon, place: Place
    ) -> str | None:
        """The condition of a find; what is told of no find, and comes of no sample, is that of all others too."""
        if one.condition:
            return one.condition
        is_of_sample = bool(self.conditions.said_by_id(sample))
        if common.condition and not is_of_sample:
            return common.condition
        told = self.told.times
        around = standing.around
        found = self.conditions.of_find(
            standing.name, standing.where, around.qualifiers, around.section, standing.lines, around.remarks, sample,
            place,
        )  # fmt: skip
        if found is not None and not is_of_sample and self.told.times == told:
            common.condition = found
        return found

    def _take_everyday_names(self, lines: Mapping[int, Line]) -> None:
        """The everyday names of each name and part, where lines tell things apart by them: 'barley, hulled' and 'barley'."""
        for line in lines.values():
            if (common := _everyday_names(line, {})) and not quantity(common):
                key = (self._first("taxon", line, {}), self._first("part", line, {}))
                self._everyday.setdefault(key, set()).add(common)

    def _of_everyday_names(self, standing: Standing) -> str:
        """Whether everyday names say that pieces or whole ones were found: '稻米碎块' beside 'Oryza sativa'."""
        said = [one.text for line in standing.lines for one in line.get("common name", ())]
        return next(filter(None, (self.names.read(text).completeness for text in said)), "")

    def _label(self, standing: Standing) -> str:
        """What the sheet parts finds by, its own words for plant and part; a line of grams is of the line of counts."""
        name, of_part, text = standing.name, standing.around.part, standing.where.text
        part = "" if name.part and self.names.part_of(of_part) == name.part else of_part
        common = _everyday_names(*standing.lines)
        is_telling = len(self._everyday.get((text, of_part), ())) > 1
        return " ".join(f"{without_weight(text)[0]} {part} {common if is_telling else ''}".lower().split())


def _everyday_names(by_row: Line, by_column: Line) -> str:
    return " ".join(one.text for line in (by_row, by_column) for one in line.get("common name", ()))
