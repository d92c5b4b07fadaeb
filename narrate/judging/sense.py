"""Whether a rule can ever hold, and whether rivals are set against each other in a way that can be weighed."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from types import MappingProxyType

from narrate.judging.criteria import leaves
from narrate.model.packs import Packs
from narrate.model.rules import Bound, Criterion, Fact, Group, Rule
from narrate.problems import Place, ProblemList

RANGES: Mapping[str, tuple[float, float]] = MappingProxyType(
    {
        **dict.fromkeys(
            (
                "share", "dominance", "plant_dominance", "ubiquity", "presence", "richest_share",
                "richest_context_share", "recovery", "sorted_share", "ubiquity_p", "ubiquity_apart_p",
            ),
            (0.0, 1.0),
        ),
        "ubiquity_change": (-1.0, 1.0),
        "ubiquity_apart": (-1.0, 1.0),
        "intrusions": (0.0, 3.0),
    }
)  # fmt: skip
"""What a measure can be at least and at most, where that is not from 0 without end."""

OF_ONE_VALUE = frozenset({"context_kind", "deposit", "security", "preservation", "heavy_fraction", "method"})
"""Facts of which the records give one value; a kind of context has several traits."""


def check_sense(rule: Rule, problems: ProblemList) -> None:
    """Criteria and needs that leave no room, alone or together, so that the rule could never hold."""
    for bound in dict.fromkeys(leaves((*rule.needs, rule.criteria))):
        if isinstance(bound, Bound):
            _check_bound(rule, bound, problems)
    _check_bounds_together(rule, problems)
    _check_facts_together(rule, problems)
    _check_denied(rule, problems)


def check_rivals(packs: Packs, problems: ProblemList) -> None:
    """
    Faults among the rivals of statements that exist.

    That two statements name each other is as it should be. Faulty is a statement that is its own rival or names one
    twice, and a ring of three or more in which each names only the next: there each is to give way to another, and
    no two of them are ever set beside each other from both sides.
    """
    for statement in packs.statements.values():
        for rival in dict.fromkeys(statement.rivals):
            if rival == statement.id:
                _rival(problems, statement.place, f"statement '{statement.id}' names itself as a rival")
            elif statement.rivals.count(rival) > 1:
                _rival(problems, statement.place, f"statement '{statement.id}' names rival '{rival}' twice")
    for ring in _rings(packs):
        place = packs.statements[ring[0]].place  # type: ignore[index]
        said = " -> ".join(f"'{id}'" for id in (*ring, ring[0]))
        problems.error(
            place,
            "N501",
            f"statements {said} are rivals in a ring, each naming only the next, expected rivals that name each other",
            help=f"add '{ring[0]}' to the rivals of '{ring[1]}' if the two explain the same remains, or take it out",
        )


def _rival(problems: ProblemList, place: Place, said: str) -> None:
    problems.error(
        place, "N501", f"{said}, expected each of the other readings of the same remains once", help="take it out"
    )


def _rings(packs: Packs) -> Iterator[tuple[str, ...]]:
    """Rings of rivals that are named one way only, each once, from the id that comes first."""
    one_way: dict[str, list[str]] = {
        str(id): [
            str(rival)
            for rival in dict.fromkeys(statement.rivals)
            if rival in packs.statements and rival != id and id not in packs.statements[rival].rivals
        ]
        for id, statement in packs.statements.items()
    }
    done: set[str] = set()
    for start in sorted(one_way):
        ring = _ring_from(start, one_way, done)
        if ring is not None:
            done.update(ring)
            first = ring.index(min(ring))
            yield (*ring[first:], *ring[:first])


def _ring_from(start: str, one_way: Mapping[str, list[str]], done: set[str]) -> tuple[str, ...] | None:
    """The first ring that leads back to `start`, depth first and without recursion."""
    stack: list[tuple[str, Iterator[str]]] = [(start, iter(one_way[start]))]
    path, seen = [start], {start}
    while stack:
        following = next(stack[-1][1], None)
        if following is None:
            stack.pop()
            path.pop()
        elif following == start:
            return tuple(path)
        elif following not in seen and following not in done:
            seen.add(following)
            path.append(following)
            stack.append((following, iter(one_way[following])))
    return None


# ---- bounds


def _check_bound(rule: Rule, bound: Bound, problems: ProblemList) -> None:
    if bound.at_least is not None and bound.at_most is not None and bound.at_least > bound.at_most:
        _contradiction(problems, rule, bound.place, _both(bound.at_least, bound.at_most))
    least, most = RANGES.get(bound.measure, (0.0 if bound.measure != "phase_end" else -1e9, float("inf")))
    too_high = bound.at_least is not None and bound.at_least > most
    too_low = bound.at_most is not None and bound.at_most < least
    if too_high or too_low:
        said = f"at least {bound.at_least:g}" if too_high else f"at most {bound.at_most:g}"
        is_percent = too_high and most == 1 and bound.at_least is not None and bound.at_least <= 100
        reach = f"{least:g} to {most:g}" if most != float("inf") else f"{least:g} or more"
        problems.error(
            bound.place,
            "N505",
            f"rule '{rule.id}': measure '{bound.measure}' must be {said}, expected something within {reach}",
            help=f"write {bound.at_least / 100:g} for {bound.at_least:g} %"
            if is_percent and bound.at_least is not None
            else "change the bound",
        )


def _check_bounds_together(rule: Rule, problems: ProblemList) -> None:
    least: dict[tuple[object, ...], float] = {}
    most: dict[tuple[object, ...], float] = {}
    for bound in _together((*rule.needs, rule.criteria)):
        if not isinstance(bound, Bound):
            continue
        key = (bound.measure, bound.of, bound.to)
        was_least, was_most = least.get(key), most.get(key)
        if bound.at_least is not None:
            least[key] = max(least.get(key, bound.at_least), bound.at_least)
        if bound.at_most is not None:
            most[key] = min(most.get(key, bound.at_most), bound.at_most)
        is_alone = bound.at_least is not None and bound.at_most is not None and bound.at_least > bound.at_most
        is_new = (was_least, was_most) != (least.get(key), most.get(key))
        if key in least and key in most and least[key] > most[key] and is_new and not is_alone:
            _contradiction(problems, rule, bound.place, _both(least[key], most[key]))


def _both(least: float, most: float) -> str:
    return f"at least {least:g} and at most {most:g}"


def _contradiction(problems: ProblemList, rule: Rule, place: Place, said: str) -> None:
    problems.error(
        place,
        "N505",
        f"rule '{rule.id}': the same measure must be {said}, expected bounds that something can meet",
        help="change one of the bounds, or put the two under 'any'",
    )


# ---- facts


def _check_facts_together(rule: Rule, problems: ProblemList) -> None:
    """Facts that must all hold and of which no record can meet all."""
    allowed: dict[str, set[str]] = {}
    denied: dict[str, set[str]] = {}
    told: set[str] = set()
    for leaf in _together((*rule.needs, rule.criteria)):
        if not isinstance(leaf, Fact) or leaf.fact in told:
            continue
        one_value = leaf.fact in OF_ONE_VALUE
        if leaf.is_any_of:
            before = allowed.get(leaf.fact)
            own = set(leaf.is_any_of)
            allowed[leaf.fact] = own if before is None or not one_value else before & own
        denied.setdefault(leaf.fact, set()).update(leaf.is_none_of)
        if leaf.fact in allowed and not allowed[leaf.fact] - denied[leaf.fact]:
            told.add(leaf.fact)
            problems.error(
                leaf.place,
                "N505",
                f"rule '{rule.id}': what is asked of fact '{leaf.fact}' leaves no value that meets all of it",
                help="change one of the two, or put them under 'any'",
            )


def _check_denied(rule: Rule, problems: ProblemList) -> None:
    """A criterion that must hold and, under 'none', must not."""
    wanted = set(_together((*rule.needs, rule.criteria)))
    for group in _groups((*rule.needs, rule.criteria)):
        if group.kind != "none":
            continue
        for leaf in group.criteria:
            if leaf in wanted or any(_same(leaf, other) for other in wanted):
                problems.error(
                    leaf.place,
                    "N505",
                    f"rule '{rule.id}': a criterion must hold and stands under 'none' as well, expected one of the two",
                    help="take it out of 'none', or out of the criteria beside it",
                )


def _same(one: Criterion, other: Criterion) -> bool:
    """The same leaf, wherever it stands."""
    if isinstance(one, Bound) and isinstance(other, Bound):
        keys = ("measure", "of", "to", "at_least", "at_most")
    elif isinstance(one, Fact) and isinstance(other, Fact):
        keys = ("fact", "is_any_of", "is_none_of")  # type: ignore[assignment]
    else:
        return False
    return all(getattr(one, key) == getattr(other, key) for key in keys)


def _together(criteria: tuple[Criterion, ...]) -> Iterator[Bound | Fact]:
    """Leaves that must all hold for the criteria to hold."""
    for criterion in criteria:
        if not isinstance(criterion, Group):
            yield criterion
        elif criterion.kind == "all":
            yield from _together(criterion.criteria)


def _groups(criteria: tuple[Criterion, ...]) -> Iterator[Group]:
    """Groups on the way of 'all' from the top: what stands in them decides whether the whole can hold."""
    for criterion in criteria:
        if isinstance(criterion, Group):
            yield criterion
            if criterion.kind == "all":
                yield from _groups(criterion.criteria)
