"""Pictures as PNG: the size they are asked for, the same bytes twice, and no letter from the machine."""

from __future__ import annotations

import io
import os
import sys

import pytest
from PIL import Image

from narrate.charts.inks import INKS
from narrate.charts.raster import png

SQUARE = (
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 600 300" font-family="system-ui, \'Segoe UI\'">'
    '<rect x="0" y="0" width="600" height="300" fill="{fill}"/></svg>'
)


def test_each_picture_is_drawn_by_itself() -> None:
    """Two pictures, two files, each twice as wide and high in dots as on the page, with a rim of 6 points."""
    drawn = [
        Image.open(io.BytesIO(one)).convert("RGB")
        for one in png([SQUARE.format(fill=f) for f in ("#ff0000", "#0000ff")])
    ]

    assert [one.size for one in drawn] == [(924, 474), (924, 474)]
    assert [one.getpixel((400, 200)) for one in drawn] == [(255, 0, 0), (0, 0, 255)]


def test_the_ground_is_white() -> None:
    """The pale ground of the page becomes white, as slides and paper are."""
    drawn = Image.open(io.BytesIO(png([SQUARE.format(fill=INKS["ground"].light)])[0])).convert("RGB")

    assert drawn.getpixel((400, 200)) == drawn.getpixel((0, 0)) == (255, 255, 255)


def test_the_same_picture_gives_the_same_bytes() -> None:
    """Nothing of the machine or the hour is in it."""
    assert png([SQUARE.format(fill="#00ff00")]) == png([SQUARE.format(fill="#00ff00")])


def test_no_picture_gives_none() -> None:
    """Nothing is drawn, and the drawing program is not loaded."""
    assert png([]) == ()


@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="threads are counted as Linux lists them")
def test_drawing_leaves_no_thread_behind() -> None:
    """A process that has threads cannot be copied, and sites are built side by side by such a copy."""
    before = len(os.listdir("/proc/self/task"))
    png([SQUARE.format(fill="#00ff00")])

    assert len(os.listdir("/proc/self/task")) == before
