"""Single deposits of eastern North America as a handbook has them: common practice, no source; counts invented."""

from __future__ import annotations

from tests.readings.deposit import deposit
from tests.readings.reading import Place

EAST_DEPOSITS = (
    deposit(
        "hearth-hickory",
        "eastern-north-america",
        Place(
            kind="hearth",
            deposit="primary",
            security="sealed",
            samples=[
                [
                    ("Carya", "nutshell", 320),
                    ("Quercus", "acorn shell", 20),
                    ("Quercus", "wood", 40),
                    ("Carya", "wood", 25),
                    ("Chenopodium berlandieri", "seed", 4),
                ]
            ],
        ),
        {
            "food.nut": "suggests",
            "processing.nut-cracking": "suggests",
            "fuel.wood": "supports",
            "fuel.nutshell": "suggests",
            "deposit.burned-in-place": "suggests",
        },
        must_not=("food.burned-store", "season.winter", "season.early-summer", "fuel.smudge"),
    ),
    deposit(
        "smudge-cobs",
        "eastern-north-america",
        Place(
            kind="smudge pit",
            deposit="primary",
            security="sealed",
            samples=[
                [("Zea mays", "cupule", 400), ("Zea mays", "cob", 30), ("Zea mays", "kernel", 3), ("Pinus", "bark", 10)]
            ],
        ),
        {"fuel.smudge": "supports", "fuel.maize-cob": "supports"},
        must_not=("food.cooking-accident", "food.burned-store", "processing.whole-ears-or-spikelets"),
    ),
    deposit(
        "store-seedcrops",
        "eastern-north-america",
        Place(
            kind="storage pit",
            deposit="de facto",
            security="sealed",
            samples=[
                [
                    ("Chenopodium berlandieri", "seed", 2400),
                    ("Polygonum erectum", "achene", 300),
                    ("Phalaris caroliniana", "grain", 150),
                ],
                [
                    ("Chenopodium berlandieri", "seed", 1100),
                    ("Polygonum erectum", "achene", 140),
                    ("Phalaris caroliniana", "grain", 60),
                ],
            ],
        ),
        {
            "food.burned-store": "suggests",
            "food.native-seed-crops": "supports",
            "processing.clean-product": "consistent with",
        },
        must_not=("deposit.rodent-cache", "fuel.chaff", "season.autumn", "season.early-summer"),
        years=(100, 200),
    ),
    deposit(
        "house-ears",
        "eastern-north-america",
        Place(
            kind="burned structure",
            deposit="de facto",
            security="sealed",
            samples=[
                [
                    ("Zea mays", "kernel", 1500),
                    ("Zea mays", "cupule", 720),
                    ("Zea mays", "cob", 60),
                    ("Zea mays", "shank", 8),
                ]
            ],
        ),
        {"processing.whole-ears-or-spikelets": "supports", "food.burned-store": "supports", "food.maize": "supports"},
        must_not=("fuel.maize-cob", "processing.shelling-waste", "fuel.smudge"),
    ),
    deposit(
        "midden",
        "eastern-north-america",
        Place(
            kind="midden",
            deposit="secondary",
            security="sealed",
            samples=[
                [
                    ("Carya", "nutshell", 60),
                    ("Quercus", "acorn shell", 30),
                    ("Zea mays", "kernel", 12),
                    ("Zea mays", "cupule", 40),
                    ("Chenopodium berlandieri", "seed", 20),
                    ("Phalaris caroliniana", "grain", 8),
                    ("Vitis", "seed", 5),
                    ("Diospyros virginiana", "seed", 4),
                    ("Quercus", "wood", 30),
                ]
            ]
            * 3,
        ),
        {
            "food.maize": "suggests",
            "food.nut": "suggests",
            "food.fruit": "consistent with",
            "deposit.slow-build-up": "suggests",
            "season.more-than-one": "suggests",
        },
        must_not=("deposit.single-event", "food.burned-store", "deposit.rodent-cache"),
    ),
    deposit(
        "oven-acorns",
        "eastern-north-america",
        Place(
            kind="earth oven",
            deposit="primary",
            security="sealed",
            samples=[[("Quercus", "nutmeat", 60), ("Quercus", "acorn shell", 40), ("Quercus", "wood", 80)]],
        ),
        {"food.nut": "supports", "food.cooking-accident": "suggests", "fuel.wood": "supports"},
        must_not=("food.burned-store", "season.winter"),
    ),
    deposit(
        "posthole",
        "eastern-north-america",
        Place(
            kind="posthole",
            deposit="tertiary",
            security="open",
            samples=[[("Zea mays", "kernel", 2), ("Carya", "nutshell", 5)]],
        ),
        {"integrity.too-few": "suggests"},
        must_not=("food.burned-store", "season.more-than-one", "food.cooking-accident"),
        at_most={"food.maize": "suggests", "food.nut": "suggests"},
    ),
    deposit(
        "burial-fill",
        "eastern-north-america",
        Place(
            kind="burial",
            deposit="tertiary",
            security="sealed",
            samples=[[("Carya", "nutshell", 14), ("Chenopodium berlandieri", "seed", 6), ("Quercus", "wood", 12)]],
        ),
        {"deposit.redeposited": "suggests"},
        must_not=("food.burned-store", "deposit.burned-in-place"),
        at_most={"food.nut": "suggests"},
    ),
    deposit(
        "open-uncharred",
        "eastern-north-america",
        Place(
            kind="pit",
            deposit="secondary",
            security="open",
            samples=[
                [
                    ("Mollugo verticillata", "seed", 90, "uncharred"),
                    ("Chenopodium album", "seed", 200, "uncharred"),
                    ("Amaranthus", "seed", 70, "uncharred"),
                    ("Carya", "nutshell", 25),
                    ("Quercus", "wood", 20),
                ]
            ],
        ),
        {"integrity.modern-seeds": "supports"},
        must_not=("food.greens", "food.small-seed", "season.late-summer"),
    ),
    deposit(
        "refuse-fruit",
        "eastern-north-america",
        Place(
            kind="refuse pit",
            deposit="secondary",
            security="sealed",
            samples=[
                [
                    ("Passiflora incarnata", "seed", 40),
                    ("Vitis", "seed", 30),
                    ("Rubus", "seed", 60),
                    ("Fragaria", "seed", 20),
                    ("Rhus", "seed", 15),
                    ("Zea mays", "cupule", 25),
                    ("Zea mays", "kernel", 10),
                ]
            ],
        ),
        {"food.fruit": "supports", "food.maize": "consistent with", "field.old-field-fruits": "suggests"},
        must_not=("food.burned-store", "deposit.cess", "season.winter"),
    ),
    deposit(
        "acorn-store",
        "eastern-north-america",
        Place(
            kind="storage pit",
            deposit="de facto",
            security="sealed",
            samples=[[("Quercus", "nutmeat", 500), ("Quercus", "acorn shell", 200)]],
        ),
        {"food.burned-store": "supports", "food.nut": "supports"},
        must_not=("season.autumn",),
    ),
    deposit(
        "maygrass-hearth",
        "eastern-north-america",
        Place(
            kind="hearth",
            deposit="primary",
            security="sealed",
            samples=[[("Phalaris caroliniana", "grain", 120), ("Quercus", "wood", 30)]],
        ),
        {"food.native-seed-crops": "consistent with", "food.cooking-accident": "suggests"},
        must_not=(),
        at_most={"season.early-summer": "consistent with"},
    ),
    deposit(
        "kernels-cupules",
        "eastern-north-america",
        Place(
            kind="hearth",
            deposit="primary",
            security="sealed",
            samples=[[("Zea mays", "kernel", 45), ("Zea mays", "cupule", 220), ("Quercus", "wood", 30)]],
        ),
        {"food.maize": "suggests", "fuel.maize-cob": "suggests"},
        must_not=("food.burned-store",),
    ),
    deposit(
        "midden-three-nuts",
        "eastern-north-america",
        Place(
            kind="midden",
            deposit="secondary",
            samples=[[("Carya", "nutshell", 22), ("Quercus", "acorn shell", 3), ("Juglans nigra", "nutshell", 2)]] * 3,
        ),
        {"food.nut": "suggests"},
        must_not=("food.burned-store", "season.winter"),
    ),
    deposit(
        "goosefoot-lens",
        "eastern-north-america",
        Place(
            kind="storage pit",
            deposit="de facto",
            samples=[[("Chenopodium berlandieri", "seed", 540), ("Poaceae indet.", "culm", 14)]],
        ),
        {"deposit.burned-in-place": "suggests", "food.burned-store": "suggests", "season.stored-only": "suggests"},
        must_not=("season.autumn", "deposit.rodent-cache"),
    ),
    deposit(
        "kindling-under-cobs",
        "eastern-north-america",
        Place(kind="smudge pit", samples=[[("Zea mays", "cupule", 880), ("Quercus", "wood", 17)]]),
        {"fuel.maize-cob": "supports", "fuel.smudge": "supports"},
        must_not=("food.maize",),
        at_most={"fuel.wood": "suggests"},
    ),
    deposit(
        "ears-over-a-floor",
        "eastern-north-america",
        Place(
            kind="burned structure",
            deposit="de facto",
            samples=[
                [("Zea mays", "kernel", 200), ("Zea mays", "cupule", 95), ("Zea mays", "cob", 6)],
                [("Zea mays", "kernel", 20), ("Zea mays", "cupule", 9), ("Pinus", "wood", 12)],
                [("Zea mays", "kernel", 14), ("Zea mays", "cupule", 8), ("Juniperus virginiana", "wood", 8)],
            ],
        ),
        {"food.burned-store": "supports", "processing.whole-ears-or-spikelets": "suggests"},
        must_not=("fuel.maize-cob", "processing.shelling-waste", "season.autumn"),
    ),
    deposit(
        "marsh-elder-hearth",
        "eastern-north-america",
        Place(samples=[[("Iva annua", "achene", 70), ("Helianthus annuus", "achene", 40), ("Carya", "wood", 30)]]),
        {"food.oil-seed": "suggests", "food.native-seed-crops": "suggests", "fuel.wood": "supports"},
        must_not=("season.winter", "food.burned-store"),
        years=(100, 300),
    ),
)
