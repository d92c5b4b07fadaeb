"""Hints: readings of so few finds that another draw of the counts would undo them, told as too slight to build on."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.claims import Claim
from narrate.model.narrative import Sentence
from narrate.model.stratigraphy import Phase
from narrate.telling import numbers, setting
from narrate.telling.frames import noun_of, that_clauses
from narrate.telling.of_note import found_in_another_phase
from narrate.telling.page import Page
from narrate.telling.plan import Reading


def faint_sentences(page: Page, faint: Sequence[Reading], *, by_items: bool = True) -> list[Sentence]:
    """
    'A further hint, of tobacco, is too slight to build on': hints of a small count, all in one sentence.

    by_items: whether it is the few items of the page that make them slight, and not the few finds behind them.
    """
    if not faint:
        return []
    ordered = sorted(faint, key=lambda r: -(r.claim.stability or 0.0))
    refs = [*([page.ref("items")] if by_items else []), *(r.claim.id for r in ordered)]
    noun = noun_of(page, ordered)
    if page.is_plain:
        clauses = that_clauses(page, ordered)
        return page.say(
            refs,
            f"there are faint signs that {clauses}, but a few finds more or less would change that",
            f"we see faint signs that {clauses}, which a few finds more or less could undo",
        )
    share = numbers.percent(ordered[0].claim.stability or 0.0)
    many = page.count(setting.items_counted(page))
    uphold = f"uphold none of them in more than {share} of cases"
    hints = f"further hints, of {noun}, are" if len(ordered) > 1 else f"a further hint, of {noun}, is"
    uphold = uphold if len(ordered) > 1 else f"uphold it in only {share} of cases"
    return page.say(
        refs,
        f"the {many} items hint at {noun} too, but counts drawn anew at random {uphold}" if by_items else "",
        f"{hints} too slight to build on: counts drawn anew at random {uphold}",
    )


def hints_of_phases(page: Page, hints: Sequence[tuple[Phase, Claim]]) -> list[Sentence]:
    """Of the dig: what one of its phases only hints at, in the words that the phase itself has for it."""
    sentences: list[Sentence] = []
    for phase, claim in hints:
        reading = [Reading(claim=claim, statement=page.dig.packs.statements[claim.statement], behind=())]
        name = setting.phase_name(phase)
        if page.is_plain:
            clauses = that_clauses(page, reading)
            found_too = found_in_another_phase(page, claim, page.dig.project.phases)
            text = f"from {name} there are faint signs that {clauses}, but a few finds more or less would change that"
            sentences += page.say([claim.id], text)
            if found_too:
                sentences += page.say([claim.id], f"but {found_too}, and these finds are too few to compare")
            continue
        share = numbers.percent(claim.stability or 0.0)
        sentences += page.say(
            [claim.id],
            f"a hint of {noun_of(page, reading)} in {name} is too slight to build on: counts drawn anew at random "
            f"uphold it in only {share} of cases",
        )
    return sentences
