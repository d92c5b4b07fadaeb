"""What holds for charts of every kind."""

from __future__ import annotations

import re
import subprocess
import sys
from itertools import combinations
from pathlib import Path
from xml.etree import ElementTree

import pytest

from narrate.charts.frame import FONTS, WIDTH, _written, safe_id
from narrate.charts.inks import SHAPES
from narrate.charts.lettering import width_of
from narrate.charts.marks import Block, Mark, Patch, Stroke
from narrate.model.figures import Chart
from tests.charts.chart_builders import a_project, a_taxon, a_window, some_findings, some_packs
from tests.charts.drawn_by_matplotlib import tags
from tests.charts.every_kind import KINDS, a_crowded_dig, a_single_row, a_small_dig, draw

SVG = "{http://www.w3.org/2000/svg}"
HOSTILE = """<script>alert("x")</script> & 'quotes' $x_1$ \x07"""


def drawn(kind: str, dig: tuple = (), chart_id: str = "fig") -> Chart:
    chart = draw(kind, *(dig or a_small_dig()), chart_id)
    assert chart is not None
    return chart


@pytest.mark.parametrize("kind", KINDS)
def test_same_findings_give_the_same_bytes(kind):
    """Drawn twice from findings that were made twice, a chart is the same."""
    assert drawn(kind).svg == drawn(kind).svg


def test_another_process_draws_the_same_bytes():
    """No hash seed and no clock gets into a chart."""
    code = "from tests.charts.test_frame import drawn, KINDS; print([drawn(kind).svg for kind in KINDS])"
    runs = [
        subprocess.run(
            [sys.executable, "-c", code], capture_output=True, text=True, check=True, cwd=Path(__file__).parents[2],
            env={"PYTHONHASHSEED": seed, "PATH": "", "HOME": "/nonexistent", "MPLCONFIGDIR": ""},
        ).stdout
        for seed in ("1", "2")
    ]  # fmt: skip

    assert runs[0] == runs[1]


@pytest.mark.parametrize("kind", KINDS)
def test_ids_are_unique_and_begin_with_the_id_of_the_chart(kind):
    """Two charts on a page share no id, and every reference finds its id in the chart."""
    svg = drawn(kind).svg
    ids = re.findall(r'\bid="([^"]+)"', svg)
    references = re.findall(r"url\(#([^)]+)\)", svg) + re.search(r'aria-labelledby="([^"]+)"', svg)[1].split()

    assert len(ids) == len(set(ids))
    assert [id for id in ids if not id.startswith("fig-")] == []
    assert set(references) <= set(ids)


@pytest.mark.parametrize("kind", KINDS)
def test_nothing_in_a_chart_reaches_beyond_it(kind):
    """No style sheet, script, metadata, link or size of its own gets into the page."""
    svg = drawn(kind).svg
    root = ElementTree.fromstring(svg)

    assert {element.tag.removeprefix(SVG) for element in root.iter()} <= {
        "svg", "title", "desc", "g", "path", "text", "tspan", "defs", "pattern", "rect",
    }  # fmt: skip
    assert svg.startswith("<svg ")
    assert "width" not in root.attrib and "height" not in root.attrib
    assert root.attrib["viewBox"].startswith("0 0 600 ")


@pytest.mark.parametrize("kind", KINDS)
def test_title_and_description_are_said_to_screen_readers(kind):
    """The svg is one image, named by its title and described by its alternative text."""
    chart = drawn(kind)
    root = ElementTree.fromstring(chart.svg)

    assert root.attrib["role"] == "img"
    assert root.attrib["aria-labelledby"] == "fig-title fig-desc"
    assert root.find(f"{SVG}title").text == chart.title
    assert root.find(f"{SVG}desc").text == chart.alt


@pytest.mark.parametrize("kind", KINDS)
def test_text_is_text_in_fonts_of_the_reader(kind):
    """Words are <text>, in the weight and family of the chart and not of the page around it."""
    root = ElementTree.fromstring(drawn(kind).svg)

    assert len(list(root.iter(f"{SVG}text"))) > 5
    assert root.attrib["font-family"] == FONTS
    assert root.attrib["font-weight"] == "400"


@pytest.mark.parametrize("kind", KINDS)
def test_every_colour_can_be_set_by_the_page(kind):
    """No colour stands outside a custom property."""
    svg = drawn(kind).svg

    assert re.sub(r"var\(--chart-[a-z0-9]+,#[0-9a-f]{6}\)", "", svg).count("#") == len(re.findall(r"url\(#", svg))
    assert "var(--chart-ink,#" in svg


@pytest.mark.parametrize("kind", KINDS)
def test_hostile_names_stay_names(kind):
    """Markup in a name is shown as it was written; characters that no xml may hold are left out."""
    findings, project, _ = a_small_dig()
    window = a_window("seed", (5, 6), "perishable")
    packs = some_packs(*(a_taxon(str(taxon), HOSTILE, (window,)) for taxon in some_packs().taxa))
    hostile = a_project({str(c.id): (HOSTILE, c.phase) for c in project.contexts}, (HOSTILE, "Late"))
    chart = drawn(kind, (_renamed(findings, hostile.phases[0].id), hostile, packs))
    words = " ".join("".join(text.itertext()) for text in ElementTree.fromstring(chart.svg).iter(f"{SVG}text"))

    assert "<script" not in chart.svg
    assert kind == "kernels_and_cupules" or "<script>" in words or "<script>alert" in "".join(words.split())
    assert "\x07" not in chart.svg


def _renamed(findings, phase):
    from dataclasses import replace

    from narrate.model.ids import Subject

    new = {s: Subject(level="phase", id=phase) if s.id == "early" else s for s in findings.subjects}
    return some_findings(*(replace(found, subject=new[s]) for s, found in findings.subjects.items()))


@pytest.mark.parametrize("kind", KINDS)
def test_nothing_found_is_no_chart(kind):
    """Findings without anything to draw give None, with and without contexts."""
    from tests.charts.chart_builders import found_in

    project = a_project({"C1": ("hearth", "early")})

    assert draw(kind, some_findings(found_in("context", "C1")), project, some_packs()) is None


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("dig", [a_single_row, a_small_dig, a_crowded_dig])
def test_words_lie_on_the_sheet_and_apart(kind, dig):
    """With one row, twelve rows, or 300 taxa and names of 64 letters, no word is cut off or runs into another."""
    chart = drawn(kind, dig())
    root = ElementTree.fromstring(chart.svg)
    height = float(root.attrib["viewBox"].split()[3])
    boxes = [_box(text) for text in root.iter(f"{SVG}text") if "rotate" not in text.attrib.get("transform", "")]

    assert [box for box in boxes if box[0] < -0.5 or box[2] > WIDTH + 0.5 or box[1] < 0 or box[3] > height] == []
    assert [(a, b) for a, b in combinations(boxes, 2) if _touch(a, b)] == []


def _box(text) -> tuple[float, float, float, float, str]:
    words, style = "".join(text.itertext()), text.attrib["style"]
    size = float(re.search(r"font-size: ([\d.]+)px", style)[1])
    width = width_of(words, size, "font-weight: 700" in style)
    x, y = float(text.attrib["x"]), float(text.attrib["y"])
    left = x - width if "end" in style else x - width / 2 if "middle" in style else x
    return left, y - size * 0.75, left + width, y + size * 0.2, words


def _touch(a: tuple, b: tuple) -> bool:
    return a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]


@pytest.mark.parametrize("kind", KINDS)
def test_twelve_rows_stay_under_40_kb(kind):
    """A page may carry several charts."""
    assert len(drawn(kind).svg.encode()) < 40_000


@pytest.mark.parametrize("kind", KINDS)
def test_table_rows_have_a_cell_for_every_column(kind):
    """The table behind the picture is whole, and no number is missing a column name."""
    chart = drawn(kind, a_crowded_dig())

    assert {len(row) for row in chart.rows} == {len(chart.columns)}
    assert len(chart.rows) >= 275


@pytest.mark.parametrize(
    ("text", "id"),
    [("C07", "C07"), ("S 014", "S_20_014"), ("014", "chart-014"), ("a/b", "a_2f_b"), ('"><', "chart-_22__3e__3c_")],
)
def test_ids_are_made_safe_and_stay_unequal(text, id):
    """What may not stand in an id becomes its code."""
    assert safe_id(text) == id


SOME = (
    Block(x=1.123456, y=2, width=30, height=10, ink="clay", hatch="//"),
    Block(x=1, y=2.5, width=30, height=10, ink="soft", is_open=True),
    Stroke(points=((0, 1), (2.3333333, 3), (5, 6.125)), dash=(3, 2.5), width=1.5, ink="ink"),
    Stroke(points=((0, 1), (600, 99.999999))),
    Patch(points=((0, 0), (1, 1.005), (1, 0)), ink="leaf", hatch="///"),
    *(Mark(x=30.5, y=40, shape=shape, size=3.3, is_open=is_open) for shape in SHAPES for is_open in (True, False)),
)


def test_shapes_are_written_as_matplotlib_writes_them():
    """Every shape is the tag that matplotlib's own renderer gives for it, down to the last figure."""
    assert _tags(_written(SOME, "fig", 100.5, "", "")) == _named_alike(tags(list(SOME), 100.5))


@pytest.mark.parametrize("hatch", ["-", "--", "|", "/", "//", "///", "\\", "\\\\", "x", "xx", "+", "++", "-/"])
def test_hatches_are_those_of_matplotlib(hatch):
    """The lines of a hatch lie where matplotlib lays them."""
    block = Block(x=10, y=20, width=30, height=10, ink="clay", hatch=hatch)

    assert _tags(_written((block,), "fig", 100, "", "")) == _named_alike(tags([block], 100))


def _tags(svg: str) -> list[str]:
    return _named_alike(re.findall(r"<(?:path|pattern|rect)[^>]*>", svg))


def _named_alike(found: list[str]) -> list[str]:
    """Tags with hatches named by nothing but that they are one: their names are our own."""
    return [re.sub(r"url\(#[^)]+\)", "url(#hatch)", re.sub(r' id="[^"]+"', ' id="hatch"', tag)) for tag in found]
