"""What to do next, told to the team: the work that pays, what was left undone, and what would lift what holds down."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from narrate.model.ids import Subject
from narrate.model.narrative import Sentence
from narrate.model.next_steps import NextStep
from narrate.model.sorting_on_record import finer_than_classes, silent_on_sorting
from narrate.model.work_left import (
    ASKED,
    DATE_OWN,
    KEPT,
    SORT_CLASS,
    SORT_HEAVY,
    LeftUndone,
    left_undone,
    own_dates,
    paying,
    samples_of,
)
from narrate.telling import english, manner, numbers, openings, setting
from narrate.telling.contexts import DATABLE
from narrate.telling.doubts_of_names import wood_left_unnamed
from narrate.telling.frames import noun_of
from narrate.telling.harvest import in_word_of_season
from narrate.telling.page import Page
from narrate.telling.plan import POOR, STORED_ONLY, Reading, readings, shared_limits
from narrate.telling.sentences import plainly_told
from narrate.telling.unmeasured import unmeasured_sentences

ENOUGH = "work.enough-for-proportions"
"""The one statement about work that says what is already good."""


STEADY = 0.9
"""A verdict that stays in less than this share of the resampled counts is spoken of (judgement of the makers)."""


NAMED = 3
"""Readings that a piece of work would let be told, up to which they are named."""


def is_shaky(item: Reading) -> bool:
    """Whether a reading of the remains does not stay in nearly all draws of the counts."""
    is_of_counts = item.claim.statement != STORED_ONLY and item.claim.question != "integrity"
    return is_of_counts and item.claim.stability is not None and item.claim.stability < STEADY


def work_sentences(page: Page) -> list[Sentence]:
    """Work that would help: what claims ask for, what pays most, dates of doubtful finds, and what was left undone."""
    items = [r for r in readings(page, page.dig.claims.holding(page.subject)) if r.claim.question == "work"]
    is_dated = page.subject.id in page.dig.project.dated_contexts()
    asked = [r for r in items if r.claim.statement != ENOUGH and not (is_dated and r.claim.statement == DATABLE)]
    sentences = plainly_told(page, asked)
    steps = paying(page.dig.claims, page.subject)
    best = steps[:1]
    sentences += _paying(page, best)
    dates = own_dates(page.dig.claims) if page.subject.level == "site" else steps
    sentences += own_date_sentences(page, [step for step in dates if step.id == DATE_OWN])
    sentences += unmeasured_sentences(page)
    return sentences + undone_sentences(page, told={step.id for step in best if step.lifts or step.turns})


def own_date_sentences(page: Page, steps: Sequence[NextStep]) -> list[Sentence]:
    """Finds of doubtful age that should be dated by themselves, one sentence each."""
    sentences: list[Sentence] = []
    for step in steps:
        says = _said(page, step)
        wordings = (says, f"another step is to {says}") if page.is_review else (f"it would pay to {says}",)
        sentences += page.say([page.dig.record_ref(step.about)], *wordings)
    return sentences


def _said(page: Page, step: NextStep) -> str:
    return english.literal(manner.with_thousands(manner.with_dashes(step.says, page.audience), page.audience))


def undone_sentences(page: Page, *, told: Collection[str] = ()) -> list[Sentence]:
    """What the records say was left undone: what a note asks for, heavy fractions, the rest of size classes."""
    sentences: list[Sentence] = []
    classes = 0
    for left in left_undone(page.dig.project, page.subject):
        classes += left.id == SORT_CLASS
        if left.id in told or classes > 2:
            continue
        refs = [page.dig.record_ref(Subject(level="sample", id=id)) for id in left.samples]
        sentences += page.say(refs, *_undone_in_words(page, left))
    return sentences


def _undone_in_words(page: Page, left: LeftUndone) -> list[str]:
    named = [english.literal(id) for id in left.samples[:6]]
    if len(left.samples) > 6:
        named.append(page.count(len(left.samples) - 6, "other", "others"))
    ids = page.listed(named)
    if left.id == ASKED:
        return [f"the record of {ids} asks for work: “{english.literal(left.quote)}”"]
    if left.id == KEPT:
        return [f"the record of {ids} notes “{english.literal(left.quote)}”, and no result of that is on record"]
    if left.id == SORT_HEAVY:
        fractions = english.agreed(len(left.samples), "heavy fraction", "heavy fractions")
        wait = english.agreed(len(left.samples), "waits", "wait")
        return (
            [f"sort the {fractions} of {ids}"] if page.is_review else [f"the {fractions} of {ids} {wait} to be sorted"]
        )
    size_class = english.literal(manner.with_dashes(left.size_class, page.audience))
    what, done = f"the {size_class} class of {ids}", numbers.percent(left.proportion_sorted)
    if not page.is_review:
        return [f"of {what} only {done} was sorted"]
    return [
        f"sort the rest of {what}, of which {done} was looked through",
        f"only {done} of {what} was sorted: sort the rest",
    ]


def _paying(page: Page, steps: Sequence[NextStep]) -> list[Sentence]:
    """The work that serves most questions for its cost, with what it would serve."""
    sentences: list[Sentence] = []
    for step in steps:
        served = (*step.lifts, *step.turns)
        if served:
            all_of_them = f"behind {page.count(len(served), 'reading', 'readings')}" in step.says
            gain = "" if all_of_them else f" ({_gain(page, step)})"
            says = _said(page, step)
            what = f"{says}{_as_far_as_it_goes(page, step)}{gain}"
            sentences += page.say(served, what, f"the next step that pays is to {what}")
    return sentences


def _gain(page: Page, step: NextStep) -> str:
    """'three readings could then be put more firmly, and one more could be told'; one or two of them by name."""
    parts = []
    named = [claim for id in step.turns if (claim := page.dig.claims.by_id.get(id)) is not None]
    if not step.lifts and 0 < len(named) == len(step.turns) <= NAMED:
        nouns = [(page.in_own_words(page.dig.packs.statements[claim.statement].noun), claim) for claim in named]
        told = dict.fromkeys(in_word_of_season(page, noun, [claim]) for noun, claim in nouns)
        return f"{page.listed(list(told))} could then be told"
    if step.lifts:
        parts.append(f"{page.count(len(step.lifts), 'reading', 'readings')} could then be put more firmly")
    if step.turns and parts:
        parts.append(f"{page.count(len(step.turns))} more could be told")
    elif step.turns:
        parts.append(f"{page.count(len(step.turns), 'reading', 'readings')} could then be told")
    return page.listed(parts)


def _as_far_as_it_goes(page: Page, step: NextStep) -> str:
    """How much charcoal there is to identify more of, lest a few crumbs be taken for twenty fragments."""
    mass = page.measure("wood_mass")
    if step.id != "wood.identify" or mass is None or not mass.value:
        return ""
    return f", as far as its {page.figure(mass)} g of charcoal allow"


def lift_sentences(page: Page, held: Sequence[Reading]) -> list[Sentence]:
    is_told = any(step.id == "float.more" for step in paying(page.dig.claims, page.subject)[:1])
    for _, lifts, claims in shared_limits(page, held)[:1]:
        if lifts and not is_told and not openings.is_out_of_soil(page, lifts):
            if lifts.startswith("the reading of each phase"):
                held_down = page.count(len(claims), "reading", "readings")
                return page.say(claims, f"read the phases one by one: pooling them holds {held_down} down")
            whose = f" of {english.literal(page.subject.id)}" if page.subject.level == "context" else ""
            named = [reading for reading in held if reading.claim.id in claims]
            if 0 < len(named) <= openings.NAMED_AT_MOST and page.subject.level == "context":
                # Which readings they are is what whoever plans the work has to know.
                what = english.lowered(lifts)
                what = what.replace(_OF_IT, _OF_THEM) if len(named) > 1 else what
                return page.say(claims, f"{what} would let {noun_of(page, named, in_short=True)} be put more firmly")
            what = english.lowered(lifts).replace(_OF_IT, _OF_THEM)
            return page.say(claims, f"{what} would let the readings{whose} be put more firmly")
    return []


_OF_IT, _OF_THEM = "that it rests on", "that they rest on"


def none_left(page: Page, held: Sequence[Reading]) -> list[Sentence]:
    """What could still be done where no work on the samples would change a reading."""
    id = english.literal(page.subject.id)
    shaky = [r for r in held if is_shaky(r)]
    if shaky:
        least = min(shaky, key=lambda r: (r.claim.stability or 0.0, r.claim.id))
        # No record says whether soil is left in the ground, so that none is asked for.
        text = f"{noun_of(page, [least])} cannot be settled from what was floated of {id}"
        return page.say([least.claim.id, page.record], text)
    refs = [page.record, *(r.claim.id for r in held[:1])]
    why, but = _how_far_sorted(page)
    unnamed, _ = wood_left_unnamed(page)
    if unnamed and setting.items_counted(page) >= POOR:
        of = page.listed([english.literal(id) for id in unnamed])
        return page.say(
            refs, f"name the wood of {of}: none of the other work that is weighed here would change a reading{but}"
        )
    return page.say(
        refs, f"nothing more is asked of {id}: {why}none of the work that is weighed here would change a reading{but}"
    )


def _how_far_sorted(page: Page) -> tuple[str, str]:
    """
    What the records say of sorting, before and behind the work: silence is not told as 'all of it'.

    'every size class on record is sorted, and ' and ', though how far S021 was sorted is not on record'.
    """
    samples = samples_of(page.dig.project, page.subject)
    silent = [english.literal(id) for id in silent_on_sorting(samples)]
    if silent:
        were = english.agreed(len(silent), "was", "were")
        return "", f", though how far {page.listed(silent)} {were} sorted is not on record"
    finer = finer_than_classes(samples)
    if finer and not left_undone(page.dig.project, page.subject):
        why = "every size class on record is sorted, and "
        return why, f"; none below {finer[0].smallest_mm:g} mm is on record, though the mesh was finer"
    if samples and not left_undone(page.dig.project, page.subject):
        return "every size class on record is sorted, and ", ""
    return "", ""
