"""What to date first, and what never."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from narrate.measures.dating import dating_candidates, lifespan
from narrate.model.dating import DatingRanking
from narrate.model.plants import ContextKind, Part
from narrate.reading.packs import read_packs
from tests.measures.digs import a_dig, a_row
from tests.small_packs import small_packs

PACKS = read_packs(("eastern-north-america",))[0]


def ranking(rows: list[Any], **contexts: dict[str, Any]) -> DatingRanking:
    """Samples S1 to S3 of contexts C1 to C3, sealed and primary unless said otherwise."""
    packs = small_packs()
    words = replace(
        packs.words,
        parts={
            **packs.words.parts,
            "twig": Part(id="twig", plural="", plain="", plain_plural="", roles=frozenset({"wood"})),
        },  # type: ignore[dict-item, arg-type]
        context_kinds={
            **packs.words.context_kinds,
            "burial": ContextKind(id="burial", plural="", plain="", plain_plural="", traits=frozenset({"burial"})),
        },
    )
    dig = a_dig([[], [], []], rows=rows)
    known = {"security": "sealed", "deposit": "primary"}
    dig = replace(dig, contexts=tuple(replace(c, **{**known, **contexts.get(c.id, {})}) for c in dig.contexts))
    return dating_candidates(dig, replace(packs, words=words))


def kernel(sample: str, mass_g: float | None = 0.05, count: int = 1, **more: Any):  # type: ignore[no-untyped-def]
    return a_row(sample, "Zea mays", "kernel", count, mass_g=mass_g, **more)


def first(found: DatingRanking) -> str:
    return found.candidates[0].sample


def test_a_sealed_context_comes_before_an_open_one() -> None:
    """Whatever the mass."""
    assert first(ranking([kernel("S1", 0.5), kernel("S2", 0.02)], C1={"security": "open"})) == "S2"


def test_a_primary_deposit_comes_before_a_tertiary_one() -> None:
    """Moved remains may be older than where they lie."""
    assert first(ranking([kernel("S1", 0.5), kernel("S2")], C1={"deposit": "tertiary"})) == "S2"


def test_a_seed_comes_before_a_twig() -> None:
    """One season before a few years."""
    assert first(ranking([a_row("S1", "Carya", "twig", 1, mass_g=0.5), kernel("S2")])) == "S2"


def test_one_heavy_item_comes_before_many_light_ones() -> None:
    """One entity is dated (Ashmore 1999, Antiquity 73:124-130; from memory)."""
    found = ranking([kernel("S1", 0.2, count=40), kernel("S2", 0.02)])

    assert first(found) == "S2"
    assert "one item weighs about 0.005 g, less than most laboratories ask for" in found.candidates[1].doubts


def test_what_cannot_be_dated_is_left_out_with_its_reason() -> None:
    """Wood, uncharred seeds, names that nobody knows and disturbed contexts."""
    found = ranking(
        [
            a_row("S1", "Carya", "wood", 5, mass_g=3.0),
            kernel("S1", condition="uncharred"),
            a_row("S1", "mystery", "seed", 1, mass_g=0.1),
            kernel("S2"),
            kernel("S3"),
        ],
        C2={"security": "disturbed"},
    )

    assert [c.sample for c in found.candidates] == ["S3"]
    assert dict(found.refused) == {
        "wood, or another part that took many years to grow or cannot be told": 1,
        "not charred": 1,
        "no plant that the packs know": 1,
        "the context is disturbed": 1,
    }


def test_burials_are_not_on_the_list() -> None:
    """Dating destroys; what lies with the dead is not ours to offer."""
    found = ranking([kernel("S1")], C1={"kind": "burial"})

    assert found.candidates == () and found.refused == (("from a burial: not for a list of candidates", 1),)


def test_equal_candidates_share_a_rank() -> None:
    """Two alike are both first, the next is third."""
    found = ranking([kernel("S1"), kernel("S2"), kernel("S3", 0.02)])

    assert [c.rank for c in found.candidates] == [1, 1, 3]


@pytest.mark.parametrize(
    ("part", "years"),
    [("kernel", "one season"), ("nutshell", "one season"), ("twig", "a few years"), ("wood", "many years"),
     ("charcoal", "many years"), ("bark", "many years"), ("indeterminate", "many years"), ("unheard of", "many years")],
)  # fmt: skip
def test_how_long_a_part_took_to_grow(part: str, years: str) -> None:
    """Common practice, no source; what is not known counts as old."""
    assert lifespan(part, PACKS) == years
