"""Invented sheets, lot fourteen: each with what a person who looks at it reads. Written before any of them was tried."""

# ruff: noqa: E501

from __future__ import annotations

from tests.reading.intake.by_eye.expectations import (
    Sheet,
    both,
    cols_are_samples,
    listed,
    long,
    rows_are_samples,
    sheet,
)

SHEETS: tuple[Sheet, ...] = (
sheet("context-headings-carry-litres", """
Charred remains by context
Context 203, 20 litres|||
Species|Part|No.|Wt (g)
Triticum spelta|grain|12|0.10
Triticum spelta|glume base|40|0.02
Avena sp.|grain|3|0.01
Context 207, 10 litres|||
Species|Part|No.|Wt (g)
Hordeum vulgare|grain|4|0.05
Corylus avellana|nutshell|22|0.61
Context 311, 40 litres|||
Species|Part|No.|Wt (g)
Triticum spelta|glume base|8|0.01
Rumex sp.|nutlet|2|
Bromus sp.|grain|5|0.02
""", both(
    listed("203", "A", "4-6", count="C", mass="D", volume="20"),
    listed("207", "A", "9-10", count="C", mass="D", volume="10"),
    listed("311", "A", "13-15", count="C", mass="D", volume="40"),
)),
sheet("waterlogged-scale-with-key", """
Site code: RVR19. Waterlogged plant remains from the well
Sample,4,5,6,7
Context,(1034),(1035),(1036),(1040)
Depth (m),2.1-2.2,2.2-2.3,2.3-2.4,2.6
Sample size (L),1,1,1,0.5
Taxon,,,,
Ranunculus acris/repens/bulbosus,2,1,2,3
Ranunculus subg. Batrachium,,1,3,4
Urtica dioica,3,3,2,1
Stellaria media,1,,1,
Sambucus nigra,1,1,,
Rubus fruticosus agg.,2,,1,
Juncus spp.,,4,4,5
Lemna sp.,,,5,5
Key: 1 = 1-5 items; 2 = 6-25; 3 = 26-100; 4 = 101-500; 5 = >500
""", cols_are_samples(2, "A", "7-14", "B-E", volume=5, context=3), sep=","),
sheet("field-school-feature-by-level", """
Site 8XX123 Flotation Results
Unit|Level|Feature|Bag #|Liters|Hickory ct|Hickory wt|Acorn ct|Acorn wt|Maize kernel ct|Maize kernel wt|Maize cupule ct|Maize cupule wt|Chenopod|Maypop|Persimmon|Bedstraw|UID seed|Wood wt
N100E50|3|12|201|10|44|0.61|12|0.02|3|0.05|14|0.06|22||1|2|4|3.20
N100E50|4|12|204|10|30|0.40|||1|0.01|9|0.04|8|1|||2|2.11
N102E50|3|14|210|8.5|101|1.50|3|0.01|||2|0.01|1||||1|5.02
N104E52|2||218|10|4|0.05|||||||3|||1||0.80
""", rows_are_samples("D", 2, "3-6", "F-S", mass="G,I,K,M,S", volume="E")),
sheet("german-latin-two-columns", """
Tab. 3: Verkohlte Pflanzenreste, Siedlung Beispielhausen
||Befund|2|2|7|19|19
||Probe|1|2|1|1|3
||Vol. (l)|10|10|8|10|12
wiss. Name|dt. Name|Resttyp|||||
Getreide|||||||
Hordeum vulgare|Gerste|Korn|12|3|1||4
Triticum dicoccon|Emmer|Korn|5|1|||2
Triticum dicoccon|Emmer|Spelzenbasis|40|12|2|1|11
Triticum monococcum|Einkorn|Spelzenbasis|22|8||1|3
Cerealia indet.|Getreide|Korn|30|9|4|2|8
Hülsenfrüchte|||||||
Pisum sativum|Erbse|Same|1|||4|
Unkräuter|||||||
Bromus secalinus|Roggentrespe|Korn|8|2||1|3
Chenopodium album|Weißer Gänsefuß|Same|14|3|8|2|
Summe Reste||||||||
""", cols_are_samples((2, 3), "A", "7-11,13,15-16", "D-H", volume=4, context=2)),
sheet("wide-export-codes-legend-below", """
SmpNo;Ctx;Vol_L;HORVUL;TRIDIC;TRISPE;AVESAT;SECCER;CORAVE;CHEALB;RUMCRI
1001;12;40;3;12;4;;1;22;8;1
1002;12;40;1;4;2;1;;3;2;
1003;15;20;;;;;;1;14;3
1004;22;10;30;2;;8;12;;1;
1005;22;10;12;1;;4;22;;;2

HORVUL;Hordeum vulgare;;;;;;;;;
TRIDIC;Triticum dicoccum;;;;;;;;;
TRISPE;Triticum spelta;;;;;;;;;
AVESAT;Avena sativa;;;;;;;;;
SECCER;Secale cereale;;;;;;;;;
CORAVE;Corylus avellana;;;;;;;;;
CHEALB;Chenopodium album;;;;;;;;;
RUMCRI;Rumex crispus;;;;;;;;;
""", rows_are_samples("A", 1, "2-6", "D-K", volume="C", context="B"), sep=";"),
sheet("journal-period-columns-n-and-percent", """
Table 2. Summary of carbonized plant remains by phase.
Taxon,Phase I,,Phase II,,Phase III,
No. of samples,12,,8,,22,
Volume (l),240,,110,,405,
,n,%,n,%,n,%
Hordeum vulgare,120,40.0,33,30.0,410,51.3
Triticum aestivum,90,30.0,44,40.0,200,25.0
Lens culinaris,30,10.0,11,10.0,90,11.3
Vitis vinifera,60,20.0,22,20.0,100,12.5
Total,300,100,110,100,800,100
""", cols_are_samples(2, "A", "6-9", "B,D,F", volume=4), sep=","),
sheet("wood-charcoal-hand-picked-long", """
Sample|Context|Feature|Frags >4mm examined|Taxon|Common name|Fragments|Weight g|Rings|Comments
7|104|Hearth|50|Quercus sp.|oak|31|4.12|wide|heartwood
7|104|Hearth|50|Corylus avellana|hazel|12|1.01|narrow|roundwood
7|104|Hearth|50|Prunus sp.|blackthorn/cherry|7|0.40||
9|112|Pit|25|Fraxinus excelsior|ash|20|2.55|wide|
9|112|Pit|25|Alnus/Corylus|alder/hazel|5|0.31||poor
12|130|Kiln|100|Betula sp.|birch|88|9.90|narrow|
12|130|Kiln|100|indet.|indeterminate|12|0.70||vitrified
""", long("A", "E", "2-8", count="G", mass="H", context="B")),
sheet("rows-are-taxa-totals-first-two-header-rows", """
||Grand|Pit A||Pit B||
Plant|Part|Total|Upper|Lower|Upper|Middle|Lower
Common bean|cotyledon|12|3|4|||5
Maize|cob fragment|103|22|31|10|18|22
Maize|kernel|45|12|8|5|9|11
Squash|rind|8|2|||4|2
Sunflower|achene|11||1|6|4|
Tobacco|seed|21|2|3|4|12|
""", cols_are_samples((1, 2), "A", "3-8", "D-H", fill=True)),
sheet("french-us-rows-with-two-name-rows", """
Site;US;Prélèvement;Volume (L);Céréales;;;;Légumineuses;;Fruits;;Total
;;;;Orge vêtue;Blé nu;Amidonnier;Millet;Lentille;Fève;Vigne;Figue;
;;;;caryopses;caryopses;bases de glume;caryopses;graines;graines;pépins;akènes;
ZAC;1003;P1;10;22;12;4;1;3;;1;12;55
ZAC;1007;P2;8,5;4;8;;;;1;;3;16
ZAC;1012;P3;20;102;41;31;22;12;4;8;101;321
ZAC;1020;P4;5;1;;;;;;;2;3
""", rows_are_samples("C", 2, "4-7", "E-L", volume="D", context="B"), sep=";"),
sheet("sample-columns-with-total-and-notes-column", """
Botanical inventory||||||
Taxa \\ Sample|F-1|F-2|F-3|F-5|SUM|Remarks
Litres|5|5|10|7||
Heavy residue (g)|120|88|340|210||
Olea europaea, stone frags|41|12|88|3|144|mostly <2mm
Vitis vinifera, pips|12|3|22||37|
Vitis vinifera, pedicels|2||4||6|
Ficus carica, nutlets|88|102|14|1|205|some mineralised
Triticum durum/aestivum, grains|4||12|2|18|
Hordeum sp., rachis|1||3||4|
Lolium sp.|3|8|14||25|
Indeterminate|2|3|8|1|14|
""", cols_are_samples(2, "A", "5-12", "B-E", volume=3)),
)  # fmt: skip
