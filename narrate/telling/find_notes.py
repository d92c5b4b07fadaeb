"""
What was noted of finds and samples whatever is read of them: rows of cobs, grounds of a name, a block lifted whole.

Told with the list of finds, to visitors in the words of the pack; what bears on a reading stands beside it.
"""

from __future__ import annotations

from narrate.model.narrative import Sentence
from narrate.model.stratigraphy import Context
from narrate.telling.observations import Noted, marked, notes_of
from narrate.telling.page import Page

NAMED = 4
"""Notes on finds of one context that are quoted."""


def find_note_sentences(page: Page, context: Context) -> list[Sentence]:
    """One sentence for the finds, of each what the laboratory wrote; then what was noted of the samples."""
    if page.is_review:
        return []
    notes = [n for n in page.noted or notes_of(page, context) if n.observation.told_with == "finds"]
    if page.is_plain:
        told = {note.observation.plain: note.ref for note in notes if note.observation.plain}
        return [sentence for plain, ref in told.items() for sentence in page.say([ref], plain)]
    sentences = _of_finds(page, [note for note in notes if note.observation.noted_of == "find"])
    for note in (note for note in notes if note.observation.noted_of == "ground"):
        quote, means = marked(note.quote), note.observation.means
        because = f" ({means})" if means else ""
        sentences += page.say([note.ref], f"{note.who} notes “{quote}”{because}", f"{note.who} has “{quote}”{because}")
    return sentences


def formed_sentences(page: Page) -> list[Sentence]:
    """How a deposit formed in the words of its record, where nothing is read of that: swept clean, in three tips."""
    if page.is_plain or page.is_review:
        return []
    for note in page.noted:
        bears = (*note.observation.agrees_with, *note.observation.against)
        is_of_it = note.observation.noted_of == "ground" and any(name.startswith("deposit.") for name in bears)
        if is_of_it and not page.has_told(marked(note.quote)):
            return page.say(
                [note.ref], f"{note.who} notes “{marked(note.quote)}”", f"{note.who} has “{marked(note.quote)}”"
            )
    return []


def _of_finds(page: Page, notes: list[Noted]) -> list[Sentence]:
    """'Of the maize cobs of S028 the laboratory notes “eight- and ten-row”, and of the maize kernels …'."""
    whose: dict[tuple[str, str], list[Noted]] = {}
    for note in notes:
        whose.setdefault((note.quote, note.observation.means), []).append(note)
    shown = list(whose.items())[:NAMED]
    if not shown:
        return []
    refs = [note.ref for _, same in shown for note in same]
    texts = []
    for (quote, means), same in shown:
        because = f" ({means})" if means else ""
        names = list(dict.fromkeys(note.who for note in same))
        texts.append((" and of ".join(names), f"“{marked(quote)}”{because}"))
    (first, said), *others = texts
    rest = [f"of {name} {quote}" for name, quote in others]
    before = f"of {first} the laboratory notes {said}"
    return page.say(refs, page.listed([before, *rest]) if len(rest) != 1 else f"{before}, and {rest[0]}")
