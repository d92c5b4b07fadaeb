"""What a rule looked at, for one unit: values, facts and the rows behind them, and its clause with figures."""

from __future__ import annotations

import re
from collections.abc import Mapping

import numpy as np

from narrate.judging.criteria import Look, leaves
from narrate.judging.facts import fact_text
from narrate.judging.weigh import VERDICTS
from narrate.measures.catalogue import MEASURES
from narrate.model.claims import Evidence
from narrate.model.rules import Bound, Fact, Rule, Selector
from narrate.problems import Place

_AS_PERCENT = frozenset(
    {"share", "dominance", "ubiquity", "recovery", "richest_share", "ubiquity_change", "ubiquity_apart", "sorted_share"}
)
_SLOT = re.compile(r"\{([a-z_0-9]+)(?:\.(of|to|n|low|high))?\}")


def evidence_of(rule: Rule, look: Look, unit: int) -> tuple[Evidence, ...]:
    """One entry a leaf, needs first, each once."""
    found = []
    for leaf in dict.fromkeys(leaves((*rule.needs, rule.criteria))):
        if isinstance(leaf, Bound):
            found.append(_value(leaf, look, unit))
        else:
            found.append(_fact(leaf, look, unit))
    return tuple(found)


def filled(text: str, values: Mapping[str, Evidence]) -> str:
    """
    The clause with its figures: '{name}' the value, '{name.of}', '{name.to}', '{name.n}' what it rests on.

    A value that there is none of reads 'no value'. Unknown names stay as written; `check_rules` refuses them.
    """

    def figure(match: re.Match[str]) -> str:
        found = values.get(match[1])
        if found is None:
            return match[0]
        if match[2] is None:
            return in_words(found.measure.split(".")[0], found.value)
        number = getattr(found, match[2])
        return in_words(found.measure.split(".")[0] if match[2] in ("low", "high") else "items", number)

    return _SLOT.sub(figure, text)


def slots(text: str) -> tuple[str, ...]:
    """Names that a clause quotes."""
    return tuple(match[1] for match in _SLOT.finditer(text))


def in_words(measure: str, value: float | None) -> str:
    """
    A figure as a clause quotes it.

    >>> in_words("share", 0.625), in_words("ratio", 0.125), in_words("items", 1234.0), in_words("density", 14.26)
    ('63\xa0%', '0.12', '1,234', '14')
    """
    if value is None:
        return "no value"
    if measure in _AS_PERCENT:
        return f"{round_half_up(value * 100)}\u00a0%"
    if abs(value) >= 10 or float(value).is_integer():
        return f"{round_half_up(value):,}"
    return f"{value:.2g}" if abs(value) < 1 else f"{value:.1f}"


def round_half_up(value: float) -> int:
    """
    The nearest whole number, halves away from nought, as printed tables of the trade round.

    >>> round_half_up(12.5), round_half_up(37.5), round_half_up(-2.5)
    (13, 38, -3)
    """
    return int(np.floor(abs(value) + 0.5)) * (1 if value >= 0 else -1)


def _value(bound: Bound, look: Look, unit: int) -> Evidence:
    column = look.column(bound)
    value, low, high = (_finite(part, unit) for part in (column.value, column.low, column.high))
    n = _finite(column.n, unit)
    measure = bound.measure + (f".{bound.name}" if bound.name else "")
    return Evidence(
        measure=measure,
        name=bound.name,
        value=value,
        low=low if column.has_interval else None,
        high=high if column.has_interval else None,
        unit=MEASURES[bound.measure].unit,
        n=None if n is None else int(round(n)),
        text=in_words(bound.measure, value),
        reason="" if value is not None else column.reason,
        verdict=VERDICTS[int(look.leaf_verdicts(bound)[0, unit])],
        of=_finite(column.of, unit),
        to=_finite(column.to, unit),
        places=_rows(bound, look, unit),
    )


def _fact(fact: Fact, look: Look, unit: int) -> Evidence:
    places = {look.records[sample].place for sample in look.units.samples_of(unit)}
    return Evidence(
        measure=f"record.{fact.fact}",
        text=fact_text(fact, look.units, unit, look.records),
        verdict=VERDICTS[int(look.leaf_verdicts(fact)[0, unit])],
        places=tuple(sorted(places)),
    )


def _rows(bound: Bound, look: Look, unit: int) -> tuple[Place, ...]:
    """Rows of the sheets that the measure summed; the records where there is no such row."""
    rows: set[int] = set()
    measure = MEASURES[bound.measure]
    wanted = [bound.of or Selector()] if measure.needs_of else []
    wanted += [bound.to or Selector()] if measure.needs_to else []
    for selector in wanted:
        rows.update(look.units.rows_of(unit, selector).tolist())
    if rows:
        return tuple(sorted(look.units.table.places[row] for row in rows))
    return tuple(sorted({look.records[sample].place for sample in look.units.samples_of(unit)}))


def _finite(part: np.ndarray | None, unit: int) -> float | None:
    if part is None:
        return None
    value = float(part[0, unit])
    return value if np.isfinite(value) else None


def named(evidence: tuple[Evidence, ...]) -> dict[str, Evidence]:
    """Evidence by the names that clauses quote."""
    return {entry.name: entry for entry in evidence if entry.name}
