"""Rows of count sheets and records as evidence names them, each with the place on the site where it stands."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from posixpath import basename

from narrate.model.counts import CountRow
from narrate.model.project import Project
from narrate.problems import Place
from narrate.web.links import Links, anchor, slugs

QUOTED_AT_MOST = 16
"""Up to so many rows are quoted, each with a link to itself; of more the lines are named, by sample."""
BY_SAMPLE_AT_MOST = 80
"""Of still more, such as a whole phase gives, the lines are named by file."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RowView:
    """One row of a sheet on the page where it is shown whole, or one record."""

    line: str
    target: str
    name: str
    """The name as written; empty for records."""
    text: str
    """The rest of the row in short."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RowGroup:
    """The rows of one sample in one file, or records of one file."""

    label: str
    target: str
    """Where the rows of the group stand together."""
    file: str
    lines: str
    """Such as '12–15, 18'."""
    rows: tuple[RowView, ...]
    """The rows themselves where they are few; else empty."""


@dataclass(frozen=True, slots=True)
class RowAnchors:
    """Names rows within a page: the file in short, and the line."""

    files: Mapping[str, str]

    def of(self, place: Place) -> str:
        line = anchor(f"{place.sheet}.{place.cell}") if place.cell else str(place.line)
        return f"{self.files[place.path]}-{line}"


@dataclass(frozen=True, slots=True)
class Rows:
    """Finds the row behind a place."""

    counts: Mapping[str, CountRow]
    records: Mapping[str, tuple[str, str]]
    """Place -> what it is the record of: ('context', 'C12')."""
    links: Links
    anchors: RowAnchors
    by_sample: Mapping[str, tuple[CountRow, ...]]

    def groups(self, places: Iterable[Place]) -> tuple[RowGroup, ...]:
        """The places gathered by sample and file, in the order of the files."""
        listed = sorted(set(places))
        are_few = len(listed) <= QUOTED_AT_MOST
        samples = {self.counts[place.row].sample for place in listed if place.row in self.counts}
        together = f"Rows of {len(samples)} samples" if len(listed) > BY_SAMPLE_AT_MOST else ""
        found: dict[tuple[str, str, str], list[Place]] = {}
        for place in listed:
            label, target = self._whose(place, are_few, together)
            found.setdefault((label, target, place.path), []).append(place)
        return tuple(
            RowGroup(
                label=label,
                target=target,
                file=basename(path),
                lines=line_ranges(place.cell or str(place.line or "") for place in members),
                rows=tuple(self._row(place) for place in members) if are_few else (),
            )
            for (label, target, path), members in found.items()
        )

    def _whose(self, place: Place, are_few: bool, together: str) -> tuple[str, str]:
        """What the place belongs to, and its page. Many records are told by their file, not one by one."""
        row = self.counts.get(place.row)
        if row is not None and together:
            return together, ""
        if row is not None:
            return f"Sample {row.sample}", self.links.to("sample", row.sample)
        what, id = self.records.get(place.row, ("", ""))
        if what == "site":
            return "Project file", self.links.to("site")
        if not id or not are_few:
            return "Records", ""
        return f"Record of {what} {id}", self.links.to(what, id)

    def _row(self, place: Place) -> RowView:
        row = self.counts.get(place.row)
        line = place.cell or str(place.line or "")
        if row is None:
            return RowView(line=line, target="", name="", text="")
        target = self.links.to("sample", row.sample, self.anchors.of(place))
        return RowView(line=line, target=target, name=row.identification.written, text=row_text(row))


def rows_of(project: Project, links: Links) -> Rows:
    """All rows and records of a project by their places."""
    records: dict[str, tuple[str, str]] = {project.place.row: ("site", "")}
    records.update({phase.place.row: ("phase", phase.id) for phase in project.phases})
    records.update({context.place.row: ("context", context.id) for context in project.contexts})
    records.update({sample.place.row: ("sample", sample.id) for sample in project.samples})
    counts = {row.place.row: row for row in project.counts}
    anchors = RowAnchors(slugs(sorted({row.place.path for row in project.counts})))
    by_sample: dict[str, list[CountRow]] = {}
    for row in sorted(project.counts, key=lambda row: row.place):
        by_sample.setdefault(row.sample, []).append(row)
    return Rows(counts, records, links, anchors, {id: tuple(rows) for id, rows in by_sample.items()})


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
    Lines in short.

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
