"""
Narratives in any language but English: contexts, phases and the whole dig, from the words of a language pack.

What is told, and in which order, is planned as for English; how it is said stands in packs/languages/<id>. Nothing
falls back on English: a plant without a name is told by its Latin, a statement without a clause is not told, and
`lacking` names what a pack would need.
"""

from __future__ import annotations

from narrate.model.ids import SITE, Level, PartId, Subject
from narrate.model.narrative import Narrative, Section, Sentence
from narrate.model.stratigraphy import Context, Phase
from narrate.telling import english, old_finds, setting
from narrate.telling.contexts import NOT_NEWS, is_slight, sections_of, without_the_expected
from narrate.telling.in_short import chief_changes
from narrate.telling.new_pages import new_page
from narrate.telling.page import Dig, Page
from narrate.telling.plan import TOO_FEW, is_hint, ordered_themes, readings
from narrate.telling.told_apart import _made_distinct
from narrate.telling.translated_dig import dig_sections, phase_sections
from narrate.telling.translated_finds import PIECES, SHOWN, everything_told, finds_told, is_named, own_key, own_part
from narrate.telling.translated_noted import noted_told, one_thing_told
from narrate.telling.translated_owed import closed, smaller_finds
from narrate.telling.translated_readings import framed, hints_told, no_season_told, theme_told, told_readings
from narrate.telling.translated_recovery import recovery_told
from narrate.telling.translated_words import (
    grammar_of,
    kind_noun,
    litres_told,
    paragraph,
    remains_noun,
    say,
    say_each,
    worded,
)

Told = Context | Phase | None
"""What is told: a context, a phase, or with None the whole dig."""


def tells_phases(page: Page) -> bool:
    """Whether the language has the sentences that a phase wants."""
    return all(name in grammar_of(page).language.sentences for name in ("washed phase", "phase groups", "group in"))


def translated_title(page: Page, context: Told) -> str:
    if context is None:
        return page.dig.project.title
    if isinstance(context, Phase):
        years = grammar_of(page).years(context.start, context.end, context.dates)
        titled = worded(page, "phase title", years=years) if years else []
        return english.capitalised(titled[0]) if titled else context.name
    kind = kind_noun(page, context)
    return english.capitalised(f"{kind.one} {context.id}")


def translated_sections(page: Page, context: Told) -> tuple[Section, ...]:
    """A context, a phase, or with None the whole dig."""
    if isinstance(context, Phase):
        return phase_sections(page, context)
    return _context(page, context) if context is not None else dig_sections(page)


def translated_summary(page: Page, title: str) -> Sentence | None:
    """One sentence for lists: the firmest reading; nothing where there is none."""
    held = [r for r in told_readings(page) if not is_hint(r.claim)]
    if not held:
        return None
    held = chief_changes([r for r in held if r.claim.question == "change"] or held[:1])
    text = f"{english.literal(title)}: {framed(page, held[0])}"
    return Sentence(text=grammar_of(page).finished(text), refs=(held[0].claim.id,))


def lacking(page: Page) -> tuple[str, ...]:
    """What the page's subject would need of the language pack and does not find there, in order."""
    language = grammar_of(page).language
    wanted = [f"plant {t.taxon}" for t in old_finds.ancient_tallies(page) if is_named(page, t)]
    known = {*language.plants, *language.described}
    lacks = [name for name in wanted if name.removeprefix("plant ") not in known]
    parts = [t.part for t in old_finds.plant_tallies(page) if t.counted]
    lacks += [f"part {part}" for part in parts if part not in language.parts and not own_part(page, part)]
    broken = [t for t in old_finds.plant_tallies(page) if page.names.fragments_of(t)]
    lacks += [f"part {PIECES}{own_key(page, t)}" for t in broken if f"{PIECES}{own_key(page, t)}" not in language.parts]
    lacks += [
        f"statement {r.claim.statement}"
        for r in readings(page, page.dig.claims.holding(page.subject))
        if r.claim.question in page.audience.plan and r.claim.question not in ("integrity", "work")
        and r.claim.statement not in NOT_NEWS and r.claim.statement not in language.statements
    ]  # fmt: skip
    return tuple(dict.fromkeys(lacks))


def _context(page: Page, context: Context) -> tuple[Section, ...]:
    kind = f"{grammar_of(page).the(kind_noun(page, context))} {english.literal(context.id)}"
    if not page.found.samples:
        return paragraph(say(page, [page.record], "unsampled", the_kind=kind))
    litres = litres_told(page)
    items = setting.items_counted(page)
    if not items and not old_finds.ancient_tallies(page):
        refs = [page.record, page.ref("items")]
        return paragraph(say_each(page, refs, "nothing", the_kind=kind, litres=litres))
    held = readings(page, page.dig.claims.holding(page.subject))
    if is_slight(page, held) or any(r.claim.statement == TOO_FEW for r in held):
        return closed(page, paragraph([*_slight(page, kind, litres), *noted_told(page, context)]))
    without_the_expected(page, context, held)
    blocks = [("deposit", [*_opening(page, context, kind, litres), *theme_told(page, ("deposit",))])]
    for theme, questions in ordered_themes(page):
        if theme not in ("deposit", "change"):
            sentences = theme_told(page, questions)
            blocks.append((theme, sentences + (no_season_told(page) if theme == "season" else [])))
    planned = [q for theme, questions in ordered_themes(page) if theme != "change" for q in questions]
    blocks.append(("open", hints_told(page, planned)))
    return closed(page, sections_of(page, blocks))


def _slight(page: Page, kind: str, litres: str) -> list[Sentence]:
    """Next to nothing: all of it, or what was most of it, and that it tells little."""
    tallies = old_finds.ancient_tallies(page)
    refs = [page.record, page.ref("items"), *(t.ref for t in tallies if t.ref)]
    listed, is_all = everything_told(page, tallies)
    return say_each(page, refs, "only" if is_all else "only among", the_kind=kind, litres=litres, list=listed)


def _opening(page: Page, context: Context, kind: str, litres: str) -> list[Sentence]:
    phase = page.dig.project.phase(context.phase)
    years = grammar_of(page).years(phase.start, phase.end, phase.dates) if phase is not None else ""
    sentences = say(page, [page.record], "place", the_kind=kind, years=years) if years else []
    named = kind_noun(page, context).one
    if sentences and named in page.audience.glossary:
        sentences += say(page, [page.record], "kind", kind=named, said=page.audience.glossary[named])
    sentences += one_thing_told(page, context) if sentences else []
    items = grammar_of(page).quantity(setting.items_counted(page), remains_noun(page))
    of = "washed" if sentences else "washed of"
    sentences += say(page, setting.size_refs(page)[:2], of, the_kind=kind, litres=litres, items=items)
    tallies = [t for t in old_finds.plant_tallies(page) if t.counted and is_named(page, t)]
    refs = [t.ref for t in tallies[:SHOWN] if t.ref] or [page.ref("items")]
    sentences += say(page, refs, "plants", list=finds_told(page, tallies, at_most=SHOWN)) if tallies else []
    sentences += smaller_finds(page)
    sentences += recovery_told(page, page.dig.project.samples_of(context.id))
    return sentences + _modern(page) + _later(page, context) + noted_told(page, context)


def _modern(page: Page) -> list[Sentence]:
    modern = page.measure("modern_seeds")
    if modern is not None and modern.value and page.dig.project.preservation == "charred":
        name = "modern one" if modern.value == 1 else "modern"
        count = grammar_of(page).quantity(
            int(modern.value), grammar_of(page).language.parts.get(PartId("seed"), remains_noun(page))
        )
        return say(page, [page.ref("modern_seeds")], name, count=count)
    return []


def _later(page: Page, context: Context) -> list[Sentence]:
    sentences: list[Sentence] = []
    if context.security == "disturbed":
        sentences += say(page, [page.record], "disturbed")
    return sentences + _late_plants(page)


def _late_plants(page: Page) -> list[Sentence]:
    """Plants that the region had not yet when the deposit was laid down, and that they are later than it."""
    held = [r for r in readings(page, page.dig.claims.holding(page.subject)) if r.claim.statement == OUT_OF_PERIOD]
    known = grammar_of(page).language.statements
    if not held or held[0].claim.statement not in known or not held[0].behind:
        return []
    refs = [held[0].claim.id, *(t.ref for t in held[0].behind if t.ref)]
    listed = finds_told(page, held[0].behind, at_most=SHOWN)
    clause = worded(page, "late plants clause", find=listed) if sum(t.counted for t in held[0].behind) == 1 else []
    if clause:
        return say(page, refs, "late plants one", lead=framed(page, held[0], clause[0]))
    return say(page, refs, "late plants", lead=framed(page, held[0]), list=listed)


OUT_OF_PERIOD = "integrity.out-of-period"


def told_in_its_language(dig: Dig) -> dict[Subject, Narrative]:
    """Contexts, phases and the whole dig, from the language's own pack; other subjects are not told."""
    told: dict[Subject, Narrative] = {}
    all_told: list[tuple[Level, str, Told]] = [
        *(("context", c.id, c) for c in dig.project.contexts),
        *(("phase", p.id, p) for p in dig.project.phases),
        ("site", SITE, None),
    ]
    for level, id, one in all_told:
        subject = Subject(level=level, id=id)
        if dig.found(subject) is None:
            continue
        page = new_page(dig, subject)
        if level == "phase" and not tells_phases(page):
            continue
        title = translated_title(page, one)
        sections = translated_sections(page, one)
        if not sections and level == "phase":
            continue
        told[subject] = Narrative(
            subject=subject,
            audience=dig.audience.id,
            title=title,
            summary=translated_summary(new_page(dig, subject), title),
            sections=sections,
        )
    within = dig.packs.languages[dig.audience.language].sentences.get("within", ("{id}: {text}",))
    return _made_distinct(told, within[0])
