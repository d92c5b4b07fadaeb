"""What is no plant, under a head of several words: 'Snails from flot', 'Metal Fe', 'Schnecken aus dem Flot'."""

# ruff: noqa: E501, SIM905

from __future__ import annotations

import re
from functools import cache

from narrate.reading.intake.not_plants_abroad import BESIDE_ABROAD, kind_of_word

# Common practice, no source. Words that name parts or kinds of plants too ('shell', 'stone', 'ash', 'needle', 'skin')
# are left out, or stand among the words beside.
_NOUNS: dict[str, str] = {
    "bone": (
        "bone bones fish fishbone fishbones bird birds mammal mammals amphibian amphibians reptile reptiles rodent rodents "
        "tooth teeth vertebra vertebrae otolith otoliths antler microfauna microvertebrate microvertebrates fauna faunal"
    ),
    "shell": "snail snails mollusc molluscs mollusk mollusks mollusca molluscan gastropod gastropods mussel mussels oyster oysters "
    "bivalve bivalves eggshell eggshells egg shellfish seashell seashells",
    "insects and other small animals": "insect insects beetle beetles coleoptera pupa pupae puparia puparium weevil weevils mite mites "
    "arthropod arthropods earthworm earthworms worm worms ostracod ostracods ostracoda daphnia cladocera foraminifera forams",
    "artefacts": "pot pottery potsherd potsherds sherd sherds ceramic ceramics porcelain daub brick bricks tile tiles cbm clay flint flints lithic "
    "lithics obsidian chert debitage glass bead beads plaster mortar coin coins plastic leather textile textiles artefact artefacts artifact artifacts",
    "metal working and fuel waste": (
        "metal metals metallic metalwork iron ferrous nonferrous copper bronze brass lead tin steel alloy nail nails wire slag slags "
        "hammerscale hammerslag coal coke clinker clinkers cinder cinders metall metallen metalen eisen eisern eiserne eisernes kupfer blei nagel "
        "nägel métal métaux métallique métalliques cuivre plomb clou clous metálico metálicos metálica metálicas cobre plomo bronce metallici metallico "
        "metallica metalliche rame piombo bronzo chiodo chiodi ijzeren koper lood brons spijker spijkers ferreux"
    ),
    "droppings": "droppings dropping coprolite coprolites",
}
_KIND_OF = {word: kind for kind, words in _NOUNS.items() for word in words.split()}
_SYMBOLS = frozenset("fe cu pb sn zn".split())
"""Signs for metals, which say so beside a word for metal or an object."""
_OBJECTS = frozenset("object objects obj item items objekt objekte gegenstand gegenstände objet objets objeto objetos oggetto oggetti voorwerp voorwerpen".split())
_SHELLS = frozenset("shell shells".split())
_WATERS = frozenset("marine land freshwater terrestrial sea river".split())
_BESIDE = BESIDE_ABROAD | _SYMBOLS | _OBJECTS | _SHELLS | _WATERS | frozenset(
    (
        "from in of the and with flot flots flotation residue residues hr lf hf heavy light fraction sample samples sieve sieved "
        "burnt burned unburnt unburned calcined charred uncharred cremated mineralised mineralized waterlogged modern worked unworked fired "
        "small large tiny fine coarse micro whole broken complete frag frags fragment fragments fragmentary fragmented piece pieces bit bits chip "
        "chips flake flakes sphere spheres spheroid spheroids spherical lump lumps remain remains material parts part scale scales wing wings pipe pipes "
        "case cases cocoon cocoons capsule capsules eggs fuel ash vitrified vitreous magnetic fly aquatic animal human domestic wild "
        "n no nr ct count g wt weight ml vol volume presence indet unid unidentified misc other all type spp sp "
        "aus dem der im vom den flotation schlämmrückstand rückstand unverbrannt groß große klein kleine "
        "du dans le les au flottation résidu résidus refus petit petits petites gros grand grands "
        "en de la el los flotación residuo residuos pequeño pequeños grandes clavo clavos "
        "nel dal della dalla flottazione residui piccoli piccole piccola uit het residu onverbrand"
    ).split()
)  # fmt: skip
_MOST_WORDS = 7


@cache
def no_plant_in_words(flat: str) -> str:
    """
    The kind of find that a head in lower case stands for, whatever stands beside it; empty where a word is not known.

    >>> [no_plant_in_words(text) for text in ("snails from flot", "metal fe", "fe objects", "cu alloy object", "shell, marine")]
    ['shell', 'metal working and fuel waste', 'metal working and fuel waste', 'metal working and fuel waste', 'shell']
    >>> [no_plant_in_words(text) for text in ("schnecken aus dem flot", "objets en fer", "huesos de la flotación", "schelpen uit residu")]
    ['shell', 'metal working and fuel waste', 'bone', 'shell']
    >>> [no_plant_in_words(text) for text in ("fe", "glass wort", "iron weed", "shell (nut)", "bird cherry", "scales", "fuel ash")]
    ['', '', '', '', '', '', '']
    """
    words = re.findall(r"[^\W\d_]+", flat.replace("hammer scale", "hammerscale"))
    if not 0 < len(words) <= _MOST_WORDS:
        return ""
    said = set(words)
    kinds = [_kind(word) for word in words if word not in _BESIDE or word in _KIND_OF]
    if kinds and all(kinds):
        return kinds[0]
    if not kinds and said & _SYMBOLS and said & _OBJECTS:
        return "metal working and fuel waste"
    return "shell" if not kinds and said & _SHELLS and said & _WATERS else ""


def _kind(word: str) -> str:
    bare = re.sub(r"(?:objekte?|gegenst[aä]nde?|nägel|nagel|scherben?)$", "", word)
    return _KIND_OF.get(word) or kind_of_word(word) or (kind_of_word(bare) or _KIND_OF.get(bare, "") if bare else "")
