"""Whether a rule asks of things that the dig has not: a kind of place, or plants that nobody found."""

from __future__ import annotations

from narrate.model.edition import Edition
from narrate.model.ids import SITE, RuleId, Subject
from narrate.model.rules import Bound, Criterion, Fact, Group
from narrate.telling.behind import is_meant

_OF_PLACES = ("context_kind", "trait", "deposit")


def is_of_what_is_absent(edition: Edition, rule: RuleId) -> bool:
    """Whether some criterion that has to be met asks for what no context of the dig is, or for what none held."""
    known = edition.packs.rules[rule]
    return any(_is_absent(edition, criterion) for criterion in (*known.needs, known.criteria))


def _is_absent(edition: Edition, criterion: Criterion) -> bool:
    if isinstance(criterion, Group):
        found = (_is_absent(edition, one) for one in criterion.criteria)
        return any(found) if criterion.kind == "all" else criterion.kind == "any" and all(found)
    if isinstance(criterion, Fact):
        return _is_of_no_place(edition, criterion)
    return _is_of_no_find(edition, criterion)


def _is_of_no_place(edition: Edition, fact: Fact) -> bool:
    if fact.fact not in _OF_PLACES or not fact.is_any_of:
        return False
    kinds = edition.packs.words.context_kinds
    has: set[str] = set()
    for context in edition.project.contexts:
        if fact.fact == "trait":
            has |= kinds[context.kind].traits if context.kind in kinds else set()
        else:
            has.add(context.kind if fact.fact == "context_kind" else context.deposit or "")
    return not has & set(fact.is_any_of)


def _is_of_no_find(edition: Edition, bound: Bound) -> bool:
    if bound.of is None or not bound.at_least:
        return False
    tallies = edition.findings.of(Subject(level="site", id=SITE)).tallies
    return not any(is_meant(bound.of, tally, edition.packs) for tally in tallies)
