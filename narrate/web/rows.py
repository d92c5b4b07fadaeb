"""Rows of count sheets and records as evidence names them, each with the place on the site where it stands."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from posixpath import basename

from narrate.model.counts import CountRow
from narrate.model.project import Project
from narrate.problems import Place
from narrate.web.links import Links, anchor


QUOTED_AT_MOST = 24
"""Up to so many rows are quoted; of more only the lines are named, each leading to the sample's page."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RowView:
    """One row of a sheet, or one record, on the page where it is shown whole."""

    place: str
    """File and line, such as 'counts/light.csv:12'."""
    line: str
    target: str
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class RowGroup:
    """The rows of one sample in one file, or records of one file."""

    label: str
    file: str
    rows: tuple[RowView, ...]


@dataclass(frozen=True, slots=True)
class Rows:
    """Finds the row behind a place."""

    counts: Mapping[str, CountRow]
    records: Mapping[str, tuple[str, str]]
    """Place -> what it is the record of: ('context', 'C12')."""
    links: Links

    def groups(self, places: Iterable[Place]) -> tuple[RowGroup, ...]:
        """The places gathered by sample and file, in the order of the files."""
        found: dict[tuple[str, str], list[RowView]] = {}
        listed = sorted(set(places))
        for place in listed:
            label, view = self._row(place, is_quoted=len(listed) <= QUOTED_AT_MOST)
            found.setdefault((label, place.path), []).append(view)
        return tuple(RowGroup(label=label, file=path, rows=tuple(rows)) for (label, path), rows in found.items())

    def _row(self, place: Place, *, is_quoted: bool) -> tuple[str, RowView]:
        row = self.counts.get(place.row)
        line = str(place.cell or place.line or "")
        if row is not None:
            target = self.links.to("sample", row.sample, row_anchor(place))
            return f"Sample {row.sample}", RowView(
                place=place.row, line=line, target=target, text=row_text(row) if is_quoted else ""
            )
        what, id = self.records.get(place.row, ("", ""))
        label = f"Record of {what} {id}" if id else {"site": "The project file", "": basename(place.path)}[what]
        return label, RowView(place=place.row, line=line, target=self.links.to(what, id) if what else "", text="")


def rows_of(project: Project, links: Links) -> Rows:
    records: dict[str, tuple[str, str]] = {project.place.row: ("site", "")}
    records.update({phase.place.row: ("phase", phase.id) for phase in project.phases})
    records.update({context.place.row: ("context", context.id) for context in project.contexts})
    records.update({sample.place.row: ("sample", sample.id) for sample in project.samples})
    return Rows({row.place.row: row for row in project.counts}, records, links)


def row_anchor(place: Place) -> str:
    """The fragment under which a sample's page shows a row."""
    return f"row-{anchor(place.row)}"


def row_text(row: CountRow) -> str:
    """A row in one line: name, part, count as written, and what is out of the ordinary."""
    parts = [row.identification.written, row.part, row.count.written or "not counted"]
    if row.mass_g is not None:
        parts.append(f"{row.mass_g:g} g")
    parts += [word for word, usual in ((row.condition, "charred"), (row.completeness, "whole")) if word != usual]
    if row.size_class:
        parts.append(row.size_class)
    return ", ".join(parts)
