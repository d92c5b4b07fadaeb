"""The ranking of samples and contexts as the review queue shows it."""

from __future__ import annotations

from dataclasses import dataclass

from narrate.model.next_steps import COSTS, NextStep
from narrate.model.strength import LEAVE_IT, MOST_POINTS, Part, PartMeant, Ranking, Strength
from narrate.web.evidence import Opener

WORDED = ("firmness", "security")
"""Parts of which the value is words."""
TITLES = {"context": "Contexts", "sample": "Samples"}


@dataclass(frozen=True, slots=True, kw_only=True)
class PartView:
    text: str
    filled: int
    empty: int
    is_figure: bool
    points: str
    """'2 of 3', for readers who do not see the marks."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StrengthView:
    subject: str
    target: str
    kind: str
    parts: tuple[PartView, ...]
    points: str
    firmest: str
    step: str
    cost: str
    questions: str


@dataclass(frozen=True, slots=True, kw_only=True)
class LevelView:
    level: str
    title: str
    rows: tuple[StrengthView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class RankingView:
    meant: tuple[PartMeant, ...]
    levels: tuple[LevelView, ...]
    worded: tuple[str, ...]
    """Ids of the parts of which the value is words."""
    of_dig: tuple[tuple[str, str], ...]
    """What the whole dig would gain by, and roughly what it costs."""


def ranking_view(opener: Opener, ranking: Ranking | None) -> RankingView | None:
    """Every part with its words and marks, in the order of the sums; None where nothing was ranked."""
    if ranking is None:
        return None
    return RankingView(
        meant=ranking.meant,
        worded=WORDED,
        levels=tuple(
            LevelView(
                level=level,
                title=TITLES[level],
                rows=tuple(_row(opener, strength, ranking.most) for strength in strengths),
            )
            for level, strengths in ranking.by_level
        ),
        of_dig=tuple((step.says, COSTS[step.cost - 1]) for step in ranking.of_dig),
    )


def _row(opener: Opener, strength: Strength, most: int) -> StrengthView:
    step: NextStep | None = strength.next_step
    return StrengthView(
        subject=opener.wording.subject(strength.subject),
        target=opener.target(strength.subject),
        kind=strength.kind,
        parts=tuple(_part(part) for part in strength.parts),
        points=f"{strength.points} of {most}",
        firmest=strength.firmest,
        step=LEAVE_IT if step is None else step.says,
        cost="" if step is None else COSTS[step.cost - 1],
        questions="" if step is None else ", ".join(step.questions),
    )


def _part(part: Part) -> PartView:
    return PartView(
        text=part.text,
        filled=part.points,
        empty=MOST_POINTS - part.points,
        is_figure=part.id not in WORDED,
        points=f"{part.points} of {MOST_POINTS}",
    )
