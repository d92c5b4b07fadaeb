"""Comparisons, companions, seasons, fields, order and dating material of a dig, as CSV tables."""

from __future__ import annotations

import csv
import io
from collections.abc import Callable, Iterable, Mapping, Sequence

from narrate.measures.compared import BY, compare
from narrate.measures.count_table import count_table
from narrate.measures.dating import dating_candidates
from narrate.measures.fields import association, field_shares, triangle_points
from narrate.measures.order import likeness, ordination
from narrate.measures.seasons import seasons
from narrate.measures.sorting import sorting_gains
from narrate.measures.units import Units
from narrate.model.comparisons import Comparison
from narrate.model.ids import Level
from narrate.model.order import Ordination, PointsOfAxis
from narrate.model.packs import Packs
from narrate.model.project import Project
from narrate.model.rules import Selector
from narrate.model.seasons import Seasons

Row = Sequence[object]
Table = tuple[Sequence[str], Iterable[Row]]
_MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")


def analysis_tables(project: Project, packs: Packs) -> Mapping[str, str]:
    """File name -> text of a CSV table; a table that there is nothing for has its header and a reason."""
    table = count_table(project, packs)
    levels: tuple[Level, ...] = ("sample", "context", "phase", "site")
    units = {level: Units(table, level, packs, project.preservation) for level in levels}
    found: dict[str, Table] = {}
    for by in BY:
        found[f"compared_by_{by}.csv"] = _compared(compare(units["sample"], project, by))
    found["weeds_with_crops.csv"] = _associations(units["sample"])
    found["seasons.csv"] = _seasons([s for level in ("context", "phase", "site") for s in seasons(units[level])])  # type: ignore[index]
    found["windows.csv"] = _windows(seasons(units["site"]))
    found["fields.csv"] = _fields([units["context"], units["phase"], units["site"]])
    found["triangle.csv"] = _triangle([units["sample"], units["context"]])
    seeds = Selector(role=("propagule", "edible", "byproduct"))
    ordered = ordination(units["sample"], seeds)
    found["order_of_samples.csv"] = _points(ordered, ordered.rows)
    found["order_of_plants.csv"] = _points(ordered, ordered.columns)
    found["likeness.csv"] = _likeness(units["context"], seeds)
    found["sorting.csv"] = _sorting(units["sample"], project)
    found["to_date.csv"] = _dating(project, packs)
    return {name: _text(columns, rows) for name, (columns, rows) in found.items()}


def _compared(found: Comparison) -> Table:
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


def _associations(samples: Units) -> Table:
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


def _seasons(found: Iterable[Seasons]) -> Table:
    columns = (
        "level",
        "subject",
        *(f"open in {m} (plant parts)" for m in _MONTHS),
        "fewest gatherings",
        "in the months",
        "fewest where sources agree",
        "fewest of what does not keep",
        "months that only storage speaks of",
        "sources disagree on",
        "no months known for",
    )
    rows = [
        (
            s.subject.level,
            s.subject.id,
            *s.support,
            s.all_fresh.fewest,
            " or ".join(" + ".join(_MONTHS[m - 1] for m in plan) for plan in s.all_fresh.plans[:6])
            + (f" or {len(s.all_fresh.plans) - 6} more" if len(s.all_fresh.plans) > 6 else ""),
            s.agreed_only.fewest,
            s.binding.fewest,
            _months(s.left_open),
            _names(s.disputed),
            _names(s.unknown),
        )
        for s in found
    ]
    return columns, rows


def _windows(found: Iterable[Seasons]) -> Table:
    columns = ("taxon", "part", "items", "source", "months", "keeping", "known", "sources agree")
    rows = [
        (
            w.taxon,
            w.part,
            w.items,
            "; ".join(s.sources),
            _months(s.months),
            "; ".join(s.keeping),
            s.known,
            not w.is_disputed,
        )
        for one in found
        for w in one.windows
        for s in w.by_source
    ]
    return columns, rows


def _fields(levels: Iterable[Units]) -> Table:
    columns = (
        "level",
        "subject",
        "attribute",
        "value",
        "seeds",
        "of seeds with it known",
        "share (0-1)",
        "low",
        "high",
        "seeds with it unknown",
    )
    rows = [
        (
            f.subject.level,
            f.subject.id,
            f.attribute,
            f.value,
            f.of,
            f.share.n,
            f.share.value,
            f.share.low,
            f.share.high,
            f.unknown,
        )
        for units in levels
        for f in field_shares(units)
        if f.share.n
    ]
    return columns, rows


def _triangle(levels: Iterable[Units]) -> Table:
    columns = ("level", "subject", "grain (0-1)", "chaff (0-1)", "weeds (0-1)", "x", "y", "n")
    rows = [
        (p.subject.level, p.subject.id, p.grain, p.chaff, p.weed, p.x, p.y, p.n)
        for units in levels
        for p in triangle_points(units)
    ]
    return columns, rows


def _points(found: Ordination, points: PointsOfAxis | None) -> Table:
    axes = min(4, len(found.inertias))
    shares = [inertia / found.total_inertia for inertia in found.inertias[:axes]]
    columns = (
        "name",
        "mass",
        "inertia",
        *(f"axis {a + 1} ({shares[a]:.1%} of the inertia)" for a in range(axes)),
        *(f"contribution to axis {a + 1} (0-1)" for a in range(axes)),
        *(f"quality on axis {a + 1} (0-1)" for a in range(axes)),
        "set aside",
    )
    is_rows = points is found.rows
    aside = found.samples_set_aside if is_rows else found.plants_set_aside
    why = (
        f"fewer than {found.least_items} items" if is_rows else f"in fewer than {found.least_share:.0%} of the samples"
    )
    rows: list[Row] = []
    if points is not None:
        for i, name in enumerate(points.names):
            parts = (points.coordinates[i], points.contributions[i], points.qualities[i])
            values = [part[a] for part in parts for a in range(axes)]
            rows.append((name, points.masses[i], points.inertias[i], *values, ""))
    blank = ("",) * (len(columns) - 2)
    rows += [(name, *blank, why) for name in aside]
    return columns, rows or [("", *blank, found.reason)]


def _likeness(units: Units, of: Selector) -> Table:
    found = likeness(units, of)
    columns = ("context", "other context", "Brainerd-Robinson (0-200)", "Sorensen (0-1)")
    rows = [
        (name, other, found.brainerd_robinson[i][j], found.sorensen[i][j])
        for i, name in enumerate(found.names)
        for j, other in enumerate(found.names)
        if i < j
    ]
    return columns, rows


def _sorting(samples: Units, project: Project) -> Table:
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


def _dating(project: Project, packs: Packs) -> Table:
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


def _months(months: Iterable[int]) -> str:
    return " ".join(_MONTHS[m - 1] for m in months)


def _names(pairs: Iterable[tuple[str, str]]) -> str:
    return "; ".join(f"{taxon}, {part}" for taxon, part in pairs)


def _text(columns: Sequence[str], rows: Iterable[Row]) -> str:
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(columns)
    for row in rows:
        writer.writerow([_cell(value) for value in row])
    return out.getvalue()


_AS: tuple[tuple[type, Callable[..., str]], ...] = (
    (bool, lambda value: "yes" if value else "no"),
    (float, lambda value: f"{value:.6g}"),
    (int, str),
)


def _cell(value: object) -> str:
    if value is None:
        return ""
    for kind, written in _AS:
        if isinstance(value, kind):
            return written(value)
    text = str(value)
    # Text that a spreadsheet would take for a formula is kept from being one.
    return "'" + text if text.startswith(tuple("=+-@\t\r")) else text
