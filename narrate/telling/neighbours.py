"""How a context compares with its like: density, what is found nowhere else, kernels against cupules."""

from __future__ import annotations

import statistics
from collections.abc import Sequence

from narrate.model.findings import Tally
from narrate.model.ids import Subject
from narrate.model.narrative import Sentence
from narrate.model.stratigraphy import Context
from narrate.telling import english, numbers, setting
from narrate.telling.page import Page

ENOUGH_CONTEXTS = 4
"""Fewer contexts than this are not spoken of as a whole (judgement of the makers)."""


def compared_sentences(page: Page, context: Context) -> list[Sentence]:
    """What sets the context apart from its neighbours; at most two sentences."""
    sentences = _density(page, context) + _found_only_here(page) + _kernels(page, context)
    return sentences[:2]


def contexts_alike(page: Page, *, kind: str | None = None) -> list[Subject]:
    """Contexts with remains, of one kind if one is named."""
    wanted = [c for c in page.dig.project.contexts if kind is None or c.kind == kind]
    subjects = [Subject(level="context", id=c.id) for c in wanted]
    return [s for s in subjects if (found := page.dig.found(s)) is not None and found.samples_with_remains]


def _value(page: Page, subject: Subject, name: str) -> float | None:
    found = page.dig.found(subject)
    measurement = found.measurements.get(name) if found else None
    return measurement.value if measurement is not None else None


def _density(page: Page, context: Context) -> list[Sentence]:
    own = page.measure("density")
    known = [(s, v) for s in contexts_alike(page) if (v := _value(page, s, "density")) is not None]
    if own is None or not own.value or len(known) < ENOUGH_CONTEXTS or setting.items_counted(page) < setting.FEW_ITEMS:
        return []
    values = [value for _, value in known]
    median = statistics.median(values)
    n = len(values)
    refs = [page.ref("density"), *(page.dig.measure_ref(s, "density") for s, _ in known)]
    many = page.count(n)
    middle = numbers.figure(median, 1 if median < 10 else 0)
    if own.value >= max(values):
        if page.is_plain:
            return page.say(refs, "no other place on the dig gave so many plants for each litre of soil",
                            "litre for litre, this is the richest soil we washed")  # fmt: skip
        return page.say(
            refs,
            f"of the {many} contexts with remains this is the richest per litre (median {middle})",
            f"no other of the {many} contexts with remains is as rich per litre; their median is {middle}",
        )
    if median and own.value >= 3 * median:
        factor = page.count(round(own.value / median))
        if page.is_plain:
            return page.say(
                refs, "few places on the dig are as rich as this one", "this is one of the rich places on the dig"
            )
        return page.say(
            refs,
            f"litre for litre it holds some {factor} times the median of the {many} contexts with remains ({middle})",
            f"against a median of {middle} items per litre in the {many} contexts with remains, it is rich",
        )
    if median and own.value <= median / 3 and not page.is_plain:
        return page.say(
            refs,
            f"with {page.figure(own)} items per litre it lies well below the median of the {many} contexts "
            f"with remains ({middle} per litre)",
            f"against a median of {middle} items per litre in the {many} contexts with remains, it is poor",
        )
    return []


def _found_only_here(page: Page) -> list[Sentence]:
    everywhere = contexts_alike(page)
    if len(everywhere) < ENOUGH_CONTEXTS:
        return []
    elsewhere = {
        _genus(page, tally)
        for subject in everywhere
        if subject != page.subject and (found := page.dig.found(subject))
        for tally in found.tallies
        if tally.condition in page.dig.ancient and tally.taxon is not None
    }
    # By genus: 'knotweed, species unknown' is no find of its own where erect knotweed is found elsewhere.
    only = [t for t in _named(page) if _genus(page, t) not in elsewhere]
    unique: dict[str, Tally] = {}
    for tally in only:
        unique.setdefault(str(tally.taxon), tally)
    if not unique or len(unique) > 3:
        return []
    names = [_as_found(page, tally) for tally in unique.values()]
    refs = [tally.ref for tally in unique.values() if tally.ref]
    if not refs:
        return []
    plants = page.listed(names)
    if page.is_plain:
        return page.say(
            refs,
            f"we found {plants} nowhere else on the dig",
            f"this is the only place where we found {plants}",
        )
    was = english.agreed(len(names), "was", "were")
    return page.say(
        refs,
        f"{plants} {was} found in no other context",
        f"no other context held {page.listed(names, word='or')}",
        f"only here {was} {plants} found",
    )


def _genus(page: Page, tally: Tally) -> str:
    taxon = page.dig.packs.taxa.get(tally.taxon) if tally.taxon is not None else None
    return (taxon.genus or taxon.id) if taxon is not None else tally.written


def _kernels(page: Page, context: Context) -> list[Sentence]:
    own = page.measure("kernels_per_cupule")
    alike = [s for s in contexts_alike(page, kind=context.kind) if _value(page, s, "kernels_per_cupule") is not None]
    values = [_value(page, s, "kernels_per_cupule") for s in alike]
    if own is None or own.value is None or len(alike) < 3 or page.is_plain or own.value == 0:
        return []
    numbers_known = [v for v in values if v is not None]
    kind = page.names.kind(context.kind, plural=True)
    refs = [page.dig.measure_ref(s, "kernels_per_cupule") for s in alike]
    for extreme, word in ((min(numbers_known), "lowest"), (max(numbers_known), "highest")):
        if own.value == extreme and min(numbers_known) < max(numbers_known):
            figure, of = page.figure(own), page.count(len(alike))
            return page.say(
                refs,
                f"at {figure} it has the {word} ratio of kernels to cupules of the {of} {kind}",
                f"among the {of} {kind} its ratio of kernels to cupules ({figure}) is the {word}",
            )
    return []


def _named(page: Page) -> Sequence[Tally]:
    """Old remains of plants known by name, certain, other than wood."""
    chosen = []
    for tally in page.found.tallies:
        taxon = page.dig.packs.taxa.get(tally.taxon) if tally.taxon is not None else None
        part = page.dig.packs.words.parts.get(tally.part)
        if taxon is None or part is None or "wood" in part.roles or tally.only_cf or not tally.counted:
            continue
        if tally.condition in page.dig.ancient and taxon.rank in ("species", "genus"):
            chosen.append(tally)
    return chosen


def _as_found(page: Page, tally: Tally) -> str:
    return page.names.plant(tally.taxon, tally.written, plural=page.is_plain) + page.names.latin_once(tally.taxon)
