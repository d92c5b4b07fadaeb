"""Times and sizes of many files at once: one sum tells whether all of them stand as they did."""

from __future__ import annotations

import hashlib
import os
import stat
from collections.abc import Collection, Iterable
from operator import attrgetter
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
    root, said, latest = os.fspath(folder), list[str](), 0
    waiting = list(tops)
    while waiting:
        above = waiting.pop()
        about = os.lstat(f"{root}/{above}")
        if not stat.S_ISDIR(about.st_mode):
            found = [(above, about)]
        else:
            found = []
            with os.scandir(f"{root}/{above}") as entries:
                for entry in sorted(entries, key=attrgetter("name")):
                    name = f"{above}/{entry.name}" if above else entry.name
                    if name in leave_out or entry.name == nowhere:
                        continue
                    if entry.is_dir(follow_symlinks=False):
                        waiting.append(name)
                    else:
                        found.append((name, entry.stat(follow_symlinks=False)))
        for name, about in found:
            if stat.S_ISLNK(about.st_mode) and not with_links:
                return None
            said.append(f"{name}\0{about.st_mtime_ns} {about.st_ctime_ns} {about.st_size}")
            latest = max(latest, about.st_mtime_ns, about.st_ctime_ns)
    return hashlib.blake2b("\n".join(said).encode("utf-8", "surrogateescape"), digest_size=16).hexdigest(), latest
