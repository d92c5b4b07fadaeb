"""Invented sheets, lot six: each with what a person who looks at it reads. Written before any of them was tried."""

# ruff: noqa: E501

from __future__ import annotations

from tests.reading.intake.by_eye.expectations import Sheet, cols_are_samples, long, nothing, rows_are_samples, sheet

SHEETS: tuple[Sheet, ...] = (
sheet("report-periods-in-title", """
Table 9.4 Charred plant remains from Period 3 features (counts unless stated; + = present)

Feature|Corn-drier 120|||Pit 131|Ditch 140|
Fill|121|122|125|132|141|143
Sample no.|31|32|36|40|44|45
Litres processed|60|40|40|30|20|20
Flot size (ml)|450|300|90|20|10|15
Cereal grains
Triticum spelta|210|80|12|3||1
Hordeum vulgare (hulled)|14|3|5|1||
Avena/Bromus|40|22|||2|
Chaff
Triticum spelta (glume base)|1840|900|40|12|1|3
Hordeum rachis|12|4||||
Weeds
Tripleurospermum inodorum|9|5|1|||
Lolium perenne type|31|14|2|1||
Other
Charred fungal sclerotia||||+|+|+
Insect|+|||||
Items per litre|35.9|25.7|1.5|0.57|0.15|0.2
""", cols_are_samples(5, "A", "9-11,13-14,16-17,19", "B-G", volume=6, context=4)),
sheet("neotropics", """
Op.,Subop.,Lot,Bag #,Context description,Date floated,Soil vol. (L),LF wt. (g),HF wt. (g),Zea mays kernel,Zea mays cupule,Cucurbita rind,Phaseolus,Capsicum,Spondias,Attalea/Acrocomia,Byrsonima,Unid. seed,Wood (g),Comments
4,A,12,401,midden,3/4/15,8,12.1,88,4,12,2,1,0,0,14,3,9,10.2,
4,A,13,402,midden,3/4/15,10,22.0,140,11,31,0,0,1,1,22,8,14,18.8,dense charcoal
4,B,3,410,floor,5/4/15,5,1.4,20,0,1,0,0,0,0,2,0,1,0.9,
7,C,1,433,burial fill,9/4/15,4,0.8,35,0,0,0,0,0,1,0,0,2,0.3,roots
""", rows_are_samples("D", 1, "2-5", "J-S", mass="S", volume="G"), sep=","),
sheet("anatolia", """
Açma|10M|10M|10M|11N|11N
Locus|204|211|219|103|118
Örnek|1233|1240|1266|1301|1318
Faz|II|II|III|I|II
Hacim (L)|20|15|20|10|20
Triticum monococcum, grain|31|4|12||2
Triticum monococcum, spikelet fork|88|10|40||1
Triticum dicoccum, grain|11|2|5|1|
Triticum "new type", spikelet fork|5||2||
Hordeum vulgare var. nudum|14|1|3||4
Lens culinaris|220|3|1||2
Vicia ervilia|9||41||
Pistacia sp. (nutshell frags)|4|1|12|2|1
Galium sp.|3||8||1
""", cols_are_samples(3, "A", "6-14", "B-F", volume=5, phase=4)),
sheet("sw-density-pairs", """
|Room 4 floor||Room 4 hearth||Plaza firepit||Midden Lev 2|
|PL 14||PL 15||PL 33||PL 40|
|N|No./L|N|No./L|N|No./L|N|No./L
Cheno-am|40|10.0|112|28.0|6|2.0|80|20.0
Zea mays cupule|12|3.0|64|16.0|30|10.0|4|1.0
Zea mays kernel|1|0.3|8|2.0|3|1.0||
Portulaca|22|5.5|5|1.3||| 9|2.3
Cycloloma|3|0.8|||||1|0.3
Juniperus scale leaf|4|1.0|2|0.5|9|3.0||
""", cols_are_samples(2, "A", "4-9", "B,D,F,H", fill=True)),
sheet("family-colum-merged-xlsx", """
Family|Taxon|Element|Grid A||Grid B|
|||Lev 1|Lev 2|Lev 1|Lev 2
Fagaceae|Quercus|acorn shell|12|4|3|1
|Quercus|nutmeat|1|||
|Fagus|nutshell|2|||1
Juglandaceae|Carya|nutshell|44|80|12|6
|Juglans|nutshell|5|2||
Rosaceae|Prunus|pit|1||2|
|Rubus|seed||12|3|
""", cols_are_samples((1, 2), "B", "3-9", "D-G", fill=True), merge=("D1:E1", "F1:G1", "A3:A5", "A6:A7", "A8:A9")),
sheet("export-wide-prefix", """
sample_uid\tproject\tcontext_no\tsample_no\tperiod_name\tvolume_litres\tgrain_barley_hulled\tgrain_wheat_free\tgrain_rye\tgrain_oat\tgrain_indet\tchaff_rachis_barley\tchaff_rachis_wheat\tpulse_pea_bean\tweed_corncockle\tweed_cornflower\tnut_hazel\tcharcoal_ml
77a1\tHFD\t1004\t1\tHigh Medieval\t30\t14\t122\t8\t40\t66\t2\t9\t12\t1\t3\t2\t40
77a2\tHFD\t1009\t2\tHigh Medieval\t30\t4\t61\t2\t12\t30\t0\t4\t3\t0\t1\t0\t20
77a3\tHFD\t1030\t5\tLate Medieval\t20\t0\t9\t0\t4\t5\t0\t0\t0\t0\t0\t1\t5
77a4\tHFD\t1044\t6\tEarly Modern\t10\t1\t2\t0\t0\t1\t0\t0\t1\t0\t0\t0\t2
""", rows_are_samples("D", 1, "2-5", "G-Q", volume="F"), sep="\t"),
sheet("stats-block-below", """
Sample ID|A-01|A-02|A-03|B-01|B-02
Setaria italica|120|33|4|1|
Panicum miliaceum|12|5||2|
Oryza sativa|4||||88
Triticum aestivum||1|2|14|6
Glycine soja|3|||1|
Chenopodium|44|12|8|9|3
N taxa|5|4|3|5|3
N total|183|51|14|27|97
Shannon H|0.98|0.92|0.96|1.18|0.37
% millets|72.1|74.5|28.6|11.1|0
Volume|12|10|10|8|15
Density|15.3|5.1|1.4|3.4|6.5
""", cols_are_samples(1, "A", "2-7", "B-F", volume=12)),
sheet("half-litre-units", """
Lab. code|Trench/Context|Sampled (l)|Remains per category||||
|||Cereal grain|Cereal chaff|Legumes|Fruits|Weeds
ZH-1|A/12|10|33|104|2|1|40
ZH-2|A/15|10|12|60||4|22
ZH-3|B/3|20|5|8|1||11
ZH-4|B/7|5|1|||12|2
""", rows_are_samples("A", 2, "3-6", "D-H", volume="C")),
sheet("unknown-latin-nohead", """
Site 14|Site 22|Site 31|Site 40
12|3|0|1
0|4|22|1
5|0|0|2
""", nothing),
sheet("long-sieve-weights", """
Flot #|Screen|Taxon|Part|Ct|Wt
14|2.0 mm|Wood|charcoal|.|4.22
14|2.0 mm|Carya|nutshell|12|0.31
14|2.0 mm|Zea mays|cupule|4|0.05
14|1.4 mm|Carya|nutshell|22|0.11
14|1.4 mm|Zea mays|cupule|9|0.04
14|0.7 mm|Chenopodium|seed|31|.
15|2.0 mm|Wood|charcoal|.|2.10
15|2.0 mm|Quercus|nutshell|2|0.01
15|0.7 mm|Nicotiana|seed|3|.
""", long("A", "C", "2-10", count="E", mass="F")),
)  # fmt: skip
