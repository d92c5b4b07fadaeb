"""How often claims at each grade were right on digs whose truth is known."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

import numpy as np

from narrate.measures.intervals import clopper_pearson
from narrate.model.claims import GRADE_NAMES
from narrate.model.track_record import Hits, Line, Missed
from narrate.trials.judged import Outcome
from narrate.trials.simulate import Dug
from narrate.trials.worlds import DEPOSITS


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """Claims in force, one entry a claim: what was said, and whether it was true."""

    statement: np.ndarray
    """Statement ids as text."""
    grade: np.ndarray
    """Index in GRADE_NAMES, 1 to 4."""
    support: np.ndarray
    is_true: np.ndarray
    items: np.ndarray
    litres: np.ndarray
    share: np.ndarray
    deposit: np.ndarray
    contexts: int
    """Contexts judged, with and without claims."""
    missed: Mapping[str, tuple[int, int]]
    """Statement -> contexts of which it is true and that hold five items of it or more; those of them with no claim."""


def told(runs: Iterable[tuple[Dug, Mapping[str, Outcome]]]) -> Told:
    """All claims about statements whose truth the model knows; others are no part of the record."""
    columns: dict[str, list[np.ndarray]] = {
        name: [] for name in ("statement", "grade", "support", "is_true", "items", "litres", "share", "deposit")
    }
    missed: dict[str, list[int]] = {}
    contexts = 0
    for dug, outcomes in runs:
        for id in sorted(set(outcomes) & set(dug.truth)):
            found, truth = outcomes[id], dug.truth[id]
            where = np.flatnonzero(found.grade > 0)
            columns["statement"].append(np.full(where.size, id))
            columns["grade"].append(found.grade[where])
            columns["support"].append(found.weighed[where])
            columns["is_true"].append(truth[where])
            columns["items"].append(dug.items[where])
            columns["litres"].append(dug.litres[where])
            columns["share"].append(dug.share[where])
            columns["deposit"].append(dug.deposits.deposit[where])
            visible = truth & (dug.left[id] >= 5)
            tally = missed.setdefault(id, [0, 0])
            tally[0] += int(visible.sum())
            tally[1] += int((visible & (found.grade == 0)).sum())
        contexts += dug.truth["integrity.disturbed"].size
    joined = {name: np.concatenate(parts) for name, parts in columns.items()}
    return Told(**joined, contexts=contexts, missed={id: (a, b) for id, (a, b) in missed.items()})  # type: ignore[arg-type]


def hits(is_true: np.ndarray) -> Hits:
    """
    Right claims of some, with the exact interval of Clopper and Pearson.

    >>> found = hits(np.array([True] * 9 + [False]))
    >>> found.right, round(found.rate, 2)
    (9, 0.9)
    """
    n, right = int(is_true.size), int(is_true.sum())
    if n == 0:
        return Hits(claims=0, right=0, low=float("nan"), high=float("nan"))
    low, high = clopper_pearson(np.array([right]), np.array([n]))
    return Hits(claims=n, right=right, low=float(np.ravel(low)[0]), high=float(np.ravel(high)[0]))


def by_grade(found: Told, table: str = "grade", name: str = "") -> tuple[Line, ...]:
    """
    How often claims at each grade were right.

    Only readings of the past count. Claims about the state of a deposit (integrity) repeat what the records say, and
    would flatter every grade.
    """
    is_reading = _is_reading(found)
    return tuple(
        Line(table=table, name=name, grade=grade, hits=hits(found.is_true[is_reading & (found.grade == i)]))
        for i, grade in enumerate(GRADE_NAMES)
        if i > 0
    )


def by_statement(found: Told) -> tuple[Line, ...]:
    """How often claims of each statement at each grade were right; only what was claimed at all."""
    pairs = sorted(set(zip(found.statement.tolist(), found.grade.tolist(), strict=True)))
    return tuple(
        Line(
            table="statement",
            name=id,
            grade=GRADE_NAMES[grade],
            hits=hits(found.is_true[(found.statement == id) & (found.grade == grade)]),
        )
        for id, grade in pairs
    )


_ITEMS = (
    ("fewer than 10", 0, 10),
    ("10 to 29", 10, 30),
    ("30 to 99", 30, 100),
    ("100 to 299", 100, 300),
    ("300 or more", 300, np.inf),
)
_LITRES = (("less than 10", 0, 10), ("10 to 29", 10, 30), ("30 or more", 30, np.inf))
_SORTED = (("an eighth to a quarter", 0, 0.3), ("a half", 0.3, 0.9), ("all", 0.9, np.inf))
_SUPPORT = tuple((f"{low:.2f} to {low + 0.05:.2f}", low, low + 0.05) for low in (0.5 + 0.05 * i for i in range(10)))


def by_circumstance(found: Told) -> tuple[Line, ...]:
    """How the record changes with items, litres, the share sorted, the true kind of deposit, and the support itself."""
    lines = []
    is_reading = _is_reading(found)
    for table, values, bands in (
        ("items", found.items, _ITEMS),
        ("litres", found.litres, _LITRES),
        ("sorted", found.share, _SORTED),
        ("support", found.support, _SUPPORT),
    ):
        for name, low, high in bands:
            within = is_reading & (values >= low) & (values < high)
            lines.append(Line(table=table, name=name, grade="", hits=hits(found.is_true[within])))
    for i, deposit in enumerate(DEPOSITS):
        lines.append(
            Line(table="deposit", name=deposit, grade="", hits=hits(found.is_true[is_reading & (found.deposit == i)]))
        )
    return tuple(lines)


def _is_reading(found: Told) -> np.ndarray:
    return ~np.char.startswith(found.statement.astype(str), "integrity.")


def missed_of(found: Told) -> tuple[Missed, ...]:
    return tuple(Missed(statement=id, there=a, without_claim=b) for id, (a, b) in sorted(found.missed.items()))
