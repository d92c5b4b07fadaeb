"""What to sort and what to date next, as tables."""

from __future__ import annotations

from collections.abc import Iterable

from narrate.deposit.csv_text import Row, Table
from narrate.measures.dating import dating_candidates
from narrate.measures.sorting import narrowings, sorting_gains
from narrate.measures.units import Units
from narrate.model.packs import Packs
from narrate.model.project import Project


def sorting_table(samples: Units, project: Project) -> Table:
    columns = (
        "sample",
        "size class",
        "share sorted (0-1)",
        "seeds found",
        "seeds in all",
        "low",
        "high",
        "new taxa if sorted",
        "width left of the density (0-1)",
        "width left of the share of crops (0-1)",
    )
    rows = [
        (
            g.sample,
            g.size_class,
            g.share,
            g.items,
            g.total,
            g.total_low,
            g.total_high,
            g.new_taxa,
            g.density_width_left,
            g.share_width_left,
        )
        for g in sorting_gains(samples, project)
    ]
    return columns, rows


def narrowing_table(levels: Iterable[Units], project: Project, packs: Packs) -> Table:
    columns = (
        "level",
        "subject",
        "size class",
        "measurement",
        "title",
        "width of the interval",
        "width if the class were sorted",
        "width left (0-1)",
    )
    rows = [
        (n.subject.level, n.subject.id, n.size_class, n.measurement, n.title, n.width, n.width_then, n.left)
        for units in levels
        for n in narrowings(units, project, (*packs.shown, *packs.tabled))
    ]
    return columns, rows or [(*("",) * 4, "no size class was sorted in part", *("",) * 3)]


def dating_table(project: Project, packs: Packs) -> Table:
    found = dating_candidates(project, packs)
    columns = (
        "rank",
        "sample",
        "context",
        "taxon",
        "part",
        "items",
        "mass (g)",
        "grew in",
        "security",
        "deposit",
        "for it",
        "against it",
        "rows",
    )
    rows: list[Row] = [
        (
            c.rank,
            c.sample,
            c.context,
            c.taxon,
            c.part,
            c.items,
            c.mass_g,
            c.lifespan,
            c.security,
            c.deposit,
            "; ".join(c.merits),
            "; ".join(c.doubts),
            "; ".join(place.row for place in c.places),
        )
        for c in found.candidates
    ]
    rows += [("", "", "", "", "", n, "", "", "", "", "", f"left out: {why}", "") for why, n in found.refused]
    return columns, rows
