"""How wide words will be."""

from __future__ import annotations

import pytest
from matplotlib import get_data_path
from matplotlib.ft2font import FT2Font

from narrate.charts.lettering import shortened, width_of, wrapped
from narrate.charts.marks import ITALIC, ROMAN

NAMES = (
    "maize cupules", "cf. little barley seeds", "Chenopodium berlandieri seeds", "wild strawberry seeds",
    "WWW MMM", "and 288 more: 412 items together", "C07 smudge pit", "3000 (71%)", "0.507 (0.12–2.26)",
)  # fmt: skip


@pytest.mark.parametrize("is_bold", [False, True])
@pytest.mark.parametrize("name", NAMES)
def test_widths_are_no_smaller_than_those_of_a_wide_font(name, is_bold):
    """Against the advance widths in DejaVu Sans as matplotlib ships it."""
    file = "DejaVuSans-Bold.ttf" if is_bold else "DejaVuSans.ttf"
    font = FT2Font(f"{get_data_path()}/fonts/ttf/{file}")
    font.set_size(13, 72)
    font.set_text(name)
    real = font.get_width_height()[0] / 64

    assert 0.97 * real <= width_of(name, 13, is_bold) <= 1.35 * real


def test_long_names_break_at_spaces():
    """A name is broken between words, and nothing of it is lost."""
    lines = wrapped("small round seed with a pitted surface", 13, 120)

    assert " ".join(lines) == "small round seed with a pitted surface"
    assert all(width_of(line, 13) <= 120 for line in lines)


def test_a_word_wider_than_the_room_is_broken():
    """A word of a hundred letters does not run off the sheet."""
    lines = wrapped("x" * 100, 13, 200, lines=9)

    assert "".join(lines) == "x" * 100
    assert all(width_of(line, 13) <= 200 for line in lines)


def test_what_does_not_fit_ends_in_an_ellipsis():
    """Three lines at most; the last says that there is more."""
    lines = wrapped("word " * 60, 13, 100)

    assert len(lines) == 3
    assert lines[2].endswith("…")


def test_short_words_stay_whole():
    """A word that fits is not touched."""
    assert shortened("midden", 13, 100) == "midden"


def test_italics_are_closed_on_every_line():
    """A Latin name over two lines is italic on both."""
    lines = wrapped(f"{ITALIC}Amphicarpaea bracteata{ROMAN} seeds", 13, 100)

    assert lines == (f"{ITALIC}Amphicarpaea{ROMAN}", f"{ITALIC}bracteata{ROMAN}", "seeds") or lines == (
        f"{ITALIC}Amphicarpaea{ROMAN}",
        f"{ITALIC}bracteata{ROMAN} seeds",
    )
