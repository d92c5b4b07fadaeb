"""What the review queue lists."""

from __future__ import annotations

from dataclasses import replace

from narrate.model.edition import Edition
from narrate.model.ids import FeatureId
from narrate.model.project import Project
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
    """Claims whose verdict stays in under 80 % of the draws are listed, the shakiest first."""
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
