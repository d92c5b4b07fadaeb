"""Samples that are drafted as sterile though no nought and no word says that anybody looked: that is told."""

from __future__ import annotations

from collections.abc import Mapping, Set

from narrate.reading.intake.ids_of_sheets import without_noughts
from narrate.reading.intake.not_plants import says_nothing_found
from narrate.reading.intake.records_draft import Draft
from narrate.reading.intake.said import Line, Said
from narrate.reading.intake.sheet_finds import NOTHING_FOUND, SheetFinds
from narrate.reading.intake.told import Told


def keep_nothing_found(found: SheetFinds, by_row: Mapping[int, Line]) -> None:
    """Keeps the words of a row, such as 'No plant remains', that say of a sample without finds that it held nothing."""
    has_finds = {find.sample for find in found.finds}
    for (mark, at), id in found.sample_ids.items():
        if mark != "r" or id in has_finds or id not in found.facts:
            continue
        said = [one for ones in by_row[at].values() for one in ones if says_nothing_found(one.text)]
        if said:
            found.facts[id].setdefault(NOTHING_FOUND, []).extend(said)


def tell_sterile_drafted(
    draft: Draft, facts: Mapping[str, Mapping[str, list[Said]]], found_in: Set[str], looked_in: Set[str], told: Told
) -> None:
    """
    Tells of samples drafted as sterile because the sheets name them and give no find.

    looked_in:  samples of which a sheet says that something was looked for and was not there.
    """
    alike = {without_noughts(id): id for id in sorted(found_in)}
    for id, fields in draft.samples.items():
        said = facts.get(id, {})
        says_so = any(says_nothing_found(one.text) for ones in said.values() for one in ones)
        if "sterile" not in fields or id in looked_in or says_so or not said:
            continue
        other = alike.get(without_noughts(id), "")
        near = f"; '{other}', which has finds, differs from it by noughts alone" if other else ""
        told.warning(
            "N315", f"sterile {id if other else ''}", next(iter(said.get("sample") or next(iter(said.values())))).place,
            f"sample {id} has no count, no sign and no nought{near}; it is drafted as sterile on the word of the sheet "
            "that it is a sample, expected a nought or a word where nothing was found",
            "look whether it was examined; if not, take it out of the drafted records until it is"
            + (", or mend the id if the two are one sample" if other else ""),
        )  # fmt: skip
