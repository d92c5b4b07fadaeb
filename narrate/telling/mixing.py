"""What the records say of mixing, read or not: plough, worms, rodents, roots, and what keeps fills apart."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from narrate.model.ids import Subject
from narrate.model.narrative import Sentence
from narrate.model.stratigraphy import Context
from narrate.telling import english, setting
from narrate.telling.observations import DISTURBED, Noted, marked, notes_of
from narrate.telling.page import Page

APART = "kept apart"
"""Id of the observation that something lies between a deposit and the next."""
SEEN = {"worm_casts": "worm casts", "rodent_signs": "traces of rodents", "insects": "insects", "rootlets": "rootlets"}
"""What samples record of later animals and roots, by the words of the record; any other word is told as it stands."""
ANIMALS = ("worm_casts", "rodent_signs")
"""What carries finds up and down; rootlets alone are in nearly every soil, and are told to the team."""
AMOUNTS = ("many", "some", "few")


def mixing_sentences(page: Page, context: Context) -> list[Sentence]:
    """
    Notes and signs of mixing that no other sentence of the page has told, and what speaks against it.

    Left to other sentences where the deposit is read as disturbed, which is then told with its signs.
    """
    read = page.dig.claims.find(page.subject, DISTURBED)
    if page.is_plain or (read is not None and read.verdict == "holds"):
        return []
    notes = _of_mixing(notes_of(page, context))
    stirred = [n for n in notes if DISTURBED in n.observation.agrees_with and not page.has_told(marked(n.quote))]
    apart = [n for n in notes if n.observation.id == APART and not page.has_told(marked(n.quote))]
    beside = [(other, n) for other in _others(page, context) for n in _of_mixing(notes_of(page, other))]
    between = [(other, n) for other, n in beside if n.observation.id == APART and not apart]
    seen, refs = _seen(page, context, at_least="few" if stirred or apart else "some")
    is_by_animals = context.security != "sealed" and any(SEEN[kind] in seen for kind in ANIMALS)
    if setting.items_counted(page) < setting.FEW_ITEMS or not (
        stirred or apart or is_by_animals or (seen and page.is_review)
    ):
        return []
    by_record: dict[str, list[str]] = {}
    for note in (*stirred, *apart):
        by_record.setdefault(note.who, []).append(f"“{marked(note.quote)}”")
    texts = [f"{who} says {page.listed(dict.fromkeys(quotes))}" for who, quotes in by_record.items()]
    texts += [f"{seen} {'were' if texts else 'are'} noted"] if seen else []
    told = " and ".join(texts) if len(texts) < 3 else page.listed(texts)
    if between:
        other, note = between[0]
        told += f"; of {english.literal(other.id)}, of the same feature, {note.who} says “{marked(note.quote)}”"
    so = (
        "single finds of another time cannot be ruled out, though the one was kept from the other"
        if apart or between
        else "single finds of another time cannot be ruled out"
    )
    refs = [*(n.ref for n in (*stirred, *apart)), *(n.ref for _, n in between), *refs]
    return page.say(refs, f"as to mixing, {told}, so that {so}")


def between_fills(page: Page, contexts: Sequence[Context]) -> str:
    """'; of C08 the record says “…” and of C16 “…”': what bears on mixing within a feature and was not told."""
    told: list[str] = []
    for context in contexts:
        notes = [n for n in _of_mixing(notes_of(page, context)) if not page.has_told(marked(n.quote))]
        quotes = list(dict.fromkeys(f"“{marked(n.quote)}”" for n in notes))
        if quotes:
            says = "the record says " if not told else ""
            told.append(f"of {english.literal(context.id)} {says}{page.listed(quotes)}")
    return f"; {page.listed(told)}" if told else ""


def _of_mixing(notes: Iterable[Noted]) -> list[Noted]:
    """Notes of the ground on mixing, each sentence once: one that says both is told for what keeps fills apart."""
    found = [n for n in notes if n.observation.noted_of == "ground"]
    apart = {n.quote for n in found if n.observation.id == APART}
    return [
        n for n in found
        if n.observation.id == APART or (DISTURBED in n.observation.agrees_with and n.quote not in apart)
    ]  # fmt: skip


def _others(page: Page, context: Context) -> list[Context]:
    """Other contexts of the same feature."""
    return [c for c in page.dig.project.contexts_of(context.feature) if c.id != context.id]


def _seen(page: Page, context: Context, *, at_least: str) -> tuple[str, list[str]]:
    """'some worm casts (S018 and S019) and few traces of rodents (S037)', with the samples' records."""
    found: dict[tuple[str, str], list[str]] = {}
    for sample in page.dig.project.samples_of(context.id):
        for kind, amount in sample.modern_intrusions.items():
            if amount in AMOUNTS[: AMOUNTS.index(at_least) + 1] and (amount != "few" or kind == "rodent_signs"):
                found.setdefault((amount, kind), []).append(sample.id)
    place = {kind: i for i, kind in enumerate(SEEN)}
    ordered = sorted(found.items(), key=lambda one: (AMOUNTS.index(one[0][0]), place.get(one[0][1], len(place))))
    by_place: dict[tuple[str, tuple[str, ...]], list[str]] = {}
    for (amount, kind), ids in ordered:
        by_place.setdefault((amount, tuple(ids)), []).append(SEEN.get(kind, kind.replace("_", " ")))
    texts = [
        f"{'a few' if amount == 'few' else amount} {page.listed(kinds)} ({page.listed(map(english.literal, ids))})"
        for (amount, ids), kinds in by_place.items()
    ]
    samples = dict.fromkeys(id for ids in found.values() for id in ids)
    refs = [page.dig.record_ref(Subject(level="sample", id=id)) for id in samples]
    return page.listed(texts) if texts else "", refs
