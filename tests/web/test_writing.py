"""Years, numbers and units on the pages: as the project writes them."""

from __future__ import annotations

import re
from dataclasses import replace

from narrate.model.audiences import Audience
from narrate.model.edition import Edition
from narrate.model.figures import Chart
from narrate.model.style import Style
from narrate.problems import Place
from narrate.web.figures import retold
from narrate.web.pages import pages
from narrate.web.templates import templates_folder
from narrate.web.writing import Writing, writing_of
from tests.web.editions import a_project, an_edition

STYLE = Style(era="BP", thousands="space", litre="L", dash="hyphen")


def styled(style: Style, audience: str = "public") -> Edition:
    """The small dig for an audience of no words of its own, with a style in its project file."""
    edition = an_edition(audience, a_project(style=style))
    reader = Audience(
        id=audience, title="", register="plain", frames={}, shows_figures=True, shows_intervals=True, shows_latin="",
        shows_doubts_first=False, discloses="", plan=(), headings={}, words={}, glossary={},
        place=Place(path="packs/audiences/public.yaml"),
    )  # fmt: skip
    return replace(edition, packs=replace(edition.packs, audiences={audience: reader}))


def test_the_project_chooses_how_pages_write() -> None:
    """Every choice of `style` in project.yaml goes before those of the audience."""
    written = writing_of(styled(STYLE))

    assert written == Writing(thousands="\u202f", dash="-", litre="L", litres="L", era="BP")


def test_years_of_phases_are_in_the_era_of_the_project() -> None:
    """AD 950 to 1050 is 1000 to 900 years before AD 1950 (1950 - 950, 1950 - 1050)."""
    files = pages(styled(STYLE), templates_folder(), None)
    made = {name: raw.decode() for name, raw in files.items() if name.endswith(".html")}

    assert "1000-900 cal BP" in made["phases/early.html"]
    assert "1000-900 cal BP" in made["phases/index.html"]
    assert not [name for name, text in made.items() if "cal AD" in text]


def test_litres_are_written_in_the_sign_of_the_project_on_every_page_of_the_dig() -> None:
    """No table, record or chart of contexts, samples and phases keeps the word where the project writes L."""
    made = pages(styled(STYLE), templates_folder(), None)
    shown = {name: re.sub(r"<[^>]*>", "", raw.decode()) for name, raw in made.items() if name.endswith(".html")}
    own = {name: text for name, text in shown.items() if name.split("/")[0] in ("contexts", "samples", "phases")}

    assert " per L" in own["contexts/c1.html"]
    assert not [name for name, text in own.items() if re.search(r"\blitres?\b", text, re.IGNORECASE)]


def test_a_chart_is_written_as_the_page_around_it() -> None:
    """Marks change in the text of the picture and in its table, and never in its coordinates or ids."""
    chart = Chart(
        id="a", svg='<svg><path d="M 1,200 3"/><text>1,200 per litre</text></svg>', title="1,200 of 3,000", alt="1,200",
        columns=("per litre",), rows=(("C1", "2–3"),),
    )  # fmt: skip
    told = retold(chart, writing_of(styled(STYLE)))

    assert told.svg == '<svg><path d="M 1,200 3"/><text>1\u202f200 per L</text></svg>'
    assert (told.title, told.columns, told.rows) == ("1\u202f200 of 3\u202f000", ("per L",), (("C1", "2-3"),))


def test_what_was_written_on_the_sheet_stays_as_it_was() -> None:
    """A count of the sheet is shown as written, whatever the style."""
    project = a_project(style=STYLE)
    row = project.counts[0]
    written = replace(row, count=replace(row.count, written="1,204"))
    edition = styled(STYLE)
    edition = replace(edition, project=replace(project, counts=(written, *project.counts[1:])))

    page = pages(edition, templates_folder(), None)[f"samples/{row.sample.lower()}.html"].decode()
    assert '<td class="n">1,204</td>' in page
