"""How an audience writes years, numbers and units, the project's own choices going before those of the audience."""

from __future__ import annotations

import re
from dataclasses import replace

from narrate.model.audiences import Audience
from narrate.model.stratigraphy import Phase
from narrate.model.style import DASHES, THOUSANDS, Style
from narrate.telling import numbers


def in_style(audience: Audience, style: Style) -> Audience:
    """The audience with what project.yaml says under `style` in place of its own words."""
    chosen = {
        "thousands": THOUSANDS[style.thousands] if style.thousands is not None else None,
        "dash": DASHES[style.dash] if style.dash is not None else None,
        "litre": style.litre,
        "era": style.era,
    }
    own = {name: word for name, word in chosen.items() if word is not None}
    return replace(audience, words={**audience.words, **own}) if own else audience


def thousands(audience: Audience) -> str:
    """The mark between groups of three figures."""
    return audience.words.get("thousands", ",")


def dash(audience: Audience) -> str:
    """What stands between the two ends of a range."""
    return audience.words.get("dash", numbers.EN_DASH)


def with_dashes(text: str, audience: Audience) -> str:
    """'the 0.5–1 mm class' for one that was written down as '0.5-1 mm': spans of sizes as the audience writes them."""
    return _SPAN.sub(dash(audience), text)


def with_thousands(text: str, audience: Audience) -> str:
    """'2,100' of a text made elsewhere, with the audience's mark between groups of three figures."""
    return _GROUPS.sub(thousands(audience), text)


_GROUPS = re.compile(r"(?<=\d),(?=\d{3}\b)")
_SPAN = re.compile(r"(?<=\d)-(?=\d+(?:\.\d+)? ?mm\b)")


def litre(audience: Audience, *, plural: bool = False) -> str:
    """
    'litre', 'liters', 'L': a sign has no plural.

    The signs are those of the International System of Units, both of which it allows (Bureau international des poids
    et mesures, SI Brochure, 9th edition, table 8; from memory).
    """
    word = audience.words.get("litre", "litre")
    return f"{word}s" if plural and len(word) > 1 else word


def in_units(text: str, audience: Audience) -> str:
    """A text of packs with 'per litre' as the audience writes it."""
    return text.replace("per litre", f"per {litre(audience)}")


def years(phase: Phase, audience: Audience) -> str:
    """'cal AD 1250–1350'; 'about AD 1250 to 1350' for visitors."""
    era = audience.words.get("era", "AD")
    if audience.register != "plain":
        return numbers.years(phase.start, phase.end, phase.dates, era=era, dash=dash(audience))
    # Visitors are not told of calibration, save where years before present would be something else without it.
    dates = phase.dates if era == "BP" else ""
    text = numbers.years(phase.start, phase.end, dates, era=era, dash=" to ")
    text = text.replace(" cal BP", " years before AD 1950").replace("cal ", "")
    return f"about {text}" if text and not text.startswith(("from", "until")) else text


def calibrated(start: int | None, end: int | None, audience: Audience) -> str:
    """'cal AD 1275–1305', '675–645 cal BP' of radiocarbon years; 'from cal AD 1275' without an end."""
    era = audience.words.get("era", "AD")
    return numbers.years(start, end, "cal AD", era=era, dash=dash(audience))


def since(year: int, audience: Audience) -> str:
    """'from AD 1250' of a year that others give; before present only as a calendar year."""
    era = audience.words.get("era", "AD")
    return numbers.years(year, None, "cal" if era == "BP" else "", era=era)
