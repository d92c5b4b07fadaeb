"""What is told of the tables of a file once all are worked out: flots in litres, two volumes, hidden rows and columns."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace

from narrate.model.grids import Cell, Grid, address, column_name
from narrate.model.layouts import Table
from narrate.reading.intake.header_words import heading, unit


def tell_litres(tables: list[Table], doubts: list[str]) -> None:
    """A flot volume in litres, where nothing else gives a volume, is what was floated: flots are measured in ml."""
    for n, table in enumerate(tables):
        for name in ("rows", "columns"):
            roles = {**getattr(table, name)}
            has_volume = any("volume" in r.names for r in (*table.rows.values(), *table.columns.values()))
            at = next((i for i, r in roles.items() if r.name == "flot volume" and r.qualifiers[:1] == ("l",)), None)
            if at is None or has_volume:
                continue
            roles[at] = replace(roles[at], name="volume")
            table = replace(table, rows=roles) if name == "rows" else replace(table, columns=roles)
            tables[n] = table
            where = f"row {at + 1}" if name == "rows" else f"column {column_name(at)}"
            doubts.append(
                f"{where} is headed as a volume of flots and is in litres; it is taken for the soil that was floated: "
                "write 'flot volume, l' in the layout if it is not"
            )


_FLOATED = re.compile(
    r"process|float|flot|siev|wash|treat|examin|analy|tamis|lav[ée]|traité|schlämm|gesiebt|procesad|cernid|lavad|flottat|setacci",
    re.IGNORECASE,
)  # fmt: skip


def tell_two_volumes(tables: list[Table], grids: Mapping[str, Grid], doubts: list[str]) -> None:
    """Of the soil that was taken and that which was floated, densities ask for the second; the other stays a note."""
    for n, table in enumerate(tables):
        for name in ("rows", "columns"):
            roles = {**getattr(table, name)}
            if not any(role.name == "volume" for role in roles.values()):
                continue
            cells = grids[table.sheet].spread()
            able = [at for at, role in roles.items() if role.name in ("volume", "sample note")]
            heads = {at: _first_words(cells, at, is_row=name == "rows") for at in able}
            volumes = [at for at in able if roles[at].name == "volume" or heading(heads[at]) == "volume"]
            if len(volumes) < 2:
                continue
            of_floated = [at for at in volumes if _FLOATED.search(heads[at])]
            chosen = of_floated[0] if len(of_floated) == 1 else volumes[0]
            for at in volumes:
                if at != chosen:
                    roles[at] = replace(roles[at], name="sample note", qualifiers=(heads[at],))
                elif roles[at].name != "volume":
                    roles[at] = replace(roles[at], name="volume", qualifiers=(unit(heads[at]) or "l",))
            tables[n] = table = (
                replace(table, rows=roles) if name == "rows" else replace(table, columns=roles)
            )
            doubts.append(
                f"several volumes of soil are given ({', '.join(heads[at] for at in volumes)}); '{heads[chosen]}' is taken "
                "for densities, the others are kept as notes: write 'volume, l' in the layout for another"
            )


def _first_words(cells: Mapping[tuple[int, int], Cell], at: int, *, is_row: bool) -> str:
    own = sorted((c if is_row else r, cell.text) for (r, c), cell in cells.items() if (r if is_row else c) == at)
    return next((text for _, text in own if re.search(r"[^\W\d_]", text)), "")


def tell_hidden(tables: list[Table], doubts: list[str], grids: list[Grid]) -> None:
    """Rows and columns that the workbook hides, and that are read."""
    by_sheet = {grid.sheet: grid for grid in grids}
    for table in tables:
        grid = by_sheet[table.sheet]
        rows = sorted(r + 1 for r in grid.hidden_rows & set(table.rows))
        columns = sorted(grid.hidden_columns & set(table.columns))
        where = f"sheet {grid.sheet}" if grid.sheet else grid.path
        if rows:
            doubts.append(f"{where}: rows {', '.join(map(str, rows[:12]))} are hidden in the workbook, and are read")
        if columns:
            letters = ", ".join(re.sub(r"\d+", "", address(0, c)) for c in columns[:12])
            doubts.append(f"{where}: columns {letters} are hidden in the workbook, and are read")


def tell_phase_codes(tables: list[Table], doubts: list[str], grids: list[Grid]) -> None:
    """Codes under a head of phases that a text of the file explains: they are kept as written, and that is told."""
    texts = {cell.text for grid in grids for cell in grid.cells.values() if cell.kind == "text" and "=" in cell.text}
    by_sheet = {grid.sheet: grid for grid in grids}
    for table in tables if texts else ():
        grid = by_sheet[table.sheet]
        rows = {r for r, role in table.rows.items() if "phase" in role.names}
        columns = {c for c, role in table.columns.items() if "phase" in role.names}
        lines = {r for r, role in table.rows.items() if role.name in ("counts", "finds")}
        across = {c for c, role in table.columns.items() if role.name == "counts"}
        said = {
            cell.text for (r, c), cell in grid.cells.items()
            if (c in columns and r in lines) or (r in rows and c in across)
        }  # fmt: skip
        codes = {code for code in said if len(code) <= 4}
        for text in sorted(texts):
            entries = dict(re.findall(r"(?<!\w)(\w{1,4})\s*=\s*([^=;,]+?)(?=\s+\w{1,4}\s*=|[;,.]|$)", text))
            meant = {code: entries[code].strip() for code in sorted(codes) if code in entries}
            if len(meant) >= 2 and len(meant) >= 0.6 * len(said):
                listed = ", ".join(f"{code} = {words}" for code, words in meant.items())
                doubts.append(
                    f"DOUBTFUL: the phases are codes that the sheet explains ({listed[:150]}); they are kept as written: "
                    "name them in project.yaml, and take out of the records those that mean no phase"
                )
                return
