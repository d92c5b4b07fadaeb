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
VALUES = ".narrate-judged.bin"
LIST = ".narrate-judged.json"
"""In `out/`: the values, and the list by which they are believed."""


def kept_before(folder: Path, ground: str) -> KeptUnits:
    """
    What the last run left, where it was made on the same ground; nothing where it is damaged, foreign or not there.

    ground:  a sum over the program and the packs; empty where there is doubt about it.
    """
    try:
        if not ground or _is_link(folder):
            return KeptUnits()
        raw = (folder / "out" / VALUES).read_bytes()
        said = json.loads((folder / "out" / LIST).read_bytes())
        is_so = said == _said(ground, raw, os.lstat(folder / "out" / VALUES))
        return KeptUnits.unpacked(raw) if is_so else KeptUnits()
    except (OSError, ValueError, RecursionError):
        return KeptUnits()


def keep(folder: Path, ground: str, kept: KeptUnits) -> None:
    """Leaves what a run asked for or worked out."""
    if not ground or _is_link(folder):
        forget_units(folder)
        return
    raw = kept.packed()
    values = folder / "out" / VALUES
    write(values, raw)
    write(folder / "out" / LIST, json.dumps(_said(ground, raw, os.lstat(values))) + "\n")


def forget_units(folder: Path) -> None:
    """Takes away what was kept."""
    for name in (LIST, VALUES):
        with suppress(FileNotFoundError):
            (folder / "out" / name).unlink()


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


def _is_link(folder: Path) -> bool:
    return any(os.path.islink(folder / "out" / name) for name in ("", VALUES, LIST))
