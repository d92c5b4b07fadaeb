"""Scales of abundance named by the project: ends are kept, and no sign becomes a count."""

from __future__ import annotations

from pathlib import Path

from narrate.measures.count_table import count_table
from narrate.measures.counting import items_with_classes
from narrate.measures.units import Units
from narrate.model.counts import Count
from narrate.model.rules import Selector
from narrate.reading.folder import Reading
from tests.reading.folders import reading_of, told

SCALE = """\
abundance_scales:
  - id: four points
    classes: {"+": 1-5, "++": 6-20, "A": "<5", "++++": ">100"}
sources: [common-practice]
"""


def sheet(*cells: str) -> str:
    rows = [f"S1,Zea mays,{part},{cell}" for part, cell in zip(("kernel", "cupule", "seed"), cells, strict=False)]
    return "\n".join(("sample,taxon,part,count", *rows, ""))


def read(folder: Path, *cells: str, scale: str = SCALE) -> Reading:
    return reading_of(folder, {"packs/words/scales.yaml": scale, "counts/light.csv": sheet(*cells)})


def counts(folder: Path, *cells: str) -> list[Count]:
    reading = read(folder, *cells)
    assert reading.project is not None, told(reading)
    return [row.count for row in reading.project.counts]


def test_a_sign_keeps_its_scale_and_its_ends(tmp_path: Path) -> None:
    """'++' is 6 to 20 on the project's four points; written as it was, and no number."""
    assert counts(tmp_path, "++", "++++", "a") == [
        Count(written="++", amount="noted as present", at_least=6, at_most=20, scale="four points"),
        Count(written="++++", amount="noted as present", at_least=101, scale="four points"),
        Count(written="a", amount="noted as present", at_most=4, scale="four points"),
    ]


def test_signs_that_no_scale_has_are_read_as_before(tmp_path: Path) -> None:
    """'x' is presence, 7 a count."""
    assert counts(tmp_path, "x", "7") == [
        Count(written="x", amount="noted as present"),
        Count(written="7", amount="counted", number=7),
    ]


def test_a_class_never_counts(tmp_path: Path) -> None:
    """Six to twenty kernels and three cupules: three as counted, 9 to 23 by their ends, and no value for both."""
    reading = read(tmp_path, "++", "3")
    assert reading.project is not None and reading.packs is not None
    samples = Units(count_table(reading.project, reading.packs), "sample", reading.packs, "charred")
    column = items_with_classes(samples, Selector())

    assert samples.counted(Selector())[0, 0] == 3
    assert (column.low[0, 0], column.high[0, 0]) == (9, 23)
    assert not column.value[0, 0] >= 0


def test_a_number_is_no_sign(tmp_path: Path) -> None:
    """A scale of ranks would turn counts into classes: refused, with what to do."""
    scale = "abundance_scales:\n  - {id: ranks, classes: {1: 1-5}}\nsources: [common-practice]\n"

    assert (
        "packs/words/scales.yaml:2:30: error N403: abundance scale 'ranks', classes: 1 is '1-5', expected a sign that "
        "is no number" in told(read(tmp_path, "3", scale=scale))
    )


def test_ends_that_say_no_number_are_refused(tmp_path: Path) -> None:
    """'many' has no ends."""
    scale = 'abundance_scales:\n  - {id: words, classes: {"+": many}}\nsources: [common-practice]\n'

    assert "is 'many', expected the ends of a class, such as 6-20, >100 or <5" in told(read(tmp_path, "3", scale=scale))


def test_a_sign_of_two_scales_is_told(tmp_path: Path) -> None:
    """Which of them a sheet means nobody can know."""
    scale = SCALE.replace("sources", '  - {id: other, classes: {"++": 2-9}}\nsources')

    assert "abundance scale 'other': the sign '++' is defined twice" in told(read(tmp_path, "3", scale=scale))
