"""What was worked out of single units and does not hang on the rest of the dig, kept by a key of all that it reads."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping, Sequence

import numpy as np

from narrate.model.claims import Turning
from narrate.model.ids import PartId, StatementId, TaxonId

KEY_BYTES = 16


class KeptUnits:
    """
    Values by key: what was kept before, and what of it was asked for or added since.

    A key is a sum over all that the value was worked out of, so that a value can be too old only by not being found.
    What nobody asks for any more is not among what is kept for the next time.
    """

    def __init__(self, before: Mapping[bytes, bytes] | None = None) -> None:
        self._before = before or {}
        self.now: dict[bytes, bytes] = {}

    def __bool__(self) -> bool:
        """Whether anything was kept before or since."""
        return bool(self._before or self.now)

    def found(self, key: bytes) -> bytes | None:
        value = self.now.get(key)
        if value is None:
            value = self._before.get(key)
            if value is not None:
                self.now[key] = value
        return value

    def add(self, key: bytes, value: bytes) -> None:
        self.now[key] = value

    def packed(self) -> bytes:
        """All of it as one run of bytes."""
        keys = sorted(self.now)
        values = [self.now[key] for key in keys]
        lengths = np.array([len(value) for value in values], "<u4")
        return b"".join((len(keys).to_bytes(8), *keys, lengths.tobytes(), *values))

    @classmethod
    def unpacked(cls, raw: bytes) -> KeptUnits:
        """What `packed` gave; ValueError where it cannot be that."""
        count = int.from_bytes(raw[:8])
        first_length = 8 + count * KEY_BYTES
        first_value = first_length + count * 4
        if len(raw) < first_value:
            raise ValueError("kept values are cut short")
        ends = first_value + np.cumsum(np.frombuffer(raw[first_length:first_value], "<u4"), dtype=np.int64)
        if len(raw) != (int(ends[-1]) if count else first_value):
            raise ValueError("kept values are not as long as they are said to be")
        starts = [first_value, *ends.tolist()][:count]
        keys = (raw[at : at + KEY_BYTES] for at in range(8, first_length, KEY_BYTES))
        return cls({key: raw[start:end] for key, start, end in zip(keys, starts, ends.tolist(), strict=True)})


TurningsOfUnit = Mapping[StatementId, Sequence[Turning]]


def turnings_written(found: TurningsOfUnit) -> bytes:
    """The smallest changes of one unit, by statement."""
    said = {
        id: [[t.items, t.taxon, t.part, t.condition, t.sample, t.verdict, t.says, t.by_sample] for t in turnings]
        for id, turnings in found.items()
    }
    return json.dumps(said, separators=(",", ":")).encode()


def turnings_read(raw: bytes) -> dict[StatementId, tuple[Turning, ...]]:
    """What `turnings_written` was given."""
    return {
        StatementId(id): tuple(
            Turning(
                items=items,
                taxon=None if taxon is None else TaxonId(taxon),
                part=PartId(part),
                condition=condition,
                sample=sample,
                verdict=verdict,
                says=says,
                by_sample=tuple((sample, items) for sample, items in by_sample),
            )
            for items, taxon, part, condition, sample, verdict, says, by_sample in turnings
        )
        for id, turnings in json.loads(raw).items()
    }


def columns_found(kept: KeptUnits, keys: Iterable[bytes], out: np.ndarray) -> np.ndarray:
    """
    Fills the columns of `out` whose keys are known; numbers of the others.

    out:  (values, units), whole numbers.
    """
    missing = []
    for unit, key in enumerate(keys):
        raw = kept.found(key)
        if raw is None or len(raw) != len(out) * out.itemsize:
            missing.append(unit)
        else:
            out[:, unit] = np.frombuffer(raw, out.dtype)
    return np.array(missing, np.intp)
