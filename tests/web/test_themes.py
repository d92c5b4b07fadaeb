"""What the pages of themes show: strips of what a context held, and the year in words."""

from __future__ import annotations

from narrate.model.findings import Tally
from narrate.model.ids import PartId, TaxonId
from narrate.pipeline.editions import edition_of
from narrate.pipeline.judged import Judged
from narrate.web import themes
from tests.charts.chart_builders import found_in


def a_tally(taxon: str | None, counted: int) -> Tally:
    known = None if taxon is None else TaxonId(taxon)
    return Tally(
        taxon=known, written=taxon or "Penthorum", part=PartId("seed"), condition="charred", counted=counted,
        estimated=counted,
    )  # fmt: skip


def test_what_is_unnamed_or_unlisted_is_no_wild_plant(judged_example: Judged) -> None:
    """An indeterminate seed and one of a plant in no list have a speck of their own, and are said apart."""
    found = found_in("context", "C01", a_tally("Rhus", 10), a_tally("Indeterminate", 5), a_tally(None, 5))
    strip = themes.strip(found, edition_of("review", judged_example, {}, (), "test"))

    assert strip is not None
    assert strip.groups == (("wild", "○" * 10), ("unnamed", "×" * 10))
    assert strip.says == "20 items other than wood: 10 of wild plants, 10 of what is unnamed or unlisted"


def test_months_are_told_in_words_for_narrow_pages() -> None:
    """Those of every source first, then those on which sources disagree; a season may run over the new year."""
    months = tuple("all" if m in (11, 12, 1) else "some" if m == 2 else "" for m in range(1, 13))
    row = themes.YearRow(name="x", target="", part="seed", items=1, months=months, keeping="", binds=False)

    assert row.told == "November to January; by some sources February"


def test_plants_and_woods_that_were_tested_have_a_table_each(judged_example: Judged) -> None:
    """The page of phases shows the team all 21 plants and 12 woods that were tested between the two phases."""
    plants, woods = themes.tested(edition_of("review", judged_example, {}, (), "test"))

    assert (plants.what, len(plants.rows), plants.early, plants.late) == ("Plants", 21, "Early hamlet", "Late hamlet")
    assert (woods.what, len(woods.rows)) == ("Woods", 12)
