"""Whether a claim hangs on arguments that rest on few items, however many there are besides."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from narrate.judging.criteria import Look, leaves
from narrate.judging.weigh import grade_of, support
from narrate.model.claims import GRADE_NAMES
from narrate.model.packs import Packs
from narrate.model.plants import seeds_in_one_fruit
from narrate.model.rules import Bound, Limit, Rule

COUNTING = frozenset(
    {
        "items", "density", "taxa", "taxa_at_30", "presence", "share", "ratio", "chaff_ratio", "dominance",
        "plant_dominance",
    }
)  # fmt: skip
"""Measures that rest on items; those of samples, weights and litres have doubts of their own."""

OF_ITEMS = ("sample", "context", "feature")
"""Levels at which readings rest on items; those of phases and digs rest on samples and contexts."""

FEW_BEHIND = "few items behind"
"""The circumstance of a limit."""


def few_behind(look: Look, unit: int, holding: Sequence[Rule], limit: Limit) -> bool:
    """Whether the claim of one unit, of which these rules hold, hangs on few items."""
    if look.units.level not in OF_ITEMS:
        return False
    thin = [bool(items_behind(look, rule)[unit] < least_of(limit)) for rule in holding]
    return hangs_on_few(holding, thin, limit, look.units.packs)


def hangs_on_few(holding: Sequence[Rule], thin: Sequence[bool], limit: Limit, packs: Packs) -> bool:
    """
    Whether the heaviest arguments for a claim all are thin, and what is left without them would not bear more than the
    grade of the limit.

    thin:    for each rule that holds, whether it rests on fewer items than the limit asks for.
    Source:  common practice, no source: a handful of seeds may be one fruit.
    """
    weights = [packs.weights[rule.weight] for rule in holding]
    is_for = [rule.direction == "for" for rule in holding]
    if not any(is_for):
        return False
    heaviest = max(weight for weight, speaks_for in zip(weights, is_for, strict=True) if speaks_for)
    is_chief = [speaks_for and weight == heaviest for weight, speaks_for in zip(weights, is_for, strict=True)]
    if not all(is_thin for chief, is_thin in zip(is_chief, thin, strict=True) if chief):
        return False
    left = [i for i, chief in enumerate(is_chief) if not chief]
    if not any(is_for[i] for i in left):
        return True
    signed = [weights[i] if is_for[i] else -weights[i] for i in left]
    prior = packs.statements[holding[0].statement].prior
    weighed = support(prior, signed, [np.array([True])] * len(left), [holding[i].evidence for i in left])
    return GRADE_NAMES.index(grade_of(float(weighed[0]))) <= GRADE_NAMES.index(limit.grade)  # type: ignore[arg-type]


def least_of(limit: Limit) -> float:
    """Items below which an argument is thin."""
    return limit.threshold or 10


def items_behind(look: Look, rule: Rule) -> np.ndarray:
    """
    (units,): items that the criteria of a rule count, each once; marks count by their lower ends, and a rule that
    counts nothing rests on what the records say and on no number of items.

    For a season, of fruits that hold many seeds the fewest that could have held what was found are counted: six seeds
    of persimmon may be of one, and forty of a strawberry, and one fruit was picked on one day.
    """
    return look.units.kept(("items behind", rule.id), lambda: _items_behind(look, rule))


def _items_behind(look: Look, rule: Rule) -> np.ndarray:
    units = look.units
    asked = [leaf for leaf in leaves((rule.criteria,)) if isinstance(leaf, Bound) and leaf.measure in COUNTING]
    selectors = {selector for leaf in asked for selector in (leaf.of, leaf.to) if selector is not None}
    if not selectors:
        return np.full(len(units.ids), np.inf)
    rows = np.unique(np.concatenate([units.rows(selector) for selector in selectors]))
    items = units.table.counted[:1, rows] + np.nan_to_num(units.table.class_low[rows])[None, :]
    statement = units.packs.statements.get(rule.statement)
    if statement is None or statement.question != "season":
        return units.sum_of(items, rows)[0]
    total = np.zeros(len(units.ids))
    for (_, seeds), chosen in _by_fruit(look, rows).items():
        total += np.ceil(units.sum_of(items[:, chosen], rows[chosen])[0] / seeds)
    return total


def _by_fruit(look: Look, rows: np.ndarray) -> dict[tuple[str, int], np.ndarray]:
    """Places among the rows, by plant and seeds of one fruit; all that is counted by the piece together."""
    kinds, taxa = look.units.table.kinds, look.units.packs.taxa
    found: dict[tuple[str, int], list[int]] = {}
    for place, kind in enumerate(look.units.table.row_kind[rows].tolist()):
        seeds = seeds_in_one_fruit(taxa, kinds[kind].taxon, kinds[kind].part)
        found.setdefault((str(kinds[kind].taxon) if seeds > 1 else "", seeds), []).append(place)
    return {key: np.array(places, np.intp) for key, places in found.items()}
