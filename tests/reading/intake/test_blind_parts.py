"""
Of the last lots of sheets that somebody made who does not know the reader: part, pieces and state of each find.

`blind/parts.json` was made from what was written with each sheet, before it was tried: for each name as written, in how
many finds it stands as what part, whole or in pieces, in what state. Where a sheet names no part, none is held against
it. All sheets are invented.
"""

from __future__ import annotations

import json
from collections import Counter
from pathlib import Path
from shutil import copy

import pytest

from narrate.reading.intake.take_in import take_in
from tests.reading.intake.test_blind import HERE, packs

PARTS = json.loads((HERE / "parts.json").read_text(encoding="utf-8"))


@pytest.mark.parametrize("sheet", PARTS)
def test_each_find_is_of_the_part_and_in_the_state_that_its_sheet_says(tmp_path: Path, sheet: str) -> None:
    """By name: the part where one is said, whole or fragment, and the condition, with the number of such finds."""
    copy(HERE / sheet, tmp_path / sheet)
    wanted = {tuple(line[:4]): line[4] for line in PARTS[sheet]}
    named = {(name, part) for name, part, *_ in wanted if part}

    found: Counter[tuple[str, str, str, str]] = Counter()
    for row in take_in(tmp_path / sheet, packs()).rows:
        if row.count.amount in ("counted", "noted as present") and row.count.written:
            name = " ".join(row.identification.written.split())
            part = str(row.part) if (name, str(row.part)) in named else ""
            found[name, part, row.completeness, row.condition] += 1
    assert dict(found) == wanted
