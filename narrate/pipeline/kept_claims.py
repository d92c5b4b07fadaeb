"""`claims.json` written, with what stands in the last one and has not changed taken over from there."""

from __future__ import annotations

import json
import os
from collections.abc import Collection, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import BinaryIO

from narrate.deposit.claims_pieces import OldFile, Piece, claims_bytes, sum_of
from narrate.files import write, write_in_pieces
from narrate.model.claims import Claims
from narrate.pipeline.kept_units import stamp_of

FORMAT = "narrate pieces of claims 1"
LIST = ".narrate-claims.json"
"""In `out/`: where the claims of each subject lie in the file, and on what they rest."""


def write_claims(folder: Path, claims: Claims, cited: Collection[str], ground: str) -> None:
    """
    Writes the file, and the list by which the next run takes pieces of it over.

    The list is believed only of the very file that was written: the time that the system sets when anything about a
    file changes, and its place on the disk, are in it; and a piece is taken only if its sum is right.

    cited:   ids of claims that narratives rest on.
    ground:  a sum over the program and the packs; empty where there is doubt, and then nothing is taken over.
    """
    target, listed = folder / "out" / "claims.json", folder / "out" / LIST
    found: dict[str, Piece] = {}
    write_in_pieces(target, _written(target, listed, claims, cited, ground, found))
    if ground and found:
        said = {"made on": ground, "file": stamp_of(os.lstat(target)), "pieces": found}
        body = json.dumps(said)
        write(listed, json.dumps({"format": FORMAT, "sum": sum_of(body.encode())}) + "\n" + body)
    else:
        listed.unlink(missing_ok=True)


def _written(
    target: Path, listed: Path, claims: Claims, cited: Collection[str], ground: str, found: dict[str, Piece]
) -> Iterator[bytes]:
    with _opened(target) as file:
        old = None if file is None else _old(target, listed, ground, file)
        yield from claims_bytes(claims, cited, old, found)


@contextmanager
def _opened(path: Path) -> Iterator[BinaryIO | None]:
    try:
        file = path.open("rb")
    except OSError:
        yield None
        return
    with file:
        yield file


def _old(target: Path, listed: Path, ground: str, file: BinaryIO) -> OldFile | None:
    try:
        if not ground or listed.is_symlink():
            return None
        head, _, body = listed.read_bytes().partition(b"\n")
        if json.loads(head) != {"format": FORMAT, "sum": sum_of(body)}:
            return None
        said = json.loads(body)
        if said["made on"] != ground or said["file"] != stamp_of(os.lstat(target)):
            return None
        return OldFile(file, {key: Piece(*piece) for key, piece in said["pieces"].items()})
    except (OSError, ValueError, LookupError, TypeError, AttributeError, RecursionError):
        return None
