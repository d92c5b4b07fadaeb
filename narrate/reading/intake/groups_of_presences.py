"""In tables of presence, lines such as 'rice_and_millets' and 'wild nuts' that are drawn from others: no finds."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace

from narrate.model.layouts import Role, Table
from narrate.reading.intake.evidence import Look
from narrate.reading.intake.group_heads import names_a_group
from narrate.reading.intake.singulars import one_of

_LEAST_SAMPLES = 5
_KINDS = frozenset(("nut", "fruit", "cereal", "pulse", "millet", "crop"))
"""Kinds of plants by the tags of the packs."""


def without_groups_of_presences(look: Look, table: Table) -> tuple[Table, list[str]]:
    """The table of 0 and 1 with its drawn lines as worked out, and what is told of each."""
    across = table.has_samples_across
    taxa, samples = (table.rows, table.columns) if across else (table.columns, table.rows)
    heads = [n for n, role in samples.items() if "taxon" in role.names]
    counted = [n for n, role in samples.items() if role.name == "counts"]
    lines = [n for n, role in taxa.items() if role.name == "counts"]
    if table.shape != "crossed" or not heads or len(counted) < _LEAST_SAMPLES:
        return table, []
    labels = {n: _plain(look.text(*((n, heads[0]) if across else (heads[0], n)))) for n in lines}
    texts = {(n, s): look.text(*((n, s) if across else (s, n))) for n in lines for s in counted}
    held = {n: frozenset(s for s in counted if texts[n, s].startswith("1")) for n in lines}
    tags = {n: _tags(look, labels[n]) for n in lines}
    drawn = {n: of for n in lines if (of := _drawn_from(n, labels, tags, held))}
    roles = {**taxa, **dict.fromkeys(drawn, Role(name="derived"))}
    told = [
        f"'{labels[n]}' is present wherever one of {', '.join(labels[m] for m in of)} is, and nowhere else: taken as "
        "drawn from those, and for no find; write counts for it in the layout if it is one"
        for n, of in drawn.items()
    ]
    return (replace(table, rows=roles) if across else replace(table, columns=roles)), told


def _tags(look: Look, label: str) -> frozenset[str]:
    """The tags of the taxon that a name stands for, and of one that nobody named further the kind in its words."""
    id = look.names.read(label).identification.taxon
    taxon = look.names.packs.taxa.get(id) if id is not None else None
    return (taxon.tags if taxon is not None else frozenset()) | (_KINDS & {one_of(w) for w in label.lower().split()})


def _plain(text: str) -> str:
    return " ".join(text.replace("_", " ").split())


def _drawn_from(
    line: int, names: Mapping[int, str], tags: Mapping[int, frozenset[str]], held: Mapping[int, frozenset[int]]
) -> tuple[int, ...]:
    """
    The lines that one is drawn from: those that its words name, or all others of the kind that it names; () for none.

    >>> names = {0: "rice", 1: "acorn", 2: "hazelnut", 3: "rice and acorns", 4: "wild nuts"}
    >>> held = {0: {7}, 1: {8}, 2: {9}, 3: {7, 8}, 4: {8, 9}}
    >>> tags = {0: {"cereal"}, 1: {"nut"}, 2: {"nut"}}
    >>> [_drawn_from(n, names, tags, held) for n in (2, 3, 4)]
    [(), (0, 1), (1, 2)]
    """
    others = [n for n in names if n != line]
    words = [one_of(word) for word in re.split(r"\s+(?:and|or)\s+|\s*[&+/]\s*", names[line].lower())]
    named = tuple(n for n in others if one_of(names[n].lower()) in words)
    kinds = _KINDS & {one_of(word) for word in names[line].lower().split()} if names_a_group(names[line]) else set()
    of_kind = tuple(n for n in others if kinds & tags.get(n, frozenset()))
    own = held[line]
    if own and len(named) == len(words) > 1 and own == frozenset().union(*(held[n] for n in named)):
        return named
    members = [held[n] for n in of_kind if held[n]]
    is_sum = len(members) > 1 and own == frozenset().union(*members) and all(member != own for member in members)
    return of_kind if is_sum else ()
