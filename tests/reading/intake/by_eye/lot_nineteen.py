"""Invented sheets, lot nineteen: each with what a person who looks at it reads. Written before any of them was tried."""

# ruff: noqa: E501

from __future__ import annotations

from tests.reading.intake.by_eye.expectations import Sheet, cols_are_samples, rows_are_samples, sheet

SHEETS: tuple[Sheet, ...] = (
sheet("journal-supplement-dotted-names", """
Sample_ID,Site_phase,Context_type,Vol.L,Flot.ml,Hordeum_vulgare.grain,Hordeum_vulgare.rachis,Triticum_dicoccum.grain,Triticum_dicoccum.glume_base,Triticum_sp.grain,Cereal_indet.grain,Lens_culinaris.seed,Avena_sp.floret_base,Galium_spp.seed,Chenopodium_album.seed,Sum_items,Items_per_L
BX_01,Ib,Pit fill,18,45,12,2,33,104,5,18,1,,4,12,191,10.6
BX_02,Ib,Pit fill,20,30,3,,8,22,1,6,,,1,3,44,2.2
BX_05,II,Floor,12.5,110,44,8,12,31,7,20,3,2,8,1,136,10.9
BX_09,II,Hearth,8,15,1,,2,4,,3,,,,22,32,4
""", rows_are_samples("A", 1, "2-5", "F-O", volume="D", phase="B"), sep=","),
sheet("grey-report-appendix-charred", """
Table A4.2: Charred plant remains from the Iron Age features
||Phase|2|2|3|3|3
||Feature type|Pit|Pit|Ditch|Ditch|Posthole
||Feature|[1021]|[1033]|[1108]|[1108]|[1150]
||Context|1022|1035|1109|1111|1151
||Sample|4|7|12|13|20
||Volume floated (l)|30|20|40|40|10
||% flot sorted|100|50|25|100|100
Latin name|Common name|Habitat|||||
CEREAL GRAIN|||||||
Hordeum vulgare L. (hulled)|Barley||11|4|22|3|
Hordeum sp.|Barley||6|2|9|1|1
Triticum spelta L.|Spelt wheat||8||31|2|
Cereal indet.|||24|9|55|6|2
CEREAL CHAFF|||||||
T. spelta L. glume base|Spelt wheat||40|6|210|12|
Avena sp. awn frag.|Oat|||1|14||
WEED SEEDS|||||||
Chenopodium album L.|Fat-hen|CDn|12|2|3||1
Rumex cf. crispus L.|Curled dock|CDG|1||4|1|
Bromus sect. Bromus|Brome|AD|7|2|18||
Indet. seeds|||3|1|8|2|
Total identified items|||112|27|374|27|4
Items per litre of soil|||3.7|1.4|9.4|0.7|0.4
Key: A = arable; C = cultivated; D = disturbed; G = grassland; n = nitrogen-rich soils
""", cols_are_samples(6, "A", "11-14,16-17,19-22", "D-H", volume=7, context=5, phase=2)),
sheet("laboratory-workbook-counts-and-weights-rows", """
Sample,Bag,Feature,Level,Litres,Light frac (g),Wood ct,Wood wt,Hickory ct,Hickory wt,Acorn ct,Acorn wt,Maize kernel ct,Maize kernel wt,Maize cupule ct,Maize cupule wt,Goosefoot ct,Maygrass ct,Unid seed ct,Residue wt
1,B12,F3,1,10,44.1,210,4.22,33,0.81,2,0.01,8,0.12,40,0.22,12,44,3,3.11
2,B13,F3,2,10,38.0,180,3.10,21,0.44,,,2,0.03,11,0.06,3,102,1,2.8
3,B20,F8,1,8,12.7,55,0.91,4,0.10,1,<0.01,,,3,0.02,,8,,1.02
4,B31,F11,1,10,61.3,402,9.03,61,1.72,12,0.08,14,0.33,85,0.51,2,31,6,5.4
""", rows_are_samples("A", 1, "2-5", "G,I,K,M,O,Q-S,H,J,L,N,P", mass="H,J,L,N,P", volume="E")),
sheet("charcoal-by-structure-french", """
Analyse anthracologique – nombre de fragments déterminés;;;;;;
US;104;104;212;215;301;Total
Structure;Foyer 1;Foyer 1;Fosse 3;Fosse 3;Fossé;
Prélèvement;P1;P2;P7;P8;P11;
Quercus f.c.;33;21;12;8;40;114
Quercus ilex/coccifera;;4;;;2;6
Corylus avellana;8;3;1;;12;24
Fraxinus sp.;2;;5;3;;10
Maloideae;1;2;;;7;10
Prunus type spinosa;;;3;1;4;8
cf. Buxus;;1;;;;1
Angiosperme indét.;4;3;2;1;6;16
Écorce;;1;;2;;3
Nombre de taxons;4;5;4;3;5;
Total;48;35;23;15;71;192
""", cols_are_samples(4, "A", "5-13", "B-F", context=2), sep=";"),
sheet("long-repository-table-with-ids", """
record_id,site_code,trench,context,sample_no,vol_l,fraction_mm,family,genus,species,qualifier,plant_part,preservation,quantity,frag,notes
1,KHL,A,1012,3,20,1,Poaceae,Hordeum,vulgare,,grain,carbonised,12,3,
2,KHL,A,1012,3,20,1,Poaceae,Triticum,dicoccum,cf.,grain,carbonised,2,,poorly preserved
3,KHL,A,1012,3,20,0.3,Chenopodiaceae,Chenopodium,album,,seed,carbonised,44,,
4,KHL,A,1020,5,15,1,Fabaceae,Lens,culinaris,,seed,carbonised,3,1,
5,KHL,A,1020,5,15,0.3,Poaceae,Triticum,dicoccum,,glume base,carbonised,18,,
6,KHL,B,2003,9,30,1,Vitaceae,Vitis,vinifera,,pip,mineralised,1,,
7,KHL,B,2003,9,30,1,Rosaceae,,,,fruit stone,carbonised,,4,
""", lambda grid: (
    {f"{c}{r}": (grid[r - 1][4], grid[r - 1][8] or grid[r - 1][7], "n")
     for r in range(2, 9) for c, k in (("N", 13), ("O", 14)) if grid[r - 1][k]},
    {("3", "volume"): "20", ("5", "volume"): "15", ("9", "volume"): "30", ("3", "context"): "1012"},
), sep=","),
sheet("assessment-abundance-table", """
Context,Sample,Vol. (L),Flot vol. (ml),Charcoal >4mm,Charcoal 2-4mm,Grain,Chaff,Weeds,Hazel nutshell,Other,Potential,Comments
1007,1,40,120,++,+++,++,+,+,-,fish bone +,B,Hulled barley and spelt noted
1012,2,20,15,+,+,-,-,+,+,-,D,Sparse
1030,4,40,300,+++,++++,+++,++,++,+,hammerscale +,A,Rich; recommend full analysis
1044,5,10,5,-,+,-,-,-,-,-,D,Modern roots
Key: + = 1-5; ++ = 6-25; +++ = 26-100; ++++ = >100
""", lambda grid: (
    {f"{'ABCDEFGHIJ'[c]}{r}": (grid[r - 1][1], "" if c not in (6, 9) else {6: "grain", 9: "hazel"}[c], "x")
     for r in range(2, 6) for c in range(4, 10) if grid[r - 1][c] not in ("", "-")},
    {("1", "volume"): "40", ("2", "volume"): "20", ("1", "context"): "1007"},
), sep=","),
sheet("italian-bilingual-heads", """
Sito: Podere Alto (inventato);;;;;
Campione / Sample;;C1;C2;C5;C7
US / SU;;34;36;41;41
Volume (litri) / Volume (L);;12,5;10;25;8
Taxon;Parte / Part;;;;
Triticum monococcum;cariosside / caryopsis;14;3;22;
Triticum monococcum;base di gluma / glume base;51;8;104;2
Triticum dicoccum;cariosside / caryopsis;6;1;12;
Hordeum vulgare;cariosside / caryopsis;9;4;18;3
Lens culinaris;seme / seed;;1;3;
Vitis vinifera;vinacciolo / pip;2;;;1
Cornus mas;nocciolo / fruit stone;;;1;
Non determinabili;;7;3;15;1
Somma / Total;;89;20;175;7
""", cols_are_samples(2, "A", "6-13", "C-F", volume=4, context=3), sep=";"),
sheet("waterlogged-abundance-with-part-abbreviations", """
Sample no.|||101|102|103|104
Context no.|||2204|2207|2210|2215
Feature|||Well 2|Well 2|Well 2|Pit 9
Sample size (litres)|||1|1|0.5|1
Taxa|Part|Pres.||||
Ranunculus subgen. Batrachium|a|w|22|101|3|
Urtica dioica L.|a|w|104|55|12|2
Sambucus nigra L.|s|w|12|8|4|1
Rubus fruticosus agg.|fst|w|4|12|1|
Corylus avellana L.|nsh|c|1||2|4
Triticum spelta L.|gb|c|3|1||12
Prunus spinosa L.|fst|w||2||
Carex spp.|n|w|8|33|1|
a achene; s seed; fst fruitstone; nsh nutshell frag.; gb glume base; n nutlet; w waterlogged; c charred
""", cols_are_samples(1, "A", "6-13", "D-G", volume=4, context=2)),
sheet("pollen-like-depth-rows", """
Macroremains, test pit TP3
Depth (cm),Volume (cm3),Betula fruit,Pinus needle,Carex nutlet,Sphagnum leaf,Cenococcum sclerotia,Charcoal >0.5 mm,Hordeum grain (charred)
10-15,50,3,1,12,+,4,22,
15-20,50,,2,8,+,11,40,1
20-25,50,8,,1,-,3,104,3
25-30,50,12,4,,-,,8,
""", rows_are_samples("A", 2, "3-6", "C-I", volume="B"), sep=","),
sheet("sub-heads-with-families-and-totals-per-family", """
Family / taxon,SU 4,SU 6,SU 9,SU 12
Liters of soil,15,15,12,9
POACEAE,,,,
Hordeum vulgare,33,12,4,1
Triticum aestivum/durum,8,3,,2
Lolium sp.,4,,1,
Total Poaceae,45,15,5,3
FABACEAE,,,,
Lens culinaris,12,3,1,
Vicia ervilia,3,,,
Total Fabaceae,15,3,1,
VITACEAE,,,,
Vitis vinifera (pip),2,8,1,
Vitis vinifera (pedicel),,3,,
Total Vitaceae,2,11,1,
Grand total,62,29,7,3
""", cols_are_samples(1, "A", "4-6,9-10,13-14", "B-E", volume=2), sep=","),
sheet("arid-southwest-parts-in-columns", """
PD #,FS #,Provenience,Liters,Zea mays,,,Juniperus,,Cheno-am,Phaseolus,Atriplex,Pinus edulis
,,,,kernel,cupule,cob frag,seed,charcoal,seed,cotyledon,charcoal,nutshell
14,3,Str 2 hearth,4,2,33,1,1,12,41,,20,
14,8,Str 2 floor,4,,4,,,20,3,1,18,2
22,1,Midden lvl 2,8,1,12,,4,33,108,,5,
31,2,Extramural pit,4,5,51,8,,20,12,2,20,1
""", lambda grid: (
    {f"{'ABCDEFGHIJKLM'[c]}{r}": (f"{grid[r - 1][0]} {grid[r - 1][1]}",
                                   grid[0][c] or {5: "Zea", 6: "Zea", 8: "Juniperus"}[c], "n")
     for r in range(3, 7) for c in range(4, 13) if grid[r - 1][c]},
    {("14 3", "volume"): "4", ("22 1", "volume"): "8"},
), sep=","),
sheet("german-funde-with-seite-and-summe", """
Tab. 3: Verkohlte Pflanzenreste (Stückzahlen)
Befund|Grube 12|Grube 12|Pfosten 4|Graben 1|Summe|Stetigkeit %
Probennr.|P 3|P 4|P 9|P 15||
Probenvolumen [l]|10|12|5|20|47|
Getreide||||||
Gerste (Hordeum vulgare)|22|31|2|8|63|100
Emmer (Triticum dicoccum)|12|40||1|53|75
Emmer, Spelzgabeln|8|61|||69|50
Getreide unbest.|30|55|4|12|101|100
Hülsenfrüchte||||||
Linse (Lens culinaris)||3|||3|25
Unkräuter||||||
Weißer Gänsefuß (Chenopodium album)|104|20|3|1|128|100
Kletten-Labkraut (Galium aparine)|2|8||1|11|75
Indeterminata|9|11|1|2|23|100
""", cols_are_samples(3, "A", "6-9,11,13-15", "B-E", volume=4, context=2)),
)  # fmt: skip
