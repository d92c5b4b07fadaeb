"""One way of writing in all that readers are shown: shares as '95%', without a space before the sign."""

from __future__ import annotations

import re
from dataclasses import fields
from pathlib import Path

from narrate.measures.manual import manual

ROOT = Path(__file__).parents[1]
SPACED = re.compile(r"\d[ \u00a0\u202f]%(?!\}| \d)")
"""'%}' closes a tag of a template, and '% 4' is a remainder."""


def test_the_packs_and_templates_write_shares_without_a_space() -> None:
    """Rules, statements, measures, audiences and templates, as they ship."""
    files = [*(ROOT / "narrate" / "packs").rglob("*.yaml"), *(ROOT / "site_templates").rglob("*.html")]
    found = [f"{path.name}: {hit[0]}" for path in files for hit in SPACED.finditer(path.read_text(encoding="utf-8"))]

    assert len(files) > 300
    assert found == []


def test_the_manual_of_measures_writes_shares_without_a_space() -> None:
    """Its pages are made from docstrings."""
    said = [str(getattr(page, field.name)) for page in manual() for field in fields(page)]

    assert [text for text in said if SPACED.search(text)] == []
