"""Budgets in bytes and requests, held on the example project."""

from __future__ import annotations

from fnmatch import fnmatchcase
from pathlib import Path

import pytest
from playwright.sync_api import Browser

KB = 1024
BUDGETS = {
    "index.html": 60,
    "samples/*.html": 100,
    "plants/*.html": 60,
    "story.html": 180,
    "*.html": 150,
    "assets/*": 40,
    "search/*.js": 300,
}
"""Kilobytes that no single file of a kind may pass; the first that fits counts. 150 would be the most for a page of
25 rows and 4 figures: the heaviest of this dig hold more of both, and stay below it. The story of the whole dig bears what all four narratives of it rest on."""


@pytest.mark.parametrize("site", ["review", "public"])
def test_no_page_is_heavier_than_its_budget(sites: Path, site: str) -> None:
    """No page passes 150 KB, what a page of 25 rows and 4 figures may weigh, and many hold more of both."""
    heavy = []
    for path in sorted((sites / site).rglob("*")):
        name = path.relative_to(sites / site).as_posix()
        most = next((kb for pattern, kb in BUDGETS.items() if fnmatchcase(name, pattern)), None)
        if path.is_file() and most is not None and path.stat().st_size > most * KB:
            heavy.append(f"{name}: {path.stat().st_size / KB:.0f} KB of {most}")

    assert heavy == []


@pytest.mark.parametrize(("site", "most_mb"), [("review", 13), ("public", 10)])
def test_a_whole_site_stays_small(sites: Path, site: str, most_mb: int) -> None:
    """51 samples of 22 contexts with all their evidence."""
    size = sum(path.stat().st_size for path in (sites / site).rglob("*") if path.is_file())

    assert size < most_mb * KB * KB


def test_the_overview_comes_at_once_on_a_slow_phone(browser: Browser, sites: Path) -> None:
    """At 1.6 Mbit/s, a budget of one second is 200 KB and few requests; nothing waits for script."""
    page = browser.new_page(viewport={"width": 360, "height": 800})
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.goto((sites / "public/index.html").as_uri())
    page.wait_for_load_state("networkidle")
    blocking = page.evaluate("[...document.querySelectorAll('script[src]')].filter(s => !s.defer && !s.async).length")
    page.close()
    files = {Path(url.removeprefix("file://").partition("#")[0]) for url in asked}

    assert len(files) <= 6
    assert sum(file.stat().st_size for file in files) < 120 * KB
    assert blocking == 0
