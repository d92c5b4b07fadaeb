"""How strong a story is, in parts that add up to what is shown."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from narrate.judging.strength import MEANT, independent_lines, ranked
from narrate.model.claims import Argument, Claim, Evidence
from narrate.model.ids import RuleId, StatementId, Subject
from narrate.model.strength import MOST_POINTS, Ranking
from narrate.problems import Place

if TYPE_CHECKING:
    from narrate.pipeline.judged import Judged


@pytest.fixture(scope="module")
def ranking(judged_example: Judged) -> Ranking:
    return ranked(judged_example.project, judged_example.packs, judged_example.findings, judged_example.claims)


def test_the_sum_is_that_of_the_parts_shown(ranking: Ranking) -> None:
    """Every part is shown with its points, in one order, and the sum is theirs and nothing else."""
    for level in ("context", "sample"):
        for strength in ranking.of(level):  # type: ignore[arg-type]
            assert [part.id for part in strength.parts] == [meant.id for meant in MEANT]
            assert strength.points == sum(part.points for part in strength.parts)
            assert all(0 <= part.points <= MOST_POINTS for part in strength.parts)
    assert ranking.most == MOST_POINTS * len(MEANT)


def test_every_sample_and_context_is_ranked_strongest_first(ranking: Ranking, judged_example: Judged) -> None:
    """Nothing is left out, and the order is that of the sums."""
    project = judged_example.project

    assert sorted(s.subject.id for s in ranking.of("sample")) == sorted(str(s.id) for s in project.samples)
    assert sorted(s.subject.id for s in ranking.of("context")) == sorted(str(c.id) for c in project.contexts)
    for level in ("context", "sample"):
        points = [strength.points for strength in ranking.of(level)]  # type: ignore[arg-type]
        assert points == sorted(points, reverse=True)


def test_a_step_is_shown_only_where_it_pays(ranking: Ranking) -> None:
    """Where no work would lift or settle anything the subject is best left."""
    steps = [s.next_step for level in ("context", "sample") for s in ranking.of(level)]  # type: ignore[arg-type]

    assert any(step is not None for step in steps)
    assert any(step is None for step in steps)
    assert all(step.lifts or step.turns or step.id.startswith("date.") for step in steps if step is not None)


def test_a_sterile_sample_tells_no_story(ranking: Ranking, judged_example: Judged) -> None:
    """What records alone say of a deposit is no reading of plants: no lines, nothing firm, nothing rare."""
    sterile = {str(sample.id) for sample in judged_example.project.samples if sample.sterile}
    strengths = [s for s in ranking.of("sample") if s.subject.id in sterile]

    assert strengths
    for strength in strengths:
        of = {part.id: part.points for part in strength.parts}
        assert (of["items"], of["lines"], of["firmness"], of["rarity"]) == (0, 0, 0, 0)


def argument(*lines: int) -> Argument:
    """An argument that holds and rests on these rows."""
    places = tuple(Place(path="counts/a.csv", line=line) for line in lines)
    evidence = Evidence(measure="items", value=3, of=3, verdict="holds", places=places)
    return Argument(
        rule=RuleId("food.x"), direction="for", weight=1, verdict="holds", says="", says_plain="", evidence=(evidence,)
    )


@pytest.mark.parametrize(
    ("arguments", "lines"),
    [
        ([], 0),
        ([argument(1)], 1),
        ([argument(1), argument(1)], 1),
        ([argument(1), argument(2)], 2),
        ([argument(1, 2, 3), argument(1), argument(2)], 2),
        ([argument(1, 2), argument(2, 3)], 1),
    ],
)
def test_lines_of_evidence_are_independent_if_no_row_is_shared(arguments: list[Argument], lines: int) -> None:
    """The same rows looked at twice are one line; an argument from all rows does not stand for the narrow ones."""
    claim = Claim(
        id="S1/food.x",
        about=Subject(level="sample", id="S1"),
        question="food",
        statement=StatementId("food.x"),
        verdict="holds",
        support=0.8,
        grade="supports",
        stability=None,
        arguments=tuple(arguments),
    )

    assert independent_lines([claim]) == lines


def test_the_terminal_shows_aligned_columns_and_the_meaning_of_each(example_copy: Path) -> None:
    """Head and rows of a table are as wide as each other up to the last column, and every part is explained."""
    from click.testing import CliRunner

    from narrate.cli import commands

    shown = CliRunner().invoke(commands, ["rank", str(example_copy)])
    lines = shown.stdout.splitlines()
    head = lines[0]
    at = head.index("next step")

    assert shown.exit_code == 0
    assert head.split() == ["context", "kind", *(m.title for m in MEANT), "sum", "next", "step"]
    assert all(line[at - 2 : at] == "  " and line[at] != " " for line in lines[1 : lines.index("")])
    assert all(any(line.strip().startswith(m.title) and m.explained in line for line in lines) for m in MEANT)


def test_rank_as_json_says_the_same(example_copy: Path, ranking: Ranking) -> None:
    """`rank --json` holds every part with value, words and points."""
    import json

    from click.testing import CliRunner

    from narrate.cli import commands

    plain = json.loads(CliRunner().invoke(commands, ["rank", str(example_copy), "--json"]).stdout)

    assert plain["format"] == "narrate ranking 1"
    assert [row["id"] for row in plain["contexts"]] == [s.subject.id for s in ranking.of("context")]
    assert all(row["points"] == sum(part["points"] for part in row["parts"].values()) for row in plain["samples"])
