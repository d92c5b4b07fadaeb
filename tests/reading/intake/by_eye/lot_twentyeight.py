"""Invented sheets, lot twenty-eight: each with what a person reads in it. Written before any of them was tried."""

# ruff: noqa: E501

from __future__ import annotations

from tests.reading.intake.by_eye.expectations import Sheet, cols_are_samples, long, rows_are_samples, sheet

SHEETS: tuple[Sheet, ...] = (
sheet("supplement-xlsx-house-by-house", """
Supplementary Data 1. Archaeobotanical dataset (invented)
House|H1|H1|H1|H3|H3|H7
Context|hearth|floor|pit|hearth|floor|pit
Sample code|H1-01|H1-02|H1-05|H3-01|H3-04|H7-02
Sample volume (L)|10|12|8|10|10|15
Sample processed (%)|100|100|50|100|25|100
CEREALS||||||
Triticum monococcum grain|12|4|33|8|1|2
Triticum monococcum glume base|44|31|104|22|8|6
Triticum dicoccum grain|3|1|8|2||
Triticum dicoccum glume base|12|8|40|4|2|1
Hordeum vulgare grain|8|2|12|1|3|
LEGUMES||||||
Lens culinaris seed|4||22|1||8
Pisum sativum seed|1||3|||
WILD PLANTS||||||
Chenopodium album seed|102|31|12|204|44|8
Physalis alkekengi seed|3|1||||
Cornus mas fruit stone||1|2|||4
Sambucus ebulus seed|2|||8|1|
Total|191|79|236|250|59|29
Density (items/L)|19.1|6.6|29.5|25.0|5.9|1.9
""", cols_are_samples(4, "A", "8-12,14-15,17-20", "B-G", volume=5)),
sheet("thesis-appendix-csv-wide-with-codes", """
SampleID,Site,Trench,Context,ContextType,Phase,VolL,FlotMl,HORDEUM VULGARE GRAIN,HORDEUM RACHIS,TRITICUM DICOCCUM GRAIN,T. DICOCCUM GLUME BASE,CEREAL INDET GRAIN,LENS CULINARIS,LATHYRUS SP.,LOLIUM SP.,GALIUM SP.,INDET WILD SEED
KM101,KM,T1,1004,pit,2a,20,45,12,3,8,44,22,4,1,12,3,8
KM102,KM,T1,1009,floor,2a,15,20,3,,1,8,4,,,2,1,3
KM110,KM,T2,2003,oven,2b,10,110,33,8,12,104,61,2,3,31,8,12
KM115,KM,T2,2010,midden,3,40,60,8,1,3,22,12,8,4,18,4,9
""", rows_are_samples("A", 1, "2-5", "I-R", volume="G", context="D", phase="F"), sep=","),
sheet("us-report-table-by-feature-with-subtotals", """
Table 12. Botanical Remains from Feature Contexts
Taxon|Fea. 2|Fea. 5|Fea. 9|Fea. 14|Total
Liters|20|10|35|8|73
Nutshell|||||
Hickory|102|44|301|12|459
Black walnut|3|1|12||16
Acorn|22|8|31|1|62
Subtotal|127|53|344|13|537
Cultigens|||||
Maize kernel|12|4|33||49
Maize cupule|88|22|204|3|317
Squash rind|1||2||3
Subtotal|101|26|239|3|369
Seeds|||||
Chenopod|31|12|104|4|151
Maygrass|12|2|44||58
Knotweed|4||8|1|13
Bedstraw|2|1|3||6
Unidentified|8|3|12|2|25
Subtotal|57|18|171|7|253
Total|285|97|754|23|1159
""", cols_are_samples(2, "A", "5-7,10-12,15-19", "B-E", volume=3)),
sheet("spanish-supplement-anthracology-pct-beside", """
Taxón;UE 12;;UE 15;;UE 20;
;n;%;n;%;n;%
Quercus ilex/coccifera;44;44,0;31;38,8;12;24,0
Quercus caducifolio;12;12,0;8;10,0;4;8,0
Pinus halepensis;22;22,0;33;41,3;22;44,0
Olea europaea;8;8,0;2;2,5;8;16,0
Arbutus unedo;4;4,0;;;1;2,0
Indeterminada;10;10,0;6;7,5;3;6,0
Total;100;100;80;100;50;100
""", cols_are_samples(1, "A", "3-8", "B,D,F"), sep=";"),
sheet("community-project-simple-list", """
Sample,What,How many,Charred?,Notes
1,wheat grain,12,yes,
1,barley grain,3,yes,
1,elder seed,8,no,modern?
2,hazelnut shell,4,yes,fragments
2,wheat grain,1,yes,
3,pea,2,yes,
3,bramble seed,5,no,
""", long("A", "B", "2-8", count="C"), sep=","),
sheet("british-commercial-two-phases-with-key-top", """
Key: + = <5 items, ++ = 5-25, +++ = >25||||||
Phase|1|1|1|2|2|2
Feature|Ditch 5|Ditch 5|Pit 9|Pit 31|Pit 33|Oven 40
Context|6|7|10|32|34|41
Sample|1|2|3|4|5|6
Vol. bulk (l)|40|40|20|20|20|10
Vol. flot (ml)|10|15|40|5|30|250
Cereal grain|+|+|++|-|++|+++
Cereal chaff|-|+|+++|-|+|+++
Weed seeds|+|-|++|+|++|+++
Nutshell|-|-|+|++|-|-
Charcoal >2mm|+|++|++|+|+++|+++
Molluscs|++|+|-|-|-|-
""", cols_are_samples(5, "A", "8-12", "B-G", volume=6, context=4, phase=2)),
sheet("italian-tomba-offerte", """
Tomba;Campione;Vol. terra (l);Vitis vinifera (vinacciolo);Ficus carica (achenio);Olea europaea (endocarpo);Pinus pinea (squama);Pinus pinea (guscio frag.);Phoenix dactylifera (seme);Triticum sp. (cariosside);Lens culinaris;Pane/focaccia (frag.);Indeterminati
T12;1;5;33;104;12;8;44;;3;2;4;12
T12;2;5,5;8;22;4;1;12;1;;;1;3
T15;3;4;;1;1;;3;;12;8;;5
T20;4;6;102;301;2;12;61;2;1;;12;8
""", rows_are_samples("B", 1, "2-5", "D-M", volume="C"), sep=";"),
sheet("lab-xlsx-three-head-rows-with-merged-crops", """
|||Cereals|||Pulses||Wild||
Sample|Context|Volume|Barley|Wheat|Wheat|Lentil|Pea|Ryegrass|Goosefoot|Bedstraw
||l|grain|grain|glume base|seed|seed|caryopsis|seed|seed
31|204|10|12|4|33|2|1|8|44|3
32|207|12|3|1|12|||2|12|1
35|220|8|22|8|104|4|2|31|61|8
41|231|20|1||2|||1|8|
""", rows_are_samples("A", 2, "4-7", "D-K", volume="C", context="B"), merge=("D1:F1", "G1:H1", "I1:K1")),
sheet("open-science-tidy-with-units-and-ids", """
occurrence_id,event_id,scientific_name,identification_qualifier,organism_part,preservation,organism_quantity,organism_quantity_type,sample_size_value,sample_size_unit,locality
occ1,ev1,Hordeum vulgare,,grain,charred,33,items,10,litre,Area 1
occ2,ev1,Triticum dicoccum,cf.,grain,charred,2,items,10,litre,Area 1
occ3,ev1,Triticum dicoccum,,glume base,charred,104,items,10,litre,Area 1
occ4,ev2,Vitis vinifera,,seed,mineralised,8,items,12,litre,Area 2
occ5,ev2,Ficus carica,,achene,mineralised,301,items,12,litre,Area 2
occ6,ev3,Olea europaea,,fruit stone,charred,4,items,8,litre,Area 2
""", long("B", "C", "2-7", count="G"), sep=","),
sheet("pit-series-by-depth-with-weights-of-charcoal", """
Pit 204||||
Depth from top (cm)|0-20|20-40|40-60|60-80
Sample|204a|204b|204c|204d
Litres|10|10|10|6
Charcoal weight (g)|1.2|3.4|22.0|8.1
Emmer grain|3|12|204|31
Emmer glume bases|12|31|88|12
Barley grain|1|4|33|8
Hazelnut shell|8|2|1|
Crab apple pips||1|12|4
Sloe stones|1|||1
""", cols_are_samples(3, "A", "5-11", "B-E", volume=4, massrows="5")),
sheet("norwegian-liste-nedover", """
Funn nr;Kontekst;Prøvetype;Volum (l);Art;Del;Antall;Merknad
1;A120;makro;4;Hordeum vulgare;korn;12;
1;A120;makro;4;Avena sp.;korn;3;
1;A120;makro;4;Stellaria media;frø;22;
2;A131;makro;5;Hordeum vulgare;korn;44;godt bevart
2;A131;makro;5;Corylus avellana;skall;2;
3;A140;makro;2,5;Chenopodium album;frø;102;
""", long("A", "E", "2-7", count="G", volume="D", context="B"), sep=";"),
sheet("zonation-with-grand-totals-and-nisp", """
,NW quad,NE quad,SW quad,SE quad,NISP,% NISP
Soil floated (L),12,10,14,8,44,
Triticum spelta,31,12,44,3,90,31.8
Hordeum vulgare,8,4,12,1,25,8.8
Avena sp.,2,1,4,,7,2.5
Bromus sp.,22,18,61,4,105,37.1
Vicia/Lathyrus,4,2,8,1,15,5.3
Rumex sp.,3,1,12,,16,5.7
Poaceae,8,4,12,1,25,8.8
N,78,42,153,10,283,100
""", cols_are_samples(1, "A", "3-9", "B-E", volume=2), sep=","),
)  # fmt: skip
