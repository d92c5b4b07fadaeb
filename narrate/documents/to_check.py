"""Works that the author of the section has yet to see: said at its head, and one by one on the checklist page."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from narrate.documents.blocks import Block, Paragraph, Table
from narrate.documents.inline import literal
from narrate.documents.leads import is_shown
from narrate.documents.references import Entry, checked_in_vain
from narrate.model.edition import Edition

HEAD = "Works to be checked before signing"
ANCHOR = "works-to-check"


def waiting(works: Sequence[Entry]) -> tuple[Entry, ...]:
    """The works of the list that nobody saw for what they are cited for, or whose entry nobody held against print."""
    return tuple(entry for entry in works if entry.mark)


def notice(edition: Edition, every: Sequence[Entry]) -> Iterator[Block]:
    """The line at the head of the section; none where every work was seen."""
    works = waiting(every)
    if works:
        where = ["marked in the list of references"] if is_shown(edition, "references") else []
        where += [f"listed in {{{ANCHOR}}}"] if is_shown(edition, "checklist") else []
        named = "; ".join(f"({n})\u00a0{literal(_name(entry))}" for n, entry in enumerate(works, start=1))
        # A reader of the first page needs their number and where they stand; a list of them belongs in one place.
        led = f"each is {' and '.join(where)}" if where else f"they are {named}"
        yield Paragraph(
            text=f"**{HEAD}: {len(works):,} of the {len(every):,} that are cited.** The rules cite "
            f"them from memory; {led}.",
            kind="notice",
        )


def answer(edition: Edition, every: Sequence[Entry]) -> str:
    """For the checklist; empty where every work was seen."""
    works, vain = waiting(every), checked_in_vain(edition, every)
    parts = [f"{len(works):,} of {len(every):,} works are cited from memory, as the next table lists"]
    unknown = f"report: works_checked names {'; '.join(vain)}, which the list does not hold"
    return "; ".join([*(parts if works else []), *([unknown] if vain else [])])


def table(every: Sequence[Entry]) -> Iterator[Block]:
    """One row a work: what there is to check in it, and for which questions it matters."""
    works = waiting(every)
    if works:
        yield Table(
            caption=f"{HEAD}.",
            columns=("No.", "Work", "To be checked", "Stands behind readings on"),
            rows=tuple(_rows(works)),
            note="Each was cited by the makers of the rules from memory.",
            anchor=ANCHOR,
            numbers=(0,),
            widths=(5, 30, 37, 28),
        )


def _rows(works: Sequence[Entry]) -> Iterator[tuple[str, ...]]:
    for number, entry in enumerate(works, start=1):
        what = "what it is cited for" if entry.is_unseen else ""
        what = " and ".join(part for part in (what, "the entry itself" if entry.is_unread else "") if part)
        yield str(number), literal(_name(entry)), what, ", ".join(entry.questions) or "named in the text"


def _name(entry: Entry) -> str:
    return entry.cited or entry.title
