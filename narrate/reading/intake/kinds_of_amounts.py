"""Words in a column beside the amounts that say of each what it is: counted, estimated, weighed, a class of abundance."""

# ruff: noqa: E501

from __future__ import annotations

import re
from functools import lru_cache

from narrate.reading.intake.header_words import flat_heading, quantity

# Common practice, no source; 'individuals' and 'biomass' are from memory of Darwin Core.
_COUNTED = re.compile(
    r"(?:(?:raw|absolute|total|exact|actual|full|complete) )?(?:counts?|counted|numbers?|n|nr|no|nisp|mni|individuals?|specimens?|items?|pieces?|seeds?|fragments?|abs)"
    r"|abundance(?: (?:class|scale|rank|score|code))?|semi[ -]?quantitative|ordinal|rank(?:ed|ing)?|scores?|class(?:es)?|scale|scan(?:ned)?"
    r"|exact(?:ly)?|precise|actual|real|true|exakt|genau|exacte?s?|exact[oa]s?|esatt[oaie]|precis[oa]|dokładn[yae]|nauwkeurig"
    r"|anzahl|stück(?:zahl)?|exemplare?|individuen|gezählt|häufigkeit|häufigkeitsklasse"
    r"|nombre|effectifs?|individus?|compt(?:age|é)|abondance"
    r"|número|conteo|contad[oa]|individuos?|abundancia|cantidad"
    r"|numero|conteggio|contat[oi]|individui?|abbondanza|quantità"
    r"|aantal(?:len)?|geteld|exemplaren|individu(?:en)?|abundantie"
    r"|liczba|sztuki|policzon[oae]|osobniki|liczebność"
)
_PRESENT = re.compile(
    r"presence(?:[ /]absence)?|present|presence only|p/a|(?:noted|recorded) as present|seen|noted"
    r"|präsenz|vorhanden|nachgewiesen|anwesend|présence|présente?s?|presencia|presentes?|presença|presenza|presenti|aanwezig(?:heid)?|obecność|obecn[yae]"
)
_ESTIMATED = re.compile(
    r"est|estimat(?:e|es|ed|ion)(?: (?:count|number))?|estimated (?:count|number)|approx(?:imate(?:ly)?)?|circa|extrapolated?"
    r"|geschätzt|schätzung|estim(?:é|ée|ation)|estimaci[oó]n|estimad[oa]|stim(?:a|ato)|schatting|geschat|szacun(?:ek|kow[oa])|oszacowan[ey]"
)
_WEIGHED = re.compile(
    r"(?:dry |bio)?(?:mass|weight|weighed)(?: ?(?:in )?(?:g|mg|grams?))?|gewicht|gewogen|masse|poids|pesée|peso|pesado|waga|masa|gewogen"
)


@lru_cache(maxsize=4096)
def kind_of_amount(text: str) -> str:
    """
    What a word beside an amount says that it is: count, estimate, presence or mass; empty for other words.

    >>> kind_of_amount("individuals"), kind_of_amount("Schätzung"), kind_of_amount("biomass in grams"), kind_of_amount("pit")
    ('count', 'estimate', 'mass', '')
    >>> kind_of_amount("exact"), kind_of_amount("present"), kind_of_amount("vorhanden")
    ('count', 'presence', 'presence')
    """
    flat = flat_heading(text)
    if _ESTIMATED.fullmatch(flat):
        return "estimate"
    if _PRESENT.fullmatch(flat):
        return "presence"
    small = quantity(text)
    if _WEIGHED.fullmatch(flat) or small == "mass":
        return "mass"
    return "count" if _COUNTED.fullmatch(flat) or small.startswith("count") else ""


_KIND_HEAD = re.compile(
    r"(?:(?:organism|count|amount|find|item|data) )?(?:quantity|quantities|count|amount|measure(?:ment)?|value|abundance|number|qty|menge|mengen|quantité|cantidad|quantità)[ -]?"
    r"(?:types?|kinds?|units?|method|measure|basis|art|einheit)"
    r"|(?:type|unit|kind|method) of (?:quantity|quantification|count|measurement|amount)|units?|quantification|unité|einheit|mengenangabe"
    r"|(?:tipo|unidad|tipo di|unità|type) (?:de |di |d )?(?:cantidad|quantité|quantità|quantification|conteo|comptage|conteggio|medida|mesure|misura)|unidad(?: de medida)?|unità(?: di misura)?"
    r"|(?:soort|type) (?:aantal|telling)|eenheid|jednostka miary|rodzaj (?:ilości|liczby)"
)


def is_kind_head(text: str) -> bool:
    """
    Whether a head says that its column tells kinds of amounts apart.

    >>> is_kind_head("quantity_type"), is_kind_head("organismQuantityType"), is_kind_head("quantity")
    (True, True, False)
    """
    return bool(_KIND_HEAD.fullmatch(flat_heading(text)))


def are_kinds_of_amounts(texts: list[str], *, is_headed: bool = False) -> bool:
    """Whether all texts of a column say of an amount what it is; most of them, where its head says so too."""
    return bool(texts) and sum(bool(kind_of_amount(text)) for text in texts) >= (0.6 if is_headed else 1) * len(texts)
