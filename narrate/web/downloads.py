"""Data to take away: the tables of the dig as CSV, and its pictures, from what this edition may know."""

from __future__ import annotations

import csv
import io
import re
import zipfile
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from narrate.files import cell_text
from narrate.model.edition import Edition
from narrate.model.figures import Chart
from narrate.model.refs import subject_keys

Cell = str | int | float | None
Table = tuple[tuple[str, ...], Iterable[Sequence[Cell]]]
LONG_AGO = (1980, 1, 1, 0, 0, 0)
"""Date of everything in an archive, so that the same project gives the same bytes."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Download:
    path: str
    title: str
    says: str
    content: bytes

    @property
    def size(self) -> str:
        return f"{max(1, round(len(self.content) / 1024)):,} KB"


def tables(edition: Edition) -> tuple[Download, ...]:
    """Contexts, samples, counts, measures, findings and plants."""
    found: Mapping[str, tuple[str, str, Table]] = {
        "contexts": ("Contexts", "one row a context, as recorded", _contexts(edition)),
        "samples": ("Samples", "one row a sample: volume, method, what was sorted", _samples(edition)),
        "counts": ("Counts", "every row of the count sheets, as written and as read", _counts(edition)),
        "measures": ("Measures", "every measure of every subject, with interval and n", _measures(edition)),
        "findings": ("Findings", "every claim that holds, with its grade and support", _claims(edition)),
        "finds": ("Finds", "what each context, phase and the dig holds, plant part by plant part", _finds(edition)),
    }
    return tuple(
        Download(path=f"data/{name}.csv", title=title, says=says, content=as_csv(*table))
        for name, (title, says, table) in found.items()
    )


def pictures(charts: Iterable[tuple[str, Chart]]) -> Mapping[str, tuple[Chart, bytes, bytes]]:
    """
    Charts by the name of their files, each with its picture as SVG and its table as CSV.

    charts:  under the name of its page, such as 'contexts/c12.html'.
    """
    return {
        f"{page.removesuffix('.html')}-{chart.id}": (
            chart,
            standing(chart.svg).encode("utf-8"),
            as_csv(chart.columns, chart.rows),
        )
        for page, chart in charts
    }


def standing(svg: str) -> str:
    """
    The picture with its light colours themselves, for programs that know no properties of a page.

    >>> standing('<path fill="var(--chart-soft,#6a6056)"/>')
    '<path fill="#6a6056"/>'
    """
    return re.sub(r"var\(--chart-[a-z0-9-]+,(#[0-9a-fA-F]{3,8})\)", r"\1", svg)


def archive(drawn: Mapping[str, tuple[Chart, bytes, bytes]]) -> Download:
    """All pictures with their tables in one archive."""
    kept = io.BytesIO()
    with zipfile.ZipFile(kept, "w", zipfile.ZIP_DEFLATED) as opened:
        for name, (_, picture, table) in drawn.items():
            _put(opened, f"{name}.svg", picture)
            _put(opened, f"{name}.csv", table)
    says = "the pictures of the dig, its phases and contexts as SVG, each with its table as CSV"
    return Download(path="data/figures.zip", title="Figures", says=says, content=kept.getvalue())


def as_csv(columns: Sequence[str], rows: Iterable[Sequence[Cell]]) -> bytes:
    """The table as UTF-8 CSV with a header; nothing known is an empty cell."""
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow(columns)
    writer.writerows([_cell(cell) for cell in row] for row in rows)
    return text.getvalue().encode("utf-8", "replace")


def _cell(cell: Cell) -> Cell:
    return cell_text(cell) if isinstance(cell, str) else "" if cell is None else cell


def _put(archive: zipfile.ZipFile, name: str, content: bytes) -> None:
    archive.writestr(zipfile.ZipInfo(name, LONG_AGO), content, zipfile.ZIP_DEFLATED)


def _contexts(edition: Edition) -> Table:
    columns = ("context", "kind", "feature", "phase", "deposit", "security", "description", "note")
    return columns, [
        (c.id, c.kind, c.feature, c.phase, c.deposit, c.security, c.description, c.note)
        for c in edition.project.contexts
    ]


def _samples(edition: Edition) -> Table:
    columns = ("sample", "context", "volume_l", "method", "light_fraction_g", "sorted", "sterile", "note")
    return columns, [
        (
            s.id,
            s.context,
            s.volume_l,
            s.method,
            None if s.light_fraction is None else s.light_fraction.mass_g,
            "; ".join(f"{size.name}: {size.written or size.proportion_sorted}" for size in s.size_classes),
            "yes" if s.sterile else "",
            s.note,
        )
        for s in edition.project.samples
    ]


def _counts(edition: Edition) -> Table:
    columns = (
        "sample", "taxon as written", "taxon", "part", "count as written", "count", "mass_g", "condition",
        "completeness", "size_class", "fraction", "note",
    )  # fmt: skip
    return columns, [
        (
            r.sample, r.identification.written, r.identification.taxon, r.part, r.count.written, r.count.number,
            r.mass_g, r.condition, r.completeness, r.size_class, r.fraction, r.note,
        )
        for r in edition.project.counts
    ]  # fmt: skip


def _measures(edition: Edition) -> Table:
    keys = subject_keys(edition.project)
    titles = {shown.name: shown.title for shown in edition.packs.shown}
    columns = ("level", "subject", "measure", "value", "low", "high", "unit", "n", "why there is no value")
    return columns, [
        (subject.level, keys[subject], titles.get(name, name), m.value, m.low, m.high, m.unit, m.n, m.reason)
        for subject, found in edition.findings.subjects.items()
        for name, m in found.measurements.items()
    ]


def _claims(edition: Edition) -> Table:
    columns = ("id", "level", "subject", "question", "statement", "grade", "support", "stability", "limits")
    return columns, [
        (
            c.id, c.about.level, c.about.id, c.question, c.statement, c.grade, round(c.support, 4), c.stability,
            "; ".join(limit.says for limit in c.limits),
        )
        for c in edition.claims.all_holding()
    ]  # fmt: skip


def _finds(edition: Edition) -> Table:
    columns = ("level", "subject", "taxon", "part", "condition", "counted", "mass_g", "samples", "of samples")
    return columns, [
        (
            subject.level,
            subject.id,
            t.taxon or t.written,
            t.part,
            t.condition,
            t.counted,
            t.mass_g,
            t.samples,
            t.of_samples,
        )
        for subject, found in edition.findings.subjects.items()
        if subject.level != "sample"
        for t in found.tallies
    ]


def pngs(drawn: Mapping[str, tuple[Chart, bytes, bytes]]) -> Mapping[str, bytes]:
    """Pictures by the name of their files -> the same as PNG, by path."""
    from narrate.charts.raster import png

    svgs = {f"figures/{name}.png": picture.decode("utf-8") for name, (_, picture, _) in drawn.items()}
    return dict(zip(svgs, png(tuple(svgs.values())), strict=True))
