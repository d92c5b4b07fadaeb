"""
How the account of a context opens: by what matters most in it, and not by chance.

What makes the deposit doubtful goes first, then what sets it apart from its neighbours (the richest, the most kinds,
next to nothing), then what it was full of, then what it belongs with; a deposit of which none of this is true opens
with how it was sampled. Every build gives the same figures, so that contexts can be read side by side. The figures of
its neighbours come at the end of an account: a context that is added to the dig rewords no opening.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from narrate.model.findings import Tally
from narrate.model.ids import Subject
from narrate.model.stratigraphy import Context
from narrate.telling import english, old_finds
from narrate.telling.finds import total
from narrate.telling.page import Page

FULL = 0.65
"""Share of the remains from which one part of one plant opens the account (judgement of the makers)."""

OF_ONE_PLANT, ENOUGH_ITEMS = 0.8, 100
"""Share of one plant, all its parts together, from which it opens the account; items below which nothing is full."""

RICH = 3.0
"""Times the median density from which a deposit is called rich, as where contexts are compared."""

POOR, ENOUGH = 0.5, 4
"""Share of the median density below which plants are called few; contexts below which nothing is compared."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Sampled:
    """What every opening gives: the place with its phase and deposit, samples, litres, items, and their density."""

    place: str
    gave: str
    """'two samples (18.5 litres) gave 173 charred items of 15 taxa besides wood, or 10.3 items per litre (…)'."""


Opened = tuple[tuple[str, ...], tuple[str, ...]]
"""Wordings of the first sentence, and what they rest on beside the context's own figures."""


def opened_by_what_matters(page: Page, context: Context, sampled: Sampled) -> Opened:
    """The wordings of the first sense that the deposit makes; empty where it opens with how it was sampled."""
    for build in _BUILDS:
        found = build(page, context, sampled)
        if found[0]:
            return found
    return (), ()


_NONE: Opened = ((), ())


def _disturbed(page: Page, context: Context, sampled: Sampled) -> Opened:
    if context.security != "disturbed":
        return _NONE
    return (f"little can rest on {sampled.place}, which was recorded as disturbed: {sampled.gave}",), ()


def _richest(page: Page, context: Context, sampled: Sampled) -> Opened:
    next_to = page.dig.surroundings.outdone("density", page.subject.id)
    if next_to is None:
        return _NONE
    return (
        f"{sampled.place} is the richest context of the dig: {sampled.gave}",
        f"the richest context of the dig is {sampled.place}: {sampled.gave}",
    ), (page.dig.measure_ref(next_to, "density"),)


def _full_of_one_thing(page: Page, context: Context, sampled: Sampled) -> Opened:
    """'Maize cupules make up most of what hearth C11 held: …'."""
    tallies = [t for t in old_finds.plant_tallies(page) if t.counted]
    lead = max(tallies, key=lambda t: t.counted, default=None)
    if lead is None or lead.taxon is None or old_finds.is_unknown(page, lead) or lead.only_cf:
        return _NONE
    of_plant = sum(t.counted for t in tallies if t.taxon == lead.taxon)
    everything = total(tallies)
    if everything < ENOUGH_ITEMS or (lead.counted < FULL * everything and of_plant < OF_ONE_PLANT * everything):
        return _NONE
    refs = tuple(t.ref for t in tallies if t.taxon == lead.taxon and t.ref)
    return _full(page, lead, sampled, is_part=lead.counted >= FULL * everything), refs


def _full(page: Page, lead: Tally, sampled: Sampled, *, is_part: bool) -> tuple[str, ...]:
    things = page.names.part_of_plant(lead, plural=True) if is_part else page.names.plant(lead.taxon, lead.written)
    things = things.removeprefix("pieces of ")
    makes = "make" if is_part and things.endswith("s") else "makes"
    things += page.names.latin_once(lead.taxon)
    return (
        f"{things} {makes} up most of what {sampled.place} held: {sampled.gave}",
        f"{sampled.place} held {things} above all: {sampled.gave}",
        f"what {sampled.place} held is {things} for the most part: {sampled.gave}" if makes == "makes" else "",
    )


def _rich(page: Page, context: Context, sampled: Sampled) -> Opened:
    times = _times_median(page)
    if times is None or times < RICH:
        return _NONE
    return (f"{sampled.place} is rich: {sampled.gave}", f"rich in plants is {sampled.place}: {sampled.gave}"), ()


def _most_kinds(page: Page, context: Context, sampled: Sampled) -> Opened:
    """More kinds of plants than any other context."""
    next_to = page.dig.surroundings.outdone("taxa", page.subject.id)
    if next_to is None:
        return _NONE
    return (
        f"no other context held as many kinds of plants as {sampled.place}: {sampled.gave}",
        f"{sampled.place} held more kinds of plants than any other context: {sampled.gave}",
    ), (page.dig.measure_ref(next_to, "taxa"),)


def _few(page: Page, context: Context, sampled: Sampled) -> Opened:
    times = _times_median(page)
    if times is None or times > POOR:
        return _NONE
    kind = page.names.kind_known(context.kind)
    where = "on" if kind is not None and "surface" in kind.traits else "in"
    return (
        f"plants were few {where} {sampled.place}: {sampled.gave}",
        f"{sampled.place} was poor in plants: {sampled.gave}",
    ), ()


def _of_one_feature(page: Page, context: Context, sampled: Sampled) -> Opened:
    """A context that belongs to a feature with others."""
    others = [c for c in page.dig.project.contexts_of(context.feature) if c.id != context.id]
    if not others:
        return _NONE
    feature, ids = english.literal(str(context.feature)), page.listed([english.literal(c.id) for c in others])
    refs = tuple(page.dig.record_ref(Subject(level="context", id=c.id)) for c in others)
    return (
        f"{sampled.place} belongs to feature {feature}, as {english.agreed(len(others), 'does', 'do')} {ids}: "
        f"{sampled.gave}",
        f"with {ids}, {sampled.place} makes up feature {feature}: {sampled.gave}",
    ), refs


_BUILDS: Sequence[Callable[[Page, Context, Sampled], Opened]] = (
    _disturbed, _richest, _full_of_one_thing, _rich, _most_kinds, _few, _of_one_feature,
)  # fmt: skip
"""What may open an account, what matters most first."""


def _times_median(page: Page) -> float | None:
    around, density = page.dig.surroundings, page.measure("density")
    own = density.value if density is not None and page.found.samples_with_remains else None
    median = around.median_density
    return own / median if own is not None and median and len(around.measured) > ENOUGH else None
