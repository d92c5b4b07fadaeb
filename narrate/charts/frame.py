"""A sheet of shapes as an svg that may stand inside a page: own ids, own colours, real text."""

from __future__ import annotations

import re
from collections.abc import Iterable
from html import escape
from io import StringIO

import matplotlib
from matplotlib.artist import Artist
from matplotlib.backend_bases import GraphicsContextBase, RendererBase
from matplotlib.backends.backend_svg import FigureCanvasSVG
from matplotlib.colors import to_rgba
from matplotlib.figure import Figure
from matplotlib.path import Path
from matplotlib.transforms import Affine2D

from narrate.charts.columns import MEASURE_OF
from narrate.charts.inks import INKS
from narrate.charts.marks import ITALIC, ROMAN, Block, Mark, Patch, Shape, Stroke, Words
from narrate.model.figures import Chart

WIDTH = 600.0
"""Width of every sheet. At this width on the page one unit is one CSS pixel."""

FONTS = "system-ui, 'Segoe UI', Roboto, 'Helvetica Neue', 'DejaVu Sans', Arial, sans-serif"

_SETTINGS = {"svg.fonttype": "none", "svg.hashsalt": "narrate", "svg.id": None, "path.simplify": False}

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


_COLOURS = {name: to_rgba(ink.light) for name, ink in INKS.items()}
_ANCHORS = {"left": "start", "center": "middle", "right": "end"}

_K = 0.5523
"""Length of the handles of a quarter of a circle, so that four curves make a round speck of half the bytes of eight."""
_CIRCLE = Path(
    [
        (1, 0),
        *((1, _K), (_K, 1), (0, 1)),
        *((-_K, 1), (-1, _K), (-1, 0)),
        *((-1, -_K), (-_K, -1), (0, -1)),
        *((_K, -1), (1, -_K), (1, 0)),
        (1, 0),
    ],
    [Path.MOVETO, *(Path.CURVE4,) * 12, Path.CLOSEPOLY],
)


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
    drawn = _printed(tuple(shapes), height)
    svg = _for_inline_use(drawn, safe, height, clean(title), clean(alt))
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


def clean(text: str) -> str:
    """The text on one line, without characters that no xml may hold."""
    return " ".join(re.sub(r"[^\t\n\r\x20-\ud7ff\ue002-\ufffd\U00010000-\U0010ffff]", "", text).split())


class _Sheet(Artist):
    """Draws shapes straight on the renderer: no axes, no layout, which is where the time of a chart goes."""

    def __init__(self, shapes: tuple[Shape, ...], height: float) -> None:
        super().__init__()
        self.shapes = shapes
        self.height = height
        self._flipped = Affine2D().scale(1, -1).translate(0, height)

    def draw(self, renderer: RendererBase) -> None:
        drawers = {Block: self._block, Patch: self._patch, Stroke: self._stroke, Mark: self._mark, Words: self._words}
        for shape in self.shapes:
            drawers[type(shape)](renderer, shape)

    def _block(self, renderer: RendererBase, block: Block) -> None:
        left, right, top, bottom = block.x, block.x + block.width, block.y, block.y + block.height
        path = Path([(left, top), (right, top), (right, bottom), (left, bottom), (left, top)], closed=True)
        gc = self._pen(renderer, block.ink, 1.4 if block.is_open else 1.0)
        self._hatched(gc, block.hatch)
        renderer.draw_path(gc, path, self._flipped, _COLOURS["ground" if block.is_open else block.ink])
        gc.restore()

    def _patch(self, renderer: RendererBase, patch: Patch) -> None:
        gc = self._pen(renderer, patch.ink, 1.0)
        self._hatched(gc, patch.hatch)
        path = Path([*patch.points, patch.points[0]], closed=True)
        renderer.draw_path(gc, path, self._flipped, _COLOURS[patch.ink])
        gc.restore()

    def _hatched(self, gc: GraphicsContextBase, hatch: str) -> None:
        if hatch:
            gc.set_hatch(hatch)
            gc.set_hatch_color(_COLOURS["ground"])
            gc.set_hatch_linewidth(1.6)

    def _stroke(self, renderer: RendererBase, stroke: Stroke) -> None:
        gc = self._pen(renderer, stroke.ink, stroke.width)
        if stroke.dash:
            gc.set_dashes(0, stroke.dash)
        renderer.draw_path(gc, Path(stroke.points), self._flipped, None)
        gc.restore()

    def _mark(self, renderer: RendererBase, mark: Mark) -> None:
        if mark.shape == "circle":
            path = _CIRCLE
        else:
            outline = _OUTLINES[mark.shape]
            path = Path([*outline, outline[0]], closed=True)
        place = Affine2D().scale(mark.size).translate(mark.x, self.height - mark.y)
        # A rim in the colour of the ground keeps marks apart where they touch.
        gc = self._pen(renderer, mark.ink if mark.is_open else "ground", 1.8 if mark.is_open else 1.0)
        renderer.draw_path(gc, path, place, _COLOURS["ground" if mark.is_open else mark.ink])
        gc.restore()

    def _words(self, renderer: RendererBase, words: Words) -> None:
        # Written as the renderer would write it. To lay a text out first, which pages do not need, is most of the
        # cost of a chart that is drawn by matplotlib.
        ink = INKS[words.ink].light
        style = [
            "font-weight: 700" if words.is_bold else "",
            f"font-size: {_plain(words.size)}px",
            "" if words.anchor == "left" else f"text-anchor: {_ANCHORS[words.anchor]}",
            "" if ink == "#000000" else f"fill: {ink}",
        ]
        said = {"style": "; ".join(filter(None, style)), "x": _plain(words.x), "y": _plain(words.y)}
        if words.angle:
            said["transform"] = f"rotate({_plain(-words.angle)} {said['x']} {said['y']})"
        renderer.writer.element("text", words.text, attrib=said)  # type: ignore[attr-defined]

    def _pen(self, renderer: RendererBase, ink: str, width: float) -> GraphicsContextBase:
        gc = renderer.new_gc()
        gc.set_foreground(_COLOURS[ink], isRGBA=True)
        gc.set_linewidth(width)
        return gc


def _plain(number: float) -> str:
    return f"{number:f}".rstrip("0").rstrip(".")


def _printed(shapes: tuple[Shape, ...], height: float) -> str:
    """The svg as matplotlib writes it, without pyplot and without a date."""
    # rc_context would copy all three hundred settings, which takes as long as the drawing.
    before = {key: matplotlib.rcParams[key] for key in _SETTINGS}
    matplotlib.rcParams.update(_SETTINGS)
    try:
        figure = Figure(figsize=(WIDTH / 72, height / 72), dpi=72)
        figure.patch.set_visible(False)
        figure.add_artist(_Sheet(shapes, height))
        written = StringIO()
        nothing = dict.fromkeys(("Date", "Creator", "Format", "Type"))
        FigureCanvasSVG(figure).print_svg(written, metadata=nothing)
    finally:
        matplotlib.rcParams.update(before)
    return written.getvalue()


def _for_inline_use(drawn: str, chart_id: str, height: float, title: str, alt: str) -> str:
    """The drawing under a root of our own; only tags are changed, never what stands between them."""
    body = drawn[drawn.index(">", drawn.index("<svg")) + 1 : drawn.rindex("</svg>")]
    body = re.sub(r"\s*<defs>\s*<style.*?</style>\s*</defs>", "", body, flags=re.DOTALL)
    body = re.sub(r"<[^>]*>", lambda tag: _own_tag(tag.group(), chart_id), body)
    body = body.replace(ITALIC, '<tspan font-style="italic">').replace(ROMAN, "</tspan>")
    body = re.sub(r"\n\s*", "\n", body).strip()
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-labelledby="{chart_id}-title {chart_id}-desc" '
        f'viewBox="0 0 {WIDTH:g} {height:g}" font-family="{FONTS}" font-weight="400" font-style="normal" '
        f'stroke-linejoin="round">\n'
        f'<title id="{chart_id}-title">{escape(title)}</title>\n<desc id="{chart_id}-desc">{escape(alt)}</desc>\n'
        f"{body}\n</svg>"
    )


def _own_tag(tag: str, chart_id: str) -> str:
    """One tag with ids of the chart, inks as properties, and no font or turn that says nothing."""
    if tag.startswith("</"):
        return tag
    tag = _BREAK.sub(" ", tag).replace(' "', '"')
    tag = _ID.sub(lambda found: f"{found.group()}{chart_id}-", tag)
    tag = _HEX.sub(_as_property, tag)
    tag = _LONG_NUMBER.sub(lambda found: f"{float(found.group()):.2f}", tag)
    tag = _NO_TURN.sub("", _FAMILY.sub("", tag))
    return tag.replace("text-anchor: start; ", "").replace("text-anchor: start", "")


_BREAK = re.compile(r"\s*\n\s*")
_ID = re.compile(r'(\sid="|url\(#|href="#)')
_HEX = re.compile(r"#[0-9a-f]{6}\b(?=[;\")])")
_LONG_NUMBER = re.compile(r"-?\d+\.\d{3,}")
_FAMILY = re.compile(r"font-family: [^;\"]*; ?")
_NO_TURN = re.compile(r' transform="rotate\(-?0 [^"]*"')
_PROPERTIES = {ink.light: f"var({ink.property},{ink.light})" for ink in INKS.values()}


def _as_property(found: re.Match[str]) -> str:
    return _PROPERTIES.get(found.group(), found.group())
