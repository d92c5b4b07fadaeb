"""What may be taken away: tables, and pictures with theirs."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Iterable

from narrate.model.figures import Chart
from narrate.web.downloads import Pictures, as_csv, tables
from tests.web.editions import an_edition


def a_chart(id: str, svg: str = "<svg>{}</svg>") -> Chart:
    return Chart(
        id=id, svg=svg.format(id), title="A title", alt="Words", columns=("part", "items"), rows=(("seed", "3"),)
    )


def some_pictures(charts: Iterable[Chart]) -> Pictures:
    return Pictures((f"contexts/{chart.id}.html", chart) for chart in charts)


def test_each_picture_lies_in_the_archive_and_as_a_file_of_its_own() -> None:
    """Both hold the same, each picture beside its table, whatever chart was drawn last."""
    charts = [a_chart("c1"), a_chart("c2")]
    pictures = some_pictures(charts)
    files = {path: content() for path, content in pictures.files(lambda file: False).items()}
    with zipfile.ZipFile(io.BytesIO(pictures.archive.content())) as archive:
        within = {f"figures/{name}": archive.read(name) for name in archive.namelist()}

    assert files == within
    assert files["figures/contexts/c2-c2.svg"] == b"<svg>c2</svg>"
    assert files["figures/contexts/c2-c2.csv"] == b"part,items\nseed,3\n"
    assert [pictures.file_of(chart) for chart in charts] == ["figures/contexts/c1-c1", "figures/contexts/c2-c2"]


def test_a_picture_that_was_not_put_there_has_no_file() -> None:
    """Pages link to nothing where a picture is none of those to take away."""
    assert some_pictures([a_chart("c1")]).file_of(a_chart("c9")) == ""


def test_a_table_of_more_rows_than_are_written_at_once_is_whole() -> None:
    """2,500 rows, written a thousand at a time, under one header."""
    rows = [(number, f"plant {number}") for number in range(2_500)]
    lines = as_csv(("number", "plant"), iter(rows)).decode().splitlines()

    assert lines[0] == "number,plant"
    assert lines[1:] == [f"{number},plant {number}" for number in range(2_500)]


def test_a_table_says_how_large_its_file_is() -> None:
    """It waits packed, and is given back as long as it was said to be."""
    for table in tables(an_edition("review")):
        assert len(table.content()) == table.weight
        assert table.content().count(b"\n") >= 1
