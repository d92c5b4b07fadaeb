"""The review queue: what a reviewer should look at first."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import NamedTuple

from narrate.model.claims import GRADE_NAMES, Claim, Grade, LimitInForce
from narrate.model.edition import Edition
from narrate.model.ids import FILED, StatementId, Subject
from narrate.model.late import Late
from narrate.web.claim_views import ClaimView
from narrate.web.evidence import Opener
from narrate.web.ranking import RankingView, ranking_view
from narrate.web.views import STORIES

UNSTABLE_BELOW = 0.8
"""Share of resampled counts below which a claim is listed as unstable. Judgement of ours, no source."""
WEAKEST = ("consistent with", "suggests")
"""Grades that the list of weakest claims holds."""
SHOWN_FIRST = 25
"""Rows of a list of claims on the queue itself; the whole list has a page of its own."""
_LEVELS = ("site", "phase", "feature", "context", "sample")


@dataclass(frozen=True, slots=True, kw_only=True)
class HeldView:
    """One limit and all the claims that it holds down."""

    says: str
    lifts: str
    claims: Sequence[ClaimView]


class Held(NamedTuple):
    """What the lists ask of a claim that holds: thousands do, and a page shows some dozens of them."""

    about: Subject
    statement: StatementId
    id: str
    question: str
    grade: Grade
    support: float
    stability: float | None
    limits: tuple[LimitInForce, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class WordsView:
    """How the narrative of one subject for one audience stands."""

    subject: str
    target: str
    audience: str
    sentences: int
    own: int
    """Sentences that are not as drafted."""
    approved: int
    """Sentences that are approved, and behind which nothing has changed since."""
    stale: int
    approval: str


class QueueView:
    def __init__(self, opener: Opener) -> None:
        self._opener = opener
        self._edition: Edition = opener.edition
        self.unstable_below = UNSTABLE_BELOW
        self.shown_first = SHOWN_FIRST
        self.problems = opener.edition.problems

    @property
    def ranking(self) -> RankingView | None:
        """How strong a story each sample and context tells, and what would make it stronger."""
        return ranking_view(self._opener, self._edition.ranking)

    @property
    def weakest(self) -> Sequence[ClaimView]:
        """Claims that hold by little, above the level of single samples."""
        found = [claim for claim in self._holding if claim.grade in WEAKEST and claim.about.level != "sample"]
        return self._views(sorted(found, key=lambda claim: (claim.support, claim.id)))

    @property
    def held_down(self) -> tuple[HeldView, ...]:
        """By limit, those that hold most claims first."""
        grouped: dict[tuple[str, str], list[Held]] = {}
        for claim in self._holding:
            for limit in claim.limits:
                grouped.setdefault((limit.says, limit.lifts), []).append(claim)
        ordered = sorted(grouped.items(), key=lambda item: (-len(item[1]), item[0]))
        return tuple(HeldView(says=says, lifts=lifts, claims=self._views(claims)) for (says, lifts), claims in ordered)

    @property
    def unstable(self) -> Sequence[ClaimView]:
        """Claims whose verdict changes easily when the counts are drawn anew."""
        found = [c for c in self._holding if c.stability is not None and c.stability < UNSTABLE_BELOW]
        return self._views(sorted(found, key=lambda claim: (claim.stability or 0.0, claim.id)))

    @property
    def work(self) -> Sequence[ClaimView]:
        """What the laboratory might do next."""
        return self._views(claim for claim in self._holding if claim.question == "work")

    @property
    def integrity(self) -> Sequence[ClaimView]:
        """Doubts about deposits and recovery that hold."""
        return self._views(claim for claim in self._holding if claim.question == "integrity")

    @property
    def own_words(self) -> tuple[tuple[str, str, str], ...]:
        """Narratives that the analyst wrote herself: audience, subject, page."""
        wording = self._opener.wording
        return tuple(
            (audience, wording.subject(subject), self._opener.target(subject))
            for (audience, subject), narrative in self._edition.narratives.items()
            if narrative.is_edited and audience in STORIES[self._edition.audience]
        )

    @property
    def words(self) -> tuple[WordsView, ...]:
        """
        Every narrative that stands in a file, for any audience, those with stale sentences first.

        Texts of samples and features stand in none: nobody can approve them, and nothing here waits for that.
        """
        wording = self._opener.wording
        found = [
            WordsView(
                subject=wording.subject(subject),
                target=self._opener.target(subject),
                audience=audience,
                sentences=len(narrative.sentences()),
                own=sum(sentence.standing != "drafted" for sentence in narrative.sentences()),
                stale=sum(bool(sentence.stale) for sentence in narrative.sentences()),
                approved=sum(sentence.is_approved for sentence in narrative.sentences()),
                approval="lapsed" if narrative.has_lapsed else "approved" if narrative.approved_by else "not approved",
            )
            for (audience, subject), narrative in {**self._edition.told_elsewhere, **self._edition.narratives}.items()
            if subject.level in FILED and narrative.sentences() and self._opener.target(subject)
        ]
        return tuple(sorted(found, key=lambda one: -one.stale))

    @property
    def stale(self) -> int:
        return sum(one.stale for one in self.words)

    @property
    def unapproved(self) -> int:
        return sum(one.approval != "approved" for one in self.words)

    @cached_property
    def _holding(self) -> list[Held]:
        # A feature of one context says again what the context says.
        members = self._opener.members
        holding = (
            _held(claim)
            for claim in self._edition.claims.all_holding()
            if claim.about.level != "feature" or members[claim.about.id] > 1  # type: ignore[index]
        )
        return sorted(holding, key=lambda claim: (_LEVELS.index(claim.about.level), -GRADE_NAMES.index(claim.grade)))

    def _views(self, claims: Iterable[Held]) -> Sequence[ClaimView]:
        """Made as they are read."""
        listed = tuple(claims)
        return Late(len(listed), lambda at: self._view(listed[at]))

    def _view(self, held: Held) -> ClaimView:
        claim = self._edition.claims.find(held.about, held.statement)
        assert claim is not None, "it holds, so that it can be made"
        return self._opener.claim(claim)


def _held(claim: Claim) -> Held:
    return Held(
        about=claim.about,
        statement=claim.statement,
        id=claim.id,
        question=claim.question,
        grade=claim.grade,
        support=claim.support,
        stability=claim.stability,
        limits=claim.limits,
    )
