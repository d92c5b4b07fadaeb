"""What changed between the first phase and the last: plants by their share of samples, and like compared with like."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from narrate.model.findings import Tally
from narrate.model.ids import Subject
from narrate.model.measurement import Measurement
from narrate.model.narrative import Sentence
from narrate.model.stratigraphy import Phase
from narrate.telling import english, numbers, setting
from narrate.telling.behind import is_meant
from narrate.telling.change_for_visitors import change_for_visitors
from narrate.telling.citations import works_cited
from narrate.telling.frames import frame
from narrate.telling.page import Page
from narrate.telling.plan import Reading, reading_of
from narrate.telling.plants_changed import plant_sentences
from narrate.telling.spread import (
    Presence,
    as_cf,
    difference,
    k_of_n,
    name_of,
    of_samples,
    out_of,
    out_of_text,
    presences,
    samples_of_phase,
    unsure,
)

Pair = tuple[Presence, Presence]


def changed_groups(page: Page, first: Phase, last: Phase) -> tuple[list[Pair], list[Pair]]:
    """Groups of plants whose share of samples changed beyond chance, the greatest change first; then the others."""
    pairs = list(zip(presences(page.dig, first.id), presences(page.dig, last.id), strict=True))
    pairs = [(a, b) for a, b in pairs if a.k + b.k >= ENOUGH]
    changed = [(a, b) for a, b in pairs if _is_change(page, a, b)]
    changed.sort(key=lambda pair: -abs(pair[1].share - pair[0].share))
    return changed, [(a, b) for a, b in pairs if not _is_change(page, a, b)]


def change_sentences(page: Page, first: Phase, last: Phase) -> list[Sentence]:
    """Ubiquity of the main plant groups in the first and last phase: what changed, what did not."""
    changed, steady = changed_groups(page, first, last)
    if page.is_plain:
        found = [(a.group.id, _change_reading(page, a.group.id)) for a, _ in changed]
        read = [(group, reading) for group, reading in found if reading is not None]
        told = change_for_visitors(page, first, last, changed, steady, read)
        return told + plant_sentences(page, first, last, changed)
    sentences: list[Sentence] = []
    for i, (a, b) in enumerate(changed):
        sentences += _changed(page, a, b, first, last, is_first=i == 0)
    return (
        sentences
        + _by_context(page, changed)
        + _steady(page, steady, first, last, after_change=bool(changed))
        + plant_sentences(page, first, last)
    )


def _by_context(page: Page, changed: Sequence[Pair]) -> list[Sentence]:
    """The groups that changed counted by context: samples of one context are not independent of each other."""
    counted = [(a, b) for a, b in changed if all(1 < p.contexts[1] < p.n for p in (a, b))]
    if not counted:
        return []
    texts = []
    for i, (a, b) in enumerate(counted):
        if i == 0:
            verb = "was" if a.group.is_singular else "were"
            figures = f"{verb} in {out_of_text(*a.contexts)} and then in {out_of_text(*b.contexts)}"
        else:
            figures = f"in {_none_or(a.contexts[0])} and then in {_none_or(b.contexts[0])}"
        texts.append(f"{name_of(page, a.group)} {figures}")
    refs = [p.refs[0] for pair in counted for p in pair if p.refs]
    return page.say(
        refs,
        f"counted by context, for samples of one context are not independent of each other, {page.listed(texts)}",
    )


def _none_or(number: int) -> str:
    return numbers.count(number) if number else "none"


def elsewhere_sentences(page: Page) -> list[Sentence]:
    """How widespread a thing is here and at other digs of the region, where somebody published the same share."""
    regions = set(page.dig.packs.regions)
    sentences: list[Sentence] = []
    for known in page.dig.packs.elsewhere if not page.is_plain else ():
        if known.regions and not regions & set(known.regions):
            continue
        found = [_tallies_of(page, s.id) for s in page.dig.project.samples]
        held = [next((t for t in tallies if is_meant(known.of, t, page.dig.packs)), None) for tallies in found]
        refs = [tally.ref for tally in held if tally is not None and tally.ref]
        if len(held) < MANY or not refs:
            continue
        share = page.dig.findings.beside_others.get(known.id)
        if share is None or share.value is None:
            continue
        span = page.interval(share, scale=100)
        own = numbers.percent(share.value) + (f", 95% interval {span}%" if span else "")
        here = f"{known.name} was in {out_of_text(len(refs), len(held))} samples here ({own})"
        low, high = min(known.sites.values()), max(known.sites.values())
        place = beside_range(share, low, high)
        text = f"{here}, {place} {known.where}: there it was in {_share(low, high)} of the flotation samples"
        sentences += page.say(refs, english.in_last_brackets(text, works_cited(page, known.sources)))
    return sentences


def beside_range(share: Measurement, low: float, high: float) -> str:
    """How a share stands to the range of other digs: apart from it only where its whole interval is."""
    if share.high is not None and share.high < low:
        return "less than at"
    if share.low is not None and share.low > high:
        return "more than at"
    return "within the range of" if low <= (share.value or 0.0) <= high else "which cannot be told from the range of"


def _share(low: float, high: float) -> str:
    # The digs themselves are named by the work that is cited; here the range speaks.
    return numbers.percent(low) if low == high else f"{numbers.percent(low)} to {numbers.percent(high)}"


MANY = 10
"""Samples below which a share is not set beside those of other digs (judgement of the makers)."""


def _tallies_of(page: Page, sample: str) -> list[Tally]:
    found = page.dig.found(Subject(level="sample", id=sample))
    return [t for t in found.tallies if t.condition in page.dig.ancient] if found is not None else []


def _is_change(page: Page, a: Presence, b: Presence) -> bool:
    meant = (a.group.id, a.phase, b.phase, a.kind)
    alone = {(c.what, c.first, c.last, c.kind) for c in page.dig.findings.only_in_part}
    if min(a.n, b.n) < ENOUGH or meant in alone:
        return False
    low, high = difference(page.dig, a, b)
    return low > 0 or high < 0


def _changed(page: Page, a: Presence, b: Presence, first: Phase, last: Phase, *, is_first: bool) -> list[Sentence]:
    name = name_of(page, a.group)
    reading = _change_reading(page, a.group.id)
    refs = [*a.refs, *b.refs, *([reading.claim.id] if reading else [])]
    early, late = english.literal(first.name), english.literal(last.name)
    rises = b.share > a.share
    low, high = sorted(abs(round(x * 100)) for x in difference(page.dig, a, b))
    gap = f"{'a rise' if rises else 'a fall'} of {low} to {high} percentage points"
    way = "rose" if rises else "fell"
    framed = f", {frame(page, [reading], 'which')}" if reading else ""
    if is_first:
        return page.say(
            refs,
            f"{name} {way} from {k_of_n(page, a)} of the {early} to {k_of_n(page, b)} of the {late}, {gap} "
            f"(95% interval){framed}",
        )
    before, after = (f"{numbers.percent(one.share)}{as_cf(page, one)}" for one in (a, b))
    change = f"from {of_samples(a)} ({before}) to {out_of(b)} ({after})"
    return page.say(refs, f"{name} {way} {change}, {gap}{framed}")


def _change_reading(page: Page, group: str) -> Reading | None:
    """The reading of the dig that this change is about, if one holds; it is then told."""
    prefix = CHANGE_OF.get(group)
    if prefix is None:
        return None
    for statement in page.dig.packs.statements:
        if statement.startswith(prefix) and (reading := reading_of(page, statement)) is not None:
            page.told.add(reading.claim.id)
            return reading
    return None


CHANGE_OF = {"maize": "change.maize-", "native-crop": "change.native-seeds-", "nut": "change.nuts-"}
"""Groups of plants and the statements that speak of their change."""


def _steady(
    page: Page, pairs: Sequence[tuple[Presence, Presence]], first: Phase, last: Phase, *, after_change: bool
) -> list[Sentence]:
    if not pairs:
        return []
    refs = [ref for a, b in pairs for ref in (*a.refs, *b.refs)] or [page.record]
    shown = pairs[:4]
    texts, is_one = [f"{name_of(page, a.group)} ({out_of(a)}, then {out_of(b)})" for a, b in shown], len(shown) == 1
    return page.say(
        refs,
        f"as {'a class' if is_one else 'classes'}, {page.listed(texts)} "
        f"{'shows' if is_one and shown[0][0].group.is_singular else 'show'} no difference beyond chance"
        + ("" if after_change else f" between the {english.literal(first.name)} and the {english.literal(last.name)}"),
    )


def _of(found: Presence) -> str:
    """'four of four', 'none of four': both sides of a comparison written alike."""
    return f"{numbers.count(found.k) if found.k else 'none'} of {numbers.count(found.n)}"


ENOUGH = 3
"""Samples of a kind of context in each phase below which like is not compared with like (judgement of the makers)."""


def sampled_phases(page: Page) -> list[Phase]:
    """Phases from which samples were taken, the oldest first."""
    known = [p for p in page.dig.project.phases if samples_of_phase(page.dig, p.id)]
    return sorted(known, key=lambda p: (p.start is None, p.start or 0))


def beside_another_phase(page: Page, phase: Phase) -> list[Sentence]:
    """What sets a phase apart from the one before it, the first from the one after: plants in more or fewer samples."""
    phases = sampled_phases(page)
    if len(phases) < 2 or phase not in phases:
        return []
    place = phases.index(phase)
    other = phases[place - 1] if place else phases[1]
    pairs, _ = changed_groups(page, *((other, phase) if place else (phase, other)))
    sides = [(b, a) if place else (a, b) for a, b in pairs]
    if not sides:
        return []
    refs = [ref for own, theirs in sides for ref in (*own.refs, *theirs.refs)]
    told = []
    for i, (own, theirs) in enumerate(sides):
        of = f" of {'the' if page.is_plain else 'its'} samples" if i == 0 else ""
        more = "more" if own.share > theirs.share else "fewer"
        told.append(f"{name_of(page, own.group)} in {more}{of} ({out_of(own)}, against {out_of(theirs)})")
    name, beside = setting.phase_name(phase), setting.phase_name(other)
    if page.is_plain:
        return _beside_for_visitors(page, phase, other, [theirs for _, theirs in sides])
    return page.say(
        refs,
        f"compared with {beside}, {name} held {page.listed(told)}",
        f"set beside {beside}, {name} held {page.listed(told)}",
    )


def _beside_for_visitors(page: Page, phase: Phase, other: Phase, theirs: Sequence[Presence]) -> list[Sentence]:
    """'Some 200 years later, in the Late hamlet, corn was in 23 of 25 samples and small-seeded crops in seven.'"""
    told: list[str] = []
    for i, found in enumerate(theirs):
        verb = ("was " if found.group.is_singular else "were ") if not told else ""
        held = of_samples(found) if i == 0 else out_of(found)
        told.append(f"{name_of(page, found.group)} {verb}in {held}{unsure(page, found)}")
    gap = next((years for a, b, years in gaps_between(page) if {a.id, b.id} == {phase.id, other.id}), None)
    later = (other.start or 0) > (phase.start or 0)
    when = f"some {numbers.count(gap)} years {'later' if later else 'before'}, " if gap else ""
    own = [ref for found in theirs for ref in found.refs] or [page.record]
    return page.say(own, f"{when}in {setting.phase_name(other)}, {page.listed(told)}")


def gaps_between(page: Page) -> list[tuple[Phase, Phase, int]]:
    """Neighbouring phases with years between them from which no phase is known, and how many."""
    found = []
    for before, after in pairwise(sampled_phases(page)):
        if before.end is None or after.start is None or before.dates != after.dates or "BP" in before.dates:
            continue
        if after.start > before.end:
            found.append((before, after, after.start - before.end))
    return found
