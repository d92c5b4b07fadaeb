"""Pictures as PNG, for programs that take no SVG; typst draws them all in one go, in a process of its own."""

from __future__ import annotations

import subprocess
import sys
import tempfile
from collections.abc import Sequence
from importlib.util import find_spec
from pathlib import Path

from narrate.charts.inks import INKS

DOTS_PER_INCH = 144
"""Twice what a screen shows at least, so that a slide or a page of print takes it."""
WIDTH_PT = 450
"""600 units of a sheet, which are CSS pixels of three quarters of a point each."""


def png(pictures: Sequence[str]) -> tuple[bytes, ...]:
    """
    The pictures, given as SVG with literal colours, each as PNG on white.

    Letters are those that matplotlib brings, on every machine the same, because the sheets were measured by them.
    """
    if not pictures:
        return ()
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        pages = []
        for number, picture in enumerate(pictures):
            (folder / f"{number}.svg").write_text(_on_white(picture), encoding="utf-8")
            pages.append(f'#image("{number}.svg", width: 100%)')
        head = f"#set page(width: {WIDTH_PT + 12}pt, height: auto, margin: 6pt, fill: white)\n"
        (folder / "pages.typ").write_text(head + "\n#pagebreak()\n".join(pages), encoding="utf-8")
        # typst draws by threads, and a process that has them cannot be copied, as the builder of sites copies itself.
        subprocess.run([sys.executable, "-c", _DRAW, name, str(_fonts()), str(DOTS_PER_INCH)], check=True)
        return tuple((folder / f"{number}.png").read_bytes() for number in range(len(pictures)))


_DRAW = """
import sys, typst
folder, fonts, dots = sys.argv[1:]
drawn = typst.compile(
    folder + "/pages.typ", format="png", ppi=float(dots), font_paths=[fonts], ignore_system_fonts=True
)
for number, picture in enumerate(drawn if isinstance(drawn, list) else [drawn]):
    with open(f"{folder}/{number}.png", "wb") as file:
        file.write(picture)
"""
"""Run by a process of its own."""


def _fonts() -> Path:
    """Where matplotlib keeps its letters; found without loading it, which takes longer than all the drawing."""
    found = find_spec("matplotlib")
    assert found is not None and found.origin is not None
    return Path(found.origin).parent / "mpl-data" / "fonts" / "ttf"


def _on_white(picture: str) -> str:
    """The picture for a white ground, with the face that is there for certain in place of those that may be."""
    picture = picture.replace(INKS["ground"].light, "#ffffff")
    start, quote, rest = picture.partition('font-family="')
    return f"{start}{quote}DejaVu Sans{rest[rest.index(chr(34)) :]}" if quote else picture
