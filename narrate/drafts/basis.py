"""What a sentence rests on, in figures that a person recognises, so that a change can be told."""

from __future__ import annotations

import hashlib
import json
import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass

from narrate.model.claims import GRADE_NAMES, Claim, Claims
from narrate.model.findings import Findings, SubjectFindings, Tally
from narrate.model.ids import Subject
from narrate.model.measurement import Measurement
from narrate.model.packs import Packs

_POWER_OF_TEN = re.compile(r"-?\d(?:\.\d+)?e\+\d+")


@dataclass(frozen=True, slots=True, kw_only=True)
class Ground:
    """Everything that references may lead to, for one edition."""

    claims: Claims
    findings: Findings
    packs: Packs
    subject_of: Mapping[str, Subject]
    """The word before the slash of a reference -> its subject."""


Figures = Mapping[str, str]
"""
What is looked at -> what it says: 'C12/found.zea-mays.cupule' -> '12', 'C12/fuel.maize-cob' -> 'supports',
'C12/fuel.maize-cob#kernels_per_cupule' -> '0.12'. Named by references, so that other words of narrate change nothing.
"""


def figures(refs: Iterable[str], ground: Ground) -> dict[str, str]:
    """The figures and grades behind some references; references that lead nowhere give nothing."""
    found: dict[str, str] = {}
    for ref in refs:
        claim = ground.claims.by_id.get(ref)
        if claim is not None:
            found.update(_of_claim(claim))
            continue
        held, what = _held(ref, ground)
        if held is None:
            continue
        kind, _, name = what.partition(".")
        tally = _tally(ref, held)
        if kind == "measure" and name in held.measurements:
            found[ref] = _measured(held.measurements[name])
        elif tally is not None:
            found[ref] = str(tally.counted)
    return found


def as_they_stand(then: Figures, ground: Ground) -> dict[str, str]:
    """What the same things say now."""
    return figures(dict.fromkeys(key.partition("#")[0] for key in then), ground)


def claims_in_force(subject: Subject, ground: Ground) -> dict[str, str]:
    """Grades of all that holds of a subject, told or not."""
    return {claim.id: claim.grade for claim in ground.claims.holding(subject)}


def name_of(key: str, ground: Ground) -> str:
    """A figure as a person calls it: 'maize cupules', 'Maize cobs as fuel'; the reference where it leads nowhere."""
    ref, _, evidence = key.partition("#")
    claim = ground.claims.by_id.get(ref)
    if claim is not None:
        statement = ground.packs.statements.get(claim.statement)
        title = statement.title if statement else claim.statement
        return f"{evidence.replace('_', ' ')} behind '{title}'" if evidence else title
    held, what = _held(ref, ground)
    if held is not None:
        tally = _tally(ref, held)
        if tally is not None:
            return _tally_name(tally, ground.packs)
        titles = {f"measure.{shown.name}": shown.title for shown in ground.packs.shown}
        return titles.get(what, ref)
    return key


def fingerprint(figures_behind: Figures) -> str:
    """A short mark that changes exactly when a figure or a grade changes."""
    text = json.dumps(sorted(figures_behind.items()), ensure_ascii=False)
    return hashlib.blake2b(text.encode("utf-8"), digest_size=6).hexdigest()


def differences(before: Figures, now: Figures, name: Callable[[str], str] = str) -> tuple[str, ...]:
    """
    What changed between two states, in words.

    >>> differences({"maize cupules": "12", "Maize cobs as fuel": "supports"},
    ...             {"maize cupules": "19", "Maize cobs as fuel": "suggests"})
    ("'Maize cobs as fuel' fell from supports to suggests", 'maize cupules: 12, now 19')
    """
    told = []
    for key in sorted(before.keys() | now.keys()):
        old, new = before.get(key), now.get(key)
        if old == new:
            continue
        if old is None:
            told.append(f"{name(key)}: new, {_written_out(new or '')}")
        elif new is None:
            told.append(f"{name(key)}: {_written_out(old)}, now not there")
        elif old in GRADE_NAMES and new in GRADE_NAMES:
            went = "fell" if GRADE_NAMES.index(new) < GRADE_NAMES.index(old) else "rose"  # type: ignore[arg-type]
            told.append(f"'{name(key)}' {went} from {old} to {new}")
        else:
            told.append(f"{name(key)}: {_written_out(old)}, now {_written_out(new)}")
    return tuple(told)


def _written_out(figure: str) -> str:
    """
    A stored figure as a person writes it: three figures of a large number are no power of ten.

    >>> _written_out("3.55e+03"), _written_out("0.982"), _written_out("supports")
    ('about 3,550', '0.982', 'supports')
    """
    return f"about {float(figure):,.0f}" if _POWER_OF_TEN.fullmatch(figure) else figure


def _held(ref: str, ground: Ground) -> tuple[SubjectFindings | None, str]:
    key, _, what = ref.partition("/")
    subject = ground.subject_of.get(key)
    return (ground.findings.subjects.get(subject) if subject is not None else None), what


def _of_claim(claim: Claim) -> dict[str, str]:
    found: dict[str, str] = {claim.id: claim.grade}
    for argument in claim.holding:
        for evidence in argument.evidence:
            if evidence.name and evidence.value is not None:
                found[f"{claim.id}#{evidence.name}"] = f"{evidence.value:.3g}"
    return found


def _measured(measurement: Measurement) -> str:
    return "no value" if measurement.value is None else f"{measurement.value:.3g}"


def _tally(ref: str, held: SubjectFindings) -> Tally | None:
    return next((tally for tally in held.tallies if tally.ref == ref), None)


def _tally_name(tally: Tally, packs: Packs) -> str:
    taxon = packs.taxa.get(tally.taxon) if tally.taxon is not None else None
    name = (taxon.trade_name or taxon.name) if taxon else ""
    part = packs.words.parts.get(tally.part)
    return f"{name or tally.written} {part.plural if part else tally.part}".strip()
