"""Files of `out/`, written whole or not at all."""

from __future__ import annotations

import os
from pathlib import Path


def write(path: Path, content: str | bytes) -> None:
    """
    Writes a file so that nobody ever sees half of it; one that already holds the same is left alone.

    A text is written as UTF-8. Raises OSError where the place cannot be written; what stood there before stays whole.
    """
    path.parent.mkdir(parents=True, exist_ok=True)
    raw = content.encode("utf-8") if isinstance(content, str) else content
    if path.is_file() and path.read_bytes() == raw:
        return
    unfinished = path.with_name(f".{path.name}.{os.getpid()}.unfinished")
    try:
        unfinished.write_bytes(raw)
        os.replace(unfinished, path)
    finally:
        unfinished.unlink(missing_ok=True)
