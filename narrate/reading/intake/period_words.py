"""Names of periods and of phases as tables are headed with them, in seven languages and for both halves of the world."""

# ruff: noqa: E501

from __future__ import annotations

import re

# Common practice, no source: names of periods as they head tables and groups of samples.
_PERIOD = (
    r"(?:(?:sub|post|pre|proto|epi|mid)[- ]?)?(?:pueblo|basketmaker|hohokam|mogollon|fremont|pioneer|colonial|sedentary|woodland|mississippian|archaic|paleo-?indian|fort ancient|protohistoric"
    r"|formative|classic|horizon|intermediate|inca|inka|wari|tiwanaku|formativo|intermedio|horizonte|arcaico|clásico|inicial"
    r"|stone age|bronze age|iron age|copper age|neolithic|chalcolithic|mesolithic|pal(?:a)?eolithic|ubaid|uruk|halaf|jemdet nasr|akkadian|natufian|ppn ?[abc]?|[eml]b ?[iv]*|lba|eba|mba|ia|harappan|megalithic|early historic"
    r"|roman|romano-british|saxon|anglo-saxon|norman|viking|medieval|post-?medieval|byzantine|islamic|hellenistic|parthian|sasanian|achaemenid|ottoman|modern"
    r"|hallstatt|halsztat|la ?t[èe]ne|merovingi\w+|karolingi\w+|carolingi\w+|ottonisch|urnfield|lbk"
    r"|[\w-]*(?:bronze|eisen|stein|kupfer|kaiser|latène|hallstatt|urnenfelder|römer|völkerwanderungs|merowinger|karolinger)zeit|neolithikum|\w*mittelalter|neuzeit"
    r"|âge du (?:bronze|fer|cuivre)|bronze (?:ancien|moyen|final)|néolithique|chalcolithique|antiquité|gallo-romain|moyen[ -]âge|haut moyen[ -]âge|médiéval|époque \w+|mérovingien|carolingien"
    r"|edad del (?:bronce|hierro|cobre)|bronce|hierro|neolítico|calcolítico|época \w+|romano|medieval|ibérico"
    r"|età del (?:bronzo|ferro|rame)|bronzo|neolitico|eneolitico|età \w+|romana|medievale|alto ?medioevo"
    r"|per[ií]odo \w+|periode? \w+"
    r"|bronstijd|ijzertijd|romeinse tijd|\w*middeleeuwen|neolithicum|nieuwe tijd"
    r"|epoka (?:brązu|żelaza)|neolit|średniowiecze|okres \w+(?: \w+)?|brąz)"
)
_BESIDE = (
    r"(?:early|middle|late|later|earlier|final|initial|terminal|lower|upper|age|period|phase|and|to|[–/&]|early/middle|transition(?:al)?|horizon"
    r"|früh\w*|mittler\w*|spät\w*|ältere?s?|jüngere?s?|(?:vor)?römisch\w*|ancien(?:ne)?|moyen(?:ne)?|finale|premier|second|récent|tardif|tardive"
    r"|antiguo|medio|media|tardío|temprano|superior|inferior|pleno|antico|recente|tardo|vroege?|midden|wczesn\w+|późn\w+|środkow\w+"
    r"|[IVX]{1,4}[a-z]?\d?|[A-D]\d?|\d{1,2}[a-z]?)"
)
_NAME = re.compile(rf"(?:{_BESIDE}[ -]+)*{_PERIOD}(?:[ -]+(?:{_BESIDE}|{_PERIOD}))*", re.IGNORECASE)
_LONGEST = 80
"""Letters of the longest name of a period; what is longer is a sentence or a rule across the page."""
_NUMBERED = re.compile(
    r"(?<![^\W\d_])(?:(?:building |occupation |site |settlement )?(?:phase|period|horizon|stratum|level|stage)|niveau|strato|estrato|couche|capa|période|phase|fase|periodo|período|nivel|livello|horizonte|orizzonte|schicht|horizont|periode|fazy?|poziom|warstwa)"
    r"\s+(?:\d{1,2}[a-z]?|[IVX]{1,5}[a-z]?|[A-F]\d?)(?![^\W_])(?:\s*[-–/&]\s*(?:\d{1,2}[a-z]?|[IVX]{1,5}[a-z]?)(?![^\W_]))?",
    re.IGNORECASE,
)


def names_a_period(text: str) -> bool:
    """
    Whether a text is the name of a period and nothing else, with a date in brackets behind it perhaps.

    >>> [names_a_period(t) for t in ("Early Pueblo II", "Late Woodland", "Premier âge du Fer", "Bronze final IIIb")]
    [True, True, True, True]
    >>> [names_a_period(t) for t in ("Roman (AD 43-410)", "spätes Mittelalter", "Area North", "Charred remains")]
    [True, True, False, False]
    """
    bare = re.sub(r"\s*[(\[][^()]*[)\]]\s*$", "", text.strip()).strip(" :.")
    return len(bare) <= _LONGEST and bool(_NAME.fullmatch(bare))


def names_a_phase(text: str) -> bool:
    """
    Whether a text is a phase or a level by its number and nothing else.

    >>> [names_a_phase(t) for t in ("Level III", "Phase 2a", "Fase II", "Niveau 4", "Level of the floor", "Table 2")]
    [True, True, True, True, False, False]
    """
    bare = re.sub(r"\s*[(\[][^()]*[)\]]\s*$", "", text.strip()).strip(" :.")
    return bool(_NUMBERED.fullmatch(bare))


def phases_in(text: str) -> list[str]:
    """
    The phases and levels that a text names by their numbers, each once.

    >>> phases_in("Plant remains from the pits of Phase 2"), phases_in("Levels II and III")
    (['Phase 2'], [])
    """
    return list({match[0].lower(): match[0] for match in _NUMBERED.finditer(text)}.values())


def phase_at_end(text: str) -> str:
    """
    The phase or level that a name ends with: 'Table S3a Level III' -> 'Level III'; empty for none.

    >>> phase_at_end("Table S3a Level III"), phase_at_end("Sheet 3"), phase_at_end("Counts_Phase 2")
    ('Level III', '', 'Phase 2')
    """
    found = list(_NUMBERED.finditer(text.replace("_", " ")))
    ends = found[-1].end() == len(text.rstrip()) if found else False
    return found[-1][0] if ends and len({match[0].lower() for match in found}) == 1 else ""
