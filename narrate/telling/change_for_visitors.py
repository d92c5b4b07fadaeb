"""What changed between the first phase and the last, told to visitors: what came, what went, and how sure it is."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.findings import CHANCE
from narrate.model.narrative import Sentence
from narrate.model.plant_groups import PlantChange
from narrate.model.stratigraphy import Phase
from narrate.telling import english
from narrate.telling.frames import frame
from narrate.telling.page import Page
from narrate.telling.plan import Reading
from narrate.telling.spread import Presence, name_of, of_samples, out_of, out_of_text, unsure

Pair = tuple[Presence, Presence]

COMMON, RARE = 0.5, 1 / 3
"""Shares of samples from which a group is common, and up to which it is rare (judgement of the makers)."""


def change_for_visitors(
    page: Page,
    first: Phase,
    last: Phase,
    changed: Sequence[Pair],
    steady: Sequence[Pair],
    read: Sequence[tuple[str, Reading]],
) -> list[Sentence]:
    """
    The story of a change in a few sentences, the greatest first.

    read: groups, and readings of the dig that say that they changed.
    """
    ordered = sorted(changed, key=lambda pair: pair[1].share < pair[0].share)  # what came goes before what went
    sentences = _headline(page, ordered) + _figures(page, ordered, first, last)
    place = {a.group.id: i for i, (a, _) in enumerate(ordered)}
    for alike in _by_grade(sorted(read, key=lambda r: place.get(r[0], 0))):
        said = frame(page, alike, "so") or frame(page, alike, "lead")
        sentences += page.say([r.claim.id for r in alike], said)
    return sentences + _by_place(page, ordered) + _steady(page, steady)


def _headline(page: Page, changed: Sequence[Pair]) -> list[Sentence]:
    """'Among the burned plants, corn became common and small-seeded crops grew rare.'"""
    texts = [f"{name_of(page, a.group)} {_way(a, b)}" for a, b in changed]
    refs = [ref for pair in changed for p in pair for ref in p.refs[:1]] or [page.record]
    among = "among the burned plants" if page.dig.project.preservation == "charred" else "among our finds"
    return page.say(refs, f"{among}, {page.listed(texts)}") if texts else []


def _way(before: Presence, after: Presence) -> str:
    if after.share > before.share:
        return "became common" if after.share >= COMMON > before.share else "spread"
    return "grew rare" if after.share <= RARE < before.share else "thinned out"


def _figures(page: Page, changed: Sequence[Pair], first: Phase, last: Phase) -> list[Sentence]:
    """'In the Early hamlet six of 23 samples held corn; in the Late hamlet 23 of 25 did.'"""
    early, late = english.literal(first.name), english.literal(last.name)
    sentences: list[Sentence] = []
    for i, (a, b) in enumerate(changed):
        name, refs = name_of(page, a.group), [*a.refs, *b.refs] or [page.record]
        before = changed[i - 1] if i else None
        was, then = unsure(page, a), unsure(page, b)
        turns = before is not None and (b.share > a.share) != (before[1].share > before[0].share)
        way = "went the other way" if turns else "went the same way"
        sentences += page.say(
            refs,
            f"{name} {way}, from {of_samples(a)}{was} to {out_of(b)}{then}"
            if i
            else f"in the {early}, {of_samples(a)} held {name}{was}; in the {late}, {out_of(b)} did{then}",
        )
    return sentences


def _by_grade(read: Sequence[tuple[str, Reading]]) -> list[list[Reading]]:
    groups: dict[str, list[Reading]] = {}
    for _, reading in read:
        groups.setdefault(reading.claim.grade, []).append(reading)
    return sorted(groups.values(), key=lambda group: -group[0].rank)


def _by_place(page: Page, changed: Sequence[Pair]) -> list[Sentence]:
    """The groups that changed counted by place: samples of one place are not independent of each other."""
    counted = [(a, b) for a, b in changed if all(1 < p.contexts[1] < p.n for p in (a, b))]
    texts: list[str] = []
    for a, b in counted:
        verb = ("was " if a.group.is_singular else "were ") if not texts else ""
        texts.append(
            f"{name_of(page, a.group)} {verb}in {out_of_text(*a.contexts)} and then in {out_of_text(*b.contexts)}"
        )
    refs = [p.refs[0] for pair in counted for p in pair if p.refs]
    told = ", and ".join(texts) if len(texts) < 3 else page.listed(texts)
    return page.say(refs, f"counted by the places we dug, {told}") if texts and refs else []


def _steady(page: Page, pairs: Sequence[Pair]) -> list[Sentence]:
    refs = [ref for a, b in pairs for ref in (*a.refs, *b.refs)] or [page.record]
    plants = page.listed([name_of(page, a.group) for a, _ in pairs[:4]])
    return page.say(refs, f"for {plants} as a whole we see no clear change") if pairs else []


def plants_for_visitors(page: Page, tested: Sequence[PlantChange], told: Sequence[Pair]) -> list[Sentence]:
    """
    Single plants in more or in fewer samples than before, and which of them hang on a single place.

    told: groups that were told; a plant that is a group by itself is not told again.
    """
    named = {a.group.of.taxon for a, _ in told}
    sure = [c for c in tested if c.p_holm < CHANCE and (c.taxon,) not in named]
    sentences: list[Sentence] = []
    for way, of_way in (("fewer", [c for c in sure if not c.rises]), ("more", [c for c in sure if c.rises])):
        firm, near = [c for c in of_way if not c.hangs_on], [c for c in of_way if c.hangs_on]
        for i in range(0, len(firm), TOGETHER):
            some = firm[i : i + TOGETHER]
            did = "did so too" if i else f"turned up in {way} samples than before"
            sentences += page.say(_refs(some), f"{_names(page, some)} {did}{_from_to(some)}")
        if near:
            so = f"so did {_names(page, near)}" if firm else f"{_names(page, near)} turned up in {way} samples"
            sentences += page.say(_refs(near), f"{so}, but only just: {_undone(near)}")
    return sentences


TOGETHER = 2
"""Plants that one sentence names, so that it has room to say what each of them is."""


def _from_to(some: Sequence[PlantChange]) -> str:
    """', from none of 23 to 14 of 25': the samples of a plant that is told by itself."""
    if len(some) != 1:
        return ""
    (before, after), (first, last) = some[0].with_it, some[0].of_samples
    return f", from {out_of_text(before, first)} to {out_of_text(after, last)}"


def _undone(near: Sequence[PlantChange]) -> str:
    """On how few places a change hangs: 'without some single places we could not say it'."""
    fewest = min(len(change.hangs_on) for change in near)
    return f"without {'one place' if fewest == 1 else 'some single places'} we could not say it"


def _names(page: Page, changes: Sequence[PlantChange]) -> str:
    return page.listed(page.names.food(change.taxon) for change in changes)


def _refs(changes: Sequence[PlantChange]) -> list[str]:
    return [ref for change in changes for ref in change.refs]
