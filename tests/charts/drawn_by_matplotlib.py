"""The same shapes drawn by matplotlib's own renderer, and what a page takes of it: what charts have to come out as."""

from __future__ import annotations

import re
from io import StringIO

import matplotlib
from matplotlib.artist import Artist
from matplotlib.backends.backend_svg import FigureCanvasSVG
from matplotlib.colors import to_rgba
from matplotlib.figure import Figure
from matplotlib.path import Path
from matplotlib.transforms import Affine2D

from narrate.charts.frame import _CIRCLE, _OUTLINES, WIDTH
from narrate.charts.inks import INKS
from narrate.charts.marks import Block, Mark, Patch, Shape, Stroke

SETTINGS = {"svg.fonttype": "none", "svg.hashsalt": "narrate", "svg.id": None, "path.simplify": False}


class Sheet(Artist):
    """Blocks, patches, strokes and marks; words are no shapes."""

    def __init__(self, shapes: list[Shape], height: float) -> None:
        super().__init__()
        self.shapes = shapes
        self.height = height

    def draw(self, renderer) -> None:
        flipped = Affine2D().scale(1, -1).translate(0, self.height)
        for shape in self.shapes:
            gc = renderer.new_gc()
            face = None
            place = flipped
            if isinstance(shape, Block):
                left, right, top, bottom = shape.x, shape.x + shape.width, shape.y, shape.y + shape.height
                path = Path([(left, top), (right, top), (right, bottom), (left, bottom), (left, top)], closed=True)
                pen, width, face = shape.ink, 1.4 if shape.is_open else 1.0, "ground" if shape.is_open else shape.ink
            elif isinstance(shape, Patch):
                path = Path([*shape.points, shape.points[0]], closed=True)
                pen, width, face = shape.ink, 1.0, shape.ink
            elif isinstance(shape, Stroke):
                path, pen, width = Path(shape.points), shape.ink, shape.width
                if shape.dash:
                    gc.set_dashes(0, shape.dash)
            else:
                assert isinstance(shape, Mark)
                path = _speck() if shape.shape == "circle" else _closed(_OUTLINES[shape.shape])
                place = Affine2D().scale(shape.size).translate(shape.x, self.height - shape.y)
                pen, width = (shape.ink, 1.8) if shape.is_open else ("ground", 1.0)
                face = "ground" if shape.is_open else shape.ink
            gc.set_foreground(to_rgba(INKS[pen].light), isRGBA=True)
            gc.set_linewidth(width)
            if getattr(shape, "hatch", ""):
                gc.set_hatch(shape.hatch)
                gc.set_hatch_color(to_rgba(INKS["ground"].light))
                gc.set_hatch_linewidth(1.6)
            renderer.draw_path(gc, path, place, None if face is None else to_rgba(INKS[face].light))
            gc.restore()


def tags(shapes: list[Shape], height: float) -> list[str]:
    """Every tag that matplotlib writes for the shapes, its numbers in two decimals, its colours as properties."""
    with matplotlib.rc_context(SETTINGS):
        figure = Figure(figsize=(WIDTH / 72, height / 72), dpi=72)
        figure.patch.set_visible(False)
        figure.add_artist(Sheet(shapes, height))
        written = StringIO()
        FigureCanvasSVG(figure).print_svg(written, metadata=dict.fromkeys(("Date", "Creator", "Format", "Type")))
    body = written.getvalue().partition('<g id="figure_1">')[2]
    return [_plain(tag) for tag in re.findall(r"<(?:path|pattern|rect)[^>]*>", body)]


def _plain(tag: str) -> str:
    tag = re.sub(r"\s*\n\s*", " ", tag).replace(' "', '"')
    tag = re.sub(r"-?\d+\.\d{3,}", lambda found: f"{float(found.group()):.2f}", tag)
    for ink in INKS.values():
        tag = tag.replace(ink.light, f"var({ink.property},{ink.light})")
    return tag


def _speck() -> Path:
    handles = [point for curve in _CIRCLE for point in curve]
    return Path([(1, 0), *handles, (1, 0)], [Path.MOVETO, *(Path.CURVE4,) * 12, Path.CLOSEPOLY])


def _closed(outline) -> Path:
    return Path([*outline, outline[0]], closed=True)
