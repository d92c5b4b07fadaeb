"""Invented sheets, lot twenty-seven: each with what a person reads in it. Written before any of them was tried."""

# ruff: noqa: E501

from __future__ import annotations

from tests.reading.intake.by_eye.expectations import Sheet, cols_are_samples, long, rows_are_samples, sheet

SHEETS: tuple[Sheet, ...] = (
sheet("report-table-feature-over-fill-over-sample", """
Table 9: Charred plant remains from Areas A and B
|Area|A|A|A|B|B
|Feature|1003|1003|1017|2004|2031
|Fill|1004|1005|1018|2005|2033
|Sample|101|102|107|210|222
|Volume processed (L)|9|9|18|27|9
|Flot volume (ml)|12|10|44|160|8
Cereals|||||||
Triticum dicoccum/spelta|hulled wheat grain|3|1|8|22|
Triticum dicoccum/spelta|hulled wheat glume base|12|4|31|88|2
Hordeum vulgare|barley grain|2|2|4|12|1
Cerealia|indeterminate cereal grain|8|6|14|41|3
Other food plants|||||||
Corylus avellana|hazelnut shell fragments|4||12|1|8
Malus/Pyrus|apple/pear pip|||1||
Wild species|||||||
Persicaria maculosa|redshank|2||1|4|
Plantago lanceolata|ribwort plantain|1||3|2|
Danthonia decumbens|heath-grass|||4|8|1
Unidentified||3|2|4|8|1
""", cols_are_samples(5, "A", "9-12,14-15,17-20", "C-G", volume=6)),
sheet("csv-from-spreadsheet-with-notes-and-blank-columns", """
Sample,,Context,,Volume L,,Maize kernel,Maize cupule,Bean,Squash,,Hickory,Acorn,Walnut,,Chenopod,Sumpweed,Maygrass,,Notes
FS-1,,C4,,10,,12,33,1,,,102,4,,,22,3,104,,good preservation
FS-2,,C4,,10,,3,8,,,,44,,1,,8,,31,,
FS-7,,C11,,8,,,2,,1,,12,,,,1,1,4,,rodent disturbance
FS-9,,C12,,12,,44,208,4,,,31,2,,,102,12,8,,
""", rows_are_samples("A", 1, "2-5", "G-J,L-N,P-R", volume="E", context="C"), sep=","),
sheet("counts-with-row-of-dates-and-lab-numbers", """
Sample,S5,S9,S14,S20
Provenience,House 2 floor,House 2 hearth,Pit 6,Midden A
Radiocarbon age BP,890±40,870±40,,640±30
Lab no.,INV-1,INV-2,,INV-3
Sediment volume (l),10,5,12,20
Zea mays kernel frag.,12,33,4,8
Zea mays cupule,44,102,12,22
Zea mays cob frag.,1,2,,
Helianthus annuus achene,3,1,,2
Cucurbita pepo seed,1,,2,
Nicotiana sp. seed,,4,,
Rhus sp. seed,2,1,8,3
Grass stem,12,8,1,
""", cols_are_samples(1, "A", "6-13", "B-E", volume=5), sep=","),
sheet("long-form-with-family-and-total-lines-per-sample", """
Sample|Family|Taxon|Part|N
AB1|Poaceae|Hordeum vulgare|grain|12
AB1|Poaceae|Triticum sp.|grain|3
AB1|Fabaceae|Lens culinaris|seed|2
AB1||Total||17
AB2|Poaceae|Hordeum vulgare|grain|4
AB2|Rosaceae|Prunus sp.|endocarp|1
AB2||Total||5
""", long("A", "C", "2-4,6-7", count="E")),
sheet("chinese-english-mixed", """
样品号|单位|Period|土量(L)|粟 Setaria italica|黍 Panicum miliaceum|稻 Oryza sativa|小麦 Triticum aestivum|大豆 Glycine max|狗尾草 Setaria viridis|藜 Chenopodium|未知
2019F1|H12|龙山|10|1204|102|3||4|33|8|12
2019F2|H15|龙山|12|301|22||1||12|2|4
2019F5|H31|二里头|8|88|12|1|12|2|4|1|1
2019F8|G3|二里头|20|602|44|8|31|12|22|12|9
""", rows_are_samples("A", 1, "2-5", "E-L", volume="D", phase="C")),
sheet("hunter-gatherer-shell-midden-weights-and-counts", """
,Column A,,,Column B,,
Level,1,2,3,1,2,3
Liters,4,4,4,4,4,3.5
Charcoal (g),1.20,2.33,0.91,3.10,2.08,0.44
Hazelnut shell (n),12,31,8,44,12,3
Hazelnut shell (g),0.22,0.61,0.12,0.88,0.19,0.04
Salal seed (n),8,12,,22,4,1
Elderberry seed (n),102,88,31,204,61,12
Camas bulb frag. (n),1,,,2,1,
Conifer needle (n),33,12,4,18,8,2
""", lambda grid: (
    {f"{'ABCDEFG'[c]}{r}": (f"{'Column A' if c < 4 else 'Column B'} {grid[1][c]}", grid[r - 1][0], "g" if "(g)" in grid[r - 1][0] else "n")
     for r in range(4, 11) for c in range(1, 7) if grid[r - 1][c]},
    {("Column A 1", "volume"): "4", ("Column B 3", "volume"): "3.5"},
), sep=","),
sheet("dutch-dots-and-crosses", """
Monster|1|2|3|4
Spoor|12|14|14|22
Volume (liter)|5|5|3|5
Cultuurgewassen||||
Triticum dicoccon, korrel|12|4|.|31
Triticum dicoccon, kafbasis|33|8|1|102
Hordeum vulgare, korrel|4|.|.|8
Linum usitatissimum, zaad|.|1|.|2
Akkeronkruid||||
Chenopodium album, zaad|104|33|12|61
Persicaria lapathifolia, vrucht|22|8|.|12
houtskool|++|+|+|+++
""", cols_are_samples(1, "A", "5-8,10-12", "B-E", volume=3)),
sheet("sum-by-taxon-with-samples-as-letters", """
Taxa,a,b,c,d,e,f,Sum,Mean,SD
Quercus,12,33,4,18,22,9,98,16.3,10.4
Pinus,44,12,8,31,2,14,111,18.5,15.8
Fraxinus,3,1,,4,8,2,18,3.0,2.8
Salix/Populus,1,4,2,,1,3,11,1.8,1.5
Ulmus,,2,1,3,,1,7,1.2,1.2
Sum,60,52,15,56,33,29,245,,
""", cols_are_samples(1, "A", "2-6", "B-G"), sep=","),
sheet("archive-sheet-with-repeated-site-and-part-codes", """
Site,Samp,Cxt,Litres,HordG,HordR,TrDiG,TrDiGB,TrSpGB,CerInd,Avena,Corylus,Weeds,Tot
Long Down,1,104,20,12,1,3,22,4,31,2,8,44,127
Long Down,2,107,20,3,,1,8,,12,,1,12,37
Long Down,4,131,30,44,8,12,104,31,88,12,3,204,506
Low Barn,1,12,10,1,,,2,12,4,,12,8,39
Low Barn,3,15,10,,,,1,8,2,,31,3,45
""", lambda grid: (
    {f"{'ABCDEFGHIJKLM'[c]}{r}": (f"{grid[r - 1][0]} {grid[r - 1][1]}", "", "n") for r in range(2, 7) for c in range(4, 13) if grid[r - 1][c]},
    {("Long Down 1", "volume"): "20"},
), sep=","),
sheet("norse-farm-with-parts-in-own-head-row", """
Sample||Hordeum vulgare|Hordeum vulgare|Avena sp.|Cereal|Calluna vulgaris|Calluna vulgaris|Carex sp.|Empetrum nigrum|Seaweed
||grain|rachis|grain|grain frags|leaf|flower|nutlet|fruitstone|frond frag.
Context|Vol (l)|||||||||
M1|4|12|3|8|22|102|12|4|31|2
M2|4|3||1|8|44|3|12|8|
M5|6|31|8|22|61|12|1|3|2|12
""", rows_are_samples("A", 1, "4-6", "C-K", volume="B")),
sheet("percent-sorted-and-multiplied-counts-marked", """
Sample|201|203|209
Fraction sorted|1/4|1|1/2
Litres|40|10|20
Wheat grain|31|4|12
Wheat glume base|208|3|33
Barley grain|12|1|8
Total (sorted)|251|8|53
Total (multiplied)|1004|8|106
Items per litre|25.1|0.8|5.3
""", cols_are_samples(1, "A", "4-6", "B-D", volume=3)),
sheet("feature-list-small-taxa-columns-with-question-marks", """
Feature #,Level,Vol,Corn cob,Corn kernel,Bean?,Squash seed,Cotton,Agave fiber,Mesquite,Saguaro,Cheno-am,Tansy mustard,Unk 1,Unk 2
12,1,4,3,12,,1,,2,8,,33,4,1,
12,2,4,1,3,1,,,1,2,1,12,1,,1
20,floor,6,12,44,2,,3,,12,4,104,22,2,
31,hearth,2,4,8,,,1,,31,2,201,8,,3
""", lambda grid: (
    {f"{'ABCDEFGHIJKLMNO'[c]}{r}": (f"{grid[r - 1][0]} {grid[r - 1][1]}", grid[0][c], "n") for r in range(2, 6) for c in range(3, 15) if grid[r - 1][c]},
    {("12 1", "volume"): "4"},
), sep=","),
)  # fmt: skip
