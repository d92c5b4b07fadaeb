"""
What an approval covers, and whether it still does.

It binds to words and to what they rest on: the figures and grades behind each sentence, and the claims in force for the
subject. Where a figure behind a sentence changes, that sentence is approved no more; where any does, or a claim comes,
goes or changes its grade, the approval as a whole has lapsed. Other words of narrate for the same figures change
nothing: approved sentences stay as they were approved.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from narrate.drafts.basis import Figures, differences
from narrate.drafts.draft_file import DraftFile, Line
from narrate.drafts.offered import Base, Drafted, Signed

Stands = Callable[[Figures], Figures]
"""Figures of then -> what the same things say now."""


def signed_by(before: Base, hers: DraftFile | None) -> Signed | None:
    """Her approval and what it binds to: what the last run showed, from the first run that finds it."""
    approval = hers.approval if hers is not None else None
    if hers is None or approval is None:
        return None
    if before.signed is not None and before.signed.approval == approval:
        return before.signed
    return Signed(
        approval=approval,
        lines={line.text: _behind(line, before) for line in hers.lines()} if before.latest else {},
        ground=_all(before),
        claims=dict(before.claims),
    )


def is_approved(line: Line, signed: Signed | None, stands: Stands) -> bool:
    """True if these words were approved and nothing behind them has changed since."""
    if signed is None or line.text not in signed.lines:
        return False
    then = signed.lines[line.text]
    now = stands(then)
    return all(now.get(key) == value for key, value in then.items())


def lapses(signed: Signed | None, claims: Figures, stands: Stands, name: Callable[[str], str]) -> tuple[str, ...]:
    """What changed behind approved words since, in words; empty where the approval stands, or where there is none."""
    if signed is None:
        return ()
    if not signed.lines:
        return ("what it was approved on is not known",)
    then = {key: value for behind in signed.lines.values() for key, value in behind.items()}
    now = {key: value for key, value in stands(then).items() if key in then}
    return differences({**signed.claims, **then}, {**claims, **now}, name)


def is_known(sentence: Drafted, signed: Signed | None) -> bool:
    """True if she approved the file with all these figures before her: then it is told anew in other words alone."""
    if signed is None or not sentence.figures:
        return False
    return all(signed.ground.get(key) == value for key, value in sentence.figures.items())


def _behind(line: Line, before: Base) -> dict[str, str]:
    return {name: value for key in line.keys for name, value in before.latest.get(key, {}).items()}


def _all(before: Base) -> dict[str, str]:
    return {name: value for behind in before.latest.values() for name, value in behind.items()}


def stands_in(now: Sequence[Drafted]) -> Stands:
    """What the figures of a draft alone can say of those of then."""
    figures = {name: value for sentence in now for name, value in sentence.figures.items()}
    return lambda then: {name: figures[name] for name in then if name in figures}
