"""`narrate`, as `python -m narrate` and as a command."""

from __future__ import annotations

import sys


def main() -> None:
    """
    The entry point.

    `narrate tell FOLDER`, where nothing changed and there is nothing to report, is answered before the library of the
    command line is loaded, which would take as long again.
    """
    if len(sys.argv) == 3 and sys.argv[1] == "tell" and _is_as_told_before(sys.argv[2]):
        return
    from narrate.cli import main as commands

    commands()


def _is_as_told_before(folder: str) -> bool:
    from pathlib import Path

    from narrate import __version__
    from narrate.pipeline.told import in_short
    from narrate.pipeline.unchanged import as_told_before

    told = as_told_before(Path(folder), (), __version__)
    if told is None or told.problems or not told.is_written:
        return False
    print(in_short(told, Path(folder)))
    return True


if __name__ == "__main__":
    main()
