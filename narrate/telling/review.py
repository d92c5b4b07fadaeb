"""The narrative for the team: doubts first, then what is read, then what to do next. Short."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.ids import Subject
from narrate.model.narrative import Section, Sentence
from narrate.model.sampling import Sample
from narrate.model.stratigraphy import Context
from narrate.telling import (
    context_opening,
    english,
    modern_finds,
    neighbours,
    old_finds,
    openings,
    setting,
)
from narrate.telling.behind import remains_counted
from narrate.telling.contexts import readings_and_hints, without_the_expected
from narrate.telling.doubts_of_names import cf_sentences, uneven_sentences, unnamed_wood_sentences
from narrate.telling.doubts_of_readings import edge_sentences, rival_sentences, unstable_sentences
from narrate.telling.foods import name_plants
from narrate.telling.frames import noun_of
from narrate.telling.fresh_beside import fresh_beside_sentences
from narrate.telling.heavy_finds import modern_find_sentences
from narrate.telling.hints import faint_sentences
from narrate.telling.misleading import doubt_sentences
from narrate.telling.mixing import mixing_sentences
from narrate.telling.next_work import ENOUGH, is_shaky, lift_sentences, none_left, work_sentences
from narrate.telling.observations import Noted, noted_sentences, notes_of
from narrate.telling.of_note import strays_of_context
from narrate.telling.page import Page
from narrate.telling.phase_by_phase import phase_by_phase, phase_readings, told_by_phase
from narrate.telling.phases import headed, richest_sentences
from narrate.telling.plan import STORED_ONLY, Reading, by_grade, by_standing, readings, rivals_of, shared_limits
from narrate.telling.recovery import lost_sentences
from narrate.telling.sentences import in_pack_order, keeping_sentences, plainly_told, without_seasons_told_twice
from narrate.telling.site import without_the_same_change
from narrate.telling.through_time import sampled_phases

_READ = ("deposit", "fuel", "food", "processing", "field", "season")

def review_sections(
    page: Page, name: str, brackets: str, samples: Sequence[Sample], context: Context | None
) -> tuple[Section, ...]:
    """Doubts, readings and next steps of a context, phase or the dig."""
    if not page.found.samples:
        return headed(page, [("doubts", page.say([page.record], f"no samples were taken from {name}{brackets}"))])
    if setting.items_counted(page) == 0:
        return headed(page, [("doubts", context_opening.empty_sentences(page, name, brackets))])
    phases = sampled_phases(page) if page.subject.level == "site" else []
    if len(phases) > 1:
        # Counts put together over centuries are of no time: what phases read is told of each, as in the report.
        told_by_phase(page, phases)
        without_the_same_change(page)
    held = [r for r in readings(page, page.dig.claims.holding(page.subject)) if r.claim.question != "work"]
    if context is not None:
        held, faint = readings_and_hints(page, held)
        # What the report passes over in refuse is passed over here too.
        held = without_the_expected(page, context, held)
    else:
        held, faint = by_standing(page, held)
    name_plants(page, [*held, *faint])
    doubts = _size(page, name, brackets)
    doubts += _integrity(page, held)
    doubts += modern_find_sentences(page, context) if context is not None else []
    doubts += mixing_sentences(page, context) if context is not None else []
    doubts += fresh_beside_sentences(page, held)
    doubts += _limits(page, held)
    doubts += rival_sentences(page, held)
    doubts += unstable_sentences(page, held)
    doubts += faint_sentences(page, faint)
    doubts += edge_sentences(page, [*held, *faint])
    lead = [r for r in held if r.claim.question != "integrity"][:1]
    doubts += doubt_sentences(page, lead) if lead else []
    doubts += _noted(page, context, held) if context is not None else []
    doubts += lost_sentences(page, samples, with_places=context is None)
    doubts += _without_volume(page, samples)
    doubts += strays_of_context(page, context) if context is not None else []
    doubts += uneven_sentences(page)
    doubts += [*cf_sentences(page), *unnamed_wood_sentences(page)] if context is not None else []
    doubts += richest_sentences(page) if page.subject.level in ("phase", "site") else []
    read = phase_by_phase(page, phases, phase_readings(page, phases, _READ)) if len(phases) > 1 else []
    read += _readings(page, held)
    every = readings(page, page.dig.claims.holding(page.subject))
    # However many seeds one sample holds, they are one draw from the deposit, and no sum makes its shares sure.
    enough = [r for r in every if r.claim.statement == ENOUGH and page.found.samples > 1]
    read += plainly_told(page, enough)
    read += _of_another_sum(page, enough)
    is_thermal = False
    if context is not None:
        kind = page.names.kind_known(context.kind)
        is_thermal = kind is not None and "thermal" in kind.traits
    by_phase = [r for p in phases for r in readings(page, page.dig.claims.holding(Subject(level="phase", id=p.id)))]
    doubts += openings.open_sentences(page, is_thermal=is_thermal, held=[*held, *faint, *by_phase])
    following = work_sentences(page)
    following += lift_sentences(page, [*held, *faint])
    if context is not None and not following:
        following = none_left(page, [*held, *faint])
    if context is not None:
        read += neighbours.compared_sentences(page, context)[:1]
    if not read and not following:
        return headed(page, [("doubts", doubts)])
    return headed(page, [("doubts", doubts), ("readings", read), ("next", following)])


def _of_another_sum(page: Page, enough: Sequence[Reading]) -> list[Sentence]:
    """'The four other items (pine bark scales) are no such parts': why two sums of one page differ; and a caution."""
    if not enough:
        return []
    argument = next(iter(enough[0].claim.held("for")), None)
    old = [t for t in old_finds.ancient_tallies(page) if t.counted and not old_finds.is_wood(page, t)]
    counted = remains_counted(argument, page.dig.packs, old) if argument is not None else ()
    others = [t for t in old if t not in counted]
    clumped = "items of one dump lie in clusters, so that shares are less sure than single draws would make them"
    if not counted or not others:
        return page.say([enough[0].claim.id], clumped)
    kinds = page.listed([page.names.remains(t, with_number=False, latin=False).split(" (")[0] for t in others[:3]])
    number = sum(t.counted for t in others)
    more = ", among others" if len(others) > 3 else ""
    are = english.agreed(number, "is", "are")
    told = page.count(number, "item", "items")
    return page.say(
        [enough[0].claim.id, *(t.ref for t in others[:3] if t.ref)],
        f"{told} of other kinds ({kinds}{more}) {are} left out of that sum; {clumped}",
    )


def _size(page: Page, name: str, brackets: str) -> list[Sentence]:
    items, samples, litres = setting.items_text(page), setting.samples_text(page), setting.litres_text(page)
    at = setting.or_density(page)
    few = setting.items_counted(page) < openings.FEW
    stand = english.agreed(setting.items_counted(page), "stands", "stand")
    basis = f"{items} from {samples} ({litres}){at}"
    return page.say(
        setting.size_refs(page),
        f"{name}{brackets} rests on {'only ' if few else ''}{basis}",
        f"{'only ' if few else ''}{basis}{',' if at else ''} {stand} behind {name}{brackets}",
    )


def _integrity(page: Page, held: Sequence[Reading]) -> list[Sentence]:
    sentences = modern_finds.modern_sentences(page)
    items = [r for r in held if r.claim.question == "integrity" and r.claim.id not in page.told]
    return sentences + plainly_told(page, items[:3])


def _verb(item: Reading) -> str:
    return {"strongly supports": "strongly support", "supports": "support", "suggests": "suggest"}.get(
        item.claim.grade, "are consistent with"
    )


def _limits(page: Page, held: Sequence[Reading]) -> list[Sentence]:
    sentences: list[Sentence] = []
    for says, _, claims in shared_limits(page, held)[:2]:
        of = [r for r in held if r.claim.id in claims]
        grade = next(limit.grade for item in of for limit in item.claim.limits)
        few = openings.few_behind(page, held, says, claims)
        if few:
            sentences += page.say(claims, f"{few} put no higher than “{grade}”")
            continue
        is_named = len(of) <= openings.NAMED_AT_MOST
        which = noun_of(page, of) if is_named else page.count(len(of), "reading", "readings")
        be = english.agreed(len(of), "is", "are")
        sentences += page.say(
            claims,
            f"{which} {be} held at “{grade}” or below, because {openings.with_the(says)}",
            f"{openings.with_the(says)}, which holds {which} at “{grade}” or below",
        )
    return sentences


NOTES = 2
"""Notes of field and laboratory that are told where they bear on a doubt."""


def _noted(page: Page, context: Context, held: Sequence[Reading]) -> list[Sentence]:
    """What was noted in the field or the laboratory for or against a reading that is in doubt."""
    page.noted = tuple(note for note in notes_of(page, context) if not _is_for_both(page, note, held))
    rivals = {r.claim.id for item in held if (beside := rivals_of(page, item)) for r in (item, *beside)}
    lead = [r.claim.id for r in held if r.claim.question != "integrity"][:1]
    bearing = {s for note in page.noted for s in note.observation.against}
    doubted = [
        r for r in held if r.claim.id in (*rivals, *lead) or is_shaky(r) or r.claim.statement in bearing
    ]  # fmt: skip
    return noted_sentences(page, doubted, at_most=NOTES)


def _is_for_both(page: Page, note: Noted, held: Sequence[Reading]) -> bool:
    """Whether a note speaks for two rivals alike and against nothing, so that it decides no doubt."""
    seen = note.observation
    pairs = [(item, rival) for item in held for rival in rivals_of(page, item)]
    both = [p for p in pairs if {r.claim.statement for r in p} <= set(seen.agrees_with)]
    return bool(both) and not seen.against


def _without_volume(page: Page, samples: Sequence[Sample]) -> list[Sentence]:
    no_volume = [s for s in samples if s.volume_l is None]
    if not no_volume:
        return []
    named = [english.literal(s.id) for s in no_volume[:6]]
    if len(no_volume) > 6:
        named.append(page.count(len(no_volume) - 6, "other", "others"))
    ids = page.listed(named)
    return page.say(
        [page.dig.record_ref(Subject(level="sample", id=s.id)) for s in no_volume],
        f"no volume is recorded for {ids}, so {english.agreed(len(no_volume), 'it has', 'they have')} no density",
    )


def _readings(page: Page, held: Sequence[Reading]) -> list[Sentence]:
    """What is read, one sentence a grade, firmest first."""
    items = without_seasons_told_twice(page, [r for r in held if r.claim.question != "integrity"])
    keeping = [r for r in items if r.claim.statement == STORED_ONLY]
    items = [r for r in items if r.claim.statement != STORED_ONLY]
    sentences: list[Sentence] = []
    for group in by_grade(items):
        verb = _verb(group[0])
        noun = noun_of(page, in_pack_order(page, group))
        refs = [r.claim.id for r in group]
        sentences += page.say(refs, f"the remains {verb} {noun}" if not sentences else f"they {verb} {noun}")
    return sentences + keeping_sentences(page, keeping)
