"""How an account opens: how the subject was sampled, what it held or that it held nothing, and how it lay."""

from __future__ import annotations

from narrate.model.ids import Subject
from narrate.model.narrative import Sentence
from narrate.model.stratigraphy import Context, Phase
from narrate.telling import english, numbers
from narrate.telling.first_sentence import Sampled, opened_by_what_matters
from narrate.telling.near_empty import only_text
from narrate.telling.observations import stirring_seen
from narrate.telling.of_stores import is_burned_store
from narrate.telling.old_finds import ancient_tallies
from narrate.telling.page import Page
from narrate.telling.setting import (
    context_name,
    feature_text,
    items_counted,
    items_text,
    litres_text,
    or_density,
    phase_brackets,
    phase_name,
    phase_years,
    samples_text,
    size_refs,
)


def opening_sentences(page: Page, context: Context) -> list[Sentence]:
    """Which context, of which phase, how sampled, how much it held."""
    name = context_name(page, context)
    phase = page.dig.project.phase(context.phase)
    if page.is_plain:
        return _opening_for_visitors(page, name, phase, context)
    brackets = _with_the_deposit(phase_brackets(page, phase, feature_text(page, context)), context)
    samples, litres, items = samples_text(page), litres_text(page), items_text(page, with_taxa=True)
    at, come = or_density(page), english.agreed(items_counted(page), "comes", "come")
    unfeatured = _with_the_deposit(phase_brackets(page, phase), context)
    known = f", {litres} in all," if page.found.samples > 1 else f" of {litres}"
    known = known if page.found.litres is not None else f" ({litres})"
    gave = (
        f"{samples} ({litres}) gave {items}{at}",
        f"{items} {come} from {samples} ({litres}){at}",
        f"{samples}{known} held {items}{at}",
    )
    sampled = Sampled(place=f"{name}{unfeatured}", gave=gave[page.position % len(gave)])
    wordings, refs = opened_by_what_matters(page, context, sampled)
    if wordings:
        return page.say([*size_refs(page), *refs], *wordings)
    many = page.found.samples
    return page.say(
        size_refs(page),
        f"{name}{brackets} gave {items} from {samples} ({litres}){at}",
        f"{samples} ({litres}) of {name}{brackets} yielded {items}{at}",
        f"from {name}{brackets}, sampled {numbers.times(many)} ({litres}), {come} {items}{at}",
        f"flotation of {litres} from {name}{brackets} in {samples} recovered {items}{at}"
        if page.found.litres is not None
        else "",
    )


def unsampled_sentence(page: Page, name: str) -> list[Sentence]:
    """A subject from which no sample was taken."""
    if page.is_plain:
        return page.say([page.record], f"we took no soil from {name} to wash", f"no soil from {name} was washed")
    return page.say([page.record], f"no sample was taken from {name}", f"{name} was not sampled")


def empty_sentences(page: Page, name: str, brackets: str = "") -> list[Sentence]:
    """A subject in which nothing was counted, in one sentence; two for visitors. What was noted is no nothing."""
    if ancient_tallies(page):
        return _noted_sentences(page, name, brackets)
    refs = [page.record, page.ref("items")]
    litres = f"{litres_text(page)} of soil" if page.found.litres is not None else "the soil"
    adjective = "charred " if page.dig.project.preservation == "charred" else ""
    if page.is_plain:
        burned = "burned " if adjective else ""
        first = page.say(
            refs,
            f"we washed {litres} from {name} and found no {burned}plants in it",
            f"when we washed {litres} from {name}, no {burned}plants came out",
        )
        # Absence is not told as non-use.
        return first + page.say(
            [page.record],
            "that does not mean that people used no plants here, only that none were kept for us to find",
            "people may still have used plants here that left nothing for us to find",
        )
    samples = samples_text(page)
    return page.say(
        refs,
        f"no {adjective}plant remains were found in {samples} ({litres_text(page)}) from {name}{brackets}, "
        "which counts as sampled and speaks neither for nor against the use of plants there",
        f"{samples} ({litres_text(page)}) from {name}{brackets} held no {adjective}plant remains; "
        "this is kept as a result and is no sign that plants were not used",
    )


def _noted_sentences(page: Page, name: str, brackets: str) -> list[Sentence]:
    """A subject whose remains were noted as present or weighed, and never counted."""
    listed, finds = only_text(page)
    refs = [page.record, page.ref("items"), *finds]
    litres = f"{litres_text(page)} of soil" if page.found.litres is not None else "the soil"
    if page.is_plain:
        return page.say(
            refs,
            f"in {litres} from {name} we found {listed}",
            f"when we washed {litres} from {name}, we found {listed}",
        ) + page.say([page.record], "nobody counted them, so we cannot say how much there was")
    return page.say(
        refs,
        f"{samples_text(page)} ({litres_text(page)}) from {name}{brackets} held {listed}; none of it was counted, so "
        "that nothing is said of how much there was",
    )


def slight_sentences(
    page: Page, context: Context, listed: str, refs: list[str], *, is_all: bool = True
) -> list[Sentence]:
    """
    A near-empty deposit in one sentence: where, how much soil, the few things in it, and that they carry no reading.

    is_all: nothing follows that would part the things found from what is said of them.
    """
    name = context_name(page, context)
    refs = [page.record, page.ref("items"), *refs]
    if page.is_plain:
        litres = f"{litres_text(page)} of soil" if page.found.litres is not None else "the soil"
        phase = page.dig.project.phase(context.phase)
        of = f" of {phase_name(phase)}" if phase is not None else ""
        washed = page.say(refs[:2], f"we washed {litres} from {name}{of}", f"from {name}{of} we washed {litres}")
        return washed + page.say(refs, f"we found only {listed}", f"in it we found only {listed}")
    brackets = phase_brackets(page, page.dig.project.phase(context.phase), feature_text(page, context))
    samples, litres = samples_text(page), litres_text(page)
    little = (
        "; so few remains carry no reading",
        "; nothing is read from so little",
        "; that is too little to read anything from",
    )
    little = little if is_all else ("", "", "")
    return page.say(
        refs,
        f"{samples} ({litres}) of {name}{brackets} held only {listed}{little[0]}",
        f"{name}{brackets} was sampled {numbers.times(page.found.samples)} ({litres}) and gave no more than {listed}"
        f"{little[1]}",
        f"all that {name}{brackets} gave in {samples} ({litres}) was {listed}{little[2]}",
    )


def _with_the_deposit(brackets: str, context: Context) -> str:
    """
    ' (Late hamlet, cal AD 1250–1350; a secondary deposit, sealed)': the deposit and its security as they were recorded.

    What makes readings doubtful, or was not recorded, is worth a sentence of its own.
    """
    if not is_plainly_recorded(context):
        return brackets
    deposit = f"{english.with_article(context.deposit)} deposit, {context.security}"
    return f"{brackets[:-1]}; {deposit})" if brackets else f" ({deposit})"


def is_plainly_recorded(context: Context) -> bool:
    """Whether deposit and security are on record and hold nothing back."""
    return context.deposit not in ("unknown", "tertiary") and context.security not in ("unknown", "disturbed")


def recorded_sentence(page: Page, context: Context, *, known: str = "", also: tuple[str, ...] = ()) -> list[Sentence]:
    """
    What the record says of the deposit and its security, where that bears on what may be read from it.

    known: what the sentences that follow will say, so that nothing is told twice.
    also: claims that say no more than the record does.
    """
    kind = "" if context.deposit == "unknown" else context.deposit
    security = "" if context.security == "unknown" else context.security
    refs = [page.record, *also]
    if page.is_plain:
        if security != "disturbed":
            return []
        seen, ref = stirring_seen(page, context)
        if seen:
            return page.say([*refs, ref], f"{seen}, so we trust it less")
        return page.say(
            refs,
            "something had dug or stirred this soil since, so we trust it less",
            "this soil was stirred up later, so we are slow to build on it",
        )
    if is_plainly_recorded(context) and not also:
        return []
    if not kind and not security:
        return page.say(refs, "neither the kind of deposit nor its security is on record")
    kind_is_new, security_is_new = bool(kind) and kind not in known, bool(security) and security not in known
    if kind_is_new and security_is_new:
        return page.say(
            refs,
            f"the deposit was recorded as {kind} and {security}",
            f"excavation recorded {english.with_article(kind)} deposit, {security}",
            f"in the field the context was recorded as {english.with_article(kind)}, {security} deposit",
        )
    if security_is_new:
        return page.say(
            refs,
            f"the context was recorded as {security}",
            f"the record calls the context {security}",
            f"according to the record the context was {security}",
        )
    return page.say(refs, f"the deposit was recorded as {kind}") if kind_is_new else []


def _opening_for_visitors(page: Page, name: str, phase: Phase | None, context: Context) -> list[Sentence]:
    litres = f"{litres_text(page)} of soil" if page.found.litres is not None else "soil"
    items = items_text(page)
    years = phase_years(page, phase)
    sentences: list[Sentence] = []
    if phase is not None:
        when = f", {years}" if years else ""
        number, of = english.literal(context.id), phase_name(phase)
        kind = page.names.kind(context.kind) if context.kind not in ("", "other") else "place"
        sentences += page.say(
            [page.record],
            f"{number} is our number for {english.with_article(kind)} of {of}{when}",
            f"this {kind} belongs to {of}{when}, and we number it {number}",
            f"this {kind}, which we number {number}, goes back to {of}{when}",
            f"the diggers place this {kind}, our number {number}, in {of}{when}",
            f"we gave the number {number} to {english.with_article(kind)} of {of}{when}",
        )
    sentences += kind_explained(page, context.kind)
    sentences += _of_one_thing(page, context)
    here = "it" if phase is not None else name
    return sentences + page.say(
        size_refs(page)[:2],
        f"we washed {litres} from {here} and picked out {items}",
        f"from {litres} we picked out {items}"
        if phase is not None
        else f"from {litres} of {name} we picked out {items}",
        f"our team washed {litres} from {here} and found {items}",
    )


def of_one_thing(page: Page, context: Context) -> list[Context]:
    """Other contexts that visitors must know to be parts of the same pit; of a heap centuries apart there are none."""
    alike = [c for c in page.dig.project.contexts_of(context.feature) if c.phase == context.phase]
    others = [c for c in alike if c.id != context.id and page.dig.project.samples_of(c.id)]
    is_told = others and all(c.kind == context.kind for c in others) and context.kind not in ("", "other")
    return others if is_told else []


def _of_one_thing(page: Page, context: Context) -> list[Sentence]:
    """'C05 is our number for another part of the same pit': for visitors, who take each number for a place apart."""
    others = of_one_thing(page, context)
    if not others:
        return []
    same = f"of the same {page.names.kind(context.kind).split()[-1]}"
    ids = page.listed(english.literal(c.id) for c in others)
    one = len(others) == 1
    refs = [page.record, *(page.dig.record_ref(Subject(level="context", id=c.id)) for c in others)]
    part = "is our number for another part" if one else "are our numbers for other parts"
    return page.say(refs, f"{ids} {part} {same}")


SELF_EXPLAINED = ("pit", "hearth", "layer", "burned structure", "other")
"""Kinds of context whose plain names say what they are."""


def kind_explained(page: Page, kind_id: str) -> list[Sentence]:
    """What such a place is, in one short sentence, where its name does not say it."""
    kind = page.names.kind_known(kind_id)
    if kind is None or not kind.explained.startswith(("A ", "An ")) or kind.id in SELF_EXPLAINED:
        return []
    explained, _, later = kind.explained.rstrip(".").partition("; ")
    is_of_store = is_burned_store(page.dig.claims, page.subject)
    # What fills a store that was not lost to fire is what was thrown in later.
    is_refilled = "storage" in kind.traits and later and not is_of_store
    said = english.lowered(f"{explained}; {later}" if is_refilled else explained)
    one = english.with_article(kind.plain)
    return page.say([page.record], *page.turns("kind explained", one=one, said=said))
