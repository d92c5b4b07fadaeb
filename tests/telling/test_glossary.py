"""Trade words and how they are explained."""

from __future__ import annotations

from dataclasses import replace

from narrate.model.packs import Packs
from narrate.telling.glossary import explained_in, trade_words_in, unexplained


def test_trade_words_are_found_as_whole_words():
    """'density' is found, the letters of 'taxa' inside another word are not."""
    assert trade_words_in("The density of the syntaxa") == ("density",)


def test_a_word_that_the_glossary_explains_is_explained(packs: Packs):
    """A trade word with an explanation does not count as unexplained."""
    public = packs.audiences["public"]
    with_word = replace(public, glossary={**public.glossary, "density": "how much there is in a litre"})

    assert unexplained("The density is high.", public) == ("density",)
    assert unexplained("The density is high.", with_word) == ()


def test_words_that_a_text_uses_are_listed_with_their_explanations(packs: Packs):
    """Only explained words that occur are listed, by name."""
    public = packs.audiences["public"]

    assert explained_in("We found maypops and corn.", public) == (("maypop", "a wild vine with sweet fruit"),)
