"""Ratios with a name of their own: on a log scale, against grams, against whole ears, and by what a gram is worth."""

from __future__ import annotations

import numpy as np

from narrate.measures.column import Column
from narrate.measures.intervals import weighted_poisson
from narrate.measures.selection import lies_below
from narrate.measures.shares import ends_of_ratio
from narrate.measures.units import Units
from narrate.model.plants import EarLine, Exchange
from narrate.model.rules import Selector


def log_ratio(units: Units, of: Selector, to: Selector) -> Column:
    """
    Logarithm (base 10) of items of one thing per item of another, such as kernels to cupules: as far above 0 for ten to
    one as below it for one to ten.

        log ratio = log₁₀(k / m)

    Unit: powers of ten. Interval: logarithms of the exact ends of the ratio. No value: where either is 0; then one end
    still is a bound, and the sample is not dropped. No bounds either where both are 0.
    Misleads: as the ratio does; kernels break at heats at which cupules do not.
    Source: Scarry & Steponaitis 1997, in Gremillion (ed.), People, Plants, and Landscapes (from memory).
    """
    first, second = units.counted(of), units.counted(to)
    low, high = ends_of_ratio(units, first, second)
    with np.errstate(invalid="ignore", divide="ignore"):
        value = np.where((first > 0) & (second > 0), np.log10(first) - np.log10(second), np.nan)
        low, high = np.log10(low), np.log10(high)
    return Column(
        value=value,
        low=low,
        high=high,
        of=first,
        to=second,
        n=first + second,
        has_interval=True,
        reason="one of the two was not found",
    )


def items_per_g(units: Units, of: Selector, to: Selector) -> Column:
    """
    Items of one thing per gram of another, such as seeds to wood charcoal.

        ratio = Σ (kᵢ / fᵢ) / Σ (gⱼ / fⱼ);   kᵢ items, gⱼ grams, f the shares sorted of their size classes

    Unit: items per gram. Interval: exact Poisson on the raw count, as for density; the grams are taken as weighed. No
    value: where the second was not weighed or weighs nothing.
    Misleads: wood is taken for routine fuel; where fires differed, a change may lie in the wood and not in the seeds.
    Source: Miller 1988, in Hastorf & Popper (eds), pp. 72–85; Asch, Ford & Asch 1972 (from memory).
    """
    raw = units.counted(of)
    total, variance = units.estimated(of)
    grams, _ = units.mass_g(to)
    low, high = weighted_poisson(total, variance, units.heaviest(of))
    with np.errstate(invalid="ignore", divide="ignore"):
        per_g = np.where(grams > 0, 1 / grams, np.nan)
    return Column(
        value=total * per_g,
        low=low * per_g,
        high=high * per_g,
        of=raw,
        to=grams,
        n=raw,
        has_interval=True,
        reason="the second was not weighed",
    )


def acorn_to_hickory(units: Units) -> Column:
    """
    Acorn to hickory as foods, from the weights of their shells.

        ratio = c · g(acorn shell) / g(hickory shell);   c = 50

    Unit: none. Interval: not of chance but of the factor: the same with c = 5 and c = 200, the range of the literature;
    without an upper end where some acorn shell was not weighed, and from 0 where some hickory shell was not.
    No value: where hickory shell was not weighed or weighs nothing.
    Misleads: acorn shell is thin and breaks small; hickory shell is thick, survives, and was itself a fuel. The factor
    is soft by more than an order of magnitude, so only large differences between samples say anything.
    Source: Yarnell & Black 1985, Southeastern Archaeology 4:93–106 for the factor, Lopinot 1983 for its range, both as
    Gremillion, Excavating Occaneechi Town, "Nuts", gives them.
    """
    exchange = next((e for e in units.packs.words.exchanges if e.id == "acorn-to-hickory"), None)
    return _exchanged(units, exchange)


def chaff_against_ear(units: Units, of: Selector, to: Selector) -> Column:
    """
    Chaff to grain against what whole ears of the same crop hold: 1 is the composition of whole ears or spikelets.

        index = Σ wᵢ cᵢ / Σ gⱼ rⱼ;   cᵢ pieces of chaff that each stand for wᵢ (a spikelet fork two glume bases),
        gⱼ grains of crop j, rⱼ the pieces of that chaff to one grain in its ear

    Unit: times the whole ear. Interval: the exact interval of the ratio of raw pieces, widened by the range of r where
    the plant allows several. No value: where no grain was found that has a line for this chaff; a bound where there is
    a grain line but the chaff, or the grain, is 0.
    Misleads: chaff burns away before grain does, so a value below 1 is weak evidence of cleaning and one above it is
    strong evidence of waste. No source gives thresholds: three times and a third of the line are common defaults.
    Source: van der Veen 1992, Crop Husbandry Regimes, p. 82; Hillman 1984 (both from memory); the lines name theirs.
    """
    pieces, grains = units.counted(of), units.counted(to)
    worth = units.weighted(of)
    lines = _lines_of(units, of)
    low_line, high_line, middle = (_grain_times(units, to, lines, pick) for pick in (_low, _high, _middle))
    low, high = ends_of_ratio(units, pieces, grains)
    with np.errstate(invalid="ignore", divide="ignore"):
        per_piece = np.where(pieces > 0, worth / pieces, 1.0)
        per_line = {
            name: np.where(grains > 0, line / grains, np.nan) for name, line in (("low", low_line), ("high", high_line))
        }
        value = worth / np.where(middle > 0, middle, np.nan)
        has_line = middle > 0
        low = np.where(has_line, low * per_piece / per_line["high"], np.nan)
        high = np.where(has_line, high * per_piece / per_line["low"], np.nan)
    return Column(
        value=value,
        low=low,
        high=high,
        of=pieces,
        to=grains,
        n=pieces + grains,
        has_interval=True,
        reason="no grain was found of a crop whose ear is known for this chaff",
    )


def _exchanged(units: Units, exchange: Exchange | None) -> Column:
    if exchange is None:
        nothing = np.full(units.shape, np.nan)
        return Column(value=nothing, low=nothing, high=nothing, reason="the packs know no factor")
    of = Selector(taxon=exchange.taxon, part=exchange.part)
    to = Selector(taxon=exchange.to_taxon, part=exchange.to_part)
    first, weighed = units.mass_g(of)
    second, _ = units.mass_g(to)
    found_but_not_weighed = (units.samples_with(of) > 0) & (weighed == 0)
    # What was counted and not weighed can only add: a sum that leaves some out bounds from one side alone.
    more_of, more_to = (_unweighed(units, selector) for selector in (of, to))
    with np.errstate(invalid="ignore", divide="ignore"):
        plain = np.where(found_but_not_weighed, np.nan, first) / np.where(second > 0, second, np.nan)
    return Column(
        value=plain * exchange.factor,
        low=np.where(more_to, 0.0, plain * exchange.low),
        high=np.where(more_of, np.inf, plain * exchange.high),
        of=first,
        to=second,
        n=weighed,
        has_interval=True,
        reason="one of the two was not weighed",
    )


def _unweighed(units: Units, of: Selector) -> np.ndarray:
    """(1, units): True where some of the thing was found that nobody weighed."""
    rows = units.rows(of)
    rows = rows[units.table.is_noted[rows] & ~np.isfinite(units.table.mass_g[rows])]
    return units.sum_of(np.ones((1, rows.size)), rows) > 0


def _lines_of(units: Units, of: Selector) -> tuple[EarLine, ...]:
    """Lines of whole ears for the by-products that the selector names."""
    return tuple(line for line in units.packs.words.ears if set(line.byproduct) & set(of.part or line.byproduct))


def _grain_times(units: Units, to: Selector, lines: tuple[EarLine, ...], pick) -> np.ndarray:  # type: ignore[no-untyped-def]
    """Pieces of chaff to be expected of the grain, had it come in whole ears."""
    table, packs = units.table, units.packs
    by_kind = np.zeros(len(table.kinds))
    for i, kind in enumerate(table.kinds):
        if kind.taxon is None:
            continue
        # The line of the crop itself comes before that of a broader name.
        fitting = [n for n in lines if kind.part in n.grain and lies_below(kind.taxon, n.crop, packs)]
        fitting.sort(key=lambda line: line.crop != kind.taxon)
        by_kind[i] = pick(fitting[0]) if fitting else 0.0
    rows = units.rows(to)
    return units.sum_of(units.counts(rows) * by_kind[table.row_kind[rows]], rows)


def _low(line: EarLine) -> float:
    return line.low


def _high(line: EarLine) -> float:
    return line.high


def _middle(line: EarLine) -> float:
    """The geometric middle of the range, so that half and double are as far from it."""
    return float(np.sqrt(line.low * line.high))
