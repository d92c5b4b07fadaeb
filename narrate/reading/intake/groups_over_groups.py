"""Lines such as 'Cultivated plants' at once over the sums of their groups: sums of those sums, and no finds."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import pairwise

from narrate.model.layouts import Role
from narrate.reading.intake.group_heads import names_a_group


def groups_over_groups(
    rows: Mapping[int, Role],
    labels: Mapping[int, str],
    columns: Sequence[int],
    value: Mapping[tuple[int, int], float],
) -> dict[int, str]:
    """
    The lines that sum up groups of groups, each with what is told of it.

    A line is one where its words are those of a group, the line below is a stored total, and in no sample is it less
    than that total, or than the finds from there to the next such line.

    >>> rows = {n: Role(name=name) for n, name in enumerate(("counts", "total", "counts", "counts"))}
    >>> labels = {0: "Plantes cultivées", 1: "Céréales", 2: "Hordeum", 3: "Panicum"}
    >>> value = {(0, 1): 9.0, (1, 1): 9.0, (2, 1): 4.0, (3, 1): 5.0}
    >>> groups_over_groups(rows, labels, [1], value)
    {0: "'Plantes cultivées' stands over sums and is the sum of all under them: taken for a stored total"}
    """
    lines = sorted(row for row, role in rows.items() if role.name in ("counts", "total"))
    behind = dict(pairwise(lines))
    heads = [
        row for row in lines
        if rows[row].name == "counts" and names_a_group(labels.get(row, ""))
        and row in behind and rows[behind[row]].name == "total"
    ]  # fmt: skip
    found = {}
    for n, row in enumerate(heads):
        end = heads[n + 1] if n + 1 < len(heads) else lines[-1] + 1
        under = [r for r in lines if row < r < end and rows[r].name == "counts"]
        sums = [(value.get((row, c), 0.0), sum(value.get((r, c), 0.0) for r in under)) for c in columns]
        below = [value.get((behind[row], c), 0.0) for c in columns]
        is_over = all(own >= max(added, total) for (own, added), total in zip(sums, below, strict=True))
        if not under or not is_over or not any(below):
            continue  # 'Indeterminate' before the grand total is a find
        is_sum = all(abs(own - added) < 1e-9 for own, added in sums)
        found[row] = (
            f"'{labels[row]}' stands over sums and is the sum of all under them: taken for a stored total"
            if is_sum
            else f"'{labels[row]}' stands over sums of groups and is more than all under them: taken for a stored "
            "total; write counts for it in the layout if it was counted"
        )  # fmt: skip
    return found
