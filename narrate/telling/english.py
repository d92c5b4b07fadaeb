"""Words put together: articles, lists, agreement, capitals. Pure functions that know no plants."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

_SILENT_H = ("hour", "honest", "heir", "honour", "honor")
_CONSONANT_VOWELS = ("uni", "use", "usa", "uti", "eu", "one ", "one-", "once", "ubiq")
_VOWEL_LETTERS_SPOKEN = "AEFHILMNORSX"
_ESCAPED = re.compile(r"([\\`*_\[\]<>&~|#$])")
_IN_BRACKETS = re.compile(r"\((?:[^()]|\([^()]*\))*\)")
_MAY_END_A_HEAD = frozenset(
    "of in as by from with on at to for into ate kept made grew took left let gave brought used"  # noqa: SIM905
    " gathered burned".split()
)
_MAY_BEGIN_A_TAIL = frozenset("as in for by from with on at to into here there between".split())  # noqa: SIM905
_BREAKS_A_LINE = re.compile(r"[\x00-\x1f\x7f-\x9f\u2028\u2029\u202a-\u202e\u2066-\u2069\ufeff]+")


def literal(text: str) -> str:
    """
    A person's own text as Markdown that shows it and does nothing else.

    Characters that Markdown or HTML would act on are escaped; line breaks and invisible controls become a space.

    >>> literal("pit *B* <b>")
    'pit \\\\*B\\\\* \\\\<b\\\\>'
    """
    one_line = " ".join(_BREAKS_A_LINE.sub(" ", text).split())
    escaped = _ESCAPED.sub(r"\\\1", one_line)
    # At the start of a block '1.', '-' and '+' would open a list.
    return re.sub(r"^(\d+)([.)])(?=\s|$)", r"\1\\\2", re.sub(r"^([-+=])", r"\\\1", escaped))


def italic(text: str) -> str:
    """
    Latin in italics.

    >>> italic("Zea mays")
    '*Zea mays*'
    """
    return f"*{literal(text)}*"


def article(phrase: str) -> str:
    """
    'a' or 'an', by how the phrase is spoken.

    >>> [article(p) for p in ("oven", "hearth", "hour", "unidentified seed", "8-litre sample", "union", "S014")]
    ['an', 'a', 'an', 'an', 'an', 'a', 'an']
    """
    spoken = phrase.lstrip("*\\“'\"(")
    lower = spoken.lower()
    if re.match(r"(8|11|18)(\D|$)|8\d", spoken):
        return "an"
    if re.match(r"[A-Z](\d|\b)", spoken):
        return "an" if spoken[0] in _VOWEL_LETTERS_SPOKEN else "a"
    if lower.startswith(_SILENT_H):
        return "an"
    if lower.startswith(_CONSONANT_VOWELS) and not lower.startswith(("unid", "unim", "unin")):
        return "a"
    return "an" if lower[:1] in tuple("aeiou") else "a"


def with_article(phrase: str) -> str:
    """
    The phrase with its indefinite article.

    >>> with_article("earth oven")
    'an earth oven'
    """
    return f"{article(phrase)} {phrase}"


def listed(items: Iterable[str], *, oxford: bool = True, word: str = "and") -> str:
    """
    Items as a list in running text.

    >>> listed(["maize", "hickory", "maypop"])
    'maize, hickory, and maypop'
    >>> listed(["maize", "hickory", "maypop"], oxford=False)
    'maize, hickory and maypop'
    >>> listed(["leaves and shoots", "squash"])
    'leaves and shoots, and squash'
    >>> listed(["food from maize, nuts, and fruit", "fires of wood"])
    'food from maize, nuts, and fruit, and fires of wood'
    >>> listed(["food from maize, nuts, and fruit", "fires of wood", "smoke"])
    'food from maize, nuts, and fruit; fires of wood; and smoke'
    """
    parts = [item for item in items if item]
    has_commas = any(re.search(r"[,;] ", _IN_BRACKETS.sub("", part)) for part in parts)
    if len(parts) == 2 and has_commas:
        return f"{parts[0]}, {word} {parts[1]}"
    if len(parts) > 1 and has_commas:
        return f"{'; '.join(parts[:-1])}; {word} {parts[-1]}"
    if len(parts) < 3:
        # 'Leaves and shoots, and squash': without the comma a list in the first would seem to go on.
        has_own = len(parts) == 2 and " and " in _IN_BRACKETS.sub("", parts[0]) and word == "and"
        return f"{',' if has_own else ''} {word} ".join(parts)
    # An item with an 'and' of its own needs the comma to be read aright.
    comma = "," if oxford or any(" and " in part for part in parts[-2:]) else ""
    return f"{', '.join(parts[:-1])}{comma} {word} {parts[-1]}"


def clauses_joined(clauses: Sequence[str], *, oxford: bool = True) -> str:
    """
    Clauses joined into one; with a comma where a clause has one of its own or is long.

    >>> clauses_joined(["cobs are many", "kernels are few"])
    'cobs are many and kernels are few'
    """
    if len(clauses) != 2:
        return listed(clauses, oxford=oxford)
    first, second = clauses
    comma = "," if "," in first or len(first.split()) > 7 else ""
    return f"{first}{comma} and {second}"


def in_last_brackets(text: str, more: str) -> str:
    """
    Something put in brackets at the end of a text, within the brackets that end it if there are any.

    >>> in_last_brackets("cobs were many", "see Smith 1992"), in_last_brackets("cobs (12)", "see Smith 1992")
    ('cobs were many (see Smith 1992)', 'cobs (12; see Smith 1992)')
    """
    if not more:
        return text
    return f"{text[:-1]}; {more})" if text.endswith(")") else f"{text} ({more})"


def agreed(number: float, singular: str, plural: str) -> str:
    """
    The form that agrees with the number: only 1 is singular.

    >>> agreed(1, "was", "were"), agreed(0, "was", "were"), agreed(12, "seed", "seeds")
    ('was', 'were', 'seeds')
    """
    return singular if number == 1 else plural


def capitalised(text: str) -> str:
    """
    The text with its first letter as a capital, past opening marks.

    >>> capitalised("the pit"), capitalised("*zea*"), capitalised("“pit”")
    ('The pit', '*Zea*', '“Pit”')
    """
    match = re.match(r"[*“‘(\"]*", text)
    at = match.end() if match else 0
    return text[:at] + text[at : at + 1].upper() + text[at + 1 :]


def lowered(text: str) -> str:
    """
    The text with its first letter small, unless the first word is an id, a Latin name or all capitals.

    >>> lowered("Most were cupules"), lowered("C12 held"), lowered("AD 900"), lowered("Old World crops")
    ('most were cupules', 'C12 held', 'AD 900', 'Old World crops')
    """
    if re.match(r"[A-Z][a-z]+ [A-Z][a-z]", text):
        return text
    first = text.split(" ", 1)[0]
    if not first or first.startswith("*") or any(c.isdecimal() for c in first) or (len(first) > 1 and first.isupper()):
        return text
    return text[0].lower() + text[1:]


def small_numbers_in_words(text: str) -> str:
    """
    Figures below ten in words, save in brackets, in ranges, with decimals, units or per cent.

    >>> small_numbers_in_words("seeds of 6 crops lay in 3 of 4 samples (2 pieces), 0.5 g and 7 %")
    'seeds of six crops lay in three of four samples (2 pieces), 0.5 g and 7 %'
    """
    pieces = re.split(r"(\([^()]*\))", text)
    return "".join(p if p.startswith("(") else _SMALL.sub(lambda m: _DIGITS[int(m[0])], p) for p in pieces)


_SMALL = re.compile(r"(?<![\d.,–-])\b[1-9]\b(?![\d.,%–-]\d|[%–-]| ?%| g\b| of \d\d)")
_DIGITS = ("", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine")


_SPACE_BEFORE_A_STOP = re.compile(r" +([,;.:])")
_SPACES = re.compile(r" {2,}")


def finished(text: str) -> str:
    """
    One sentence: single spaces, a capital first, one full stop at the end.

    >>> finished("the pit  held nothing")
    'The pit held nothing.'
    """
    tidy = _SPACE_BEFORE_A_STOP.sub(r"\1", text).strip()
    tidy = _SPACES.sub(" ", tidy).rstrip(" ,;:")
    if not tidy.endswith((".", "?", "!")):
        tidy += "."
    return capitalised(tidy)
