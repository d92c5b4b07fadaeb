"""Which files are workbooks, and the layout that lies beside a sheet: known without loading what reads them."""

from __future__ import annotations

from pathlib import Path

WORKBOOK_ENDINGS = (".xlsx", ".xlsm")
LAYOUT_ENDING = ".layout.yaml"


def layout_path(sheet: Path) -> Path | None:
    """The layout beside a sheet: lab.xlsx.layout.yaml, or lab.layout.yaml; None where there is none."""
    return next(iter(layout_paths(sheet)), None)


def layout_paths(sheet: Path) -> tuple[Path, ...]:
    """All layouts beside a sheet; the first is obeyed."""
    paths = (sheet.with_name(name) for name in (sheet.name + LAYOUT_ENDING, sheet.stem + LAYOUT_ENDING))
    return tuple(path for path in paths if path.is_file())


def new_layout_path(sheet: Path) -> Path:
    return sheet.with_name(sheet.name + LAYOUT_ENDING)
