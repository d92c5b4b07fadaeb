"""What the review queue lists."""

from __future__ import annotations

from dataclasses import replace

from narrate.model.edition import Edition
from narrate.model.ids import FeatureId, Subject
from narrate.model.next_steps import NextStep
from narrate.model.project import Project
from narrate.model.strength import Part, PartMeant, Ranking, Strength
from narrate.web.evidence import Opener
from narrate.web.links import Links
from narrate.web.queue import QueueView
from tests.web.editions import a_project, a_row, an_edition


def queue(edition: Edition) -> QueueView:
    return QueueView(Opener(edition, Links()))


def moved(*, share_a_feature: bool = False) -> Project:
    """C2, a moved deposit of feature F1, holds enough cupules for the rule; C1 may be of the same feature."""
    whole = a_project()
    first, second = whole.contexts
    if share_a_feature:
        first = replace(first, feature=FeatureId("F1"), deposit="tertiary")
    contexts = (first, replace(second, feature=FeatureId("F1")))
    return replace(whole, contexts=contexts, counts=(*whole.counts, a_row("S2", "Zea mays", "cupule", "60", 7)))


def test_claims_held_down_are_gathered_by_what_lifts_them() -> None:
    """The limit is told once, with every claim that it holds down, and what would lift it."""
    (held,) = queue(an_edition(project=moved())).held_down

    assert held.says == "the deposit was moved: grade held at 'suggests'"
    assert held.lifts == "a sealed one"
    assert [claim.subject for claim in held.claims] == ["Late", "Context C2", "Sample S2"]


def test_a_feature_of_one_context_is_not_told_twice() -> None:
    """Claims of a feature are listed only where it has more than one context."""
    alone = queue(an_edition(project=moved())).held_down[0].claims
    together = queue(an_edition(project=moved(share_a_feature=True))).held_down[0].claims

    assert "Feature F1" not in {claim.subject for claim in alone}
    assert "Feature F1" in {claim.subject for claim in together}


def test_the_unstable_come_first_by_how_unstable_they_are() -> None:
    """Claims whose verdict stays in under 80% of the draws are listed, the shakiest first."""
    project = replace(a_project(), counts=(a_row("S1", "Zea mays", "cupule", "11", 2),))

    shaky = queue(an_edition(project=project)).unstable

    stays = [claim.stability for claim in shaky]
    assert stays and stays == sorted(stays, key=lambda share: share or 0.0)
    assert all(share is not None and share < 0.8 for share in stays)


def test_samples_are_left_out_of_the_weakest() -> None:
    """The list of weakest claims speaks of contexts and wider, so that it stays short."""
    weak = queue(an_edition(project=moved())).weakest

    assert weak
    assert not any(claim.subject.startswith("Sample") for claim in weak)


def test_the_ranking_shows_every_part_with_its_marks() -> None:
    """Parts have words and marks that add up to three each, and the sum is that of the marks."""
    step = NextStep(
        id="sort.heavy", about=Subject(level="context", id="C1"), says="sort it", cost=2, questions=("fuel",)
    )
    parts = tuple(
        Part(id=id, value=1.0, text="1", points=points)
        for id, points in (("items", 3), ("density", 2), ("firmness", 0))
    )
    meant = tuple(PartMeant(id=part.id, title=part.id, explained=f"{part.id} explained") for part in parts)
    strengths = (
        Strength(subject=Subject(level="context", id="C1"), kind="hearth", parts=parts, next_step=step),
        Strength(subject=Subject(level="context", id="C2"), kind="pit", parts=parts),
    )
    edition = replace(an_edition(), ranking=Ranking(meant=meant, by_level=(("context", strengths),), of_dig=(step,)))

    found = queue(edition).ranking

    assert found is not None
    first, second = found.levels[0].rows
    assert [(p.filled, p.empty, p.points, p.is_figure) for p in first.parts] == [
        (3, 0, "3 of 3", True),
        (2, 1, "2 of 3", True),
        (0, 3, "0 of 3", False),
    ]
    assert (first.points, first.step, first.cost, first.questions) == ("5 of 9", "sort it", "an hour", "fuel")
    assert (second.step, second.cost) == ("leave it", "")
    assert found.of_dig == (("sort it", "an hour"),)


def test_a_public_edition_ranks_nothing() -> None:
    """The ranking is the team's."""
    assert queue(an_edition()).ranking is None
