"""Invented sheets, lot thirty-one: each with what a person reads in it. Written before any of them was tried."""

# ruff: noqa: E501

from __future__ import annotations

from tests.reading.intake.by_eye.expectations import Sheet, cols_are_samples, rows_are_samples, sheet

SHEETS: tuple[Sheet, ...] = (
sheet("report-table-with-interpretation-row", """
Table 3. Charred plant macrofossils from pits and postholes
||Context|14|22|31|40
||Sample|<1>|<4>|<7>|<9>
||Interpretation|Pit|Pit|Posthole|Hearth
||Spot date|LBA|LBA|EIA|EIA
||Soil volume (L)|10|20|5|8
||Estimated % of flot sorted|100|50|100|25
Latin Binomial|English|Plant Part||||
Hordeum vulgare|Hulled barley|Grain|12|33|2|8
Triticum dicoccum|Emmer|Grain|3|8||1
Triticum dicoccum|Emmer|Glume base|22|61|1|4
Triticum dicoccum|Emmer|Spikelet fork|4|12||
Linum usitatissimum|Flax|Seed|1|4||
Corylus avellana|Hazel|Nutshell frag.|8|3|12|
Rumex sp.|Dock|Nutlet|2|8|1|1
Persicaria lapathifolia|Pale persicaria|Nutlet|12|44|3|8
Total remains|||64|173|19|22
""", cols_are_samples(3, "A", "9-16", "D-G", volume=6, context=2)),
sheet("csv-one-line-per-sample-mixed-meta-at-end", """
sample,barley_grain,emmer_grain,emmer_glume_base,cereal_indet,lentil,pea,grass_pea,grape_pip,fig_seed,wild_seeds,site,phase,volume_l,excavator_notes
AK-1,12,4,33,22,3,1,0,2,104,31,AK,Early,10,burnt layer
AK-2,3,1,8,6,0,0,1,0,12,8,AK,Early,8,
AK-5,44,12,102,61,8,2,4,1,31,44,AK,Late,20,near wall
BN-1,1,0,2,3,0,0,0,0,4,2,BN,Late,5,
""", rows_are_samples("A", 1, "2-5", "B-K", volume="N", phase="M"), sep=","),
sheet("counts-by-level-with-charcoal-weight-first", """
Plant taxon|Lev. 1|Lev. 2|Lev. 3|Lev. 4|Lev. 5
Volume floated (l)|8|8|8|8|4
Wood charcoal (g)|2.10|4.41|8.02|3.30|0.40
Carya sp. nutshell|12|44|102|31|2
Quercus sp. nutshell|3|8|22|4|
Juglans nigra nutshell||1|4||
Vitis sp. seed|1||3|1|
Chenopodium sp. seed|4|12|31|8|1
Phalaris caroliniana grain||8|12|2|
Zea mays cupule|22|4|||
Indeterminate seed|2|3|8|1|
""", cols_are_samples(1, "A", "3-11", "B-F", volume=2, massrows="3")),
sheet("french-long-inrap-like-no-brand", """
N° US;N° prélèvement;Volume brut (L);Taxon;Organe;Mode de conservation;Nombre;Fragments;Observations
1204;12;20;Hordeum vulgare;caryopse;carbonisé;44;12;
1204;12;20;Triticum aestivum;caryopse;carbonisé;31;8;
1204;12;20;Vitis vinifera;pépin;minéralisé;3;;
1210;14;15;Ficus carica;akène;minéralisé;204;;
1210;14;15;Corylus avellana;coquille;carbonisé;;8;
1301;20;30;Galium aparine;graine;carbonisé;2;1;
""", lambda grid: (
    {f"{c}{r}": (grid[r - 1][1], grid[r - 1][3], "n") for r in range(2, 8) for c, k in (("G", 6), ("H", 7)) if grid[r - 1][k]},
    {("12", "volume"): "20", ("14", "context"): "1210"},
), sep=";"),
sheet("semi-quantitative-wells", """
Well no.|1|1|2|2|3
Sample|101|102|201|202|301
Context|upper fill|primary fill|upper fill|primary fill|fill
Volume (litres)|1|1|1|1|0.5
Ranunculus sceleratus|+|+++|+|++|
Urtica dioica|++|+++|++|+++|+
Sambucus nigra|+||++|+|+
Prunus spinosa (stones)||+||++|
Linum usitatissimum (capsule frags)||++|||
Triticum spelta (glume bases, charred)|+|+|||++
Key: + 1-10, ++ 11-50, +++ >50 items
""", cols_are_samples(2, "A", "5-10", "B-F", volume=4)),
sheet("wood-charcoal-with-diameters-ignored", """
Context,Sample,Quercus,Fraxinus,Corylus,Prunus,Maloideae,Acer,Alnus,Indet.,Total
1004,11,44,12,8,3,2,,1,5,75
1009,14,31,,22,1,4,2,8,4,72
1022,20,12,3,61,,1,,12,11,100
1040,31,88,4,2,1,,1,,4,100
""", rows_are_samples("B", 1, "2-5", "C-J", context="A"), sep=","),
sheet("three-sections-with-counts-and-section-totals-first", """
Site 11 (invented)||||
Sample no.|21|22|23|27
Feature|Pit 4|Pit 4|Pit 8|Ditch 2
Litres|20|20|10|40
Cereal grain (total)|38|12|5|20
Triticum spp.|22|8|4|12
Hordeum spp.|12|3|1|6
Avena spp.|4|1||2
Chaff (total)|56|15|1|12
Spelt glume bases|44|12|1|8
Emmer glume bases|12|3||4
Weeds (total)|26|7|2|46
Atriplex spp.|12|4|2|31
Fallopia convolvulus|6|1||3
Galium aparine|8|2||12
""", cols_are_samples(2, "A", "6-8,10-11,13-15", "B-E", volume=4)),
sheet("southwest-site-by-room-with-percent-ubiquity-behind", """
Taxon (part),Rm 1,Rm 2,Rm 5,Plaza,Midden,Ubiquity (%)
Liters,2,2,4,4,4,
Zea mays (cupule),12,44,102,3,31,100
Zea mays (kernel),1,4,12,,2,80
Phaseolus (cotyledon),,1,2,,,40
Cucurbita (rind),,,1,,1,40
Gossypium (seed),2,,4,,,40
Cheno-am (seed),33,12,204,8,44,100
Portulaca (seed),1,4,12,2,3,100
Prosopis (seed),,2,1,,,40
Carnegiea gigantea (seed),3,1,8,,,60
""", cols_are_samples(1, "A", "3-11", "B-F", volume=2), sep=","),
sheet("near-east-rows-with-locus-basket-and-notes", """
Area|Locus|Basket|Sample #|Stratum|Description|Liters|Barley|Emmer|Free-thr. wheat|Cereal frags|Lentil|Bitter vetch|Olive stone|Grape pip|Fig|Wild grasses|Remarks
D|4012|40120|1|8|floor makeup|14|12|3|1|22|4|2|33|8|102|12|
D|4015|40144|2|8|tabun|10|3|1||6|1||12|2|31|44|ash
E|5003|50021|3|7|pit|20|31|12|4|61|12|8|44|12|204|8|
E|5010|50066|4|7|street|16|1|||3|||8|1|12|2|
""", rows_are_samples("D", 1, "2-5", "H-Q", volume="G", context="B")),
sheet("simple-transposed-with-dates-and-blank-counts", """
Taxon,Sample 1,Sample 2,Sample 3
Context,Hut floor,Hearth,Midden
Volume,5 litres,2 litres,10 litres
Hulled barley,12,44,8
Naked barley,3,12,
Emmer,,2,1
Crowberry,8,1,44
Heather (leaves),22,3,102
Seaweed fragments,1,,12
Sedge nutlets,4,,31
""", cols_are_samples(1, "A", "4-10", "B-D", volume=None), sep=","),
)  # fmt: skip
