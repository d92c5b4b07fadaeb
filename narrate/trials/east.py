"""Eastern North America: hamlets of gatherers, gardeners and maize farmers."""

from __future__ import annotations

from types import MappingProxyType

from narrate.trials.activities import COOKING, COOL, FIRE, HOT, WARM, Activity, Region, Yield

_WOODS = (
    "Quercus (white group)",
    "Quercus (red group)",
    "Carya",
    "Pinus",
    "Fraxinus",
    "Ulmus",
    "Acer",
    "Juglans nigra",
    "Castanea dentata",
    "Robinia pseudoacacia",
    "Liquidambar styraciflua",
    "Juniperus virginiana",
)


def _old_fields() -> Yield:
    fruits = (
        "Rubus",
        "Passiflora incarnata",
        "Rhus",
        "Physalis",
        "Vitis",
        "Diospyros virginiana",
        "Fragaria",
        "Sambucus canadensis",
    )
    return Yield(taxa=fruits, part="seed", mean=14, chosen=2, spread=0.5)


ACTIVITIES = (
    Activity(
        id="wood fire",
        at=FIRE,
        rate=2.5,
        heat=HOT,
        true=("fuel.wood",),
        yields=(Yield(taxa=_WOODS, part="wood", mean=450, chosen=4, spread=1.0, fragments=1.0, is_gathered=False),),
    ),
    Activity(
        id="cobs on the fire",
        at=MappingProxyType({"thermal": 0.8, "ash dump": 0.8}),
        rate=0.5,
        heat=HOT,
        true=("fuel.maize-cob", "processing.shelling-waste"),
        yields=(
            Yield(taxa=("Zea mays",), part="cupule", mean=420, spread=0.5, fragments=0.4),
            Yield(taxa=("Zea mays",), part="cob", mean=18, spread=0.5, fragments=1.0),
            Yield(taxa=("Zea mays",), part="kernel", mean=14, spread=0.4, fragments=0.5),
        ),
    ),
    Activity(
        id="smudge of cobs",
        at=MappingProxyType({"smudge pit": 5.0}),
        rate=0.6,
        heat=COOL,
        true=("fuel.smudge", "fuel.maize-cob", "processing.shelling-waste"),
        yields=(
            Yield(taxa=("Zea mays",), part="cupule", mean=2400, spread=1.0, fragments=0.3),
            Yield(taxa=("Zea mays",), part="cob", mean=160, spread=1.0, fragments=0.8),
            Yield(taxa=("Zea mays",), part="kernel", mean=14, spread=0.5, fragments=0.5),
            Yield(taxa=("Pinus", "Carya"), part="wood", mean=80, spread=0.7, fragments=1.0, is_gathered=False),
        ),
    ),
    Activity(
        id="shelled maize lost in cooking",
        at=COOKING,
        rate=0.45,
        heat=WARM,
        true=("food.maize", "food.cooking-accident", "processing.clean-product"),
        yields=(Yield(taxa=("Zea mays",), part="kernel", mean=130, spread=0.5, fragments=0.55),),
        stage="product",
        weeds=1,
    ),
    Activity(
        id="ears of maize burned in store",
        at=MappingProxyType({"storage": 0.6, "burned structure": 0.8}),
        rate=0.1,
        heat=WARM,
        true=("food.maize", "food.burned-store", "processing.whole-ears-or-spikelets"),
        yields=(
            Yield(taxa=("Zea mays",), part="kernel", mean=3000, spread=1.0, fragments=0.4),
            Yield(taxa=("Zea mays",), part="cupule", mean=1500, spread=1.0, fragments=0.3),
        ),
        stage="mixed",
        weeds=4,
    ),
    Activity(
        id="beans spilled",
        at=COOKING,
        rate=0.15,
        heat=WARM,
        true=("food.pulse", "food.cooking-accident", "processing.clean-product"),
        yields=(Yield(taxa=("Phaseolus vulgaris",), part="cotyledon", mean=18, spread=0.6, fragments=0.4),),
    ),
    Activity(
        id="native seeds parched",
        at=COOKING,
        rate=0.3,
        heat=COOL,
        true=("food.native-seed-crops", "food.small-seed", "food.cooking-accident", "processing.clean-product"),
        yields=(
            Yield(
                taxa=(
                    "Chenopodium berlandieri ssp. jonesianum",
                    "Phalaris caroliniana",
                    "Hordeum pusillum",
                    "Polygonum erectum",
                ),
                part="seed",
                mean=240,
                chosen=2,
                spread=0.4,
            ),
        ),
        stage="fine",
        weeds=3,
    ),
    Activity(
        id="native seeds burned in store",
        at=MappingProxyType({"storage": 0.5, "burned structure": 0.4}),
        rate=0.08,
        heat=WARM,
        true=("food.native-seed-crops", "food.small-seed", "food.burned-store", "processing.clean-product"),
        yields=(
            Yield(
                taxa=("Chenopodium berlandieri ssp. jonesianum", "Phalaris caroliniana", "Polygonum erectum"),
                part="seed",
                mean=6000,
                chosen=1,
                spread=1.0,
            ),
        ),
    ),
    Activity(
        id="oily seeds roasted",
        at=COOKING,
        rate=0.2,
        heat=COOL,
        true=("food.oil-seed", "food.cooking-accident", "processing.clean-product"),
        yields=(Yield(taxa=("Helianthus annuus", "Iva annua"), part="achene", mean=50, spread=0.6),),
    ),
    Activity(
        id="hickory cracked, the shell burned",
        at=MappingProxyType({"thermal": 1.0, "ash dump": 1.0, "refuse": 0.4}),
        rate=0.7,
        heat=HOT,
        true=("food.nut", "processing.nut-cracking", "fuel.nutshell"),
        yields=(
            Yield(taxa=("Carya",), part="nutshell", mean=380, spread=0.5, fragments=1.0),
            Yield(taxa=("Juglans nigra",), part="nutshell", mean=25, spread=0.3, fragments=1.0),
        ),
    ),
    Activity(
        id="nuts cracked, little shell into the fire",
        at=MappingProxyType({"surface": 0.6, "refuse": 0.5, "cut": 0.2}),
        rate=0.4,
        heat=WARM,
        true=("food.nut", "processing.nut-cracking"),
        yields=(
            Yield(
                taxa=("Carya", "Juglans nigra", "Corylus americana"),
                part="nutshell",
                mean=60,
                chosen=1,
                spread=0.6,
                fragments=1.0,
            ),
            Yield(taxa=("Carya",), part="nutmeat", mean=2, spread=0.5, fragments=0.8),
        ),
    ),
    Activity(
        id="acorns prepared",
        at=COOKING,
        rate=0.3,
        heat=WARM,
        true=("food.nut", "processing.nut-cracking"),
        yields=(
            Yield(taxa=("Quercus",), part="acorn shell", mean=160, spread=0.5, fragments=1.0),
            Yield(taxa=("Quercus",), part="nutmeat", mean=5, spread=0.5, fragments=0.7),
        ),
    ),
    Activity(
        id="fruit of old fields eaten or dried",
        at=MappingProxyType({"thermal": 0.7, "refuse": 0.6, "surface": 0.3}),
        rate=0.35,
        heat=WARM,
        true=("food.fruit", "field.old-field-fruits"),
        yields=(_old_fields(),),
    ),
    Activity(
        id="fruit of the woods eaten or dried",
        at=MappingProxyType({"thermal": 0.6, "refuse": 0.5}),
        rate=0.15,
        heat=WARM,
        true=("food.fruit",),
        yields=(
            Yield(
                taxa=("Vaccinium", "Prunus serotina", "Morus rubra", "Viburnum", "Celtis occidentalis"),
                part="seed",
                mean=12,
                chosen=1,
                spread=0.5,
            ),
        ),
    ),
    Activity(
        id="greens cooked",
        at=COOKING,
        rate=0.6,
        heat=WARM,
        true=("food.greens",),
        yields=(
            Yield(
                taxa=("Portulaca oleracea", "Chenopodium", "Phytolacca americana", "Amaranthus"),
                part="seed",
                mean=6,
                chosen=1,
                spread=0.5,
            ),
            Yield(taxa=("Chenopodium",), part="leaf", mean=6, spread=0.5),
        ),
    ),
    Activity(
        id="wild seeds parched",
        at=COOKING,
        rate=0.12,
        heat=COOL,
        true=("food.small-seed", "food.cooking-accident"),
        yields=(
            Yield(
                taxa=("Amaranthus", "Chenopodium", "Polygonum", "Panicum"), part="seed", mean=130, chosen=1, spread=0.5
            ),
        ),
    ),
    Activity(
        id="tubers roasted",
        at=MappingProxyType({"earth oven": 2.0, "roasting pit": 2.0, "thermal": 0.4}),
        rate=0.12,
        heat=WARM,
        true=("food.root-tuber",),
        yields=(
            Yield(taxa=("Apios americana", "Helianthus tuberosus"), part="tuber", mean=20, spread=0.6, fragments=0.8),
            Yield(taxa=("Allium canadense",), part="bulb", mean=12, spread=0.5),
        ),
    ),
    Activity(
        id="squash cooked",
        at=COOKING,
        rate=0.12,
        heat=WARM,
        true=("food.squash",),
        yields=(
            Yield(taxa=("Cucurbita pepo",), part="seed", mean=14, spread=0.6, fragments=0.4),
            Yield(taxa=("Cucurbita pepo",), part="rind", mean=10, spread=0.5, fragments=1.0),
        ),
    ),
    Activity(
        id="gourds burned",
        at=MappingProxyType({"thermal": 0.5, "refuse": 0.5}),
        rate=0.08,
        heat=WARM,
        true=("processing.gourd-containers",),
        yields=(Yield(taxa=("Lagenaria siceraria",), part="rind", mean=25, spread=0.6, fragments=1.0),),
    ),
    Activity(
        id="tobacco stripped",
        at=MappingProxyType({"surface": 0.5, "thermal": 0.5, "refuse": 0.3}),
        rate=0.08,
        heat=WARM,
        true=("processing.tobacco-handled",),
        yields=(Yield(taxa=("Nicotiana",), part="seed", mean=25, spread=0.5),),
    ),
    Activity(
        id="seeds of yards and paths",
        at=MappingProxyType({"any": 0.6, "refuse": 0.8, "thermal": 0.6}),
        rate=0.9,
        heat=WARM,
        true=("field.disturbed-ground",),
        yields=(
            Yield(
                taxa=(
                    "Chenopodium",
                    "Amaranthus",
                    "Phytolacca americana",
                    "Mollugo verticillata",
                    "Acalypha",
                    "Portulaca oleracea",
                    "Galium",
                    "Poaceae",
                    "Euphorbia maculata",
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
        id="stands tended for their seed",
        at=COOKING,
        rate=0.06,
        heat=COOL,
        true=("field.managed-wild-stand", "food.small-seed", "field.disturbed-ground"),
        yields=(
            Yield(
                taxa=("Phalaris caroliniana", "Iva annua", "Chenopodium berlandieri"),
                part="seed",
                mean=120,
                chosen=1,
                spread=0.6,
            ),
        ),
    ),
    Activity(
        id="waste of a maize harvest put on the fire",
        at=MappingProxyType({"thermal": 0.6, "ash dump": 0.6}),
        rate=0.3,
        heat=WARM,
        true=("fuel.maize-cob", "field.weeds-with-crop", "processing.shelling-waste", "field.disturbed-ground"),
        yields=(
            Yield(taxa=("Zea mays",), part="kernel", mean=40, spread=0.5, fragments=0.5),
            Yield(taxa=("Zea mays",), part="cupule", mean=110, spread=0.5, fragments=0.4),
        ),
        stage="mixed",
        weeds=18,
    ),
    Activity(
        id="waste of a maize harvest burned where it was thrown",
        at=MappingProxyType({"refuse": 0.6, "storage": 0.4}),
        rate=0.3,
        heat=WARM,
        true=("field.weeds-with-crop", "processing.shelling-waste", "field.disturbed-ground"),
        yields=(
            Yield(taxa=("Zea mays",), part="kernel", mean=40, spread=0.5, fragments=0.5),
            Yield(taxa=("Zea mays",), part="cupule", mean=110, spread=0.5, fragments=0.4),
        ),
        stage="mixed",
        weeds=18,
    ),
    Activity(
        id="a rodent's store burned",
        at=MappingProxyType({"burned structure": 0.5, "storage": 0.1, "floor": 0.1}),
        rate=0.1,
        heat=WARM,
        true=("deposit.rodent-cache",),
        yields=(
            Yield(
                taxa=("Prunus serotina", "Celtis occidentalis", "Galium", "Chenopodium", "Polygonum", "Cornus florida"),
                part="seed",
                mean=140,
                chosen=4,
                spread=0.8,
                is_gathered=False,
            ),
            Yield(taxa=("Zea mays",), part="kernel", mean=14, spread=0.5, fragments=0.3, is_gathered=False),
            Yield(taxa=("Quercus",), part="nutmeat", mean=8, spread=0.5, is_gathered=False),
        ),
    ),
    Activity(
        id="a building burned",
        at=MappingProxyType({"burned structure": 4.0, "wall trench": 0.4, "posthole": 0.4}),
        rate=0.3,
        heat=HOT,
        true=("deposit.building-timber",),
        yields=(
            Yield(
                taxa=("Quercus (white group)", "Carya", "Robinia pseudoacacia", "Juniperus virginiana", "Pinus"),
                part="wood",
                mean=1500,
                chosen=1,
                spread=1.0,
                fragments=1.0,
                is_gathered=False,
            ),
            Yield(taxa=("Arundinaria",), part="stem", mean=60, spread=0.7, fragments=1.0, is_gathered=False),
        ),
    ),
)

EAST = Region(
    name="eastern-north-america",
    kinds=MappingProxyType(
        {
            "hearth": 2,
            "firepit": 1,
            "smudge pit": 1,
            "storage pit": 2,
            "refuse pit": 3,
            "pit": 2,
            "midden": 2,
            "posthole": 1,
            "floor": 1,
            "burned structure": 0.7,
            "earth oven": 0.6,
            "wall trench": 0.5,
            "ash dump": 0.5,
            "layer": 1,
        }
    ),
    ends=(-200, 200, 800, 1050, 1250, 1400, 1500),
    activities=ACTIVITIES,
    strays=(
        "Chenopodium album",
        "Amaranthus",
        "Phytolacca americana",
        "Trifolium repens",
        "Oxalis",
        "Rubus",
        "Mollugo verticillata",
    ),
    later=("Triticum aestivum", "Prunus persica", "Setaria viridis", "Plantago major"),
    sow=0.05,
)
