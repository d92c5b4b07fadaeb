"""The references of the section: works behind the readings that hold, and those that the section itself cites."""

from __future__ import annotations

import re
from collections.abc import Iterator

from narrate.documents.blocks import Block, Paragraph
from narrate.documents.dates import items_of
from narrate.documents.latin import genera_of
from narrate.documents.unwritten import told_of
from narrate.documents.works import is_entry_read, work_line
from narrate.model.edition import Edition
from narrate.model.packs import Source
from narrate.model.report_blocks import arranged
from narrate.telling.citations import author_year

UNSEEN = "°"
"""Stands before a work that the makers of the rules did not see."""
UNREAD = "†"
"""Stands before an entry that was not held against print."""

WORKS = {
    "millard-2014": "Millard, A. R. 2014. Conventions for reporting radiocarbon determinations. __Radiocarbon__ 56, "
    "555–559.",
    "cifa": "Chartered Institute for Archaeologists. __Toolkit for specialist reporting: checklist__. No date given. "
    "archaeologists.net/work/toolkits/specialist-reporting/checklist.",
    "isgap": "ISGAP. __Project design and project report checklists and definitions__, section 18. No date given. "
    "isgap.org.uk/docs/18.",
}
"""Works that the section itself cites, beside those of the packs."""

LEVELS = ("site", "phase", "context")
"""Subjects whose narratives stand in the section."""


def references(edition: Edition) -> Iterator[Block]:
    """In the order of authors; what the makers of the rules know from memory alone is marked, and said at the head."""
    sources = [edition.packs.sources[key] for key in cited(edition) if author_date(key, edition)]  # type: ignore[index]
    genera = genera_of(edition.packs)
    lines = [(_mark(source), work_line(source, genera)) for source in sources]
    blocks = {one.block for one in arranged(edition.project.report_blocks)}
    dated = any(phase.start is not None for phase in edition.project.phases)
    lines += [("", WORKS["millard-2014"])] if dated and blocks & {"introduction", "checklist"} else []
    lines += [("", WORKS["cifa"]), ("", WORKS["isgap"])] if "checklist" in blocks else []
    lines += [("", line) for line in own_works(edition)]
    unseen, unread = (sum(sign in mark for mark, _ in lines) for sign in (UNSEEN, UNREAD))
    if unseen or unread:
        yield Paragraph(text=_standing(unseen, unread, len(lines)))
    for mark, line in sorted(lines, key=lambda one: _place(one[1])):
        yield Paragraph(text=f"{mark} {line}".strip(), kind="reference")


def _place(line: str) -> tuple[str, bool, str, str]:
    """
    Where a work stands: works of one author by year before those with others, as lists of references have them.

    >>> lines = ["Lee, A. & Roe, B. 1982. A.", "Lee, A. 1984. B.", "Lee, A. 1983. C.", "van Ho, C. 2001. D.", "Ho. E."]
    >>> sorted(lines, key=_place)
    ['Ho. E.', 'Lee, A. 1983. C.', 'Lee, A. 1984. B.', 'Lee, A. & Roe, B. 1982. A.', 'van Ho, C. 2001. D.']
    """
    found = re.match(r"(.+?) (\d{4})\b", line)
    authors, year = (found[1], found[2]) if found else (line, "")
    first = re.match(r"[^,&]+(?:, (?:[A-Z]\.?[ -]?)+)?", authors)
    name = first[0] if first else authors
    others = authors[len(name) :].strip(" ,&")
    return name.strip().lower(), bool(others), others.lower(), year


def own_works(edition: Edition) -> tuple[str, ...]:
    """Works that the project's own words cite: items of `report: references`, one a work, with titles in *italics*."""
    said = told_of(edition.project.report, "references")
    return tuple(re.sub(r"([\\{}_])", r"\\\1", line) for line in items_of(said))


def _mark(source: Source) -> str:
    seen = "" if source.known in ("read", "calc") else UNSEEN
    return seen + ("" if is_entry_read(source) else UNREAD)


def _standing(unseen: int, unread: int, works: int) -> str:
    """How far the makers of the rules saw the works, said once for all entries."""
    parts = []
    if unseen:
        parts.append(
            f"{UNSEEN} stands before {unseen:,} of the {works:,} works: the rules cite them from memory, and their "
            "makers did not see in print, for the rule at hand, what the works are cited for."
        )
    if unread:
        parts.append(
            f"{UNREAD} stands before {unread:,} of the {works:,}: the entry itself (title, volume, pages) is from "
            "memory too; the others were held against a publisher's page, a list of references or the work."
        )
    return " ".join((*parts, "See the works before signing."))


def cited(edition: Edition) -> tuple[str, ...]:
    """Keys of the sources behind claims that hold, and of the works that the narratives name."""
    held = (c for c in edition.claims.all_holding() if c.about.level in LEVELS)
    keys: set[str] = {key for claim in held for key in claim.sources}
    already = {author_date(key, edition) for key in keys}
    told = " ".join(
        narrative.text
        for (audience, subject), narrative in edition.narratives.items()
        if audience == "report" and subject.level in LEVELS
    )
    for key in edition.packs.sources:
        named = author_date(key, edition)
        if named and named not in already and named in told:
            keys.add(key)
    return tuple(sorted(keys))


def author_date(key: str, edition: Edition) -> str:
    """'Miller 1988', of works alone: neither common practice nor the judgement of a pack's makers is one."""
    source = edition.packs.sources.get(key)  # type: ignore[call-overload]
    return author_year(source.authors, source.year) if source is not None and source.kind == "work" else ""
