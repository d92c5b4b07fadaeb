"""What is told of the tables of a file once all are worked out: flots in litres, two volumes, what is hidden."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace

from narrate.model.grids import Cell, Grid, address, column_name
from narrate.model.layouts import Table
from narrate.reading.intake.header_words import heading, unit, weighs_soil
from narrate.reading.intake.left_over import lines_named
from narrate.reading.intake.volumes_drafted import plain_or_comma


def tell_litres(tables: list[Table], grids: Mapping[str, Grid], doubts: list[str]) -> None:
    """
    A flot volume in litres, where nothing else gives a volume, is what was floated: flots are measured in ml.

    It stays one of flots where its head says 'volume of the flot' or 'light fraction', or most are under a litre.
    """
    if _has_soil(tables):
        return
    for n, table in enumerate(tables):
        cells = grids[table.sheet].spread()
        for name in ("rows", "columns"):
            roles = {**getattr(table, name)}
            at = next((i for i, r in roles.items() if r.name == "flot volume" and r.qualifiers[:1] == ("l",)), None)
            if at is None:
                continue
            head = _first_words(cells, at, is_row=name == "rows")
            texts = [cell.text for (r, c), cell in cells.items() if (r if name == "rows" else c) == at]
            numbers = [found for text in texts if (found := plain_or_comma(text, ".")) is not None]
            if _OF_FLOT.search(head) or (numbers and 2 * sum(number < 1 for number in numbers) > len(numbers)):
                continue
            roles[at] = replace(roles[at], name="volume")
            table = replace(table, rows=roles) if name == "rows" else replace(table, columns=roles)
            tables[n] = table
            where = f"row {at + 1}" if name == "rows" else f"column {column_name(at)}"
            doubts.append(
                f"{where} is headed as a volume of flots and is in litres; it is taken for the soil that was floated: "
                "write 'flot volume, l' in the layout if it is not"
            )
            return


# Common practice, no source: what is of the flot and of nothing else, in seven languages.
_OF_FLOT = re.compile(
    r"vol\w*\.? (?:of |du |de |del |della |der |des |van )+(?:the |la |las |los |l')?(?:flot|float|light|lf|flott)"
    r"|light fraction|\blf\b|\bresidu|schlämmrest|schlämmrückstand|flotvolumen|fracci[oó]n ligera"
    r"|fraction légère|frazione leggera",
    re.IGNORECASE,
)  # fmt: skip


def _has_soil(tables: list[Table]) -> bool:
    said = [name for t in tables for role in (*t.rows.values(), *t.columns.values()) for name in role.names]
    return "volume" in said or any(key.partition(",")[0] == "volume" for t in tables for key in t.about)


def tell_no_soil(tables: list[Table], grids: Mapping[str, Grid], doubts: list[str]) -> None:
    """Volumes of flots alone, or soil that was weighed: of them no density is made."""
    if _has_soil(tables):
        return
    for table in tables:
        cells = grids[table.sheet].spread()
        for roles, what in ((table.rows, "row"), (table.columns, "column")):
            able = [at for at, role in roles.items() if role.name in ("flot volume", "sample note")]
            heads = {at: _first_words(cells, at, is_row=what == "row") for at in able}
            of_flots = {at: "volumes of flots" for at, role in roles.items() if role.name == "flot volume"}
            weighed = {at: "soil by weight" for at, role in roles.items()
                       if role.name == "sample note" and weighs_soil(heads[at])}  # fmt: skip
            for at, given in (of_flots | weighed).items():
                doubts.append(
                    f"{lines_named(what, [at])} ('{heads[at]}') gives {given}, and nothing in the file gives litres of "
                    "soil: no density is made until 'volume_l' stands in the records, or 'volume' at a row or column "
                    "of the layout"
                )
                return


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
