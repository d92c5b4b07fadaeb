"""The glossary: every word once, in the audience's own words where it has some."""

from __future__ import annotations

from dataclasses import replace

from narrate.pipeline.editions import edition_of
from narrate.pipeline.judged import Judged
from narrate.web.glossary import words


def test_a_word_is_explained_once(judged_example: Judged) -> None:
    """Achene and seed are both 'seed' to the public, and stalk and stem 'stem': one entry each, that says both."""
    edition = edition_of("public", judged_example, {}, (), "test")
    for title, told in words(edition):
        named = [word for word, _ in told]
        assert len(named) == len(set(named)), title

    parts = dict(dict(words(edition))["Plant parts"])
    assert "achene" in parts["seed"] and "smaller pieces are counted as fragments" in parts["seed"]
    assert parts["stem"].count("One piece is one item") == 1


def test_words_of_an_audience_stand_in_place_of_the_trades(judged_example: Judged) -> None:
    """'Feature' and 'samples' are the public's own, and of 'germ' and 'germs of corn kernels' one form is left."""
    public = edition_of("public", judged_example, {}, (), "test")
    places = dict(dict(words(public))["Places and samples"])
    assert places["feature"].startswith("By a feature we mean")
    assert "sample" not in places and "samples" in places
    assert sum(word.startswith("germ") for word in places) == 1

    review = dict(dict(words(replace(public, audience="review")))["Places and samples"])
    assert review["feature"].startswith("Contexts that make one thing")


def test_words_of_botany_in_entries_on_parts_are_explained(judged_example: Judged) -> None:
    """To the public a cupule, a glume, an embryo, an achene, a cotyledon and a floret base have entries of their own."""
    public = edition_of("public", judged_example, {}, (), "test")
    parts = dict(dict(words(public))["Plant parts"])

    assert {"cupule", "glume", "embryo", "achene", "cotyledon", "floret base", "node"} <= set(parts)
    assert "poisonous bark" in dict(dict(words(public))["Plants"])["black locust"]
