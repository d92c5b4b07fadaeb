"""Templates as Python compiled them, kept where Python keeps its own compiled modules."""

from __future__ import annotations

import hashlib
import os
import pickle
import sys
from contextlib import suppress
from functools import cache
from io import BytesIO
from pathlib import Path

import jinja2
from jinja2.bccache import Bucket, BytecodeCache

from narrate.files import write
from narrate.web.writing import Writing

FOLDER = Path(__file__).parent / "__pycache__"
"""Beside compiled modules, and believed as they are: whoever can write here can write the program. No project can."""


class Compiled(BytecodeCache):
    """
    Compiled templates of one way of writing.

    What a template does to a constant, such as the word for a litre, is worked out as it is compiled; so a file belongs
    to one way of writing, and is believed only with the code that templates call and the versions of Python and jinja2
    unchanged, beside the text of the template. Where nothing can be kept, templates are compiled anew.
    """

    def __init__(self, writing: Writing) -> None:
        self._writing = repr(writing)
        self._made_by = _sum(f"{jinja2.__version__} {sys.version} {_code()}").encode()

    def load_bytecode(self, bucket: Bucket) -> None:
        with suppress(OSError, EOFError, ValueError, TypeError, pickle.UnpicklingError):
            made_by, _, kept = self._file(bucket).read_bytes().partition(b"\n")
            if made_by == self._made_by:
                bucket.load_bytecode(BytesIO(kept))

    def dump_bytecode(self, bucket: Bucket) -> None:
        kept = BytesIO()
        bucket.write_bytecode(kept)
        with suppress(OSError):
            write(self._file(bucket), self._made_by + b"\n" + kept.getvalue())

    def _file(self, bucket: Bucket) -> Path:
        return FOLDER / f"template-{_sum(f'{bucket.key} {self._writing}')}.{sys.implementation.cache_tag}.bin"


@cache
def _code() -> str:
    """Times and sizes of the code that templates call."""
    rooms = (Path(__file__).parent, Path(__file__).parents[1] / "telling", Path(__file__).parents[1] / "model")
    found = [
        (entry.name, about.st_mtime_ns, about.st_size)
        for room in rooms
        for entry in sorted(os.scandir(room), key=lambda entry: entry.name)
        if entry.name.endswith(".py") and (about := entry.stat())
    ]
    return _sum(repr(found))


def _sum(text: str) -> str:
    return hashlib.blake2b(text.encode("utf-8", "surrogatepass"), digest_size=12).hexdigest()
