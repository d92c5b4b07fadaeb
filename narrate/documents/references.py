"""The references of the section: works behind the readings that hold, and those that the section itself cites."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from narrate.documents.blocks import Block, Paragraph
from narrate.documents.dates import items_of
from narrate.documents.latin import genera_of
from narrate.documents.unwritten import told_of
from narrate.documents.works import is_entry_read, work_line
from narrate.model.edition import Edition
from narrate.model.ids import FILED
from narrate.model.packs import Source
from narrate.model.report_blocks import arranged
from narrate.telling.citations import author_year, cited_as, letter_of
from narrate.telling.english import literal as shown_literally

UNSEEN = "not seen"
"""Stands in brackets behind a work that the makers of the rules did not see; † and ‡ are signs of the tables."""
UNREAD = "entry from memory"
"""Stands there behind an entry that was not held against print."""

WORKS = {
    "millard-2014": "Millard, A. R. 2014. Conventions for reporting radiocarbon determinations. __Radiocarbon__ 56, "
    "555–559.",
    "cifa": "Chartered Institute for Archaeologists. __Toolkit for specialist reporting: checklist__. No date given. "
    "archaeologists.net/work/toolkits/specialist-reporting/checklist.",
    "isgap": "ISGAP. __Project design and project report checklists and definitions__, section 18. No date given. "
    "isgap.org.uk/docs/18.",
}
"""Works that the section itself cites, beside those of the packs."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """One work of the list."""

    line: str
    cited: str
    """As the text cites it: 'Moffett 1991b'; empty for works without authors or year."""
    title: str = ""
    key: str = ""
    """Of the packs; empty for works of the project and of the section itself."""
    is_checked: bool = False
    """By the author of the section, as the project says."""
    is_unseen: bool = False
    """What the rules cite it for comes from memory."""
    is_unread: bool = False
    """The entry itself comes from memory."""
    questions: tuple[str, ...] = ()
    """What the readings behind which it stands are about."""

    @property
    def mark(self) -> str:
        said = [UNSEEN] * self.is_unseen + [UNREAD] * self.is_unread
        return f"[{'; '.join(said)}]" if said else ""


def references(entries: Sequence[Entry]) -> Iterator[Block]:
    """In the order of authors; what the makers of the rules know from memory alone is marked, and said at the head."""
    standing = _standing(entries)
    if standing:
        yield Paragraph(text=standing)
    for entry in entries:
        yield Paragraph(text=f"{entry.line} {entry.mark}".strip(), kind="reference")


def listed_works(edition: Edition) -> tuple[Entry, ...]:
    """The works of the list, each once, those of one author by year and then by title."""
    sources = _sources(edition)
    genera, checked, asked = genera_of(edition.packs), _checked(edition), _questions(edition)
    entries = []
    for source in sources:
        cited = cited_as(source, sources) if source.authors else ""
        lettered = replace(source, year=f"{source.year}{letter_of(source, sources)}")
        is_checked = (cited or source.title) in checked
        entries.append(
            Entry(
                line=work_line(lettered, genera),
                cited=cited,
                title=source.title,
                key=source.key,
                is_checked=is_checked,
                is_unseen=not is_checked and source.known not in ("read", "calc"),
                is_unread=not is_checked and not is_entry_read(source),
                questions=asked.get(source.key, ()),
            )
        )
    blocks = {one.block for one in arranged(edition.project.report_blocks)}
    dated = any(phase.start is not None for phase in edition.project.phases)
    own = [WORKS["millard-2014"]] if dated and blocks & {"introduction", "checklist"} else []
    own += [WORKS["cifa"], WORKS["isgap"]] if "checklist" in blocks else []
    own += own_works(edition)
    entries += [Entry(line=line, cited=_cited_in(line)) for line in own]
    return tuple(sorted(entries, key=lambda entry: _place(entry.line)))


def _sources(edition: Edition) -> tuple[Source, ...]:
    return tuple(edition.packs.sources[key] for key in cited(edition) if is_work(key, edition))  # type: ignore[index]


def letters_of_list(edition: Edition, works: Sequence[Entry]) -> Mapping[str, str]:
    """
    A citation as the drafts have it -> as this list has it.

    Drafts tell apart the works of all packs, so that a text stays as it is when another reading comes to hold; where
    the list has one of two works that read alike, its letter would lead a reader to look for the other.
    """
    every = edition.packs.sources
    sources = tuple(every[key] for key in (entry.key for entry in works) if key in every)  # type: ignore[index]
    found = {cited_as(source, every.values()): cited_as(source, sources) for source in sources if source.authors}
    return {shown_literally(told): shown_literally(here) for told, here in found.items() if told != here}


def alike(edition: Edition, works: Sequence[Entry]) -> tuple[str, ...]:
    """Citations that stand for more than one work of the list: of the project's own works and those of the packs."""
    found = Counter(entry.cited for entry in works if entry.cited)
    return tuple(cited for cited, n in found.items() if n > 1)


def _checked(edition: Edition) -> frozenset[str]:
    """Works that the author of the section has checked in print, as `report: works_checked` names them."""
    said = told_of(edition.project.report, "works_checked").replace(" & ", " and ")
    return frozenset(" ".join(one.split()) for one in re.split(r"[;\n]", said.rstrip(". ")) if one.strip())


def checked_in_vain(edition: Edition, works: Sequence[Entry]) -> tuple[str, ...]:
    """What `report: works_checked` names and the list does not hold."""
    return tuple(sorted(_checked(edition) - {entry.cited or entry.title for entry in works}))


def _cited_in(line: str) -> str:
    """As a text cites an entry that is written out; empty where it has no year."""
    found = re.match(r"(.+?) (\d{4}[a-z]?)\b", line)
    return author_year(found[1], found[2]) if found else ""


def _questions(edition: Edition) -> Mapping[str, tuple[str, ...]]:
    found: dict[str, set[str]] = {}
    for claim in edition.claims.all_holding(FILED):
        for key in claim.sources:
            found.setdefault(key, set()).add(claim.question)
    order = list(edition.packs.questions)
    return {key: tuple(q for q in order if q in asked) for key, asked in found.items()}


def _place(line: str) -> tuple[str, bool, str, str]:
    """
    Where a work stands: works of one author by year before those with others, as lists of references have them.

    >>> lines = ["Lee, A. & Roe, B. 1982. A.", "Lee, A. 1984. B.", "Lee, A. 1983. C.", "van Ho, C. 2001. D.", "Ho. E."]
    >>> sorted(lines, key=_place)
    ['Ho. E.', 'Lee, A. 1983. C.', 'Lee, A. 1984. B.', 'Lee, A. & Roe, B. 1982. A.', 'van Ho, C. 2001. D.']
    """
    found = re.match(r"(.+?) (\d{4}[a-z]?)\b", line)
    authors, year = (found[1], found[2]) if found else (line, "")
    first = re.match(r"[^,&]+(?:, (?:[A-Z]\.?[ -]?)+)?", authors)
    name = first[0] if first else authors
    others = authors[len(name) :].strip(" ,&")
    return name.strip(" _*[").lower(), bool(others), others.lower(), year


def own_works(edition: Edition) -> tuple[str, ...]:
    """Works that the project's own words cite: items of `report: references`, one a work, with titles in *italics*."""
    said = told_of(edition.project.report, "references")
    return tuple(re.sub(r"([\\{}_])", r"\\\1", line) for line in items_of(said))


def _standing(entries: Sequence[Entry]) -> str:
    """How far the makers of the rules saw the works, said once for all entries."""
    unseen, unread = sum(entry.is_unseen for entry in entries), sum(entry.is_unread for entry in entries)
    checked = sum(entry.is_checked for entry in entries)
    parts = []
    if unseen:
        parts.append(
            f"'{UNSEEN}' stands behind {unseen:,} of the {len(entries):,} works: the rules cite them from memory, and "
            "their makers did not see in print, for the rule at hand, what the works are cited for."
        )
    if unread:
        parts.append(
            f"'{UNREAD}' stands behind {unread:,} of the {len(entries):,}: title, volume and pages are from memory "
            "too; the others were held against a publisher's page, a list of references or the work."
        )
    if checked:
        parts.append(f"{checked:,} {'works were' if checked > 1 else 'work was'} checked by the author of the section.")
    return " ".join(parts)


def cited(edition: Edition) -> tuple[str, ...]:
    """Keys of the sources behind claims that hold, and of the works that the narratives name."""
    held = edition.claims.all_holding(FILED)
    keys: set[str] = {key for claim in held for key in claim.sources}
    told = " ".join(
        narrative.text
        for (audience, subject), narrative in edition.narratives.items()
        if audience == "report" and subject.level in FILED
    )
    for key, source in edition.packs.sources.items():
        # A text that was written before a work had its letter may mean either of two: both are listed.
        named = {author_date(key, edition), shown_literally(author_year(source.authors, source.year))}
        if source.kind == "work" and source.authors and any(_names(told, one) for one in named):
            keys.add(key)
    return tuple(sorted(keys))


def _names(told: str, cited: str) -> bool:
    return cited in told and re.search(rf"(?<!\w){re.escape(cited)}(?!\w)", told) is not None


def author_date(key: str, edition: Edition) -> str:
    """'Miller 1988' as drafts have it; empty for what is no work: common practice, the judgement of a pack's makers."""
    source = edition.packs.sources.get(key)  # type: ignore[call-overload]
    if source is None or source.kind != "work" or not source.authors:
        return ""
    return shown_literally(cited_as(source, edition.packs.sources.values()))


def from_afar(key: str, edition: Edition) -> str:
    """' (the Southwest)' for a work of another region than those of the project, which bears on it by analogy."""
    source = edition.packs.sources[key]  # type: ignore[index]
    return f" ({source.of_region})" if source.is_analogy(edition.packs.regions) else ""


def is_work(key: str, edition: Edition) -> bool:
    source = edition.packs.sources.get(key)  # type: ignore[call-overload]
    return source is not None and source.kind == "work"
