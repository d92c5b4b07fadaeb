"""Readings put into sentences: reasons, frames, rivals, doubts, and what belongs together told together."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.claims import Claim
from narrate.model.narrative import Sentence
from narrate.telling import english, numbers
from narrate.telling.behind import remains_looked_at
from narrate.telling.citations import cited
from narrate.telling.frames import clause_of, frame, noun_of
from narrate.telling.page import Page
from narrate.telling.plan import TOO_FEW, Reading, by_grade, competes, reading_whether_told, rivals_of
from narrate.telling.reasons import page_text, portions, reason_texts, reasons_for, without_figures

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
    sentences += unsettled_sentences(page, [item for item in waiting if item not in lead])
    sentences += told_rival_sentences(page, waiting)
    return sentences + keeping_sentences(page, keeping)


def keeping_sentences(page: Page, items: Sequence[Reading]) -> list[Sentence]:
    """That all the plants keep, so that the deposit has no season: a caution on the seasons of gathering."""
    sentences: list[Sentence] = []
    for item in items:
        reasons = reasons_for(page, item, most=1)
        keeps = reasons[0] if reasons else ("these plants keep for months" if page.is_plain else "all the plants keep")
        sentences += page.say([item.claim.id], *page.turns("keeping", keeps=keeps))
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


SAID_OUTRIGHT = (TOO_FEW,)
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
        sentences += page.say([item.claim.id], f"{framed}{because}", f"{framed}{also}")
    return sentences


def lead_sentences(page: Page, group: Sequence[Reading]) -> list[Sentence]:
    """The leading readings with their reasons, in one of three builds that turn with the page's position."""
    sentences: list[Sentence] = []
    for i, (items, reasons) in enumerate(portions(page, group, at_most=1 if page.is_plain else 3)):
        sentences += _led(page, items, reasons) if i == 0 else _added(page, items, reasons)
        against = [(item, page_text(page, a)) for item in items for a in item.claim.held("against")][:1]
        if against:
            sentences += _against(page, *against[0], is_one_of_many=len(items) > 1)
    return sentences


def _led(page: Page, items: Sequence[Reading], reasons: Sequence[str]) -> list[Sentence]:
    refs = [item.claim.id for item in items]
    builds = [_because, _which, _this] if not page.is_plain else [_clause_because, _this, _clause_then_reason]
    turn = (page.position + len(page.said)) % len(builds)
    for build in builds[turn:] + builds[:turn]:
        texts = build(page, items, reasons)
        if texts and not any(page.worn(text) for text in texts):
            break
    else:
        texts = _because(page, items, reasons) or _clause_then_reason(page, items, reasons)
    behind = cited(page, items, reasons)
    texts = [*texts[:-1], english.in_last_brackets(texts[-1], behind)]
    return [sentence for text in texts for sentence in page.say(refs, text)]


def further_sentences(page: Page, group: Sequence[Reading]) -> list[Sentence]:
    """More readings of one grade, gathered as far as their reasons allow."""
    sentences: list[Sentence] = []
    for items, reasons in portions(page, group, at_most=1 if page.is_plain else 2):
        sentences += _added(page, items, reasons)
    return sentences + _rivals_within(page, group)


def _added(page: Page, items: Sequence[Reading], reasons: Sequence[str]) -> list[Sentence]:
    """Readings that follow others, with their reasons."""
    refs = [item.claim.id for item in items]
    also = frame(page, items, "also") or frame(page, items, "lead")
    if not also:
        return []
    if not reasons:
        return page.say(refs, also)
    joined = english.clauses_joined(reasons, oxford=page.names.has_oxford)
    if page.is_plain:
        if page.worn(joined) or (page.position + len(page.said)) % 2:
            return page.say(refs, f"{also}, because {joined}")
        return page.say(refs, also) + page.say(refs, joined)
    joined = english.in_last_brackets(joined, cited(page, items, reasons))
    return page.say(refs, f"{also}, since {joined}", f"{also}: {joined}", f"{also}, as {joined}")


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


def told_rival_sentences(page: Page, items: Sequence[Reading]) -> list[Sentence]:
    """That a reading explains the same remains as a rival that was told under another theme of the page."""
    if page.is_plain:
        return []
    here = {item.claim.id for item in items}
    for item in items:
        for rival in item.claim.rivals:
            claim = page.dig.claims.by_id.get(rival.claim)
            if claim is None or claim.verdict != "holds" or rival.claim in here or rival.claim not in page.told:
                continue
            other = reading_whether_told(page, claim)
            pair = frozenset((item.claim.id, rival.claim))
            if other is not None and pair not in page.rivals and competes(item, other):
                page.rivals.add(pair)
                one = noun_of(page, [item])
                return page.say(
                    [item.claim.id, rival.claim],
                    f"{one} has a rival in {noun_of(page, [other])}, which explains the same remains",
                )
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
    own = [rule.misleads_when for rule in rules if rule is not None and rule.misleads_when]
    cautions = own[0] if own else lead.misleads_when
    if not cautions:
        return []
    caution = english.lowered(cautions[page.position % len(cautions)].strip().rstrip("."))
    return page.say([lead.id], *page.turns("caution", caution=caution, noun=noun_of(page, group[:1])))


def unsettled_sentences(page: Page, items: Sequence[Reading], *, by_name: bool = False) -> list[Sentence]:
    """
    Which readings do not stand when the counts are drawn again, and which rest on uncertain names alone.

    by_name: the readings were not told just before, so that 'this' would point elsewhere.
    """
    by_name = by_name or len(items) > 1
    sentences: list[Sentence] = []
    for item in items:
        for limit in item.claim.limits:
            if limit.limit.startswith("names.") and not page.is_plain:
                says = limit.says.split(": grade")[0].replace("behind it", "behind this")
                what = noun_of(page, [item]) if by_name else "it"
                sentences += page.say([item.claim.id], f"as {says}, {what} goes no further than “{limit.grade}”")
    shaky = [item for item in items if item.claim.stability is not None and item.claim.stability < UNSETTLED]
    shaky.sort(key=lambda item: (item.claim.stability or 0.0, item.claim.id))
    if shaky:
        doubted = _shaky_for_visitors if page.is_plain else _shaky
        sentences += doubted(page, shaky, by_name=by_name)
    return sentences


def _shaky_for_visitors(page: Page, shaky: Sequence[Reading], *, by_name: bool) -> list[Sentence]:
    refs = [item.claim.id for item in shaky]
    short = page.fresh(*page.turns("close"))
    if not by_name and short:
        page.doubts += 1
        return page.say(refs, short[(page.position + page.doubts) % len(short)])
    nouns = noun_of(page, shaky)
    return page.say(
        refs,
        f"a few finds more or less would change what we say of {nouns}",
        f"we are not sure of {nouns}: a few finds more could change that",
    )


def _shaky(page: Page, shaky: Sequence[Reading], *, by_name: bool) -> list[Sentence]:
    refs = [item.claim.id for item in shaky]
    share = numbers.percent(shaky[0].claim.stability or 0.0)
    short = page.fresh(*page.turns("close", share=share))
    if not by_name and short:
        page.doubts += 1
        return page.say(refs, short[(page.position + page.doubts) % len(short)])
    texts = [f"{noun_of(page, [item])} in {numbers.percent(item.claim.stability or 0.0)}" for item in shaky]
    return page.say(
        refs,
        f"when the counts are redrawn, they uphold {page.listed(texts)} of cases",
        f"redrawing the counts upholds {page.listed(texts)} of cases only",
    )


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


def _against(page: Page, item: Reading, reason: str, *, is_one_of_many: bool) -> list[Sentence]:
    if without_figures(reason) in page.reasons_told:
        return []
    page.reasons_told.add(without_figures(reason))
    refs = [item.claim.id]
    if page.is_plain:
        return page.say(refs, f"but {reason}")
    this = noun_of(page, [item]) if is_one_of_many else "this"
    return page.say(refs, f"against {this}, {reason}", f"on the other side, {reason}" if not is_one_of_many else "")


def _side_by_side(page: Page, lead: Reading, rival: Reading) -> list[Sentence]:
    refs = [lead.claim.id, rival.claim.id]
    page.rivals.add(frozenset(refs))
    is_weaker = any(r.statement == rival.claim.statement and r.balance == "this" for r in lead.claim.rivals)
    if page.is_plain:
        clause = clause_of(page, [rival])
        if is_weaker:
            return page.say(
                refs,
                f"it could also be that {clause}, though less speaks for that",
                f"or perhaps {clause}, but that is the weaker reading",
                f"less likely, but not ruled out, is that {clause}",
            )
        return page.say(
            refs,
            f"it could also be that {clause}, and the finds alone cannot settle it",
            f"or perhaps {clause}: the two leave much the same trace",
            f"just as well it may be that {clause}, for both look the same in the ground",
        )
    reasons = reasons_for(page, rival, most=1)
    sentences = _added(page, [rival], reasons)
    one, other = noun_of(page, [lead]), noun_of(page, [rival])
    pair = f"{one} and {other}" if " and " not in f"{one}{other}" else f"{one}, and {other}"
    if is_weaker:
        return sentences + page.say(
            refs,
            f"of the two rival readings, {pair}, less speaks for the second",
            f"less speaks for {other} than for {one}",
        )
    return sentences + page.say(
        refs,
        f"the counts do not decide between {pair}",
        f"{pair} are rival readings, and the counts do not choose",
        f"between {pair} these counts do not choose",
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
