"""Two hundred hostile strings in every field of a project: shown as text on every page, and nothing of them acts."""

from __future__ import annotations

import csv
import io
import re
from dataclasses import dataclass, field
from html import unescape
from pathlib import Path

import pytest
from openpyxl import load_workbook
from playwright.sync_api import Browser, Request

from narrate.pipeline.deposit import deposit
from narrate.pipeline.report import report
from narrate.pipeline.tell import tell
from tests.hostile.payloads import UNSEEN, payloads
from tests.hostile.project import hostile_project, with_her_words

FOUND = """() => {
  const found = [];
  for (const element of document.querySelectorAll("*")) {
    for (const { name, value } of element.attributes) {
      if (/^on/i.test(name)) found.push(`${element.tagName} ${name}`);
      if (/^(href|src|action|formaction|data|xlink:href|srcdoc)$/i.test(name)
          && /^[\\s\\u0000-\\u001f]*(javascript|vbscript|data:text|data:image.svg)/i.test(value))
        found.push(`${element.tagName} ${name}=${value}`);
    }
    if (/^(iframe|object|embed|base|frame|applet|portal)$/i.test(element.tagName)) found.push(element.tagName);
    if (element.tagName === "META" && /refresh/i.test(element.httpEquiv)) found.push("META refresh");
    if (element.tagName.toUpperCase() === "SCRIPT" && !element.getAttribute("src")
        && element.type !== "application/ld+json" && element.type !== "application/json") found.push("SCRIPT inline");
    if (element.tagName === "FORM" && element.getAttribute("action") && /:/.test(element.getAttribute("action")))
      found.push("FORM elsewhere");
  }
  if (window.ran !== undefined) found.push(`ran ${window.ran}`);
  if (/^ran/.test(document.title)) found.push(document.title);
  return found;
}"""


SHOWN = """() => document.body.textContent + " " + [...document.querySelectorAll("[alt]")].map(i => i.alt).join(" ")"""


@pytest.fixture(scope="module")
def hostile(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = hostile_project(tmp_path_factory.mktemp("hostile") / "dig", payloads(200), contexts=10)
    assert tell(folder, version="test").is_written
    with_her_words(folder, payloads(200))
    assert tell(folder, version="test").is_written
    return folder


def test_the_two_hundred_are_two_hundred() -> None:
    """No string is there twice."""
    assert len(set(payloads(200))) == 200


@dataclass(slots=True)
class Looked:
    """What was seen on every page of both sites, fully opened."""

    pages: int = 0
    acted: list[str] = field(default_factory=list)
    text: str = ""
    """All text and alternative text, with one blank between words."""


@pytest.fixture(scope="module")
def looked(hostile: Path, browser: Browser) -> Looked:
    found, seen = Looked(), []
    context = browser.new_context(offline=True)
    page = context.new_page()
    page.on("dialog", lambda dialog: (found.acted.append(f"{page.url}: dialog {dialog.message}"), dialog.dismiss()))

    def note(asked: Request) -> None:
        if not asked.url.startswith(("file:", "data:")):
            found.acted.append(f"{page.url}: {asked.url}")

    page.on("request", note)
    for path in sorted((hostile / "out").glob("*/**/*.html")):
        page.goto(path.as_uri())
        page.evaluate("document.querySelectorAll('details').forEach(d => d.open = true)")
        found.acted += [f"{path.name}: {what}" for what in page.evaluate(FOUND)]
        seen.append(page.evaluate(SHOWN))
        found.pages += 1
    context.close()
    found.text = " ".join(" ".join(seen).split())
    return found


def test_nothing_runs_on_any_page(looked: Looked) -> None:
    """On every page of both sites no string became an element, a handler, a request or a link that acts."""
    assert looked.pages > 100
    assert looked.acted == []


def test_the_strings_are_shown_as_they_were_typed(looked: Looked, hostile: Path) -> None:
    """The strings stand on the pages as text, or in the section: they were not dropped to make the pages safe."""
    path, problems = report(hostile, version="test", medium="html")
    assert path is not None, problems
    section = " ".join(unescape(re.sub("<[^>]*>", "", path.read_text(encoding="utf-8"))).split())
    typed = [" ".join(text.split()) for text in payloads(200)]

    assert [text[:80] for text in typed if text not in looked.text and text not in section] == []


@pytest.mark.parametrize("unseen", UNSEEN)
def test_control_characters_are_refused(tmp_path: Path, unseen: str) -> None:
    """A control character in a sheet is a problem with its place, and nothing is written."""
    folder = hostile_project(tmp_path / "dig", ["x"], contexts=1)
    sheet = folder / "counts" / "light.csv"
    row = f'"S0 x","Zea mays","kernel","1","{unseen}"\n'
    sheet.write_text(sheet.read_text(encoding="utf-8") + row, encoding="utf-8")
    told = tell(folder, version="test")
    errors = [(p.code, p.place.path, p.place.line) for p in told.problems if p.severity == "error"]

    assert not told.is_written
    assert errors == [("N102", "counts/light.csv", 6)]


def test_no_table_for_a_spreadsheet_begins_a_formula(hostile: Path) -> None:
    """In every CSV and workbook that is made, no cell of text begins a formula; numbers stay numbers."""
    paths, problems = deposit(hostile, version="test")
    assert paths, problems
    bad = []
    for path in sorted((hostile / "out").rglob("*.csv")):
        if path.relative_to(hostile / "out").parts[0] == "deposit":
            continue  # an archive keeps what was written; its readme says so
        for row in csv.reader(io.StringIO(path.read_text(encoding="utf-8-sig"))):
            bad += [(path.name, cell[:40]) for cell in row if re.match(r"[=@\t\r]|[+-](?!([0-9.,e+-]*|-+|\++)$)", cell)]
    for path in (hostile / "out").rglob("*.xlsx"):
        book = load_workbook(path)
        bad += [(path.name, str(c.value)[:40]) for s in book for r in s.iter_rows() for c in r if c.data_type == "f"]

    assert bad == []


@pytest.mark.parametrize("medium", ["html", "markdown", "word"])
def test_the_section_is_made_from_hostile_words(hostile: Path, medium: str) -> None:
    """Every medium of the section is made; the HTML has no element of their making."""
    path, problems = report(hostile, version="test", medium=medium)

    assert path is not None, problems
    if medium == "html":
        text = path.read_text(encoding="utf-8")
        assert re.findall(r"<(script|iframe|object|base|form)\b", text) == []
        assert re.findall(r"<[^>\"']*\son[a-z]+\s*=", text) == []


def test_nothing_outside_the_project_is_written(hostile: Path) -> None:
    """All that was made lies within the project folder, by its own name."""
    assert sorted(path.name for path in hostile.parent.iterdir()) == ["dig"]
    assert not [path for path in hostile.rglob("*") if path.is_symlink()]


def test_the_section_is_set_as_pdf_from_hostile_words(tmp_path: Path) -> None:
    """The PDF is made where its font has the letters, and refused with the letter named where it has not."""
    letters = [text for text in payloads(200) if all(ord(letter) < 0x2500 for letter in text)]
    folder = hostile_project(tmp_path / "dig", letters, contexts=12)
    path, problems = report(folder, version="test", medium="pdf")
    assert path is not None, problems
    whole = path.read_bytes()

    more = hostile_project(tmp_path / "more", ["ﷺ"], contexts=1)
    refused, problems = report(more, version="test", medium="pdf")

    assert whole.startswith(b"%PDF-")
    assert refused is None
    assert [problem.code for problem in problems if "ﷺ" in problem.message and problem.severity == "error"] == ["N119"]
