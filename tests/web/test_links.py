"""Names of pages and the ways between them."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from narrate.web.links import anchor, relative, slugs

TEXT = st.text(st.characters(exclude_categories=["Cs"]), max_size=90)


@given(st.lists(TEXT, max_size=30))
def test_no_two_ids_share_a_name(ids: list[str]) -> None:
    """Whatever the ids, their file names differ even where case does not count, and none leads out of its folder."""
    names = slugs(ids)

    assert len({name.lower() for name in names.values()}) == len(set(ids))
    assert all(name and set(name) <= set("abcdefghijklmnopqrstuvwxyz0123456789-") for name in names.values())
    assert all(len(name) <= 140 for name in names.values())


@given(st.lists(TEXT, max_size=20), st.randoms())
def test_names_do_not_depend_on_the_order_of_ids(ids: list[str], random: object) -> None:
    """The same ids in another order get the same names."""
    shuffled = list(ids)
    random.shuffle(shuffled)  # type: ignore[attr-defined]

    assert slugs(shuffled) == slugs(ids)


@given(TEXT, TEXT)
def test_no_two_texts_share_a_fragment(one: str, other: str) -> None:
    """Fragments of different texts differ, and hold no sign that an address would have to escape."""
    assert (anchor(one) == anchor(other)) == (one == other)
    assert all(sign.isalnum() or sign in "-._/~" for sign in anchor(one)) and anchor(one).isascii()


def test_ways_go_up_and_down() -> None:
    """A link is relative to the page that holds it, so the site works from any folder."""
    assert relative("index.html", "contexts/c1.html") == "../index.html"
    assert relative("contexts/c1.html", "index.html") == "contexts/c1.html"
    assert relative("#here", "contexts/c1.html") == "#here"
