"""Invented sheets, lot ten: each with what a person who looks at it reads. Written before any of them was tried."""


from __future__ import annotations

from tests.reading.intake.by_eye.expectations import Sheet, cols_are_samples, long, rows_are_samples, sheet

SHEETS: tuple[Sheet, ...] = (
sheet("essex-report", """
Table 12: Charred macrofossils from Phases 2 and 3

|||Phase 2|||Phase 3||
Sample No.|||1|2|5|8|11|12
Context No.|||1009|1014|1022|1031|1047|1052
Feature No.|||1008|1013|1021|1030|1046|1046
Feature type|||Pit|Pit|PH|Ditch|Kiln flue|Kiln flue
Vol. processed (l)|||20|20|10|40|30|40
% of flot sorted|||100|100|100|100|12.5|25
Latin name|Plant part|English name||||||
Triticum aestivum s.l.|grain|bread wheat|4|2||8|64|40
Triticum aestivum s.l.|rachis|bread wheat||||1|8|
Hordeum vulgare|grain|barley|2||1|5|16|12
Avena fatua L.|floret base|wild oat||||1|8|4
Vicia faba|seed|celtic bean|1|||||
Odontites vernus|seed|red bartsia||1||3|24|8
Eleocharis palustris|nutlet|spike-rush||||2||4
Estimated totals|||7|3|1|20|960|272
""", cols_are_samples(4, "A", "11-17", "D-I", volume=8, context=5)),
sheet("open-access-csv", """
Excavation_ID,Square,Locus_Number,Sample_Type,Sample_Number,Volume_Floated_L,Taxon_Hordeum_spont_grain,Taxon_Hordeum_dist_grain,Taxon_Hordeum_rachis,Taxon_Trit_dicoccoides_grain,Taxon_Trit_dic_spikelet_fork,Taxon_Pistacia,Taxon_Amygdalus,Taxon_Small_grass,Taxon_Bolboschoenus,Count_Total,Charcoal_4mm_g
WH7,C14,221,flot,37,30,12,3,5,2,11,40,6,310,22,411,3.2
WH7,C14,223,flot,38,22,4,0,1,0,3,12,1,88,4,113,1.0
WH7,D14,240,flot,44,18,30,8,22,9,60,4,0,120,9,262,0.4
""", rows_are_samples("E", 1, "2-4", "G-O,Q", mass="Q", volume="F"), sep=","),
sheet("counts-wts-ubq-per-taxon-long", """
Provenience|Taxon|Common name|Count|Weight (g)|Count per liter
Fea. 2, Zone A (14 L)|Carya|Hickory|301|4.41|21.5
|Juglans nigra|Black walnut|4|0.22|0.3
|Zea mays cupules|Corn|12|0.08|0.9
Fea. 2, Zone B (10 L)|Carya|Hickory|88|1.20|8.8
|Quercus|Acorn|12|0.03|1.2
Fea. 9 (20 L)|Carya|Hickory|12|0.10|0.6
|Chenopodium|Goosefoot|44||2.2
|Iva annua|Sumpweed|2||0.1
""", long("A", "B", "2-9", count="D", mass="E", fills=True)),
sheet("ranks-and-blank-col-between", """
Zone||North||||South||
Sample||N1|N2|N3||S1|S2
Volume (L)||10|12|8||10|10
||||||||
Panicum miliaceum||12|44|3||1|
Setaria italica||200|310|40||8|12
Glycine max||1||||2|1
Cannabis sativa|||3|||1|
||||||||
Total||213|357|43||12|13
""", cols_are_samples(2, "A", "5-8", "C-E,G-H", volume=3)),
sheet("remains-as-rows-with-codes-and-cf", """
Code|cf|Taxon|Element|22A|22B|23|24A|24B|31
1.1||Hordeum|g|12|3|1|4||
1.2|cf|Hordeum|g|1||||1|
1.3||Hordeum|r||2||1||
2.1||Triticum mono.|g|3|1||||
2.2||Triticum dic.|g|8|6|2|||1
2.3||Triticum dic.|gb|40|31|9|2|1|
3.1||Lens|s|1|||||2
9.9||Indet.|s|4|2|1|1|1|3
""", cols_are_samples(1, "C", "2-9", "E-J")),
sheet("appendix-trailing-notes-merged-title", """
Table B.3. Plant macroremains recovered from the burned structure||||||
(all charred; counts of specimens unless noted; densities per litre of sediment)||||||
||||||
Taxon / part|Post 1|Post 2|Bench|Floor W|Floor E|Roof fall
Zea mays, ears (whole)||||2|6|
Zea mays, kernels|3||40|610|1200|22
Zea mays, shank|||1|4|9|
Phaseolus vulgaris, cotyledons|||12|80|31|2
Cucurbita pepo, seed|||||14|
Pinus edulis, wood (g)|120.0|88.2||12.1|4.0|310.5
Phragmites, stem (g)||||2.2|1.4|40.2
Volume floated (L)|2|2|4|12|12|10
Notes: Post 1 and Post 2 were not floated completely.
""", cols_are_samples(4, "A", "5-11", "B-G", massrows="10,11", volume=12)),
sheet("percent-then-counts", """
Sample|Total ID|% Cereal|% Pulse|% Wild|Barley|Wheat|Chickpea|Lentil|Bitter vetch|Wild grass|Wild legume|Other wild
K1|120|58.3|16.7|25.0|40|30|2|8|10|12|10|8
K2|40|50.0|25.0|25.0|12|8|0|6|4|6|2|2
K3|200|75.0|5.0|20.0|100|50|0|10|0|30|4|6
K4|10|20.0|30.0|50.0|1|1|0|3|0|2|2|1
""", rows_are_samples("A", 1, "2-5", "F-M")),
sheet("three-cols-of-ids-merged-xlsx", """
House|Layer|Sample|Volume|Species counted||||
||||Emmer|Einkorn|Barley|Lentil|Flax
1|upper|11|10|12|4|3||1
||12|10|8|2|||
|lower|13|8|30|11|6|2|
2|upper|21|10|1||||
||22|12|4|1|2|1|
""", rows_are_samples("C", 2, "3-7", "E-I", volume="D"), merge=("A3:A5", "A6:A7", "B3:B4", "B6:B7", "E1:I1")),
sheet("tally-text-units", """
Find spot,Amount of soil,Barley,Oat,Rye,Wheat,Goosefoot,Spurrey
Hus 1 ovn,12 l,34,2,110,4,88,12
Hus 1 gulv,10 l,4,0,12,0,31,2
Grube A12,8.5 l,1,0,3,0,5,0
Grube A19,15 l,12,1,40,2,19,4
""", rows_are_samples("A", 1, "2-5", "C-H", volume="B"), sep=","),
sheet("multi-sample-cols-mixed-signs", """
Probennummer||1|2|3|4
Befund||101|101|140|155
Probenvolumen||10 l|10 l|5 l|12 l
Wiss. Name|dt. Name||||
Cerealia indet.|Getreide|34|cf. 2|1|
Hordeum vulgare|Gerste|12|4||+
Secale cereale|Roggen|120|33|2|8
Agrostemma githago|Kornrade|3|1||
Rumex acetosella|Kl. Sauerampfer|22|9||1
Corylus avellana|Haselnuss|1 Frg.||2 Frg.|
""", cols_are_samples(1, "A", "5-10", "C-F", volume=3)),
)  # fmt: skip
