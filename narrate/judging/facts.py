"""What the records say of units, as far as all their members agree."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from narrate.judging.noted import noted_of_contexts
from narrate.measures.units import Units
from narrate.model.packs import Packs
from narrate.model.project import Project
from narrate.model.rules import Fact
from narrate.problems import Place

HOLDS, CANNOT_TELL, FAILS = 1, 0, -1
"""Codes of the three verdicts inside this room."""

FACTS = ("context_kind", "trait", "deposit", "security", "preservation", "heavy_fraction", "method", "region", "noted")
"""What a rule may ask of the records."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Recorded:
    """The answers of one sample's records to every fact; an empty tuple means that the record does not say."""

    values: dict[str, tuple[str, ...]]
    place: Place
    light_mesh_mm: float | None = None
    """Mesh on which the light fraction was caught; None: not recorded."""


def recorded(project: Project, packs: Packs) -> tuple[Recorded, ...]:
    """One entry a sample, in the order of the project's samples."""
    contexts = {context.id: context for context in project.contexts}
    noted = noted_of_contexts(project, packs)
    found = []
    for sample in project.samples:
        context = contexts[sample.context]
        kind = packs.words.context_kinds.get(context.kind)
        heavy = sample.heavy_fraction.sorted if sample.heavy_fraction else None
        values = {
            "context_kind": (context.kind,),
            "trait": tuple(sorted(kind.traits)) if kind else (),
            "deposit": _unless_unknown(context.deposit),
            "security": _unless_unknown(context.security),
            "preservation": _unless_unknown(project.preservation),
            "heavy_fraction": () if heavy is None else ("sorted" if heavy else "not sorted",),
            "method": (sample.method,) if sample.method else (),
            "region": packs.regions,
            "noted": noted[context.id],
        }
        found.append(Recorded(values=values, place=context.place, light_mesh_mm=sample.mesh_mm.get("light")))
    return tuple(found)


def fact_verdicts(fact: Fact, units: Units, records: tuple[Recorded, ...]) -> np.ndarray:
    """
    Codes of shape (1, units): what all samples of the unit agree on; mixed or unknown cannot tell.

    A kind of context that has none of the traits asked for fails; a kind without any trait known cannot tell. What is
    asked of notes never fails where it was not noted: nobody writes down all that there was.
    """
    said = [record.values.get(fact.fact, ()) for record in records]
    # Thousands of records say one of a dozen things: each is answered once.
    answers = {says: _answer(fact, says) for says in set(said)}
    codes = np.array([answers[says] for says in said], dtype=np.int8)
    return units.agreed(codes, CANNOT_TELL).astype(np.int8)


def fact_text(fact: Fact, units: Units, unit: int, records: tuple[Recorded, ...]) -> str:
    """What the records say, for people: 'primary', 'hearth and pit', 'not recorded'."""
    said = sorted({value for sample in units.samples_of(unit) for value in records[sample].values.get(fact.fact, ())})
    if fact.fact == "noted":
        said = [value for value in said if value in (*fact.is_any_of, *fact.is_none_of)]
        return " and ".join(said) if said else "not noted"
    return " and ".join(said) if said else "not recorded"


def _unless_unknown(value: str) -> tuple[str, ...]:
    return () if value in ("", "unknown") else (value,)


def _answer(fact: Fact, said: tuple[str, ...]) -> int:
    if fact.fact == "noted":
        if set(said) & set(fact.is_none_of):
            return FAILS
        return HOLDS if not fact.is_any_of or set(said) & set(fact.is_any_of) else CANNOT_TELL
    if not said and fact.fact != "trait":
        return CANNOT_TELL
    if fact.is_any_of and not set(said) & set(fact.is_any_of):
        return FAILS
    if fact.is_none_of and set(said) & set(fact.is_none_of):
        return FAILS
    return HOLDS
