"""The main job on the example project: what it leaves behind, and that all of it can be followed back."""

from __future__ import annotations

import json
import re
import shutil
from dataclasses import dataclass
from html import unescape
from pathlib import Path

import pytest

from narrate.disclosure import disclosed
from narrate.pipeline.begin import begin
from narrate.pipeline.explain import explained
from narrate.pipeline.judged import Judged, judged, read
from narrate.pipeline.kept_units import kept_before
from narrate.pipeline.report import report
from narrate.pipeline.tell import tell
from narrate.pipeline.told import Told
from narrate.pipeline.unchanged import LIST, packs_ground
from tests.conftest import EXAMPLE


def pages(folder: Path) -> list[Path]:
    return sorted(folder.rglob("*.html"))


def refs_of(page: Path) -> set[str]:
    text = page.read_text(encoding="utf-8")
    return {ref for match in re.findall(r'data-refs="([^"]*)"', text) for ref in unescape(match).split()}


def test_both_sites_claims_and_measures_are_written(told_example: Path) -> None:
    """`tell` leaves what the interface names: two sites, claims.json and measures."""
    out = told_example / "out"

    assert (out / "review" / "index.html").is_file()
    assert (out / "public" / "index.html").is_file()
    assert json.loads((out / "claims.json").read_text(encoding="utf-8"))["format"] == "narrate claims 1"
    assert {path.name for path in (out / "measures").iterdir()} == {
        "samples.csv",
        "contexts.csv",
        "features.csv",
        "phases.csv",
        "site.csv",
    }


@pytest.mark.parametrize("site", ["review", "public"])
def test_every_sentence_resolves_to_rows(told_example: Path, judged_example: Judged, site: str) -> None:
    """Every sentence of every page names references, and `explain` leads each of them to rows that exist."""
    part = judged_example
    if site == "public":
        part = judged(disclosed(judged_example.project), judged_example.packs)
    refs = {ref for page in pages(told_example / "out" / site) for ref in refs_of(page)}
    lines = {
        path.relative_to(told_example).as_posix(): len(path.read_text(encoding="utf-8").splitlines())
        for folder in ("records", "counts", "narratives")
        for path in (told_example / folder).rglob("*")
        if path.is_file()
    } | {"project.yaml": len((told_example / "project.yaml").read_text(encoding="utf-8").splitlines())}
    unresolved = []
    for ref in sorted(refs):
        found = explained(told_example, part, ref)
        rows = re.findall(r"((?:records|counts|narratives)/[^:\s]+|project\.yaml):(\d+)", found.text)
        if not rows or any(int(line) > lines.get(path, 0) for path, line in rows):
            unresolved.append((ref, found.refusal))

    assert len(refs) > 100
    assert unresolved == []


def test_every_sentence_of_the_narratives_stands_on_a_page_with_its_references(told_example: Path) -> None:
    """No sentence reaches a page without the ids of its claims."""
    for site in ("review", "public"):
        for page in pages(told_example / "out" / site):
            for match in re.findall(r'<[^>]*class="said[^"]*"[^>]*>', page.read_text(encoding="utf-8")):
                assert re.search(r'data-refs="[^"]+"', match), (page.name, match)


@pytest.fixture(scope="module")
def told_elsewhere(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Another copy of the same project, told in a folder whose name has spaces and letters of elsewhere."""
    again = tmp_path_factory.mktemp("elsewhere") / "Grabung Süd – 窯 1"
    shutil.copytree(EXAMPLE, again, ignore=shutil.ignore_patterns("out"))
    assert tell(again, version="test").is_written
    return again


def test_the_same_input_gives_the_same_bytes(told_example: Path, told_elsewhere: Path) -> None:
    """Telling another copy of the same project writes byte for byte the same."""
    first, second = (
        {
            path.relative_to(folder): path.read_bytes()
            for name in ("review", "public", "measures", "claims.json")
            for path in [folder / "out" / name, *sorted((folder / "out" / name).rglob("*"))]
            if path.is_file()
        }
        for folder in (told_example, told_elsewhere)
    )

    assert first.keys() == second.keys()
    assert [str(path) for path in first if first[path] != second[path]] == []


def test_telling_again_changes_no_file(told_elsewhere: Path) -> None:
    """A second run on an unchanged project rewrites nothing."""

    def times() -> dict[Path, int]:
        return {p: p.stat().st_mtime_ns for p in sorted(told_elsewhere.rglob("*")) if p.is_file() and p.name != LIST}

    before = times()
    tell(told_elsewhere, version="test")

    assert times() == before


def test_after_a_telling_the_section_is_the_same(told_elsewhere: Path, tmp_path: Path) -> None:
    """What the last telling left is taken over, deeper than a section asks for; without it no word is another."""
    bare = tmp_path / "bare"
    shutil.copytree(told_elsewhere, bare, ignore=shutil.ignore_patterns("out"))
    sections = []
    for folder in (told_elsewhere, bare):
        # What was kept is believed in the folder where it was made.
        assert bool(kept_before(folder, packs_ground(folder))) is (folder is told_elsewhere)
        path, problems = report(folder, version="test", medium="markdown")
        assert path is not None, problems
        sections.append(path.read_bytes())

    assert sections[0] == sections[1]


def test_nothing_restricted_is_in_any_byte_of_the_public_site(told_example: Path, judged_example: Judged) -> None:
    """No id, name, coordinate or description of the restricted context stands in the public site, nor any location."""
    project = judged_example.project
    hidden = project.disclosure.restricted_contexts
    secrets = set(hidden)
    for context in project.contexts:
        secrets |= set(context.location.values())
        if context.id in hidden:
            secrets |= {text for text in (context.description, context.note, context.feature) if text}
    for sample in project.samples:
        if sample.context in hidden:
            secrets |= {sample.id, *([sample.note] if sample.note else [])}
    assert hidden and len(secrets) >= 5
    leaks = []
    for path in sorted((told_example / "out" / "public").rglob("*")):
        if path.is_file():
            content = path.read_bytes()
            leaks += [
                (path.name, secret)
                for secret in secrets
                if secret.encode() in content
                and re.search(rb"(?<![0-9A-Za-z])" + re.escape(secret.encode()) + rb"(?![0-9A-Za-z])", content)
            ]

    assert leaks == []


def test_the_review_site_holds_what_the_public_site_does_not(told_example: Path, judged_example: Judged) -> None:
    """The test above can fail: the restricted context does stand in the review site."""
    (hidden,) = judged_example.project.disclosure.restricted_contexts

    assert any(hidden in page.read_text(encoding="utf-8") for page in pages(told_example / "out" / "review"))


def test_errors_leave_what_out_held_before(told_example: Path, tmp_path: Path) -> None:
    """With an error in a record nothing in out/ is written over."""
    copy = tmp_path / "example_project"
    shutil.copytree(told_example, copy)
    before = {p: (p.read_bytes(), p.stat().st_mtime_ns) for p in sorted((copy / "out").rglob("*")) if p.is_file()}
    (copy / "records" / "broken.yaml").write_text("samples:\n  - {id: S999, context: nowhere}\n", encoding="utf-8")
    told = tell(copy, version="test")
    after = {p: (p.read_bytes(), p.stat().st_mtime_ns) for p in sorted((copy / "out").rglob("*")) if p.is_file()}

    assert not told.is_written
    assert before == after


def test_changed_counts_renew_drafts_that_nobody_touched(tmp_path: Path) -> None:
    """A draft without edits follows the counts."""
    folder = tmp_path / "dig"
    begin(folder)
    sheet = folder / "counts" / "first-sheet.csv"
    told = []
    for text in (sheet.read_text(encoding="utf-8"), re.sub(r",(\d+),", r",\g<1>0,", sheet.read_text(encoding="utf-8"))):
        sheet.write_text(text, encoding="utf-8")
        assert tell(folder, version="test").is_written
        told.append({p.name: p.read_text(encoding="utf-8") for p in (folder / "narratives" / "report").glob("*.md")})

    assert told[0].keys() == told[1].keys()
    assert [name for name in told[0] if told[0][name] == told[1][name]] == []


def test_the_example_reads_without_errors() -> None:
    """The example project has no errors, and only warnings that it is meant to have."""
    problems = read(EXAMPLE).problems

    assert [p.message for p in problems if p.severity == "error"] == []
    assert len(problems) <= 3


@dataclass(frozen=True, slots=True, kw_only=True)
class Edited:
    """The example after edits of three kinds that do not meet, and what telling it then said."""

    folder: Path
    told: Told
    own: Path
    """A draft with a sentence of the analyst, as she left it."""
    own_words: str
    unwary: Path
    """A draft in which her sentences name what is restricted."""
    secrets: tuple[str, ...]


@pytest.fixture(scope="module")
def edited(told_example: Path, judged_example: Judged, tmp_path_factory: pytest.TempPathFactory) -> Edited:
    copy = tmp_path_factory.mktemp("edited") / "example_project"
    shutil.copytree(told_example, copy)
    head = copy / "project.yaml"
    text = head.read_text(encoding="utf-8")
    assert "restricted_contexts: [" in text
    head.write_text(re.sub(r"restricted_contexts: \[", "restricted_contexts: [C01, ", text), encoding="utf-8")
    project = judged_example.project
    (hidden,) = project.disclosure.restricted_contexts
    sample = next(s.id for s in project.samples if s.context == hidden)
    easting = next(v for c in project.contexts for v in c.location.values())
    secrets = (str(hidden), str(sample), easting)
    own, unwary = (copy / "narratives" / "public" / f"{id}.md" for id in ("C02", "C03"))
    own_words = own.read_text(encoding="utf-8") + "\nA sentence of my own about the pale ash.\n"
    own.write_text(own_words, encoding="utf-8")
    beside = "".join(f"\nIt lies beside {secret}, quoth nobody.\n" for secret in secrets)
    unwary.write_text(unwary.read_text(encoding="utf-8") + beside, encoding="utf-8")
    told = tell(copy, version="test")
    return Edited(folder=copy, told=told, own=own, own_words=own_words, unwary=unwary, secrets=secrets)


def test_an_edited_draft_is_kept_and_told(edited: Edited) -> None:
    """Words that the analyst wrote into a draft survive the next run and stand on the page."""
    assert edited.own.read_text(encoding="utf-8") == edited.own_words
    assert any(
        "A sentence of my own about the pale ash." in p.read_text(encoding="utf-8")
        for p in pages(edited.folder / "out" / "public")
    )


def test_edited_words_that_name_what_is_restricted_are_kept_back_and_told(edited: Edited) -> None:
    """Ids, samples and coordinates in words for the public reach no byte of the public site, and each is a warning."""
    content = b"".join(p.read_bytes() for p in sorted((edited.folder / "out" / "public").rglob("*")) if p.is_file())
    told = [(p.place.path, p.code) for p in edited.told.problems if p.place.path.startswith("narratives/")]
    words = edited.unwary.read_text(encoding="utf-8")

    assert b"quoth nobody" not in content
    assert [one for one in told if not one[0].endswith("/C01.md")] == [("narratives/public/C03.md", "N210")] * 3
    assert all(secret in words for secret in edited.secrets)


def test_a_narrative_of_a_context_restricted_later_is_told(edited: Edited) -> None:
    """A context becomes restricted after its words were drafted: its page goes, and the file that is left is named."""
    assert edited.told.is_written
    assert not (edited.folder / "out" / "public" / "contexts" / "c01.html").exists()
    assert "narratives/public/C01.md" in [p.place.path for p in edited.told.problems if p.code == "N210"]
