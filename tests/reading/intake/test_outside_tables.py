"""
General-purpose tables of others, written out in each crossed and long layout and read back equal.

Source: Debian packages r-cran-vegan (dune, mite, BCI) and r-cran-ca (author); tables/make_tables.py made the CSV files.
"""

from __future__ import annotations

import csv
from collections.abc import Callable
from functools import cache
from pathlib import Path

import openpyxl
import pytest

from narrate.model.packs import Packs
from narrate.reading.intake.project_intake import naming_packs
from narrate.reading.intake.take_in import take_in

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
