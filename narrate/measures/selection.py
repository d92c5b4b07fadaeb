"""Which kinds of rows a selector means, as masks over the kinds of a count table."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import cache

import numpy as np

from narrate.measures.count_table import CountTable, Kind
from narrate.model.ids import TaxonId
from narrate.model.packs import Packs
from narrate.model.plants import UNNAMED, Taxon, Window
from narrate.model.rules import Selector


def kinds_meant(selector: Selector, table: CountTable, packs: Packs, preservation: str) -> np.ndarray:
    """
    Mask over `table.kinds`: True where the selector means the kind.

    Keys narrow together, values of one key widen. `later_than_phase` is left to the caller, because it depends on
    the unit as well (see `earliest_years`).
    """
    ancient = frozenset(packs.words.preservations.get(preservation, ()))
    meant = [is_meant(kind, selector, packs, ancient) for kind in table.kinds]
    if selector.not_tag and any(meant):
        barred = may_be_tagged(table.kinds, frozenset(selector.not_tag), packs)
        meant = [
            is_meant and (kind.taxon or kind.either) not in barred
            for kind, is_meant in zip(table.kinds, meant, strict=True)
        ]
    return np.array(meant, dtype=bool)


def may_be_tagged(
    kinds: Sequence[Kind], tags: frozenset[str], packs: Packs
) -> frozenset[TaxonId | tuple[TaxonId, ...]]:
    """
    Names for either of several taxa that may stand for a plant found here which has one of the tags: 'cheno-am' where
    the chenopod of the crop was found is no name of a plant that is no crop.
    """
    found = [
        packs.taxa[name]
        for name in {n for k in kinds for n in ((k.taxon,) if k.taxon else k.either)}
        if name in packs.taxa
    ]
    tagged = [taxon for taxon in found if _tags(taxon, packs) & tags]
    if not tagged:
        return frozenset()
    names = {kind.taxon or kind.either for kind in kinds}
    return frozenset(
        name
        for name in names
        if any(lies_below(t.id, m, packs) for m in _members(name, packs) for t in tagged if t.id != name)
    )


def _members(name: TaxonId | tuple[TaxonId, ...], packs: Packs) -> tuple[TaxonId, ...]:
    """What a name for either of several taxa may be; empty for any other."""
    if isinstance(name, tuple):
        return name
    known = packs.taxa.get(name)
    return known.members if known is not None and known.rank == "group" else ()


def earliest_years(table: CountTable, packs: Packs) -> np.ndarray:
    """Earliest year at which the region has each kind's taxon; −infinity where it always had it or nobody knows."""
    years = []
    for kind in table.kinds:
        known = [taxon.earliest for taxon in _possible(kind, packs)]
        is_late = bool(known) and all(year is not None for year in known)
        years.append(float(min(year for year in known if year is not None)) if is_late else -np.inf)
    return np.array(years, float)


def in_contexts(table: CountTable, selector: Selector, packs: Packs) -> np.ndarray:
    """True for each sample from a context that the selector asks for, by its kind and by what is recorded of it."""
    kinds = packs.words.context_kinds
    if not table.context_kind:
        return np.full(len(table.sample_ids), not selector.asks_for_contexts)
    recorded = table.recorded or (("unknown", "unknown"),) * len(table.context_kind)
    contexts = list(zip(table.context_kind, recorded, strict=True))
    answers = {}
    for name, (security, deposit) in set(contexts):
        kind = kinds.get(name)
        traits = set(kind.traits) if kind is not None else set()
        answers[name, (security, deposit)] = (
            (not selector.context_kind or name in selector.context_kind)
            and (not selector.context_trait or bool(traits & set(selector.context_trait)))
            and not traits & set(selector.not_context_trait)
            and security not in selector.not_security
            and deposit not in selector.not_deposit
        )
    return np.array([answers[context] for context in contexts], bool)


def lies_below(taxon: TaxonId, name: str, packs: Packs) -> bool:
    """
    True if the taxon is `name` or lies below it: a species below its genus and family, a member below its group.

    A group lies below `name` only if all its members do.
    """
    if taxon == name:
        return True
    known = packs.taxa.get(taxon)
    if known is None:
        return False
    if name in (known.genus, known.family):
        return known.rank != "family" or name == taxon
    group = packs.taxa.get(TaxonId(name))
    if group is not None and group.members and any(lies_below(taxon, member, packs) for member in group.members):
        return True
    return bool(known.members) and all(lies_below(member, name, packs) for member in known.members)


@cache
def named(of: Selector) -> Selector:
    """
    The same without what nobody could name (tag `indeterminate`): it may be of a taxon that is there already.

    >>> named(Selector(role=("propagule",))).not_tag
    ('indeterminate',)
    """
    return replace(of, not_tag=(*of.not_tag, "indeterminate"))


NAMED_WOOD = Selector(role=("wood",), not_taxon=UNNAMED)
"""Wood that somebody looked at and named, were it as hardwood."""


@cache
def asks_for_named_wood(of: Selector, wood: frozenset[str]) -> bool:
    """
    Whether a selector means wood by what it is: which a sample can only hold if its wood was looked at.

    wood: the parts whose role is wood.

    >>> asks_for_named_wood(Selector(taxon=("Pinus",), role=("wood",)), frozenset({"wood"}))
    True
    >>> asks_for_named_wood(Selector(role=("wood",)), frozenset({"wood"}))
    False
    >>> asks_for_named_wood(Selector(taxon=("Juniperus",), part=("wood", "bark")), frozenset({"wood"}))
    False
    """
    is_of_wood = of.role == ("wood",) or (bool(of.part) and set(of.part) <= wood)
    return is_of_wood and bool(of.taxon or of.family or of.tag or of.status or of.use or of.habit)


def windows_of(taxon: Taxon, part: str) -> tuple[Window, ...]:
    """The windows that the pack gives for that part of the taxon."""
    return tuple(window for window in taxon.windows if window.part == part)


def _possible(kind: Kind, packs: Packs) -> tuple[Taxon, ...]:
    """The taxa that a kind may be: one for a plain name, several for 'A/B'; empty if nobody knows."""
    names = (kind.taxon,) if kind.taxon is not None else kind.either
    found = tuple(packs.taxa[name] for name in names if name in packs.taxa)
    return found if len(found) == len(names) else ()


def is_meant(kind: Kind, wanted: Selector, packs: Packs, ancient: frozenset[str]) -> bool:
    """Whether a selector means a kind of row by itself; ancient: conditions that are meant where none is asked for."""
    if not _has_right_state(kind, wanted, ancient):
        return False
    if wanted.part and kind.part not in wanted.part:
        return False
    if wanted.role:
        part = packs.words.parts.get(kind.part)  # type: ignore[call-overload]
        if part is None or not part.roles.intersection(wanted.role):
            return False
    if wanted.not_role:
        part = packs.words.parts.get(kind.part)  # type: ignore[call-overload]
        if part is not None and part.roles.intersection(wanted.not_role):
            return False
    return _has_right_taxon(kind, wanted, packs)


def _has_right_state(kind: Kind, wanted: Selector, ancient: frozenset[str]) -> bool:
    conditions = wanted.condition or (() if wanted.any_condition else ancient)
    if conditions and kind.condition not in conditions:
        return False
    if wanted.completeness and kind.completeness not in wanted.completeness:
        return False
    if wanted.fraction and kind.fraction not in wanted.fraction:
        return False
    return not wanted.is_certain or kind.is_certain


def _has_right_taxon(kind: Kind, wanted: Selector, packs: Packs) -> bool:
    asks = any(
        (
            *(wanted.taxon, wanted.family, wanted.tag, wanted.use, wanted.status, wanted.field_weed),
            *(wanted.ripens_within, wanted.ripens_in, wanted.keeping, wanted.later_than_phase),
            *(wanted.sow, wanted.soil, wanted.height, wanted.seed, wanted.life, wanted.habit),
        )
    )
    taxa = _possible(kind, packs)
    if not taxa:
        return not asks
    if wanted.not_taxon and any(lies_below(t.id, name, packs) for t in taxa for name in wanted.not_taxon):
        return False
    if wanted.not_tag and any(_tags(t, packs) & set(wanted.not_tag) for t in taxa):
        return False
    return all(_answers(taxon, kind.part, wanted, packs) for taxon in taxa)


def _answers(taxon: Taxon, part: str, wanted: Selector, packs: Packs) -> bool:
    if wanted.taxon and not any(lies_below(taxon.id, name, packs) for name in wanted.taxon):
        return False
    if wanted.family and taxon.family not in wanted.family:
        return False
    if wanted.status and taxon.status not in wanted.status:
        return False
    if wanted.tag and not _tags(taxon, packs).intersection(wanted.tag):
        return False
    if wanted.field_weed and not _every(taxon, packs, lambda t: t.ecology.field_weed in wanted.field_weed):
        return False
    if any((wanted.sow, wanted.soil, wanted.height, wanted.seed, wanted.life, wanted.habit)):
        if not _every(taxon, packs, lambda t: _grows(t, wanted)):
            return False
    if wanted.use and not _every(taxon, packs, lambda t: _has_use(t, part, wanted.use)):
        return False
    if wanted.ripens_within or wanted.ripens_in or wanted.keeping:
        return _every(taxon, packs, lambda t: _ripens(t, part, wanted))
    return True


def _every(taxon: Taxon, packs: Packs, question) -> bool:  # type: ignore[no-untyped-def]
    """A group answers by itself if it can, else only if all its members do."""
    if question(taxon):
        return True
    members = [packs.taxa[m] for m in taxon.members if m in packs.taxa]
    return bool(members) and len(members) == len(taxon.members) and all(question(m) for m in members)


def _tags(taxon: Taxon, packs: Packs) -> frozenset[str]:
    """A taxon's own tags, and for a group those that all its members share."""
    members = [packs.taxa[m].tags for m in taxon.members if m in packs.taxa]
    shared = frozenset.intersection(*members) if members and len(members) == len(taxon.members) else frozenset()
    return taxon.tags | shared


def _grows(taxon: Taxon, wanted: Selector) -> bool:
    """Whether a taxon's ecology and habit answer; what the pack does not say answers to nothing."""
    ecology = taxon.ecology
    return (
        (not wanted.sow or ecology.sow in wanted.sow)
        and (not wanted.soil or bool(set(ecology.soil) & set(wanted.soil)))
        and (not wanted.height or ecology.height in wanted.height)
        and (not wanted.seed or any(set(sort.split()) <= set(ecology.seed) for sort in wanted.seed))
        and (not wanted.life or ecology.life in wanted.life)
        and (not wanted.habit or taxon.habit in wanted.habit)
    )


def _has_use(taxon: Taxon, part: str, wanted: tuple[str, ...]) -> bool:
    return any(use.use in wanted and use.part in (None, part) for use in taxon.uses)


def _ripens(taxon: Taxon, part: str, wanted: Selector) -> bool:
    """Sources may disagree: a window counts as within only if every source's window for the part is."""
    windows = windows_of(taxon, part)
    if not windows:
        return False
    if wanted.keeping and not any(set(window.keeping) & set(wanted.keeping) for window in windows):
        return False
    months = set(wanted.ripens_within)
    if months and not all(set(window.months) <= months for window in windows):
        return False
    touching = set(wanted.ripens_in)
    return not touching or any(set(window.months) & touching for window in windows)
