"""Which signs the diggers and the laboratory noted of each context, as a fact that rules may ask for."""

from __future__ import annotations

from narrate.measures.count_table import kind_of
from narrate.measures.selection import is_meant
from narrate.model.ids import ContextId
from narrate.model.packs import Packs
from narrate.model.project import Project
from narrate.model.signs import signs_in, signs_of


def noted_of_contexts(project: Project, packs: Packs) -> dict[ContextId, tuple[str, ...]]:
    """
    Ids of the observations that stand in the descriptions and notes of each context, its samples and its old finds.

    What nobody noted is no sign that it was not there.
    """
    signs = signs_of(packs.observations)
    found: dict[ContextId, set[str]] = {context.id: set() for context in project.contexts}
    if signs.every is None:
        return {id: () for id in found}
    for context in project.contexts:
        for text in (context.description, context.note):
            found[context.id] |= {seen.id for seen, _, _ in signs_in(signs, text, "ground")}
    context_of = {sample.id: sample.context for sample in project.samples}
    for sample in project.samples:
        found[sample.context] |= {seen.id for seen, _, _ in signs_in(signs, sample.note, "ground")}
    ancient = frozenset(packs.words.preservations.get(project.preservation, ()))
    for row in project.counts:
        if not row.note or row.condition not in ancient:
            continue
        kind = kind_of(row)
        for seen, _, _ in signs_in(signs, row.note, "find"):
            if seen.of is None or is_meant(kind, seen.of, packs, ancient):
                found[context_of[row.sample]].add(seen.id)
    return {id: tuple(sorted(ids)) for id, ids in found.items()}
