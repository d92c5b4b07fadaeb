"""When the plants found could be gathered: a strip of twelve months."""

from __future__ import annotations

from dataclasses import dataclass, replace

from narrate.charts.frame import WIDTH, chart
from narrate.charts.lettering import width_of, wrapped
from narrate.charts.marks import Block, Shape, Stroke, Words
from narrate.charts.names import (
    MONTHS,
    ancient_conditions,
    capitalised,
    clean,
    in_words,
    latin,
    listed,
    months_in_words,
    part_word,
    plant,
    plant_in_italics,
    runs,
    subject_name,
)
from narrate.model.figures import Chart
from narrate.model.findings import SubjectFindings, Tally
from narrate.model.packs import Packs
from narrate.model.plants import Window

MOST_ROWS = 24
_LINE, _ROOM = 15.0, 185.0

# Fresh food alone is solid: it alone tells a season. The others are hatched or open, because they may be older
# than the fire that charred them.
_KEEPING: dict[str, tuple[str, str, str, bool]] = {
    "perishable": ("does not keep", "berry", "", False),
    "stored": ("keeps in store", "ochre", "//", False),
    "persists": ("stays on the plant", "leaf", "", True),
    "with the crop": ("keeps with a harvest", "creek", "--", False),
    "": ("keeping not known", "soft", "xx", False),
}

_TOGETHER = {
    "perishable": "fresh",
    "stored": "from store",
    "persists": "off the plant",
    "with the crop": "with the harvest",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class _Plant:
    tally: Tally
    windows: tuple[Window, ...]

    @property
    def tells_a_season(self) -> bool:
        return all(window.keeping == ("perishable",) for window in self.windows)


def draw(
    found: SubjectFindings, packs: Packs, chart_id: str, *, preservation: str = "charred", name: str = ""
) -> Chart | None:
    """
    One row a plant part of ancient condition whose months the packs know; None where there is none.

    Where sources disagree each window has its own line. `preservation` and `name`: see `composition.draw`.
    """
    plants = _plants(found, packs, preservation)
    if not plants:
        return None
    name = clean(name) or subject_name(found.subject)
    drawn = _in_order(_most_telling(plants))
    shapes, height = _picture(drawn, len(plants) - len(drawn), packs)
    return chart(
        chart_id=chart_id,
        shapes=shapes,
        height=height,
        title=_title(plants, name),
        alt=_alt(drawn, packs, name),
        note=_note(plants, found, packs, preservation),
        columns=("Taxon", "Part", "Counted (items)", "Months", "Keeping", "Sources", "How well known"),
        rows=tuple(_row(each.tally, window, packs) for each in _in_order(plants) for window in each.windows),
    )


def _plants(found: SubjectFindings, packs: Packs, preservation: str) -> tuple[_Plant, ...]:
    ancient = ancient_conditions(packs, preservation)
    plants: dict[tuple[str, str], _Plant] = {}
    for tally in found.tallies:
        windows = _windows(tally, packs) if tally.condition in ancient else ()
        if windows:
            key = (str(tally.taxon), tally.part)
            before = plants[key].tally if key in plants else replace(tally, counted=0)
            both = replace(before, counted=before.counted + tally.counted, only_cf=before.only_cf and tally.only_cf)
            plants[key] = _Plant(tally=both, windows=windows)
    return tuple(plants.values())


def _windows(tally: Tally, packs: Packs) -> tuple[Window, ...]:
    known = packs.taxa.get(tally.taxon) if tally.taxon is not None else None
    return tuple(w for w in known.windows if w.part == tally.part and w.months) if known else ()


def _most_telling(plants: tuple[_Plant, ...]) -> tuple[_Plant, ...]:
    ranked = sorted(plants, key=lambda each: (not each.tells_a_season, -each.tally.counted))
    return tuple(ranked[:MOST_ROWS])


def _in_order(plants: tuple[_Plant, ...]) -> tuple[_Plant, ...]:
    """By first month, then by how long it lasts, then by name."""

    def key(each: _Plant) -> tuple[int, int, str, str]:
        first = runs(each.windows[0].months)[0][0]
        return first, len(each.windows[0].months), latin(each.tally), each.tally.part

    return tuple(sorted(plants, key=key))


def _picture(plants: tuple[_Plant, ...], left_out: int, packs: Packs) -> tuple[list[Shape], float]:
    labels = [wrapped(plant_in_italics(each.tally, packs), 13, _ROOM) for each in plants]
    keepings = [[wrapped(_keeping(window), 12, 150, 2) for window in each.windows] for each in plants]
    start = max(width_of(line, 13) for lines in labels for line in lines) + 12
    end = WIDTH - max(width_of(line, 12) for each in keepings for lines in each for line in lines) - 10
    month = (end - start) / 12
    rows: list[Shape] = []
    y = 26.0
    for each, label, words in zip(plants, labels, keepings, strict=True):
        heights = [max(22.0, 14.0 * len(lines) + 6) for lines in words]
        height = max(sum(heights), _LINE * len(label) + 6)
        rows += _named(label, start - 12, y + height / 2)
        at = y + (height - sum(heights)) / 2
        for window, lines, needed in zip(each.windows, words, heights, strict=True):
            rows += _stretch(window, start, month, at + needed / 2)
            first = at + needed / 2 + 4 - 7 * (len(lines) - 1)
            rows += [
                Words(x=end + 10, y=first + 14 * n, text=line, ink="soft", size=12) for n, line in enumerate(lines)
            ]
            at += needed
        y += height + 3
        rows.append(Stroke(points=((0, y - 1.5), (WIDTH, y - 1.5)), ink="faint"))
    if left_out:
        rows.append(Words(x=0, y=y + 17, text=f"and {left_out} more, all in the table", ink="soft"))
    return [*_calendar(start, month, y), *rows], y + (26 if left_out else 4)


def _named(lines: tuple[str, ...], x: float, y: float) -> list[Shape]:
    first = y + 4.5 - _LINE * (len(lines) - 1) / 2
    return [Words(x=x, y=first + _LINE * n, text=line, anchor="right") for n, line in enumerate(lines)]


def _stretch(window: Window, start: float, month: float, y: float) -> list[Shape]:
    """The months of one window; one that runs over the new year is drawn in two pieces."""
    # A part that is eaten fresh or kept is drawn as kept: what may be old tells no season.
    looks: list[str] = [keeping for keeping in window.keeping if keeping != "perishable"] or [*window.keeping, ""]
    _, ink, hatch, is_open = _KEEPING[looks[0]]
    drawn: list[Shape] = []
    for run in runs(window.months):
        for piece in _within_the_year(run):
            x = start + (piece[0] - 1) * month
            drawn.append(
                Block(
                    x=x + 1, y=y - 6.5, width=len(piece) * month - 2, height=13, ink=ink, hatch=hatch, is_open=is_open
                )
            )
    return drawn


def _within_the_year(run: list[int]) -> list[list[int]]:
    turn = next((n for n in range(1, len(run)) if run[n] < run[n - 1]), len(run))
    return [piece for piece in (run[:turn], run[turn:]) if piece]


def _calendar(start: float, month: float, bottom: float) -> list[Shape]:
    drawn: list[Shape] = []
    for number, name in enumerate(MONTHS):
        x = start + number * month
        shown = name if month >= 27 else name[0]
        drawn.append(Words(x=x + month / 2, y=15, text=shown, ink="soft", size=12, anchor="center"))
        drawn.append(Stroke(points=((x, 22), (x, bottom)), ink="faint"))
    end = start + 12 * month
    drawn.append(Stroke(points=((end, 22), (end, bottom)), ink="faint"))
    drawn.append(Stroke(points=((0, 24), (WIDTH, 24)), width=1.2))
    return drawn


def _keeping(window: Window) -> str:
    """In words, and together where there are several, as 'fresh or from store'."""
    if len(window.keeping) < 2:
        return _KEEPING["".join(window.keeping)][0]
    return " or ".join(_TOGETHER[keeping] for keeping in window.keeping)


def _title(plants: tuple[_Plant, ...], name: str) -> str:
    telling = [each for each in plants if each.tells_a_season]
    parts = "plant part" if len(plants) == 1 else "plant parts"
    all_of_them = f"{in_words(len(plants))} {parts} with known months in {name}"
    if not telling and len(plants) == 1:
        return f"The {all_of_them} tells no season by itself"
    if not telling:
        return f"None of the {all_of_them} tells a season by itself"
    every = {month for each in telling for window in each.windows for month in window.months}
    shared = set(every)
    for each in telling:
        shared &= {month for window in each.windows for month in window.months}
    if len(plants) == 1:
        return f"The {all_of_them} does not keep: {months_in_words(telling[0].windows[0].months)}"
    do = "does" if len(telling) == 1 else "do"
    begin = f"{capitalised(in_words(len(telling)))} of the {all_of_them} {do} not keep"
    if len(telling) == 1:
        return f"{begin}: gathered in {months_in_words(_in_season(every))}"
    if shared:
        return f"{begin}; their months meet in {months_in_words(_in_season(shared))}"
    return f"{begin}; they have no month in common"


def _in_season(months: set[int]) -> list[int]:
    """Months in calendar order, begun after the gap where they run over the new year."""
    return [month for run in runs(sorted(months)) for month in run]


def _alt(plants: tuple[_Plant, ...], packs: Packs, name: str) -> str:
    rows = listed(
        f"{plant(each.tally, packs)} {' or '.join(months_in_words(window.months) for window in each.windows)}"
        for each in plants[:4]
    )
    rest = f", and {len(plants) - 4} more rows" if len(plants) > 4 else ""
    return f"A strip of twelve months for what was found in {name}, earliest first: {rows}{rest}."


def _note(plants: tuple[_Plant, ...], found: SubjectFindings, packs: Packs, preservation: str) -> str:
    ancient = ancient_conditions(packs, preservation)
    present = {(t.taxon or t.written, t.part) for t in found.tallies if t.condition in ancient}
    unknown = len(present) - len(plants)
    start = f"n = {len(plants)} of {len(present)} plant parts; "
    start += "the months of all of them are known." if not unknown else f"no months are known for {unknown}."
    disagree = " Two bars in a row: the sources differ." if any(len(each.windows) > 1 for each in plants) else ""
    return (
        f"{start} A bar is when a part can be gathered, not when it was burned. Only what does not keep (solid) speaks "
        f"of a season; what keeps or stays on the plant (hatched or open) may have been charred in any month.{disagree}"
    )


def _row(tally: Tally, window: Window, packs: Packs) -> tuple[str, ...]:
    counted = str(tally.counted) if tally.counted else "present"
    sources = "; ".join(_cited(packs, key) for key in window.sources)
    name = f"cf. {latin(tally)}" if tally.only_cf else latin(tally)
    return (
        name, part_word(tally, packs), counted, months_in_words(window.months), _keeping(window), sources, window.known
    )  # fmt: skip


def _cited(packs: Packs, key: str) -> str:
    source = packs.sources.get(key)  # type: ignore[call-overload]
    return key if source is None else clean(f"{source.authors} {source.year}") or clean(source.title)
