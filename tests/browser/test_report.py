"""The section as a page of HTML, in a browser: no barrier that axe finds, and read in the order of the outline."""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from playwright.sync_api import Browser

AXE = Path(os.environ.get("AXE_JS") or Path(__file__).parents[2] / "node_modules" / "axe-core" / "axe.min.js")


@pytest.fixture(scope="module")
def section(told_example: Path) -> Path:
    return told_example / "out" / "report" / "section.html"


def test_axe_finds_no_barrier_in_the_section(browser: Browser, section: Path) -> None:
    """axe-core (npm), rules for contrast, headings, tables and regions among them, finds nothing in a narrow window."""
    if not AXE.is_file():
        pytest.fail(f"axe-core is not at {AXE}; run: npm install --no-save axe-core@4")
    context = browser.new_context(viewport={"width": 360, "height": 900}, bypass_csp=True)
    page = context.new_page()
    page.goto(section.as_uri())
    page.add_script_tag(path=str(AXE))
    found = page.evaluate("axe.run({preload: false})")
    context.close()

    assert [f"{v['id']} {v['nodes'][0]['html'][:150]} ({len(v['nodes'])})" for v in found["violations"]] == []
    assert {"color-contrast", "heading-order"} <= {rule["id"] for rule in found["passes"]}


def test_the_section_is_read_in_the_order_in_which_it_is_seen(browser: Browser, section: Path) -> None:
    """Nothing is moved by style: each block of the page lies below the one before it."""
    context = browser.new_context(viewport={"width": 1280, "height": 900})
    page = context.new_page()
    page.goto(section.as_uri())
    tops = page.evaluate("[...document.querySelector('main').children].map(e => e.getBoundingClientRect().top)")
    context.close()

    assert len(tops) > 100
    assert tops == sorted(tops)
