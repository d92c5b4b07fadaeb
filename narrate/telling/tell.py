"""The door of the room: every narrative of a project for one audience."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator
from functools import partial

from narrate.model.at_once import AtOnce, in_turn
from narrate.model.claims import Claims
from narrate.model.counts import CountRow
from narrate.model.findings import Findings
from narrate.model.ids import SITE, Level, SampleId, Subject
from narrate.model.narrative import Narrative, Section
from narrate.model.packs import Packs
from narrate.model.project import Project
from narrate.model.refs import subject_keys
from narrate.model.signs import signs_of
from narrate.model.stratigraphy import Context, Phase
from narrate.telling import cautions, english, setting, translated
from narrate.telling.authorities import authorities_once
from narrate.telling.contexts import context_sections
from narrate.telling.draws import doubts_in_one
from narrate.telling.features import feature_sections
from narrate.telling.first_use import explained_at_first, terms_explained
from narrate.telling.followed import Followed
from narrate.telling.in_short import summary_sentence
from narrate.telling.kept_words import KeptWords, told_before_or_now
from narrate.telling.manner import in_style
from narrate.telling.names import Names
from narrate.telling.new_pages import new_page
from narrate.telling.of_note import lone_plants
from narrate.telling.owed import at_the_foot, with_finds_named, with_standing
from narrate.telling.page import Dig, Page
from narrate.telling.panel import panel_sections
from narrate.telling.phases import phase_sections
from narrate.telling.plan import readings
from narrate.telling.readability import grade
from narrate.telling.review import review_sections
from narrate.telling.samples import sample_sections
from narrate.telling.site import site_sections
from narrate.telling.strays import Strays
from narrate.telling.surroundings import surroundings
from narrate.telling.told_apart import _made_distinct

LEVELS: tuple[Level, ...] = ("sample", "context", "feature", "phase", "site")


def narratives(
    project: Project,
    packs: Packs,
    findings: Findings,
    claims: Claims,
    audience: str,
    levels: Collection[Level] = LEVELS,
    known: KeptWords | None = None,
    at_once: AtOnce | None = None,
) -> dict[Subject, Narrative]:
    """
    A narrative for every sample, context, feature of several contexts, phase, and for the whole dig.

    audience: id of an audience of the packs. The same input gives the same words.
    levels:   of the subjects that are told. Words of samples and features lend none to other levels, so that leaving
              them out changes no word of the rest; contexts, phases and the dig share what is said once.
    known:    words of samples, contexts and features that were told before, with what they asked of the dig; where
              all that is as it was they stand, and what is told now is added. None: everything is told.
    at_once:  tells the subjects in shares, for whoever adds nothing to `known`. None: they are told in one.
    """
    listed = packs.words.preservations.get(project.preservation)
    ancient = frozenset(listed or ("charred", "partly charred"))
    lone = lone_plants(findings, claims, packs, ancient)
    dig = Dig(
        project=project,
        packs=packs,
        findings=findings,
        claims=claims,
        audience=in_style(packs.audiences[audience], project.style),
        keys=subject_keys(project),
        ancient=ancient,
        surroundings=surroundings(project, packs, findings, ancient),
        strays=Strays(
            project=project, packs=packs, findings=findings, claims=claims, ancient=ancient, lone_plants=lone
        ),
        lone_plants=lone,
        notes=_notes(project),
        signs=signs_of(packs.observations) if "noted" in packs.audiences[audience].words else None,
    )
    if dig.audience.language != "en":
        return translated.told_in_its_language(dig)
    subjects = [Subject(level=level, id=id) for level, id, _ in _all_told(dig, levels)]
    many = 1 if at_once is None else SHARES
    shares = [partial(_share, dig, audience, levels, known, slice(n, None, many)) for n in range(many)]
    told = {subject: said for share in (at_once or in_turn)(shares) for subject, said in share.items()}
    in_order = {subject: told[subject] for subject in subjects if subject in told}
    named = authorities_once(in_order, Names(audience=dig.audience, packs=packs), packs, project)
    return _made_distinct(named, "In {id}, {text}")


SHARES = 2
"""How many may be told at once: every other subject in each."""


def _share(
    dig: Dig, audience: str, levels: Collection[Level], known: KeptWords | None, share: slice
) -> dict[Subject, Narrative]:
    """Narratives of a share of the subjects, each told by itself."""
    followed = None if known is None else Followed(dig, known.ground)
    told: dict[Subject, Narrative] = {}
    for level, id, sections in list(_all_told(dig, levels))[share]:
        subject = Subject(level=level, id=id)
        if followed is None or known is None or level in ("phase", "site"):
            narrative = _tell(dig, subject, sections)
        else:
            tell = partial(_tell, followed.dig, subject, sections)
            narrative = told_before_or_now(followed, known.kept, audience, subject, tell)
        if narrative is not None:
            told[subject] = narrative
    if followed is not None:
        followed.end()
    return told


_Sections = Callable[[Page], tuple[Section, ...]]


def _all_told(dig: Dig, levels: Collection[Level]) -> Iterator[tuple[Level, str, _Sections]]:
    """What is told of, in this order, each with what makes its sections."""
    project = dig.project
    for sample in project.samples if not is_panel(dig) and "sample" in levels else ():
        yield "sample", sample.id, partial(sample_sections, sample=sample)
    for context in project.contexts if "context" in levels else ():
        yield "context", context.id, partial(_context, context=context)
    features = project.features() if "feature" in levels and not is_panel(dig) else ()
    for feature in (f for f in features if len(f.contexts) > 1):
        yield "feature", feature.id, partial(feature_sections, feature=feature)
    for phase in project.phases if "phase" in levels else ():
        yield "phase", phase.id, partial(_phase, phase=phase)
    if "site" in levels:
        yield "site", SITE, _site


def _notes(project: Project) -> dict[SampleId, tuple[CountRow, ...]]:
    noted: dict[SampleId, list[CountRow]] = {}
    for row in project.counts:
        if row.note:
            noted.setdefault(row.sample, []).append(row)
    return {sample: tuple(rows) for sample, rows in noted.items()}


def _tell(dig: Dig, subject: Subject, sections: _Sections) -> Narrative | None:
    if dig.found(subject) is None:
        return None
    page = new_page(dig, subject)
    written = _closed(page, doubts_in_one(page, sections(page)))
    if not written:
        return None
    if page.is_plain and grade(_text(written)) > GRADE_AT_MOST:
        # Glosses in brackets are what makes a plain page hard; a page that is too hard goes without them.
        bare = new_page(dig, subject)
        bare.names.may_gloss = False
        without = _closed(bare, sections(bare))
        written = without if grade(_text(without)) < grade(_text(written)) else written
    title = title_of(dig, subject)
    brief = new_page(dig, subject)
    held = [] if _spans_phases(dig, subject) else readings(brief, dig.claims.holding(subject))
    summary = summary_sentence(brief, english.literal(title), held)
    return Narrative(subject=subject, audience=dig.audience.id, title=title, summary=summary, sections=written)


def _closed(page: Page, sections: tuple[Section, ...]) -> tuple[Section, ...]:
    """A text for visitors with what it owes them at its end: that plants named in it live on, and are no advice."""
    if not page.is_plain or is_panel(page.dig) or not sections or page.subject.level == "sample":
        return sections
    sections = with_finds_named(page, sections)
    sections = explained_at_first(page, sections, lambda told: grade(_text(told)) <= GRADE_AT_MOST - LEFT_FOR_THE_END)
    sections = terms_explained(page, sections)
    plant, living = cautions.living_of(page) if page.subject.level in ("phase", "site") else ("", [])
    sacred, standing = cautions.standing_of(page)
    poison = cautions.poison_sentences(page, "caution poison")
    owed = (*poison, *cautions.caution_sentences(page, "caution closing"))
    sections = with_standing(cautions.with_living(sections, living, plant), standing, sacred)
    return at_the_foot(page, sections, owed)


def _spans_phases(dig: Dig, subject: Subject) -> bool:
    """Whether it is a feature of contexts of several phases: readings of it would speak of no time in particular."""
    if subject.level != "feature":
        return False
    return len({c.phase for c in dig.project.contexts_of(subject.id)}) > 1


LEFT_FOR_THE_END = 0.2
"""What the sentences at the end of a page may add to its grade."""

GRADE_AT_MOST = 8.0
"""Reading grade that a page for visitors should not pass."""


def _text(sections: tuple[Section, ...]) -> str:
    return " ".join(s.text for section in sections for paragraph in section.paragraphs for s in paragraph)


def title_of(dig: Dig, subject: Subject) -> str:
    """The title as plain text, unescaped: 'Hearth C12', 'Sample S014', 'Late hamlet'."""
    names = Names(audience=dig.audience, packs=dig.packs)
    if subject.level == "sample":
        return f"Sample {subject.id}"
    if subject.level == "feature":
        return f"Feature {subject.id}"
    if subject.level == "phase":
        return next((phase.name for phase in dig.project.phases if phase.id == subject.id), subject.id)
    if subject.level == "site":
        return dig.project.title
    own = dig.project.find_context(subject.id)
    kind = "" if own is None else own.kind
    known = names.kind_known(kind)
    is_plain = dig.audience.register == "plain"
    word = "place" if is_plain else "context"
    if known is not None and kind != "other":
        word = known.plain if is_plain else known.id
    return english.capitalised(f"{word} {subject.id}")


def is_panel(dig: Dig) -> bool:
    """Whether texts are held to a length: then samples and features have none of their own."""
    return dig.audience.words_at_most is not None


def _context(page: Page, context: Context) -> tuple[Section, ...]:
    if is_panel(page.dig):
        phase = page.dig.project.phase(context.phase)
        return panel_sections(page, setting.context_name(page, context), phase, context.kind)
    if not page.is_review:
        return context_sections(page, context)
    brackets = setting.phase_brackets(page, page.dig.project.phase(context.phase))
    samples = page.dig.project.samples_of(context.id)
    return review_sections(page, setting.context_name(page, context), brackets, samples, context)


def _phase(page: Page, phase: Phase) -> tuple[Section, ...]:
    if is_panel(page.dig):
        return panel_sections(page, setting.phase_name(phase), phase)
    if not page.is_review:
        return phase_sections(page, phase)
    inside = {c.id for c in page.dig.project.contexts if c.phase == phase.id}
    samples = [s for s in page.dig.project.samples if s.context in inside]
    name = english.literal(phase.name)
    return review_sections(page, f"the {name}", "", samples, None)


def _site(page: Page) -> tuple[Section, ...]:
    if is_panel(page.dig):
        return panel_sections(page, "the dig", None)
    if not page.is_review:
        return site_sections(page)
    return review_sections(page, "the whole dig", "", page.dig.project.samples, None)
