"""Where and when a subject belongs, and its size in words: name, phase, samples, litres, items and density."""

from __future__ import annotations

from narrate.model.ids import Subject
from narrate.model.stratigraphy import Context, Phase
from narrate.telling import english, manner, numbers
from narrate.telling.old_finds import has_wood, plant_tallies
from narrate.telling.page import Page
from narrate.telling.recovery import is_poor

FEW_ITEMS = 10
"""Below this many items a deposit is told in a sentence or two (judgement of the makers)."""


def feature_text(page: Page, context: Context) -> str:
    """'feature F4', where the feature has more contexts than this one."""
    alike = page.dig.project.contexts_of(context.feature)
    return f"feature {english.literal(str(context.feature))}" if len(alike) > 1 else ""


def context_name(page: Page, context: Context) -> str:
    """'hearth C12'; 'context C12' where the kind says nothing."""
    kind = "" if context.kind in ("", "other") else page.names.kind(context.kind)
    if not kind:
        kind = "place" if page.is_plain else "context"
    # 'The layer of soil C21', but 'hearth C12'.
    the = "the " if " of " in kind else ""
    return f"{the}{kind} {english.literal(context.id)}"


def phase_name(phase: Phase) -> str:
    """'the Late hamlet'."""
    name = english.literal(phase.name)
    return name if name.lower().startswith("the ") else f"the {name}"


def phase_years(page: Page, phase: Phase | None) -> str:
    """'cal AD 1250–1350', or 'about AD 1250 to 1350' for visitors."""
    return manner.years(phase, page.audience) if phase is not None else ""


def phase_brackets(page: Page, phase: Phase | None, feature: str = "") -> str:
    """' (Late hamlet, cal AD 1250–1350)'; empty where neither phase nor feature is recorded."""
    years = phase_years(page, phase)
    parts = [feature, english.literal(phase.name) if phase is not None else "", years]
    said = ", ".join(part for part in parts if part)
    return f" ({said})" if said else ""


def items_text(page: Page, *, with_taxa: bool = False) -> str:
    """'148 charred items of 12 taxa besides wood', '1 charred item'; wood is told by mass and by identified pieces."""
    number = items_counted(page)
    charred = page.dig.project.preservation == "charred"
    besides = " besides wood" if has_wood(page) else ""
    if page.is_plain:
        burned = "burned " if charred else ""
        if number == 1:
            return f"just one {burned}scrap of plant{besides}"
        return f"{page.about(number)} {burned}plant remains{besides}"
    taxa = page.measure("taxa")
    of_taxa = f" of {_taxa_text(page, int(taxa.value))}" if with_taxa and taxa and taxa.value else ""
    items = english.agreed(number, "item", "items")
    return f"{page.count(number)} {'charred ' if charred else ''}{items}{of_taxa}{besides}"


def _taxa_text(page: Page, taxa: int) -> str:
    """'12 taxa'; 'at least 12 taxa' where a name in the list may stand for a plant that another one names closer."""
    least = "at least " if len(_names_listed(page)) > taxa else ""
    return f"{least}{page.count(taxa, 'taxon', 'taxa')}"


def _names_listed(page: Page) -> set[str]:
    """The names of old plants that the list of finds has, wood and what nobody could name left out."""
    parts, taxa = page.dig.packs.words.parts, page.dig.packs.taxa
    found = set()
    for tally in page.found.tallies:
        part = parts.get(tally.part)
        is_wood = part is not None and "wood" in part.roles
        known = taxa.get(tally.taxon) if tally.taxon is not None else None
        is_named = known is None or "indeterminate" not in known.tags
        if (tally.counted or tally.is_noted) and tally.condition in page.dig.ancient and is_named and not is_wood:
            found.add(str(tally.taxon or tally.written))
    return found


def items_counted(page: Page) -> int:
    items = page.measure("items")
    return int(items.value) if items is not None and items.value is not None else 0


def litres_text(page: Page) -> str:
    """'18 litres'; 'volume not recorded'. Visitors, who read of 'about 130 grains', get no litres rounded unsaid."""
    litres = page.found.litres
    if litres is None:
        return "volume not recorded"
    places = 0 if litres >= 100 and not page.is_plain else 1
    text = numbers.figure(litres, places, thousands=manner.thousands(page.audience)).removesuffix(".0")
    return f"{text} {manner.litre(page.audience, plural=litres != 1)}"


def samples_text(page: Page) -> str:
    """'two samples'."""
    return page.count(page.found.samples, "sample", "samples")


def density_text(page: Page) -> str:
    """
    '8.2 items per litre (95% interval 6.9–9.7)'; empty where there is no volume.

    Where flotation lost much the density is a least one, and has no upper end: then no interval is told.
    """
    density = page.measure("density")
    if density is None:
        return ""
    is_least = is_poor(page) and not page.is_plain
    interval = "" if is_least else page.interval(density)
    scaled = "with the unsorted share scaled up, " if _is_scaled_up(page) else ""
    figure = page.figure(density)
    items = "item" if figure == "1" else "items"
    least = "at least " if is_least else ""
    return f"{scaled}{least}{figure} {items} per {page.litre}" + (f" (95% interval {interval})" if interval else "")


def or_density(page: Page) -> str:
    """', or 8.2 items per litre'; empty where there is no volume."""
    density = density_text(page)
    return f", or{',' if density.startswith('with') else ''} {density}" if density else ""


def _is_scaled_up(page: Page) -> bool:
    """Whether the density counts more items than were seen, for a share that was not sorted."""
    tallies = plant_tallies(page)
    return sum(t.estimated for t in tallies) > sum(t.counted for t in tallies) + 0.5


def size_refs(page: Page) -> list[str]:
    """What the opening's figures rest on."""
    names = ["items"] + (["density"] if page.measure("density") else []) + (["taxa"] if page.measure("taxa") else [])
    return [page.record, *(page.ref(name) for name in names if page.measure(name) is not None)]


def subject_of(level: str, id: str) -> Subject:
    return Subject(level=level, id=id)  # type: ignore[arg-type]
