"""The picture that stands for a page where somebody links to it: its name, one sentence, and its strip of specks."""

from __future__ import annotations

import textwrap
from io import BytesIO

import matplotlib
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure
from matplotlib.patches import Rectangle

from narrate.charts.frame import clean
from narrate.charts.inks import INKS

WIDTH, HEIGHT = 1200, 630
_GROUND, _INK, _SOFT = "#ecece6", "#24211e", "#58534c"
_INKS = {"crop": "charcoal", "waste": "clay", "nut": "ochre", "wild": "leaf", "unnamed": "charcoal"}
_SHAPES = {"crop": "o", "waste": "s", "nut": "^", "wild": "o", "unnamed": "x"}


def card(dig: str, title: str, says: str, groups: tuple[tuple[str, str], ...]) -> bytes:
    """
    A PNG of 1200 by 630 without notes of any kind.

    groups:  the strip of the context, as (group, specks).
    """
    with matplotlib.rc_context({"text.usetex": False, "text.parse_math": False, "font.family": "DejaVu Sans"}):
        figure = Figure(figsize=(WIDTH / 100, HEIGHT / 100), dpi=100, facecolor=_GROUND)
        figure.add_artist(Rectangle((0, 0), 1, 0.06, transform=figure.transFigure, facecolor="#5d5142"))
        figure.add_artist(Rectangle((0, 0.06), 1, 0.025, transform=figure.transFigure, facecolor="#7d5a3c"))
        lines = textwrap.wrap(clean(title or dig), 30)[:2]
        for number, line in enumerate(lines):
            figure.text(0.06, 0.78 - 0.12 * number, line, fontsize=40, fontweight="bold", color=_INK)
        if title:
            figure.text(0.06, 0.91, textwrap.shorten(clean(dig), 70, placeholder=" …"), fontsize=18, color=_SOFT)
        below = 0.78 - 0.12 * len(lines)
        for number, line in enumerate(textwrap.wrap(clean(says), 62)[:4]):
            figure.text(0.06, below - 0.07 * number, line, fontsize=22, color=_INK)
        _strip(figure, groups)
        written = BytesIO()
        FigureCanvasAgg(figure).print_png(written, metadata={"Software": None})
    return written.getvalue()


def _strip(figure: Figure, groups: tuple[tuple[str, str], ...]) -> None:
    if not groups:
        return
    axes = figure.add_axes((0.05, 0.11, 0.9, 0.1))
    axes.set_axis_off()
    axes.set_xlim(-0.6, 19.6)
    axes.set_ylim(-1, 1)
    at = 0
    for group, specks in groups:
        ink = INKS[_INKS[group]].light
        places = list(range(at, at + len(specks)))
        face = "none" if group == "wild" else ink
        at_mark, row = _SHAPES[group], [0] * len(places)
        if group == "unnamed":
            axes.scatter(places, row, s=420, marker=at_mark, color=_SOFT, linewidths=3)
        else:
            axes.scatter(places, row, s=420, marker=at_mark, facecolors=face, edgecolors=ink, linewidths=3)
        at += len(specks)
