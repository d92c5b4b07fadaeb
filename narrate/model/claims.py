"""Statements judged for one subject, with the evidence."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import islice, takewhile
from typing import Literal

from narrate.model.claim_columns import MANY, CameOut, ClaimColumns, Outcome, SumsOfClaims, Tallied, Unmet
from narrate.model.ids import LEVELS, Level, PartId, RuleId, SourceKey, StatementId, Subject, TaxonId
from narrate.model.late import Late
from narrate.model.next_steps import NextStep
from narrate.model.rules import Verdict
from narrate.problems import Place

Grade = Literal["not supported", "consistent with", "suggests", "supports", "strongly supports"]
GRADES: tuple[tuple[Grade, float], ...] = (
    ("consistent with", 0.5),
    ("suggests", 0.66),
    ("supports", 0.8),
    ("strongly supports", 0.93),
)
"""Grades and the support from which each may be used, weakest first."""
DRAWS = 200
"""How often counts are drawn anew at random to see whether a verdict stays."""
TOLD_AS_CLOSE = 0.8
"""Share of the draws below which a reading is told as close (judgement of the makers)."""
GRADE_NAMES: tuple[Grade, ...] = ("not supported", *(grade for grade, _ in GRADES))


@dataclass(frozen=True, slots=True, kw_only=True)
class Evidence:
    """One measured value or recorded fact that a criterion looked at."""

    measure: str
    """Measure and what it was taken of, such as 'ratio.kernel/cupule'; facts read 'record.deposit'."""
    name: str = ""
    value: float | None = None
    low: float | None = None
    high: float | None = None
    unit: str = ""
    n: int | None = None
    text: str = ""
    """For facts: what the record says. For values: the value in words, with unit."""
    reason: str = ""
    verdict: Verdict
    of: float | None = None
    """Items (or grams, or samples) of the first selector, for texts such as '12 kernels'."""
    to: float | None = None
    pieces: int = 0
    """Of a ratio: how many items of the first selector are fragments, where they are most of them and so no like
    units of the second; else 0."""
    places: Sequence[Place] = ()
    """Rows behind it, in the order of the sheets; worked out when they are read."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Argument:
    """A rule as it came out for the subject."""

    rule: RuleId
    direction: Literal["for", "against"]
    weight: float
    """Log-odds that it adds (for) or takes away (against) when it holds."""
    verdict: Verdict
    says: str
    """The rule's clause for specialists with its figures filled in."""
    says_plain: str
    evidence: tuple[Evidence, ...]
    share_holding: float | None = None
    """Share of the resampled counts in which it comes out the same."""
    counted_with: RuleId | None = None
    """The argument on the same remains that holds as well and is added in its stead; None: it is added itself."""


class LateArguments(Late[Argument]):
    """Arguments of a claim that are made when they are read; which of them hold is known before."""

    __slots__ = ("holding", "rules_held")

    def __init__(
        self,
        length: int,
        holding: int,
        rules_held: Callable[[str], tuple[RuleId, ...]],
        make: Callable[[int], Argument],
    ) -> None:
        super().__init__(length, make)
        self.holding = holding
        self.rules_held = rules_held


@dataclass(frozen=True, slots=True, kw_only=True)
class LimitInForce:
    limit: str
    says: str
    """'deposit is tertiary: grade held at 'suggests''."""
    lifts: str
    grade: Grade


Balance = Literal["this", "rival", "undecided", "neither holds"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Rival:
    """A rival reading as it stands for the same subject, to be set beside the claim."""

    claim: str
    """Id of the rival claim."""
    statement: StatementId
    verdict: Verdict
    support: float
    grade: Grade
    balance: Balance
    """Which of the two the remains favour; 'undecided' where both hold and their support differs by less than one weak
    argument weighs."""
    speak_for: tuple[RuleId, ...] = ()
    """Arguments for the rival that hold, heaviest first."""
    speak_against: tuple[RuleId, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Turning:
    """A change in the count of one kind of thing that turns the verdict; no smaller one of that kind does."""

    items: int
    """Items more (above 0) or fewer (below 0)."""
    taxon: TaxonId | None
    part: PartId
    condition: str
    sample: str
    """The sample in which they would be more or fewer first."""
    verdict: Verdict
    """What the verdict would become."""
    says: str
    """'two more kernels of maize', 'one more hazel nutshell in a third sample'."""
    by_sample: tuple[tuple[str, int], ...] = ()
    """Items more or fewer by sample, where it matters in which of them; empty where it does not."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Claim:
    id: str
    about: Subject
    question: str
    statement: StatementId
    verdict: Verdict
    support: float
    """0 to 1: the weighed evidence, not a probability."""
    grade: Grade
    """What may be said, after limits."""
    stability: float | None
    """Share of resampled counts in which the verdict stays; None where it was not worked out."""
    arguments: Sequence[Argument]
    """Those that hold first, then those that fail, then those that cannot be told, each heaviest first; made when they
    are read."""
    limits: tuple[LimitInForce, ...] = ()
    misleads_when: tuple[str, ...] = ()
    alternatives: tuple[StatementId, ...] = ()
    """Rival statements that some argument also speaks for here, then the statement's other rivals."""
    sources: tuple[SourceKey, ...] = ()
    turnings: tuple[Turning, ...] = ()
    """The smallest changes up and down that turn the verdict, and the smallest that makes it hold, the smallest first;
    empty where none of up to 30 items does, or where none was looked for."""
    unlimited: Grade | None = None
    """What might be said if no limit held it down; None where that was not kept."""
    rivals: Sequence[Rival] = ()
    """Rivals that were judged for the same subject, those that hold first; made when they are read."""
    next_step: NextStep | None = None
    """The work that would do most for this claim at its cost; None where nothing would."""

    @property
    def is_undecided(self) -> bool:
        """True where a rival holds as firmly, so that the remains do not decide between the two."""
        return any(rival.balance == "undecided" for rival in self.rivals)

    @property
    def holding(self) -> Iterable[Argument]:
        """Arguments that hold, heaviest first; no others are made."""
        if isinstance(self.arguments, LateArguments):
            return self.arguments[: self.arguments.holding]
        return takewhile(lambda argument: argument.verdict == "holds", self.arguments)

    def held(self, direction: str) -> tuple[Argument, ...]:
        """Those of one direction."""
        return tuple(argument for argument in self.holding if argument.direction == direction)

    def rules_held(self, direction: str) -> tuple[RuleId, ...]:
        """The rules of those arguments, without making them."""
        if isinstance(self.arguments, LateArguments):
            return self.arguments.rules_held(direction)
        return tuple(argument.rule for argument in self.held(direction))


@dataclass(frozen=True, slots=True, kw_only=True)
class Claims:
    """All claims of a project, by id and by subject, in a fixed order."""

    by_id: Mapping[str, Claim]
    by_subject: Mapping[Subject, tuple[Claim, ...]]
    steps: Mapping[Subject, tuple[NextStep, ...]] = field(default_factory=dict)
    """Work that would firm up what is said of each sample and context, and of the site; the best for its cost first."""
    columns: ClaimColumns | None = None
    """What the claims are made of, where they are made when somebody asks for them."""
    sums: SumsOfClaims | None = None
    """Where claims are made of columns: what tells whether one is still the same."""

    def __iter__(self) -> Iterator[Claim]:
        return iter(self.by_id.values())

    def about(self, subject: Subject) -> tuple[Claim, ...]:
        return self.by_subject.get(subject, ())

    def holding(self, subject: Subject) -> tuple[Claim, ...]:
        """The claims of a subject that hold, in the order of `about`."""
        if self.columns is not None:
            return self.columns.holding(subject)
        return tuple(claim for claim in self.about(subject) if claim.verdict == "holds")

    def all_holding(self, levels: Collection[Level] = LEVELS) -> Iterator[Claim]:
        """All claims that hold of subjects of some levels, in their order; those of others are not made."""
        return (claim for subject in self.by_subject if subject.level in levels for claim in self.holding(subject))

    def many_holding(self) -> int:
        """How many claims hold."""
        return sum(1 for _ in self.all_holding()) if self.columns is None else self.columns.many_holding()

    def tallied(self) -> Tallied:
        """How often each rule came out which way."""
        if self.columns is not None:
            return self.columns.tallied()
        found: dict[RuleId, dict[Level, dict[Verdict, int]]] = {}
        for one in self.came_out():
            of_level = found.setdefault(one.rule, {}).setdefault(one.about.level, {})
            of_level[one.verdict] = of_level.get(one.verdict, 0) + 1
        return found

    def came_out(self) -> Iterator[CameOut]:
        """How every argument of every claim came out, in their order."""
        if self.columns is not None:
            return self.columns.came_out()
        return (
            CameOut(claim.id, claim.about, argument.rule, argument.direction, argument.verdict, argument.weight)
            for claim in self
            for argument in claim.arguments
        )

    def outcomes(self, subject: Subject) -> Iterator[Outcome]:
        """How each statement came out for a subject, in the order of `about`."""
        if self.columns is not None:
            return self.columns.outcomes(subject)
        return (
            Outcome(claim.statement, claim.verdict, any(one.verdict == "holds" for one in claim.arguments))
            for claim in self.about(subject)
        )

    def unmet(self, subject: Subject, statement: StatementId, verdict: Verdict, most: int = MANY) -> Iterator[Unmet]:
        """Arguments of a claim that cannot tell, or that fail, in their order; with at most so many things wanting."""
        if self.columns is not None:
            return self.columns.unmet(subject, statement, verdict, most)
        claim = self.find(subject, statement)
        arguments = () if claim is None else claim.arguments
        return (_unmet(argument, most) for argument in arguments if argument.verdict == verdict)

    def find(self, subject: Subject, statement: str) -> Claim | None:
        if self.columns is not None:
            return self.columns.find(subject, statement)
        return next((claim for claim in self.about(subject) if claim.statement == statement), None)


def _unmet(argument: Argument, most: int) -> Unmet:
    wanting = ((at, one) for at, one in enumerate(argument.evidence) if one.verdict != "holds")
    return Unmet(argument.rule, tuple(islice(wanting, most)), len(argument.evidence))
