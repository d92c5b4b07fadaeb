"""The narrative of one phase: its basis, what is widespread, and what its contexts say together."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.ids import Subject
from narrate.model.narrative import Section, Sentence
from narrate.model.stratigraphy import Context, Phase
from narrate.telling import context_opening, english, numbers, setting
from narrate.telling.across import across_sentences
from narrate.telling.alike import kinds_compared
from narrate.telling.between_phases import unanswered_sentences
from narrate.telling.exchanges import exchange_sentences
from narrate.telling.faint_as_a_whole import faint_as_a_whole, is_borne
from narrate.telling.fresh_beside import fresh_beside_sentences
from narrate.telling.hints import faint_sentences
from narrate.telling.insecure import insecure_sentences
from narrate.telling.lots import lot_sentences
from narrate.telling.of_note import elsewhere_sentences as elsewhere_of_note
from narrate.telling.of_note import stray_sentences
from narrate.telling.one_deposit import one_deposit_sentences
from narrate.telling.page import Page
from narrate.telling.phase_by_phase import phase_by_phase, phase_readings, told_by_phase
from narrate.telling.plan import by_standing, ordered_themes, readings, standing
from narrate.telling.recovery import lost_sentences
from narrate.telling.seasons_asked import with_what_is_asked
from narrate.telling.sentences import told
from narrate.telling.spread import Presence, k_of_n, name_of, of_samples, out_of_text, presences, unsure
from narrate.telling.through_time import ENOUGH, beside_another_phase, sampled_phases
from narrate.telling.weeds import weeds_of_phase
from narrate.telling.wild_kin import wild_kin_sentences
from narrate.telling.wood_notes import timber_for_visitors


def phase_sections(page: Page, phase: Phase) -> tuple[Section, ...]:
    """Basis, spread of the plants, then each theme over all contexts of the phase."""
    contexts = [c for c in page.dig.project.contexts if c.phase == phase.id]
    name = setting.phase_name(phase)
    if not page.found.samples:
        text = f"no samples were taken from {name}"
        return headed(page, [("basis", page.say([page.record], text))])
    if not setting.items_counted(page):
        return headed(page, [("basis", context_opening.empty_sentences(page, name))])
    found = [p for p in presences(page.dig, phase.id) if p.k]
    opening = opening_sentences(page, phase, found)
    spread = [*opening, *spread_sentences(page, found), *beside_another_phase(page, phase)]
    inside = [s for c in contexts for s in page.dig.project.samples_of(c.id)]
    basis = [*basis_sentences(page, name, phase, contexts), *lost_sentences(page, inside, with_places=True)]
    # What the phase was about comes before the samples that it rests on.
    blocks = [("basis", spread), ("basis", basis)] if opening else [("basis", basis), ("basis", spread)]
    blocks += theme_blocks(page, contexts)
    blocks.append(("alike", kinds_compared(page, contexts)))
    blocks.append(("open", unanswered_sentences(page, phase)))
    return headed(page, blocks)


MOST, FEW = 0.5, 1 / 3
"""Shares of samples above which a plant group marks a phase, and up to which few hold it (judgement of the makers)."""


def opening_sentences(page: Page, phase: Phase, found: Sequence[Presence]) -> list[Sentence]:
    """'Most samples of the Early hamlet held seeds of the native crops and nuts, and few held maize.'"""
    most = sorted((p for p in found if p.share > MOST), key=lambda p: -p.k)
    few = [p for p in found if p.share <= FEW and p.k > 1]
    if not most or found[0].n < ENOUGH:
        return []
    years = setting.phase_years(page, phase)
    when = f" ({years})" if years else ""
    named = page.listed(name_of(page, p.group) for p in most)
    soil = "soil " if page.is_plain else ""
    rest = f", and few held {page.listed((name_of(page, p.group) for p in few), word='or')}" if few else ""
    return page.say(
        [ref for p in (*most, *few) for ref in p.refs],
        f"most {soil}samples of {setting.phase_name(phase)}{when} held {named}{rest}",
    )


def headed(page: Page, blocks: Sequence[tuple[str, Sequence[Sentence]]]) -> tuple[Section, ...]:
    """Blocks as sections; blocks of one id are paragraphs of one section."""
    gathered: dict[str, list[tuple[Sentence, ...]]] = {}
    for id, sentences in blocks:
        if sentences:
            gathered.setdefault(id, []).append(tuple(sentences))
    several = len(gathered) > 1
    return tuple(
        Section(id=id, heading=page.audience.headings.get(id, "") if several else "", paragraphs=tuple(paragraphs))
        for id, paragraphs in gathered.items()
    )


def basis_sentences(page: Page, name: str, phase: Phase, contexts: Sequence[Context]) -> list[Sentence]:
    """How many samples, contexts, litres and items the phase rests on, and what the richest sample holds of them."""
    with_samples = [c for c in contexts if page.dig.project.samples_of(c.id)]
    samples, litres = setting.samples_text(page), setting.litres_text(page)
    places = page.count(len(with_samples), "context", "contexts")
    items = setting.items_text(page)
    years = setting.phase_years(page, phase)
    refs = [page.record, page.ref("items")]
    when = f" ({years})" if years and not page.has_told(years) else ""
    if page.is_plain:
        spots = page.count(len(with_samples), "place", "places")
        sentences = page.say(refs, f"we washed soil from {spots} of {name}{when}, {samples} in all, and found {items}")
    else:
        stand = english.agreed(page.found.samples, "stands", "stand")
        sentences = page.say(
            refs,
            f"{name}{when} is represented by {samples} ({litres}) from {places}, with {items} in all",
            f"{samples} ({litres}) from {places} {stand} for {name}{when} and gave {items}",
        )
        empty = page.found.samples - page.found.samples_with_remains
        if empty:
            sentences += page.say(
                refs[:1],
                f"{page.count(empty, 'sample', 'samples')} held nothing and "
                f"{english.agreed(empty, 'counts', 'count')} in the shares",
            )
    return (
        sentences + insecure_sentences(page, contexts) + wild_kin_sentences(page, contexts) + richest_sentences(page)
    )


def richest_sentences(page: Page) -> list[Sentence]:
    """How much of everything the richest sample holds, where that is a lot."""
    share = page.measure("richest_share")
    if share is None or share.value is None or share.value < 0.25 or page.found.samples < 3:
        return []
    richest = _richest_sample(page)
    if richest is None:
        return []
    sample, where = richest
    refs = [page.ref("richest_share"), page.dig.measure_ref(Subject(level="sample", id=sample), "items")]
    part = numbers.percent(share.value)
    if page.is_plain:
        of_all = numbers.part_of(share.value)
        return page.say(
            refs,
            f"{of_all} of that came from one sample, in {where}",
            f"one sample, from {where}, gave {of_all} of that",
        )
    return page.say(
        refs,
        f"a single sample, {english.literal(sample)} of {where}, holds {part} of all items, so that totals speak "
        "largely of that deposit and presence in samples is the safer guide",
        f"since {english.literal(sample)} of {where} alone holds {part} of the items, plants are compared here by the "
        "number of samples that hold them",
    )


def spread_sentences(page: Page, found: Sequence[Presence]) -> list[Sentence]:
    """In how many samples the main groups of plants were present."""
    if not found:
        return []
    ordered = sorted(found, key=lambda p: -p.k)
    refs = [ref for p in ordered for ref in p.refs]
    first = ordered[0]
    if page.is_plain:
        return _spread_for_visitors(page, ordered[:4])
    verb = "was" if first.group.is_singular else "were"
    head = f"{name_of(page, first.group)} {verb} present in {k_of_n(page, first)}"
    rest = [f"{name_of(page, p.group)} in {k_of_n(page, p, short=True)}" for p in ordered[1:]]
    if not rest:
        return page.say(refs, head) + by_context_sentences(page, ordered)
    return page.say(
        refs,
        f"{head}, {page.listed(rest)}",
        f"most widespread {verb} {name_of(page, first.group)}, in {k_of_n(page, first)}; next came {page.listed(rest)}"
        if ordered[1].k < first.k
        else "",
    ) + by_context_sentences(page, ordered)


def by_context_sentences(page: Page, found: Sequence[Presence]) -> list[Sentence]:
    """The same by context, where contexts gave several samples, and that these are not independent of each other."""
    counted = [p for p in found if 1 < p.contexts[1] < p.n]
    if not counted:
        return []
    texts = [
        f"{name_of(page, p.group)} in {out_of_text(*p.contexts) if i == 0 else numbers.count(p.contexts[0])}"
        for i, p in enumerate(counted)
    ]
    return page.say(
        [ref for p in counted for ref in p.refs[:1]],
        f"by context that is {page.listed(texts)}; samples of one context are not independent of each other, which the "
        "intervals do not allow for",
    )


def _spread_for_visitors(page: Page, found: Sequence[Presence]) -> list[Sentence]:
    """'Small-seeded crops turned up in 22 of 23 samples, and nuts in just as many; then came wild fruits in nine.'"""
    first, *rest = found
    refs = [ref for p in found for ref in p.refs] or [page.record]
    alike = [p for p in rest if p.k == first.k]
    texts = [f"{numbers.count(p.k)} held {name_of(page, p.group)}{unsure(page, p)}" for p in rest if p.k != first.k]
    just_as = f", and {page.listed(name_of(page, p.group) for p in alike)} in just as many" if alike else ""
    then = f"; {page.listed(texts)}" if texts else ""
    held = f"{name_of(page, first.group)} in {of_samples(first)}{unsure(page, first)}{just_as}{then}"
    return page.say(refs, f"we found {held}", f"{held.replace(' in ', ' turned up in ', 1)}")


LONG = 6
"""Sentences of a theme from which what is read of it and where that lies are paragraphs of their own."""


def theme_blocks(page: Page, contexts: Sequence[Context]) -> list[tuple[str, list[Sentence]]]:
    """
    Each theme: what the subject's own counts say, then which of its contexts bear that out and which do not.

    Of a dig of several phases, what phases read is told by phase: counts put together over centuries are of no time.
    """
    phases = sampled_phases(page) if page.subject.level == "site" else []
    if len(phases) > 1:
        told_by_phase(page, phases)
    held = readings(page, page.dig.claims.holding(page.subject))
    blocks = []
    for theme, questions in ordered_themes(page):
        of_theme = [item for item in held if item.claim.question in questions and item.claim.question != "work"]
        items, faint = by_standing(page, of_theme)
        if theme == "deposit":
            continue
        sentences: list[Sentence] = []
        if len(phases) > 1 and theme != "change":
            sentences += phase_by_phase(page, phases, phase_readings(page, phases, questions))
            sentences += elsewhere_of_note(page, phases, questions)
        sentences += told(page, items, weak=not page.is_plain)
        sentences += timber_for_visitors(page, contexts) if "fuel" in questions else []
        sentences += [*weeds_of_phase(page, theme), *fresh_beside_sentences(page, items)]
        firm = [item for item in held if standing(item.claim) == "reading"]
        sentences += across_sentences(page, contexts, questions, firm) if theme != "change" else []
        sentences += faint_as_a_whole(page, contexts, faint)
        sentences += faint_sentences(page, [r for r in faint if not is_borne(page, contexts, r)])
        sentences = with_what_is_asked(page, theme, sentences)
        where = list(one_deposit_sentences(page, questions))
        if page.subject.level == "phase":
            where += lot_sentences(page, contexts, items)
            where += exchange_sentences(page) if any(r.claim.statement == "food.nut" for r in items) else []
        for phase in (p for p in page.dig.project.phases if page.subject == Subject(level="phase", id=p.id)):
            where += stray_sentences(page, phase, questions)
        if len(sentences) + len(where) > LONG:
            blocks += [(theme, sentences), (theme, where)]
        else:
            blocks.append((theme, sentences + where))
    return blocks


def _richest_sample(page: Page) -> tuple[str, str] | None:
    """The sample of the subject with most items, and its context by name."""
    best: tuple[float, str, str] | None = None
    for sample in page.dig.project.samples:
        context = page.dig.project.context(sample.context)
        if page.subject.level == "phase" and context.phase != page.subject.id:
            continue
        found = page.dig.found(Subject(level="sample", id=sample.id))
        items = found.measurements.get("items") if found else None
        if items is not None and items.value and (best is None or items.value > best[0]):
            best = (items.value, sample.id, setting.context_name(page, context))
    return (best[1], best[2]) if best else None
