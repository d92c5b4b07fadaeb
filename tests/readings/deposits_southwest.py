"""Single deposits of the arid Southwest as a handbook has them: common practice, no source; the counts are invented."""

from __future__ import annotations

from tests.readings.deposit import deposit
from tests.readings.reading import Place

SOUTHWEST_DEPOSITS = (
    deposit(
        "hearth-chenoam",
        "arid-southwest",
        Place(
            kind="hearth",
            deposit="primary",
            security="sealed",
            samples=[
                [
                    ("Chenopodium/Amaranthus", "seed", 400),
                    ("Portulaca", "seed", 90),
                    ("Juniperus", "wood", 40),
                    ("Pinus edulis", "wood", 30),
                ]
            ],
        ),
        {
            "food.small-seed": "supports",
            "fuel.wood": "supports",
            "food.cooking-accident": "suggests",
            "season.late-summer": "consistent with",
        },
        must_not=("season.winter", "season.early-summer", "fuel.dung", "deposit.rodent-cache"),
    ),
    deposit(
        "burned-room",
        "arid-southwest",
        Place(
            kind="burned structure",
            deposit="de facto",
            security="sealed",
            samples=[
                [("Zea mays", "kernel", 900), ("Phaseolus vulgaris", "seed", 250), ("Cucurbita", "seed", 20)],
                [("Zea mays", "kernel", 400), ("Phaseolus vulgaris", "seed", 90)],
            ],
        ),
        {
            "food.burned-store": "supports",
            "food.maize": "supports",
            "food.pulse": "supports",
            "processing.clean-product": "suggests",
            "season.stored-only": "consistent with",
        },
        must_not=("fuel.maize-cob", "deposit.rodent-cache", "season.autumn", "season.late-summer"),
    ),
    deposit(
        "roast-agave",
        "arid-southwest",
        Place(
            kind="roasting pit",
            deposit="primary",
            security="sealed",
            samples=[[("Agave", "leaf", 30), ("Agave", "amorphous", 12), ("Juniperus", "wood", 60)]],
        ),
        {"food.agave": "supports", "fuel.wood": "supports", "deposit.burned-in-place": "suggests"},
        must_not=("food.burned-store", "fuel.dung"),
    ),
    deposit(
        "mesquite-store",
        "arid-southwest",
        Place(
            kind="storage pit",
            deposit="de facto",
            security="sealed",
            samples=[[("Prosopis", "seed", 600), ("Prosopis", "pod", 120)]],
        ),
        {"food.burned-store": "suggests"},
        must_not=("season.winter", "season.early-summer", "deposit.rodent-cache", "field.disturbed-ground"),
    ),
    deposit(
        "midden-southwest",
        "arid-southwest",
        Place(
            kind="midden",
            deposit="secondary",
            security="sealed",
            samples=[
                [
                    ("Zea mays", "cupule", 150),
                    ("Zea mays", "kernel", 10),
                    ("Chenopodium/Amaranthus", "seed", 60),
                    ("Portulaca", "seed", 20),
                    ("Physalis", "seed", 12),
                    ("Opuntia", "seed", 8),
                    ("Juniperus", "wood", 40),
                    ("Pinus edulis", "nutshell", 6),
                ]
            ]
            * 3,
        ),
        {
            "fuel.maize-cob": "suggests",
            "food.maize": "suggests",
            "deposit.slow-build-up": "suggests",
            "fuel.wood": "suggests",
        },
        must_not=("food.burned-store", "deposit.single-event", "fuel.smudge"),
    ),
    deposit(
        "dry-cave",
        "arid-southwest",
        Place(
            kind="floor",
            deposit="primary",
            security="sealed",
            samples=[
                [
                    ("Zea mays", "cob", 60, "desiccated"),
                    ("Zea mays", "husk", 40, "desiccated"),
                    ("Cucurbita", "rind", 25, "desiccated"),
                    ("Cucurbita", "seed", 18, "desiccated"),
                    ("Yucca", "leaf", 50, "desiccated"),
                ]
            ],
        ),
        {"food.maize": "suggests", "food.squash": "suggests"},
        must_not=("integrity.modern-seeds", "fuel.maize-cob", "food.burned-store"),
        preservation="desiccated",
    ),
    deposit(
        "kiln",
        "arid-southwest",
        Place(
            kind="kiln",
            deposit="primary",
            security="sealed",
            samples=[[("Juniperus", "wood", 90), ("Zea mays", "cupule", 6)]],
        ),
        {"fuel.wood": "supports"},
        must_not=("food.cooking-accident", "food.burned-store", "fuel.smudge"),
    ),
    deposit(
        "rodent-room",
        "arid-southwest",
        Place(
            kind="floor",
            deposit="primary",
            security="sealed",
            rodents="many",
            samples=[
                [
                    ("Juniperus", "seed", 200),
                    ("Opuntia", "seed", 90),
                    ("Chenopodium/Amaranthus", "seed", 40),
                    ("Pinus edulis", "nutshell", 60),
                    ("Zea mays", "kernel", 8),
                ]
            ],
        ),
        {"deposit.rodent-cache": "consistent with"},
        must_not=("food.cooking-accident",),
    ),
    deposit(
        "mustard-pinyon",
        "arid-southwest",
        Place(
            kind="hearth",
            deposit="primary",
            security="sealed",
            samples=[[("Descurainia", "seed", 80), ("Pinus edulis", "nutshell", 40), ("Juniperus", "wood", 40)]],
        ),
        {"season.more-than-one": "suggests", "food.nut": "suggests", "food.small-seed": "suggests"},
        must_not=("season.winter", "food.burned-store"),
    ),
    deposit(
        "saguaro-mesquite",
        "arid-southwest",
        Place(
            kind="roasting pit",
            deposit="primary",
            security="sealed",
            samples=[[("Carnegiea gigantea", "seed", 150), ("Prosopis", "seed", 30), ("Prosopis", "wood", 60)]],
        ),
        {"season.early-summer": "suggests", "food.fruit": "suggests", "fuel.wood": "supports"},
        must_not=("season.autumn", "season.winter", "food.burned-store"),
    ),
    deposit(
        "kernels-cupules-sw",
        "arid-southwest",
        Place(
            kind="hearth",
            deposit="primary",
            security="sealed",
            samples=[[("Zea mays", "kernel", 40), ("Zea mays", "cupule", 300), ("Juniperus", "wood", 30)]],
        ),
        {"food.maize": "suggests", "fuel.maize-cob": "suggests"},
        must_not=("food.burned-store",),
    ),
    deposit(
        "cotton-fibre",
        "arid-southwest",
        Place(
            kind="floor",
            deposit="primary",
            security="sealed",
            samples=[[("Gossypium hirsutum", "seed", 40), ("Zea mays", "kernel", 12), ("Juniperus", "wood", 20)]],
        ),
        {"processing.fibre": "suggests"},
        must_not=("deposit.rodent-cache",),
        years=(1100, 1250),
    ),
    deposit(
        "cotton-bolls",
        "arid-southwest",
        Place(
            kind="burned structure",
            deposit="de facto",
            security="sealed",
            samples=[[("Gossypium hirsutum", "seed", 400), ("Gossypium hirsutum", "capsule", 20)]],
        ),
        {"processing.fibre": "suggests"},
        must_not=("deposit.rodent-cache",),
        years=(1100, 1250),
    ),
    deposit(
        "rodent-posthole",
        "arid-southwest",
        Place(
            kind="posthole",
            deposit="secondary",
            security="open",
            rodents="many",
            samples=[[("Juniperus", "seed", 80), ("Chenopodium/Amaranthus", "seed", 60), ("Opuntia", "seed", 40)]],
        ),
        {"deposit.rodent-cache": "consistent with"},
        must_not=(),
    ),
    deposit(
        "saguaro-mesquite-2",
        "arid-southwest",
        Place(
            kind="hearth",
            deposit="primary",
            security="sealed",
            samples=[[("Carnegiea gigantea", "seed", 80), ("Prosopis", "seed", 60), ("Prosopis", "wood", 20)]],
        ),
        {"season.early-summer": "suggests", "food.fruit": "suggests"},
        must_not=("season.more-than-one", "season.autumn", "season.winter"),
    ),
    deposit(
        "summer-pinyon",
        "arid-southwest",
        Place(
            kind="hearth",
            deposit="primary",
            security="sealed",
            samples=[
                [("Achnatherum hymenoides", "grain", 60), ("Descurainia", "seed", 40), ("Pinus edulis", "nutshell", 50)]
            ],
        ),
        {"season.more-than-one": "suggests", "season.early-summer": "suggests"},
        must_not=("season.winter",),
    ),
    deposit(
        "purslane-pinyon",
        "arid-southwest",
        Place(
            kind="hearth",
            deposit="primary",
            security="sealed",
            samples=[
                [("Portulaca", "seed", 90), ("Chenopodium/Amaranthus", "seed", 200), ("Pinus edulis", "nutshell", 50)]
            ],
        ),
        {
            "season.more-than-one": "consistent with",
            "season.late-summer": "consistent with",
            "season.autumn": "consistent with",
        },
        must_not=("season.winter",),
    ),
    deposit(
        "mesquite-pit",
        "arid-southwest",
        Place(
            kind="storage pit",
            deposit="de facto",
            security="sealed",
            samples=[[("Prosopis", "seed", 400), ("Prosopis", "pod segment", 150)]],
        ),
        {"food.burned-store": "suggests"},
        must_not=("season.late-summer",),
    ),
)
