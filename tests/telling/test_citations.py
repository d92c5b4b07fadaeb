"""Works cited by author and year: who is named, and the letters of works that would read alike."""

from __future__ import annotations

from narrate.model.ids import SourceKey
from narrate.model.packs import Packs, Source
from narrate.problems import Place
from narrate.reading.packs import read_packs
from narrate.telling.citations import cited_as, letter_of


def a_work(key: str, title: str, authors: str = "Roe, A.", year: str = "1991", kind: str = "work") -> Source:
    return Source(key=SourceKey(key), authors=authors, year=year, title=title, kind=kind, place=Place(path="x"))


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
