"""`narrate explain`: the evidence behind one reference."""

from __future__ import annotations

import difflib
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path

from narrate.deposit.plain_claims import plain_claim
from narrate.drafts.owned import own_words
from narrate.model.refs import ref_in_keys, subject_keys
from narrate.pipeline.judged import Judged, judged_folder
from narrate.problems import Place, Problem
from narrate.reading.intake.cell_rows import cell_row
from narrate.telling.explanation import claim_text, measurement_text, record_text, tally_text


@dataclass(frozen=True, slots=True, kw_only=True)
class Explained:
    """What `explain` found: text and plain data, or why there is none."""

    text: str = ""
    plain: Mapping[str, object] = field(default_factory=dict)
    refusal: str = ""
    problems: tuple[Problem, ...] = ()


def explain(folder: Path, ref: str) -> Explained:
    """The evidence behind a reference, down to the rows of count sheets and records."""
    found = judged_folder(folder)
    return Explained(problems=found.problems) if found.whole is None else explained(folder, found.whole, ref)


def explained(folder: Path, whole: Judged, ref: str) -> Explained:
    """The same for a project that is already judged."""
    row_text = _row_reader(folder)
    ref = ref if ref in whole.claims.by_id else ref_in_keys(whole.project, ref)
    claim = whole.claims.by_id.get(ref)
    if claim is not None:
        return Explained(text=claim_text(claim, whole.packs, row_text), plain=plain_claim(claim))
    key, _, what = ref.partition("/")
    subject = next((s for s, k in subject_keys(whole.project).items() if k == key), None)
    if subject is None:
        return Explained(refusal=_no_such(ref, [*whole.claims.by_id]))
    found = whole.findings.of(subject)
    titles = {shown.name: shown.title for shown in whole.packs.shown}
    kind, _, name = what.partition(".")
    places: tuple[Place, ...] = ()
    if what == "record":
        places = found.places["record"]
        text = record_text(ref, places, row_text)
    elif what == "words":
        places = own_words(folder, key)
        text = record_text(ref, places, row_text)
    elif kind == "measure" and name in found.measurements:
        places = found.places[name]
        text = measurement_text(ref, titles.get(name, name), found.measurements[name], places, row_text)
    else:
        tally = next((t for t in found.tallies if t.ref == ref), None)
        if tally is None:
            refs = [c.id for c in whole.claims.about(subject)] + [t.ref for t in found.tallies]
            return Explained(refusal=_no_such(ref, refs + [f"{key}/measure.{m}" for m in found.measurements]))
        places = tally.places
        text = tally_text(tally, found, row_text)
    return Explained(text=text, plain={"id": ref, "text": text, "rows": [place.row for place in places]})


def _no_such(ref: str, known: list[str]) -> str:
    near = difflib.get_close_matches(ref, known, n=3, cutoff=0.5)
    offered = f"; near it: {', '.join(near)}" if near else ""
    return f"'{ref}' is not a claim, measurement, find or record of this project{offered}"


def _row_reader(folder: Path) -> Callable[[Place], str]:
    """Reads rows of text files as written; each file once. A file that went away in the meantime gives nothing."""

    @cache
    def lines(path: str) -> tuple[str, ...]:
        try:
            return tuple((folder / path).read_text(encoding="utf-8-sig", errors="replace").splitlines())
        except OSError:
            return ()

    def row(place: Place) -> str:
        if place.cell:
            return cell_row(folder, place)
        text = lines(place.path)
        return text[place.line - 1].strip() if 0 < place.line <= len(text) else ""

    return row
