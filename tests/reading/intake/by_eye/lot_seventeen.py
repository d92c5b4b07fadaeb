"""Invented sheets, lot seventeen: each with what a person who looks at it reads. Written before any of them was tried."""

# ruff: noqa: E501

from __future__ import annotations

from tests.reading.intake.by_eye.expectations import Sheet, cols_are_samples, rows_are_samples, sheet

SHEETS: tuple[Sheet, ...] = (
sheet("southwest-taxa-rows-with-condition-and-part", """
Table 14.2. Plant remains from Pit Structure 3 flotation samples
||PL 12|PL 14|PL 15|FS 90
||Hearth|Floor|Floor|Vent
||1.0 L|2.0 L|2.0 L|1.0 L
Taxon|Part/Condition|||
Atriplex|fruit, charred|4|1||
Atriplex|wood, charred|12|3|8|2
Cheno-am|seed, charred|103|44|12|3
Cheno-am|seed, uncharred||2|31|
Juniperus|twig, charred|2||1|4
Zea mays|cupule, charred|31|12|7|
Zea mays|embryo, charred|1|||
Pinus edulis|nutshell, charred||||2
""", cols_are_samples(2, "A", "6-13", "C-F", volume=4)),
sheet("coastal-pit-columns-weights-first", """
Feature No.;Feature Type;Sample No.;Litres;Charcoal wt (g);Nutshell wt (g);Nutshell n;Rhizome wt (g);Rhizome n;Seeds n;Fern frond n;Bulb n;Remarks
4;earth oven;1;12;44.2;0.31;22;1.20;4;12;;3;
4;earth oven;2;12;30.1;0.02;1;0.44;2;3;1;;
9;pit;3;10;2.1;;;;;;;;sterile but for charcoal
11;hearth;4;8;12.9;1.12;80;;;31;;;
""", rows_are_samples("C", 1, "2-5", "E-L", mass="E,F,H", volume="D"), sep=";"),
sheet("austrian-wide-three-header-rows", """
Fundort|Musterdorf|||||
Schnitt|1|1|2|2|3
SE|14|15|33|34|51
Probe|A|B|C|D|E
Liter|10|12|8|10|4
Taxon/Resttyp|Anzahl|Anzahl|Anzahl|Anzahl|Anzahl
Panicum miliaceum Karyopse|204|31|12|88|3
Setaria italica Karyopse|12|2||8|
Hordeum vulgare Karyopse|8|3|1|12|1
Triticum spelta Hüllspelzenbasis|41|12|3|22|
Cerealia Karyopsenfragment|33|12|8|14|2
Vicia faba Same|1|||2|
Sambucus ebulus Steinkern|3|1||4|12
Summe|302|61|24|150|18
""", cols_are_samples(4, "A", "7-13", "B-F", volume=5, context=3)),
sheet("aegean-room-phase-id-composite", """
Building,Room,Unit,Bag,Soil vol.,Date,Olive stone frag,Olive stone whole,Grape pip,Grape skin,Fig nutlet,Almond shell frag,Barley grain,Emmer grain,Emmer glume base,Bitter vetch,Lentil,Grass pea,Weed/wild,Sum
West,3,310,1,10,LM IB,41,3,12,1,220,2,8,3,14,,2,,31,337
West,3,312,2,20,LM IB,12,,4,,88,,,1,3,,,1,12,121
West,4,330,1,10,LM II,120,14,33,8,401,12,22,4,8,104,3,44,19,792
East,1,401,1,8,LM II,4,,1,,12,,,,,,,,4,21
""", rows_are_samples(("C", "D"), 1, "2-5", "G-S", volume="E", phase="F"), sep=","),
sheet("upper-midwest-two-column-taxon-english-latin", """
Common Name|Scientific Name|F. 12 N½|F. 12 S½|F. 14|F. 20|Total
Light fraction volume (ml)||120|80|44|210|454
Soil processed (L)||10|10|6|20|46
Wild rice|Zizania palustris|412|220|12|1004|1648
Maize kernel|Zea mays|3|1||2|6
Maize cupule|Zea mays|8|4||1|13
Chenopod|Chenopodium sp.|22|18|104|3|147
Raspberry|Rubus idaeus|1|||4|5
Hazelnut shell|Corylus sp.|12|8||33|53
Acorn meat|Quercus sp.|2||1||3
Bulrush|Schoenoplectus sp.|3|||12|15
Unidentified seed||4|2|1|8|15
""", cols_are_samples(1, "A", "4-12", "C-F", volume=3)),
sheet("italian-presenze-e-conteggi", """
Scheda;US;Campione;Litri;Cronologia;Orzo;Frumento nudo;Farro;Panico;Favino;Vite;Olivo;Noce;Carboni;Note
1;1004;12;20;X sec.;22;104;3;12;8;1;;+;+++;
2;1010;13;20;X sec.;3;12;;;1;;;;++;
3;1022;18;10;XI sec.;104;331;;22;41;12;3;+;+++;incendio
4;1031;20;5;XI sec.;;2;;;;;;;+;
""", rows_are_samples("C", 1, "2-5", "F-N", volume="D", context="B", phase="E"), sep=";"),
sheet("sum-rows-with-inset-taxa-and-dots", """
                                  |  A-1 | A-2 | A-3 | B-1
Soil sample size (liters)         |  10  | 10  | 10  | 5
ALL NUTS ......................   |  44  | 12  | 103 | 2
  Hickory ......................  |  40  | 10  | 100 | 2
  Pecan ........................  |  4   | 2   | 3   | 
ALL SEEDS .....................   |  20  | 4   | 31  | 1
  Maygrass .....................  |  12  | 3   | 20  | 
  Chenopod .....................  |  8   | 1   | 10  | 1
  Morning glory ................  |      |     | 1   | 
""", cols_are_samples(1, "A", "4-5,7-9", "B-E", volume=2)),
sheet("presence-by-site-list-yes-no", """
Site,Period,Wheat,Barley,Rye,Oat,Millet,Pea,Bean,Lentil,Flax,Grape
Alder Hill,Roman,yes,yes,no,yes,no,yes,no,yes,no,yes
Brook End,Roman,yes,yes,no,no,no,no,yes,no,yes,no
Cold Farm,Migration,yes,yes,yes,yes,yes,no,no,no,yes,no
Deer Park,Migration,no,yes,yes,yes,no,no,no,no,no,no
""", lambda grid: (
    {f"{'ABCDEFGHIJKL'[c]}{r + 1}": (grid[r][0], grid[0][c], "x") for r in range(1, 5) for c in range(2, 12) if grid[r][c] == "yes"},
    {(grid[r][0], "phase"): grid[r][1] for r in range(1, 5)},
), sep=","),
sheet("chinese-site-taxa-rows-counts-ubiquity", """
种属,H1,H3,H7,F2,总计,出土概率(%)
土量(L),12,10,20,8,50,
农作物,,,,,,
粟 Setaria italica,340,121,44,3,508,100
黍 Panicum miliaceum,22,8,2,,32,75
水稻 Oryza sativa,3,,12,,15,50
杂草,,,,,,
狗尾草属 Setaria sp.,55,20,7,1,83,100
藜属 Chenopodium sp.,8,3,,,11,50
未知,6,2,1,,9,75
""", cols_are_samples(1, "A", "4-6,8-10", "B-E", volume=2), sep=","),
sheet("register-with-unit-row-and-two-blocks-side", """
Sample register||||||Plant remains (no. of items)||||
No.|Context|Feature|Period|Vol|Flot|Barley|Wheat|Chaff|Nutshell|Weeds
||||L|ml||||
1|104|gully|MBA|10|20|3|1||4|2
2|109|pit|MBA|20|60|12|8|2|31|14
3|115|pit|LBA|40|110|104|44|88|12|61
5|140|layer|LBA|10|5||||1|
""", rows_are_samples("A", 2, "4-7", "G-K", volume="E", context="B", phase="D"), merge=("A1:F1", "G1:K1")),
)  # fmt: skip
