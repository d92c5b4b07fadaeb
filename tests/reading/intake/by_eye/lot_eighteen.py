"""Invented sheets, lot eighteen: each with what a person who looks at it reads. Written before any of them was tried."""

# ruff: noqa: E501

from __future__ import annotations

from tests.reading.intake.by_eye.expectations import Sheet, cols_are_samples, long, rows_are_samples, sheet

SHEETS: tuple[Sheet, ...] = (
sheet("trench-report-small-table-no-latin", """
Bulk sample results, trenches 4 and 6
Trench|4|4|6
Context|408|412|603
Description|Upper fill of ditch [405]|Lower fill of ditch [405]|Fill of pit [602]
Sample|1|2|3
Sample volume|20L|40L|10L
Flot weight|12g|33g|4g
Barley|2|11|
Wheat (free-threshing)|5|23|1
Wheat chaff|||
Oat||4|
Pulse|1|2|
Hazelnut shell frags|3|8|12
Weed seeds: stinking mayweed||6|
Weed seeds: dock|1|2|
Charcoal|++|+++|+
""", cols_are_samples(5, "A", "8-9,11-16", "B-D", volume=6, context=3)),
sheet("spanish-ceramic-age-rows", """
Contexto,Nº muestra,Litros,Fase,Maíz grano,Maíz cúpula,Maíz glumas,Frijol,Yuca cf.,Ají,Algodón,Palma endocarpio,Madera (g),Indet.
Hoyo 3,14,10,Temprana,4,12,3,1,,,2,33,4.5,8
Hoyo 7,18,10,Temprana,,3,,,1,,,12,1.1,2
Piso 2,22,5,Tardía,22,31,8,3,,1,8,4,9.8,11
Basurero,30,20,Tardía,108,203,44,12,2,7,31,88,44.0,30
""", rows_are_samples("B", 1, "2-5", "E-N", mass="M", volume="C", phase="D"), sep=","),
sheet("stratum-by-stratum-shell-midden", """
Taxon|Stratum 1|Stratum 2|Stratum 3a|Stratum 3b|Stratum 4
Volume processed (liters)|8|8|6|6|4
Total plant weight (g)|12.2|10.1|8.4|3.1|0.2
Wood|880|612|401|120|14
Hickory|44|31|22|3|
Live oak acorn|12|8|5||
Cabbage palm seed|3|1|2||
Saw palmetto seed|8|12|4|1|
Hackberry|1||3|2|
Pine cone scale|22|8|4||1
Mangrove cf.||1|||
""", cols_are_samples(1, "A", "4-11", "B-F", volume=2)),
sheet("database-wide-with-null", """
sample_id\tcontext_id\tfeature_type\tphase_code\tvol_floated\tprop_sorted\tavena_grain\thordeum_grain\thordeum_rachis\ttriticum_spelta_glume_base\ttriticum_grain_indet\tcorylus_nutshell_frag\tgalium_aparine_seed\tpoaceae_small_seed
HB_001\t1002\tditch\t3\t40\t1\t3\t12\tNULL\t88\t14\tNULL\t2\t5
HB_002\t1005\tditch\t3\t40\t0.5\tNULL\t2\tNULL\t12\t3\t1\tNULL\t1
HB_003\t1014\tpit\t4\t20\t1\t1\t44\t8\t3\t9\t12\t4\tNULL
HB_007\t1020\tpit\t4\t10\t0.25\t22\t104\t31\tNULL\t40\tNULL\t8\t12
""", rows_are_samples("A", 1, "2-5", "G-N", volume="E", context="B", phase="D"), sep="\t"),
sheet("german-lake-dwelling-units", """
Seeufersiedlung, Schicht 3, Konzentration ausgezählt
Probe|Q12|Q13|Q20|Q21
Volumen (ml)|500|750|500|1000
Erhaltung|unverkohlt|unverkohlt|unverkohlt|verkohlt
Linum usitatissimum, Samen|104|88|12|4
Linum usitatissimum, Kapselsegmente|55|31|3|1
Papaver somniferum, Samen|1200|880|301|22
Malus sylvestris, Kerne|12|4|1|8
Fragaria vesca, Nüsschen|330|204|55|
Rubus idaeus, Steinkerne|120|88|14|2
Triticum monococcum, Spelzenbasen||2||88
""", cols_are_samples(2, "A", "5-11", "B-E", volume=3)),
sheet("per-house-tables-side-by-side-titles", """
House 1||||House 2|||
Taxon|Hearth|Pit|Floor|Taxon|Hearth|Pit|Floor
Maize|12|30|4|Maize|8|22|1
Beans|1|4||Squash||3|
Sunflower||11|2|Sunflower|2|9|
""", lambda grid: (
    {f"{'ABCDEFGH'[c]}{r + 1}": (f"House {1 if c < 4 else 2} {grid[1][c]}", grid[r][0 if c < 4 else 4], "n")
     for r in range(2, 5) for c in (1, 2, 3, 5, 6, 7) if grid[r][c]},
    {},
)),
sheet("long-with-context-lines-between", """
Sample|Taxon|Part|Quantity|Remarks
S1 - pit 12, 20 l||||
|Hordeum vulgare|grain|14|
|Triticum dicoccum|grain|3|cf. one
|Bromus sp.|grain|8|
S2 - hearth 4, 8 l||||
|Corylus avellana|nutshell|33|
|Hordeum vulgare|grain|1|
S3 - ditch 1, 40 l||||
|Chenopodium album|seed|5|
""", lambda grid: (
    {"D3": ("S1", "Hordeum vulgare", "n"), "D4": ("S1", "Triticum dicoccum", "n"), "D5": ("S1", "Bromus", "n"),
     "D7": ("S2", "Corylus avellana", "n"), "D8": ("S2", "Hordeum vulgare", "n"), "D10": ("S3", "Chenopodium", "n")},
    {},
)),
sheet("museum-catalogue-bags", """
Cat. No.|Site|Feature|Level|Material|Identification|Count|Weight (g)|Year
1988.12.1|Pond Bank|F4|2|seed|Zea mays kernel|30|4.10|1988
1988.12.2|Pond Bank|F4|3|seed|Phaseolus vulgaris|4|0.52|1988
1988.12.3|Pond Bank|F9|1|nutshell|Carya sp.|211|30.4|1988
1988.12.4|Pond Bank|F9|1|nutshell|Juglans nigra|12|8.8|1988
1988.12.5|Pond Bank|F11|1|cob|Zea mays|3|6.02|1988
""", long("A", "F", "2-6", count="G", mass="H")),
sheet("totals-by-period-between-samples", """
Species,LN-1,LN-2,LN total,EBA-1,EBA-2,EBA-3,EBA total
litres,10,10,20,20,15,10,45
Hordeum vulgare,12,8,20,33,12,4,49
Triticum monococcum,30,11,41,8,1,,9
Lens culinaris,,2,2,12,3,1,16
Vicia ervilia,1,,1,44,20,9,73
Vitis sp.,,1,1,8,2,3,13
""", cols_are_samples(1, "A", "3-7", "B-C,E-G", volume=2), sep=","),
sheet("russian-table", """
Образец|Слой|Объём (л)|Пшеница|Ячмень|Просо|Рожь|Горох|Лён|Марь белая|Неопределимые
1|4|10|12|30|104|2|1||33|8
2|4|10|3|8|41|||1|12|2
3|5|8|||12||||4|1
5|5|12|44|12|3|30|2|4|8|11
""", rows_are_samples("A", 1, "2-5", "D-K", volume="C", context="B")),
)  # fmt: skip
