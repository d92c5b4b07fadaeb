"""Every measure has a page, and every number leads to the page of its measure."""

from __future__ import annotations

import re
from pathlib import Path

from narrate.measures.catalogue import MEASURES
from narrate.measures.manual import manual
from narrate.web import criteria
from narrate.web.build import build
from narrate.web.templates import templates_folder
from tests.web.editions import an_edition


def pages(folder: Path, audience: str = "review") -> dict[str, str]:
    build(an_edition(audience, manual=manual()), templates_folder(), folder)
    return {path.relative_to(folder).as_posix(): path.read_text("utf-8") for path in folder.rglob("*.html")}


def test_every_measure_has_a_page_with_formula_unit_doubts_and_source(tmp_path: Path) -> None:
    """A page for each of the catalogue; none leaves a part of the manual empty."""
    found = pages(tmp_path / "site")

    assert {name for name in found if name.startswith("measures/")} == {
        "measures/index.html",
        *(f"measures/{id.replace('_', '-')}.html" for id in MEASURES),
    }
    for name, text in found.items():
        if name.startswith("measures/") and name != "measures/index.html":
            assert 'id="formula"' in text and "<dd></dd>" not in text, name


def test_every_row_of_the_table_of_measures_leads_to_its_page(tmp_path: Path) -> None:
    """In the table of a context each measurement is a link, and the page it leads to is there."""
    found = pages(tmp_path / "site")
    table = found["contexts/c1.html"].split('<table class="measures">')[1].split("</table>")[0]
    rows = re.findall(r'<th scope="row">(.*?)</th>', table)

    assert rows and all('class="explains"' in row for row in rows)
    for target in re.findall(r'href="\.\./(measures/[^"]+)"', table):
        assert target in found


def test_every_number_of_an_argument_leads_to_its_page(tmp_path: Path) -> None:
    """What a rule looked at is a link, unless it is a recorded fact."""
    text = pages(tmp_path / "site", "public")["evidence/c1.html"]
    looked_at = re.findall(r"<li><b>(.*?)</b>", text)

    assert looked_at and all("measures/" in one or "on record" in one for one in looked_at)


def test_every_measure_has_words_for_criteria() -> None:
    """A rule that asks for a measure is told in words on the page of rules."""
    assert set(criteria.MEASURES) == set(MEASURES)
