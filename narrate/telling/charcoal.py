"""Wood charcoal: how much there was, and of which trees."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from narrate.model.findings import Tally
from narrate.model.narrative import Sentence
from narrate.telling import english, manner, numbers
from narrate.telling.finds import total
from narrate.telling.old_finds import ancient_tallies, is_wood
from narrate.telling.page import Page


def wood_sentences(page: Page) -> list[Sentence]:
    """How much wood charcoal there was and of which trees."""
    mass = page.measure("wood_mass")
    woods = [tally for tally in ancient_tallies(page) if is_wood(page, tally)]
    named = [tally for tally in woods if tally.counted and tally.taxon is not None]
    if page.is_plain:
        return _for_visitors(page, named)
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
        verb, were = english.agreed(fragments, "is", "are"), english.agreed(fragments, "was", "were")
        pieces = page.count(fragments, "fragment", "fragments")
        as_trees = (
            trees_text.replace("chiefly of ", "chiefly as ", 1) if "chiefly" in trees_text else f"as {trees_text[3:]}"
        )
        return page.say(
            refs,
            f"wood charcoal weighed {weight}; the {identified} {verb} {trees_text}",
            f"of the wood charcoal, {weight} in all, {pieces} {were} identified, {as_trees}",
            f"wood charcoal amounted to {weight}, and the {identified} {verb} {trees_text}",
        )
    if weight:
        return page.say(refs, f"wood charcoal weighed {weight}", f"there were also {weight} of wood charcoal")
    return page.say(refs, f"identified wood charcoal was {trees_text}", f"the charcoal identified is {trees_text}")


def _for_visitors(page: Page, named: Sequence[Tally]) -> list[Sentence]:
    """'The charcoal we could name came mostly from oak, hickory and ash': a list that is cut short says so."""
    of_tree: dict[str, list[Tally]] = {}
    for tally in (t for t in named if _is_tree(page, t)):
        of_tree.setdefault(page.names.plant(tally.taxon, tally.written), []).append(tally)
    found = {tree: total(tallies) for tree, tallies in of_tree.items()}
    shown = _shown(found)
    if not shown:
        return []
    refs = [t.ref for tree in shown for t in of_tree[tree] if t.ref] or [page.ref("wood_mass")]
    if len(shown) == len(found):
        mostly, trees = "", page.listed(shown)
    elif sum(found[tree] for tree in shown) * 2 > sum(found.values()):
        mostly, trees = "mostly ", page.listed(shown)
    else:
        mostly, trees = "", page.listed([*shown, "other trees"])
    return page.say(
        refs,
        f"we could name some of the charcoal: it came {mostly}from {trees}",
        f"the charcoal we could name came {mostly}from {trees}",
    )


def _shown(found: Mapping[str, int]) -> list[str]:
    """
    The trees that a text for visitors names, most first: three or so, of which two pieces or more were found.

    Trees with the same number stand or fall together.

    >>> _shown({"oak": 8, "hickory": 2, "maple": 2, "pine": 2})
    ['oak', 'hickory', 'maple', 'pine']
    >>> _shown({"oak": 8, "elm": 3, "hickory": 2, "maple": 2, "pine": 2})
    ['oak', 'elm']
    >>> _shown({"oak": 8, "hickory": 5, "maple": 2, "pine": 1})
    ['oak', 'hickory', 'maple']
    """
    ordered = sorted((tree for tree in found if found[tree] >= 2), key=lambda tree: (-found[tree], tree))
    if len(ordered) <= 4 and all(found[tree] == found[ordered[2]] for tree in ordered[3:]):
        return ordered
    shown = [tree for tree in ordered[:3] if found[tree] > found[ordered[3]]]
    return shown or ordered[:3]


def _trees(page: Page, named: Sequence[Tally]) -> str:
    """'chiefly of oak (22) and hickory (15), with ash (7)'; 'of pine (7), elm (6), and oak (5)' where none leads."""
    counts: dict[str, int] = {}
    broad: set[str] = set()
    for tally in named:
        tree = page.names.plant(tally.taxon, tally.written)
        latin = page.names.latin_once(tally.taxon)
        if not _is_tree(page, tally):
            broad.add(f"{tree}{latin}")
        counts[f"{tree}{latin}"] = counts.get(f"{tree}{latin}", 0) + tally.counted
    ordered = sorted(counts.items(), key=lambda pair: (pair[0] in broad, -pair[1], pair[0]))
    trees = [pair for pair in ordered if pair[0] not in broad]
    texts = [_with_count(page, tree, number) for tree, number in trees[:5]]
    if len(trees) > 5:
        texts.append(page.count(len(trees) - 5, "other taxon", "other taxa"))
    # What was named no further than hardwood may be of a tree named before, and is no taxon more.
    texts += [_with_count(page, f"indeterminate {tree}", number) for tree, number in ordered[len(trees) :]]
    # The woods that make up most of it are told apart from the rest: so a reader sees the fuel before the list.
    lead = _leading([number for tree, number in ordered if tree not in broad], sum(counts.values()))
    if not lead or len(texts) <= lead:
        return f"of {page.listed(texts)}"
    return f"chiefly of {page.listed(texts[:lead])}, with {page.listed(texts[lead:])}"


def trees_told(page: Page, named: Sequence[Tally]) -> str:
    """'hickory (5), pine (2), elm (1), and sweetgum (1)': every wood by number, most first."""
    counts: dict[str, int] = {}
    for tally in named:
        tree = f"{page.names.plant(tally.taxon, tally.written)}{page.names.latin_once(tally.taxon)}"
        counts[tree] = counts.get(tree, 0) + tally.counted
    ordered = sorted(counts.items(), key=lambda pair: (-pair[1], pair[0]))
    return page.listed([_with_count(page, tree, number) for tree, number in ordered])


def _leading(named: Sequence[int], everything: int) -> int:
    """
    How many of the woods, one or two, make up half of the fragments and stand out from the next; 0 where none do.

    >>> _leading([10, 9, 2], 29), _leading([10, 2, 2], 20), _leading([7, 6, 5], 40)
    (2, 1, 0)
    """
    if everything < ENOUGH:
        return 0
    for n in (1, 2):
        if sum(named[:n]) * 2 >= everything and (len(named) <= n or named[n] < named[n - 1]):
            return n
    return 0


ENOUGH = 10
"""Fragments below which no wood is said to lead (judgement of the makers)."""


def _is_tree(page: Page, tally: Tally) -> bool:
    """Whether the wood was named further than hardwood or conifer."""
    taxon = page.dig.packs.taxa.get(tally.taxon) if tally.taxon is not None else None
    return taxon is not None and taxon.rank != "broad"


def _with_count(page: Page, tree: str, number: int) -> str:
    many = numbers.figure(number, 0, thousands=manner.thousands(page.audience))
    return f"{tree[:-1]}, {many})" if tree.endswith(")") else f"{tree} ({many})"
