"""Readings of common practice (temperate-europe), no source; the counts are invented to show it."""

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
        region="temperate-europe",
        places=[Place(kind=kind, deposit=deposit, security=security, samples=samples)],
        **keys,
    )


EUROPE_PRACTICE = (
    _case(
        "emmer-store-clean",
        (
            "Cereals as food, a burned store, cleaned seed or grain; not waste from dehusking, chaff as "
            "fuel, waste from the fine sieve."
        ),
        "burned structure",
        "de facto",
        "sealed",
        [
            [
                ("Triticum dicoccum", "grain", 1200),
                ("Triticum dicoccum", "glume base", 30),
                ("Agrostemma githago", "seed", 4),
            ]
        ],
        holds={"food.cereal": "supports", "food.burned-store": "supports", "processing.clean-product": "supports"},
        must_not=(
            "processing.dehusking-waste",
            "fuel.chaff",
            "processing.fine-sieving-waste",
            "deposit.rodent-cache",
            "processing.malting",
        ),
        years={"early": (-1200, -800)},
    ),
    _case(
        "spelt-malt",
        "Malting; at most a hint of cleaned seed or grain; not a burned store, gathered in spring.",
        "corn dryer",
        "primary",
        "sealed",
        [
            [
                ("Triticum spelta", "sprouted grain", 260),
                ("Triticum spelta", "grain", 60),
                ("Cerealia indet.", "detached sprout", 180),
                ("Triticum spelta", "glume base", 120),
            ]
        ],
        holds={"processing.malting": "supports"},
        at_most={"processing.clean-product": "suggests"},
        must_not=(
            "food.burned-store",
            "season.spring",
        ),
        years={"early": (200, 380)},
    ),
    _case(
        "spelt-chaff-dryer",
        "Waste from dehusking, chaff as fuel; not cleaned seed or grain, malting, a burned store.",
        "corn dryer",
        "primary",
        "sealed",
        [
            [
                ("Triticum spelta", "glume base", 900),
                ("Triticum spelta", "grain", 40),
                ("Bromus", "grain", 30),
                ("Cerealia indet.", "detached sprout", 6),
                ("Quercus", "wood", 10),
            ]
        ],
        holds={"processing.dehusking-waste": "supports", "fuel.chaff": "suggests"},
        must_not=(
            "processing.clean-product",
            "processing.malting",
            "food.burned-store",
            "processing.whole-ears-or-spikelets",
        ),
        years={"early": (200, 380)},
    ),
    _case(
        "fine-sieve",
        (
            "Waste from the fine sieve, waste from dehusking, field weeds with the crop; not cleaned seed or"
            " grain, a burned store, malting."
        ),
        "pit",
        "secondary",
        "sealed",
        [
            [
                ("Chenopodium album", "seed", 160),
                ("Stellaria media", "seed", 60),
                ("Trifolium", "seed", 40),
                ("Poa annua", "grain", 30),
                ("Triticum spelta", "grain", 14),
                ("Triticum spelta", "glume base", 90),
                ("Hordeum vulgare", "grain", 8),
            ]
        ],
        holds={
            "processing.fine-sieving-waste": "suggests",
            "processing.dehusking-waste": "suggests",
            "field.weeds-with-crop": "suggests",
        },
        must_not=(
            "processing.clean-product",
            "food.burned-store",
            "processing.malting",
            "fuel.dung",
        ),
        years={"early": (-300, 50)},
    ),
    _case(
        "no-dung-pieces",
        "Wood as fuel; not dung as fuel, malting.",
        "hearth",
        "primary",
        "sealed",
        [
            [
                ("Trifolium", "seed", 5),
                ("Chenopodium album", "seed", 12),
                ("Quercus", "wood", 80),
                ("Triticum dicoccum", "grain", 14),
                ("Triticum dicoccum", "glume base", 20),
            ]
        ],
        holds={"fuel.wood": "supports"},
        must_not=(
            "fuel.dung",
            "processing.malting",
        ),
        years={"early": (-3000, -2600)},
    ),
    _case(
        "heather-turf",
        "Turf or heath plants as fuel; not roots and tubers as food, greens as food.",
        "hearth",
        "primary",
        "sealed",
        [
            [
                ("Calluna vulgaris", "twig", 80),
                ("Calluna vulgaris", "leaf", 60),
                ("Erica", "leaf", 20),
                ("Cenococcum", "fungal sclerotium", 40),
                ("Danthonia decumbens", "grain", 8),
                ("Poaceae indet.", "rhizome", 25),
                ("Betula", "wood", 5),
            ]
        ],
        holds={"fuel.turf-heath": "supports"},
        must_not=(
            "food.root-tuber",
            "food.greens",
        ),
        years={"early": (1, 300)},
    ),
    _case(
        "cess-mineralised",
        "Human waste, fruit as food; not recent uncharred seeds, burned in place.",
        "cess pit",
        "primary",
        "sealed",
        [
            [
                ("Prunus domestica", "fruit stone", 20, "mineralised"),
                ("Malus", "seed", 60, "mineralised"),
                ("Rubus fruticosus", "seed", 80, "mineralised"),
                ("Ficus carica", "seed", 90, "mineralised"),
                ("Vitis vinifera", "seed", 15, "mineralised"),
                ("Triticum aestivum", "grain", 12),
            ]
        ],
        holds={"deposit.cess": "supports", "food.fruit": "supports"},
        must_not=(
            "integrity.modern-seeds",
            "deposit.burned-in-place",
        ),
        years={"early": (1200, 1400)},
    ),
    _case(
        "well-nettles",
        "Disturbed ground nearby; not recent uncharred seeds, a burned store, small seeds as food.",
        "well",
        "secondary",
        "sealed",
        [
            [
                ("Urtica dioica", "achene", 300, "waterlogged"),
                ("Chenopodium album", "seed", 120, "waterlogged"),
                ("Stellaria media", "seed", 80, "waterlogged"),
                ("Sambucus nigra", "seed", 60, "waterlogged"),
                ("Prunus spinosa", "fruit stone", 6, "waterlogged"),
                ("Ranunculus sceleratus", "achene", 20, "waterlogged"),
            ]
        ],
        holds={"field.disturbed-ground": "suggests"},
        must_not=(
            "integrity.modern-seeds",
            "food.burned-store",
            "food.small-seed",
            "deposit.burned-in-place",
        ),
        preservation="waterlogged",
        years={"early": (100, 300)},
    ),
    _case(
        "bread-wheat-weeds-autumn",
        (
            "Cereals as food, field weeds with the crop, sown in autumn, a burned store; not sown in spring,"
            " waste from threshing, waste from the fine sieve."
        ),
        "storage pit",
        "de facto",
        "sealed",
        [
            [
                ("Triticum aestivum", "grain", 420),
                ("Triticum aestivum", "rachis internode", 12),
                ("Agrostemma githago", "seed", 40),
                ("Centaurea cyanus", "achene", 12),
                ("Galium aparine", "seed", 25),
                ("Bromus secalinus", "grain", 50),
            ]
        ],
        holds={
            "food.cereal": "supports",
            "field.weeds-with-crop": "suggests",
            "field.autumn-sown": "suggests",
            "food.burned-store": "suggests",
        },
        must_not=(
            "field.spring-sown",
            "processing.threshing-waste",
            "processing.fine-sieving-waste",
        ),
        years={"early": (1100, 1300)},
    ),
    _case(
        "flax-store",
        "Oily seeds as food; not small seeds as food, hay or meadow plants, waste from the fine sieve.",
        "floor",
        "de facto",
        "sealed",
        [[("Linum usitatissimum", "seed", 600), ("Camelina sativa", "seed", 40)]],
        holds={"food.oil-seed": "supports"},
        must_not=(
            "food.small-seed",
            "processing.hay",
            "processing.fine-sieving-waste",
        ),
        years={"early": (-800, -400)},
    ),
    _case(
        "lentil-pea-store",
        (
            "Beans and other pulses as food, a burned store, cleaned seed or grain; not waste from the fine "
            "sieve, cereals as food."
        ),
        "floor",
        "de facto",
        "sealed",
        [[("Pisum sativum", "seed", 200), ("Lens culinaris", "seed", 420)]],
        holds={"food.pulse": "supports", "food.burned-store": "suggests", "processing.clean-product": "suggests"},
        must_not=(
            "processing.fine-sieving-waste",
            "food.cereal",
        ),
        years={"early": (-5000, -4500)},
    ),
    _case(
        "hazel-hearth-mesolithic",
        "Nuts as food, wood as fuel; not cereals as food, gathered in spring, a burned store.",
        "hearth",
        "primary",
        "sealed",
        [[("Corylus avellana", "nutshell", 400), ("Corylus avellana", "wood", 30), ("Quercus", "wood", 10)]],
        holds={"food.nut": "consistent with", "fuel.wood": "suggests"},
        must_not=(
            "food.cereal",
            "season.spring",
            "food.burned-store",
        ),
        years={"early": (-7500, -7000)},
    ),
    _case(
        "maize-potato-medieval",
        "Later plants in the deposit, cereals as food; at most a hint of maize as food.",
        "pit",
        "secondary",
        "sealed",
        [[("Zea mays", "kernel", 4), ("Triticum aestivum", "grain", 60), ("Hordeum vulgare", "grain", 30)]],
        holds={"integrity.out-of-period": "suggests", "food.cereal": "suggests"},
        at_most={"food.maize": "consistent with"},
        years={"early": (1000, 1200)},
    ),
    _case(
        "ditch-mixed",
        (
            "At most a hint of waste from dehusking, cereals as food, nuts as food; not a burned store, "
            "burned in place, cleaned seed or grain."
        ),
        "ditch",
        "tertiary",
        "sealed",
        [
            [
                ("Triticum spelta", "glume base", 18),
                ("Triticum spelta", "grain", 5),
                ("Hordeum vulgare", "grain", 4),
                ("Bromus", "grain", 5),
                ("Corylus avellana", "nutshell", 3),
                ("Chenopodium album", "seed", 6),
            ]
        ],
        at_most={"processing.dehusking-waste": "suggests", "food.cereal": "suggests", "food.nut": "suggests"},
        must_not=(
            "food.burned-store",
            "deposit.burned-in-place",
            "processing.clean-product",
            "processing.malting",
        ),
        years={"early": (50, 250)},
    ),
    _case(
        "hay-stable",
        "Hay or meadow plants; not recent uncharred seeds, small seeds as food.",
        "layer",
        "secondary",
        "sealed",
        [
            [
                ("Trifolium", "seed", 120, "waterlogged"),
                ("Rhinanthus", "seed", 50, "waterlogged"),
                ("Plantago lanceolata", "seed", 60, "waterlogged"),
                ("Leucanthemum vulgare", "achene", 40, "waterlogged"),
                ("Centaurea nigra", "achene", 20, "waterlogged"),
                ("Poaceae indet.", "grain", 200, "waterlogged"),
            ]
        ],
        holds={"processing.hay": "suggests"},
        must_not=(
            "integrity.modern-seeds",
            "food.small-seed",
        ),
        preservation="waterlogged",
        years={"early": (100, 300)},
    ),
    _case(
        "spikelet-store",
        (
            "Whole ears or spikelets, cereals as food, a burned store; not waste from dehusking, cleaned "
            "seed or grain, chaff as fuel."
        ),
        "storage pit",
        "de facto",
        "sealed",
        [
            [
                ("Triticum spelta", "grain", 420),
                ("Triticum spelta", "spikelet fork", 180),
                ("Triticum spelta", "glume base", 20),
            ]
        ],
        holds={
            "processing.whole-ears-or-spikelets": "suggests",
            "food.cereal": "supports",
            "food.burned-store": "suggests",
        },
        must_not=(
            "processing.dehusking-waste",
            "processing.clean-product",
            "fuel.chaff",
        ),
        years={"early": (-300, 100)},
    ),
    _case(
        "spring-barley",
        ("Sown in spring, cereals as food, field weeds with the crop; not sown in autumn, small seeds as food."),
        "pit",
        "secondary",
        "sealed",
        [
            [
                ("Hordeum vulgare", "grain", 120),
                ("Chenopodium album", "seed", 80),
                ("Persicaria maculosa", "achene", 40),
                ("Persicaria lapathifolia", "achene", 30),
                ("Fallopia convolvulus", "achene", 22),
                ("Spergula arvensis", "seed", 20),
            ]
        ],
        holds={"field.spring-sown": "suggests", "food.cereal": "suggests", "field.weeds-with-crop": "suggests"},
        must_not=(
            "field.autumn-sown",
            "food.small-seed",
        ),
        years={"early": (300, 500)},
    ),
    _case(
        "turf-ditch",
        "Turf or heath plants as fuel; not roots and tubers as food, burned in place.",
        "ditch",
        "secondary",
        "sealed",
        [
            [
                ("Calluna vulgaris", "twig", 40),
                ("Danthonia decumbens", "grain", 20),
                ("Carex", "nutlet", 18),
                ("Poaceae indet.", "rhizome", 22),
                ("Cenococcum", "fungal sclerotium", 25),
                ("Quercus", "wood", 6),
            ]
        ],
        holds={"fuel.turf-heath": "suggests"},
        must_not=(
            "food.root-tuber",
            "deposit.burned-in-place",
        ),
        years={"early": (1, 300)},
    ),
    _case(
        "arable-poor-wet",
        "Damp ground, acid soil, cereals as food; not lime-rich soil, small seeds as food.",
        "pit",
        "secondary",
        "sealed",
        [
            [
                ("Triticum spelta", "grain", 80),
                ("Triticum spelta", "glume base", 30),
                ("Rumex acetosella", "achene", 40),
                ("Spergula arvensis", "seed", 30),
                ("Eleocharis palustris", "nutlet", 36),
                ("Montia fontana", "seed", 20),
                ("Carex", "nutlet", 12),
            ]
        ],
        holds={"field.wet": "suggests", "field.acid": "suggests", "food.cereal": "suggests"},
        must_not=(
            "field.lime-rich",
            "food.small-seed",
        ),
        years={"early": (1, 300)},
    ),
    _case(
        "einkorn-waste-lbk",
        "Waste from dehusking; not cleaned seed or grain, a burned store, malting.",
        "pit",
        "secondary",
        "sealed",
        [
            [
                ("Triticum monococcum", "glume base", 300),
                ("Triticum dicoccum", "glume base", 220),
                ("Triticum monococcum", "grain", 20),
                ("Chenopodium album", "seed", 40),
                ("Bromus secalinus", "grain", 20),
            ]
        ],
        holds={"processing.dehusking-waste": "supports"},
        must_not=(
            "processing.clean-product",
            "food.burned-store",
            "processing.malting",
            "integrity.out-of-period",
        ),
        years={"early": (-5300, -5000)},
    ),
    _case(
        "rye-rachis-medieval",
        (
            "Waste from threshing; at most a hint of cereals as food; not cleaned seed or grain, waste from "
            "dehusking, a burned store."
        ),
        "pit",
        "secondary",
        "sealed",
        [
            [
                ("Secale cereale", "rachis internode", 180),
                ("Secale cereale", "grain", 20),
                ("Secale cereale", "culm node", 30),
                ("Centaurea cyanus", "achene", 10),
            ]
        ],
        holds={"processing.threshing-waste": "suggests"},
        at_most={"food.cereal": "consistent with"},
        must_not=(
            "processing.clean-product",
            "processing.dehusking-waste",
            "food.burned-store",
            "processing.malting",
        ),
        years={"early": (1100, 1300)},
    ),
    _case(
        "coarse-sieve-heads",
        "Waste from the coarse sieve; not cleaned seed or grain, a burned store.",
        "pit",
        "secondary",
        "sealed",
        [
            [
                ("Triticum aestivum", "culm node", 80),
                ("Triticum aestivum", "rachis internode", 60),
                ("Raphanus raphanistrum", "pod segment", 30),
                ("Papaver rhoeas", "capsule", 6),
                ("Centaurea", "achene", 4),
                ("Triticum aestivum", "grain", 12),
            ]
        ],
        holds={"processing.coarse-sieving-waste": "suggests"},
        must_not=(
            "processing.clean-product",
            "food.burned-store",
        ),
        years={"early": (1100, 1300)},
    ),
    _case(
        "barley-beer",
        "Malting; not waste from the fine sieve, gathered in spring.",
        "kiln",
        "primary",
        "sealed",
        [
            [
                ("Hordeum vulgare", "sprouted grain", 420),
                ("Hordeum vulgare", "grain", 80),
                ("Hordeum vulgare", "detached sprout", 300),
            ]
        ],
        holds={"processing.malting": "supports"},
        must_not=(
            "processing.fine-sieving-waste",
            "season.spring",
        ),
        years={"early": (1200, 1400)},
    ),
    _case(
        "damp-store-sprouts",
        "A burned store, cereals as food; not malting.",
        "storage pit",
        "de facto",
        "sealed",
        [
            [
                ("Triticum spelta", "sprouted grain", 30),
                ("Triticum spelta", "grain", 600),
                ("Triticum spelta", "glume base", 40),
            ]
        ],
        holds={"food.burned-store": "suggests", "food.cereal": "supports"},
        must_not=("processing.malting",),
        years={"early": (-300, 50)},
    ),
    _case(
        "uprooted-short",
        "Pulled up by the roots, field weeds with the crop; not cut high on the stem.",
        "pit",
        "secondary",
        "sealed",
        [
            [
                ("Hordeum vulgare", "grain", 60),
                ("Hordeum vulgare", "culm base", 30),
                ("Stellaria media", "seed", 20),
                ("Polygonum aviculare", "achene", 25),
                ("Spergula arvensis", "seed", 20),
            ]
        ],
        holds={"field.uprooted": "suggests", "field.weeds-with-crop": "suggests"},
        must_not=("field.cut-high",),
        years={"early": (500, 700)},
    ),
    _case(
        "bog-peat-hearth",
        "Turf or heath plants as fuel; not small seeds as food, cereals as food.",
        "hearth",
        "primary",
        "sealed",
        [
            [
                ("Erica tetralix", "leaf", 60),
                ("Carex", "nutlet", 40),
                ("Eriophorum", "stem", 30),
                ("Menyanthes trifoliata", "seed", 8),
            ]
        ],
        holds={"fuel.turf-heath": "suggests"},
        must_not=(
            "food.small-seed",
            "food.cereal",
        ),
        years={"early": (1400, 1600)},
    ),
    _case(
        "latrine-waterlogged",
        ("Human waste, fruit as food; not recent uncharred seeds, later plants in the deposit, burned in place."),
        "cess pit",
        "primary",
        "sealed",
        [
            [
                ("Ficus carica", "seed", 200, "waterlogged"),
                ("Fragaria vesca", "achene", 150, "waterlogged"),
                ("Rubus fruticosus", "seed", 90, "waterlogged"),
                ("Agrostemma githago", "seed", 40, "waterlogged"),
                ("Malus", "seed", 30, "waterlogged"),
            ]
        ],
        holds={"deposit.cess": "supports", "food.fruit": "supports"},
        must_not=(
            "integrity.modern-seeds",
            "integrity.out-of-period",
            "deposit.burned-in-place",
        ),
        preservation="waterlogged",
        years={"early": (1250, 1400)},
    ),
    _case(
        "import-fig-dry-roman",
        "Fruit as food, cereals as food; not human waste, later plants in the deposit.",
        "pit",
        "secondary",
        "sealed",
        [
            [
                ("Olea europaea", "fruit stone", 6),
                ("Vitis vinifera", "seed", 9),
                ("Triticum spelta", "grain", 60),
                ("Triticum spelta", "glume base", 30),
            ]
        ],
        holds={"food.fruit": "suggests", "food.cereal": "suggests"},
        must_not=(
            "deposit.cess",
            "integrity.out-of-period",
        ),
        years={"early": (100, 300)},
    ),
    _case(
        "millet-store",
        ("Cereals as food, a burned store; not small seeds as food, sown in autumn, waste from the fine sieve."),
        "storage pit",
        "de facto",
        "sealed",
        [[("Panicum miliaceum", "grain", 900), ("Setaria italica", "grain", 40)]],
        holds={"food.cereal": "supports", "food.burned-store": "suggests"},
        must_not=(
            "food.small-seed",
            "field.autumn-sown",
            "processing.fine-sieving-waste",
        ),
        years={"early": (-1000, -700)},
    ),
    _case(
        "vetch-fodder",
        "Not beans and other pulses as food, a burned store.",
        "pit",
        "secondary",
        "sealed",
        [[("Vicia/Lathyrus", "seed", 60), ("Avena", "grain", 40), ("Trifolium", "seed", 20)]],
        must_not=(
            "food.pulse",
            "food.burned-store",
        ),
        years={"early": (1100, 1300)},
    ),
    _case(
        "gold-of-pleasure-flax",
        "Oily seeds as food; not a burned store, malting.",
        "pit",
        "secondary",
        "sealed",
        [
            [
                ("Linum usitatissimum", "capsule", 40),
                ("Linum usitatissimum", "seed", 30),
                ("Camelina sativa", "seed", 12),
            ]
        ],
        holds={"food.oil-seed": "consistent with"},
        must_not=(
            "food.burned-store",
            "processing.malting",
        ),
        years={"early": (-800, -400)},
    ),
    _case(
        "uncharred-open-europe",
        "Recent uncharred seeds; not disturbed ground nearby, fruit as food.",
        "pit",
        "secondary",
        "open",
        [
            [
                ("Chenopodium album", "seed", 120, "uncharred"),
                ("Sambucus nigra", "seed", 60, "uncharred"),
                ("Triticum spelta", "grain", 12),
            ]
        ],
        holds={"integrity.modern-seeds": "supports"},
        must_not=(
            "field.disturbed-ground",
            "food.fruit",
        ),
        years={"early": (100, 300)},
    ),
    _case(
        "einkorn-in-spikelets-burned-house",
        "A store of hulled wheat in its spikelets burned; not waste from dehusking, malting.",
        "burned structure",
        "de facto",
        "sealed",
        [
            [
                ("Triticum monococcum", "grain", 400),
                ("Triticum monococcum", "glume base", 470),
                ("Triticum monococcum", "spikelet fork", 100),
                ("Triticum dicoccum", "grain", 100),
                ("Triticum dicoccum", "glume base", 94),
                ("Bromus secalinus", "grain", 21),
                ("Quercus", "wood", 34),
            ]
        ],
        holds={"food.burned-store": "supports", "food.cereal": "supports"},
        must_not=("processing.dehusking-waste", "processing.malting"),
        years={"early": (-4200, -4000)},
    ),
)
