"""
Names that may stand for a plant which is there under a closer one: the genus beside its species, 'A/B' beside A.

Such a name is no further kind. It counts as one only where nothing of the same part lies below it, so that a number of
taxa is the least that there must have been. Stems, leaves and roots may be of any plant of the name, whichever part of
it was named more closely: stems of grass beside maygrass grains may be maygrass.

Source: common practice, no source (the number is that of taxa which cannot be one another).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np

from narrate.measures.count_table import Kind
from narrate.measures.runs import blank, into_groups, taken
from narrate.measures.selection import lies_below
from narrate.model.ids import PartId, TaxonId
from narrate.model.packs import Packs

WiderNames = Mapping[int, np.ndarray]
"""By the number of a kind with a wider name: mask over the kinds below it, of the same part or of any but wood."""


def wider_names(kinds: tuple[Kind, ...], packs: Packs) -> WiderNames:
    """The kinds of a table with a name that others of them lie below: of the same part, or for a stem of any."""
    names = [(k.taxon,) if k.taxon is not None else k.either for k in kinds]
    wide = {name for name in set(names) if name and _is_wide(name, packs)}
    if not wide:
        return {}
    every = [name for name in set(names) if name]
    closer = {
        name: {other for other in _of_one_family(name, every, packs) if is_closer(other, name, packs)} for name in wide
    }
    parts = np.array([str(k.part) for k in kinds], object)
    roles = [known.roles if (known := packs.words.parts.get(PartId(k.part))) else frozenset() for k in kinds]
    is_no_wood = np.array(["wood" not in own for own in roles], bool)
    found = {}
    for number, name in enumerate(names):
        if closer.get(name):
            may_be = is_no_wood if "vegetative" in roles[number] else parts == parts[number]
            below = np.array([other in closer[name] for other in names], bool) & may_be
            if below.any():
                found[number] = below
    return found


def _of_one_family(
    name: tuple[TaxonId, ...], every: Sequence[tuple[TaxonId, ...]], packs: Packs
) -> Sequence[tuple[TaxonId, ...]]:
    """Names that could lie below a genus or family: those of its family; any could lie below a name with members."""
    known = packs.taxa.get(name[0])
    if len(name) > 1 or known is None or known.members:
        return every
    return [
        other for other in every if (taxon := packs.taxa.get(other[0])) is not None and taxon.family == known.family
    ]


def either_found(kinds: Sequence[Kind], packs: Packs) -> tuple[tuple[str, str], ...]:
    """Each name for either of several taxa, with every closer name that the table has."""
    names = {(k.taxon,) if k.taxon is not None else k.either for k in kinds} - {()}
    either = [n for n in names if len(n) > 1 or ((taxon := packs.taxa.get(n[0])) and taxon.rank == "group")]
    return tuple(sorted((str(name), str(other)) for name in either for other in names if is_closer(other, name, packs)))


def is_closer(name: tuple[TaxonId, ...], than: tuple[TaxonId, ...], packs: Packs) -> bool:
    """Whether a name, of one taxon or of either of several, can only be of what the other means, and says more."""
    return name != than and _is_within(name, than, packs) and not _is_within(than, name, packs)


def _is_within(name: tuple[TaxonId, ...], other: tuple[TaxonId, ...], packs: Packs) -> bool:
    return bool(name) and all(any(lies_below(taxon, wider, packs) for wider in other) for taxon in name)


def _is_wide(name: tuple[TaxonId, ...], packs: Packs) -> bool:
    if len(name) > 1:
        return True
    known = packs.taxa.get(name[0])
    return known is not None and (known.rank != "species" or bool(known.members))


def covered(
    kind_of_row: np.ndarray, unit_of_row: np.ndarray, is_there: np.ndarray, units: int, wider: WiderNames
) -> np.ndarray | None:
    """
    (replicates, rows): True where a row's name is wider than one that is there in the same unit; None where none is.

    is_there:  (replicates, rows): where a row says that the thing was there.
    """
    out: np.ndarray | None = None
    for number in np.unique(kind_of_row).tolist():
        if number not in wider:
            continue
        below = wider[number][kind_of_row]
        if not below.any():
            continue
        found = blank(is_there.shape[0], units)
        into_groups(np.logical_or, taken(is_there, np.flatnonzero(below)), unit_of_row[below], found)
        if out is None:
            out = np.zeros(is_there.shape[::-1], bool).T
        own = np.flatnonzero(kind_of_row == number)
        out[:, own] = taken(found, unit_of_row[own]) > 0
    return out
