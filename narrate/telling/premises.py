"""What a reading takes for granted, where rules of the project alone speak for it and no work stands behind them."""

from __future__ import annotations

import re
from collections.abc import Sequence

from narrate.model.narrative import Sentence
from narrate.model.rules import Rule
from narrate.telling import english
from narrate.telling.frames import noun_of
from narrate.telling.page import Page
from narrate.telling.plan import Reading
from narrate.telling.reasons import reasons_for

_SENTENCE = re.compile(r"(?<=[.!?])\s+(?=[A-Z])")


def premise_sentences(page: Page, group: Sequence[Reading]) -> list[Sentence]:
    """
    After readings that rest on the project's own judgement alone: whose it is, the step it takes, what may mislead.

    A work can be looked up; a judgement has to stand where the reader can weigh it.
    """
    sentences: list[Sentence] = []
    for item in group:
        rules = _own_rules(page, item)
        if not rules:
            continue
        refs = [item.claim.id]
        if page.is_plain:
            sentences += page.say(refs, "to read it so is our own view, and no book backs it")
            continue
        for reason in reasons_for(page, item, most=len(rules)):
            sentences += page.say(refs, f"beside this, {reason}")
        steps = [english.lowered(_SENTENCE.split(" ".join(rule.why.split()))[0].rstrip(".")) for rule in rules]
        step = f"the step to {noun_of(page, [item])}" if len(group) > 1 else "this step"
        whose = page.listed(dict.fromkeys(_basis(page, rule) for rule in rules))
        sentences += page.say(refs, f"{step} rests on {whose}, which no work backs: {'; '.join(steps)}")
        cautions = [english.lowered(text.strip().rstrip(".")) for rule in rules for text in rule.misleads_when]
        if cautions:
            page.cautions += 1
            *first, last = dict.fromkeys(cautions)
            told = f"{'; that '.join(first)}; and that {last}" if first else last
            sentences += page.say(refs, *page.turns("caution", caution=told, noun=noun_of(page, [item])))
    return sentences


def _own_rules(page: Page, item: Reading) -> list[Rule]:
    """The rules that hold for a reading; none where one of them came with narrate or rests on a work."""
    known = page.dig.packs.rules
    rules = [known[argument.rule] for argument in item.claim.held("for") if argument.rule in known]
    is_own = all(rule.is_local and not _works(page, rule) for rule in rules)
    return rules if is_own else []


def _works(page: Page, rule: Rule) -> list[str]:
    sources = page.dig.packs.sources
    return [key for key in rule.sources if key in sources and sources[key].kind == "work"]


def _basis(page: Page, rule: Rule) -> str:
    """'the judgement of the analyst of this project', 'common practice'."""
    sources = page.dig.packs.sources
    kinds = {sources[key].kind: sources[key].title for key in rule.sources if key in sources}
    if "judgement" in kinds:
        return f"the {english.literal(english.lowered(kinds['judgement']))}"
    return "common practice" if "practice" in kinds else "the word of the project"
