"""`narrate measure`: every measurement and every comparison, as CSV tables."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path

from narrate.deposit.measures_file import measure_tables
from narrate.files import write
from narrate.measures.findings import find
from narrate.pipeline.judged import Progress, read, silent
from narrate.problems import Problem, has_errors


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasuredFolder:
    """The tables that `measure` made: file name -> text."""

    tables: Mapping[str, str] = field(default_factory=dict)
    problems: tuple[Problem, ...] = ()
    is_whole: bool = False


def measure(folder: Path, *, progress: Progress = silent) -> MeasuredFolder:
    """
    Every measurement of every subject and every analysis of the dig, as CSV tables; none while there are errors.

    The tables are for the team: nothing restricted is taken out.
    """
    from narrate.deposit.analysis_tables import analysis_tables

    progress("reading records and count sheets")
    reading = read(folder)
    if reading.project is None or reading.packs is None or has_errors(reading.problems):
        return MeasuredFolder(problems=reading.problems)
    project, packs = reading.project, reading.packs
    progress("measuring")
    further = replace(packs, shown=packs.tabled)
    tables = dict(measure_tables(find(project, packs), packs))
    tables |= {f"further_{name}": text for name, text in measure_tables(find(project, further), further).items()}
    progress("comparing samples")
    tables |= analysis_tables(project, packs)
    return MeasuredFolder(tables=tables, problems=reading.problems, is_whole=True)


def write_tables(folder: Path, tables: Mapping[str, str]) -> tuple[Path, ...]:
    """Writes tables to out/measures and gives their paths."""
    paths = []
    for name, text in tables.items():
        path = folder / "out" / "measures" / name
        write(path, text)
        paths.append(path)
    return tuple(paths)
