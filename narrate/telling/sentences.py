"""Readings put into sentences: reasons, frames, rivals, doubts, and what belongs together told together."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.claims import Claim
from narrate.model.narrative import Sentence
from narrate.telling import english, numbers
from narrate.telling.behind import remains_looked_at
from narrate.telling.frames import clause_of, frame, noun_of
from narrate.telling.page import Page
from narrate.telling.plan import OF_ONE_READING, Reading, by_grade, competes, rivals_of
from narrate.telling.reasons import page_text, reasons_for, without_figures

UNSETTLED = 0.8
"""A verdict that stays in less than this share of resampled counts is told as unsettled (judgement of the makers)."""


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
        return keeping_sentences(page, keeping)
    lead = _lead_group(page, waiting)
    page.told.update(item.claim.id for item in lead)
    sentences = lead_sentences(page, lead)
    sentences += unsettled_sentences(page, lead)
    sentences += rival_sentences(page, lead[0])
    sentences += doubt_sentences(page, lead)
    rest = [item for item in waiting if item.claim.id not in page.told]
    for group in by_grade(rest):
        page.told.update(item.claim.id for item in group)
        sentences += further_sentences(page, group)
    return sentences + keeping_sentences(page, keeping)


def keeping_sentences(page: Page, items: Sequence[Reading]) -> list[Sentence]:
    """That all the plants keep, so that the deposit has no season: a caution on the seasons of gathering."""
    sentences: list[Sentence] = []
    for item in items:
        reasons = reasons_for(page, [item], most=1)
        keeps = reasons[0] if reasons else ("these plants keep for months" if page.is_plain else "all the plants keep")
        if page.is_plain:
            sentences += page.say(
                [item.claim.id],
                f"{keeps}, so they cannot tell us when they were burned",
            )
            continue
        sentences += page.say(
            [item.claim.id],
            f"since {keeps}, the season of the deposit itself stays open",
            f"{keeps}, so that the season of the deposit itself stays open",
        )
    return sentences


STORED_ONLY = "season.stored-only"


def without_seasons_told_twice(page: Page, items: Sequence[Reading]) -> list[Reading]:
    """Readings without 'more than one season' where two seasons are told by name."""
    named = [r for r in items if r.claim.question == "season" and r.claim.statement not in _SUMMED_SEASONS]
    if len(named) < 2:
        return list(items)
    page.told.update(r.claim.id for r in items if r.claim.statement == "season.more-than-one")
    return [r for r in items if r.claim.statement != "season.more-than-one"]


_SUMMED_SEASONS = ("season.more-than-one", STORED_ONLY)


SAID_OUTRIGHT = ("integrity.too-few",)
"""Statements about our own counts: nobody needs to hedge that a number is small."""


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
        if item.claim.question == "work" or item.claim.statement in SAID_OUTRIGHT:
            framed = clause
        else:
            wording = page.audience.words.get(f"state {item.claim.grade}", "it may be that {clause}")
            framed = wording.replace("{clause}", clause)
        reasons = reasons_for(page, [item], most=1)
        because = f", because {reasons[0]}" if reasons and not page.is_plain else ""
        also = f", since {reasons[0]}" if reasons and not page.is_plain else ""
        if reasons and len(set(reasons[0].split()) & set(clause.split())) > 6:
            # The reason says the same with its figures.
            framed, because, also = reasons[0], "", ""
        sentences += page.say([item.claim.id], f"{framed}{because}", f"{framed}{also}")
    return sentences


def lead_sentences(page: Page, group: Sequence[Reading]) -> list[Sentence]:
    """The leading reading with its reasons, in one of three builds that turn with the page's position."""
    refs = [item.claim.id for item in group]
    reasons = reasons_for(page, group, most=min(3, max(2, len(group))))
    against = [page_text(page, a) for item in group for a in item.claim.held("against")][:1]
    builds = [_because, _which, _this] if not page.is_plain else [_clause_because, _this, _clause_then_reason]
    turn = (page.position + len(page.said)) % len(builds)
    for build in builds[turn:] + builds[:turn]:
        texts = build(page, group, reasons)
        if texts and not any(page.worn(text) for text in texts):
            break
    else:
        texts = _because(page, group, reasons) or _clause_then_reason(page, group, reasons)
    sentences = [sentence for text in texts for sentence in page.say(refs, text)]
    if against:
        sentences += _against(page, refs, against[0])
    return sentences


def further_sentences(page: Page, group: Sequence[Reading]) -> list[Sentence]:
    """More readings of one grade, gathered in one sentence, each reason given briefly."""
    refs = [item.claim.id for item in group]
    also = frame(page, group, "also") or frame(page, group, "lead")
    if not also:
        return []
    reasons = reasons_for(page, group, most=2)
    if page.is_plain:
        if reasons and (page.worn(reasons[0]) or (page.position + len(page.said)) % 2):
            return page.say(refs, f"{also}, because {reasons[0]}")
        return page.say(refs, also) + [s for reason in reasons[:1] for s in page.say(refs, reason)]
    if not reasons:
        return page.say(refs, also) + _rivals_within(page, group)
    joined = english.clauses_joined(reasons, oxford=page.names.has_oxford)
    return page.say(refs, f"{also}, since {joined}", f"{also}: {joined}") + _rivals_within(page, group)


def _rivals_within(page: Page, group: Sequence[Reading]) -> list[Sentence]:
    """Says of two readings in one sentence that they are rival accounts of the same remains, where they are."""
    if page.is_plain:
        return []
    for i, one in enumerate(group):
        for other in group[i + 1 :]:
            if other.claim.statement in one.statement.rivals and competes(one, other):
                pair = f"{noun_of(page, [one])} and {noun_of(page, [other])}"
                return page.say([one.claim.id, other.claim.id], f"{pair} are rival accounts of the same remains")
    return []


def rival_sentences(page: Page, lead: Reading) -> list[Sentence]:
    """The rival of a reading: side by side where both hold, named where it is the chief doubt."""
    holding = rivals_of(page, lead)
    if holding:
        rival = holding[0]
        page.told.add(rival.claim.id)
        return _side_by_side(page, lead, rival)
    if page.is_plain or lead.rank < 2:
        return []
    for name in lead.claim.alternatives:
        statement = page.dig.packs.statements.get(name)
        claim = page.dig.claims.find(page.subject, name)
        if statement is None or claim is None or claim.verdict == "holds" or claim.id in page.told:
            continue
        if not _is_doubt(page, lead, claim):
            continue
        page.told.add(claim.id)
        refs = [lead.claim.id, claim.id]
        if claim.verdict == "cannot tell":
            return page.say(
                refs,
                f"whether {statement.clause} instead, or as well, cannot be told from these counts",
                f"the counts leave open whether {statement.clause} as well",
            )
        reason = page_text(page, claim.held("for")[0])
        return page.say(refs, f"for the alternative, {statement.noun}, speaks only that {reason}")
    return []


def _is_doubt(page: Page, lead: Reading, claim: Claim) -> bool:
    """
    Whether a rival that does not hold is worth a word: it explains the same remains, and something speaks for it or
    nothing could be said of it.
    """
    behind = remains_looked_at(claim, page.dig.packs, page.found.tallies)
    same = {(t.taxon, t.part) for t in behind} & {(t.taxon, t.part) for t in lead.behind}
    if not same and (behind or lead.behind):
        return False
    return claim.verdict == "cannot tell" or bool(claim.held("for"))


def doubt_sentences(page: Page, group: Sequence[Reading]) -> list[Sentence]:
    """What may mislead in the leading reading: the caution of the rule that weighs most for it."""
    lead = group[0].claim
    if page.is_plain or group[0].rank < 3:
        return []
    rules = [page.dig.packs.rules.get(argument.rule) for argument in lead.held("for")]
    cautions = [text for rule in rules if rule is not None for text in rule.misleads_when] or list(lead.misleads_when)
    if not cautions:
        return []
    caution = english.lowered(cautions[0].strip().rstrip("."))
    if page.is_review:
        return page.say([lead.id], f"on {noun_of(page, group[:1])}, bear in mind that {caution}")
    return page.say(
        [lead.id],
        f"it should be borne in mind that {caution}",
        f"one caution is that {caution}",
        f"this is said with the caution that {caution}",
    )


def unsettled_sentences(page: Page, group: Sequence[Reading]) -> list[Sentence]:
    """Which reading does not stand when the counts are drawn again, and which rests on uncertain names alone."""
    if page.is_plain or group[0].rank < 2:
        return []
    sentences: list[Sentence] = []
    for limit in group[0].claim.limits:
        if limit.limit.startswith(OF_ONE_READING):
            says = limit.says.split(": grade")[0].replace("behind it", "behind this")
            sentences += page.say([group[0].claim.id], f"as {says}, it goes no further than “{limit.grade}”")
    shaky = [item for item in group if item.claim.stability is not None and item.claim.stability < UNSETTLED]
    for item in sorted(shaky, key=lambda item: item.claim.stability or 0.0)[:1]:
        share = numbers.percent(item.claim.stability or 0.0)
        refs = [item.claim.id]
        if len(group) > 1:
            sentences += page.say(
                refs,
                f"of these {noun_of(page, [item])} is the least settled, upheld in {share} of the resampled counts",
            )
            continue
        sentences += page.say(
            refs,
            f"it is a close call: redrawing the counts upholds it in {share} of cases",
            f"this is not a settled reading, for redrawing the counts upholds it in {share} of cases",
            f"redrawing the counts upholds this in only {share} of cases",
        )
    return sentences


# Builds of the leading sentence


def _because(page: Page, group: Sequence[Reading], reasons: Sequence[str]) -> list[str]:
    lead = frame(page, group, "lead")
    if not lead:
        return []
    if not reasons:
        return [lead]
    return [f"{lead}, because {english.clauses_joined(reasons, oxford=page.names.has_oxford)}"]


def _which(page: Page, group: Sequence[Reading], reasons: Sequence[str]) -> list[str]:
    relative = frame(page, group, "which")
    # After a comma of the reason's own, 'which' would seem to point at its last words.
    if not relative or not reasons or any("," in reason for reason in reasons):
        return []
    return [f"{english.clauses_joined(reasons, oxford=page.names.has_oxford)}, {relative}"]


def _this(page: Page, group: Sequence[Reading], reasons: Sequence[str]) -> list[str]:
    after = frame(page, group, "this")
    if not after or not reasons:
        return []
    if page.is_plain:
        return [*reasons[:1], after]
    return [f"{english.clauses_joined(reasons, oxford=page.names.has_oxford)}; {after}"]


def _clause_then_reason(page: Page, group: Sequence[Reading], reasons: Sequence[str]) -> list[str]:
    lead = frame(page, group, "lead")
    return [lead, *reasons[:1]] if lead else []


def _clause_because(page: Page, group: Sequence[Reading], reasons: Sequence[str]) -> list[str]:
    lead = frame(page, group, "lead")
    return [f"{lead}, because {reasons[0]}"] if lead and reasons else []


def _against(page: Page, refs: Sequence[str], reason: str) -> list[Sentence]:
    if without_figures(reason) in page.reasons_told:
        return []
    page.reasons_told.add(without_figures(reason))
    if page.is_plain:
        return page.say(refs, f"but {reason}")
    return page.say(refs, f"against this, {reason}", f"on the other side, {reason}")


def _side_by_side(page: Page, lead: Reading, rival: Reading) -> list[Sentence]:
    refs = [lead.claim.id, rival.claim.id]
    reasons = reasons_for(page, [rival], most=1)
    is_weaker = any(r.statement == rival.claim.statement and r.balance == "this" for r in lead.claim.rivals)
    if page.is_plain:
        clause = clause_of(page, [rival])
        if is_weaker:
            return page.say(
                refs,
                f"it could also be that {clause}, though less speaks for that",
                f"or perhaps {clause}, but that is the weaker reading",
            )
        return page.say(
            refs,
            f"it could also be that {clause}, and the finds alone cannot settle it",
            f"or perhaps {clause}: the two leave much the same trace",
        )
    also, plainly = frame(page, [rival], "also"), frame(page, [rival], "lead")
    because = f", since {reasons[0]}" if reasons else ""
    if is_weaker:
        return page.say(
            refs,
            f"{also or plainly}{because}; of the two readings, less speaks for this one",
            f"at the same time, {plainly}{because}, though less speaks for it than for the first reading",
        )
    return page.say(
        refs,
        f"{also or plainly}{because}; the counts do not separate the two readings",
        f"at the same time, {plainly}{because}, and neither reading excludes the other",
        f"{also or plainly}{because}, and the two readings stand side by side",
    )


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
