"""Times and sizes of many files at once: one sum tells whether all of them stand as they did."""

from __future__ import annotations

import hashlib
import marshal
import os
import stat
from collections.abc import Collection, Iterable, Sequence
from pathlib import Path

Stamped = tuple[str, int]
"""A sum over names, times and sizes of files, and the latest time among them."""


def stamps_of(
    folder: Path, tops: Iterable[str], leave_out: Collection[str] = (), *, nowhere: str = "", with_links: bool = False
) -> Stamped | None:
    """
    All files below some folders, or named as such; None where a link among them leaves doubt.

    tops:       by their paths within the folder; '' is the folder itself.
    leave_out:  what is not looked into, by its path.
    nowhere:    the name of folders that are not looked into wherever they lie.
    with_links: whether links are looked at as files of their own.
    Raises OSError for what is not there.
    """
    root, latest = os.fspath(folder), 0
    said: list[str | int] = []
    waiting = list(tops)
    while waiting:
        above = waiting.pop()
        about = os.lstat(f"{root}/{above}")
        if stat.S_ISDIR(about.st_mode):
            names, folders = _listed(f"{root}/{above}", above, leave_out, nowhere)
            waiting += folders
            found = _each(f"{root}/{above}", names)
        else:
            names, found = [above], [about]
        said += (above, *names)
        for about in found:
            if stat.S_ISLNK(about.st_mode) and not with_links:
                return None
            changed, touched = about.st_mtime_ns, about.st_ctime_ns
            said += (changed, touched, about.st_size)
            latest = max(latest, changed, touched)
    # The second form of marshal writes equal values as equal bytes.
    return hashlib.blake2b(marshal.dumps(said, 2), digest_size=16).hexdigest(), latest


def _listed(path: str, above: str, leave_out: Collection[str], nowhere: str) -> tuple[list[str], list[str]]:
    """Names of the files of a folder, and paths of the folders within it, in order."""
    files, folders = [], []
    with os.scandir(path) as entries:
        for entry in entries:
            name = f"{above}/{entry.name}" if above else entry.name
            if name in leave_out or entry.name == nowhere:
                continue
            if entry.is_dir(follow_symlinks=False):
                folders.append(name)
            else:
                files.append(entry.name)
    return sorted(files), sorted(folders)


def _each(path: str, names: Sequence[str]) -> list[os.stat_result]:
    """What the system says of each file of a folder, which it finds sooner from there than from the root."""
    if os.stat not in os.supports_dir_fd:
        return [os.lstat(f"{path}/{name}") for name in names]
    within = os.open(path, os.O_RDONLY)
    try:
        return [os.stat(name, dir_fd=within, follow_symlinks=False) for name in names]
    finally:
        os.close(within)
