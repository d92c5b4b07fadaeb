"""Which weeds go together with which parts of crops over the samples, against chance."""

from __future__ import annotations

from narrate.charts.frame import WIDTH, chart, clean
from narrate.charts.lettering import width_of, wrapped
from narrate.charts.marks import Mark, Shape, Stroke, Words
from narrate.charts.names import capitalised, of_plant, several
from narrate.model.fields import Association, Associations
from narrate.model.figures import Chart

MOST_ROWS = 14
_FIRM = 0.05


def draw(found: Associations | None, chart_id: str, *, is_plain: bool = False) -> Chart | None:
    """One row a pair, the firmest first; None where no pair could be tested. `is_plain`: told to visitors."""
    if found is None or not found.rows:
        return None
    shown = sorted(found.rows, key=lambda r: (r.p_holm, -abs(r.phi - r.expected_phi), r.weed, r.crop))[:MOST_ROWS]
    shapes, height = _picture(shown, len(found.rows) - len(shown))
    strength = ("φ", "φ by chance", "p", "p after Holm")
    if is_plain:
        strength = ("Tie, −1 to 1", "Tie by chance", "Odds of chance", "Odds of chance, all pairs together")
    return chart(
        chart_id=chart_id,
        shapes=shapes,
        height=height,
        title=_title(found.rows),
        alt=_alt(shown, "tie" if is_plain else "φ"),
        note=_note(found, is_plain),
        columns=("Weed", "Crop", "Part", "Samples with both", "Crop alone", "Weed alone", "Neither", *strength),
        rows=tuple(
            (
                clean(r.weed), clean(r.crop), clean(r.crop_part), f"{r.both}", f"{r.only_crop}", f"{r.only_weed}",
                f"{r.neither}", f"{r.phi:.2f}", f"{r.expected_phi:.2f}", f"{r.p:.3f}", f"{r.p_holm:.3f}",
            )
            for r in found.rows
        ),
    )  # fmt: skip


def _note(found: Associations, is_plain: bool) -> str:
    pairs = (
        f"n = {several(found.samples, 'sample')}, {several(len(found.rows), 'pair')} tested, {found.left_out} left out "
        "as too rare or too common."
    )
    if is_plain:
        return (
            f"{pairs} Marks at the right were found together, marks at the left apart; the bar across is where chance "
            "would put them, rich and poor samples and the phases being what they are. Filled: chance would do this "
            f"less than once in twenty, all pairs taken together ({found.permutations:,} shuffles within the phases)."
        )
    return (
        f"{pairs} φ is −1 never together, 0 unrelated, 1 always together; the bar across is what rich and poor "
        "samples, and phases that differ, would make of it by themselves. Filled: p below 0.05 after Holm "
        f"({found.permutations:,} permutations within the phases)."
    )


def _named(row: Association) -> str:
    return f"{clean(row.weed)} with {of_plant(clean(row.crop), clean(row.crop_part))}"


def _picture(rows: list[Association], left_out: int) -> tuple[list[Shape], float]:
    labels = [wrapped(_named(row), 13, 265) for row in rows]
    start = max(width_of(line, 13) for lines in labels for line in lines) + 18
    end = WIDTH - 12

    def at(phi: float) -> float:
        return start + (end - start) * (phi + 1) / 2

    drawn: list[Shape] = []
    y = 26.0
    for row, lines in zip(rows, labels, strict=True):
        height = max(24.0, 15.0 * len(lines) + 6)
        middle = y + height / 2
        first = middle + 4.5 - 7.5 * (len(lines) - 1)
        drawn += [Words(x=start - 14, y=first + 15 * n, text=line, anchor="right") for n, line in enumerate(lines)]
        drawn.append(Stroke(points=((at(row.expected_phi), middle), (at(row.phi), middle)), width=1.5))
        drawn.append(Stroke(points=((at(row.expected_phi), middle - 6), (at(row.expected_phi), middle + 6)), width=2))
        is_firm = row.p_holm < _FIRM
        drawn.append(
            Mark(x=at(row.phi), y=middle, ink="leaf" if row.phi >= 0 else "clay", is_open=not is_firm, size=5.5)
        )
        y += height
    grid: list[Shape] = []
    for tick in (-1.0, -0.5, 0.0, 0.5, 1.0):
        grid.append(Stroke(points=((at(tick), 20), (at(tick), y)), ink="soft" if tick == 0 else "faint"))
        grid.append(Words(x=at(tick), y=14, text=f"{tick:g}".replace("-", "−"), ink="soft", size=12, anchor="center"))
    if left_out:
        drawn.append(Words(x=0, y=y + 17, text=f"and {several(left_out, 'more pair')}, all in the table", ink="soft"))
    return [*grid, *drawn], y + (26 if left_out else 6)


def _title(rows: tuple[Association, ...]) -> str:
    firm = [row for row in rows if row.p_holm < _FIRM]
    if not firm:
        return f"None of {several(len(rows), 'pair')} of weed and crop goes together more firmly than chance allows"
    first = max(firm, key=lambda row: abs(row.phi - row.expected_phi))
    said = "goes with" if first.phi > first.expected_phi else "stays away from"
    rest = f", and {len(firm) - 1} more pairs are firm" if len(firm) > 1 else ""
    return f"{capitalised(clean(first.weed))} {said} {of_plant(clean(first.crop), clean(first.crop_part))}{rest}"


def _alt(rows: list[Association], sign: str) -> str:
    told = "; ".join(f"{_named(r)} {sign} {r.phi:.2f} where chance gives {r.expected_phi:.2f}" for r in rows[:4])
    rest = f"; and {len(rows) - 4} more rows" if len(rows) > 4 else ""
    return f"Points from −1 to 1 for each pair of weed and part of a crop, firmest first: {told}{rest}."
