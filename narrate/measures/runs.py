"""
Columns taken out of a table and reduced by runs of equal groups.

Replicates lie side by side in memory (the transpose is contiguous): taking a row's replicates is then one copy, and
adding two rows one pass. With a single replicate a row of numbers is reduced at once.
"""

from __future__ import annotations

import numpy as np

_MANY = 16
"""Replicates from which adding whole rows is faster than numpy's reduceat."""


def taken(values: np.ndarray, places: np.ndarray) -> np.ndarray:
    """
    Columns of `values` of shape (replicates, rows).

    >>> taken(np.array([[1.0, 2.0, 3.0]]), np.array([2, 0])).tolist()
    [[3.0, 1.0]]
    """
    return values.T[places].T


def blank(replicates: int, units: int, value: float = 0.0) -> np.ndarray:
    """Shape (replicates, units), laid out as `taken` lays it out."""
    return np.full((units, replicates), value).T


def starts(*groups: np.ndarray) -> np.ndarray:
    """
    Where runs begin in which all of the groups stay the same.

    >>> starts(np.array([4, 4, 7])).tolist(), starts(np.array([4, 4, 7]), np.array([1, 2, 2])).tolist()
    ([0, 2], [0, 1, 2])
    """
    changes = np.ones(groups[0].size, bool)
    np.not_equal(groups[0][1:], groups[0][:-1], out=changes[1:])
    for group in groups[1:]:
        changes[1:] |= group[1:] != group[:-1]
    return np.flatnonzero(changes)


def reduced(ufunc: np.ufunc, values: np.ndarray, at: np.ndarray) -> np.ndarray:
    """
    Runs of columns reduced to one column each.

    values:  (replicates, rows).
    at:      where each run begins.

    >>> reduced(np.add, np.array([[1.0, 2.0, 3.0]]), np.array([0, 2])).tolist()
    [[3.0, 3.0]]
    """
    if values.shape[0] == 1:
        return ufunc.reduceat(values[0], at)[None, :]
    if values.shape[0] < _MANY:
        return ufunc.reduceat(values, at, axis=1)
    by_row = np.ascontiguousarray(values.T)
    if at.size == len(by_row):
        return by_row.T
    # Most runs are of one row: those are copied at once, and only the longer ones are gone through.
    out = by_row[at]
    ends = np.append(at[1:], len(by_row))
    longer = np.flatnonzero(ends - at > 1)
    for i, first, end in zip(longer.tolist(), at[longer].tolist(), ends[longer].tolist(), strict=True):
        ufunc.reduce(by_row[first:end], axis=0, out=out[i])
    return out.T


def are_in_order(group: np.ndarray) -> bool:
    """
    Whether groups never fall.

    >>> are_in_order(np.array([0, 0, 3])), are_in_order(np.array([1, 0]))
    (True, False)
    """
    return group.size < 2 or not bool(np.any(group[1:] < group[:-1]))


def into_groups(ufunc: np.ufunc, values: np.ndarray, group: np.ndarray, out: np.ndarray) -> None:
    """
    Reduces columns of `values` by `group` into the columns of `out` that the groups number.

    >>> out = blank(1, 3)
    >>> into_groups(np.add, np.array([[1.0, 2.0, 3.0]]), np.array([2, 0, 2]), out)
    >>> out.tolist()
    [[2.0, 0.0, 4.0]]
    """
    if not group.size:
        return
    if not are_in_order(group):
        order = np.argsort(group, kind="stable")
        values, group = taken(values, order), group[order]
    at = starts(group)
    out.T[group[at]] = reduced(ufunc, values, at).T


def in_order(*keys: np.ndarray) -> np.ndarray:
    """
    Places of elements by the first key, then the next; elements that are alike stay in their order.

    keys:    whole numbers of zero or more. Small ones are sorted by counting, which is several times faster.

    >>> in_order(np.array([1, 0, 1]), np.array([5, 9, 2])).tolist()
    [1, 2, 0]
    """
    order: np.ndarray | None = None
    for key in reversed(keys):
        small = key.astype(np.uint16) if key.size and key.max() < 65536 else key
        if order is None:
            order = np.argsort(small, kind="stable")
        elif not are_in_order(small[order]):
            order = order[np.argsort(small[order], kind="stable")]
    assert order is not None, "at least one key is needed"
    return order
