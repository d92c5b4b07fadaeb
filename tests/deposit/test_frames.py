"""A project in a notebook."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import numpy as np
import pytest

import narrate
from narrate.deposit.frames import OpenProject
from narrate.measures.catalogue import MEASURES
from narrate.model.rules import Selector
from tests.measures.digs import a_dig, a_row
from tests.small_packs import small_packs

EXAMPLE = Path(__file__).parents[2] / "example_project"


def opened() -> OpenProject:
    rows = [a_row("S1", "Zea mays", "kernel", 12, line=2), a_row("S1", "Zea mays", "cupule", 96, line=3)]
    rows += [a_row("S2", "Carya", "wood", None, mass_g=2.5, line=4), a_row("S2", "Carya", "nutshell", None, line=5)]
    return OpenProject(a_dig([[], [], []], rows=rows), small_packs())


def test_counts_are_as_written_with_units_in_the_names_of_columns() -> None:
    """A mark of presence is no number, a mass is in grams, and the row of the sheet is named."""
    counts = opened().counts

    assert counts["count (items)"].isna().tolist() == [False, False, True, True]
    assert counts.loc[2, "mass (g)"] == 2.5
    assert counts.loc[3, "amount"] == "noted as present"
    assert counts["row"].tolist() == [f"counts/test.csv:{line}" for line in (2, 3, 4, 5)]


def test_measures_have_a_row_a_subject_and_units_in_their_columns() -> None:
    """Samples with nothing are rows too."""
    found = opened().measures("sample")

    assert found.index.tolist() == ["S1", "S2", "S3"]
    assert found.loc["S1", "density (items per litre)"] == 10.8
    assert found.loc["S1", "kernels_per_cupule"] == 0.125 and found.loc["S1", "kernels_per_cupule n"] == 108


def test_any_measure_of_any_selection_can_be_had_by_name() -> None:
    """A selector may be written as rules write it, or be one."""
    project = opened()
    words = project.measure("items", "sample", of={"taxon": "Zea mays", "part": ["kernel"]})
    same = project.measure("items", "sample", of=Selector(taxon=("Zea mays",), part=("kernel",)))  # type: ignore[arg-type]

    assert words.equals(same) and words["items (items)"].tolist() == [12, 0, 0]


@pytest.mark.parametrize("id", MEASURES)
def test_every_measure_of_the_catalogue_opens(id: str) -> None:
    """At the widest level that it is for; where there is no value there is a reason."""
    level = MEASURES[id].levels[-1]
    frame = opened().measure(id, level)

    assert len(frame) == 1
    assert not np.isnan(frame.iloc[0, 0]) or frame["reason"].iloc[0]


def test_an_unknown_measure_is_refused_with_those_that_there_are() -> None:
    """The message names the catalogue."""
    with pytest.raises(ValueError, match="'weight' is no measure; known are items, "):
        opened().measure("weight")


def test_an_unknown_key_of_a_selector_is_refused() -> None:
    """Nothing is widened by a slip."""
    with pytest.raises(ValueError, match="a selector has no 'parts'; known are taxon, "):
        opened().measure("items", of={"parts": "kernel"})


def test_the_example_opens_by_one_call_and_loads_no_chart_and_no_scipy() -> None:
    """`narrate.open_project(folder)`; importing narrate alone loads nothing at all."""
    script = (
        "import sys, narrate\n"
        "heavy = {'numpy', 'pandas', 'scipy', 'matplotlib'}\n"
        "assert not heavy & set(sys.modules)\n"
        f"project = narrate.open_project({str(EXAMPLE)!r})\n"
        "project.measures('context'), project.seasons(), project.to_date(), project.likeness(), project.ordination()\n"
        "assert not {'scipy', 'matplotlib'} & set(sys.modules)\n"
        "print(len(project.counts), len(project.measures('sample')))"
    )
    ran = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True)

    rows, samples = map(int, ran.stdout.split())
    assert rows > 500 and samples > 40


def test_a_project_with_errors_is_refused_with_all_of_them(tmp_path: Path) -> None:
    """A folder without a project.yaml says so."""
    with pytest.raises(ValueError, match=r"the project has errors:[\s\S]*N101"):
        narrate.open_project(tmp_path)
