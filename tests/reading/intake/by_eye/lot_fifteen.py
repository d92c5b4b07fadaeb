"""Invented sheets, lot fifteen: each with what a person who looks at it reads. Written before any of them was tried."""

# ruff: noqa: E501

from __future__ import annotations

from tests.reading.intake.by_eye.expectations import Sheet, both, cols_are_samples, long, rows_are_samples, sheet

SHEETS: tuple[Sheet, ...] = (
sheet("evaluation-scan-abundance-letters", """
Appendix C: assessment of environmental samples, Mill Lane
Sample|Context|Type|Bulk (L)|Flot (ml)|Grain|Chaff|Charred seed|Waterlogged seed|Nutshell|Charcoal|Fish|Snail|Insect|C14?|Recommendation
1|1005|Ditch fill|40|35|+||+|-|-|++|-|+++|-|Y|None
2|1011|Pit fill|20|110|+++|++|++|-|+|+++|+|+|-|Y|Full analysis
3|1017|Hearth|10|60|++|-|+|-|-|++++|-|-|-|Y|Charcoal
4|1030|Well|10|800|-|-|+|+++|+|+|-|++|+++|N|Full analysis
+ = 1-10, ++ = 11-50, +++ = 51-100, ++++ = >100
""", rows_are_samples("A", 2, "3-6", "F-K", volume="D", context="B")),
sheet("bronze-age-tell-three-id-rows-right-labels", """
,,,,,,,
Trench,G12,G12,G13,G13,G13,
Locus,4,7,2,2,9,
Lot,11,23,5,8,40,
Phase,IIa,IIa,IIb,IIb,III,
Liters floated,9,12,6,10,18,
Flot wt (g),12.1,30.2,2.2,8.8,41.0,
Triticum aestivum/durum,12,33,1,4,88,FTW
Hordeum distichum,8,12,2,6,41,barley 2-row
Hordeum rachis,,14,,2,30,barley chaff
Lens,3,1,,,12,lentil
Medicago radiata,4,9,1,1,7,
Trifolieae,12,22,4,3,18,small legumes
Aegilops glume base,2,7,,1,9,goat grass
Dung pellet frags,++,+,,+,+++,
""", cols_are_samples(4, "A", "8-15", "B-F", volume=6, phase=5), sep=","),
sheet("maya-region-counts-weights-stacked-rows", """
Operation|Op 3|Op 3|Op 7|Op 7
Lot|3-11|3-14|7-02|7-09
Volume (L)|8|8|12|4
Zea mays kernel (n)|4|1||2
Zea mays kernel (g)|0.12|0.02||0.05
Zea mays cupule (n)|22|8|3|
Zea mays cupule (g)|0.10|0.03|0.01|
Phaseolus sp. (n)|1||2|
Phaseolus sp. (g)|0.04||0.09|
Persea americana pit frag (n)|||4|1
Persea americana pit frag (g)|||0.40|0.08
Cucurbita rind (n)|2|1||
Cucurbita rind (g)|0.01|0.01||
Pinus charcoal (g)|4.10|2.21|0.88|1.02
""", cols_are_samples(2, "A", "4-14", "B-E", massrows="5,7,9,11,13,14", volume=3)),
sheet("scandinavian-prov-nr", """
Prov nr;Kontext;Anläggning;Volym (l);Datering;Hordeum vulgare var. vulgare;Hordeum vulgare var. nudum;Triticum aestivum;Secale cereale;Avena sativa;Camelina sativa;Chenopodium album;Corylus avellana skalfrag.;Träkol;Anmärkning
PM 101;1204;Stolphål;2,5;Yngre järnålder;12;1;;;2;;33;;xx;
PM 102;1210;Härd;3;Yngre järnålder;4;;;1;;;8;12;xxx;rikligt med kol
PM 110;1300;Stolphål;2;Vendeltid;120;;3;14;22;5;41;;x;
PM 111;1301;Grop;4;Vendeltid;8;;;;1;;12;3;xx;
""", rows_are_samples("A", 1, "2-5", "F-N", volume="D", context="B", phase="E"), sep=";"),
sheet("ubiquity-table-only", """
Taxon|Early (n = 14)||Middle (n = 22)||Late (n = 9)|
|No. of samples|%|No. of samples|%|No. of samples|%
Barley|12|86|20|91|8|89
Emmer|10|71|12|55|2|22
Free-threshing wheat|2|14|11|50|7|78
Lentil|5|36|9|41|4|44
""", lambda _: ({}, {})),
sheet("flotation-log-long-fractions", """
Float #|Prov.|Vol L|Fraction|Taxon|Part|n|g
F-001|Feat 3 N1/2|10|LF|Chenopodium berlandieri|seed|55|
F-001|Feat 3 N1/2|10|LF|Carya sp.|nutshell|4|0.05
F-001|Feat 3 N1/2|10|HF|Carya sp.|nutshell|88|1.91
F-001|Feat 3 N1/2|10|HF|Juglans nigra|nutshell|3|0.22
F-002|Feat 3 S1/2|12|LF|Zea mays|cupule|14|0.08
F-002|Feat 3 S1/2|12|HF|Zea mays|kernel|2|0.07
F-003|PM 14|2|LF|no remains||0|
F-004|PM 15|2|LF|Polygonum erectum|achene|1|
""", long("A", "E", "2-9", count="G", mass="H", volume="C", context="B")),
sheet("dutch-mixed-conditions-v-o", """
put;spoor;vnr;vol;soort;deel;verkoold;onverkoold
4;112;33;5;Hordeum vulgare;korrel;14;
4;112;33;5;Triticum dicoccum;kafbasis;3;
4;112;33;5;Sambucus nigra;zaad;;22
4;118;35;5;Linum usitatissimum;zaad;1;104
4;118;35;5;Urtica dioica;zaad;;61
7;201;40;3;Avena;korrel;2;
7;201;40;3;Juncus;zaad;;1000
""", both(long("C", "E", "2-8", count="G", volume="D", context="B"), long("C", "E", "2-8", count="H")), sep=";"),
sheet("house-floor-grid-squares-merged", """
House 4, floor 2: macrobotanicals per square|||||||
Area|North room|||South room|||
Square|A1|A2|B1|C1|C2|D2|All
Sample|401|402|405|409|411|412|
Volume|2.0|2.0|1.5|2.0|2.5|2.0|12.0
Crops|||||||
Einkorn grain|3||1|12|8||24
Emmer grain|2|1||4|5|1|13
Emmer spikelet forks|14|3|2|22|31|4|76
Wild|||||||
Atriplex|1||||4||5
Galium aparine||2||1|||3
Polygonum convolvulus||||3|1|1|5
Density (items/l)|10.0|3.0|2.0|21.0|19.6|3.0|10.5
""", cols_are_samples(4, "A", "7-9,11-13", "B-G", volume=5), merge=("A1:H1", "B2:D2", "E2:G2")),
sheet("two-site-table-with-codes-and-authority", """
Nr|Taxon|Author|English name|RAH1|RAH2|RAH5|TBK1|TBK4|Sum|Ubiquity
1|Cerealia|||12|4|8|22|3|49|5
2|Hordeum vulgare|L.|barley|30|5|11|2|1|49|5
3|Panicum miliaceum|L.|broomcorn millet|||4|120|44|168|3
4|Setaria italica|(L.) P. Beauv.|foxtail millet|||1|30|12|43|3
5|Vitis vinifera|L.|grape|1|||3||4|2
6|Melilotus/Trifolium|||4|8|2|1||15|4
7|Galium sp.||bedstraw|2|||5|1|8|3
""", cols_are_samples(1, "B", "2-8", "E-I")),
sheet("weights-in-mg-nutshell-study", """
Nutshell weights (mg) from features at the Long Bend locality
Feature|Sample|Soil (L)|Hickory|Black walnut|Butternut|Hazelnut|Acorn|Total nutshell
F2|2-A|10|410.5|12.2|||3.1|425.8
F2|2-B|10|88.0|4.0||1.5|0.9|94.4
F7|7-A|20|1210.4|0.0|33.3||22.8|1266.5
F9|9-A|5|14.6|||0.7||15.3
""", rows_are_samples("B", 2, "3-6", "D-H", mass="D-H", volume="C")),
)  # fmt: skip
