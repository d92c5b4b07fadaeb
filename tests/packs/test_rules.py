"""The rules that come with narrate: sound under every region pack, and each seen to hold and to fail."""

from __future__ import annotations

import re
from collections import defaultdict
from functools import lru_cache

import pytest

from narrate.judging.check_rules import answers, check_rules
from narrate.model.packs import Packs
from narrate.reading.packs import read_packs
from narrate.telling.readability import grade

REGIONS = ("eastern-north-america", "arid-southwest", "temperate-europe")

# The ids that people and scripts outside the package rely on (interfaces, version 1).
RELIED_ON = """
fuel.wood fuel.maize-cob fuel.nutshell fuel.chaff fuel.dung fuel.turf-heath fuel.smudge food.maize food.cereal
food.pulse food.oil-seed food.nut food.fruit food.small-seed food.greens food.root-tuber food.cooking-accident
food.burned-store field.weeds-with-crop field.disturbed-ground field.autumn-sown field.spring-sown field.cut-low
field.cut-high field.uprooted field.fertile field.poor field.wet field.managed-wild-stand processing.shelling-waste
processing.dehusking-waste processing.whole-ears-or-spikelets processing.coarse-sieving-waste
processing.fine-sieving-waste processing.clean-product processing.malting processing.nut-cracking season.spring
season.early-summer season.late-summer season.autumn season.winter season.more-than-one season.stored-only
deposit.burned-in-place deposit.single-event deposit.slow-build-up deposit.redeposited deposit.rodent-cache
deposit.cess integrity.modern-seeds integrity.disturbed integrity.too-few integrity.poor-recovery
integrity.out-of-period work.finish-sorting work.enough-for-proportions work.date-candidate
"""

NEVER = re.compile(r"\b(prov(e|es|ed)|shows? that|must have|occupied|occupation)\b")


@lru_cache(maxsize=3)
def _packs(region: str) -> Packs:
    packs, problems = read_packs((region,))
    assert problems == ()
    return packs


def _examples():  # type: ignore[no-untyped-def]
    """Every example with a region in which it is tried, or None where no region tries it."""
    for rule in _packs(REGIONS[0]).rules.values():
        for example in rule.examples:
            wanted = example.region or (rule.regions[0] if rule.regions else REGIONS[0])
            yield rule, example, wanted if wanted in REGIONS else None


@pytest.mark.parametrize("region", REGIONS)
def test_packs_and_rules_of_a_region_are_sound(region: str) -> None:
    """Packs of the region read without a problem, and no rule in force names what the region does not know."""
    assert [f"{p.place}: {p.message}" for p in check_rules(_packs(region))] == []


def test_every_example_is_tried_in_some_region() -> None:
    """No example waits for a region that there is no pack for."""
    assert [(rule.id, example.name) for rule, example, region in _examples() if region is None] == []


def test_every_rule_holds_in_one_test_and_fails_in_another() -> None:
    """Each rule, tried on its examples through the real packs, holds, fails and cannot tell at least once."""
    seen: dict[str, set[str]] = defaultdict(set)
    for rule, example, region in _examples():
        assert region is not None
        seen[rule.id].update(answers(rule, example, _packs(region)).values())

    assert {id: said for id, said in seen.items() if said != {"holds", "fails", "cannot tell"}} == {}


def test_there_are_statements_and_rules_enough() -> None:
    """At least 75 statements and 210 rules, for and against, on every level."""
    packs = _packs(REGIONS[0])
    rules = packs.rules.values()

    assert len(packs.statements) >= 75
    assert len(rules) >= 210
    assert {rule.direction for rule in rules} == {"for", "against"}
    assert {level for rule in rules for level in rule.about} == {"sample", "context", "feature", "phase", "site"}


@pytest.mark.parametrize("statement", RELIED_ON.split())
def test_every_statement_relied_on_can_be_argued(statement: str) -> None:
    """Each statement of the interface has a rule that argues for it in some region."""
    packs = _packs(REGIONS[0])

    assert statement in packs.statements
    assert [r.id for r in packs.rules.values() if r.statement == statement and r.direction == "for"]


def test_every_statement_has_an_argument_against_it_or_says_how_it_fails() -> None:
    """Of the statements with rivals each has a rule against it, so that a claim can be lost as well as won."""
    packs = _packs(REGIONS[0])
    argued = {rule.statement for rule in packs.rules.values() if rule.direction == "against"}
    alone = {s.id for s in packs.statements.values() if s.rivals and s.id not in argued}

    assert alone == set()


def test_no_text_claims_too_much() -> None:
    """No statement or rule says 'proves', 'shows that', 'must have' or 'occupied'; season is of gathering."""
    packs = _packs(REGIONS[0])
    texts = [t for s in packs.statements.values() for t in (s.clause, s.noun, s.plain, s.plain_noun, s.means)]
    texts += [t for r in packs.rules.values() for t in (r.says, r.says_plain, r.why, *r.misleads_when)]

    assert [text for text in texts if NEVER.search(text)] == []


def test_plain_texts_read_at_grade_eight_or_below() -> None:
    """What visitors read of a statement or a rule has a reading grade of 8 at most."""
    packs = _packs(REGIONS[0])
    texts = [f"It looks as if {s.plain}." for s in packs.statements.values()]
    texts += [f"{r.says_plain.capitalize()}." for r in packs.rules.values()]

    assert [(text, grade(text)) for text in texts if grade(text) > 8] == []


def test_a_mix_without_a_leader_is_read_of_plants_and_not_of_their_parts() -> None:
    """Rules that say what the commonest of many plants makes up count it over all its parts."""
    said = {rule.id: rule for rule in _packs("eastern-north-america").rules.values() if "the commonest" in rule.says}
    measures = {id: re.findall(r"measure='(\w*dominance)'", repr(rule.criteria)) for id, rule in said.items()}

    assert {id for id, used in measures.items() if used} == {"deposit.many_kinds_and_no_leader", "deposit.mixed_refuse"}
    assert {name for used in measures.values() for name in used} == {"plant_dominance"}
