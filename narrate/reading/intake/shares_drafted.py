"""Shares of flots that were sorted: what a number means by the scale that the layout gives, and its record."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping

from narrate.model.layouts import PERCENT, PERCENT_OR_SHARE, SHARE, SHARE_OR_PERCENT
from narrate.reading.intake.said import Said
from narrate.reading.intake.sheet_finds import SORTED_OF_CLASS
from narrate.reading.intake.told import Told
from narrate.reading.intake.volumes_drafted import plain_or_comma

# Common practice, no source.
_WORDS = {
    "half": 0.5, "quarter": 0.25, "hälfte": 0.5, "moitié": 0.5, "mitad": 0.5, "metà": 0.5, "helft": 0.5,
    "viertel": 0.25,
    **dict.fromkeys(("all", "whole", "full", "complete", "entire", "ganz", "alles"), 1.0),
    **dict.fromkeys(("tout", "todo", "tutto", "heel"), 1.0),
}  # fmt: skip
_SIGNS = {"½": "1/2", "¼": "1/4", "⅛": "1/8", "¾": "3/4", "⅓": "1/3", "⅔": "2/3"}


def share_sorted(text: str, scale: str = "", decimal: str = ".") -> float | None:
    """
    The share of a flot that was sorted, above 0 and up to 1; None where the text or the scale leaves it open.

    scale:  of numbers that say no scale of their own. Empty, as nobody has said: above 1 they are percent.

    >>> [share_sorted(text) for text in ("50%", "0.25", "1/8", "100", "half")]
    [0.5, 0.25, 0.125, 1.0, 0.5]
    >>> share_sorted("0.5", "%"), share_sorted("0.5", "% or share"), share_sorted("50", "% or share")
    (0.005, None, 0.5)
    >>> share_sorted("12.5", "share"), share_sorted("12.5", "share or %"), share_sorted("100", "share or %")
    (None, None, 1.0)
    """
    flat = _SIGNS.get(text.strip(), text.strip().lower())
    if flat in _WORDS:
        return _WORDS[flat]
    own = re.fullmatch(r"([\d.,]+) \(([a-z% ]+)\)", flat)
    if own:
        return share_sorted(own[1], own[2], decimal)
    match = re.fullmatch(r"(\d{1,4})\s*(?:[/:]|\bin\b|\bof\b)\s*(\d{1,4})", flat)
    if match and int(match[2]):
        found = int(match[1]) / int(match[2])
        return found if 0 < found <= 1 else None
    number = plain_or_comma(flat.rstrip("% "), decimal)
    if number is None or number <= 0:
        return None
    if flat.endswith("%") or scale == PERCENT or (scale in ("", PERCENT_OR_SHARE) and number > 1):
        number /= 100
    elif scale == PERCENT_OR_SHARE or (scale == SHARE_OR_PERCENT and number > 1):
        number = 1.0 if number == 100 else 2.0
    return float(f"{number:.12g}") if number <= 1 else None


def with_scale(one: Said) -> str:
    """The text of a share with the scale that its row or column has."""
    is_bare = re.fullmatch(r"[\d.,]+", one.text.strip()) is not None
    if not is_bare or not one.unit:
        return one.text
    return f"{one.text}%" if one.unit == PERCENT else f"{one.text} ({one.unit})"


def draft_sorted(
    id: str, said: Mapping[str, list[Said]], sample: dict[str, str], notes: list[str], told: Told, decimal: str
) -> None:
    """Puts into the record what was sorted of the flot, or of each of its classes; what leaves it open is told."""
    classes: dict[str, Said] = {}
    for one in said.get(SORTED_OF_CLASS, []):
        before = classes.setdefault(one.unit, one)
        if share_sorted(before.text, "", decimal) != share_sorted(one.text, "", decimal):
            told.warning(
                "N318", f"differs sorted {id} {one.unit}", one.place,
                f"sample {id}: of {one.unit} '{one.text}' was sorted here and '{before.text}' in "
                f"{before.place.cell or before.place}; the first is kept, expected one value",
                "mend the drafted record by hand if the second is right",
            )  # fmt: skip
    if len(classes) > 1:
        of_classes = {name: share_sorted(one.text, "", decimal) for name, one in classes.items()}
        for name, one in classes.items():
            if of_classes[name] is None:
                _tell_open(id, one, f" of {name}", notes, told)
        known = {name: share for name, share in of_classes.items() if share is not None}
        if len(known) < len(classes) or any(share != 1 for share in known.values()):
            listed = (
                f"{{name: {json.dumps(name, ensure_ascii=False)}, proportion_sorted: {share:.12g}}}"
                for name, share in known.items()
            )
            sample.update({"size_classes": f"[{', '.join(listed)}]"} if len(known) == len(classes) else {})
        return
    for one in said.get("sorted", [])[:1]:
        found = share_sorted(one.text, one.unit, decimal)
        if found is None:
            _tell_open(id, one, "", notes, told)
        elif found < 1:
            sample["size_classes"] = f"[{{name: whole flot, proportion_sorted: {found:.12g}}}]"


def _tell_open(id: str, one: Said, of: str, notes: list[str], told: Told) -> None:
    notes.append(f"sorted{of} written {one.text}")
    is_open = one.unit in (PERCENT_OR_SHARE, SHARE_OR_PERCENT) and re.search(r"\d", one.text)
    told.warning(
        "N318", f"sorted {one.text} {one.unit}" if is_open else f"sorted {id}", one.place,
        f"sample {id}: the share sorted{of} is '{one.text}'"
        + (", which may be percent or a share of one" if is_open else "")
        + ", kept in the note; until it is said all of it counts as sorted, expected a share or a percentage",
        f"write 'sorted, {PERCENT}' or 'sorted, {SHARE}' for the row or column in the layout" if is_open
        else "give 'size_classes' in the drafted record",
    )  # fmt: skip

