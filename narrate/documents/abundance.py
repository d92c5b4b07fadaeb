"""Classes of abundance in the tables of the section: their signs as written, and the key to them."""

from __future__ import annotations

from collections.abc import Collection, Mapping

from narrate.documents.inline import literal
from narrate.model.counts import Count
from narrate.model.edition import Edition

Kind = tuple[str, str, str, str]
"""Context, taxon (or the name as written), part, condition."""


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
