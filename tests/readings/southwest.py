"""Published readings of the arid Southwest of North America."""

from __future__ import annotations

from tests.readings.reading import Place, Reading

HERE = "arid-southwest"
TABLES = "Adams, Kuckelman & Bowyer 2007, Archaeology of Sand Canyon Pueblo, "


def _thermal() -> tuple[Place, ...]:
    """39 samples of thermal features; the table gives in how many each thing was, not how much."""
    cobs = {"burned area": 3, "firepit": 7, "hearth": 6}
    juniper = {"burned area": 6, "firepit": 11, "hearth": 17}
    pine = {"burned area": 3, "firepit": 4, "hearth": 6}
    number = {"burned area": 8, "firepit": 12, "hearth": 19}
    places = []
    for kind, n in number.items():
        for i in range(n):
            held = [("Juniperus", "wood", 12)] if i < juniper[kind] else []
            held += [("Zea mays", "cupule", 6)] if i < cobs[kind] else []
            held += [("Pinus", "wood", 4)] if n - i <= pine[kind] else []
            phase = "late" if kind == "firepit" else "early"
            places.append(Place(kind=kind, phase=phase, samples=[held]))
    return tuple(places)


def _samples(present: dict[tuple[str, str], tuple[int, int]], sizes: tuple[int, int], kind: str) -> tuple[Place, ...]:
    """Samples of two phases, with each thing in the first so many of each."""
    return tuple(
        Place(
            kind=kind,
            deposit="primary" if kind == "hearth" else "secondary",
            phase=("early", "late")[p],
            samples=[[(taxon, part, 3) for (taxon, part), n in present.items() if i < n[p]]],
        )
        for p, size in enumerate(sizes)
        for i in range(size)
    )


TWO = {"early": (1150, 1225), "late": (1225, 1280)}
CACHE = [
    ("cheno-am", "seed", 90),
    ("Helianthus annuus", "achene", 22),
    ("Opuntia", "seed", 30),
    ("Physalis longifolia", "seed", 40),
    ("Rhus aromatica", "fruit stone", 9),
    ("Zea mays", "kernel", 4),
    ("Zea mays", "cob", 2),
]

SOUTHWEST = (
    Reading(
        id="sand-canyon-6-fuel",
        source=TABLES + "Table 6",
        known="read",
        printed="39 samples of hearths, firepits and burned spots; juniper in 34, maize cob parts in 16, pine in 13. "
        "Amounts are not printed.",
        concluded="Wood and maize cob parts are listed together as fuel.",
        region=HERE,
        places=_thermal(),
        about="site",
        holds={"fuel.wood": "supports", "fuel.maize-cob": "suggests"},
        must_not=("food.maize", "fuel.dung", "fuel.smudge"),
        years=TWO,
    ),
    Reading(
        id="sand-canyon-6-no-contrast",
        source=TABLES + "Table 6; Fisher's exact test of 6/19 against 7/12 worked out here, p = 0.26",
        known="read",
        printed="Cob parts in 6 of 19 hearths (32 %) and in 7 of 12 firepits (58 %).",
        concluded="The table claims no contrast, and with these numbers there is none to claim.",
        region=HERE,
        places=_samples({("Zea mays", "cupule"): (6, 7)}, (19, 12), "hearth"),
        about="site",
        must_not=("change.maize-cob-fuel-rises", "change.maize-rises", "change.maize-cob-fuel-declines"),
        years=TWO,
    ),
    Reading(
        id="sand-canyon-14-pine",
        source=TABLES + "Table 14",
        known="read",
        printed="Pine in 21 of 25 earlier and 19 of 50 later samples (84 and 38 %); juniper in 25 and 41.",
        concluded="Pine was found less widely later; juniper stayed the common fuel.",
        region=HERE,
        places=_samples({("Pinus", "wood"): (21, 19), ("Juniperus", "wood"): (25, 41)}, (25, 50), "hearth"),
        about="site",
        holds={"change.pine-declines": "supports", "fuel.wood": "supports"},
        must_not=("change.pine-rises",),
        years=TWO,
    ),
    Reading(
        id="sand-canyon-17-spring",
        source=TABLES + "Table 17",
        known="read",
        printed="Stipa-type (ricegrass) grain under April, May and early June.",
        concluded="A resource available in spring.",
        region=HERE,
        places=[Place(samples=[[("Stipa hymenoides", "grain", 14)]])],
        holds={"season.spring": "consistent with"},
        must_not=("season.autumn", "season.late-summer"),
    ),
    Reading(
        id="sand-canyon-17-summer",
        source=TABLES + "Table 17",
        known="read",
        printed="Cheno-am, purslane, beeweed, lemonadeberry under late June, July and August.",
        concluded="Resources available in summer.",
        region=HERE,
        places=[
            Place(
                samples=[
                    [
                        ("cheno-am", "seed", 40),
                        ("Portulaca", "seed", 9),
                        ("Cleome", "seed", 4),
                        ("Rhus aromatica", "fruit stone", 2),
                    ]
                ]
            )
        ],
        holds={"season.late-summer": "consistent with"},
        at_most={"season.late-summer": "supports"},
        must_not=("season.spring", "season.winter"),
    ),
    Reading(
        id="sand-canyon-17-fall",
        source=TABLES + "Table 17",
        known="read",
        printed="Prickly pear, groundcherry, sunflower, winged pigweed under September to first frost.",
        concluded="Resources available in fall.",
        region=HERE,
        places=[
            Place(samples=[[("Opuntia", "seed", 9), ("Physalis longifolia", "seed", 14), ("Helianthus", "achene", 3)]])
        ],
        holds={"season.autumn": "consistent with"},
        must_not=("season.spring", "season.winter"),
    ),
    Reading(
        id="sand-canyon-17-all-year",
        source=TABLES + "Table 17",
        known="read",
        printed="Juniper fruit and wood under potential year-round resources.",
        concluded="Tells no season.",
        region=HERE,
        places=[Place(samples=[[("Juniperus osteosperma", "seed", 30), ("Juniperus", "wood", 20)]])],
        must_not=(
            "season.spring",
            "season.early-summer",
            "season.late-summer",
            "season.autumn",
            "season.more-than-one",
        ),
    ),
    Reading(
        id="sand-canyon-11-cache",
        source=TABLES + "Table 11 (Kiva 1004, Tower 1008)",
        known="read",
        printed="Two seed caches of rodents, all specimens charred: cheno-am, sunflower, prickly pear, groundcherry, "
        "lemonadeberry, maize kernel and cob. Numbers are filled in.",
        concluded="Gathered by rodents and charred with the building, so not human food.",
        region=HERE,
        places=[Place(kind="burned structure", deposit="de facto", samples=[CACHE])],
        holds={"deposit.rodent-cache": "suggests"},
        must_not=("food.small-seed", "food.fruit", "fuel.maize-cob", "food.burned-store"),
    ),
    Reading(
        id="sand-canyon-4-squash",
        source=TABLES + "Table 4",
        known="read",
        printed="Uncharred squash seeds in dry, sheltered deposits of a pueblo.",
        concluded="Uncharred cultigens of a dry site are listed as ancient.",
        region=HERE,
        places=[Place(kind="floor", deposit="de facto", samples=[[("Cucurbita", "seed", 8, "desiccated")]])],
        preservation="desiccated",
        holds={"integrity.uncharred-ancient": "supports"},
        must_not=("integrity.modern-seeds",),
    ),
    Reading(
        id="yellow-jacket-9-parts",
        source="Murray & Jackman-Craig 2003, Yellow Jacket Pueblo, Table 9",
        known="read",
        printed="Cupules and cob fragments stand under wood charcoal and other potential fuels, kernels and "
        "embryos under "
        "reproductive parts.",
        concluded="Cob parts are fuel; they are not food.",
        region=HERE,
        places=[Place(samples=[[("Zea mays", "cupule", 40), ("Zea mays", "cob", 3), ("Juniperus", "wood", 20)]])],
        holds={"fuel.maize-cob": "supports", "fuel.wood": "supports"},
        must_not=("food.maize", "food.cooking-accident"),
    ),
    Reading(
        id="yellow-jacket-9-change",
        source="Murray & Jackman-Craig 2003, Table 9; Fisher's exact tests worked out here",
        known="read",
        printed="Late Pueblo II (8 samples) and Great Tower (12): cupule in 8 and 2 (p = 0.0007), juniper in 7 and 8 "
        "(p = 0.60), cheno-am in 4 and 3 (p = 0.36).",
        concluded="Cupules differ; juniper and cheno-am do not.",
        region=HERE,
        places=_samples(
            {("Zea mays", "cupule"): (8, 2), ("Juniperus", "wood"): (7, 8), ("cheno-am", "seed"): (4, 3)},
            (8, 12),
            "hearth",
        ),
        about="site",
        holds={"change.maize-cob-fuel-declines": "suggests"},
        must_not=("change.gathered-plants-declines", "change.gathered-plants-rises", "change.maize-cob-fuel-rises"),
        years=TWO,
    ),
    Reading(
        id="woods-canyon-14",
        source="Rainey & Jezik 2002, Woods Canyon Pueblo, Table 14",
        known="read",
        printed="40 samples of secondary refuse: cupule in 20, kernel in 10.",
        concluded="Maize in half of the samples, by cob parts twice as often as by kernels.",
        region=HERE,
        places=_samples({("Zea mays", "cupule"): (10, 10), ("Zea mays", "kernel"): (5, 5)}, (20, 20), "midden"),
        about="site",
        holds={"fuel.maize-cob": "suggests"},
        must_not=("change.maize-rises", "change.maize-declines"),
        years=TWO,
    ),
    Reading(
        id="sullivan-wild-stands",
        source="Sullivan et al. 2024, Frontiers in Environmental Archaeology (abstract)",
        known="read",
        printed="Upland Grand Canyon province: amaranth and chenopodium rule; maize is scarce. Numbers are filled in.",
        concluded="Wild plant production managed by fire, rather than maize fields.",
        region=HERE,
        places=[
            Place(
                kind="roasting pit",
                samples=[[("Amaranthus", "seed", 120), ("Chenopodium", "seed", 90), ("Juniperus", "wood", 20)]],
            )
        ],
        holds={"field.managed-wild-stand": "consistent with"},
        at_most={"field.managed-wild-stand": "suggests"},
        must_not=("field.weeds-with-crop",),
    ),
    Reading(
        id="weeds-of-maize-fields",
        source="the guidance that three or more field weeds with maize are consistent with fields, no more",
        known="common practice, no source",
        printed="Cheno-am, purslane, groundcherry with cupules and kernels in a hearth.",
        concluded="Consistent with maize fields nearby or other disturbed ground; never more than that.",
        region=HERE,
        places=[
            Place(
                samples=[
                    [
                        ("cheno-am", "seed", 40),
                        ("Portulaca", "seed", 12),
                        ("Physalis", "seed", 6),
                        ("Zea mays", "cupule", 30),
                        ("Zea mays", "kernel", 8),
                    ]
                ]
            )
        ],
        holds={"field.weeds-with-crop": "consistent with"},
        at_most={"field.weeds-with-crop": "consistent with"},
        must_not=("field.managed-wild-stand",),
    ),
    Reading(
        id="no-dung-before-contact",
        source="Miller & Smart 1984, Journal of Ethnobiology 4:15–28: animals that yield usable dung must be present",
        known="from memory",
        printed="Many small seeds and little wood in a hearth of the twelfth century. Numbers are filled in.",
        concluded="Without animals whose dung burns, dung is not to be thought of.",
        region=HERE,
        places=[
            Place(
                samples=[
                    [
                        ("cheno-am", "seed", 160),
                        ("Portulaca", "seed", 60),
                        ("Sporobolus", "grain", 40),
                        ("Plantago", "seed", 20),
                        ("Juniperus", "wood", 5),
                    ]
                ]
            )
        ],
        must_not=("fuel.dung",),
        years={"early": (1100, 1200)},
    ),
    Reading(
        id="cheno-am-in-fill",
        source="Minnis 1981, American Antiquity 46:143–152",
        known="from memory",
        printed="A few seeds of a weedy edible plant in a general fill.",
        concluded="Being edible is no evidence of having been eaten; seed rain brings them.",
        region=HERE,
        places=[Place(kind="pit", deposit="secondary", samples=[[("cheno-am", "seed", 6), ("Juniperus", "wood", 6)]])],
        must_not=("food.small-seed", "food.greens", "field.managed-wild-stand"),
    ),
)
