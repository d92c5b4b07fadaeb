"""Pages whose keys stand are left as they are, and whatever a page shows moves its key."""

from __future__ import annotations

import json
import os
import re
from dataclasses import replace
from pathlib import Path

import pytest

from narrate.web import pages as web_pages
from narrate.web.build import build
from narrate.web.kept_pages import mark_of, remember, standing
from narrate.web.page_keys import ASKED_OF_SITE, KEYED
from narrate.web.templates import templates_folder
from tests.web.editions import an_edition

KEPT = ".narrate-pages-site.json"


@pytest.fixture
def made(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """Paths of pages that were made, as they are."""
    paths: list[str] = []
    rendered = web_pages._rendered

    def noted(jinja, site, page, it, menu):
        paths.append(page.path)
        return rendered(jinja, site, page, it, menu)

    monkeypatch.setattr(web_pages, "_rendered", noted)
    return paths


def built(folder: Path, edition=None, ground: str = "same") -> dict[str, bytes]:
    site = folder / "site"
    build(edition or an_edition(), templates_folder(), site, kept=folder / KEPT, ground=ground)
    return {path.relative_to(site).as_posix(): path.read_bytes() for path in site.rglob("*") if path.is_file()}


def keyed(paths: list[str]) -> set[str]:
    kinds = {"contexts/", "samples/", "evidence/"}
    lists = r"(contexts|samples)/(index|[0-9-]+)\.html"
    return {path for path in paths if any(map(path.startswith, kinds)) and not re.fullmatch(lists, path)}


def test_pages_that_stand_are_not_made_again(tmp_path, made):
    """A second build of the same makes no page of a sample or context, and leaves the same bytes."""
    first = built(tmp_path)
    assert keyed(made)
    made.clear()

    assert built(tmp_path) == first
    assert keyed(made) <= {"evidence/site.html", "evidence/early.html", "evidence/late.html"}


def test_another_ground_makes_every_page(tmp_path, made):
    """Where the program, the packs or the project's own file changed, nothing is left as it was."""
    built(tmp_path)
    every = set(made)
    made.clear()

    built(tmp_path, ground="other")

    assert set(made) == every


def _note_of_a_context(edition):
    first, *others = edition.project.contexts
    return replace(edition, project=replace(edition.project, contexts=(replace(first, note="Seen anew."), *others)))


def _count_of_a_row(edition):
    first, *others = edition.project.counts
    counted = replace(first, count=replace(first.count, written="911"))
    return replace(edition, project=replace(edition.project, counts=(counted, *others)))


def _says_of_an_argument(edition):
    held = next(c for c in edition.claims if c.verdict == "holds" and c.arguments and c.about.level == "context")
    first, *others = held.arguments
    changed = replace(held, support=held.support / 2, arguments=(replace(first, says="because of that"), *others))
    claims = edition.claims
    about = tuple(changed if claim is held else claim for claim in claims.about(held.about))
    return replace(
        edition,
        claims=replace(
            claims,
            columns=None,
            sums=None,
            by_id={**claims.by_id, held.id: changed},
            by_subject={**claims.by_subject, held.about: about},
        ),
    )


def _a_word_of_a_narrative(edition):
    key, told = next((key, n) for key, n in edition.narratives.items() if key[1].level == "context" and n.sentences())
    section, *others = told.sections
    paragraph, *rest = section.paragraphs
    said = (replace(paragraph[0], text="It was otherwise."), *paragraph[1:])
    changed = replace(told, sections=(replace(section, paragraphs=(said, *rest)), *others))
    return replace(edition, narratives={**edition.narratives, key: changed})


CHANGES = {
    "a note of a context": _note_of_a_context,
    "a count as written": _count_of_a_row,
    "an argument": _says_of_an_argument,
    "a word of a narrative": _a_word_of_a_narrative,
}


@pytest.mark.parametrize("change", CHANGES)
def test_a_change_leaves_the_site_of_a_fresh_build(tmp_path, change):
    """What a page shows changed: the site built upon the old one is the site built anew, and it is not the old one."""
    edition = CHANGES[change](an_edition())
    before = built(tmp_path)
    fresh = built(tmp_path / "fresh", edition)

    after = built(tmp_path, edition)

    assert after == fresh
    assert after != before


def _damaged(folder: Path) -> None:
    raw = (folder / KEPT).read_bytes()
    (folder / KEPT).write_bytes(raw.replace(b'"contexts/', b'"contextz/', 1))


SPOILT = {
    "the list is damaged": _damaged,
    "the list is cut": lambda folder: os.truncate(folder / KEPT, 300),
    "the list is of another kind": lambda folder: (folder / KEPT).write_text('{"format": "x"}\n{}'),
    "the list is no list": lambda folder: (folder / KEPT).write_text("[" * 100_000),
    "the list is gone": lambda folder: (folder / KEPT).unlink(),
}


@pytest.mark.parametrize("spoil", SPOILT)
def test_a_list_that_is_not_whole_is_not_believed(tmp_path, made, spoil):
    """Every page is made again where the list of those that stand is damaged, cut, foreign or gone."""
    built(tmp_path)
    every = set(made)
    made.clear()
    SPOILT[spoil](tmp_path)

    built(tmp_path)

    assert set(made) == every


def test_a_page_that_was_touched_is_made_again(tmp_path):
    """A page that somebody edited, keeping its size and its time, comes out as it has to be."""
    first = built(tmp_path)
    page = next((tmp_path / "site" / "contexts").glob("c*.html"))
    about = page.stat()
    page.write_bytes(page.read_bytes().replace(b"e", b"a"))
    os.utime(page, ns=(about.st_atime_ns, about.st_mtime_ns))

    assert built(tmp_path) == first


def test_a_list_that_came_with_a_folder_is_not_believed(tmp_path):
    """A page put there with a list that vouches for it, as another machine could make it, is written over."""
    first = built(tmp_path)
    kept, page = tmp_path / KEPT, next((tmp_path / "site" / "contexts").glob("c*.html"))
    page.write_bytes(b"<script>alert(1)</script>")
    from narrate.web.kept_pages import FORMAT, mark_of

    said = json.loads(kept.read_bytes().partition(b"\n")[2])
    name = page.relative_to(tmp_path / "site").as_posix()
    said[name][1:] = [mark_of(page.read_bytes()), page.stat().st_mtime_ns, said[name][3], page.stat().st_size]
    body = json.dumps(said).encode()
    kept.write_bytes(json.dumps({"format": FORMAT, "sum": mark_of(body)}).encode() + b"\n" + body)

    assert built(tmp_path) == first


@pytest.mark.parametrize("path", ["../outside.html", "", "/etc/hostname", "a/../../outside.html"])
def test_a_list_leads_to_no_file_outside_the_site(tmp_path, path):
    """A page outside the folder of the site never stands, whatever the list says of it."""
    (tmp_path / "site" / "a").mkdir(parents=True)
    (tmp_path / "site" / "inside.html").write_text("in")
    (tmp_path / "outside.html").write_text("out")
    marks = {"inside.html": ("key", mark_of(b"in")), path: ("key", mark_of(b"out"))}
    remember(tmp_path / KEPT, tmp_path / "site", marks)

    assert list(standing(tmp_path / KEPT, tmp_path / "site")) == ["inside.html"]


def test_templates_of_keyed_pages_ask_the_site_for_nothing_else():
    """A template of a page with a key that asks the site for something new has to be told to `page_keys`."""
    asked = {name for kind in KEYED for name in _asked(f"pages/{kind}.html", set())}

    assert asked <= ASKED_OF_SITE


def _asked(name: str, seen: set[str]) -> set[str]:
    if name in seen:
        return set()
    seen.add(name)
    text = (templates_folder() / name).read_text(encoding="utf-8")
    inner = "".join(re.findall(r"\{[{%](.*?)[%}]\}", text, flags=re.DOTALL))
    found = set(re.findall(r"(?<![/\w.])site\.((?:edition\.|project\.|wording\.)?\w+)", inner))
    for other in re.findall(r'"((?:panels/)?\w+\.html)"', inner):
        found |= _asked(other, seen)
    return found
