"""`narrate measure`: the tables of a project."""

from __future__ import annotations

import csv
import json
import shutil
from collections.abc import Mapping
from functools import cache
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from narrate.cli import commands
from narrate.measures.catalogue import MEASURES
from narrate.pipeline.measure import measure
from narrate.reading.packs import read_packs

EXAMPLE = Path(__file__).parents[2] / "example_project"


@cache
def tables() -> Mapping[str, str]:
    return measure(EXAMPLE).tables


def rows(name: str) -> list[dict[str, str]]:
    return list(csv.DictReader(tables()[name].splitlines()))


def test_every_measure_stands_in_the_tables_by_name() -> None:
    """What rules can ask for, the tables hold."""
    packs = read_packs(("eastern-north-america",))[0]
    measure_of = {shown.name: shown.measure for shown in (*packs.shown, *packs.tabled)}
    told = {measure_of[row["measure"]] for name in ("site.csv", "further_site.csv") for row in rows(name)}

    assert told == set(MEASURES)


def test_a_blank_value_has_a_reason() -> None:
    """No number, no silence."""
    for name in tables():
        if name.removeprefix("further_") in ("samples.csv", "contexts.csv", "features.csv", "phases.csv", "site.csv"):
            assert all(row["value"] or row["reason"] for row in rows(name)), name


@pytest.mark.parametrize(
    "name",
    [
        "compared_by_phase.csv", "compared_by_kind.csv", "compared_by_feature.csv", "compared_by_area.csv",
        "weeds_with_crops.csv", "seasons.csv", "windows.csv", "fields.csv", "triangle.csv", "order_of_samples.csv",
        "order_of_plants.csv", "likeness.csv", "sorting.csv", "narrowing.csv",
        "to_date.csv",
    ],
)  # fmt: skip
def test_every_analysis_has_a_table_with_rows(name: str) -> None:
    """Each table has at least one row, if only to say why there is nothing."""
    assert rows(name)


@pytest.fixture(scope="module")
def commanded(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Result]:
    """The folder that `narrate measure` writes into for a copy of the example, and what it said."""
    folder = tmp_path_factory.mktemp("measured") / "dig"
    shutil.copytree(EXAMPLE, folder, ignore=shutil.ignore_patterns("out"))
    return folder / "out" / "measures", CliRunner().invoke(commands, ["measure", str(folder)])


def test_the_same_project_gives_the_same_tables(commanded: tuple[Path, Result]) -> None:
    """Permutations take their seed from the table, which names it: measured twice, every table is the same."""
    written = {path.name: path.read_text(encoding="utf-8") for path in commanded[0].iterdir()}

    assert written == tables()
    assert {row["seed"] for row in rows("compared_by_phase.csv")} == {"1"}


def test_the_command_writes_the_tables_and_names_them(commanded: tuple[Path, Result]) -> None:
    """To out/measures; the paths go to standard output."""
    where, ran = commanded

    assert ran.exit_code == 0, ran.output
    written = sorted(path.name for path in where.iterdir())
    assert written == sorted(tables())
    assert all(str(where / name) in ran.stdout for name in written)


def test_json_goes_to_standard_output_and_nothing_is_written(tmp_path: Path) -> None:
    """The same tables, each a list of rows by column."""
    folder = tmp_path / "dig"
    shutil.copytree(EXAMPLE, folder, ignore=shutil.ignore_patterns("out"))
    ran = CliRunner().invoke(commands, ["measure", str(folder), "--json"])

    found = json.loads(ran.stdout)
    assert found["site"][0]["measure"] == "items" and not (folder / "out").exists()


def test_a_project_with_errors_is_not_measured(tmp_path: Path) -> None:
    """All problems are told, the status is 1 and nothing is written."""
    ran = CliRunner().invoke(commands, ["measure", str(tmp_path)])

    assert ran.exit_code == 1 and "N101" in ran.stderr and not (tmp_path / "out").exists()
