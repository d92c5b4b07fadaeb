"""What a sentence rests on, in figures that a person recognises, so that a change can be told."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from narrate.model.claims import GRADE_NAMES, Claim, Claims
from narrate.model.findings import Findings, SubjectFindings, Tally
from narrate.model.ids import Subject
from narrate.model.measurement import Measurement
from narrate.model.packs import Packs


@dataclass(frozen=True, slots=True, kw_only=True)
class Ground:
    """Everything that references may lead to, for one edition."""

    claims: Claims
    findings: Findings
    packs: Packs
    subject_of: Mapping[str, Subject]
    """The word before the slash of a reference -> its subject."""


Figures = Mapping[str, str]
"""What is looked at -> what it says, both in words: 'maize cupules' -> '12', 'Maize cobs as fuel' -> 'supports'."""


def figures(refs: Sequence[str], ground: Ground) -> dict[str, str]:
    """The figures and grades behind some references; references that lead nowhere give nothing."""
    found: dict[str, str] = {}
    for ref in refs:
        claim = ground.claims.by_id.get(ref)
        if claim is not None:
            found.update(_of_claim(claim, ground.packs))
            continue
        key, _, what = ref.partition("/")
        subject = ground.subject_of.get(key)
        held = ground.findings.subjects.get(subject) if subject is not None else None
        if held is not None:
            found.update(_of_find(ref, what, held, ground.packs))
    return found


def fingerprint(figures_behind: Figures) -> str:
    """A short mark that changes exactly when a figure or a grade changes."""
    text = json.dumps(sorted(figures_behind.items()), ensure_ascii=False)
    return hashlib.blake2b(text.encode("utf-8"), digest_size=6).hexdigest()


def differences(before: Figures, now: Figures) -> tuple[str, ...]:
    """
    What changed between two states, in words.

    >>> differences({"maize cupules": "12", "Maize cobs as fuel": "supports"},
    ...             {"maize cupules": "19", "Maize cobs as fuel": "suggests"})
    ("'Maize cobs as fuel' fell from supports to suggests", 'maize cupules: 12, now 19')
    """
    told = []
    for name in sorted(before.keys() | now.keys()):
        old, new = before.get(name), now.get(name)
        if old == new:
            continue
        if old is None:
            told.append(f"{name}: new, {new}")
        elif new is None:
            told.append(f"{name}: {old}, now not there")
        elif old in GRADE_NAMES and new in GRADE_NAMES:
            went = "fell" if GRADE_NAMES.index(new) < GRADE_NAMES.index(old) else "rose"  # type: ignore[arg-type]
            told.append(f"'{name}' {went} from {old} to {new}")
        else:
            told.append(f"{name}: {old}, now {new}")
    return tuple(told)


def _of_claim(claim: Claim, packs: Packs) -> dict[str, str]:
    statement = packs.statements.get(claim.statement)
    title = statement.title if statement else claim.statement
    found = {title: claim.grade}
    for argument in claim.arguments:
        if argument.verdict != "holds":
            continue
        for evidence in argument.evidence:
            if evidence.name and evidence.value is not None:
                found[f"{title}, {evidence.name.replace('_', ' ')}"] = evidence.text
    return found


def _of_find(ref: str, what: str, held: SubjectFindings, packs: Packs) -> dict[str, str]:
    kind, _, name = what.partition(".")
    if kind == "measure" and name in held.measurements:
        titles = {shown.name: shown.title for shown in packs.shown}
        return {titles.get(name, name): _measured(held.measurements[name])}
    tally = next((t for t in held.tallies if t.ref == ref), None)
    return {_tally_name(tally, packs): str(tally.counted)} if tally is not None else {}


def _measured(measurement: Measurement) -> str:
    return "no value" if measurement.value is None else f"{measurement.value:.3g}"


def _tally_name(tally: Tally, packs: Packs) -> str:
    taxon = packs.taxa.get(tally.taxon) if tally.taxon is not None else None
    name = (taxon.trade_name or taxon.name) if taxon else ""
    part = packs.words.parts.get(tally.part)
    return f"{name or tally.written} {part.plural if part else tally.part}".strip()
