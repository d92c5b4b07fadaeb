"""Invented sheets, lot twenty-six: each with what a person reads in it. Written before any of them was tried."""

# ruff: noqa: E501

from __future__ import annotations

from tests.reading.intake.by_eye.expectations import Sheet, cols_are_samples, long, rows_are_samples, sheet

SHEETS: tuple[Sheet, ...] = (
sheet("journal-table-site-feature-phase-stack", """
Table 2 Plant remains recovered from the Iron Age enclosure
Period|||MIA|MIA|LIA|LIA
Feature|||Ditch 14|Pit 22|Pit 31|Oven 40
Context|||1401|2203|3104|4002
Sample|||9|11|17|23
Volume (L)|||40|20|30|12
Flot (ml)|||55|30|210|600
Taxon|Common name|Component||||
Hordeum vulgare L.|hulled six-row barley|grain|12|4|33|8
Triticum dicoccum Schübl.|emmer|glume base|3|1|12|
Triticum spelta L.|spelt|glume base|44|8|204|601
Triticum spelta L.|spelt|grain|8|2|31|122
Triticum sp.|wheat|rachis|2||8|12
Cereal indet.||grain|21|6|40|88
Raphanus raphanistrum L.|wild radish|capsule|1||2|4
Galium aparine L.|cleavers|seed|3|1|8|2
Poaceae (small)|grasses|caryopsis|8|4|12|31
Total||||||
""", cols_are_samples(5, "A", "9-17", "D-G", volume=6, context=4, phase=2)),
sheet("dataverse-csv-snake-case", """
unique_id,site,excav_year,area,locus,sample_no,context_type,period,liters,hordeum_vulgare_grain,triticum_durum_grain,triticum_dicoccum_glume,lens_culinaris,vicia_ervilia,olea_stone_frag,olea_stone_frag_g,vitis_pip,ficus_carica,wild_grass,small_legume,unident,total_seeds
1,TK,2012,A,1003,14,pit,EB III,12,12,0,3,4,2,33,1.21,8,102,12,44,8,228
2,TK,2012,A,1010,18,floor,EB III,20,3,1,0,1,0,8,0.31,2,12,3,8,2,40
3,TK,2013,B,2001,22,oven,EB II,8,44,0,12,0,1,2,0.08,0,4,22,12,3,100
4,TK,2013,B,2014,31,street,MB I,15,1,0,0,0,0,12,0.44,1,0,8,2,1,25
""", rows_are_samples("F", 1, "2-5", "J-U", mass="P", volume="I", phase="H"), sep=","),
sheet("finnish-short-table", """
Näyte;1;2;4;5
Rakenne;uuni;kuoppa;kuoppa;uuni
Tilavuus (l);4;3;3,5;6
Hordeum vulgare;44;12;3;104
Secale cereale;12;3;1;88
Avena sp.;3;;1;12
Linum usitatissimum;;1;;4
Chenopodium album;102;33;12;204
Rubus idaeus;8;12;;3
Juniperus communis, neulanen;4;1;;2
""", cols_are_samples(1, "A", "4-10", "B-E"), sep=";"),
sheet("southwest-pueblo-table-with-plus-uncharred", """
Taxon and Part|Kiva 1 Hearth|Kiva 1 Floor|Room 3 Hearth|Midden N|Midden S
PD/FS|12/4|12/9|30/1|44/2|45/7
Liters|1.0|1.0|1.0|2.0|2.0
Charred||||||
Zea mays cupules|33|4|102|12|8
Zea mays kernels|4||12|1|
Cheno-am seeds|204|12|33|8|4
Portulaca retusa seeds|3||8|1|
Phaseolus cotyledon|||1||
Uncharred||||||
Cheno-am seeds|||12|44|31
Mentzelia albicaulis seeds|||2|8|
""", cols_are_samples(2, "A", "5-9,11-12", "B-F", volume=3)),
sheet("wood-id-list-by-post", """
Post No.|Structure|Wood taxon|No. of frags|Weight (g)|Rings|Comments
PH1|1|Juniperus virginiana|12|8.10|44|outer rings decayed
PH2|1|Juniperus virginiana|8|3.30|31|
PH4|1|Quercus (white group)|22|14.02|28|
PH7|2|Carya sp.|4|1.10|12|bark present
PH7|2|Quercus (red group)|2|0.40|9|
""", long("A", "C", "2-6", count="D", mass="E")),
sheet("flotation-log-with-finds-columns", """
Log #,Date,Feature,Depth cmbs,Liters,LF wt (g),Corn,Beans,Squash,Nut,Seed,Wood,Analyst,Remarks
1,,F1,20-30,10,12.1,12,1,,33,102,204,AA,rootlets
2,,F1,30-40,10,10.4,3,,,12,44,88,AA,
3,,F2,20-30,8,31.0,44,4,2,102,8,310,BB,ashy
4,,F6,40-50,6,3.3,,,,4,2,31,BB,
""", rows_are_samples("A", 1, "2-5", "G-L", volume="E"), sep=","),
sheet("turkish-report", """
Örnek No;Açma;Birim;Dönem;Hacim (lt);Triticum monococcum tane;Triticum dicoccum tane;Hordeum vulgare tane;Lens culinaris;Vicia ervilia;Pistacia kabuk;Celtis;Tanımsız
1;K10;204;İTÇ;20;12;4;33;8;102;2;;4
2;K10;210;İTÇ;15;3;;8;1;12;;1;2
3;L11;301;OTÇ;30;22;12;104;31;204;;4;12
""", rows_are_samples("A", 1, "2-4", "F-M", volume="E", phase="D"), sep=";"),
sheet("cereal-part-matrix-with-three-head-rows-merged", """
Sample|Hordeum|||Triticum spelta|||Weeds
|grain||rachis|grain||glume base|seed
|whole|frag.||whole|frag.||
S3|12|31|4|8|22|104|33
S4|3|8||1|4|22|12
S9|44|102|12|31|88|412|88
""", lambda grid: (
    {f"{'ABCDEFGH'[c]}{r}": (grid[r - 1][0], next(grid[0][k] for k in range(c, 0, -1) if grid[0][k]), "n") for r in range(4, 7) for c in range(1, 8) if grid[r - 1][c]},
    {},
), merge=("B1:D1", "E1:G1", "B2:C2", "E2:F2")),
sheet("results-by-area-with-average-rows", """
Area,Sample,Litres,Grain,Glume bases,Rachis,Pulses,Weed seeds,Nutshell
North,101,10,12,33,4,1,22,3
North,102,10,4,12,,,8,1
North,Mean,,8.0,22.5,2.0,0.5,15.0,2.0
South,201,20,31,102,12,4,88,
South,202,20,2,8,1,,12,12
South,Mean,,16.5,55.0,6.5,2.0,50.0,6.0
All,Total,60,49,155,17,5,130,16
""", rows_are_samples("B", 1, "2-3,5-6", "D-I", volume="C"), sep=","),
sheet("taxon-list-with-sample-columns-and-remarks-right", """
Plant remains, invented farmstead||||||
||Sample 1|Sample 2|Sample 3|Sum|Remarks
||Cellar|Cesspit|Garden||
Prunus domestica|stone|12|104|1|117|several gnawed
Prunus avium|stone|31|210|2|243|
Vitis vinifera|pip|4|88||92|
Ficus carica|achene||1204||1204|estimated from 1/4
Fragaria vesca|achene|8|604|3|615|
Triticum aestivum|grain, charred|3||12|15|
Urtica dioica|achene|22|12|31|65|
""", cols_are_samples(2, "A", "4-10", "C-E")),
sheet("context-headed-columns-with-percent-of-flot", """
Context no.,5,9,14,22,30
Sample no.,1,2,3,4,5
% of context sampled,100,50,25,100,10
Volume of earth processed (l),8,20,40,6,30
% of flot analysed,100,100,50,100,25
Avena sativa,12,3,,1,
Secale cereale,44,12,8,,102
Triticum aestivum/turgidum,8,1,3,,31
Pisum/Vicia,2,,1,,4
Anthemis cotula,31,8,2,1,22
Agrostemma githago (fragment),3,1,,,8
Free-threshing wheat rachis,1,,,,4
""", cols_are_samples(2, "A", "6-12", "B-F", volume=4, context=1), sep=","),
sheet("long-with-quantification-type-and-fraction", """
Sample ID|Context ID|Fraction|Taxon|Element|Quantification|Value|Condition
ENV-01|104|flot|Triticum spelta|glume base|count|44|charred
ENV-01|104|flot|Hordeum vulgare|grain|count|12|charred
ENV-01|104|residue|Corylus avellana|nutshell|count|3|charred
ENV-02|110|flot|Triticum spelta|glume base|abundance|+++|charred
ENV-02|110|flot|Sambucus nigra|seed|count|8|uncharred
ENV-03|121|residue|Prunus spinosa|stone|count|2|mineralised
""", long("A", "D", "2-7", count="G", context="B")),
)  # fmt: skip
