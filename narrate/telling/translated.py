"""
Narratives in any language but English: contexts, phases and the whole dig, from the words of a language pack.

What is told, and in which order, is planned as for English; how it is said stands in packs/languages/<id>. Nothing
falls back on English: a plant without a name is told by its Latin, a statement without a clause is not told, and
`lacking` names what a pack would need.
"""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.claims import Argument, Claim
from narrate.model.findings import Tally
from narrate.model.ids import Subject
from narrate.model.languages import Noun
from narrate.model.narrative import Section, Sentence
from narrate.model.stratigraphy import Context, Phase
from narrate.telling import composition, english, manner, setting
from narrate.telling.cautions import is_cautioned
from narrate.telling.contexts import NOT_NEWS, chief_changes, is_slight, sections_of
from narrate.telling.grammar import Grammar
from narrate.telling.how_widely import word_of
from narrate.telling.of_note import found_in_another_phase
from narrate.telling.page import Page
from narrate.telling.phase_by_phase import held_elsewhere, phase_readings
from narrate.telling.plan import (
    TOO_FEW,
    UNSETTLED,
    Reading,
    competes,
    ordered_themes,
    reading_whether_told,
    readings,
)
from narrate.telling.rivals import may_both_be
from narrate.telling.sentences import without_seasons_told_twice
from narrate.telling.site import without_the_same_change
from narrate.telling.spread import Presence, presences
from narrate.telling.through_time import changed_groups, sampled_phases

SHOWN = 4
"""Plants that are listed, as in English."""


Told = Context | Phase | None
"""What is told: a context, a phase, or with None the whole dig."""


def tells_phases(page: Page) -> bool:
    """Whether the language has the sentences that a phase wants."""
    return all(name in _grammar(page).language.sentences for name in ("washed phase", "phase groups", "group in"))


def translated_title(page: Page, context: Told) -> str:
    if context is None:
        return page.dig.project.title
    if isinstance(context, Phase):
        years = _grammar(page).years(context.start, context.end, context.dates)
        titled = _wordings(page, "phase title", years=years) if years else []
        return english.capitalised(titled[0]) if titled else context.name
    kind = _kind(page, context)
    return english.capitalised(f"{kind.one} {context.id}")


def translated_sections(page: Page, context: Told) -> tuple[Section, ...]:
    """A context, a phase, or with None the whole dig."""
    if isinstance(context, Phase):
        return _phase(page, context)
    return _context(page, context) if context is not None else _site(page)


def translated_summary(page: Page, title: str) -> Sentence | None:
    """One sentence for lists: the firmest reading; nothing where there is none."""
    held = _told_readings(page)
    if not held:
        return None
    held = chief_changes([r for r in held if r.claim.question == "change"] or held[:1])
    text = f"{english.literal(title)}: {_framed(page, held[0])}"
    return Sentence(text=_grammar(page).finished(text), refs=(held[0].claim.id,))


def lacking(page: Page) -> tuple[str, ...]:
    """What the page's subject would need of the language pack and does not find there, in order."""
    language = _grammar(page).language
    wanted = [f"plant {t.taxon}" for t in composition.ancient_tallies(page) if _is_named(page, t)]
    lacks = [name for name in wanted if name.removeprefix("plant ") not in language.plants]
    parts = [t.part for t in composition.plant_tallies(page) if t.counted]
    lacks += [f"part {part}" for part in parts if part not in language.parts and not _own_part(page, part)]
    lacks += [
        f"statement {r.claim.statement}"
        for r in readings(page, page.dig.claims.holding(page.subject))
        if r.claim.question in page.audience.plan and r.claim.question not in ("integrity", "work")
        and r.claim.statement not in NOT_NEWS and r.claim.statement not in language.statements
    ]  # fmt: skip
    return tuple(dict.fromkeys(lacks))


def _context(page: Page, context: Context) -> tuple[Section, ...]:
    kind = f"{_grammar(page).the(_kind(page, context))} {english.literal(context.id)}"
    if not page.found.samples:
        return _paragraph(_say(page, [page.record], "unsampled", the_kind=kind))
    litres = _litres(page)
    items = setting.items_counted(page)
    if not items and not composition.ancient_tallies(page):
        refs = [page.record, page.ref("items")]
        return _paragraph(_each(page, refs, "nothing", the_kind=kind, litres=litres))
    held = readings(page, page.dig.claims.holding(page.subject))
    if is_slight(page, held) or any(r.claim.statement == TOO_FEW for r in held):
        tallies = [t for t in composition.ancient_tallies(page) if t.counted]
        refs = [page.record, page.ref("items"), *(t.ref for t in tallies if t.ref)]
        listed = _finds(page, tallies, at_most=SHOWN)
        sections = _paragraph(_each(page, refs, "only", the_kind=kind, litres=litres, list=listed))
        return _with_caution(page, sections)
    blocks = [("deposit", [*_opening(page, context, kind, litres), *_theme(page, ("deposit",))])]
    blocks += [(theme, _theme(page, qs)) for theme, qs in ordered_themes(page) if theme not in ("deposit", "change")]
    return _with_caution(page, sections_of(page, blocks))


def _opening(page: Page, context: Context, kind: str, litres: str) -> list[Sentence]:
    phase = page.dig.project.phase(context.phase)
    years = _grammar(page).years(phase.start, phase.end, phase.dates) if phase is not None else ""
    sentences = _say(page, [page.record], "place", the_kind=kind, years=years) if years else []
    named = _kind(page, context).one
    if sentences and named in page.audience.glossary:
        sentences += _say(page, [page.record], "kind", kind=named, said=page.audience.glossary[named])
    items = _grammar(page).quantity(setting.items_counted(page), _remains(page))
    of = "washed" if sentences else "washed of"
    sentences += _say(page, setting.size_refs(page)[:2], of, the_kind=kind, litres=litres, items=items)
    tallies = [t for t in composition.plant_tallies(page) if t.counted and _is_named(page, t)]
    refs = [t.ref for t in tallies[:SHOWN] if t.ref] or [page.ref("items")]
    sentences += _say(page, refs, "plants", list=_finds(page, tallies, at_most=SHOWN)) if tallies else []
    modern = page.measure("modern_seeds")
    if modern is not None and modern.value and page.dig.project.preservation == "charred":
        name = "modern one" if modern.value == 1 else "modern"
        count = _grammar(page).quantity(int(modern.value), _grammar(page).language.parts.get("seed", _remains(page)))  # type: ignore[call-overload]
        sentences += _say(page, [page.ref("modern_seeds")], name, count=count)
    if context.security == "disturbed":
        sentences += _say(page, [page.record], "disturbed")
    return sentences + _late_plants(page)


def _late_plants(page: Page) -> list[Sentence]:
    """Plants that the region had not yet when the deposit was laid down, and that they are later than it."""
    held = [r for r in readings(page, page.dig.claims.holding(page.subject)) if r.claim.statement == OUT_OF_PERIOD]
    known = _grammar(page).language.statements
    if not held or held[0].claim.statement not in known or not held[0].behind:
        return []
    refs = [held[0].claim.id, *(t.ref for t in held[0].behind if t.ref)]
    listed = _finds(page, held[0].behind, at_most=SHOWN)
    return _say(page, refs, "late plants", lead=_framed(page, held[0]), list=listed)


OUT_OF_PERIOD = "integrity.out-of-period"


def _site(page: Page) -> tuple[Section, ...]:
    grammar, project = _grammar(page), page.dig.project
    contexts = {sample.context for sample in project.samples}
    places = grammar.quantity(len(contexts), _kind_named(page, "other"), exactly=True)
    items = grammar.quantity(setting.items_counted(page), _remains(page))
    refs = [page.record, page.ref("items")]
    blocks = [("basis", _say(page, refs, "washed dig", litres=_litres(page), places=places, items=items))]
    phases = sampled_phases(page)
    is_parted = len(phases) > 1 and _tells_by_phase(page)
    if len(phases) > 1:
        blocks.append(("change", _change(page)))
    for theme, questions in ordered_themes(page):
        if theme not in ("deposit", "change"):
            living = _living(page) if theme == "food" else []
            # What the counts of all phases say only when they are put together is of no time, and left to specialists.
            read = _by_phase(page, phases, questions) if is_parted else _theme(page, questions)
            blocks.append((theme, [*read, *living]))
    sections = sections_of(page, blocks)
    # What stays open is a matter of its own, though it be one sentence.
    said, heading = tuple(_say(page, refs, "open")), page.audience.headings.get("open", "")
    closing = (Section(id="open", heading=heading, paragraphs=(said,)),) if said else ()
    return _with_caution(page, (*sections, *closing))


def _tells_by_phase(page: Page) -> bool:
    return all(name in _grammar(page).language.sentences for name in ("all phases", "one phase"))


def _by_phase(page: Page, phases: Sequence[Phase], questions: Sequence[str]) -> list[Sentence]:
    """What all phases bear out, and what one of them alone does: counts pooled over centuries are of no time."""
    grammar = _grammar(page)
    found = [r for r in phase_readings(page, phases, questions) if r.statement in grammar.language.statements]
    shared = [r for r in found if len(r.claims) == len(phases)]
    sentences: list[Sentence] = []
    for reading in shared[:SHARED]:
        refs = [claim.id for _, claim in reading.claims]
        sentences += _say(page, refs, "all phases", lead=_framed(page, _reading(page, reading.weakest)))
    for phase in phases:
        own = [c for r in found if len(r.claims) == 1 for p, c in r.claims if p.id == phase.id]
        firm = [claim for claim in own if claim.grade in _FIRM]
        for claim in sorted(firm, key=lambda claim: -claim.support)[:ALONE]:
            years = grammar.years(phase.start, phase.end, phase.dates) or english.literal(phase.name)
            is_alone = not held_elsewhere(page, phase, claim.statement)
            is_alone = is_alone and not found_in_another_phase(page, claim, phases)
            name = "one phase" if is_alone else "mainly one phase"
            sentences += _say(page, [claim.id], name, years=years, lead=_framed(page, _reading(page, claim)))
    return sentences


SHARED, ALONE = 2, 2
"""Readings of a theme that are told of all phases, and of each phase alone."""


def _reading(page: Page, claim: Claim) -> Reading:
    return Reading(claim=claim, statement=page.dig.packs.statements[claim.statement], behind=())


def _phase(page: Page, phase: Phase) -> tuple[Section, ...]:
    """What was washed of a phase, what was widespread, and each reading with the contexts that make it too."""
    grammar = _grammar(page)
    contexts = [c for c in page.dig.project.contexts if c.phase == phase.id and page.dig.project.samples_of(c.id)]
    if not contexts or not setting.items_counted(page):
        return ()
    years = grammar.years(phase.start, phase.end, phase.dates) or english.literal(phase.name)
    places = grammar.quantity(len(contexts), _kind_named(page, "other"), exactly=True)
    items = grammar.quantity(setting.items_counted(page), _remains(page))
    refs = [page.record, page.ref("items")]
    basis = _say(page, refs, "washed phase", years=years, litres=_litres(page), places=places, items=items)
    found = sorted((p for p in presences(page.dig, phase.id) if p.k and _group(page, p)), key=lambda p: -p.k)[:SHOWN]
    texts = [
        _wordings(page, _group_wording(page, p, found[0]), group=_group(page, p), k=str(p.k), n=str(p.n))[0]
        for p in found
    ]
    if texts:
        basis += _say(page, [ref for p in found for ref in p.refs], "phase groups", list=grammar.listed(texts))
    blocks = [("basis", basis)]
    for theme, questions in ordered_themes(page):
        if theme not in ("deposit", "change"):
            lead = _theme(page, questions, at_most=1)
            lead += _where(page, contexts, lead) if lead else []
            blocks.append((theme, lead + _theme(page, questions, at_most=2)))
    return _with_caution(page, sections_of(page, blocks))


def _group_wording(page: Page, one: Presence, first: Presence) -> str:
    """How a group is told: of how many samples is said once, where the language has words for that."""
    is_again = one is not first and one.n == first.n and "group in again" in _grammar(page).language.sentences
    return "group in again" if is_again else "group in"


def _where(page: Page, contexts: Sequence[Context], told: Sequence[Sentence]) -> list[Sentence]:
    """The contexts that make the first reading of a theme too, where they are few enough to be named."""
    claim = page.dig.claims.by_id.get(told[0].refs[0])
    if claim is None:
        return []
    found = [(c, page.dig.claims.find(Subject(level="context", id=c.id), claim.statement)) for c in contexts]
    held = [(c, own) for c, own in found if own is not None and own.verdict == "holds" and own.grade in _FIRM]
    if not held or len(held) > SHOWN:
        return []
    ids = _grammar(page).listed([english.literal(c.id) for c, _ in held])
    return _say(page, [own.id for _, own in held], "where one" if len(held) == 1 else "where", ids=ids)


_FIRM = ("suggests", "supports", "strongly supports")


def _change(page: Page) -> list[Sentence]:
    grammar = _grammar(page)
    phases = sampled_phases(page)
    first, last = phases[0], phases[-1]
    changed, steady = changed_groups(page, first, last)
    sentences: list[Sentence] = []
    for a, b in changed:
        group = _group(page, a)
        if group:
            sentences += _say(
                page, [*a.refs, *b.refs], "change", group=group, before=_k_of_n(page, a), after=_k_of_n(page, b),
                years=grammar.years(first.start, first.end, first.dates),
                later=grammar.years(last.start, last.end, last.dates),
            )  # fmt: skip
    groups = [_group(page, a) for a, _ in steady if _group(page, a)]
    if groups:
        refs = [ref for a, b in steady for ref in (*a.refs, *b.refs)] or [page.record]
        sentences += _say(page, refs, "steady", groups=grammar.listed(groups))
    without_the_same_change(page)
    return sentences + _theme(page, ("change",))


def _theme(page: Page, questions: Sequence[str], *, at_most: int = 3) -> list[Sentence]:
    """The firmest readings of some questions, each with its heaviest reason that the pack can say."""
    sentences: list[Sentence] = []
    items = [r for r in _told_readings(page) if r.claim.question in questions and r.rank > 1]
    for item in without_seasons_told_twice(page, items)[:at_most]:
        page.told.add(item.claim.id)
        lead = _framed(page, item)
        said = [_reason(page, argument) for argument in item.claim.held("for")]
        reason = next((text for text in said if text and text not in page.reasons_told), "")
        page.reasons_told.add(reason)
        if reason:
            sentences += _say(page, [item.claim.id], "because", lead=lead, reason=reason)
        else:
            sentences += page.say([item.claim.id], _grammar(page).finished(lead))
        if item.claim.stability is not None and item.claim.stability < UNSETTLED:
            sentences += _fresh(page, [item.claim.id], "close")
        sentences += _rival(page, item, items[:at_most])
    return sentences


def _reason(page: Page, argument: Argument) -> str:
    """What a rule saw, with the word for its share of the samples; empty where the pack has none."""
    text = _grammar(page).language.reasons.get(argument.rule, "")
    if "{widely}" not in text:
        return text
    widely = _wordings(page, f"widely {word_of(argument.evidence)}")
    return text.replace("{widely}", widely[0]) if widely else ""


def _rival(page: Page, item: Reading, told_here: Sequence[Reading]) -> list[Sentence]:
    """The firmest rival of a reading: that it is one where it was told just before, else its clause as well."""
    known = _grammar(page).language.statements
    names = dict.fromkeys((*item.claim.alternatives, *item.statement.rivals))
    claims = [page.dig.claims.find(page.subject, name) for name in names if name in known]
    found = [reading_whether_told(page, c) for c in claims if c is not None and c.verdict == "holds"]
    rivals = [r for r in found if r is not None and r.rank > 1 and competes(item, r)]
    rivals.sort(key=lambda r: (-r.rank, -r.claim.support))
    if not rivals or frozenset((item.claim.id, rivals[0].claim.id)) in page.rivals:
        return []
    rival, here = rivals[0], [r.claim.id for r in told_here]
    refs = [item.claim.id, rival.claim.id]
    both = " both" if may_both_be(item, rival) else ""
    if rival.claim.id in here:
        if here.index(rival.claim.id) != here.index(item.claim.id) - 1:
            return []  # it is said of the two behind the second
        page.rivals.add(frozenset(refs))
        return _say(page, refs, f"rival again{both}")
    page.rivals.add(frozenset(refs))
    if rival.claim.id in page.told:
        return []
    page.told.add(rival.claim.id)
    return _say(page, refs, f"rival{both}", lead=_framed(page, rival))


def _told_readings(page: Page) -> list[Reading]:
    known = _grammar(page).language.statements
    held = readings(page, page.dig.claims.holding(page.subject))
    return [r for r in held if r.claim.statement in known and r.claim.statement not in NOT_NEWS]


def _framed(page: Page, item: Reading) -> str:
    frames = page.audience.frames[item.claim.grade]
    clause = _grammar(page).language.statements[item.claim.statement]  # type: ignore[index]
    turn = (page.position + len(page.said)) % len(frames)
    ordered = [*frames[turn:], *frames[:turn]]
    fresh = [text for text in ordered if not page.worn(text.replace("{clause}", clause))]
    return (fresh or ordered)[0].replace("{clause}", clause)


def _finds(page: Page, tallies: Sequence[Tally], *, at_most: int) -> str:
    """'unas 40 semillas de quenopodio, diez granos de alpiste silvestre y …'."""
    named = [t for t in tallies if _is_named(page, t)][:at_most] or list(tallies[:1])
    texts: list[str] = []
    for tally in named:
        gloss = _gloss(page, tally)
        told = not gloss or page.has_told(gloss) or gloss in " ".join(texts)
        within = ", ".join(text for text in ("" if told else gloss, _doubtful(page, tally)) if text)
        texts.append(f"{_find(page, tally)}{f' ({within})' if within else ''}")
    return _grammar(page).listed(texts)


def _doubtful(page: Page, tally: Tally) -> str:
    """'y tres restos más con duda': finds whose name is in doubt, where they are enough to be told of."""
    more = tally.counted - page.names.surely(tally)
    words = _grammar(page).language.numbers
    count = words[more] if more < len(words) else _grammar(page).figure(more)
    said = _wordings(page, "doubtful one" if more == 1 else "doubtful", count=count) if more else []
    return said[0] if said else ""


def _gloss(page: Page, tally: Tally) -> str:
    """What the audience's glossary says of a find, by the name of its part or of its plant; empty where nothing."""
    plant = _grammar(page).language.plants.get(tally.taxon) if tally.taxon is not None else None
    nouns = [noun for noun in (_own_noun(page, tally), plant) if noun is not None]
    return next((page.audience.glossary[noun.one] for noun in nouns if noun.one in page.audience.glossary), "")


def _find(page: Page, tally: Tally) -> str:
    grammar = _grammar(page)
    own = _own_noun(page, tally)
    if own is not None:
        return grammar.quantity(page.names.surely(tally), own)
    part = grammar.language.parts.get(tally.part, _remains(page))
    plant = grammar.language.plants.get(tally.taxon) if tally.taxon is not None else None
    taxon = page.dig.packs.taxa.get(tally.taxon) if tally.taxon is not None else None
    name = plant.one if plant is not None else english.italic(taxon.id) if taxon is not None else ""
    of = f" {grammar.table('of')} {name}" if name and _is_named(page, tally) else ""
    return f"{grammar.quantity(page.names.surely(tally), part)}{of}"


def _own_noun(page: Page, tally: Tally) -> Noun | None:
    """The noun of a part of one plant, such as 'pepita de uva': key 'taxon part' of the pack."""
    return _grammar(page).language.parts.get(f"{tally.taxon} {tally.part}")  # type: ignore[call-overload]


def _own_part(page: Page, part: str) -> bool:
    return any(key.endswith(f" {part}") for key in _grammar(page).language.parts)


def _is_named(page: Page, tally: Tally) -> bool:
    return tally.taxon is not None and not composition.is_unknown(page, tally)


def _living(page: Page) -> list[Sentence]:
    """A crop or nut of the dig that lives on, in the present tense."""
    grammar = _grammar(page)
    for tally in composition.plant_tallies(page):
        taxon = page.dig.packs.taxa.get(tally.taxon) if tally.taxon is not None else None
        plant = grammar.language.plants.get(taxon.id) if taxon is not None else None
        tags = sorted(taxon.tags, reverse=True) if taxon is not None else []
        tag = next((tag for tag in tags if f"living {tag}" in grammar.language.sentences), "")
        if plant is not None and tag:
            refs = [tally.ref or page.ref("items")]
            return _say(page, refs, f"living {tag}", plant=plant.one, the_plant=grammar.the(plant))
    return []


def _with_caution(page: Page, sections: tuple[Section, ...]) -> tuple[Section, ...]:
    refs = [t.ref for t in composition.plant_tallies(page) if t.ref and is_cautioned(page, t)][:3]
    said = _say(page, refs, "caution") if refs else []
    if not said or not sections:
        return sections
    *before, last = sections
    paragraphs = (*last.paragraphs[:-1], (*last.paragraphs[-1], *said))
    return (*before, Section(id=last.id, heading=last.heading, paragraphs=paragraphs))


def _group(page: Page, presence: Presence) -> str:
    return _grammar(page).language.sentences.get(f"group {presence.group.id}", ("",))[0]


def _k_of_n(page: Page, presence: Presence) -> str:
    return _wordings(page, "k of n", k=str(presence.k), n=str(presence.n))[0]


def _litres(page: Page) -> str:
    litres = page.found.litres
    return _wordings(page, "litres", figure=_grammar(page).figure(litres))[0] if litres is not None else ""


def _remains(page: Page) -> Noun:
    """Remains of plants as a noun; where they are expected charred, charred remains."""
    parts = _grammar(page).language.parts
    charred = parts.get("remains charred") if page.dig.project.preservation == "charred" else None  # type: ignore[call-overload]
    return charred or parts["remains"]  # type: ignore[index]


def _kind(page: Page, context: Context) -> Noun:
    return _kind_named(page, context.kind)


def _kind_named(page: Page, kind: str) -> Noun:
    kinds = _grammar(page).language.kinds
    return kinds.get(kind) or kinds["other"]


def _grammar(page: Page) -> Grammar:
    style = page.dig.project.style
    era, dash = style.era or "", manner.dash(page.audience)
    return Grammar(language=page.dig.packs.languages[page.audience.language], era=era, dash=dash)


def _wordings(page: Page, name: str, **filled: str) -> list[str]:
    wordings = list(_grammar(page).language.sentences.get(name, ()))
    for hole, text in filled.items():
        wordings = [wording.replace(f"{{{hole}}}", text) for wording in wordings]
    return wordings


def _say(page: Page, refs: Sequence[str], name: str, **filled: str) -> list[Sentence]:
    """One of the pack's wordings, that with the least worn opening."""
    wordings = [_grammar(page).finished(wording) for wording in _wordings(page, name, **filled)]
    return page.say(refs, *wordings) if wordings else []


def _fresh(page: Page, refs: Sequence[str], name: str) -> list[Sentence]:
    wordings = page.fresh(*(_grammar(page).finished(wording) for wording in _wordings(page, name)))
    return page.say(refs, *wordings) if wordings else []


def _each(page: Page, refs: Sequence[str], name: str, **filled: str) -> list[Sentence]:
    """All of the pack's wordings as sentences, one after the other."""
    return [s for text in _wordings(page, name, **filled) for s in page.say(refs, _grammar(page).finished(text))]


def _paragraph(sentences: Sequence[Sentence]) -> tuple[Section, ...]:
    return (Section(id="all", heading="", paragraphs=(tuple(sentences),)),) if sentences else ()
