"""What people noted in the field and the laboratory, told in their own words beside the readings that it bears on."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from narrate.model.findings import Tally
from narrate.model.ids import Subject
from narrate.model.narrative import Sentence
from narrate.model.observations import NotedOf, Observation
from narrate.model.signs import Signs, signs_in
from narrate.model.stratigraphy import Context
from narrate.telling import english
from narrate.telling.behind import facts_of, is_meant
from narrate.telling.citations import works_cited
from narrate.telling.frames import noun_of
from narrate.telling.not_against import not_against_sentences
from narrate.telling.noted_plainly import said_plainly, seen_of
from narrate.telling.page import Page
from narrate.telling.plan import Reading
from narrate.telling.same_event import is_event_told

WORDS_AT_MOST = 26
"""Words of a note that are quoted; of a longer one only the part that matters."""

FINDS_FOR_ONE = 2
"""Notes on finds that are told of one reading."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Noted:
    """A sign in a note, with the words around it."""

    observation: Observation
    quote: str
    who: str
    """'the excavation record', 'the record of sample S012', 'the chenopod seeds of S012'."""
    ref: str
    items: int = 0
    """Of a note on finds, the items of its row."""
    also: str = ""
    """Another quotation of the same record, told in the same sentence."""


def notes_of(page: Page, context: Context) -> tuple[Noted, ...]:
    """What was noted of a context and its finds that is a sign of something; nothing where no notes are told."""
    signs = page.dig.signs
    if "noted" not in page.audience.words or signs is None or signs.every is None:
        return ()
    return (*_of_ground(page, context, signs), *_of_finds(page, context, signs))


SORTS: tuple[NotedOf, ...] = ("ground", "find", "find", "ground")
"""Notes of the ground and of finds in their turns."""


def noted_sentences(
    page: Page, told: Sequence[Reading], *, at_most: int = 3, of: Sequence[NotedOf] = SORTS
) -> list[Sentence]:
    """
    Notes that agree with readings just told or speak against them, of the ground and of finds, two of a sort at most.

    of: which notes are told, in their turns.

    Nothing is told that bears on no reading of the page, and nothing that the page has quoted before.
    """
    if not page.noted or not told:
        return []
    at_most += page.is_plain and at_most > 2
    sentences: list[Sentence] = []
    borne: list[str] = []
    seen: set[str] = set()
    for sort in of:
        waiting = [r for r in told if sort == "ground" or borne.count(r.claim.id) < FINDS_FOR_ONE]
        is_room = len(sentences) < min(at_most, 2 if sort == "ground" and not page.is_plain else at_most)
        notes = [n for n in page.noted if n.observation.noted_of == sort and n.observation.id not in seen]
        notes = [n for n in notes if n.observation.told_with == "readings"]
        best = _best(page, notes, waiting) if is_room else None
        if best is not None:
            own, joined = best[0].observation, _of_one_record(page, notes, *best)
            sentences += _told(page, joined, *best[1:], told) + not_against_sentences(page, own, best[0].ref)
            seen.update(n.observation.id for n in notes if n.observation is own or joined.also)
            borne += [r.claim.id for r in (*best[1], *best[2])] if sort == "find" else []
    return sentences


def stirring_seen(page: Page, context: Context) -> tuple[str, str]:
    """How the diggers saw that a place was disturbed, in plain words, and the record that says so; else nothing."""
    seen = [n for n in notes_of(page, context) if DISTURBED in n.observation.agrees_with and n.observation.plain]
    seen = [n for n in seen if n.observation.noted_of == "ground"]
    return (seen[0].observation.plain, seen[0].ref) if seen else ("", "")


DISTURBED = "integrity.disturbed"
"""The statement that a deposit was disturbed."""


def answered(notes: Iterable[Noted], held: Iterable[Reading]) -> set[str]:
    """Claims with which some note agrees: what a rule warns of in general words is then answered by a record."""
    notes = list(notes)
    denied = {(note.quote, statement) for note in notes for statement in note.observation.against}
    signs = {s for note in notes for s in note.observation.agrees_with if (note.quote, s) not in denied}
    return {r.claim.id for r in held if r.claim.statement in signs}


def _best(
    page: Page, notes: Iterable[Noted], told: Sequence[Reading]
) -> tuple[Noted, list[Reading], list[Reading]] | None:
    """The note that bears on most of the readings, the first of several."""
    best: tuple[Noted, list[Reading], list[Reading]] | None = None
    notes = list(notes)
    denied = {(note.quote, statement) for note in notes for statement in note.observation.against}
    for note in notes:
        # Words that speak against a reading as well are not quoted for it: basket-loads of sweepings are dumps.
        own = [r for r in told if r.claim.statement in note.observation.agrees_with]
        agrees = [r for r in own if (note.quote, r.claim.statement) not in denied]
        against = [r for r in told if r.claim.statement in note.observation.against]
        if not (agrees or against) or (best is not None and _weight(agrees, told) <= _weight(best[1], told)):
            continue
        if page.has_told(marked(note.quote)) or (page.is_plain and _is_known(page, note, told)):
            continue
        best = (note, agrees, against if not agrees else [])
    return best


def _of_one_record(page: Page, notes: list[Noted], best: Noted, agrees: list[Reading], against: list[Reading]) -> Noted:
    """A note with another of one record that agrees with the same: both are quoted in one sentence, and no third."""
    if page.is_plain or against or best.observation.noted_of != "ground":
        return best
    borne = {r.claim.statement for r in agrees}
    denied = {note.quote for note in notes if borne & set(note.observation.against)}
    for note in notes:
        is_other = note.quote not in (best.quote, *denied) and not page.has_told(marked(note.quote))
        if is_other and note.ref == best.ref and borne <= set(note.observation.agrees_with):
            return replace(best, also=note.quote)
    return best


def _is_known(page: Page, note: Noted, told: Sequence[Reading]) -> bool:
    """Whether visitors were told as much, by a rule, by a note, or as the reason why the soil is trusted less."""
    if not note.observation.plain or (DISTURBED in note.observation.agrees_with and _is_stirred(page)):
        return True
    is_event = is_event_told(page, note.observation.plain)
    return is_event or _is_told_by_a_rule(page, note, told) or _is_told_already(page, note)


def _is_told_by_a_rule(page: Page, note: Noted, told: Sequence[Reading]) -> bool:
    """Whether a rule behind a reading just told asks for such a note, and its reason has told as much."""
    words = set(note.observation.plain.split())
    rules = (page.dig.packs.rules.get(a.rule) for reading in told for a in reading.claim.held("for"))
    told_so = [r for r in rules if r is not None and r.says_plain and page.has_told(r.says_plain)]
    asked = [r for r in told_so if any(note.observation.id in fact.is_any_of for fact in facts_of(r.criteria))]
    return any(words <= set(rule.says_plain.split()) for rule in asked)


def _is_told_already(page: Page, note: Noted) -> bool:
    """Whether it was told, or the same thing was told as a sign of the same: ears that hung from a rafter are ears."""
    own = note.observation
    same = [n.observation.plain for n in page.noted if n.observation.agrees_with == own.agrees_with]
    told = (seen_of(plain) for plain in same if plain and page.has_told(seen_of(plain)))
    return any(seen.split()[0] == seen_of(own.plain).split()[0] for seen in told)


def _weight(agrees: Sequence[Reading], told: Sequence[Reading]) -> tuple[int, int]:
    """By how many readings a note agrees with, then by whether the first told of them is among them."""
    return len(agrees), -min((told.index(reading) for reading in agrees), default=len(told))


def _is_stirred(page: Page) -> bool:
    """Whether visitors were told that the soil had been stirred, of which a note would say no more."""
    return page.has_told("stirred") or page.has_told("trust it less")


def _told(
    page: Page, note: Noted, agrees: Sequence[Reading], against: Sequence[Reading], told: Sequence[Reading]
) -> list[Sentence]:
    """One note in the audience's wording; where it agrees with all that was just told, the readings are not named."""
    bears = agrees or against
    refs = [note.ref, *(r.claim.id for r in bears)]
    seen = note.observation
    if page.is_plain:
        return page.say(refs, said_plainly(page, note)) if seen.plain and agrees else []
    noun = _in_short(page, noun_of(page, [replace(r, behind=()) for r in bears[:2]], in_short=True))
    cited = works_cited(page, seen.sources)
    # A gloss is told with the work that says it: what everybody in the trade knows needs none.
    is_news = bool(cited) and seen.means and not page.has_told(seen.means) and not page.is_review
    means = f" ({seen.means})" if is_news else ""
    # What concerns the deposit's state was told elsewhere on the page: 'the same' would point at something else.
    is_near = all(r.claim.question != "integrity" for r in told)
    is_all = is_near and bool(agrees) and {r.claim.id for r in told} <= {r.claim.id for r in agrees}
    name = f"noted{' find' if seen.noted_of == 'find' else ''}{' of all' if is_all else '' if agrees else ' against'}"
    quote = marked(note.quote) + (f"” and “{marked(note.also)}" if note.also else _of_others_too(page, note))
    wordings = page.turns(name, who=note.who, quote=quote, noun=noun)
    wordings = [re.sub(r"”, which (agree|speak)s\b", r"”, which \1", t) if note.also else t for t in wordings]
    return page.say(refs, *(english.in_last_brackets(f"{text}{means}", cited) for text in wordings if text))


def _of_others_too(page: Page, note: Noted) -> str:
    """'” and of the maize kernels of S040 “still in rows': the same seen of another plant or part, in its own words."""
    if note.observation.noted_of != "find" or page.is_review:
        return ""
    same = [n for n in page.noted if n.observation.id == note.observation.id and n.quote != note.quote]
    others = [n for n in same if n.who != note.who and not page.has_told(marked(n.quote))]
    return f"” and of {others[0].who} “{marked(others[0].quote)}" if others else ""


def _in_short(page: Page, noun: str) -> str:
    """The nouns of readings, a long one that the page has told by its short word: `again <noun>` of the audience."""
    for name, short in page.audience.words.items():
        long = name.removeprefix("again ")
        if name.startswith("again ") and long in noun and page.has_told(long):
            noun = noun.replace(long, short)
    return noun


# Where notes stand


def _of_ground(page: Page, context: Context, signs: Signs) -> Iterator[Noted]:
    record = page.dig.record_ref(Subject(level="context", id=context.id))
    for text in (context.description, context.note):
        yield from _signs(signs, text, "ground", "the excavation record", record)
    for sample in page.dig.project.samples_of(context.id):
        ref = page.dig.record_ref(Subject(level="sample", id=sample.id))
        yield from _signs(signs, sample.note, "ground", f"the record of sample {english.literal(sample.id)}", ref)


def _of_finds(page: Page, context: Context, signs: Signs) -> Iterator[Noted]:
    samples = page.dig.project.samples_of(context.id)
    rows = [row for sample in samples for row in page.dig.notes.get(sample.id, ())]
    for row in (row for row in rows if row.condition in page.dig.ancient):
        found = list(_signs(signs, row.note, "find", "", ""))
        tally = _tally(page, row.identification.taxon, row.part) if found else None
        if tally is None:
            continue
        plainly = replace(tally, only_cf=False)
        named_cf = "" if row.identification.is_certain or not row.identification.qualifier else " named cf."
        number = row.count.number or 0
        who = f"the {page.names.part_of_plant(plainly, plural=number != 1)}{named_cf} of {english.literal(row.sample)}"
        for noted in _joined(found):
            if noted.observation.of is None or is_meant(noted.observation.of, tally, page.dig.packs):
                yield replace(noted, who=who, ref=tally.ref or page.ref("items"), items=number)


def _joined(found: Sequence[Noted]) -> list[Noted]:
    """Signs of one note; what it says of one observation in several places is one quotation."""
    quotes: dict[str, list[str]] = {}
    for noted in found:
        quotes.setdefault(noted.observation.id, []).append(noted.quote)
    first = {noted.observation.id: noted for noted in reversed(found)}
    return [replace(first[id], quote="; ".join(dict.fromkeys(quotes[id]))) for id in quotes]


def _tally(page: Page, taxon: str | None, part: str) -> Tally | None:
    ancient = [t for t in page.found.tallies if t.condition in page.dig.ancient]
    return next((t for t in ancient if t.taxon == taxon and t.part == part), None)


def _signs(signs: Signs, text: str, of: NotedOf, who: str, ref: str) -> Iterator[Noted]:
    for observation, sentence, match in signs_in(signs, text, of):
        yield Noted(observation=observation, quote=_quoted(sentence, match), who=who, ref=ref)


def _quoted(sentence: str, match: re.Match[str]) -> str:
    """The sentence, or of a long one the clauses around the sign, with a mark where something was left out."""
    if len(sentence.split()) <= WORDS_AT_MOST:
        return sentence.rstrip(";")
    clauses = [m.span() for m in re.finditer(r"[^,;:]+", sentence)]
    place = next(i for i, (start, end) in enumerate(clauses) if start <= match.start() < end)
    start, end = clauses[place]
    while place + 1 < len(clauses) and len(sentence[start : clauses[place + 1][1]].split()) <= WORDS_AT_MOST:
        place += 1
        end = clauses[place][1]
    text = sentence[start:end].strip()
    return f"{'… ' if sentence[:start].strip() else ''}{text}{' …' if sentence[end:].strip() else ''}"


_SMALL = frozenset((
    "A", "An", "The", "It", "They", "This", "There", "In", "On", "Of", "No", "Its", "Some", "Most", "Many", "Half",
    "Small", "Deep", "Shallow", "Rodent", "Animal", "Roots", "Fresh", "Black", "Brown", "Red", "Grey", "Gray",
    "White", "Dark", "Upper", "Lower", "First", "Second", "Third", "Thin", "Thick", "Lens", "Fill", "Floor", "Pit",
    "Layer", "Hearth", "Midden", "Ears", "Charred", "Burned", "Burnt", "Ash", "Raked", "Straight-sided", "Trodden",
    "Swept", "Fallen", "Packed", "Filled", "Middle", "Bottom", "Top", "Open-air", "Point", "Clay", "Flue", "Charcoal",
    "Stone", "Stones", "Silt", "Silty", "Sand", "Sandy", "Loose", "Firm", "Dump", "Dumped", "Spread", "Patch", "Base",
    "Wall", "Walls", "Post", "Earth", "Rubbish", "Refuse", "Household", "Scorched", "Reddened", "Older", "Earlier",
    "Heap", "Heaps", "Worked", "Grain", "Seed", "Seeds", "Daub", "Roof", "Cut", "Several", "Two", "Three", "One",
))  # fmt: skip
"""First words of notes that are no names, and stand in small letters within a sentence."""


def marked(quote: str) -> str:
    """The quotation as it stands in a sentence: literal, a first article in small letters, words else as written."""
    first, _, rest = quote.partition(" ")
    return english.literal(f"{first.lower()} {rest}".strip() if first.rstrip(",;:") in _SMALL else quote)
