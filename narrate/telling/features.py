"""The narrative of a feature of several contexts: what they share and where they differ."""

from __future__ import annotations

from narrate.model.narrative import Section, Sentence
from narrate.model.stratigraphy import Context, Feature
from narrate.telling import composition, context_opening, english, setting
from narrate.telling.alike import QUESTIONS, by_grade
from narrate.telling.contexts import one_paragraph
from narrate.telling.frames import noun_of
from narrate.telling.page import Page
from narrate.telling.plan import Reading, readings, standing
from narrate.telling.sentences import told
from narrate.telling.spread import statements_held


def feature_sections(page: Page, feature: Feature) -> tuple[Section, ...]:
    """One paragraph: the contexts, how much they held, what they have in common, what only one of them says."""
    contexts = [page.dig.project.context(id) for id in feature.contexts]
    phases = {c.phase for c in contexts}
    named = [setting.context_name(page, c) + (_in_phase(page, c) if len(phases) > 1 else "") for c in contexts]
    names = page.listed(named)
    name = f"feature {english.literal(feature.id)}"
    if not page.found.samples:
        return one_paragraph(context_opening.unsampled_sentence(page, name))
    if setting.items_counted(page) == 0:
        return one_paragraph(context_opening.empty_sentences(page, name))
    items, samples = setting.items_text(page), setting.samples_text(page)
    refs = setting.size_refs(page)[:2]
    if page.is_plain:
        sentences = page.say([page.record], f"{name} is made up of {names}")
        sentences += page.say(refs, f"we picked {items} from its soil", f"its soil gave us {items}")
    else:
        sentences = page.say(
            refs,
            f"{name} is made up of {names}; together they gave {items} in {samples} ({setting.litres_text(page)})",
            f"{names} belong to {name}, which gave {items} in {samples} ({setting.litres_text(page)})",
        )
    sentences += composition.main_sentences(page)[:1]
    sentences += _compared(page, [c.id for c in contexts])
    if len(phases) > 1:
        # Readings of a whole that spans phases would speak of no time in particular.
        return one_paragraph(sentences)
    held = readings(page, page.dig.claims.holding(page.subject))
    held = [r for r in held if r.rank > 1 and r.claim.question != "work" and standing(r.claim) == "reading"]
    return one_paragraph([*sentences, *told(page, held[:2], weak=False)])


def _in_phase(page: Page, context: Context) -> str:
    phase = page.dig.project.phase(context.phase)
    if page.is_plain:
        return f" ({english.literal(phase.name)})" if phase is not None else ""
    return setting.phase_brackets(page, phase)


def _compared(page: Page, contexts: list[str]) -> list[Sentence]:
    """Readings that the contexts share, and those that only one makes."""
    by_statement: dict[str, list[tuple[str, Reading]]] = {}
    for id in contexts:
        for statement, reading in statements_held(page, id, QUESTIONS).items():
            by_statement.setdefault(statement, []).append((id, reading))
    shared = [at for at in by_statement.values() if len(at) == len(contexts)][:3]
    single = [at[0] for at in by_statement.values() if len(at) == 1]
    sentences: list[Sentence] = []
    if shared:
        refs = [reading.claim.id for at in shared for _, reading in at]
        nouns = noun_of(page, [at[0][1] for at in shared])
        both = "both" if len(contexts) == 2 else "all"
        sentences += page.say(
            refs,
            f"we saw signs of {nouns} in {both} of them"
            if page.is_plain
            else f"{both} of them {by_grade(page, [(at[0][1], [r for _, r in at]) for at in shared])}",
        )
    if single and not page.is_plain:
        id = single[0][0]
        mine = [reading for at, reading in single if at == id][:3]
        sentences += page.say(
            [r.claim.id for r in mine],
            f"only {english.literal(id)} {by_grade(page, [(r, [r]) for r in mine], is_one=True)}",
        )
    return sentences
