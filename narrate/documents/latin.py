"""Latin names in texts of the records and in titles of works: genera and species stand in italics, the rest upright."""

from __future__ import annotations

import re
from collections.abc import Collection

from narrate.documents.inline import literal
from narrate.model.packs import Packs

_NAME = re.compile(r"\b([A-Z][a-z]{2,})((?: cf\.)? [a-z][a-z-]{2,}(?:/[a-z-]{3,})?)?(?![\w-])")
_BELOW = re.compile(r"\*([^*]+)\*( (?:ssp|subsp|var|f)\. )([a-z][a-z-]{2,})")
_BINOMIAL = re.compile(r"(?:cf\. )?([A-Z][a-z]{2,} [a-z]{3,})(?: type)?")
_ENDING = re.compile(r"(?:us|a|um|is|ii|ae|oides|ensis|ense|are|ale|ile|ans|ens|ior|es|on|ys|ax|ix|yx|ops|[a-z]{3}i)$")
"""Of epithets, from memory; 'seed', 'wood' and 'shell' have none of them."""
_WORDS = frozenset(("indet", "type", "agg", "ssp", "subsp", "var", "spp"))


def genera_of(packs: Packs) -> frozenset[str]:
    """The genera of the packs in use, and their species as genus and epithet."""
    genera = {taxon.genus for taxon in packs.taxa.values() if taxon.genus}
    return frozenset(genera | {taxon.id for taxon in packs.taxa.values() if taxon.rank == "species"})


def with_latin(text: str, genera: Collection[str]) -> str:
    """
    The text, in which no sign is markup, with the names of known genera and their species in italics.

    >>> genera = {"Carya", "Phalaris", "Chenopodium", "Amaranthus"}
    >>> with_latin("Carya sp.", genera), with_latin("cf. Phalaris caroliniana", genera)
    ('*Carya* sp.', 'cf. *Phalaris caroliniana*')
    >>> with_latin("Chenopodium berlandieri ssp. jonesianum", genera)
    '*Chenopodium berlandieri* ssp. *jonesianum*'
    >>> with_latin("Chenopodium/Amaranthus", genera), with_latin("Hardwood indet.", genera)
    ('*Chenopodium*/*Amaranthus*', 'Hardwood indet.')
    """

    def marked(found: re.Match[str]) -> str:
        genus, epithet = found[1], found[2] or ""
        if genus not in genera:
            return found[0]
        last = epithet.split()[-1] if epithet else ""
        is_name = last not in _WORDS and (f"{genus}{epithet}" in genera or _ENDING.search(last))
        return f"*{genus}{epithet}*" if is_name and "cf." not in epithet else f"*{genus}*{epithet}"

    return _BELOW.sub(r"*\1*\2*\3*", _NAME.sub(marked, literal(text)))


def name_with_latin(written: str, genera: Collection[str]) -> str:
    """
    A name as the analyst wrote it; one that no pack knows is in italics where it reads as genus and species.

    >>> name_with_latin("Penthorum sedoides", ()), name_with_latin("Mystery seed", ())
    ('*Penthorum sedoides*', 'Mystery seed')
    """
    found = _BINOMIAL.fullmatch(written)
    if found is not None and _ENDING.search(found[1]):
        return literal(written).replace(found[1], f"*{found[1]}*")
    return with_latin(written, genera)
