"""The arid Southwest of North America: maize farmers and gatherers of seeds, cactus and pinyon."""

from __future__ import annotations

from types import MappingProxyType

from narrate.trials.activities import Activity, Region, Yield

_HOT, _WARM, _COOL = (0.1, 0.4, 0.5), (0.2, 0.6, 0.2), (0.6, 0.35, 0.05)
_FIRE = MappingProxyType({"thermal": 1.0, "ash dump": 1.0})
_COOKING = MappingProxyType({"thermal": 1.0, "ash dump": 0.6, "surface": 0.15})

ACTIVITIES = (
    Activity(
        id="juniper and pinyon fire",
        at=_FIRE,
        rate=2.5,
        heat=_HOT,
        true=("fuel.wood",),
        yields=(
            # Juniper lay in 34 of 39 samples of fires (Adams, Kuckelman & Bowyer 2007, Table 6, read).
            Yield(taxa=("Juniperus",), part="wood", mean=260, spread=1.0, fragments=1.0, is_gathered=False),
            Yield(
                taxa=("Pinus edulis", "Quercus gambelii", "Prosopis", "Populus"),
                part="wood",
                mean=110,
                chosen=1,
                spread=1.0,
                fragments=1.0,
                is_gathered=False,
            ),
            Yield(taxa=("Juniperus",), part="twig", mean=20, spread=0.6, fragments=0.5, is_gathered=False),
            Yield(taxa=("Pinus",), part="bark scale", mean=9, spread=0.3, fragments=0.6, is_gathered=False),
        ),
    ),
    Activity(
        id="brush fire",
        at=_FIRE,
        rate=0.6,
        heat=_HOT,
        true=("fuel.brush",),
        yields=(
            Yield(
                taxa=(
                    "Artemisia tridentata",
                    "Cercocarpus",
                    "Amelanchier",
                    "Atriplex canescens",
                    "Chrysothamnus s.l.",
                    "Ephedra",
                    "Krascheninnikovia lanata",
                ),
                part="wood",
                mean=320,
                chosen=2,
                spread=0.8,
                fragments=1.0,
                is_gathered=False,
            ),
        ),
    ),
    Activity(
        id="cobs on the fire",
        at=MappingProxyType({"thermal": 0.8, "ash dump": 0.8}),
        rate=0.6,
        heat=_HOT,
        true=("fuel.maize-cob", "processing.shelling-waste"),
        yields=(
            Yield(taxa=("Zea mays",), part="cupule", mean=320, spread=0.5, fragments=0.4),
            Yield(taxa=("Zea mays",), part="cob", mean=20, spread=0.5, fragments=0.8),
            Yield(taxa=("Zea mays",), part="kernel", mean=10, spread=0.4, fragments=0.5),
        ),
    ),
    Activity(
        id="shelled maize lost in cooking",
        at=_COOKING,
        rate=0.4,
        heat=_WARM,
        true=("food.maize", "food.cooking-accident", "processing.clean-product"),
        yields=(Yield(taxa=("Zea mays",), part="kernel", mean=110, spread=0.5, fragments=0.5),),
    ),
    Activity(
        id="ears of maize burned in store",
        at=MappingProxyType({"storage": 0.6, "burned structure": 1.0, "floor": 0.2}),
        rate=0.12,
        heat=_WARM,
        true=("food.maize", "food.burned-store", "processing.whole-ears-or-spikelets"),
        yields=(
            Yield(taxa=("Zea mays",), part="kernel", mean=3000, spread=1.0, fragments=0.4),
            Yield(taxa=("Zea mays",), part="cupule", mean=1400, spread=1.0, fragments=0.3),
            Yield(taxa=("Zea mays",), part="cob", mean=120, spread=1.0, fragments=0.4),
        ),
    ),
    Activity(
        id="beans spilled",
        at=_COOKING,
        rate=0.15,
        heat=_WARM,
        true=("food.pulse", "food.cooking-accident", "processing.clean-product"),
        yields=(Yield(taxa=("Phaseolus vulgaris",), part="cotyledon", mean=18, spread=0.6, fragments=0.4),),
    ),
    Activity(
        id="goosefoot and pigweed parched",
        at=_COOKING,
        rate=0.45,
        heat=_COOL,
        true=("food.small-seed", "food.cooking-accident", "processing.clean-product"),
        yields=(
            Yield(
                taxa=("Chenopodium/Amaranthus", "Chenopodium", "Amaranthus"),
                part="seed",
                mean=170,
                chosen=1,
                spread=0.4,
            ),
        ),
    ),
    Activity(
        id="seeds of early summer parched",
        at=_COOKING,
        rate=0.22,
        heat=_COOL,
        true=("food.small-seed", "food.cooking-accident", "processing.clean-product"),
        yields=(
            Yield(
                taxa=("Descurainia", "Achnatherum hymenoides", "Mentzelia albicaulis"),
                part="seed",
                mean=130,
                chosen=1,
                spread=0.4,
            ),
        ),
    ),
    Activity(
        id="seeds of late summer parched",
        at=_COOKING,
        rate=0.25,
        heat=_COOL,
        true=("food.small-seed", "food.cooking-accident", "processing.clean-product"),
        yields=(
            Yield(
                taxa=("Sporobolus", "Portulaca", "Cleomella serrulata", "Panicum"),
                part="seed",
                mean=110,
                chosen=1,
                spread=0.4,
            ),
        ),
    ),
    Activity(
        id="sunflower roasted",
        at=_COOKING,
        rate=0.08,
        heat=_COOL,
        true=("food.oil-seed", "food.cooking-accident", "processing.clean-product"),
        yields=(Yield(taxa=("Helianthus annuus",), part="achene", mean=40, spread=0.5),),
    ),
    Activity(
        id="pinyon nuts roasted",
        at=_COOKING,
        rate=0.15,
        heat=_WARM,
        true=("food.nut", "processing.nut-cracking"),
        yields=(
            Yield(taxa=("Pinus edulis",), part="nutshell", mean=60, spread=0.5, fragments=1.0),
            Yield(taxa=("Pinus edulis",), part="cone scale", mean=25, spread=0.5, fragments=0.5),
        ),
    ),
    Activity(
        id="cactus fruit eaten",
        at=MappingProxyType({"thermal": 0.7, "refuse": 0.5}),
        rate=0.22,
        heat=_WARM,
        true=("food.fruit",),
        yields=(Yield(taxa=("Opuntia s.l.", "Echinocereus"), part="seed", mean=40, chosen=1, spread=0.5),),
    ),
    Activity(
        id="groundcherry and other fruit eaten",
        at=MappingProxyType({"thermal": 0.7, "refuse": 0.5}),
        rate=0.25,
        heat=_WARM,
        true=("food.fruit",),
        yields=(
            Yield(
                taxa=("Physalis", "Rhus aromatica", "Yucca baccata", "Prunus virginiana", "Lycium"),
                part="seed",
                mean=22,
                chosen=1,
                spread=0.5,
            ),
        ),
    ),
    Activity(
        id="greens cooked",
        at=_COOKING,
        rate=0.6,
        heat=_WARM,
        true=("food.greens",),
        yields=(
            Yield(taxa=("Portulaca", "Chenopodium", "Cleomella serrulata"), part="seed", mean=6, chosen=1, spread=0.5),
        ),
    ),
    Activity(
        id="agave hearts baked",
        at=MappingProxyType({"roasting pit": 4.0, "earth oven": 4.0}),
        rate=0.25,
        heat=_WARM,
        true=("food.agave",),
        yields=(
            Yield(taxa=("Agave",), part="leaf", mean=900, spread=0.7, fragments=0.9),
            Yield(taxa=("Agave",), part="stem", mean=200, spread=0.7, fragments=0.9),
        ),
    ),
    Activity(
        id="yucca leaves worked",
        at=MappingProxyType({"surface": 0.5, "thermal": 0.3, "refuse": 0.4}),
        rate=0.06,
        heat=_WARM,
        true=("processing.fibre-leaves",),
        yields=(Yield(taxa=("Yucca",), part="leaf", mean=500, spread=0.6, fragments=0.9),),
    ),
    Activity(
        id="squash cooked",
        at=_COOKING,
        rate=0.12,
        heat=_WARM,
        true=("food.squash",),
        yields=(
            Yield(taxa=("Cucurbita",), part="seed", mean=10, spread=0.6, fragments=0.4),
            Yield(taxa=("Cucurbita",), part="rind", mean=14, spread=0.5, fragments=1.0),
        ),
    ),
    Activity(
        id="tobacco stripped",
        at=MappingProxyType({"surface": 0.5, "thermal": 0.5}),
        rate=0.06,
        heat=_WARM,
        true=("processing.tobacco-handled",),
        yields=(Yield(taxa=("Nicotiana",), part="seed", mean=25, spread=0.5),),
    ),
    Activity(
        id="seeds of yards and paths",
        at=MappingProxyType({"any": 0.6, "refuse": 0.8, "thermal": 0.6}),
        rate=0.9,
        heat=_WARM,
        true=("field.disturbed-ground",),
        yields=(
            Yield(
                taxa=(
                    "Chenopodium/Amaranthus",
                    "Portulaca",
                    "Descurainia",
                    "Poaceae",
                    "Sphaeralcea",
                    "Euphorbia",
                    "Physalis",
                ),
                part="seed",
                mean=5,
                chosen=3,
                spread=0.5,
                is_gathered=False,
            ),
        ),
    ),
    Activity(
        id="waste of a maize harvest put on the fire",
        at=MappingProxyType({"thermal": 0.6, "ash dump": 0.6}),
        rate=0.25,
        heat=_WARM,
        true=("fuel.maize-cob", "field.weeds-with-crop", "processing.shelling-waste", "field.disturbed-ground"),
        yields=(
            Yield(taxa=("Zea mays",), part="kernel", mean=30, spread=0.5, fragments=0.5),
            Yield(taxa=("Zea mays",), part="cupule", mean=100, spread=0.5, fragments=0.4),
        ),
        stage="mixed",
        weeds=18,
    ),
    Activity(
        id="waste of a maize harvest burned where it was thrown",
        at=MappingProxyType({"refuse": 0.6, "storage": 0.4}),
        rate=0.25,
        heat=_WARM,
        true=("field.weeds-with-crop", "processing.shelling-waste", "field.disturbed-ground"),
        yields=(
            Yield(taxa=("Zea mays",), part="kernel", mean=30, spread=0.5, fragments=0.5),
            Yield(taxa=("Zea mays",), part="cupule", mean=100, spread=0.5, fragments=0.4),
        ),
        stage="mixed",
        weeds=18,
    ),
    Activity(
        id="a rodent's store burned",
        at=MappingProxyType({"burned structure": 0.6, "storage": 0.1, "floor": 0.2}),
        rate=0.12,
        heat=_WARM,
        true=("deposit.rodent-cache",),
        yields=(
            Yield(
                taxa=(
                    "Chenopodium/Amaranthus",
                    "Opuntia s.l.",
                    "Physalis",
                    "Rhus aromatica",
                    "Helianthus annuus",
                    "Juniperus",
                ),
                part="seed",
                mean=140,
                chosen=4,
                spread=0.8,
                is_gathered=False,
            ),
            Yield(taxa=("Zea mays",), part="kernel", mean=8, spread=0.5, is_gathered=False),
            Yield(taxa=("Zea mays",), part="cupule", mean=6, spread=0.5, is_gathered=False),
        ),
    ),
    Activity(
        id="a roof burned",
        at=MappingProxyType({"burned structure": 4.0, "floor": 0.3, "posthole": 0.3}),
        rate=0.35,
        heat=_HOT,
        true=("deposit.building-timber",),
        yields=(
            Yield(
                taxa=("Juniperus", "Pinus edulis", "Pinus ponderosa", "Populus"),
                part="wood",
                mean=1500,
                chosen=1,
                spread=1.0,
                fragments=1.0,
                is_gathered=False,
            ),
            Yield(taxa=("Phragmites australis",), part="stem", mean=40, spread=0.7, fragments=1.0, is_gathered=False),
        ),
    ),
)

SOUTHWEST = Region(
    name="arid-southwest",
    kinds=MappingProxyType(
        {
            "hearth": 3,
            "firepit": 2,
            "roasting pit": 0.8,
            "storage pit": 1.5,
            "midden": 2,
            "floor": 1.5,
            "burned structure": 1,
            "pit": 1.5,
            "refuse pit": 1,
            "posthole": 0.5,
            "ash dump": 0.7,
            "burned area": 0.8,
            "layer": 0.7,
        }
    ),
    ends=(-300, 500, 900, 1060, 1150, 1225, 1280, 1450),
    activities=ACTIVITIES,
    strays=(
        "Salsola",
        "Chenopodium album",
        "Sphaeralcea",
        "Descurainia sophia",
        "Portulaca oleracea",
        "Bromus tectorum",
    ),
    later=("Triticum", "Prunus persica", "Salsola", "Erodium cicutarium"),
    sow=0.0,
)
