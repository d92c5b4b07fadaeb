"""How strong a story each sample and context tells: six parts, each with its value and its points."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from itertools import chain

from narrate.judging.claims_by_subject import ClaimsBySubject
from narrate.model.claims import GRADE_NAMES, Claim, Claims
from narrate.model.findings import Findings
from narrate.model.ids import Level, StatementId, Subject
from narrate.model.next_steps import NextStep
from narrate.model.packs import Packs
from narrate.model.project import Project
from narrate.model.refs import subject_keys
from narrate.model.stratigraphy import Context
from narrate.model.strength import Part, PartMeant, Ranking, Strength
from narrate.problems import Place

LEVELS_RANKED: tuple[Level, ...] = ("context", "sample")

ITEMS = (30, 100, 385)
"""Items from which 1, 2 and 3 points are given. 30 is what most workers ask of a sample, 385 gives shares to within
five points (van der Veen & Fieller 1982); 100 lies between. Defaults to check."""
DENSITY = (1.0, 10.0, 50.0)
"""Items per litre from which points are given. Judgement of the makers."""
LINES = (1, 2, 4)
"""Independent lines of evidence from which points are given. Judgement of the makers."""
GRADE_POINTS: Mapping[str, int] = {
    "not supported": 0, "consistent with": 0, "suggests": 1, "supports": 2, "strongly supports": 3,
}  # fmt: skip
RARE = (0.5, 0.25, 0.1)
"""Shares of the level's subjects at or below which the rarest reading gives points. Judgement of the makers."""

NOT_A_STORY = ("integrity", "work")
"""Questions whose answers are doubts or plans, not readings of the past."""

CAUTIONS = ("season.stored-only",)
"""Statements that say what cannot be read, and are no story either."""

DOUBTS = ("integrity.disturbed", "integrity.modern-seeds", "integrity.out-of-period")
"""Statements that take a point from the security of a deposit."""

MEANT: tuple[PartMeant, ...] = (
    PartMeant(
        id="items",
        title="items",
        explained=f"Items counted; a point from {ITEMS[0]}, {ITEMS[1]} and {ITEMS[2]}.",
    ),
    PartMeant(
        id="density",
        title="density",
        explained=f"Items per litre; a point from {DENSITY[0]:g}, {DENSITY[1]:g} and {DENSITY[2]:g}.",
    ),
    PartMeant(
        id="lines",
        title="lines",
        explained="Independent lines of evidence: arguments for readings that hold, each resting on rows of its own; "
        f"a point from {LINES[0]}, {LINES[1]} and {LINES[2]}.",
    ),
    PartMeant(
        id="firmness",
        title="firmness",
        explained="Grade of the firmest reading after limits; one point for 'suggests', two for 'supports', three for "
        "'strongly supports'.",
    ),
    PartMeant(
        id="security",
        title="security",
        explained="One point each for a sealed context, for a deposit that was not moved (primary or de facto), and "
        "for no reading that it was disturbed or holds modern seeds; none where the context is disturbed.",
    ),
    PartMeant(
        id="rarity",
        title="rarity",
        explained="How few others of the level share its rarest reading; a point where at most a half, a quarter and a "
        "tenth of them do.",
    ),
)
"""What is shown, in this order. The order of the ranking is the plain sum of the points."""


def ranked(project: Project, packs: Packs, findings: Findings, claims: Claims) -> Ranking:
    """Every context and sample with its parts, the most points first; equal ones by items, then by id."""
    keys = list(subject_keys(project))
    by_level: list[tuple[Level, tuple[Strength, ...]]] = []
    behind = _of_columns(claims.columns) if isinstance(claims.columns, ClaimsBySubject) else _rows_behind
    contexts = {str(context.id): context for context in project.contexts}
    of_sample = {str(sample.id): str(sample.context) for sample in project.samples}
    for level in LEVELS_RANKED:
        subjects = [subject for subject in keys if subject.level == level]
        stories = [_story(claims.holding(subject), behind, packs) for subject in subjects]
        shared: dict[StatementId, int] = {}
        for story in stories:
            for statement, _ in story.read:
                shared[statement] = shared.get(statement, 0) + 1
        found = [
            _strength(
                subject,
                story,
                contexts[subject.id if level == "context" else of_sample[subject.id]],
                packs,
                findings,
                claims.steps.get(subject, ()),
                shared,
                len(subjects),
            )
            for subject, story in zip(subjects, stories, strict=True)
        ]
        order = {subject: i for i, subject in enumerate(subjects)}
        found.sort(key=lambda s: (-s.points, -(s.parts[0].value or 0), order[s.subject]))
        by_level.append((level, tuple(found)))
    site = next(subject for subject in keys if subject.level == "site")
    return Ranking(meant=MEANT, by_level=tuple(by_level), of_dig=claims.steps.get(site, ()))


@dataclass(frozen=True, slots=True, kw_only=True)
class _Story:
    """What the claims of one subject tell; the claims themselves are not kept."""

    read: tuple[tuple[StatementId, str], ...]
    """Statement and claim of each reading."""
    lines: Part
    firmness: Part
    firmest: str
    firmest_claim: str
    turned_by: str
    is_doubted: bool


def _story(holding: Sequence[Claim], behind: RowsBehind, packs: Packs) -> _Story:
    rows = {claim.id: behind(claim) for claim in holding}
    read = [claim for claim in holding if _is_reading(claim) and any(rows[claim.id])]
    # Of equally firm readings one of plants is named rather than one of the deposit.
    firmest = max(read, key=lambda c: (GRADE_NAMES.index(c.grade), c.question != "deposit", c.support), default=None)
    return _Story(
        read=tuple((claim.statement, claim.id) for claim in read),
        lines=_lines(_lines_in(chain.from_iterable(rows[claim.id] for claim in read))),
        firmness=_firmness(firmest),
        firmest=packs.statements[firmest.statement].title if firmest else "",
        firmest_claim=firmest.id if firmest else "",
        turned_by=firmest.turnings[0].says if firmest and firmest.turnings else "",
        is_doubted=any(claim.statement in DOUBTS and claim.verdict == "holds" for claim in holding),
    )


def _strength(
    subject: Subject,
    story: _Story,
    context: Context,
    packs: Packs,
    findings: Findings,
    steps: Sequence[NextStep],
    shared: Mapping[StatementId, int],
    others: int,
) -> Strength:
    rarest = min(story.read, key=lambda one: (shared[one[0]], one[1]), default=None)
    measured = findings.of(subject).measurements
    items, density = measured["items"].value, measured["density"].value
    return Strength(
        subject=subject,
        kind=context.kind,
        parts=(
            Part(id="items", value=items, text=f"{items or 0:,.0f}", points=_reached(items, ITEMS)),
            Part(
                id="density",
                value=density,
                text="none" if density is None else f"{density:.2g}" if density < 10 else f"{density:,.0f}",
                points=_reached(density, DENSITY),
            ),
            story.lines,
            story.firmness,
            _security(context, is_doubted=story.is_doubted),
            _rarity(rarest[0] if rarest else None, shared, others),
        ),
        firmest=story.firmest,
        firmest_claim=story.firmest_claim,
        rarest=packs.statements[rarest[0]].title if rarest else "",
        next_step=next((step for step in steps if step.pays), None),
        turned_by=story.turned_by,
    )


def _is_reading(claim: Claim) -> bool:
    """Whether a claim that holds is about the past."""
    return claim.question not in NOT_A_STORY and claim.statement not in CAUTIONS


def independent_lines(claims: Sequence[Claim]) -> int:
    """
    Arguments for claims that hold, each resting on rows of count sheets that none of the others rests on.

    The narrowest are taken first, so that an argument from all items does not stand for all others. Arguments that rest
    on records alone are no line of evidence from the remains.
    """
    return _lines_in(chain.from_iterable(_rows_behind(claim) for claim in claims))


RowsBehind = Callable[[Claim], Sequence[frozenset[Place] | frozenset[int]]]
"""Gives the rows behind each argument for a claim that holds: their places, or numbers that rise with them."""


def _lines_in(arguments: Iterable[frozenset[Place] | frozenset[int]]) -> int:
    taken: set[Place | int] = set()
    lines = 0
    for rows in sorted(set(arguments) - {frozenset()}, key=lambda rows: (len(rows), sorted(rows))):  # type: ignore[type-var]
        if not rows & taken:
            taken |= rows
            lines += 1
    return lines


def _rows_behind(claim: Claim) -> list[frozenset[Place]]:
    """Rows of count sheets with anything of what each argument looked at."""
    return [
        frozenset(
            place
            for evidence in argument.evidence
            if not evidence.measure.startswith("record.") and evidence.of
            for place in evidence.places
        )
        for argument in claim.held("for")
    ]


def _of_columns(columns: ClaimsBySubject) -> RowsBehind:
    """The same without making the arguments."""
    return lambda claim: columns.rows_behind(claim.about, claim.statement)


def _lines(lines: int) -> Part:
    return Part(id="lines", value=lines, text=str(lines), points=_reached(lines, LINES))


def _firmness(firmest: Claim | None) -> Part:
    if firmest is None:
        return Part(id="firmness", value=None, text="nothing holds", points=0)
    return Part(id="firmness", value=firmest.support, text=firmest.grade, points=GRADE_POINTS[firmest.grade])


def _security(context: Context, *, is_doubted: bool) -> Part:
    points = sum((context.security == "sealed", context.deposit in ("primary", "de facto"), not is_doubted))
    if context.security == "disturbed":
        points = 0
    text = f"{context.security}, {context.deposit}" if context.security != context.deposit else context.security
    return Part(id="security", value=None, text=text + (", doubted" if is_doubted else ""), points=points)


def _rarity(rarest: StatementId | None, shared: Mapping[StatementId, int], others: int) -> Part:
    if rarest is None:
        return Part(id="rarity", value=None, text="none", points=0)
    share = shared[rarest] / others
    points = sum(share <= bound for bound in RARE)
    return Part(id="rarity", value=share, text=f"{shared[rarest]} of {others}", points=points)


def _reached(value: float | None, bounds: Sequence[float]) -> int:
    return 0 if value is None else sum(value >= bound for bound in bounds)
