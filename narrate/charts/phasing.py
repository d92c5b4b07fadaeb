"""Phases and contexts in the order of the dig, with the ink and shape that stand for each phase."""

from __future__ import annotations

from narrate.charts.inks import series
from narrate.charts.lettering import width_of
from narrate.charts.marks import Mark, Shape, Words
from narrate.charts.names import clean
from narrate.model.ids import PhaseId
from narrate.model.project import Project
from narrate.model.stratigraphy import Context

NO_PHASE = "No phase"


def phase_order(project: Project) -> tuple[PhaseId | None, ...]:
    """Phases as the project lists them, oldest first, then None for contexts without one."""
    return (*(phase.id for phase in project.phases), None)


def phase_name(project: Project, id: PhaseId | None) -> str:
    phase = project.phase(id)
    return NO_PHASE if phase is None else clean(phase.name) or clean(phase.id)


def phase_of(project: Project, context: Context) -> PhaseId | None:
    """Phase of the context; None where it has none or one that the project does not list."""
    return context.phase if project.phase(context.phase) is not None else None


def phase_mark(project: Project, id: PhaseId | None) -> tuple[str, str]:
    """Ink and shape of the phase; contexts without a phase have a shape of their own, in soft ink."""
    return ("soft", "hexagon") if id is None else series([phase.id for phase in project.phases].index(id))


def legend(entries: list[tuple[str, str, str]], width: float, y: float) -> tuple[list[Shape], float]:
    """Marks with names (ink, shape, name), in as many lines as they need; gives where the drawing may go on."""
    drawn: list[Shape] = []
    x = 0.0
    for ink, shape, name in entries:
        needed = width_of(name, 12) + 34
        if x and x + needed > width:
            x, y = 0.0, y + 20
        drawn.append(Mark(x=x + 6, y=y + 8, shape=shape, ink=ink))
        drawn.append(Words(x=x + 17, y=y + 12, text=name, size=12))
        x += needed
    return drawn, y + 24
