"""Which woods lie in more or fewer samples of a later phase, tested as other plants are, all of them allowed for."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial

from narrate.model.findings import CHANCE
from narrate.model.ids import Subject
from narrate.model.narrative import Sentence
from narrate.model.plant_groups import PlantChange
from narrate.model.stratigraphy import Phase
from narrate.telling import english, numbers
from narrate.telling.changes_listed import listed_figures, near_sentences, probability, so_many
from narrate.telling.old_finds import is_wood
from narrate.telling.page import Page

SHARES = 3
"""Woods whose share of the fragments is told."""


def wood_change_sentences(page: Page, first: Phase, last: Phase) -> list[Sentence]:
    """Woods that differ beyond chance once all tested are allowed for, by samples and by context; then the others."""
    tested = [c for c in page.dig.findings.woods if (c.first, c.last) == (first.id, last.id)]
    alone = {c.what for c in page.dig.findings.only_in_part if (c.first, c.last) == (first.id, last.id)}
    tested = [c for c in tested if f"wood of {c.taxon}" not in alone]
    if page.is_plain or not tested:
        return []
    sure = [c for c in tested if c.p_holm < CHANCE]
    n, m = tested[0].of_samples
    of = f"of the {numbers.count(tested[0].tested)} in five samples or more whose wood was looked at ({n}, then {m})"
    refs = [ref for c in (sure or tested) for ref in c.refs] or [page.record]
    name = partial(_name, page)
    if not sure:
        told = page.say(refs, f"wood by wood, none {of} differs beyond chance")
    else:
        ways = [(way, [c for c in sure if c.rises is rises]) for rises, way in ((False, "fell"), (True, "rose"))]
        texts = [f"{listed_figures(page, changes, name)} {way}" for way, changes in ways if changes]
        many = english.agreed(len(sure), "differs", "differ")
        told = page.say(refs, f"wood by wood, {numbers.count(len(sure))} {of} {many} beyond chance: {'; '.join(texts)}")
    told += _by_context(page, tested, sure) + near_sentences(page, tested, sure, name)
    return told + _by_fragments(page, tested, first, last)


def _by_context(page: Page, tested: Sequence[PlantChange], sure: Sequence[PlantChange]) -> list[Sentence]:
    """
    Which woods outlast the same test with contexts in the place of samples; all that were tested are asked.

    A wood in many contexts once in each differs by context, and by sample may fall short.
    """
    still = sorted((c for c in tested if c.p_contexts_holm < CHANCE), key=lambda c: (c.p_contexts, c.taxon))
    lost = [c for c in sure if c not in still]
    if not (still or lost):
        return []
    (_, before), (_, after) = tested[0].contexts
    held = listed_figures(page, still, partial(_name, page), by="contexts") or "none of them"
    remain = english.agreed(max(len(still), 1), "remains", "remain")
    rest = f", and {page.listed(_contexts(page, c) for c in lost)} {english.agreed(len(lost), 'does', 'do')} not"
    refs = [ref for c in (*still, *lost) for ref in c.refs]
    contexts = f"{numbers.count(before)}, then {numbers.count(after)}"
    return page.say(refs, f"by context ({contexts}) {held} {remain} significant{rest if lost else ''}")


def without_timber(page: Page, contexts: Sequence[str], first: Phase, last: Phase) -> str:
    """'; without them pine is in 18 of the 19 later samples': the woods that differ, less those of buildings; or ''."""
    sure = [c for c in page.dig.findings.woods if (c.first, c.last) == (first.id, last.id) and c.p_holm < CHANCE]
    texts = list[str]()
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
            texts.append(f"{_name(page, change)} {'is ' if not texts else ''}in {so_many(k)} {of}")
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


def _contexts(page: Page, change: PlantChange) -> str:
    (a, _), (b, _) = change.contexts
    figures = f"{so_many(a)}, then {so_many(b)}; p {probability(change.p_contexts)} before the correction"
    return f"{_name(page, change)} ({figures})"


def _name(page: Page, change: PlantChange) -> str:
    return page.names.plant(change.taxon, change.taxon)
