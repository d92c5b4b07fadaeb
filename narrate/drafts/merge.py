"""
Three-way merge by sentence: what was drafted last time, what the analyst made of it, what is drafted now.

Every word of hers stays, and so does every word that she approved while nothing behind it changes. Where she changed
nothing the new draft is taken up. Where both changed, hers stays and is listed as stale, with the reason in figures. A
sentence that she deleted stays deleted until its claim changes.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace

from narrate.drafts.approvals import Stands, is_approved, is_known, lapses, signed_by, stands_in
from narrate.drafts.basis import Figures, differences
from narrate.drafts.draft_file import Block, DraftFile, Line, plain_text
from narrate.drafts.offered import Base, Drafted, Signed
from narrate.drafts.placing import drafted_file, with_offered, without_empty_sections
from narrate.drafts.ties import remarked, retied


@dataclass(frozen=True, slots=True, kw_only=True)
class Stale:
    """A passage of hers whose ground moved."""

    line: Line
    reasons: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Merged:
    file: DraftFile
    base: Base
    edited: frozenset[int] = frozenset()
    """Indices (over all lines of the file) of lines that are hers: changed, or added."""
    approved: frozenset[int] = frozenset()
    """Indices of lines that she approved, drafted or hers, and behind which nothing has changed since."""
    stale: Mapping[int, Stale] = field(default_factory=dict)
    lapses: tuple[str, ...] = ()
    """Where she approved the file: what changed behind it since, in words."""

    @property
    def has_lapsed(self) -> bool:
        return bool(self.lapses)

    @property
    def is_approved(self) -> bool:
        """True where all of it is."""
        return self.file.approval is not None and len(self.approved) == len(self.file.lines()) and not self.lapses


def merged(
    base: Base | None,
    hers: DraftFile | None,
    now: Sequence[Drafted],
    *,
    claims: Figures | None = None,
    stands: Stands | None = None,
    name: Callable[[str], str] = str,
) -> Merged:
    """
    The file as it should stand.

    base:    None where nothing was offered before; then every line of hers is hers.
    hers:    None where there is no file yet; then the draft is the file.
    claims:  grades of all claims in force for the subject.
    stands:  what figures of then say now; left out, the draft of now is asked.
    name:    figures as a person calls them.
    """
    before, claims, stands = base or Base(), claims or {}, stands or stands_in(now)
    latest = {sentence.key: sentence.figures for sentence in now}
    words = {sentence.key: sentence.text for sentence in now}
    signed = signed_by(before, hers)
    lapsed = lapses(signed, claims, stands, name)
    if hers is None or (signed is None and _is_as_offered(before, hers)):
        file = replace(drafted_file(now), front=hers.front if hers else "")
        if hers is not None and plain_text(hers) == plain_text(file):
            file = hers
        fresh = Base(sentences={s.key: s for s in now}, latest=latest, texts=words, claims=claims)
        return Merged(file=file, base=fresh)
    before, hers = retied(before, remarked(before, hers), now)
    new = {sentence.key: sentence for sentence in now}
    old = _in_hand(before, hers, signed)
    last = {key: replace(s, text=before.texts.get(key, s.text)) for key, s in old.items()}
    blocks = [_kept(block, (old, last), new, signed, stands) for block in hers.blocks]
    present = hers.keys()
    offered = [s for s in now if s.key not in present and _is_to_offer(s, before, stands) and not is_known(s, signed)]
    blocks = with_offered([b for b in blocks if b.heading or b.lines], offered, now)
    file = replace(hers, blocks=tuple(without_empty_sections(blocks, hers)))
    lines = file.lines()
    edited = frozenset(i for i, line in enumerate(lines) if not (_is_draft(line, new) or _is_draft(line, old)))
    held = {key for line in lines for key in line.keys if not _is_draft(line, new) and key in old}
    return Merged(
        file=file,
        base=Base(
            # A line of hers keeps the draft that she changed, so that it stays listed as stale until she touches it
            # again or the figures come back. A sentence that she deleted is remembered as it is drafted now.
            sentences={**new, **{key: old[key] for key in old if key in held}},
            texts={**{key: before.texts.get(key, old[key].text) for key in old if key in held}, **words},
            latest={**{key: stands(old[key].figures) for key in old if key in held and key not in new}, **latest},
            seen=_seen([lines[i] for i in sorted(edited)]),
            claims=claims,
            signed=signed,
        ),
        edited=edited,
        approved=frozenset(i for i, line in enumerate(lines) if is_approved(line, signed, stands)),
        stale=_stale(lines, edited, old, new, stands, name),
        lapses=lapsed,
    )


def _is_as_offered(before: Base, hers: DraftFile) -> bool:
    """True if she changed nothing: the file is the draft, word for word and line for line."""
    return not before.seen and plain_text(replace(hers, front="")) == plain_text(
        drafted_file([*before.sentences.values()])
    )


def _in_hand(before: Base, hers: DraftFile, signed: Signed | None) -> dict[str, Drafted]:
    """
    The drafts as she last had them in hand.

    Where she touched a line again since the last run, or approved the file since, she has seen what it rested on then.
    """
    seen_all = signed is not None and signed != before.signed
    old = dict(before.sentences)
    for line in hers.lines():
        marks = " ".join(line.keys)
        if _is_said(line, before.texts):
            continue
        if marks in before.seen and (seen_all or line.text not in before.seen[marks]):
            for key in line.keys:
                if key in old and key in before.latest:
                    old[key] = replace(old[key], figures=before.latest[key])
                else:
                    old.pop(key, None)
    return old


def _kept(
    block: Block,
    old: Sequence[Mapping[str, Drafted]],
    new: Mapping[str, Drafted],
    signed: Signed | None,
    stands: Stands,
) -> Block:
    """`old`: the drafts as she had them in hand, and as they were at the last run."""
    if block.heading:
        return block
    lines = []
    for line in block.lines:
        if not any(_is_draft(line, drafts) for drafts in old) or is_approved(line, signed, stands):
            lines.append(line)
            continue
        still = [new[key] for key in line.keys if key in new]
        if still:
            text, keys = " ".join(s.text for s in still), tuple(s.key for s in still)
            is_same = text == line.text and keys == line.keys
            lines.append(line if is_same else line.renewed(text, keys))
        elif line.remarks:
            lines.append(Line(text="", row=line.remarks))
    return Block(lines=tuple(lines))


def _is_draft(line: Line, drafts: Mapping[str, Drafted]) -> bool:
    """True if the words are those that were drafted for the marks of the line."""
    return _is_said(line, {key: drafts[key].text for key in line.keys if key in drafts})


def _is_said(line: Line, texts: Mapping[str, str]) -> bool:
    if not line.keys or any(key not in texts for key in line.keys):
        return False
    return line.text == " ".join(" ".join(texts[key].split()) for key in line.keys)


def _is_to_offer(sentence: Drafted, before: Base, stands: Stands) -> bool:
    """New, or deleted by her while its figures were others."""
    if sentence.key not in before.latest:
        return sentence.key not in before.sentences
    then = before.latest[sentence.key]
    now = stands(then) if then else sentence.figures
    return dict(then) != {key: now[key] for key in sorted(now)}


def _stale(
    lines: Sequence[Line],
    edited: frozenset[int],
    old: Mapping[str, Drafted],
    new: Mapping[str, Drafted],
    stands: Stands,
    name: Callable[[str], str],
) -> dict[int, Stale]:
    stale: dict[int, Stale] = {}
    for index in sorted(edited):
        reasons: list[str] = []
        for key in lines[index].keys:
            if key not in old:
                continue
            before = old[key]
            now = stands(before.figures)
            if key not in new and (not before.figures or dict(now) != dict(before.figures)):
                reasons.append(f"what it rests on is no longer told: “{before.text}”")
            reasons += differences(before.figures, now, name)
        if reasons:
            stale[index] = Stale(line=lines[index], reasons=tuple(dict.fromkeys(reasons)))
    return stale


def _seen(hers: Sequence[Line]) -> dict[str, tuple[str, ...]]:
    seen: dict[str, tuple[str, ...]] = {}
    for line in hers:
        if line.keys:
            marks = " ".join(line.keys)
            seen[marks] = (*seen.get(marks, ()), line.text)
    return seen
