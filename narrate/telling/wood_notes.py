"""What the laboratory noted of the wood: timber of a building, twigs and branches. Told with the wood itself."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.ids import Subject
from narrate.model.narrative import Sentence
from narrate.model.observations import Observation
from narrate.model.stratigraphy import Context
from narrate.telling import english
from narrate.telling.observations import Noted, marked, notes_of
from narrate.telling.page import Page
from narrate.telling.places_named import places_named
from narrate.telling.spread import ids_listed
from narrate.telling.through_time import sampled_phases
from narrate.telling.woods_changed import without_timber

TIMBER = "building timber"
"""Id of the observation that wood was part of a building."""
NAMED = 3
"""Notes of one sort that are quoted."""
PINE = ("change.pine-rises", "change.pine-declines")
"""Changes of the share of one wood, which a burned building would turn."""


def wood_note_sentences(page: Page, context: Context) -> list[Sentence]:
    """One sentence for each sort of thing that was noted of the wood."""
    by_sort: dict[str, list[Noted]] = {}
    for note in notes_of(page, context):
        if _is_of_wood(note.observation):
            by_sort.setdefault(note.observation.id, []).append(note)
    sentences: list[Sentence] = []
    for notes in by_sort.values():
        refs, seen = [note.ref for note in notes], notes[0].observation
        if page.is_plain:
            sentences += page.say(refs, seen.plain) if seen.plain else []
            continue
        quoted = [f"“{marked(note.quote)}” of {note.who}" for note in notes[:NAMED]]
        first = f"of {notes[0].who} the laboratory notes “{marked(notes[0].quote)}”"
        more = f", and {page.listed(quoted[1:])}" if quoted[1:] else ""
        sentences += page.say(refs, f"{first}{more}", f"the laboratory notes {page.listed(quoted)}")
    return sentences


def timber_for_visitors(page: Page, contexts: Sequence[Context]) -> list[Sentence]:
    """Of a phase whose people burned wood: in which places some of it had been part of a building, and no firewood."""
    claim = page.dig.claims.find(page.subject, WOOD_BURNED)
    if not page.is_plain or page.subject.level != "phase" or claim is None or claim.id not in page.told:
        return []
    of_timber = [c.id for c in contexts if any(n.observation.id == TIMBER for n in notes_of(page, c))]
    refs = [claim.id, *(page.dig.record_ref(Subject(level="context", id=id)) for id in of_timber)]
    where = places_named(page, of_timber)
    return page.say(refs, f"not all burned wood was firewood: some of it, in {where}, had been part of a building") if of_timber else []


WOOD_BURNED = "fuel.wood"
"""The statement that people burned wood in their fires."""


def timber_sentences(page: Page) -> list[Sentence]:
    """Where the woods of the phases are compared: contexts whose wood was part of a building, and so no fuel."""
    claims = [page.dig.claims.find(page.subject, name) for name in PINE]
    held = [claim for claim in claims if claim is not None and claim.verdict == "holds"]
    if page.is_plain or not held:
        return []
    contexts = []
    for context in page.dig.project.contexts:
        notes = [n for n in notes_of(page, context) if n.observation.id == TIMBER]
        contexts += [context.id] if notes else []
    if not contexts:
        return []
    ids = ids_listed(page, contexts)
    is_it = english.agreed(len(contexts), "it speaks", "they speak")
    phases = sampled_phases(page)
    without = without_timber(page, contexts, phases[0], phases[-1]) if len(phases) > 1 else ""
    refs = [held[0].id, *(page.dig.record_ref(Subject(level="context", id=id)) for id in contexts)]
    return page.say(
        refs,
        f"of the wood of {ids} some is noted as building timber, so that {is_it} of building and not of fuel{without}",
        f"some of the wood of {ids} is noted as building timber: {is_it} of building and not of fuel{without}",
    )


def _is_of_wood(seen: Observation) -> bool:
    return seen.noted_of == "find" and seen.of is not None and "wood" in seen.of.role
