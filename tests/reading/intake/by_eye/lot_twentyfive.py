"""Invented sheets, lot twenty-five: each with what a person reads in it. Written before any of them was tried."""

# ruff: noqa: E501

from __future__ import annotations

from tests.reading.intake.by_eye.expectations import Sheet, cols_are_samples, long, rows_are_samples, sheet

SHEETS: tuple[Sheet, ...] = (
sheet("vhaa-style-esm-with-family-and-vernacular", """
ESM 1 Charred plant macroremains by sample (n = number of items)
Family|Scientific name|Vernacular|Plant organ|GS-1|GS-2|GS-4|GS-7|GS-9
||||EIA|EIA|MIA|MIA|LIA
||||silo|silo|house|silo|pit
||||15 L|15 L|30 L|10 L|20 L
Poaceae|Hordeum vulgare subsp. vulgare|hulled barley|caryopsis|33|12|102|8|14
Poaceae|Triticum aestivum/durum|naked wheat|caryopsis|4|1|22||3
Poaceae|Triticum dicoccum|emmer|caryopsis|12|3|8|2|
Poaceae|Triticum dicoccum|emmer|glume base|8|2|31||
Poaceae|Panicum miliaceum|broomcorn millet|caryopsis||||44|12
Fabaceae|Vicia faba|broad bean|seed|1||4||2
Vitaceae|Vitis vinifera|grapevine|pip|||3|8|31
Amaranthaceae|Chenopodium album|fat hen|seed|102|44|12|3|
|Indeterminate|||8|4|21|2|6
""", cols_are_samples(2, "B", "6-14", "E-I")),
sheet("usa-crm-appendix-with-site-number-feature", """
Site No.,Feature,Flot No.,Volume (L),Heavy/Light,Carya shell (ct),Carya shell (wt),Quercus shell (ct),Quercus shell (wt),Zea mays kernel (ct),Zea mays kernel (wt),Zea mays cupule (ct),Zea mays cupule (wt),Chenopodium (ct),Polygonum (ct),Wood (wt)
46XX12,1,101,10,Light,33,0.41,2,0.01,4,0.05,22,0.11,44,3,2.31
46XX12,1,102,10,Light,21,0.22,,,1,0.01,8,0.04,12,,1.10
46XX12,4,110,8,Light,102,1.80,12,0.04,,,3,0.01,8,1,0.88
46XX12,9,131,12,Light,12,0.11,1,0.01,31,0.44,204,1.02,301,22,4.40
""", rows_are_samples("C", 1, "2-5", "F-P", mass="G,I,K,M,P", volume="D"), sep=","),
sheet("german-anhang-with-befund-and-schicht", """
Anhang 4: Liste der Pflanzenreste;;;;;
Fundkomplex;;FK 12;FK 15;FK 21;FK 30
Struktur;;Grube 3;Grube 3;Ofen 1;Graben
Datierung;;SLT;SLT;FRZ;FRZ
Volumen (l);;8,5;10;12;6
Anzahl Reste pro Liter;;9,3;4,2;31,5;2,0
Taxon;Resttyp;;;;
Kulturpflanzen;;;;;
Hordeum vulgare;Korn;22;8;102;3
Triticum spelta;Korn;12;4;88;1
Triticum spelta;Hüllspelzenbasis;31;18;140;4
Panicum miliaceum;Korn;4;;22;
Lens culinaris;Same;1;;4;
Wildpflanzen;;;;;
Bromus secalinus;Korn;4;8;12;
Rumex acetosella;Frucht;3;2;8;2
Galium spurium;Frucht;2;2;2;2
Total;;79;42;378;12
""", cols_are_samples(2, "A", "9-13,15-17", "C-F", volume=5, phase=4), sep=";"),
sheet("two-tables-one-below-other-grain-then-wood", """
Table 3a. Charred seeds
Sample|10|12|14
Barley grain|12|3|1
Wheat grain|8||2
Vetch|2|1|

Table 3b. Wood charcoal (fragments)
Sample|10|12|14
Oak|33|12|4
Hazel|8|2|11
Ash|1||3
Indeterminate|4|2|1
""", lambda grid: (
    {f"{'ABCD'[c]}{r}": (grid[1][c], grid[r - 1][0], "n") for r in (3, 4, 5, 9, 10, 11, 12) for c in (1, 2, 3) if grid[r - 1][c]},
    {},
)),
sheet("sample-rows-with-cultural-codes-and-abbrev-species", """
Nr,FS,Bldg,Space,Phase,Lit,H. vulg. gr,H. vulg. rach,T. dic. gr,T. dic. gb,T. mono. gb,NGW gb,Len cul,Pis sat,Sch. sp.,Bol. gl.,Amyg. sh,Celtis (min)
1,12014,B5,S154,VII,30,4,1,2,104,33,12,8,2,22,4,1,12
2,12031,B5,S157,VII,30,12,,8,61,12,44,31,,12,31,,4
3,13122,B17,S182,VI,25,1,,,22,8,4,1,,204,102,2,33
4,13140,B17,S182,VI,30,33,8,12,301,102,61,4,8,12,8,,1
""", rows_are_samples("B", 1, "2-5", "G-R", volume="F", phase="E"), sep=","),
sheet("latin-american-fauna-and-flora-together", """
Unidad|Nivel|Vol (L)|Semillas: Chenopodium|Semillas: Malvaceae|Maíz (granos)|Maíz (corontas)|Algodón (semillas)|Ají (semillas)|Lúcuma (frag.)|Huesos de pez|Moluscos
U1|1|10|22|4|12|1|33|2|4|102|+
U1|2|10|8||4||12|1|8|44|++
U2|1|5|104|12|31|3|8|12||12|+
U2|3|5|3|1||||||8|
""", lambda grid: (
    {f"{'ABCDEFGHIJKL'[c]}{r}": (f"{grid[r - 1][0]} {grid[r - 1][1]}", "", "n") for r in range(2, 6) for c in range(3, 10) if grid[r - 1][c]},
    {},
)),
sheet("polish-czech-long", """
Lokalita;Objekt;Vzorek;Objem (l);Druh;Typ zbytku;Počet;Poznámka
Háj;12;1;10;Triticum dicoccum;obilka;14;
Háj;12;1;10;Triticum dicoccum;pleva;33;báze
Háj;12;2;12;Hordeum vulgare;obilka;8;
Háj;15;3;9,5;Chenopodium album;semeno;102;
Háj;15;3;9,5;Corylus avellana;skořápka;2;
""", long("C", "E", "2-6", count="G", volume="D", context=None), sep=";"),
sheet("ordinal-codes-with-key-below-table", """
Sample,A,B,C,D,E
Depth m,0.2,0.4,0.6,0.8,1.0
Alnus glutinosa catkin,1,2,3,3,1
Betula sp. fruit,2,2,1,,1
Carex sp. nutlet,3,5,4,4,2
Menyanthes trifoliata seed,,1,2,4,1
Sphagnum sp. leaf,1,1,4,5,5
Abundance: 1 = 1-2; 2 = 3-10; 3 = 11-30; 4 = 31-100; 5 = >100,,,,,
""", lambda grid: (
    {f"{'ABCDEF'[c]}{r}": (grid[0][c], grid[r - 1][0], "x") for r in range(3, 8) for c in range(1, 6) if grid[r - 1][c]},
    {},
), sep=","),
sheet("counts-per-context-with-flot-weight-and-sherds", """
Context|Feature|Flotation volume (L)|Light fraction weight (g)|Wood >2mm (n)|Wood >2mm (g)|Acorn (n)|Hickory (n)|Maize kernels (n)|Maize cupules (n)|Seeds (n)|Sherds (n)|Lithics (n)
101|Pit 1|10|22.1|88|1.31|2|12|4|22|31|12|3
102|Pit 1|10|18.0|41|0.80||8|1|3|12|8|1
120|Hearth 2|6|31.4|204|4.40|1|3|12|88|4||2
131|Posthole 9|3|4.0|12|0.11||||2||1|
""", rows_are_samples("A", 1, "2-5", "E-K", mass="F", volume="C")),
sheet("sheet-with-sample-totals-first-and-sections-in-caps", """
|SAMPLE 21|SAMPLE 22|SAMPLE 30
CONTEXT|2104|2110|2207
VOLUME FLOATED|40|40|20
TOTAL CHARRED ITEMS|88|23|187
ITEMS PER LITRE|2.2|0.6|9.4
CEREALS|||
WHEAT GRAIN|12|4|31
BARLEY GRAIN|8|3|12
INDETERMINATE CEREAL|22|8|40
CHAFF|||
SPELT GLUME BASES|31|4|88
WILD|||
DOCKS|4|2|8
BROMES|8|1|3
LARGE GRASSES|3|1|5
""", cols_are_samples(1, "A", "7-9,11,13-15", "B-D", volume=3, context=2)),
sheet("phase-summary-with-ubiquity-beside-count", """
|Early Hamlet||Late Hamlet||Abandonment|
Taxon|n|ubiq.|n|ubiq.|n|ubiq.
Zea mays kernels|44|60%|102|80%|3|20%
Zea mays cupules|301|80%|812|100%|12|40%
Phaseolus vulgaris|4|20%|12|30%||
Helianthus annuus|12|30%|8|20%|1|10%
Carya nutshell|1204|100%|802|100%|33|60%
Vitis seeds|8|20%|31|40%|2|10%
""", cols_are_samples(1, "A", "3-8", "B,D,F")),
sheet("dash-for-absent-and-plus-for-uncounted-mixed", """
Context|31|34|40|52
Sample|3|4|9|12
Flot vol (ml)|20|15|80|10
Sample vol (l)|20|20|40|10
Hulled wheat|12|–|44|2
Hulled wheat chaff|+|–|+++|+
Barley|4|1|22|–
Pea|–|–|2|–
Stinking chamomile|1|–|31|–
Hazel nutshell|–|2|1|–
Roots (modern)|++|+++|+|+++
Key: + present, ++ common, +++ abundant
""", cols_are_samples(2, "A", "5-10", "B-E", volume=4, context=1)),
)  # fmt: skip
