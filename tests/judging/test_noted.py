"""What was noted in words, as a fact that rules may ask for."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from narrate.judging.facts import fact_verdicts, recorded
from narrate.measures.count_table import count_table
from narrate.measures.units import Units
from narrate.model.observations import Observation
from narrate.model.packs import Packs
from narrate.model.project import Project
from narrate.model.rules import Fact, Selector
from narrate.pipeline.judged import Judged
from narrate.problems import Place
from tests.measures.digs import a_dig
from tests.small_packs import small_packs

HERE = Place(path="words/observations.yaml", line=1)
SCORCHED = Observation(id="scorched ground", noted_of="ground", phrases=("scorch*",), place=HERE)
IN_ROWS = Observation(
    id="in rows", noted_of="find", phrases=("still in rows",), of=Selector(taxon=("Zea mays",)), place=HERE
)
PACKS = replace(small_packs(), observations=(SCORCHED, IN_ROWS))


def noted(*ids: str, is_not: tuple[str, ...] = ()) -> Fact:
    return Fact(fact="noted", is_any_of=ids, is_none_of=is_not, place=HERE)


def a_pit(description: str = "", note: str = "", taxon: str = "Zea mays") -> Project:
    dig = a_dig([[(taxon, "seed", 9)]])
    contexts = (replace(dig.contexts[0], description=description),)
    return replace(dig, contexts=contexts, counts=(replace(dig.counts[0], note=note),))


def verdict(project: Project, fact: Fact, packs: Packs = PACKS) -> int:
    units = Units(count_table(project, packs), "context", packs, project.preservation)
    return int(fact_verdicts(fact, units, recorded(project, packs))[0, 0])


def test_what_was_noted_of_the_ground_holds() -> None:
    """'Walls scorched' is scorched ground."""
    assert verdict(a_pit("The walls were scorched."), noted("scorched ground")) == 1


@pytest.mark.parametrize("said", ["", "A pit of clay.", "The walls were not scorched."])
def test_what_was_not_noted_never_fails(said: str) -> None:
    """Nobody writes down all that there was, so that silence and denial cannot tell."""
    assert verdict(a_pit(said), noted("scorched ground")) == 0


def test_what_was_noted_fails_a_rule_that_asks_for_its_absence() -> None:
    """'is_not' fails where it was noted, and holds where it was not."""
    is_not = noted(is_not=("scorched ground",))

    assert [verdict(a_pit(said), is_not) for said in ("The walls were scorched.", "")] == [-1, 1]


def test_what_was_noted_of_a_find_is_of_the_finds_that_the_sign_means() -> None:
    """Kernels still in rows are of maize; a goosefoot that is said to lie in rows is none."""
    assert verdict(a_pit(note="some still in rows"), noted("in rows")) == 1
    assert verdict(a_pit(note="some still in rows", taxon="Chenopodium"), noted("in rows")) == 0


def test_scorched_walls_support_burning_in_place(judged_example: Judged) -> None:
    """C05's walls were scorched to the height of its lens of seed."""
    claim = judged_example.claims.by_id["C05/deposit.burned-in-place"]  # type: ignore[index]

    assert "deposit.ground_reddened_or_scorched" in [a.rule for a in claim.held("for")]
    assert claim.grade == "supports"


def test_most_kernels_in_pieces_flag_a_ratio(judged_example: Judged) -> None:
    """Of the 273 kernels of C12 153 are pieces: no like units of its cob parts."""
    claim = judged_example.claims.by_id["C12/food.cooking-accident"]  # type: ignore[index]
    pieces = {e.pieces for a in claim.arguments for e in a.evidence if e.measure.startswith("ratio") and e.of == 273}

    assert pieces == {153}


def test_samples_of_a_context_share_its_notes(judged_example: Judged) -> None:
    """Each sample of C17 has the ears that were seen along its wall and the rows that were seen in one sample."""
    found = recorded(judged_example.project, judged_example.packs)
    own = [set(found[i].values["noted"]) for i, s in enumerate(judged_example.project.samples) if s.context == "C17"]

    assert np.all([{"ears seen", "kernels on the cob"} <= said for said in own]) and len(own) == 3
