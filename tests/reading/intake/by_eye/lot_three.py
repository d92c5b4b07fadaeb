"""Invented sheets, lot three: each with what a person who looks at it reads. Written before any of them was tried."""

# ruff: noqa: E501

from __future__ import annotations

from tests.reading.intake.by_eye.expectations import Sheet, both, cols_are_samples, long, rows_are_samples, sheet

SHEETS: tuple[Sheet, ...] = (
sheet("uk-weeds-habitat", """
Site code: CHF 09
Charred plant macrofossils
|||Enclosure 1||Enclosure 2|
||Context no.|203|214|320|331
||Sample no.|10|11|20|23
||Vol. of soil (l)|30|40|40|20
||% sorted|100|50|25|100
Cultivated||||||
Avena sp.|grain||3|12|6|
Triticum aestivum/turgidum|grain||40|101|22|3
Secale cereale|rachis internode||1|4||
Wild / weed|| Habitat||||
Agrostemma githago|seed|A|1|6|2|
Anthemis cotula|achene|A,d|3|40|18|
Raphanus raphanistrum|capsule frag.|A||3|1|
Carex sp.|nutlet|w|||2|1
Other||||||
Indet. seeds|||6|20|9|2
""", cols_are_samples(5, "A", "9-11,13-16,18", "D-G", volume=6, context=4)),
sheet("two-tables-same-samples", """
Table 1. Counts
Taxon|1|2|3|4
Carya|12|40|6|1
Juglans|1|3||
Zea mays|7|10|2|

Table 2. Weights (g)
Taxon|1|2|3|4
Carya|0.21|0.90|0.11|0.01
Juglans|0.04|0.10||
Zea mays|0.08|0.13|0.02|
""", both(cols_are_samples(2, "A", "3-5", "B-E"), cols_are_samples(8, "A", "9-11", "B-E", mass="B-E"))),
sheet("rows-sections-of-samples", """
Sample|Taxa|Zea mays|Cucurbita|Phaseolus|Chenopodium|Portulaca|Opuntia
Pithouse 1||||||
PH1-3||12|2||40|3|
PH1-4||7||1|22||1
PH1-9||30|1||5|8|
Pithouse 2||||||
PH2-1||2|||6||
PH2-2||4|||1||2
Extramural||||||
EX-7||19|||80|11|4
""", rows_are_samples("A", 1, "3-5,7-8,10", "C-H")),
sheet("percent-sorted-long", """
sample_id,context,phase,soil_vol,fraction_sorted,taxon,element,n,frag,notes
TK-01,102,Early,20,0.5,Hordeum vulgare,grain,12,30,
TK-01,102,Early,20,0.5,Hordeum vulgare,rachis,4,,
TK-01,102,Early,20,0.5,Lens culinaris,seed,2,5,
TK-02,104,Early,15,1,Triticum sp.,glume base,33,,
TK-02,104,Early,15,1,Aegilops,spikelet base,1,,cf.
TK-05,121,Late,10,1,Galium,seed,6,1,
""", both(long("A", "F", "2-7", count="H", volume="D", context="B", phase="C"), long("A", "F", "2-7", count="I")), sep=","),
sheet("german-xls-merged", """
Tabelle 12: Verkohlte Pflanzenreste
|Grube 4|||Grube 9||
|Probe 4/1|Probe 4/2|Probe 4/3|Probe 9/1|Probe 9/2|Summe
Getreide||||||
Triticum monococcum, Körner|4|1||8|2|15
Triticum monococcum, Spelzenbasen|30|12|2|44|11|99
cf. Triticum dicoccum, Körner|1|||3||4
Hülsenfrüchte||||||
Pisum sativum|2|||1||3
Lens culinaris||4|||1|5
Sammelpflanzen||||||
Corylus avellana, Schalen|+|3|+||1|4
""", cols_are_samples(3, "A", "5-7,9-10,12", "B-F"), merge=("B2:D2", "E2:F2")),
sheet("weights-only-per-litre", """
Sample,Liters,Wood_g,Hickory_g,Acorn_g,Maize_g,Wood_g_per_L,Hickory_g_per_L,Seeds_n,Comments
F1-N,10,12.31,3.02,0.11,0.40,1.231,0.302,12,north half
F1-S,12,8.88,2.41,,0.22,0.740,0.201,4,south half
F2,8,1.02,0.30,0.02,,0.128,0.038,,
F5,10,30.40,10.11,0.90,1.15,3.040,1.011,31,
""", rows_are_samples("A", 1, "2-5", "C-F,I", mass="C-F", volume="B"), sep=","),
sheet("notes-before-and-after", """
Botanical data, season 2
Prepared by the laboratory
All samples processed by bucket flotation; counts are whole items unless stated.

No.|Provenience|Type|Volume|Barley|Emmer|Lentil|Grape|Olive|Weeds|Total
1|Room 3, floor|Floor|5 L|10|3||1|2|14|30
2|Room 3, bin|Bin|2 L|240|12|1||1|3|257
3|Street|Fill|10 L|2|1||||8|11
4|Room 5, oven|Oven|4 L|6|||2|5|40|53
Total|||21 L|258|16|1|3|8|65|351
Olive includes fragments. Weeds were not identified further.
""", rows_are_samples("A", 5, "6-9", "E-J", volume="D")),
sheet("taxa-with-size-columns", """
Species|Sample 12|||Sample 15||
|>2 mm|1-2 mm|<1 mm|>2 mm|1-2 mm|<1 mm
Setaria viridis||4|22||1|9
Setaria italica||31|12||60|2
Oryza sativa|12|1||6||
Glycine max|3|||1||
""", cols_are_samples(1, "A", "3-6", "B-G", fill=True)),
sheet("charred-uncharred-columns", """
Taxon|Plant part|FS 118||FS 119||FS 131|
||C|UC|C|UC|C|UC
Zea mays|cupule|33||4||12|
Zea mays|kernel|2||||1|
Chenopodium|seed|40|12|6|3|101|
Portulaca|seed|1|30||8||2
Rubus|seed||5|1|||1
C = charred; UC = uncharred||||||||
""", cols_are_samples(1, "A", "3-7", "C-H", fill=True)),
sheet("count-pct-rows", """
Sample:|BT-1||BT-2||BT-3|
Context:|Hearth||Midden||Midden|
Volume (l):|4||10||10|
|count|per litre|count|per litre|count|per litre
Goosefoot|12|3.0|5|0.5|41|4.1
Maygrass|8|2.0|10|1.0|22|2.2
Little barley|2|0.5|||3|0.3
Sumpweed|||1|0.1||
Total seeds|22|5.5|16|1.6|66|6.6
""", cols_are_samples(1, "A", "5-8", "B,D,F", volume=3, context=2)),
)  # fmt: skip
