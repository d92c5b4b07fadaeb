"""The narrative of one context: what it is and how far to trust it, fuel, food, fields, season, and its neighbours."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.claims import GRADE_NAMES
from narrate.model.narrative import Section, Sentence
from narrate.model.stratigraphy import Context
from narrate.telling import (
    charcoal,
    composition,
    context_opening,
    modern_finds,
    near_empty,
    neighbours,
    old_finds,
    openings,
    setting,
)
from narrate.telling.dates_taken import date_sentences
from narrate.telling.find_notes import find_note_sentences, formed_sentences
from narrate.telling.foods import name_plants
from narrate.telling.fresh_beside import fresh_beside_sentences
from narrate.telling.heavy_finds import modern_find_sentences, stone_sentences
from narrate.telling.hints import faint_sentences
from narrate.telling.mixing import mixing_sentences
from narrate.telling.noted_plainly import seen_of, they_also
from narrate.telling.observations import DISTURBED, answered, noted_sentences, notes_of, stirring_seen
from narrate.telling.of_note import plants_of_note
from narrate.telling.page import Page
from narrate.telling.plan import (
    POOR,
    STORED_ONLY,
    TOO_FEW,
    Reading,
    by_standing,
    ordered_themes,
    readings,
    shared_limits,
)
from narrate.telling.reasons import reason_texts
from narrate.telling.recovery import lost_sentences, unsorted_sentences
from narrate.telling.seasons_asked import of_context
from narrate.telling.sentences import plainly_told, told, without_seasons_told_twice
from narrate.telling.weeds import weed_sentences
from narrate.telling.wood_notes import wood_note_sentences

DATABLE = "work.date-candidate"
OF_THE_DIG = (DATABLE, "work.enough-for-proportions")
"""Told for the whole dig at once or for the reviewer: a report wants one list of what could be dated."""

EXPECTED = ("fuel.wood",)
"""What every fire and all refuse holds: told of a phase, and of a context only where nothing else is read there."""

NOT_NEWS = (STORED_ONLY, "deposit.redeposited")
"""Readings that say what a deposit cannot tell: never what a list tells of it."""

SHORT = 5
"""A narrative of at most this many sentences is one paragraph."""


def context_sections(page: Page, context: Context) -> tuple[Section, ...]:
    """The planned paragraphs of a context; as many as there is something to say."""
    name = setting.context_name(page, context)
    if not page.found.samples:
        return one_paragraph(context_opening.unsampled_sentence(page, name))
    if setting.items_counted(page) == 0 and not old_finds.ancient_tallies(page):
        brackets = setting.phase_brackets(page, page.dig.project.phase(context.phase))
        empty = context_opening.empty_sentences(page, name, brackets)
        return one_paragraph([*empty, *modern_finds.modern_sentences(page)])
    held = readings(page, page.dig.claims.holding(page.subject))
    if is_slight(page, held):
        return one_paragraph(_slight(page, context, held))
    held, faint = readings_and_hints(page, held)
    held = without_the_expected(page, context, held)
    name_plants(page, [*held, *faint])
    page.noted = notes_of(page, context)
    page.answered = answered(page.noted, held)
    page.of_note = plants_of_note(page, [*held, *faint])
    deposit = _deposit_block(page, context, held)
    # For visitors what a place has of its own is a part of what was found.
    deposit += neighbours.compared_sentences(page, context) if page.is_plain else []
    blocks = [("deposit", deposit)]
    blocks += theme_blocks(page, held)
    blocks.append(("open", [*faint_sentences(page, faint), *_closing_block(page, context, held, faint)]))
    return sections_of(page, blocks)


def readings_and_hints(page: Page, held: Sequence[Reading]) -> tuple[list[Reading], list[Reading]]:
    """
    Readings of a context, and what it only hints at.

    What fewer than `POOR` items are merely consistent with is left out besides: a poor deposit gets a short text.
    """
    kept, faint = by_standing(page, without_seasons_told_twice(page, held))
    if setting.items_counted(page) >= POOR:
        return kept, faint
    of_counts = ("integrity", "work")
    firm = [r for r in kept if r.claim.question in of_counts or r.rank > 1]
    page.aside.update(r.claim.id for r in kept if r not in firm)
    seasons = [r for r in firm if r.claim.question == "season" and r.claim.statement != STORED_ONLY]
    return [r for r in firm if seasons or r.claim.statement != STORED_ONLY], faint


def without_the_expected(page: Page, context: Context, held: Sequence[Reading]) -> list[Reading]:
    """Readings of a context without those that would stand in the account of any refuse, where others are told."""
    kind = page.names.kind_known(context.kind)
    is_fire = kind is not None and "thermal" in kind.traits
    news = [r for r in held if r.rank > 1 and r.claim.question in ("food", "processing", "field", "season", "fuel")]
    news = [r for r in news if r.claim.statement not in (*EXPECTED, *NOT_NEWS)]
    # That wood burned in a fire is told of the phase; visitors hear it of the fire as well.
    if (is_fire and page.is_plain) or not news:
        return list(held)
    dull = [r for r in held if r.claim.statement in EXPECTED and (is_fire or r.rank <= _SUGGESTS)]
    page.told.update(r.claim.id for r in dull)
    return [r for r in held if r not in dull]


_SUGGESTS = GRADE_NAMES.index("suggests")


def is_slight(page: Page, held: Sequence[Reading]) -> bool:
    """Whether there is too little to fill more than a sentence or two."""
    firm = [r for r in held if r.claim.question not in ("integrity", "deposit", "work") and r.rank > 1]
    return setting.items_counted(page) < setting.FEW_ITEMS and not firm


def theme_blocks(page: Page, held: Sequence[Reading]) -> list[tuple[str, list[Sentence]]]:
    """Fuel, food, fields and season, in the order of the audience's plan; of a context with what was noted of it."""
    by_question: dict[str, list[Reading]] = {}
    for item in held:
        by_question.setdefault(item.claim.question, []).append(item)
    blocks = []
    for theme, questions in ordered_themes(page):
        if theme == "deposit":
            continue
        items = [item for question in questions for item in by_question.get(question, [])]
        lead_question = [item for item in items if item.claim.question == questions[0]]
        # The theme's own question leads, however firm the readings that accompany it.
        ordered = lead_question + [item for item in items if item not in lead_question]
        sentences = told(page, ordered, weak=not page.is_plain)
        sentences = [*of_context(page, ordered), *sentences] if theme == "season" and sentences else sentences
        sentences += weed_sentences(page) if theme == "field" else []
        sentences += fresh_beside_sentences(page, items)
        if sentences and _held_down_theme(page, held) in questions:
            sentences += openings.limit_sentences(page, [r for r in held if r.claim.question != "work"])
        blocks.append((theme, sentences + _noted(page, ordered)))
    return blocks


STIRRED = 2
"""Notes that are told of how a deposit was disturbed, however little it held."""


def _noted(page: Page, items: Sequence[Reading], *, at_most: int = 0) -> list[Sentence]:
    most = at_most or (1 if setting.items_counted(page) < POOR else 3)
    return noted_sentences(page, [r for r in items if r.claim.id in page.told], at_most=most)


def sections_of(page: Page, blocks: Sequence[tuple[str, list[Sentence]]]) -> tuple[Section, ...]:
    """Blocks as paragraphs: short texts in one, lone sentences joined to the paragraph before."""
    filled = [(theme, sentences) for theme, sentences in blocks if sentences]
    if sum(len(sentences) for _, sentences in filled) <= SHORT:
        return one_paragraph([s for _, sentences in filled for s in sentences])
    merged: list[tuple[str, list[Sentence]]] = []
    for theme, sentences in filled:
        if merged and (len(sentences) == 1 or len(merged[-1][1]) == 1):
            merged[-1] = (merged[-1][0], [*merged[-1][1], *sentences])
        else:
            merged.append((theme, list(sentences)))
    with_headings = page.is_plain and len(merged) > 2
    # Under headings nothing is joined to what it is no part of, be it a lone sentence.
    merged = [(theme, list(sentences)) for theme, sentences in filled] if with_headings else merged
    return tuple(
        Section(
            id=theme,
            heading=page.audience.headings.get(theme, "") if with_headings else "",
            paragraphs=(tuple(sentences),),
        )
        for theme, sentences in merged
    )


def one_paragraph(sentences: Sequence[Sentence]) -> tuple[Section, ...]:
    return (Section(id="all", heading="", paragraphs=(tuple(sentences),)),) if sentences else ()


def _deposit_block(page: Page, context: Context, held: Sequence[Reading]) -> list[Sentence]:
    sentences = context_opening.opening_sentences(page, context)
    sentences += date_sentences(page, context)
    sentences += composition.main_sentences(page)
    sentences += find_note_sentences(page, context)
    sentences += composition.part_sorted_sentences(page)
    sentences += unsorted_sentences(page, page.dig.project.samples_of(context.id))
    sentences += charcoal.wood_sentences(page)
    sentences += wood_note_sentences(page, context)
    sentences += modern_finds.modern_sentences(page)
    also = _as_recorded(page, context, held)
    deposit = told(page, [r for r in held if r.claim.question == "deposit"], weak=False)
    said = " ".join(sentence.text for sentence in (*sentences[:1], *deposit))
    sentences += context_opening.recorded_sentence(page, context, known=said, also=also)
    sentences += deposit
    sentences += _noted(page, [r for r in held if r.claim.question == "deposit"])
    sentences += [] if setting.items_counted(page) < POOR else stone_sentences(page, context)
    sentences += [] if deposit or setting.items_counted(page) < POOR else formed_sentences(page)
    sentences += plainly_told(page, [r for r in held if r.claim.question == "integrity" and r.rank > 1])
    sentences += modern_find_sentences(page, context)
    sentences += mixing_sentences(page, context)
    sentences += _noted(page, [r for r in held if r.claim.question == "integrity"], at_most=STIRRED)
    sentences += _ground_seen(page, context)
    sentences += lost_sentences(page, page.dig.project.samples_of(context.id))
    held = [r for r in held if r.claim.question != "work"]
    # What holds one reading down stands with its theme, and not with the deposit.
    sentences += [] if _held_down_theme(page, held) else openings.limit_sentences(page, held)
    return sentences


def _held_down_theme(page: Page, held: Sequence[Reading]) -> str:
    """The question of the one reading that few items hold down, which is told as a limit of its own; else nothing."""
    limits = shared_limits(page, [r for r in held if r.claim.question != "work"])
    if page.is_plain or not limits:
        return ""
    says, _, claims = limits[0]
    of = [r for r in held if r.claim.id in claims]
    is_own = bool(openings.few_behind(page, held, says, claims)) and of[0].claim.question != "deposit"
    return of[0].claim.question if is_own else ""


def _seen_stirred(page: Page, context: Context, held: Sequence[Reading]) -> list[Sentence]:
    """For visitors: what the diggers saw of a disturbance, in the place of a reading that says less."""
    stirred = [r for r in held if r.claim.statement == DISTURBED and r.claim.id not in page.told]
    seen, ref = stirring_seen(page, context) if page.is_plain and stirred else ("", "")
    if not seen:
        return []
    page.told.add(stirred[0].claim.id)
    return page.say([ref, stirred[0].claim.id], seen)


def _ground_seen(page: Page, context: Context) -> list[Sentence]:
    """For visitors: what the diggers saw that cut or stirred the ground, where no reading says as much."""
    seen, ref = stirring_seen(page, context) if page.is_plain else ("", "")
    is_told = not seen or page.has_told(seen_of(seen)) or page.has_told("trust it less")
    return page.say([ref], they_also(page, seen)) if not is_told else []


def _as_recorded(page: Page, context: Context, held: Sequence[Reading]) -> tuple[str, ...]:
    """The reading that a deposit was disturbed or moved, where nothing but the record says so: told with the record."""
    if context.security != "disturbed" and context.deposit != "tertiary":
        return ()
    found = [r for r in held if r.claim.statement in ("integrity.disturbed", "deposit.redeposited")]
    claims = [r.claim.id for r in found if page.is_plain or not reason_texts(page, r)]
    page.told.update(claims)
    return tuple(claims)


def _closing_block(page: Page, context: Context, held: Sequence[Reading], faint: Sequence[Reading]) -> list[Sentence]:
    kind = page.names.kind_known(context.kind)
    is_thermal = kind is not None and "thermal" in kind.traits
    sentences = openings.open_sentences(page, is_thermal=is_thermal, held=[*held, *faint])
    if not page.is_plain:
        work = [r for r in held if r.claim.question == "work"]
        work = [r for r in work if page.is_review or r.claim.statement not in OF_THE_DIG]
        sentences += plainly_told(page, work)
        sentences += neighbours.compared_sentences(page, context)
    return sentences


def _is_news(item: Reading) -> bool:
    """Whether a reading of the deposit's state says more than that little was found in it."""
    return item.rank > 1 and item.claim.statement not in (TOO_FEW, *NOT_NEWS)


def _slight(page: Page, context: Context, held: Sequence[Reading]) -> list[Sentence]:
    """A deposit with next to nothing in it: what there was, and that it says little."""
    listed, refs = near_empty.only_text(page)
    modern = page.measure("modern_seeds")
    is_all = context.security != "disturbed" and (modern is None or not modern.value)
    sentences = context_opening.slight_sentences(page, context, listed, refs, is_all=is_all)
    sentences += find_note_sentences(page, context)
    sentences += modern_finds.modern_sentences(page)
    if context.security == "disturbed":
        sentences += context_opening.recorded_sentence(page, context)
    sentences += _seen_stirred(page, context, held)
    sentences += plainly_told(page, [r for r in held if r.claim.question == "integrity" and _is_news(r)])
    sentences += modern_find_sentences(page, context)
    if context.security == "disturbed":
        return sentences
    if not page.is_plain or len(sentences) > 2:
        return sentences
    few = ("that is too little to tell a story", "so few finds tell us very little")
    return sentences + page.say([page.ref("items")], *few)
