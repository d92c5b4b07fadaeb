"""How it was worked out: measures, grades, weights, limits, rules with their record on this dig, and sources."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from narrate.model.claims import GRADES
from narrate.model.edition import Edition
from narrate.model.ids import Level
from narrate.model.packs import Source
from narrate.model.rules import Rule, Verdict
from narrate.telling.citations import letter_of
from narrate.web.criteria import criterion_lines
from narrate.web.evidence import Opener
from narrate.web.plants import found_taxa


@dataclass(frozen=True, slots=True, kw_only=True)
class RecordView:
    """How a rule came out on this dig at one level."""

    level: str
    holds: int
    fails: int
    cannot_tell: int


@dataclass(frozen=True, slots=True, kw_only=True)
class RuleView:
    id: str
    rule: Rule
    statement: str
    needs: tuple[str, ...]
    criteria: tuple[str, ...]
    record: tuple[RecordView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class QuestionView:
    question: str
    asked: str
    rules: tuple[RuleView, ...]

    @property
    def id(self) -> str:
        return self.question


def grades() -> tuple[tuple[str, float, float], ...]:
    """Each grade with the support from which and up to which it may be used, weakest first."""
    tops = [least for _, least in GRADES[1:]] + [1.0]
    return tuple((grade, least, top) for (grade, least), top in zip(GRADES, tops, strict=True))


def asked_questions(edition: Edition) -> dict[str, tuple[str, ...]]:
    """Questions that rules in force, or retired by the project, answer; each with the ids of these rules."""
    packs = edition.packs
    changed = {change.id for change in packs.changes if change.of == "rule"}
    found: dict[str, list[str]] = {question: [] for question in packs.questions}
    for rule in packs.rules.values():
        question = _question(rule, edition)
        if question in found and (packs.in_force(rule) or rule.id in changed):
            found[question].append(rule.id)
    return {question: tuple(ids) for question, ids in found.items() if ids}


def rules(opener: Opener) -> tuple[QuestionView, ...]:
    """Rules in force, and those that the project retired, by the question they answer, each with its record."""
    packs = opener.edition.packs
    records = opener.edition.claims.tallied()
    return tuple(
        QuestionView(
            question=question,
            asked=packs.questions[question],
            rules=tuple(_rule(packs.rules[id], opener, records.get(id, {})) for id in ids),  # type: ignore[index, call-overload]
        )
        for question, ids in asked_questions(opener.edition).items()
    )


def cited(edition: Edition) -> tuple[Source, ...]:
    """Works cited by rules, statements, limits and the plants that were found, by author; those without one last."""
    packs = edition.packs
    keys: set[str] = set()
    for rule in packs.rules.values():
        keys.update(rule.sources)
    for statement in packs.statements.values():
        keys.update(statement.sources)
    for limit in packs.limits:
        keys.update(limit.sources)
    for id in found_taxa(edition):
        taxon = packs.taxa[id]  # type: ignore[index]
        keys.update(taxon.sources, taxon.ecology.sources)
        for use in taxon.uses:
            keys.update(use.sources)
        for window in taxon.windows:
            keys.update(window.sources)
    found = (packs.sources[key] for key in keys if key in packs.sources)  # type: ignore[index]
    every = packs.sources.values()

    def place(s: Source) -> tuple[bool, bool, str, str, str, str]:
        return s.kind != "work", not s.authors, s.authors.lower(), s.year, letter_of(s, every), s.key

    return tuple(sorted(found, key=place))


def _rule(rule: Rule, opener: Opener, record: Mapping[Level, Mapping[Verdict, int]]) -> RuleView:
    return RuleView(
        id=rule.id,
        rule=rule,
        statement=opener.wording.statement(rule.statement),
        needs=tuple(line for need in rule.needs for line in criterion_lines(need, opener.wording.called)),
        criteria=criterion_lines(rule.criteria, opener.wording.called),
        record=tuple(
            RecordView(
                level=level,
                holds=record[level].get("holds", 0),
                fails=record[level].get("fails", 0),
                cannot_tell=record[level].get("cannot tell", 0),
            )
            for level in rule.about
            if level in record
        ),
    )


def _question(rule: Rule, edition: Edition) -> str:
    statement = edition.packs.statements.get(rule.statement)
    return statement.question if statement is not None else rule.statement.partition(".")[0]
