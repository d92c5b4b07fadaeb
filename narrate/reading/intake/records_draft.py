"""Records that a sheet itself carries, drafted as YAML: samples, contexts, volumes, phases. The analyst owns them."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from narrate.model.packs import Words
from narrate.reading.intake.contexts_differ import (
    OF_CONTEXTS,
    contradicts,
    kinds_for_features,
    tell_contradictions,
    with_facts_of_context,
    without_word,
)
from narrate.reading.intake.contexts_of_words import apart_by_words
from narrate.reading.intake.contexts_within import within_features
from narrate.reading.intake.kind_words_abroad import kind_of, kind_within
from narrate.reading.intake.said import Said
from narrate.reading.intake.shares_drafted import draft_sorted
from narrate.reading.intake.sheet_finds import SORTED_OF_CLASS
from narrate.reading.intake.told import Told
from narrate.reading.intake.volumes_drafted import Measured, litres
from narrate.reading.order import natural
from narrate.reading.values import find_word

Facts = Mapping[str, Mapping[str, list[Said]]]


@dataclass(slots=True)
class Draft:
    """Records as they would be written."""

    contexts: dict[str, dict[str, str]] = field(default_factory=dict)
    samples: dict[str, dict[str, str]] = field(default_factory=dict)
    phases: list[str] = field(default_factory=list)
    sources: list[str] = field(default_factory=list)
    cells: dict[tuple[str, str, str], str] = field(default_factory=dict)
    """'samples' or 'contexts', id, field -> the cell that it was taken from."""


def draft_records(
    facts: Facts, found_in: Iterable[str], words: Words, told: Told, *, known_samples: Iterable[str] = (),
    known_contexts: Iterable[str] = (), decimal: str = ".", percent_sorted: bool = True,
) -> Draft:  # fmt: skip
    """
    Drafts of all samples that the facts name and no record describes.

    found_in:  samples in which something was found; the others are drafted as sterile.
    """
    draft = Draft()
    has_finds = set(found_in)
    known, known_c = set(known_samples), set(known_contexts)
    facts = kinds_for_features(facts, words)
    by_context = {id[1:]: said for id, said in facts.items() if id.startswith("\x00")}
    first_of: dict[str, Mapping[str, list[Said]]] = {}
    facts = apart_by_words(within_features(facts, {*known_c, *by_context}, told), {*known_c, *by_context}, told)
    for id in sorted((i for i in facts if not i.startswith("\x00")), key=natural):
        if id in known:
            continue
        said = {role: list(found) for role, found in facts[id].items()}
        own_context = [one.text for one in said.get("context", [])]
        context = own_context[0] if own_context else (said["feature"][0].text if said.get("feature") else id)
        said = with_facts_of_context(said, by_context.get(context, {}))
        _tell_differences(id, said, told, words)
        sample: dict[str, str] = {"context": context}
        notes: list[str] = []
        measured = Measured(id, said, sample, notes, told, decimal)
        measured.soil()
        measured.flot()
        draft_sorted(id, said, sample, notes, told, decimal)
        method = said.get("method", [])
        if method:
            found = find_word(words.method_lookup, method[0].text)
            sample.update({"method": found} if found else {})
            notes += [] if found else [f"method written {method[0].text}"]
        if id not in has_finds:
            sample["sterile"] = "true"
        notes += [f"{one.unit}: {one.text}" if one.unit else one.text for one in said.get("sample note", [])]
        if said.get("site"):
            notes.append("site or area " + ", ".join(dict.fromkeys(one.text for one in said["site"])))
        if not own_context:
            told.warning(
                "N315", "no context", next(iter(said.get("sample") or next(iter(said.values())))).place,
                f"sample {id}: the sheet names no context; one of the name {context} is drafted, expected a context",
                "mend the drafted records where several samples come from one context",
            )  # fmt: skip
        if context not in known_c:
            notes += tell_contradictions(context, first_of.setdefault(context, said), said, words, told)
        if notes:
            sample["note"] = "; ".join(dict.fromkeys(notes))
        draft.samples[id] = sample
        for key, role in (("id", "sample"), ("context", "context"), ("volume_l", "volume"), ("size_classes", "sorted")):
            _note_cell(draft, "samples", id, key, said.get(role, ()))
        if context not in known_c:
            _context(context, said, draft, words)
    return draft


def _tell_differences(id: str, said: Mapping[str, list[Said]], told: Told, words: Words) -> None:
    """Rows of one sample repeat its volume; they are never added, and must agree."""
    for role in ("volume", "flot volume", "flot mass", "sorted", "context", "phase", "kind", "feature"):
        texts = {one.text: one for one in said.get(role, [])}
        if role == "volume" and None not in (of_each := {litres(t, one.unit or "l") for t, one in texts.items()}):
            texts = dict(list(texts.items())[:1]) if len(of_each) == 1 else texts  # '40' and '40 L'
        if role in ("context", "feature") and len({without_word(text) for text in texts}) == 1:
            texts = dict(list(texts.items())[:1])  # 'US 2014' and '2014'
        if role in OF_CONTEXTS:
            texts = {one.text: one for one in said.get(role, [])[:1]} | {
                t: one for t, one in texts.items() if contradicts(role, said[role][0].text, t, words)
            }
        if len(texts) > 1 and not (role == "sorted" and said.get(SORTED_OF_CLASS)):
            first, second = list(texts.values())[:2]
            told.warning(
                "N318", f"differs {role} {id}", second.place,
                f"sample {id}: {role} is '{second.text}' here and '{first.text}' in "
                f"{first.place.cell or first.place}; the first is "
                "kept, and they are not added, expected one value",
                "mend the drafted record by hand if the second is right",
            )  # fmt: skip


def _context(id: str, said: Mapping[str, list[Said]], draft: Draft, words: Words) -> None:
    context = draft.contexts.setdefault(id, {})
    if context:
        return
    descriptions = []
    kind = ""
    for role in ("kind", "description", "feature"):
        for one in said.get(role, [])[:1]:
            found = kind_of(one.text, words) or kind_within(one.text, words)
            kind = kind or (found or "")
            if role != "feature" and one.text not in descriptions:
                descriptions.append(one.text)
    context["kind"] = kind or "other"
    own = [one for role in ("context", "feature") for one in said.get(role, ()) if one.text == id]
    for key, found_in in (("id", own), ("kind", said.get("kind", ())), ("phase", said.get("phase", ()))):
        _note_cell(draft, "contexts", id, key, found_in)
    if said.get("feature") and said["feature"][0].text != id:
        context["feature"] = said["feature"][0].text
    if said.get("phase"):
        phase = said["phase"][0].text
        context["phase"] = phase
        if phase not in draft.phases:
            draft.phases.append(phase)
    if descriptions:
        context["description"] = "; ".join(descriptions)


def _note_cell(draft: Draft, what: str, id: str, key: str, said: Iterable[Said]) -> None:
    for one in said:
        draft.cells.setdefault((what, id, key), one.place.row)
        return


def records_text(draft: Draft) -> str:
    """The drafted records as a record file."""
    lines = []
    for name, records in (("contexts", draft.contexts), ("samples", draft.samples)):
        if records:
            lines.append(f"{name}:")
            for id, fields in sorted(records.items(), key=lambda item: natural(item[0])):
                lines.append(f"  - id: {quoted(id)}{_cell(draft, name, id, 'id')}")
                lines += [
                    f"    {key}: {value if key in _PLAIN else quoted(value)}{_cell(draft, name, id, key)}"
                    for key, value in fields.items()
                ]
    return "\n".join(lines) + "\n"


def _cell(draft: Draft, what: str, id: str, key: str) -> str:
    """The cell behind a drafted field, as a comment."""
    place = draft.cells.get((what, id, key), "")
    return "  # " + " ".join(place.split()) if place else ""


_PLAIN = ("volume_l", "light_fraction", "size_classes", "sterile", "kind")


def phases_text(phases: Iterable[str]) -> str:
    """Lines for project.yaml that name the phases of a sheet."""
    return "\n".join(["phases:", *(f"  - {{id: {quoted(phase)}, name: {quoted(phase)}}}" for phase in phases)]) + "\n"


def quoted(text: str) -> str:
    return json.dumps(text, ensure_ascii=False)
