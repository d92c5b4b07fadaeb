"""Invented sheets, lot twenty-two: each with what a person reads in it. Written before any of them was tried."""

# ruff: noqa: E501

from __future__ import annotations

from tests.reading.intake.by_eye.expectations import Sheet, cols_are_samples, rows_are_samples, sheet

SHEETS: tuple[Sheet, ...] = (
sheet("mesopotamian-site-operations", """
Table S1. Archaeobotanical results by locus
Operation,A,A,B,B,C
Locus,12,15,3,7,2
Lot,44,51,60,62,71
Period,Late Chalcolithic,Late Chalcolithic,EB I,EB I,EB III
Context,hearth,floor,pit,bin,street
Volume floated (L),12,20,10,6,30
Charcoal > 2 mm (g),3.21,1.02,0.88,2.20,0.40
CEREALS,,,,,
Hordeum vulgare (2-row hulled),33,12,8,204,3
Hordeum rachis internodes,8,2,1,12,
Triticum monococcum/dicoccum,12,5,2,31,
T. dicoccum glume bases,41,8,12,3,1
Cereal indet. (g),0.44,0.12,0.03,1.80,0.01
PULSES,,,,,
Lens sp.,3,1,,22,
Vicia/Lathyrus,2,,1,8,
WILD/WEEDY,,,,,
Aegilops sp. glume bases,4,1,,,1
Astragalus sp.,12,20,3,,4
Small-seeded legumes,31,44,8,2,9
Prosopis farcta,1,,,,2
Unidentified,6,4,2,3,1
""", cols_are_samples(3, "A", "8,10-14,16-17,19-23", "B-F", volume=7, phase=5, massrows="8,14"), sep=","),
sheet("one-sheet-per-feature-type-rows-with-remarks", """
Sample|Feature|Fill|Litres|Cereal grains|Chaff|Pulses|Nutshell|Weed seeds|Charcoal >2mm|Molluscs|Comments
1|Pit 103|104|20|12|40|1|3|22|+++|-|spelt glumes abundant
2|Pit 103|105|20|3|8||1|6|++|-|
3|Ditch 110|111|40|1|||8|2|+|++|few charred remains
4|Kiln 120|122|10|204|12|||31|++++|-|germinated grain
""", lambda grid: (
    {f"{'ABCDEFGHIJ'[c]}{r}": (grid[r - 1][0], "" if c == 9 else grid[0][c].split(" ")[0], "x" if c == 9 else "n")
     for r in range(2, 6) for c in range(4, 10) if grid[r - 1][c] not in ("", "-")},
    {("1", "volume"): "20", ("4", "volume"): "10"},
)),
sheet("paper-appendix-taxa-with-numbered-lines", """
No.,Taxon,Element,A1,A2,A3,B1,B2,Total,%
1,Triticum aestivum s.l.,grain,12,4,3,22,1,42,22.3
2,Triticum aestivum s.l.,rachis,2,,,5,,7,3.7
3,Secale cereale,grain,8,1,4,31,2,46,24.5
4,Avena sativa,grain,1,,2,4,,7,3.7
5,Pisum sativum,seed,3,1,,2,,6,3.2
6,Camelina sativa,seed,22,,4,8,1,35,18.6
7,Centaurea cyanus,achene,1,2,,6,,9,4.8
8,Agrostemma githago,seed,4,1,1,12,,18,9.6
9,Fallopia convolvulus,nutlet,6,3,2,7,,18,9.6
,Sum,,59,12,16,97,4,188,100
""", cols_are_samples(1, "B", "2-10", "D-H"), sep=","),
sheet("isotope-like-metadata-heavy-rows", """
Lab code|Site|Year of excavation|Square|Locus|Basket|Elevation top|Elevation bottom|Soil (L)|Heavy fraction sorted|Phase|Olea europaea (stone)|Vitis vinifera (pip)|Ficus carica|Lens culinaris|Hordeum sp.|Triticum sp.|Lolium sp.|Notes
KH-1|Khirba|2014|D4|103|B12|402.11|402.03|14|yes|IA IIA|33|12|104|3|8|12|4|
KH-2|Khirba|2014|D4|107|B20|401.90|401.82|20|yes|IA IIA|4|1|31||2|1|1|near oven
KH-3|Khirba|2015|E4|110|B31|401.75|401.70|8|no|IA I|12|3||1|1|4||
KH-4|Khirba|2015|E5|202|B40|401.60|401.51|16|yes|LB II|1|||||2|8|fill
""", rows_are_samples("A", 1, "2-5", "L-R", volume="I", phase="K")),
sheet("anglo-samples-in-two-header-rows-with-units", """
Sample|Context|Vol|Flot|Flot|Cereals|Cereals|Cereals|Cereals|Other|Other
no.|no.|(l)|(ml)|sorted %|Triticum spelta|T. dicoccum/spelta gb|Hordeum|Indet.|Corylus frag.|Bromus
12|1204|10|40|100|3|12|1|4|8|2
13|1207|20|25|50||8||2|1|1
14|1210|20|110|25|12|55|4|18|31|12
""", rows_are_samples("A", 2, "3-5", "F-K", volume="C", context="B")),
sheet("greek-italian-style-with-n-and-mni", """
Contesto;Campione;Litri;Specie;Parte anatomica;Conservazione;N. resti;N. frammenti
US 12;1;10;Hordeum vulgare;cariosside;carbonizzato;12;3
US 12;1;10;Triticum dicoccum;cariosside;carbonizzato;4;
US 12;1;10;Vitis vinifera;vinacciolo;mineralizzato;31;8
US 20;2;15;Olea europaea;endocarpo;carbonizzato;2;22
US 20;2;15;Ficus carica;achenio;mineralizzato;204;
US 31;4;8;Pinus pinea;squama;carbonizzato;1;4
""", lambda grid: (
    {f"{c}{r}": (grid[r - 1][1], grid[r - 1][3], "n") for r in range(2, 8) for c, k in (("G", 6), ("H", 7)) if grid[r - 1][k]},
    {("1", "volume"): "10", ("2", "volume"): "15", ("1", "context"): "US 12", ("4", "context"): "US 31"},
), sep=";"),
sheet("wide-with-cf-columns-next-to-sure-ones", """
sample,feature,liters,Zea mays kernel,cf. Zea mays kernel,Zea mays cupule,Chenopodium berlandieri,cf. Chenopodium,Iva annua,Helianthus annuus,cf. Helianthus,Carya shell,Quercus shell,Juglandaceae,Unidentifiable
1,3,10,4,2,22,31,8,1,3,1,102,12,4,18
2,3,10,1,,8,12,1,,1,,44,3,2,7
3,9,8,,1,3,,,4,2,2,12,31,,4
4,14,9.5,12,4,60,104,12,2,8,1,9,1,1,22
""", rows_are_samples("A", 1, "2-5", "D-O", volume="C"), sep=","),
sheet("section-heads-in-second-column-and-codes", """
Code|Taxon|S.12|S.14|S.20|S.21
|Volume of soil (l)|20|15|30|10
|Crops||||
TRIDIC|Triticum dicoccum grain|4|1|12|
TRIDIG|Triticum dicoccum glume base|22|8|60|3
HORVUL|Hordeum vulgare grain|8|2|31|1
|Gathered fruits and nuts||||
CORAVE|Corylus avellana nutshell|12|44|3|
PRUSPI|Prunus spinosa stone|1||2|
|Arable weeds||||
CHEALB|Chenopodium album|30|8|104|12
GALAPA|Galium aparine|2||8|
|Total|79|63|220|16
""", cols_are_samples(1, "B", "4-6,8-9,11-12", "C-F", volume=2)),
sheet("weights-only-survey-of-wood-and-nut", """
Provenience,Wood (g),Bark (g),Hickory (g),Acorn (g),Black walnut (g),Maize (g),Residue < 1 mm (g),Total (g)
F1 N1/2,12.31,0.22,3.10,0.02,0.44,0.31,2.20,18.60
F1 S1/2,8.80,,2.44,,0.10,0.22,1.91,13.47
F7,31.02,1.10,0.31,0.12,,4.40,3.33,40.28
F12 zone B,0.92,,0.08,,,0.02,0.40,1.42
""", rows_are_samples("A", 1, "2-5", "B-G", mass="B-G"), sep=","),
sheet("modern-experiment-with-replicate-columns-labelled-feature", """
Posthole assessment
|P1|P1|P2|P2|P3
|upper|lower|upper|lower|single fill
Sample|201|202|203|204|205
Litres|5|5|5|5|3
Free-threshing wheat|12|3|1|8|
Rye||1||2|
Bread-wheat rachis|1|||3|
Sedge|4|8|2|1|
Elder (uncharred)|12|4|33|2|8
Charcoal|xx|x|x|xxx|x
""", cols_are_samples(4, "A", "6-11", "B-F", volume=5)),
sheet("dutch-table-landscape", """
vondstnummer,12,14,20,31,
spoor,101,101,115,120,
aard spoor,kuil,kuil,greppel,waterput,
volume (l),5,5,10,3,
fractie,,,,,
Cultuurgewassen,,,,,
Hordeum vulgare, 12,4,,1,gerst
Hordeum vulgare aarspilsegment,3,,,,gerst
Triticum dicoccon kafbasis,33,8,2,,emmertarwe
Linum usitatissimum,,,1,22,vlas
Akkeronkruiden,,,,,
Spergula arvensis,104,12,8,3,spurrie
Polygonum lapathifolium,22,4,3,12,beklierde duizendknoop
Natte plaatsen,,,,,
Eleocharis palustris,,,12,44,waterbies
Lythrum salicaria,,,,31,kattenstaart
""", cols_are_samples(1, "A", "7-10,12-13,15-16", "B-E", volume=4), sep=","),
sheet("long-eu-dataset-with-taxon-codes-no-part", """
site_name,phase_name,sample_id,sample_volume,taxon_name,taxon_category,value,unit
Alt Hof,LN1,AH1,12,Hordeum vulgare grain,crop,14,count
Alt Hof,LN1,AH1,12,Triticum dicoccum glume base,crop,41,count
Alt Hof,LN1,AH1,12,Chenopodium album seed,weed,104,count
Alt Hof,LN2,AH7,10,Hordeum vulgare grain,crop,3,count
Alt Hof,LN2,AH7,10,Corylus avellana nutshell,gathered,0.31,g
Alt Hof,LN2,AH7,10,Prunus spinosa stone,gathered,2,count
""", lambda grid: (
    {f"G{r}": (grid[r - 1][2], grid[r - 1][4], "g" if grid[r - 1][7] == "g" else "n") for r in range(2, 8)},
    {("AH1", "volume"): "12", ("AH7", "phase"): "LN2"},
), sep=","),
)  # fmt: skip
