"""packs/changes.yaml: what a project retires or sets otherwise in the packs that come with narrate."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Mapping
from dataclasses import dataclass, replace
from typing import Any, get_args

from narrate.model.ids import RuleId, StatementId, TaxonId
from narrate.model.pack_changes import PackChange
from narrate.model.packs import Packs
from narrate.model.rules import WEIGHTS, Bound, Criterion, Group, Rule, Verdict
from narrate.problems import ProblemList
from narrate.reading.asking import Asking, Field, Reads, offered
from narrate.reading.fields import list_of, mapping_of, partial_record, record
from narrate.reading.pack_files import PackFolder, read_pack_file
from narrate.reading.values import id_text, number, one_of, source_key, text
from narrate.reading.yaml_nodes import Mapping as MappingNode
from narrate.reading.yaml_nodes import Node, value_of

FILE = "changes.yaml"
TARGETS = ("rule", "statement", "taxon")
"""What can be retired."""


@dataclass(frozen=True, slots=True)
class _Entry:
    """One entry of the file, with its place."""

    found: Mapping[str, Any]
    node: Node
    asking: Asking

    def tell(self, key: str, code: str, message: str, help: str) -> None:
        at = value_of(self.node, key) if isinstance(self.node, MappingNode) else None
        self.asking.tell(at or self.node, code, message, help=help)

    def change(self, of: Any, id: str, what: str) -> PackChange:
        return PackChange(
            of=of,
            id=id,
            what=what,
            because=self.found["because"],
            sources=self.found.get("sources", ()),
            place=self.asking.place(self.node),
        )


def changed_packs(packs: Packs, folders: Iterable[PackFolder], problems: ProblemList) -> Packs:
    """
    The packs as the project's own changes leave them, with every change kept in `Packs.changes`.

    An entry that names nothing known, or changes what it retires, is told and leaves the packs as they are.
    """
    for folder in folders:
        if folder.is_local and (folder.root / folder.base / FILE).is_file():
            file = read_pack_file(folder, f"{folder.base}/{FILE}", problems, "N501", packs.sources)
            if file is not None:
                found, _ = partial_record(file.node, _FIELDS, file.asking, "changes of packs")
                for make, entries in ((_set, found.get("set", ())), (_retired, found.get("retire", ()))):
                    for entry in entries:
                        packs = make(entry, packs)
    return packs


# ---- what is retired


def _retired(entry: _Entry, packs: Packs) -> Packs:
    given = [target for target in TARGETS if target in entry.found]
    if len(given) != 1:
        entry.tell(
            "because",
            "N501",
            f"changes of packs: an entry to retire names {len(given)} of rule, statement and taxon, expected one",
            "write an entry for each",
        )
        return packs
    target, id = given[0], entry.found[given[0]]
    known: Mapping[str, Collection[str]] = {
        "rule": packs.rules, "statement": packs.statements, "taxon": packs.taxa,
    }  # fmt: skip
    if id not in known[target]:
        _unknown(entry, target, id, known[target])
        return packs
    if any(change.of == target and change.id == id for change in packs.changes):
        entry.tell(
            target,
            "N501",
            f"changes of packs: {target} '{id}' is changed as well as retired, or retired twice, expected one change",
            "delete one of the two",
        )
        return packs
    retire: Mapping[str, Callable[[Packs, Any], Packs]] = {
        "rule": _without_rule, "statement": _without_statement, "taxon": _without_taxon,
    }  # fmt: skip
    left = retire[target](packs, id)
    return replace(left, changes=(*packs.changes, entry.change(target, id, "retired")))


def _without_rule(packs: Packs, id: RuleId) -> Packs:
    return replace(packs, rules={**packs.rules, id: replace(packs.rules[id], status="retired")})


def _without_statement(packs: Packs, id: StatementId) -> Packs:
    """Its rules are retired with it, and no other statement has it as a rival or as work done before any longer."""
    statements = {
        key: replace(
            statement,
            rivals=tuple(rival for rival in statement.rivals if rival != id),
            after=tuple(before for before in statement.after if before != id),
        )
        for key, statement in packs.statements.items()
        if key != id
    }
    rules = {
        key: replace(rule, status="retired") if rule.statement == id else rule for key, rule in packs.rules.items()
    }
    return replace(packs, statements=statements, rules=rules)


def _without_taxon(packs: Packs, id: TaxonId) -> Packs:
    """No name means it any longer, and groups no longer count it among what they may be."""
    taxa = {
        key: replace(taxon, members=tuple(member for member in taxon.members if member != id))
        for key, taxon in packs.taxa.items()
        if key != id
    }
    lookup = {name: taxon for name, taxon in packs.taxon_lookup.items() if taxon != id}
    return replace(packs, taxa=taxa, taxon_lookup=lookup)


# ---- what is set otherwise


def _set(entry: _Entry, packs: Packs) -> Packs:
    if ("rule" in entry.found) == ("limit" in entry.found):
        entry.tell(
            "because",
            "N501",
            "changes of packs: an entry to set names neither or both of rule and limit, expected one",
            "write an entry for each",
        )
        return packs
    return _limit_set(entry, packs) if "limit" in entry.found else _rule_set(entry, packs)


def _limit_set(entry: _Entry, packs: Packs) -> Packs:
    id = entry.found["limit"]
    limits = {limit.id: limit for limit in packs.limits}
    if id not in limits:
        _unknown(entry, "limit", id, limits)
        return packs
    was = limits[id].threshold
    if was is None or "threshold" not in entry.found:
        says = "has no threshold to set" if was is None else "is given no threshold"
        entry.tell(
            "limit",
            "N501",
            f"changes of packs: limit '{id}' {says}, expected a limit with a threshold and its new value",
            "limits with a threshold are " + ", ".join(k for k, limit in limits.items() if limit.threshold is not None),
        )
        return packs
    now = entry.found["threshold"]
    limit = replace(limits[id], threshold=now, says=_said_anew(limits[id].says, was, now))
    what = f"threshold is {now:g}, was {was:g}"
    return replace(
        packs,
        limits=tuple(limit if known.id == id else known for known in packs.limits),
        changes=(*packs.changes, entry.change("limit", id, what)),
    )


def _said_anew(says: str, was: float, now: float) -> str:
    """'fewer than 30 items' with the new number; a text that does not say the number gets it in brackets."""
    return says.replace(f"{was:g}", f"{now:g}") if f"{was:g}" in says else f"{says} (here {now:g})"


def _rule_set(entry: _Entry, packs: Packs) -> Packs:
    id = entry.found["rule"]
    if id not in packs.rules:
        _unknown(entry, "rule", id, packs.rules)
        return packs
    rule = packs.rules[id]
    whats: list[str] = []
    if "weight" in entry.found:
        whats.append(f"weight is {entry.found['weight']}, was {rule.weight}")
        rule = replace(rule, weight=entry.found["weight"])
    if "bound" in entry.found:
        changed = _with_bound(entry, rule)
        if changed is None:
            return packs
        rule, said = changed
        whats.append(said)
    if not whats:
        entry.tell(
            "rule",
            "N501",
            f"changes of packs: rule '{id}' is given neither a weight nor a bound, expected one of them",
            "add 'weight: …', or 'bound: …' with at_least or at_most",
        )
        return packs
    answered = _with_answers(entry, rule)
    if answered is None:
        return packs
    answered = replace(answered, changed=entry.found["because"])
    change = entry.change("rule", id, "; ".join(whats))
    return replace(packs, rules={**packs.rules, id: answered}, changes=(*packs.changes, change))


def _with_bound(entry: _Entry, rule: Rule) -> tuple[Rule, str] | None:
    """The rule with one of its bounds moved; a bound is meant by its name, or by a measure that only one bound has."""
    wanted = entry.found["bound"]
    bounds = list(dict.fromkeys(b for c in (*rule.needs, rule.criteria) for b in _bounds(c)))
    meant = [b for b in bounds if b.name == wanted] or [b for b in bounds if b.measure == wanted]
    if len(meant) != 1:
        names = sorted({b.name or b.measure for b in bounds})
        says = f"has no bound '{wanted}'" if not meant else f"has {len(meant)} bounds of '{wanted}'"
        entry.tell(
            "bound",
            "N502",
            f"changes of packs: rule '{rule.id}' {says}, expected one of {', '.join(names)}",
            "name a bound by its name, or by its measure where only one has it",
        )
        return None
    old = meant[0]
    sides = [side for side in ("at_least", "at_most") if side in entry.found]
    wrong = [side for side in sides if getattr(old, side) is None]
    if not sides or wrong:
        has = " and ".join(side for side in ("at_least", "at_most") if getattr(old, side) is not None)
        entry.tell(
            wrong[0] if wrong else "bound",
            "N501",
            f"changes of packs: bound '{wanted}' of rule '{rule.id}' has {has}, expected a new value for that",
            "to ask something else, write a rule of your own and retire this one",
        )
        return None
    new = replace(old, **{side: entry.found[side] for side in sides})
    moved = replace(
        rule,
        needs=tuple(_with(criterion, old, new) for criterion in rule.needs),
        criteria=_with(rule.criteria, old, new),
    )
    said = "; ".join(f"{side} of {wanted} is {entry.found[side]:g}, was {getattr(old, side):g}" for side in sides)
    return moved, said


def _with_answers(entry: _Entry, rule: Rule) -> Rule | None:
    """The rule with the examples that answer otherwise now; their new verdicts are tested like the old ones."""
    answers: Mapping[str, Verdict] = entry.found.get("answers", {})
    names = [example.name for example in rule.examples]
    for name in answers:
        if name not in names:
            _unknown(entry, f"example of rule '{rule.id}'", name, names, at="answers")
            return None
    examples = tuple(replace(example, expect=answers.get(example.name, example.expect)) for example in rule.examples)
    return replace(rule, examples=examples)


def _bounds(criterion: Criterion) -> Iterable[Bound]:
    if isinstance(criterion, Bound):
        yield criterion
    elif isinstance(criterion, Group):
        for part in criterion.criteria:
            yield from _bounds(part)


def _with(criterion: Criterion, old: Bound, new: Bound) -> Criterion:
    if criterion == old:
        return new
    if isinstance(criterion, Group):
        return replace(criterion, criteria=tuple(_with(part, old, new) for part in criterion.criteria))
    return criterion


def _unknown(entry: _Entry, what: str, id: str, known: Collection[str], *, at: str = "") -> None:
    meant = entry.asking.near(id, known)
    entry.tell(
        at or what,
        "N502",
        f"changes of packs: {what} '{id}' is not known{offered(meant)}",
        f"write '{meant}'" if meant else "name one that the packs in use define",
    )


# ---- fields


def _entries(fields: Mapping[str, Field]) -> Field:
    def take(node: Node, asking: Asking, whose: str, name: str) -> _Entry | None:
        found = record(node, fields, asking, f"{whose}, {name}")
        return None if found is None else _Entry(found, node, asking)

    return Field(reads=list_of(Reads("an entry with what is changed and because of what", take)))


_SOURCES = list_of(source_key(), one_is_a_list=True, at_least=1)
_BECAUSE = Field(reads=text("the reason", may_be_empty=False), is_needed=True)
_FIELDS: Mapping[str, Field] = {
    "retire": _entries(
        {
            **{target: Field(reads=id_text(f"the id of a {target}")) for target in TARGETS},
            "because": _BECAUSE,
            "sources": Field(reads=_SOURCES),
        }
    ),
    "set": _entries(
        {
            "rule": Field(reads=id_text("the id of a rule")),
            "limit": Field(reads=id_text("the id of a limit")),
            "bound": Field(reads=id_text("the name of a bound, or its measure")),
            "at_least": Field(reads=number()),
            "at_most": Field(reads=number()),
            "threshold": Field(reads=number()),
            "weight": Field(reads=one_of(WEIGHTS)),
            "because": _BECAUSE,
            "sources": Field(reads=_SOURCES, is_needed=True),
            "answers": Field(reads=mapping_of(one_of(get_args(Verdict)))),
        }
    ),
}
