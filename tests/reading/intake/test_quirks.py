"""
Sheets with the quirks of real laboratories, all invented: each is laid out as a person who looked at it said.

`quirks/roles.json` holds the roles of rows and columns, looked through by eye when it was written; a change of the guess shows
there. `pytest --refresh-golden` writes it anew; read the difference.
"""

from __future__ import annotations

import json
from functools import cache
from pathlib import Path

import pytest

from narrate.model.packs import Packs
from narrate.reading.intake.project_intake import naming_packs
from narrate.reading.intake.take_in import TakenIn, take_in

HERE = Path(__file__).parent / "quirks"
SHEETS = sorted(path.name for path in HERE.iterdir() if path.suffix in (".csv", ".txt"))


@cache
def packs() -> Packs:
    return naming_packs(("eastern-north-america",))


def roles(found: TakenIn) -> list[dict[str, dict[str, str]]]:
    tables = found.layout.tables if found.layout is not None else ()
    return [
        {
            "rows": {str(n + 1): str(role) for n, role in table.rows.items()},
            "columns": {str(n + 1): str(role) for n, role in table.columns.items()},
        }
        for table in tables
    ]


@pytest.mark.parametrize("name", SHEETS)
def test_a_quirky_sheet_is_laid_out_as_a_person_said(name: str, request: pytest.FixtureRequest) -> None:
    """Title, heads, records, names, counts, results and notes are told apart without a hint."""
    golden = HERE / "roles.json"
    known = json.loads(golden.read_text(encoding="utf-8")) if golden.is_file() else {}
    found = roles(take_in(HERE / name, packs()))
    if request.config.getoption("--refresh-golden"):
        known[name] = found
        golden.write_text(json.dumps(known, indent=1, ensure_ascii=False, sort_keys=True) + "\n", encoding="utf-8")

    assert known[name] == found
    assert found != []
