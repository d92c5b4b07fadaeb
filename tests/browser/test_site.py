"""The sites of the example project in a browser: one page of each kind, light and dark, narrow and wide."""

from __future__ import annotations

import itertools
import os
import re
import shutil
import subprocess
from collections.abc import Iterator
from dataclasses import dataclass
from html.parser import HTMLParser
from pathlib import Path
from typing import Literal
from urllib.parse import unquote

import pytest
from playwright.sync_api import Browser, Page

KINDS = (
    "index.html",
    "story.html",
    "contexts/index.html",
    "contexts/c13.html",
    "evidence/c13.html",
    "evidence/site.html",
    "samples/index.html",
    "samples/s001.html",
    "phases/index.html",
    "phases/early.html",
    "plants/index.html",
    "plants/zea-mays.html",
    "year.html",
    "hearth-and-table.html",
    "fields.html",
    "method.html",
    "measures/index.html",
    "measures/density.html",
    "rules/index.html",
    "rules/fuel.html",
    "sources.html",
    "glossary.html",
    "data.html",
    "search.html",
)
FOR_THE_TEAM = ("review-queue.html", "ranking.html", "weak-and-unstable.html", "words.html", "track-record.html")
FOR_VISITORS = ("labels/index.html", "labels/c13.html")
REVIEW_PAGES = [f"review/{kind}" for kind in (*KINDS, *FOR_THE_TEAM)]
SITE_PAGES = [*REVIEW_PAGES, *(f"public/{kind}" for kind in (*KINDS, *FOR_VISITORS))]
ROOT = Path(__file__).parents[2]
AXE = Path(os.environ.get("AXE_JS") or ROOT / "node_modules" / "axe-core" / "axe.min.js")
VNU = Path(os.environ.get("VNU_JAR") or ROOT / "node_modules" / "vnu-jar" / "build" / "dist" / "vnu.jar")


@dataclass(frozen=True, slots=True, kw_only=True)
class Opened:
    """What one page of each kind said, asked for and how wide it was, at one width of the window."""

    said: list[str]
    asked: list[str]
    too_wide: dict[str, list[str]]
    """By scheme."""


@pytest.fixture(params=(360, 1280), scope="module")
def opened(request: pytest.FixtureRequest, browser: Browser, sites: Path) -> Opened:
    """Every page is opened once, all its panels too, and measured in light, then in the dark."""
    found = Opened(said=[], asked=[], too_wide={"light": [], "dark": []})
    context = browser.new_context(viewport={"width": request.param, "height": 800}, offline=True)
    window = context.new_page()
    window.on("console", lambda message: found.said.append(message.text))
    window.on("pageerror", lambda error: found.said.append(str(error)))
    window.on("request", lambda request: found.asked.append(request.url))
    for name in SITE_PAGES:
        window.emulate_media(color_scheme="light")
        window.goto((sites / name).as_uri())
        window.evaluate("document.querySelectorAll('details').forEach(d => d.open = true)")
        for scheme, too_wide in found.too_wide.items():
            window.emulate_media(color_scheme=scheme)  # type: ignore[arg-type]
            wide, shown = window.evaluate("[document.documentElement.scrollWidth, window.innerWidth]")
            if wide > shown:
                too_wide.append(f"{name} is {wide} px wide in a window of {shown} px")
    context.close()
    return found


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_pages_stand_by_themselves(opened: Opened, scheme: str) -> None:
    """No page of any kind logs an error, asks for anything but files, or scrolls sideways, even fully opened."""
    assert opened.said == []
    assert len(opened.asked) >= len(SITE_PAGES)
    assert [url for url in opened.asked if not url.startswith("file:")] == []
    assert opened.too_wide[scheme] == []


def test_no_script_asks_whether_it_is_dark(sites: Path) -> None:
    """A page that was opened in light and is then seen in the dark is the one that is opened in the dark."""
    scripts = [path for path in sites.rglob("*.js") if path.parts[-2] != "search"]

    assert scripts
    assert [path.name for path in scripts if re.search(rb"matchMedia|color-scheme", path.read_bytes())] == []


@pytest.mark.parametrize("name", ["public/year.html", "review/hearth-and-table.html"])
def test_tables_of_empty_columns_are_lists_on_a_phone(browser: Browser, sites: Path, name: str) -> None:
    """At 390 px no cell of such a table is empty or beside the window; at 1,280 px all columns stand side by side."""
    page = browser.new_page(viewport={"width": 390, "height": 800})
    page.goto((sites / name).as_uri())
    cells = "[...document.querySelectorAll('.stacked tbody td')].filter(c => c.offsetParent !== null)"
    told = page.evaluate(f"{cells}.map(c => [c.innerText.trim(), c.getBoundingClientRect().right])")
    page.set_viewport_size({"width": 1280, "height": 800})
    all_cells = page.evaluate(f"{cells}.length")
    page.close()

    assert len(told) > 10
    assert [cell for cell in told if cell[0] in ("", "–") or cell[1] > 390] == []
    assert all_cells > 1.4 * len(told)


@pytest.fixture(scope="module")
def plain(browser: Browser) -> Iterator[Page]:
    """One page for tests that only look at what was loaded; each goes to its own address first."""
    page = browser.new_page()
    yield page
    page.close()


@pytest.mark.parametrize("name", SITE_PAGES)
def test_headings_and_pictures_are_in_order(plain: Page, sites: Path, name: str) -> None:
    """One h1, no level left out, every picture named, every table headed, no id twice, one main part."""
    plain.goto((sites / name).as_uri())
    levels = plain.evaluate("[...document.querySelectorAll('h1,h2,h3,h4,h5,h6')].map(h => +h.tagName[1])")
    unnamed = plain.evaluate(
        """[...document.querySelectorAll('svg, img')].filter(p => p.tagName == 'IMG' ? !p.alt
           : p.getAttribute('role') != 'img' || !p.querySelector('title')?.textContent).length"""
    )
    ids = plain.evaluate("[...document.querySelectorAll('[id]')].map(e => e.id)")
    unheaded = plain.evaluate(
        "[...document.querySelectorAll('table')].filter(t => !t.caption || !t.querySelector('th[scope]')).length"
    )

    assert levels.count(1) == 1 and levels[0] == 1
    assert all(after <= before + 1 for before, after in itertools.pairwise(levels))
    assert unnamed == 0
    assert unheaded == 0
    assert sorted(ids) == sorted(set(ids))


class _Links(HTMLParser):
    def __init__(self, text: str) -> None:
        super().__init__()
        self.hrefs: list[str] = []
        self.ids: set[str] = set()
        self.feed(text)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        for key, value in attrs:
            if key == "id" and value:
                self.ids.add(value)
            if key in ("href", "src"):
                self.hrefs.append(value or "")


@pytest.mark.parametrize("site", ["review", "public"])
def test_every_link_of_the_whole_site_leads_somewhere(sites: Path, site: str) -> None:
    """Every address on every page is a file of the site, and every fragment an id on that page."""
    root = (sites / site).resolve()
    read = {path.resolve(): _Links(path.read_text(encoding="utf-8")) for path in root.rglob("*.html")}
    broken = set()
    for page, links in read.items():
        for href in links.hrefs:
            path, _, fragment = href.partition("#")
            target = (page.parent / unquote(path)).resolve() if path else page
            is_there = href != "" and target.is_relative_to(root) and target.is_file()
            if not is_there or (fragment and fragment not in read[target].ids):
                broken.add(f"{page.relative_to(root)} -> {href}")

    assert len(read) > 50
    assert broken == set()


def test_the_evidence_opens_by_keyboard(browser: Browser, sites: Path) -> None:
    """The panel beneath a paragraph is reached by Tab and opened by Enter."""
    page = browser.new_page()
    page.goto((sites / "public/contexts/c13.html").as_uri())
    panel = page.locator("details.evidence").first
    for _ in range(60):
        page.keyboard.press("Tab")
        if panel.evaluate("d => d.firstElementChild === document.activeElement"):
            break
    page.keyboard.press("Enter")
    is_open = panel.evaluate("d => d.open")
    has_rows = panel.locator(".rows").first.is_visible()
    page.close()

    assert is_open
    assert has_rows


def test_the_speck_after_a_sentence_opens_its_evidence(browser: Browser, sites: Path) -> None:
    """A click on a speck shows what the sentence rests on, with no script on the page."""
    page = browser.new_page()
    page.goto((sites / "review/contexts/c13.html").as_uri())
    speck = page.locator("a.speck").nth(1)
    target = page.locator(f"[id='{(speck.get_attribute('href') or '')[1:]}']")
    was_shown = target.is_visible()
    speck.click()
    target.wait_for(state="visible")
    page.close()

    assert not was_shown


def test_the_first_tab_skips_to_the_text(browser: Browser, sites: Path) -> None:
    """The first thing that Tab reaches is a visible link past the menu, and it works."""
    page = browser.new_page()
    page.goto((sites / "public/index.html").as_uri())
    page.keyboard.press("Tab")
    is_in_sight = page.evaluate("document.activeElement.getBoundingClientRect().left >= 0")
    page.keyboard.press("Enter")
    page.wait_for_function("document.activeElement.id == 'main'")
    page.close()

    assert is_in_sight


def test_print_leaves_out_the_menu_and_keeps_the_words(browser: Browser, sites: Path) -> None:
    """On paper there is no menu; the narrative and the tables stay, dark on light even where the screen is dark."""
    page = browser.new_page()
    page.goto((sites / "public/contexts/c13.html").as_uri())
    page.emulate_media(media="print", color_scheme="dark")
    inks = page.evaluate("['--ink', '--chart-ink'].map(n => getComputedStyle(document.body).getPropertyValue(n))")
    shown = {what: page.locator(what).first.is_visible() for what in ("nav", ".told", "table.measures", "figure svg")}
    page.close()

    assert inks == ["#000", "#24211e"]
    assert shown == {"nav": False, ".told": True, "table.measures": True, "figure svg": True}


AXE_PAGES = [
    *REVIEW_PAGES,
    *(f"public/{name}" for name in ("index.html", "contexts/c13.html", "plants/zea-mays.html", *FOR_VISITORS)),
]


@pytest.mark.parametrize(("width", "scheme"), [(360, "light"), (1280, "dark")])
def test_axe_finds_no_barrier(browser: Browser, sites: Path, width: int, scheme: Literal["light", "dark"]) -> None:
    """axe-core (npm) finds nothing on a page of each kind, narrow in light and wide in the dark, with panels open."""
    if not AXE.is_file():
        pytest.fail(f"axe-core is not at {AXE}; run: npm install --no-save axe-core@4")
    told: list[str] = []
    context = browser.new_context(viewport={"width": width, "height": 900}, color_scheme=scheme, bypass_csp=True)
    page = context.new_page()
    for name in AXE_PAGES:
        page.goto((sites / name).as_uri())
        page.evaluate("document.querySelectorAll('details').forEach((d, i) => d.open = i < 12)")
        page.add_script_tag(path=str(AXE))
        assert page.evaluate("matchMedia('(prefers-color-scheme: dark)').matches") is (scheme == "dark")
        found = page.evaluate("axe.run({resultTypes: ['violations'], preload: false}).then(r => r.violations)")
        told += [f"{name}: {v['id']} {v['nodes'][0]['html'][:150]} ({len(v['nodes'])})" for v in found]
    context.close()

    assert told == []


def test_every_page_is_valid_html(sites: Path) -> None:
    """The checker of the W3C (vnu, npm vnu-jar) finds no error on any page of both sites."""
    if not VNU.is_file() or shutil.which("java") is None:
        pytest.fail(f"java or {VNU} is missing; run: npm install --no-save vnu-jar@26, and install a Java runtime")
    call = ["java", "-jar", str(VNU), "--errors-only", "--skip-non-html", "--format", "gnu"]
    done = subprocess.run(
        [*call, str(sites / "review"), str(sites / "public")], capture_output=True, text=True, check=False
    )

    assert done.stderr == ""
    assert done.returncode == 0
