"""Readings put into sentences: reasons, frames, rivals, doubts, and what belongs together told together."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.narrative import Sentence
from narrate.telling.builds import added, led
from narrate.telling.frames import noun_of
from narrate.telling.fruits import MANY_KINDS
from narrate.telling.misleading import STRONGEST, doubt_sentences, figure_sentences
from narrate.telling.page import Page
from narrate.telling.plan import STORED_ONLY, TOO_FEW, Reading, by_grade
from narrate.telling.premises import premise_sentences
from narrate.telling.reasons import page_text, portions, reason_texts, reasons_for, without_figures
from narrate.telling.rivals import beside_sentences, rival_sentences, rivals_within, told_rival_sentences
from narrate.telling.unsettled import edge_sentences, unsettled_sentences


def told(page: Page, items: Sequence[Reading], *, weak: bool = True) -> list[Sentence]:
    """
    The readings of one theme as sentences: the firmest with its reasons, its rival beside it, then the rest gathered.

    weak: whether readings that the remains are only consistent with are told after firmer ones.
    """
    page.here.clear()
    keeping = [item for item in items if item.claim.statement == STORED_ONLY and item.claim.id not in page.told]
    page.told.update(item.claim.id for item in keeping)
    waiting = without_seasons_told_twice(page, [item for item in items if item.claim.id not in page.told])
    if waiting and not weak and waiting[0].rank > 1:
        waiting = [item for item in waiting if item.rank > 1]
    if not waiting:
        # Where no season is read, that there is none is news only of a deposit of which most could have told one.
        return keeping_sentences(page, [item for item in keeping if _is_most(page, item)])
    lead = _lead_group(page, waiting)
    page.told.update(item.claim.id for item in lead)
    sentences = lead_sentences(page, lead)
    sentences += figure_sentences(page, lead)
    sentences += premise_sentences(page, lead)
    is_strongest = lead[0].rank == STRONGEST
    if is_strongest:
        sentences += doubt_sentences(page, lead)
    beside = rival_sentences(page, lead[0])
    sentences += beside
    rivals = told_rival_sentences(page, lead, are_last=len(lead) == 1 and not beside)
    sentences += rivals
    if not beside and not rivals and not is_strongest:
        # A rival that was set beside the reading is its chief doubt; a caution in general words adds nothing to it.
        sentences += doubt_sentences(page, lead)
    rest = [item for item in waiting if item.claim.id not in page.told]
    for group in by_grade(rest):
        page.told.update(item.claim.id for item in group)
        sentences += further_sentences(page, group) + premise_sentences(page, group)
    is_alone = len(waiting) == 1 and len(sentences) == 1
    sentences += unsettled_sentences(page, [*lead, *(r for r in waiting if r not in lead)], is_alone=is_alone)
    sentences += edge_sentences(page, [*lead, *(r for r in waiting if r not in lead)])
    if not rivals:
        sentences += told_rival_sentences(page, [item for item in waiting if item not in lead])
    return sentences + keeping_sentences(page, keeping, is_beside=True)


def keeping_sentences(page: Page, items: Sequence[Reading], *, is_beside: bool = False) -> list[Sentence]:
    """
    That all the plants keep, so that the deposit has no season: a caution on the seasons of gathering.

    is_beside: whether such a season was told just before, so that visitors read that of the burning nothing is known.
    """
    sentences: list[Sentence] = []
    name = "keeping beside" if is_beside and "keeping beside" in page.audience.words else "keeping"
    for item in items:
        reasons = reasons_for(page, item, most=1)
        keeps = reasons[0] if reasons else ("these plants keep for months" if page.is_plain else "all the plants keep")
        sentences += page.say([item.claim.id], *page.turns(name, keeps=keeps))
    return sentences


def _is_most(page: Page, item: Reading) -> bool:
    items = page.measure("items")
    told = sum(t.counted for t in item.behind)
    return page.is_plain or items is None or not items.value or told * 2 >= items.value


def without_seasons_told_twice(page: Page, items: Sequence[Reading]) -> list[Reading]:
    """Readings without 'more than one season' where two seasons are told by name."""
    named = [r for r in items if r.claim.question == "season" and r.claim.statement not in _SUMMED_SEASONS]
    summed = [r for r in items if r.claim.statement == "season.more-than-one"]
    if summed and summed[0].rank > 1 and all(r.rank < 2 for r in named):
        # Plants of two seasons name the autumn among them.
        page.aside.update(r.claim.id for r in named)
        return [r for r in items if r not in named]
    if len(named) < 2:
        return list(items)
    page.told.update(r.claim.id for r in items if r.claim.statement == "season.more-than-one")
    return [r for r in items if r.claim.statement != "season.more-than-one"]


_SUMMED_SEASONS = ("season.more-than-one", STORED_ONLY)

SAID_OUTRIGHT = (TOO_FEW,)
"""Statements about our own counts: nobody needs to hedge that a number is small."""


SHOWN = 3
"""Finds that one clause names with their numbers: fewer than these."""


def plainly_told(page: Page, items: Sequence[Reading]) -> list[Sentence]:
    """
    Readings about the deposit's state or about work, each as a clause of its own with its reason.

    Frames for interpretations fit them badly: nobody 'supports a count too small'.
    """
    sentences: list[Sentence] = []
    for item in items:
        if item.claim.id in page.told:
            continue
        page.told.add(item.claim.id)
        clause = item.statement.plain if page.is_plain else item.statement.clause
        plants = list(dict.fromkeys(page.names.food(t.taxon, t.written) for t in item.behind if t.taxon is not None))
        if page.is_plain and 0 < len(plants) < 3:
            # 'The wheat got into the soil in later times', where the plants that are meant are one or two.
            found = [page.names.remains(t, latin=False) for t in item.behind if t.taxon is not None and t.counted]
            told = f"the {page.listed(found if len(found) < SHOWN else plants)} we found here"
            clause = clause.replace("some of these plants", told)
        if item.claim.question == "work" or item.claim.statement in SAID_OUTRIGHT:
            framed = clause
        else:
            wording = page.audience.words.get(f"state {item.claim.grade}", "it may be that {clause}")
            framed = wording.replace("{clause}", clause)
        by_record = item.claim.held("for") if not reason_texts(page, item) else ()
        if by_record:
            # What only the record says is told as what it says.
            clause = framed = page_text(page, by_record[0])
        is_counted_before = item.claim.statement == TOO_FEW
        reasons = reasons_for(page, item, most=1) if not is_counted_before else []
        because = f", because {reasons[0]}" if reasons and not page.is_plain else ""
        also = f", since {reasons[0]}" if reasons and not page.is_plain else ""
        if reasons and len(set(reasons[0].split()) & set(clause.split())) > 6:
            # The reason says the same with its figures.
            framed, because, also = reasons[0], "", ""
        if page.is_plain and any(a.rule == "integrity.later_plants_charred" for a in item.claim.held("for")):
            because = also = f", since {plants[0] if len(plants) == 1 else 'they'} came from overseas later"
        sentences += page.say([item.claim.id], f"{framed}{because}", f"{framed}{also}")
    return sentences


def lead_sentences(page: Page, group: Sequence[Reading]) -> list[Sentence]:
    """The leading readings with their reasons, in one of three builds that turn with the page's position."""
    sentences: list[Sentence] = []
    for i, (items, reasons) in enumerate(portions(page, group, at_most=1 if page.is_plain else 3)):
        sentences += led(page, items, reasons) if i == 0 else added(page, items, reasons)
        sentences += _many_seeds_of_one_fruit(page, items) if page.is_plain else []
        against = [(item, page_text(page, a)) for item in items for a in item.claim.held("against")][:1]
        if against:
            sentences += _against(page, *against[0], is_one_of_many=len(items) > 1)
    return sentences


def further_sentences(page: Page, group: Sequence[Reading]) -> list[Sentence]:
    """More readings of one grade, gathered as far as their reasons allow."""
    sentences: list[Sentence] = []
    for items, reasons in portions(page, group, at_most=1 if page.is_plain else 2):
        sentences += added(page, items, reasons)
        sentences += beside_sentences(page, items[:1]) if page.is_plain else []
    return sentences + rivals_within(page, group)


def _many_seeds_of_one_fruit(page: Page, group: Sequence[Reading]) -> list[Sentence]:
    """For visitors: where many seeds speak for fruit, that one fruit holds many."""
    of = [r for r in group if any(a.rule == MANY_KINDS for a in r.claim.held("for"))]
    return page.say([of[0].claim.id], "but one fruit can hold hundreds of seeds") if of else []


def _against(page: Page, item: Reading, reason: str, *, is_one_of_many: bool) -> list[Sentence]:
    if without_figures(reason) in page.reasons_told:
        return []
    page.reasons_told.add(without_figures(reason))
    refs = [item.claim.id]
    if page.is_plain:
        return page.say(refs, f"but {reason}")
    this = noun_of(page, [item]) if is_one_of_many else "this"
    return page.say(refs, f"against {this}, {reason}", f"on the other side, {reason}" if not is_one_of_many else "")


def _lead_group(page: Page, items: Sequence[Reading]) -> list[Reading]:
    """The firmest reading; for foods all of its grade together."""
    lead = items[0]
    alike = [item for item in items if item.claim.grade == lead.claim.grade]
    if lead.is_food:
        return in_pack_order(page, [item for item in alike if item.is_food])
    if lead.claim.question == "season":
        return in_pack_order(page, [item for item in alike if item.claim.question == "season"])
    return [lead]


def in_pack_order(page: Page, items: Sequence[Reading]) -> list[Reading]:
    """Readings in the order in which the pack states them: seasons from spring to winter."""
    place = {statement: i for i, statement in enumerate(page.dig.packs.statements)}
    return sorted(items, key=lambda item: place[item.claim.statement])
