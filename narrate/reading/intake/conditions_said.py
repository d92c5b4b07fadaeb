"""The condition that words of a sheet say: one that is known, or a question for the analyst. Nothing is guessed."""

# ruff: noqa: E501

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass

from narrate.reading.intake.remarks import conditions_in, remark, without_conditions
from narrate.reading.intake.written_names import NameReader


@dataclass(frozen=True, slots=True, kw_only=True)
class ConditionSaid:
    """What a word says: a condition, or why it says none."""

    condition: str = ""
    doubt: str = ""
    """'unknown' or 'several'; empty where the word is plain or says nothing of the condition."""


NOTHING_SAID = ConditionSaid()
_UNKNOWN = ConditionSaid(doubt="unknown")
_SEVERAL = ConditionSaid(doubt="several")
_YES_NO = re.compile(r"(?P<yes>y|yes|true|1|x)|n|no|false|0", re.IGNORECASE)
# Common practice, no source: how well remains are kept says nothing of what kept them.
_QUALITY = re.compile(
    r"(?:very |quite |fairly |moderately |rather )?(?:good|well|excellent|moderate|medium|fair|average|ok|poor|poorly|bad|badly)"
    r"(?: (?:to|-) (?:very )?(?:good|excellent|moderate|medium|fair|average|poor|bad))?"
    r"(?: preserved| preservation| condition)?",
    re.IGNORECASE,
)
_REFUSES = re.compile(r"\b(?:not?|non|nicht|kein|keine|niet|ikke|inte|nie|pas|sans|senza|sin|ohne|un)\b", re.IGNORECASE)
_OF_OTHERS = re.compile(r"\b(?:compar\w*|held against|reference|collection|material of|matched|matches|cf)\b", re.IGNORECASE)


def condition_said(
    text: str, names: NameReader, given: Mapping[str, str], *, yes_is_charred: bool = False, is_part_too: bool = False
) -> ConditionSaid:
    """
    What a word in a row, column or heading of conditions says.

    given:        words that the layout explains, in lower case -> condition.
    is_part_too:  the same cell names the part, so that a text without any condition says nothing of it.
    """
    flat = " ".join(text.split())
    own = given.get(flat.lower())
    if own is not None:
        return ConditionSaid(condition=own)
    if yes_is_charred:
        match = _YES_NO.fullmatch(flat)
        if match:
            return ConditionSaid(condition="charred" if match["yes"] else "uncharred")
    whole = names.condition_of(flat)
    if whole and "?" not in flat:
        return ConditionSaid(condition=whole)
    if re.fullmatch(r"NA|N/A|n/a|null|NULL", flat):
        return NOTHING_SAID  # a database's word for an empty field
    if flat == "?":
        return _UNKNOWN
    if not re.search(r"\w", flat) or _QUALITY.fullmatch(flat.strip(" .()")):
        return NOTHING_SAID
    found = _all_of(flat, names)
    if len(found) > 1 or remark(flat).of_some:
        return _SEVERAL
    if not found:
        return NOTHING_SAID if is_part_too else _UNKNOWN
    if not conditions_in(flat) and _REFUSES.search(flat):
        return _UNKNOWN  # a 'no' before a word that only the packs know: nobody has said what it is instead
    return ConditionSaid(condition=found[0])


def _all_of(flat: str, names: NameReader) -> tuple[str, ...]:
    """Every condition that a text of several words names."""
    if not conditions_in(flat) and remark(flat).condition:
        return (remark(flat).condition,)  # 'probably modern'
    words = re.split(r"[\s/,;:+&|]+", without_conditions(flat))
    single = (names.condition_of(word) for word in words if len(word) > 2)
    return tuple(dict.fromkeys((*conditions_in(flat), *(word for word in single if word))))


def condition_in_note(text: str) -> str:
    """
    The condition that a free note says of its find; empty where it speaks of other things or of some items alone.

    >>> condition_in_note("uncharred"), condition_in_note("compared with modern uncharred seeds"), condition_in_note("modern")
    ('uncharred', '', 'uncharred')
    """
    return "" if _OF_OTHERS.search(text) else remark(text).condition


def given_conditions(conditions: Mapping[str, str]) -> dict[str, str]:
    """The layout's mapping by words in lower case."""
    return {" ".join(word.lower().split()): condition for word, condition in conditions.items()}
