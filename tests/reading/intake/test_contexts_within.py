"""Contexts named within features, as contract reports in the Americas have them. Invented; common practice, no source."""

# ruff: noqa: E501

from pathlib import Path

import pytest

from narrate.problems import ProblemList
from narrate.reading.intake.records_draft import Draft, draft_records
from narrate.reading.intake.take_in import take_in
from narrate.reading.intake.told import Told
from tests.reading.intake.test_blind import packs


def drafted(folder: Path, features: tuple[str, ...], contexts: tuple[str, ...], head: str) -> tuple[Draft, Told]:
    lines = [
        "FS No.,104,107,112,115", "Feature," + ",".join(features), f"{head}," + ",".join(contexts), "Liters,10,10,9.5,8",
        "Zea mays kernel,3,2,1,4", "Carya sp. nutshell,17,9,10,2", "Rubus sp. seed,1,2,1,1",
    ]  # fmt: skip
    (folder / "table.csv").write_text("\n".join(lines) + "\n", encoding="utf-8")
    told = Told()
    return draft_records(take_in(folder / "table.csv", packs()).facts, {"104"}, packs().words, told), told


@pytest.mark.parametrize("head", ["Provenience", "Context"])
@pytest.mark.parametrize(
    ("features", "contexts", "expected"),
    [
        (("3", "3", "8", "11"), ("Zone A", "Zone B", "N 1/2", "Zone A"), ["3 Zone A", "3 Zone B", "8 N 1/2", "11 Zone A"]),
        (("F. 3", "F. 4", "F. 4", "F. 5"), ("Level 1", "Level 1", "Level 2", "fill"),
         ["F. 3 Level 1", "F. 4 Level 1", "F. 4 Level 2", "F. 5 fill"]),
        (("3", "3", "8", "11"), ("Zone A", "Zone A", "N 1/2", "Zone B"), ["Zone A", "Zone A", "N 1/2", "Zone B"]),
        (("3", "5", "8", "11"), ("1012", "1012", "1013", "1014"), ["1012", "1012", "1013", "1014"]),
        (("pit", "hearth", "pit", "ditch"), ("upper", "upper", "lower", "fill"), ["upper", "upper", "lower", "fill"]),
    ],
)  # fmt: skip
def test_one_name_in_two_features_is_two_contexts(
    tmp_path: Path, head: str, features: tuple[str, ...], contexts: tuple[str, ...], expected: list[str]
) -> None:
    """With the feature before it; numbers of contexts, and names in one feature, stay as they are."""
    draft, _ = drafted(tmp_path, features, contexts, head)
    assert [sample["context"] for sample in draft.samples.values()] == expected


def test_the_names_that_were_made_are_told(tmp_path: Path) -> None:
    """Once for each name of a context that stands twice, at its cell."""
    _, told = drafted(tmp_path, ("3", "3", "8", "11"), ("Zone A", "Zone B", "N 1/2", "Zone A"), "Provenience")
    problems = ProblemList()
    told.into(problems)

    assert [(one.place.cell, one.message) for one in problems.sorted() if one.code == "N314"] == [
        (
            "B3",
            "the context 'Zone A' stands in the features 3 and 11; the contexts are drafted with the feature before them, "
            "this one as '3 Zone A', expected a name of its own for each context; the same in E3",
        )
    ]
