"""Phases, kinds of context and areas held apart by the samples that hold a thing, like contexts with like."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from narrate.measures.column import Column, exact
from narrate.measures.special import incomplete_gamma
from narrate.measures.units import Units
from narrate.model.rules import Selector

DRAWS = 9999
_NOT_TWO = "there are not two groups with samples of like contexts"


def phases_apart(units: Units, of: Selector) -> Column:
    """
    How far phases differ in the samples that hold the thing: Cramér's V over phase and presence.

        V = √[χ² / n];   n samples of the kinds of context that two phases or more have

    Unit: 0 (alike) to 1 (wholly apart). Interval: none. No value: where there are not two phases with samples of like
    contexts, or all samples or none hold the thing.
    Misleads: with few samples it is large by chance; see `phases_apart_p`.
    Source: Cramér 1946; Shennan 1988, Quantifying Archaeology (both from memory); "like contexts with like":
    Gremillion, Excavating Occaneechi Town, "Crops".
    """
    return _effect(units, of, "phase", "kind")


def phases_apart_p(units: Units, of: Selector) -> Column:
    """
    Chance that phases differ at least so much in the samples that hold the thing, if samples of like contexts had been
    dealt to them at random.

        Q = d′ V⁻¹ d;   d = Σ over kinds of context (samples with it, by phase, less those expected),
        V the variance of d

    Unit: 0 to 1. Interval: none. No value: where there are not two phases with samples of like contexts.
    Misleads: where many plants are tested and the smallest value is picked (the tables correct for that, by Holm's
    method); samples of one context are not independent, which makes it too small. For redrawn counts it is taken from
    the chi-square distribution, and else from 9,999 draws.
    Source: Mantel & Haenszel 1959, JNCI 22:719–748; Landis, Heyman & Koch 1978, International Statistical Review
    46:237–254, for more groups than two (both from memory).
    """
    return _chance(units, of, "phase", "kind")


def kinds_apart(units: Units, of: Selector) -> Column:
    """
    How far kinds of context differ in the samples that hold the thing: Cramér's V over kind and presence.

        V = √[χ² / n];   n samples of the phases in which two kinds or more were sampled

    Unit: 0 (alike) to 1 (wholly apart). Interval: none. No value: where there are not two kinds with samples in one
    phase, or all samples or none hold the thing.
    Misleads: with few samples it is large by chance; see `kinds_apart_p`. It does not say which kind has more.
    Source: Cramér 1946; Shennan 1988, Quantifying Archaeology (both from memory).
    """
    return _effect(units, of, "kind", "phase")


def kinds_apart_p(units: Units, of: Selector) -> Column:
    """
    Chance that kinds of context differ at least so much in the samples that hold the thing, if the samples of a phase
    had been dealt to them at random.

        Q = d′ V⁻¹ d;   d = Σ over phases (samples with it, by kind, less those expected),
        V the variance of d

    Unit: 0 to 1. Interval: none. No value: where there are not two kinds with samples in one phase.
    Misleads: as `phases_apart_p` does; kinds with one sample weigh little and are not left out.
    Source: Mantel & Haenszel 1959; Landis, Heyman & Koch 1978 (both from memory).
    """
    return _chance(units, of, "kind", "phase")


def areas_apart(units: Units, of: Selector) -> Column:
    """
    How far areas of the site differ in the samples that hold the thing: Cramér's V over area and presence.

        V = √[χ² / n];   n samples of the kinds of context that two areas or more have

    Unit: 0 (alike) to 1 (wholly apart). Interval: none. No value: where the records name no two areas with samples of
    like contexts, or all samples or none hold the thing.
    Misleads: with few samples it is large by chance; areas may be of different phases.
    Source: Cramér 1946; Shennan 1988, Quantifying Archaeology (both from memory).
    """
    return _effect(units, of, "area", "kind")


def areas_apart_p(units: Units, of: Selector) -> Column:
    """
    Chance that areas of the site differ at least so much in the samples that hold the thing, if samples of like
    contexts had been dealt to them at random.

        Q = d′ V⁻¹ d;   d = Σ over kinds of context (samples with it, by area, less those expected),
        V the variance of d

    Unit: 0 to 1. Interval: none. No value: where the records name no two areas with samples of like contexts.
    Misleads: as `phases_apart_p` does; areas may be of different phases: ask it of one phase then.
    Source: Mantel & Haenszel 1959; Landis, Heyman & Koch 1978 (both from memory).
    """
    return _chance(units, of, "area", "kind")


@dataclass(frozen=True, slots=True, kw_only=True)
class Strata:
    """Samples with a thing and all samples, of shape (replicates, strata, groups)."""

    with_it: np.ndarray
    samples: np.ndarray


def score(found: Strata) -> tuple[np.ndarray, np.ndarray]:
    """
    The statistic of Mantel and Haenszel for any number of groups, and its degrees of freedom.

        Q = d′ V⁻¹ d;   d_g = Σ_h (k_gh − n_gh m_h / n_h),
        V_gg′ = Σ_h m_h (n_h − m_h) n_gh (n_h δ_gg′ − n_g′h) / n_h² (n_h − 1)

    Gives:   Q and degrees of freedom, one for each replicate.
    Source:  Landis, Heyman & Koch 1978, International Statistical Review 46:237–254 (from memory).

    >>> two = Strata(with_it=np.array([[[3.0, 1.0]]]), samples=np.array([[[4.0, 4.0]]]))
    >>> [float(part[0].round(4)) for part in score(two)]
    [1.75, 1.0]
    """
    inverse = np.linalg.pinv(_variance(found), rcond=1e-9, hermitian=True)
    return _quadratic(_departure(found), inverse), _freedom(found, inverse)


def _departure(found: Strata) -> np.ndarray:
    m, n = found.with_it.sum(axis=2, keepdims=True), found.samples.sum(axis=2, keepdims=True)
    return (found.with_it - found.samples * m / np.maximum(n, 1)).sum(axis=1)


def _variance(found: Strata) -> np.ndarray:
    m, n = found.with_it.sum(axis=2), found.samples.sum(axis=2)
    scale = m * (n - m) / (np.maximum(n, 1) ** 2 * np.maximum(n - 1, 1))
    own = np.einsum("rh,rhg->rg", scale * n, found.samples)
    cross = np.einsum("rh,rhg,rhk->rgk", scale, found.samples, found.samples)
    return own[:, :, None] * np.eye(own.shape[1])[None] - cross


def _quadratic(d: np.ndarray, inverse: np.ndarray) -> np.ndarray:
    return np.einsum("rg,rgk,rk->r", d, inverse, d)


def _freedom(found: Strata, inverse: np.ndarray) -> np.ndarray:
    return np.round(np.einsum("rgk,rkg->r", _variance(found), inverse))


def _chance(units: Units, of: Selector, by: str, like: str) -> Column:
    value, k, n = np.full(units.shape, np.nan), np.zeros(units.shape), np.zeros(units.shape)
    for unit in range(len(units.ids)):
        found = _strata(units, of, unit, by, like)
        if found is None:
            continue
        k[:, unit], n[:, unit] = found.with_it.sum(axis=(1, 2)), found.samples.sum(axis=(1, 2))
        value[:, unit] = _drawn_p(found) if units.table.replicates == 1 else _chi_square_p(found)
    return exact(value, of=k, to=n, n=n, reason=_NOT_TWO)


def _effect(units: Units, of: Selector, by: str, like: str) -> Column:
    value, k, n = np.full(units.shape, np.nan), np.zeros(units.shape), np.zeros(units.shape)
    for unit in range(len(units.ids)):
        found = _strata(units, of, unit, by, like)
        if found is None:
            continue
        k[:, unit], n[:, unit] = found.with_it.sum(axis=(1, 2)), found.samples.sum(axis=(1, 2))
        value[:, unit] = _cramers_v(found.with_it.sum(axis=1), found.samples.sum(axis=1))
    return exact(value, of=k, to=n, n=n, reason=f"{_NOT_TWO}, or all or none of them hold it")


def _cramers_v(k: np.ndarray, n: np.ndarray) -> np.ndarray:
    """Of groups and presence: with two rows the smaller side less one is 1, so that V is √(χ²/n)."""
    share = k.sum(axis=1, keepdims=True) / np.maximum(n.sum(axis=1, keepdims=True), 1)
    with np.errstate(invalid="ignore", divide="ignore"):
        chi = np.where(n > 0, (k - n * share) ** 2 / (n * share * (1 - share)), 0.0).sum(axis=1)
    return np.sqrt(chi / n.sum(axis=1))


def _strata(units: Units, of: Selector, unit: int, by: str, like: str) -> Strata | None:
    """Samples of one unit counted by stratum and group; None where no stratum holds two groups."""
    groups, strata = units.table.groups.get(by), units.table.groups.get(like)
    own = units.samples_of(unit)
    if groups is None or strata is None or not own.size:
        return None
    own = own[groups[own] >= 0]
    if not own.size:
        return None
    group = np.unique(groups[own], return_inverse=True)[1]
    stratum = np.unique(strata[own], return_inverse=True)[1]
    there, weight = units.there_by_sample(of)
    shape = (stratum.max() + 1, group.max() + 1)
    place = stratum * shape[1] + group
    cells = np.eye(shape[0] * shape[1])[place]
    samples = (weight[:, own] @ cells).reshape(-1, *shape)
    with_it = (there[:, own] @ cells).reshape(-1, *shape)
    samples = np.broadcast_to(samples, with_it.shape)
    has_two = ((samples > 0).sum(axis=2) > 1).any(axis=0)
    return Strata(with_it=with_it[:, has_two], samples=samples[:, has_two]) if has_two.any() else None


def _chi_square_p(found: Strata) -> np.ndarray:
    q, freedom = score(found)
    p = 1 - incomplete_gamma(np.maximum(q, 0) / 2, np.maximum(freedom, 1) / 2)
    return np.where(freedom > 0, p, 1.0)


def _drawn_p(found: Strata, seed: int = 1) -> np.ndarray:
    """
    Dealing samples to groups within a stratum gives each a share of those with the thing that is multivariate
    hypergeometric: drawn as such, no order of the samples has to be shuffled.
    """
    generator = np.random.default_rng(seed)
    variance = _variance(found)
    inverse = np.linalg.pinv(variance, rcond=1e-9, hermitian=True)
    seen = _quadratic(_departure(found), inverse)
    if seen[0] <= 1e-12:
        return np.ones(1)
    sizes, m = found.samples[0].astype(np.int64), found.with_it[0].sum(axis=1).astype(np.int64)
    departure = np.zeros((DRAWS, sizes.shape[1]))
    for size, with_it in zip(sizes, m, strict=True):
        departure += generator.multivariate_hypergeometric(size, int(with_it), DRAWS) - size * with_it / size.sum()
    drawn = np.einsum("dg,gk,dk->d", departure, inverse[0], departure)
    return np.array([(1 + int((drawn >= seen[0] * (1 - 1e-9)).sum())) / (1 + DRAWS)])
