"""Invented sheets, lot twenty: each with what a person who looks at it reads. Written before any of them was tried."""

# ruff: noqa: E501

from __future__ import annotations

from tests.reading.intake.by_eye.expectations import Sheet, cols_are_samples, long, rows_are_samples, sheet

SHEETS: tuple[Sheet, ...] = (
sheet("supplement-site-phase-stack-authorities", """
Supplementary Table S2. Raw counts of charred macroremains, Arn Hill (invented)
||Site area|North|North|North|South|South
||Chronology|EBA|EBA|MBA|MBA|LBA
||Structure|H1|H1|H4|P12|P15
||SU|110|114|231|402|415
||Sample ID|AH-01|AH-02|AH-05|AH-09|AH-11
||Soil volume (L)|24|18|30|12|20
||N items|78|24|132|28|63
||Items/L|3.3|1.3|4.4|2.3|3.2
Family|Taxon|Plant part|||||
Poaceae|Hordeum vulgare L.|grain|22|8|40|11|19
|Hordeum vulgare L.|rachis segment|3||12||4
|Triticum turgidum subsp. dicoccum (Schrank) Thell.|grain|12|4|21|3|8
|Triticum turgidum subsp. dicoccum (Schrank) Thell.|spikelet base|31|7|44|6|20
|Triticum aestivum L./T. durum Desf.|grain||1|4|2|
Fabaceae|Lens culinaris Medik.|seed|4|2|6|1|8
|Vicia ervilia (L.) Willd.|seed|2|||3|1
Vitaceae|Vitis vinifera L.|pip|1||2|1|
|Vitis vinifera L.|pedicel|||1||
Rubiaceae|Galium aparine L. type|seed|3|2|2|1|3
Indet.||seed||||| 
""", cols_are_samples(6, "B", "11-20", "D-H", volume=7, context=5, phase=3)),
sheet("dot-names-with-part-suffix-r-export", '''
"","sample","trench","feature.type","vol","Zea.mays.kernel","Zea.mays.cupule","Chenopodium.sp.","Phaseolus.vulgaris.cotyledon","Carya.nutshell","Juglans.nigra.nutshell","Unid.seed"
"1","FS101","A","hearth",10,4,22,30,0,12,1,4
"2","FS104","A","pit",8,1,5,11,1,40,0,2
"3","FS110","B","pit",12,0,3,102,0,9,3,8
"4","FS111","B","midden",9.5,8,41,7,2,66,0,5
'''.replace('"', ""), rows_are_samples("B", 1, "2-5", "F-L", volume="E"), sep=","),
sheet("spanish-report-muestra-columnas", """
Yacimiento: Cerro Imaginario;;;;;;
Muestra nº;;1;2;3;4;Total
Fase;;I;I;II;II;
Contexto;;UE 103;UE 110;UE 201;UE 204;
Litros;;20;15,5;30;12;77,5
Especie;Resto;;;;;
CEREALES;;;;;;
Hordeum vulgare;cariópside;14;3;40;2;59
Triticum aestivum/durum;cariópside;22;11;31;;64
Triticum sp.;fragmento;8;2;12;1;23
LEGUMINOSAS;;;;;;
Vicia faba;semilla;1;;3;;4
Lens culinaris;semilla;2;1;;1;4
FRUTALES;;;;;;
Olea europaea;hueso;3;;8;2;13
Vitis vinifera;semilla;4;1;;;5
MALAS HIERBAS;;;;;;
Lolium sp.;cariópside;6;;5;2;13
Malva sp.;semilla;1;1;2;;4
Total restos;;61;19;101;8;189
Densidad (restos/litro);;3,05;1,23;3,37;0,67;2,44
""", cols_are_samples(2, "A", "8-10,12-13,15-16,18-19", "C-F", volume=5, context=4, phase=3), sep=";"),
sheet("excel-two-line-names-feature-blocks", """
|Feature 7|Feature 7|Feature 7|Feature 12|Feature 12|Feature 19
|Zone A|Zone B|Zone C|N 1/2|S 1/2|
Flot Sample|7-1|7-2|7-3|12-1|12-2|19-1
Vol. (liters)|10.0|10.0|9.5|8.0|8.0|4.0
NUTSHELL (ct)||||||
Hickory (Carya spp.)|102|88|31|4|12|1
Black walnut (Juglans nigra)|3|8||1||
Acorn (Quercus spp.)|12|4|1||2|
CULTIGENS (ct)||||||
Maize kernel|4|2||12|8|
Maize cupule|22|18|3|40|31|2
Common bean|||1|1||
Squash rind|2|1||||
STARCHY SEEDS (ct)||||||
Chenopod|30|12|4|8|1|
Maygrass|104|66|12|3||
Erect knotweed|4|1||||
Little barley||2||||
OTHER SEEDS (ct)||||||
Grape|1||2|1||1
Sumac|3|4||||
Unidentifiable|12|8|3|4|2|1
""", cols_are_samples(3, "A", "6-8,10-13,15-18,20-22", "B-G", volume=4)),
sheet("long-table-site-report-with-weights", """
Site|Unit|Level|Feature|Flot #|Liters|Fraction|Material|Taxon|Common|Count|Weight (g)
11X4|N100E50|3|F2|14|9|HF|Nutshell|Carya sp.|hickory|44|1.20
11X4|N100E50|3|F2|14|9|LF|Nutshell|Carya sp.|hickory|12|0.21
11X4|N100E50|3|F2|14|9|LF|Seed|Chenopodium berlandieri|goosefoot|31|
11X4|N100E52|4|F5|15|10|HF|Wood|Quercus sp.|oak|20|0.88
11X4|N100E52|4|F5|15|10|LF|Seed|Phalaris caroliniana|maygrass|7|
11X4|N102E50|3||16|10|LF|Cob|Zea mays|maize cupule|3|0.02
""", long("E", "I", "2-7", count="K", mass="L", volume="F")),
sheet("presence-by-phase-with-legend-left", """
Legend: ● present; ○ cf.; – absent|||||
Taxon|Phase 1|Phase 2|Phase 3|Phase 4|
Hordeum vulgare|●|●|●|–|
Triticum dicoccum|●|●|–|–|
Triticum aestivum|–|○|●|●|
Pisum sativum|–|●|●|○|
Linum usitatissimum|–|–|●|●|
Papaver somniferum|–|–|–|●|
""", lambda grid: (
    {f"{'ABCDE'[c]}{r}": (grid[1][c], grid[r - 1][0], "x")
     for r in range(3, 9) for c in range(1, 5) if grid[r - 1][c] != "–"},
    {},
)),
sheet("phytolith-free-charcoal-rows-and-percent-rows", """
Sample;Layer;Juniperus;Pinus;Pistacia;Quercus evergreen;Quercus deciduous;Rhamnus;Indet. conifer;Indeterminable;Total
AC1;7;22;4;3;12;;1;5;8;55
%;;40.0;7.3;5.5;21.8;;1.8;9.1;14.5;100
AC2;7;31;;8;20;2;;4;5;70
%;;44.3;;11.4;28.6;2.9;;5.7;7.1;100
AC5;9;12;1;1;40;8;3;;10;75
%;;16.0;1.3;1.3;53.3;10.7;4.0;;13.3;100
""", rows_are_samples("A", 1, "2,4,6", "C-J", context="B"), sep=";"),
sheet("ratio-of-whole-and-frags-slash-key", """
Table 5. Cereal and weed remains (whole/fragments)
Context|12|14|15|20
Sample|<101>|<102>|<104>|<110>
Volume L|10|10|20|8
Wheat grain|4/12|1/3|22/40|0/2
Barley grain|2/5|/1|8/11|1/
Rye grain|||1/1|
Vetch|1/|2/2||
Hazelnut shell|/31|/8|/12|/4
Note: numbers before the stroke are whole items, after it fragments.
""", cols_are_samples(3, "A", "5-9", "B-E", volume=4, context=2)),
sheet("portuguese-carvoes-e-sementes", """
Amostra,UE,Volume (L),Fase,Triticum aestivum/durum,Hordeum vulgare,Secale cereale,Panicum miliaceum,Vicia faba var. minor,Castanea sativa,Quercus sp. (bolota),Vitis vinifera,Indeterminado,Total
A1,12,10,Romano,12,8,,3,1,,2,1,4,31
A2,15,10,Romano,4,3,,,2,1,8,,2,20
A3,22,20,Medieval,31,12,40,22,,3,,2,9,119
A4,27,15,Medieval,8,1,55,104,1,2,,,11,182
Total,,55,,55,24,95,129,4,6,10,3,26,352
""", rows_are_samples("A", 1, "2-5", "E-M", volume="C", context="B", phase="D"), sep=","),
sheet("samples-down-two-taxon-header-rows-merged", """
||||Cereals|||Chaff||Pulses||Wild||
Smp|Cxt|Phase|Ltr|Hordeum|Triticum|Cereal indet|Gl. base|Rachis|Lens|Pisum|Bromus|Rumex|Chenopodium
1|1004|2|10|12|4|8|22|3|1||4|2|8
2|1010|2|10|3|1|4|6|||1|2||1
5|1033|3|20|31|22|40|104|12|4|2|18|6|33
8|1050|3|5||2|3|8||||1||2
""", rows_are_samples("A", 2, "3-6", "E-N", volume="D", context="B", phase="C")),
sheet("uncharred-in-own-rows-and-modern-note", """
Sample,1,2,3,4
Feature,Pit 4,Pit 9,Ditch 2,Ditch 2
Sediment processed (l),12,14,30,30
Charred,,,,
Triticum spelta glume base,12,3,44,18
Hordeum sp. grain,2,1,8,3
Corylus avellana nutshell fragment,1,8,,2
Uncharred,,,,
Sambucus nigra,30,12,4,104
Fumaria officinalis,2,,8,1
Chenopodium album,12,4,,2
Mineralised,,,,
Prunus domestica ssp. insititia,,1,,
Faecal concretions,,+,,
""", cols_are_samples(1, "A", "5-7,9-11,13", "B-E", volume=3), sep=","),
sheet("swiss-lake-with-units-per-column", """
Probe|||A1|A1|B3|B3|C7|C7
Volumen ml|||250|250|500|500|250|250
Art|Resttyp|Erh.|n|n/l|n|n/l|n|n/l
Papaver somniferum|Same|sub|120|480|300|600|44|176
Linum usitatissimum|Same|sub|12|48|40|80|8|32
Linum usitatissimum|Kapselsegment|sub|33|132|102|204|12|48
Triticum dicoccum|Spelzenbasis|verk|4|16|22|44||
Malus sylvestris|Kern|sub|8|32|3|6|2|8
Rubus fruticosus agg.|Steinkern|sub|22|88|31|62|14|56
""", cols_are_samples(1, "A", "4-9", "D,F,H", volume=2)),
)  # fmt: skip
