"""Rows of count sheets and records as evidence names them, each with the place on the site where it stands."""

from __future__ import annotations

import hashlib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from narrate.model.counts import CountRow
from narrate.model.project import Project
from narrate.problems import Place
from narrate.web.links import Links
from narrate.web.writing import Writing

QUOTED_AT_MOST = 4
"""Up to so many rows are quoted word for word; of more their numbers are named, by sample."""
NUMBERED_AT_MOST = 60
"""Up to so many samples the rows are named by their numbers; of more the samples alone are, in runs."""
LISTED_AT_MOST = 300
"""Samples of which the rows are named; of more it is said how many there are, and the counts are in the data."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RowView:
    """One row of a sheet on the page where it is shown whole, or one record."""

    label: str
    """Such as 'S014, row 3' or 'Record of context C12'."""
    target: str
    name: str
    """The name as written; empty for records."""
    text: str
    """The rest of the row in short, or for the team the file and line of a record."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RowGroup:
    """The rows of one sample."""

    label: str
    target: str
    """Where the rows of the group stand together."""
    rows: str
    """Their numbers in the sample, such as '12–15, 18'; empty where the label stands for a run of samples."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RowSet:
    """Rows that something rests on, under a name made from the rows themselves: the same rows, the same name."""

    id: str
    says: str
    """Such as '7 rows of 2 samples'."""
    quoted: tuple[RowView, ...]
    """All of them, where they are few; else empty."""
    groups: tuple[RowGroup, ...]
    """By sample; empty where they are quoted, or where there are more samples than can be listed."""


@dataclass(frozen=True, slots=True)
class Rows:
    """Finds the row behind a place."""

    counts: Mapping[str, CountRow]
    numbers: Mapping[str, int]
    """Place of a row -> its number within its sample. Numbers, unlike lines of a file, show no gap of
    what is withheld."""
    records: Mapping[str, tuple[str, str]]
    """Place -> what it is the record of: ('context', 'C12')."""
    links: Links
    by_sample: Mapping[str, tuple[CountRow, ...]]
    is_public: bool
    order: Mapping[Place, int]
    """All places in the order in which they are listed."""
    writing: Writing
    place_of_sample: Mapping[str, int]
    """Which of the samples with rows one is, counted from 0."""
    _made: dict[tuple[int, ...], RowSet] = field(default_factory=dict)
    """Sets of rows that were made already: many arguments look at the same rows."""

    def behind(self, places: Iterable[Place]) -> RowSet | None:
        """The rows and records at the places; None where there is none."""
        wanted = set(places)
        if not wanted:
            return None
        if not wanted <= self.order.keys():
            return self._set(sorted(wanted))
        key = tuple(sorted(self.order[place] for place in wanted))
        if key not in self._made:
            self._made[key] = self._set(sorted(wanted, key=self.order.__getitem__))
        return self._made[key]

    def _set(self, listed: list[Place]) -> RowSet:
        are_few = len(listed) <= QUOTED_AT_MOST
        by_sample: dict[str, list[int]] = {}
        for place in listed:
            row = self.counts.get(place.row)
            if row is not None:
                by_sample.setdefault(row.sample, []).append(self.numbers[place.row])
        can_be_listed = not are_few and len(by_sample) <= LISTED_AT_MOST
        return RowSet(
            id=_name(listed),
            says=self._says(listed, by_sample),
            quoted=tuple(self._quoted(place) for place in listed) if are_few else (),
            groups=self._groups(by_sample) if can_be_listed else (),
        )

    def anchor(self, place: Place) -> str:
        """The fragment that names a row on the page of its sample."""
        return f"row-{self.numbers[place.row]}"

    def _says(self, places: list[Place], by_sample: Mapping[str, list[int]]) -> str:
        rows = sum(len(numbers) for numbers in by_sample.values())
        records = len(places) - rows
        said = []
        if rows:
            said.append(f"{_several(rows, 'row', self.writing)} of {_several(len(by_sample), 'sample', self.writing)}")
        if records:
            said.append(_several(records, "record", self.writing))
        return " and ".join(said)

    def _groups(self, by_sample: Mapping[str, list[int]]) -> tuple[RowGroup, ...]:
        if len(by_sample) <= NUMBERED_AT_MOST:
            return tuple(self._group(id, numbers) for id, numbers in by_sample.items())
        runs: list[list[str]] = []
        for number, id in enumerate(self.by_sample):
            if id in by_sample:
                if runs and self.place_of_sample[runs[-1][-1]] == number - 1:
                    runs[-1].append(id)
                else:
                    runs.append([id])
        return tuple(RowGroup(label=" to ".join(dict.fromkeys((run[0], run[-1]))), target="", rows="") for run in runs)

    def _group(self, sample: str, numbers: list[int]) -> RowGroup:
        target = self.links.to("sample", sample, f"row-{min(numbers)}")
        return RowGroup(label=sample, target=target, rows=line_ranges(str(number) for number in sorted(numbers)))

    def _quoted(self, place: Place) -> RowView:
        row = self.counts.get(place.row)
        if row is not None:
            label = f"{row.sample}, row {self.numbers[place.row]}"
            target = self.links.to("sample", row.sample, self.anchor(place))
            return RowView(label=label, target=target, name=row.identification.written, text=row_text(row))
        where = "" if self.is_public else place.row
        what, id = self.records.get(place.row, ("", ""))
        if what == "site":
            return RowView(label="Project file", target=self.links.to("site"), name="", text=where)
        label = f"Record of {what} {id}" if id else "Record"
        return RowView(label=label, target=self.links.to(what, id) if id else "", name="", text=where)


def rows_of(project: Project, links: Links, writing: Writing, *, is_public: bool) -> Rows:
    """All rows and records of a project by their places."""
    records: dict[str, tuple[str, str]] = {project.place.row: ("site", "")}
    records.update({phase.place.row: ("phase", phase.id) for phase in project.phases})
    records.update({context.place.row: ("context", context.id) for context in project.contexts})
    records.update({sample.place.row: ("sample", sample.id) for sample in project.samples})
    counts = {row.place.row: row for row in project.counts}
    by_sample: dict[str, list[CountRow]] = {}
    numbers: dict[str, int] = {}
    last: dict[str, int] = {}
    for row in sorted(project.counts, key=lambda row: row.place):
        by_sample.setdefault(row.sample, []).append(row)
        if row.place.row not in numbers:
            numbers[row.place.row] = last[row.sample] = last.get(row.sample, 0) + 1
    rows = {id: tuple(rows) for id, rows in by_sample.items()}
    known = sorted(
        {project.place}.union(
            (phase.place for phase in project.phases),
            (context.place for context in project.contexts),
            (sample.place for sample in project.samples),
            (row.place for row in project.counts),
        )
    )
    order = {place: i for i, place in enumerate(known)}
    samples = {id: i for i, id in enumerate(rows)}
    return Rows(counts, numbers, records, links, rows, is_public, order, writing, samples)


def row_text(row: CountRow) -> str:
    """What a row says of its plant: part, count as written, and what is out of the ordinary."""
    parts = [row.part, row.count.written or "not counted"]
    if row.mass_g is not None:
        parts.append(f"{row.mass_g:g} g")
    parts += [word for word, usual in ((row.condition, "charred"), (row.completeness, "whole")) if word != usual]
    if row.size_class:
        parts.append(row.size_class)
    return ", ".join(parts)


def line_ranges(lines: Iterable[str]) -> str:
    """
    Numbers in short.

    >>> line_ranges(["12", "13", "14", "18"]), line_ranges(["3", "4"]), line_ranges(["H4", ""])
    ('12–14, 18', '3, 4', 'H4')
    """
    runs: list[list[str]] = []
    for line in filter(None, lines):
        if runs and line.isdigit() and runs[-1][-1].isdigit() and int(line) == int(runs[-1][-1]) + 1:
            runs[-1].append(line)
        else:
            runs.append([line])
    return ", ".join(f"{run[0]}–{run[-1]}" if len(run) > 2 else ", ".join(run) for run in runs)


def _several(number: int, word: str, writing: Writing) -> str:
    return f"{writing.whole(number)} {word}{'' if number == 1 else 's'}"


def _name(places: list[Place]) -> str:
    """A short name that depends on the rows alone and tells nothing of where they were written."""
    written = "\n".join(place.row for place in places)
    return f"rows-{hashlib.sha256(written.encode('utf-8', 'surrogatepass')).hexdigest()[:8]}"
