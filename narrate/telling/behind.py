"""Which remains a claim rests on: the selectors of the rules that held, met with what was found."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import replace

from narrate.model.claims import Argument, Claim
from narrate.model.findings import Tally
from narrate.model.ids import RuleId
from narrate.model.packs import Packs
from narrate.model.plants import Taxon
from narrate.model.rules import Bound, Criterion, Fact, Group, Selector
from narrate.telling.last_asked import LastAsked


def remains_behind(claim: Claim, packs: Packs, tallies: Iterable[Tally]) -> tuple[Tally, ...]:
    """Tallies that the arguments for a claim looked at, in the order given."""
    return _meant(claim.rules_held("for"), packs, tallies)


def heaviest(claim: Claim) -> list[Argument]:
    """The arguments that speak most for a claim; several where they weigh the same."""
    held = claim.held("for")
    most = max((argument.weight for argument in held), default=0.0)
    return [argument for argument in held if argument.weight == most]


def remains_looked_at(claim: Claim, packs: Packs, tallies: Iterable[Tally]) -> tuple[Tally, ...]:
    """Tallies that any argument for a claim would look at, whether it holds or not."""
    rules = tuple(argument.rule for argument in claim.arguments if argument.direction == "for")
    return _meant(rules, packs, tallies)


def _meant(rules: tuple[RuleId, ...], packs: Packs, tallies: Iterable[Tally]) -> tuple[Tally, ...]:
    """
    Tallies that some of the rules mean.

    A tally is meant for what it is, not for how much of it there is, so that few are not met again and again.
    """
    if not rules:
        return ()
    known = _KNOWN.about(packs).setdefault(rules, {})
    found = []
    for tally in tallies:
        kind = (tally.taxon, tally.part, tally.condition, tally.only_cf)
        if kind not in known:
            chosen = [s for rule in rules for s in _selectors_of_rule(rule, packs) if _narrows(s)]
            known[kind] = any(is_meant(selector, tally, packs) for selector in chosen)
        if known[kind]:
            found.append(tally)
    return tuple(found)


_KNOWN = LastAsked()


def remains_counted(argument: Argument, packs: Packs, tallies: Iterable[Tally]) -> tuple[Tally, ...]:
    """
    Tallies that one argument counted: those of the figures which its text quotes, or of the whole rule if it has none.

    A claim may rest on nuts and on grapes; an argument that quotes five seeds of soft fruit speaks of the grapes alone.
    """
    rule = packs.rules.get(argument.rule)
    if rule is None:
        return ()
    quoted = set(_QUOTED.findall(rule.says))
    named = [bound.of for bound in bounds_of(rule.criteria) if bound.name in quoted and bound.of is not None]
    chosen = [s for s in (named or list(_selectors(rule.criteria))) if _narrows(s)]
    return tuple(tally for tally in tallies if any(is_meant(selector, tally, packs) for selector in chosen))


def doubtful_left_out(argument: Argument, packs: Packs, tallies: Iterable[Tally]) -> int:
    """Items named with 'cf.' that an argument would count if it did not ask for certain names alone."""
    rule = packs.rules.get(argument.rule)
    if rule is None:
        return 0
    quoted = set(_QUOTED.findall(rule.says))
    named = [b.of for b in bounds_of(rule.criteria) if b.name in quoted and b.of is not None and b.of.is_certain]
    bare = [replace(selector, is_certain=False) for selector in named]
    return sum(t.doubtful for t in tallies if any(is_meant(selector, t, packs) for selector in bare))


_QUOTED = re.compile(r"\{(\w+)")
"""Names of figures in the text of a rule: '({seeds} seeds)'."""


def is_meant(selector: Selector, tally: Tally, packs: Packs) -> bool:
    """Whether a selector means a tally; keys narrow together, values of one key widen."""
    taxon = packs.taxa.get(tally.taxon) if tally.taxon is not None else None
    part = packs.words.parts.get(tally.part)
    roles = part.roles if part else frozenset()
    tags = taxon.tags if taxon else frozenset()
    # Each question is asked only where all before it were answered with yes: most things fail the first.
    return (
        (not selector.taxon or any(is_within(taxon, name, packs) for name in selector.taxon))
        and not any(is_within(taxon, name, packs) for name in selector.not_taxon)
        and (not selector.family or (taxon is not None and taxon.family in selector.family))
        and (not selector.part or tally.part in selector.part)
        and (not selector.role or bool(roles & set(selector.role)))
        and not (roles & set(selector.not_role))
        and (not selector.tag or bool(tags & set(selector.tag)))
        and not (tags & set(selector.not_tag))
        and (not selector.status or (taxon is not None and taxon.status in selector.status))
        and (not selector.field_weed or (taxon is not None and taxon.ecology.field_weed in selector.field_weed))
        and (not selector.sow or (taxon is not None and taxon.ecology.sow in selector.sow))
        and (not selector.soil or (taxon is not None and bool(set(taxon.ecology.soil) & set(selector.soil))))
        and (not selector.height or (taxon is not None and taxon.ecology.height in selector.height))
        and (
            not selector.seed
            or (taxon is not None and any(set(s.split()) <= set(taxon.ecology.seed) for s in selector.seed))
        )
        and (not selector.life or (taxon is not None and taxon.ecology.life in selector.life))
        and (not selector.habit or (taxon is not None and taxon.habit in selector.habit))
        and (not selector.use or (taxon is not None and any(u.use in selector.use for u in taxon.uses)))
        and (not selector.condition or tally.condition in selector.condition)
        and (not selector.keeping or _keeps(taxon, tally, selector.keeping))
        and (not selector.ripens_in or _ripens(taxon, tally, selector.ripens_in, within=False))
        and (not selector.ripens_within or _ripens(taxon, tally, selector.ripens_within, within=True))
        and not (selector.is_certain and tally.only_cf)
    )


def is_within(taxon: Taxon | None, name: str, packs: Packs) -> bool:
    """Whether a taxon is the named one or below it."""
    if taxon is None:
        return False
    if name in (taxon.id, taxon.family, taxon.genus):
        return True
    if taxon.members and all(is_within(packs.taxa.get(member), name, packs) for member in taxon.members):
        return True
    return taxon.rank == "species" and taxon.id.startswith(f"{name} ")


def _selectors_of_rule(rule_id: str, packs: Packs) -> Iterator[Selector]:
    rule = packs.rules.get(rule_id)  # type: ignore[call-overload]
    if rule is not None:
        yield from _selectors(rule.criteria)


def _selectors(criterion: Criterion) -> Iterator[Selector]:
    if isinstance(criterion, Bound):
        # An upper bound alone says that something is scarce: the claim does not rest on those remains, but a scarce
        # first in a ratio makes it rest on the second.
        if criterion.of is not None and criterion.at_least is not None:
            yield criterion.of
        elif criterion.to is not None and criterion.measure in ("ratio", "mass_ratio"):
            yield criterion.to
    elif isinstance(criterion, Group) and criterion.kind != "none":
        for inner in criterion.criteria:
            yield from _selectors(inner)


def bounds_of(criterion: Criterion) -> Iterator[Bound]:
    if isinstance(criterion, Bound):
        yield criterion
    elif isinstance(criterion, Group):
        for inner in criterion.criteria:
            yield from bounds_of(inner)


def facts_of(criterion: Criterion) -> Iterator[Fact]:
    """Facts of the record that a rule asks for; none that it asks to be absent."""
    if isinstance(criterion, Fact):
        yield criterion
    elif isinstance(criterion, Group) and criterion.kind != "none":
        for inner in criterion.criteria:
            yield from facts_of(inner)


def _narrows(selector: Selector) -> bool:
    """Whether the selector says anything about plants or parts; '{}' means everything and tells nothing."""
    return bool(
        selector.taxon or selector.family or selector.part or selector.role or selector.tag or selector.use
        or selector.sow or selector.soil or selector.height or selector.seed or selector.life or selector.habit
        or selector.status or selector.field_weed or selector.keeping or selector.ripens_in or selector.ripens_within
    )  # fmt: skip


def _keeps(taxon: Taxon | None, tally: Tally, keeping: tuple[str, ...]) -> bool:
    if taxon is None:
        return False
    return any(window.part == tally.part and set(window.keeping) & set(keeping) for window in taxon.windows)


def _ripens(taxon: Taxon | None, tally: Tally, months: tuple[int, ...], *, within: bool) -> bool:
    if taxon is None:
        return False
    wanted = set(months)
    windows = [set(window.months) for window in taxon.windows if window.part == tally.part]
    if within:
        # Sources may disagree: a plant ripens within some months only if every source says so, as rules count it.
        return bool(windows) and all(window <= wanted for window in windows)
    return any(window & wanted for window in windows)
