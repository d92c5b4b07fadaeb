"""Three numbers with three names: items as counted, the minimum number of individuals, and items scaled up."""

from __future__ import annotations

import numpy as np

from narrate.measures.column import Column, exact
from narrate.measures.count_table import CountTable, Kind
from narrate.measures.runs import reduced, starts
from narrate.measures.thinning import added, total_from_share
from narrate.measures.units import Units
from narrate.model.plants import CountingRule, CountingTerm
from narrate.model.rules import Selector


def minimum_number(units: Units, of: Selector) -> Column:
    """
    The least number of individuals that the pieces can come from, by the counting rules of the packs.

        minimum = Σ over taxa ⌈Σ wᵢ kᵢ + max(Σ ends of one side, Σ ends of the other)⌉

    where kᵢ pieces of a sort are each worth wᵢ: a spikelet fork two glume bases, a cotyledon half a seed. Where pieces
    were found that make up none, it is one.

    Unit: individuals. Interval: none. No value: where all that was found has no minimum number (nutshell, wood, rind).
    Misleads: pooling samples lowers it, because two halves of one seed may lie in two samples; it is no estimate of
    how many there were. Never used in a test.
    Source:   Jones 1990, Circaea 6:91–96; Hillman 1984 (from memory); the rules themselves name theirs.
    """
    number, counted = units.kept(("minimum", of), lambda: _minimum(units, of))
    all_found = units.counted(of)
    value = np.where((counted > 0) | (all_found == 0), number, np.nan)
    return exact(value, of=all_found, n=counted, reason="what was found is weighed and has no minimum number")


def scaled_up(units: Units, of: Selector) -> Column:
    """
    Items in all, those of the unsorted share included.

        scaled up = Σ kⱼ / fⱼ;   kⱼ items in the size classes of which the share fⱼ was sorted

    Unit: items. Interval: exact for each share (the binomial test inverted), put together over shares by the method of
    Zou and Donner; where nothing was found, the upper end for nought items in the smallest share sorted. It speaks of
    the sample as it was floated, not of the deposit. Always has a value.
    Misleads: when the share was not taken by chance. Never used in a test: the raw count is.
    Source:   van der Veen & Fieller 1982, JAS 9:287–298; Zou & Donner 2008, Statistics in Medicine 27:1693–1702 (both
    from memory).
    """
    rows = units.rows(of)
    raw = units.counted(of)
    partly = units.partly_sorted(rows)
    share = units.table.share[partly]
    shares = np.unique(share)
    whole = raw - units.summed(units.table.counted, partly)
    totals, lows, highs = [whole], [whole], [whole]
    for i in range(shares.size):
        own = partly[share == shares[i]]
        found = units.summed(units.table.counted, own)
        low, high = total_from_share(found, shares[i])
        has_rows = units.sum_of(np.ones((1, own.size)), own) > 0
        totals.append(found / shares[i])
        lows.append(low)
        highs.append(np.where(has_rows, high, 0.0))
    total, low, high = added(np.array(totals), np.array(lows), np.array(highs))
    hidden = total_from_share(np.zeros(units.shape), units.smallest_share())[1]
    high = np.where(raw > 0, high, np.maximum(high, hidden))
    return Column(value=total, low=np.maximum(low, raw), high=high, of=raw, n=raw, has_interval=True)


def items_with_classes(units: Units, of: Selector) -> Column:
    """
    Items as counted, with abundance classes and marks of presence held by their ends.

        low = Σ counts + Σ lower ends;   high = Σ counts + Σ upper ends

    Unit: items. Interval: what the marks allow: a bare mark of presence says at least one and has no upper end.
    No value: where a class or mark is among the rows, because it is no count; the ends still stand.
    Misleads: classes of different scales cannot be compared by their letters.
    Source:   Hall & Kenward 1990, quoted by Charles et al. 2009, "Charred seeds: quantification".
    """
    rows, counted = units.rows(of), units.counted(of)
    marked = rows[np.isfinite(units.table.class_low[rows])]
    low = units.sum_of(units.table.class_low[None, marked], marked)
    high = units.sum_of(units.table.class_high[None, marked], marked)
    marks = units.sum_of(np.ones((1, marked.size)), marked)
    return Column(
        value=np.where(marks > 0, np.nan, counted),
        low=counted + low,
        high=counted + high,
        of=counted,
        n=counted,
        has_interval=True,
        reason="it was noted by a mark or class, and not counted",
    )


def _minimum(units: Units, of: Selector) -> tuple[np.ndarray, np.ndarray]:
    """Individuals, and pieces that have a minimum number, of shape (replicates, units)."""
    rows = units.rows(of)
    sums = np.zeros(units.shape)
    if not rows.size:
        return sums, sums
    group_of_kind, slot_of_kind, worth_of_kind = units.kept(
        "counting rules", lambda: _worths(units.table, units.packs.words.counting)
    )
    kind = units.kind_of(rows)
    has_number = slot_of_kind[kind] >= 0
    if not has_number.all():
        rows, kind = rows[has_number], kind[has_number]
    if not rows.size:
        return sums, sums
    # Rows lie by taxon and counting rule already; pieces without a rule are numbered by their part, as they lie too.
    at = starts(units.unit_of(rows), group_of_kind[kind])
    counted = units.counts(rows)

    def in_slot(slot: int) -> np.ndarray:
        return reduced(np.add, counted * np.where(slot_of_kind == slot, worth_of_kind, 0.0)[kind], at)

    individuals = in_slot(0)
    ends = [in_slot(slot) for slot in np.unique(slot_of_kind[slot_of_kind > 0]).tolist()]
    if ends:
        individuals = individuals + np.maximum.reduce(ends)
    pieces = reduced(np.add, counted, at)
    individuals = np.maximum(np.ceil(individuals - 1e-9), pieces > 0)
    return units.sum_of(individuals, rows[at]), units.sum_of(pieces, rows[at])


def _worths(table: CountTable, rules: tuple[CountingRule, ...]) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """
    For each kind: the group (taxon and rule) that it is numbered with, its slot, and what a piece is worth.

    Slot 0 is summed, of the slots above it the largest counts; −1 has no minimum number.
    """
    groups: dict[tuple[object, str], int] = {}
    group, slot, worth = [], [], []
    for kind in table.kinds:
        rule, where, each = _rule_of(kind, rules)
        name = (kind.taxon or kind.either or kind.written, rule)
        group.append(groups.setdefault(name, len(groups)))
        slot.append(where)
        worth.append(each)
    return np.array(group, np.intp), np.array(slot, np.intp), np.array(worth, float)


def _rule_of(kind: Kind, rules: tuple[CountingRule, ...]) -> tuple[str, int, float]:
    for rule in rules:
        if not any(kind.part in term.part for term in rule.terms()):
            continue
        if not rule.has_minimum:
            return rule.id, -1, 0.0
        for term in rule.add:
            if _is_of(kind, term):
                return rule.id, 0, term.each
        for slot, term in enumerate(rule.larger_of, start=1):
            if _is_of(kind, term):
                return rule.id, slot, term.each
        return rule.id, 0, 0.0
    return kind.part, 0, float(kind.completeness == "whole")


def _is_of(kind: Kind, term: CountingTerm) -> bool:
    return kind.part in term.part and kind.completeness in term.completeness
