"""What a deposit is made of: plants by number, the chief ones first; modern finds are told by `modern_finds`."""

from __future__ import annotations

import re
from collections.abc import Sequence

from narrate.model.findings import Tally
from narrate.model.narrative import Sentence
from narrate.telling import numbers
from narrate.telling.finds import total, within
from narrate.telling.old_finds import ancient_tallies, by_plant, is_unknown, is_wood, plant_tallies
from narrate.telling.page import Page
from narrate.telling.surroundings import genus_of


def main_sentences(page: Page) -> list[Sentence]:
    """What makes up the assemblage, the commonest plant first."""
    tallies = [t for t in plant_tallies(page) if t.counted or t.mass_g is not None or t.is_noted]
    if not tallies:
        return []
    page.names.in_figures = any(tally.counted >= 10 for tally in tallies)
    groups = by_plant(page, tallies)
    shown = groups[:SHOWN]
    refs = [tally.ref for group in groups for tally in group if tally.ref] or [page.ref("items")]
    counted = total(tallies)
    first_share = total(groups[0]) / counted if counted else 0.0
    if page.is_plain:
        return _for_visitors(page, shown, refs, first_share)
    scope = "the remains other than wood" if has_counted_wood(page) else "the remains"
    if first_share > 0.5 and _can_lead(page, groups[0]):
        return _with_a_leader(page, groups, refs, scope, first_share)
    everything, rest = _list_and_rest(page, shown, groups[SHOWN:])
    if 0 < counted <= 3 and scope != "the remains":
        return page.say(refs, f"apart from wood, only {everything} came to light")
    return page.say(
        refs,
        f"{scope} include {everything}",
        f"the commonest of {scope} are {everything}" if rest and counted >= 20 else "",
        f"among {scope} are {everything}",
    ) + _rest_sentences(page, groups[SHOWN:], rest)


NAMED_AT_MOST = 12
"""Kinds of small numbers that are all named for specialists: a rare plant may be the one that matters."""

SHOWN = 4
"""Plants whose numbers are given in running text; the table has the rest."""


def _with_a_leader(
    page: Page, groups: Sequence[Sequence[Tally]], refs: list[str], scope: str, share: float
) -> list[Sentence]:
    """One plant makes up half or more: it opens the sentence, the others follow."""
    tally = groups[0][0]
    plant = page.names.plant(tally.taxon, tally.written) + page.names.latin_once(tally.taxon)
    inner = page.listed([_part_count(page, t) for t in groups[0] if t.counted])
    others, rest = _list_and_rest(page, groups[1:SHOWN], groups[SHOWN:])
    counted = sum(total(group) for group in groups)
    part = numbers.percent(share) if counted >= 20 else "most"
    share_told = f" ({part})" if counted >= 20 else ""
    if not others:
        return page.say(
            refs, f"all of {scope} come from {plant}: {inner}", f"{plant} accounts for all of {scope}, with {inner}"
        )
    return page.say(
        refs,
        f"{plant} makes up {part} of {scope}, with {inner}, followed by {others}",
        # The account may have opened with what most of it is.
        f"most of {scope}{share_told} come from {plant}, with {inner}; there were also {others}"
        if not page.has_told(" most of what ") and not page.has_told(" for the most part")
        else "",
        f"with {inner}, {plant} accounts for {part} of {scope}, followed by {others}"
        if rest
        else f"with {inner}, {plant} accounts for {part} of {scope}, the rest being {others}",
    ) + _rest_sentences(page, groups[SHOWN:], rest)


def _part_count(page: Page, tally: Tally) -> str:
    return page.names.count_of_part(tally)


def _can_lead(page: Page, group: Sequence[Tally]) -> bool:
    return group[0].taxon is not None and not any(t.only_cf for t in group) and not is_unknown(page, group[0])


def has_counted_wood(page: Page) -> bool:
    return any(t.counted for t in ancient_tallies(page) if is_wood(page, t))


def _list_and_rest(page: Page, shown: Sequence[Sequence[Tally]], rest: Sequence[Sequence[Tally]]) -> tuple[str, str]:
    """'a, b, and c', and for a sentence of its own 'smaller numbers of d and e'; empty where the first has room."""
    texts = page.names.grouped([t for group in shown for t in group], at_most=len(shown), with_mass=True)
    least = min((total(group) for group in shown), default=0)
    tail = _smaller_numbers(page, rest, least)
    if len(tail) < 2 and len(texts) + len(rest) <= SHOWN:
        return page.listed([*texts, *tail]), ""
    return page.listed(texts), ", beside ".join(tail)


def _rest_sentences(page: Page, rest: Sequence[Sequence[Tally]], told: str) -> list[Sentence]:
    """What was found in smaller numbers, and what nobody could name."""
    refs = [t.ref for group in rest for t in group if t.ref] or [page.ref("items")]
    if not told:
        return []
    few = re.match(r"(small|smaller) numbers of (.*)$", told)
    present = ""
    if few:
        were = "were" if re.search(r", | and ", few[2].split(", beside ")[0]) else "was"
        present = f"less common {were} {few[2]}"
    return page.say(refs, present, f"to these may be added {told}", f"there were also {told}" if few else "")


def _for_visitors(page: Page, groups: Sequence[Sequence[Tally]], refs: list[str], first_share: float) -> list[Sentence]:
    first, more = groups[0], groups[1:4]
    lead = first[0]
    if first_share <= 0.5 or not lead.counted or is_unknown(page, lead):
        most = 3 if any(len(group) > 2 for group in groups[:4]) else 4
        everything = page.listed(page.names.grouped([t for group in groups[:most] for t in group], at_most=most))
        return page.say(
            refs,
            f"among them were {everything}",
            f"we could name {everything}" if not any(is_unknown(page, g[0]) for g in groups) else "",
            f"our finds include {everything}",
        )
    noun = page.names.remains(lead, with_number=False, number_near=True)
    many = page.names.number(lead.counted)
    besides = page.listed([page.names.remains(t) for t in first[1:] if t.counted])
    others = page.listed(page.names.grouped([t for group in more for t in group], at_most=3))
    is_most = lead.counted * 2 > sum(t.counted for group in groups for t in group)
    lead_in = "most were" if others or besides else "all of them were"
    sentences = page.say(
        refs[: len(first)],
        (f"{lead_in} {noun}, {many} of them" if others or besides else f"{lead_in} {noun}") if is_most else "",
        f"commonest by far were {noun}, {many} in all" if others or besides else f"{lead_in} {noun}",
    )
    if besides:
        sentences += page.say(
            refs[: len(first)], f"also from {page.names.plant(lead.taxon, lead.written)}: {besides}"
        )
    if others:
        sentences += page.say(
            refs[len(first) :] or refs,
            f"we also found {others}",
            f"next in number came {others}",
            f"there were also {others}",
        )
    return sentences


def part_sorted_sentences(page: Page) -> list[Sentence]:
    """For visitors: that the smallest finds were picked out of a part of the soil, so that their numbers are low."""
    seen = sorted_in_part(page) if page.is_plain else []
    refs = [t.ref for t in seen if t.ref] or [page.ref("items")]
    if not seen:
        return []
    return page.say(
        refs,
        "of the finest bits we sorted only a part, so our numbers of small finds are low",
        "we sorted only a part of the finest bits, so there were more small finds than we count here",
        "only a part of the finest bits has been sorted, so we count too few of the small finds",
    )


def sorted_in_part(page: Page) -> list[Tally]:
    """Finds other than wood that were picked out of a part of the soil alone, so that there were more of them."""
    return [t for t in plant_tallies(page) if t.estimated > t.counted + 0.5]


LIST = re.compile(
    r"(?:Among them were|We could name(?! some)|Our finds include|(?:Most|All of them) were|Commonest by far were|"
    r"Also from|We also found|Next in number came|There were also) "
)
"""How sentences begin that list for visitors what was found; so they are worded above."""


def _smaller_numbers(page: Page, groups: Sequence[Sequence[Tally]], least: int) -> list[str]:
    """
    ['smaller numbers of maypop and grape', '3 maize cupules and 4 indeterminate seeds']; empty where nothing is left.

    least: the smallest number told before; what nobody could name is told last, however many there were.
    """
    if not groups:
        return []
    unknown = [group for group in groups if is_unknown(page, group[0])]
    lone = [group for group in groups if _is_lone(page, group)]
    groups = [group for group in groups if group not in unknown and group not in lone]
    counted = [text for group in lone for text in page.names.grouped(group, at_most=1)]
    counted += [page.names.remains(group[0]) for group in unknown[:1]]
    told = [page.listed(counted)] if counted else []
    if not groups:
        return told
    if len(groups) == 1 and not page.is_plain:
        # What it was is known: 'one bread wheat grain' says more than 'a single find of bread wheat'.
        return [page.listed(page.names.grouped(groups[0], at_most=1)), *told]
    single = all(total(group) == 1 for group in groups)
    names, left = _by_sort(page, groups, with_numbers=not single and len(groups) > 1)
    if left:
        names.append(page.count(left, "other kind", "other kinds"))
    if len(names) == 2 and ", " in _BRACKETS.sub("", names[0]) and ", " not in _BRACKETS.sub("", names[1]):
        # 'Acorn shell, and fleshy fruits, namely bramble and maypop': the other way round acorn would be a fruit.
        names.reverse()
    smaller = "smaller numbers of" if total(groups[0]) < least else "small numbers of"
    word = ("a single find of" if len(groups) == 1 else "single finds of") if single else smaller
    if len(groups) == 1 and not single:
        return [f"{page.count(total(groups[0]), 'find', 'finds')} of {names[0]}", *told]
    return [f"{word} {page.listed(names)}", *told]


_BRACKETS = re.compile(r"\([^()]*(?:\([^()]*\)[^()]*)*\)")


def _by_sort(page: Page, groups: Sequence[Sequence[Tally]], *, with_numbers: bool) -> tuple[list[str], int]:
    """
    ['fleshy fruits, among them wild strawberry and persimmon', 'acorn shell'] and how many kinds are left unnamed.

    What was rare is told by what it is: fruits, nuts, crops. A sort of one kind goes by the name of that kind.
    """
    sorts: dict[str, list[Sequence[Tally]]] = {}
    for group in groups:
        sorts.setdefault(_sort_of(page, group[0]), []).append(group)
    told = sorted(((sort, of) for sort, of in sorts.items() if sort), key=lambda pair: -sum(total(g) for g in pair[1]))
    several = [pair for pair in told if len(pair[1]) > 1]
    told = [pair for i, pair in enumerate(several) if i < 2 or any(_is_of_note(page, group) for group in pair[1])]
    names: list[str] = []
    for sort, of in told:
        named = len(of) if not page.is_plain and len(of) <= NAMED_AT_MOST else 2
        chief = [group for i, group in enumerate(of) if i < named or _is_of_note(page, group)]
        among = "among them" if len(of) > len(chief) else "namely"
        kinds = page.listed([_kind_named(page, group, with_number=with_numbers) for group in chief])
        names.append(f"{sort}, {among} {kinds}")
    inside = {id(group) for _, of in told for group in of}
    others = [group for group in groups if id(group) not in inside]
    most = len(others) if not page.is_plain and len(others) <= NAMED_AT_MOST else 3 - len(told)
    single = [group for i, group in enumerate(others) if i < most or _is_of_note(page, group)]
    names += [_kind_named(page, group, with_number=with_numbers) for group in single]
    return names, len(groups) - len(inside) - len(single)


def _is_lone(page: Page, group: Sequence[Tally]) -> bool:
    """Whether a plant alone carries a reading of the dig: then each find counts and its number is told."""
    counted = [tally for tally in group if tally.counted]
    genera = {genus_of(tally, page.dig.packs) for tally in counted if tally.taxon is not None}
    return bool(genera) and genera <= page.dig.lone_plants


def _is_of_note(page: Page, group: Sequence[Tally]) -> bool:
    return any(tally.taxon in page.of_note for tally in group)


def _kind_named(page: Page, group: Sequence[Tally], *, with_number: bool) -> str:
    """'acorn shell (*Quercus* sp., 9)': the kind with its number, as woods are told."""
    tally = group[0]
    latin = page.names.latin_once(tally.taxon, only_cf=tally.only_cf)
    number = page.names.figure(total(group)) if with_number and total(group) else ""
    inner = ", ".join(text for text in (number, *_reserves(page, group)) if text)
    return f"{page.names.kind_of_find(tally)}{within(latin, inner)}"


def _reserves(page: Page, group: Sequence[Tally]) -> list[str]:
    """['one of them cf.', 'one of them partly charred']: what holds of some of the finds counted under one name."""
    if page.is_plain:
        return []
    found, names = total(group), page.names
    cf = sum(tally.doubtful for tally in group)
    said = [f"{names.number(cf)} of them cf."] if 0 < cf < found else []
    for condition in dict.fromkeys(tally.condition for tally in group):
        of = total([tally for tally in group if tally.condition == condition])
        if condition != page.dig.project.preservation and 0 < of < found:
            said.append(f"{names.number(of)} of them {condition}")
    return said


def _sort_of(page: Page, tally: Tally) -> str:
    """'fleshy fruits', 'nuts'; empty where a plant is of none of the groups that are told together."""
    taxon = page.dig.packs.taxa.get(tally.taxon) if tally.taxon is not None else None
    tags = taxon.tags if taxon is not None else frozenset()
    return next((group.name for group in page.dig.packs.plant_groups if group.id in tags), "")
