"""
Whether everything that the last run read and wrote still stands as it was, so that there is nothing to do.

A run leaves the list of all it read, with a mark of the content of each file, and of all it wrote. The list counts only
while it is whole, made by the same program with the same options, and true of every file. Times and sizes are a
shortcut; a file as new as the list itself is read anyway, because a change within the same tick of the clock shows in
neither. One sum over all times and sizes is looked at first; where it is another, each file is. On any doubt the run is
done again: the list is ignored, never believed.
"""

from __future__ import annotations

import hashlib
import json
import os
import sys
from collections.abc import Collection, Iterator, Mapping
from contextlib import suppress
from dataclasses import asdict, replace
from importlib.util import find_spec
from pathlib import Path

from narrate.files import write
from narrate.pipeline.stamps import stamps_of
from narrate.pipeline.told import Told
from narrate.problems import Place, Problem

LIST = ".narrate-told.json"
"""In `out/`: what the last run read and wrote."""
FORMAT = "narrate told 2"
_WRITTEN = ("out/review", "out/public", "out/measures", "out/claims.json")
_NOT_READ = ("out", ".git")
_TICK_NS = 2_000_000_000
"""A file changed less than this before the list was made is read, whatever its time says."""
_OTHERS = ("numpy", "matplotlib", "jinja2", "markupsafe", "markdown_it", "yaml", "openpyxl")
"""Packages that the bytes of a page depend on."""

Marks = Mapping[str, str]
"""What was read: path in the project -> mark of the content."""
_Stamp = list[int]
"""Time of the last change, time of the last change of anything about the file, size."""


def options_of(strict: bool, approved_only: Collection[str]) -> tuple[str, ...]:
    """What was asked of a run, beside the folder."""
    return (*(["strict"] if strict else []), *(f"approved only: {name}" for name in sorted(approved_only)))


def marks_of(folder: Path) -> Marks | None:
    """Marks of all files that a run may read; None where a link or a file that cannot be read leaves doubt."""
    try:
        found = _files(folder)
        return None if found is None else {name: _mark(folder / name) for name in found}
    except OSError:
        return None


def program_of(version: str, options: Collection[str]) -> list[object]:
    """The program and what was asked of it, as they stand when a run begins: a pack may be edited while it works."""
    return _program(version, options)


def ground_of(folder: Path, program: list[object]) -> str:
    """
    A sum over what all pages share: the program with its options, and the project's own file and packs.

    Empty where a link or a file that cannot be read leaves doubt.
    """
    return _ground(folder, program, ("project.yaml",))


def packs_ground(folder: Path) -> str:
    """A sum over the program and the project's own packs; empty where there is doubt."""
    return _ground(folder, program_of("", ()), ())


def _ground(folder: Path, program: list[object], besides: Collection[str]) -> str:
    try:
        packs = _files(folder / "packs") if os.path.lexists(folder / "packs") else []
        if packs is None or (folder / "packs").is_symlink():
            return ""
        marks = {name: _mark(folder / name) for name in (*besides, *(f"packs/{name}" for name in packs))}
    except OSError:
        return ""
    return _sum(json.dumps([program, marks]).encode())


def remember(folder: Path, read: Marks | None, program: list[object], told: Told) -> None:
    """
    Leaves the list, once everything else is written.

    read:  marks taken before anything was read. Where a file is not as it was then, because it was edited meanwhile or
           because drafts were written, the next run has to look at it, and no list is left.
    program:  `program_of` from before anything was read.
    """
    if read is None or read != marks_of(folder):
        return
    stamps = _stamps(folder, sorted(read))
    short = {"made by": program, "told": asdict(told), "as stamped": _as_stamped(folder)}
    each = {
        "read": {name: [*stamps[name], read[name]] for name in read},
        "written": _stamps(folder, list(_made(folder))),
    }
    body = f"{json.dumps(short, ensure_ascii=False)}\n{json.dumps(each, ensure_ascii=False)}"
    write(folder / "out" / LIST, json.dumps({"format": FORMAT, "sum": _sum(body.encode())}) + "\n" + body)


def forget(folder: Path) -> None:
    """Takes the list away, before a run begins to write."""
    with suppress(FileNotFoundError):
        (folder / "out" / LIST).unlink()


def pages_list(folder: Path, site: str) -> Path:
    """The list of the pages that stand of one site; it lies beside the site, so that nobody puts it on the web."""
    return folder / "out" / f".narrate-pages-{site}.json"


def forget_pages(folder: Path) -> None:
    """Takes the lists of pages away: what the pages share was edited while they were made."""
    for site in ("review", "public"):
        pages_list(folder, site).unlink(missing_ok=True)


def as_told_before(folder: Path, options: Collection[str], version: str) -> Told | None:
    """What the last run told, where a run now would read the same and all it wrote stands; None where it has to run."""
    try:
        made_ns = (folder / "out" / LIST).stat().st_mtime_ns
        head, _, body = (folder / "out" / LIST).read_bytes().partition(b"\n")
        kept = json.loads(head)
        if kept["format"] != FORMAT or kept["sum"] != _sum(body):
            return None
        short, _, each = body.partition(b"\n")
        said = json.loads(short)
        if said["made by"] != _program(version, options):
            return None
        if not _is_stamped_as_before(folder, said["as stamped"], made_ns):
            said_of_each = json.loads(each)
            if not _is_read_as_before(folder, said_of_each["read"], made_ns):
                return None
            if not _is_written_as_before(folder, said_of_each["written"]):
                return None
        return _told(said["told"])
    except (OSError, ValueError, LookupError, TypeError, RecursionError):
        return None


def _as_stamped(folder: Path) -> list[str] | None:
    """Sums over the times and sizes of all that is read and all that was written; None where there is a link."""
    read, written = stamps_of(folder, ("",), _NOT_READ), stamps_of(folder, _WRITTEN)
    return None if read is None or written is None else [read[0], written[0]]


def _is_stamped_as_before(folder: Path, before: object, made_ns: int) -> bool:
    """Whether that alone tells that nothing changed: nothing that is read may be as new as the list."""
    read = stamps_of(folder, ("",), _NOT_READ)
    if read is None or read[1] >= made_ns - _TICK_NS:
        return False
    written = stamps_of(folder, _WRITTEN)
    return written is not None and [read[0], written[0]] == before


def _is_read_as_before(folder: Path, before: Mapping[str, list[object]], made_ns: int) -> bool:
    now = _files(folder)
    if now is None or set(now) != before.keys():
        return False
    stamps = _stamps(folder, now)
    return all(
        (stamps[name] == stamp and max(stamps[name][:2]) < made_ns - _TICK_NS) or _mark(folder / name) == mark
        for name, (*stamp, mark) in before.items()
    )


def _is_written_as_before(folder: Path, before: Mapping[str, _Stamp]) -> bool:
    return dict(_stamps(folder, list(_made(folder)))) == before


def _files(folder: Path) -> list[str] | None:
    """Every file of the project but those that are built, by name; None where there is a link or a pipe."""
    found: list[str] = []
    for name, entry in _walked(folder, ""):
        if entry.is_symlink() or not entry.is_file(follow_symlinks=False):
            return None
        found.append(name)
    return sorted(found)


def _walked(folder: Path, above: str) -> Iterator[tuple[str, os.DirEntry[str]]]:
    with os.scandir(folder / above) as entries:
        for entry in entries:
            name = f"{above}/{entry.name}" if above else entry.name
            if name in _NOT_READ:
                continue
            if entry.is_dir(follow_symlinks=False):
                yield from _walked(folder, name)
            else:
                yield name, entry


def _made(folder: Path) -> Iterator[str]:
    for name in _WRITTEN:
        if (folder / name).is_dir():
            yield from (inner for inner, _ in _walked(folder, name))
        else:
            yield name


def _stamps(folder: Path, names: Collection[str]) -> dict[str, _Stamp]:
    root = os.fspath(folder)
    return {name: _stamp(os.lstat(f"{root}/{name}")) for name in names}


def _stamp(about: os.stat_result) -> _Stamp:
    return [about.st_mtime_ns, about.st_ctime_ns, about.st_size]


def _mark(path: Path) -> str:
    """Piece by piece: what lies in the folder may be larger than memory."""
    with path.open("rb") as file:
        return hashlib.file_digest(file, lambda: hashlib.blake2b(digest_size=16)).hexdigest()


def _sum(raw: bytes) -> str:
    return hashlib.blake2b(raw, digest_size=16).hexdigest()


def _program(version: str, options: Collection[str]) -> list[object]:
    """Whatever else the pages depend on: narrate itself, its packs and templates, Python and other packages."""
    package = Path(__file__).resolve().parents[1]
    found = []
    for root in (package, package.parent / "site_templates"):
        if root.is_dir():
            found.append([root.as_posix(), stamps_of(root, ("",), nowhere="__pycache__", with_links=True)])
    others = [_stamp(os.stat(spec.origin)) for name in _OTHERS if (spec := find_spec(name)) and spec.origin]
    code = _sum(json.dumps([found, others]).encode())
    return [version, sys.version, code, sorted(options)]


def _told(said: Mapping[str, object]) -> Told:
    problems = tuple(
        Problem(**{**problem, "place": Place(**problem["place"])})
        for problem in said["problems"]  # type: ignore[attr-defined]
    )
    return replace(Told(**said), problems=problems)  # type: ignore[arg-type]
