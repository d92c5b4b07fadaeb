"""The outline of the interpretive section, the same for every medium."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping, Sequence

from narrate.documents.account import archive, introduction, laboratory, limits, sampling
from narrate.documents.appendices import measures, measures_meant, rules
from narrate.documents.blocks import FOOTER, Block, Contents, Foot, Heading, Paragraph
from narrate.documents.changes_tested import changes_tested, led_to_tests
from narrate.documents.checklist import checklist
from narrate.documents.figures import figures
from narrate.documents.inline import literal
from narrate.documents.leads import is_section, is_shown, leads_of, led_to, seen_in
from narrate.documents.photographs import photographs
from narrate.documents.raw_counts import raw_counts
from narrate.documents.references import (
    Entry,
    author_date,
    from_afar,
    is_work,
    letters_of_list,
    listed_works,
    references,
)
from narrate.documents.restricted import FOOT, cover, marked
from narrate.documents.tables import counts_by_context, sample_register, wood_by_phase
from narrate.documents.to_check import notice
from narrate.documents.unwritten import missing, told_of
from narrate.model.edition import Edition
from narrate.model.ids import FILED, SITE, Subject
from narrate.model.narrative import Narrative, Section
from narrate.model.report_blocks import BLOCKS, arranged
from narrate.model.stratigraphy import Context
from narrate.telling.numbers import years

CAUTION = (
    "**This section is a draft for the signature of a qualified specialist.** Information on the location of sites and "
    "on burials follows the laws and consultation that apply where the work was done."
)

RESTRICTED = (
    "**Restricted: not for release.** Take this context and its samples out before the section leaves the team."
)

WITHHELD = (
    "Open copy: it was made from what may be disclosed alone. Something is withheld from it: contexts or fields of "
    "records that the project restricts, and locations. Counts, totals and shares are without them and so differ "
    "from those of the copy that the team holds; each copy is right for what it counts."
)
NOTHING_WITHHELD = "Open copy: it was made from what may be disclosed; nothing had to be withheld."


def outline(
    edition: Edition, files: Mapping[str, bytes] | None = None, notices: Sequence[str] = ()
) -> tuple[Block, ...]:
    """
    Headings, paragraphs, tables and figures of the section in order; blocks as the project arranges them.

    files:    photographs by the path under which records list them.
    notices:  what a reader must know of this copy, beside what the edition says itself.
    """
    return tuple(marked(_blocks(edition, files or {}, notices), edition.project.restricted_ids()))


def _blocks(edition: Edition, files: Mapping[str, bytes], notices: Sequence[str]) -> Iterator[Block]:
    works = listed_works(edition)
    letters = letters_of_list(edition, works)
    yield from _title(edition)
    yield from (Paragraph(text=literal(said), kind="notice") for said in notices)
    yield from notice(edition, works)
    for one in arranged(edition.project.report_blocks):
        heading = one.title or BLOCKS[one.block]
        found = list(_found(one.block, edition, files, works, letters))
        own = [Paragraph(text=" ".join(p.split())) for p in re.split(r"\n\s*\n", one.text.strip()) if p.strip()]
        if found or own:
            anchor = f"block-{one.block.replace('_', '-')}"
            yield Heading(level=2, text=literal(heading), anchor=anchor, is_listed=one.block != "contents")
            yield from own
            yield from found


def _found(
    block: str, edition: Edition, files: Mapping[str, bytes], works: Sequence[Entry], letters: Mapping[str, str]
) -> Iterator[Block]:
    if block == "results":
        return _results(edition, files, letters)
    if block == "checklist":
        return checklist(edition, works)
    if block == "references":
        return references(works)
    if block == "summary":
        return _summary(edition, letters)
    return _discussion(edition, letters) if block == "discussion" else _WRITERS[block](edition)


def _title(edition: Edition) -> Iterator[Block]:
    project = edition.project
    yield Heading(level=1, text=f"Plant remains: {literal(project.title)}")
    is_restricted = bool(project.disclosure.restricted_contexts)
    yield Foot(text=f"{FOOT if is_restricted else ''}{FOOTER}")
    if project.authors:
        names = "; ".join(f"{a.name}, {a.role}" if a.role else a.name for a in project.authors)
        yield Paragraph(text=literal(names), kind="byline")
    shown = ("qualifications", "number", "client", "permit", "fieldwork", "date")
    facts = [f"{key.capitalize()}: {project.report[key]}" for key in shown if project.report.get(key)]
    if facts:
        yield Paragraph(text=literal(". ".join(fact.rstrip(".") for fact in facts)) + ".", kind="byline")
    yield Paragraph(text=CAUTION, kind="notice")
    if is_restricted:
        yield Paragraph(text=cover(edition), kind="notice")
    if edition.audience == "public":
        yield Paragraph(text=WITHHELD if project.is_withheld_in_part else NOTHING_WITHHELD, kind="notice")
    if edition.approved_only:
        told = (n for (audience, s), n in edition.narratives.items() if audience == "report" and s.level in FILED)
        yield Paragraph(text=_approved_alone(sum(narrative.left_out for narrative in told)), kind="notice")


def _approved_alone(waiting: int) -> str:
    if not waiting:
        return "Every sentence of this section was read and approved."
    left_out = "one sentence that waits" if waiting == 1 else f"{waiting:,} sentences that wait"
    return f"Approved sentences alone; {left_out} for approval {'is' if waiting == 1 else 'are'} left out."


def _summary(edition: Edition, letters: Mapping[str, str]) -> Iterator[Block]:
    """What the project says of itself, the firmest readings of the dig, what stands beside them, then each phase's."""
    project = edition.project
    if project.summary:
        yield Paragraph(text=" ".join(literal(project.summary).split()))
    for subject in (Subject(level="site", id=SITE), *(Subject(level="phase", id=p.id) for p in project.phases)):
        told = edition.narrative("report", subject)
        if told is not None and told.summary is not None:
            yield Paragraph(text=told.summary.text)
        for section in told.sections if told is not None and subject.level == "site" else ():
            if is_section(edition, section, "summary"):
                yield from _paragraphs(section, letters)


def _contents(edition: Edition) -> Iterator[Block]:
    yield Contents()


def _results(edition: Edition, files: Mapping[str, bytes], letters: Mapping[str, str]) -> Iterator[Block]:
    project = edition.project
    drawn, tables, wood = tuple(figures(edition)), tuple(counts_by_context(edition)), wood_by_phase(edition)
    leads = leads_of(edition, drawn, tables)
    yield Paragraph(
        text="Contexts are told by phase; what holds across the dig stands in the discussion. "
        + led_to(drawn, tables, wood)
    )
    for phase in project.phases:
        when = years(phase.start, phase.end, phase.dates)
        yield Heading(level=3, text=literal(f"{phase.name}, {when}" if when else phase.name))
        contexts = [context for context in project.contexts if context.phase == phase.id]
        if not any(project.samples_of(context.id) for context in contexts):
            yield Paragraph(text="No samples were taken from this phase.")
        yield from _told(edition, Subject(level="phase", id=phase.id), 4, letters)
        for context in contexts:
            yield from _context(edition, context, files, leads, letters)
    undated = [context for context in project.contexts if project.phase(context.phase) is None]
    if undated:
        yield Heading(level=3, text="Contexts without a phase")
        for context in undated:
            yield from _context(edition, context, files, leads, letters)
    tested = tuple(changes_tested(edition))
    shown = [block for blocks in (drawn[:1], (wood,), drawn[1:], tables, tested) for block in blocks if block]
    if shown:
        # Wide tables begin a page: what stands upright comes before them and fills the page that the text ends on.
        named = " and ".join(kind for kind, has in (("figures", drawn), ("tables", tables or wood or tested)) if has)
        yield Heading(level=3, text=f"{named.capitalize()} of the results", holds_figures=True)
        yield from shown


def _context(
    edition: Edition,
    context: Context,
    files: Mapping[str, bytes],
    leads: Mapping[str, str],
    letters: Mapping[str, str],
) -> Iterator[Block]:
    yield Heading(level=4, text=literal(f"{context.id}, {context.kind}"))
    if context.id in edition.project.disclosure.restricted_contexts:
        yield Paragraph(text=RESTRICTED, kind="notice")
    shown = tuple(photographs(context, edition.project, files))
    pointer = " ".join(part for part in (leads[context.id], seen_in(shown)) if part)
    if pointer:
        yield Paragraph(text=pointer, kind="pointer")
    subject = Subject(level="context", id=context.id)
    yield from list(_told(edition, subject, 5, letters)) or [Paragraph(text=_untold(edition, subject))]
    yield from shown


def _untold(edition: Edition, subject: Subject) -> str:
    narrative = edition.narrative("report", subject)
    if edition.approved_only and narrative is not None and narrative.left_out:
        return "Nothing that is told of this context was approved so far."
    return "Nothing is told of this context: no samples, or no remains in them."


def _discussion(edition: Edition, letters: Mapping[str, str]) -> Iterator[Block]:
    yield from _told(edition, Subject(level="site", id=SITE), 3, letters, {"change": led_to_tests(edition)})
    shown = (("measures", "The measures with their intervals stand in {measures}."),
             ("rules", "How each rule came out stands in {rules}."))  # fmt: skip
    leads = " ".join(text for block, text in shown if is_shown(edition, block))
    if leads:
        yield Paragraph(text=leads, kind="pointer")
    yield Heading(level=3, text="The wider region")
    wider = told_of(edition.project.report, "wider_context")
    if wider:
        yield Paragraph(text=literal(" ".join(wider.split())))
    else:
        yield missing("comparison with other sites of the region. Give it as report: wider_context.")
    held = list(edition.claims.all_holding(FILED))
    cited_by: dict[str, set[str]] = {}
    for claim in held:
        cited_by.setdefault(claim.question, set()).update(claim.sources)
    yield Heading(level=3, text="Works behind the readings")
    for question in edition.packs.questions:
        keys = [key for key in cited_by.get(question, ()) if author_date(key, edition)]
        named = sorted({f"{_listed_as(key, edition, letters)}{from_afar(key, edition)}" for key in keys}, key=str.lower)
        if named:
            yield Paragraph(text=f"{literal(question.capitalize())}: {'; '.join(named)}.", kind="item")
    works = {key for key in edition.packs.sources if is_work(key, edition)}
    unsourced = sum(bool(claim.sources) and works.isdisjoint(claim.sources) for claim in held)
    if unsourced:
        yield Paragraph(
            text=f"Of the {len(held):,} readings that hold, {unsourced:,} rest on common practice or the judgement of "
            "the makers of the rules alone."
        )


def _listed_as(key: str, edition: Edition, letters: Mapping[str, str]) -> str:
    told = author_date(key, edition)
    return letters.get(told, told)


def _told(
    edition: Edition, subject: Subject, level: int, letters: Mapping[str, str], leads: Mapping[str, str] | None = None
) -> Iterator[Block]:
    """leads: below the heading of a section, by its id, what leads to tables."""
    narrative: Narrative | None = edition.narrative("report", subject)
    for section in narrative.sections if narrative else ():
        if subject.level == "site" and is_section(edition, section, "summary"):
            continue
        if section.heading:
            yield Heading(level=level, text=section.heading)
        for id, lead in (leads or {}).items():
            if lead and is_section(edition, section, id):
                yield Paragraph(text=lead, kind="pointer")
        yield from _paragraphs(section, letters)


def _paragraphs(section: Section, letters: Mapping[str, str]) -> Iterator[Block]:
    for paragraph in section.paragraphs:
        yield Paragraph(text=_lettered(" ".join(sentence.text for sentence in paragraph), letters))


def _lettered(text: str, letters: Mapping[str, str]) -> str:
    """Its citations with the letters of this list."""
    for told, here in letters.items():
        text = re.sub(rf"(?<!\w){re.escape(told)}(?!\w)", lambda _, here=here: here, text)  # type: ignore[misc]
    return text


_WRITERS: Mapping[str, Callable[[Edition], Iterator[Block]]] = {
    "contents": _contents,
    "introduction": introduction,
    "sampling": sampling,
    "laboratory": laboratory,
    "limits": limits,
    "archive": archive,
    "register": lambda edition: iter((sample_register(edition),)),
    "raw_counts": raw_counts,
    "measures": lambda edition: iter((measures(edition), measures_meant(edition))),
    "rules": lambda edition: iter((rules(edition),)),
}
