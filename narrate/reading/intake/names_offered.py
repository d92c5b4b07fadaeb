"""The name that an analyst may have meant by one that no pack knows: offered, and never taken."""

from __future__ import annotations

import difflib
import re
from collections.abc import Mapping

from narrate.reading.asking import near
from narrate.reading.intake.name_spelling import tidy
from narrate.reading.intake.written_names import NameReader

_ALIKE = 0.8
"""How alike genera must be, and names as a whole."""
_EPITHETS_ALIKE = 0.7

# Common practice, no source: everyday names that mean one plant wherever they are written.
EVERYDAY: Mapping[str, str] = {
    word: taxon
    for taxon, words in (
        ("Zea mays", "maíz maiz maïs mais milho majs kukorica kukuřice kukurydza mısır"),
        ("Phaseolus", "frijol frijoles"),
        ("Cucurbita", "calabaza calabazas zapallo"),
        ("Capsicum", "ají chile chili"),
        ("Gossypium", "algodón algodon"),
        ("Amaranthus", "amaranto amarante amarant"),
        ("Hordeum vulgare", "gerste orge cebada cevada orzo gerst byg bygg korn jęczmień ječmen árpa arpa"),
        ("Triticum", "weizen blé trigo frumento tarwe hvede vete pszenica pšenice búza buğday"),
        ("Secale cereale", "roggen seigle centeno centeio segale rogge rug råg żyto žito rozs çavdar"),
        ("Avena", "hafer avoine avena aveia haver havre owies oves zab yulaf"),
        ("Lens culinaris", "linse linsen lentille lentilles lenteja lentejas lentilha lenticchia linzen soczewica"),
        ("Pisum sativum", "erbse erbsen ervilha pisello piselli erwt erwten groch hrách borsó bezelye"),
        ("Vicia faba", "ackerbohne ackerbohnen fève fèves haba habas fava favas fave tuinboon duivenboon"),
        ("Linum usitatissimum", "lein flachs linho vlas hør lin len"),
        ("Corylus avellana", "haselnuss noisette avellana nocciola hazelnoot hasselnød hasselnöt"),
        ("Vitis vinifera", "weinrebe vigne vid vite uva wijnstok"),
    )
    for word in words.split()
}  # fmt: skip


def name_offered(written: str, names: NameReader) -> str:
    """The name of the packs that looks most like a written one, or that its everyday word means; empty for none."""
    lookup = names.packs.taxon_lookup
    bare = _without_part(tidy(written), names)
    everyday = EVERYDAY.get(bare.lower())
    if everyday is not None:
        return str(lookup.get(everyday.lower()) or lookup.get(everyday) or "")
    for text in dict.fromkeys((tidy(written), bare)):
        meant = near(text, lookup, _ALIKE)
        if meant and are_alike(text, meant):
            return str(lookup[meant])
    return ""


def are_alike(written: str, known: str) -> bool:
    """
    Whether one name may be the other misspelt: their genera begin alike and are alike, and so are their epithets.

    >>> are_alike("Chenopodium berlanderi", "chenopodium berlandieri"), are_alike("Salix sp.", "salvia sp.")
    (True, False)
    >>> are_alike("Vicia sativa", "vicia sylvatica"), are_alike("Juglans niger", "juglans nigra")
    (False, True)
    """
    own, other = (re.sub(r"\b(?:cf|aff)\b\.?|[(),]", " ", name.lower()).split() for name in (written, known))
    if not own or not other or own[0][0] != other[0][0] or _ratio(own[0], other[0]) < _ALIKE:
        return False
    return len(own) < 2 or len(other) < 2 or _ratio(own[1], other[1]) >= _EPITHETS_ALIKE


def _ratio(one: str, other: str) -> float:
    return difflib.SequenceMatcher(None, one, other).ratio()


def _without_part(name: str, names: NameReader) -> str:
    """'Juglans niger' of 'Juglans niger shell'."""
    words = name.split()
    for end in range(len(words) - 1, max(0, len(words) - 3), -1):
        if names.part_of(" ".join(words[end:])):
            return " ".join(words[:end]).strip(" ,")
    return name
