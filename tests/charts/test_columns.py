"""Columns of the tables behind charts lead to the manual."""

from __future__ import annotations

import re
from pathlib import Path

from narrate.charts.columns import MEASURE_OF
from narrate.measures.manual import manual

CHARTS = Path(__file__).parents[2] / "narrate" / "charts"


def test_every_measure_named_has_a_page_in_the_manual() -> None:
    """No column leads nowhere."""
    assert set(MEASURE_OF.values()) <= {page.id for page in manual()}


def test_every_column_named_stands_in_a_chart() -> None:
    """The table names no column that no chart has."""
    texts = "\n".join(p.read_text(encoding="utf-8") for p in sorted(CHARTS.glob("*.py")) if p.name != "columns.py")

    assert [column for column in MEASURE_OF if f'"{column}"' not in texts] == []


def test_numbers_in_the_tables_of_charts_lead_to_their_measure(told_example: Path) -> None:
    """On a built page the head 'Items per litre' of the table behind a chart is a link to the page of density."""
    pages = "\n".join(p.read_text(encoding="utf-8") for p in sorted((told_example / "out" / "public").rglob("*.html")))

    assert re.search(r'<th scope="col">\s*<a class="explains" href="[^"]*density\.html">Items per litre</a>', pages)
