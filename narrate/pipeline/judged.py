"""A project folder, read, measured and judged: where most commands begin."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field, replace
from functools import partial
from pathlib import Path

from narrate.disclosure import disclosed
from narrate.judging.check_rules import check_rules
from narrate.judging.depth import WHOLE, Depth
from narrate.judging.judge import judge
from narrate.judging.kept_units import KeptUnits
from narrate.judging.no_firmer import no_firmer
from narrate.measures.findings import find
from narrate.model.claims import Claims
from narrate.model.findings import Findings
from narrate.model.packs import Packs
from narrate.model.project import Disclosure, Project
from narrate.pipeline.kept_units import kept_before
from narrate.pipeline.side_by_side import side_by_side
from narrate.pipeline.unchanged import packs_ground
from narrate.problems import Problem, has_errors
from narrate.reading.folder import Reading, read_folder
from narrate.reading.pointing import pointed

Progress = Callable[[str], None]
"""Told the name of each step before it begins."""


def silent(step: str) -> None:
    """A progress that tells nobody."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Judged:
    """A project, or what may be disclosed of it, measured and judged."""

    project: Project
    packs: Packs
    findings: Findings
    claims: Claims

    @property
    def is_large(self) -> bool:
        """Whether two processes are worth while."""
        return len(self.project.contexts) + len(self.project.samples) >= LARGE


LARGE = 50
"""Contexts and samples from which work is done side by side."""


@dataclass(frozen=True, slots=True, kw_only=True)
class JudgedFolder:
    """What a folder holds, judged; `whole` is None where errors stand in the way."""

    whole: Judged | None
    problems: tuple[Problem, ...]
    kept: KeptUnits = field(default_factory=KeptUnits)
    """What was worked out of single units, for the next run."""
    ground: str = ""
    """What it rests on besides the project; empty where there is doubt."""


def read(folder: Path, *, strict: bool = False) -> Reading:
    """Everything that was read, with the problems of the project's own rules added; `strict` makes warnings errors."""
    reading = read_folder(folder)
    problems = reading.problems
    if reading.packs is not None:
        problems = (*problems, *pointed(folder, check_rules(reading.packs, only_local=True)))
    if strict:
        problems = tuple(as_error(problem) for problem in problems)
    ordered = tuple(sorted(problems, key=Problem.in_order))
    return Reading(project=reading.project, packs=reading.packs, problems=ordered)


def judged(
    project: Project, packs: Packs, *, kept: KeptUnits | None = None, depth: Depth = WHOLE
) -> Judged:
    at_once = partial(side_by_side, is_large=True)  # judging shares out what is much
    claims = judge(project, packs, kept=kept, depth=depth, at_once=at_once)
    return Judged(project=project, packs=packs, findings=find(project, packs), claims=claims)


def disclosed_part(
    whole: Judged, *, kept: KeptUnits | None = None, depth: Depth = WHOLE
) -> Judged:
    """
    What may be disclosed of a project, judged anew from that alone.

    Where all that was taken out is what no measure and no rule reads, such as coordinates and descriptions, judging it
    anew would give the same again, and what was found is shared. Else it is told no firmer than the whole: what the
    whole does not say is not said, and a change that shows in the open part alone is marked as such.
    """
    project = disclosed(whole.project)
    if _as_judged(project) == _as_judged(whole.project):
        return replace(whole, project=project)
    part = judged(project, whole.packs, kept=kept, depth=depth)
    return replace(
        part,
        findings=replace(part.findings, only_in_part=part.findings.changed() - whole.findings.changed()),
        claims=no_firmer(part.claims, whole.claims, whole.packs),
    )


def _as_judged(project: Project) -> Project:
    """The project without what measures and rules never read; areas are compared, so they stay."""
    contexts = tuple(
        replace(
            context,
            description="",
            note="",
            images=(),
            location={key: said for key, said in context.location.items() if key == "area"},
        )
        for context in project.contexts
    )
    return replace(
        project,
        summary="",
        report={},
        report_blocks=(),
        report_checklist=(),
        disclosure=Disclosure(),
        contexts=contexts,
        is_withheld_in_part=False,
    )


def judged_folder(
    folder: Path, *, strict: bool = False, progress: Progress = silent, depth: Depth = WHOLE
) -> JudgedFolder:
    """
    The folder read and, where it has no errors, measured and judged with nothing taken out.

    depth: what is slow to work out and shown by what is made of it.
    """
    progress("reading records and count sheets")
    ground = packs_ground(folder)
    reading = read(folder, strict=strict)
    if reading.project is None or reading.packs is None or has_errors(reading.problems):
        return JudgedFolder(whole=None, problems=reading.problems)
    progress("measuring and judging for the team")
    if ground != packs_ground(folder):
        ground = ""  # packs were edited while they were read
    kept = kept_before(folder, ground)
    return JudgedFolder(
        # What was kept is as deep as can be, and taken over at once.
        whole=judged(reading.project, reading.packs, kept=kept, depth=WHOLE if kept else depth),
        problems=reading.problems,
        kept=kept,
        ground=ground,
    )


def as_error(problem: Problem) -> Problem:
    return replace(problem, severity="error")
