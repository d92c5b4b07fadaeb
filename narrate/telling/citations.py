"""Works behind a reading, cited by author and year where a page first rests on them."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from functools import cache

from narrate.model.claims import Argument
from narrate.model.packs import Source
from narrate.telling import english
from narrate.telling.page import Page
from narrate.telling.plan import Reading
from narrate.telling.reasons import is_reason_of

WELL_KNOWN = ("read", "memory-H", "calc")
"""How well it must be known that a work says what it is cited for: a text that is signed cites nothing vaguer."""

CITED = 2
"""Works cited in one place; the rule's page and the list of works have all."""

_ARTICLE = re.compile(r"^\W*(?:(?:a|an|the)\s+)?", re.IGNORECASE)
_LETTERS = "abcdefghijklmnopqrstuvwxyz"
_INITIALS = re.compile(r",\s*(?:[A-Z]\.[\s-]*)+(?:[A-Z](?=\s*(?:[,&]|$)))?(?:,?\s*(?:Jr|Sr)\.?)?")


def cited(page: Page, items: Sequence[Reading], reasons: Sequence[str]) -> str:
    """
    'see Adams et al. 2007' for the rules whose reasons are told; empty for audiences that take no citations.

    Only works that a rule names as its basis are cited, never common practice or the judgement of a pack's makers, and
    each once a page.
    """
    wording = page.audience.words.get("citation", "")
    if not wording:
        return ""
    told = [a for item in items for a in item.claim.held("for") if is_reason_of(page, a, reasons)]
    return _said(page, wording, _nearest(page, _works(page, told)))


def works_cited(page: Page, keys: Iterable[str]) -> str:
    """'see Smith 1992' for works that a note or a comparison rests on, those that are well known and not cited yet."""
    wording = page.audience.words.get("citation", "")
    return _said(page, wording, _nearest(page, [key for key in keys if _is_citable(page, key)])) if wording else ""


def _nearest(page: Page, works: Iterable[str]) -> list[str]:
    """Those that the page has not cited yet, what is about the region or about none before analogies from elsewhere."""
    sources, regions = page.dig.packs.sources, page.dig.packs.regions
    left = [key for key in works if key not in page.cited]
    return sorted(left, key=lambda key: sources[key].is_analogy(regions))[:CITED]  # type: ignore[index]


def _said(page: Page, wording: str, works: Sequence[str]) -> str:
    """A work of another region is said to be one each time: what held there need not hold here."""
    page.cited.update(works)
    sources, regions = page.dig.packs.sources, page.dig.packs.regions
    named = set()
    for key in works:
        source = sources[key]  # type: ignore[index]
        from_afar = f", by analogy from {source.of_region}" if source.is_analogy(regions) else ""
        named.add(f"{english.literal(cited_as(source, sources.values()))}{from_afar}")
    return wording.replace("{cited}", "; ".join(sorted(named))) if named else ""


def cited_as(source: Source, among: Iterable[Source], *, joined: str = " and ") -> str:
    """
    A work as it is cited beside others: 'Moffett 1991b' where two of them would read alike.

    among:   the works of the list that readers have.
    joined:  between two authors.
    """
    year = f"{source.year}{letter_of(source, among)}"
    return author_year(source.authors, year, joined=joined)


def letter_of(source: Source, among: Iterable[Source]) -> str:
    """
    The letter behind the year, by the order of titles (without 'A' and 'The'); empty where the work stands alone.

    Works are told apart that read alike in a text, as lists in author–date form do it (the Harvard system in ISO
    690:2021, from memory): 'et al.' hides who the other authors are.
    """
    if source.kind != "work" or not source.authors:
        return ""
    name = author_year(source.authors, source.year)
    alike = {
        other.key: other
        for other in among
        if other.year == source.year and other.kind == "work" and author_year(other.authors, other.year) == name
    }
    order = sorted(alike.values(), key=lambda other: (_ARTICLE.sub("", other.title).lower(), other.key))
    place = next((n for n, other in enumerate(order) if other.key == source.key), 0)
    return "" if len(order) < 2 else _LETTERS[place] if place < len(_LETTERS) else f"z{place}"


@cache
def author_year(authors: str, year: str, *, joined: str = " and ") -> str:
    """
    Authors and year: one or two authors by name, more as 'et al.'; names of bodies stay as they are.

    >>> author_year("Miller, N. F.", "1988"), author_year("Miller, N. F. & Smart, T. L.", "1984")
    ('Miller 1988', 'Miller and Smart 1984')
    >>> author_year("Adams, K. R., Kuckelman, K. A. & Bowyer, V.", "2007"), author_year("van der Veen, M.", "2007")
    ('Adams et al. 2007', 'van der Veen 2007')
    >>> author_year("Charles, M. et al.", "2009"), author_year("Bonner, F. T. & Karrfalt, R. P. (eds)", "2008")
    ('Charles et al. 2009', 'Bonner and Karrfalt 2008')
    >>> author_year("Fuller, D. Q, Stevens, C. & McClatchie, M.", "2014")
    'Fuller et al. 2014'
    >>> author_year("Board of Ditches and Dykes", "1902"), author_year("Kabukcu, C. & Chabal, L.", "2021", joined=" & ")
    ('Board of Ditches and Dykes 1902', 'Kabukcu & Chabal 2021')
    """
    bare, people = _INITIALS.subn(" ", re.sub(r"\s*\(eds?\.?\)", "", authors))
    is_more = "et al" in bare
    if not people and not is_more:
        return f"{bare} {year}".strip()
    names = [name.strip() for name in re.split(r",|&|\band\b", re.sub(r"\bet al\b\.?", "", bare)) if name.strip()]
    who = f"{names[0]} et al." if is_more or len(names) > 2 else joined.join(names)
    return f"{who} {year}".strip()


def _works(page: Page, arguments: Iterable[Argument]) -> list[str]:
    keys: list[str] = []
    for argument in arguments:
        rule = page.dig.packs.rules.get(argument.rule)
        keys += [key for key in (rule.sources if rule is not None else ()) if _is_citable(page, key)]
    return list(dict.fromkeys(keys))


def _is_citable(page: Page, key: str) -> bool:
    source = page.dig.packs.sources.get(key)  # type: ignore[call-overload]
    return source is not None and source.kind == "work" and bool(source.authors) and source.known in WELL_KNOWN
