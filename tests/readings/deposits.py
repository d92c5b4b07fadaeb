"""Single deposits of three regions as a handbook has them: common practice, no source; the counts are invented."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from tests.readings.reading import Place, Reading

PRACTICE = "common practice, no source"


def _deposit(
    id: str,
    region: str,
    place: Place,
    holds: Mapping[str, str],
    must_not: Sequence[str] = (),
    at_most: Mapping[str, str] | None = None,
    years: tuple[int, int] = (950, 1050),
    preservation: str = "charred",
) -> Reading:
    return Reading(
        id=f"deposit-{id}",
        source=PRACTICE,
        known=PRACTICE,
        printed="Counts invented to show the practice.",
        concluded=f"{', '.join(holds)}; not {', '.join(must_not)}.",
        region=region,
        places=[place],
        holds=holds,
        must_not=must_not,
        at_most=at_most or {},
        years={"early": years},
        preservation=preservation,
    )


DEPOSITS = (
    _deposit(
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
    _deposit(
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
    _deposit(
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
    _deposit(
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
    _deposit(
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
    _deposit(
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
    _deposit(
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
    _deposit(
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
    _deposit(
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
    _deposit(
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
    _deposit(
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
    _deposit(
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
    _deposit(
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
    _deposit(
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
    _deposit(
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
    _deposit(
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
    _deposit(
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
    _deposit(
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
    _deposit(
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
    _deposit(
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
    _deposit(
        "cess",
        "temperate-europe",
        Place(
            kind="cess pit",
            deposit="primary",
            security="sealed",
            samples=[
                [
                    ("Rubus", "seed", 120, "mineralised"),
                    ("Prunus domestica", "fruit stone", 20, "mineralised"),
                    ("Malus", "seed", 30, "mineralised"),
                    ("Vitis vinifera", "seed", 40, "mineralised"),
                    ("Ficus carica", "seed", 200, "mineralised"),
                    ("Triticum aestivum", "grain", 6),
                ]
            ],
        ),
        {"deposit.cess": "supports", "food.fruit": "supports"},
        must_not=("integrity.modern-seeds", "deposit.rodent-cache", "food.burned-store"),
        years=(1200, 1300),
    ),
    _deposit(
        "malt",
        "temperate-europe",
        Place(
            kind="corn dryer",
            deposit="primary",
            security="sealed",
            samples=[
                [
                    ("Hordeum vulgare", "sprouted grain", 300),
                    ("Hordeum vulgare", "detached sprout", 120),
                    ("Hordeum vulgare", "grain", 40),
                    ("Bromus", "seed", 12),
                ]
            ],
        ),
        {"processing.malting": "supports", "food.cereal": "suggests"},
        must_not=("food.burned-store", "fuel.dung", "fuel.turf-heath"),
        years=(200, 350),
    ),
    _deposit(
        "ditch-glumes",
        "temperate-europe",
        Place(
            kind="ditch",
            deposit="secondary",
            security="sealed",
            samples=[
                [
                    ("Triticum spelta", "glume base", 420),
                    ("Triticum spelta", "grain", 30),
                    ("Bromus", "seed", 40),
                    ("Chenopodium album", "seed", 10),
                    ("Lolium", "seed", 15),
                ]
            ],
        ),
        {"processing.dehusking-waste": "supports"},
        must_not=(
            "processing.whole-ears-or-spikelets",
            "processing.clean-product",
            "food.burned-store",
            "processing.malting",
        ),
        years=(100, 250),
    ),
    _deposit(
        "granary",
        "temperate-europe",
        Place(
            kind="burned structure",
            deposit="de facto",
            security="sealed",
            samples=[
                [
                    ("Triticum aestivum", "grain", 3000),
                    ("Triticum aestivum", "rachis internode", 20),
                    ("Agrostemma githago", "seed", 40),
                    ("Bromus secalinus", "seed", 30),
                ]
            ],
        ),
        {"processing.clean-product": "supports", "food.burned-store": "supports", "food.cereal": "supports"},
        must_not=("fuel.chaff", "deposit.rodent-cache", "processing.malting", "processing.fine-sieving-waste"),
        years=(1100, 1200),
    ),
    _deposit(
        "hearth-heath",
        "temperate-europe",
        Place(
            kind="hearth",
            deposit="primary",
            security="sealed",
            samples=[
                [
                    ("Calluna vulgaris", "twig", 120),
                    ("Calluna vulgaris", "flower", 60),
                    ("Poaceae indet.", "rhizome", 40),
                    ("Cenococcum geophilum", "fungal sclerotium", 50),
                    ("Carex", "nutlet", 15),
                    ("Hordeum vulgare", "grain", 8),
                ]
            ],
        ),
        {"fuel.turf-heath": "supports"},
        must_not=("food.burned-store", "food.root-tuber", "processing.clean-product"),
        years=(600, 800),
    ),
    _deposit(
        "well",
        "temperate-europe",
        Place(
            kind="well",
            deposit="secondary",
            security="sealed",
            samples=[
                [
                    ("Urtica dioica", "achene", 150, "waterlogged"),
                    ("Rumex", "nutlet", 30, "waterlogged"),
                    ("Sambucus nigra", "seed", 90, "waterlogged"),
                    ("Stellaria media", "seed", 60, "waterlogged"),
                    ("Chenopodium album", "seed", 80, "waterlogged"),
                    ("Ranunculus repens", "achene", 25, "waterlogged"),
                ]
            ],
        ),
        {"field.disturbed-ground": "suggests"},
        must_not=(
            "integrity.modern-seeds",
            "deposit.cess",
            "food.burned-store",
            "food.cooking-accident",
            "deposit.rodent-cache",
        ),
        years=(100, 250),
        preservation="waterlogged",
    ),
    _deposit(
        "fine-sieve",
        "temperate-europe",
        Place(
            kind="pit",
            deposit="secondary",
            security="sealed",
            samples=[
                [
                    ("Hordeum vulgare", "grain", 120),
                    ("Chenopodium album", "seed", 350),
                    ("Stellaria media", "seed", 120),
                    ("Tripleurospermum inodorum", "achene", 160),
                    ("Hordeum vulgare", "rachis internode", 12),
                ]
            ],
        ),
        {
            "processing.fine-sieving-waste": "supports",
            "food.cereal": "consistent with",
            "field.weeds-with-crop": "suggests",
        },
        must_not=("processing.clean-product", "food.burned-store", "processing.malting"),
        years=(-700, -500),
    ),
    _deposit(
        "oven-straw",
        "temperate-europe",
        Place(
            kind="oven",
            deposit="primary",
            security="sealed",
            samples=[
                [
                    ("Triticum aestivum", "rachis internode", 300),
                    ("Poaceae indet.", "culm node", 140),
                    ("Triticum aestivum", "grain", 40),
                    ("Agrostemma githago", "seed", 10),
                    ("Centaurea cyanus", "achene", 9),
                ]
            ],
        ),
        {"fuel.chaff": "suggests", "processing.threshing-waste": "suggests"},
        must_not=("processing.clean-product", "food.burned-store", "processing.malting"),
        years=(1100, 1200),
    ),
    _deposit(
        "pit-spikelets",
        "temperate-europe",
        Place(
            kind="storage pit",
            deposit="de facto",
            security="sealed",
            samples=[
                [
                    ("Triticum dicoccum", "grain", 400),
                    ("Triticum dicoccum", "spikelet fork", 205),
                    ("Triticum monococcum", "grain", 60),
                    ("Triticum monococcum", "spikelet fork", 58),
                ]
            ],
        ),
        {"processing.whole-ears-or-spikelets": "supports", "food.burned-store": "suggests", "food.cereal": "supports"},
        must_not=("processing.dehusking-waste", "fuel.chaff", "processing.malting"),
        years=(-4200, -4000),
    ),
    _deposit(
        "rye-autumn",
        "temperate-europe",
        Place(
            kind="burned structure",
            deposit="de facto",
            security="sealed",
            samples=[
                [
                    ("Secale cereale", "grain", 900),
                    ("Agrostemma githago", "seed", 60),
                    ("Centaurea cyanus", "achene", 55),
                    ("Bromus secalinus", "seed", 40),
                    ("Scleranthus annuus", "fruit", 50),
                    ("Rumex acetosella", "nutlet", 80),
                    ("Vicia hirsuta", "seed", 20),
                ]
            ],
        ),
        {
            "field.autumn-sown": "suggests",
            "field.poor": "suggests",
            "food.cereal": "supports",
            "food.burned-store": "suggests",
        },
        must_not=("field.spring-sown", "field.wet", "fuel.dung"),
        years=(1100, 1200),
    ),
    _deposit(
        "hazel-two",
        "temperate-europe",
        Place(
            kind="hearth",
            deposit="primary",
            security="sealed",
            samples=[
                [("Corylus avellana", "nutshell", 300), ("Quercus", "wood", 20)],
                [("Corylus avellana", "nutshell", 250), ("Pinus", "wood", 15)],
            ],
        ),
        {"food.nut": "suggests", "processing.nut-cracking": "suggests", "fuel.nutshell": "consistent with"},
        must_not=("food.burned-store", "season.winter", "food.cereal"),
        at_most={"season.autumn": "consistent with"},
        years=(-7500, -7300),
    ),
    _deposit(
        "bean-store",
        "temperate-europe",
        Place(
            kind="burned structure",
            deposit="de facto",
            security="sealed",
            samples=[[("Vicia faba", "seed", 400), ("Pisum sativum", "seed", 30)], [("Vicia faba", "seed", 300)]],
        ),
        {"food.pulse": "supports", "food.burned-store": "supports", "processing.clean-product": "suggests"},
        must_not=("fuel.dung", "season.early-summer", "deposit.rodent-cache"),
        years=(-900, -700),
    ),
    _deposit(
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
    _deposit(
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
    _deposit(
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
    _deposit(
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
    _deposit(
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
    _deposit(
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
    _deposit(
        "flax",
        "temperate-europe",
        Place(
            kind="pit",
            deposit="secondary",
            security="sealed",
            samples=[
                [
                    ("Linum usitatissimum", "capsule", 120),
                    ("Linum usitatissimum", "seed", 60),
                    ("Linum usitatissimum", "stem", 20),
                ]
            ],
        ),
        {"processing.fibre": "suggests"},
        must_not=(),
        years=(-900, -700),
    ),
    _deposit(
        "rodent-pit",
        "temperate-europe",
        Place(
            kind="pit",
            deposit="secondary",
            security="open",
            rodents="many",
            samples=[
                [
                    ("Prunus spinosa", "fruit stone", 60),
                    ("Corylus avellana", "nutshell", 80),
                    ("Rubus", "seed", 30),
                    ("Vicia", "seed", 12),
                ]
            ],
        ),
        {"deposit.rodent-cache": "consistent with"},
        must_not=(),
        years=(-900, -700),
    ),
    _deposit(
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
    _deposit(
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
    _deposit(
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
    _deposit(
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
    _deposit(
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
    _deposit(
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
    _deposit(
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
    _deposit(
        "kindling-under-cobs",
        "eastern-north-america",
        Place(kind="smudge pit", samples=[[("Zea mays", "cupule", 880), ("Quercus", "wood", 17)]]),
        {"fuel.maize-cob": "supports", "fuel.smudge": "supports"},
        must_not=("food.maize",),
        at_most={"fuel.wood": "suggests"},
    ),
    _deposit(
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
    _deposit(
        "marsh-elder-hearth",
        "eastern-north-america",
        Place(samples=[[("Iva annua", "achene", 70), ("Helianthus annuus", "achene", 40), ("Carya", "wood", 30)]]),
        {"food.oil-seed": "suggests", "fuel.wood": "supports"},
        must_not=("season.winter", "food.burned-store"),
        years=(100, 300),
    ),
)
