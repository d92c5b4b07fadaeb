"""Counts held against samples and against each other."""

from __future__ import annotations

from narrate.model.counts import CountRow
from narrate.model.sampling import Sample
from narrate.reading.checking import Checking


def samples_and_counts_meet(checking: Checking) -> None:
    found_in: dict[str, CountRow] = {}
    for row in checking.project.counts:
        if row.count.amount in ("counted", "noted as present", "weighed only"):
            found_in.setdefault(row.sample, row)
    named = {row.sample for row in checking.project.counts} | checking.unread.samples
    for sample in checking.records.samples.values():
        if sample.sterile and sample.id in found_in:
            checking.error(
                checking.records.at("sample", sample.id, "sterile"),
                "N203",
                f"sample '{sample.id}': sterile is true, and {found_in[sample.id].place.row} has something in it, "
                "expected one or the other",
                "delete 'sterile: true', or mend the sample's id in the count sheet",
            )
        elif not sample.sterile and sample.id not in named:
            if checking.unread.sheets:
                checking.unread_rows.append(sample.id)
            else:
                _without_rows(checking, sample)


def _without_rows(checking: Checking, sample: Sample) -> None:
    checking.warning(
        checking.records.at("sample", sample.id, "id"),
        "N206",
        f"sample '{sample.id}' has no rows in any count sheet; it counts as a sample in which nothing was found"
        + checking.sheet_says.of_sample(sample.id),
        "add 'sterile: true' if it was looked through and nothing found; else leave it out until it is sorted",
    )


def no_row_is_given_twice(checking: Checking) -> None:
    """
    Rows of one sample with the same taxon, part, condition, completeness, size class and fraction.

    A row with a number and one with a mass alone may stand beside each other: they say different things.
    """
    first: dict[tuple[str, ...], CountRow] = {}
    for row in checking.project.counts:
        name = row.identification
        key = (
            row.sample,
            name.taxon or name.written.lower(),
            "" if name.qualifier in ("sp.", "spp.", "indet.") else name.qualifier,
            row.part,
            row.condition,
            row.completeness,
            row.size_class,
            row.fraction,
        )
        before = first.setdefault(key, row)
        if before is row or _say_different_things(before, row) or _are_unlike_names(before, row):
            continue
        _twice(checking, before, row)


def _say_different_things(one: CountRow, other: CountRow) -> bool:
    weighed = [row.count.amount == "weighed only" for row in (one, other)]
    return weighed[0] != weighed[1] and (one.mass_g is None or other.mass_g is None)


def _are_unlike_names(one: CountRow, other: CountRow) -> bool:
    """Whether both are cells of one laboratory's sheet: what it calls by one name is added there, and told."""
    return bool(one.place.cell and other.place.cell) and one.place.path == other.place.path


def _twice(checking: Checking, before: CountRow, row: CountRow) -> None:
    checking.error(
        row.place,
        "N305",
        f"sample '{row.sample}': {row.identification.written}, {row.part}, {row.condition}, {row.completeness} "
        f"is given twice, first in {before.place.row}, expected one row",
        "add the two together if they are parts of one count, delete one, or part them by size_class or fraction",
    )
