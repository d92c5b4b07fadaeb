"""What is asked of seasons: what a deposit holds that was gathered fresh, and not when its nuts were gathered."""

from __future__ import annotations

from calendar import month_name
from collections.abc import Iterable, Sequence

from narrate.model.findings import Tally
from narrate.model.ids import Subject
from narrate.model.narrative import Sentence
from narrate.model.plants import Taxon
from narrate.model.stratigraphy import Phase
from narrate.telling import setting
from narrate.telling.finds import total
from narrate.telling.old_finds import plant_tallies
from narrate.telling.page import Page
from narrate.telling.plan import STORED_ONLY, Reading
from narrate.telling.seasons_kept import is_of_fresh

SEASONS = (
    ("autumn", frozenset(range(8, 12))),
    ("early summer", frozenset(range(4, 8))),
    ("late summer", frozenset((7, 8, 9))),
)
"""Months within which a plant is of a season, as the rules ask."""
LEAST, SHARE = 10, 0.05
"""Items from which plants that keep are named by their season, and their share of all that keep there."""


def with_what_is_asked(page: Page, theme: str, told: list[Sentence]) -> list[Sentence]:
    """The account of seasons of a phase or dig, opened by what is asked of them."""
    if theme != "season" or page.is_plain or not told:
        return told
    asked = "what is asked here is whether such work was repeated, and what single deposits hold that was gathered"
    return [*_asked(page, f"as all of them keep, {asked} fresh, of which soft fruit speaks best"), *told]


def of_context(page: Page, held: Sequence[Reading]) -> list[Sentence]:
    """The same of a context whose season is read from soft fruit beside plants that keep."""
    fresh = [r for r in held if r.claim.statement != STORED_ONLY and is_of_fresh(page, r.claim)]
    if page.is_plain or not fresh:
        return []
    return _asked(
        page,
        "what is asked is what was gathered fresh beside them, of which soft fruit speaks best",
        "what was gathered fresh beside them is told best by soft fruit",
    )


def between_sentences(page: Page, phases: Sequence[Phase], *, are_apart: bool) -> list[Sentence]:
    """That the season of one phase alone hangs on its plants; and soft fruit that falls between the seasons."""
    if page.is_plain or not are_apart:
        return []
    hangs = "which season one phase alone shows hangs on its plants, and tells nothing of when people were there"
    widest: tuple[int, str, list[str], list[str]] = (0, "", [], [])
    for tally in plant_tallies(page):
        taxon = page.dig.packs.taxa.get(tally.taxon) if tally.taxon is not None else None
        months = _months(taxon, tally, "perishable")
        if taxon is None or "fruit" not in taxon.tags or not months or tally.samples <= widest[0]:
            continue
        if not any(months <= of for _, of in SEASONS):
            name = page.names.plant(tally.taxon, tally.written)
            when = f"{name}, ripe from {month_name[min(months)]} to {month_name[max(months)]},"
            found = [(phase, _there(page, phase, tally)) for phase in phases]
            where = [f"{_samples(page, t)} of {setting.phase_name(p)}" for p, t in found if t is not None]
            widest = (tally.samples, when, where, [t.ref for _, t in found if t is not None])
    _, when, where, refs = widest
    own = [page.ref("items")]
    if not where:
        return page.say(own, hangs)
    told = f"{hangs}: {when} falls between the seasons named here and was in {page.listed(where)}"
    return page.say([*refs, *own], told)


def _samples(page: Page, tally: Tally) -> str:
    return page.count(tally.samples, "sample", "samples")


def _asked(page: Page, *asked: str) -> list[Sentence]:
    """'Hickory nuts were gathered in autumn whenever they burned; what is asked is …'."""
    known = [t for t in plant_tallies(page) if t.counted and not t.only_cf and _is_named(page, t)]
    by_season = [(season, [t for t in known if _keeps(page, t, months)]) for season, months in SEASONS]
    least = max(LEAST, SHARE * total({t.ref: t for _, ripe in by_season for t in ripe}.values()))
    sides: list[str] = []
    refs: list[str] = []
    for season, ripe in by_season:
        ripe = [t for t in ripe if t.ref not in refs]
        if total(ripe) < least:
            continue
        names = _chief(page, ripe)
        named = [t for t in ripe if page.names.food(t.taxon, t.written) in names]
        refs += [t.ref for t in named]
        are = "was" if len(names) == 1 and not names[0].endswith("s") else "were"
        burned = f" {are} {_work(page, named)} in {season} whenever {'it' if are == 'was' else 'they'} burned"
        sides.append(f"{page.listed(names)}{burned if not sides else f' in {season}'}")
    if not sides:
        return []
    said = ", and ".join(sides) if len(sides) < 3 else page.listed(sides)
    return page.say(refs, *(f"{said}; {text}" for text in asked))


def _chief(page: Page, tallies: Iterable[Tally]) -> list[str]:
    """The plant with most items, and two more at most that are no handful beside it."""
    numbers: dict[str, int] = {}
    for tally in tallies:
        name = page.names.food(tally.taxon, tally.written)
        numbers[name] = numbers.get(name, 0) + tally.counted
    ordered = sorted(numbers, key=lambda name: (-numbers[name], name))
    return ordered[:1] + [name for name in ordered[1:3] if numbers[name] >= LEAST]


def _is_named(page: Page, tally: Tally) -> bool:
    taxon = page.dig.packs.taxa.get(tally.taxon) if tally.taxon is not None else None
    return taxon is not None and taxon.rank in ("species", "genus")


def _work(page: Page, tallies: Iterable[Tally]) -> str:
    """'gathered' of wild plants, 'harvested' of crops."""
    taxa = [page.dig.packs.taxa[t.taxon] for t in tallies if t.taxon is not None]
    are_crops = {taxon.status == "crop" for taxon in taxa}
    return "gathered or harvested" if len(are_crops) > 1 else "harvested" if True in are_crops else "gathered"


def _keeps(page: Page, tally: Tally, months: frozenset[int]) -> bool:
    """Whether a find is of a part that keeps and is had within some months alone."""
    taxon = page.dig.packs.taxa.get(tally.taxon) if tally.taxon is not None else None
    own = _months(taxon, tally, "stored")
    return bool(own) and own <= months and not _months(taxon, tally, "perishable")


def _months(taxon: Taxon | None, tally: Tally, keeping: str) -> frozenset[int]:
    """Months in which a part can be had, of the windows that say so of its keeping."""
    windows = [w for w in taxon.windows if w.part == tally.part and keeping in w.keeping] if taxon is not None else []
    return frozenset(month for window in windows for month in window.months)


def _there(page: Page, phase: Phase, of: Tally) -> Tally | None:
    found = page.dig.found(Subject(level="phase", id=phase.id))
    own = [t for t in found.tallies if (t.taxon, t.part) == (of.taxon, of.part) and t.counted] if found else []
    return max((t for t in own if t.condition in page.dig.ancient), key=lambda t: t.samples, default=None)
