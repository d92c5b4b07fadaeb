"""What was worked out of single units in the last run, kept in `out/` and believed while nothing speaks against it."""

from __future__ import annotations

import hashlib
import json
import os
import stat
from contextlib import suppress
from pathlib import Path

from narrate.files import write
from narrate.judging.kept_units import KeptUnits

FORMAT = "narrate judged 1"
JUDGED, WORDS = ".narrate-judged", ".narrate-words"
"""In `out/`, each with '.bin' behind it: the values; and with '.json': the list by which they are believed."""


def kept_before(folder: Path, ground: str, name: str = JUDGED) -> KeptUnits:
    """
    What the last run left, where it was made on the same ground; nothing where it is damaged, foreign or not there.

    ground:  a sum over the program and the packs; empty where there is doubt about it.
    """
    try:
        values, listed = _files(folder, name)
        if not ground or _is_link(folder, name):
            return KeptUnits()
        raw = values.read_bytes()
        said = json.loads(listed.read_bytes())
        is_so = said == _said(ground, raw, os.lstat(values))
        return KeptUnits.unpacked(raw) if is_so else KeptUnits()
    except (OSError, ValueError, RecursionError):
        return KeptUnits()


def keep(folder: Path, ground: str, kept: KeptUnits, name: str = JUDGED) -> None:
    """Leaves what a run asked for or worked out."""
    if not ground or _is_link(folder, name):
        forget_units(folder, name)
        return
    raw = kept.packed()
    values, listed = _files(folder, name)
    write(values, raw)
    write(listed, json.dumps(_said(ground, raw, os.lstat(values))) + "\n")


def forget_units(folder: Path, name: str = JUDGED) -> None:
    """Takes away what was kept."""
    for path in reversed(_files(folder, name)):
        with suppress(FileNotFoundError):
            path.unlink()


def _files(folder: Path, name: str) -> tuple[Path, Path]:
    """The values and their list."""
    return folder / "out" / f"{name}.bin", folder / "out" / f"{name}.json"


def _said(ground: str, raw: bytes, about: os.stat_result) -> dict[str, object]:
    """
    What the list says of the values.

    The time that the system sets when anything about a file changes is in it, and the place of the file on the disk, so
    that values that came with a folder, or that somebody else put there, are those of no list.
    """
    return {
        "format": FORMAT,
        "made on": ground,
        "sum": hashlib.blake2b(raw, digest_size=16).hexdigest(),
        "file": stamp_of(about),
    }


def stamp_of(about: os.stat_result) -> list[int]:
    """What tells a file from any other that holds the same."""
    return [about.st_mtime_ns, about.st_ctime_ns, about.st_size, about.st_ino, stat.S_IFMT(about.st_mode)]


def _is_link(folder: Path, name: str) -> bool:
    return any(os.path.islink(path) for path in (folder / "out", *_files(folder, name)))
