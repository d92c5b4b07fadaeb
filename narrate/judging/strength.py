"""How strong a story each sample and context tells: six parts, each with its value and its points."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from narrate.model.claims import GRADE_NAMES, Argument, Claim, Claims
from narrate.model.findings import Findings
from narrate.model.ids import Level, StatementId, Subject
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
    contexts = {str(context.id): context for context in project.contexts}
    of_sample = {str(sample.id): str(sample.context) for sample in project.samples}
    for level in LEVELS_RANKED:
        subjects = [subject for subject in keys if subject.level == level]
        shared = _shared(subjects, claims)
        found = [
            _strength(
                subject,
                contexts[subject.id if level == "context" else of_sample[subject.id]],
                packs,
                findings,
                claims,
                shared,
                len(subjects),
            )
            for subject in subjects
        ]
        order = {subject: i for i, subject in enumerate(subjects)}
        found.sort(key=lambda s: (-s.points, -(s.parts[0].value or 0), order[s.subject]))
        by_level.append((level, tuple(found)))
    site = next(subject for subject in keys if subject.level == "site")
    return Ranking(meant=MEANT, by_level=tuple(by_level), of_dig=claims.steps.get(site, ()))


def _strength(
    subject: Subject,
    context: Context,
    packs: Packs,
    findings: Findings,
    claims: Claims,
    shared: Mapping[StatementId, int],
    others: int,
) -> Strength:
    holding = readings(claims.holding(subject))
    # Of equally firm readings one of plants is named rather than one of the deposit.
    firmest = max(holding, key=lambda c: (GRADE_NAMES.index(c.grade), c.question != "deposit", c.support), default=None)
    rarest = min(holding, key=lambda c: (shared[c.statement], c.id), default=None)
    measured = findings.of(subject).measurements
    items, density = measured["items"].value, measured["density"].value
    steps = claims.steps.get(subject, ())
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
            _lines(holding),
            _firmness(firmest),
            _security(context, claims.holding(subject)),
            _rarity(rarest, shared, others),
        ),
        firmest=packs.statements[firmest.statement].title if firmest else "",
        firmest_claim=firmest.id if firmest else "",
        rarest=packs.statements[rarest.statement].title if rarest else "",
        next_step=next((step for step in steps if step.pays), None),
        turned_by=firmest.turnings[0].says if firmest and firmest.turnings else "",
    )


def readings(claims: Sequence[Claim]) -> list[Claim]:
    """Claims about the past that hold and rest on remains; what records alone say is no story of plants."""
    return [
        claim
        for claim in claims
        if claim.verdict == "holds"
        and claim.question not in NOT_A_STORY
        and claim.statement not in CAUTIONS
        and any(_rows_behind(argument) for argument in claim.held("for"))
    ]


def independent_lines(claims: Sequence[Claim]) -> int:
    """
    Arguments for claims that hold, each resting on rows of count sheets that none of the others rests on.

    The narrowest are taken first, so that an argument from all items does not stand for all others. Arguments that rest
    on records alone are no line of evidence from the remains.
    """
    sets = {_rows_behind(argument) for claim in claims for argument in claim.held("for")} - {frozenset()}
    taken: set[Place] = set()
    lines = 0
    for rows in sorted(sets, key=lambda rows: (len(rows), sorted(rows))):
        if not rows & taken:
            taken |= rows
            lines += 1
    return lines


def _rows_behind(argument: Argument) -> frozenset[Place]:
    """Rows of count sheets with anything of what the argument looked at."""
    return frozenset(
        place
        for evidence in argument.evidence
        if not evidence.measure.startswith("record.") and evidence.of
        for place in evidence.places
    )


def _lines(holding: Sequence[Claim]) -> Part:
    lines = independent_lines(holding)
    return Part(id="lines", value=lines, text=str(lines), points=_reached(lines, LINES))


def _firmness(firmest: Claim | None) -> Part:
    if firmest is None:
        return Part(id="firmness", value=None, text="nothing holds", points=0)
    return Part(id="firmness", value=firmest.support, text=firmest.grade, points=GRADE_POINTS[firmest.grade])


def _security(context: Context, claims: Sequence[Claim]) -> Part:
    doubts = ("integrity.disturbed", "integrity.modern-seeds", "integrity.out-of-period")
    is_doubted = any(claim.statement in doubts and claim.verdict == "holds" for claim in claims)
    points = sum((context.security == "sealed", context.deposit in ("primary", "de facto"), not is_doubted))
    if context.security == "disturbed":
        points = 0
    text = f"{context.security}, {context.deposit}" if context.security != context.deposit else context.security
    return Part(id="security", value=None, text=text + (", doubted" if is_doubted else ""), points=points)


def _rarity(rarest: Claim | None, shared: Mapping[StatementId, int], others: int) -> Part:
    if rarest is None:
        return Part(id="rarity", value=None, text="none", points=0)
    share = shared[rarest.statement] / others
    points = sum(share <= bound for bound in RARE)
    return Part(id="rarity", value=share, text=f"{shared[rarest.statement]} of {others}", points=points)


def _shared(subjects: Sequence[Subject], claims: Claims) -> dict[StatementId, int]:
    found: dict[StatementId, int] = {}
    for subject in subjects:
        for claim in readings(claims.holding(subject)):
            found[claim.statement] = found.get(claim.statement, 0) + 1
    return found


def _reached(value: float | None, bounds: Sequence[float]) -> int:
    return 0 if value is None else sum(value >= bound for bound in bounds)
