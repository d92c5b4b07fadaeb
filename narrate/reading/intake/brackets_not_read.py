"""Words in brackets behind a name of which nothing was read: told, since they may say the state or the part."""

from __future__ import annotations

import re

from narrate.reading.intake.words_in_names import CONDITIONS, FRAGMENTS, SIZE, SORTS, UNIT, WHOLE
from narrate.reading.intake.written_names import NameReader, WrittenName

_BRACKETS = re.compile(r"(?<=[\w.,;?]) *[(\[]([^()\[\]]{1,24})[)\]]")
_OF_NAMES = re.compile(
    r"(?:cf|aff|sp|spp|agg|gp|group|grp|type|typ|s\.? ?[lst]|sens\.? ?(?:lat|str)|sensu .*|indet\w*|undet|undiff|prob\w*"
    r"|poss\w*|uncertain|incl\b.*|excl\b.*|=.*|syn\b.*|ex\b.*|and\b.*|or\b.*|\?+)\.?",
    re.IGNORECASE,
)
"""Qualifiers, synonyms and alternatives, which the reading of names has looked at."""
_AUTHOR = re.compile(r"[A-Z](?:[\w-]*\.)+(?: .*)?|[A-Z][\w-]{2,}.*")
"""Authors, families and Latin: '(L.)', '(DC.)', '(Secale cereale)'."""
_SORTS_ABROAD = frozenset(
    ["bespelzt", "spelz", "nackt", "mehrzeilig", "zweizeilig", "sechszeilig", "wild", "gekeimt", "groß", "klein", "vêtu", "vêtue", "nu", "nue", "sauvage", "cultivé", "cultivée", "germé", "vestida", "vestido", "desnuda", "desnudo", "silvestre", "cultivada", "cultivado", "germinado", "grande", "pequeño", "vestito", "nudo", "selvatico", "coltivato", "bedekt", "naakt", "gekiemd", "oplewiony", "nagi", "dzika", "agnklædt", "nøgen", "six-row", "two-row", "row", "hull", "free-threshing", "type", "compact", "lax", "dense", "trigonous", "biconvex", "lenticular", "black", "white", "red", "green", "yellow"]
)
"""Sorts of a crop or seed, which tell no part and no state. Common practice, no source."""


def brackets_not_read(text: str, read: WrittenName, names: NameReader) -> tuple[str, ...]:
    """
    What stands in brackets behind a name that is known and says no part, state, size, unit, sort or plant.

    A name that is not known is told as a whole, and one that the layout explains holds what the analyst says.
    """
    if not read.is_known or text in names.given or text.lower() in names.given:
        return ()
    return tuple(inside for inside in map(str.strip, _BRACKETS.findall(text)) if inside and not _is_read(inside, names))


def taken_as_uncharred(text: str, read: WrittenName, names: NameReader) -> str:
    """The 'U' in brackets behind a name that is read as uncharred, where no key of the sheet says so; or empty."""
    match = re.search(r"[(\[]([Uu])[)\]]\s*$", text)
    is_said = match is None or match[1] in names.short.conditions or text in names.given or text.lower() in names.given
    return match[1] if match and not is_said and read.condition == "uncharred" else ""


def _is_read(inside: str, names: NameReader) -> bool:
    if inside.lower() in ("w", "m", "d") and inside not in names.short.conditions:
        return False  # one letter that nobody explains
    if re.search(r"\d", inside) or _AUTHOR.fullmatch(inside) or _OF_NAMES.fullmatch(inside):
        return True  # sizes and years; authors, families and Latin; what qualifies the name
    behind = f" ({inside})"
    if any(known.search(behind) for known in (CONDITIONS, FRAGMENTS, WHOLE, SIZE, UNIT)):
        return True
    words = re.split(r"[\s,;/]+", inside.lower().strip(" ."))
    if all(w.strip(".") in SORTS or w.strip(".") in _SORTS_ABROAD or (len(w) > 2 and names.says(w)) for w in words):
        return True
    return any(names.says(one) for one in (inside, *re.split(r"\s*[,;/]\s*", inside)) if one.strip())
