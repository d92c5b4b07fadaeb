"""Invented sheets, lot twenty-three: each with what a person reads in it. Written before any of them was tried."""

# ruff: noqa: E501

from __future__ import annotations

from tests.reading.intake.by_eye.expectations import Sheet, cols_are_samples, long, rows_are_samples, sheet

SHEETS: tuple[Sheet, ...] = (
sheet("developer-funded-report-four-features", """
Table 14: Plant macrofossils from Roman deposits
|||||
Sample No||<3>|<5>|<6>|<11>
Context||[56]|[61]|[62]|[120]
Feature type||Corndryer|Corndryer|Pit|Ditch
Volume of soil (litres)||20|18|10|40
Volume of flot (ml)||150|90|30|25
Proportion of flot sorted||1/2|1/4|All|All
Charred grain||||||
Triticum spelta L.|Spelt|104|88|3|1
cf Triticum spelta L.|?Spelt|12|8||
Triticum sp.|Wheat|31|22|4|
Hordeum sp.|Barley|4|1|1|
Charred chaff||||||
Triticum spelta L. (glume bases)||412|301|12|4
Triticum spelta L. (rachis internodes)||31|12|1|
Charred seeds||||||
Lithospermum arvense L.|Corn gromwell|2|||
Vicia/Lathyrus spp.|Vetch/vetchling|8|4||1
Bromus secalinus/hordeaceus|Rye brome/lop-grass|22|12|2|
Other||||||
Bud|||1||
Indet. seed||4|3|1|2
Charcoal fragments >4mm||++|+|++|+
""", cols_are_samples(3, "A", "10-13,15-16,18-20,22-24", "C-F", volume=6, context=4)),
sheet("r-package-style-counts-no-metadata", """
,Triticum.aestivum,Triticum.dicoccum,Hordeum.vulgare,Avena.sp,Pisum.sativum,Lens.culinaris,Galium.aparine,Chenopodium.album
S01,12,4,8,0,1,3,2,14
S02,3,0,1,1,0,0,0,2
S03,40,12,22,4,3,8,11,60
S04,0,1,0,0,0,0,0,1
S05,9,2,5,1,0,2,1,7
""", rows_are_samples("A", 1, "2-6", "B-I"), sep=","),
sheet("andes-flotation-with-dry-screen", """
Unidad,Nivel,Rasgo,Muestra,Litros flotados,Chenopodium quinoa,Chenopodium sp.,Zea mays (grano),Zea mays (cúpula),Solanum tuberosum cf.,Phaseolus sp.,Cactaceae,Malvaceae,Poaceae,Parénquima (g),Leña (g),Estiércol
N4E2,3,R12,M-14,10,104,33,4,12,2,1,8,22,31,0.22,3.10,x
N4E2,4,R12,M-15,10,88,12,,8,,,4,12,20,0.10,2.02,x
N6E2,3,,M-18,8,12,4,1,,1,,2,31,44,,0.31,
N6E3,5,R15,M-22,9.5,301,102,12,31,4,2,12,41,22,0.81,8.80,xx
""", rows_are_samples("D", 1, "2-5", "F-Q", mass="O-P", volume="E"), sep=","),
sheet("scandinavian-two-heads", """
Prøve nr.|||P1|P2|P5|P9
Anlæg|||A12|A12|A30|A44
Anlægstype|||stolpehul|stolpehul|grube|ovn
Jordvolumen (l)|||4|4,5|10|6
Latinsk navn|Dansk navn|Type||||
Hordeum vulgare var. nudum|Nøgen byg|korn|12|4|104|31
Hordeum vulgare var. vulgare|Avnklædt byg|korn|8|1|22|12
Triticum spelta|Spelt|avnbase|33|12|8|
Cerealia indet.|Ubest. korn|korn|20|9|55|22
Camelina sativa|Sæddodder|frø|4||12|2
Spergula arvensis|Spergel|frø|22|8|301|12
Persicaria lapathifolia|Bleg pileurt|frø|12|3|44|8
Corylus avellana|Hassel|nøddeskal|1||4|
""", cols_are_samples(1, "A", "6-13", "D-G", volume=4)),
sheet("mississippi-mixed-count-and-weight-parens", """
Table 7-3. Plant Remains from Structure 2 (count/weight in g)
||Str. 2 floor|Str. 2 hearth|Str. 2 postholes
Flotation volume (liters)||30|12|18
Hickory shell|ct|102|44|31
|wt|3.12|1.20|0.88
Acorn shell|ct|12|3|
|wt|0.05|0.01|
Maize kernel|ct|31|12|2
|wt|0.44|0.20|0.02
Maize cupule|ct|204|88|12
|wt|1.10|0.61|0.08
Chenopod|ct|14|33|1
Maygrass|ct|8|102|
Bean|ct|2||
|wt|0.11||
""", lambda grid: (
    {f"{'ABCDE'[c]}{r}": (grid[1][c], next(grid[k][0] for k in range(r - 1, 0, -1) if grid[k][0]), "g" if grid[r - 1][1] == "wt" else "n")
     for r in range(4, 16) for c in range(2, 5) if grid[r - 1][c]},
    {("Str. 2 floor", "volume"): "30"},
)),
sheet("period-blocks-in-one-column-headed-rows", """
Sample,Context,Vol,Barley,Emmer,Emmer gb,Flax,Weeds,Indet
Early Bronze Age,,,,,,,,
101,3,20,12,31,102,,22,8
102,5,20,3,8,22,1,4,2
Middle Bronze Age,,,,,,,,
110,12,30,44,12,31,8,60,20
111,14,10,8,,3,,2,4
Late Bronze Age,,,,,,,,
130,31,40,12,1,2,22,31,12
""", rows_are_samples("A", 1, "3-4,6-7,9", "D-I", volume="C", context="B"), sep=","),
sheet("long-americanist-with-bag-and-class", """
Bag,Site,Provenience,Depth,Flot Vol (L),Size Grade,Class,Scientific Name,Common Name,Part,Ct,Wt,Carb,ID by
114,40XX9,Feature 6,40-50,9,>2mm,Nut,Carya sp.,Hickory,shell,42,1.03,C,initials
114,40XX9,Feature 6,40-50,9,1.4-2mm,Nut,Quercus sp.,Acorn,shell,12,0.04,C,initials
114,40XX9,Feature 6,40-50,9,<1.4mm,Seed,Chenopodium berlandieri,Goosefoot,seed,33,,C,initials
114,40XX9,Feature 6,40-50,9,<1.4mm,Seed,Mollugo verticillata,Carpetweed,seed,4,,U,initials
120,40XX9,Feature 8,50-60,10,>2mm,Cultigen,Zea mays,Maize,cupule,8,0.09,C,initials
120,40XX9,Feature 8,50-60,10,>2mm,Wood,Pinus sp.,Pine,wood,20,0.71,C,initials
""", long("A", "H", "2-7", count="K", mass="L", volume="E"), sep=","),
sheet("summary-by-phase-with-n-samples-and-litres", """
Phase|Neolithic|Early Bronze|Late Bronze|Iron Age
Number of samples|12|8|20|31
Total litres|240|155|410|602
Total items|1204|388|2210|4031
Hordeum vulgare grain|102|44|301|602
Triticum monococcum glume base|401|88|22|4
Triticum dicoccum glume base|301|102|204|31
Triticum spelta glume base||4|401|1802
Lens culinaris|12|8|31|4
Linum usitatissimum|4|1|12|22
Galium spurium|44|31|104|302
Corylus avellana|340|110|1135|1264
""", cols_are_samples(1, "A", "5-12", "B-E", volume=3)),
sheet("catalan-table-comma-decimal-weights", """
UE;Estructura;Mostra;Volum (l);Hordeum vulgare;Triticum aestivum/durum;Triticum dicoccum;Cerealia (fragments);Vicia faba;Lens culinaris;Vitis vinifera;Quercus sp. (cotiledó);Pes carbó (g)
2014;SJ-33;1;20;104;31;4;210;2;8;1;12;3,25
2015;SJ-33;2;15,5;31;12;;84;;1;;4;1,10
2102;SJ-41;4;30;8;2;1;33;1;;3;;0,85
2110;SJ-50;6;10;1;;;4;;;;33;12,40
""", rows_are_samples("C", 1, "2-5", "E-M", mass="M", volume="D", context="A"), sep=";"),
sheet("charcoal-by-spit-with-rank-and-cumulative", """
Spit,1,2,3,4,5,Total,%,Rank
Litres,10,10,8,8,5,41,,
Quercus (deciduous),33,41,22,12,4,112,46.9,1
Corylus,12,8,20,31,2,73,30.5,2
Fraxinus,4,3,1,,,8,3.3,5
Alnus,2,8,12,4,1,27,11.3,3
Pomoideae,1,3,,,,4,1.7,6
Indeterminate,3,4,2,5,1,15,6.3,4
Total,55,67,57,52,8,239,100,
No. of taxa,5,5,4,3,3,,,
""", cols_are_samples(1, "A", "3-8", "B-F", volume=2), sep=","),
sheet("two-line-head-with-units-and-mnv", """
Sample|Deposit|Soil|Flot|Grain|Grain|Chaff|Seeds|Nutshell
id|type|litres|ml|whole|frag|n|n|g
A-1|hearth|8|22|12|31|4|22|0.31
A-2|pit|10|31|3|8|12|4|1.02
A-3|floor|4|5|1|4||8|
B-1|midden|12|60|44|102|31|88|2.40
""", rows_are_samples("A", 1, "3-6", "E-I", mass="I", volume="C")),
sheet("excavation-archive-xx-key-with-counts-mixed", """
Site code: XYZ00 (invented),,,,,
Sample,1,2,3,4,5
Context,10,12,15,22,31
Soil (L),10,10,20,10,5
Wheat,5,xx,1,,>100
Barley,x,3,2,1,c.50
Emmer spikelet fork,xxx,12,8,,x
Bedstraw,2,1,,x,4
Charcoal flecks,xxx,xx,x,xx,xxx
"Key: x = 1-10, xx = 11-50, xxx = >50",,,,,
""".replace('"', "").replace("1-10, xx = 11-50, xxx", "1-10; xx = 11-50; xxx"), cols_are_samples(2, "A", "5-9", "B-F", volume=4, context=3), sep=","),
)  # fmt: skip
