"""One claim as its pages show it: its arguments, their figures, its rivals and the rows it rests on."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from narrate.model.claims import Argument, Claim, Evidence
from narrate.model.ids import StatementId
from narrate.telling.frames import frame_kind
from narrate.telling.plan import is_hint
from narrate.telling.readings_of_phases import is_hint_of_all_phases
from narrate.web.rows import RowSet
from narrate.web.writing import Writing

if TYPE_CHECKING:
    from narrate.web.evidence import Opener

BALANCES = {
    "this": "the remains favour this reading",
    "rival": "the remains favour the other reading",
    "undecided": "the remains do not decide between the two",
    "neither holds": "neither holds",
}
"""How two rivals stand to each other, in words."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FigureView:
    """One value or recorded fact that an argument looked at."""

    title: str
    text: str
    verdict: str
    measure: str = ""
    """The page of the manual that explains the number; empty for recorded facts."""


class ArgumentView:
    """One argument of a claim, worked out as far as a page asks."""

    def __init__(self, opener: Opener, argument: Argument) -> None:
        self._opener = opener
        self._argument = argument
        self.rule = argument.rule
        self.direction = argument.direction
        self.verdict = argument.verdict

    @cached_property
    def title(self) -> str:
        return self._opener.wording.rule_title(self.rule)

    @property
    def weight(self) -> str:
        return f"{self._argument.weight:.1f}"

    @cached_property
    def says(self) -> str:
        if self.verdict != "holds":
            return self.title
        return self._opener.writing.retold(tidied(self._opener.wording.says(self._argument)))

    @cached_property
    def figures(self) -> tuple[FigureView, ...]:
        """What the rule looked at, in the words of its criteria."""
        evidence = self._argument.evidence
        return tuple(self._opener.figure(self.rule, len(evidence), at, one) for at, one in enumerate(evidence))

    @cached_property
    def rows(self) -> RowSet | None:
        """All rows that its figures look at, each once; None where it does not hold."""
        held = self._argument.evidence if self.verdict == "holds" else ()
        return self._opener.rows.behind_evidence(held)

    @property
    def counted_with(self) -> str:
        """Title of the heavier argument of the same remains that is added in its stead; empty: it is added itself."""
        other = self._argument.counted_with
        return self._opener.wording.rule_title(other) if other else ""


def figure_view(opener: Opener, evidence: Evidence, title: str) -> FigureView:
    """A value or recorded fact under the title that its criterion gives it."""
    return FigureView(
        title=opener.writing.unit(title or evidence_title(evidence)),
        text=opener.writing.retold(tidied(evidence_text(evidence))),
        verdict=evidence.verdict,
        measure="" if evidence.measure.startswith("record.") else evidence.measure.partition(".")[0],
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class RivalView:
    """A rival reading beside the claim, with what speaks for and against it."""

    title: str
    page: str
    standing: str
    """'supports, 0.84' or the verdict."""
    balance: str
    speak_for: tuple[str, ...]
    speak_against: tuple[str, ...]


class ClaimView:
    """One claim, worked out as far as a page asks: of most a page shows the title and what was wanting."""

    def __init__(self, opener: Opener, claim: Claim) -> None:
        self._opener = opener
        self._claim = claim
        self._statement = opener.edition.packs.statements.get(claim.statement)
        self.id = claim.id
        self.about = claim.about
        self.question = claim.question
        self.statement: StatementId = claim.statement
        self.verdict = claim.verdict
        self.grade = claim.grade
        self.stability = claim.stability
        self.misleads_when = claim.misleads_when
        self.sources = claim.sources
        """Keys of the works it rests on."""

    @cached_property
    def subject(self) -> str:
        return self._opener.wording.subject(self._claim.about)

    @cached_property
    def target(self) -> str:
        """The page of what it is about."""
        return self._opener.target(self._claim.about)

    @cached_property
    def page(self) -> str:
        """The place on the page of evidence where the claim stands with all its arguments."""
        return self._opener.claim_page(self._claim)

    @property
    def evidence(self) -> str:
        """The page of evidence on which it stands."""
        return self.page.partition("#")[0]

    @cached_property
    def title(self) -> str:
        return self._opener.wording.statement(self.statement)

    @property
    def plain(self) -> str:
        return "" if self._statement is None else self._statement.plain

    @property
    def hangs_on(self) -> str:
        """For visitors: that a claim is a hint that a few finds could undo, as the texts call it; else nothing."""
        edition = self._opener.edition
        is_told = self._opener.wording.is_public and self.verdict == "holds"
        is_slight = is_hint(self._claim) or is_hint_of_all_phases(edition.project, edition.claims, self._claim)
        return "hangs on a few finds" if is_told and is_slight else ""

    @property
    def hedged(self) -> str:
        """What it says, for visitors in a frame of its grade: nothing stands flat that no page says flat."""
        audience = self._opener.edition.packs.audiences.get(self._opener.edition.audience)
        frames = audience.frames.get(self.grade, ()) if audience is not None else ()  # type: ignore[call-overload]
        leads = [text for text in frames if frame_kind(text) == "lead"]
        if not leads or not self.plain or not self._opener.wording.is_public:
            return self.plain
        return leads[len(self.statement) % len(leads)].replace("{clause}", self.plain)

    @property
    def does_not_mean(self) -> str:
        return "" if self._statement is None else self._statement.does_not_mean

    @property
    def support(self) -> str:
        return f"{self._claim.support:.2f}"

    @cached_property
    def arguments_for(self) -> tuple[ArgumentView, ...]:
        """Those that hold, heaviest first."""
        return self._views(self._claim.held("for"))

    @cached_property
    def arguments_against(self) -> tuple[ArgumentView, ...]:
        return self._views(self._claim.held("against"))

    @property
    def limits(self) -> tuple[tuple[str, str], ...]:
        """What holds the grade down, and what lifts it."""
        return tuple((self._opener.wording.limit(limit), limit.lifts) for limit in self._claim.limits)

    @property
    def unlimited(self) -> str:
        """The grade without limits; empty where none holds it down."""
        return self._claim.unlimited or "" if self._claim.limits else ""

    @property
    def alternatives(self) -> tuple[str, ...]:
        return tuple(self._opener.wording.statement(id) for id in self._claim.alternatives)

    @cached_property
    def rivals(self) -> tuple[RivalView, ...]:
        """Rivals of which at least one of the two holds."""
        return tuple(self._opener.rival(r) for r in self._claim.rivals if r.balance != "neither holds")

    @property
    def turned_by(self) -> tuple[tuple[str, str], ...]:
        """Changes in counts that would turn the verdict, and to what."""
        return tuple((turning.says, turning.verdict) for turning in self._claim.turnings)

    @property
    def next_step(self) -> str:
        return self._claim.next_step.says if self._claim.next_step else ""

    @cached_property
    def rows(self) -> RowSet | None:
        """All rows that its arguments look at."""
        held = (*self.arguments_for, *self.arguments_against)
        return self._opener.rows.together(argument.rows for argument in held)

    def _views(self, arguments: Iterable[Argument]) -> tuple[ArgumentView, ...]:
        return tuple(ArgumentView(self._opener, argument) for argument in arguments)


def tidied(text: str) -> str:
    """
    What judging put in figures, with the signs that pages use.

    >>> tidied("-68 % (95% interval -81.8 % to -42.0 %; n = 48), 0.5-1 mm of non-wood")
    '−68% (95% interval −81.8% to −42.0%; n = 48), 0.5-1 mm of non-wood'
    """
    return _BELOW_NOUGHT.sub("−", _PER_CENT.sub("%", text))


_PER_CENT = re.compile(r"(?<=\d)[ \u00a0]%")
_BELOW_NOUGHT = re.compile(r"(?<![\w\d.)])-(?=\d)")


def evidence_title(evidence: Evidence) -> str:
    """
    What was looked at, in words.

    >>> evidence_title(Evidence(measure="ratio.kernels_per_cupule", name="kernels_per_cupule", verdict="holds"))
    'kernels per cupule'
    >>> evidence_title(Evidence(measure="record.context_kind", verdict="holds"))
    'context kind on record'
    """
    measure, _, of = evidence.measure.partition(".")
    if measure == "record":
        return f"{of.replace('trait', 'sort of place').replace('_', ' ')} on record"
    return (evidence.name or measure).replace("_", " ")


def evidence_text(evidence: Evidence) -> str:
    """The value with its interval and n, what the record says, or why there is no value."""
    if evidence.measure.startswith("record."):
        return evidence.text or "not recorded"
    if evidence.value is None:
        return f"no value: {evidence.reason}"
    value = evidence.text or f"{evidence.value:.4g}"
    unit = f" {evidence.unit}" if evidence.unit and not evidence.measure.startswith(("items", "taxa")) else ""
    n = None if evidence.n == evidence.value else evidence.n
    pieces = ""
    if evidence.pieces and evidence.of is not None:
        pieces = f"; of the {evidence.of:,.0f} items set against the others {evidence.pieces:,} are pieces"
    return measured_text(value if unit.strip() in value else value + unit, _doubt(evidence, value), n, "") + pieces


def _doubt(evidence: Evidence, value: str) -> str:
    """The interval, in per cent where the value is told so."""
    if evidence.low is None:
        return ""
    is_percent = value.endswith("%")
    low, high = (None if end is None else f"{end:.3g}" for end in (evidence.low, evidence.high))
    if is_percent:
        low, high = (
            None if end is None else f"{end:.1%}".replace("%", "\u00a0%") for end in (evidence.low, evidence.high)
        )
    return f"{low} to {high or 'open above'}"


def measured_text(value: str, doubt: str, n: int | None, reason: str, writing: Writing | None = None) -> str:
    r"""
    A value with its doubt in brackets.

    >>> measured_text("8.2 items/l", "6.9–9.7", 120, ""), measured_text("–", "", None, "no volume was recorded")
    ('8.2 items/l (95% interval 6.9–9.7; n\xa0=\xa0120)', 'no value: no volume was recorded')
    """
    if reason:
        return f"no value: {reason}" + (f" ({doubt})" if doubt else "")
    inside = [f"95% interval {doubt}"] if doubt else []
    if n is not None:
        inside.append(f"n\u00a0=\u00a0{(writing or Writing()).whole(n)}")
    return value + (f" ({'; '.join(inside)})" if inside else "")
