"""All measures by name, as rules and tables ask for them."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType
from typing import Any

import numpy as np

from narrate.measures import (
    amounts,
    apart,
    comparison,
    contrast,
    counting,
    diversity,
    enough,
    ratios,
    seasons,
    shares,
    ubiquity,
    unseen,
)
from narrate.measures.column import Column
from narrate.measures.narrowing import narrowing_of, worked_once
from narrate.measures.units import Units
from narrate.model.ids import LEVELS, Level
from narrate.model.rules import Selector


@dataclass(frozen=True, slots=True, kw_only=True)
class Measure:
    """One labelled function of the catalogue."""

    id: str
    unit: str
    function: Callable[..., Column]
    needs_of: bool = False
    needs_to: bool = False
    needs_phases: bool = False
    levels: tuple[Level, ...] = LEVELS


def _listed(*measures: Measure) -> Mapping[str, Measure]:
    return MappingProxyType({measure.id: measure for measure in measures})


def _narrowing(id: str, function: Callable[..., Column], name: str, *, needs_to: bool = False) -> Measure:
    return Measure(
        id=f"{id}_width_if_sorted", unit="", function=narrowing_of(function, name), needs_of=True, needs_to=needs_to
    )


MEASURES: Mapping[str, Measure] = _listed(
    Measure(id="items", unit="items", function=amounts.items, needs_of=True),
    Measure(id="density", unit="items per litre", function=amounts.density, needs_of=True),
    Measure(id="mass", unit="g", function=amounts.mass, needs_of=True),
    Measure(id="mass_per_l", unit="g per litre", function=amounts.mass_per_l, needs_of=True),
    Measure(id="taxa", unit="taxa", function=diversity.taxa, needs_of=True),
    Measure(id="taxa_at_30", unit="taxa", function=diversity.taxa_at_30, needs_of=True),
    Measure(id="presence", unit="", function=ubiquity.presence, needs_of=True),
    Measure(id="share", unit="", function=shares.share, needs_of=True, needs_to=True),
    Measure(id="ratio", unit="", function=shares.ratio, needs_of=True, needs_to=True),
    Measure(id="chaff_ratio", unit="", function=shares.chaff_ratio, needs_of=True, needs_to=True),
    Measure(id="mass_ratio", unit="g per g", function=amounts.mass_ratio, needs_of=True, needs_to=True),
    Measure(id="dominance", unit="", function=shares.dominance, needs_of=True),
    Measure(id="plant_dominance", unit="", function=shares.plant_dominance, needs_of=True),
    Measure(id="samples", unit="samples", function=ubiquity.samples),
    Measure(id="samples_with", unit="samples", function=ubiquity.samples_with, needs_of=True),
    Measure(id="ubiquity", unit="", function=ubiquity.ubiquity, needs_of=True),
    Measure(
        id="ubiquity_change",
        unit="",
        function=comparison.ubiquity_change,
        needs_of=True,
        needs_phases=True,
        levels=("site",),
    ),
    Measure(
        id="ubiquity_p", unit="", function=comparison.ubiquity_p, needs_of=True, needs_phases=True, levels=("site",)
    ),
    Measure(id="phases_apart", unit="", function=apart.phases_apart, needs_of=True, levels=("site",)),
    Measure(id="phases_apart_p", unit="", function=apart.phases_apart_p, needs_of=True, levels=("site",)),
    Measure(id="kinds_apart", unit="", function=apart.kinds_apart, needs_of=True, levels=("phase", "site")),
    Measure(id="kinds_apart_p", unit="", function=apart.kinds_apart_p, needs_of=True, levels=("phase", "site")),
    Measure(id="areas_apart", unit="", function=apart.areas_apart, needs_of=True, levels=("phase", "site")),
    Measure(id="areas_apart_p", unit="", function=apart.areas_apart_p, needs_of=True, levels=("phase", "site")),
    Measure(id="samples_of", unit="samples", function=contrast.samples_of, needs_of=True, levels=("phase", "site")),
    Measure(
        id="ubiquity_apart",
        unit="",
        function=contrast.ubiquity_apart,
        needs_of=True,
        needs_to=True,
        levels=("phase", "site"),
    ),
    Measure(
        id="ubiquity_apart_p",
        unit="",
        function=contrast.ubiquity_apart_p,
        needs_of=True,
        needs_to=True,
        levels=("phase", "site"),
    ),
    Measure(id="richest_share", unit="", function=shares.richest_share, needs_of=True),
    Measure(id="richest_context_share", unit="", function=shares.richest_context_share, needs_of=True),
    Measure(id="times_median_density", unit="", function=amounts.times_median_density, needs_of=True),
    Measure(id="phase_end", unit="year", function=amounts.phase_end),
    Measure(id="litres", unit="litres", function=amounts.litres),
    Measure(id="recovery", unit="", function=shares.recovery),
    Measure(id="intrusions", unit="", function=shares.intrusions),
    Measure(id="sorted_share", unit="", function=shares.sorted_share),
    Measure(id="minimum_number", unit="individuals", function=counting.minimum_number, needs_of=True),
    Measure(id="scaled_up", unit="items", function=counting.scaled_up, needs_of=True),
    Measure(id="items_with_classes", unit="items", function=counting.items_with_classes, needs_of=True),
    Measure(id="log_ratio", unit="powers of ten", function=ratios.log_ratio, needs_of=True, needs_to=True),
    Measure(id="items_per_g", unit="items per g", function=ratios.items_per_g, needs_of=True, needs_to=True),
    Measure(id="acorn_to_hickory", unit="", function=ratios.acorn_to_hickory),
    Measure(
        id="chaff_against_ear", unit="× whole ear", function=ratios.chaff_against_ear, needs_of=True, needs_to=True
    ),
    Measure(id="shannon", unit="nats", function=diversity.shannon, needs_of=True),
    Measure(id="simpson", unit="", function=diversity.simpson, needs_of=True),
    Measure(id="evenness", unit="", function=diversity.evenness, needs_of=True),
    Measure(id="chao1", unit="taxa", function=unseen.chao1, needs_of=True),
    Measure(id="coverage", unit="", function=unseen.coverage, needs_of=True),
    Measure(id="taxa_against_pool", unit="taxa", function=diversity.taxa_against_pool, needs_of=True),
    Measure(id="items_wanting", unit="items", function=enough.items_wanting, needs_of=True),
    Measure(id="new_taxa_if_sorted", unit="taxa", function=enough.new_taxa_if_sorted, needs_of=True),
    Measure(id="width_if_sorted", unit="", function=enough.width_if_sorted, needs_of=True, needs_to=True),
    _narrowing("density", amounts.density, "the density"),
    _narrowing("scaled_up", counting.scaled_up, "the items scaled up"),
    _narrowing("ratio", shares.ratio, "the ratio", needs_to=True),
    _narrowing("log_ratio", ratios.log_ratio, "the log ratio", needs_to=True),
    _narrowing("chaff_ratio", shares.chaff_ratio, "the chaff ratio", needs_to=True),
    _narrowing("chaff_against_ear", ratios.chaff_against_ear, "chaff against the whole ear", needs_to=True),
    _narrowing("items_per_g", ratios.items_per_g, "the items per gram", needs_to=True),
    _narrowing("dominance", shares.dominance, "the dominance"),
    _narrowing("shannon", diversity.shannon, "Shannon's index"),
    _narrowing("simpson", diversity.simpson, "Simpson's index"),
    _narrowing("chao1", unseen.chao1, "Chao1"),
    _narrowing("coverage", unseen.coverage, "the coverage"),
    _narrowing("taxa_against_pool", diversity.taxa_against_pool, "the taxa against the pool"),
    Measure(id="gatherings", unit="gatherings", function=seasons.gatherings, needs_of=True),
    Measure(id="one_gathering_share", unit="", function=seasons.one_gathering_share, needs_of=True),
    Measure(id="taxa_in_last_ten", unit="taxa", function=enough.taxa_in_last_ten, needs_of=True),
)


def measured(
    id: str, units: Units, *, of: Selector | None = None, to: Selector | None = None, phases: Units | None = None
) -> Column:
    """
    One measure of all units of a level.

    Raises KeyError for an unknown measure and TypeError for a missing selector: both are refused when rules are read.
    """
    measure = MEASURES[id]
    arguments: list[Any] = [units]
    if measure.needs_phases:
        arguments.append(phases)
    if measure.needs_of:
        arguments.append(of or Selector())
    if measure.needs_to:
        arguments.append(to or Selector())
    narrows = f"{id}_width_if_sorted" in MEASURES
    column = worked_once(measure.function, *arguments) if narrows else measure.function(*arguments)
    asks_for_dates = any(s is not None and s.later_than_phase for s in (of, to))
    return _where_dated(column, units) if asks_for_dates else column


def _where_dated(column: Column, units: Units) -> Column:
    """No value for units without a dated phase: what came later than an unknown date cannot be known."""
    is_dated = np.isfinite(units.table.phase_end[units.level])[None, :]
    value, low, high = (np.where(is_dated, part, np.nan) for part in (column.value, column.low, column.high))
    return replace(column, value=value, low=low, high=high, reason="the phase has no date")
