"""Facts of one context from several samples, and kinds that stand under 'Feature'. All sheets here are invented."""

from __future__ import annotations

from pathlib import Path

import pytest

from narrate.problems import ProblemList
from narrate.reading.intake.records_draft import Draft, draft_records
from narrate.reading.intake.take_in import take_in
from narrate.reading.intake.told import Told
from tests.reading.intake.test_blind import packs


def drafted(folder: Path, lines: list[str]) -> tuple[Draft, list[tuple[str | None, str]]]:
    """The records drafted from a sheet, and what is told of facts that differ."""
    (folder / "table.csv").write_text("\n".join(lines) + "\n", encoding="utf-8")
    told, problems = Told(), ProblemList()
    draft = draft_records(take_in(folder / "table.csv", packs()).facts, ("1", "2", "3"), packs().words, told)
    told.into(problems)
    return draft, [(one.place.cell, one.message) for one in problems.sorted() if one.code == "N318"]


_FINDS = ["Hordeum vulgare grain,3,2,1", "Triticum dicoccum glume base,17,9,10", "Lens culinaris seed,1,2,1"]


def test_facts_of_a_context_that_contradict_each_other_are_told(tmp_path: Path) -> None:
    """Each with both values and both cells; the first is drafted, the other stands in the note of its sample."""
    draft, told = drafted(tmp_path, [
        "Sample,1,2,3", "Context,101,101,102", "Context type,pit,well,pit",
        "Phase,Early Iron Age,Late Iron Age,Late Iron Age", *_FINDS
    ])  # fmt: skip

    ends = "the first is drafted and the other kept in the note of the sample, expected one value for a context"
    assert told == [
        ("C3", f"context 101: kind is 'well' here and 'pit' in B3; {ends}"),
        ("C4", f"context 101: phase is 'Late Iron Age' here and 'Early Iron Age' in B4; {ends}"),
    ]
    assert (draft.contexts["101"]["kind"], draft.contexts["101"]["phase"]) == ("pit", "Early Iron Age")
    assert draft.samples["2"]["note"] == "kind of the context written well; phase of the context written Late Iron Age"
    assert "note" not in draft.samples["3"]


def test_one_kind_in_other_words_is_no_contradiction(tmp_path: Path) -> None:
    """'pit' and 'Fill of pit', and what differs in nothing but case."""
    _, told = drafted(tmp_path, [
        "Sample,1,2,3", "Context,101,101,101", "Context type,pit,Fill of pit,PIT",
        "Phase,Iron Age,iron age,Iron Age", *_FINDS
    ])  # fmt: skip

    assert told == []


@pytest.mark.parametrize(
    ("written", "features", "kinds"),
    [
        ("pit,hearth,pit", [None, None, None], ["pit", "hearth", "pit"]),
        ("Ditch fill,fill of a large pit,Hearth", [None, None, None], ["ditch", "pit", "hearth"]),
        ("Grube,Graben,Grube", [None, None, None], ["pit", "ditch", "pit"]),
        ("Pit 12,Hearth 3,Pit 14", ["Pit 12", "Hearth 3", "Pit 14"], ["pit", "hearth", "pit"]),
    ],
)
def test_a_kind_under_feature_is_no_feature(
    tmp_path: Path, written: str, features: list[str | None], kinds: list[str]
) -> None:
    """All pits of a site are no one feature; a pit with its number is."""
    draft, _ = drafted(tmp_path, ["Sample,1,2,3", "Context,101,102,103", f"Feature,{written}", *_FINDS])

    assert [context.get("feature") for context in draft.contexts.values()] == features
    assert [context["kind"] for context in draft.contexts.values()] == kinds


def test_pits_without_contexts_are_contexts_of_their_own(tmp_path: Path) -> None:
    """The word 'pit' is no name of a context."""
    draft, _ = drafted(tmp_path, ["Sample,1,2,3", "Feature,pit,hearth,pit", *_FINDS])

    assert {id: context["kind"] for id, context in draft.contexts.items()} == {"1": "pit", "2": "hearth", "3": "pit"}


@pytest.mark.parametrize("kind", ["Pit", "Well", "Posthole", "Grube"])
def test_a_kind_behind_feature_in_a_form_is_read(tmp_path: Path, kind: str) -> None:
    """'Feature' and 'Pit' in two cells: 'Pit' heads nothing there."""
    draft, _ = drafted(tmp_path, [
        "Sample,12,Context,3020,,", f"Volume (L),10,,Feature,{kind},", ",,,,,", "Taxon,Part,Count,,,",
        "Hordeum vulgare,grain,3,,,", "Triticum dicoccum,glume base,7,,,", "Lens culinaris,seed,2,,,",
    ])  # fmt: skip

    assert draft.contexts["3020"]["kind"] == {"Grube": "pit"}.get(kind, kind.lower())
    assert "feature" not in draft.contexts["3020"]


def test_another_sort_of_kind_is_no_contradiction(tmp_path: Path) -> None:
    """'Sample type' says bulk, 'Context type' says well; two kinds of one sample in a list are told."""
    _, told = drafted(tmp_path, [
        "Sample,1,2,3", "Context,101,102,103", "Context type,pit,well,pit", "Sample type,bulk,bulk,bulk", *_FINDS
    ])  # fmt: skip
    assert told == []

    _, told = drafted(tmp_path, [
        "Sample,Context,Context type,Taxon,Part,Count", "1,101,pit,Hordeum vulgare,grain,3",
        "1,101,well,Lens culinaris,seed,2",
        "2,102,pit,Hordeum vulgare,grain,4", "2,102,pit,Lens culinaris,seed,7",
    ])  # fmt: skip
    assert [cell for cell, _ in told] == ["C3"]
    assert told[0][1].startswith("sample 1: kind is 'well' here and 'pit' in C2; the first is kept")
