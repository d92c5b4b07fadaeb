"""Signs in the tables of plants: their key, and classes of abundance as written."""

from __future__ import annotations

from collections.abc import Collection, Mapping

from narrate.documents.inline import literal
from narrate.model.counts import Count
from narrate.model.edition import Edition

Kind = tuple[str, str, str, str]
"""Context, taxon (or the name as written), part, condition."""


def key_of_signs(noted: str, *, has_states: bool) -> str:
    """Said below the first table of plants, for all of them; `has_states` where some cell holds more than one."""
    return (
        "Items as counted; nothing in the table is scaled up but the items per litre, which reckon with the unsorted "
        f"share. {noted}: noted as present and not counted. –: none found. cf.: all of them are 'cf.'. ‡: some of "
        "them are 'cf.' or one of two taxa. †: some of them come from a class that was sorted in part. "
        + ("Numbers parted by a semicolon are of different states of preservation. " if has_states else "")
        + "No row joins different plants or parts: a fragment of nutshell is no seed. Items without wood are pieces of "
        "every kind and no number of plants; they stand here as the base of the items per litre. Ubiquity: samples of "
        "the phase that hold it, sterile samples included; of wood, of the samples whose wood was looked at. Remains "
        "in other conditions, and modern seeds, stand in the counts by sample alone. "
    )


def signs_of_classes(edition: Edition) -> Mapping[Kind, tuple[str, ...]]:
    """The signs of each kind of find in each context, each once, in the order of the sheets."""
    context_of = {sample.id: sample.context for sample in edition.project.samples}
    found: dict[Kind, dict[str, None]] = {}
    for row in edition.project.counts:
        if row.count.scale:
            name = row.identification.taxon or row.identification.written
            kind = (context_of[row.sample], name, row.part, row.condition)
            found.setdefault(kind, {})[row.count.written.strip()] = None
    return {kind: tuple(signs) for kind, signs in found.items()}


def key_of_classes(edition: Edition, contexts: Collection[str]) -> str:
    """A sentence that says what each sign in the contexts stands for; empty where none was written."""
    context_of = {sample.id: sample.context for sample in edition.project.samples}
    found = {
        (row.count.scale, row.count.at_least or 0, row.count.at_most or 0, row.count.written): row.count
        for row in edition.project.counts
        if row.count.scale and context_of[row.sample] in contexts
    }
    if not found:
        return ""
    scales: dict[str, list[str]] = {}
    for (scale, *_), count in sorted(found.items(), key=lambda item: item[0]):
        scales.setdefault(scale, []).append(f"{literal(count.written.strip())}: {_ends(count)}")
    keys = ". ".join(f"Scale '{literal(scale)}': {'; '.join(signs)}" for scale, signs in scales.items())
    return f"Classes of abundance are signs and are never summed. {keys}. "


def _ends(count: Count) -> str:
    if count.at_least is None and count.at_most is None:
        return "no ends given"
    if count.at_most is None:
        return f"{count.at_least:,} items or more"
    if count.at_least is None:
        return f"up to {count.at_most:,} items"
    return f"{count.at_least:,} to {count.at_most:,} items"
