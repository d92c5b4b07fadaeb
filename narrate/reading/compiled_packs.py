"""Packs that come with narrate, as they were read, kept where Python keeps its own compiled modules."""

from __future__ import annotations

import hashlib
import io
import os
import pickle
import sys
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path
from types import MappingProxyType

import yaml

from narrate.files import write
from narrate.model.packs import Packs

FOLDER = Path(__file__).parent / "__pycache__"
"""Beside compiled modules, and believed as they are: whoever can write here can write the program. No project can."""
WHOLE, NAMING = "packs", "naming"
"""Packs as a project reads them; and words and taxa alone."""
_PACKAGE = Path(__file__).resolve().parents[1]
_READ = ("packs", "reading", "model", "problems.py")
"""What the packs as they were read depend on."""


def packs_kept(regions: tuple[str, ...], folder: Path = FOLDER, *, name: str = WHOLE) -> Packs | None:
    """
    The packs of the regions as they were read before; None where they were not, or anything changed since.

    name:  whether they were read whole, or their words and taxa alone.

    Times and sizes of the packs and of the code that reads them, and the versions of Python and PyYAML, must be those
    of then; the time that the system sets when anything about a file changes is among them.
    """
    with suppress(OSError):
        head, _, raw = _file(folder, regions, name).read_bytes().partition(b"\n")
        if head == _head(raw):
            found = pickle.loads(raw)
            return found if isinstance(found, Packs) else None
    return None


def keep_packs(packs: Packs, folder: Path = FOLDER, *, name: str = WHOLE) -> None:
    """Keeps packs in which nothing was wrong; where nothing can be written they are read anew each time."""
    made = io.BytesIO()
    _Pickler(made, 5).dump(packs)
    with suppress(OSError):
        write(_file(folder, packs.regions, name), _head(made.getvalue()) + b"\n" + made.getvalue())


class _Pickler(pickle.Pickler):
    """Mappings that nobody may change are written as such."""

    def reducer_override(self, value: object):  # type: ignore[no-untyped-def]
        return (MappingProxyType, (dict(value),)) if isinstance(value, MappingProxyType) else NotImplemented


def _file(folder: Path, regions: tuple[str, ...], name: str) -> Path:
    return folder / f"{name}-{_sum(repr(regions).encode())}.{sys.implementation.cache_tag}.bin"


def _head(raw: bytes) -> bytes:
    said = (_sum(raw), sys.version, yaml.__version__, [_stamp(path) for path in _files()])
    return _sum(repr(said).encode("utf-8", "backslashreplace")).encode()


def _files() -> Iterator[str]:
    for name in _READ:
        below = os.path.join(_PACKAGE, name)
        if os.path.isfile(below):
            yield below
        for at, folders, names in os.walk(below):
            folders[:] = sorted(folder for folder in folders if folder != "__pycache__")
            yield from (os.path.join(at, name) for name in sorted(names))


def _stamp(path: str) -> tuple[str, int, int, int]:
    about = os.stat(path)
    return path, about.st_mtime_ns, about.st_ctime_ns, about.st_size


def _sum(raw: bytes) -> str:
    return hashlib.blake2b(raw, digest_size=16).hexdigest()
