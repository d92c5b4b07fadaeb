"""Files and folders put in place whole or not at all, and one run at a time in a project."""

from __future__ import annotations

import filecmp
import hashlib
import os
import re
import shutil
import sys
from collections.abc import Iterable, Iterator, Mapping
from contextlib import contextmanager, suppress
from pathlib import Path, PurePosixPath

LOCK = ".narrate-at-work"
"""The file in `out/` that a run holds while it writes; the operating system lets go of it when the run ends or dies."""
UNFINISHED = ".unfinished"
"""Ending of a file that is being written beside its place."""
_BEGIN_FORMULAS = frozenset("=+-@\t\r")
_NUMBER_OR_SIGNS = re.compile(r"[+-]+|[+-]?[0-9]+([.,][0-9]+)?(e[+-]?[0-9]+)?", re.IGNORECASE)


class Busy(Exception):
    """Another run is writing into the same folder."""


def write(path: Path, content: str | bytes) -> None:
    """
    Writes a file so that nobody ever sees half of it; one that already holds the same is left alone.

    A text is written as UTF-8. Raises OSError where the place cannot be written; what stood there before stays whole.
    """
    raw = content.encode("utf-8") if isinstance(content, str) else content
    if path.is_file() and path.read_bytes() == raw:
        return
    path.parent.mkdir(parents=True, exist_ok=True)
    unfinished = _unfinished(path)
    try:
        _begun(unfinished)
        unfinished.write_bytes(raw)
        os.replace(unfinished, path)
    except BaseException:
        with suppress(OSError):
            unfinished.unlink(missing_ok=True)
        raise


def write_in_pieces(path: Path, pieces: Iterable[bytes]) -> None:
    """
    Like `write`, of something too long to be held whole: it is written beside its place as it comes.

    A file that already holds the same is left alone.
    """
    path.parent.mkdir(parents=True, exist_ok=True)
    unfinished = _unfinished(path)
    try:
        _begun(unfinished)
        with unfinished.open("wb", buffering=1 << 20) as file:
            file.writelines(pieces)
        if path.is_file() and filecmp.cmp(path, unfinished, shallow=False):
            unfinished.unlink()
        else:
            os.replace(unfinished, path)
    except BaseException:
        with suppress(OSError):
            unfinished.unlink(missing_ok=True)
        raise


def _begun(unfinished: Path) -> None:
    """Makes a file anew: what lies there under that name goes, and nothing is ever written through a link."""
    unfinished.unlink(missing_ok=True)
    os.close(os.open(unfinished, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o666))


def write_folder(target: Path, files: Mapping[str, bytes]) -> None:
    """
    Puts a whole folder in place of the one that stood there: all of it is written beside it first.

    files:  path within the folder, with forward slashes -> what it holds.
    Raises OSError where it cannot be written; what stood there before stays whole.
    """
    fresh = _unfinished(target)
    target.parent.mkdir(parents=True, exist_ok=True)
    shutil.rmtree(fresh, ignore_errors=True)
    try:
        for name, raw in files.items():
            (fresh / name).parent.mkdir(parents=True, exist_ok=True)
            (fresh / name).write_bytes(raw)
        if not target.exists():
            os.replace(fresh, target)
        elif not _exchanged(fresh, target):
            _replaced_in_two_steps(fresh, target)
    finally:
        shutil.rmtree(fresh, ignore_errors=True)


def put_back(target: Path) -> None:
    """Where a run died between the two steps of exchanging a folder, what stood there before comes back."""
    before = _before(target)
    if before.exists() and not target.exists():
        os.replace(before, target)


def leftovers(folder: Path) -> tuple[Path, ...]:
    """Files that a run which died had begun and not finished; none of them was ever seen under its own name."""
    walked = os.walk(folder)  # not through links, which may lead out of the folder
    return tuple(sorted(Path(at, name) for at, _, names in walked for name in names if name.endswith(UNFINISHED)))


def is_inside(name: str) -> bool:
    """
    Whether a path, written with forward slashes, stays in the folder that it is read from.

    >>> [is_inside(name) for name in ("a/b.html", "", "/a", "a/../../b", "C:/a", "..\\\\a")]
    [True, False, False, False, False, False]
    """
    path = PurePosixPath(name)
    return name != "" and not path.is_absolute() and ".." not in path.parts and "\\" not in name and ":" not in name


def cell_text(text: str) -> str:
    """
    Text for a cell of a CSV that a spreadsheet would take for a formula is kept from being one by an apostrophe.

    Numbers, and signs that stand alone as laboratories use them, stay as they are.

    >>> [cell_text(text) for text in ("=1+1", "+1+cmd", "@x", "-0.5", "+++", "-", "two")]
    ["'=1+1", "'+1+cmd", "'@x", '-0.5', '+++', '-', 'two']
    """
    if text[:1] not in _BEGIN_FORMULAS or _NUMBER_OR_SIGNS.fullmatch(text):
        return text
    return "'" + text


@contextmanager
def alone(folder: Path) -> Iterator[None]:
    """
    Holds a project's `out/` for one run.

    Raises Busy if another run holds it, and OSError where `out/` cannot be made or written.
    """
    out = folder / "out"
    out.mkdir(parents=True, exist_ok=True)
    descriptor = os.open(out / LOCK, os.O_RDWR | os.O_CREAT | getattr(os, "O_NOFOLLOW", 0), 0o644)
    try:
        if not _held(descriptor):
            raise Busy(str(out))
        yield
    finally:
        os.close(descriptor)


def _unfinished(path: Path) -> Path:
    # One run writes at a time, so the name needs no number of a process, and what a dead run left is written over.
    # The name itself could be as long as the system allows, with no room for an ending.
    return path.with_name(f".{hashlib.blake2b(path.name.encode(), digest_size=8).hexdigest()}{UNFINISHED}")


def _before(path: Path) -> Path:
    return path.with_name(f".{path.name}.before")


def _exchanged(fresh: Path, target: Path) -> bool:
    """Exchanges two folders in one step, where the system can: no moment is without a whole one."""
    if not sys.platform.startswith("linux"):
        return False
    import ctypes

    here, exchange = -100, 2  # AT_FDCWD and RENAME_EXCHANGE of Linux's renameat2
    call = getattr(ctypes.CDLL(None, use_errno=True), "renameat2", None)
    return call is not None and call(here, os.fsencode(fresh), here, os.fsencode(target), exchange) == 0


def _replaced_in_two_steps(fresh: Path, target: Path) -> None:
    before = _before(target)
    shutil.rmtree(before, ignore_errors=True)
    os.replace(target, before)
    try:
        os.replace(fresh, target)
    except OSError:
        os.replace(before, target)
        raise
    shutil.rmtree(before, ignore_errors=True)


def _held(descriptor: int) -> bool:
    if sys.platform == "win32":
        import msvcrt

        try:
            msvcrt.locking(descriptor, msvcrt.LK_NBLCK, 1)
        except OSError:
            return False
        return True
    import fcntl

    try:
        fcntl.flock(descriptor, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except BlockingIOError:
        return False
    return True
