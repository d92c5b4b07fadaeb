"""Volumes and weights of samples as they are drafted: litres of soil, and what their flots measure."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass

from narrate.model.sampling import LARGEST_VOLUME_L, SMALLEST_VOLUME_L
from narrate.reading.intake.cell_marks import number_of
from narrate.reading.intake.header_words import heading
from narrate.reading.intake.said import Said
from narrate.reading.intake.told import Told

_UNIT_BEHIND = re.compile(
    r"\s*(l|lt|ltrs?|lit(?:re|er|ro)s?|litri|litrów|litry|ml|mls|cc|ccm|cm3|cm³|cl|dl|hl|m3|m³)\.?$", re.IGNORECASE
)
_PARTS_OF_LITRE = {"ml": 1000, "mls": 1000, "cc": 1000, "ccm": 1000, "cm3": 1000, "cm³": 1000, "cl": 100, "dl": 10}
_LITRES_IN_ONE = {"hl": 100.0, "m3": 1000.0, "m³": 1000.0}
_TWO_READINGS = re.compile(r"[1-9]\d{0,2}[.,]\d{3}")
"""'1.500': a litre and a half, or as many as 1500; three digits behind one mark may be thousands or a fraction."""


def litres(text: str, unit: str, decimal: str = ".") -> float | None:
    """
    A volume in litres; None for what is no number, such as '<1', and for units that are none of volumes.

    >>> litres("10 L", "l"), litres("500", "ml"), litres("<1", "l"), litres("2,5", "l", ","), litres("3 x 5 L", "l")
    (10.0, 0.5, None, 2.5, 15.0)
    >>> litres("10", "kg"), litres("10", "dl"), litres("2", "m3")
    (None, 1.0, 2000.0)
    """
    plain = re.sub(r"(?<=\d) ?([¼½¾])", lambda sign: decimal + {"¼": "25", "½": "5", "¾": "75"}[sign[1]], text.strip())
    several = re.fullmatch(
        r"(\d{1,2})\s*(?:[x×]|(?:buckets?|bags?|eimer|seaux|cubos)\s*(?:of|à|de|von|@)?)\s*(\d.*)", plain, re.IGNORECASE
    )
    if several and (each := litres(several[2], unit, decimal)) is not None:
        return int(several[1]) * each
    bare = _UNIT_BEHIND.sub("", plain)
    if not re.fullmatch(r"\d[\d.,' ]*", bare):
        return None
    found = plain_or_comma(bare, decimal)
    if found is None or found <= 0:
        return None
    said = (unit_in(plain) or unit).lower()
    if said[:1] != "l" and said not in (*_PARTS_OF_LITRE, *_LITRES_IN_ONE):
        return None  # kilograms are no litres
    return float(f"{found / _PARTS_OF_LITRE.get(said, 1):.12g}") * _LITRES_IN_ONE.get(said, 1.0)


def unit_in(text: str) -> str:
    """
    The unit that stands behind a volume in its own cell; empty for none.

    >>> unit_in("12 L"), unit_in("500ml"), unit_in("12")
    ('L', 'ml', '')
    """
    match = _UNIT_BEHIND.search(text.strip())
    return match[1] if match and re.search(r"\d", text) else ""


def plain_or_comma(text: str, decimal: str) -> float | None:
    """
    A number; a comma before one or two digits at the end parts no thousands, so it is a decimal mark.

    >>> plain_or_comma("2,5", "."), plain_or_comma("1,200", ".")
    (2.5, 1200.0)
    """
    flat = text.strip()
    return number_of(flat, "," if re.fullmatch(r"\d+,\d{1,2}", flat) else decimal)


@dataclass(slots=True)
class Measured:
    """What a sheet says of the soil and the flot of one sample, on its way into a record."""

    id: str
    said: Mapping[str, list[Said]]
    sample: dict[str, str]
    notes: list[str]
    told: Told
    decimal: str = "."

    def soil(self) -> None:
        """Puts the litres into the record; what gives none is kept in the note and told."""
        for one in self.said.get("volume", [])[:1]:
            one = _without_head(one)
            found = litres(one.text, one.unit or "l", self.decimal)
            why, mend = _doubt_of_litres(one, found)
            if found is not None and not why:
                self.sample["volume_l"] = f"{found:.12g}"
                continue
            self.notes.append(f"volume written {one.text}")
            self.told.warning(
                "N318", f"volume {one.text} {why}" if found is None else f"volume {why}", one.place,
                f"sample {self.id}: the volume is '{one.text}'{why}, kept in the note, and no density is made of it, "
                "expected litres",
                mend or "give 'volume_l' in the drafted record if it is known",
            )  # fmt: skip

    def flot(self) -> None:
        """Puts weight and volume of the flot into the record; what is no number is kept in the note and told."""
        fields = []
        for role, key, factors, usual in (
            ("flot mass", "mass_g", {"g": 1.0, "kg": 1000.0, "mg": 0.001}, "g"),
            ("flot volume", "volume_ml", {"ml": 1.0, "cc": 1.0, "l": 1000.0, "dl": 100.0}, "ml"),
        ):
            for one in self.said.get(role, [])[:1]:
                match = re.fullmatch(rf"(.*?)\s*({'|'.join(factors)})?\.?", one.text.strip(), re.IGNORECASE)
                number = plain_or_comma(match[1], self.decimal) if match else None
                if match is None or number is None:
                    self.notes.append(f"{role} written {one.text}")
                    self.told.warning(
                        "N318", f"{role} {one.text}", one.place,
                        f"sample {self.id}: the {role} is '{one.text}', kept in the note, expected {usual}",
                        "give 'light_fraction' in the drafted record if it is known",
                    )  # fmt: skip
                    continue
                factor = factors.get((match[2] or one.unit or usual).lower(), 1.0)
                fields.append(f"{key}: {number * factor:.12g}")
        if fields:
            self.sample["light_fraction"] = "{" + ", ".join(fields) + "}"


def _without_head(one: Said) -> Said:
    """A volume without the words that head it in its own cell: 'Sample vol 10 L'."""
    match = re.fullmatch(r"(?P<head>[^\d<>~?]{3,}?)[\s:=]*(?P<volume>\d.*)", one.text.strip())
    return Said(match["volume"], one.place, one.unit) if match and heading(match["head"]) == "volume" else one


def _is_plain(found: float, unit: str, readings: tuple[str, str]) -> bool:
    """Whether the one reading of a number gives litres that a sample may hold, and the other does not."""
    read = [number for text in readings if (number := litres(text, unit)) is not None]
    able = [number for number in read if SMALLEST_VOLUME_L <= number <= LARGEST_VOLUME_L]
    return len(able) == 1 and found in able


def _doubt_of_litres(one: Said, found: float | None) -> tuple[str, str]:
    """Why a number is not taken for litres, and how that is mended; empty where it is taken, or is no number."""
    own = unit_in(one.text)
    cell = one.place.cell or str(one.place)
    if found is None or own:
        return "", ""
    bare = re.sub(r"[.,]", "", one.text.strip())
    plain = one.text.strip().replace(",", ".").rstrip("0").rstrip(".")
    if _TWO_READINGS.fullmatch(one.text.strip()) and not _is_plain(found, one.unit or "l", (bare, plain)):
        return (
            f", which may be {plain} or {bare}",
            f'say under \'mend\' in the layout which is meant, with its unit: "{cell}": "{plain} l"',
        )
    if found > LARGEST_VOLUME_L:
        return (
            f", more than the {LARGEST_VOLUME_L:g} litres that a sample may hold",
            "if they are millilitres, write 'volume, ml' for the row or column in the layout; if litres, say so under "
            f'\'mend\': "{cell}": "{one.text} l"',
        )
    return "", ""
