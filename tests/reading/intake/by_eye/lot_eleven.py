"""Invented sheets, lot eleven: each with what a person who looks at it reads. Written before any of them was tried."""

# ruff: noqa: E501

from __future__ import annotations

from tests.reading.intake.by_eye.expectations import Sheet, both, cols_are_samples, long, rows_are_samples, sheet

SHEETS: tuple[Sheet, ...] = (
sheet("hand-typed-list-of-features", """
Archaeobotanical results - Hill Farm pipeline
Plot|Feature|Fill|Env. sample|Vol.|Date|Barley|Spelt/emmer|Free-threshing wheat|Oats|Glume bases|Rachis|Hazel|Peas/beans|Small weed seeds|Large weed seeds|Wood charcoal|Remarks
12|Pit 1204|1205|<3>|40 L|MIA|12|40||2|122|3|4|1|20|11|+++|good assemblage
12|Pit 1210|1211|<4>|40 L|MIA|2|8|||30||||4|2|++|
14|Ditch 1403|1406|<7>|20 L|LIA/RB|1|3|||4||1||2|1|+|
15|SFB 1500|1501|<11>|60 L|Early Saxon|30|2|14|22|1|8|9|2|41|6|+++|mixed
""", rows_are_samples("D", 2, "3-6", "G-Q", volume="E")),
sheet("sample-block-three-columns-each", """
Taxon|Sample 1|||Sample 2|||Sample 3||
|grain|chaff|Σ|grain|chaff|Σ|grain|chaff|Σ
Triticum dicoccum|12|40|52|3|8|11||2|2
Triticum monococcum|2|11|13||1|1|||
Hordeum vulgare|30|4|34|12||12|5||5
Panicum miliaceum|3||3||||80||80
""", cols_are_samples(1, "A", "3-6", "B-C,E-F,H-I", fill=True)),
sheet("inverted-with-total-left", """
,Total,Floor 1,Floor 2,Pit 2a,Pit 2b,Bell pit
Liters,64,12,12,10,10,20
NUTS,,,,,,
Hickory,1204,200,310,88,101,505
Walnut,12,1,4,,2,5
Acorn,88,12,40,6,,30
STARCHY SEEDS,,,,,,
Maygrass,640,40,120,33,47,400
Little barley,55,5,,10,,40
OILY SEEDS,,,,,,
Sunflower,9,1,,,2,6
Sumpweed,21,4,3,2,,12
""", cols_are_samples(1, "A", "4-6,8-9,11-12", "C-G", volume=2), sep=","),
sheet("excavation-db-join", """
ctx_id,ctx_no,smp_no,smp_vol_l,id_date,family,genus,species,cf,element,preserv,n_whole,n_frag,remarks
8812,205,14,20,2019-03-02,Poaceae,Hordeum,vulgare,,grain,charred,14,20,
8812,205,14,20,2019-03-02,Poaceae,Triticum,dicoccum,,glume base,charred,60,,
8812,205,14,20,2019-03-02,Poaceae,Avena,sp.,1,grain,charred,2,,
8815,207,15,10,2019-03-04,Polygonaceae,Rumex,acetosella,,nutlet,charred,5,,
8815,207,15,10,2019-03-04,Betulaceae,Corylus,avellana,,nutshell,charred,,33,
8820,230,22,40,2019-03-09,Rosaceae,Rubus,idaeus,,pip,waterlogged,11,,
""", both(long("C", "G", "2-7", count="L", volume="D"), long("C", "G", "2-7", count="M")), sep=","),
sheet("counts-extrapolated-pairs", """
Taxon,U.2 L.3,,U.2 L.4,,U.5 L.2,
,Counted,Estimated,Counted,Estimated,Counted,Estimated
Setaria italica,120,480,33,33,8,16
Oryza sativa,4,16,,,2,4
Glycine,1,4,2,2,,
Chenopodium,30,120,8,8,11,22
""", cols_are_samples(1, "A", "3-6", "B,D,F", fill=True)),
sheet("mexico-norte", """
Proyecto;Cuadro;Capa;Bolsa;Litros;Maíz (cúpula);Maíz (grano);Frijol;Calabaza;Amaranto;Quelite;Mezquite;Tuna;No identificado;Observaciones
PV;N2E4;III;118;5;22;3;1;;104;12;2;9;4;
PV;N2E4;IV;121;5;8;;;1;40;3;;2;1;carbón abundante
PV;N4E4;III;130;4,5;;1;;;3;;11;30;;
PV;N4E6;II;142;6;2;;;;;;4;;2;
""", rows_are_samples("D", 1, "2-5", "F-N", volume="E"), sep=";"),
sheet("pollen-like-dashes-key-below", """
Sample code|HB1|HB2|HB3|HB4|HB5
Depth below surface (cm)|10-20|20-30|30-40|40-50|50-60
Bulk volume (ml)|2000|2000|1500|2000|1000
Characeae oospores|●|●●|–|–|●
Potamogeton sp.|4|11|–|2|–
Najas marina|–|3|12|8|1
Betula sp. fruit|22|–|1|4|–
Alnus glutinosa cone scale|3|3|–|–|1
Carex (trigonous)|1|8|14|–|–
● = rare; ●● = frequent
""", cols_are_samples(1, "A", "4-9", "B-F")),
sheet("latin-american-freq-columns", """
Taxa,Rasgo 1 (n=3),Rasgo 4 (n=2),Rasgo 9 (n=5),Total NISP,NISP %,Frecuencia
Zea mays,44,12,103,159,56.2,10
Phaseolus vulgaris,2,,8,10,3.5,4
Chenopodium,30,11,60,101,35.7,9
Cucurbita,,1,3,4,1.4,2
Capsicum,1,,8,9,3.2,3
TOTAL,77,24,182,283,100,
""", cols_are_samples(1, "A", "2-6", "B-D"), sep=","),
sheet("year-in-two-rows", """
Season|2011|2011|2012|2012|2013
Sample|S11-04|S11-09|S12-01|S12-22|S13-07
Area|North|North|South|South|South
Deposit|oven|floor|midden|midden|pit
Soil (L)|8|10|20|20|5
Flot (g)|12.2|3.4|60.1|44.9|1.1
Cicer arietinum|3||12|8|
Lathyrus sativus|||40|22|1
Triticum turgidum|30|4|18|9|2
Hordeum vulgare|12|11|60|71|4
Coriandrum sativum||1|||
Identified|45|16|130|110|7
Unidentified|3|1|12|8|0
""", cols_are_samples(2, "A", "7-11,13", "B-F", volume=5)),
sheet("wide-split-by-form", """
Context|Litres|Wheat gr.|Wheat ch.|Barley gr.|Barley ch.|Rye gr.|Rye ch.|Total gr.|Total ch.|Gr.:ch. ratio
C10|20|40|12|10|4|2|1|52|17|3.1
C11|30|4|30|2|11|0|8|6|49|0.1
C15|10|12|2|1|0|1|0|14|2|7.0
C16|15|100|31|40|12|8|2|148|45|3.3
""", rows_are_samples("A", 1, "2-5", "C-H", volume="B")),
)  # fmt: skip
