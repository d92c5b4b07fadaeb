"""Invented sheets, lot thirteen: each with what a person who looks at it reads. Written before any of them was tried."""

# ruff: noqa: E501

from __future__ import annotations

from tests.reading.intake.by_eye.expectations import Sheet, both, cols_are_samples, long, rows_are_samples, sheet

SHEETS: tuple[Sheet, ...] = (
sheet("blocks-down-the-page", """
Table A12.4 Plant remains, Area B (continued over)
Sample|1|2|3|4
Context|14|15|22|23
Volume (L)|10|10|20|15
Taxa||||
Barley grain|2|4|11|
Wheat grain||1|8|3
Glume base|3|12|30|1
Goosefoot seed||2|5|
Total|5|19|54|4

Table A12.4 continued
Sample|5|6|7|8
Context|31|32|40|41
Volume (L)|5|10|10|20
Taxa||||
Barley grain|1||7|9
Wheat grain|2||3|4
Glume base||1|22|18
Goosefoot seed|1|||3
Rye grain|||2|
Total|4|1|34|34
""", both(cols_are_samples(2, "A", "6-9", "B-E", volume=4, context=3), cols_are_samples(13, "A", "17-21", "B-E", volume=15, context=14))),
sheet("german-many-meta-columns", """
Fundplatz: Musterfeld, Archäobotanische Untersuchung
Probe-Nr.;Befund;Schnitt;Datierung;Probenmenge (l);Holzkohle (ml);Gerste, Körner;Emmer, Körner;Emmer, Spelzenbasen;Einkorn, Spelzenbasen;Getreide indet.;Erbse;Linse;Weißer Gänsefuß;Windenknöterich;Summe;Funddichte (n/l)
P 1;Grube 14;2;LBK;10;15;3;12;104;61;22;1;;14;3;220;22,0
P 2;Grube 14;2;LBK;10;5;1;4;33;18;8;;;2;1;67;6,7
P 5;Pfosten 33;3;LBK;5;;;;2;1;1;;;;;4;0,8
P 7;Grube 41;3;Rössen;20;40;22;8;15;3;40;2;4;33;8;135;6,75
""", rows_are_samples("A", 2, "3-6", "G-O", volume="E", context="B", phase="D"), sep=";"),
sheet("italian-latin-names", """
Sito: Colle Alto - Analisi carpologica
Taxa|US 14|US 22|US 22|US 37|US 51
Campione|C1|C3|C4|C8|C9
Volume (l)|8|10|10|4|12
Cereali|||||
Hordeum vulgare, cariossidi|14|3|7||2
Triticum dicoccum, cariossidi|8|2|1|1|
Triticum dicoccum, basi di gluma|40|12|22||3
Triticum aestivum/durum, cariossidi|2||||1
Leguminose|||||
Vicia faba var. minor|12|30|4||
Lens culinaris|1||3||
Frutti|||||
Vitis vinifera, vinaccioli|4|1||2|12
Olea europaea, endocarpi fr.|1|||+|3
Ficus carica, acheni||12|5||
Totale resti|82|60|42|3|21
""", cols_are_samples(3, "A", "6-9,11-12,14-16", "B-F", volume=4, context=2)),
sheet("presence-by-period", """
Taxon,Common name,Early Neolithic (n=12),Middle Neolithic (n=8),Late Neolithic (n=20)
Triticum dicoccum,emmer,x,x,x
Triticum monococcum,einkorn,x,x,x
Hordeum vulgare,barley,x,,x
Pisum sativum,pea,cf.,x,x
Linum usitatissimum,flax,,,x
Papaver somniferum,poppy,,x,x
Malus sylvestris,crab apple,x,x,x
Corylus avellana,hazel,x,x,x
""", cols_are_samples(1, "A", "2-9", "C-E"), sep=","),
sheet("chinese-flotation", """
单位|分期|土量(升)|粟|黍|水稻|小麦|大豆|狗尾草属|藜属|莎草科|未知
H12①|龙山|12|340|22|3||14|55|8|2|6
H12②|龙山|10|121|8||1|5|20|3||2
H33|龙山|8|44|2|12||1|7|||1
F5柱洞|商|4|3||||||1||
H80|商|22|512|30|1|44|31|102|40|1|11
""", rows_are_samples("A", 1, "2-6", "D-L", volume="C", phase="B")),
sheet("cf-columns-and-marks", """
|Sample 3|Sample 3|Sample 4|Sample 4|Sample 9|Sample 9
|certain|cf.|certain|cf.|certain|cf.
Context|112|112|118|118|140|140
Litres|20|20|10|10|30|30
Avena sativa|4|2|||12|3
Secale cereale|12|4|1||30|
Triticum aestivum s.l.|33|||1|8|2
Vicia faba|1|1|||?|
Agrostemma githago|7|||2|c. 20|
Centaurea cyanus|2||>100||1|
""", cols_are_samples(1, "A", "5-10", "B-G", volume=4, context=3)),
sheet("component-column-per-litre-after", """
Plant remains,Component,S1,S2,S3,S4,,S1/l,S2/l,S3/l,S4/l
,,(10 l),(20 l),(5 l),(30 l),,,,,
CROPS,,,,,,,,,,
Pearl millet,grain,12,33,1,204,,1.2,1.7,0.2,6.8
Pearl millet,involucre,4,8,,31,,0.4,0.4,,1.0
Sorghum,grain,2,,,18,,0.2,,,0.6
Sorghum,spikelet,,,1,9,,,,0.2,0.3
Cowpea,seed,1,4,,2,,0.1,0.2,,0.1
Cotton,seed frag,,12,,1,,,0.6,,0.03
WILD,,,,,,,,,,
Ziziphus,stone,3,1,1,4,,0.3,0.1,0.2,0.1
Portulaca,seed,8,22,,11,,0.8,1.1,,0.4
""", cols_are_samples(1, "A", "4-9,11-12", "C-F", volume=2), sep=","),
sheet("context-rows-family-heads-merged", """
Context|Sample|Vol.|Poaceae||||Fabaceae||Asteraceae|Polygonaceae||Charcoal
|||Hordeum|Triticum|Avena|Cereal frags|Vicia/Lathyrus|Pisum|Anthemis cotula|Rumex|Fallopia convolvulus|> 2mm
201|<1>|10|4|12|2|++|1||8|2|1|+
203|<2>|20|1|3||+|||1|||+
|<3>|20|2|2|1|+||1|||3|++
210|<5>|40|22|61|14|+++|8|2|33|11|7|+++
""", rows_are_samples("B", 2, "3-6", "D-M", volume="C", context="A"), merge=("D1:G1", "H1:I1", "K1:L1", "A4:A5")),
sheet("spanish-ue-fr-and-whole", """
Tabla 2. Restos carpológicos carbonizados
UE|1021||1034||1050||
Muestra|M-3||M-7||M-11||
Volumen (l)|20||12||35||
|ent.|fr.|ent.|fr.|ent.|fr.|Total
Hordeum vulgare|14|3|2||40|12|71
Triticum aestivum/durum|8|||1|22|5|36
Panicum miliaceum|||12||3||15
Vitis vinifera (pepita)|1|4|||2|8|15
Olea europaea (hueso)||6||2|1|11|20
Quercus sp. (cotiledón)|2|9|||1|3|15
Indeterminados|3|12|1|4|8|30|58
""", cols_are_samples(3, "A", "6-12", "B-G", fill=True, context=2)),
sheet("portuguese-long-blanks", """
Sondagem,U.E.,Amostra,Volume (L),Táxon,Tipo de resto,N.º,Peso (g),Estado
1,12,A01,10,Hordeum vulgare,grão,14,0.21,carbonizado
,,,,Triticum aestivum,grão,3,0.04,carbonizado
,,,,Vicia faba,semente,1,0.10,carbonizado
1,15,A02,5,Panicum miliaceum,grão,220,0.33,carbonizado
,,,,Castanea sativa,casca,12,0.8,carbonizado
2,30,A07,20,Vitis vinifera,grainha,8,0.12,carbonizado
,,,,Ficus carica,semente,41,,mineralizado
""", long("C", "E", "2-8", count="G", mass="H", fills=True, volume="D", context="B"), sep=","),
)  # fmt: skip
