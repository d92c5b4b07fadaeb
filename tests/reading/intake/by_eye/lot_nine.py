"""Invented sheets, lot nine: each with what a person who looks at it reads. Written before any of them was tried."""

# ruff: noqa: E501

from __future__ import annotations

from tests.reading.intake.by_eye.expectations import Sheet, cols_are_samples, long, rows_are_samples, sheet

SHEETS: tuple[Sheet, ...] = (
sheet("thesis-appendix-landscape", """
APPENDIX 7.2
RAW COUNTS, TRENCH 5, UPPER DEPOSITS

AREA||5N||||5S|||
UNIT||5012|5013|5013|5020|5101|5102|5110|TOTAL
SAMPLE||1|2|3|7|1|2|5|
LITRES||30|28|31|10|45|40|12|196
WT FLOT (G)||10.1|8.8|15.2|2.1|20.4|11.1|1.9|69.6
CEREALS|||||||||
Hordeum distichum|GR|12|4|22|1|40|12||91
Hordeum distichum|RI|3||5||9|||17
T. aestivum/durum|GR|30|11|48|2|61|30|4|186
T. aestivum|RI|4||11||14|3||32
T. durum|RI|8|1|22||31|5|1|68
LEGUMES|||||||||
Lens culinaris|SD|1||3||2|||6
Vicia ervilia|SD||2|14|1|30|8||55
FRUITS|||||||||
Ficus carica|SD|22|1|||9|41|2|75
Vitis vinifera|PP|1||1||3|||5
TOTAL||81|19|126|4|199|99|7|535
ITEMS/LITRE||2.7|0.7|4.1|0.4|4.4|2.5|0.6|2.7
""", cols_are_samples((4, 6), "A", "10-14,16-17,19-20", "C-I", volume=7, fill=True)),
sheet("flot-log-plus-counts", """
Log,Feature,Type,Level,Vol_L,HV_frac,LF_g,Scanned_by,Corn kernel,Corn cupule,Corn glume,Bean,Squash rind,Goosefoot,Amaranth,Purslane,Groundcherry,Pine bark,Juniper seed,Unk
901,F1,hearth,upper,4,1.0,12.2,KM,2,31,4,0,0,120,14,8,1,22,0,3
902,F1,hearth,lower,4,1.0,10.8,KM,0,12,1,0,0,60,4,2,0,14,1,1
905,F6,pit,,3.5,0.5,40.1,KM,14,220,40,3,1,310,40,22,4,2,0,12
911,F9,floor,contact,5,1.0,2.2,TS,0,1,0,0,0,4,0,1,0,0,3,0
""", rows_are_samples("A", 1, "2-5", "I-T", volume="E"), sep=","),
sheet("pottery-phases-n-percent-freq", """
|Phase A (7 samples)|||Phase B (11 samples)||
Taxon|n|%|freq.|n|%|freq.
Emmer grain|120|41.0|7|310|38.8|11
Barley grain|90|30.7|6|222|27.8|10
Pea|12|4.1|3|44|5.5|6
Flax|3|1.0|1|20|2.5|4
Gold-of-pleasure||||8|1.0|2
Weeds|68|23.2|7|195|24.4|11
Total|293|100||799|100|
""", cols_are_samples(1, "A", "3-8", "B,E", fill=True)),
sheet("context-with-brackets-cols", """
Plant taxon;Plant part;<1> (102);<2> (102);<5> (110);<9> (131)
Triticum spelta;glume base;3;12;;1
Triticum spelta;grain;1;2;;
Hordeum vulgare;grain;;4;1;
cf. Avena sativa;floret base;;1;;
Poaceae (large);caryopsis;2;9;3;
Sample vol. (l);;10;10;20;5
""", cols_are_samples(1, "A", "2-6", "C-F", volume=7), sep=";"),
sheet("bags-long-nohead-volumes-second-table", """
Bag|Volume|Context
33|12|Oven 4
34|10|Oven 4
40|20|Pit 9

Bag|Taxon|Count
33|Hordeum vulgare|41
33|Lens culinaris|2
34|Hordeum vulgare|8
40|Triticum dicoccum|12
40|Triticum dicoccum glume base|80
40|Lolium temulentum|5
""", long("A", "B", "7-12", count="C")),
sheet("wide-multi-condition", """
Sample|Litres|Charred||||Uncharred|||
||Barley|Oat|Hazel shell|Heather|Elder|Bramble|Nettle|Chickweed
101|20|12|30|4|60||2|11|8
102|20|3|14||12|1||4|2
108|40|55|140|22|300|||1|
""", rows_are_samples("A", 2, "3-5", "C-J", volume="B")),
sheet("ubiq-row-footer-and-sources", """
Table S3. Archaeobotanical remains recovered by dry sieving and flotation (NISP).
Taxon (family)|Organ|L.4|L.5|L.6|L.7|L.8
Zea mays (Poaceae)|kernel|4|11|2||1
Zea mays (Poaceae)|cob|22|40|9|2|
Phaseolus lunatus (Fabaceae)|seed||3|1||
Arachis hypogaea (Fabaceae)|pericarp|1|8|||
Gossypium sp. (Malvaceae)|seed|60|112|31|4|2
Capsicum sp. (Solanaceae)|seed||6|||
Inga feuillei (Fabaceae)|pod|3|1||1|
NISP per layer||90|181|43|7|3
Number of taxa||5|7|4|3|2
Ages: L.4-L.5 Late Horizon; L.6-L.8 Early Intermediate. Source: field season reports.
""", cols_are_samples(2, "A", "3-9", "C-G")),
sheet("count-plus-frag-in-cell", """
Sample|S1|S2|S3|S4
Context|101|104|104|120
Volume (l)|20|40|40|10
Triticum aestivum grain|12 (3)|4|1 (1)|
Hordeum vulgare grain|c. 40|21?|8|2
Secale cereale grain|>100|12|4|
Corylus avellana nutshell|3f|12f||1f
Vicia faba|1|<5||
""", cols_are_samples(1, "A", "4-8", "B-E", volume=3, context=2)),
sheet("turned-with-family-header-and-sums", """
|||Gramineae|||Leguminosae||Rosaceae|
Nr.|Obj.|Liter|Hordeum vulgare|Panicum miliaceum|Triticum spelta|Lens culinaris|Pisum sativum|Prunus spinosa|Summe
501|G 12|10|3|140|12|4||1|160
502|G 12|8|1|88|4||1||94
510|G 31|12||12|30||||42
514|H 2|5|9||2|22|3||36
Summe||35|13|240|48|26|4|1|332
""", rows_are_samples("A", 2, "3-6", "D-I", volume="C")),
sheet("oceania-weights", """
Square,Spit,XU,Bag wt (kg),Charcoal (g),Canarium nutshell (g),Canarium NISP,Pandanus drupe (g),Pandanus NISP,Colocasia parenchyma (g),Unidentified endocarp (g)
A,1,A1,10.2,12.10,3.31,40,0.22,3,,0.40
A,2,A2,11.0,20.44,6.02,71,0.61,9,0.03,0.81
A,3,A3,9.8,8.70,1.10,15,,,0.11,0.20
B,1,B1,10.5,4.41,0.90,12,0.10,1,,
""", rows_are_samples("C", 1, "2-5", "E-K", mass="E,F,H,J,K"), sep=","),
)  # fmt: skip
