"""Invented sheets, lot thirty: each with what a person reads in it. Written before any of them was tried."""

# ruff: noqa: E501

from __future__ import annotations

from tests.reading.intake.by_eye.expectations import Sheet, cols_are_samples, rows_are_samples, sheet

SHEETS: tuple[Sheet, ...] = (
sheet("article-supplement-phase-and-house-stack", """
Supplementary Table 4. Plant remains by sample
||Phase|Early|Early|Middle|Middle|Late
||Building|B1|B1|B4|B4|B9
||Feature type|Hearth|Floor|Oven|Bin|Pit
||Context|212|215|402|404|911
||Sample|14|15|33|36|71
||Volume (l)|12|20|8|6|30
Taxon|Common name|Plant part|||||
Triticum monococcum|Einkorn|Grain|12|3|44|102|1
Triticum monococcum|Einkorn|Glume base|33|12|104|22|8
Triticum dicoccum|Emmer|Grain|4|1|12|31|
Triticum dicoccum|Emmer|Glume base|12|8|31|4|2
Hordeum vulgare|Barley|Grain|22|8|61|204|3
Lens culinaris|Lentil|Seed|3||8|44|
Vicia ervilia|Bitter vetch|Seed|1||2|12|
Linum usitatissimum|Flax|Seed|||1|3|
Cornus mas|Cornelian cherry|Stone||1|2||1
Chenopodium album|Fat hen|Seed|44|31|12|8|4
Lolium cf. temulentum|Darnel|Caryopsis|2|1|8|3|
Indeterminate||Seed|8|4|3|1|2
Total|||141|69|288|434|21
""", cols_are_samples(6, "A", "9-20", "D-H", volume=7, context=5, phase=2)),
sheet("repository-csv-genus-species-dotted", """
SampleNo,Phase,Feature.Type,Volume.L,Triticum.monococcum.grain,Triticum.monococcum.glume.base,Hordeum.vulgare.grain,Lens.culinaris,Pisum.sativum,Linum.usitatissimum,Chenopodium.album,Polygonum.convolvulus,Galium.spurium,Corylus.avellana.shell
101,I,pit,10,12,44,8,3,1,0,102,12,3,4
104,I,hearth,5,3,8,2,0,0,0,31,2,1,12
110,II,pit,20,33,104,44,12,4,8,204,31,12,1
118,II,ditch,20,0,3,1,0,0,0,8,1,0,0
""", rows_are_samples("A", 1, "2-5", "E-N", volume="D", phase="B"), sep=","),
sheet("eastern-us-report-counts-and-weights-down", """
Table 8.2 Carbonized plant remains, Structure 4
Sample:|4-1|4-2|4-3|4-7
Volume (liters):|10|10|12|6
Charcoal wt. (g)|12.31|8.02|22.10|1.04
Nutshell|||
Hickory, count|102|44|201|12
Hickory, wt. (g)|2.04|0.81|4.40|0.20
Acorn, count|12|3|31|
Acorn, wt. (g)|0.05|0.01|0.12|
Tropical cultigens|||
Corn kernel, count|22|8|31|2
Corn kernel, wt. (g)|0.31|0.10|0.44|0.02
Corn cupule, count|104|31|88|4
Corn cupule, wt. (g)|0.61|0.20|0.51|0.02
Common bean, count|2||4|
Seeds|||
Maygrass, count|31|12|44|1
Goosefoot, count|12|8|102|3
Purslane, count|4|1|3|
Unidentifiable, count|8|3|12|1
""", cols_are_samples(2, "A", "4,6-9,11-15,17-20", "B-E", volume=3, massrows="4,7,9,12,14")),
sheet("evaluation-table-rows-with-grades", """
Sample|Context|Context type|Vol (L)|Cereal grain|Cereal chaff|Weed seeds|Hazelnut|Charcoal|Preservation|Recommendation
<1>|[105]|pit fill|40|++|+|+|-|+++|moderate|full analysis
<2>|[112]|ditch fill|20|-|-|+|-|+|poor|none
<3>|[120]|oven fill|20|++++|+++|++|+|++++|good|full analysis, date
<4>|[131]|posthole|5|+|-|-|+|+|poor|none
+ = 1-10 items; ++ = 11-50; +++ = 51-150; ++++ = >150
""", rows_are_samples("A", 1, "2-5", "E-I", volume="D", context="B")),
sheet("long-laboratory-recording-sheet", """
Date,Analyst,Site Code,Sample No,Context,Fraction (mm),Proportion,Taxon,Part,State,Whole,Frags,Comments
,AB,WQ,3,104,>2,1,Hordeum vulgare,grain,ch,12,4,
,AB,WQ,3,104,>2,1,Corylus avellana,shell,ch,,8,
,AB,WQ,3,104,0.5-2,0.5,Chenopodium album,seed,ch,44,,
,AB,WQ,7,110,>2,1,Triticum sp.,grain,ch,3,12,poor
,AB,WQ,7,110,0.5-2,0.25,Poa annua,caryopsis,ch,8,,
,AB,WQ,7,110,0.5-2,0.25,Sambucus nigra,seed,unch,12,,modern?
""", lambda grid: (
    {f"{c}{r}": (grid[r - 1][3], grid[r - 1][7], "n") for r in range(2, 8) for c, k in (("K", 10), ("L", 11)) if grid[r - 1][k]},
    {("3", "context"): "104", ("7", "context"): "110"},
), sep=","),
sheet("spanish-tesis-anexo-niveles", """
Anexo 2. Restos carpológicos;;;;;
Nivel;N1;N1;N2;N3;Total
Muestra;M1;M2;M5;M9;
Volumen (l);12;8;20;10;50
Cereales;;;;;
Hordeum vulgare, cariopsis;12;4;33;8;57
Triticum dicoccum, cariopsis;3;1;12;2;18
Triticum dicoccum, bases de gluma;8;2;44;3;57
Leguminosas;;;;;
Vicia faba var. minor, semilla;1;;4;;5
Pisum sativum, semilla;;1;2;;3
Frutos;;;;;
Quercus sp., cotiledón;4;12;3;22;41
Olea europaea, endocarpo;;;8;1;9
Silvestres;;;;;
Chenopodium album, semilla;33;8;61;12;114
Galium aparine, semilla;2;;4;1;7
Indeterminados;8;3;12;4;27
TOTAL;71;31;183;53;338
""", cols_are_samples(3, "A", "6-8,10-11,13-14,16-18", "B-E", volume=4, context=2), sep=";"),
sheet("german-holzkohle-nach-befund", """
Holzkohleanalyse Grabung 2 (erfunden);;;;;;
Befund;12;12;15;31;Summe;%
Probe;1;2;4;9;;
Quercus;22;31;4;12;69;44,5
Fagus;8;12;;3;23;14,8
Corylus;4;3;12;1;20;12,9
Pomoideae;1;2;3;;6;3,9
Salix/Populus;;1;8;2;11;7,1
Abies;2;;;12;14;9,0
indet.;3;4;2;3;12;7,7
Summe;40;53;29;33;155;100
""", cols_are_samples(3, "A", "4-10", "B-E", context=2), sep=";"),
sheet("pueblo-flotation-summary-with-presence", """
Sample No.,Provenience,Period,Liters,Maize cupule,Maize kernel,Bean,Squash rind,Cotton seed,Pinyon nutshell,Juniper seed,Cheno-am,Purslane,Groundcherry,Ricegrass,Juniper charcoal,Sage charcoal
1,Room 3 hearth,PII,2,44,3,,,,1,2,102,12,4,1,x,x
2,Room 3 floor,PII,2,4,,,,,,,8,1,,,x,
5,Kiva hearth,PIII,2,204,12,1,2,1,4,8,301,44,8,3,x,x
9,Midden,PIII,4,33,1,,1,,12,3,44,8,2,,x,x
""", rows_are_samples("A", 1, "2-5", "E-Q", volume="D", phase="C"), sep=","),
sheet("british-table-with-habitat-and-two-volumes", """
Sample||9|12|18|20
Context||1009|1044|1102|1130
Vol. processed||40|30|20|40
Vol. unprocessed||0|10|0|20
Flot vol.||60|20|110|30
Charcoal vol. (ml)||12|4|60|8
Cereals|Habitat||||
Triticum spelta/dicoccum grain||12|3|44|8
Triticum spelta glume base||31|8|204|12
Hordeum vulgare grain||4|1|8|3
Wild species|||||
Montia fontana ssp. minor|wg|3|1|8|
Eleocharis palustris|wp|2||12|1
Plantago lanceolata|g|4|2|3|1
Chenopodium album|d|12|4|31|8
Key: d disturbed; g grassland; wg wet ground; wp waterside
""", cols_are_samples(1, "A", "8-10,12-15", "C-F", volume=3, context=2)),
sheet("small-csv-with-total-row-and-column-and-blank-corner", """
,Pit A,Pit B,Hearth,Midden,All
Maize,12,33,44,8,97
Bean,1,4,2,,7
Squash,,2,,1,3
Sunflower,3,8,12,1,24
Hickory,102,44,31,204,381
Acorn,8,3,,12,23
All,126,94,89,226,535
""", cols_are_samples(1, "A", "2-7", "B-E"), sep=","),
)  # fmt: skip
