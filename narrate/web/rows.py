"""Rows of count sheets and records as evidence names them, each with the place on the site where it stands."""

from __future__ import annotations

import hashlib
from array import array
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

from narrate.model.claims import Evidence
from narrate.model.counts import CountRow
from narrate.model.project import Project
from narrate.problems import Place
from narrate.web.links import Links
from narrate.web.rows_in_words import line_ranges, row_text
from narrate.web.writing import Writing

QUOTED_AT_MOST = 4
"""Up to so many rows are quoted word for word; of more their numbers are named, by sample."""
NUMBERED_AT_MOST = 60
"""Up to so many samples the rows are named by their numbers; of more the samples alone are, in runs."""
LISTED_AT_MOST = 300
"""Samples of which the rows are named; of more it is said how many there are, and the counts are in the data."""

_SETS_KEPT, _ROWS_KEPT = 4_000, 1_000_000
"""Sets of rows kept from page to page, and rows in all of them: what more than one page shows, and some megabytes."""
_NUMBERS = "I"
_NUMBER_BYTES = array(_NUMBERS).itemsize


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


class RowSet:
    """Rows that something rests on, under a name made from the rows themselves: the same rows, the same name."""

    def __init__(self, rows: Rows, key: bytes) -> None:
        """key: where its rows stand in the order of all places, as `array` keeps whole numbers."""
        self._rows = rows
        self._key = key

    @property
    def listed(self) -> Sequence[_Known]:
        """The rows and records in their order. A set may hold half the rows of the dig, so only numbers are kept."""
        every = self._rows.every
        return [every[at] for at in array(_NUMBERS, self._key)]

    def __len__(self) -> int:
        return len(self._key) // _NUMBER_BYTES

    def __eq__(self, other: object) -> bool:
        """Whether it is the same rows, however often the set was made: what is kept from page to page is forgotten."""
        return self is other or (isinstance(other, RowSet) and self._key == other._key)

    def __hash__(self) -> int:
        return hash(self._key)

    @cached_property
    def id(self) -> str:
        """A short name that depends on the rows alone and tells nothing of where they were written."""
        written = "\n".join([one.written for one in self.listed])
        return f"rows-{hashlib.sha256(written.encode('utf-8', 'surrogatepass')).hexdigest()[:8]}"

    @cached_property
    def says(self) -> str:
        """Such as '7 rows of 2 samples'."""
        whole, by_sample = self._rows.writing, self._by_sample()
        rows = sum(len(numbers) for numbers in by_sample.values())
        records = len(self) - rows
        said = []
        if rows:
            said.append(f"{_several(rows, 'row', whole)} of {_several(len(by_sample), 'sample', whole)}")
        if records:
            said.append(_several(records, "record", whole))
        return " and ".join(said)

    @property
    def are_few(self) -> bool:
        return len(self) <= QUOTED_AT_MOST

    @cached_property
    def quoted(self) -> tuple[RowView, ...]:
        """All of them, where they are few; else empty."""
        return tuple(self._rows.quoted(one) for one in self.listed) if self.are_few else ()

    @cached_property
    def groups(self) -> tuple[RowGroup, ...]:
        """By sample; empty where they are quoted, or where there are more samples than can be listed."""
        by_sample = {} if self.are_few else self._by_sample()
        if len(by_sample) > LISTED_AT_MOST:
            return ()
        if len(by_sample) > NUMBERED_AT_MOST:
            return self._rows.runs(by_sample)
        return tuple(self._rows.group(id, tuple(numbers)) for id, numbers in by_sample.items())

    def _by_sample(self) -> Mapping[str, list[int]]:
        found: dict[str, list[int]] = {}
        for one in self.listed:
            if one.row is not None:
                found.setdefault(one.row.sample, []).append(one.number)
        return found


@dataclass(frozen=True, slots=True, eq=False)
class _Known:
    """One place that evidence may name."""

    at: int
    """Where it stands in the order in which places are listed."""
    written: str
    """The place without its column."""
    row: CountRow | None = None
    number: int = 0
    """Of the row within its sample. Numbers, unlike lines of a file, show no gap of what is withheld."""


class Rows:
    """Finds the row behind a place."""

    def __init__(self, project: Project, links: Links, writing: Writing, *, is_public: bool) -> None:
        self.links = links
        self.writing = writing
        self.is_public = is_public
        self.by_sample: dict[str, list[CountRow]] = {}
        self.numbers: dict[str, int] = {}
        """Place of a row -> its number within its sample."""
        self.records: dict[str, tuple[str, str]] = _records(project)
        """Place -> what it is the record of: ('context', 'C12')."""
        self._known = self._places(project)
        self.every = tuple(self._known.values())
        """All places in their order."""
        self.place_of_sample = {id: number for number, id in enumerate(self.by_sample)}
        """Which of the samples with rows one is, counted from 0."""
        self._sheets: tuple[Sequence[Place], Sequence[_Known | None]] | None = None
        self._made: dict[bytes, RowSet] = {}
        """Sets of rows that were made already: many arguments look at the same rows."""
        self._many_in_sets = 0
        self._groups: dict[tuple[str, tuple[int, ...]], RowGroup] = {}

    def behind(self, places: Iterable[Place]) -> RowSet | None:
        """The rows and records at the places; None where there is none."""
        known = self._known
        try:
            return self._set({known[place] for place in places})
        except KeyError as missing:
            raise LookupError(f"nothing of this edition was read from {missing.args[0]}") from missing

    def behind_evidence(self, evidence: Iterable[Evidence]) -> RowSet | None:
        """The rows and records that some evidence looked at; rows of the sheets by their numbers, where it has them."""
        wanted: set[_Known] = set()
        for one in evidence:
            sheets, numbers = getattr(one.places, "numbered", ((), ()))
            known = self._of_sheets(sheets) if numbers else ()
            found = [known[number] for number in numbers] or [self._known.get(place) for place in one.places]
            if None in found:
                missing = next(place for place in one.places if place not in self._known)
                raise LookupError(f"nothing of this edition was read from {missing}")
            wanted.update(found)  # type: ignore[arg-type]
        return self._set(wanted)

    def _of_sheets(self, places: Sequence[Place]) -> Sequence[_Known | None]:
        """What is known of all places of the sheets, in the order in which judging numbers them."""
        if self._sheets is None or self._sheets[0] is not places:
            self._sheets = places, [self._known.get(place) for place in places]
        return self._sheets[1]

    def together(self, sets: Iterable[RowSet | None]) -> RowSet | None:
        """The rows of all the sets, each once; None where there is none."""
        return self._set({one for rows in sets if rows is not None for one in rows.listed})

    @property
    def are_many(self) -> bool:
        """Whether the sets that were made come to so much that they should be forgotten."""
        return len(self._made) > _SETS_KEPT or len(self._groups) > _SETS_KEPT or self._many_in_sets > _ROWS_KEPT

    def forget(self) -> None:
        """Drops the sets that were made; to be called between pages."""
        self._made.clear()
        self._groups.clear()
        self._many_in_sets = 0

    def anchor(self, place: Place) -> str:
        """The fragment that names a row on the page of its sample."""
        return f"row-{self.numbers[place.row]}"

    def group(self, sample: str, numbers: tuple[int, ...]) -> RowGroup:
        """The rows of one sample with those numbers."""
        if (sample, numbers) not in self._groups:
            target = self.links.to("sample", sample, f"row-{min(numbers)}")
            rows = line_ranges(str(number) for number in sorted(numbers))
            self._groups[sample, numbers] = RowGroup(label=sample, target=target, rows=rows)
        return self._groups[sample, numbers]

    def runs(self, samples: Iterable[str]) -> tuple[RowGroup, ...]:
        """Samples that follow one another, each run as one."""
        found: list[list[str]] = []
        for id in sorted(samples, key=self.place_of_sample.__getitem__):
            if found and self.place_of_sample[found[-1][-1]] == self.place_of_sample[id] - 1:
                found[-1].append(id)
            else:
                found.append([id])
        return tuple(RowGroup(label=" to ".join(dict.fromkeys((run[0], run[-1]))), target="", rows="") for run in found)

    def quoted(self, one: _Known) -> RowView:
        """A row word for word, or the name of a record."""
        row = one.row
        if row is not None:
            label = f"{row.sample}, row {one.number}"
            target = self.links.to("sample", row.sample, f"row-{one.number}")
            return RowView(label=label, target=target, name=row.identification.written, text=row_text(row))
        where = "" if self.is_public else one.written
        what, id = self.records.get(one.written, ("", ""))
        if what == "site":
            return RowView(label="Project file", target=self.links.to("site"), name="", text=where)
        label = f"Record of {what} {id}" if id else "Record"
        return RowView(label=label, target=self.links.to(what, id) if id else "", name="", text=where)

    def _set(self, wanted: set[_Known]) -> RowSet | None:
        if not wanted:
            return None
        key = array(_NUMBERS, sorted([one.at for one in wanted])).tobytes()
        found = self._made.get(key)
        if found is None:
            found = self._made[key] = RowSet(self, key)
            self._many_in_sets += len(found)
        return found

    def _places(self, project: Project) -> Mapping[Place, _Known]:
        counts = {row.place.row: row for row in project.counts}
        last: dict[str, int] = {}
        for row in sorted(project.counts, key=lambda row: row.place):
            self.by_sample.setdefault(row.sample, []).append(row)
            if row.place.row not in self.numbers:
                self.numbers[row.place.row] = last[row.sample] = last.get(row.sample, 0) + 1
        every = {project.place}.union(
            (phase.place for phase in project.phases),
            (context.place for context in project.contexts),
            (sample.place for sample in project.samples),
            (row.place for row in project.counts),
        )
        known = ((place, place.row) for place in sorted(every))
        return {
            place: _Known(at, written, counts.get(written), self.numbers.get(written, 0))
            for at, (place, written) in enumerate(known)
        }


def _records(project: Project) -> dict[str, tuple[str, str]]:
    found: dict[str, tuple[str, str]] = {project.place.row: ("site", "")}
    found.update({phase.place.row: ("phase", phase.id) for phase in project.phases})
    found.update({context.place.row: ("context", context.id) for context in project.contexts})
    found.update({sample.place.row: ("sample", sample.id) for sample in project.samples})
    return found


def _several(number: int, word: str, writing: Writing) -> str:
    return f"{writing.whole(number)} {word}{'' if number == 1 else 's'}"
