"""What templates do to single values: markdown of one line, Latin names, figures, months, grades."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import cache, lru_cache

from markdown_it import MarkdownIt
from markupsafe import Markup, escape

from narrate.model.claims import GRADES
from narrate.telling import numbers
from narrate.telling.changes_listed import probability
from narrate.web.links import anchor

MONTH_NAMES = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November",
    "December",
)  # fmt: skip
MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
KEEPING = {
    "perishable": "does not keep",
    "stored": "keeps in store",
    "persists": "stays on the plant",
    "with the crop": "keeps with a harvest",
}
KNOWN = {
    "read": "read in the work or in a stored copy of it",
    "memory-H": "from memory, high confidence; check it in print",
    "memory-M": "from memory, medium confidence; check it in print",
    "memory-L": "from memory, low confidence; check it in print",
    "calc": "worked out here",
    "convention": "common practice, no single authority; a default to check",
    "judgement": "judgement of the makers of this pack; a default to check",
}


@lru_cache(maxsize=16_384)
def inline(text: str) -> Markup:
    """
    One line of markdown as HTML; only emphasis, strong and code are known, and *emphasis* is a Latin name.

    >>> inline("Seeds of *Zea mays* <b>")
    Markup('Seeds of <i lang="la">Zea mays</i> &lt;b&gt;')
    """
    return Markup(_markdown().renderInline(text))


@lru_cache(maxsize=16_384)
def latin(name: str) -> Markup:
    """
    A scientific name as written, its Latin words in italics; 'cf.', 'sp.' and names of families stay upright.

    >>> latin("cf. Zea mays")
    Markup('cf. <i lang="la">Zea mays</i>')
    >>> latin("Poaceae indet."), latin("Hardwood indet.")
    (Markup('<span lang="la">Poaceae</span> indet.'), Markup('Hardwood indet.'))
    >>> latin("Quercus (red group)")
    Markup('<i lang="la">Quercus</i> (red group)')
    """
    pieces: list[str] = []
    words: list[str] = []

    def close() -> None:
        if words:
            text = "".join(words)
            kept = text.rstrip()
            pieces.append(f'<i lang="la">{escape(kept)}</i>{text[len(kept) :]}' if kept else text)
            words.clear()

    for token in re.split(r"(\s+|[/])", name):
        if not token:
            continue
        if token.isspace():
            (words if words else pieces).append(" ")
        elif token == "/" or token == "×" or _UPRIGHT_WORD.fullmatch(token):
            close()
            pieces.append(str(escape(token)))
        elif _FAMILY.fullmatch(token):
            close()
            pieces.append(f'<span lang="la">{escape(token)}</span>')
        else:
            words.append(token)
    close()
    return Markup("".join(pieces))


_UPRIGHT_WORD = re.compile(
    r"cf\.?|sp\.|spp\.|indet\.?|type|agg\.|s\.l\.|ssp\.|subsp\.|var\.|or|and|\(.*|.*\)"
    r"|unidentified|unidentifiable|indeterminate|unknown|\S*hardwood|softwood|conifer|\S+-porous|\w+cotyledon|nut|fungi",
    re.IGNORECASE,
)
_FAMILY = re.compile(r"[A-Z]\w+(?:aceae|oideae|eae)")


def plain_number(value: float | None, unit: str = "") -> str:
    """
    A recorded number as it was recorded; a dash where there is none.

    >>> plain_number(10.0, "l"), plain_number(0.25, "mm"), plain_number(None)
    ('10 l', '0.25 mm', '–')
    """
    if value is None:
        return "–"
    text = f"{value:.10g}"
    return f"{text} {unit}" if unit else text


def months(numbers_of_months: Sequence[int]) -> str:
    """
    A season in words.

    >>> months((8, 9, 10)), months((11, 12, 1)), months((5,)), months((5, 9))
    ('Aug to Oct', 'Nov to Jan', 'May', 'May, Sep')
    """
    if not numbers_of_months:
        return "not known"
    return ", ".join(_spans(numbers_of_months, MONTHS))


def whole_months(numbers_of_months: Sequence[int]) -> str:
    """
    A season in running text.

    >>> whole_months((12, 1, 2, 3, 4)), whole_months((1, 2, 3, 4, 12)), whole_months((5, 9))
    ('December to April', 'December to April', 'May and September')
    """
    if not numbers_of_months:
        return "no month"
    months = set(numbers_of_months)
    first = next((month for month in sorted(months) if (month - 2) % 12 + 1 not in months), 1)
    *before, last = _spans(sorted(months, key=lambda month: (month - first) % 12), MONTH_NAMES)
    return f"{', '.join(before)} and {last}" if before else last


def _spans(numbers_of_months: Sequence[int], names: tuple[str, ...]) -> list[str]:
    runs: list[list[int]] = []
    for month in numbers_of_months:
        if runs and month == runs[-1][-1] % 12 + 1:
            runs[-1].append(month)
        else:
            runs.append([month])
    named = [[names[month - 1] for month in (run[0], run[-1])] for run in runs]
    return [first if first == last else f"{first} to {last}" for first, last in named]


def strength(grade: str) -> int:
    """
    How many of the four specks a grade fills.

    >>> strength("suggests"), strength("not supported")
    (2, 0)
    """
    names = [name for name, _ in GRADES]
    return names.index(grade) + 1 if grade in names else 0  # type: ignore[arg-type]


def lower_first(text: str) -> str:
    """
    The text as it stands within a sentence.

    >>> lower_first("The whole dig"), lower_first("Context C12")
    ('the whole dig', 'context C12')
    """
    return text[:1].lower() + text[1:]


def upper_first(text: str) -> str:
    """
    The text as a line of its own.

    >>> upper_first("people burned corn cobs")
    'People burned corn cobs'
    """
    return text[:1].upper() + text[1:]


def title_of_work(title: str) -> str:
    """
    The title of a work; one that nobody has checked stands in square brackets in the packs and is told as what it is.

    >>> title_of_work("[title not checked; a chapter on early farming]"), title_of_work("A Manual of Weeds")
    ('A chapter on early farming', 'A Manual of Weeds')
    """
    if not (title.startswith("[") and title.endswith("]")):
        return title
    return upper_first(title[1:-1].rpartition("not checked; ")[2])


def keeping(ways: Sequence[str]) -> str:
    """
    How a plant part keeps, in words.

    >>> keeping(("perishable", "stored")), keeping(()), keeping(("in the snow",))
    ('does not keep, or keeps in store', 'not known', 'in the snow')
    """
    return ", or ".join(KEEPING.get(way, way) for way in ways) or "not known"


def known(word: str) -> str:
    """How well something is known, in words."""
    return KNOWN.get(word, word)


def percent(share: float | None) -> str:
    """A share as a whole per cent; a dash where there is none."""
    return "–" if share is None else numbers.percent(share)


@cache
def _markdown() -> MarkdownIt:
    markdown = MarkdownIt("zero", {"html": False, "linkify": False}).enable(["emphasis", "backticks", "escape"])
    markdown.add_render_rule("em_open", lambda renderer, tokens, index, options, env: '<i lang="la">')
    markdown.add_render_rule("em_close", lambda renderer, tokens, index, options, env: "</i>")
    return markdown


FILTERS = {
    "anchor": anchor,
    "inline": inline,
    "latin": latin,
    "probability": probability,
    "lower_first": lower_first,
    "upper_first": upper_first,
    "number": plain_number,
    "months": months,
    "whole_months": whole_months,
    "strength": strength,
    "keeping": keeping,
    "known": known,
    "title_of_work": title_of_work,
    "percent": percent,
}
