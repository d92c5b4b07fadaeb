"""The references of the section: works behind the readings that hold, and those that the section itself cites."""

from __future__ import annotations

import re
from collections.abc import Iterator

from narrate.documents.blocks import Block, Paragraph
from narrate.documents.inline import literal
from narrate.model.edition import Edition
from narrate.model.report_blocks import arranged
from narrate.telling.citations import author_year
from narrate.telling.explanation import source_line

UNSEEN = "°"
"""Stands before a work that the makers of the rules did not see."""

WORKS = {
    "millard-2014": "Millard, A. R. 2014. Conventions for reporting radiocarbon determinations. Radiocarbon 56, "
    "555–559.",
    "cifa": "Chartered Institute for Archaeologists. Toolkit for specialist reporting: checklist. No date given. "
    "archaeologists.net/work/toolkits/specialist-reporting/checklist.",
}
"""Works that the section itself cites, beside those of the packs."""

LEVELS = ("site", "phase", "context")
"""Subjects whose narratives stand in the section."""


def references(edition: Edition) -> Iterator[Block]:
    """In the order of authors; what the makers of the rules know from memory alone is marked, and said at the head."""
    keys = [key for key in cited(edition) if author_date(key, edition)]
    lines = [_line(key, edition) for key in keys]
    blocks = {one.block for one in arranged(edition.project.report_blocks)}
    dated = any(phase.start is not None for phase in edition.project.phases)
    lines += [WORKS["millard-2014"]] if dated and blocks & {"introduction", "checklist"} else []
    lines += [WORKS["cifa"]] if "checklist" in blocks else []
    unseen = sum(line.startswith(UNSEEN) for line in lines)
    if unseen:
        yield Paragraph(
            text=f"{UNSEEN} stands before {unseen:,} of the {len(lines):,} works: the makers of the rules cite them "
            "from memory and did not see in print, for the rule at hand, what they are cited for. See them "
            "before signing."
        )
    for line in sorted(lines, key=lambda line: line.removeprefix(f"{UNSEEN} ").lower()):
        yield Paragraph(text=literal(line), kind="reference")


def _line(key: str, edition: Edition) -> str:
    line = source_line(key, edition.packs)
    bare = re.sub(r" \[[\w-]+: a default, check\]$", "", line)
    is_seen = bare == line
    bare = bare.replace("?.", "?")
    container = edition.packs.sources[key].container  # type: ignore[index]
    if re.search(r"\(eds?\.?\)", container):
        bare = bare.replace(container.rstrip("."), f"In {container.rstrip('.')}", 1)
    return bare if is_seen else f"{UNSEEN} {bare}"


def cited(edition: Edition) -> tuple[str, ...]:
    """Keys of the sources behind claims that hold, by author and year."""
    held = (c for c in edition.claims if c.verdict == "holds" and c.about.level in LEVELS)
    keys = {key for claim in held for key in claim.sources}
    return tuple(sorted(keys, key=lambda key: source_line(key, edition.packs).lower()))


def author_date(key: str, edition: Edition) -> str:
    """'Miller 1988', of works alone: neither common practice nor the judgement of a pack's makers is one."""
    source = edition.packs.sources.get(key)  # type: ignore[call-overload]
    return author_year(source.authors, source.year) if source is not None and source.kind == "work" else ""
