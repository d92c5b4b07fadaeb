"""Samples compared by groups, crops with their weeds, and contexts by what they hold, as tables."""

from __future__ import annotations

from narrate.deposit.csv_text import Table
from narrate.measures.association import association
from narrate.measures.order import likeness
from narrate.measures.units import Units
from narrate.model.comparisons import Comparison
from narrate.model.rules import Selector


def compared(found: Comparison) -> Table:
    columns = (
        "taxon",
        "part",
        "group",
        "samples with it",
        "samples",
        "share of the richest sample (0-1)",
        "difference in ubiquity",
        "difference low",
        "difference high",
        "association (Cramer's V)",
        "dominance (Cliff's delta)",
        "p (Fisher)",
        "p (Fisher, Holm)",
        "p (presence, permuted within like contexts)",
        "p (presence, Holm)",
        "p (density ranks, permuted within like contexts)",
        "p (density ranks, Holm)",
        "like contexts",
        "contexts set aside",
        "permutations",
        "seed",
        "reason",
    )
    like = "; ".join(found.like)
    aside = "; ".join(f"{kind} ({n} samples)" for kind, n in found.set_aside)
    tail = (like, aside, found.permutations, found.seed, found.reason)
    rows = [
        (
            row.taxon,
            row.part,
            group,
            row.with_it[i],
            row.of_samples[i],
            row.richest_share[i],
            row.difference,
            row.difference_low,
            row.difference_high,
            row.association,
            row.dominance,
            row.fisher_p,
            row.fisher_holm,
            row.ubiquity_p,
            row.ubiquity_holm,
            row.rank_p,
            row.rank_holm,
            *tail,
        )
        for row in found.rows
        for i, group in enumerate(found.groups)
    ]
    return columns, rows or [(*("",) * 17, *tail)]


def associated(samples: Units) -> Table:
    found = association(samples)
    columns = (
        "crop",
        "part",
        "weed",
        "samples with both",
        "with the crop alone",
        "with the weed alone",
        "with neither",
        "phi",
        "phi expected",
        "p",
        "p (Holm)",
        "permutations",
        "seed",
        "reason",
    )
    tail = (found.permutations, found.seed, found.reason)
    rows = [
        (
            r.crop,
            r.crop_part,
            r.weed,
            r.both,
            r.only_crop,
            r.only_weed,
            r.neither,
            r.phi,
            r.expected_phi,
            r.p,
            r.p_holm,
            *tail,
        )
        for r in found.rows
    ]
    return columns, rows or [(*("",) * 11, *tail)]


def likeness_table(units: Units, of: Selector) -> Table:
    found = likeness(units, of)
    columns = ("context", "other context", "Brainerd-Robinson (0-200)", "Sorensen (0-1)")
    rows = [
        (name, other, found.brainerd_robinson[i][j], found.sorensen[i][j])
        for i, name in enumerate(found.names)
        for j, other in enumerate(found.names)
        if i < j
    ]
    return columns, rows
