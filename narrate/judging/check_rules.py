"""Rules held against everything they name, and against their own examples."""

from __future__ import annotations

import difflib
from collections.abc import Iterable

from narrate.judging.clauses import slots
from narrate.judging.criteria import Look, leaves, rule_verdicts
from narrate.judging.examples import example_project
from narrate.judging.facts import FACTS, recorded
from narrate.judging.known_words import fact_values, plant_words
from narrate.judging.limits import CIRCUMSTANCES
from narrate.judging.sense import check_rivals, check_sense
from narrate.judging.weigh import VERDICTS
from narrate.measures.catalogue import MEASURES
from narrate.measures.count_table import count_table
from narrate.measures.units import Units
from narrate.model.ids import Level
from narrate.model.packs import Packs
from narrate.model.plants import TAGS
from narrate.model.rules import Bound, Example, Fact, Rule, Selector, Verdict
from narrate.problems import Place, Problem, ProblemList


def check_rules(packs: Packs, *, only_local: bool = False) -> tuple[Problem, ...]:
    """
    Problems of rules, statements and limits; sound rules are tried on their own examples.

    only_local:  looks at the rules of the project's own packs alone; those that come with narrate are tested with it.
    """
    problems = ProblemList()
    for rule in packs.rules.values():
        if not packs.in_force(rule) or (only_local and not rule.is_local and not rule.changed):
            continue
        before = len(problems.found)
        _check_names(rule, packs, problems)
        _check_evidence(rule, packs, problems)
        check_sense(rule, problems)
        if len(problems.found) == before:
            _check_examples(rule, packs, problems)
    for limit in packs.limits:
        if limit.when not in CIRCUMSTANCES:
            _unknown(
                problems, Place(path="packs/words/limits.yaml"), f"limit '{limit.id}': when", limit.when, CIRCUMSTANCES
            )
    for statement in packs.statements.values():
        named = [("rival", id) for id in statement.rivals] + [("after", id) for id in statement.after]
        for key, id in named:
            if id not in packs.statements:
                _unknown(problems, statement.place, f"statement '{statement.id}': {key}", id, packs.statements)
    check_rivals(packs, problems)
    return problems.sorted()


def answers(rule: Rule, example: Example, packs: Packs) -> dict[Level, Verdict]:
    """
    The verdict of a rule on one of its examples, on every level that the rule is about and the example can be.

    An example of several samples is no sample, one of several kinds no context, and one of several phases is a dig.
    Where that leaves no level of the rule, the first of its levels is tried.
    """
    project = example_project(example, packs)
    table = count_table(project, packs)
    phases = Units(table, "phase", packs, project.preservation)
    records = recorded(project, packs)
    found: dict[Level, Verdict] = {}
    for level in [level for level in rule.about if _can_be(example, level)] or rule.about[:1]:
        units = Units(table, level, packs, project.preservation)
        found[level] = VERDICTS[int(rule_verdicts(rule, Look(units, phases, records))[0, 0])]
    return found


def _can_be(example: Example, level: Level) -> bool:
    if level == "site":
        return True
    if len(set(example.phases)) > 1:
        return False
    samples = max(example.samples, len(example.phases), len(example.kinds))
    return level == "phase" or (not example.kinds and (level != "sample" or samples == 1))


def _check_evidence(rule: Rule, packs: Packs, problems: ProblemList) -> None:
    """A key of shared evidence that no other rule of the statement has shares nothing: mostly a slip of the pen."""
    if not rule.evidence:
        return
    beside = [other for other in packs.rules.values() if other.statement == rule.statement and other.id != rule.id]
    if not any(other.evidence == rule.evidence and other.direction == rule.direction for other in beside):
        known = sorted({other.evidence for other in beside if other.evidence})
        near = difflib.get_close_matches(rule.evidence, known, n=1)
        problems.error(
            rule.place,
            "N502",
            f"rule '{rule.id}': evidence '{rule.evidence}' is the key of no other rule {rule.direction} "
            f"'{rule.statement}', expected a key that two rules share",
            help=f"write '{near[0]}'"
            if near
            else "write the same key in the rules that rest on the same remains, or take it out",
        )


def _check_names(rule: Rule, packs: Packs, problems: ProblemList) -> None:
    if rule.statement not in packs.statements:
        _unknown(problems, rule.place, f"rule '{rule.id}': statement", rule.statement, packs.statements)
    quoted = set()
    for leaf in leaves((*rule.needs, rule.criteria)):
        if isinstance(leaf, Fact):
            if leaf.fact not in FACTS:
                _unknown(problems, leaf.place, f"rule '{rule.id}': fact", leaf.fact, FACTS)
            known = fact_values(packs).get(leaf.fact)
            for value in (*leaf.is_any_of, *leaf.is_none_of):
                if known is not None and value not in known:
                    _unknown(problems, leaf.place, f"rule '{rule.id}': {leaf.fact}", value, known)
            continue
        quoted.add(leaf.name)
        _check_bound(rule, leaf, packs, problems)
    for text in (rule.says, rule.says_plain):
        for name in slots(text):
            if name not in quoted:
                _unknown(problems, rule.place, f"rule '{rule.id}': quoted value", name, quoted - {""})


def _check_bound(rule: Rule, bound: Bound, packs: Packs, problems: ProblemList) -> None:
    measure = MEASURES.get(bound.measure)
    if measure is None:
        _unknown(problems, bound.place, f"rule '{rule.id}': measure", bound.measure, MEASURES)
        return
    for key, is_needed, given in (("of", measure.needs_of, bound.of), ("to", measure.needs_to, bound.to)):
        if is_needed and given is None:
            problems.error(
                bound.place,
                "N501",
                f"rule '{rule.id}': measure '{measure.id}' has no '{key}', expected a selector",
                help=f"add {key}: {{…}} with the taxa or parts that are meant",
            )
    wrong = [level for level in rule.about if level not in measure.levels]
    if wrong:
        problems.error(
            bound.place,
            "N501",
            f"rule '{rule.id}': measure '{measure.id}' is for {', '.join(measure.levels)}; "
            f"the rule is about {', '.join(wrong)}",
            help="change 'about' or use another measure",
        )
    for selector in (bound.of, bound.to):
        if selector is not None:
            _check_selector(rule, bound.place, selector, packs, problems)


def _check_selector(rule: Rule, place: Place, selector: Selector, packs: Packs, problems: ProblemList) -> None:
    genera = {taxon.genus for taxon in packs.taxa.values()} | {taxon.family for taxon in packs.taxa.values()}
    known_taxa = set(packs.taxa) | genera
    tags = set(TAGS) | {tag for taxon in packs.taxa.values() for tag in taxon.tags}
    roles = {role for part in packs.words.parts.values() for role in part.roles}
    asked: tuple[tuple[str, Iterable[str], Iterable[str]], ...] = (
        ("taxon", (*selector.taxon, *selector.not_taxon), known_taxa),
        ("family", selector.family, {taxon.family for taxon in packs.taxa.values()}),
        ("part", selector.part, packs.words.parts),
        ("role", (*selector.role, *selector.not_role), roles),
        ("tag", (*selector.tag, *selector.not_tag), tags),
        ("condition", selector.condition, packs.words.conditions),
        *plant_words(selector, packs),
        ("context_kind", selector.context_kind, fact_values(packs)["context_kind"]),
        ("context_trait", (*selector.context_trait, *selector.not_context_trait), fact_values(packs)["trait"]),
    )
    for what, names, known in asked:
        for name in names:
            if name not in known:
                _unknown(problems, place, f"rule '{rule.id}': {what}", name, known)


def _check_examples(rule: Rule, packs: Packs, problems: ProblemList) -> None:
    for example in rule.examples:
        if not _can_be_tried(rule, example, packs):
            continue
        try:
            found = answers(rule, example, packs)
        except KeyError as unknown:
            _unknown(
                problems,
                example.place,
                f"rule '{rule.id}', example '{example.name}': taxon",
                str(unknown.args[0]),
                packs.taxon_lookup,
            )
            continue
        wrong = {level: said for level, said in found.items() if said != example.expect}
        is_everywhere = len(wrong) == len(found) and len(set(wrong.values())) == 1
        for level, said in list(wrong.items())[: 1 if is_everywhere else None]:
            of_level = "" if is_everywhere else f" of a {level}"
            problems.error(
                example.place,
                "N503",
                f"rule '{rule.id}', example '{example.name}': the rule says '{said}'{of_level}, "
                f"expected '{example.expect}'",
                help=f"add 'answers: {{{example.name}: {said}}}' to its entry in packs/changes.yaml if that is meant"
                if rule.changed
                else "mend the criteria, or the example if it is wrong",
            )


def _can_be_tried(rule: Rule, example: Example, packs: Packs) -> bool:
    """Examples name plants of one region: that of the example, else the first of the rule's; else any will do."""
    region = example.region or (rule.regions[0] if rule.regions else "")
    return not region or region in packs.regions


def _unknown(problems: ProblemList, place: Place, whose: str, name: str, known: Iterable[str]) -> None:
    near = difflib.get_close_matches(name, [str(k) for k in known], n=1)
    offered = f"; did you mean '{near[0]}'?" if near else ""
    problems.error(
        place,
        "N502",
        f"{whose} '{name}' is not known{offered}",
        help=f"write '{near[0]}'" if near else "use a name that the packs define, or define it in the project's packs/",
    )
