"""What 'cob parts' are made of, told once a page, so that a reader finds their number in the list of finds."""

from __future__ import annotations

import re

from narrate.model.ids import PartId
from narrate.telling import manner, numbers
from narrate.telling.page import Page

_WITH_NUMBER = re.compile(r"\bcob parts \((\d[\d,\u202f ]*)(?: items)?\)")
_PER_LITRE = re.compile(r"\bcob parts \((?=\d[\d.]* (?:items )?per )")


def cob_parts_told(page: Page, reason: str) -> str:
    """
    'Cob parts (145 cupules and 3 cobs) lay in a feature made for fire' for 'cob parts (148 items) lay …'.

    Glumes and shanks are listed among the finds and are no cob parts of the rules. Only where there are several kinds,
    the number agrees, and the page has not said so before.
    """
    if page.is_plain or "cob parts" not in reason or page.cobs_are_told:
        return reason
    parts = _cob_parts(page)
    total = sum(number for _, number in parts)
    if len(parts) < 2:
        return reason
    made_of = page.listed(text for text, _ in parts)
    match = _WITH_NUMBER.search(reason)
    if match is not None and int(re.sub(r"\D", "", match[1])) == total:
        told = f"{reason[: match.start()]}cob parts ({made_of}){reason[match.end() :]}"
    elif (dense := _PER_LITRE.search(reason)) is not None:
        told = f"{reason[: dense.start()]}cob parts ({made_of}; {reason[dense.end() :]}"
    elif re.search(rf"(?<![\d,.]){_figure(page, total)}(?![\d,.]\d)", reason):
        told = reason.replace("cob parts", f"cob parts ({made_of})", 1)
    else:
        return reason
    page.cobs_are_told = True
    return told


def _figure(page: Page, number: int) -> str:
    return re.escape(page.count(number)) if number >= 10 else str(number)


def _cob_parts(page: Page) -> list[tuple[str, int]]:
    """('145 cupules', 145), the commonest first: old parts of the cob of maize."""
    known = page.dig.packs.words.parts
    found: dict[PartId, int] = {}
    for tally in page.found.tallies:
        part = known.get(tally.part)
        is_cob = part is not None and "cob" in part.roles and tally.taxon == "Zea mays"
        if is_cob and tally.counted and tally.condition in page.dig.ancient:
            found[tally.part] = found.get(tally.part, 0) + tally.counted
    ordered = sorted(found.items(), key=lambda pair: -pair[1])
    return [(_counted(page, part, number), number) for part, number in ordered if known[part].id in ("cupule", "cob")]


def _counted(page: Page, part: PartId, number: int) -> str:
    known = page.dig.packs.words.parts[part]
    many = numbers.count(number, words_below=2, thousands=manner.thousands(page.audience))
    return f"{many} {known.id if number == 1 else known.plural}"
