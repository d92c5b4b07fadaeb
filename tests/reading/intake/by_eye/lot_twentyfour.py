"""Invented sheets, lot twenty-four: each with what a person reads in it. Written before any of them was tried."""

# ruff: noqa: E501

from __future__ import annotations

from tests.reading.intake.by_eye.expectations import Sheet, cols_are_samples, rows_are_samples, sheet

SHEETS: tuple[Sheet, ...] = (
sheet("monograph-appendix-continued-page", """
Appendix 1. Absolute counts of charred remains
Sample number|1|2|3|4
Phase|II|II|III|III
Context type|Ditch|Pit|Pit|Oven
Litres floated|35|20|20|12
Crops||||
Triticum spelta, grain|8|3|12|104
Triticum spelta, glume base|31|8|22|401
Hordeum vulgare, hulled grain|3|1|4|12
Avena sp., grain|2||3|8
Appendix 1 continued||||
Sample number|1|2|3|4
Wild plants||||
Ranunculus repens type|1||2|
Chenopodium album|12|4|8|31
Rumex acetosella agg.|3|2||4
Galium aparine|2|1|3|8
Eleocharis palustris/uniglumis|1||1|2
Total|63|19|55|570
""", cols_are_samples(2, "A", "7-10,14-18", "B-E")),
sheet("open-data-tidy-english-columns", """
project,context_number,sample_number,sample_volume_litres,percent_sorted,species_name,common_name,plant_part,charred_count,waterlogged_count,comments
LANE20,1004,1,20,100,Triticum sp.,Wheat,grain,12,,
LANE20,1004,1,20,100,Corylus avellana,Hazel,nutshell,3,8,
LANE20,1004,1,20,100,Sambucus nigra,Elder,seed,,44,
LANE20,1010,2,10,50,Hordeum sp.,Barley,grain,4,,one sprouted
LANE20,1010,2,10,50,Rubus fruticosus agg.,Bramble,seed,1,12,
LANE20,1022,5,30,25,Avena/Bromus,Oat/brome,grain,7,,
""", lambda grid: (
    {f"{c}{r}": (grid[r - 1][2], grid[r - 1][5], "n") for r in range(2, 8) for c, k in (("I", 8), ("J", 9)) if grid[r - 1][k]},
    {("1", "volume"): "20", ("2", "context"): "1010", ("5", "volume"): "30"},
), sep=","),
sheet("mesa-verde-area-with-feature-times-and-charred-parts", """
Study Unit|PD|FS|Feature type|Vol. (L)|Taxon/Part|Zea mays cupule|Zea mays kernel|Zea mays embryo|Cheno-am seed|Physalis seed|Stipa floret|Juniperus twig|Pinus bark scale|Artemisia wood
Str. 1|120|4|hearth|1.0||33|2||12|1||8|4|20
Str. 1|121|2|ashpit|1.0||12|||4||1|3|1|20
Nonstr. 2|140|1|midden|2.0||4|1||33|4||12|8|12
Str. 5|155|6|hearth|0.9||102|8|1|201|3|2|22|12|20
""", lambda grid: (
    {f"{'ABCDEFGHIJKLMNO'[c]}{r}": (f"{grid[r - 1][2]}", grid[0][c], "n") for r in range(2, 6) for c in range(6, 15) if grid[r - 1][c]},
    {("4", "volume"): "1.0", ("1", "volume"): "2.0"},
)),
sheet("swedish-three-tables-in-one", """
Provnr;1;2;3
Anläggning;A200;A210;A233
Volym (l);2;2,5;3
Förkolnat;;;
Hordeum vulgare;12;3;44
Triticum aestivum/compactum;1;;2
Avena sp.;2;1;8
Secale cereale;;;31
Oförkolnat;;;
Rubus idaeus;4;12;1
Urtica dioica;;2;
Övrigt;;;
Träkol;xx;x;xxx
""", cols_are_samples(1, "A", "5-8,10-11,13", "B-D", volume=3), sep=";"),
sheet("levant-locus-basket-with-percent-rows-under-counts", """
Stratum|V|V|IV|IV|Total
Locus|1203|1207|1101|1104|
Basket|10|14|3|8|
Volume (l)|15|20|10|12|57
Olea europaea stone frags|102|44|31|8|185
% Olea|65.0|53.0|41.9|21.6|
Vitis vinifera pips|12|8|4|2|26
% Vitis|7.6|9.6|5.4|5.4|
Lens culinaris|3|1|4||8
% Lens|1.9|1.2|5.4||
Triticum dicoccum|22|18|12|22|74
% Triticum|14.0|21.7|16.2|59.5|
Lolium temulentum|18|12|23|5|58
% Lolium|11.5|14.5|31.1|13.5|
""", cols_are_samples(2, "A", "5,7,9,11,13", "B-E", volume=4, phase=1)),
sheet("weeds-by-sample-with-ecology-columns-at-the-right", """
Species,S1,S2,S3,S4,Habitat,Flowering,Height
Agrostemma githago,12,4,1,,segetal,VI-VIII,30-100
Centaurea cyanus,8,,2,4,segetal,VI-X,30-60
Chenopodium album,104,33,12,61,ruderal,VII-X,20-150
Polygonum aviculare,4,8,,3,ruderal,V-X,10-50
Rumex acetosella,22,4,1,8,grassland,V-VIII,10-30
Scleranthus annuus,3,1,,,segetal,IV-X,5-15
""", cols_are_samples(1, "A", "2-7", "B-E"), sep=","),
sheet("taxa-as-rows-sample-and-context-in-one-head-cell", """
Species|Sample 1 (context 104)|Sample 2 (context 107)|Sample 5 (context 211)
Soil volume|10 L|12 L|20 L
Emmer grain|12|3|1
Emmer spikelet fork|31|8|
Barley grain|4|1|12
Flax seed||2|
Opium poppy seed|||4
Apple pip|1||
Raspberry pip|8|3|
Total|56|17|17
""", cols_are_samples(1, "A", "3-9", "B-D")),
sheet("coarse-and-fine-flot-sheets-side-by-side", """
Coarse flot||||Fine flot|||
Taxon|S1|S2|S3|Taxon|S1|S2|S3
Hordeum vulgare|12|4|8|Chenopodium album|104|33|12
Triticum aestivum|31|2|6|Juncus sp.|40|12|
Corylus avellana nutshell|3||1|Papaver rhoeas|8||2
Pisum sativum|1|2||Urtica urens|12|4|1
""", lambda grid: (
    {f"{'ABCDEFGH'[c]}{r}": (grid[1][c], grid[r - 1][0 if c < 4 else 4], "n") for r in range(3, 7) for c in (1, 2, 3, 5, 6, 7) if grid[r - 1][c]},
    {},
)),
sheet("field-school-counts-with-names-of-units", """
Unit 4 Level 2,,,
Taxon,Count,Weight (g),Notes
Carya nutshell,44,1.31,
Quercus nutshell,12,0.04,thin
Zea mays cupule,3,0.01,
Unid,8,,
Unit 4 Level 3,,,
Taxon,Count,Weight (g),Notes
Carya nutshell,31,0.92,
Juglans nutshell,4,0.20,
Chenopodium seed,22,,
Unid,2,,
""", lambda grid: (
    {f"{c}{r}": ("Unit 4 Level 2" if r < 7 else "Unit 4 Level 3", grid[r - 1][0], k)
     for r in (3, 4, 5, 6, 9, 10, 11, 12) for c, i, k in (("B", 1, "n"), ("C", 2, "g")) if grid[r - 1][i]},
    {},
), sep=","),
sheet("anthracology-rows-of-levels-with-totals-and-taxa-count", """
Niveau,Éch.,Pinus halepensis,Quercus t. ilex,Quercus t. caducifolié,Pistacia sp.,Rosmarinus,Juniperus sp.,Rosaceae Prunoideae,Indéterminable,Total fragments,Nb taxons
C1,1,22,41,3,8,4,,1,12,91,6
C1,2,31,22,1,12,8,3,,8,85,6
C2,3,4,60,12,3,,1,4,20,104,6
C3,4,1,8,44,,,12,8,4,77,5
""", rows_are_samples("B", 1, "2-5", "C-J", context="A"), sep=","),
sheet("portal-export-with-units-and-blank-lines", """
"Dataset: invented, for trial"

Sample identifier|Deposit category|Volume of sediment processed (litres)|Chronological phase|Weight of charcoal >4 mm (g)|Hulled wheat grain|Hulled wheat chaff|Free-threshing wheat grain|Barley grain|Pea/bean|Small legume|Large grass|Small grass|Sedge

WX/12|pit fill|24|Late Iron Age|3.2|12|44|1|8||3|5|12|2
WX/14|pit fill|30|Late Iron Age|1.1|3|22||2||1|2|8|
WX/30|oven|12|Early Roman|12.0|31|8|22|41|3||12|3|1
WX/41|ditch|40|Early Roman|0.4||3||1|||1|4|6
""".replace('"', ""), rows_are_samples("A", 3, "5-8", "E-N", mass="E", volume="C", phase="D")),
sheet("numbers-with-thousands-and-estimates", """
Flotation sample,F-201,F-202,F-205
Feature,Storage pit 3,Storage pit 3,Hearth 1
Liters,10,10,6
Chenopodium berlandieri,"c. 12400","8200",44
Iva annua,112,98,3
Helianthus annuus,40,31,1
Phalaris caroliniana,"~3500",2210,12
Polygonum erectum,611,402,8
Lagenaria siceraria rind,3,,
Carya nutshell,22,14,301
""".replace('"', ""), cols_are_samples(1, "A", "4-10", "B-D", volume=3), sep=","),
)  # fmt: skip
