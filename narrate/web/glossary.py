"""Words of the trade and plants that need a word, each explained once, for the page of the glossary."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from narrate.model.audiences import Audience
from narrate.model.edition import Edition
from narrate.model.ids import SITE, Subject
from narrate.model.plants import Part
from narrate.telling.names import Names
from narrate.web.filters import upper_first
from narrate.web.wording import Wording

_TRADE = [
    ("context", "The smallest unit that was dug by itself: one fill, one floor, one layer."),
    ("feature", "Contexts that make one thing, such as the fills of one pit."),
    ("sample", "Sediment taken from one context and floated."),
    ("flotation", "Washing sediment in water so that charred remains float off and are caught in a sieve."),
    ("light fraction", "What floats: charred plants, and modern roots."),
    ("heavy fraction", "What sinks and is caught in a sieve of its own: sherds, flakes, bone, some nutshell."),
    ("phase", "A time in which people used the place, told apart from others by what was found."),
    ("charcoal", "Wood that fire turned to carbon; the kind of tree can often still be named."),
    ("charred", "Turned to carbon by heat with too little air to burn up; charred remains do not rot."),
    ("item", "One counted piece: a seed, a kernel, a cupule, a fragment of nutshell."),
    ("density", "Items for every litre of sediment floated."),
    ("ubiquity", "The share of samples that hold a plant at least once."),
    ("95% interval", "The range that such a figure would fall in, 95 times in 100, if it were counted anew."),
    ("primary deposit", "Remains that lie where they were burned or dropped."),
    ("secondary deposit", "Remains that were thrown away or moved once."),
    ("tertiary deposit", "Remains that were moved more than once, so that they say little of where they lie."),
    ("cf.", "Latin, 'compare': the remains look like the plant named, and are not certain to be it."),
    ("rarefaction", "How many kinds to expect if fewer items had been counted, so that rich and poor samples compare."),
    ("claim", "A statement judged for one place or time, with everything that speaks for and against it."),
    ("support", "The weighed evidence for a claim, from 0 to 1. It is not a probability."),
    (
        "redrawn counts",
        "The counts drawn again by chance, many times, as if the same soil had been sampled and counted anew. What "
        "most of these counts bear out does not hang on a few seeds.",
    ),
]

_BOTANY = [
    ("achene", "A small dry fruit with one seed in it, which most people would call a seed."),
    ("apical end", "The end of a grain that lies away from the part that sprouts."),
    ("cotyledon", "One of the two halves of a seed such as a bean, or of the kernel of a nut."),
    ("cupule", "The small hard cup of a corn cob in which two kernels sit."),
    ("embryo", "The part of a seed or grain that sprouts."),
    ("floret base", "The foot of the husk in which one grain of a grass sits."),
    ("glume", "One of the thin scales around a kernel or grain."),
    ("hulled cereal", "A cereal whose grains stay in their husks when it is threshed."),
    ("node", "The thick joint of a straw or stem."),
    ("nutmeat", "The kernel of a nut."),
]
"""Words of botany that entries on plant parts use, for visitors."""


def words(edition: Edition) -> tuple[tuple[str, tuple[tuple[str, str], ...]], ...]:
    """Words of the trade by what they name, each explained."""
    packs = edition.packs
    kinds = {c.kind for c in edition.project.contexts}
    methods = {s.method for s in edition.project.samples}
    parts = {t.part for found in edition.findings.subjects.values() for t in found.tallies}
    audience = packs.audiences.get(edition.audience)
    wording = Wording(edition)
    known = [packs.words.context_kinds[k] for k in kinds if k in packs.words.context_kinds]
    of_parts = [_part(packs.words.parts[p], wording.part(p)) for p in parts if p in packs.words.parts]
    found = (
        ("Places and samples", _of_place(audience)),
        # A word stands here as the pages have it.
        ("Kinds of context", [(k.plain if wording.is_public and k.plain else k.id, k.explained) for k in known]),
        ("Plant parts", [*of_parts, *(_of_botany(of_parts) if wording.is_public else ())]),
        ("How samples were taken", [(m, packs.words.methods.get(m, "")) for m in methods]),
        ("Plants", _plants(edition, audience) if audience is not None else []),
    )
    return tuple((title, told) for title, listed in found if (told := _once(listed)))


def _once(listed: Iterable[tuple[str, str]]) -> tuple[tuple[str, str], ...]:
    """Each word once, in order of the alphabet, with all that is said of it; no text that begins another."""
    told: dict[str, list[str]] = {}
    for word, says in listed:
        if word and says:
            told.setdefault(word, []).append(upper_first(says.rstrip(".")))
    return tuple(sorted((word, ". ".join(_longest(texts))) for word, texts in told.items()))


def _longest(texts: Sequence[str]) -> list[str]:
    """Those texts with which no other begins, the longest first."""
    kept: list[str] = []
    for text in sorted(set(texts), key=lambda text: (-len(text), text)):
        if not any(other.startswith(text) for other in kept):
            kept.append(text)
    return kept


def _of_place(audience: Audience | None) -> list[tuple[str, str]]:
    """Words of the trade, or in their place the audience's own; a word that the audience explains in two forms once."""
    own = {says: word for word, says in _of_audience(audience)} if audience is not None else {}
    taken = {form for word in own.values() for form in (word, word.removesuffix("s"))}
    return [*(told for told in _TRADE if told[0] not in taken), *((word, says) for says, word in own.items())]


def _part(part: Part, named: str) -> tuple[str, str]:
    """A part by the name that the pages give it, with its plain name, where that is another, and how it is counted."""
    plain = part.plain if part.plain != named else ""
    counting = f"{upper_first(part.counting)}." if part.counting else ""
    return named, f"{plain}. {counting}" if plain and counting else plain or counting


def _of_botany(told: Iterable[tuple[str, str]]) -> list[tuple[str, str]]:
    """Words of botany that entries on parts use and that are none of those parts themselves."""
    told = list(told)
    own, texts = {word for word, _ in told}, " ".join(says for _, says in told).lower()
    return [(word, says) for word, says in _BOTANY if word not in own and re.search(rf"\b{word}s?\b", texts)]


_EXPLAINED = ("wide term ", "term ", "gloss of ")
"""How an audience's words are named that explain another."""


def _of_audience(audience: Audience) -> Iterable[tuple[str, str]]:
    """Words that the texts of an audience explain where they use them: hamlet, small-seeded crops, corn chaff."""
    for name, said in audience.words.items():
        start = next((start for start in _EXPLAINED if name.startswith(start)), None)
        if start is not None:
            yield name.removeprefix(start), said.split(" | ")[0].strip()


def _plants(edition: Edition, audience: Audience) -> list[tuple[str, str]]:
    """Plants that were found and need a word, and all others of the audience's own list."""
    names, taxa = Names(audience=audience, packs=edition.packs), edition.packs.taxa
    tallies = edition.findings.of(Subject(level="site", id=SITE)).tallies
    found = [taxa[t.taxon] for t in tallies if t.taxon is not None and t.taxon in taxa]
    told = {t.name: names.gloss(t) for t in found if t.name and names.is_plain}
    return list({**{name: says for name, says in told.items() if says}, **audience.glossary}.items())
