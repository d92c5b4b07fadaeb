"""Building a site: what is written, what is left alone, what is refused."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path

import pytest

from narrate.model.ids import ContextId, PhaseId, SampleId
from narrate.model.images import Image
from narrate.problems import Place
from narrate.web.build import MANIFEST, build
from narrate.web.refusal import Refused
from narrate.web.templates import templates_folder
from tests.web.editions import a_project, a_row, an_edition

HOSTILE = '<script>alert("x")</script>&\'{{ 7*7 }}{% raw %}'


def files(folder: Path) -> dict[str, bytes]:
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def test_every_subject_has_a_page(tmp_path: Path) -> None:
    """One page per context, sample, phase and plant, beside the pages of the whole dig."""
    build(an_edition(), templates_folder(), tmp_path / "site")

    html = {name for name in files(tmp_path / "site") if name.endswith(".html")}
    assert html == {
        "contexts/c1.html",
        "contexts/c2.html",
        "contexts/index.html",
        "data.html",
        *(f"evidence/{key}.html" for key in ("c1", "c2", "s1", "s2", "s3", "early", "late", "site")),
        "fields.html",
        "glossary.html",
        "hearth-and-table.html",
        "index.html",
        "measures/index.html",
        "method.html",
        "phases/early.html",
        "phases/index.html",
        "phases/late.html",
        "plants/carya.html",
        "plants/index.html",
        "plants/zea-mays.html",
        "ranking.html",
        "review-queue.html",
        "rules/fuel.html",
        "rules/index.html",
        "samples/index.html",
        "samples/s1.html",
        "samples/s2.html",
        "samples/s3.html",
        "search.html",
        "sources.html",
        "story.html",
        "track-record.html",
        "weak-and-unstable.html",
        "words.html",
        "year.html",
    }


def test_the_same_edition_gives_the_same_bytes(tmp_path: Path) -> None:
    """Two builds into two folders are equal in every byte."""
    for name in ("one", "two"):
        build(an_edition(), templates_folder(), tmp_path / name)

    assert files(tmp_path / "one") == files(tmp_path / "two")


def test_unchanged_files_are_not_written_again(tmp_path: Path) -> None:
    """A second build of the same edition leaves every time of writing as it was."""
    site = tmp_path / "site"
    build(an_edition(), templates_folder(), site)
    before = {path: path.stat().st_mtime_ns for path in site.rglob("*") if path.is_file()}

    build(an_edition(), templates_folder(), site)

    assert {path: path.stat().st_mtime_ns for path in before} == before


def test_pages_of_what_is_gone_are_removed(tmp_path: Path) -> None:
    """A sample taken out of the project takes its page with it; a file of somebody else stays."""
    site = tmp_path / "site"
    build(an_edition(), templates_folder(), site)
    (site / "my-notes.txt").write_text("mine", encoding="utf-8")
    whole = a_project()
    smaller = replace(whole, phases=(), contexts=tuple(replace(c, phase=None) for c in whole.contexts))

    build(an_edition(project=smaller), templates_folder(), site)

    left = files(site)
    assert not any(name.startswith("phases/") and name != "phases/index.html" for name in left)
    assert left["my-notes.txt"] == b"mine"
    assert set(json.loads(left[MANIFEST])["files"]) == set(left) - {MANIFEST, "my-notes.txt"}


def test_a_folder_that_narrate_did_not_make_is_refused(tmp_path: Path) -> None:
    """Nothing is written into a folder of somebody else, and its files stay as they were."""
    site = tmp_path / "site"
    site.mkdir()
    (site / "thesis.txt").write_text("years of work", encoding="utf-8")

    with pytest.raises(Refused) as refused:
        build(an_edition(), templates_folder(), site)

    assert refused.value.problem.code == "N108"
    assert (
        refused.value.problem.message == f"'{site}' holds something that narrate did not make, expected an empty folder"
    )
    assert files(site) == {"thesis.txt": b"years of work"}


def test_a_file_of_somebody_else_in_the_way_is_refused(tmp_path: Path) -> None:
    """A page is never written over a file that narrate did not make."""
    site = tmp_path / "site"
    build(an_edition(project=replace(a_project(), phases=())), templates_folder(), site)
    (site / "phases" / "early.html").write_text("mine", encoding="utf-8")

    with pytest.raises(Refused) as refused:
        build(an_edition(), templates_folder(), site)

    assert refused.value.problem.message == f"'{site}' holds 'phases/early.html', which narrate did not make"
    assert (site / "phases" / "early.html").read_text(encoding="utf-8") == "mine"


@pytest.mark.parametrize("named", ["../outside.txt", "/etc/passwd", "a/../../outside.txt", "C:/outside.txt"])
def test_a_manifest_that_names_files_outside_is_refused(tmp_path: Path, named: str) -> None:
    """Pruning never reaches outside the folder, whatever the manifest says."""
    outside = tmp_path / "outside.txt"
    outside.write_text("mine", encoding="utf-8")
    site = tmp_path / "site"
    site.mkdir()
    (site / MANIFEST).write_text(json.dumps({"format": "narrate site 1", "files": [named]}), encoding="utf-8")

    with pytest.raises(Refused):
        build(an_edition(), templates_folder(), site)

    assert outside.read_text(encoding="utf-8") == "mine"


def test_nothing_is_written_through_a_link(tmp_path: Path) -> None:
    """A folder of the site that became a link to elsewhere is refused."""
    site, elsewhere = tmp_path / "site", tmp_path / "elsewhere"
    elsewhere.mkdir()
    build(an_edition(project=replace(a_project(), phases=())), templates_folder(), site)
    (site / "samples").rename(tmp_path / "samples")
    (site / "samples").symlink_to(elsewhere)

    with pytest.raises(Refused):
        build(an_edition(), templates_folder(), site)

    assert list(elsewhere.iterdir()) == []


def test_a_folder_that_cannot_be_written_is_a_problem(tmp_path: Path) -> None:
    """Where a file stands in the way of the folder, the build says so with a code."""
    (tmp_path / "site").write_text("a file", encoding="utf-8")

    with pytest.raises(Refused) as refused:
        build(an_edition(), templates_folder(), tmp_path / "site")

    assert refused.value.problem.message == f"'{tmp_path / 'site'}' is a file, expected a folder"


def test_hostile_words_are_shown_as_words(tmp_path: Path) -> None:
    """Markup, quotes and template signs in records come out as text, and never as markup."""
    whole = a_project()
    first, second = whole.contexts
    project = replace(
        whole,
        title=HOSTILE,
        summary=HOSTILE,
        report={HOSTILE: HOSTILE},
        contexts=(replace(first, description=HOSTILE, note=HOSTILE, location={"easting": HOSTILE}), second),
        samples=(replace(whole.samples[0], note=HOSTILE, method=HOSTILE), *whole.samples[1:]),
        counts=(*whole.counts, a_row("S1", HOSTILE, HOSTILE, "x", 9, note=HOSTILE, size_class=HOSTILE)),
    )

    for audience in ("review", "public"):
        build(an_edition(audience, project), templates_folder(), tmp_path / "site" / audience)

    pages = [content.decode() for name, content in files(tmp_path / "site").items() if name.endswith(".html")]
    assert all(page.count("<script") == 1 + page.count("application/ld+json") for page in pages)
    assert all("alert(&#34;x&#34;)" in page for page in pages)
    assert not any("49" in page.split("<title>")[1].split("</title>")[0] for page in pages)


HARD_IDS = ["../../etc/passwd", "a/b", "a b", "A B", "a-b", "土坑", "Ähre", "index", "con", "", ".", "x" * 300, "<b>"]


def test_any_id_gets_a_page_of_its_own(tmp_path: Path) -> None:
    """Ids with slashes, dots, spaces, other scripts, or that differ only by case: each has its own page inside."""
    whole = a_project()
    contexts = tuple(replace(whole.contexts[0], id=ContextId(id), phase=PhaseId("early")) for id in HARD_IDS)
    samples = tuple(replace(whole.samples[0], id=SampleId(f"s{id}"), context=ContextId(id)) for id in HARD_IDS)
    project = replace(whole, contexts=contexts, samples=samples, counts=())

    build(an_edition(project=project), templates_folder(), tmp_path / "out" / "site")

    written = [name for name in files(tmp_path) if name.endswith(".html")]
    assert all(name.startswith("out/site/") for name in written)
    assert len([name for name in written if name.startswith("out/site/contexts/")]) == len(HARD_IDS) + 1
    assert len({name.lower() for name in written}) == len(written)


def test_photographs_lose_the_camera_notes_on_the_public_site(tmp_path: Path) -> None:
    """A picture's place and owner, as the camera wrote them, are copied for the team and not for the public."""
    notes = b"\xff\xe1\x00\x11Exif\0\0SECRETGPS"
    picture = b"\xff\xd8" + notes + b"\xff\xda\x00\x04\x00\x00\x12\x34\xff\x00\xff\xd9" + b"SECRETTAIL"
    (tmp_path / "images").mkdir()
    (tmp_path / "images" / "pit.jpg").write_bytes(picture)
    image = Image(file="images/pit.jpg", caption="A pit", credit="A. P.", alt="A round pit", place=Place(path="r.yaml"))
    whole = a_project()
    project = replace(whole, contexts=(replace(whole.contexts[0], images=(image,)), whole.contexts[1]))

    for audience in ("review", "public"):
        build(an_edition(audience, project), templates_folder(), tmp_path / "out" / audience, images=tmp_path)

    review = [c for name, c in files(tmp_path / "out" / "review").items() if name.endswith(".jpg")]
    public = [c for name, c in files(tmp_path / "out" / "public").items() if name.endswith(".jpg")]
    assert review == [picture]
    assert public == [b"\xff\xd8\xff\xda\x00\x04\x00\x00\x12\x34\xff\x00\xff\xd9"]


def test_a_photograph_outside_the_project_is_not_copied(tmp_path: Path) -> None:
    """A path that leads out of the project folder shows the words about the picture, and no picture."""
    (tmp_path / "secret.jpg").write_bytes(b"\xff\xd8\xff\xd9")
    (tmp_path / "project").mkdir()
    image = Image(file="../secret.jpg", caption="A pit", credit="", alt="A round pit", place=Place(path="r.yaml"))
    whole = a_project()
    project = replace(whole, contexts=(replace(whole.contexts[0], images=(image,)), whole.contexts[1]))

    build(an_edition(project=project), templates_folder(), tmp_path / "site", images=tmp_path / "project")

    assert not any(name.endswith(".jpg") for name in files(tmp_path / "site"))
    assert "Picture not shown. A round pit" in (tmp_path / "site/contexts/c1.html").read_text(encoding="utf-8")


def test_a_project_of_nothing_still_has_its_pages(tmp_path: Path) -> None:
    """No contexts, no samples, no phases: the pages of the whole dig are written and say so."""
    empty = replace(a_project(), contexts=(), samples=(), counts=(), phases=(), authors=(), summary="")

    for audience in ("review", "public"):
        build(an_edition(audience, empty), templates_folder(), tmp_path / audience)

    assert "No context holds remains" in (tmp_path / "public/hearth-and-table.html").read_text(encoding="utf-8")


def test_ids_that_are_words_of_ours_are_only_ids(tmp_path: Path) -> None:
    """A context called 'site' and a sample of the same name have pages of their own, and the dig keeps its page."""
    whole = a_project()
    context = replace(whole.contexts[0], id=ContextId("site"))
    sample = replace(whole.samples[0], id=SampleId("site"), context=ContextId("site"))
    project = replace(
        whole, contexts=(context,), samples=(sample,), counts=(a_row("site", "Zea mays", "kernel", "3", 2),)
    )

    build(an_edition(project=project), templates_folder(), tmp_path / "site")

    assert {"index.html", "contexts/site.html", "samples/site.html"} <= set(files(tmp_path / "site"))
