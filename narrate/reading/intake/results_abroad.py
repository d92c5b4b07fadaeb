"""Heads of results that are worked out from finds, in several languages: numbers of taxa, richness, indices."""

# ruff: noqa: E501

from __future__ import annotations

import re
from functools import cache

_NUMBER = r"(?:n|no|nr|nb|nbre|n°|nº|num|núm|number|numbers|count|numer|número|numero|nombre|anzahl|zahl|aantal|antal|antall|liczba|ilość|počet|broj|število)"
_LEAST = r"(?:min|mín|minim|minimum|minimal|minimale|minimaler|mínimo|minimo|minima|mínim|minimalna|minimální|mindest|least|max|maximum|máximo|massimo|total|totaal|totale|gesamt|mittlere|mean|media|identified|identificados|identifiés|determinados|déterminés|identificati|different|distintos|différents|diversi|verschiedene|verschillende)"
_TAXA = (
    r"(?:taxa|taxon|taxons|taxones|táxones|taxóns|tàxons|taxoner|taxonów|taksonów|taxonů|taksona|takson|types?|tipos|typen|typów|species|spp|espèces|especies|espécies|espècies|specie|arten|soorten|arter|"
    r"artene|gatunków|druhů|druhov|vrsta|vrst|fajok|genera|géneros|genres|generi|gattungen|families|familias|familles|famiglie|familien)"
)
_OF = r"(?:of |de |di |der |d['’]|van |av |des |los |las )"
_RESULT = re.compile(
    rf"{_NUMBER} (?:{_OF})?(?:{_LEAST} )?(?:{_OF})?{_TAXA}(?: {_LEAST})?"
    rf"|{_NUMBER} {_LEAST} (?:{_OF})?{_TAXA}|{_LEAST} (?:{_NUMBER} )?(?:{_OF})?{_TAXA}(?: {_NUMBER})?"
    rf"|(?:mindest)?(?:taxa|taxon|arten|art|typen)(?:an)?zahl|(?:mindest|gesamt)(?:an)?zahl (?:der |an )?{_TAXA}|soortenaantal|artantal|fajszám|fajok száma|taxonok száma|takson sayısı|tür sayısı"
    r"|nmt|mnt|ntaxa?"
    r"|(?:taxonomic |taxon |species |taxa |plant )?richness(?: .*)?|(?:riqueza|richesse|ricchezza|riquesa)(?: .*)?|(?:arten|taxa)reichtum|soortenrijkdom|artrikedom|bogactwo (?:gatunkowe|taksonów)|druhová bohatost"
    r"|(?:índice|indice|index|indeks|indeksi) (?:de |di |d['’]|of )?(?:shannon|simpson|pielou|diversidad|diversité|diversità|diversity|equitab\w+|équitab\w+|fragment\w+|margalef|berger).*"
    r"|(?:shannon|simpson|pielou|margalef|chao)[- ]?(?:index|wiener|weaver|h'?|1)?(?: .*)?"
    r"|(?:diversidad|diversité|diversità|diversität|diversidade|diversiteit|diversitet|różnorodność|equitabilidad|équitabilité|equitabilità|evenness|uniformidad|mangfoldighed)(?: .*)?",
    re.IGNORECASE,
)


_OF_A_THOUSAND = re.compile(
    r"(?:pmg|pmgr|tk[wgm]|tgw|tsw|tkg|(?:mean |average )?(?:thousand|1000|1 000|1,000)[ -]?(?:kernels?|grains?|seeds?|korn|körner|korrels?)[ -]?"
    r"(?:weight|wt|mass|gewicht)|tausendkorn(?:gewicht|masse)|duizendkorrelgewicht|tusenkornvikt|tusindkornsvægt|masa tysiąca (?:ziaren|nasion)"
    r"|(?:peso|poids|pes) (?:de|dei|des) mil(?:le)? (?:granos|grains|semi|grãos|graines))(?: (?:in )?(?:m?g|gr))?"
)
"""Common practice, no source: the weight of a thousand grains, which is worked out of counts and weights."""


@cache
def is_result(flat: str) -> bool:
    """
    Whether a head, in lower case and without brackets, is of a number of taxa or an index, and of no find.

    >>> [is_result(t) for t in ("n º mínimo de taxones", "nombre minimum de taxons", "nmt", "artenzahl", "riqueza taxonómica")]
    [True, True, True, True, True]
    >>> [is_result(t) for t in ("tkw", "pmg", "1000 grain weight g", "thousand kernel weight", "grain weight g")]
    [True, True, True, True, False]
    >>> [is_result(t) for t in ("taxones", "número de fragmentos", "type", "número de restos", "arten", "n")]
    [False, False, False, False, False, False]
    """
    return bool(_OF_A_THOUSAND.fullmatch(flat)) or bool(_RESULT.fullmatch(re.sub(r"\bn ([º°o])(?=\s)", r"n\1", flat)))
