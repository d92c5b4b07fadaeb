"""Words for kinds of context in other languages than English, beside those of the word packs."""

# ruff: noqa: E501

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import cache

from narrate.model.packs import Words
from narrate.reading.values import find_word

# Common practice, no source: words of field records for kinds of context.
_KINDS: Mapping[str, str] = {
    "hearth": "feuerstelle herdstelle herd foyer âtre hogar fogón fogon focolare lareira haard haardplaats ildsted eldstad härd arnested palenisko ohniště ocak tűzhely очаг",
    "oven": "ofen backofen four horno forno oven ovn ugn piec pec fırın kemence печь tannur tabun",
    "storage pit": "vorratsgrube speichergrube silogrube silo silos fosse-silo fosse-ensilage voorraadkuil forrådsgrube förrådsgrop fossa-silo",
    "pit": "grube fosse fossa foso fosa kuil grube gruben fosses fosas kuilen grube gropar grop jama jáma çukur gödör яма cova buca pozzetto",
    "cess pit": "latrine latrinengrube kloake letrina latrina beerput fosse-latrine afvalput",
    "refuse pit": "abfallgrube dépotoir basurero afvalkuil affaldsgrube avfallsgrop",
    "posthole": "pfostenloch pfostengrube pfostenlöcher pfosten trou-de-poteau hoyo-de-poste agujero-de-poste paalkuil paalgat stolpehul stolphål stolpehull słupowa cölöplyuk buca-di-palo buco-di-palo buraco-de-poste",
    "wall trench": "wandgraben wandgräbchen fundamentgraben standgreppel funderingsgreul",
    "floor": "fußboden laufhorizont estrich sol plancher suelo piso pavimento vloer gulv golv podlaha taban padló",
    "midden": "abfallhaufen dépotoir-extérieur conchero conchal mødding køkkenmødding afvalhoop mesthoop",
    "ditch": "graben fossé zanja foso fosso gracht greppel sloot grøft dike grøft rów příkop hendek árok ров",
    "well": "brunnen puits pozo pozzo poço waterput put brønd brunn studnia studna kuyu kút колодец",
    "layer": "schicht kulturschicht couche estrato capa strato camada laag kulturlag lager warstwa vrstva tabaka réteg слой",
    "burial": "grab gräber körpergrab brandgrab urnengrab tombe sépulture tumba enterramiento sepultura tomba sepoltura graf crematie grav grób hrob mezar sír погребение",
}  # fmt: skip
_LOOKUP = {word.replace("-", " "): kind for kind, words in _KINDS.items() for word in words.split()}


def kind_of(text: str, words: Words) -> str:
    """The kind of context that a text names, by the word packs or in another language; empty for none."""
    return find_word(words.kind_lookup, text) or kind_abroad(text)


@cache
def kind_abroad(text: str) -> str:
    """
    The kind of context that a word of another language stands for, alone or before a number; empty for none.

    >>> kind_abroad("waterput"), kind_abroad("Grube"), kind_abroad("Trou de poteau"), kind_abroad("Hordeum")
    ('well', 'pit', 'posthole', '')
    """
    flat = " ".join(re.sub(r"[-_()]", " ", text.lower()).split())
    return _LOOKUP.get(flat, "")


@cache
def kind_within_abroad(text: str) -> str:
    """
    The kind that words of a description stand for, such as 'Grube 14' and 'comblement de fosse'; the longest.

    >>> kind_within_abroad("Pfostenloch 3"), kind_within_abroad("comblement de fosse"), kind_within_abroad("Bad Homburg")
    ('posthole', 'pit', '')
    """
    flat = " ".join(re.sub(r"[\W\d_]+", " ", text.lower()).split())
    found = [word for word in _LOOKUP if re.search(rf"(?<!\w){re.escape(word)}(?!\w)", flat)]
    return _LOOKUP[max(found, key=len)] if found else ""


def kind_within(text: str, words: Words) -> str:
    """A kind of context that a description names, such as 'fill of storage pit 12'; the longest one."""
    flat = " " + " ".join(re.sub(r"[^a-z -]", " ", text.lower()).split()) + " "
    found = [word for word in words.kind_lookup if len(word) > 2 and f" {word} " in flat]
    return words.kind_lookup[max(found, key=len)] if found else kind_within_abroad(text)
