"""`narrate begin`: a new project, laid out."""

from __future__ import annotations

from pathlib import Path

from narrate.files import write
from narrate.problems import Place, Problem, ProblemList


def begin(folder: Path) -> tuple[tuple[Path, ...], tuple[Problem, ...]]:
    """Lays out a new project; a folder that already holds something is refused, because nothing may be overwritten."""
    problems = ProblemList()
    if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
        problems.error(
            Place(path=folder.name),
            "N108",
            f"'{folder}' already holds something, expected a folder that is empty or not there yet",
            help="name another folder",
        )
        return (), problems.sorted()
    starter = Path(__file__).parents[1] / "starter"
    written = []
    for source in sorted(path for path in starter.rglob("*") if path.is_file()):
        target = folder / source.relative_to(starter)
        write(target, source.read_bytes())
        written.append(target)
    return tuple(written), ()
