"""Which places bear out what their phase reads, for visitors: places by what they were, and each by its grade."""

from __future__ import annotations

import re
from collections.abc import Collection, Sequence

from narrate.model.claims import GRADE_NAMES, Claim
from narrate.model.ids import Subject
from narrate.model.narrative import Sentence
from narrate.telling import english, setting, shared_words
from narrate.telling.borne import Borne
from narrate.telling.foods_once import is_told_with_another_food
from narrate.telling.page import Page
from narrate.telling.places_named import places_or_number

VERBS = {
    "strongly supports": ("speaks strongly for", "speak strongly for"),
    "supports": ("speaks for", "speak for"),
    "suggests": ("hints at", "hint at"),
}
"""What one place does to a reading, and what several do."""

THAT = ("that", "it", "it too")
"""What stands for a reading that a sentence has named."""

USED = re.compile(r"people used ([^()]+) as food$")


def is_own(page: Page, one: Borne, own: Collection[str]) -> bool:
    """Whether the phase or dig makes the reading too, be it as a hint alone; what no context carries is its own."""
    claim = page.dig.claims.find(page.subject, one.statement)  # type: ignore[arg-type]
    is_held = claim is not None and claim.verdict == "holds"
    return one.statement in own or is_held or bool(one.hinted) or not one.carried


def carried_for_visitors(page: Page, borne: Sequence[Borne], own: Collection[str]) -> list[Sentence]:
    """'We saw signs of nuts as food in earth oven C03'; of other readings each place by how firmly it bears it."""
    foods = [one for one in borne if USED.match(_clause(page, one))]
    rest = [one for one in borne if one not in foods]
    sentences = _foods(page, foods) + _not_of_the_whole(page, foods)
    if not rest:
        return sentences
    more = "" if any(is_own(page, one, own) for one in rest) else "single places tell us more: "
    parts = by_grade(page, rest[0]) if len(rest) == 1 else _by_place(page, rest)
    refs = [ref for one in rest for ref in one.refs]
    if len(rest) > 1 and len(parts) > 2:
        for i, part in enumerate(_by_reading(page, rest)):
            sentences += page.say(refs, part if i else f"{more}{part}")
        return sentences
    row = english.listed(parts) if len(parts) > 2 else ", and ".join(parts)
    return sentences + page.say(refs, f"{more}{row}")


def _clause(page: Page, one: Borne) -> str:
    return page.in_own_words(page.dig.packs.statements[one.statement].plain)  # type: ignore[index]


def _foods(page: Page, foods: Sequence[Borne]) -> list[Sentence]:
    """'We saw signs of nuts and wild fruit as food in storage pit C14, and of corn in burned building C17.'"""
    at: dict[tuple[str, ...], list[str]] = {}
    for one in foods:
        match = USED.match(_clause(page, one))
        at.setdefault(tuple(sorted(id for id, _ in one.carried)), []).append(match[1] if match else one.noun)
    texts: list[str] = []
    for ids, plants in at.items():
        food = " as food" if not texts else ""
        texts.append(f"{page.listed(plants)}{food} in {places_or_number(page, ids)}")
    if not texts:
        return []
    refs = [ref for one in foods for ref in one.refs]
    if len(texts) > 1 and len(" ".join(texts).split()) > LONG:
        said = page.say(refs, f"we saw signs of {texts[0]}")
        for text in texts[1:]:
            said += page.say(refs, f"signs of {text.replace(' in ', ' as food came from ', 1)}")
        return said
    row = texts[0] if len(texts) == 1 else f"{', of '.join(texts[:-1])}, and of {texts[-1]}"
    return page.say(refs, f"we saw signs of {row}")


def _not_of_the_whole(page: Page, foods: Sequence[Borne]) -> list[Sentence]:
    """'Of wild fruit we cannot say it for the Late hamlet as a whole': foods of places that their phase does not make."""
    phase = next((p for p in page.dig.project.phases if page.subject == Subject(level="phase", id=p.id)), None)
    claims = [(one, page.dig.claims.find(page.subject, one.statement)) for one in foods]  # type: ignore[arg-type]
    unread = [one for one, claim in claims if one.carried and (claim is None or claim.verdict != "holds")]
    if phase is None or not unread:
        return []
    matches = [USED.match(_clause(page, one)) for one in unread]
    plants = page.listed(match[1] if match else one.noun for match, one in zip(matches, unread, strict=True))
    of = "we cannot say it of" if len(unread) == len(foods) else f"of {plants} we cannot say it for"
    refs = [ref for one in unread for ref in one.refs]
    return page.say(refs, f"{of} {setting.phase_name(phase)} as a whole")


LONG = 24
"""Words from which what was seen at places is told in sentences of its own."""


def lone_foods(page: Page, read: Sequence[str], own: Collection[str]) -> list[Sentence]:
    """
    'Storage pit C06 alone speaks for wild fruit as food, and we cannot say it of the hamlet as a whole': foods that one
    place bears firmly and the phase does not read; with two such places they are told with the others.
    """
    dig = page.dig
    phase = next((p for p in dig.project.phases if page.subject == Subject(level="phase", id=p.id)), None)
    whole = "all of them" if phase is None else f"{setting.phase_name(phase)} as a whole"
    at: dict[str, list[tuple[str, Claim]]] = {}
    for id in read:
        for claim in dig.claims.holding(Subject(level="context", id=id)):
            is_new = claim.statement not in own and not is_told_with_another_food(dig, claim)
            if claim.question == "food" and is_new and _is_firm(page, claim):
                at.setdefault(claim.statement, []).append((id, claim))
    sentences: list[Sentence] = []
    for name, places in at.items():
        plants = USED.match(page.in_own_words(dig.packs.statements[name].plain))  # type: ignore[index]
        if len(places) == 1 and plants:
            where, refs = places_or_number(page, [places[0][0]]), [places[0][1].id]
            spoken = f"{where} alone speaks for {plants[1]} as food"
            sentences += page.say(refs, f"{spoken}, and we cannot say it of {whole}")
    return sentences


def _is_firm(page: Page, claim: Claim) -> bool:
    """Whether a place bears a food as 'supports' or firmer, and its phase does not read it at all."""
    whole = page.dig.claims.find(page.subject, claim.statement)
    is_read = whole is not None and whole.verdict == "holds"
    return not is_read and GRADE_NAMES.index(claim.grade) > GRADE_NAMES.index("suggests")


def _by_place(page: Page, borne: Sequence[Borne]) -> list[str]:
    """'storage pit C06 speaks for plants gathered in early summer and autumn', places of like readings together."""
    place = {statement: i for i, statement in enumerate(page.dig.packs.statements)}
    of_place: dict[str, dict[str, list[str]]] = {}
    for one in sorted(borne, key=lambda one: place[one.statement]):  # type: ignore[index]
        for id, claim in one.carried:
            of_place.setdefault(id, {}).setdefault(claim.grade, []).append(one.noun)
    alike: dict[tuple[tuple[str, tuple[str, ...]], ...], list[str]] = {}
    for id, grades in of_place.items():
        alike.setdefault(tuple((grade, tuple(nouns)) for grade, nouns in grades.items()), []).append(id)
    parts = []
    for readings, ids in sorted(alike.items(), key=lambda pair: -sum(len(nouns) for _, nouns in pair[0])):
        said = [_does(page, VERBS[grade][0 if len(ids) == 1 else 1], nouns) for grade, nouns in readings]
        parts.append(f"{places_or_number(page, ids)} {' and '.join(said)}")
    return parts


def _by_reading(page: Page, borne: Sequence[Borne]) -> list[str]:
    """'rubbish pit C22 speaks for plants gathered in autumn, and floor C14 hints at that': a text a reading."""
    parts: list[str] = []
    for one in borne:
        told = by_grade(page, one, also=" also" if parts else "")
        parts.append(", and ".join(told) if len(told) < 3 else english.listed(told))
    return parts


def _does(page: Page, verb: str, nouns: Sequence[str]) -> str:
    """'hints at plants gathered in early summer and autumn', 'hints at cleared ground nearby and at fruit picked …'."""
    gathered = shared_words.gathered(nouns, oxford=page.names.has_oxford)
    if gathered != page.listed(nouns) or len(nouns) == 1:
        return f"{verb} {gathered}"
    preposition = verb.split()[-1]
    return f"{verb} {f' and {preposition} '.join(nouns)}"


def by_grade(page: Page, one: Borne, *, also: str = "") -> list[str]:
    """
    'rubbish pit C22 speaks for plants gathered in autumn', 'storage pit C14 hints at that'; places of three grades in
    one clause: 'the strongest signs of … came from hearth C11; smoke pit C13 gave clear ones, and floor C15 a hint'.
    """
    by_grade: dict[str, list[str]] = {}
    for id, claim in one.carried:
        by_grade.setdefault(claim.grade, []).append(id)
    if len(by_grade) > len(THAT) - 1:
        strongest, clear, hints = (places_or_number(page, ids) for ids in by_grade.values())
        hint = "a hint" if len(list(by_grade.values())[-1]) == 1 else "hints"
        return [f"the strongest signs of {one.noun} came from {strongest}; {clear} gave clear ones, and {hints} {hint}"]
    parts: list[str] = []
    for (grade, ids), that in zip(by_grade.items(), (one.noun, *THAT), strict=False):
        verb = VERBS[grade][0 if len(ids) == 1 else 1]
        parts.append(f"{places_or_number(page, ids)}{also if not parts else ''} {verb} {that}")
    return parts

