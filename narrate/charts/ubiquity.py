"""In how large a share of the samples each plant part was found, phase by phase."""

from __future__ import annotations

from dataclasses import dataclass

from narrate.charts.frame import WIDTH, chart
from narrate.charts.lettering import shortened, width_of, wrapped
from narrate.charts.marks import Mark, Shape, Stroke, Words
from narrate.charts.names import (
    ancient_conditions,
    capitalised,
    clean,
    latin,
    part_word,
    percent,
    plant,
    plant_in_italics,
    several,
)
from narrate.charts.phasing import legend, phase_mark, phase_name
from narrate.charts.scales import LinearScale
from narrate.model.figures import Chart
from narrate.model.findings import Findings, SubjectFindings, Tally
from narrate.model.ids import PartId, PhaseId, Subject
from narrate.model.packs import Packs
from narrate.model.project import Project

MOST_ROWS = 16
_ROOM, _LINE, _LANE = 205.0, 15.0, 11.0
_Z = 1.959963984540054

_Kind = tuple[str, str, str]
"""Taxon or written name, part, condition."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Share:
    phase: PhaseId
    samples: int
    of_samples: int
    low: float
    high: float

    @property
    def value(self) -> float:
        return self.samples / self.of_samples


@dataclass(frozen=True, slots=True, kw_only=True)
class _Plant:
    tally: Tally
    shares: tuple[_Share, ...]

    @property
    def change(self) -> float:
        """Last phase minus first."""
        return self.shares[-1].value - self.shares[0].value

    @property
    def spread(self) -> float:
        return max(s.value for s in self.shares) - min(s.value for s in self.shares)

    @property
    def highest(self) -> float:
        return max(share.value for share in self.shares)


def draw(findings: Findings, project: Project, packs: Packs, chart_id: str) -> Chart | None:
    """One row a plant part, one point a phase; None where no phase has samples with remains."""
    phases = _phases(findings, project)
    plants = _plants(phases, packs, project.preservation)
    if not plants:
        return None
    shown = _in_order(_most_telling(_named(plants, packs)))
    shapes, height = _picture(shown, phases, len(plants) - len(shown), project, packs)
    title = _title(_named(plants, packs), project, packs)
    return chart(
        chart_id=chart_id,
        shapes=shapes,
        height=height,
        title=title,
        alt=_alt(shown, phases, project, packs),
        note=_note(phases, project),
        columns=(
            "Taxon", "Part", "Condition", "Phase", "Samples with it", "Samples", "Share of samples (%)",
            "95% interval, from (%)", "95% interval, to (%)",
        ),
        rows=tuple(_row(each.tally, share, project, packs) for each in _in_order(plants) for share in each.shares),
    )  # fmt: skip


def _phases(findings: Findings, project: Project) -> dict[PhaseId, SubjectFindings]:
    found = {phase.id: findings.subjects.get(Subject(level="phase", id=phase.id)) for phase in project.phases}
    return {phase: each for phase, each in found.items() if each is not None and each.samples > 0}


def _plants(phases: dict[PhaseId, SubjectFindings], packs: Packs, preservation: str) -> tuple[_Plant, ...]:
    ancient = ancient_conditions(packs, preservation)
    tallies: dict[_Kind, dict[PhaseId, Tally]] = {}
    for phase, found in phases.items():
        for tally in found.tallies:
            if tally.condition in ancient and tally.samples > 0:
                kind = (str(tally.taxon or tally.written), str(tally.part), tally.condition)
                tallies.setdefault(kind, {})[phase] = tally
    return tuple(
        _Plant(
            tally=next(iter(by_phase.values())),
            shares=tuple(
                _share(phase, _looked_at(found, kind, packs), by_phase.get(phase)) for phase, found in phases.items()
            ),
        )
        for kind, by_phase in sorted(tallies.items())
    )


def _looked_at(found: SubjectFindings, kind: _Kind, packs: Packs) -> int:
    """Samples in which a thing could have been seen: a wood, where somebody looked at the wood."""
    part = packs.words.parts.get(PartId(kind[1]))
    of_wood = found.samples_with_named_wood
    return found.samples if of_wood is None or part is None or "wood" not in part.roles else of_wood


def _share(phase: PhaseId, n: int, tally: Tally | None) -> _Share:
    if tally is None or not tally.of_samples:
        # Found in no sample of the phase: Wilson's interval from none of n has its upper end at z²/(n + z²).
        return _Share(phase=phase, samples=0, of_samples=n, low=0.0, high=_Z * _Z / (n + _Z * _Z))
    value = tally.samples / tally.of_samples
    measured = tally.ubiquity
    low = measured.low if measured is not None and measured.low is not None else value
    high = measured.high if measured is not None and measured.high is not None else value
    return _Share(phase=phase, samples=tally.samples, of_samples=tally.of_samples, low=low, high=high)


def _named(plants: tuple[_Plant, ...], packs: Packs) -> tuple[_Plant, ...]:
    """All but broad groups such as 'hardwood' or 'indeterminate', which tell little, unless there is nothing else."""
    broad = {taxon.id for taxon in packs.taxa.values() if taxon.rank == "broad"}
    return tuple(each for each in plants if each.tally.taxon not in broad) or plants


def _most_telling(plants: tuple[_Plant, ...]) -> tuple[_Plant, ...]:
    """Half of them for the largest difference between phases, the rest for the largest share in any."""
    by_spread = sorted(plants, key=lambda each: (-each.spread, -each.highest))[: MOST_ROWS // 2]
    by_share = [each for each in sorted(plants, key=lambda each: -each.highest) if each not in by_spread]
    return tuple([*by_spread, *by_share][:MOST_ROWS])


def _in_order(plants: tuple[_Plant, ...]) -> tuple[_Plant, ...]:
    """What became rarer first, what became commoner last; with one phase, the commonest first."""

    def key(each: _Plant) -> tuple[float, float, str, str]:
        return round(each.change, 9), -each.highest, latin(each.tally), each.tally.part

    return tuple(sorted(plants, key=key))


def _picture(
    plants: tuple[_Plant, ...], phases: dict[PhaseId, SubjectFindings], left_out: int, project: Project, packs: Packs
) -> tuple[list[Shape], float]:
    labels = [wrapped(_label(each, plants, packs), 13, _ROOM) for each in plants]
    start = max(width_of(line, 13) for lines in labels for line in lines) + 16
    scale = LinearScale(top=1.0, start=start, end=WIDTH - 20)
    entries = []
    for phase, found in phases.items():
        name = shortened(phase_name(project, phase), 12, WIDTH - 160)
        entries.append((*phase_mark(project, phase), f"{name} ({several(found.samples, 'sample')})"))
    drawn, top = legend(entries, WIDTH, 2)
    rows: list[Shape] = []
    y = top
    for each, label in zip(plants, labels, strict=True):
        height = max(_LANE * len(phases) + 9, _LINE * len(label) + 8)
        first = y + height / 2 + 4.5 - _LINE * (len(label) - 1) / 2
        rows += [Words(x=start - 16, y=first + _LINE * n, text=t, anchor="right") for n, t in enumerate(label)]
        rows += _points(each, y + height / 2, scale, project)
        y += height
        rows.append(Stroke(points=((0, y), (WIDTH, y)), ink="faint"))
    if left_out:
        rows.append(Words(x=0, y=y + 55, text=f"and {left_out} more, all in the table", ink="soft"))
    return [*drawn, *_axis(scale, top, y), *rows], y + (62 if left_out else 42)


def _label(each: _Plant, plants: tuple[_Plant, ...], packs: Packs) -> str:
    name = plant_in_italics(each.tally, packs)
    states = {other.tally.condition for other in plants}
    return f"{name} ({clean(each.tally.condition)})" if len(states) > 1 and each.tally.condition != "charred" else name


def _points(each: _Plant, middle: float, scale: LinearScale, project: Project) -> list[Shape]:
    drawn: list[Shape] = []
    y = middle - _LANE * (len(each.shares) - 1) / 2
    for share in each.shares:
        ink, shape = phase_mark(project, share.phase)
        drawn.append(Stroke(points=((scale.at(share.low), y), (scale.at(share.high), y)), ink=ink, width=1.8))
        drawn.append(Mark(x=scale.at(share.value), y=y, shape=shape, ink=ink, size=4.6, is_open=share.samples == 0))
        y += _LANE
    return drawn


def _axis(scale: LinearScale, top: float, y: float) -> list[Shape]:
    drawn: list[Shape] = []
    for tick in (0.0, 0.25, 0.5, 0.75, 1.0):
        x = scale.at(tick)
        drawn.append(Stroke(points=((x, top), (x, y)), ink="soft" if tick == 0 else "faint", width=1.2))
        drawn.append(Words(x=x, y=y + 15, text=f"{tick * 100:.0f}%", ink="soft", size=12, anchor="center"))
    middle = (scale.start + scale.end) / 2
    return [*drawn, Words(x=middle, y=y + 33, text="share of samples with it", ink="soft", size=12, anchor="center")]


def _title(plants: tuple[_Plant, ...], project: Project, packs: Packs) -> str:
    if len(plants[0].shares) == 1:
        return _title_of_one_phase(plants, packs)
    apart = [each for each in plants if _lies_apart(each)]
    if not apart:
        return "No plant part differs clearly between the phases"
    top = max(apart, key=lambda each: (each.spread, each.highest))
    high = max(top.shares, key=lambda share: share.value)
    low = min(top.shares, key=lambda share: share.value)
    return (
        f"{capitalised(plant(top.tally, packs))}: in {high.samples} of {several(high.of_samples, 'sample')} of "
        f"{phase_name(project, high.phase)}, but in {low.samples} of {low.of_samples} of "
        f"{phase_name(project, low.phase)}"
    )


def _title_of_one_phase(plants: tuple[_Plant, ...], packs: Packs) -> str:
    top = max(plants, key=lambda each: each.highest)
    of = f"{top.shares[0].samples} of {several(top.shares[0].of_samples, 'sample')}"
    if sum(each.highest == top.highest for each in plants) > 1:
        return f"No one plant part leads; the commonest are in {of}"
    return f"{capitalised(plant(top.tally, packs))}: found in {of}, more than any other plant part"


def _lies_apart(each: _Plant) -> bool:
    """Whether the intervals of some two phases do not touch: stricter than a test of the difference."""
    return max(share.low for share in each.shares) > min(share.high for share in each.shares)


def _alt(plants: tuple[_Plant, ...], phases: dict[PhaseId, SubjectFindings], project: Project, packs: Packs) -> str:
    named = " and ".join(phase_name(project, phase) for phase in phases)
    first, last = plants[0], plants[-1]
    start = f"Shares of samples with their intervals for {several(len(plants), 'plant part')} in {named}."
    if len(phases) == 1:
        return f"{start} From the top: {plant(first.tally, packs)} ({percent(first.highest)})."
    if len(plants) == 1:
        return f"{start} {capitalised(_spoken(first, packs))}."
    return f"{start} {capitalised(_spoken(first, packs))}; at the other end {_spoken(last, packs)}."


def _spoken(each: _Plant, packs: Packs) -> str:
    start, end = each.shares[0].value, each.shares[-1].value
    return f"{plant(each.tally, packs)} went from {percent(start)} to {percent(end)} of samples"


def _note(phases: dict[PhaseId, SubjectFindings], project: Project) -> str:
    n = ", ".join(f"{several(found.samples, 'sample')} in {phase_name(project, id)}" for id, found in phases.items())
    return (
        f"n = {n}; samples without remains are counted in. Whiskers: 95% interval. An open mark: in no sample. "
        f"Samples of one context are not independent, and phases sampled from other kinds of context compare badly. "
        f"Broad groups such as 'hardwood' stand in the table only."
    )


def _row(tally: Tally, share: _Share, project: Project, packs: Packs) -> tuple[str, ...]:
    name = f"cf. {latin(tally)}" if tally.only_cf else latin(tally)
    return (
        name, part_word(tally, packs), clean(tally.condition), phase_name(project, share.phase), str(share.samples),
        str(share.of_samples), *(f"{number * 100:.0f}" for number in (share.value, share.low, share.high)),
    )  # fmt: skip
