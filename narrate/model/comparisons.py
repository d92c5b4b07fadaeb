"""What came of comparing samples by groups, taxon by taxon."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Compared:
    """One plant and part over the groups. The unit of every test is the sample."""

    taxon: str
    part: str
    with_it: tuple[int, ...]
    """Samples that hold it, by group."""
    of_samples: tuple[int, ...]
    """Samples looked at, sterile ones included, by group."""
    richest_share: tuple[float | None, ...]
    """Share of the group's items that its richest sample holds; None where it was not counted there."""
    difference: float | None
    """Ubiquity in the second group less that in the first; None where there are more groups than two."""
    difference_low: float | None
    difference_high: float | None
    association: float | None
    """Cramér's V over groups and presence (phi where there are two groups): 0 alike, 1 wholly apart."""
    fisher_p: float | None
    """Fisher's exact test, two-sided, all samples taken together; None where there are more groups than two."""
    ubiquity_p: float
    """Permutation of samples within like contexts, on presence."""
    rank_p: float | None
    """The same on ranks of items per litre; None where fewer than two groups have samples with a volume."""
    dominance: float | None
    """Cliff's delta: how much more often a sample of the second group is the denser than one of the first; −1 to 1."""
    fisher_holm: float | None = None
    """The p values after Holm's correction for all plants and parts of the table."""
    ubiquity_holm: float | None = None
    rank_holm: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Comparison:
    by: str
    """phase, kind, feature or area."""
    groups: tuple[str, ...]
    like: tuple[str, ...]
    """Kinds of context that stand in every group, within which samples were permuted; empty where kinds or features are
    compared, or likeness was not asked for."""
    set_aside: tuple[tuple[str, int], ...]
    """Kinds of context that some group lacks, with the samples left out for it."""
    rows: tuple[Compared, ...]
    left_out: int
    """Plants and parts found in fewer samples than a test needs."""
    permutations: int
    seed: int
    reason: str = ""
    """Why there is nothing to compare."""
