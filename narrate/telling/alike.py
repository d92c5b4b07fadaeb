"""Like contexts compared with like: what those of one kind share, where they part, and how phases differ in a kind."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.claims import GRADE_NAMES
from narrate.model.ids import Subject
from narrate.model.narrative import Sentence
from narrate.model.stratigraphy import Context, Phase
from narrate.telling import english
from narrate.telling.borne import EXPECTED
from narrate.telling.carried import clauses_in_row
from narrate.telling.exceptions_told import STORIES
from narrate.telling.frames import noun_of
from narrate.telling.one_feature import kinds_counted, places_listed
from narrate.telling.page import Page
from narrate.telling.plan import Reading
from narrate.telling.sentences import in_pack_order
from narrate.telling.spread import ids_listed, statements_held

QUESTIONS = ("fuel", "food", "processing", "season")


def kinds_compared(page: Page, contexts: Sequence[Context], *, at_most: int = 3) -> list[Sentence]:
    """For each kind of which several contexts held remains: the readings they share and those that only some make."""
    sentences: list[Sentence] = []
    for kind, members in _by_kind(page, contexts):
        if len(members) > 1 and len(sentences) < at_most:
            sentences += _kind_compared(page, kind, members)
    return sentences


def phases_compared(page: Page, first: Phase, last: Phase, *, at_most: int = 2) -> list[Sentence]:
    """For each kind of context that both phases have: the readings of the earlier ones beside those of the later."""
    told: list[list[Sentence]] = []
    for kind, members in _by_kind(page, page.dig.project.contexts):
        early = [c for c in members if c.phase == first.id]
        late = [c for c in members if c.phase == last.id]
        if early and late and len(told) < at_most:
            told += [said for said in [_phase_compared(page, kind, (first, early), (last, late))] if said]
    return [sentence for said in told for sentence in said]


def _by_kind(page: Page, contexts: Sequence[Context]) -> list[tuple[str, list[Context]]]:
    kinds: dict[str, list[Context]] = {}
    for context in contexts:
        found = page.dig.found(Subject(level="context", id=context.id))
        if found is not None and found.samples_with_remains and context.kind not in ("", "other"):
            kinds.setdefault(context.kind, []).append(context)
    return sorted(kinds.items(), key=lambda pair: (-len(pair[1]), pair[0]))


def _kind_compared(page: Page, kind: str, members: Sequence[Context]) -> list[Sentence]:
    held: dict[str, dict[str, Reading]] = {c.id: statements_held(page, c.id, QUESTIONS) for c in members}
    if not any(held.values()):
        return []
    apart_from = "apart from wood fires, " if all("fuel.wood" in found for found in held.values()) else ""
    held = {id: {name: r for name, r in found.items() if name not in EXPECTED} for id, found in held.items()}
    shared = [name for name in next(iter(held.values())) if all(name in found for found in held.values())]
    partial: dict[str, list[str]] = {}
    for id, found in held.items():
        for name in found:
            if name not in shared:
                partial.setdefault(name, []).append(id)
    if not shared and not partial:
        return []
    many, ids = kinds_counted(page, kind, members), places_listed(page, list(held))
    refs = [reading.claim.id for found in held.values() for reading in found.values()]
    if shared:
        common = noun_of(page, in_pack_order(page, [held[members[0].id][name] for name in shared[:3]]), in_short=True)
        apart = _apart(page, held, partial)
        if page.is_plain and all(_is_told_of_all(page, name) for name in shared):
            # What the page says of all its places is no news of some of them.
            return []
        if page.is_plain:
            if page.has_told(f"signs of {common}"):
                return page.say(refs, f"we saw the same signs in the {many}")
            return page.say(refs, f"the {many} have one thing in common: signs of {common}")
        formed = _formed(page, members)
        alike = page.say(
            refs, f"the {many} ({ids}) agree on {common}{formed}", f"on {common} the {many} ({ids}) agree{formed}"
        )
        if not apart:
            return alike
        return alike + page.say(refs, f"beyond that they differ, for {apart}", f"otherwise {apart}")
    if page.is_plain:
        if len(members) > 2 or not all(held.values()):
            return []
        each = [
            noun_of(page, in_pack_order(page, _told_first(list(found.values()))), in_short=True)
            for found in held.values()
        ]
        called = page.names.kind(kind)
        a, b = (f"in {called} {english.literal(id)}" for id in held)
        each[1] = each[1].replace(", and ", " and of ")
        return page.say(
            refs,
            f"{apart_from}the {many} tell different stories: {a} we saw signs of {each[0]}, and {b} of {each[1]}",
        )
    if len(members) == 2:
        return page.say(refs, f"the {many} ({ids}) differ: {_apart(page, held, partial)}")
    return page.say(
        refs,
        f"beyond what is read of most contexts the {many} ({ids}) share no firm reading; {_apart(page, held, partial)}",
        f"no firm reading, beyond those of most contexts, is common to the {many} ({ids}); "
        f"{_apart(page, held, partial)}",
    )


def _is_told_of_all(page: Page, statement: str) -> bool:
    claim = page.dig.claims.find(page.subject, statement)
    return claim is not None and claim.id in page.told


def _told_first(found: Sequence[Reading]) -> list[Reading]:
    """Two readings of a place: what happened there goes before all else."""
    return sorted(found, key=lambda r: (r.claim.statement not in STORIES, -r.rank))[:2]


def _formed(page: Page, members: Sequence[Context]) -> str:
    """
    ', although C05 is recorded as de facto and C04 and C06 as secondary': where deposits of one kind formed unlike.

    Things left where they were used and things thrown away differ for that reason alone.
    """
    by_deposit: dict[str, list[str]] = {}
    for context in members:
        if context.deposit != "unknown":
            by_deposit.setdefault(context.deposit, []).append(context.id)
    if len(by_deposit) < 2 or page.is_plain:
        return ""
    first, *rest = sorted(by_deposit.items(), key=lambda pair: (len(pair[1]), pair[0]))
    one = english.agreed(len(first[1]), "is", "are")
    others = [f"{ids_listed(page, ids)} as {deposit}" for deposit, ids in rest]
    return f", although {ids_listed(page, first[1])} {one} recorded as {first[0]} and {page.listed(others)}"


def _apart(page: Page, held: dict[str, dict[str, Reading]], partial: dict[str, list[str]]) -> str:
    """'C12 alone adds the use of wood as fuel, and C12 and C13 share gathering in autumn'."""
    by_place: dict[tuple[str, ...], list[Reading]] = {}
    for name, ids in partial.items():
        by_place.setdefault(tuple(ids), []).append(held[ids[0]][name])
    ordered = sorted(by_place.items(), key=lambda pair: (-len(pair[0]), pair[0]))[:3]
    texts = []
    for place, items in ordered:
        where = f"{english.literal(place[0])} alone" if len(place) == 1 else ids_listed(page, place)
        by_name = [(r, [held[id][r.claim.statement] for id in place]) for r in items]
        texts.append(f"{where} {by_grade(page, by_name, is_one=len(place) == 1)}")
    return page.listed(texts) if not any(", and suggest" in text for text in texts) else clauses_in_row(texts)


def by_grade(page: Page, told: Sequence[tuple[Reading, Sequence[Reading]]], *, is_one: bool = False) -> str:
    """
    'speaks for fruit as food, and suggests oily seeds as food': words of support do not reach down to the latter.

    told: a reading, and the same of every place that is meant; three at most, the firm ones first.
    """
    firm = [r for r, every in told if min(one.rank for one in every) > SUGGESTED]
    shown = [*firm, *(r for r, _ in told if r not in firm)][:3]
    verbs = (("speaks for", "speak for"), ("suggests", "suggest"))
    groups = ([r for r in shown if r in firm], [r for r in shown if r not in firm])
    does = [
        f"{verb[0] if is_one else verb[1]} {noun_of(page, in_pack_order(page, group), in_short=True)}"
        for verb, group in zip(verbs, groups, strict=True)
        if group
    ]
    return ", and ".join(does)


SUGGESTED = GRADE_NAMES.index("suggests")
"""The grade to which words of support do not reach down."""


def _phase_compared(
    page: Page, kind: str, early: tuple[Phase, list[Context]], late: tuple[Phase, list[Context]]
) -> list[Sentence]:
    sides = []
    for _, members in (early, late):
        found: dict[str, list[Reading]] = {}
        for context in members:
            for name, reading in statements_held(page, context.id, ("fuel", "food", "processing")).items():
                found.setdefault(name, []).append(reading)
        sides.append(found)
    only_early = {name: r for name, r in sides[0].items() if name not in sides[1]}
    only_late = {name: r for name, r in sides[1].items() if name not in sides[0]}
    if not only_early or not only_late:
        return []
    shown = _both_sides(page, only_early, only_late)
    refs = [reading.claim.id for side in shown for found in side for reading in found]
    kinds = page.names.kind(kind, plural=True)
    names = [english.literal(phase.name) for phase, _ in (early, late)]
    parts = [_nouns_and_places(page, side) for side in shown]
    nouns = [page.listed(texts) for texts in parts]
    if page.is_plain:
        nouns = [", and of ".join((", of ".join(texts[:-1]), texts[-1])) if texts[1:] else texts[0] for texts in parts]
        # A sentence for each time: one of both would be a list that nobody can follow.
        of_first, of_last = ([r.claim.id for found in side for r in found] for side in shown)
        return page.say(
            of_first,
            f"in the {kinds} of the {names[0]} we saw signs of {nouns[0]}",
            f"the {kinds} of the {names[0]} gave us signs of {nouns[0]}",
        ) + page.say(of_last, f"those of the {names[1]} gave us signs of {nouns[1]}")
    said = [_by_grade(page, side) for side in shown]
    return page.say(
        refs, f"among the {kinds}, those of the {names[0]} {said[0]}, whereas those of the {names[1]} {said[1]}"
    )


def _by_grade(page: Page, side: Sequence[Sequence[Reading]]) -> str:
    """'speak for native seed crops as food (C05), and suggest oily seeds as food (C06)'."""
    firm = [found for found in side if any(r.rank > SUGGESTED for r in found)]
    weak = [found for found in side if found not in firm]
    verbs = (("speak for", firm), ("suggest", weak))
    does = [f"{verb} {page.listed(_nouns_and_places(page, chosen))}" for verb, chosen in verbs if chosen]
    return ", and ".join(does)


def _both_sides(page: Page, *sides: dict[str, list[Reading]]) -> list[list[list[Reading]]]:
    """
    The two most widespread readings of each side, and beside them what the other side reads in the same question: who
    names the fuel of the one hearths does not pass over that of the others.
    """
    ordered = [_most_widespread_first(page, side) for side in sides]
    asked = {found[0].claim.question for side in ordered for found in side[:2]}
    shown = []
    for side in ordered:
        chosen = side[:2]
        for question in sorted(asked - {found[0].claim.question for found in chosen}):
            chosen += [found for found in side[2:] if found[0].claim.question == question][:1]
        shown.append(chosen)
    return shown


def _most_widespread_first(page: Page, side: dict[str, list[Reading]]) -> list[list[Reading]]:
    place = {statement: i for i, statement in enumerate(page.dig.packs.statements)}
    ordered = sorted(side.items(), key=lambda pair: (-len(pair[1]), place[pair[0]]))  # type: ignore[index]
    return [readings for _, readings in ordered]


def _nouns_and_places(page: Page, side: Sequence[Sequence[Reading]]) -> list[str]:
    """'the use of native seed crops as food and of nutshell as fuel (C01 and C10)': places of several readings once."""
    by_place: dict[tuple[tuple[str, ...], tuple[str, ...]], list[Reading]] = {}
    for found in side:
        # Places that only suggest what others speak for are named as such.
        weak = [] if page.is_plain else [r for r in found if r.rank <= SUGGESTED]
        weak = weak if len(weak) < len(found) else []
        firm = [r for r in found if r not in weak]
        place = tuple(tuple(sorted(r.claim.about.id for r in of)) for of in (firm, weak))
        by_place.setdefault((place[0], place[1]), []).append(firm[0])
    told = [noun_of(page, r, in_short=True) for r in by_place.values()]
    told = [text.replace(", and ", " and of ") for text in told] if page.is_plain else told
    return [
        f"{text} ({places_listed(page, firm)}{_only_suggesting(page, weak)})"
        for text, (firm, weak) in zip(told, by_place, strict=True)
    ]


def _only_suggesting(page: Page, weak: Sequence[str]) -> str:
    """'; C14 only suggests it'."""
    suggest = english.agreed(len(weak), "suggests", "suggest")
    return f"; {places_listed(page, weak)} only {suggest} it" if weak else ""
