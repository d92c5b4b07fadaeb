"""Invented sheets, lot twelve: each with what a person who looks at it reads. Written before any of them was tried."""

# ruff: noqa: E501

from __future__ import annotations

from tests.reading.intake.by_eye.expectations import Sheet, cols_are_samples, long, rows_are_samples, sheet

SHEETS: tuple[Sheet, ...] = (
sheet("developer-report-many-rows-above", """
Table 7: Charred plant remains from Enclosure 2||||||
Sample number||101|102|105|110|
Context||1204|1207|1311|1402|
Cut||1203|1206|1310|1400|
Feature type||Pit|Pit|Posthole|Ditch|
Phase||2|2|3|3|
Vol (l)||40|20|10|30|
Flot vol (ml)||120|45|10|60|
% flot sorted||50|100|100|100|
Charcoal >4mm||+++|++|+|++|
Charcoal <4mm||+++|++|++|++|
Cereal grain||||||
Hordeum vulgare L. (hulled)|hulled barley|12|4||2|
Triticum dicoccum/spelta|emmer/spelt wheat|40|c.50|1|<5|
Triticum sp.|wheat|3|||1|
Cereal indet.|indeterminate cereal|22|18|2|5|
Cereal chaff||||||
T. spelta L. glume base|spelt wheat|102|33||1|
T. dicoccum/spelta glume base|emmer/spelt wheat|210|61|1|2|
Avena sp. awn fragment|oat|++|+|||
Wild plants||||||W
Chenopodium album L.|fat-hen|4|2||1|CD
Rumex sp.|docks|1+2f|||3|CG
Bromus secalinus/hordeaceus|brome|19|7||2|C
Total items||403|175|4|17|
Items per litre||10.1|8.8|0.4|0.6|
Key: C = cultivated ground, D = disturbed, G = grassland, W = habitat||||||
""", cols_are_samples(2, "A", "10-11,13-16,18-20,22-24", "C-F", volume=7, context=3, phase=6)),
sheet("dutch-periods-as-heads", """
Bijlage 4. Verkoolde zaden en vruchten
vondstnummer;12;15;33;41;44
spoor;3;7;22;30;30
structuur;kuil;paalkuil;waterput;greppel;greppel
periode;MIJZT;MIJZT;ROM;ROM;ROM
volume (l);5;5;10;5;3
Cultuurgewassen;;;;;
Hordeum vulgare;12;3;104;.;2
Triticum dicoccum;5;.;33;1;.
Triticum dicoccum, kafbasis;22;1;75;.;.
Panicum miliaceum;3;.;8;.;.
Linum usitatissimum;.;.;2;.;.
Akkeronkruiden;;;;;
Chenopodium album;18;4;33;2;1
Persicaria lapathifolia;7;2;10;.;1
Spergula arvensis;1;.;4;.;.
Graslandplanten;;;;;
Plantago lanceolata;.;.;2;.;.
Rumex acetosella;5;.;11;1;.
totaal;73;10;282;4;4
""", cols_are_samples(2, "A", "8-12,14-16,18-19", "B-F", volume=6, context=3, phase=5), sep=";"),
sheet("near-east-phases-as-head-row", """
Tell Ashmar: botanical remains by phase||||||||
Phase|Early Bronze I||Early Bronze II|||Middle Bronze||
Locus|L. 12|L. 14|L. 20|L. 21|L. 27|L. 40|L. 41|
Basket|104|110|201|207|233|310|318|
Volume floated (lt)|12|8.5|20|10|14|6|22|
Charcoal wt (g)|3.2|0.8|12|1.1|4|0.3|8.8|
Seed wt (g)|0.41|0.02|1.30|0.11|0.2|0.01|0.66|
Hordeum vulgare grain|30|2|88|12|19|1|44|
H. vulgare rachis|8||22|3|||9|
Triticum dicoccum grain|5||14|1|4||7|
T. dicoccum spikelet fork|41|3|120|7|11|2|30|
Lens culinaris|2|1|9|||1|4|
Vitis vinifera pip|||1|2|||14|
Lolium temulentum type|12||31|8|5||10|
Astragalus sp.|4|2|18|22|1||6|
Unknown 7|1||||3||2|
""", cols_are_samples(3, "A", "6-16", "B-H", massrows="6-7", volume=5, context=3)),
sheet("southwest-pd-fs", """
Appendix F.3. Charred plant remains from flotation samples, Site 5AB.1234
Study Unit,PD No.,FS No.,FT,Volume (L),Cheno-am,Portulaca,Physalis-type,Zea mays cupule,Zea mays kernel,Opuntia (prickly pear),Stipa hymenoides caryopsis,Juniperus scale leaf,Unknown seed,No. of taxa
Structure 1,112,8,2,1.0,44,3,1,12,,,2,x,,6
Structure 1,113,2,2,1.0,8,,,3,1,,,x,1,4
Structure 1,118,11,4,2.0,203,40,5,22,6,1,11,x,3,9
Structure 2,131,3,1,1.0,,,,,,,,x,,1
Midden,150,7,,1.0,17,4,,8,,2,,x,,5
Midden,151,5,,0.5,2,,,1,,,,,,2
Notes: counts are of charred specimens only; x = present.
""", rows_are_samples("C", 2, "3-8", "F-N", volume="E"), sep=","),
sheet("midwest-counts-and-weights-blocks", """
Feature|1||4||9||22||Total|
Zone|A||B||A||C|||
Volume (liters)|10||20||12.5||40||82.5|
|N|Wt (g)|N|Wt (g)|N|Wt (g)|N|Wt (g)|N|Wt (g)
Nutshell||||||||||
Thick-shelled hickory|304|4.11|88|1.02|1021|15.30|33|0.44|1446|20.87
Black walnut|3|0.12|||14|0.71|1|0.03|18|0.86
Acorn|21|0.04|4|0.01|77|0.20|||102|0.24
Total nutshell|328|4.27|92|1.02|1112|16.21|34|0.47|1566|21.97
Seeds||||||||||
Chenopod|12||40||318||8||378|
Maygrass|4||122||56||||182|
Erect knotweed|||2||31||1||34|
Squash rind|5|0.02|||2|0.01|||7|0.03
Total seeds|21||164||407||9||601|
Wood|401|7.20|122|2.04|2033|40.10|98|1.50|2654|50.84
""", cols_are_samples(1, "A", "6-8,11-14,16", "B-I", mass="C,E,G,I", fill=True)),
sheet("japanese-flotation", """
表3 炭化種実同定結果
試料番号,出土遺構,時期,土壌量(L),イネ,アワ,キビ,オオムギ,コムギ,アズキ,タデ属,アカザ属,不明
1,SI01 カマド,古墳後期,5.0,12,103,4,2,,1,8,3,2
2,SI01 床面,古墳後期,3.5,,22,,,,,2,,1
3,SI04 貯蔵穴,奈良,8.0,44,5,2,11,7,,1,12,
4,SK12,平安,2.0,3,,,,1,,,,
5,SD03,平安,10.0,1,2,,1,,,14,6,4
""", rows_are_samples("A", 2, "3-7", "E-M", volume="D", phase="C"), sep=","),
sheet("andean-locus-sector", """
Sector|Locus|Nivel|Contexto|Litros|Zea mays (grano)|Zea mays (coronta)|Phaseolus|Chenopodium quinoa|Solanum tuberosum cf.|Opuntia|Malvaceae|Cactaceae|Total restos
A|1043|3|fogón|6|12|4|1|230|3|8|1|11|270
A|1047|4|piso|10|3|||88||1|2|4|98
A|1050|4|relleno|10|1|1||22|||||24
B|2003|2|basural|8|44|31|6|401|12|22|8|30|554
B|2011|5|ofrenda|2,5|8||2|14||||1|25
""", rows_are_samples("B", 1, "2-6", "F-M", volume="E")),
sheet("museum-export-long-codes", """
OBJ_ID;SITE_CD;TRENCH;CTX_NO;SMP_NO;TAXON_CD;TAXON_NAME;PART_CD;PRES;QTY;QTY_TYPE;WT_G;IDENT_BY;IDENT_DATE
30011;HLM;T1;204;17;HORVUL;Hordeum vulgare;CAR;C;14;E;;AB;12/03/1998
30012;HLM;T1;204;17;TRISPE;Triticum spelta;GLB;C;122;E;;AB;12/03/1998
30013;HLM;T1;204;17;CORAVE;Corylus avellana;NSH;C;33;E;0,71;AB;12/03/1998
30014;HLM;T1;211;18;AVESPP;Avena sp.;CAR;C;2;E;;AB;14/03/1998
30015;HLM;T2;305;22;RUBFRU;Rubus fruticosus agg.;SEE;W;60;E;;CD;02/04/1998
30016;HLM;T2;305;22;SAMNIG;Sambucus nigra;SEE;W;11;E;;CD;02/04/1998
30017;HLM;T2;305;22;URTDIO;Urtica dioica;SEE;W;201;E;;CD;02/04/1998
30018;HLM;T2;309;23;CORAVE;Corylus avellana;NSH;W;4;E;1,02;CD;03/04/1998
""", long("E", "G", "2-9", count="J", mass="L", context="D"), sep=";"),
sheet("journal-supplement-merged", """
Supplementary Table S2. Plant macroremains from the settlement mound||||||||
|||Level V|||Level IV||
|||Pit 12|Hearth 3|Floor 8|Pit 20|Oven 1|Bin 4
|||VS-301|VS-322|VS-340|VS-118|VS-127|VS-140
|||15 L|10 L|22 L|30 L|8 L|5 L
Family|Taxon|Plant part||||||
Poaceae|Triticum monococcum|grain|14|2|5|8||40
|Triticum monococcum|spikelet fork|60|8|22|31|4|12
|Triticum timopheevii-type|glume base|12||4|||3
|Hordeum vulgare var. nudum|grain|6|1||22|12|1
Fabaceae|Lens culinaris|seed|3|||104|2|
|Pisum sativum|seed||||41|1|
|Vicia ervilia|seed|1||1|9||
Cornaceae|Cornus mas|stone|2|||5|1|
Rosaceae|Rubus sp.|seed|||1||1|
|indeterminate|seed|12|4|3|20|7|2
""", cols_are_samples(4, "B", "7-16", "D-I", volume=5, context=3), merge=("A1:I1", "D2:F2", "G2:I2", "A7:A10", "A11:A13", "A15:A16")),
sheet("charcoal-fragments-anthracology", """
Taxons;US 1012;US 1015;US 1020;US 1044;Total;%
Phase;Bronze final;Bronze final;Hallstatt;Hallstatt;;
Type de structure;fosse;foyer;silo;silo;;
Volume (litres);10;8;20;15;;
Quercus f.c.;44;21;102;30;197;56,0
Fagus sylvatica;12;2;8;5;27;7,7
Corylus avellana;3;11;4;;18;5,1
cf. Corylus;1;;;;1;0,3
Maloideae;8;5;22;14;49;13,9
Fraxinus excelsior;;2;31;9;42;11,9
Ecorce;2;1;;;3;0,9
Indéterminés;4;3;6;2;15;4,3
Nombre de fragments;74;45;173;60;352;100
Nombre de taxons;5;5;5;4;;
""", cols_are_samples(1, "A", "5-12", "B-E", volume=4, phase=2), sep=";"),
)  # fmt: skip
