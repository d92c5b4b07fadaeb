"""Facts of one context from several samples: a feature that is a kind, and facts that contradict each other."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping

from narrate.model.packs import Words
from narrate.reading.intake.header_words import heading
from narrate.reading.intake.kind_words_abroad import kind_of, kind_within
from narrate.reading.intake.said import Said
from narrate.reading.intake.told import Told

Facts = dict[str, list[Said]]
OF_CONTEXTS = ("kind", "phase", "feature")
"""What one context has once, whatever samples were taken from it."""


def kinds_for_features(facts: Mapping[str, Mapping[str, list[Said]]], words: Words) -> dict[str, Facts]:
    """
    The facts with what stands under 'Feature' and names a kind alone ('pit', 'Grube') as the kind of the context.

    All pits of a site are no one feature; 'Pit 12' is a feature and stays one.
    """
    result: dict[str, Facts] = {}
    for id, said in facts.items():
        own = {role: list(found) for role, found in said.items()}
        kinds = [one for one in own.get("feature", ()) if _is_kind_alone(one.text, words)]
        if kinds:
            own["feature"] = [one for one in own["feature"] if one not in kinds]
            own["description" if own.get("kind") else "kind"] = [*own.get("description", ()), *kinds]
            own = {role: found for role, found in own.items() if found}
        result[id] = own
    return result


def _is_kind_alone(text: str, words: Words) -> bool:
    """Whether a text names a kind and no one thing of it: 'pit', 'Ditch fill', 'fill of a large pit'."""
    bare = " ".join(_BESIDE.sub(" ", text).split())
    return bool(kind_of(text, words) or (bare and kind_of(bare, words)))


_BESIDE = re.compile(
    r"\b(?:fills?|of|an?|the|deposits?|primary|secondary|upper|lower|basal|large|small|shallow|deep|rectangular|circular|"
    r"verfüllung|füllung|comblement|remplissage|relleno|riempimento|wypełnisko|vulling|de|du|di|d'une?|del)\b",
    re.IGNORECASE,
)
"""Words that stand with a kind and name no one thing. Common practice, no source."""


def with_facts_of_context(said: Facts, of_context: Mapping[str, list[Said]]) -> Facts:
    """What a sample says, with what a list of contexts says of its context; both where a context has it once."""
    merged = {role: list(found) for role, found in said.items()}
    for role, more in of_context.items():
        if role not in merged:
            merged[role] = list(more)
        elif role in OF_CONTEXTS:
            merged[role] += [one for one in more if one not in merged[role]]
    return merged


def tell_contradictions(
    context: str, first: Mapping[str, list[Said]], said: Mapping[str, list[Said]], words: Words, told: Told
) -> tuple[str, ...]:
    """Tells what a later sample says of a context otherwise than the first did; gives it for the note of the sample."""
    notes = []
    for role in OF_CONTEXTS:
        before, now = _one(first.get(role, ())), _one(said.get(role, ()))
        if before is None or now is None or says_the_same(role, before.text, now.text, words):
            continue
        told.warning(
            "N318", f"context {context} {role} {now.text}", now.place,
            f"context {context}: {role} is '{now.text}' here and '{before.text}' in "
            f"{before.place.cell or before.place}; the first is drafted and the other kept in the note of the sample, "
            "expected one value for a context",
            "mend the context in the drafted records, or give the samples contexts of their own",
        )  # fmt: skip
        notes.append(f"{role} of the context written {now.text}")
    return tuple(notes)


def _one(said: Iterable[Said]) -> Said | None:
    return next(iter(said), None)


def says_the_same(role: str, before: str, now: str, words: Words) -> bool:
    """Whether two texts say the same, but for case and spaces; 'pit' and 'fill of pit' are one kind."""
    if " ".join(before.lower().split()) == " ".join(now.lower().split()):
        return True
    if role != "kind":
        return False
    kinds = [kind_of(text, words) or kind_within(text, words) for text in (before, now)]
    return bool(kinds[0]) and kinds[0] == kinds[1]


def contradicts(role: str, before: str, now: str, words: Words) -> bool:
    """Whether two texts of one sample are two of a kind; 'bulk' beside 'well' stands under a head of its own."""
    if says_the_same(role, before, now, words):
        return False
    if role == "kind":
        return all(kind_of(text, words) or kind_within(text, words) for text in (before, now))
    return role != "feature" or re.sub(r"\d+", "#", before.lower()) == re.sub(r"\d+", "#", now.lower())


def without_word(text: str) -> str:
    """
    The number of a context without the word before it; the text itself where that word is none of contexts.

    >>> without_word("US 2014"), without_word("2014"), without_word("Mur 3")
    ('2014', '2014', 'Mur 3')
    """
    match = re.match(r"([^\W\d_]{1,12})\.?\s*(?=\d)", text)
    return text[match.end() :] if match and heading(match[1]) in ("context", "feature") else text
