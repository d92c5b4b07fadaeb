"""Published readings of temperate Europe."""

from __future__ import annotations

from tests.readings.reading import Place, Reading

HERE = "temperate-europe"
LINES = (
    "whole-ear lines of van der Veen 1992 and Hillman 1984; bands of 0.3, 0.7–1.5 and 3 times the line are convention"
)
ROMAN = {"early": (100, 300)}
SPELT = ("Triticum spelta", "grain", 60)
AUTUMN = [
    ("Galium aparine", "seed", 40),
    ("Lithospermum arvense", "nutlet", 12),
    ("Agrostemma githago", "seed", 14),
    ("Centaurea cyanus", "achene", 9),
]
SPRING = [
    ("Chenopodium album", "seed", 60),
    ("Polygonum aviculare", "achene", 18),
    ("Fallopia convolvulus", "achene", 12),
    ("Persicaria maculosa", "achene", 10),
]


def _reading(
    id: str,
    source: str,
    known: str,
    printed: str,
    concluded: str,
    *rows,
    kind: str = "pit",
    deposit: str = "secondary",
    **keys,
) -> Reading:
    return Reading(
        id=id, source=source, known=known, printed=printed, concluded=concluded, region=HERE,
        places=[Place(kind=kind, deposit=deposit, samples=[list(rows)])], years=keys.pop("years", ROMAN), **keys,
    )  # fmt: skip


EUROPE = (
    _reading(
        "spelt-dehusking", LINES, "from memory", "250 glume bases, 10 spikelet forks, 30 grains: 9 glume bases to a grain.",
        "By-product of dehusking.",
        ("Triticum spelta", "glume base", 250), ("Triticum spelta", "spikelet fork", 10), ("Triticum spelta", "grain", 30),
        holds={"processing.dehusking-waste": "supports"},
        must_not=("processing.whole-ears-or-spikelets", "processing.clean-product", "food.cereal"),
    ),
    _reading(
        "emmer-spikelets", LINES, "from memory", "48 grains, 22 forks, 3 glume bases: 0.98 to a grain.", "Spikelets.",
        ("Triticum dicoccum", "grain", 48), ("Triticum dicoccum", "spikelet fork", 22), ("Triticum dicoccum", "glume base", 3),
        holds={"processing.whole-ears-or-spikelets": "suggests"},
        must_not=("processing.dehusking-waste", "processing.clean-product", "fuel.chaff"),
    ),
    _reading(
        "einkorn-product", LINES, "from memory", "100 grains, 12 glume bases.", "Cleaned grain.",
        ("Triticum monococcum", "grain", 100), ("Triticum monococcum", "glume base", 12),
        holds={"processing.clean-product": "suggests"},
        must_not=("processing.dehusking-waste", "processing.whole-ears-or-spikelets"),
    ),
    _reading(
        "six-row-ears", LINES, "from memory", "96 grains, 31 internodes of six-row barley.", "Whole ears.",
        ("Hordeum vulgare (six-row)", "grain", 96), ("Hordeum vulgare (six-row)", "rachis internode", 31),
        holds={"processing.whole-ears-or-spikelets": "suggests"},
        must_not=("processing.coarse-sieving-waste", "processing.threshing-waste", "processing.clean-product"),
    ),
    _reading(
        "six-row-waste", LINES, "from memory", "12 grains, 60 internodes of six-row barley.", "Early-stage by-product.",
        ("Hordeum vulgare (six-row)", "grain", 12), ("Hordeum vulgare (six-row)", "rachis internode", 60),
        holds={"processing.threshing-waste": "suggests", "processing.coarse-sieving-waste": "suggests"},
        must_not=("processing.whole-ears-or-spikelets", "processing.clean-product", "food.cereal"),
    ),
    _reading(
        "rye-product", LINES, "from memory", "210 grains, 9 internodes of rye.", "Cleaned grain.",
        ("Secale cereale", "grain", 210), ("Secale cereale", "rachis internode", 9), kind="storage pit", years={"early": (900, 1100)},
        holds={"processing.clean-product": "suggests"},
        must_not=("processing.whole-ears-or-spikelets", "processing.threshing-waste"),
    ),
    _reading(
        "fine-sievings", "G. Jones 1984, 1987, Journal of Archaeological Science 14:311–323", "from memory",
        "40 grains to 300 weed seeds that are small, free and heavy. Numbers are an example.", "By-product of the fine sieve.",
        ("Triticum spelta", "grain", 40), ("Chenopodium album", "seed", 160), ("Stellaria media", "seed", 80), ("Rumex acetosella", "achene", 60),
        holds={"processing.fine-sieving-waste": "supports"},
        must_not=("processing.clean-product", "processing.coarse-sieving-waste", "food.small-seed"),
    ),
    _reading(
        "fine-sieve-product", "G. Jones 1984, 1987; Stevens 2003", "from memory",
        "Grain with weeds as big and heavy as grain. Numbers are filled in.", "Product of the fine sieve, to be picked over by hand.",
        ("Triticum spelta", "grain", 180), ("Triticum spelta", "glume base", 14), ("Bromus secalinus", "grain", 18), ("Galium aparine", "seed", 7),
        kind="storage pit", holds={"processing.clean-product": "suggests"}, must_not=("processing.fine-sieving-waste",),
    ),
    _reading(
        "coarse-sievings", "G. Jones 1987; Hillman 1984", "from memory",
        "Straw nodes and weed seeds that stay in heads. Numbers are filled in.", "By-product of the coarse sieve.",
        ("Poaceae", "culm node", 60), ("Anthemis cotula", "achene", 50), ("Raphanus raphanistrum", "pod segment", 12), ("Agrostemma githago", "seed", 10), ("Hordeum vulgare", "grain", 25),
        holds={"processing.coarse-sieving-waste": "supports"}, must_not=("processing.clean-product",),
    ),
    _reading(
        "malt", "van der Veen 1989, Journal of Archaeological Science 16:302–304", "from memory",
        "Spelt of a grain dryer, three in four grains or more sprouted, with detached sprouts. Numbers are filled in.", "Malting.",
        ("Triticum spelta", "sprouted grain", 92), ("Triticum spelta", "grain", 12), ("Triticum spelta", "detached sprout", 60),
        kind="corn dryer", deposit="primary", holds={"processing.malting": "supports"},
    ),
    _reading(
        "spoiled-grain", "van der Veen 1989", "from memory", "A fifth of the grain sprouted, of two crops. Numbers are filled in.",
        "Spoiled in a wet store or harvest, not malt.",
        ("Hordeum vulgare", "grain", 90), ("Hordeum vulgare", "sprouted grain", 20), ("Triticum spelta", "grain", 40), ("Triticum spelta", "sprouted grain", 10),
        kind="storage pit", must_not=("processing.malting",),
    ),
    _reading(
        "chaff-in-dryer", "van der Veen 1999, Vegetation History and Archaeobotany 8:211–224", "from memory",
        "Glume bases by the hundred in the stoke hole of a dryer. Numbers are filled in.", "Chaff chosen as fuel.",
        ("Triticum spelta", "glume base", 520), ("Triticum spelta", "grain", 30),
        kind="corn dryer", deposit="primary", holds={"fuel.chaff": "supports", "processing.dehusking-waste": "supports"},
        must_not=("food.cereal", "processing.clean-product", "food.burned-store"),
    ),
    _reading(
        "clean-grain-in-burned-store", "van der Veen & Jones 2006; van der Veen 2007", "from memory",
        "A dense, nearly pure lot of grain in a burned granary. Numbers are filled in.", "A burned store of cleaned grain.",
        ("Triticum spelta", "grain", 640), ("Triticum spelta", "glume base", 22), ("Bromus secalinus", "grain", 14),
        kind="burned structure", deposit="de facto",
        holds={"food.burned-store": "supports", "food.cereal": "suggests", "processing.clean-product": "suggests", "season.stored-only": "suggests"},
        must_not=("fuel.chaff", "deposit.slow-build-up", "deposit.rodent-cache", "season.late-summer"),
    ),
    _reading(
        "autumn-sowing", "Reynolds 1981; Hillman 1981; G. Jones 1992", "from memory",
        "Cleavers, corn gromwell, corncockle, cornflower with spelt. Numbers are filled in.", "Sown in autumn.",
        SPELT, *AUTUMN, holds={"field.autumn-sown": "suggests", "field.weeds-with-crop": "suggests"}, must_not=("field.spring-sown",),
    ),
    _reading(
        "spring-sowing", "M. Jones 1981; G. Jones 1992", "from memory",
        "Fat hen, knotgrass, black bindweed, redshank with barley. Numbers are filled in.", "Sown in spring, or garden ground.",
        ("Hordeum vulgare", "grain", 60), *SPRING, holds={"field.spring-sown": "suggests"}, must_not=("field.autumn-sown",),
    ),
    _reading(
        "sieving-leans-to-autumn", "Bogaard, Jones & Charles 2005, Vegetation History and Archaeobotany 14:505–509", "read",
        "Products of the fine sieve under-represent indicators of spring sowing.", "So autumn sowing read from clean grain is held back.",
        ("Triticum spelta", "grain", 200), ("Galium aparine", "seed", 30), ("Agrostemma githago", "seed", 12), ("Bromus secalinus", "grain", 20),
        at_most={"field.autumn-sown": "suggests"},
    ),
    _reading(
        "uprooted", "Hillman 1981, 1984", "from memory", "Culm bases with barley grain. Numbers are filled in.", "Pulled up by the roots.",
        ("Hordeum vulgare", "grain", 60), ("Poaceae", "culm base", 22), ("Poaceae", "culm node", 15),
        holds={"field.uprooted": "suggests"}, must_not=("fuel.turf-heath",),
    ),
    _reading(
        "low-weeds", "Hillman 1981; Reynolds 1985", "from memory", "Chickweed, knotgrass, spurrey with spelt. Numbers are filled in.", "Cut low.",
        SPELT, ("Stellaria media", "seed", 30), ("Polygonum aviculare", "achene", 14), ("Spergula arvensis", "seed", 12),
        holds={"field.cut-low": "suggests"}, must_not=("field.cut-high",),
    ),
    _reading(
        "tall-weeds", "Hillman 1981", "from memory", "Corncockle, cornflower, brome and climbers with spelt. Numbers are filled in.", "Cut high.",
        SPELT, ("Agrostemma githago", "seed", 30), ("Centaurea cyanus", "achene", 22), ("Bromus secalinus", "grain", 20), ("Galium aparine", "seed", 12),
        holds={"field.cut-high": "suggests"}, must_not=("field.cut-low",),
    ),
    _reading(
        "wet-arable", "M. Jones 1988", "from memory", "Spike-rush among cereal grain of Iron Age sites on the Thames. Numbers are filled in.",
        "Cultivation of wet ground.", SPELT, ("Eleocharis palustris", "nutlet", 24), ("Montia fontana", "seed", 6),
        holds={"field.wet": "consistent with"}, years={"early": (-300, -100)},
    ),
    _reading(
        "clay", "M. Jones 1981, 1984", "from memory", "Stinking chamomile with spelt. Numbers are filled in.", "Cultivation of heavy clay.",
        SPELT, ("Anthemis cotula", "achene", 60), holds={"field.clay": "suggests"},
    ),
    _reading(
        "poor-soil", "M. Jones 1981, 1988", "from memory", "Small vetches and sheep's sorrel with spelt. Numbers are filled in.", "Soil short of nitrogen.",
        SPELT, ("Vicia hirsuta", "seed", 30), ("Vicia tetrasperma", "seed", 20), ("Rumex acetosella", "achene", 20), ("Scleranthus annuus", "fruit", 12),
        holds={"field.poor": "suggests"}, must_not=("field.fertile",),
    ),
    _reading(
        "latrine", "Green 1979, Journal of Archaeological Science 6:279–284", "from memory",
        "Mineralised stones and pips of plum, bramble and apple in a latrine. Numbers are filled in.", "Human waste.",
        ("Prunus domestica", "fruit stone", 14, "mineralised"), ("Rubus fruticosus", "seed", 60, "mineralised"), ("Malus", "seed", 12, "mineralised"),
        kind="cess pit", holds={"deposit.cess": "supports", "food.fruit": "supports", "integrity.uncharred-ancient": "supports"},
        must_not=("integrity.modern-seeds",), years={"early": (1200, 1400)},
    ),
    _reading(
        "turf", "Hall 2003", "from memory", "Heather leaf and stem, heath grass, rhizomes in a hearth. Numbers are filled in.", "Turf burned as fuel.",
        ("Calluna vulgaris", "leaf", 60), ("Calluna vulgaris", "stem", 30), ("Danthonia decumbens", "grain", 14), ("Poaceae", "rhizome", 18),
        kind="hearth", deposit="primary", holds={"fuel.turf-heath": "supports"}, must_not=("food.root-tuber", "field.uprooted"),
    ),
    _reading(
        "dung-fuel", "Miller & Smart 1984; Spengler 2019", "from memory",
        "Dung fragments, many seeds of grazed plants, little wood. Numbers are filled in.", "Dung burned as fuel.",
        ("Indeterminate", "dung", 24), ("Trifolium", "seed", 60), ("Plantago lanceolata", "seed", 40), ("Carex", "nutlet", 30), ("Rumex acetosa", "achene", 20), ("Quercus", "wood", 5),
        kind="hearth", deposit="primary", holds={"fuel.dung": "suggests"}, must_not=("food.small-seed", "food.cereal"),
    ),
    _reading(
        "naked-wheat-in-bronze-age", "Pelling et al. 2015, Vegetation History and Archaeobotany 24:85–99", "from memory",
        "Rye in a Bronze Age pit full of emmer. Numbers are filled in.", "Date it first; such grains are often younger.",
        ("Triticum dicoccum", "glume base", 80), ("Triticum dicoccum", "grain", 20), ("Secale cereale", "grain", 2),
        holds={"integrity.out-of-period": "suggests", "work.date-candidate": "suggests"}, years={"early": (-1500, -1200)},
    ),
    _reading(
        "only-cf", "that 'cf.' marks a name as probable and no more", "common practice, no source",
        "A store of grain that could only be named 'cf. spelt'.", "No reading that hangs on the name is firm.",
        ("cf. Triticum spelta", "grain", 400), ("cf. Triticum spelta", "glume base", 12), kind="storage pit", deposit="primary",
        at_most={id: "suggests" for id in ("processing.clean-product", "food.cereal", "food.burned-store")},
    ),
    _reading(
        "group-is-no-species", "that a rule which needs the species does not fire on the group", "common practice, no source",
        "Grain that is wheat or barley, and cereal that could not be named.", "Cereals, but no hulled wheat, no spelt, no barley.",
        ("Triticum/Hordeum", "grain", 90), ("Cerealia indet.", "grain", 60), ("Vicia/Lathyrus", "seed", 12),
        kind="hearth", deposit="primary", holds={"food.cereal": "suggests"},
        must_not=("processing.whole-ears-or-spikelets", "processing.dehusking-waste", "food.pulse", "field.poor"),
    ),
    Reading(
        id="spelt-for-emmer",
        source="van der Veen 1992, Crop Husbandry Regimes",
        known="from memory",
        printed="Emmer on earlier and spelt on later Iron Age sites of northern England. Numbers are filled in.",
        concluded="Spelt took the place of emmer.",
        region=HERE,
        places=[
            Place(
                kind="pit", deposit="secondary", phase="early" if i < 12 else "late",
                samples=[[("Triticum dicoccum", "glume base", 9)] * (i < 11 or i == 20) + [("Triticum spelta", "glume base", 9)] * (i == 3 or i > 12)],
            )
            for i in range(24)
        ],
        about="site",
        holds={"change.spelt-for-emmer": "supports", "change.spelt-rises": "supports", "change.emmer-declines": "supports"},
        years={"early": (-800, -400), "late": (-300, 50)},
    ),
)  # fmt: skip
