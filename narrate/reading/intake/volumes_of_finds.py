"""Volumes of remains, such as charcoal in millilitres: no field of a find holds them, so they are kept as notes."""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import lru_cache

from narrate.model.counts import Count
from narrate.model.grids import Cell
from narrate.reading.intake.cell_marks import ABSENT, NOT_LOOKED, Found, Quirk, Reading
from narrate.reading.intake.pending import says_pending

UNIT = r"(?:ml|mls|cc|ccm|cm3|cm³|millilit(?:re|er)s?|dl|l|lt|ltrs?|lit(?:re|er)s?)"
_SMALL = r"(?:ml|mls|cc|ccm|cm3|cm³|millilit(?:re|er)s?)"
"""Behind a bare name, because 'Triticum spelta L.' carries its author and no litres."""
_VOLUME = r"(?:vol(?:\.|umes?|umen|ume)?|volum)"
_BEFORE = re.compile(
    rf"{_VOLUME}\.?\s+(?:(?:of|du|de|del|della|der|des|van|von|d['’])\s+)?(?:the\s+)?(?P<name>.*[^\W\d_]{{3}}.*?)\s*(?:[(\[,]\s*(?:in\s+)?(?P<unit>{UNIT})\s*[)\]]?\.?)?",
    re.IGNORECASE,
)  # fmt: skip
_BEHIND = re.compile(
    rf"(?P<name>.*[^\W\d_]{{3}}.*?)[\s,;:_-]+{_VOLUME}\.?(?:[\s,]*[(\[]?\s*(?:in\s+)?(?P<unit>{UNIT})\s*[)\]]?\.?)?"
    rf"|(?P<name2>.*[^\W\d_]{{3}}.*?)\s*(?:[(\[,_]|\s)\s*(?:in\s+)?(?P<unit2>{_SMALL})\s*[)\]]?\.?",
    re.IGNORECASE,
)  # fmt: skip


@lru_cache(maxsize=4096)
def volume_behind(text: str) -> tuple[str, str]:
    """
    The words of a name that gives a volume, without it, and its unit; both empty where it gives none.

    >>> volume_behind("Charcoal vol. (cc)"), volume_behind("Volume of charcoal"), volume_behind("Holzkohle ml")
    (('Charcoal', 'cc'), ('charcoal', 'ml'), ('Holzkohle', 'ml'))
    >>> volume_behind("Zea mays kernel"), volume_behind("Volume (l)"), volume_behind("Triticum spelta L.")
    (('', ''), ('', ''), ('', ''))
    """
    match = _BEFORE.fullmatch(text.strip()) or _BEHIND.fullmatch(text.strip())
    if match is None:
        return "", ""
    said = match.groupdict()
    return said.get("name") or said.get("name2") or "", (said.get("unit") or said.get("unit2") or "ml").lower()


def is_unit_of_volume(text: str) -> bool:
    """
    Whether a word beside an amount says that it is a volume.

    >>> is_unit_of_volume("ml"), is_unit_of_volume("cm³"), is_unit_of_volume("n"), is_unit_of_volume("")
    (True, True, False, False)
    """
    return bool(re.fullmatch(rf"{UNIT}|{_VOLUME}\.?(?:\s*[(\[]?\s*{UNIT}\s*[)\]]?)?", text.strip(), re.IGNORECASE))


def unit_of_volume(words: Iterable[str]) -> str:
    """
    The first of the words that is a unit of volumes; empty for none.

    >>> unit_of_volume(("fragment", "ml")), unit_of_volume(("uncharred",))
    ('ml', '')
    """
    return next((word.lower() for word in words if re.fullmatch(UNIT, word, re.IGNORECASE)), "")


def read_volume(cell: Cell, unit: str) -> Reading:
    """A cell of volumes of remains: that they were there, with what was written in the note; noughts and blanks."""
    text = cell.text.strip()
    if text.lower() in ("", *NOT_LOOKED) or says_pending(text):
        return Reading()
    if text.lower() in ABSENT or re.fullmatch(r"0(?:[.,]0+)?", text):
        return Reading(found=(Found(count=Count(written=text, amount="looked for and absent")),))
    written = text if re.search(rf"{UNIT}\.?$", text, re.IGNORECASE) else f"{text} {unit}"
    quirk = Quirk(
        kind="volume of remains",
        message=f"'{written}' is a volume of remains, kept in the note and as presence, expected a count or a weight",
        help="nothing need be done; no count is made of it",
    )
    found = Found(count=Count(written=text, amount="noted as present"), note=f"volume {written}")
    return Reading(found=(found,), quirks=(quirk,))
