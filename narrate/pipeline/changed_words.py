"""Sentences that changed, by audience and narrative, and by whom they were said."""

from __future__ import annotations

from collections.abc import Mapping
from difflib import SequenceMatcher

from narrate.model.changes import Change, Part
from narrate.model.narrative import Narrative, Sentence

Told = Mapping[str, Mapping[str, Narrative]]
"""By audience and by the word that stands for the subject."""


def changed_words(old: Told, new: Told, names: Mapping[str, str]) -> tuple[Part, ...]:
    """One part an audience; `names` leads from old subjects to new ones that have another id now."""
    parts = []
    for audience in dict.fromkeys((*new, *old)):
        before = {names.get(key, key): narrative for key, narrative in old.get(audience, {}).items()}
        after = new.get(audience, {})
        changes = [
            change
            for key in dict.fromkeys((*after, *before))
            for change in _of_narrative(key, before.get(key), after.get(key))
        ]
        parts.append(Part(title=f"Words for {audience}", changes=tuple(changes)))
    return tuple(parts)


def said_by(sentence: Sentence, narrative: Narrative) -> str:
    """
    Who said a sentence and who answers for it.

    The name of her who edited is not kept; that of her who approved is.
    """
    who = {"drafted": "drafted", "edited": "edited by the analyst", "own": "the analyst's own"}[sentence.standing]
    if not sentence.is_approved:
        return who
    when = f" on {narrative.approved_on}" if narrative.approved_on else ""
    return f"{who}, approved by {narrative.approved_by}{when}"


def _of_narrative(key: str, old: Narrative | None, new: Narrative | None) -> list[Change]:
    before = [(s, said_by(s, old)) for s in old.sentences()] if old else []
    after = [(s, said_by(s, new)) for s in new.sentences()] if new else []
    match = SequenceMatcher(None, [s.text for s, _ in before], [s.text for s, _ in after], autojunk=False)
    found: list[Change] = []
    for tag, a, b, c, d in match.get_opcodes():
        if tag == "equal":
            pairs = zip(before[a:b], after[c:d], strict=True)
            found += [_change(key, one, other) for one, other in pairs if one[1] != other[1]]
        else:
            found += _paired(key, before[a:b], after[c:d])
    return found


def _paired(key: str, before: list[tuple[Sentence, str]], after: list[tuple[Sentence, str]]) -> list[Change]:
    """Sentences that rest on the same are one sentence that changed."""
    left = list(before)
    found = []
    for other in after:
        one = next((o for o in left if o[0].refs[0] == other[0].refs[0]), None)
        if one is not None:
            left.remove(one)
        found.append(_change(key, one, other))
    return [*(_change(key, one, None) for one in left), *found]


def _change(key: str, one: tuple[Sentence, str] | None, other: tuple[Sentence, str] | None) -> Change:
    return Change(
        kind="changed" if one and other else "added" if other else "removed",
        subject=key,
        before=one[0].text if one else "",
        after=other[0].text if other else "",
        before_at=one[1] if one else "",
        after_at=other[1] if other else "",
        reasons=other[0].stale if other else (),
    )
