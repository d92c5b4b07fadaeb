"""What a sample, context or phase holds: bars of items by plant part."""

from __future__ import annotations

from dataclasses import dataclass

from narrate.charts.frame import WIDTH, chart
from narrate.charts.lettering import width_of, wrapped
from narrate.charts.marks import Block, Mark, Shape, Stroke, Words
from narrate.charts.names import (
    ancient_conditions,
    as_recorded,
    capitalised,
    clean,
    latin,
    listed,
    part_word,
    percent,
    plant,
    plant_in_italics,
    several,
    subject_name,
)
from narrate.charts.scales import LinearScale
from narrate.model.figures import Chart
from narrate.model.findings import SubjectFindings, Tally
from narrate.model.packs import Packs

UNSURE = 3
"""Finds named in part with a doubt that a note tells of."""

MOST_ROWS = 12
_SHORTEST = 10
"""Items that the scale reaches at least, so that a single item does not fill the sheet."""

_ROW, _LINE, _BAR, _ROOM = 25.0, 15.0, 15.0, 215.0


@dataclass(frozen=True, slots=True, kw_only=True)
class _Group:
    """Tallies that may be compared with each other, under one heading."""

    kind: str
    """'remains', 'wood' or 'modern'."""
    heading: str
    tallies: tuple[Tally, ...]
    ink: str
    hatch: str = ""

    @property
    def counted(self) -> int:
        return sum(tally.counted for tally in self.tallies)


def draw(
    found: SubjectFindings, packs: Packs, chart_id: str, *, preservation: str = "charred", name: str = ""
) -> Chart | None:
    """
    Bars of the items counted, most first; None where nothing was found.

    preservation: of the project; says which conditions are ancient.
    name:         how the subject is called, such as 'the late hamlet'; left out: its level and id.
    """
    groups = _groups(found, packs, preservation)
    if not groups:
        return None
    name = clean(name) or subject_name(found.subject)
    shown = _shown(groups)
    shapes, height = _picture(groups, shown, packs)
    return chart(
        chart_id=chart_id,
        shapes=shapes,
        height=height,
        title=_title(groups, packs, name),
        alt=_alt(groups, shown, packs, name),
        note=_note(groups, found, packs),
        columns=(
            "Taxon",
            "Part",
            "Condition",
            "Counted (items)",
            "Scaled up for the unsorted share (items)",
            "Mass (g)",
        ),
        rows=tuple(_row(tally, packs) for group in groups for tally in group.tallies),
    )


def _groups(found: SubjectFindings, packs: Packs, preservation: str) -> tuple[_Group, ...]:
    # Wood is named from a handful of pieces picked out of many, so its counts may not stand beside those of seeds.
    ancient = ancient_conditions(packs, preservation)
    held = sorted((t for t in found.tallies if _is_there(t)), key=lambda t: -t.counted)
    seeds = tuple(t for t in held if t.condition in ancient and not _is_wood(t, packs))
    wood = tuple(t for t in held if t.condition in ancient and _is_wood(t, packs))
    modern = tuple(t for t in held if t.condition not in ancient)
    states = listed(sorted({clean(t.condition) for t in modern})) if modern else ""
    every = (
        _Group(kind="remains", heading="Plant remains other than wood", tallies=seeds, ink="charcoal"),
        _Group(kind="wood", heading="Wood (the pieces that were identified)", tallies=wood, ink="clay", hatch="\\\\"),
        _Group(
            kind="modern", heading=f"{capitalised(states)}, held to be modern", tallies=modern, ink="leaf", hatch="//"
        ),
    )
    return tuple(group for group in every if group.tallies)


def _is_there(tally: Tally) -> bool:
    return tally.counted > 0 or tally.is_noted or tally.mass_g is not None or tally.samples > 0


def _is_wood(tally: Tally, packs: Packs) -> bool:
    part = packs.words.parts.get(tally.part)
    return "wood" in part.roles if part is not None else tally.part == "wood"


def _shown(groups: tuple[_Group, ...]) -> tuple[tuple[Tally, ...], ...]:
    """The tallies of each group that are drawn: twelve in all, the first group served first, none left empty."""
    room = MOST_ROWS
    shares: list[int] = []
    for number, group in enumerate(groups):
        kept_back = sum(min(3, len(later.tallies)) for later in groups[number + 1 :])
        shares.append(min(len(group.tallies), room - kept_back))
        room -= shares[-1]
    return tuple(group.tallies[:share] for group, share in zip(groups, shares, strict=True))


def _picture(
    groups: tuple[_Group, ...], shown: tuple[tuple[Tally, ...], ...], packs: Packs
) -> tuple[list[Shape], float]:
    labels = [[_label(tally, group, packs) for tally in tallies] for group, tallies in zip(groups, shown, strict=True)]
    start = max([max(width_of(line, 13) for line in lines) for many in labels for lines in many]) + 10
    most = max(tally.counted for tallies in shown for tally in tallies)
    values = [_value(tally, group) for group, tallies in zip(groups, shown, strict=True) for tally in tallies]
    end = WIDTH - max(width_of(value, 13) for value in values) - 12
    scale = LinearScale(top=max(most, _SHORTEST), start=start, end=max(end, start + 120))
    bars: list[Shape] = []
    y = 4.0
    for group, tallies, lines in zip(groups, shown, labels, strict=True):
        if len(groups) > 1:
            bars.append(Words(x=0, y=y + 14, text=group.heading, is_bold=True))
            y += 24
        top = y
        lines_at = len(bars)
        for tally, label in zip(tallies, lines, strict=True):
            height = max(_ROW, _LINE * len(label) + 8)
            bars += _bar(tally, group, label, y + height / 2, scale)
            y += height
        y = _rest(bars, group, len(tallies), start, y)
        bars[lines_at:lines_at] = _grid(scale, top, y - 4, most)
    return [*_axis(scale, y, most), *bars], y + (40 if most else 6)


def _label(tally: Tally, group: _Group, packs: Packs) -> tuple[str, ...]:
    name = plant_in_italics(tally, packs)
    states = {other.condition for other in group.tallies}
    if len(states) > 1 and tally.condition != "charred":
        name = f"{name} ({clean(tally.condition)})"
    return wrapped(name, 13, _ROOM)


def _bar(tally: Tally, group: _Group, label: tuple[str, ...], y: float, scale: LinearScale) -> list[Shape]:
    first = y + 4.5 - _LINE * (len(label) - 1) / 2
    drawn: list[Shape] = [
        Words(x=scale.start - 10, y=first + _LINE * number, text=line, anchor="right")
        for number, line in enumerate(label)
    ]
    value = _value(tally, group)
    if tally.counted == 0:
        mark = Mark(x=scale.start + 11, y=y, ink=group.ink, is_open=True)
        return [*drawn, mark, Words(x=scale.start + 22, y=y + 4.5, text=value, ink="soft")]
    # A single item among thousands keeps a sliver that can be seen; its number stands beside it.
    width = max(scale.at(tally.counted) - scale.start, 1.5)
    bar = Block(x=scale.start, y=y - _BAR / 2, width=width, height=_BAR, ink=group.ink, hatch=group.hatch)
    return [*drawn, bar, Words(x=scale.start + width + 7, y=y + 4.5, text=value)]


def _value(tally: Tally, group: _Group) -> str:
    if tally.counted == 0:
        return "noted as present" if tally.mass_g is None else "weighed, not counted"
    share = f" ({percent(tally.counted / group.counted)})" if group.counted >= 20 and len(group.tallies) > 1 else ""
    return f"{tally.counted:,}{'+' if tally.is_noted else ''}{share}"


def _rest(drawn: list[Shape], group: _Group, shown: int, start: float, y: float) -> float:
    """Adds 'and N more' where the group has more than is drawn; gives where the next group begins."""
    rest = group.tallies[shown:]
    if rest:
        items = sum(tally.counted for tally in rest)
        together = " together" if len(rest) > 1 else ""
        text = f"{several(items, 'item')}{together}" if items else "noted as present"
        drawn.append(Words(x=start - 10, y=y + 16, text=f"and {len(rest)} more", ink="soft", anchor="right"))
        drawn.append(Words(x=start + 7, y=y + 16, text=text, ink="soft"))
        y += _ROW
    return y + 8


def _grid(scale: LinearScale, top: float, bottom: float, most: int) -> list[Shape]:
    """Lines behind the bars of one group, so that none runs through a heading."""
    ticks = _whole_ticks(scale) if most else [0.0]
    return [
        Stroke(points=((scale.at(tick), top), (scale.at(tick), bottom)), ink="faint" if tick else "soft", width=1.2)
        for tick in ticks
    ]


def _axis(scale: LinearScale, y: float, most: int) -> list[Shape]:
    if not most:
        return []
    middle = (scale.start + scale.end) / 2
    return [
        *(
            Words(x=scale.at(tick), y=y + 13, text=f"{tick:,.0f}", ink="soft", size=12, anchor="center")
            for tick in _whole_ticks(scale)
        ),
        Words(x=middle, y=y + 31, text="items counted", ink="soft", size=12, anchor="center"),
    ]


def _whole_ticks(scale: LinearScale) -> list[float]:
    return [tick for tick in scale.ticks() if tick == int(tick)]


def _title(groups: tuple[_Group, ...], packs: Packs, name: str) -> str:
    # Past tense throughout: it does not bend with the number, and names such as 'wood' or 'rind' have no plural.
    first = groups[0]
    if first.kind == "modern":
        return f"Only remains held to be modern in {name}"
    what = "pieces of wood" if first.kind == "wood" else "counted remains"
    if first.counted == 0:
        held = several(len(first.tallies), "plant part was", "plant parts were")
        return f"No counts for {name}: {held} noted or weighed"
    if first.counted < 10:
        return f"Few {what} in {name}: {several(first.counted, 'item')}"
    top = [tally for tally in first.tallies if tally.counted == first.tallies[0].counted]
    of = f"{top[0].counted:,} of {first.counted:,}"
    if len(top) == 1 and len(first.tallies) == 1:
        return f"{capitalised(plant(top[0], packs))} made up all {first.counted:,} {what} of {name}"
    if len(top) == 1 and top[0].counted > first.counted / 2:
        return f"{capitalised(plant(top[0], packs))} made up most of the {what} of {name}: {of}"
    if len(top) > 2:
        return f"No one plant part led among the {first.counted:,} {what} of {name}"
    names = capitalised(listed(plant(tally, packs) for tally in top))
    return f"{names} led among the {what} of {name}: {of}{' each' if len(top) > 1 else ''}"


def _alt(groups: tuple[_Group, ...], shown: tuple[tuple[Tally, ...], ...], packs: Packs, name: str) -> str:
    sentences = []
    for group, tallies in zip(groups, shown, strict=True):
        rows = several(len(group.tallies), "row")
        some = f"{rows}, from the longest " if len(group.tallies) > 3 else f"{rows}, " if len(group.tallies) > 1 else ""
        sentences.append(f"{group.heading}: {some}{listed(_spoken(tally, packs) for tally in tallies[:3])}.")
    return f"Horizontal bars of what was found in {name}. {' '.join(sentences)}"


def _spoken(tally: Tally, packs: Packs) -> str:
    amount = f"{tally.counted:,}" if tally.counted else "not counted"
    return f"{plant(tally, packs)} ({amount})"


def _note(groups: tuple[_Group, ...], found: SubjectFindings, packs: Packs) -> str:
    items = "; ".join(f"{group.heading.lower()}: n = {several(group.counted, 'item')}" for group in groups)
    held = [tally for group in groups for tally in group.tallies]
    extra = ""
    if any(tally.counted == 0 for tally in held):
        extra += " An open mark stands for what was noted or weighed but not counted."
    if any(tally.counted and tally.is_noted for tally in held):
        extra += " '+' means that some rows only note presence."
    if any(tally.only_cf for tally in held):
        extra += " 'cf.' means that every identification is tentative."
    # A text may give the sure ones first, as in '11 (perhaps 14)'; the bar holds all.
    unsure = sorted((t for t in held if 0 < t.doubtful < t.counted), key=lambda t: -t.doubtful)[:UNSURE]
    if unsure:
        named = listed(f"{t.doubtful} of {t.counted:,} {plant(t, packs)}" for t in unsure)
        extra += f" Counted with the others, and not surely named: {named}."
    if any(group.counted >= 20 and len(group.tallies) > 1 for group in groups):
        extra += " Shares are of the items under the same heading."
    start = f"Items as counted in {several(found.samples, 'sample')}, not scaled up; {items}."
    return f"{start} Some parts break into many fragments, so bars are not numbers of plants.{extra}"


def _row(tally: Tally, packs: Packs) -> tuple[str, ...]:
    name = f"cf. {latin(tally)}" if tally.only_cf and not latin(tally).startswith("cf.") else latin(tally)
    counted = str(tally.counted) if tally.counted else ("present" if tally.is_noted or tally.mass_g is None else "")
    if tally.counted and tally.is_noted:
        counted = f"{tally.counted} and present"
    estimated = as_recorded(round(tally.estimated, 6)) if tally.counted else ""
    return (name, part_word(tally, packs), clean(tally.condition), counted, estimated, as_recorded(tally.mass_g))
