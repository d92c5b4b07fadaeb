"""Invented sheets, lot two: each with what a person who looks at it reads. Written before any of them was tried."""

# ruff: noqa: E501

from __future__ import annotations

from tests.reading.intake.by_eye.expectations import Sheet, both, cells, cols_are_samples, long, rows_are_samples, sheet

SHEETS: tuple[Sheet, ...] = (
sheet("side-pairs", """
Sample 1 (Hearth)||Sample 2 (Pit)||Sample 3 (Floor)|
Taxon|n|Taxon|n|Taxon|n
Zea mays kernel|12|Carya sp. nutshell|55|Zea mays cupule|3
Zea mays cupule|40|Quercus sp. nutshell|4|Chenopodium sp.|11
Chenopodium sp.|8|Zea mays cupule|17|Rhus sp.|1
Phaseolus vulgaris|1|Polygonum sp.|2||
""", cells(B3=("1", "Zea mays", "n"), B4=("1", "Zea mays", "n"), B5=("1", "Chenopodium", "n"), B6=("1", "Phaseolus", "n"), D3=("2", "Carya", "n"), D4=("2", "Quercus", "n"), D5=("2", "Zea mays", "n"), D6=("2", "Polygonum", "n"), F3=("3", "Zea mays", "n"), F4=("3", "Chenopodium", "n"), F5=("3", "Rhus", "n"))),
sheet("rows-n-g", """
Sample,Context,Volume (l),Carya nutshell,,Zea mays kernel,,Zea mays cupule,,Wood charcoal
,,,n,g,n,g,n,g,g
1,F1-A,10,120,2.40,4,0.06,33,0.30,12.5
2,F1-B,10,66,1.10,,,12,0.08,4.4
3,F7,8,310,6.02,11,0.12,90,0.75,22.9
4,F9,12,,,1,0.01,2,0.01,0.8
""", rows_are_samples("A", 1, "3-6", "D-J", mass="E,G,I,J", fill=True, volume="C", context="B"), sep=","),
sheet("three-row-taxa", """
|||Poaceae|||Fabaceae||Chenopodiaceae
|||Hordeum|Triticum|Triticum|Lens|Vicia|Chenopodium
Sample|Phase|Litres|vulgare|aestivum|dicoccum|culinaris|ervilia|album
22|II|10|4|1|20||2|6
23|II|12|6||31|1||2
31|III|9|1|14|2|6|8|
34|III|15||40|3|11|2|19
""", rows_are_samples("A", 2, "4-7", "D-I", volume="C", phase="B")),
sheet("sieve-rows", """
Sample No|Litres|Mesh (mm)|Hordeum grain|Triticum grain|Glume base|Chenopodium|Poaceae small
S1|20|4|12|3|||
S1|20|2|30|9|4||1
S1|20|1|1||55|3|22
S1|20|0.5|||18|140|67
S2|15|4|2||||
S2|15|2|11|1|||
S2|15|1|||9|2|5
S2|15|0.5||||31|12
""", rows_are_samples("A", 1, "2-9", "D-H", volume="B")),
sheet("site-blocks", """
SITE A: Low Barrow
Taxon|A1|A2|A3
Hordeum vulgare|3|8|1
Triticum spelta glume base|14|40|
Corylus avellana nutshell|2||1

SITE B: Mill Field
Taxon|B1|B2|B3|B4
Hordeum vulgare|11|2||4
Secale cereale|5|1|30|9
Centaurea cyanus|||3|1
""", both(cols_are_samples(2, "A", "3-5", "B-D"), cols_are_samples(8, "A", "9-11", "B-E"))),
sheet("presence", """
Period|EBA|EBA|MBA|LBA|IA
Sample|TS1|TS4|TS7|TS9|TS12
Hordeum vulgare (hulled)|x|x|x||x
Triticum dicoccum|x||x|x|
Triticum dicoccum glume base||x|x||
Lens culinaris||x|||x
Vitis vinifera|||x|x|x
Olea europaea||||x|x
Ficus carica||x||x|x
""", cols_are_samples(2, "A", "3-9", "B-F", phase=1)),
sheet("n-pct", """
Table 3. Macrobotanical remains, Structure 2
|Lot 14||Lot 15||Lot 22||Total|
Taxon|N|%|N|%|N|%|N|%
Zea mays cupule|30|60.0|12|40.0|5|25.0|47|47.0
Zea mays kernel|10|20.0|3|10.0|5|25.0|18|18.0
Amaranthus sp.|5|10.0|12|40.0|8|40.0|25|25.0
Yucca sp.|5|10.0|3|10.0|2|10.0|10|10.0
Total|50|100|30|100|20|100|100|100
""", cols_are_samples(2, "A", "4-7", "B,D,F")),
sheet("unit-rows", """
Site|||41ZZ7|41ZZ7|41ZZ7|41ZZ9
Unit|||N100 E50|N100 E50|N102 E48|TU 3
Level|||4|5|3|2
Depth (cmbd)|||40-50|50-60|30-40|20-30
FS no.|||201.3|202.1|219.4|77.2
Volume (L)|||5.0|6.5|5.0|4.0
Code|Taxon|Common name||||
CARY|Carya sp.|hickory|41|12|9|
QUER|Quercus sp.|oak|3||1|
ZEAM|Zea mays|maize|12|44|2|7
CHEN|Chenopodium sp.|goosefoot|101|8||3
""", cols_are_samples(5, "B", "8-11", "D-G", volume=6)),
sheet("long-blanks", """
Context|Sample|Vol. (l)|Taxon|Count
(1045)|<12>|10|Triticum spelta|14
|||Triticum spelta glume base|55
|||Bromus secalinus|6
||||Total 75
(1047)|<13>|20|Hordeum vulgare|2
|||Avena sp.|9
(1051)|<15>|10|Corylus avellana nutshell|3
|||Prunus spinosa stone|1
""", long("B", "D", "2-4,6-9", count="E", fills=True, volume="C")),
sheet("metadata-rich", """
OBJECTID,Lab_No,Date_Exc,Easting,Northing,Elev_m,Excavator,Trench,Context,SampleID,Vol_processed_L,Fraction,Flot_wt_g,Triticum_monococcum,Triticum_dicoccum,Hordeum,Pisum,Lens,Glume_bases,Fallopia,Galium,Indet_cereal,Comment
1,LB-0441,12/06/2011,512334.2,4102231.5,88.21,AB,T4,4017,S044,20,light,31.2,12,30,4,2,0,140,3,5,22,good preservation
2,LB-0442,12/06/2011,512334.9,4102233.0,88.05,AB,T4,4019,S045,15,light,12.0,1,8,1,0,0,33,0,1,6,
3,LB-0447,14/06/2011,512338.4,4102231.1,87.90,CD,T4,4022,S049,20,light,7.5,0,2,0,0,3,5,1,0,2,rootlets
4,LB-0450,15/06/2011,512340.0,4102240.7,87.55,CD,T5,5003,S052,10,light,2.1,0,0,1,0,0,1,0,0,1,
""", rows_are_samples("J", 1, "2-5", "N-V", volume="K"), sep=","),
)  # fmt: skip
