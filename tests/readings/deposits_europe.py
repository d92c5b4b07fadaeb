"""Single deposits of temperate Europe as a handbook has them: common practice, no source; the counts are invented."""

from __future__ import annotations

from tests.readings.deposit import deposit
from tests.readings.reading import Place

EUROPE_DEPOSITS = (
    deposit(
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
    deposit(
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
    deposit(
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
    deposit(
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
    deposit(
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
    deposit(
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
    deposit(
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
    deposit(
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
    deposit(
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
    deposit(
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
    deposit(
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
    deposit(
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
    deposit(
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
    deposit(
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
    deposit(
        "mixed-grain-oven",
        "temperate-europe",
        Place(
            kind="oven",
            samples=[
                [
                    ("Triticum spelta", "grain", 90),
                    ("Hordeum vulgare", "grain", 70),
                    ("Secale cereale", "grain", 12),
                    ("Bromus secalinus", "grain", 9),
                ]
            ],
        ),
        {"food.cereal": "supports", "food.cooking-accident": "suggests"},
        must_not=("fuel.chaff", "processing.malting", "processing.dehusking-waste"),
        years=(100, 300),
    ),
    deposit(
        "lentil-hearth",
        "temperate-europe",
        Place(samples=[[("Lens culinaris", "seed", 60), ("Triticum dicoccum", "grain", 4), ("Quercus", "wood", 30)]]),
        {"food.pulse": "supports"},
        must_not=("food.burned-store",),
        at_most={"food.cereal": "consistent with"},
        years=(-800, -600),
    ),
)
