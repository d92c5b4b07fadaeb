"""Tables of the section as the trade prints them: what is summed, what is not, and what the notes say."""

from __future__ import annotations

from dataclasses import replace

import pytest

from narrate.documents.blocks import Table
from narrate.documents.inline import labels, plain
from narrate.documents.outline import outline
from narrate.documents.tables import counts_by_context, wood_by_phase
from narrate.measures.findings import find
from narrate.model.counts import CountRow
from narrate.model.edition import Edition
from narrate.model.report_blocks import BLOCKS, ReportBlock
from narrate.pipeline.editions import edition_of
from narrate.pipeline.judged import Judged
from tests.builders import a_row


def edition(judged: Judged, rows: tuple[CountRow, ...] | None = None) -> Edition:
    """The example, with other rows in place of its own where they are given."""
    project = judged.project if rows is None else replace(judged.project, counts=rows)
    found = judged.findings if rows is None else find(project, judged.packs)
    return edition_of("review", replace(judged, project=project, findings=found), {}, (), "test")


def cell(table: Table, taxon: str, column: str, part: str = "seed") -> str:
    (row,) = (r for r in table.rows if taxon in r[0] and r[1] == part)
    return row[table.columns.index(column)]


def number(text: str) -> int:
    return int(text.strip("†‡").replace(",", "")) if text.strip("†‡").replace(",", "").isdigit() else 0


def table_of(whole: Edition, context: str) -> Table:
    return next(t for t in counts_by_context(whole) if context in t.columns)


def test_a_sample_counts_once_in_the_ubiquity(judged_example: Judged) -> None:
    """Charred and partly charred seeds of one plant in one sample are two entries, one total, and one sample."""
    row = a_row(sample="S001", taxon="Rhus sp.", part="seed", count=3)
    found = table_of(edition(judged_example, (row, replace(row, condition="partly charred"))), "C01")

    assert cell(found, "Rhus", "C01") == "3; 3"
    assert cell(found, "Rhus", "Total") == "6"
    assert cell(found, "Rhus", "Ubiquity") == "1 of 23"
    assert "Numbers parted by a semicolon are of different states of preservation." in found.note


def test_doubt_of_some_and_of_all_have_their_own_signs(judged_example: Judged) -> None:
    """'cf.' stands where every find of the cell is one, ‡ where some are; both are in the key."""
    sure = a_row(sample="S001", taxon="Rhus sp.", part="seed", count=3)
    doubtful = a_row(sample="S001", taxon="cf. Rhus sp.", part="seed", count=2)
    mixed = table_of(edition(judged_example, (sure, doubtful)), "C01")

    assert cell(mixed, "Rhus", "C01") == "5‡"
    assert cell(table_of(edition(judged_example, (doubtful,)), "C01"), "Rhus", "C01") == "2 cf."
    assert "cf.: all of them are 'cf.'. ‡: some of them are 'cf.' or one of two taxa." in mixed.note


def test_a_count_of_a_share_has_its_sign(judged_example: Judged) -> None:
    """'†' stands where a quarter of the class was sorted, and not where all of it was; it is in the key."""
    row = a_row(sample="S002", taxon="Rhus sp.", part="seed", count=3)
    in_part = table_of(edition(judged_example, (replace(row, proportion_sorted=0.25),)), "C01")
    in_full = table_of(edition(judged_example, (row,)), "C01")

    assert cell(in_part, "Rhus", "C01") == "3†"
    assert cell(in_full, "Rhus", "C01") == "3"
    assert "†: some of them come from a class that was sorted in part." in in_part.note


def test_totals_are_sums_of_their_row_and_of_nothing_else(judged_example: Judged) -> None:
    """Over all parts of a table the cells of one plant and part make its total; parts and weights are not joined."""
    sums: dict[tuple[str, str, str], int] = {}
    totals: dict[tuple[str, str, str], int] = {}
    for table in counts_by_context(edition(judged_example)):
        phase = table.caption.partition(": ")[2].partition(" (")[0].rstrip(".")
        for row in table.rows:
            key = (phase, row[0], row[1])
            if row[0].startswith("**"):
                continue
            for head, text in zip(table.columns[2:], row[2:], strict=True):
                if head == "Total":
                    totals[key] = number(text.partition(" and ")[0])
                elif head != "Ubiquity":
                    sums[key] = sums.get(key, 0) + sum(
                        number(one.partition(" and ")[0]) for one in text.replace(" cf.", "").split("; ")
                    )

    assert len(totals) > 80
    assert totals == {key: sums[key] for key in totals}


def test_a_weight_never_joins_a_count(judged_example: Judged) -> None:
    """What was weighed and not counted stands in grams beside the number of what was counted."""
    counted = a_row(sample="S001", taxon="Carya sp.", part="nutshell", count=4)
    blank = replace(counted.count, written="", amount="weighed only", number=None)
    weighed = replace(counted, sample="S003", mass_g=1.25, count=blank)
    found = table_of(edition(judged_example, (counted, weighed)), "C01")  # type: ignore[arg-type]

    assert cell(found, "Carya", "C01", "nutshell") == "4"
    assert cell(found, "Carya", "C02", "nutshell") == "1.25 g"
    assert cell(found, "Carya", "Total", "nutshell") == "4; 1.25 g"


@pytest.mark.parametrize("of", [3, 7, 11])
def test_percentages_sum_to_a_hundred_or_say_why(judged_example: Judged, of: int) -> None:
    """The printed sum is that of the printed shares; where it is not 100.0 the note says so."""
    woods = ("Acer sp.", "Carya sp.", "Quercus sp.", "Pinus sp.", "Ulmus sp.", "Fraxinus sp.", "Juglans sp.")
    rows = tuple(a_row(sample="S001", taxon=wood, part="wood", count=1) for wood in (woods * 2)[:of])
    found = wood_by_phase(edition(judged_example, rows))
    assert found is not None
    shares = [float(row[2]) for row in found.rows[:-1]]

    assert found.rows[-1][:3] == ("**Sum**", str(of), f"{sum(shares):.1f}")
    assert ("do not sum to 100.0, because each is rounded" in found.note) == (f"{sum(shares):.1f}" != "100.0")


def test_wood_of_no_phase_is_said_to_be_left_out(judged_example: Judged) -> None:
    """C21 belongs to no phase; its fragments are in no column, and the note counts them."""
    rows = tuple(a_row(sample=sample, taxon="Acer sp.", part="wood", count=5) for sample in ("S001", "S049"))
    found = wood_by_phase(edition(judged_example, rows))

    assert found is not None
    assert "Of the 10 identified fragments, 5 from contexts without a phase are left out." in found.note


def test_four_hundred_taxa_of_eighty_letters_each_have_their_row(judged_example: Judged) -> None:
    """Names that no pack knows are printed as written, each with its count and its total."""
    names = [f"{'Nomen' * 15}{n:05}" for n in range(400)]
    rows = tuple(a_row(sample="S001", taxon=name, part="seed", count=n + 1) for n, name in enumerate(names))
    found = table_of(edition(judged_example, rows), "C01")

    assert all(len(name) == 80 for name in names)
    assert [(row[0], row[2], row[-2]) for row in found.rows if row[0].startswith("Nomen")] == [
        (name, f"{n + 1:,}", f"{n + 1:,}") for n, name in enumerate(names)
    ]


def test_the_foot_gives_litres_and_items_of_the_phase(judged_example: Judged) -> None:
    """Under 'Total' stand the litres and items of the whole phase, as the findings of the phase have them."""
    found = table_of(edition(judged_example), "C01")
    foot = {row[0].strip("*"): row for row in found.rows if row[0].startswith("**")}
    litres = sum(
        s.volume_l or 0.0
        for s in judged_example.project.samples
        if next(c for c in judged_example.project.contexts if c.id == s.context).phase == "early"
    )

    assert foot["Litres floated"][-2:] == (f"{litres:g}", "")
    items = [number(text) for text in foot["Items without wood"][2:-2]]
    assert foot["Items without wood"][-2] == f"{sum(items):,}"


@pytest.mark.parametrize("block", BLOCKS)
def test_a_block_that_is_switched_off_leaves_no_reference_to_it(judged_example: Judged, block: str) -> None:
    """Every reference of the text leads to a table or figure that stands in the section."""
    project = replace(judged_example.project, report_blocks=(ReportBlock(block=block, shown=False),))
    blocks = outline(edition_of("review", replace(judged_example, project=project), {}, (), "test"))
    known = labels(blocks)

    for one in blocks:
        for text in (getattr(one, "text", ""), getattr(one, "note", ""), getattr(one, "caption", "")):
            plain(text, known)
    assert not any(getattr(one, "anchor", "") == f"block-{block.replace('_', '-')}" for one in blocks)
