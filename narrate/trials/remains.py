"""Columns of what could lie in the ground: one for each thing that an activity brings, and how it comes to be named."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from narrate.measures.count_table import Kind
from narrate.measures.selection import windows_of
from narrate.model.ids import TaxonId
from narrate.model.packs import Packs
from narrate.model.plants import Taxon
from narrate.trials.activities import STAGES, Region, survival
from narrate.trials.worlds import SOILS, Digs

WEED_STRENGTH = {"strong": 1.0, "moderate": 0.4, "weak": 0.12}
"""How often a weed of fields turns up, by what the packs say of it. Judgement."""

_WHOLE, _FRAGMENT = 0, 1
_CERTAIN, _DOUBTFUL, _GENUS, _OTHER = range(4)


@dataclass(frozen=True, slots=True, kw_only=True)
class Things:
    """One value for every thing: a taxon and part that an activity brings to the fire."""

    activity: np.ndarray
    taxon: tuple[str, ...]
    part: tuple[str, ...]
    mean: np.ndarray
    """Pieces in an event that brings it."""
    chance: np.ndarray
    """Chance that an event brings it."""
    spread: np.ndarray
    survival: np.ndarray
    """(things, heats)."""
    fragments: np.ndarray
    months: tuple[tuple[int, ...], ...]
    """Months in which it is ripe; empty for what is not gathered or not known."""
    keeps: np.ndarray
    """Whether the packs say that it was stored, stays on the plant, or came with the crop."""
    earliest: np.ndarray
    """Year from which the region had it; −infinity: always."""
    is_wood: np.ndarray
    is_small: np.ndarray
    """Whether a coarse mesh or a poor flotation loses it."""
    is_weed: np.ndarray
    weed: np.ndarray
    """Index in the packs' weeds; −1 for what is not a weed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Weeds:
    """One value for every weed of fields that the packs know."""

    taxa: tuple[Taxon, ...]
    strength: np.ndarray


def weeds_of(packs: Packs) -> Weeds:
    found = tuple(
        t
        for t in packs.taxa.values()
        if t.ecology.field_weed in WEED_STRENGTH and t.rank == "species" and t.status != "crop"
    )
    return Weeds(taxa=found, strength=np.array([WEED_STRENGTH[t.ecology.field_weed] for t in found]))


def things_of(region: Region, packs: Packs, weeds: Weeds) -> Things:
    """Every thing that the activities of a region can bring, weeds of each crop among them."""
    rows: list[tuple[int, str, str, float, float, float, float, bool, int]] = []
    for a, activity in enumerate(region.activities):
        for given in activity.yields:
            chance = min(1.0, given.chosen / len(given.taxa))
            rows.extend(
                (
                    a,
                    t,
                    given.part,
                    given.mean / given.chosen,
                    chance,
                    given.spread,
                    given.fragments,
                    given.is_gathered,
                    -1,
                )
                for t in given.taxa
            )
        if activity.stage:
            kept = np.array([_kept(activity.stage, t.ecology.seed) for t in weeds.taxa]) * weeds.strength
            share = kept / kept.sum()
            rows.extend(
                (a, t.id, "seed", activity.weeds * float(s), 1.0, 0.3, 0.05, False, i)
                for i, (t, s) in enumerate(zip(weeds.taxa, share, strict=True))
            )
    taxa = [packs.taxa[TaxonId(row[1])] for row in rows]
    parts = [row[2] for row in rows]
    roles = [packs.words.parts[part].roles for part in parts]  # type: ignore[index]
    windows = [windows_of(t, p) if row[7] else () for t, p, row in zip(taxa, parts, rows, strict=True)]
    return Things(
        activity=np.array([row[0] for row in rows]),
        taxon=tuple(row[1] for row in rows),
        part=tuple(parts),
        mean=np.array([row[3] for row in rows]),
        chance=np.array([row[4] for row in rows]),
        spread=np.array([row[5] for row in rows]),
        survival=np.array([survival(part) for part in parts]),
        fragments=np.array([row[6] for row in rows]),
        months=tuple(tuple(sorted({m for w in ws for m in w.months})) for ws in windows),
        keeps=np.array([any(k != "perishable" for w in ws for k in w.keeping) for ws in windows]),
        earliest=np.array([-np.inf if t.earliest is None else t.earliest for t in taxa], float),
        is_wood=np.array(["wood" in r for r in roles]),
        is_small=np.array(
            [part in ("seed", "glume base", "rachis internode", "leaf", "detached sprout") for part in parts]
        ),
        is_weed=np.array([row[8] >= 0 for row in rows]),
        weed=np.array([row[8] for row in rows]),
    )


def _kept(stage: str, seed: tuple[str, ...]) -> float:
    shares = STAGES[stage]
    return next((shares[key] for key in (seed, seed[:1]) if key and key in shares), shares[()])


def at_home(weeds: Weeds, digs: Digs) -> np.ndarray:
    """(digs, weeds): how well each weed does in the fields of each dig; 1 where sowing, soil and cut suit it."""
    fit = np.ones((digs.end.size, len(weeds.taxa)))
    for i, taxon in enumerate(weeds.taxa):
        ecology = taxon.ecology
        strays = digs.stray
        if ecology.sow in ("autumn", "spring"):
            fit[:, i] *= np.where(digs.autumn == (ecology.sow == "autumn"), 1.0, strays)
        for soil in ecology.soil:
            if soil in SOILS:
                fit[:, i] *= np.where(digs.soil[:, SOILS.index(soil)], 1.0, strays)
        if ecology.height == "low":
            fit[:, i] *= np.where(digs.low_cut | digs.uprooted, 1.0, strays)
        if ecology.life == "perennial":
            fit[:, i] *= np.where(digs.little_tilled, 1.0, np.maximum(strays, 0.15))
    return fit


@dataclass(frozen=True, slots=True, kw_only=True)
class Namings:
    """What each thing may be written as. One value for every way of writing a thing."""

    thing: np.ndarray
    kind: np.ndarray
    """Index in `kinds`."""
    state: np.ndarray
    """Whole or fragment, as 0 or 1."""
    certainty: np.ndarray
    """Certain, 'cf.', to the genus, a look-alike: 0 to 3."""
    kinds: tuple[Kind, ...]


def namings_of(things: Things, region: Region, packs: Packs) -> Namings:
    """Every way in which a laboratory may write each thing down."""
    kinds: dict[Kind, int] = {}
    rows: list[tuple[int, int, int, int]] = []
    for i, (taxon, part) in enumerate(zip(things.taxon, things.part, strict=True)):
        condition = region.activities[int(things.activity[i])].condition
        for certainty, name in _names(taxon, packs):
            for state, completeness in enumerate(("whole", "fragment")):
                kind = kind_of(name, part, condition, certainty != _DOUBTFUL, completeness)
                rows.append((i, kinds.setdefault(kind, len(kinds)), state, certainty))
    columns = np.array(rows)
    return Namings(
        thing=columns[:, 0], kind=columns[:, 1], state=columns[:, 2], certainty=columns[:, 3], kinds=tuple(kinds)
    )


def kind_of(taxon: str, part: str, condition: str, is_certain: bool = True, completeness: str = "whole") -> Kind:
    return Kind(
        taxon=TaxonId(taxon), either=(), written="", is_certain=is_certain, part=part, condition=condition,
        completeness=completeness, fraction="light",
    )  # fmt: skip


def _names(taxon: str, packs: Packs) -> list[tuple[int, str]]:
    """The name, the same with 'cf.', its genus (or the group that laboratories fall back on), a look-alike."""
    known = packs.taxa[TaxonId(taxon)]
    group = "Cerealia indet." if "cereal" in known.tags and "Cerealia indet." in packs.taxa else known.genus
    alike = next((other for other in known.look_alikes if TaxonId(other) in packs.taxa), taxon)
    return [
        (_CERTAIN, taxon),
        (_DOUBTFUL, taxon),
        (_GENUS, group if group and TaxonId(group) in packs.taxa else taxon),
        (_OTHER, alike),
    ]


def share_written(namings: Namings, things: Things, digs: Digs) -> np.ndarray:
    """(digs, namings): share of the pieces of a thing that each dig's laboratory writes so."""
    doubt, genus, wrong = digs.doubtful[:, None], digs.to_genus[:, None], digs.wrong[:, None]
    of_name = np.concatenate([1 - doubt - genus - wrong, doubt, genus, wrong], axis=1).clip(0)
    of_name /= of_name.sum(axis=1, keepdims=True)
    broken = things.fragments[namings.thing]
    return of_name[:, namings.certainty] * np.where(namings.state == _FRAGMENT, broken, 1 - broken)
