"""How a context compares with its like: density, what is found nowhere else, kernels against cupules."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.findings import Tally
from narrate.model.ids import SITE, Subject
from narrate.model.narrative import Sentence
from narrate.model.stratigraphy import Context
from narrate.telling import english, numbers, setting
from narrate.telling.behind import remains_behind
from narrate.telling.foods import is_seed
from narrate.telling.glossary import of_many
from narrate.telling.one_feature import features_of
from narrate.telling.page import Page
from narrate.telling.surroundings import genus_of

OPENED_WITH = ("the richest context", "plants were few", "poor in plants")
"""How an account opens that says where a deposit stands among the others."""

ENOUGH_CONTEXTS = 4
"""Fewer contexts than this are not spoken of as a whole (judgement of the makers)."""


def compared_sentences(page: Page, context: Context) -> list[Sentence]:
    """What sets the context apart from its neighbours; at most two sentences."""
    sentences = _density(page, context) + found_only_here(page) + _kernels(page, context)
    return sentences[:2]


def _density(page: Page, context: Context) -> list[Sentence]:
    name = setting.context_name(page, context)
    own = page.measure("density")
    known, median = page.dig.surroundings.measured, page.dig.surroundings.median_density
    if own is None or not own.value or median is None or len(known) < ENOUGH_CONTEXTS:
        return []
    if setting.items_counted(page) < setting.FEW_ITEMS:
        return []
    refs = [page.ref("density"), *(page.dig.measure_ref(s, "density") for s in page.dig.surroundings.behind_median)]
    many = page.count(len(known))
    middle = numbers.figure(median, 1 if median < 10 else 0)
    if not page.is_plain and any(page.has_told(word) for word in OPENED_WITH):
        # That the deposit is the richest, or poor, has opened its account.
        figure = f"{page.figure(own)} items per {page.litre}"
        far = "far above" if own.value > median else "below"
        return page.say(
            refs,
            f"the {figure} of {name} lie {far} the median of the {many} contexts with remains ({middle})",
            f"with {figure} {name} stands {far} the median of the {many} contexts with remains ({middle})",
        )
    if own.value >= (page.dig.surroundings.highest_density or 0.0):
        if page.is_plain:
            return page.say(
                refs,
                f"no other place on the dig gave so many plants for each {page.litre_word} of soil",
                f"{page.litre_word} for {page.litre_word}, this place gave more plants than any other",
            )
        return page.say(
            refs,
            f"of the {many} contexts with remains this is the richest per {page.litre} (median {middle})",
            f"no other of the {many} contexts with remains is as rich per {page.litre}; their median is {middle}",
        )
    if median and own.value >= 3 * median:
        factor = page.count(round(own.value / median))
        if page.is_plain:
            return page.say(
                refs, "few places on the dig are as rich as this one", "this is one of the rich places on the dig"
            )
        return page.say(
            refs,
            f"per {page.litre} {name} holds some {factor} times the median of the {many} contexts with remains "
            f"({middle})",
            f"{name} is rich: the median of the {many} contexts with remains is {middle} items per {page.litre}",
        )
    if median and own.value <= median / 3 and not page.is_plain:
        return page.say(
            refs,
            f"with {page.figure(own)} items per {page.litre} {name} lies well below the median of the {many} contexts "
            f"with remains ({middle} per {page.litre})",
            f"{name} is poor: the median of the {many} contexts with remains is {middle} items per {page.litre}",
        )
    return []


def found_only_here(page: Page) -> list[Sentence]:
    if page.dig.surroundings.many < ENOUGH_CONTEXTS or (page.is_plain and page.has_told("in later times")):
        # A plant that came in later is no find of this place.
        return []
    # By genus: 'knotweed, species unknown' is no find of its own where erect knotweed is found elsewhere.
    only = [t for t in _named(page) if page.dig.surroundings.is_found_once(genus_of(t, page.dig.packs))]
    later = page.dig.claims.find(page.subject, OUT_OF_PERIOD)
    if later is not None and later.verdict == "holds":
        strays = {t.taxon for t in remains_behind(later, page.dig.packs, only)}
        only = [t for t in only if t.taxon not in strays]
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
        plants = f"seeds of {plants}" if all(is_seed(page, t) for t in unique.values()) else plants
        # Fresh seeds of a plant may lie elsewhere: what is told is of the old finds.
        plants = f"burned {plants}" if page.dig.project.preservation == "charred" else plants
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
    ) + _of_the_building(page, list(unique.values()))


def _of_the_building(page: Page, only: Sequence[Tally]) -> list[Sentence]:
    """Of a building: that a plant which is built with was put to other uses as well, by what the packs have of it."""
    context = page.dig.project.find_context(page.subject.id)
    kind = page.names.kind_known(context.kind) if context is not None else None
    if kind is None or "structure" not in kind.traits:
        return []
    sentences: list[Sentence] = []
    for tally in only:
        taxon = page.dig.packs.taxa.get(tally.taxon) if tally.taxon is not None else None
        uses = [use for use in taxon.uses if use.part == tally.part and use.note] if taxon is not None else []
        built, other = ([use.note for use in uses if (use.use == "building") is of] for of in (True, False))
        if built and other and tally.ref:
            plant = page.names.plant(tally.taxon, tally.written)
            sentences += page.say(
                [tally.ref],
                f"{plant} is on record for {built[0]} as well as for {other[0]}, so that it may be of the building or "
                "not",
            )
    return sentences


OUT_OF_PERIOD = "integrity.out-of-period"
"""The statement that some plants came in later: they are no find of the place."""


def _kernels(page: Page, context: Context) -> list[Sentence]:
    own = page.measure("kernels_per_cupule")
    of_kind = page.dig.surroundings.of_kind(context.kind)
    alike = of_kind.contexts
    if own is None or not own.value or page.subject not in alike or len(alike) < 3 or page.is_plain:
        return []
    name = setting.context_name(page, context)
    kind = page.names.kind(context.kind, plural=True)
    ids = {s.id for s in alike}
    if len(features_of(c for c in page.dig.project.contexts if c.id in ids)) < len(alike):
        kind = f"contexts of {kind}"
    refs = [page.dig.measure_ref(s, "kernels_per_cupule") for s in alike]
    for extreme, word in ((of_kind.lowest, "lowest"), (of_kind.highest, "highest")):
        if own.value == extreme and of_kind.lowest < of_kind.highest:
            figure, of, id = page.figure(own), page.count(len(alike)), english.literal(context.id)
            return page.say(
                refs,
                f"the ratio of kernels to cupules in {name}, {figure}, is the {word} of the {of} {kind}",
                f"of the {of} {kind}, {id} has the {word} ratio of kernels to cupules ({figure})",
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
    explained = page.names.latin_once(tally.taxon)
    explained = f" ({of_many(explained[2:-1])})" if page.is_plain and explained else explained
    grown = " (of the kind that people grow)" if page.is_plain and _has_wild_kin(page, tally) else ""
    return page.names.plant(tally.taxon, tally.written, plural=page.is_plain) + grown + explained


def _has_wild_kin(page: Page, tally: Tally) -> bool:
    """Whether a crop bears the last word of another plant of the dig: beans, where wild beans lay elsewhere."""
    taxa = page.dig.packs.taxa
    own = taxa.get(tally.taxon) if tally.taxon is not None else None
    if own is None or own.status != "crop" or not own.name:
        return False
    site = page.dig.found(Subject(level="site", id=SITE))
    found = [taxa.get(t.taxon) for t in (site.tallies if site is not None else ()) if t.taxon is not None]
    return any(other is not None and other.name.endswith(f" {own.name}") for other in found)
