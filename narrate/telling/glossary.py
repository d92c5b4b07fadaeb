"""Trade words in a text, and how an audience has them explained."""

from __future__ import annotations

import re
from collections.abc import Collection

from narrate.model.audiences import Audience

TRADE_WORDS = (
    "assemblage", "charred", "carbonised", "context", "cupule", "cupules", "density", "flotation", "macrofossil",
    "taxon", "taxa", "ubiquity", "kernels per cupule", "light fraction", "heavy fraction", "primary deposit",
    "secondary deposit", "tertiary", "propagule", "ruderal", "interval", "intrusion", "smudge pit",
)  # fmt: skip
"""Words that visitors are not expected to know."""


GLOSSES = (
    ("toxic", "a poisonous plant"),
    ("native-crop", "an old seed crop"),
    ("tobacco", ""),
    ("nut", ""),
    ("fruit", "a wild fruit"),
    ("greens", "a leafy wild plant"),
    ("ruderal", "a weed of open ground"),
    ("wetland", "a plant of wet ground"),
)
"""Tag of a plant -> what kind of plant it is, for visitors; the first that it bears."""


def with_poison_told(explained: str, tags: Collection[str]) -> str:
    """
    What is said of a plant, with its poison where it bears one: no gloss of a poisonous plant leaves that out.

    >>> with_poison_told("a vine with blue berries", {"toxic"})
    'a poisonous plant: a vine with blue berries'
    """
    if "toxic" not in tags or "poison" in explained:
        return explained
    return f"a poisonous plant: {explained}" if explained else "a poisonous plant"


def of_many(explained: str) -> str:
    """
    What is said of one fruit, said of several: a page names persimmons, which are no one fruit.

    >>> of_many("a sweet orange fruit"), of_many("a dark berry of a shrub"), of_many("a tall native grass")
    ('sweet orange fruits', 'dark berries of a shrub', 'a tall native grass')
    """
    return re.sub(
        r"^an? ((?:[\w-]+ )*?)(fruit|berry)\b",
        lambda found: f"{found[1]}{'berries' if found[2] == 'berry' else 'fruits'}",
        explained,
    )


def trade_words_in(text: str) -> tuple[str, ...]:
    """
    Trade words that a text uses, in the order of the list.

    >>> trade_words_in("The density of cupules is high.")
    ('cupules', 'density')
    """
    lower = text.lower()
    return tuple(word for word in TRADE_WORDS if re.search(rf"\b{re.escape(word)}\b", lower))


def unexplained(text: str, audience: Audience) -> tuple[str, ...]:
    """Trade words in a text that the audience's glossary does not explain."""
    known = {word.lower() for word, explanation in audience.glossary.items() if explanation}
    return tuple(word for word in trade_words_in(text) if word not in known)


def explained_in(text: str, audience: Audience) -> tuple[tuple[str, str], ...]:
    """Words of the glossary that a text uses, with their explanations, in alphabetical order."""
    lower = text.lower()
    pairs = [(word, said) for word, said in audience.glossary.items() if said]
    return tuple(sorted((w, s) for w, s in pairs if re.search(rf"\b{re.escape(w.lower())}s?\b", lower)))
