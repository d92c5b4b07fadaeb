"""Readings of common practice (eastern-north-america), no source; the counts are invented to show it."""

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
        region="eastern-north-america",
        places=[Place(kind=kind, deposit=deposit, security=security, samples=samples)],
        **keys,
    )


EAST_PRACTICE = (
    _case(
        "cob-smudge",
        (
            "A smudge fire, maize cobs as fuel, burned in place; at most a hint of maize as food; not a "
            "burned store, food burned by accident, whole ears or spikelets."
        ),
        "smudge pit",
        "primary",
        "sealed",
        [
            [
                ("Zea mays", "cupule", 420),
                ("Zea mays", "cob", 35),
                ("Zea mays", "kernel", 3),
                ("Pinus", "bark", 10),
                ("Pinus", "wood", 12),
            ]
        ],
        holds={"fuel.smudge": "supports", "fuel.maize-cob": "supports", "deposit.burned-in-place": "suggests"},
        at_most={"food.maize": "consistent with"},
        must_not=(
            "food.burned-store",
            "food.cooking-accident",
            "processing.whole-ears-or-spikelets",
            "processing.clean-product",
        ),
        years={"early": (950, 1050)},
    ),
    _case(
        "hearth-hickory-fuel",
        "Wood as fuel, nutshell as fuel, nuts as food; not dung as fuel, chaff as fuel, a burned store.",
        "hearth",
        "primary",
        "sealed",
        [
            [
                ("Carya", "nutshell", 260),
                ("Quercus", "wood", 60),
                ("Carya", "wood", 30),
                ("Chenopodium berlandieri", "seed", 4),
            ]
        ],
        holds={"fuel.wood": "supports", "fuel.nutshell": "suggests", "food.nut": "consistent with"},
        must_not=(
            "fuel.dung",
            "fuel.chaff",
            "food.burned-store",
            "processing.malting",
        ),
        years={"early": (950, 1050)},
    ),
    _case(
        "acorn-meats-house",
        "Nuts as food, a burned store; not a rodent's store, nut cracking, gathered in spring.",
        "burned structure",
        "de facto",
        "sealed",
        [[("Quercus", "nutmeat", 340), ("Quercus", "acorn shell", 40), ("Quercus", "wood", 50)]],
        holds={"food.nut": "supports", "food.burned-store": "suggests"},
        must_not=(
            "deposit.rodent-cache",
            "processing.nut-cracking",
            "season.spring",
        ),
        years={"early": (950, 1050)},
    ),
    _case(
        "chenopod-store",
        (
            "Small seeds as food, native seed crops as food, a burned store, cleaned seed or grain; not dung"
            " as fuel, greens as food, waste from the fine sieve."
        ),
        "storage pit",
        "de facto",
        "sealed",
        [
            [
                ("Chenopodium berlandieri", "seed", 2600),
                ("Polygonum erectum", "achene", 40),
                ("Phalaris caroliniana", "grain", 12),
            ]
        ],
        holds={
            "food.small-seed": "supports",
            "food.native-seed-crops": "supports",
            "food.burned-store": "suggests",
            "processing.clean-product": "suggests",
        },
        must_not=(
            "fuel.dung",
            "food.greens",
            "processing.fine-sieving-waste",
            "season.spring",
            "deposit.rodent-cache",
            "field.weeds-with-crop",
        ),
        years={"early": (-200, 100)},
    ),
    _case(
        "maygrass-early",
        (
            "Gathered in early summer, small seeds as food, native seed crops as food; not gathered in "
            "winter, cereals as food, malting."
        ),
        "pit",
        "secondary",
        "sealed",
        [
            [
                ("Phalaris caroliniana", "grain", 380),
                ("Hordeum pusillum", "grain", 60),
                ("Carya", "nutshell", 5),
                ("Quercus", "wood", 20),
            ]
        ],
        holds={"food.small-seed": "suggests", "food.native-seed-crops": "suggests"},
        # Grain that is reaped in early summer is kept all year: it tells of no more.
        at_most={"season.early-summer": "consistent with"},
        must_not=(
            "season.winter",
            "food.cereal",
            "processing.malting",
            "integrity.out-of-period",
        ),
        years={"early": (100, 400)},
    ),
    _case(
        "tobacco-pit",
        "Tobacco at the place; not oily seeds as food, greens as food.",
        "pit",
        "secondary",
        "sealed",
        [
            [
                ("Nicotiana rustica", "seed", 9),
                ("Zea mays", "cupule", 20),
                ("Carya", "nutshell", 15),
                ("Quercus", "wood", 20),
            ]
        ],
        holds={"processing.tobacco-handled": "suggests"},
        must_not=(
            "food.oil-seed",
            "food.greens",
        ),
        years={"early": (950, 1050)},
    ),
    _case(
        "old-field",
        ("Fruit from old fields, fruit as food; not gathered in winter, human waste, recent uncharred seeds."),
        "pit",
        "secondary",
        "sealed",
        [
            [
                ("Rubus", "seed", 40),
                ("Rhus", "seed", 25),
                ("Fragaria virginiana", "achene", 8),
                ("Sambucus canadensis", "seed", 10),
                ("Zea mays", "kernel", 8),
                ("Zea mays", "cupule", 14),
                ("Quercus", "wood", 15),
            ]
        ],
        holds={"field.old-field-fruits": "suggests", "food.fruit": "suggests"},
        must_not=(
            "season.winter",
            "deposit.cess",
            "integrity.modern-seeds",
        ),
        years={"early": (950, 1050)},
    ),
    _case(
        "old-world-precontact",
        "Later plants in the deposit; not cereals as food.",
        "pit",
        "secondary",
        "sealed",
        [
            [
                ("Prunus persica", "fruit stone", 2),
                ("Triticum aestivum", "grain", 6),
                ("Zea mays", "kernel", 12),
                ("Zea mays", "cupule", 10),
            ]
        ],
        holds={"integrity.out-of-period": "supports"},
        must_not=("food.cereal",),
        years={"early": (950, 1050)},
    ),
    _case(
        "peach-mission",
        "Fruit as food, maize as food, beans and other pulses as food; not later plants in the deposit.",
        "refuse pit",
        "secondary",
        "sealed",
        [
            [
                ("Prunus persica", "fruit stone", 25),
                ("Triticum aestivum", "grain", 16),
                ("Zea mays", "kernel", 42),
                ("Zea mays", "cupule", 50),
                ("Phaseolus vulgaris", "cotyledon", 6),
            ]
        ],
        holds={"food.fruit": "suggests", "food.maize": "suggests", "food.pulse": "suggests"},
        must_not=("integrity.out-of-period",),
        years={"early": (1650, 1700)},
    ),
    _case(
        "maize-too-early",
        ("Later plants in the deposit, worth dating; at most a hint of maize as food; not maize cobs as fuel."),
        "pit",
        "secondary",
        "sealed",
        [[("Zea mays", "kernel", 4), ("Carya", "nutshell", 60), ("Chenopodium berlandieri", "seed", 15)]],
        holds={"integrity.out-of-period": "suggests", "work.date-candidate": "consistent with"},
        at_most={"food.maize": "consistent with"},
        must_not=("fuel.maize-cob",),
        years={"early": (-1500, -1200)},
    ),
    _case(
        "rodent-cache",
        "A rodent's store; not a burned store, cleaned seed or grain.",
        "burned structure",
        "unknown",
        "disturbed",
        [
            [
                ("Ambrosia trifida", "achene", 220),
                ("Polygonum", "achene", 60),
                ("Galium", "seed", 40),
                ("Vitis", "seed", 20),
            ]
        ],
        holds={"deposit.rodent-cache": "consistent with"},
        must_not=(
            "food.burned-store",
            "processing.clean-product",
        ),
        years={"early": (950, 1050)},
    ),
    _case(
        "flood-mixed-midden",
        (
            "Redeposited, later disturbance; at most a hint of maize as food, nuts as food, maize cobs as "
            "fuel; not burned in place, a single event, a burned store."
        ),
        "midden",
        "tertiary",
        "disturbed",
        [
            [
                ("Zea mays", "cupule", 30),
                ("Zea mays", "kernel", 14),
                ("Carya", "nutshell", 50),
                ("Chenopodium berlandieri", "seed", 20),
                ("Rubus", "seed", 5),
                ("Quercus", "wood", 20),
            ]
        ],
        holds={"deposit.redeposited": "suggests", "integrity.disturbed": "suggests"},
        at_most={"food.maize": "consistent with", "food.nut": "consistent with", "fuel.maize-cob": "consistent with"},
        must_not=(
            "deposit.burned-in-place",
            "deposit.single-event",
            "food.burned-store",
        ),
        years={"early": (950, 1050)},
    ),
    _case(
        "three-items",
        (
            "Too few remains; at most a hint of maize as food, nuts as food, small seeds as food; not a "
            "single event, a burned store, more than one season."
        ),
        "pit",
        "secondary",
        "sealed",
        [[("Zea mays", "kernel", 1), ("Carya", "nutshell", 1), ("Chenopodium berlandieri", "seed", 1)]],
        holds={"integrity.too-few": "supports"},
        at_most={"food.maize": "consistent with", "food.nut": "consistent with", "food.small-seed": "consistent with"},
        must_not=(
            "deposit.single-event",
            "food.burned-store",
            "season.more-than-one",
            "processing.clean-product",
        ),
        years={"early": (950, 1050)},
    ),
    _case(
        "all-cf",
        ("At most a hint of maize as food, beans and other pulses as food, oily seeds as food; not a burned store."),
        "pit",
        "secondary",
        "sealed",
        [
            [
                ("cf. Zea mays", "kernel", 30),
                ("cf. Phaseolus vulgaris", "cotyledon", 12),
                ("cf. Iva annua", "achene", 16),
            ]
        ],
        at_most={"food.maize": "suggests", "food.pulse": "suggests", "food.oil-seed": "suggests"},
        must_not=("food.burned-store",),
        years={"early": (950, 1050)},
    ),
    _case(
        "beans-squash-maize",
        ("Beans and other pulses as food, squash as food, maize as food, nuts as food; not dung as fuel, malting."),
        "refuse pit",
        "secondary",
        "sealed",
        [
            [
                ("Phaseolus vulgaris", "cotyledon", 18),
                ("Cucurbita pepo", "seed", 6),
                ("Cucurbita pepo", "rind", 22),
                ("Zea mays", "kernel", 60),
                ("Zea mays", "cupule", 22),
                ("Carya", "nutshell", 30),
            ]
        ],
        holds={
            "food.pulse": "suggests",
            "food.squash": "suggests",
            "food.maize": "suggests",
            "food.nut": "consistent with",
        },
        must_not=(
            "fuel.dung",
            "processing.malting",
        ),
        years={"early": (1350, 1450)},
    ),
    _case(
        "whole-ears-crib",
        (
            "Maize as food, a burned store, whole ears or spikelets; not maize cobs as fuel, waste from "
            "shelling maize, a smudge fire."
        ),
        "burned structure",
        "de facto",
        "sealed",
        [[("Zea mays", "kernel", 980), ("Zea mays", "cupule", 500), ("Zea mays", "cob", 40)]],
        holds={
            "food.maize": "supports",
            "food.burned-store": "supports",
            "processing.whole-ears-or-spikelets": "suggests",
        },
        must_not=(
            "fuel.maize-cob",
            "processing.shelling-waste",
            "fuel.smudge",
        ),
        years={"early": (1200, 1300)},
    ),
    _case(
        "shelled-store",
        (
            "Maize as food, a burned store, cleaned seed or grain; not maize cobs as fuel, waste from "
            "shelling maize, whole ears or spikelets."
        ),
        "storage pit",
        "de facto",
        "sealed",
        [[("Zea mays", "kernel", 700), ("Zea mays", "cupule", 9)]],
        holds={"food.maize": "supports", "food.burned-store": "supports", "processing.clean-product": "suggests"},
        must_not=(
            "fuel.maize-cob",
            "processing.shelling-waste",
            "processing.whole-ears-or-spikelets",
            "fuel.smudge",
        ),
        years={"early": (1200, 1300)},
    ),
    _case(
        "greens-purslane-pokeweed",
        "At most a hint of greens as food; not dung as fuel.",
        "pit",
        "secondary",
        "sealed",
        [
            [
                ("Portulaca oleracea", "seed", 30),
                ("Phytolacca americana", "seed", 12),
                ("Amaranthus", "seed", 20),
                ("Zea mays", "kernel", 15),
                ("Zea mays", "cupule", 18),
                ("Carya", "nutshell", 10),
                ("Quercus", "wood", 20),
            ]
        ],
        # The same plants seed themselves in every yard: their seeds alone carry no claim of greens.
        at_most={"food.greens": "consistent with"},
        must_not=("fuel.dung",),
        years={"early": (950, 1050)},
    ),
    _case(
        "sunflower-sumpweed",
        ("Oily seeds as food, native seed crops as food, wood as fuel; not later plants in the deposit, dung as fuel."),
        "hearth",
        "primary",
        "sealed",
        [
            [
                ("Helianthus annuus", "achene", 46),
                ("Iva annua", "achene", 58),
                ("Chenopodium berlandieri", "seed", 40),
                ("Quercus", "wood", 30),
            ]
        ],
        holds={"food.oil-seed": "suggests", "food.native-seed-crops": "suggests", "fuel.wood": "suggests"},
        must_not=(
            "integrity.out-of-period",
            "fuel.dung",
        ),
        years={"early": (-100, 300)},
    ),
    _case(
        "daily-hearth-hamlet",
        ("Wood as fuel, maize cobs as fuel, maize as food; not a burned store, dung as fuel, gathered in spring."),
        "hearth",
        "primary",
        "sealed",
        [
            [
                ("Zea mays", "cupule", 28),
                ("Zea mays", "kernel", 16),
                ("Carya", "nutshell", 22),
                ("Chenopodium berlandieri", "seed", 9),
                ("Quercus", "wood", 30),
                ("Carya", "wood", 14),
            ],
            [("Zea mays", "cupule", 14), ("Zea mays", "kernel", 9), ("Quercus", "wood", 22)],
        ],
        holds={"fuel.wood": "supports", "fuel.maize-cob": "suggests", "food.maize": "suggests"},
        must_not=(
            "food.burned-store",
            "fuel.dung",
            "season.spring",
            "processing.malting",
            "processing.clean-product",
        ),
        years={"early": (950, 1050)},
    ),
    _case(
        "posthole-few",
        (
            "Redeposited, too few remains; at most a hint of wood as fuel, nuts as food, maize as food; not "
            "a burned store, a smudge fire, burned in place."
        ),
        "posthole",
        "tertiary",
        "sealed",
        [[("Carya", "nutshell", 3), ("Zea mays", "cupule", 2), ("Quercus", "wood", 4)]],
        holds={"deposit.redeposited": "suggests", "integrity.too-few": "suggests"},
        at_most={"fuel.wood": "consistent with", "food.nut": "consistent with", "food.maize": "consistent with"},
        must_not=(
            "food.burned-store",
            "fuel.smudge",
            "deposit.burned-in-place",
        ),
        years={"early": (950, 1050)},
    ),
    _case(
        "walnut-hull-earthoven",
        (
            "Wood as fuel, nutshell as fuel, roots and tubers as food; not a burned store, cereals as food, "
            "dung as fuel."
        ),
        "earth oven",
        "primary",
        "sealed",
        [
            [
                ("Juglans nigra", "nutshell", 80),
                ("Carya", "nutshell", 200),
                ("Quercus", "wood", 90),
                ("Apios americana", "tuber", 12),
            ]
        ],
        holds={"fuel.wood": "supports", "fuel.nutshell": "suggests", "food.root-tuber": "suggests"},
        must_not=(
            "food.burned-store",
            "food.cereal",
            "fuel.dung",
        ),
        years={"early": (-3000, -2500)},
    ),
    _case(
        "bean-cache-late",
        ("Beans and other pulses as food, a burned store; not later plants in the deposit, a rodent's store."),
        "storage pit",
        "de facto",
        "sealed",
        [[("Phaseolus vulgaris", "seed", 160), ("Phaseolus vulgaris", "cotyledon", 60)]],
        holds={"food.pulse": "supports", "food.burned-store": "suggests"},
        must_not=(
            "integrity.out-of-period",
            "deposit.rodent-cache",
        ),
        years={"early": (1400, 1500)},
    ),
    _case(
        "beans-too-early-east",
        "Later plants in the deposit; at most a hint of beans and other pulses as food.",
        "pit",
        "secondary",
        "sealed",
        [[("Phaseolus vulgaris", "cotyledon", 6), ("Carya", "nutshell", 40)]],
        holds={"integrity.out-of-period": "suggests"},
        at_most={"food.pulse": "consistent with"},
        years={"early": (200, 400)},
    ),
    _case(
        "cf-tobacco-one",
        "At most a hint of tobacco at the place; not a burned store.",
        "pit",
        "secondary",
        "sealed",
        [[("cf. Nicotiana", "seed", 1), ("Zea mays", "cupule", 40)]],
        at_most={"processing.tobacco-handled": "suggests"},
        must_not=("food.burned-store",),
        years={"early": (950, 1050)},
    ),
    _case(
        "smudge-pinecone",
        "Not a burned store, food burned by accident, maize as food.",
        "smudge pit",
        "primary",
        "sealed",
        [[("Pinus", "cone", 60), ("Pinus", "bark", 40), ("Zea mays", "cupule", 12), ("Pinus", "wood", 20)]],
        must_not=(
            "food.burned-store",
            "food.cooking-accident",
            "food.maize",
        ),
        years={"early": (950, 1050)},
    ),
    _case(
        "winter-only-roots",
        "Gathered in autumn, maize as food; not gathered in spring, gathered in early summer.",
        "pit",
        "secondary",
        "sealed",
        [
            [
                ("Zea mays", "kernel", 40),
                ("Zea mays", "cupule", 10),
                ("Carya", "nutshell", 40),
                ("Quercus", "acorn shell", 20),
                ("Diospyros virginiana", "seed", 8),
            ]
        ],
        holds={"season.autumn": "consistent with", "food.maize": "suggests"},
        must_not=(
            "season.spring",
            "season.early-summer",
        ),
        years={"early": (950, 1050)},
    ),
    _case(
        "two-seasons",
        "More than one season, fruit as food; not only plants that keep.",
        "pit",
        "secondary",
        "sealed",
        [
            [
                ("Fragaria virginiana", "achene", 20),
                ("Rubus", "seed", 25),
                ("Phalaris caroliniana", "grain", 30),
                ("Carya", "nutshell", 60),
                ("Vitis", "seed", 14),
                ("Diospyros virginiana", "seed", 9),
            ]
        ],
        holds={"season.more-than-one": "suggests", "food.fruit": "suggests"},
        must_not=("season.stored-only",),
        years={"early": (950, 1050)},
    ),
    _case(
        "gourd-rind",
        "Gourds as containers; not squash as food.",
        "pit",
        "secondary",
        "sealed",
        [[("Lagenaria siceraria", "rind", 40), ("Zea mays", "cupule", 20)]],
        holds={"processing.gourd-containers": "consistent with"},
        must_not=("food.squash",),
        years={"early": (950, 1050)},
    ),
    _case(
        "wild-rice-parched",
        "Small seeds as food, gathered in late summer; not cereals as food, native seed crops.",
        "hearth",
        "primary",
        "sealed",
        [[("Zizania palustris", "grain", 104), ("Carya", "nutshell", 20), ("Quercus", "wood", 40)]],
        holds={"food.small-seed": "suggests", "season.late-summer": "consistent with"},
        must_not=("food.cereal", "food.native-seed-crops", "season.winter"),
    ),
)
