"""Names as columns of databases have them, with codes behind them: 'Hordeum_vulgare_gr_ch', by the key of the sheet."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from types import MappingProxyType

from narrate.reading.intake.code_sheets import codes_explained
from narrate.reading.intake.evidence import NAMED, Look, name_score
from narrate.reading.intake.header_words import heading
from narrate.reading.intake.words_in_names import SHORT_CONDITIONS
from narrate.reading.intake.written_names import NameReader

_FORM = re.compile(r"[^\W\d][\w.-]*_[\w.-]+")
_FRAGMENT = re.compile(r"fr(?:ag(?:m(?:ent)?)?s?)?", re.IGNORECASE)
_UNITS = {"g": "(g)", "gr": "(g)", "mg": "(mg)", "wt": "(g)", "n": "(n)", "ct": "(n)"}
_LEAST = 3
"""Names of this form that a file must hold: a few are chance."""


def coded_names(looks: Iterable[Look]) -> dict[str, str]:
    """Name as written -> the name in words, where the last pieces say a part or a condition by a code of the sheet."""
    all_looks = list(looks)
    texts = dict.fromkeys(
        cell.text for look in all_looks for cell in look.cells.values() if _FORM.fullmatch(cell.text)
    )
    codes = codes_explained(all_looks) if texts else {}
    found = {text: words for look in all_looks[:1] for text in texts if (words := in_words(text, look.names, codes))}
    return found if len(found) >= _LEAST else {}


def in_words(text: str, names: NameReader, codes: Mapping[str, str] = MappingProxyType({})) -> str:
    """The name with its codes in words; empty where no code of the sheet stands behind it."""
    pieces = text.split("_")
    part = condition = unit = completeness = ""
    by_key = False
    while len(pieces) > 1:
        last = pieces[-1]
        if not condition and (said := names.short.conditions.get(last) or SHORT_CONDITIONS.get(last.lower(), "")):
            condition, by_key = said, by_key or last in names.short.conditions
        elif not part and last in names.short.parts:
            part, by_key = names.short.parts[last], True
        elif not completeness and not part and _FRAGMENT.fullmatch(last):
            completeness = "fragment"
        elif not unit and not part and last.lower() in _UNITS:
            unit = _UNITS[last.lower()]
        else:
            break
        pieces.pop()
    rest = codes.get("_".join(pieces), " ".join(pieces))
    bare = re.sub(r"(?<=[a-z])\.(?=[a-z])", "/", rest)  # 'aestivum.durum', as statistical programs write '/'
    is_said = "_".join(pieces) in codes
    if not by_key or (not is_said and (heading(rest) or name_score(bare, names) < NAMED)):
        return ""
    if part and bare.endswith(f" {part}"):
        bare = bare.removesuffix(f" {part}")  # 'Indet_seed_se'
    return " ".join(filter(None, (bare, part, completeness, condition, unit)))
