"""Wood charcoal: how much there was, and of which trees."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.findings import Tally
from narrate.model.narrative import Sentence
from narrate.telling import english, manner, numbers
from narrate.telling.composition import ancient_tallies, is_wood
from narrate.telling.finds import total
from narrate.telling.page import Page


def wood_sentences(page: Page) -> list[Sentence]:
    """How much wood charcoal there was and of which trees."""
    mass = page.measure("wood_mass")
    woods = [tally for tally in ancient_tallies(page) if is_wood(page, tally)]
    named = [tally for tally in woods if tally.counted and tally.taxon is not None]
    if page.is_plain:
        trees = [page.names.plant(t.taxon, t.written) for t in named if t.counted >= 2 and _is_tree(page, t)][:3]
        if not trees:
            return []
        return page.say(
            [t.ref for t in named if t.ref][:3] or [page.ref("wood_mass")],
            f"we could name some of the charcoal: it came from {page.listed(trees)}",
            f"the charcoal we could name came from {page.listed(trees)}",
        )
    refs = ([page.ref("wood_mass")] if mass else []) + [t.ref for t in named if t.ref]
    if not refs or (not mass and not named) or (mass is not None and not mass.value and not named):
        return []
    per_litre = page.measure("wood_mass_per_l")
    weight = ""
    if mass is not None and mass.value:
        weight = f"{page.figure(mass)} g" + (f" ({page.figure(per_litre)} g per {page.litre})" if per_litre else "")
    trees_text, fragments = _trees(page, named), total(named)
    if weight and trees_text:
        identified = page.count(fragments, "identified fragment", "identified fragments")
        if len({t.taxon for t in named}) == 1:
            one = page.names.plant(named[0].taxon, named[0].written)
            all_of = "the one identified fragment is" if fragments == 1 else f"all {identified} are"
            return page.say(refs, f"wood charcoal weighed {weight}; {all_of} of {one}")
        verb = english.agreed(fragments, "is", "are")
        return page.say(
            refs,
            f"wood charcoal weighed {weight}; the {identified} {verb} of {trees_text}",
            f"the wood charcoal, {weight}, was of {trees_text} as far as it was identified",
            f"of the wood charcoal, {weight} in all, {trees_text} were identified",
        )
    if weight:
        return page.say(refs, f"wood charcoal weighed {weight}", f"there were also {weight} of wood charcoal")
    return page.say(
        refs, f"identified wood charcoal was of {trees_text}", f"the charcoal identified is of {trees_text}"
    )


def _trees(page: Page, named: Sequence[Tally]) -> str:
    counts: dict[str, int] = {}
    for tally in named:
        tree = page.names.plant(tally.taxon, tally.written)
        latin = page.names.latin_once(tally.taxon)
        counts[f"{tree}{latin}"] = counts.get(f"{tree}{latin}", 0) + tally.counted
    ordered = sorted(counts.items(), key=lambda pair: (-pair[1], pair[0]))
    texts = [_with_count(page, tree, number) for tree, number in ordered[:5]]
    if len(ordered) > 5:
        texts.append(page.count(len(ordered) - 5, "other taxon", "other taxa"))
    return page.listed(texts)


def _is_tree(page: Page, tally: Tally) -> bool:
    """Whether the wood was named further than hardwood or conifer."""
    taxon = page.dig.packs.taxa.get(tally.taxon) if tally.taxon is not None else None
    return taxon is not None and taxon.rank != "broad"


def _with_count(page: Page, tree: str, number: int) -> str:
    many = numbers.figure(number, 0, thousands=manner.thousands(page.audience))
    return f"{tree[:-1]}, {many})" if tree.endswith(")") else f"{tree} ({many})"
