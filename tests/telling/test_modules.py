"""The modules of the room: each is named in DEVELOPERS.md and small enough to hold one subject."""

from __future__ import annotations

import re
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
MODULES = sorted(file for file in (ROOT / "narrate" / "telling").glob("*.py") if file.stem != "__init__")


def test_every_module_is_named_in_the_guide():
    """The table of DEVELOPERS.md has one line for each module, and none for what is gone."""
    guide = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    table = guide.split("### The modules of `telling`")[1].split("\n### ")[0]

    assert re.findall(r"^\| `(\w+)` \| .+ \|$", table, re.MULTILINE) == [file.stem for file in MODULES]


def test_no_module_has_three_hundred_lines():
    """Judgement of the makers: what is longer holds two subjects."""
    long = {file.stem for file in MODULES if len(file.read_text(encoding="utf-8").splitlines()) >= 300}

    assert long == set()
