"""Comparisons, companions, seasons, fields, order and work that is left of a dig, as CSV tables."""

from __future__ import annotations

from collections.abc import Mapping

from narrate.deposit.comparison_tables import associated, compared, likeness_table
from narrate.deposit.csv_text import Table, csv_text
from narrate.deposit.field_tables import field_shares_table, points_table, triangle_table
from narrate.deposit.season_tables import seasons_table, windows_table
from narrate.deposit.work_tables import dating_table, narrowing_table, sorting_table
from narrate.measures.compared import BY, compare
from narrate.measures.count_table import count_table
from narrate.measures.order import ordination
from narrate.measures.seasons import seasons
from narrate.measures.units import Units
from narrate.model.ids import Level
from narrate.model.packs import Packs
from narrate.model.project import Project
from narrate.model.rules import Selector


def analysis_tables(project: Project, packs: Packs) -> Mapping[str, str]:
    """File name -> text of a CSV table; a table that there is nothing for has its header and a reason."""
    table = count_table(project, packs)
    levels: tuple[Level, ...] = ("sample", "context", "phase", "site")
    units = {level: Units(table, level, packs, project.preservation) for level in levels}
    found: dict[str, Table] = {}
    for by in BY:
        found[f"compared_by_{by}.csv"] = compared(compare(units["sample"], project, by))
    found["weeds_with_crops.csv"] = associated(units["sample"])
    found["seasons.csv"] = seasons_table([s for level in ("context", "phase", "site") for s in seasons(units[level])])  # type: ignore[index]
    found["windows.csv"] = windows_table(seasons(units["site"]))
    found["fields.csv"] = field_shares_table([units["context"], units["phase"], units["site"]])
    found["triangle.csv"] = triangle_table([units["sample"], units["context"]])
    seeds = Selector(role=("propagule", "edible", "byproduct"))
    ordered = ordination(units["sample"], seeds)
    found["order_of_samples.csv"] = points_table(ordered, ordered.rows)
    found["order_of_plants.csv"] = points_table(ordered, ordered.columns)
    found["likeness.csv"] = likeness_table(units["context"], seeds)
    found["sorting.csv"] = sorting_table(units["sample"], project)
    found["narrowing.csv"] = narrowing_table([units["sample"], units["context"]], project, packs)
    found["to_date.csv"] = dating_table(project, packs)
    return {name: csv_text(columns, rows) for name, (columns, rows) in found.items()}
