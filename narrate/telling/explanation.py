"""A claim, a measurement, a find or a record laid out for a terminal, down to the rows."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from narrate.model.claims import Argument, Claim, Evidence
from narrate.model.findings import SubjectFindings, Tally
from narrate.model.measurement import Measurement
from narrate.model.packs import Packs
from narrate.problems import Place

RowText = Callable[[Place], str]
"""Gives the row of a sheet, or the line of a record, as written."""


def claim_text(claim: Claim, packs: Packs, row_text: RowText) -> str:
    """Everything behind one claim: grade, arguments with figures and rows, limits, what misleads, rivals, sources."""
    statement = packs.statements[claim.statement]
    lines = [
        f"{claim.id}: {statement.title}",
        f"  about      {claim.about.level} {claim.about.id}",
        f"  verdict    {claim.verdict}" + (f", {claim.grade}" if claim.verdict == "holds" else ""),
        f"  support    {claim.support:.2f} (weighed evidence from 0 to 1, not a probability)",
    ]
    if claim.stability is not None:
        lines.append(f"  stability  the verdict stays in {claim.stability:.0%} of resampled counts")
    for limit in claim.limits:
        lines += [f"  limit      {limit.says}", f"             lifted by {limit.lifts}"]
    if claim.limits and claim.unlimited is not None:
        lines.append(f"             without limits it would read '{claim.unlimited}'")
    for turning in claim.turnings:
        lines.append(f"  turned by  {turning.says}: the verdict would be '{turning.verdict}'")
    if claim.next_step is not None:
        lines.append(f"  firmed by  {claim.next_step.says}")
    for argument in claim.arguments:
        lines += _argument_lines(argument, packs, row_text)
    lines += _listed("misleads when", claim.misleads_when)
    lines += _rival_lines(claim, packs)
    lines += _listed("sources", (source_line(key, packs) for key in claim.sources))
    return "\n".join(lines)


def measurement_text(
    name: str, title: str, measurement: Measurement, places: Iterable[Place], row_text: RowText
) -> str:
    """One named measurement of a subject with its interval and rows."""
    lines = [f"{name}: {title}", f"  value  {value_text(measurement)}"]
    return "\n".join(lines + _rows(places, row_text, "  "))


def tally_text(tally: Tally, found: SubjectFindings, row_text: RowText) -> str:
    """One plant and part of a subject."""
    lines = [
        f"{tally.ref}: {tally.written}, {tally.part}, {tally.condition}",
        f"  counted    {tally.counted}" + (" (and noted as present)" if tally.is_noted else ""),
        f"  estimated  {tally.estimated:.6g} with the unsorted share",
        f"  samples    {tally.samples} of {found.samples}",
    ]
    if tally.mass_g is not None:
        lines.insert(3, f"  mass       {tally.mass_g:g} g")
    return "\n".join(lines + _rows(tally.places, row_text, "  "))


def record_text(name: str, places: Iterable[Place], row_text: RowText) -> str:
    """The records of a subject."""
    return "\n".join([f"{name}: the records", *_rows(places, row_text, "  ")])


def source_line(key: str, packs: Packs) -> str:
    """
    A source in one line, with how well it is known.

    Anything that was not read in the work or a stored copy of it is marked as a default to check.
    """
    source = packs.sources.get(key)  # type: ignore[call-overload]
    if source is None:
        return key
    parts = [f"{source.authors} {source.year}".strip(), source.title, source.container, source.pages]
    known = "" if source.known in ("read", "calc") else f" [{source.known}: a default, check]"
    return ". ".join(part.rstrip(".") for part in parts if part) + "." + known


def value_text(measurement: Measurement) -> str:
    """
    A measurement with interval and n, or the reason why there is none.

    >>> value_text(Measurement(measure="ratio", value=0.125, low=0.07, high=0.22, n=108))
    '0.125 (95 % interval 0.07 to 0.22; n = 108)'
    >>> value_text(Measurement(measure="density", value=None, reason="no volume was recorded"))
    'none: no volume was recorded'
    """
    if measurement.value is None:
        bounds = ""
        if measurement.low is not None and measurement.is_open_above:
            bounds = f" (at least {measurement.low:.3g})"
        return f"none: {measurement.reason}{bounds}"
    text = f"{measurement.value:.4g}" + (f" {measurement.unit}" if measurement.unit else "")
    inside = []
    if measurement.low is not None:
        high = "open" if measurement.is_open_above or measurement.high is None else f"{measurement.high:.3g}"
        inside.append(f"95 % interval {measurement.low:.3g} to {high}")
    if measurement.n is not None:
        inside.append(f"n = {measurement.n}")
    return text + (f" ({'; '.join(inside)})" if inside else "")


def _argument_lines(argument: Argument, packs: Packs, row_text: RowText) -> list[str]:
    rule = packs.rules[argument.rule]
    lines = [
        "",
        f"  {argument.direction}: {rule.title} [{argument.rule}, {rule.weight} {argument.weight:+.1f}, {rule.status}]"
        if argument.direction == "for"
        else f"  against: {rule.title} [{argument.rule}, {rule.weight} {-argument.weight:+.1f}, {rule.status}]",
        f"    {argument.verdict}" + (f": {argument.says}" if argument.verdict == "holds" else ""),
    ]
    if argument.counted_with is not None:
        other = argument.counted_with
        named = f"'{packs.rules[other].title}' [{other}]"
        lines.append(f"    adds nothing: it rests on the same remains as {named}, which is added")
    for evidence in argument.evidence:
        lines.append(f"    {_evidence_text(evidence)}")
        lines += _rows(evidence.places, row_text, "      ")
    return lines


_BALANCES = {
    "this": "the remains favour this reading",
    "rival": "the remains favour the rival",
    "undecided": "the remains do not decide between the two",
    "neither holds": "neither holds",
}


def _rival_lines(claim: Claim, packs: Packs) -> list[str]:
    """Every rival with what speaks for and against both; one that was not judged here by its name alone."""
    lines: list[str] = []
    for rival in claim.rivals:
        title = packs.statements[rival.statement].title
        standing = f"{rival.verdict}, {rival.grade}" if rival.verdict == "holds" else rival.verdict
        lines += ["", f"  set against {rival.claim}: {title} ({standing}, {rival.support:.2f})"]
        lines.append(f"    balance: {_BALANCES[rival.balance]}")
        if not (claim.held("for") or claim.held("against") or rival.speak_for or rival.speak_against):
            continue
        sides = (
            ("for this", "+", [a.rule for a in claim.held("for")]),
            ("against this", "-", [a.rule for a in claim.held("against")]),
            ("for the rival", "+", list(rival.speak_for)),
            ("against the rival", "-", list(rival.speak_against)),
        )
        for side, sign, rules in sides:
            told = [f"{packs.rules[id].title} ({sign}{packs.weights[packs.rules[id].weight]:.1f})" for id in rules]
            lines.append(f"    {side + ':':<18} {'; '.join(told) or 'nothing'}")
    judged = {rival.statement for rival in claim.rivals}
    others = (id for id in claim.alternatives if id in packs.statements and id not in judged)
    return lines + _listed("rival readings not judged here", (packs.statements[id].title for id in others))


def _evidence_text(evidence: Evidence) -> str:
    if evidence.measure.startswith("record."):
        return f"{evidence.measure} is {evidence.text}: {evidence.verdict}"
    if evidence.value is None:
        return f"{evidence.measure} has no value ({evidence.reason}): {evidence.verdict}"
    unit = f" {evidence.unit}" if evidence.unit else ""
    interval = ""
    if evidence.low is not None:
        high = "open" if evidence.high is None else f"{evidence.high:.3g}"
        interval = f" ({evidence.low:.3g} to {high})"
    return f"{evidence.measure} = {evidence.value:.4g}{unit}{interval}: {evidence.verdict}"


def _rows(places: Iterable[Place], row_text: RowText, indent: str) -> list[str]:
    return [f"{indent}{place.row}  {row_text(place)}".rstrip() for place in places]


def _listed(title: str, texts: Iterable[str]) -> list[str]:
    found = list(texts)
    return ["", f"  {title}:", *(f"    - {text}" for text in found)] if found else []
