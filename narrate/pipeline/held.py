"""
One command at a time writes into a project, and what goes wrong with writing is a problem that a person can mend.

Exception
└── Unwritable: carries the problem; nothing was written
"""

from __future__ import annotations

import stat
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from pathlib import Path

from narrate.files import UNFINISHED, Busy, alone
from narrate.problems import Place, Problem


class Unwritable(Exception):
    """Nothing can be written now. `is_busy` tells that it is another run that stands in the way."""

    def __init__(self, problem: Problem, *, is_busy: bool = False) -> None:
        super().__init__(problem.message)
        self.problem = problem
        self.is_busy = is_busy


@contextmanager
def held(folder: Path) -> Iterator[None]:
    """
    Holds the project for this run while it reads the analyst's narratives and writes.

    Raises Unwritable if another run holds it (N120), or its `out/` cannot be written or a link stands there or among
    the narratives (N108): nothing outside the folder is read or written.
    """
    link = next(_links(folder), None)
    if link is not None:
        shown = link.relative_to(folder).as_posix()
        message = "is a link, expected a file or folder of the project itself; nothing was read or written through it"
        raise Unwritable(_error(shown, "N108", f"'{shown}' {message}", "put what it leads to in its place"))
    with ExitStack() as stack:
        try:
            stack.enter_context(alone(folder))
        except Busy:
            message = "another run of narrate is writing here, expected one at a time; nothing was written"
            help = "wait until it has ended, or end it (a preview builds too), then run this again"
            raise Unwritable(_error("out", "N120", message, help), is_busy=True) from None
        except OSError as fault:
            raise Unwritable(not_written("out", fault)) from fault
        yield


def _links(folder: Path) -> Iterator[Path]:
    """Links at the places where narrate writes: `out`, what lies directly in it, and anywhere among the narratives."""
    out, narratives = folder / "out", folder / "narratives"
    yield from (place for place in (out, narratives) if place.is_symlink())
    yield from (place for place in (*sorted(out.glob("*")), *sorted(narratives.rglob("*"))) if place.is_symlink())


def broken_off(folder: Path, path: str, fault: OSError, what: str = "the folder") -> Problem:
    """
    What stopped a run, told of the file that it stopped at: one of the analyst's that went or was closed while it was
    read (N101), the folder of hers that cannot be written, or else what was being made (N108).
    """
    at = Path(fault.filename) if isinstance(fault.filename, str) else folder
    if not at.is_relative_to(folder) or at.is_relative_to(folder / "out") or at == folder:
        return not_written(path, fault, what)
    if at.name.endswith(UNFINISHED):
        return not_written(at.parent.relative_to(folder).as_posix() or path, fault)
    why = (fault.strerror or "no reason given").lower()
    message = f"the file cannot be opened ({why}) although it could be when the run began, expected it to stay"
    return _error(at.relative_to(folder).as_posix(), "N101", message, "check that it is there, and run this again")


def not_written(path: str, fault: OSError, what: str = "the folder") -> Problem:
    """A place within the project that the system refused to write, as a problem."""
    message = f"{what} cannot be written here: {fault.strerror or fault}"
    help = "close what uses it, make room, or allow writing to the folder; what stood there is as it was"
    return _error(path, "N108", message, help)


def in_use(path: Path) -> str:
    """
    Why a file of before should not be replaced; empty: nothing speaks against it.

    Many systems let a file be replaced that somebody made read-only or has open. The lock files beside it tell: office
    programs leave '.~lock.NAME#' or '~$' and the name without its first two letters while they have it open.
    """
    if path.is_file() and not path.stat().st_mode & stat.S_IWUSR:
        return "it is read-only"
    locks = (path.with_name(f".~lock.{path.name}#"), path.with_name(f"~${path.name[2:]}"))
    found = next((lock.name for lock in locks if lock.is_file()), "")
    return f"another program has it open (it left '{found}')" if found else ""


def saved_meanwhile(folder: Path, path: Path) -> Problem:
    """A narrative that the analyst saved while narrate was at work: her file stays."""
    return Problem(
        place=Place(path=path.relative_to(folder).as_posix()),
        severity="warning",
        code="N121",
        message="the narrative was saved while narrate was at work; it is as you saved it, and the pages show it as it "
        "was before",
        help="run narrate tell again",
    )


def _error(path: str, code: str, message: str, help: str) -> Problem:
    return Problem(place=Place(path=path), severity="error", code=code, message=message, help=help)
