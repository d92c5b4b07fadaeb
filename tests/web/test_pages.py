"""What the pages say to each audience."""

from __future__ import annotations

import re
from dataclasses import replace
from html import unescape
from pathlib import Path

import pytest

from narrate.disclosure import disclosed
from narrate.model.ids import ContextId, Subject
from narrate.model.narrative import Narrative, Section, Sentence
from narrate.model.project import Disclosure
from narrate.model.sampling import HeavyFraction
from narrate.problems import Place
from narrate.web.pages import pages
from narrate.web.refusal import Refused
from narrate.web.templates import page_templates, templates_folder
from tests.web.editions import a_project, a_row, an_edition

PLANTED = "planted-secret"


def site(audience: str = "review", **changed: object) -> dict[str, str]:
    edition = an_edition(audience, **changed)  # type: ignore[arg-type]
    made = pages(edition, templates_folder(), None)
    return {name: content.decode("utf-8") for name, content in made.items() if name.endswith(".html")}


def test_every_sentence_names_what_it_rests_on() -> None:
    """Each sentence carries its references, and the panel beneath opens each of them."""
    page = site()["contexts/c1.html"]

    said = [unescape(refs).split() for refs in re.findall(r'class="said" data-refs="([^"]*)"', page)]
    opened = {unescape(ref) for ref in re.findall(r'data-ref="([^"]*)"', page)}
    assert len(said) == 4
    assert {ref for refs in said for ref in refs} <= opened


def test_evidence_leads_to_the_row_as_written() -> None:
    """The panel quotes the row, and its link names the row on the sample's page."""
    made = site()

    assert (
        '<a class="line" href="../samples/s1.html#row-1">S1, row 1</a> <i lang="la">Zea mays</i>, cupule, 40'
        in made["contexts/c1.html"]
    )
    assert '<tr id="row-1">' in made["samples/s1.html"]


def test_a_reference_to_nothing_is_a_fault() -> None:
    """A sentence that rests on something that is not there stops the build."""
    subject = Subject(level="context", id="C1")
    sentence = Sentence(text="It rained.", refs=("C1/measure.rain",))
    section = Section(id="a", heading="", paragraphs=((sentence,),))
    narrative = Narrative(subject=subject, audience="review", title="", summary=None, sections=(section,))

    with pytest.raises(LookupError, match=r"'C1/measure\.rain' names no measurement, find or record of Context C1"):
        site(narratives={("review", subject): narrative})


def test_every_public_page_carries_both_cautions() -> None:
    """Visitors are warned off eating wild plants and disturbing sites on every page; the team's pages go without."""
    for name, page in site("public").items():
        assert "Do not eat wild plants because of this site." in page, name
        assert "Leave sites as they are." in page, name


def test_only_the_review_site_is_kept_from_search_engines_and_has_a_queue() -> None:
    """The team's copy says noindex on every page; the public one does not, and has no review queue."""
    review, public = site("review"), site("public")

    assert all('<meta name="robots" content="noindex, nofollow">' in page for page in review.values())
    assert not any("noindex" in page for page in public.values())
    assert "review-queue.html" in review and "review-queue.html" not in public


def test_the_public_site_says_that_something_is_left_out_and_not_what() -> None:
    """Where something was withheld, every public page says so in one plain line."""
    withheld = site("public", project=replace(a_project(), is_withheld_in_part=True))
    whole = site("public")

    line = "Some things that were recorded are left out of this site on purpose."
    assert all(line in page for page in withheld.values())
    assert not any(line in page for page in whole.values())


def test_nothing_restricted_reaches_the_public_site() -> None:
    """Words planted in a restricted context, its sample, its rows and every location are on no public page."""
    whole = a_project()
    hidden = ContextId(f"{PLANTED}-id")
    open_one = replace(whole.contexts[0], location={"easting": PLANTED}, note=f"north of {hidden}")
    context = replace(whole.contexts[1], id=hidden, description=PLANTED, kind=PLANTED, location={"x": PLANTED})
    heavy = HeavyFraction(finds={PLANTED: PLANTED})
    samples = [replace(s, context=hidden, note=PLANTED, heavy_fraction=heavy) for s in whole.samples[1:]]
    project = replace(
        whole,
        contexts=(open_one, context),
        samples=(whole.samples[0], *samples),
        counts=(*whole.counts, a_row("S2", f"{PLANTED} indet.", "seed", "1", 90, note=PLANTED)),
        disclosure=Disclosure(restricted_contexts=frozenset({hidden})),
    )

    public = pages(an_edition("public", disclosed(project)), templates_folder(), None)
    review = pages(an_edition("review", project), templates_folder(), None)

    assert not any(PLANTED.encode() in content or PLANTED in name for name, content in public.items())
    assert any(PLANTED.encode() in content for content in review.values())


def test_problems_are_on_the_review_queue() -> None:
    """What a person should mend is listed with its place and one way to mend it."""
    page = site()["review-queue.html"]

    assert "records/all.yaml:4" in page
    assert "sample &#39;S3&#39;: no volume" in page


def test_a_sterile_sample_is_told_as_one() -> None:
    """A sample in which nothing was found keeps its page and says that it still counts."""
    page = site()["samples/s3.html"]

    assert "looked through and nothing was found" in page


def test_no_page_asks_for_anything_outside() -> None:
    """No address on any page leaves the site, the one script is a file of it, and the policy holds it to that."""
    policy = "default-src 'none'; script-src 'self' file:; style-src 'self' file:; style-src-attr 'unsafe-inline'; "
    policy += "img-src 'self' file: data:; base-uri 'none'; form-action 'none'"
    for name, page in (site() | site("public")).items():
        assert not re.findall(r'(?:src|href|action)="(?:[a-z]+:|//)', page), name
        scripts = re.findall(r"<script[^>]*>", page)
        assert [one for one in scripts if "ld+json" not in one] == [
            f'<script src="{"../" * name.count("/")}assets/site.js" defer>'
        ], name
        assert f'content="{policy}"' in page, name


def test_every_template_has_at_most_eighty_lines() -> None:
    """A longer template becomes panels."""
    long = {
        path.name: lines
        for path in templates_folder().rglob("*.html")
        if (lines := len(path.read_text(encoding="utf-8").splitlines())) > 80
    }

    assert long == {}


def a_page_template(folder: Path, header: str) -> None:
    (folder / "pages").mkdir(parents=True)
    (folder / "pages" / "new.html").write_text(f"{{#\n{header}\n#}}\nhello", encoding="utf-8")


def test_adding_a_page_is_adding_a_template(tmp_path: Path) -> None:
    """A template with a header is found, and its page is made for the audiences that it names."""
    a_page_template(tmp_path, "one per: context\ntitle: {it.id}\npath: new/{slug}.html\naudiences: public")

    assert set(pages(an_edition("public"), tmp_path, None)) == {"new/c1.html", "new/c2.html", "robots.txt"}
    assert set(pages(an_edition("review"), tmp_path, None)) == {"robots.txt"}


@pytest.mark.parametrize(
    ("header", "told"),
    [
        ("one per: site\ntitle: A\npath: a.html", "header: 'audiences' is missing"),
        (
            "one per: pit\ntitle: A\npath: a.html\naudiences: public",
            "header: one per: 'pit', expected site, context, sample, phase, taxon, measure, question, "
            "evidence, label, contexts, samples",
        ),
        (
            "one per: sample\ntitle: A\npath: a.html\naudiences: public",
            "header: path: 'a.html', expected {slug} in it, because there is one page per sample",
        ),
        (
            "one per: site\ntitle: A\npath: ../a.html\naudiences: public",
            "header: path: '../a.html', expected a path within the site that ends in .html",
        ),
        (
            "one per: site\ntitel: A\ntitle: A\npath: a.html\naudiences: public",
            "header: unknown key 'titel', expected one per, title, path, menu, under, audiences; did you mean 'title'?",
        ),
        (
            "one per: site\ntitle: A\npath: a.html\nmenu: First\naudiences: public",
            "header: menu: 'First', expected a number for its place and a name, such as '20 Contexts'",
        ),
        (
            "one per: site\ntitle: A\npath: a.html\naudiences: friends",
            "header: audiences: 'friends', expected review or public",
        ),
    ],
)
def test_a_header_that_cannot_be_done_is_a_problem(tmp_path: Path, header: str, told: str) -> None:
    """A page template says what is wrong with its header, with its place."""
    a_page_template(tmp_path, header)

    with pytest.raises(Refused) as refused:
        page_templates(tmp_path)

    assert [problem.message for problem in refused.value.problems] == [told]
    assert refused.value.problem.code == "N701"


def test_a_template_without_a_header_is_a_problem(tmp_path: Path) -> None:
    """A page template that begins with anything else is refused with a way to mend it."""
    (tmp_path / "pages").mkdir()
    (tmp_path / "pages" / "new.html").write_text("hello", encoding="utf-8")

    with pytest.raises(Refused) as refused:
        page_templates(tmp_path)

    assert refused.value.problem.place == Place(path=f"{tmp_path.name}/pages/new.html", line=1)
    assert refused.value.problem.help.startswith("begin the file with '{#'")


def test_two_templates_cannot_share_a_path(tmp_path: Path) -> None:
    """Two pages at one address are refused, with both templates named."""
    a_page_template(tmp_path, "one per: site\ntitle: A\npath: a.html\naudiences: public")
    again = (tmp_path / "pages" / "new.html").read_text(encoding="utf-8")
    (tmp_path / "pages" / "zoo.html").write_text(again, encoding="utf-8")

    with pytest.raises(Refused) as refused:
        pages(an_edition("public"), tmp_path, None)

    assert (
        refused.value.problem.message
        == "header: path: 'a.html' is also the path of a page of 'pages/new.html', expected a path of its own"
    )


def test_works_that_read_alike_have_letters_where_they_are_cited_and_listed() -> None:
    """The rule's page cites 'Person 1999b', and the page of sources lists it under that year."""
    edition = an_edition("review")
    known = next(iter(edition.packs.sources.values()))
    other = replace(known, key="a-person-1999-first", title="A first work")
    rule = next(iter(edition.packs.rules.values()))
    rule = replace(rule, sources=(*rule.sources, other.key))
    packs = replace(edition.packs, sources={known.key: known, other.key: other}, rules={rule.id: rule})
    files = pages(replace(edition, packs=packs), templates_folder(), None)
    made = {name: raw.decode() for name, raw in files.items() if name.endswith(".html")}
    of_rule = next(text for name, text in made.items() if name.startswith("rules/") and "Many cupules" in text)

    assert ">Person 1999b</a>" in of_rule and ">Person 1999a</a>" in of_rule
    first = made["sources.html"].index("Person, A. 1999a. <cite>A first work</cite>")
    assert first < made["sources.html"].index("Person, A. 1999b. <cite>An invented work for tests</cite>")


def test_plants_named_are_those_that_lay_there_charred() -> None:
    """A plant known by one uncharred seed alone has a page of its own, and is not among the plants named."""
    project = a_project()
    clover = a_row("S1", "Stellaria media", "seed", "1", 99, condition="uncharred")
    numbers = []
    for counts in (project.counts, (*project.counts, clover)):
        page = site(project=replace(project, counts=counts))["index.html"]
        numbers.append(re.search(r"plants named.*?<dd>(\d+)</dd>", page, re.DOTALL)[1])  # type: ignore[index]

    assert numbers[0] == numbers[1] and int(numbers[0]) > 0
