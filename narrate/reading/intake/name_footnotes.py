"""Footnote signs beside names: what the sheet's footnotes, or letters of the trade, say of all finds of a name."""

# ruff: noqa: E501

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace

from narrate.reading.intake.footnotes_in_words import RAISED, SMALL_LETTERS
from narrate.reading.intake.remarks import remark
from narrate.reading.intake.written_names import NameReader, WrittenName

_SYMBOLS = rf"[*†‡§¹²³⁴⁵⁶⁷⁸⁹⁰°ª{RAISED}]+"
_WHERE = (
    (re.compile(rf"(.*\w.*?)\s*[(\[]?({_SYMBOLS})[)\]]?"), 2, 1),
    (re.compile(rf"[(\[]?({_SYMBOLS})[)\]]?\s*(.*\w.*)"), 1, 2),
    (re.compile(r"(.*\w.*?)\s*[(\[]([a-z]{1,4}|[A-Z]{1,3}|(?:[a-z]\.){2,4})[)\]]"), 2, 1),
    (re.compile(r"(.*\w.*?)[\s_]+((?:[a-z]\.){2,4})"), 2, 1),
    (re.compile(r"(.*\w.*?)[\s_]+([a-z]{1,3}|[A-Z]{1,3})"), 2, 1),
)
"""(pattern, group of the sign, group of the name)."""


def read_footed(text: str, genus: str, names: NameReader, footnotes: Mapping[str, str]) -> tuple[WrittenName, str]:
    """A name with what a footnote sign beside it says, and the sign where nobody explains it."""
    if names.given.get(text):
        return names.read(text, genus), ""
    bare, sign = _parted(text, footnotes)
    if not sign:
        return names.read(text, genus), ""
    meaning = footnotes.get(sign) or footnotes.get(sign.translate(SMALL_LETTERS), "")
    said = remark(meaning or sign)
    read = names.read(bare, genus)
    if said.says_nothing and not meaning and sign.isalpha() and sign[0] not in RAISED:
        return names.read(text, genus), ""
    conditions = tuple(dict.fromkeys(c for c in (*read.conditions_apart, read.condition, said.condition) if c))
    if said.of_some:
        conditions = ("charred", "uncharred")
    notes = (read.note, f"{sign}: {meaning}" if meaning else f"marked {sign}")
    identification = replace(read.identification, written=text)
    if said.is_doubtful:
        identification = replace(identification, qualifier="cf.")
    footed = replace(
        read,
        identification=identification,
        condition=conditions[0] if len(conditions) == 1 else "",
        conditions_apart=conditions if len(conditions) > 1 else (),
        completeness=said.completeness or read.completeness,
        note="; ".join(note for note in notes if note),
    )
    return footed, sign if said.says_nothing and not meaning else ""


def _parted(text: str, footnotes: Mapping[str, str]) -> tuple[str, str]:
    """
    The name without its footnote sign, and the sign.

    >>> _parted("Vitis sp.*", {}), _parted("*Vitis sp.", {}), _parted("Vitis (uc)", {}), _parted("Vitis a", {"a": "uncharred"})
    (('Vitis sp.', '*'), ('Vitis sp.', '*'), ('Vitis', 'uc'), ('Vitis', 'a'))
    >>> _parted("Triticum durum, rachis internodeᵃ", {})
    ('Triticum durum, rachis internode', 'ᵃ')
    """
    flat = text.strip()
    said = [sign for sign, meaning in footnotes.items() if not remark(meaning).says_nothing]
    for pattern, sign, rest in _WHERE:
        match = pattern.fullmatch(flat)
        # Letters are a footnote only where the sheet or the trade says so; 'sp' and 'cf' are none.
        is_letter = match is not None and match[sign].replace(".", "").isalpha() and match[sign][0] not in RAISED
        if match and (not is_letter or match[sign] in (*said, "uc")):
            return match[rest].strip(" ,"), match[sign]
    return flat, ""
