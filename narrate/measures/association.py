"""Which weeds came with the crop: how firmly the two go together over samples."""

from __future__ import annotations

import hashlib
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from narrate.measures.significance import holm
from narrate.measures.units import Units
from narrate.model.fields import Association, Associations
from narrate.model.kept import Kept
from narrate.model.rules import Selector

CROPS = Selector(status=("crop",))
WEEDS = Selector(status=("native", "introduced", "either"), role=("propagule",), field_weed=("strong", "moderate"))
LEAST_SAMPLES = 5
"""A thing in fewer samples, or missing from fewer, is in no pair that is tested (a default)."""


def association(
    samples: Units,
    *,
    crops: Selector = CROPS,
    weeds: Selector = WEEDS,
    permutations: int = 1999,
    seed: int = 1,
    kept: Kept | None = None,
) -> Associations:
    """
    How firmly parts of crops and weeds go together over samples, against tables with the same margins.

        φ = (ad − bc) / √[(a + b)(c + d)(a + c)(b + d)];   a samples with both, b and c with one alone, d with neither

    samples:       units of the level 'sample'.
    permutations:  tables in which every sample keeps its number of things and every thing its number of samples in each
                   phase; a rich sample holds many plants of all sorts, and must not make them look like company; and
                   what came in when something else went out is no company that stayed apart.
    seed:          the same seed gives the same tables.
    kept:          what came of the tables of a dig with the same presences, so that they need not be drawn again.
    Gives:         two-sided p of φ less its mean over those tables, corrected for all pairs (Holm).
    Misleads:      φ itself is over all samples, and holds what a change from phase to phase makes of it; only what goes
                   beyond its mean over the tables does not. Things that go together need not come from one field: a
                   refuse pit gathers both.
    Source:        φ: Shennan 1988, Quantifying Archaeology; keeping both margins: Connor & Simberloff 1979, Ecology
                   60:1132–1140; the trades: Strona et al. 2014, Nature Communications 5:4114; Holm 1979 (from memory).
    """
    names, there = _presence(samples)
    is_crop, is_weed = (np.isin(np.arange(len(names)), _columns(samples, names, s)) for s in (crops, weeds))
    frequency = there.sum(axis=0)
    usable = (frequency >= LEAST_SAMPLES) & (len(there) - frequency >= LEAST_SAMPLES)
    first, second = np.flatnonzero(is_crop & usable), np.flatnonzero(is_weed & usable & ~is_crop)
    pairs = int(is_crop.sum() * (is_weed & ~is_crop).sum())
    if not first.size or not second.size:
        return Associations(
            samples=len(there),
            rows=(),
            left_out=pairs,
            permutations=permutations,
            seed=seed,
            reason=f"no crop part and no weed are in {LEAST_SAMPLES} samples or more, and missing from as many",
        )
    seen = phi(there[:, first], there[:, second])
    phases = samples.table.groups.get("phase")
    middle, at_least = _drawn_before_or_now(_Tables(there, phases, permutations, seed), first, second, seen, kept)
    p = (1 + at_least) / (1 + permutations)
    corrected = holm(p.ravel()).reshape(p.shape)
    rows = [
        Association(
            crop=names[i][0],
            crop_part=names[i][1],
            weed=names[j][0],
            both=int(np.sum(there[:, i] & there[:, j])),
            only_crop=int(np.sum(there[:, i] & ~there[:, j])),
            only_weed=int(np.sum(~there[:, i] & there[:, j])),
            neither=int(np.sum(~there[:, i] & ~there[:, j])),
            phi=float(seen[a, b]),
            expected_phi=float(middle[a, b]),
            p=float(p[a, b]),
            p_holm=float(corrected[a, b]),
        )
        for a, i in enumerate(first)
        for b, j in enumerate(second)
    ]
    rows.sort(key=lambda row: (row.p, -abs(row.phi - row.expected_phi), row.crop, row.crop_part, row.weed))
    return Associations(
        samples=len(there), rows=tuple(rows), left_out=pairs - len(rows), permutations=permutations, seed=seed
    )


@dataclass(frozen=True, slots=True)
class _Tables:
    """Tables with the same margins as one of presence, as they are to be drawn."""

    there: np.ndarray
    phases: np.ndarray | None
    many: int
    seed: int

    def key(self, first: np.ndarray, second: np.ndarray) -> bytes:
        """A sum over all that comes of them hangs on."""
        said = (self.there.shape, self.many, self.seed, first.tolist(), second.tolist())
        phases = None if self.phases is None else self.phases.tolist()
        made = hashlib.blake2b(repr(("association", said, phases)).encode(), digest_size=16)
        made.update(np.packbits(self.there).tobytes())
        return made.digest()


def _drawn_before_or_now(
    tables: _Tables, first: np.ndarray, second: np.ndarray, seen: np.ndarray, kept: Kept | None
) -> tuple[np.ndarray, np.ndarray]:
    """Mean φ of every pair over the tables, and in how many of them φ lies as far from it as in the table seen."""
    key = b"" if kept is None else tables.key(first, second)
    raw = None if kept is None else kept.found(key)
    if raw is not None and len(raw) == 16 * seen.size:
        middle, at_least = np.frombuffer(raw[: 8 * seen.size], float), np.frombuffer(raw[8 * seen.size :], np.int64)
        return middle.reshape(seen.shape), at_least.reshape(seen.shape)
    made = _some_with_same_margins(tables.there, tables.many, tables.seed, tables.phases)
    drawn = np.array([phi(table[:, first], table[:, second]) for some in made for table in some])
    middle = drawn.mean(axis=0)
    at_least = (np.abs(drawn - middle) >= np.abs(seen - middle) - 1e-12).sum(axis=0, dtype=np.int64)
    if kept is not None:
        kept.add(key, middle.astype(float).tobytes() + at_least.tobytes())
    return middle, at_least


def phi(first: np.ndarray, second: np.ndarray) -> np.ndarray:
    """
    φ of every column of one table with every column of another.

    first, second:  (samples, things), true where the thing is there.
    Gives:          (things of the first, things of the second); NaN where a thing is everywhere or nowhere.
    Source:         Shennan 1988, Quantifying Archaeology (from memory).

    >>> phi(np.array([[1], [1], [0], [0]]), np.array([[1], [0], [0], [0]])).round(4).tolist()
    [[0.5774]]
    """
    x, y = (np.asarray(part, float) - np.mean(part, axis=0) for part in (first, second))
    with np.errstate(invalid="ignore", divide="ignore"):
        return np.clip((x.T @ y) / np.sqrt((x * x).sum(axis=0)[:, None] * (y * y).sum(axis=0)[None, :]), -1, 1)


def with_same_margins(there: np.ndarray, tables: int, seed: int, groups: np.ndarray | None = None) -> np.ndarray:
    """
    Tables of presence drawn from all that have the same row and column sums, by trading between pairs of rows.

    there:   (samples, things) of truth values.
    groups:  a number for each sample; only samples of one group trade, so that each group keeps its own column sums.
             Without it all samples are of one group.
    Gives:   (tables, samples, things). Each table is a chain of its own from the table seen, of ten rounds in which
             every sample trades with another one of its group.
    Source:  Strona et al. 2014, Nature Communications 5:4114 (from memory).

    >>> drawn = with_same_margins(np.array([[True, False, True], [False, True, False], [True, True, False]]), 4, 1)
    >>> drawn.sum(axis=1).tolist() == [[2, 2, 1]] * 4, drawn.sum(axis=2).tolist() == [[2, 1, 2]] * 4
    (True, True)
    """
    return np.concatenate(list(_some_with_same_margins(there, tables, seed, groups)))


_ROUNDS = 10
_ROWS_AT_ONCE = 40_000
"""Rows of tables that are drawn at a time, so that memory does not grow with the dig."""


def _some_with_same_margins(
    there: np.ndarray, tables: int, seed: int, groups: np.ndarray | None
) -> Iterator[np.ndarray]:
    """The tables of `with_same_margins`, some at a time."""
    generator = np.random.default_rng(seed)
    samples, things = there.shape
    group = np.zeros(samples, np.intp) if groups is None else np.unique(groups, return_inverse=True)[1]
    sizes = np.bincount(group, minlength=1)
    # In an order by group, the places of the first of every two; where their number is odd, one sits out a round.
    first = np.concatenate(
        [np.arange(end - size, end - 1, 2) for end, size in zip(np.cumsum(sizes), sizes, strict=True)]
    )
    at_once = max(1, _ROWS_AT_ONCE // max(samples, 1))
    for many in [at_once] * (tables // at_once) + [tables % at_once] * (tables % at_once > 0):
        drawn = np.tile(there.T.astype(bool), many)  # (things, tables × samples)
        start = np.arange(many)[:, None] * samples
        for _ in range(_ROUNDS):
            order = start + np.argsort(group + generator.random((many, samples)), axis=1)
            _trade(drawn, order[:, first].ravel(), order[:, first + 1].ravel(), generator)
        yield drawn.reshape(things, many, samples).transpose(1, 2, 0)


def _trade(drawn: np.ndarray, one: np.ndarray, other: np.ndarray, generator: np.random.Generator) -> None:
    """
    Of the things that only one row of a pair has, the first row gets as many as it had, by chance.

    drawn:  (things, rows), changed in place; one, other: the rows of the pairs, none of them twice.
    """
    mine = drawn.take(one, axis=1)
    differs = mine != drawn.take(other, axis=1)
    due, left = (those.sum(axis=0, dtype=np.float32) for those in (mine & differs, differs))
    for thing, is_open in enumerate(differs):
        pairs = np.flatnonzero(is_open)
        goes_first = generator.random(pairs.size, np.float32) < due[pairs] / left[pairs]
        drawn[thing, one[pairs]], drawn[thing, other[pairs]] = goes_first, ~goes_first
        due[pairs] -= goes_first
        left[pairs] -= 1


def _presence(samples: Units) -> tuple[list[tuple[str, str]], np.ndarray]:
    """Plants and parts, and in which samples each is; sterile samples are rows of nothing."""
    table, rows = samples.table, samples.rows(Selector())
    names: dict[tuple[str, str], int] = {}
    code = [names.setdefault(_name(samples, i), len(names)) for i in range(len(table.kinds))]
    there = np.zeros((len(table.sample_ids), len(names)), bool)
    if rows.size:
        held = rows[table.is_noted[rows]]
        there[table.row_sample[held], np.array(code, np.intp)[table.row_kind[held]]] = True
    return list(names), there


def _name(samples: Units, i: int) -> tuple[str, str]:
    kind = samples.table.kinds[i]
    return (str(kind.taxon or "/".join(kind.either) or kind.written), kind.part)


def _columns(samples: Units, names: Sequence[tuple[str, str]], of: Selector) -> list[int]:
    kinds = np.unique(samples.table.row_kind[samples.rows(of)])
    return sorted({names.index(_name(samples, int(i))) for i in kinds})
