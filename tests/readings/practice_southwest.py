"""Readings of common practice (arid-southwest), no source; the counts are invented to show it."""

from __future__ import annotations

from tests.readings.reading import Place, Reading

PRACTICE = "common practice, no source"


def _case(id: str, concluded: str, kind: str, deposit: str, security: str, samples: list, **keys) -> Reading:
    return Reading(
        id=f"practice-{id}",
        source=PRACTICE,
        known=PRACTICE,
        printed="Counts invented to show the practice.",
        concluded=concluded,
        region="arid-southwest",
        places=[Place(kind=kind, deposit=deposit, security=security, samples=samples)],
        **keys,
    )


SOUTHWEST_PRACTICE = (
    _case(
        "pinyon-juniper-hearth",
        "Wood as fuel, burned in place; not dung as fuel, a burned store, chaff as fuel.",
        "hearth",
        "primary",
        "sealed",
        [
            [
                ("Juniperus", "wood", 60),
                ("Pinus edulis", "wood", 30),
                ("Juniperus", "twig", 20),
                ("Zea mays", "cupule", 25),
                ("Chenopodium/Amaranthus", "seed", 12),
            ]
        ],
        holds={"fuel.wood": "supports", "deposit.burned-in-place": "suggests"},
        must_not=(
            "fuel.dung",
            "food.burned-store",
            "fuel.chaff",
        ),
        years={"early": (950, 1050)},
    ),
    _case(
        "tansy-mustard-ricegrass",
        ("Gathered in early summer, small seeds as food; not gathered in winter, gathered in autumn, cereals as food."),
        "hearth",
        "primary",
        "sealed",
        [
            [
                ("Descurainia", "seed", 160),
                ("Achnatherum hymenoides", "grain", 50),
                ("Chenopodium/Amaranthus", "seed", 6),
                ("Juniperus", "wood", 25),
            ]
        ],
        holds={"season.early-summer": "suggests", "food.small-seed": "suggests"},
        must_not=(
            "season.winter",
            "season.autumn",
            "food.cereal",
        ),
        years={"early": (950, 1050)},
    ),
    _case(
        "cheno-am-parch",
        (
            "Small seeds as food, food burned by accident; not dung as fuel, waste from the fine sieve, "
            "recent uncharred seeds."
        ),
        "hearth",
        "primary",
        "sealed",
        [[("Chenopodium/Amaranthus", "seed", 640), ("Juniperus", "wood", 40), ("Zea mays", "cupule", 10)]],
        holds={"food.small-seed": "supports", "food.cooking-accident": "suggests"},
        must_not=(
            "fuel.dung",
            "processing.fine-sieving-waste",
            "integrity.modern-seeds",
            "season.winter",
        ),
        years={"early": (950, 1050)},
    ),
    _case(
        "roof-fall",
        (
            "Timber of a building; at most a hint of wood as fuel; not a burned store, a smudge fire, food "
            "burned by accident."
        ),
        "burned structure",
        "primary",
        "sealed",
        [
            [
                ("Juniperus", "wood", 90),
                ("Populus/Salix", "wood", 20),
                ("Juniperus", "bark", 12),
                ("Poaceae indet.", "stem", 10),
            ]
        ],
        holds={"deposit.building-timber": "suggests"},
        at_most={"fuel.wood": "suggests"},
        must_not=(
            "food.burned-store",
            "fuel.smudge",
            "food.cooking-accident",
        ),
        years={"early": (950, 1050)},
    ),
    _case(
        "kiva-hearth-late",
        (
            "Maize cobs as fuel, wood as fuel; at most a hint of maize as food; not a burned store, whole "
            "ears or spikelets."
        ),
        "hearth",
        "primary",
        "sealed",
        [
            [
                ("Zea mays", "cupule", 140),
                ("Zea mays", "kernel", 6),
                ("Juniperus", "wood", 40),
                ("Artemisia", "wood", 20),
                ("Chenopodium/Amaranthus", "seed", 20),
                ("Portulaca", "seed", 9),
                ("Physalis", "seed", 7),
            ]
        ],
        holds={"fuel.maize-cob": "supports", "fuel.wood": "suggests"},
        at_most={"food.maize": "suggests"},
        must_not=(
            "food.burned-store",
            "processing.whole-ears-or-spikelets",
        ),
        years={"early": (1200, 1280)},
    ),
    _case(
        "room-stored-corn",
        (
            "A burned store, maize as food, beans and other pulses as food; not maize cobs as fuel, a smudge"
            " fire, a rodent's store."
        ),
        "burned structure",
        "de facto",
        "sealed",
        [
            [
                ("Zea mays", "kernel", 900),
                ("Zea mays", "cupule", 460),
                ("Zea mays", "cob", 30),
                ("Phaseolus vulgaris", "seed", 120),
            ]
        ],
        holds={"food.burned-store": "supports", "food.maize": "supports", "food.pulse": "supports"},
        must_not=(
            "fuel.maize-cob",
            "fuel.smudge",
            "deposit.rodent-cache",
        ),
        years={"early": (1100, 1200)},
    ),
    _case(
        "agave-pit",
        "Agave or yucca hearts as food, wood as fuel; not a burned store, cereals as food.",
        "roasting pit",
        "primary",
        "sealed",
        [[("Agave", "leaf", 14), ("Agave", "stem", 6), ("Prosopis", "wood", 40), ("Parkinsonia", "wood", 10)]],
        holds={"food.agave": "suggests", "fuel.wood": "suggests"},
        must_not=(
            "food.burned-store",
            "food.cereal",
        ),
        years={"early": (1100, 1250)},
    ),
    _case(
        "cave-desiccated",
        "Maize as food, squash as food; not recent uncharred seeds, maize cobs as fuel.",
        "floor",
        "primary",
        "sealed",
        [
            [
                ("Zea mays", "cob", 30, "desiccated"),
                ("Zea mays", "husk", 20, "desiccated"),
                ("Cucurbita pepo", "rind", 15, "desiccated"),
                ("Cucurbita pepo", "seed", 20, "desiccated"),
                ("Pinus edulis", "nutshell", 40, "desiccated"),
                ("Yucca", "leaf", 12, "desiccated"),
                ("Phaseolus vulgaris", "pod", 4, "desiccated"),
            ]
        ],
        holds={"food.maize": "consistent with", "food.squash": "suggests"},
        must_not=(
            "integrity.modern-seeds",
            "fuel.maize-cob",
        ),
        preservation="desiccated",
        years={"early": (700, 900)},
    ),
    _case(
        "cactus-fruit",
        "Fruit as food; not gathered in winter, gathered in spring.",
        "pit",
        "secondary",
        "sealed",
        [
            [
                ("Opuntia", "seed", 40),
                ("Echinocereus", "seed", 60),
                ("Zea mays", "cupule", 20),
                ("Yucca baccata", "seed", 4),
            ]
        ],
        holds={"food.fruit": "suggests"},
        must_not=(
            "season.winter",
            "season.spring",
        ),
        years={"early": (950, 1050)},
    ),
    _case(
        "sw-uncharred-open",
        "Recent uncharred seeds; not greens as food.",
        "midden",
        "secondary",
        "open",
        [[("Salsola", "seed", 30, "uncharred"), ("Portulaca", "seed", 80, "uncharred"), ("Zea mays", "cupule", 14)]],
        holds={"integrity.modern-seeds": "supports"},
        must_not=("food.greens",),
        years={"early": (950, 1050)},
    ),
    _case(
        "burned-mat-house-floor",
        "Not agave or yucca hearts as food, a burned store, dung as fuel.",
        "floor",
        "de facto",
        "sealed",
        [[("Juncus", "stem", 40), ("Yucca", "leaf", 30), ("Zea mays", "kernel", 8)]],
        must_not=(
            "food.agave",
            "food.burned-store",
            "fuel.dung",
        ),
        years={"early": (950, 1050)},
    ),
    _case(
        "mesquite-pit",
        "A burned store; not dung as fuel, a rodent's store.",
        "storage pit",
        "de facto",
        "sealed",
        [[("Prosopis", "seed", 140), ("Prosopis", "pod", 30)]],
        holds={"food.burned-store": "consistent with"},
        must_not=(
            "fuel.dung",
            "deposit.rodent-cache",
        ),
        years={"early": (600, 900)},
    ),
    _case(
        "saguaro-hohokam",
        "Gathered in early summer, wood as fuel, fruit as food; not gathered in winter, a burned store.",
        "roasting pit",
        "primary",
        "sealed",
        [
            [
                ("Carnegiea gigantea", "seed", 90),
                ("Zea mays", "cupule", 30),
                ("Descurainia", "seed", 40),
                ("Prosopis", "wood", 40),
            ]
        ],
        holds={"season.early-summer": "suggests", "fuel.wood": "supports", "food.fruit": "consistent with"},
        must_not=(
            "season.winter",
            "food.burned-store",
        ),
        years={"early": (950, 1050)},
    ),
    _case(
        "old-world-weed-sw",
        "Later plants in the deposit, wood as fuel; not dung as fuel.",
        "hearth",
        "primary",
        "sealed",
        [[("Erodium cicutarium", "seed", 12), ("Zea mays", "cupule", 40), ("Juniperus", "wood", 30)]],
        holds={"integrity.out-of-period": "suggests", "fuel.wood": "supports"},
        must_not=("fuel.dung",),
        years={"early": (1100, 1200)},
    ),
    _case(
        "amaranth-weeds-field",
        "Maize as food, field weeds with the crop; not malting, dung as fuel.",
        "pit",
        "secondary",
        "sealed",
        [
            [
                ("Zea mays", "kernel", 60),
                ("Zea mays", "cupule", 50),
                ("Portulaca", "seed", 20),
                ("Chenopodium/Amaranthus", "seed", 30),
                ("Cleome s.l.", "seed", 12),
                ("Physalis", "seed", 9),
            ]
        ],
        holds={"food.maize": "suggests", "field.weeds-with-crop": "consistent with"},
        must_not=(
            "processing.malting",
            "fuel.dung",
        ),
        years={"early": (950, 1050)},
    ),
    _case(
        "dung-prehispanic-sw",
        "Not dung as fuel.",
        "hearth",
        "primary",
        "sealed",
        [[("Poaceae indet.", "grain", 50), ("Chenopodium/Amaranthus", "seed", 60), ("Juniperus", "wood", 6)]],
        must_not=("fuel.dung",),
        years={"early": (1000, 1100)},
    ),
    _case(
        "pinyon-shell-floor",
        "Nuts as food, nut cracking; not gathered in spring, gathered in early summer.",
        "floor",
        "primary",
        "sealed",
        [[("Pinus edulis", "nutshell", 180), ("Juniperus", "seed", 8)]],
        holds={"food.nut": "consistent with", "processing.nut-cracking": "consistent with"},
        must_not=(
            "season.spring",
            "season.early-summer",
        ),
        years={"early": (950, 1050)},
    ),
    _case(
        "leaves-of-goosefoot-with-tansy-mustard",
        "Greens as food; not gathered in winter, a burned store.",
        "hearth",
        "primary",
        "sealed",
        [
            [
                ("Chenopodium/Amaranthus", "leaf", 7),
                ("Chenopodium/Amaranthus", "seed", 5),
                ("Descurainia", "seed", 104),
                ("Juniperus", "wood", 25),
            ]
        ],
        holds={"food.greens": "consistent with"},
        must_not=("season.winter", "food.burned-store"),
    ),
    _case(
        "bean-pods-in-dry-room",
        "Beans as food; not recent seeds, a burned store.",
        "floor",
        "primary",
        "sealed",
        [
            [
                ("Phaseolus vulgaris", "pod", 12, "desiccated"),
                ("Zea mays", "cob", 54, "desiccated"),
                ("Zea mays", "husk", 32, "desiccated"),
            ]
        ],
        holds={"food.pulse": "consistent with", "food.maize": "consistent with"},
        must_not=("integrity.modern-seeds", "food.burned-store"),
        preservation="desiccated",
        years={"early": (1100, 1200)},
    ),
)
