"""Published readings of eastern North America."""

from __future__ import annotations

from tests.readings.reading import Place, Reading

HERE = "eastern-north-america"
OCCANEECHI = "Gremillion, Excavating Occaneechi Town, "
TWO = {"early": (900, 1000), "late": (1000, 1100)}

EASTERN = (
    Reading(
        id="occaneechi-season",
        source=OCCANEECHI + "'Seasonal variation'",
        known="read",
        printed="Corn, hickory, grape, maypop, persimmon in one fill. Numbers are filled in.",
        concluded="Most plants ripen in late summer and early fall; corn, nuts and dried fruit keep, which "
        "complicates any "
        "attempt to fix the season of a deposit.",
        region=HERE,
        places=[
            Place(
                kind="pit",
                deposit="secondary",
                samples=[
                    [
                        ("Zea mays", "kernel", 20),
                        ("Carya", "nutshell", 60),
                        ("Vitis", "seed", 8),
                        ("Passiflora incarnata", "seed", 4),
                        ("Diospyros virginiana", "seed", 6),
                    ]
                ],
            )
        ],
        holds={"season.autumn": "consistent with"},
        at_most={"season.autumn": "supports"},
        must_not=("season.spring", "season.winter"),
    ),
    Reading(
        id="occaneechi-stored",
        source=OCCANEECHI + "'Seasonal variation'",
        known="read",
        printed="Corn and hickory nuts alone. Numbers are filled in.",
        concluded="Both keep, so no season can be fixed.",
        region=HERE,
        places=[
            Place(
                kind="storage pit",
                deposit="secondary",
                samples=[[("Zea mays", "kernel", 40), ("Carya", "nutshell", 60)]],
            )
        ],
        holds={"season.stored-only": "suggests"},
        must_not=("season.autumn", "season.late-summer", "season.spring", "season.more-than-one"),
    ),
    Reading(
        id="occaneechi-hickory-widespread",
        source=OCCANEECHI + "'Nuts'",
        known="read",
        printed="Hickory in 94.7 % of features (18 of 19 gives it), second to corn.",
        concluded="A staple, by its ubiquity and the documents; not by weight alone.",
        region=HERE,
        places=[
            Place(
                kind="refuse pit",
                deposit="secondary",
                samples=[[("Carya", "nutshell", 30)] if i else [("Quercus", "wood", 9)]],
            )
            for i in range(19)
        ],
        about="site",
        holds={"food.nut": "suggests"},
    ),
    Reading(
        id="occaneechi-hickory-in-fire",
        source=OCCANEECHI + "'Nuts' 1985",
        known="read",
        printed="Hickory shell is thick, chars rather than burns away, and may itself have been fuel.",
        concluded="Shell by itself does not measure food.",
        region=HERE,
        places=[Place(samples=[[("Carya", "nutshell", 120), ("Quercus", "wood", 20)]])],
        holds={"fuel.nutshell": "suggests"},
        at_most={"food.nut": "consistent with"},
    ),
    Reading(
        id="shell-alone-in-pit",
        source=OCCANEECHI + "'Nuts' 1985",
        known="read",
        printed="Hickory shell in several samples of a pit.",
        concluded="Over-represented; weight alone is no measure of food.",
        region=HERE,
        places=[Place(kind="refuse pit", deposit="secondary", samples=[[("Carya", "nutshell", 90)]] * 5)],
        holds={"processing.nut-cracking": "suggests"},
        # The caution is of how much was eaten. That nuts were used, 450 pieces of shell may suggest, and no more.
        at_most={"food.nut": "suggests"},
    ),
    Reading(
        id="occaneechi-special-deposit",
        source=OCCANEECHI + "'Crops'",
        known="read",
        printed="A deposit of 95.8 % corn, kernels with bark on the floor of a pit. Numbers are filled in.",
        concluded="A different activity, left out of the totals.",
        region=HERE,
        places=[
            Place(
                kind="storage pit",
                samples=[[("Zea mays", "kernel", 460), ("Carya", "nutshell", 20), ("Pinus", "bark", 30)]],
            )
        ],
        holds={"deposit.single-event": "suggests"},
        must_not=("deposit.slow-build-up", "fuel.maize-cob"),
    ),
    Reading(
        id="old-field-fruits",
        source=OCCANEECHI + "and Gremillion 1989",
        known="read",
        printed="Maypop, bramble and other fruits of old fields and disturbed ground. Numbers are filled in.",
        concluded="Gathered from old fields and other disturbed places.",
        region=HERE,
        places=[
            Place(
                kind="refuse pit",
                deposit="secondary",
                samples=[[("Passiflora incarnata", "seed", 9), ("Rubus", "seed", 12), ("Rhus", "seed", 5)]],
            )
        ],
        holds={"field.old-field-fruits": "suggests"},
    ),
    Reading(
        id="whole-ears-of-maize",
        source="Scarry & Steponaitis 1997; an ear carries two kernels to a cupule",
        known="from memory",
        printed="Two kernels to a cupule. 240 and 120 are an example of that line.",
        concluded="Whole ears, not shelled corn and not bare cobs.",
        region=HERE,
        places=[
            Place(
                kind="burned structure",
                deposit="de facto",
                samples=[[("Zea mays", "kernel", 240), ("Zea mays", "cupule", 120)]],
            )
        ],
        holds={"processing.whole-ears-or-spikelets": "suggests", "food.burned-store": "suggests"},
        must_not=("fuel.maize-cob", "processing.shelling-waste"),
    ),
    Reading(
        id="kernels-per-cupule-low",
        source="Scarry & Steponaitis 1997; Welch & Scarry 1995",
        known="from memory",
        printed="12 kernels to 96 cupules (0.125), far below two to one.",
        concluded="Shelling waste, or cobs burned as fuel.",
        region=HERE,
        places=[Place(samples=[[("Zea mays", "kernel", 12), ("Zea mays", "cupule", 96)]])],
        holds={"fuel.maize-cob": "supports", "processing.shelling-waste": "consistent with"},
        at_most={"food.maize": "suggests"},
        must_not=("processing.whole-ears-or-spikelets", "processing.clean-product"),
    ),
    Reading(
        id="kernels-per-cupule-high",
        source="Scarry & Steponaitis 1997",
        known="from memory",
        printed="Kernels far in excess of two to a cupule, in a hearth. Numbers are filled in.",
        concluded="Kernels lost in cooking, or stored shelled corn.",
        region=HERE,
        places=[Place(samples=[[("Zea mays", "kernel", 180), ("Zea mays", "cupule", 8)]])],
        holds={"food.maize": "supports", "processing.clean-product": "suggests"},
        must_not=("fuel.maize-cob", "processing.shelling-waste"),
    ),
    Reading(
        id="smudge-pit",
        source="Binford 1967, American Antiquity 32:1–12; Munson 1969",
        known="from memory",
        printed="Small pits packed with charred cobs. Numbers are filled in.",
        concluded="Smouldering fires kept for their smoke; not meals.",
        region=HERE,
        places=[
            Place(
                kind="smudge pit",
                samples=[[("Zea mays", "cupule", 420), ("Zea mays", "cob", 14), ("Zea mays", "kernel", 5)]],
            )
        ],
        holds={"fuel.smudge": "supports"},
        must_not=("food.maize", "food.cooking-accident", "food.burned-store"),
    ),
    Reading(
        id="early-maize",
        source="Adair et al. 2022, American Antiquity 87 (introduction)",
        known="read",
        printed="Maize in a Middle Woodland feature.",
        concluded="Date the maize itself first: several early claims failed.",
        region=HERE,
        places=[Place(samples=[[("Zea mays", "kernel", 2), ("Carya", "nutshell", 30)]])],
        holds={"integrity.out-of-period": "suggests", "work.date-candidate": "supports"},
        years={"early": (100, 300)},
    ),
    Reading(
        id="old-world-weed-before-contact",
        source="Minnis 1981; Keepax 1977, Journal of Archaeological Science 4:221–229",
        known="from memory",
        printed="Seeds of an Old World weed, chickweed, in a deposit of about 1000.",
        concluded="Contamination or a later date, even where a seed is charred.",
        region=HERE,
        places=[
            Place(
                kind="pit", deposit="secondary", samples=[[("Stellaria media", "seed", 2), ("Carya", "nutshell", 30)]]
            )
        ],
        holds={"integrity.out-of-period": "supports"},
    ),
    Reading(
        id="princeton-open",
        source="Miller 1989, Historical Archaeology 23(2):50–59",
        known="read",
        printed="Uncharred seeds of an open garden at Princeton. Numbers are filled in.",
        concluded="Modern.",
        region=HERE,
        places=[
            Place(
                kind="layer",
                deposit="secondary",
                security="open",
                samples=[[("Chenopodium", "seed", 60, "uncharred"), ("Portulaca oleracea", "seed", 20, "uncharred")]],
            )
        ],
        holds={"integrity.modern-seeds": "supports"},
        must_not=("integrity.uncharred-ancient", "food.small-seed", "food.greens"),
    ),
    Reading(
        id="sealed-well",
        source="Miller 1989, Historical Archaeology 23(2):50–59",
        known="read",
        printed="Uncharred seeds of a sealed, waterlogged well. Numbers are filled in.",
        concluded="The most secure of her three cases.",
        region=HERE,
        places=[
            Place(
                kind="well",
                deposit="secondary",
                samples=[[("Rubus", "seed", 60, "waterlogged"), ("Vitis", "seed", 20, "waterlogged")]],
            )
        ],
        preservation="waterlogged",
        holds={"integrity.uncharred-ancient": "supports"},
        must_not=("integrity.modern-seeds",),
        years={"early": (1750, 1800)},
    ),
    Reading(
        id="tillett-recent",
        source="report on the Tillett site (31DR35)",
        known="read",
        printed="Uncarbonised seeds in pit fills.",
        concluded="Listed, but called recent and intrusive.",
        region=HERE,
        places=[
            Place(
                kind="pit",
                deposit="secondary",
                samples=[
                    [
                        ("Phytolacca americana", "seed", 12, "uncharred"),
                        ("Rubus", "seed", 9, "uncharred"),
                        ("Carya", "nutshell", 40),
                    ]
                ],
            )
        ],
        holds={"integrity.modern-seeds": "supports"},
        must_not=("food.fruit",),
    ),
    Reading(
        id="tertiary-holds-back",
        source="Fuller, Stevens & McClatchie 2014",
        known="from memory",
        printed="Rich remains in soil that was moved twice. Numbers are filled in.",
        concluded="Tertiary refuse supports no strong claim.",
        region=HERE,
        places=[
            Place(
                kind="layer",
                deposit="tertiary",
                samples=[
                    [
                        ("Zea mays", "kernel", 90),
                        ("Zea mays", "cupule", 9),
                        ("Carya", "nutshell", 90),
                        ("Rubus", "seed", 20),
                    ]
                ]
                * 3,
            )
        ],
        at_most={
            id: "suggests"
            for id in (
                "food.maize",
                "food.nut",
                "food.fruit",
                "processing.clean-product",
                "season.autumn",
                "fuel.maize-cob",
            )
        },
    ),
    Reading(
        id="native-seed-crops-together",
        source="Smith 1992; Fritz in A Companion to American Agricultural History",
        known="from memory",
        printed="Goosefoot, maygrass, erect knotweed and sumpweed together. Numbers are filled in.",
        concluded="Native seed crops, grown and eaten.",
        region=HERE,
        places=[
            Place(
                kind="refuse pit",
                deposit="secondary",
                samples=[
                    [
                        ("Chenopodium berlandieri", "seed", 60),
                        ("Phalaris caroliniana", "grain", 30),
                        ("Polygonum erectum", "achene", 20),
                        ("Iva annua", "achene", 6),
                    ]
                ],
            )
        ],
        holds={"food.native-seed-crops": "suggests", "season.more-than-one": "suggests"},
        must_not=("food.greens", "fuel.dung"),
    ),
)
