"""
Sheets that somebody who does not know the reader made, with what is in them; all invented.

`blind/truth.json` was written with each sheet and before it was tried: for each sample how many finds were counted and
what they add up to, by condition; how many are signs of presence or abundance; and the grams.
"""

from __future__ import annotations

import json
from functools import cache
from pathlib import Path
from shutil import copy
from typing import Any

import pytest

from narrate.model.packs import Packs
from narrate.reading.intake.project_intake import intake_packs
from narrate.reading.intake.take_in import take_in

HERE = Path(__file__).parent / "blind"
TRUTH = json.loads((HERE / "truth.json").read_text(encoding="utf-8"))


@cache
def packs() -> Packs:
    return intake_packs(None)


def read(sheet: Path) -> dict[str, dict[str, Any]]:
    """Sample -> what was read of it."""
    found: dict[str, dict[str, Any]] = {}
    for row in take_in(sheet, packs()).rows:
        if row.count.amount in ("looked for and absent", "not looked for"):
            continue
        one = found.setdefault(str(row.sample), {"counts": {}, "signs": 0, "grams": 0.0})
        if row.count.number:
            sums = one["counts"].setdefault(row.condition, [0, 0])
            sums[0], sums[1] = sums[0] + 1, sums[1] + row.count.number
        elif row.count.amount == "noted as present":
            one["signs"] += 1
        one["grams"] = round(one["grams"] + (row.mass_g or 0.0), 6)
    return found


@pytest.mark.parametrize("name", TRUTH)
def test_a_sheet_of_a_stranger_gives_what_is_in_it(tmp_path: Path, name: str) -> None:
    """Each sample with its finds, their sum by condition, its signs and its grams, and no other sample."""
    copy(HERE / name, tmp_path / name)

    assert read(tmp_path / name) == TRUTH[name]
