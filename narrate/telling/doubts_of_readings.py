"""Doubts about readings that a reviewer weighs: rivals, readings that few draws uphold, counts that lie near an edge."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from narrate.model.narrative import Sentence
from narrate.telling import english, numbers
from narrate.telling.frames import noun_of
from narrate.telling.next_work import is_shaky
from narrate.telling.page import Page
from narrate.telling.plan import STORED_ONLY, Reading, rivals_of
from narrate.telling.rivals import relation
from narrate.telling.unsettled import is_unsettled

NEAR_ITS_EDGE = 3
"""Items by which counts may differ before a reading that they would unsettle is spoken of (judgement of the makers)."""


def rival_sentences(page: Page, held: Sequence[Reading]) -> list[Sentence]:
    """Two accounts of the same remains: which is the weaker, whether both may be true."""
    sentences: list[Sentence] = []
    paired: set[str] = set()
    for item in held:
        if item.claim.id in paired or item.claim.question == "integrity":
            continue
        for rival in rivals_of(page, item)[:1]:
            if rival.claim.id in paired:
                continue
            paired |= {item.claim.id, rival.claim.id}
            one, other = (f"{noun_of(page, [r])} ({_standing(r)})" for r in (item, rival))
            refs = [item.claim.id, rival.claim.id]
            sentences += page.say(refs, *_RELATIONS[relation(item, rival)](one, other))
    return sentences[:2]


_RELATIONS: dict[str, Callable[[str, str], tuple[str, ...]]] = {
    "before": lambda one, other: (
        f"{other} comes before {one}: what burned is the waste of such work, done there or elsewhere",
    ),
    "weaker": lambda one, other: (
        f"of two accounts of the same remains, {one}, and {other}, the second is the weaker",
        f"as an account of the same remains, {other} is weaker than {one}",
    ),
    "both": lambda one, other: (
        f"{one}, and {other} draw on the same remains, and both may be true of them",
    ),
    "either": lambda one, other: (
        f"the remains do not decide between {one} and {other}: either would leave them",
    ),
}
"""The words of the report for two rivals, with how firmly each stands."""


def _standing(item: Reading) -> str:
    """'strongly supported', 'consistent with the remains'."""
    return {"strongly supports": "strongly supported", "supports": "supported", "suggests": "suggested"}.get(
        item.claim.grade, "consistent with the remains"
    )


def unstable_sentences(page: Page, held: Sequence[Reading]) -> list[Sentence]:
    """Readings that the fewest redrawn counts uphold."""
    # What was seen in the ground, a root or a grain of later times, is no less seen when counts are redrawn.
    shaky = [r for r in held if is_shaky(r) and is_unsettled(r)]
    if not shaky:
        return []
    shaky.sort(key=lambda r: (r.claim.stability or 0.0, r.claim.id))
    shown = shaky[:3]
    texts = [f"{noun_of(page, [r])} in {numbers.percent(r.claim.stability or 0.0)}" for r in shown]
    return page.say(
        [r.claim.id for r in shown],
        f"counts drawn anew at random uphold {page.listed(texts)} of draws",
        f"of the readings below, counts drawn anew at random uphold {page.listed(texts)} of draws",
    )


def edge_sentences(page: Page, held: Sequence[Reading]) -> list[Sentence]:
    """The readings that the smallest changes in counts would unsettle."""
    near = [
        (abs(turning.items), r, turning.says)
        for r in held
        for turning in r.claim.turnings[:1]
        if abs(turning.items) <= NEAR_ITS_EDGE and r.claim.question != "integrity" and r.claim.statement != STORED_ONLY
    ]
    if not near:
        return []
    near.sort(key=lambda item: (item[0], item[1].claim.id))
    shown = near[:2]
    by_change: dict[str, list[Reading]] = {}
    for _, reading, says in shown:
        by_change.setdefault(english.literal(says), []).append(reading)
    texts = []
    for says, items in by_change.items():
        comma = "," if ", " in says else ""
        texts.append(f"{says}{comma} would unsettle {noun_of(page, items)}")
    edges = ", and ".join(texts)
    return page.say([r.claim.id for _, r, _ in shown], edges, f"the counts lie near an edge: {edges}")
