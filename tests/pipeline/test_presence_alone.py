"""A sheet that says only what was there: no words say that nothing was found, or how much; invented."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from narrate.measures.amounts import density
from narrate.measures.count_table import count_table
from narrate.measures.units import Units
from narrate.model.ids import PartId
from narrate.model.rules import Selector
from narrate.pipeline.intake import intake
from narrate.pipeline.judged import read
from narrate.pipeline.tell import tell

SHEET = """\
Sample,Litres,Zea mays kernel,Carya nutshell,Vitis seed,Iva annua achene
S1,10,x,,x,x
S2,8,x,x,,
S3,9,,x,x,x
"""


@pytest.fixture(scope="module")
def told(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("presence")
    (folder / "lab.csv").write_text(SHEET, encoding="utf-8")
    intake(folder / "lab.csv", folder / "dig")
    assert tell(folder / "dig", version="test").is_written
    return folder / "dig"


@pytest.mark.parametrize("audience", ["public", "report", "review"])
def test_what_was_noted_and_not_counted_is_told_as_found(told: Path, audience: str) -> None:
    text = (told / "narratives" / audience / "site.md").read_text(encoding="utf-8")

    assert "no burned plants" not in text and "no charred" not in text and "0.00" not in text
    assert "nutshell" in text and "counted" in text


def test_presence_alone_has_no_density(told: Path) -> None:
    """Where no kernel was seen there are 0 of them in a litre; where kernels were ticked, nobody knows how many."""
    reading = read(told)
    assert reading.project is not None and reading.packs is not None
    table = count_table(reading.project, reading.packs)
    samples = Units(table, "sample", reading.packs, reading.project.preservation)
    kernels = density(samples, Selector(part=(PartId("kernel"),))).value[0]

    assert np.isnan(kernels[:2]).all() and kernels[2] == 0
