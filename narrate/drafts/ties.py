"""
Ties between lines and drafts that were lost on the way, put back.

An editor may drop the marks; then words that are those of a draft, or hers as the last run saw them, say where they
belong. A new version of narrate may draft a sentence on a few references more or fewer; then its mark is another, and
her line follows it, so that nothing is offered twice.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace

from narrate.drafts.draft_file import Block, DraftFile, Line
from narrate.drafts.offered import Base, Drafted

LEAST_SHARED = 0.5
"""Share of all references of two sentences that both must name, so that one is the other told anew."""


def remarked(before: Base, hers: DraftFile) -> DraftFile:
    """Lines that lost their marks, with their marks again."""
    owner: dict[str, tuple[str, ...]] = {}
    for key, sentence in before.sentences.items():
        owner.setdefault(" ".join(sentence.text.split()), (key,))
    for key, text in before.texts.items():
        owner.setdefault(" ".join(text.split()), (key,))
    for marks, texts in before.seen.items():
        for text in texts:
            owner.setdefault(text, tuple(marks.split()))
    taken = set(hers.keys())

    def marked(line: Line) -> Line:
        keys = owner.get(line.text, ()) if line.text and not line.keys else ()
        if not keys or taken & set(keys):
            return line
        taken.update(keys)
        return line.renewed(line.text, keys)

    return _with_lines(hers, marked)


def retied(before: Base, hers: DraftFile, now: Sequence[Drafted]) -> tuple[Base, DraftFile]:
    """Base and file with the marks that the same sentences bear in the draft of now."""
    drafted = {sentence.key for sentence in now}
    gone = [s for key, s in before.sentences.items() if key not in drafted]
    known = {*before.latest, *before.sentences, *hers.keys()}
    new = [s for s in now if s.key not in known]
    pairs = sorted(
        ((_shared(old, fresh), old.key, fresh.key) for old in gone for fresh in new),
        key=lambda pair: (-pair[0], pair[1], pair[2]),
    )
    other: dict[str, str] = {}
    for shared, old_key, new_key in pairs:
        if shared >= LEAST_SHARED and old_key not in other and new_key not in other.values():
            other[old_key] = new_key
    if not other:
        return before, hers
    base = replace(
        before,
        sentences={other.get(k, k): replace(s, key=other.get(k, k)) for k, s in before.sentences.items()},
        latest={other.get(k, k): behind for k, behind in before.latest.items()},
        texts={other.get(k, k): text for k, text in before.texts.items()},
        seen={_other_marks(marks, other): texts for marks, texts in before.seen.items()},
    )
    return base, _with_lines(hers, lambda line: _other_line(line, other))


def _shared(one: Drafted, other: Drafted) -> float:
    mine, theirs = set(one.refs), set(other.refs)
    return len(mine & theirs) / max(1, len(mine | theirs))


def _other_marks(marks: str, other: Mapping[str, str]) -> str:
    return " ".join(other.get(key, key) for key in marks.split())


def _other_line(line: Line, other: Mapping[str, str]) -> Line:
    if not any(key in other for key in line.keys):
        return line
    return line.renewed(line.text, tuple(other.get(key, key) for key in line.keys))


def _with_lines(file: DraftFile, change: Callable[[Line], Line]) -> DraftFile:
    blocks = (b if b.heading else Block(lines=tuple(change(line) for line in b.lines)) for b in file.blocks)
    return replace(file, blocks=tuple(blocks))
