"""What the open part of a dig says, held down to what the whole says."""

from __future__ import annotations

from narrate.judging.judge import judge
from narrate.judging.no_firmer import LIMIT, no_firmer
from narrate.model.claims import Claim, Claims
from narrate.model.ids import Subject
from tests.judging.rules import COBS, KERNEL, a_rule, bound, packs_with
from tests.measures.digs import Found, a_dig

COBS_ALONE: list[Found] = [("Zea mays", "cupule", 96), ("Zea mays", "kernel", 12)]
KERNELS: list[Found] = [("Zea mays", "kernel", 400)]
PACKS = packs_with(
    a_rule(about=("phase",)),
    a_rule("fuel.many_kernels", bound("items", KERNEL, at_least=100), about=("phase",), direction="against",
           weight="moderate"),
    a_rule("fuel.few_kernels", bound("items", KERNEL, at_most=20), about=("phase",), weight="moderate"),
)  # fmt: skip


def of_phase(claims: Claims) -> Claim:
    found = claims.find(Subject(level="phase", id="one"), COBS)
    assert found is not None
    return found


def test_what_the_whole_does_not_say_the_part_does_not_say() -> None:
    """Without a context full of kernels the phase would read as cobs on the fire; with it it does not."""
    part, whole = judge(a_dig([COBS_ALONE]), PACKS), judge(a_dig([COBS_ALONE, KERNELS]), PACKS)
    assert (of_phase(part).verdict, of_phase(whole).verdict) == ("holds", "fails")

    held = no_firmer(part, whole, PACKS)

    assert (of_phase(held).verdict, of_phase(held).grade) == ("cannot tell", "not supported")
    assert [c.statement for c in held.holding(Subject(level="phase", id="one"))] == []
    assert of_phase(held).limits[0].limit == LIMIT


def test_the_part_is_told_at_the_lower_of_the_two_grades() -> None:
    """A grade that the whole does not reach is not reached by the part."""
    many = [("Zea mays", "kernel", 60), ("Zea mays", "cupule", 400)]
    part, whole = judge(a_dig([COBS_ALONE]), PACKS), judge(a_dig([COBS_ALONE, many]), PACKS)  # type: ignore[list-item]
    held, own, all_ = of_phase(no_firmer(part, whole, PACKS)), of_phase(part), of_phase(whole)

    assert all_.verdict == "holds" and own.support > all_.support
    assert held.grade == all_.grade != own.grade
    assert held.stability == min(own.stability or 0, all_.stability or 0)


def test_what_the_whole_alone_says_is_not_lent_to_the_part() -> None:
    """A reading whose ground may not be shown is not shown either."""
    part, whole = judge(a_dig([[("Zea mays", "kernel", 9)]]), PACKS), judge(a_dig([[], COBS_ALONE]), PACKS)
    assert of_phase(whole).verdict == "holds"

    assert of_phase(no_firmer(part, whole, PACKS)).verdict == of_phase(part).verdict != "holds"


def test_a_part_that_is_the_whole_stays_as_it_is() -> None:
    """Nothing is held down where nothing was taken out."""
    claims = judge(a_dig([COBS_ALONE]), PACKS)

    assert list(no_firmer(claims, claims, PACKS)) == list(claims)
