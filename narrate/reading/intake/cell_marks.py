"""What stands in cells of counts: whether it looks like an amount, its number, and what a cell may give."""

# ruff: noqa: E501

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache, lru_cache
from typing import NamedTuple

from narrate.model.counts import Count
from narrate.model.layouts import Marks
from narrate.reading.count_cells import Refusal
from narrate.reading.intake.pending import says_pending
from narrate.reading.intake.uncounted import narrow, says_uncounted


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """One amount that a cell gives; a cell such as 1/6 gives two."""

    count: Count | None = None
    mass_g: float | None = None
    note: str = ""
    condition: str = ""
    completeness: str = ""
    is_doubtful: bool = False
    """The cell says 'cf.'."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Quirk:
    """What an analyst should look at, told once for all cells of its kind."""

    kind: str
    message: str
    help: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    found: tuple[Found, ...] = ()
    quirks: tuple[Quirk, ...] = ()
    refusal: Refusal | None = None


NOTHING = Reading()

SIGNS = re.compile(
    r"(?:x{1,5}|\+{1,6}|p|pres\.?|present|✓|✔|√|#{1,4}|[•●○◦■□▪▫◆◇★☆✔√]{1,5}|\*{1,5}|o|yes|y|tr|trace|a|r|f|c|d|va|vr|vf|la|lf|escas[oa]|abundante|muy abundante|regular|frecuente|rar[oa]|fréquent|abondant|très abondant|selten|häufig|einzelne?|vereinzelt|zahlreich|weinig|veel|scars[oa]|frequente|abbondante|rare|few|some|many|common|occasional|frequent|abundant|dominant|numerous|very abundant|very common|several|lots|loads|viele?|vele|wenige?|mehrere|beaucoup|nombreux|nombreuses|plusieurs|quelques|much[oa]s|poc[oa]s|vari[oa]s|molt[ie]|poch[ie]|present \(p\)|\((?:x{1,4}|\+{1,5})\)|\[(?:x{1,4}|\+{1,5})\])",
    re.IGNORECASE,
)
ABSENT = ("-", "–", "—", "−", ".", "nil", "none", "null", "absent", "0", "o", "no")
NOT_LOOKED = (
    "n/a",
    "na",
    "nd",
    "n.d.",
    "not sorted",
    "not examined",
    "not analysed",
    "not looked for",
    "unsorted",
    "/",
)
NUMBER = r"(?:\d[\d.,' \u00a0]*|\.\d+)"
ABOUT = (
    r"(?:c\.|c\s|c\.?a\.?|cca\.?|circa|[~≈∼≃±]|\+/?-|about|around|some|roughly|approx(?:\.|imate(?:ly)?)?|est(?:\.|im(?:\.|ated?|ation|[ée]+s?|ad[oa]s?)?)?"
    r"|env(?:\.|iron)?|vers|à peu près|ungef(?:\.|ähr)?|etwa|rund|zirka|gesch(?:\.|ätzt)?|aprox(?:\.|imadamente|imad[oa]s?)?|alrededor de|alred\.|unos|unas|cerca de"
    r"|all['’]incirca|intorno a|stimat[ioae]|ong(?:\.|eveer|ev\.?)?|geschat|plm\.?|ok\.|około|szac(?:\.|owan[eoay])?)"
)
"""Common practice, no source: words before or behind a number that say it is an estimate, in seven languages."""
PIECES = (
    r"(?:f|frs?|frags?|fragm|frg|frgm|fgts?|fragments?|fragmentos?|fragmenten?|fragmenty?|framm|frammento|frammenti|bruch|bruchst(?:\.|ücke?)?"
    r"|fragmenter|zlom(?:ek|ky)?|kırık|broken|brokken|pezzi|trozos|ułamki)\.?"
)
"""Common practice, no source: words for pieces behind a number, in seven languages."""
WHOLES = r"(?:wholes?|w|complete|entire|intact|ent|enti(?:er|ère)s?|enter[oa]s?|inter[oiae]|int|ganze?r?|hele|heel|całe)\.?"
AND = r"(?:[+&,;/]|(?<=[\s.])(?:and|und|u\.|et|y|e|en|i)(?=\s))"

OF_WHICH = (
    r"(?:of which|of these|of them|including|incl\.?|thereof|davon|darunter|inkl\.?|dont|di cui|de los cuales|de ellos"
    r"|waarvan|dos quais|w tym|z toho|varav|heraf)"
)
"""Common practice, no source: words before a number that says how many of the number before it are meant."""


class Meanings(NamedTuple):
    """What a layout says of signs, in a form by which the reading of a cell can be remembered."""

    decimal: str
    slash: str
    brackets: str
    estimates: str
    halves: str
    key: tuple[tuple[str, str], ...]
    footnotes: tuple[tuple[str, str], ...]

    @staticmethod
    def of(marks: Marks) -> Meanings:
        key, footnotes = tuple(marks.key.items()), tuple(marks.footnotes.items())
        return Meanings(marks.decimal, marks.slash, marks.brackets, marks.estimates, marks.halves, key, footnotes)


COUNT_LIKE = re.compile(
    rf"(?:[<>≤≥]=?|{ABOUT})?\s*\d[\d,.' \u00a0]*(?:{ABOUT})?"
    r"(?:e[+-]?\d+)?\s*(?:\+|\?|[*†‡§]+|ml|g|mg|kg|cc|l|frags?\.?|f|w|fr|cf\.?)?(?:\s*[(\[]\s*[^)\]]{1,12}[)\]])?"
    rf"|\d+\s*[,;(\[]?\s*{OF_WHICH}\s+\d+\s+[^\W\d_][\w. -]{{0,14}}[)\]]?"
    rf"|(?:[<>≤≥]=?\s*)?\d+\s*(?:{WHOLES}\s*)?(?:{AND}\s*(?:\d+\s*)?)?{PIECES}|\+\s?\d+\s*{PIECES}"
    r"|(?:cf\.?|\?)\s*(?:x{1,5}|\+{1,6}|\d+\+?)|(?:x{1,5}|\+{1,6})\s?(?:cf|fg|frags?|fr|f|wl?|ch|b|uc?|min|pmc)\.?"
    r"|\.\d+\s*(?:g|mg)?|\d+\s*[-–/]\s*\d+|/\s*\d+|\d+\s*/|\d+\s*[+&]\s*\d+\s*(?:cf\.?|f|frags?\.?)?|(?:[-–—x+]\s*)?(?:\(\d+\)|\[\d+\])|x{1,5}|\+{1,6}\s*(?:\([^)]{1,24}\))?|[-–—.?]|p|#{1,4}|\*{1,5}|[•●○◦■□▪▫◆◇★☆✔√]{1,5}|✓|[(\[](?:x{1,4}|\+{1,5})[)\]]|tr|trace|escas[oa]|abundante|muy abundante|regular|frecuente|rar[oa]|fréquent|abondant|très abondant|selten|häufig|einzelne?|vereinzelt|zahlreich|weinig|veel|scars[oa]|frequente|abbondante|present|absent|nil|rare|occasional|common|frequent|abundant|dominant|few|some|many|numerous|very (?:rare|common|abundant|frequent)|-\d+(?:\.\d+)?",
    re.IGNORECASE,
)


@cache
def looks_like_amount(text: str) -> bool:
    """
    True for what stands in cells of counts: numbers, signs, ranges, estimates.

    >>> [looks_like_amount(t) for t in ("12", "x", ">100", "12 (3)", "2ml", "1/6", "Zea mays", "pit fill", "S14")]
    [True, True, True, True, True, True, False, False, False]
    """
    flat = narrow(text.strip())
    return len(text) <= 30 and (
        COUNT_LIKE.fullmatch(flat) is not None or says_uncounted(flat) or says_pending(flat)
    )


MOST = 1e30
"""No cell holds so much of anything: a larger number is a slip, or a text that looks like one."""


def number_of(text: str, decimal: str) -> float | None:
    """
    A number with thousands marks and a decimal mark; None where the marks do not stand as they should.

    >>> number_of("1,234", "."), number_of("0,5", ","), number_of("1 234", "."), number_of("1.234", ","), number_of("2.6e+06", ".")
    (1234.0, 0.5, 1234.0, 1234.0, 2600000.0)
    >>> number_of("0,5", "."), number_of("12,34", "."), number_of("1e999", ".")
    (None, None, None)
    """
    flat = text.strip()
    if not _A_DIGIT.search(flat):
        return None
    if _POWER_OF_TEN.fullmatch(flat):
        return found if (found := float(flat)) < MOST else None
    marked, marks = _thousands(decimal)
    if marked.fullmatch(flat):
        flat = marks.sub("", flat)
    flat = flat.replace(decimal, ".") if decimal == "," and "." not in flat else flat
    return float(flat) if _PLAIN.fullmatch(flat) and len(flat) < 30 else None


_A_DIGIT = re.compile(r"\d")
_POWER_OF_TEN = re.compile(r"\d+(?:\.\d+)?e[+-]?\d{1,3}", re.IGNORECASE)
_PLAIN = re.compile(r"\d*\.?\d+|\d+\.")


@lru_cache(maxsize=16)
def _thousands(decimal: str) -> tuple[re.Pattern[str], re.Pattern[str]]:
    """What a number with thousands marks looks like beside a decimal mark, and the marks themselves."""
    mark = "," if decimal == "." else "."
    marks = rf"[{mark}'’ \u00a0\u202f]"
    return re.compile(rf"\d{{1,3}}(?:{marks}\d{{3}})+(?:{re.escape(decimal)}\d+)?"), re.compile(marks)
