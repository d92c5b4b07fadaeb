# ruff: noqa: E501 (tables to be read across)
"""
What three regions live on in the other worlds: plants, months and daily work, as tables to be read by eye.

Months, compositions and temperatures are from memory of the literature named beside them, or judgement, as marked.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Life:
    """One region as text: a line a thing, a weed, an act."""

    name: str
    ends: tuple[int, ...]
    """Last years of phases."""
    things: str
    """key | taxon | part | months in which it was gathered (none: not gathered for itself)"""
    weeds: str
    """taxon | part | how it travels (small, big, headed) | leanings: autumn spring rich poor acid lime clay fallow wet
    low (a plant lower than 40 cm) root (comes with pulled roots)"""
    yard: tuple[str, ...]
    acts: str
    """name | share of households | events a month that reach a fire, January to December | °C | place | store |
    contents: pieces | statements that it makes true"""
    stores: str
    """name | month of harvest | months it lasts in a usual year"""
    wood: tuple[str, ...]
    timber: tuple[str, ...]
    brush: tuple[str, ...]
    strays: tuple[str, ...]
    later: tuple[str, ...]
    alike: tuple[tuple[str, str], ...]


# Eastern Woodlands, general picture: Smith 1992, Rivers of Change; Scarry 2003; Fritz 2019, Feeding Cahokia; from
# memory. An ear has some 200-300 kernels and half as many cupules (two kernels to a cupule: botany of the ear).
EAST = Life(
    name="eastern-north-america",
    ends=(1050, 1250, 1400, 1500),
    things="""
kernel | Zea mays | kernel | 9 10
cupule | Zea mays | cupule | 9 10
cob | Zea mays | cob | 9 10
bean | Phaseolus vulgaris | seed | 9
goosefoot | Chenopodium berlandieri | seed | 9 10
erect knotweed | Polygonum erectum | achene | 9 10
maygrass | Phalaris caroliniana | seed | 5 6
little barley | Hordeum pusillum | grain | 5 6
sunflower | Helianthus annuus | achene | 9 10
marshelder | Iva annua | achene | 9 10
squash seed | Cucurbita pepo | seed | 9
squash rind | Cucurbita pepo | rind | 9
gourd rind | Lagenaria siceraria | rind | 9
tobacco | Nicotiana rustica | seed | 8 9
hickory shell | Carya | nutshell | 10
walnut shell | Juglans nigra | nutshell | 10
acorn shell | Quercus | acorn shell | 10
acorn meat | Quercus | nutmeat | 10
hazel shell | Corylus americana | nutshell | 9
bramble | Rubus | seed | 6 7
strawberry | Fragaria | seed | 5 6
sumac | Rhus | seed | 9
persimmon | Diospyros virginiana | seed | 10
plum | Prunus americana | fruit stone | 8
maypop | Passiflora incarnata | seed | 8 9
grape | Vitis | seed | 9
mulberry | Morus rubra | seed | 6
hackberry | Celtis occidentalis | seed | 10
blueberry | Vaccinium | seed | 7
groundnut | Apios americana | tuber | 10 11 12 1 2 3 4
stand maygrass | Phalaris caroliniana | seed | 5 6
stand barley | Hordeum pusillum | grain | 5 6
stand knotweed | Polygonum erectum | achene | 9 10
weed goosefoot | Chenopodium berlandieri | seed | 9
amaranth | Amaranthus | seed | 8 9
purslane | Portulaca oleracea | seed | 8
cane | Arundinaria gigantea | culm |
cache goosefoot | Chenopodium berlandieri | seed |
cache acorn | Quercus | acorn shell |
""",
    weeds="""
Chenopodium berlandieri | seed | small | rich
Amaranthus | seed | small | rich
Portulaca oleracea | seed | small | rich low
Mollugo verticillata | seed | small | poor low
Acalypha | seed | small | poor
Panicum | seed | small |
Digitaria | seed | small |
Euphorbia maculata | seed | small | poor low
Persicaria pensylvanica | achene | big | wet rich
Polygonum erectum | achene | big | low
Ambrosia trifida | achene | headed | rich wet
Strophostyles | seed | big | poor
Ipomoea lacunosa | seed | big |
Solanum ptychanthum | seed | small | rich
Eleocharis | achene | small | wet
Cyperus | achene | small | wet
Carex | achene | small | wet fallow
""",
    yard=("Chenopodium berlandieri", "Portulaca oleracea", "Amaranthus", "Oxalis stricta", "Verbena", "Galium",
          "Plantago rugelii", "Phytolacca americana"),
    acts="""
wood fire | 1 | 666555555666 | 340 | hearth | | @wood 30 | fuel.wood
boil maize | 0.9 | 443221112444 | 300 | hearth | maize | kernel 2.5, @big 0.05, @wood 20 | food.maize food.cooking-accident processing.clean-product fuel.wood
parch maize and let it burn | 0.6 | 000000001000 | 265 | hearth | maize | kernel 90, cupule 2, @wood 20 | food.maize food.cooking-accident processing.clean-product fuel.wood
shell maize, cobs to the heap fire | 0.6 | 211100001122 | 330 | heap | maize | cupule 40, cob 2, kernel 4, @weeds 1 | processing.shelling-waste food.maize
cobs on the fire | 0.55 | 443211112344 | 330 | hearth | maize | cupule 45, cob 3, kernel 1.5, @wood 6 | fuel.maize-cob processing.shelling-waste fuel.wood
smudge of cobs | 0.2 | 000001111100 | 270 | smudge | maize | cupule 250, cob 15, kernel 4 | fuel.smudge processing.shelling-waste
smudge of bark and cane | 0.15 | 000001111000 | 270 | smudge | | cane 12, @wood 15, @yard 1 | fuel.smudge
store of ears burns | 1 | 000000000000 | 370 | store | maize | kernel 900, cupule 500, cob 12, bean 5, @weeds 3 | food.burned-store processing.whole-ears-or-spikelets food.maize
store of goosefoot burns | 0.4 | 000000000000 | 330 | store | seeds | goosefoot 1500, erect knotweed 100, @weeds 20 | food.burned-store processing.clean-product food.small-seed food.native-seed-crops
boil beans | 0.6 | 221000002222 | 290 | hearth | beans | bean 0.7, @wood 15 | food.pulse food.cooking-accident fuel.wood
parch seed crops | 0.5 | 111111112221 | 270 | hearth | seeds | goosefoot 8, erect knotweed 3, maygrass 4, little barley 1, @weeds 2, @wood 15 | food.small-seed food.native-seed-crops food.cooking-accident fuel.wood
seed crops burn in the pan | 0.35 | 000001000100 | 265 | hearth | seeds | goosefoot 300, maygrass 100, @weeds 4 | food.small-seed food.native-seed-crops food.cooking-accident processing.clean-product
clean seed crops | 0.4 | 000011001221 | 310 | heap | seeds | goosefoot 5, erect knotweed 2, @weeds 14 | food.small-seed food.native-seed-crops
sunflower and marshelder | 0.45 | 111000001221 | 280 | hearth | seeds | sunflower 2, marshelder 3, @wood 12 | food.oil-seed food.native-seed-crops food.cooking-accident fuel.wood
seed of tended grass stands | 0.25 | 000022001100 | 270 | hearth | | stand maygrass 25, stand barley 12, stand knotweed 5, @wood 12 | field.managed-wild-stand food.small-seed food.cooking-accident fuel.wood
squash | 0.6 | 110000022221 | 280 | hearth | squash | squash rind 1.2, squash seed 0.3, @wood 12 | food.squash fuel.wood
gourd bowl thrown in the fire | 0.35 | 111111111111 | 310 | hearth | cured | gourd rind 4, @wood 8 | processing.gourd-containers fuel.wood
crack hickory and walnut | 0.85 | 332100000344 | 340 | heap | nuts | hickory shell 45, walnut shell 4 | processing.nut-cracking food.nut
shell on the fire | 0.5 | 443211001444 | 350 | hearth | nuts | hickory shell 35, walnut shell 3, @wood 10 | fuel.nutshell fuel.wood
parch acorns | 0.6 | 221000000333 | 290 | hearth | nuts | acorn shell 14, acorn meat 2.5, @wood 15 | food.nut fuel.wood
hazel | 0.4 | 100000002211 | 300 | hearth | nuts | hazel shell 5, @wood 8 | food.nut fuel.wood processing.nut-cracking
fruit of old fields | 0.55 | 000022333310 | 300 | hearth | | bramble 1.5, strawberry 0.4, sumac 1.5, persimmon 1.2, plum 0.5, maypop 0.7, @wood 10 | food.fruit field.old-field-fruits fuel.wood
fruit of woods and banks | 0.6 | 000002112210 | 300 | hearth | | grape 1.2, mulberry 0.4, hackberry 0.5, blueberry 0.5, bramble 0.3, @wood 10 | food.fruit fuel.wood
roast groundnuts | 0.3 | 111100000111 | 290 | hearth | | groundnut 1.5, @wood 20 | food.root-tuber fuel.wood
greens | 0.6 | 001222100000 | 290 | hearth | | purslane 0.2, @wood 15 | food.greens fuel.wood
wild seeds gathered | 0.35 | 000000012210 | 275 | hearth | | weed goosefoot 6, amaranth 5, purslane 2, @wood 10 | food.small-seed food.cooking-accident fuel.wood
tobacco | 0.35 | 111111111111 | 290 | hearth | cured | tobacco 2, @wood 8 | processing.tobacco-handled fuel.wood
brush fire | 0.2 | 112221112211 | 320 | hearth | | @brush 25, @wood 4, @yard 1 | fuel.brush fuel.wood
sweepings of the yard | 1 | 011122333321 | 310 | heap | | @yard 2, @wood 2 |
house burns | 1 | 000000000000 | 400 | timber | | @timber 150 | deposit.building-timber
rodent's store | 1 | 000000000000 | 340 | rodent | | cache goosefoot 40, cache acorn 8 | deposit.rodent-cache
""",
    stores="maize | 9 | 9\nbeans | 9 | 7\nseeds | 9 | 10\nsquash | 9 | 6\ncured | 9 | 12\nnuts | 10 | 6",
    wood=("Quercus", "Carya", "Acer", "Fraxinus", "Ulmus", "Juglans"),
    timber=("Quercus", "Carya", "Juniperus virginiana"),
    brush=("Salix", "Rhus", "Sassafras albidum"),
    strays=("Mollugo verticillata", "Oxalis stricta", "Phytolacca americana", "Chenopodium album", "Trifolium repens"),
    later=("Triticum aestivum", "Trifolium repens", "Chenopodium album"),
    alike=(("Chenopodium berlandieri", "Amaranthus"), ("Rubus", "Sambucus"), ("Polygonum erectum", "Persicaria"),
           ("Carya", "Juglans nigra"), ("Phalaris caroliniana", "Panicum"), ("Nicotiana rustica", "Mollugo verticillata")),
)  # fmt: skip

# Colorado Plateau and the desert south of it: Minnis 1981; Adams & Bowyer 2002 (Sand Canyon); Fish et al. 1985 (agave);
# Toll & McBride; all from memory.
SOUTHWEST = Life(
    name="arid-southwest",
    ends=(900, 1060, 1150, 1225, 1280, 1450),
    things="""
kernel | Zea mays | kernel | 9 10
cupule | Zea mays | cupule | 9 10
cob | Zea mays | cob | 9 10
bean | Phaseolus vulgaris | seed | 9
squash seed | Cucurbita pepo | seed | 9
squash rind | Cucurbita pepo | rind | 9
gourd rind | Lagenaria siceraria | rind | 9
tobacco | Nicotiana attenuata | seed | 8 9
goosefoot | Chenopodium | seed | 8 9
amaranth | Amaranthus | seed | 8 9
purslane | Portulaca oleracea | seed | 8
ricegrass | Achnatherum hymenoides | seed | 6
dropseed | Sporobolus | seed | 9 10
tansy mustard | Descurainia | seed | 5 6
beeweed | Cleomella serrulata | seed | 8 9
sunflower | Helianthus annuus | achene | 9
pinyon shell | Pinus edulis | nutshell | 9 10
acorn shell | Quercus | acorn shell | 10
groundcherry | Physalis | seed | 8 9
prickly pear | Opuntia | seed | 8 9
saguaro | Carnegiea gigantea | seed | 6 7
banana yucca | Yucca baccata | seed | 8 9
lemonade berry | Rhus aromatica | seed | 7 8
juniper berry | Juniperus | seed | 10 11 12 1
agave leaf | Agave | leaf | 4 5
agave thorn | Agave | thorn | 4 5
yucca leaf | Yucca | leaf |
wild potato | Solanum jamesii | tuber | 9 10
stand ricegrass | Achnatherum hymenoides | seed | 6
stand goosefoot | Chenopodium | seed | 8 9
cache ricegrass | Achnatherum hymenoides | seed |
cache juniper | Juniperus | seed |
juniper leaf | Juniperus | leaf |
""",
    weeds="""
Chenopodium | seed | small | rich
Amaranthus | seed | small | rich
Portulaca oleracea | seed | small | rich low
Cycloloma atriplicifolium | seed | small | poor
Physalis | seed | small |
Mentzelia albicaulis | seed | small | poor
Sporobolus | seed | small | poor
Helianthus | achene | headed | rich
Cleomella serrulata | seed | big | rich
Euphorbia glyptosperma | seed | small | poor low
Sphaeralcea | seed | big | poor
Schoenoplectus | achene | big | wet
Carex | achene | small | wet
Eleocharis | achene | small | wet
""",
    yard=("Chenopodium", "Amaranthus", "Portulaca oleracea", "Euphorbia glyptosperma", "Sphaeralcea", "Descurainia",
          "Plantago patagonica"),
    acts="""
wood fire | 1 | 666555555666 | 350 | hearth | | @wood 30, juniper leaf 0.3 | fuel.wood
boil maize | 0.95 | 443221112444 | 300 | hearth | maize | kernel 2.5, @wood 20 | food.maize food.cooking-accident processing.clean-product fuel.wood
parch maize and let it burn | 0.5 | 000000001000 | 265 | hearth | maize | kernel 80, cupule 2, @wood 20 | food.maize food.cooking-accident processing.clean-product fuel.wood
shell maize, cobs to the heap fire | 0.4 | 211100001122 | 330 | heap | maize | cupule 40, cob 2, kernel 4, @weeds 1.5 | processing.shelling-waste food.maize
cobs on the fire | 0.7 | 554322112355 | 340 | hearth | maize | cupule 45, cob 3, kernel 1.5, @weeds 0.5, @wood 6 | fuel.maize-cob processing.shelling-waste fuel.wood
smudge of cobs | 0.1 | 000001111100 | 270 | smudge | maize | cupule 220, cob 12, kernel 4 | fuel.smudge processing.shelling-waste
store of ears burns | 1 | 000000000000 | 370 | store | maize | kernel 900, cupule 500, cob 15, bean 8 | food.burned-store processing.whole-ears-or-spikelets food.maize
store of shelled maize burns | 0.5 | 000000000000 | 350 | store | maize | kernel 900, cupule 4, bean 20 | food.burned-store processing.clean-product food.maize
boil beans | 0.6 | 221000002222 | 290 | hearth | beans | bean 0.7, @weeds 0.3, @wood 15 | food.pulse food.cooking-accident fuel.wood
parch small seeds | 0.75 | 111111123321 | 275 | hearth | seeds | goosefoot 7, amaranth 4, purslane 2, dropseed 0.7, beeweed 0.3, @wood 12 | food.small-seed food.cooking-accident fuel.wood
small seeds burn in the basket | 0.3 | 000000001000 | 265 | hearth | seeds | goosefoot 250, amaranth 60 | food.small-seed food.cooking-accident processing.clean-product
spring and summer seeds | 0.5 | 000012210000 | 275 | hearth | | ricegrass 4, tansy mustard 5, @wood 12 | food.small-seed food.cooking-accident fuel.wood
seed of tended stands | 0.15 | 000002101000 | 275 | hearth | | stand ricegrass 20, stand goosefoot 12, @wood 12 | field.managed-wild-stand food.small-seed food.cooking-accident fuel.wood
sunflower | 0.25 | 111000001221 | 280 | hearth | seeds | sunflower 2, @wood 12 | food.oil-seed food.cooking-accident fuel.wood
squash | 0.5 | 110000022221 | 280 | hearth | squash | squash rind 1, squash seed 0.3, @wood 12 | food.squash fuel.wood
gourd bowl thrown in the fire | 0.25 | 111111111111 | 310 | hearth | cured | gourd rind 4, @wood 8 | processing.gourd-containers fuel.wood
roast pinyon | 0.5 | 221100001333 | 300 | hearth | nuts | pinyon shell 8, @wood 15 | food.nut processing.nut-cracking fuel.wood
parch acorns | 0.2 | 110000000222 | 290 | hearth | nuts | acorn shell 8, @wood 15 | food.nut fuel.wood
fruit | 0.75 | 000000222210 | 300 | hearth | | groundcherry 2, prickly pear 1.2, saguaro 0.4, banana yucca 0.4, lemonade berry 0.4, @wood 10 | food.fruit fuel.wood
juniper berries | 0.2 | 100000000111 | 300 | hearth | | juniper berry 2, @wood 12 | food.fruit fuel.wood
agave roast | 0.25 | 000220000000 | 330 | hearth | | agave leaf 14, agave thorn 2, @wood 40 | food.agave fuel.wood
strip yucca leaves | 0.3 | 111111111111 | 310 | heap | | yucca leaf 7 | processing.fibre-leaves
wild potato | 0.12 | 000000001110 | 290 | hearth | | wild potato 1.5, @wood 12 | food.root-tuber fuel.wood
greens | 0.6 | 001222100000 | 290 | hearth | | beeweed 0.05, @wood 15 | food.greens fuel.wood
tobacco | 0.25 | 111111111111 | 290 | hearth | cured | tobacco 2, @wood 8 | processing.tobacco-handled fuel.wood
sagebrush fire | 0.6 | 333333333333 | 340 | hearth | | @brush 25, @wood 4 | fuel.brush fuel.wood
sweepings of the yard | 1 | 011122333321 | 310 | heap | | @yard 2, @wood 2 |
house burns | 1 | 000000000000 | 420 | timber | | @timber 150, juniper leaf 2 | deposit.building-timber
rodent's store | 1 | 000000000000 | 340 | rodent | | cache ricegrass 25, cache juniper 12 | deposit.rodent-cache
""",
    stores="maize | 9 | 11\nbeans | 9 | 7\nseeds | 9 | 9\nsquash | 9 | 6\ncured | 9 | 12\nnuts | 10 | 6",
    wood=("Juniperus", "Pinus edulis", "Populus", "Cercocarpus", "Quercus"),
    timber=("Juniperus", "Pinus ponderosa", "Pseudotsuga menziesii"),
    brush=("Artemisia tridentata", "Atriplex", "Ericameria nauseosa", "Purshia"),
    strays=("Chenopodium", "Portulaca oleracea", "Euphorbia glyptosperma", "Erodium cicutarium", "Salsola"),
    later=("Erodium cicutarium", "Triticum", "Prunus persica"),
    alike=(("Chenopodium", "Amaranthus"), ("Amaranthus", "Chenopodium"), ("Descurainia", "Lepidium"),
           ("Sporobolus", "Panicum"), ("Physalis", "Solanum"), ("Nicotiana attenuata", "Mentzelia")),
)  # fmt: skip

# Temperate Europe: stages of crop processing after Hillman 1981, 1984 and Jones 1984; weeds' leanings after Ellenberg's
# indicator values and the usual divide of winter and spring weeds; hay and turf after Hall 2003, Behre 2008; from memory.
EUROPE = Life(
    name="temperate-europe",
    ends=(-600, -100, 200, 350, 700),
    things="""
emmer grain | Triticum dicoccum | grain | 7 8
emmer glume | Triticum dicoccum | glume base | 7 8
emmer fork | Triticum dicoccum | spikelet fork | 7 8
spelt grain | Triticum spelta | grain | 7 8
spelt glume | Triticum spelta | glume base | 7 8
spelt fork | Triticum spelta | spikelet fork | 7 8
barley grain | Hordeum vulgare (hulled) | grain | 7 8
barley rachis | Hordeum vulgare | rachis internode | 7 8
straw node | Poaceae | culm node | 7 8
straw base | Poaceae | culm base | 7 8
malt | Hordeum vulgare (hulled) | sprouted grain | 7 8
sprout | Cerealia indet. | detached sprout | 7 8
pea | Pisum sativum | seed | 7 8
lentil | Lens culinaris | seed | 7 8
broad bean | Vicia faba | seed | 7 8
linseed | Linum usitatissimum | seed | 8
flax capsule | Linum usitatissimum | capsule | 8
poppy | Papaver somniferum | seed | 8
camelina | Camelina sativa | seed | 7 8
hazel shell | Corylus avellana | nutshell | 9 10
bramble | Rubus fruticosus agg. | seed | 8 9
raspberry | Rubus idaeus | seed | 7
strawberry | Fragaria vesca | achene | 6
sloe | Prunus spinosa | fruit stone | 9 10
apple | Malus sylvestris | seed | 9 10
elder | Sambucus nigra | seed | 8 9
hawthorn | Crataegus | fruit stone | 9 10
rose | Rosa | achene | 9 10 11 12
pignut | Conopodium majus | tuber | 5 6
ribwort | Plantago lanceolata | seed | 7
daisy | Leucanthemum vulgare | achene | 7
clover | Trifolium | seed | 7
yellow rattle | Rhinanthus | seed | 7
self-heal | Prunella vulgaris | nutlet | 7
dogstail | Cynosurus cristatus | grain | 7
trefoil | Lotus | seed | 7
heather leaf | Calluna vulgaris | leaf |
heather stem | Calluna vulgaris | stem |
heath grass | Danthonia decumbens | grain |
turf sedge | Carex | nutlet |
tormentil | Potentilla erecta | achene |
turf rhizome | Poaceae | rhizome |
dung goosefoot | Chenopodium album | seed |
dung sedge | Carex | nutlet |
dung piece | Indeterminate | dung |
mouse grain | Hordeum vulgare (hulled) | grain |
mouse vetch | Vicia hirsuta | seed |
""",
    weeds="""
Galium aparine | seed | big | autumn rich
Agrostemma githago | seed | big | autumn
Bromus secalinus | grain | big | autumn
Lithospermum arvense | nutlet | small | autumn lime
Lapsana communis | achene | small | autumn low
Vicia hirsuta | seed | big | autumn acid poor
Vicia tetrasperma | seed | small | autumn
Papaver | seed | small | autumn
Fallopia convolvulus | achene | big | autumn
Valerianella dentata | fruit | small | autumn lime low
Aphanes arvensis | achene | small | autumn low acid
Scandix pecten-veneris | fruit | headed | autumn lime low
Anthemis cotula | achene | headed | clay autumn
Centaurea cyanus | achene | headed | autumn poor
Chenopodium album | seed | small | spring rich
Persicaria lapathifolia | achene | small | spring rich
Persicaria maculosa | achene | small | spring rich
Stellaria media | seed | small | spring rich low
Solanum nigrum | seed | small | spring rich
Euphorbia helioscopia | seed | small | spring low rich
Spergula arvensis | seed | small | spring acid poor low
Sinapis arvensis | seed | small | spring lime
Fumaria officinalis | fruit | small | spring low
Thlaspi arvense | seed | small | spring rich
Galeopsis | nutlet | big | spring
Scleranthus annuus | fruit | small | autumn acid poor low
Rumex acetosella | achene | small | acid poor low fallow
Raphanus raphanistrum | pod segment | headed | acid spring
Polygonum aviculare | achene | small | low
Euphorbia exigua | seed | small | lime low
Poa annua | grain | small | low rich
Trifolium | seed | small | low poor fallow
Plantago lanceolata | seed | small | fallow low
Medicago lupulina | seed | small | fallow low lime
Odontites vernus | seed | small | clay poor
Ranunculus flammula | achene | small | wet low
Eleocharis palustris | nutlet | small | wet low
Montia fontana | seed | small | wet low acid
Elytrigia repens | rhizome | headed | fallow root
""",
    yard=("Chenopodium album", "Stellaria media", "Polygonum aviculare", "Urtica dioica", "Poa annua", "Plantago major",
          "Hyoscyamus niger", "Urtica urens", "Malva"),
    acts="""
wood fire | 1 | 666555555666 | 340 | hearth | | @wood 30 | fuel.wood
thresh, waste to the heap fire | 0.35 | 100000042111 | 330 | heap | barley | barley rachis 25, straw node 15, straw base 1, barley grain 2, @small 4, @headed 5 | processing.threshing-waste
coarse sieve, waste to the fire | 0.35 | 000000032110 | 330 | heap | barley | straw node 14, straw base 2, barley rachis 6, barley grain 3, @headed 12, @big 2 | processing.coarse-sieving-waste
dehusk, waste to the fire | 0.6 | 443333345444 | 320 | hearth | wheat | %glume 25, %fork 6, %grain 1.5, @small 2, @wood 12 | processing.dehusking-waste food.cereal fuel.wood
fine sieve, waste to the fire | 0.6 | 333322234433 | 310 | hearth | wheat | @small 14, %glume 4, %grain 1, barley grain 1.5, @wood 12 | processing.fine-sieving-waste processing.dehusking-waste food.cereal fuel.wood
cook grain | 1 | 444444444444 | 290 | hearth | barley | %grain 1.5, barley grain 1.5, @big 0.3, @wood 20 | food.cereal food.cooking-accident processing.clean-product fuel.wood
grain burns in the pot or kiln | 0.5 | 000000001000 | 270 | hearth | barley | barley grain 130, %grain 40, @big 4, @wood 15 | food.cereal food.cooking-accident processing.clean-product fuel.wood
spikelets burn in parching | 0.25 | 000000001000 | 270 | hearth | wheat | %grain 90, %fork 30, %glume 25, @big 3, @small 5 | food.cereal food.cooking-accident processing.whole-ears-or-spikelets
store of spikelets burns | 1 | 000000000000 | 340 | store | wheat | %grain 1500, %fork 500, %glume 500, @big 40, @small 60 | food.burned-store processing.whole-ears-or-spikelets food.cereal
store of clean grain burns | 0.6 | 000000000000 | 340 | store | barley | barley grain 1800, @big 25, pea 10 | food.burned-store processing.clean-product food.cereal
malt burns in the kiln | 0.2 | 110000000011 | 275 | hearth | barley | malt 130, sprout 60, @big 3, @wood 15 | processing.malting fuel.wood
chaff on the fire | 0.4 | 332222234333 | 340 | hearth | wheat | %glume 50, %fork 8, straw node 5, barley rachis 5, @small 8, @wood 6 | fuel.chaff processing.dehusking-waste fuel.wood
boil pulses | 0.55 | 222111122222 | 290 | hearth | pulses | pea 0.6, lentil 0.3, broad bean 0.3, @wood 15 | food.pulse food.cooking-accident fuel.wood
linseed, poppy, camelina | 0.35 | 111110011111 | 280 | hearth | oil | linseed 1.2, poppy 1.2, camelina 1.2, @wood 12 | food.oil-seed food.cooking-accident fuel.wood
ripple flax, waste to the fire | 0.2 | 000000034210 | 310 | heap | oil | flax capsule 12, linseed 5 | processing.fibre
crack hazelnuts | 0.7 | 221100003332 | 340 | hearth | nuts | hazel shell 12, @wood 15 | processing.nut-cracking food.nut fuel.wood
shell kept for the fire | 0.15 | 221100002332 | 350 | hearth | nuts | hazel shell 25, @wood 8 | fuel.nutshell fuel.wood
fruit | 0.7 | 000001233310 | 300 | hearth | | bramble 1.2, raspberry 0.3, strawberry 0.3, sloe 0.6, apple 0.4, elder 1, hawthorn 0.2, rose 0.2, @wood 12 | food.fruit fuel.wood
pignuts | 0.12 | 000022000000 | 290 | hearth | | pignut 2, @wood 12 | food.root-tuber fuel.wood
greens | 0.6 | 001222100000 | 290 | hearth | | @wood 15 | food.greens fuel.wood
litter of the byre burns | 0.35 | 222100001222 | 310 | heap | hay | ribwort 3, daisy 1, clover 4, yellow rattle 1.5, self-heal 1, dogstail 2, trefoil 1, straw node 2 | processing.hay
dung on the fire | 0.25 | 443222222344 | 310 | hearth | hay | dung goosefoot 4, clover 3, ribwort 1.5, dung sedge 3, @small 3, %glume 3, straw node 2, dung piece 0.7, @wood 4 | fuel.dung fuel.wood
turf on the fire | 0.25 | 443322223344 | 320 | hearth | | heather leaf 8, heather stem 6, heath grass 3, turf sedge 3, tormentil 1, turf rhizome 4, @wood 4 | fuel.turf-heath fuel.wood
gorse and broom fire | 0.2 | 222222222222 | 340 | hearth | | @brush 25, @wood 4 | fuel.brush fuel.wood
sweepings of the yard | 1 | 011122333321 | 310 | heap | | @yard 2, @wood 2 |
house burns | 1 | 000000000000 | 410 | timber | | @timber 150, straw node 4 | deposit.building-timber
mouse's store | 1 | 000000000000 | 340 | rodent | | mouse grain 25, mouse vetch 10 | deposit.rodent-cache
""",
    stores="wheat | 8 | 12\nbarley | 8 | 11\npulses | 8 | 9\noil | 8 | 8\nhay | 7 | 11\nnuts | 9 | 6",
    wood=("Quercus", "Corylus avellana", "Fraxinus excelsior", "Alnus", "Maloideae"),
    timber=("Quercus", "Fraxinus excelsior"),
    brush=("Ulex/Cytisus", "Prunus spinosa", "Salix"),
    strays=("Chenopodium album", "Stellaria media", "Sambucus nigra", "Fumaria officinalis", "Urtica dioica"),
    later=("Zea mays", "Veronica persica"),
    alike=(("Triticum dicoccum", "Triticum spelta"), ("Triticum spelta", "Triticum dicoccum"),
           ("Chenopodium album", "Atriplex"), ("Persicaria lapathifolia", "Persicaria maculosa"),
           ("Galium aparine", "Galium spurium"), ("Bromus secalinus", "Avena"), ("Vicia hirsuta", "Vicia tetrasperma")),
)  # fmt: skip

LIVES = (EAST, SOUTHWEST, EUROPE)
