"""Words that rules ask for and that must be known, or the rule would silently never hold."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from narrate.model.packs import Packs
from narrate.model.rules import Selector
from narrate.model.stratigraphy import DEPOSITS, SECURITIES


def fact_values(packs: Packs) -> Mapping[str, frozenset[str]]:
    """Fact -> what records may say of it; facts of which nothing is listed take any word."""
    kinds = packs.words.context_kinds.values()
    return {
        "context_kind": frozenset(kind.id for kind in kinds),
        "trait": frozenset(trait for kind in kinds for trait in kind.traits),
        "deposit": frozenset(DEPOSITS),
        "security": frozenset(SECURITIES),
        "preservation": frozenset(packs.words.preservations),
        "heavy_fraction": frozenset(("sorted", "not sorted")),
        "method": frozenset(packs.words.methods),
        "noted": frozenset(observation.id for observation in packs.observations),
    }


def plant_words(selector: Selector, packs: Packs) -> tuple[tuple[str, Iterable[str], frozenset[str]], ...]:
    """What a selector asks of uses and soils, and what the plants of the packs in use have."""
    taxa = packs.taxa.values()
    return (
        ("use", selector.use, frozenset(use.use for taxon in taxa for use in taxon.uses)),
        ("soil", selector.soil, frozenset(soil for taxon in taxa for soil in taxon.ecology.soil)),
    )
