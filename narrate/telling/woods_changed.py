"""Which woods lie in more or fewer samples of a later phase, tested as other plants are, all of them allowed for."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.findings import CHANCE
from narrate.model.ids import Subject
from narrate.model.narrative import Sentence
from narrate.model.plant_groups import PlantChange
from narrate.model.stratigraphy import Phase
from narrate.telling import english, numbers
from narrate.telling.old_finds import is_wood
from narrate.telling.page import Page

SHARES = 3
"""Woods whose share of the fragments is told."""
ALONE = 5
"""Woods told of those that differ only by their own test."""


def wood_change_sentences(page: Page, first: Phase, last: Phase) -> list[Sentence]:
    """Woods that differ beyond chance once all tested are allowed for, by samples and by context; then the others."""
    tested = [c for c in page.dig.findings.woods if (c.first, c.last) == (first.id, last.id)]
    alone = {c.what for c in page.dig.findings.only_in_part if (c.first, c.last) == (first.id, last.id)}
    tested = [c for c in tested if f"wood of {c.taxon}" not in alone]
    if page.is_plain or not tested:
        return []
    sure = [c for c in tested if c.p_holm < CHANCE]
    near = [c for c in tested if c.p < CHANCE <= c.p_holm]
    n, m = tested[0].of_samples
    of = f"of the {numbers.count(tested[0].tested)} in five samples or more whose wood was looked at ({n}, then {m})"
    refs = [ref for c in (sure or tested) for ref in c.refs] or [page.record]
    if not sure:
        told = page.say(refs, f"wood by wood, none {of} differs beyond chance")
    else:
        ways = [(way, [c for c in sure if c.rises is rises]) for rises, way in ((False, "fell"), (True, "rose"))]
        texts = [f"{page.listed(map(_samples(page), changes))} {way}" for way, changes in ways if changes]
        many = english.agreed(len(sure), "differs", "differ")
        told = page.say(refs, f"wood by wood, {numbers.count(len(sure))} {of} {many} beyond chance: {'; '.join(texts)}")
        still = [c for c in sure if c.p_contexts_holm < CHANCE]
        (_, before), (_, after) = sure[0].contexts
        lost = [c for c in sure if c not in still]
        outlast = f"{page.listed(_name(page, c) for c in still) or 'none of them'} " + english.agreed(
            max(len(still), 1), "outlasts", "outlast"
        )
        rest = f"; {page.listed(_contexts(page, c) for c in lost)} {english.agreed(len(lost), 'does', 'do')} not"
        contexts = f"{numbers.count(before)}, then {numbers.count(after)}"
        told += page.say(refs, f"by context ({contexts}) {outlast} the test{rest if lost else ''}")
    shown = near[:ALONE]
    more = f", and {numbers.count(len(near) - ALONE)} more" if len(near) > ALONE else ""
    if shown:
        listed = ", ".join(map(_samples(page), shown)) if more else page.listed(map(_samples(page), shown))
        told += page.say(
            [ref for c in shown for ref in c.refs],
            f"{listed}{more} would by {english.agreed(len(near), 'itself', 'themselves')} seem to have changed, which "
            "chance alone brings where so many are tested",
        )
    return told + _by_fragments(page, tested, first, last)


def without_timber(page: Page, contexts: Sequence[str], first: Phase, last: Phase) -> str:
    """'; without them pine is in 18 of the 19 later samples': the woods that differ, less those of buildings; or ''."""
    sure = [c for c in page.dig.findings.woods if (c.first, c.last) == (first.id, last.id) and c.p_holm < CHANCE]
    texts = []
    for place, phase in enumerate((first, last)):
        own = {c.id for c in page.dig.project.contexts if c.phase == phase.id}
        if not own & set(contexts):
            continue
        found = [
            held
            for sample in page.dig.project.samples
            if sample.context in own - set(contexts)
            and (held := page.dig.found(Subject(level="sample", id=sample.id))) is not None
            and held.samples_with_named_wood
        ]
        when = ("earlier", "later")[place]
        for i, change in enumerate(sure):
            k = sum(any(t.taxon == change.taxon and is_wood(page, t) for t in held.tallies) for held in found)
            of = f"of the {numbers.count(len(found))} {when} samples" if i == 0 else f"of {numbers.count(len(found))}"
            texts.append(f"{_name(page, change)} {'is ' if not texts else ''}in {_number(k)} {of}")
    return f"; without {english.agreed(len(contexts), 'it', 'them')} {page.listed(texts)}" if texts else ""


def _by_fragments(page: Page, tested: Sequence[PlantChange], first: Phase, last: Phase) -> list[Sentence]:
    """'Of the named fragments oak made up 38% and then 16%': the woods whose share moved most."""
    counted: list[dict[str, int]] = []
    for phase in (first, last):
        found = page.dig.found(Subject(level="phase", id=phase.id))
        own: dict[str, int] = {}
        for tally in found.tallies if found is not None else ():
            if is_wood(page, tally) and tally.condition in page.dig.ancient and tally.taxon is not None:
                own[tally.taxon] = own.get(tally.taxon, 0) + tally.counted
        counted.append(own)
    totals = [sum(own.values()) for own in counted]
    if not all(totals):
        return []
    shares = {c.taxon: tuple(own.get(c.taxon, 0) / n for own, n in zip(counted, totals, strict=True)) for c in tested}
    moved = sorted(shares, key=lambda taxon: (-abs(shares[taxon][1] - shares[taxon][0]), taxon))[:SHARES]
    texts = [
        f"{page.names.plant(taxon, taxon)} {'made up ' if i == 0 else ''}"
        f"{numbers.percent(shares[taxon][0])} and then {numbers.percent(shares[taxon][1])}"
        for i, taxon in enumerate(moved)
    ]
    figures = " and ".join(numbers.figure(n, 0) for n in totals)
    refs = [ref for c in tested if c.taxon in moved for ref in c.refs]
    return page.say(
        refs,
        f"of the identified fragments ({figures}), {page.listed(texts)}; such shares hang on how many were identified "
        "in each sample",
    )


def _samples(page: Page):  # type: ignore[no-untyped-def]
    return lambda c: f"{_name(page, c)} ({_number(c.with_it[0])}, then {_number(c.with_it[1])})"


def _contexts(page: Page, change: PlantChange) -> str:
    (a, _), (b, _) = change.contexts
    return f"{_name(page, change)} ({_number(a)}, then {_number(b)}; p {change.p_contexts:.2g} before the correction)"


def _number(number: int) -> str:
    return str(number) if number else "none"


def _name(page: Page, change: PlantChange) -> str:
    return page.names.plant(change.taxon, change.taxon)
