"""Heads of groups of taxa: 'Other edible plants', 'Plantes sauvages', 'Wildpflanzen', which names of species resemble."""

# ruff: noqa: E501, SIM905

from __future__ import annotations

import re
from functools import lru_cache

_NOUN = (
    "cereals? cultigens? grains? chaff crops? plants? seeds? weeds? grasses taxa pulses legumes fruits? nuts? nutshells? "
    "berries trees shrubs herbs vegetables spices condiments others? varia misc(?:ellaneous)? economic ruderals? aquatics "
    "remains species foods? oil-?seeds? fibres? fibers? millets "
    "céréales? vannes légumineuses oléagineux adventices rudérales messicoles plantes herbes arbres arbustes noix "
    "divers autres fruitiers espèces taxons graines "
    "getreide spelz(?:en|reste) druschreste hülsenfrüchte? leguminosen obst nüsse (?:[a-zäöü]+)?(?:pflanzen|früchte|unkräuter|gräser) "
    "gehölze bäume sonstiges? varia kräuter "
    "cereales leguminosas frutos frutas frutales oleaginosas plantas hierbas malezas árboles otr[ao]s silvestres semillas "
    "cereali leguminose legumi frutti frutta piante erbe infestanti alberi altr[ie] semi "
    "granen peulvruchten vruchten noten planten (?:[a-z]+)?(?:planten|kruiden|gewassen|vruchten) bomen overige "
    "zboża rośliny chwasty owoce orzechy drzewa inne nasiona plewy"
).split()
_OWN = (
    "other wild cultivated crop charred domestic(?:ated)? edible collected gathered food small large starchy oily oil fleshy "
    "possible potential useful medicinal weedy arable field garden woodland grassland wetland aquatic ruderal miscellaneous "
    "native introduced non-?cultivated unidentified indeterminate fruit seed nut grass tree cereal weed and or of the "
    "de des du d et ou la les sauvages? cultivées? alimentaires? comestibles? mauvaises à fleurs autres "
    "und oder der die das sonstige andere wilde kultivierte essbare weitere "
    "y o del las los silvestres? cultivadas? comestibles? alimenticias? útiles otras otros malas "
    "e ed di delle dei selvatiche spontanee coltivate eduli altre altri "
    "en of overige andere wilde eetbare gekweekte "
    "i lub dzikie uprawne dziko rosnące strączkowe oleiste jadalne inne"
).split()
# Common practice, no source: words that heads of groups are made of, in seven languages.
_NOUNS = re.compile("|".join(_NOUN), re.IGNORECASE)
_WORDS = re.compile("|".join((*_OWN, *_NOUN)), re.IGNORECASE)


@lru_cache(maxsize=4096)
def names_a_group(label: str) -> bool:
    """
    Whether a label is made of words for groups of plants and of no others.

    >>> [names_a_group(text) for text in ("Other edible plants", "Fruit seeds", "Plantes sauvages", "Wildpflanzen")]
    [True, True, True, True]
    >>> [names_a_group(text) for text in ("Rumex acetosa", "Malas hierbas", "Piante selvatiche", "Avena sp.", "Rośliny dzikie")]
    [False, True, True, False, True]
    """
    words = re.findall(r"[^\W\d_]+(?:-[^\W\d_]+)*", label)
    return any(map(_NOUNS.fullmatch, words)) and all(map(_WORDS.fullmatch, words))


def says_the_same(total: str, head: str) -> bool:
    """
    Whether a total says all the words of a label before it, and no more but that it is one.

    >>> says_the_same("Subtotal, fruit seeds", "Fruit seeds"), says_the_same("Total cereals", "Triticum spelta")
    (True, False)
    """
    words, own = (set(re.findall(r"[^\W\d_]{3,}", text.lower())) for text in (total, head))
    return bool(own) and own <= words and len(words - own) <= 2
