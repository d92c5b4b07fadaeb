"""Small rules for tests of judging."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from narrate.model.ids import PartId, RuleId, StatementId
from narrate.model.packs import Packs
from narrate.model.rules import Bound, Criterion, Example, Fact, Group, Limit, Remains, Rule, Selector, Statement
from narrate.problems import Place
from tests.small_packs import small_packs

HERE = Place(path="packs/rules/fuel/test.yaml", line=1)
KERNEL = Selector(taxon=("Zea mays",), part=(PartId("kernel"),))
CUPULE = Selector(taxon=("Zea mays",), part=(PartId("cupule"),))
COBS = StatementId("fuel.maize-cob")


def bound(measure: str, of: Selector | None = None, to: Selector | None = None, **keys: Any) -> Bound:
    return Bound(measure=measure, of=of, to=to, place=HERE, **keys)


def fact(name: str, *values: str, is_not: tuple[str, ...] = ()) -> Fact:
    return Fact(fact=name, is_any_of=values, is_none_of=is_not, place=HERE)


def group(kind: Any, *criteria: Criterion) -> Group:
    return Group(kind=kind, criteria=criteria, place=HERE)


def a_rule(id: str = "fuel.test", criteria: Criterion | None = None, **keys: Any) -> Rule:
    """A strong argument for cobs as fuel: at most half a kernel to a cupule, from ten items on."""
    usual: dict[str, Any] = {
        "title": "Cob parts far outnumber kernels",
        "status": "draft",
        "direction": "for",
        "statement": COBS,
        "about": ("sample", "context"),
        "says": "cob parts outnumber kernels ({kpc.to} to {kpc.of})",
        "says_plain": "there were more bits of cob than kernels",
        "why": "An ear carries two kernels to a cupule.",
        "misleads_when": ("kernels burned away",),
        "sources": (),
        "known": "convention",
        "needs": (bound("items", Selector(taxon=("Zea mays",)), at_least=10),),
        "criteria": criteria or bound("ratio", KERNEL, CUPULE, at_most=0.5, name="kpc"),
        "weight": "strong",
        "examples": (),
        "place": HERE,
    }
    return Rule(id=RuleId(id), **(usual | keys))


def a_statement(id: str = COBS, **keys: Any) -> Statement:
    usual: dict[str, Any] = {
        "question": id.partition(".")[0],
        "title": "Maize cobs as fuel",
        "clause": "maize cobs were burned as fuel",
        "noun": "the use of maize cobs as fuel",
        "plain": "people burned corn cobs",
        "plain_noun": "fires fed with corn cobs",
        "place": HERE,
    }
    return Statement(id=StatementId(id), **(usual | keys))


def packs_with(*rules: Rule, statements: tuple[Statement, ...] = (), limits: tuple[Limit, ...] = ()) -> Packs:
    known = {s.id: s for s in (a_statement(), *statements)}
    return replace(small_packs(), rules={r.id: r for r in rules}, statements=known, limits=limits)


def an_example(expect: Any, *remains: tuple[str, str, int], **keys: Any) -> Example:
    rows = tuple(Remains(taxon=t, part=PartId(p), count=n) for t, p, n in remains)
    return Example(name="test", remains=rows, expect=expect, place=HERE, **keys)
