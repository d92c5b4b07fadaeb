"""Plants or woods that were tested between two phases, listed with their figures, and set beside what chance brings."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import groupby

from narrate.model.findings import CHANCE, Findings
from narrate.model.narrative import Sentence
from narrate.model.plant_groups import PlantChange, is_more_than_chance
from narrate.model.project import Project
from narrate.model.stratigraphy import Phase
from narrate.telling import english, numbers
from narrate.telling.page import Page

SHOWN = 5
"""Plants that are told of those which differ only by their own test."""
Named = Callable[[PlantChange], str]


@dataclass(frozen=True, slots=True, kw_only=True)
class Compared:
    """All plants and all woods tested between the first phase with samples and the last, the least likely first."""

    first: Phase
    last: Phase
    plants: tuple[PlantChange, ...]
    woods: tuple[PlantChange, ...]


def compared(project: Project, findings: Findings) -> Compared | None:
    """None where there are not two phases with samples. What disclosed data alone would show is left out."""
    held = {project.context(sample.context).phase for sample in project.samples}
    phases = sorted((p for p in project.phases if p.id in held), key=lambda p: (p.start is None, p.start or 0))
    if len(phases) < 2:
        return None
    first, last = phases[0], phases[-1]
    alone = {c.what for c in findings.only_in_part if (c.first, c.last) == (first.id, last.id)}
    plants = (c for c in findings.plants if (c.first, c.last) == (first.id, last.id) and c.taxon not in alone)
    of_pair = (c for c in findings.woods if (c.first, c.last) == (first.id, last.id))
    woods = (c for c in of_pair if f"wood of {c.taxon}" not in alone)
    return Compared(first=first, last=last, plants=tuple(plants), woods=tuple(woods))


def with_figures(page: Page, changes: Sequence[PlantChange], name: Named, *, by: str = "samples") -> list[str]:
    """'pine (6, then 21)'; of neighbours with the same figures 'black locust and persimmon (none, then 7 each)'."""
    texts = []
    for figures, alike in groupby(changes, key=lambda change: _figures(change, by)):
        names = [name(change) for change in alike]
        texts.append(f"{page.listed(names)} ({figures}{' each' if len(names) > 1 else ''})")
    return texts


def listed_figures(page: Page, changes: Sequence[PlantChange], name: Named, *, by: str = "samples") -> str:
    """The same as one list; where its last figures are of several, commas part them: 'a (1), b and c (2 each)'."""
    texts = with_figures(page, changes, name, by=by)
    return ", ".join(texts) if texts and texts[-1].endswith(" each)") else page.listed(texts)


def _figures(change: PlantChange, by: str) -> str:
    before, after = change.with_it if by == "samples" else (change.contexts[0][0], change.contexts[1][0])
    return f"{so_many(before)}, then {so_many(after)}"


def near_sentences(
    page: Page, tested: Sequence[PlantChange], sure: Sequence[PlantChange], name: Named
) -> list[Sentence]:
    """
    Plants whose own test finds a difference that the correction does not uphold, and whether so many of them are what
    chance would bring among the plants that were tested beside those that outlast it.
    """
    others = [change for change in tested if change not in sure]
    near = [change for change in others if change.p < CHANCE <= change.p_holm]
    if not near:
        return []
    shown = near[:SHOWN]
    more = f", and {numbers.count(len(near) - SHOWN)} more" if len(near) > SHOWN else ""
    listed = ", ".join(with_figures(page, shown, name)) if more else listed_figures(page, shown, name)
    fall, are = english.agreed(len(near), "falls", "fall"), english.agreed(len(near), "is", "are")
    many = f"{numbers.count(len(near))} such among the {'other ' if sure else ''}{numbers.count(len(others))} {are}"
    expected = f"({numbers.figure(CHANCE * len(others), 1)} expected, if each stood by itself)"
    what = "more than chance alone would bring" if is_more_than_chance(len(near), len(others)) else (
        "no more than chance alone may bring"
    )  # fmt: skip
    joined = "though" if what.startswith("more") else "and"
    return page.say(
        [ref for change in shown for ref in change.refs],
        f"by sample {listed}{more} {fall} short of the correction, {joined} {many} {what} {expected}",
    )


def so_many(number: int) -> str:
    return str(number) if number else "none"


def probability(value: float) -> str:
    """
    A probability with two figures that say something.

    >>> [probability(p) for p in (1.0, 0.151, 0.0632, 0.00412, 0.000346, 0.00002)]
    ['1.00', '0.15', '0.063', '0.0041', '0.00035', 'under 0.0001']
    """
    if value < 0.0001:
        return "under 0.0001"
    steps = ((0.1, 2), (0.01, 3), (0.001, 4), (0.0, 5))
    return f"{value:.{next(places for least, places in steps if value >= least)}f}"
