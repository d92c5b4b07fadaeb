"""A narrative of fixed length, such as an exhibit panel: what matters most, as far as it fits."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from narrate.model.ids import ContextId, PhaseId
from narrate.model.narrative import Section, Sentence
from narrate.model.stratigraphy import Phase
from narrate.telling import old_finds, setting
from narrate.telling.between_phases import gap_sentences
from narrate.telling.builds import named_once, ripe_then
from narrate.telling.cautions import caution_sentences, living_sentences, poison_sentences, standing_sentences
from narrate.telling.contexts import EXPECTED, NOT_NEWS, is_slight, readings_and_hints
from narrate.telling.exceptions_told import STORIES
from narrate.telling.frames import frame
from narrate.telling.in_short import chief_changes
from narrate.telling.lots import FOOD_GROUPS
from narrate.telling.neighbours import found_only_here
from narrate.telling.observations import noted_sentences, notes_of
from narrate.telling.page import Page
from narrate.telling.panel_parts import (
    crop_sentences,
    dated_sentences,
    is_common,
    kind_sentences,
    plant_sentences,
    term_sentences,
    washed_sentences,
)
from narrate.telling.plan import TOO_FEW, Reading, readings, rivals_of, standing
from narrate.telling.readings_of_phases import is_hint_of_all_phases
from narrate.telling.reasons import reasons_for
from narrate.telling.rivals import may_both_be, side_by_side
from narrate.telling.sentences import plainly_told
from narrate.telling.spread import presence
from narrate.telling.surroundings import genus_of

OUT_OF_PERIOD = "integrity.out-of-period"

QUESTIONS = ("change", "food", "fuel", "season", "processing", "field", "deposit")
"""What visitors are told first where there is room for a part only."""


@dataclass(frozen=True, slots=True)
class _Piece:
    """Sentences that stand or fall together, and how early they are let in: 0 before all."""

    turn: int
    sentences: tuple[Sentence, ...]

    @property
    def words(self) -> int:
        return sum(len(sentence.text.split()) for sentence in self.sentences)


def panel_sections(page: Page, name: str, phase: Phase | None, kind: str = "") -> tuple[Section, ...]:
    """
    One paragraph of the audience's length; nothing where there is too little to fill it.

    name: the subject as it stands in a sentence. kind: of a context, explained where its name does not say it.
    """
    if not page.found.samples or not setting.items_counted(page):
        return ()
    held = readings(page, page.dig.claims.holding(page.subject))
    if page.subject.level == "context" and (is_slight(page, held) or any(r.claim.statement == TOO_FEW for r in held)):
        return ()
    if page.subject.level == "context" and _is_disturbed(page):
        return ()
    if page.subject.level == "context":
        # What the page for visitors leaves out as too slight is no news for a panel.
        held = [r for r in readings_and_hints(page, held)[0] if r.rank > 1]
        page.noted = notes_of(page, page.dig.project.context(ContextId(page.subject.id)))
    held = [r for r in held if standing(r.claim) == "reading"]
    held = [r for r in held if not is_hint_of_all_phases(page.dig.project, page.dig.claims, r.claim)]
    is_story = any(r.claim.statement in STORIES for r in held)
    # What matters most in the place goes first; what was washed out of it, and how much, comes behind.
    first, *more = _read(page, held) or [_Piece(0, ())]
    # What kind of fire place it was few can tell by its name; then there is room for one kind of find.
    explained = kind_sentences(page, kind)
    is_rare = bool(explained) and _is_fire(page)
    of_place = [r for r in held if r.claim.question != "integrity"]
    seen = _Piece(2 if is_rare else 1, tuple(noted_sentences(page, of_place, at_most=1, of=("ground",))))
    shown = 1 if is_rare or (is_story and page.noted) else 3
    plants = _Piece(max(_turn_of_plants(page), 2 if is_rare else 1), tuple(plant_sentences(page, at_most=shown)))
    leads = [_Piece(0, first.sentences), *more[:1], _Piece(1, tuple(term_sentences(page)))]
    pieces = [
        # What many places of a time tell alike comes behind what was seen at this one.
        *((seen, *leads) if is_common(page, first.sentences) else (*leads, seen)),
        plants,
        _Piece(1, tuple(crop_sentences(page, (*first.sentences, *plants.sentences)))),
        _Piece(1, tuple(plainly_told(page, [r for r in held if r.claim.statement == OUT_OF_PERIOD]))),
        *more[1:],
        _Piece(4, tuple(found_only_here(page)) if page.subject.level == "context" else ()),
        _Piece(2, tuple(living_sentences(page))),
        _Piece(1 if is_rare else FILLS, tuple(explained)),
        _Piece(0, tuple(dated_sentences(page, name, phase))),
        _Piece(FILLS, tuple(washed_sentences(page, name, phase))),
        _Piece(7, tuple(page.say([page.record], *page.turns("panel seen")))),
        _Piece(6, tuple(page.say([page.record], *page.turns("panel fire")))),
        _Piece(8, tuple(page.say([page.record], *page.turns("panel kept")))),
    ]
    caution = _Piece(0, tuple(caution_sentences(page, "panel caution")))
    # Of what the panel has room for, and of nothing that it left out, its readers are warned.
    page.said = {s.text for piece in _fitting(page, [*pieces, caution]) for s in piece.sentences}
    poison = poison_sentences(page, "panel poison")
    owed = _Piece(0, (*standing_sentences(page), *poison))
    chosen = _fitting(page, [*pieces, owed, caution])
    if sum(piece.words for piece in chosen) < (page.audience.words_at_least or 0):
        return ()
    return (Section(id="all", heading="", paragraphs=(tuple(s for piece in chosen for s in piece.sentences),)),)


def _is_disturbed(page: Page) -> bool:
    """Whether the soil was dug again later: a panel has no room for all the doubts of such a place."""
    context = page.dig.project.context(ContextId(page.subject.id))
    return context is not None and context.security == "disturbed"


def _fitting(page: Page, pieces: Sequence[_Piece]) -> list[_Piece]:
    """Pieces in their order, as many as fit, the earliest turns first; fillers only until the text is long enough."""
    most, least = page.audience.words_at_most or 10_000, page.audience.words_at_least or 0
    chosen: list[_Piece] = []
    for piece in sorted((p for p in pieces if p.sentences), key=lambda p: p.turn):
        words = sum(p.words for p in chosen)
        if words + piece.words <= most and (piece.turn < FILLS or words < least):
            chosen.append(piece)
    return [piece for piece in pieces if piece in chosen]


FILLS = 5
"""From this turn on a piece is let in only where the text is too short without it."""


def _turn_of_plants(page: Page) -> int:
    """The finds stand early; last of all those of which a story of the place has said that they were nearly all."""
    return LAST if any(page.has_told(word) for word in ("was packed with", "were packed with")) else 1


LAST = 9
"""The turn of what a panel has told in other words."""


def _read(page: Page, held: Sequence[Reading]) -> list[_Piece]:
    """The firmest reading of each question with its reason, firmest questions first."""
    pieces: list[_Piece] = []
    by_question: dict[str, list[Reading]] = {}
    for reading in held:
        if reading.claim.question in QUESTIONS and reading.claim.statement not in NOT_NEWS:
            by_question.setdefault(reading.claim.question, []).append(reading)
    groups = [_news_first(page, group) for group in by_question.values()]
    leads = sorted(groups, key=lambda group: (_is_expected(group), -group[0].rank, _place_of(page, group)))
    rivals: set[str] = set()
    for i, group in enumerate(leads):
        group = [r for r in group if r.claim.id not in rivals]
        if not group:
            continue
        lead = _chief_foods(page, group)[:1] or group[:1]
        if lead[0].claim.question == "change":
            lead = chief_changes(group) or lead
        story = _stories(group, lead[0])
        rival = _rival(page, story or lead, held) if i == 0 else None
        # What changed is told with the years that lie between.
        gap = gap_sentences(page) if lead[0].claim.question == "change" and page.subject.level == "site" else []
        pieces.append(_Piece(2 if i < 2 else 3, (*_with_reason(page, story or lead), *gap)))
        if rival is not None:
            rivals.add(rival.claim.id)
            beside = side_by_side(page, (story or lead)[0], rival, are_two=True)
            pieces[-1] = replace(pieces[-1], sentences=(*pieces[-1].sentences, *beside))
        if any(r.claim.statement in STORIES for r in story or lead):
            pieces.append(_Piece(2 if i < 2 else 3, tuple(noted_sentences(page, group, at_most=1))))
        pieces += [_Piece(3, tuple(_alone(page, lead)))] if story else []
        pieces += [_Piece(1, tuple(_alone(page, [food]))) for food in _rare_foods(page, group)]
        foods = _chief_foods(page, group)[1:3] if page.subject.level != "site" else []
        pieces += [_Piece(3, tuple(_alone(page, [food]))) for food in foods]
    if page.subject.level == "site" and leads and leads[0][0].claim.question == "change":
        # What is read of all times together is of no time: told only where the panel would be too short.
        pieces = [pieces[0], *(_Piece(FILLS, piece.sentences) for piece in pieces[1:])]
    return pieces


def _chief_foods(page: Page, group: Sequence[Reading]) -> list[Reading]:
    """Foods read as firmly as the first reading of their question, of a place those of most remains first."""
    foods = [item for item in group if item.is_food and item.rank == group[0].rank]
    if page.subject.level != "context":
        return foods
    return sorted(foods, key=lambda item: -_remains_of(page, item))


def _remains_of(page: Page, item: Reading) -> int:
    """All remains of the plants behind a food reading, whatever part of them was food."""
    plants = {tally.taxon for tally in item.behind}
    return sum(tally.counted for tally in old_finds.plant_tallies(page) if tally.taxon in plants)


def _rare_foods(page: Page, group: Sequence[Reading]) -> list[Reading]:
    """Foods of less firmness whose plants were found in no other place: a panel does not pass them over."""
    foods = [item for item in group if item.is_food and item.rank < group[0].rank]
    around, packs = page.dig.surroundings, page.dig.packs
    return [
        item for item in foods
        if page.subject.level == "context" and all(around.is_found_once(genus_of(t, packs)) for t in item.behind)
    ]


def _with_reason(page: Page, lead: Sequence[Reading]) -> list[Sentence]:
    said = frame(page, lead, "lead")
    reasons = reasons_for(page, lead[0], most=1) if len(lead) == 1 else []
    reasons = [text.replace(" of the samples", " of the soil samples") for text in reasons]
    is_short = bool(reasons) and ", " not in reasons[0].split(", which ripen ")[0]
    refs = [item.claim.id for item in lead]
    if not said or not is_short:
        return page.say(refs, said) if said else []
    because = f"{said}, because {named_once(said, ripe_then(said, reasons[0]))}"
    if len(because.split()) > LONG:
        return page.say(refs, said) + page.say(refs, reasons[0])
    after = frame(page, lead, "so")
    is_so = bool(after) and "," not in reasons[0] and named_once(said, reasons[0]) == reasons[0]
    return page.say(refs, f"{reasons[0]}, {after}" if is_so else "", because)


LONG = 24
"""Words of a reading with its reason from which a panel parts the two."""


def _alone(page: Page, lead: Sequence[Reading]) -> list[Sentence]:
    said = frame(page, lead, "lead")
    return page.say([item.claim.id for item in lead], said) if said else []


def _stories(group: Sequence[Reading], lead: Reading) -> list[Reading]:
    """What happened there, as firmly read as the first reading of its question, where that is not true as well."""
    stories = [r for r in group if r.claim.statement in STORIES and r is not lead and r.rank >= lead.rank]
    return [r for r in stories if not (r.claim.statement in lead.statement.rivals and may_both_be(lead, r))][:1]


def _rival(page: Page, lead: Sequence[Reading], held: Sequence[Reading]) -> Reading | None:
    """The other account of the remains that a panel begins with, read as firmly: it is told in the next breath."""
    if len(lead) != 1:
        return None
    known = {r.claim.id for r in held if r.rank >= lead[0].rank}
    return next((r for r in rivals_of(page, lead[0]) if r.claim.id in known), None)


def _news_first(page: Page, group: Sequence[Reading]) -> list[Reading]:
    """
    The readings of a question, wood fires last, since every house had them; foods of a phase by what sets it apart.

    A panel of one phase has room for one food: that whose plants lie in more of its samples than of the whole dig's.
    """
    phase = page.subject.id if page.subject.level == "phase" else None

    def set_apart(item: Reading) -> float:
        name = FOOD_GROUPS.get(item.claim.statement)
        known = next((one for one in page.dig.packs.plant_groups if one.id == name), None)
        if phase is None or known is None:
            return 0.0
        return presence(page.dig, known, PhaseId(phase)).share - presence(page.dig, known).share

    return sorted(group, key=lambda item: (item.claim.statement in EXPECTED, -item.rank, -set_apart(item)))


def _is_expected(group: Sequence[Reading]) -> bool:
    return group[0].claim.statement in EXPECTED


def _place_of(page: Page, group: Sequence[Reading]) -> int:
    """The place of a question; where a fire was made, what fed it comes first, as on the page of the place."""
    is_fuel = group[0].claim.question == "fuel"
    return 0 if is_fuel and _is_fire(page) else QUESTIONS.index(group[0].claim.question) + 1


def _is_fire(page: Page) -> bool:
    """Whether the panel is of a place made for fire."""
    context = page.dig.project.context(ContextId(page.subject.id)) if page.subject.level == "context" else None
    kind = page.names.kind_known(context.kind) if context is not None else None
    return kind is not None and "thermal" in kind.traits
