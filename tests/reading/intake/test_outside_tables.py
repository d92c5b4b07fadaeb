"""
General-purpose tables of others, written out in each crossed and long layout and read back equal.

Source: Debian packages r-cran-vegan (dune, mite, BCI) and r-cran-ca (author); tables/make_tables.py made the CSV files.
"""

from __future__ import annotations

import csv
from collections import Counter
from collections.abc import Callable
from functools import cache
from pathlib import Path

import openpyxl
import pytest

from narrate.model.packs import Packs
from narrate.reading.intake.project_intake import naming_packs
from narrate.reading.intake.take_in import take_in
from tests.reading.intake.sheets import LAYOUTS, PHASES, Dig, as_xlsx

HERE = Path(__file__).parent / "tables"
Table = dict[tuple[str, str], int]
Cells = list[list[object]]


@cache
def packs() -> Packs:
    return naming_packs(("eastern-north-america",))


def table(name: str) -> tuple[list[str], list[str], Table]:
    """(samples, taxa, counts) of one of the tables. Letters stand for samples, books for taxa: a taxon has more than a letter."""
    with (HERE / f"{name}.csv").open(encoding="utf-8", newline="") as opened:
        head, *rows = list(csv.reader(opened))
    if name == "author":
        counts = {(s, row[0]): int(v) for row in rows for s, v in zip(head[1:], row[1:], strict=True)}
        return head[1:], [row[0] for row in rows], counts
    return (
        [row[0] for row in rows],
        head[1:],
        {(row[0], t): int(v) for row in rows for t, v in zip(head[1:], row[1:], strict=True)},
    )


def samples_as_rows(samples: list[str], taxa: list[str], counts: Table) -> Cells:
    return [["Sample", *taxa], *([s, *(counts[s, t] for t in taxa)] for s in samples)]


def samples_as_columns(samples: list[str], taxa: list[str], counts: Table) -> Cells:
    return [["Taxon", *samples], *([t, *(counts[s, t] or None for s in samples)] for t in taxa)]


def long(samples: list[str], taxa: list[str], counts: Table) -> Cells:
    return [["Sample", "Taxon", "Count"], *([s, t, counts[s, t]] for s in samples for t in taxa if counts[s, t])]


def with_totals(samples: list[str], taxa: list[str], counts: Table) -> Cells:
    rows: Cells = [["Taxon", *samples, "Total"]]
    rows += [[t, *(counts[s, t] for s in samples), sum(counts[s, t] for s in samples)] for t in taxa]
    return [*rows, ["Total", *(sum(counts[s, t] for t in taxa) for s in samples)]]


def with_title_and_records(samples: list[str], taxa: list[str], counts: Table) -> Cells:
    return [
        ["A table of others"], [], ["Sample", *samples], ["Context", *(f"C{n // 3}" for n in range(len(samples)))], ["Volume (l)", *(10 for _ in samples)],
        ["Taxon"], *([t, *(counts[s, t] or None for s in samples)] for t in taxa),
    ]  # fmt: skip


WRITERS: tuple[Callable[[list[str], list[str], Table], Cells], ...] = (
    samples_as_rows, samples_as_columns, long, with_totals, with_title_and_records,
)  # fmt: skip


@pytest.mark.parametrize("name", ["dune", "mite", "BCI", "author"])
@pytest.mark.parametrize("writer", WRITERS, ids=lambda w: w.__name__)
def test_a_table_of_others_comes_back(tmp_path: Path, writer: Callable[..., Cells], name: str) -> None:
    """Every number comes back under its own row and column, though no pack knows the names."""
    samples, taxa, counts = table(name)
    book = openpyxl.Workbook()
    for row in writer(samples, taxa, counts):
        book.active.append(row)
    path = tmp_path / "lab.xlsx"
    book.save(path)
    found = take_in(path, packs())
    read = {(str(row.sample), row.identification.written): row.count.number for row in found.rows if row.count.number}

    assert read == {key: n for key, n in counts.items() if n}
    assert [p.message for p in found.problems if p.code == "N317"] == []


def as_dig(name: str) -> Dig:
    """A table of others as a dig: its own samples, names and counts; contexts, phases and litres are invented."""
    samples, taxa, counts = table(name)
    if name == "BCI":
        samples, taxa = samples[:12], taxa[:40]
    context = {s: f"C{n // 4 + 1}" for n, s in enumerate(samples)}
    return Dig(
        samples=tuple(samples),
        plants=tuple((taxon, "seed") for taxon in taxa),
        counts={(s, (t, "seed")): counts[s, t] for s in samples for t in taxa},
        context=context,
        phase={s: PHASES[int(context[s][1:]) % 3] for s in samples},
        volume={s: 10.0 + n % 7 for n, s in enumerate(samples)},
    )


@pytest.mark.parametrize(
    ("layout", "name"),
    # The two larger tables in every other layout, and each layout in one of them.
    [(layout, name) for n, layout in enumerate(LAYOUTS) for name in ("dune", "author", ("mite", "BCI")[n % 2])],
)
def test_a_table_of_others_comes_back_from_each_layout(tmp_path: Path, layout: str, name: str) -> None:
    """Written out in every layout of the generator, every number comes back under its own sample and name."""
    dig = as_dig(name)
    path = tmp_path / "lab.xlsx"
    path.write_bytes(as_xlsx(LAYOUTS[layout](dig)))
    read: Counter[tuple[str, str]] = Counter()
    found = take_in(path, packs())
    given = found.layout.names if found.layout is not None else {}
    for row in found.rows:
        if row.count.number:
            name = given.get(row.identification.written, row.identification.written)  # a key, where a list explains it
            read[str(row.sample), name.lower().removesuffix(" seed")] += row.count.number
    written: Counter[tuple[str, str]] = Counter()
    for (sample, (taxon, _)), number in dig.counts.items():
        written[sample, taxon.lower()] += number

    assert read == +written
