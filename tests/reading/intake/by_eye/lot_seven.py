"""Invented sheets, lot seven: each with what a person who looks at it reads. Written before any of them was tried."""

# ruff: noqa: E501

from __future__ import annotations

from tests.reading.intake.by_eye.expectations import Sheet, cells, cols_are_samples, long, rows_are_samples, sheet

SHEETS: tuple[Sheet, ...] = (
sheet("cambridge-like", """
Site: Fen Edge Farm      Trench: all          Table 4: environmental bulk samples
Sample number|1|2|3|6|7|9
Context number|[45]|[47]|[62]|[62]|[88]|[101]
Cut number|[44]|[44]|[60]|[60]|[87]|[100]
Feature type|Pit|Pit|Ditch|Ditch|Well|Kiln
Phase|IA|IA|RB|RB|RB|RB
Sample volume (litres)|10|9|18|16|8|12
Flot fraction examined|100%|100%|50%|100%|100%|25%
Charred plant remains||||||
Triticum spelta glume bases|||+++|++||+++
Triticum sp. grains|+|+|++|+||++
Hordeum sp. grains||+|+|||
Bromus seeds|-|-|+|-|-|++
Waterlogged plant remains||||||
Urtica dioica|||||+++|
Sambucus nigra|||+|+|++|
Ranunculus sceleratus|||||++|
Molluscs|+|+|++|+|+++|-
Key: + 1-10 items, ++ 11-50 items, +++ >50 items
""", cols_are_samples(2, "A", "10-13,15-17", "B-G", volume=7, context=3, phase=6)),
sheet("joad-long", """
id,site_code,trench,context,sample,taxon_group,taxon,common,plant_part,preservation,quantity,unit,method
1,KAL,IV,412,51,cereal,Triticum aestivum,bread wheat,grain,charred,31,n,flotation
2,KAL,IV,412,51,cereal,Hordeum vulgare,barley,grain,charred,12,n,flotation
3,KAL,IV,412,51,wood,Pinus sylvestris,pine,charcoal,charred,4.2,g,flotation
4,KAL,IV,415,52,fruit,Vitis vinifera,grape,pip,mineralised,7,n,hand
5,KAL,V,501,60,cereal,Secale cereale,rye,grain,charred,3,n,flotation
6,KAL,V,501,60,wood,Quercus,oak,charcoal,charred,1.1,g,flotation
""", cells(K2=("51", "Triticum", "n"), K3=("51", "Hordeum", "n"), K4=("51", "Pinus", "g"), K5=("52", "Vitis", "n"), K6=("60", "Secale", "n"), K7=("60", "Quercus", "g")), sep=","),
sheet("sample-cols-with-lf-hf", """
Taxon|FS 10||FS 11||FS 14||Grand total
|LF|HF|LF|HF|LF|HF|
Corylus americana nutshell|3|11||4|1|2|21
Juglans nigra nutshell||30||6||9|45
Vitis sp.|12||4||1||17
Zea mays cupule|44|3|10||6|1|64
Rubus sp.|8||||2||10
""", cols_are_samples(1, "A", "3-7", "B-G", fill=True)),
sheet("spanish", """
Tabla 3. Restos carpológicos
UE|1001|1003|1010|1022
Muestra|M1|M2|M5|M8
Cronología|Ibérico|Ibérico|Romano|Romano
Volumen (litros)|20|25|15|30
Cereales||||
Hordeum vulgare (grano)|120|14|8|2
Triticum aestivum/durum (grano)|30|2|44|9
Triticum dicoccum (base de gluma)|12|1||
Leguminosas||||
Lens culinaris (semilla)|4||1|
Frutales||||
Vitis vinifera (pepita)|2|8|11|40
Ficus carica|||30|12
Total|168|25|94|63
Densidad (r/l)|8.4|1|6.3|2.1
""", cols_are_samples(3, "A", "7-9,11,13-14", "B-E", volume=5, context=2, phase=4)),
sheet("french-rows", """
N° prélèvement;Structure;US;Volume (l);Orge vêtue;Blé nu;Amidonnier;Engrain;Lentille;Pois;Raisin;Chénopode;Indéterminé
P12;Fosse 3;3012;12;40;12;2;;3;;;11;9
P13;Fosse 3;3013;10;22;8;1;1;;;;4;3
P20;Silo 8;3088;20;310;101;12;4;22;9;1;40;31
P31;Foyer 1;3101;5;2;;;;;;4;1;
""", rows_are_samples("A", 1, "2-5", "E-M", volume="D", context="C"), sep=";"),
sheet("counts-by-area-summary", """
Ubiquity and counts by period
|Early Formative (n=12)||Middle Formative (n=20)||Late Formative (n=9)|
|Count|Ubiquity|Count|Ubiquity|Count|Ubiquity
Chenopodium sp.|1204|92|3310|100|804|89
Zea mays|12|25|340|70|511|100
Solanum|4|17|22|30|8|44
Schoenoplectus|88|58|410|85|120|78
""", cols_are_samples(2, "A", "4-7", "B,D,F")),
sheet("two-header-ids-hyphen", """
Plant Taxa|F.3-L.1|F.3-L.2|F.7-L.1|F.9|Total (n)|Total (%)
NUTSHELL|||||
Carya|412|88|20|3|523|71.2
Juglandaceae|12||||12|1.6
Quercus|40|3|9|1|53|7.2
SEEDS|||||
Chenopodium|30|2|1||33|4.5
Polygonum|12||4||16|2.2
Unidentifiable|6|1||2|9|1.2
MAIZE|||||
Cupule|66|4|9||79|10.8
Kernel|8||1||9|1.2
Total|586|98|44|6|734|100
""", cols_are_samples(1, "A", "3-5,7-9,11-12", "B-E")),
sheet("dates-as-ids", """
Sample,Context,Plant,Number
12-3,F12,Rumex,4
12-3,F12,Poa annua,11
12-4,F12,Rumex,2
13-1,F13,Corylus avellana nutshell,30
13-1,F13,Prunus spinosa,1
""", long("A", "C", "2-6", count="D", context="B"), sep=","),
sheet("wide-with-empty-cols", """
Sample||Context||Volume||Wheat||Barley||Oat||Weeds|
1||101||20||4||12||1||30|
2||102||20||||3||||8|
3||110||10||9||22||4||14|
4||114||15||1||2||||5|
""", rows_are_samples("A", 1, "2-5", "G,I,K,M", volume="E", context="C")),
sheet("grid-squares", """
Charred remains, house floor grid
Square|A1|A2|A3|B1|B2|B3
Acorn frags|12|30|4||2|
Chestnut frags|||2|8|19|1
Walnut frags|4|6|||1|
Barnyard millet|140|22||3||9
Foxtail millet|20|||1||
Perilla|8|1||||2
Soil (l)|5|5|4|5|5|3
""", cols_are_samples(2, "A", "3-8", "B-G", volume=9)),
)  # fmt: skip
