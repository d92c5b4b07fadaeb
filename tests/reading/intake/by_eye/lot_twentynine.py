"""Invented sheets, lot twenty-nine: each with what a person reads in it. Written before any of them was tried."""

# ruff: noqa: E501

from __future__ import annotations

from tests.reading.intake.by_eye.expectations import Sheet, cols_are_samples, rows_are_samples, sheet

SHEETS: tuple[Sheet, ...] = (
sheet("grey-literature-corn-dryer", """
Table 6 Charred plant remains from corn-dryer 3020
|Feature|3020|3020|3020|3055
|Context|3022|3024|3031|3056
|Sample|40|41|44|50
|Location|flue|stokehole|chamber|pit
|Size (litres)|10|10|20|5
|Flot size (ml)|80|110|240|10
|Seed items per litre|31.2|44.1|60.6|3.4
Triticum spelta|germinated grain|44|61|204|2
Triticum spelta|ungerminated grain|12|8|31|
Triticum spelta|glume base|204|288|802|10
Hordeum sp.|grain|3|1|8|
Cereal indet.|grain|31|44|102|3
Cereal indet.|detached sprout|12|33|44|
Bromus sp.|grain|4|3|12|1
Lithospermum arvense|seed|1|1|4|
Rumex crispus type|seed|1|2|5|1
""", cols_are_samples(4, "A", "9-17", "C-F", volume=6, context=3)),
sheet("ai-lab-export-comma-sep-bags", """
Bag No,Easting,Northing,Level,Feature,Soil Liters,Weight LF,Charcoal >2mm (g),Acorn frag,Acorn frag wt,Hickory frag,Hickory frag wt,Corn kernel,Corn cupule,Chenopodium sp,Amaranthus sp,Rubus sp,Vitis sp,Unidentified,Unidentifiable
201,500,502,2,F3,8,14.1,1.2,12,0.04,88,1.10,3,22,41,2,8,1,3,12
202,500,502,3,F3,8,10.3,0.8,4,0.01,31,0.40,1,8,12,,3,,1,4
214,504,500,1,F9,10,22.8,3.1,2,0.01,102,1.82,12,61,204,12,,4,8,22
220,504,498,1,,5,3.2,0.1,,,4,0.03,,1,3,,,,,1
""", rows_are_samples("A", 1, "2-5", "H-T", mass="H,J,L", volume="F"), sep=","),
sheet("french-article-tableau-effectifs", """
Site : Les Essarts (fictif);;;;;;
Structure;FS 12;FS 12;FS 20;SI 4;SI 4;Total
Niveau;sup.;inf.;unique;sup.;inf.;
Volume (L);10;10;15;20;20;75
Céréales : grains;;;;;;
Hordeum vulgare;12;8;3;102;44;169
Triticum aestivum/durum/turgidum;4;2;;31;12;49
Triticum dicoccum;8;3;1;12;4;28
Cerealia;22;12;8;88;31;161
Céréales : vannes;;;;;;
Triticum dicoccum, bases d'épillet;3;1;;8;2;14
Hordeum vulgare, segments de rachis;1;;;4;1;6
Légumineuses;;;;;;
Pisum sativum;;1;;3;;4
Vicia faba;1;;;2;1;4
Plantes sauvages;;;;;;
Chenopodium album;31;12;2;8;4;57
Galium aparine;2;1;;3;1;7
""", cols_are_samples((2, 3), "A", "6-9,11-12,14-15,17-18", "B-F", volume=4), sep=";"),
sheet("island-caribbean-wood-and-seeds", """
Sample,Unit,Level,Volume floated L,Wood wt g,Guaiacum sp. wood,Coccoloba sp. wood,Conocarpus erectus wood,Mastic seed,Palm endocarp,Cupania sp. seed,Portulaca sp. seed,Maize cupule,Tuber frag.,Unident. seed
12,A1,3,8,14.2,22,8,12,3,1,,102,1,4,8
13,A1,4,8,9.1,12,,3,1,,,44,,2,3
18,B2,3,10,31.0,44,12,31,8,4,2,204,2,12,12
22,B2,5,6,2.2,3,1,,,,,8,,,1
""", rows_are_samples("A", 1, "2-5", "E-O", mass="E", volume="D"), sep=","),
sheet("site-archive-long-one-row-per-context-taxon", """
Context|Sample|Litres|Taxon|Grains|Chaff|Seeds|Other
102|1|10|Triticum spelta|12|44||
102|1|10|Hordeum sp.|3|1||
102|1|10|Chenopodium album|||8|
110|2|20|Triticum spelta|2|8||
110|2|20|Corylus avellana||||4
121|4|15|Avena sp.|8|2||
121|4|15|Rumex sp.|||12|
""", lambda grid: (
    {f"{'ABCDEFGH'[c]}{r}": (grid[r - 1][1], grid[r - 1][3], "n") for r in range(2, 9) for c in range(4, 8) if grid[r - 1][c]},
    {("1", "volume"): "10", ("2", "context"): "110"},
)),
sheet("range-classes-in-cells", """
Sample,1,2,3,4,5
Context,12,14,18,31,40
Sample volume (litres),20,20,10,40,10
Cereal grain,1-5,6-20,1-5,>100,21-100
Glume bases,6-20,21-100,,>100,1-5
Weed seeds,1-5,1-5,,21-100,6-20
Pulses,,1-5,,,1-5
Hazelnut shell,,,6-20,1-5,
""", cols_are_samples(1, "A", "4-8", "B-F", volume=3, context=2), sep=","),
sheet("late-woodland-village-household-clusters", """
|Household 1|||Household 2||
|F10|F12|F15|F31|F33
Volume (l)|20|10|15|12|9
Maize (kernels)|12|4|33|8|1
Maize (cupules)|44|22|102|31|8
Bean|1||3|2|
Sunflower|2|1|4||
Nutshell (all)|31|12|8|44|3
Blackberry/raspberry|8|3|12|4|1
Blueberry|2|1|||
Elderberry||4|1|2|
Nightshade|1||3|1|
Tobacco|||1||
""".replace("F31|F33", "F31|F33|"), cols_are_samples(2, "A", "4-13", "B-F", volume=3)),
sheet("sediment-columns-top-and-bottom-depth", """
sample_id,core,depth_top_cm,depth_bottom_cm,volume_cm3,Chara_oospore,Potamogeton_fruitstone,Najas_marina_seed,Typha_seed,Carex_trigonous_nutlet,Betula_alba_fruit,Cenococcum_sclerotia,charcoal_particles
LK1,A,100,105,50,204,3,12,102,4,8,3,12
LK2,A,105,110,50,88,1,4,44,2,12,8,31
LK3,A,110,115,45,12,,1,8,,31,12,102
LK4,A,115,120,50,3,,,2,1,44,22,61
""", rows_are_samples("A", 1, "2-5", "F-M", volume="E"), sep=","),
sheet("excel-with-mean-and-total-rows-per-phase", """
Phase|Sample|Barley|Einkorn|Emmer|Pea|Lentil|Flax|Total
1|12|33|12|8|2|4|1|60
1|14|12|4|3||1||20
Phase 1 total||45|16|11|2|5|1|80
2|20|102|44|31|8|12|3|200
2|21|8|2|1|1|||12
2|25|31|12|8|2|4|1|58
Phase 2 total||141|58|40|11|16|4|270
Grand total||186|74|51|13|21|5|350
""", rows_are_samples("B", 1, "2-3,5-7", "C-H", phase="A")),
sheet("cistern-desiccated-with-state-columns", """
Taxon,Part,Locus 12,,Locus 15,,Locus 20,
,,charred,desiccated,charred,desiccated,charred,desiccated
Olea europaea,stone,12,44,3,31,8,102
Phoenix dactylifera,stone,1,22,,12,2,31
Phoenix dactylifera,perianth,,8,,3,,12
Vitis vinifera,pip,4,12,1,8,3,44
Hordeum vulgare,rachis,8,102,2,61,1,204
Hordeum vulgare,grain,12,3,4,1,8,12
Punica granatum,rind,,4,,2,,8
""", lambda grid: (
    {f"{'ABCDEFGH'[c]}{r}": (grid[0][2 + 2 * ((c - 2) // 2)], grid[r - 1][0], "n") for r in range(3, 10) for c in range(2, 8) if grid[r - 1][c]},
    {},
), sep=","),
sheet("simple-xlsx-with-two-note-lines-and-source", """
Botanical remains, Mill Race site
All counts are of charred items unless stated.

Species|Common|101|102|103|104
Cornus florida|dogwood|1|||2
Carya ovata|shagbark hickory|44|12|31|8
Juglans cinerea|butternut|3||8|1
Zea mays (cupule)|maize|12|4|22|3
Zea mays (kernel)|maize|4|1|8|
Phytolacca americana|pokeweed|8|3|12|
Polygonum pensylvanicum|smartweed|2|1||
Solanum sp.|nightshade|1||4|

Source: invented for trial.
""", cols_are_samples(4, "A", "5-12", "C-F")),
sheet("wetland-report-with-class-numbers-and-counts-separate", """
Sample,31,,32,,40,
Volume (l),1,,1,,2,
,No.,Pres.,No.,Pres.,No.,Pres.
Ranunculus flammula,12,wl,3,wl,44,wl
Alnus glutinosa,3,wl,8,wl,1,wl
Triticum spelta glume base,4,ch,,,12,ch
Urtica dioica,102,wl,204,wl,61,wl
Sambucus nigra,8,wl,12,min,3,wl
""", cols_are_samples(1, "A", "4-8", "B,D,F", volume=2), sep=","),
)  # fmt: skip
