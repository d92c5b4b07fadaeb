"""
Radiocarbon dates as the project gives them, and what a date lacks that a report must give.

What is asked for follows Millard 2014, Conventions for reporting radiocarbon determinations (Radiocarbon 56, 555–559).
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from narrate.documents.blocks import Block, Paragraph
from narrate.documents.inline import literal
from narrate.documents.unwritten import missing, told_of
from narrate.model.edition import Edition

NO_CODE = "laboratory code not recorded"

_CODE = re.compile(r"\b[A-Z][A-Za-z]{0,7}-\d{2,}(?:\.\d+)?\b")
"""Letters of the laboratory, a hyphen, a number: the form of the codes in the list of laboratories of Radiocarbon
(from memory)."""
_AGE = re.compile(r"\d\s*(?:±|\+/-|\+-)\s*\d+\s*BP\b")
_STABLE = re.compile(r"(?:δ|delta|d)\s*-?\s*(?:13|¹³)\s*C\b", re.IGNORECASE)
_PROGRAM = re.compile(r"\b(?:OxCal|CALIB|Bchron|rcarbon|CalPal|program|software|script)\b")
"""What Millard 2014 asks beside code, age and curve: the isotope ratio and the software (from memory)."""
_ITEM = re.compile(r"^\s*[-•]\s+", re.MULTILINE)


def dates_told(edition: Edition) -> Iterator[Block]:
    """The text of `report: radiocarbon`; its lines that begin with a hyphen are dates, one an item."""
    text = told_of(edition.project.report, "radiocarbon")
    if bare := bare_calibrations(edition):
        named = " and ".join(literal(name) for name in bare)
        yield missing(
            f"what the calibrated years of {named} rest on. 'cal' is said of radiocarbon dates alone (Millard 2014): "
            "name them in the basis of the phase, or write dates: AD where pottery or coins give the years."
        )
    if text:
        yield from _given(text)
    elif is_dated(edition):
        yield missing(
            f"{NO_CODE} of any date behind the phases. For every radiocarbon date give the laboratory code, material, "
            "conventional age with error, calibration curve and software, and ranges with their probability "
            "(Millard 2014), as report: radiocarbon."
        )


_RADIOCARBON = re.compile(r"radiocarbon|\b14C\b|\bC-?14\b|¹⁴C|\bAMS\b|calibrat", re.IGNORECASE)


def bare_calibrations(edition: Edition) -> list[str]:
    """
    Phases whose years bear 'cal' while their basis names no radiocarbon date: 'cal' is said of radiocarbon years alone.

    Millard 2014: calibrated dates are the outcome of a calibration; years by pottery or coins are calendar years.
    """
    phases = [phase for phase in edition.project.phases if phase.start is not None or phase.end is not None]
    return [p.name for p in phases if p.dates.lower().startswith("cal") and not _RADIOCARBON.search(p.basis)]


def is_dated(edition: Edition) -> bool:
    return any(phase.start is not None for phase in edition.project.phases)


def dates_lacking(edition: Edition) -> str:
    """What the dates lack, for the checklist; empty where the phases have no years, or every date is given in full."""
    text = told_of(edition.project.report, "radiocarbon")
    if not text:
        return f"{NO_CODE} of any date behind the phases; write report: radiocarbon" if is_dated(edition) else ""
    dates = items_of(text)
    codes = sum(not _CODE.search(date) for date in dates) if dates else not _CODE.search(text)
    ages = sum(not _AGE.search(date) for date in dates) if dates else not _AGE.search(text)
    of = f" of {codes} of {len(dates)} dates" if dates else ""
    parts = [f"{NO_CODE}{of}" if codes else ""]
    of = f" of {ages} of {len(dates)} dates" if dates else ""
    parts.append(f"conventional age with its error not recorded{of}" if ages else "")
    is_calibrated = "calib" in text.lower() or "cal " in text
    parts.append("" if is_calibrated else "calibration not recorded")
    parts.append("" if _STABLE.search(text) else "δ13C not recorded")
    parts.append("program of the calibration not recorded" if is_calibrated and not _PROGRAM.search(text) else "")
    return "; ".join(part for part in parts if part)


def items_of(text: str) -> list[str]:
    """
    The dates of a text: its lines that begin with a hyphen, each with the lines that go on with it.

    >>> items_of("Seven dates.\\n- AB-12: maize,\\n  700 ± 20 BP\\n- a nutshell\\n\\nCurve: IntCal20.")
    ['AB-12: maize, 700 ± 20 BP', 'a nutshell']
    """
    return [text for text, is_item in _parts(text) if is_item]


def parts_of(text: str) -> list[str]:
    """The items of a text, and the paragraphs between them."""
    return [text for text, _ in _parts(text)]


def _parts(text: str) -> Iterator[tuple[str, bool]]:
    for paragraph in re.split(r"\n\s*\n", text.strip()):
        first, *items = _ITEM.split(paragraph)
        for number, part in enumerate((first, *items)):
            if part.strip():
                yield " ".join(part.split()), number > 0


def _given(text: str) -> Iterator[Block]:
    for part, is_item in _parts(text):
        lacks = f" ({NO_CODE})" if is_item and not _CODE.search(part) else ""
        yield Paragraph(text=literal(f"{part}{lacks}"), kind="item" if is_item else "body")
