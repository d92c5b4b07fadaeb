"""
A sheet of shapes as an svg that may stand inside a page: own ids, own colours, real text.

Every shape is written as matplotlib's renderer writes it, its figures put straight into the text that is otherwise the
same for all: no axes, no layout and no artists, which is where the time of a chart goes. A test draws the same shapes
with matplotlib and compares.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from functools import lru_cache
from html import escape

from narrate.charts.columns import MEASURE_OF
from narrate.charts.inks import INKS
from narrate.charts.marks import ITALIC, ROMAN, Block, Mark, Patch, Shape, Stroke, Words
from narrate.model.figures import Chart

WIDTH = 600.0
"""Width of every sheet. At this width on the page one unit is one CSS pixel."""

FONTS = "system-ui, 'Segoe UI', Roboto, 'Helvetica Neue', 'DejaVu Sans', Arial, sans-serif"

_OUTLINES = {
    "square": ((-0.85, -0.85), (0.85, -0.85), (0.85, 0.85), (-0.85, 0.85)),
    "diamond": ((0, -1.15), (1.15, 0), (0, 1.15), (-1.15, 0)),
    "triangle": ((-1.05, -0.8), (1.05, -0.8), (0, 1.1)),
    "wedge": ((-1.05, 0.8), (1.05, 0.8), (0, -1.1)),
    "cross": tuple(
        (x, y)
        for x, y in (
            (-0.4, -1.1), (0.4, -1.1), (0.4, -0.4), (1.1, -0.4), (1.1, 0.4), (0.4, 0.4),
            (0.4, 1.1), (-0.4, 1.1), (-0.4, 0.4), (-1.1, 0.4), (-1.1, -0.4), (-0.4, -0.4),
        )
    ),
    "hexagon": ((-1, -0.55), (0, -1.1), (1, -0.55), (1, 0.55), (0, 1.1), (-1, 0.55)),
}  # fmt: skip

_K = 0.5523
"""Length of the handles of a quarter of a circle, so that four curves make a round speck of half the bytes of eight."""
_CIRCLE = (
    ((1, _K), (_K, 1), (0, 1)),
    ((-_K, 1), (-1, _K), (-1, 0)),
    ((-1, -_K), (-_K, -1), (0, -1)),
    ((_K, -1), (1, -_K), (1, 0)),
)
_ANCHORS = {"left": "", "center": "text-anchor: middle; ", "right": "text-anchor: end; "}
_INKS: Mapping[str, str] = {name: f"var({ink.property},{ink.light})" for name, ink in INKS.items()}
"""Each ink as a property that a page may set, with the colour that stands in for it."""
HATCH = 72
"""Width and height of the tile that a hatch is made of."""


def chart(
    *,
    chart_id: str,
    shapes: Iterable[Shape],
    height: float,
    title: str,
    alt: str,
    note: str,
    columns: tuple[str, ...],
    rows: tuple[tuple[str, ...], ...],
) -> Chart:
    """The chart with its picture. The id is made safe for use inside an svg first."""
    safe = safe_id(chart_id)
    svg = _written(tuple(shapes), safe, height, clean(title), clean(alt))
    return Chart(
        id=safe,
        svg=svg,
        title=title,
        alt=alt,
        note=note,
        columns=columns,
        measures=tuple(MEASURE_OF.get(column, "") for column in columns),
        rows=rows,
    )


def safe_id(text: str) -> str:
    """The text as an id: letters, digits, '-' and '_'; everything else becomes its code, so that ids stay unequal."""
    coded = re.sub(r"[^A-Za-z0-9_-]", lambda found: f"_{ord(found.group()):x}_", text)
    return coded if coded[:1].isalpha() else f"chart-{coded}"


@lru_cache(maxsize=65_536)
def clean(text: str) -> str:
    """The text on one line, without characters that no xml may hold."""
    return " ".join(re.sub(r"[^\t\n\r\x20-\ud7ff\ue002-\ufffd\U00010000-\U0010ffff]", "", text).split())


def _written(shapes: tuple[Shape, ...], chart_id: str, height: float, title: str, alt: str) -> str:
    hatches: dict[tuple[str, str], str] = {}
    lines = [
        f'<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-labelledby="{chart_id}-title {chart_id}-desc" '
        f'viewBox="0 0 {WIDTH:g} {height:g}" font-family="{FONTS}" font-weight="400" font-style="normal" '
        f'stroke-linejoin="round">',
        f'<title id="{chart_id}-title">{escape(title)}</title>',
        f'<desc id="{chart_id}-desc">{escape(alt)}</desc>',
        f'<g id="{chart_id}-figure_1">',
    ]
    for shape in shapes:
        if isinstance(shape, Words):
            lines.append(_words(shape))
        elif isinstance(shape, Stroke):
            lines.append(_stroke(shape))
        elif isinstance(shape, Block):
            lines.append(_block(shape, chart_id, hatches))
        elif isinstance(shape, Patch):
            lines.append(_patch(shape, chart_id, hatches))
        else:
            lines.append(_mark(shape))
    lines.append("</g>")
    if hatches:
        lines += ["<defs>", *(_tile(id, ink, hatch) for (ink, hatch), id in hatches.items()), "</defs>"]
    return "\n".join([*lines, "</svg>"])


def _block(block: Block, chart_id: str, hatches: dict[tuple[str, str], str]) -> str:
    left, right = _number(block.x), _number(block.x + block.width)
    top, bottom = _number(block.y), _number(block.y + block.height)
    fill = _fill("ground" if block.is_open else block.ink, block.hatch, chart_id, hatches)
    pen = _pen(block.ink, 1.4 if block.is_open else 1.0)
    outline = f"M {left} {top} L {right} {top} L {right} {bottom} L {left} {bottom} z"
    return f'<path d="{outline}" style="fill: {fill}; {pen}"/>'


def _patch(patch: Patch, chart_id: str, hatches: dict[tuple[str, str], str]) -> str:
    fill = _fill(patch.ink, patch.hatch, chart_id, hatches)
    return f'<path d="{_line(patch.points)} z" style="fill: {fill}; {_pen(patch.ink, 1.0)}"/>'


def _stroke(stroke: Stroke) -> str:
    dash = f"stroke-dasharray: {','.join(map(_number, stroke.dash))}; stroke-dashoffset: 0; " if stroke.dash else ""
    return f'<path d="{_line(stroke.points)}" style="fill: none; {dash}{_pen(stroke.ink, stroke.width)}"/>'


def _mark(mark: Mark) -> str:
    def at(point: tuple[float, float]) -> str:
        return f"{_number(mark.x + mark.size * point[0])} {_number(mark.y - mark.size * point[1])}"

    if mark.shape == "circle":
        curves = " ".join(f"C {' '.join(map(at, curve))}" for curve in _CIRCLE)
        outline = f"M {at((1, 0))} {curves}"
    else:
        outline = "M " + " L ".join(map(at, _OUTLINES[mark.shape]))
    # A rim in the colour of the ground keeps marks apart where they touch.
    fill, pen = ("ground", _pen(mark.ink, 1.8)) if mark.is_open else (mark.ink, _pen("ground", 1.0))
    return f'<path d="{outline} z" style="fill: {_INKS[fill]}; {pen}"/>'


def _words(words: Words) -> str:
    x, y = _number(words.x), _number(words.y)
    bold = "font-weight: 700; " if words.is_bold else ""
    style = f"{bold}font-size: {_number(words.size)}px; {_ANCHORS[words.anchor]}fill: {_INKS[words.ink]}"
    turn = f' transform="rotate({_number(-words.angle)} {x} {y})"' if words.angle else ""
    tag = f'<text style="{style}" x="{x}" y="{y}"{turn}'
    return f"{tag}>{_text(words.text)}</text>" if words.text else f"{tag}/>"


def _text(text: str) -> str:
    escaped = escape(text, quote=False)
    return escaped.replace(ITALIC, '<tspan font-style="italic">').replace(ROMAN, "</tspan>")


def _line(points: Iterable[tuple[float, float]]) -> str:
    return "M " + " L ".join(f"{_number(x)} {_number(y)}" for x, y in points)


def _pen(ink: str, width: float) -> str:
    return f"stroke: {_INKS[ink]}" if width == 1.0 else f"stroke: {_INKS[ink]}; stroke-width: {_number(width)}"


def _fill(ink: str, hatch: str, chart_id: str, hatches: dict[tuple[str, str], str]) -> str:
    """The ink, or the hatch over it, which is drawn once a chart."""
    if not hatch:
        return _INKS[ink]
    id = hatches.setdefault((ink, hatch), f"{chart_id}-hatch-{len(hatches) + 1}")
    return f"url(#{id})"


def _tile(id: str, ink: str, hatch: str) -> str:
    """Lines in the colour of the ground over an ink."""
    ground = _INKS["ground"]
    pen = f"fill: {ground}; stroke: {ground}; stroke-width: 1.6; stroke-linecap: butt; stroke-linejoin: miter"
    return (
        f'<pattern id="{id}" patternUnits="userSpaceOnUse" x="0" y="0" width="{HATCH}" height="{HATCH}">\n'
        f'<rect x="0" y="0" width="{HATCH + 1}" height="{HATCH + 1}" fill="{_INKS[ink]}"/>\n'
        f'<path d="{hatch_lines(hatch)}" style="{pen}"/>\n</pattern>'
    )


@lru_cache
def hatch_lines(hatch: str) -> str:
    """
    The lines of a hatch as matplotlib draws them, of '-', '|', '/', '\\\\', 'x' and '+': the oftener, the closer.

    >>> hatch_lines("-")[:28], hatch_lines("//")[:32]
    ('M 0 66 L 72 66 M 0 54 L 72 5', 'M -36 36 L 36 -36 M -30 42 L 42 ')
    """
    upright, slanted = hatch.count("+"), hatch.count("x")
    half = HATCH // 2
    lines: list[str] = []
    for many in filter(None, [upright + hatch.count("-")]):
        lines += [f"M 0 {y} L {HATCH} {y}" for y in reversed(range(HATCH // (12 * many), HATCH, HATCH // (6 * many)))]
    for many in filter(None, [upright + hatch.count("|")]):
        lines += [f"M {x} {HATCH} L {x} 0" for x in range(HATCH // (12 * many), HATCH, HATCH // (6 * many))]
    for many in filter(None, [slanted + hatch.count("/")]):
        lines += [f"M {x} {x + HATCH} L {x + HATCH} {x}" for x in range(-half, half + 1, HATCH // (6 * many))]
    for many in filter(None, [slanted + hatch.count("\\")]):
        lines += [f"M {x} {-x} L {x + HATCH} {HATCH - x}" for x in range(-half, half + 1, HATCH // (6 * many))]
    return " ".join(lines)


@lru_cache(maxsize=65_536)
def _number(number: float) -> str:
    """As matplotlib writes it, in no more than two decimals."""
    text = f"{number + 0.0:f}".rstrip("0").rstrip(".")  # no '-0', which equals 0 and would be kept for it
    has_more = len(text) - 3 > text.find(".") >= 0
    return f"{float(text):.2f}" if has_more else text
