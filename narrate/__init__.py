"""From counts of charred plant remains to narratives that can be followed back to them."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from pathlib import Path
    from typing import Any

__version__ = "0.1.0"


def open_project(folder: str | Path) -> Any:
    """
    A project folder in a notebook: pandas frames with the unit of every number in the name of its column.

    Gives an `OpenProject` of `narrate.deposit.frames`: `counts`, `measures(level)`, `measure(name, level, of, to)`,
    `compared(by)`, `associations()`, `seasons(level)`, `fields(level)`, `ordination()`, `likeness()`, `to_date()`.
    Raises ValueError with every problem where the project has errors. Importing narrate loads none of this.
    """
    from pathlib import Path

    from narrate.pipeline.notebook import open_project as opened

    return opened(Path(folder))
