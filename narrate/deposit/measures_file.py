"""Measures of every subject as CSV tables, one a level."""

from __future__ import annotations

import csv
import io
from collections.abc import Mapping

from narrate.files import cell_text
from narrate.model.findings import Findings
from narrate.model.ids import LEVELS, Level
from narrate.model.measurement import Measurement
from narrate.model.packs import Packs

COLUMNS = ("subject", "measure", "title", "value", "low", "high", "unit", "n", "reason")


def measure_tables(findings: Findings, packs: Packs) -> Mapping[str, str]:
    """File name -> text of a CSV table with one row a subject and measure; blank is "no value", with its reason."""
    titles = {shown.name: shown.title for shown in packs.shown}
    return {f"{level}s.csv" if level != "site" else "site.csv": _table(findings, level, titles) for level in LEVELS}


def _table(findings: Findings, level: Level, titles: Mapping[str, str]) -> str:
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(COLUMNS)
    for subject, found in findings.subjects.items():
        if subject.level != level:
            continue
        for name, measurement in found.measurements.items():
            writer.writerow([cell_text(subject.id), name, titles.get(name, name), *_cells(measurement)])
    return out.getvalue()


def _cells(measurement: Measurement) -> list[str]:
    high = "open" if measurement.is_open_above else _number(measurement.high)
    n = "" if measurement.n is None else str(measurement.n)
    return [_number(measurement.value), _number(measurement.low), high, measurement.unit, n, measurement.reason]


def _number(value: float | None) -> str:
    return "" if value is None else f"{value:.6g}"
