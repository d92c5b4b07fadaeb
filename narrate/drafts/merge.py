"""
Three-way merge by sentence: what was drafted last time, what the analyst made of it, what is drafted now.

Every word of hers stays. Where she changed nothing the new draft is taken up. Where both changed, hers stays and is
listed as stale, with the reason in figures. A sentence that she deleted stays deleted until its claim changes.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace

from narrate.drafts.basis import Figures, differences, fingerprint
from narrate.drafts.draft_file import Approval, Block, DraftFile, Line, draft_text


@dataclass(frozen=True, slots=True, kw_only=True)
class Drafted:
    """One sentence as narrate drafted it."""

    key: str
    text: str
    refs: tuple[str, ...]
    figures: Figures
    heading: str
    paragraph: int
    """Number of its paragraph in the draft."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Base:
    """What the analyst's file was last offered, and what she made of it."""

    sentences: Mapping[str, Drafted] = field(default_factory=dict)
    """The draft behind each mark, as it was when she last had it in hand; in the order of the draft."""
    latest: Mapping[str, Figures] = field(default_factory=dict)
    """The figures behind each drafted sentence at the last run."""
    seen: Mapping[str, str] = field(default_factory=dict)
    """Her own lines at the last run, by their marks."""
    approval: Approval | None = None
    approved_at: str = ""
    """Fingerprint of all figures at the run before the approval was written: what she had before her eyes."""

    @property
    def fingerprint(self) -> str:
        return fingerprint_of_all(self.latest)


def fingerprint_of_all(latest: Mapping[str, Figures]) -> str:
    return fingerprint({f"{key}: {name}": value for key, behind in latest.items() for name, value in behind.items()})


@dataclass(frozen=True, slots=True, kw_only=True)
class Stale:
    """A passage of hers whose ground moved."""

    line: Line
    reasons: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Merged:
    file: DraftFile
    base: Base
    edited: frozenset[int]
    """Indices (over all lines of the file) of lines that are hers: changed, or added."""
    stale: Mapping[int, Stale]
    has_lapsed: bool = False
    """True where she approved the file and its figures have changed since."""

    @property
    def is_approved(self) -> bool:
        return self.file.approval is not None and not self.has_lapsed


def merged(base: Base | None, hers: DraftFile | None, now: Sequence[Drafted]) -> Merged:
    """
    The file as it should stand.

    base:  None where nothing was offered before; then every line of hers is hers.
    hers:  None where there is no file yet; then the draft is the file.
    """
    before = base or Base()
    latest = {sentence.key: sentence.figures for sentence in now}
    approval, approved_at = _approval(before, hers)
    if hers is None or _is_as_offered(before, hers):
        file = replace(drafted_file(now), front=hers.front if hers else "", approval=hers.approval if hers else None)
        next_base = Base(sentences={s.key: s for s in now}, latest=latest, approval=approval, approved_at=approved_at)
        return Merged(file=file, base=next_base, edited=frozenset(), stale={}, has_lapsed=_has_lapsed(next_base))
    new = {sentence.key: sentence for sentence in now}
    old = _in_hand(before, hers, approval)
    blocks = [_kept(block, old, new) for block in hers.blocks]
    present = {key for block in hers.blocks for line in block.lines for key in line.keys}
    offered = [s for s in now if s.key not in present and _is_to_offer(s, before)]
    blocks = _with_offered([b for b in blocks if b.heading or b.lines], offered, now)
    file = replace(hers, blocks=tuple(_without_empty_sections(blocks, hers)))
    edited, stale = _standing(file, old, new)
    lines = file.lines()
    next_base = Base(
        sentences=_next_sentences(old, new, file),
        latest=latest,
        seen={" ".join(lines[i].keys): lines[i].text for i in sorted(edited) if lines[i].keys},
        approval=approval,
        approved_at=approved_at,
    )
    return Merged(file=file, base=next_base, edited=edited, stale=stale, has_lapsed=_has_lapsed(next_base))


def _approval(before: Base, hers: DraftFile | None) -> tuple[Approval | None, str]:
    """Her approval and the figures that it binds to: those of the last run before she wrote it."""
    approval = hers.approval if hers is not None else None
    if approval is None:
        return None, ""
    return approval, before.approved_at if approval == before.approval else before.fingerprint


def _has_lapsed(base: Base) -> bool:
    return base.approval is not None and base.approved_at != base.fingerprint


def _is_as_offered(before: Base, hers: DraftFile) -> bool:
    """True if she changed nothing: the file is the draft, word for word and line for line."""
    return not before.seen and draft_text(replace(hers, front="")) == draft_text(
        drafted_file([*before.sentences.values()])
    )


def _in_hand(before: Base, hers: DraftFile, approval: Approval | None) -> dict[str, Drafted]:
    """
    The drafts as she last had them in hand.

    Where she touched a line again since the last run, or approved the file since, she has seen what it rested on then.
    """
    seen_all = approval is not None and approval != before.approval
    old = dict(before.sentences)
    for line in hers.lines():
        marks = " ".join(line.keys)
        if marks in before.seen and (seen_all or before.seen[marks] != line.text):
            for key in line.keys:
                if key in old and key in before.latest:
                    old[key] = replace(old[key], figures=before.latest[key])
                else:
                    old.pop(key, None)
    return old


def drafted_file(now: Sequence[Drafted]) -> DraftFile:
    """The draft as a file."""
    blocks: list[Block] = []
    heading: str | None = None
    paragraph = -1
    for sentence in now:
        if sentence.heading != heading and sentence.heading:
            blocks.append(Block(heading=sentence.heading))
        line = Line(text=sentence.text, keys=(sentence.key,))
        if sentence.heading == heading and sentence.paragraph == paragraph:
            blocks[-1] = Block(lines=(*blocks[-1].lines, line))
        else:
            blocks.append(Block(lines=(line,)))
        heading, paragraph = sentence.heading, sentence.paragraph
    return DraftFile(blocks=tuple(blocks))


def _kept(block: Block, old: Mapping[str, Drafted], new: Mapping[str, Drafted]) -> Block:
    if block.heading:
        return block
    lines = []
    for line in block.lines:
        if not _is_untouched(line, old):
            lines.append(line)
            continue
        still = [new[key] for key in line.keys if key in new]
        if still:
            lines.append(
                Line(text=" ".join(s.text for s in still), keys=tuple(s.key for s in still), number=line.number)
            )
    return Block(lines=tuple(lines))


def _is_untouched(line: Line, old: Mapping[str, Drafted]) -> bool:
    """True if the words are those that were drafted for the marks of the line."""
    if not line.keys or any(key not in old for key in line.keys):
        return False
    return line.text == " ".join(" ".join(old[key].text.split()) for key in line.keys)


def _is_to_offer(sentence: Drafted, before: Base) -> bool:
    """New, or deleted by her while its figures were others."""
    if sentence.key not in before.latest:
        return sentence.key not in before.sentences
    return fingerprint(before.latest[sentence.key]) != fingerprint(sentence.figures)


def _with_offered(blocks: list[Block], offered: Sequence[Drafted], now: Sequence[Drafted]) -> list[Block]:
    """Each offered sentence goes behind the nearest sentence before it in the draft that stands in the file."""
    order = [sentence.key for sentence in now]
    by_key = {sentence.key: sentence for sentence in now}
    for sentence in offered:
        line = Line(text=sentence.text, keys=(sentence.key,))
        before = order[: order.index(sentence.key)]
        where = next((found for key in reversed(before) if (found := _find(blocks, key)) is not None), None)
        anchor = next((key for key in reversed(before) if _find(blocks, key) is not None), None)
        if where is None:
            start = 1 if blocks and blocks[0].heading == sentence.heading else 0
            fresh = [Block(lines=(line,))]
            if not start and sentence.heading:
                fresh.insert(0, Block(heading=sentence.heading))
            blocks[start:start] = fresh
            continue
        block, index = where
        previous = by_key[anchor] if anchor else sentence
        if (previous.heading, previous.paragraph) == (sentence.heading, sentence.paragraph):
            lines = list(blocks[block].lines)
            lines.insert(index + 1, line)
            blocks[block] = Block(lines=tuple(lines))
        else:
            fresh = [Block(lines=(line,))]
            if sentence.heading and previous.heading != sentence.heading:
                if not any(b.heading == sentence.heading for b in blocks):
                    fresh.insert(0, Block(heading=sentence.heading))
                else:
                    block = next(i for i, b in enumerate(blocks) if b.heading == sentence.heading)
            blocks[block + 1 : block + 1] = fresh
    return blocks


def _find(blocks: Sequence[Block], key: str) -> tuple[int, int] | None:
    for number, block in enumerate(blocks):
        for index, line in enumerate(block.lines):
            if key in line.keys:
                return number, index
    return None


def _without_empty_sections(blocks: Sequence[Block], hers: DraftFile) -> list[Block]:
    """Headings under which withdrawn drafts left nothing; a heading that stood empty before is hers and stays."""
    stood_empty = {b.heading for b, after in _pairs(hers.blocks) if b.heading and (after is None or after.heading)}
    return [
        block
        for block, after in _pairs(blocks)
        if not block.heading or block.heading in stood_empty or (after is not None and not after.heading)
    ]


def _pairs(blocks: Sequence[Block]) -> list[tuple[Block, Block | None]]:
    return [(block, blocks[i + 1] if i + 1 < len(blocks) else None) for i, block in enumerate(blocks)]


def _standing(
    file: DraftFile, old: Mapping[str, Drafted], new: Mapping[str, Drafted]
) -> tuple[frozenset[int], dict[int, Stale]]:
    edited: set[int] = set()
    stale: dict[int, Stale] = {}
    for index, line in enumerate(file.lines()):
        if _is_untouched(line, new):
            continue
        edited.add(index)
        reasons: list[str] = []
        for key in line.keys:
            before, after = old.get(key), new.get(key)
            if before is not None and after is None:
                reasons.append(f"what it rests on is no longer told: “{before.text}”")
            elif before is not None and after is not None:
                reasons += differences(before.figures, after.figures)
        if reasons:
            stale[index] = Stale(line=line, reasons=tuple(dict.fromkeys(reasons)))
    return frozenset(edited), stale


def _next_sentences(old: Mapping[str, Drafted], new: Mapping[str, Drafted], file: DraftFile) -> dict[str, Drafted]:
    """
    What the file was offered after this run.

    A line of hers keeps the draft that she changed, so that it stays listed as stale until she touches it again or the
    figures come back. A sentence that she deleted is remembered as it is drafted now.
    """
    changed = {key for line in file.lines() if not _is_untouched(line, new) for key in line.keys if key in old}
    return {**new, **{key: old[key] for key in old if key in changed}}
