"""What only the species can say is said of the species and not of the group (common practice, no source)."""

from __future__ import annotations

import pytest

from tests.readings.reading import Place, Reading, claims_of

EAST, EUROPE = "eastern-north-america", "temperate-europe"


def verdict_of(statement: str, region: str, written: str, part: str) -> str:
    """How a hearth with three hundred of the thing is judged."""
    reading = Reading(
        id="group",
        source="",
        known="common practice, no source",
        printed="",
        concluded="",
        region=region,
        places=[Place(samples=[[(written, part, 300), ("Quercus", "wood", 20)]])],
    )
    claims = claims_of(reading)
    return claims[statement].verdict if statement in claims else "no claim"


@pytest.mark.parametrize(
    ("region", "statement", "part", "species", "group"),
    [
        (EAST, "food.native-seed-crops", "seed", "Chenopodium berlandieri ssp. jonesianum", "cheno-am"),
        (EAST, "food.native-seed-crops", "achene", "Polygonum erectum", "Polygonum s.l."),
        (EUROPE, "food.pulse", "seed", "Vicia faba", "Vicia/Lathyrus"),
        (EUROPE, "field.spring-sown", "grain", "Panicum miliaceum", "Cerealia indet."),
        (EUROPE, "processing.dehusking-waste", "glume base", "Triticum spelta", "Triticum/Hordeum"),
    ],
)
def test_a_reading_that_needs_the_species_does_not_hold_of_the_group(
    region: str, statement: str, part: str, species: str, group: str
) -> None:
    """Three hundred of the species make the reading hold; three hundred of the group do not."""
    assert verdict_of(statement, region, species, part) == "holds"
    assert verdict_of(statement, region, group, part) != "holds"
