"""`claims.json` subject by subject: what is written of each, and a key of all that it is written of."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Collection, Iterator, Mapping
from typing import NamedTuple

import numpy as np

from narrate.deposit.claims_file import HEAD, NOTHING, SEPARATOR, TAIL, subject_texts
from narrate.judging.claims_by_subject import ClaimsBySubject
from narrate.judging.claims_made import ClaimMaker
from narrate.model.claims import Claims, SumsOfClaims
from narrate.model.ids import Subject


class Piece(NamedTuple):
    """Where the text of one subject lies in a file, and a sum over it."""

    start: int
    end: int
    sum: str


Pieces = Mapping[str, Piece]
"""By key."""


class OldFile:
    """The file of the last run, of which pieces are taken over."""

    def __init__(self, file, pieces: Pieces) -> None:  # type: ignore[no-untyped-def]
        self._file = file
        self._pieces = pieces

    def of(self, key: str) -> bytes | None:
        """The text that was written on that key; None where there is none, or another than was written."""
        piece = self._pieces.get(key)
        if piece is None:
            return None
        self._file.seek(piece.start)
        raw: bytes = self._file.read(piece.end - piece.start)
        return raw if sum_of(raw) == piece.sum else None


def claims_bytes(
    claims: Claims, cited: Collection[str], old: OldFile | None, found: dict[str, Piece]
) -> Iterator[bytes]:
    """
    The text of `claims.json` in pieces, those of subjects whose key is that of a piece before taken from there.

    found:  filled with the pieces of the new file.
    """
    cited = frozenset(cited)
    columns = claims.columns
    is_of_columns = isinstance(columns, ClaimsBySubject) and claims.sums is not None
    keys = _Keys(claims.sums, columns, cited) if is_of_columns else None  # type: ignore[arg-type]
    place, before = 0, HEAD.encode("utf-8")
    for subject, text in subject_texts(claims, cited):
        key = "" if keys is None else keys.of(subject)
        own = old.of(key) if old is not None and key else None
        raw = text().encode("utf-8") if own is None else own
        if not raw:
            continue
        yield before
        yield raw
        place += len(before) + len(raw)
        if key:
            found[key] = Piece(place - len(raw), place, sum_of(raw))
        before = SEPARATOR.encode("utf-8")
    yield (NOTHING if not place else TAIL).encode("utf-8")


def sum_of(raw: bytes) -> str:
    return hashlib.blake2b(raw, digest_size=16).hexdigest()


class _Keys:
    """Sums over all that is written of each subject, beside what follows from the program and the packs."""

    def __init__(self, sums: SumsOfClaims, columns: ClaimsBySubject, cited: Collection[str]) -> None:
        self._sums = sums
        self._columns = columns
        self._cited = cited
        self._same: dict[str, np.ndarray] = {}
        look = columns.makers["sample"].judged.look
        table = look.units.table
        rows: list[list[str]] = [[] for _ in table.sample_ids]
        for sample, at in zip(table.row_sample.tolist(), table.places, strict=True):
            rows[sample].append(at.row)
        self._places = [
            sum_of(json.dumps([record.place.row, own]).encode()) for record, own in zip(look.records, rows, strict=True)
        ]

    def of(self, subject: Subject) -> str:
        level, unit = self._columns.place[subject]
        maker = self._columns.makers[level]
        judged, key = maker.judged, maker.keys[subject]
        ids = [f"{key}/{id}" for id in judged.statements]
        steps = [(id, step.about) for id in ids if (step := self._columns.step_of.get(id)) is not None]
        said = (
            key,
            [id for id in ids if id in self._cited],
            [(id, about.level, about.id) for id, about in steps],
            [self._places[sample] for sample in judged.look.units.samples_of(unit).tolist()],
        )
        judgement = self._sums.about(subject), judged.keys.contents[unit], self._same_of(maker, unit)
        return sum_of(b"".join((*judgement, json.dumps(said).encode())))

    def _same_of(self, maker: ClaimMaker, unit: int) -> bytes:
        """In which share of the draws each argument comes out the same."""
        level = maker.judged.level
        if level not in self._same:
            columns = [one.same for one in maker.judged.statements.values() if one.same is not None]
            width = len(maker.judged.look.units.ids)
            self._same[level] = np.ascontiguousarray(np.concatenate([np.zeros((0, width)), *columns]).T)
        return self._same[level][unit].tobytes()
