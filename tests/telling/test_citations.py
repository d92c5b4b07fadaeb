"""Works cited by author and year: who is named, and the letters of works that would read alike."""

from __future__ import annotations

import re
from types import SimpleNamespace
from typing import cast

from narrate.model.ids import SourceKey
from narrate.model.packs import Packs, Source
from narrate.problems import Place
from narrate.reading.packs import read_packs
from narrate.telling.citations import cited_as, letter_of, works_cited
from narrate.telling.page import Page


def a_work(
    key: str, title: str, authors: str = "Roe, A.", year: str = "1991", kind: str = "work", region: str = ""
) -> Source:
    return Source(
        key=SourceKey(key), authors=authors, year=year, title=title, kind=kind, region=region, known="read",
        place=Place(path="x"),
    )  # fmt: skip


def a_page(*works: Source, regions: tuple[str, ...] = ("eastern-north-america",)) -> Page:
    """What citing asks of a page, and no more."""
    packs = SimpleNamespace(sources={work.key: work for work in works}, regions=regions)
    page = SimpleNamespace(
        audience=SimpleNamespace(words={"citation": "see {cited}"}), dig=SimpleNamespace(packs=packs), cited=set()
    )
    return cast(Page, page)


def test_works_that_read_alike_have_letters_by_title() -> None:
    """'The' and 'A' do not count in the order; a third work of another year stays without a letter."""
    works = [a_work("r1", "The wheat"), a_work("r2", "A bean"), a_work("r3", "Corn"), a_work("r4", "Oats", year="1990")]

    assert [cited_as(work, works) for work in works] == ["Roe 1991c", "Roe 1991a", "Roe 1991b", "Roe 1990"]


def test_authors_whom_et_al_hides_are_told_apart() -> None:
    """Two groups of three begin with the same name: what a text would print is what must be told apart."""
    works = [a_work("r1", "B", "Roe, A., Doe, B. & Low, C."), a_work("r2", "A", "Roe, A., Ash, E. & Elm, F.")]

    assert [cited_as(work, works) for work in works] == ["Roe et al. 1991b", "Roe et al. 1991a"]


def test_one_author_and_a_pair_need_no_letters() -> None:
    """'Roe 1991' and 'Roe and Doe 1991' do not read alike, and what is no work has no letter."""
    works = [a_work("r1", "A"), a_work("r2", "B", "Roe, A. & Doe, B."), a_work("r3", "C", "", "")]

    assert [letter_of(work, works) for work in works] == ["", "", ""]


def test_the_order_of_the_packs_does_not_matter() -> None:
    """Letters follow the titles, so that they are the same on every page and in the list."""
    works = [a_work("r1", "B"), a_work("r2", "A")]

    assert [letter_of(w, works) for w in works] == [letter_of(w, works[::-1]) for w in works] == ["b", "a"]


def test_no_two_works_of_the_packs_are_cited_alike() -> None:
    """Over every region; the two papers of Moffett 1991 are the ones that need letters."""
    packs, _ = read_packs(("eastern-north-america", "arid-southwest", "temperate-europe"))
    assert isinstance(packs, Packs)
    sources = [s for s in packs.sources.values() if s.kind == "work" and s.authors]
    cited = [cited_as(source, sources) for source in sources]

    assert len(set(cited)) == len(cited) > 100
    assert {one for one in cited if one.startswith("Moffett")} == {"Moffett 1991a", "Moffett 1991b"}


def test_a_work_of_another_region_is_cited_as_an_analogy() -> None:
    """A project of the work's own region, or of both, is told nothing of the kind; a work of no region bears on all."""
    works = (a_work("r1", "Cobs", region="arid-southwest"), a_work("r2", "Ratios", "Doe, B."))
    keys = ("r1", "r2")

    assert works_cited(a_page(*works), keys) == "see Doe 1991; Roe 1991, by analogy from the Southwest"
    assert works_cited(a_page(*works, regions=("arid-southwest",)), keys) == "see Doe 1991; Roe 1991"
    both = ("eastern-north-america", "arid-southwest")
    assert works_cited(a_page(*works, regions=both), keys) == "see Doe 1991; Roe 1991"


def test_what_is_nearer_is_cited_before_analogies() -> None:
    """Of three works two are cited: those of the region or of none, whatever their place in the rule."""
    works = (
        a_work("r1", "Far", region="near-east"),
        a_work("r2", "Own", "Doe, B.", region="eastern-north-america"),
        a_work("r3", "Any", "Ash, E."),
    )

    assert works_cited(a_page(*works), ("r1", "r2", "r3")) == "see Ash 1991; Doe 1991"


def test_works_named_for_a_place_have_their_region() -> None:
    """Titles and containers that name the place, over all packs in use: a work on the Southwest is none of the East."""
    packs, _ = read_packs(("eastern-north-america", "arid-southwest", "temperate-europe"))
    assert isinstance(packs, Packs)
    used = {key for rule in packs.rules.values() for key in rule.sources}
    named = {
        source.key: source.region
        for source in packs.sources.values()
        if source.key in used
        and re.search(r"Southwest\b|southwestern United|Sand Canyon|Yellow Jacket", _whole(source))
    }

    assert len(named) >= 5 and set(named.values()) == {"arid-southwest"}
    british = [s for s in packs.sources.values() if s.key in used and re.search(r"Brit(ain|ish)|England", s.title)]
    assert british and {source.region for source in british} == {"temperate-europe"}


def _whole(source: Source) -> str:
    return f"{source.title} {source.container}"
