"""
The list of pages that stand as the last build left them, with the key of each.

The list stands beside the site. It is believed of a page only while the list is whole and the file's times and size are
those that the build saw after writing it; the time of the last change of anything about a file is set by the system, so
that no list that was made elsewhere, or came with a folder, is ever true here. A file about as new as the list is read
and compared by its mark, because a change within the same tick of the clock shows in neither time.
"""

from __future__ import annotations

import hashlib
import json
import os
import stat
from collections.abc import Mapping
from pathlib import Path

from narrate.files import is_inside, write

FORMAT = "narrate pages 1"
_TICK_NS = 2_000_000_000


def standing(kept: Path, site: Path) -> Mapping[str, tuple[str, str]]:
    """Key and mark of each page that stands; none where the list is damaged, foreign, or not there."""
    try:
        made_ns = kept.lstat().st_mtime_ns
        if kept.is_symlink():
            return {}
        head, _, body = kept.read_bytes().partition(b"\n")
        said = json.loads(head)
        if said["format"] != FORMAT or said["sum"] != _mark(body):
            return {}
        pages = json.loads(body)
        return {
            path: (key, mark)
            for path, (key, mark, *stamp) in pages.items()
            if isinstance(key, str)
            and isinstance(mark, str)
            and is_inside(path)
            and _stands(site / path, stamp, mark, made_ns)
        }
    except (OSError, ValueError, LookupError, TypeError, AttributeError, RecursionError):
        return {}


def remember(kept: Path, site: Path, pages: Mapping[str, tuple[str, str]]) -> None:
    """Leaves the list, once all pages are written: key and mark of each by its path within the site."""
    said = {path: [key, mark, *_stamp(os.lstat(site / path))] for path, (key, mark) in pages.items()}
    body = json.dumps(said, ensure_ascii=False)
    write(kept, json.dumps({"format": FORMAT, "sum": _mark(body.encode("utf-8"))}) + "\n" + body)


def mark_of(content: bytes) -> str:
    """The mark of the content of a page."""
    return _mark(content)


def _stands(page: Path, stamp: list[int], mark: str, made_ns: int) -> bool:
    try:
        about = os.lstat(page)
    except OSError:
        return False
    if not stat.S_ISREG(about.st_mode) or _stamp(about) != stamp:
        return False
    is_older = max(about.st_mtime_ns, about.st_ctime_ns) < made_ns - _TICK_NS
    return is_older or _mark(page.read_bytes()) == mark


def _stamp(about: os.stat_result) -> list[int]:
    return [about.st_mtime_ns, about.st_ctime_ns, about.st_size]


def _mark(raw: bytes) -> str:
    return hashlib.blake2b(raw, digest_size=16).hexdigest()
