"""Readings that the counts of a phase or dig would give, but that rest on one deposit: which one, and how much of it."""

from __future__ import annotations

from collections.abc import Sequence

from narrate.model.claims import Argument, Claim, Evidence
from narrate.model.narrative import Sentence
from narrate.model.stratigraphy import Context
from narrate.telling import numbers, setting
from narrate.telling.behind import bounds_of
from narrate.telling.page import Page

OF_ONE_CONTEXT = "richest_context_share"
"""The measure by which a rule asks that no one context carries it."""


def one_deposit_sentences(page: Page, questions: Sequence[str]) -> list[Sentence]:
    """'Waste from shelling is not read of the phase as a whole, because 906 of the 1,323 items behind it lay in C13.'"""
    if page.is_plain:
        return []
    sentences: list[Sentence] = []
    for id, statement in page.dig.packs.statements.items():
        claim = page.dig.claims.find(page.subject, id) if statement.question in questions else None
        if claim is None or claim.verdict == "holds":
            continue
        for argument in claim.arguments:
            share = _what_failed(argument)
            richest = _richest(page, share) if share is not None else None
            if richest is not None:
                sentences += _told(page, claim, _things(page, argument), *richest)
                break
    return sentences


def _what_failed(argument: Argument) -> Evidence | None:
    """The share of the richest context, where it alone keeps an argument for the reading from holding."""
    if argument.direction != "for" or argument.verdict != "fails":
        return None
    failed = [entry for entry in argument.evidence if entry.verdict != "holds"]
    alone = len(failed) == 1 and failed[0].measure.split(".")[0] == OF_ONE_CONTEXT
    return failed[0] if alone and failed[0].value else None


def _richest(page: Page, share: Evidence) -> tuple[Context, int, int] | None:
    """The context that holds most of the rows behind a share, its items, and the items of all."""
    places = set(share.places)
    held: dict[str, int] = {}
    samples = {sample.id: sample for sample in page.dig.project.samples}
    for row in page.dig.project.counts:
        if row.place in places and row.count.number:
            context = samples[row.sample].context
            held[context] = held.get(context, 0) + row.count.number
    if len(held) < 2:
        return None
    most = max(held, key=lambda id: held[id])
    return page.dig.project.context(most), held[most], sum(held.values())  # type: ignore[arg-type]


def _things(page: Page, argument: Argument) -> str:
    """'cupules and cobs', where the rule asks for parts by name; else 'items'."""
    rule = page.dig.packs.rules.get(argument.rule)
    bounds = bounds_of(rule.criteria) if rule is not None else ()
    parts = next((b.of.part for b in bounds if b.measure == OF_ONE_CONTEXT and b.of is not None), ())
    known = page.dig.packs.words.parts
    names = [known[part].plural for part in parts if part in known]
    return page.listed(names) if 0 < len(names) == len(parts) <= 3 else "items"


def _told(page: Page, claim: Claim, things: str, context: Context, most: int, total: int) -> list[Sentence]:
    noun = page.in_own_words(page.dig.packs.statements[claim.statement].noun)
    whole = "the phase" if page.subject.level == "phase" else "the dig"
    where = setting.context_name(page, context)
    share = numbers.percent(most / total)
    part = f"{page.count(most)} of the {page.count(total)} {things} that it would rest on ({share}) lay in {where}"
    return page.say(
        [claim.id],
        f"{noun} is not read of {whole} as a whole, because {part}",
        f"since {part}, {noun} is not read of {whole} as a whole",
    )
