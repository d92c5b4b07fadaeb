"""Data to take away: the tables of the dig as CSV, and its pictures, from what this edition may know."""

from __future__ import annotations

import csv
import hashlib
import io
import re
import zipfile
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache, partial
from itertools import chain, islice

from narrate.files import cell_text
from narrate.model.edition import Edition
from narrate.model.figures import Chart
from narrate.model.packed import Packed
from narrate.model.refs import subject_keys

Content = Callable[[], bytes]
"""Gives what a file holds: those of a large dig come to many megabytes, and each is wanted once."""
Cell = str | int | float | None
Table = tuple[tuple[str, ...], Iterable[Sequence[Cell]]]
LONG_AGO = (1980, 1, 1, 0, 0, 0)
"""Date of everything in an archive, so that the same project gives the same bytes."""
_ROWS_AT_ONCE = 1_000
"""Rows of a table that are written as one piece."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Download:
    path: str
    title: str
    says: str
    weight: int
    """In bytes."""
    content: Content

    @property
    def size(self) -> str:
        return f"{max(1, round(self.weight / 1024)):,} KB"


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
    return tuple(_table(f"data/{name}.csv", title, says, table) for name, (title, says, table) in found.items())


def _table(path: str, title: str, says: str, table: Table) -> Download:
    kept = Packed.of(_csv_pieces(*table))
    return Download(path=path, title=title, says=says, weight=kept.size, content=lambda: kept.content)


class Pictures:
    """Pictures of a site with their tables, all in one archive: each is read from it when it is wanted."""

    def __init__(self, charts: Iterable[tuple[str, Chart]]) -> None:
        """charts: under the name of its page, such as 'contexts/c12.html'."""
        self._names: dict[bytes, str] = {}
        kept = io.BytesIO()
        with zipfile.ZipFile(kept, "w", zipfile.ZIP_DEFLATED) as opened:
            for page, chart in charts:
                name = self._names[_mark(chart)] = f"{page.removesuffix('.html')}-{chart.id}"
                _put(opened, f"{name}.svg", standing(chart.svg).encode("utf-8"))
                _put(opened, f"{name}.csv", as_csv(chart.columns, chart.rows))
        self._content = kept.getvalue()
        self._opened = zipfile.ZipFile(io.BytesIO(self._content))

    @property
    def archive(self) -> Download:
        """All of them."""
        says = "the pictures of the dig, its phases and contexts as SVG, each with its table as CSV"
        content = self._content
        return Download(
            path="data/figures.zip", title="Figures", says=says, weight=len(content), content=lambda: content
        )

    def file_of(self, chart: Chart) -> str:
        """Where a picture and its table lie as files, without the extension; empty where they lie in none."""
        name = self._names.get(_mark(chart), "")
        return f"figures/{name}" if name else ""

    def files(self, is_png: Callable[[str], bool]) -> Mapping[str, Content]:
        """
        What gives each file, by its path within the site.

        is_png:  whether a picture lies there as PNG too, by its path without the extension.
        """
        found: dict[str, Content] = {}
        as_png: list[str] = []
        for file in self._opened.namelist():
            path = f"figures/{file}"
            found[path] = partial(self._opened.read, file)
            if file.endswith(".svg") and is_png(path.removesuffix(".svg")):
                as_png.append(file)
        drawn = cache(partial(self._drawn, as_png))
        found.update((f"figures/{file[:-4]}.png", lambda file=file: drawn()[file]) for file in as_png)  # type: ignore[misc]
        return found

    def _drawn(self, files: Sequence[str]) -> Mapping[str, bytes]:
        """Pictures as PNG, all in one go."""
        from narrate.charts.raster import png

        return dict(zip(files, png([self._opened.read(file).decode("utf-8") for file in files]), strict=True))


def _mark(chart: Chart) -> bytes:
    return hashlib.blake2b(chart.svg.encode("utf-8", "surrogatepass"), digest_size=16).digest()


def standing(svg: str) -> str:
    """
    The picture with its light colours themselves, for programs that know no properties of a page.

    >>> standing('<path fill="var(--chart-soft,#6a6056)"/>')
    '<path fill="#6a6056"/>'
    """
    return re.sub(r"var\(--chart-[a-z0-9-]+,(#[0-9a-fA-F]{3,8})\)", r"\1", svg)


def as_csv(columns: Sequence[str], rows: Iterable[Sequence[Cell]]) -> bytes:
    """The table as UTF-8 CSV with a header; nothing known is an empty cell."""
    return b"".join(_csv_pieces(columns, rows))


def _csv_pieces(columns: Sequence[str], rows: Iterable[Sequence[Cell]]) -> Iterator[bytes]:
    """The same, some rows at a time."""
    written = chain([columns], ([_cell(cell) for cell in row] for row in rows))
    while some := list(islice(written, _ROWS_AT_ONCE)):
        text = io.StringIO()
        csv.writer(text, lineterminator="\n").writerows(some)
        yield text.getvalue().encode("utf-8", "replace")


def _cell(cell: Cell) -> Cell:
    return cell_text(cell) if isinstance(cell, str) else "" if cell is None else cell


def _put(archive: zipfile.ZipFile, name: str, content: bytes) -> None:
    archive.writestr(zipfile.ZipInfo(name, LONG_AGO), content, zipfile.ZIP_DEFLATED)


def _contexts(edition: Edition) -> Table:
    columns = ("context", "kind", "feature", "phase", "deposit", "security", "description", "note")
    return columns, (
        (c.id, c.kind, c.feature, c.phase, c.deposit, c.security, c.description, c.note)
        for c in edition.project.contexts
    )


def _samples(edition: Edition) -> Table:
    columns = ("sample", "context", "volume_l", "method", "light_fraction_g", "sorted", "sterile", "note")
    return columns, (
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
    )


def _counts(edition: Edition) -> Table:
    columns = (
        "sample", "taxon as written", "taxon", "part", "count as written", "count", "mass_g", "condition",
        "completeness", "size_class", "fraction", "note",
    )  # fmt: skip
    return columns, (
        (
            r.sample, r.identification.written, r.identification.taxon, r.part, r.count.written, r.count.number,
            r.mass_g, r.condition, r.completeness, r.size_class, r.fraction, r.note,
        )
        for r in edition.project.counts
    )  # fmt: skip


def _measures(edition: Edition) -> Table:
    keys = subject_keys(edition.project)
    titles = {shown.name: shown.title for shown in edition.packs.shown}
    columns = ("level", "subject", "measure", "value", "low", "high", "unit", "n", "why there is no value")
    return columns, (
        (subject.level, keys[subject], titles.get(name, name), m.value, m.low, m.high, m.unit, m.n, m.reason)
        for subject, found in edition.findings.subjects.items()
        for name, m in found.measurements.items()
    )


def _claims(edition: Edition) -> Table:
    columns = ("id", "level", "subject", "question", "statement", "grade", "support", "stability", "limits")
    return columns, (
        (
            c.id, c.about.level, c.about.id, c.question, c.statement, c.grade, round(c.support, 4), c.stability,
            "; ".join(limit.says for limit in c.limits),
        )
        for c in edition.claims.all_holding()
    )  # fmt: skip


def _finds(edition: Edition) -> Table:
    columns = ("level", "subject", "taxon", "part", "condition", "counted", "mass_g", "samples", "of samples")
    return columns, (
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
    )
