"""Questions about a sample that a table answers with yes and no: 'Suitable for 14C?', 'Dated?', 'Weitere Analyse'."""

# ruff: noqa: E501

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import cache

# Common practice, no source: yes, no and what stands between them.
_YES = frozenset({"y", "yes", "j", "ja", "s", "si", "sí", "sì", "sim", "oui", "o", "tak", "ano", "igen", "da", "evet"})
_NO = frozenset({"n", "no", "nein", "nee", "non", "não", "nie", "ne", "nem", "hayır", "nej"})
_BETWEEN = frozenset({"?", "-", "–", "maybe", "poss", "possibly", "possible", "n/a", "na", "vielleicht", "peut-être", "tal vez"})

_ASKED = re.compile(
    r"(?:(?:material|remains|plant remains|charcoal|grain|seeds?|anything|sample) )?(?:is |was |were )?"
    r"(?:suitable|selected|submitted|sent|recommended|chosen|retained|picked|kept|discarded|dateable|datable|enough|adequate|available|useful) "
    r"(?:for|to) .+"
    r"|(?:(?:further|full|detailed|additional) (?:analysis|work|assessment|study|identification|sorting)|(?:fully|completely|half|100% ?) ?sorted"
    r"|(?:ams|c ?14|14 ?c|radiocarbon|rc)(?:[- ](?:date|dating|sample|candidate|potential))?[sd]?|dated|datable|dateable|photographed|scanned"
    r"|archived|stored|published|subsampled|sent out)\??"
    r"|(?:muestra|campione|échantillon|amostra|monster|próbka|probe|sample|possible|potential|candidate|material|datowanie|datierung|datación|datazione|datation)s?"
    r"(?: (?:de|di|da|voor|für|for|pour|para|per|do))? (?:c-? ?14|14 ?c|ams|radiocarbon\w*)\??|(?:à|a|zu|te|do|per|para|pour) (?:dat|analy[sz]|anali[sz])\w+|datierbar|databile|datowalne"
    r"|(?:prévu|sélectionné|choisi|envoyé|seleccionad[oa]|enviad[oa]|elegid[oa]|scelt[oa]|inviat[oa]|wysłan[oae]|wybran[oae])e?s? (?:pour|para|a|per|do|na) .+"
    r"|.*\b(?:geeignet|eignung)\b.*(?:14 ?c|c ?14|ams|datierung|analyse).*|(?:14 ?c|c ?14|ams)-?(?:datierung|probe|datum|fähig|eignung)\??"
    r"|(?:weitere|detaillierte) analysen?\??|datiert\??|(?:apt[oa]s?|adecuad[oa]s?|idone[oaie]+|adatt[oaie]+|adequad[oa]s?) (?:para|per|a) .+"
    r"|(?:convient|utilisable|exploitable|propre)s? (?:pour|à) .+|(?:datable|daté|étudié|analysé)e?s?\??|(?:geschikt|bruikbaar) voor .+"
    r"|(?:dateerbaar|gedateerd|geanalyseerd)\??|(?:nadaje się|odpowiednie|przydatne) (?:do|na) .+|(?:lämplig|egnet|egnet til|lämpad) (?:för|til|till) .+",
    re.IGNORECASE,
)  # fmt: skip


@cache
def asks_of_a_sample(head: str) -> bool:
    """
    Whether a head asks something of a sample, whatever stands under it.

    >>> asks_of_a_sample("Suitable for 14C?"), asks_of_a_sample("Full analysis?"), asks_of_a_sample("Sent for AMS dating")
    (True, True, True)
    >>> asks_of_a_sample("Hordeum vulgare?"), asks_of_a_sample("Geschikt voor C14"), asks_of_a_sample("Charcoal")
    (False, True, False)
    """
    return bool(_ASKED.fullmatch(" ".join(head.split())))


def are_answers(texts: Iterable[str]) -> bool:
    """
    Whether every text is an answer to a question, and one at least says yes or no.

    >>> are_answers(["Y", "N", "?"]), are_answers(["+", "-"]), are_answers(["Ja", "nein"]), are_answers(["-", "?"])
    (True, False, True, False)
    """
    said = {text.strip().lower() for text in texts if text.strip()}
    return bool(said & (_YES | _NO)) and said <= _YES | _NO | _BETWEEN


def are_yes_and_no(texts: Iterable[str]) -> bool:
    """
    The same where both yes and no are said.

    >>> are_yes_and_no(["Y", "N"]), are_yes_and_no(["Y", "Y"])
    (True, False)
    """
    said = {text.strip().lower() for text in texts}
    return are_answers(said) and bool(said & _YES) and bool(said & _NO)
