"""Trade words and how they are explained."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from narrate.model.packs import Packs
from narrate.telling.glossary import explained_in, trade_words_in, unexplained
from narrate.telling.names import Names

if TYPE_CHECKING:
    from narrate.pipeline.judged import Judged


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

    assert explained_in("We found maypops and corn.", public) == (("maypop", "a sweet fruit of a wild vine"),)


def test_every_poisonous_plant_is_called_so(packs: Packs):
    """No gloss for visitors of a plant that the shipped packs tag as toxic leaves the poison out."""
    from narrate.reading.packs import read_packs

    for region in ("eastern-north-america", "temperate-europe", "arid-southwest"):
        shipped, problems = read_packs((region,))
        names = Names(audience=shipped.audiences["public"], packs=shipped)
        toxic = [taxon for taxon in shipped.taxa.values() if "toxic" in taxon.tags]
        assert not problems and len(toxic) > 20
        assert [(x.id, names.gloss(x)) for x in toxic if names.gloss(x) and "poison" not in names.gloss(x)] == []
        assert {x.id.split()[0] for x in toxic if not names.gloss(x)} <= {"Nicotiana"}  # warned of at the foot


def test_pokeweed_is_no_leafy_plant_to_visitors(judged_example: Judged):
    """The plant whose every part is poisonous is told as such."""
    packs = judged_example.packs
    pokeweed = packs.taxa["Phytolacca americana"]

    assert Names(audience=packs.audiences["public"], packs=packs).gloss(pokeweed) == (
        "a poisonous wild plant with dark berries"
    )
