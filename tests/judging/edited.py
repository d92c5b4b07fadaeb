"""
A project edited at random again and again: judging with what was kept gives what judging anew gives, bit for bit.

    OMP_NUM_THREADS=1 python -m tests.judging.edited --times 500 --seed 1
"""

from __future__ import annotations

import argparse
import random
from collections.abc import Callable
from dataclasses import fields, replace

import numpy as np

from narrate.judging.columns import StatementJudged
from narrate.judging.judge import judge
from narrate.judging.kept_units import KeptUnits
from narrate.model.claims import Claims
from narrate.model.ids import PhaseId, SampleId
from narrate.model.packs import Packs
from narrate.model.project import Project
from narrate.model.sampling import SizeClass
from tests.builders import a_context, a_count, a_phase, a_project, a_row, a_sample

THINGS = (
    ("Zea mays", "kernel"), ("Zea mays", "cupule"), ("cf. Zea mays", "cupule"), ("Chenopodium berlandieri", "seed"),
    ("Iva annua", "achene"), ("Carya", "nutshell"), ("Quercus", "acorn shell"), ("Quercus", "wood"),
    ("Phaseolus vulgaris", "cotyledon"), ("Rubus", "seed"), ("Prunus persica", "fruit stone"), ("Carya", "wood"),
)  # fmt: skip
Edit = Callable[[Project, random.Random], Project]


def a_small_dig(draw: random.Random) -> Project:
    """Six samples of four contexts in two features and two phases."""
    contexts = [
        a_context("C1", "hearth", feature="F1"),
        a_context("C2", "storage pit", feature="F1", deposit="secondary"),
        a_context("C3", "midden", phase=PhaseId("late"), deposit="unknown", security="unknown"),
        a_context("C4", "floor", phase=PhaseId("late"), feature="F2"),
    ]
    samples = [
        a_sample(f"S{i}", f"C{context}", proportion_sorted=share)
        for i, (context, share) in enumerate([(1, None), (1, 0.5), (2, None), (3, None), (3, 0.25), (4, None)])
    ]
    counts = [a_row(f"S{i}", *thing, draw.randrange(1, 30)) for i in range(6) for thing in draw.sample(THINGS, 7)]
    return a_project(contexts, samples, counts, phases=(a_phase(), a_phase("late", 1050, 1150)))


def edited(times: int, packs: Packs, *, seed: int, replicates: int = 40) -> tuple[list[str], float]:
    """What came out otherwise than judged anew, with the edit before; and the share of values that were found kept."""
    draw = random.Random(seed)
    project, kept, found = a_small_dig(draw), KeptUnits(), []
    judge(project, packs, replicates=replicates, kept=kept)
    asked = known = 0
    for number in range(times):
        name = draw.choice(sorted(EDITS))
        project = EDITS[name](project, draw)
        before = kept.now
        kept = KeptUnits.unpacked(kept.packed())
        incremental = judge(project, packs, replicates=replicates, kept=kept)
        fresh = judge(project, packs, replicates=replicates)
        found += [f"{number}, {name}: {what}" for what in differing(incremental, fresh)]
        asked, known = asked + len(kept.now), known + len(kept.now.keys() & before.keys())
    return found, known / asked


def differing(some: Claims, others: Claims) -> list[str]:
    """Columns that are not the same in both, by level and statement, and whether steps differ."""
    found = []
    for level, maker in some.columns.makers.items():  # type: ignore[attr-defined]
        theirs = others.columns.makers[level].judged.statements  # type: ignore[attr-defined]
        for id, own in maker.judged.statements.items():
            found += [
                f"{level} {id} {field.name}"
                for field in fields(StatementJudged)
                if not _same(getattr(own, field.name), getattr(theirs[id], field.name))
            ]
    return [*found, *([] if some.steps == others.steps else ["steps"])]


def _same(one: object, other: object) -> bool:
    if isinstance(one, np.ndarray) and isinstance(other, np.ndarray):
        return one.dtype == other.dtype and one.shape == other.shape and one.tobytes() == other.tobytes()
    return one == other


def _with(items: tuple, at: int, **changes: object) -> tuple:  # type: ignore[type-arg]
    return (*items[:at], replace(items[at], **changes), *items[at + 1 :])


def _a_count(project: Project, draw: random.Random) -> Project:
    at = draw.randrange(len(project.counts))
    return replace(project, counts=_with(project.counts, at, count=a_count(str(draw.randrange(0, 50)))))


def _a_mark(project: Project, draw: random.Random) -> Project:
    at = draw.randrange(len(project.counts))
    return replace(project, counts=_with(project.counts, at, count=a_count("x")))


def _a_row_more(project: Project, draw: random.Random) -> Project:
    at = draw.randrange(len(project.counts) + 1)
    sample = draw.choice(project.samples)
    share = min((c.proportion_sorted for c in sample.size_classes), default=1.0)
    row = a_row(str(sample.id), *draw.choice(THINGS), draw.randrange(1, 40), proportion_sorted=share)
    return replace(project, counts=(*project.counts[:at], row, *project.counts[at:]))


def _a_row_less(project: Project, draw: random.Random) -> Project:
    if len(project.counts) < 10:
        return project
    at = draw.randrange(len(project.counts))
    return replace(project, counts=(*project.counts[:at], *project.counts[at + 1 :]))


def _rows_mixed(project: Project, draw: random.Random) -> Project:
    return replace(project, counts=tuple(draw.sample(project.counts, len(project.counts))))


def _samples_mixed(project: Project, draw: random.Random) -> Project:
    return replace(project, samples=tuple(draw.sample(project.samples, len(project.samples))))


def _a_volume(project: Project, draw: random.Random) -> Project:
    at = draw.randrange(len(project.samples))
    return replace(project, samples=_with(project.samples, at, volume_l=draw.choice([None, 5.0, 10.0, 20.0])))


def _a_share(project: Project, draw: random.Random) -> Project:
    at, share = draw.randrange(len(project.samples)), draw.choice([0.25, 0.5, 1.0])
    id, classes = project.samples[at].id, (SizeClass(name="all", proportion_sorted=share),)
    counts = tuple(replace(row, proportion_sorted=share) if row.sample == id else row for row in project.counts)
    return replace(project, counts=counts, samples=_with(project.samples, at, size_classes=classes))


def _a_sample_named(project: Project, draw: random.Random) -> Project:
    at, name = draw.randrange(len(project.samples)), SampleId(f"S{draw.randrange(100, 999)}")
    if any(sample.id == name for sample in project.samples):
        return project
    id = project.samples[at].id
    counts = tuple(replace(row, sample=name) if row.sample == id else row for row in project.counts)
    return replace(project, counts=counts, samples=_with(project.samples, at, id=name))


def _a_sample_moved(project: Project, draw: random.Random) -> Project:
    at, context = draw.randrange(len(project.samples)), draw.choice(project.contexts).id
    return replace(project, samples=_with(project.samples, at, context=context))


def _a_sample_more(project: Project, draw: random.Random) -> Project:
    name = f"S{draw.randrange(1000, 9999)}"
    if len(project.samples) > 9 or any(sample.id == name for sample in project.samples):
        return project
    rows = [a_row(name, *thing, draw.randrange(1, 30)) for thing in draw.sample(THINGS, 4)]
    sample = a_sample(name, str(draw.choice(project.contexts).id))
    return replace(project, samples=(sample, *project.samples), counts=(*rows, *project.counts))


def _a_sample_less(project: Project, draw: random.Random) -> Project:
    if len(project.samples) < 4:
        return project
    gone = draw.choice(project.samples)
    return replace(
        project,
        samples=tuple(sample for sample in project.samples if sample.id != gone.id),
        counts=tuple(row for row in project.counts if row.sample != gone.id),
    )


def _a_context(project: Project, draw: random.Random) -> Project:
    at = draw.randrange(len(project.contexts))
    change = draw.choice(
        [
            {"kind": draw.choice(["hearth", "midden", "floor", "smudge pit", "earth oven"])},
            {"deposit": draw.choice(["primary", "secondary", "tertiary", "unknown"])},
            {"security": draw.choice(["sealed", "open", "disturbed", "unknown"])},
            {"phase": draw.choice([None, PhaseId("early"), PhaseId("late")])},
            {"feature": draw.choice([None, "F1", "F2"])},
        ]
    )
    return replace(project, contexts=_with(project.contexts, at, **change))


def _contexts_mixed(project: Project, draw: random.Random) -> Project:
    return replace(project, contexts=tuple(draw.sample(project.contexts, len(project.contexts))))


def _a_phase_dated(project: Project, draw: random.Random) -> Project:
    at = draw.randrange(len(project.phases))
    return replace(project, phases=_with(project.phases, at, end=draw.choice([None, 900, 1100, 1400, 1700])))


def _preservation(project: Project, draw: random.Random) -> Project:
    return replace(project, preservation=draw.choice(["charred", "charred", "waterlogged"]))


def _nothing(project: Project, draw: random.Random) -> Project:
    return project


EDITS: dict[str, Edit] = {
    edit.__name__.strip("_").replace("_", " "): edit
    for edit in (
        _a_count, _a_mark, _a_row_more, _a_row_less, _rows_mixed, _samples_mixed, _a_volume, _a_share, _a_sample_named,
        _a_sample_moved, _a_sample_more, _a_sample_less, _a_context, _contexts_mixed, _a_phase_dated, _preservation,
        _nothing,
    )
}  # fmt: skip


def main() -> None:
    from narrate.reading.packs import read_packs

    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--times", type=int, default=500)
    parser.add_argument("--seed", type=int, default=1)
    given = parser.parse_args()
    packs = read_packs(("eastern-north-america",))[0]
    found, known = edited(given.times, packs, seed=given.seed)
    print(*found, sep="\n")
    print(f"{given.times} edits: {len(found)} columns came out otherwise; {known:.0%} of the values had been kept")


if __name__ == "__main__":
    main()
