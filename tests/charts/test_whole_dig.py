"""Charts of the whole dig: the cases at their ends, and what their titles say."""

from __future__ import annotations

import xml.etree.ElementTree as ET
from dataclasses import replace

import pytest

from narrate.charts import balance, companions, likeness_map, rarefaction, ring, triangle
from narrate.model.claims import Argument, Claim
from narrate.model.fields import Association, Associations, TrianglePoint
from narrate.model.figures import Chart
from narrate.model.ids import RuleId, StatementId, Subject
from narrate.model.order import Ordination, PointsOfAxis
from narrate.model.seasons import FoundWindow, Gatherings, Seasons
from narrate.model.studies import RarefactionCurve
from tests.web.editions import a_project, packs

LONG = "Polygonum with a name that goes on for sixty letters and <more>"
NONE = Gatherings(fewest=None, plans=())


def a_window(name: str, months: tuple[int, ...], keeping: tuple[str, ...]) -> FoundWindow:
    return FoundWindow(
        taxon=name, part="seed", items=3, by_source=(), any_source=months, every_source=months, keeping=keeping
    )


def seasons(*windows: FoundWindow) -> Seasons:
    return Seasons(
        subject=Subject(level="site", id="site"), windows=windows, support=(0,) * 12, all_fresh=NONE, agreed_only=NONE,
        binding=NONE, left_open=(), disputed=(), unknown=(),
    )  # fmt: skip


def a_pair(weed: str, p_holm: float = 1.0, phi: float = 0.2) -> Association:
    return Association(
        crop="Zea mays", crop_part="cupule", weed=weed, both=3, only_crop=2, only_weed=2, neither=4, phi=phi,
        expected_phi=0.1, p=p_holm, p_holm=p_holm,
    )  # fmt: skip


def pairs(*rows: Association) -> Associations:
    return Associations(samples=11, rows=rows, left_out=0, permutations=199, seed=1)


def points(names: list[str]) -> PointsOfAxis:
    n = len(names)
    at = tuple((float(i % 7) - 3, float(i % 5) - 2) for i in range(n))
    even = ((1 / n, 1 / n),) * n
    return PointsOfAxis(
        names=tuple(names), masses=(1 / n,) * n, distances=(1.0,) * n, inertias=(0.1,) * n, coordinates=at,
        contributions=even, qualities=even,
    )  # fmt: skip


def ordination(samples: int, plants: list[str]) -> Ordination:
    rows = points([f"S{number}" for number in range(samples)])
    return Ordination(inertias=(0.5, 0.3), total_inertia=1.0, items=900, rows=rows, columns=points(plants))


def a_claim(title: str, weights: tuple[float, ...], against: tuple[float, ...] = ()) -> Claim:
    arguments = [
        Argument(
            rule=RuleId("a.b"), direction=direction, weight=weight, verdict="holds", says="", says_plain="", evidence=()
        )
        for direction, given in (("for", weights), ("against", against))
        for weight in given
    ]  # fmt: skip
    return Claim(
        id=f"C1/{title}", about=Subject(level="context", id="C1"), question="fuel", statement=StatementId(title),
        verdict="holds", support=0.7, grade="suggests", stability=None, arguments=tuple(arguments),
    )  # fmt: skip


def a_curve(phase: str, *counted: tuple[int, float]) -> RarefactionCurve:
    subject = Subject(level="phase", id=phase)
    return RarefactionCurve(subject=subject, items=counted[-1][0], taxa=int(counted[-1][1]), points=counted)


def a_point(id: str, grain: float, chaff: float) -> TrianglePoint:
    return TrianglePoint(
        subject=Subject(level="context", id=id), grain=grain, chaff=chaff, weed=1 - grain - chaff, x=0, y=0, n=40
    )


def of_three_hundred() -> list[Chart | None]:
    many = [f"{LONG} {number}" for number in range(300)]
    return [
        ring.draw(seasons(*(a_window(name, (8, 9), ("stored",)) for name in many)), "ring"),
        companions.draw(pairs(*(a_pair(name) for name in many)), "companions"),
        likeness_map.draw(ordination(60, many), a_project(), "map"),
        balance.draw(tuple(a_claim(name, (1.0,)) for name in many), packs(), "balance"),
        triangle.draw(
            tuple(a_point(f"C{number}", number / 400, 0.2) for number in range(300)), a_project(), "triangle"
        ),
        rarefaction.draw((a_curve("early", (1, 1.0), (5000, 300.0)),), a_project(), "rarefaction"),
    ]


@pytest.mark.parametrize("drawn", of_three_hundred(), ids=lambda chart: chart.id if chart else "none")
def test_three_hundred_names_of_sixty_letters_are_drawn(drawn: Chart | None) -> None:
    """The picture is well-formed, stays within its sheet and below 120 KB, and its table holds all of them."""
    assert drawn is not None
    root = ET.fromstring(drawn.svg)
    width = float(root.attrib["viewBox"].split()[2])
    places = [float(text.attrib["x"]) for text in root.iter("{http://www.w3.org/2000/svg}text") if "x" in text.attrib]

    assert all(-1 <= x <= width + 1 for x in places)
    assert len(drawn.svg) < 120_000
    assert len(drawn.title) < 260 and drawn.alt and "n = " in drawn.note
    assert all(len(row) == len(drawn.columns) for row in drawn.rows)


def test_of_nothing_there_is_no_chart() -> None:
    """Without data each gives None, and the page goes without."""
    assert [
        ring.draw(None, "a"),
        ring.draw(seasons(), "a"),
        companions.draw(pairs(), "a"),
        likeness_map.draw(None, a_project(), "a"),
        likeness_map.draw(replace(ordination(3, ["a", "b"]), inertias=(0.5,)), a_project(), "a"),
        balance.draw((), packs(), "a"),
        triangle.draw((), a_project(), "a"),
        rarefaction.draw((), a_project(), "a"),
    ] == [None] * 8


def test_a_single_item_of_one_sample_is_drawn() -> None:
    """One item, one context, one claim: a mark with its name, and no division by nothing."""
    drawn = [
        rarefaction.draw((a_curve("early", (1, 1.0)),), a_project(), "a"),
        triangle.draw((a_point("C1", 1.0, 0.0),), a_project(), "a"),
        balance.draw((a_claim("fuel.maize-cob", (1.8,)),), packs(), "a"),
    ]

    assert [chart.title for chart in drawn if chart] == [
        "The last tenth of the items added less than one kind of plant: more counting would add little",
        "Context C1 holds more grain than the other two",
        "Maize cobs as fuel: 1 argument for, 0 against",
    ]


def test_the_ring_tells_what_storage_hides() -> None:
    """What keeps names no season; what does not keep names its months."""
    kept = ring.draw(seasons(a_window("a", (9, 10), ("stored",))), "a")
    fresh = ring.draw(seasons(a_window("a", (9, 10), ("stored",)), a_window("b", (6,), ("perishable",))), "a")

    assert kept is not None and fresh is not None
    assert kept.title == (
        "Most plant parts with known months could be gathered in September and October; all of it keeps, so storage may "
        "hide when it was burned"
    )
    assert fresh.title == (
        "More plant parts could be gathered in June, September and October than in other months; what does not keep "
        "speaks of June"
    )


def test_companions_are_told_only_where_chance_is_left_behind() -> None:
    """A pair above 0.05 after Holm's correction is not told as a finding."""
    loose, firm = companions.draw(pairs(a_pair("Rumex")), "a"), companions.draw(pairs(a_pair("Rumex", 0.01, 0.8)), "a")

    assert loose is not None and firm is not None
    assert loose.title == "None of 1 pair of weed and crop goes together more firmly than chance allows"
    assert firm.title == "Rumex goes with Zea mays cupule"


def test_arguments_against_lie_on_the_other_side() -> None:
    """Their sum stands in the table with its sign said in words."""
    drawn = balance.draw((a_claim("fuel.maize-cob", (1.8, 1.0), (0.9,)),), packs(), "a")

    assert drawn is not None
    assert drawn.rows == (("Maize cobs as fuel", "2.8", "2", "0.9", "1", "0.70", "suggests"),)


def test_a_curve_that_still_rises_is_told() -> None:
    """Where the last tenth of the items brought a new kind, more counting would bring more."""
    drawn = rarefaction.draw((a_curve("early", (1, 1.0), (90, 20.0), (100, 23.0)),), a_project(), "a")

    assert drawn is not None
    assert drawn.title == "Early: the count of kinds was still rising when counting stopped"
