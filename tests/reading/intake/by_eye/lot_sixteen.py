"""Invented sheets, lot sixteen: each with what a person who looks at it reads. Written before any of them was tried."""

# ruff: noqa: E501

from __future__ import annotations

from tests.reading.intake.by_eye.expectations import Sheet, both, cols_are_samples, long, rows_are_samples, sheet

SHEETS: tuple[Sheet, ...] = (
sheet("saxon-settlement-two-line-sample-heads", """
Table 22. Charred plant remains: sunken-featured buildings
|SFB 1|SFB 1|SFB 2|SFB 2|SFB 5
|primary fill|upper fill|primary fill|posthole|primary fill
Context|210|208|340|352|611
Sample|<21>|<20>|<33>|<36>|<58>
Litres|38|40|32|8|40
CEREALS|||||
Hordeum vulgare L. - hulled grain|33|12|5||104
Hordeum sp. - rachis int.|2||1||9
Triticum aestivum type - grain|8|3|||22
Triticum sp. - rachis node|||||3
Secale cereale L. - grain|4|1||1|13
Cereal NFI|51|18|9|3|97
Cereal frags (est. whole)|c.30|c.10|<5||c.60
OTHER CROPS|||||
Pisum/Vicia|1||||2
Linum usitatissimum L.|||2||1
WEEDS|||||
Agrostemma githago L.|3|||||
Anthemis cotula L.|11|2|||41
Galium aparine L. (>2mm)|2||1||5
Poaceae (small)|4|6||1|12
* = uncharred||||||
""", cols_are_samples(5, "A", "8-14,16-17,19-22", "B-F", volume=6, context=4)),
sheet("levant-long-multi-counts-per-row", """
Season,Area,Locus,Basket,Sample,Vol_l,Taxon,Grain,Chaff,Seed,Fruit_frag,Comments
2016,B,1204,12041,BF-3,8,Hordeum,14,3,,,
2016,B,1204,12041,BF-3,8,Triticum free-threshing,8,12,,,
2016,B,1204,12041,BF-3,8,Olea europaea,,,2,31,
2016,B,1211,12113,BF-7,10.5,Vicia ervilia,,,104,,cache?
2016,B,1211,12113,BF-7,10.5,Lolium,,,22,,
2017,C,1400,14002,BF-22,6,Ficus carica,,,301,2,
2017,C,1400,14002,BF-22,6,Hordeum,1,,,,
""", both(
    long("E", "G", "2-8", count="H", volume="F"),
    long("E", "G", "2-8", count="I"),
    long("E", "G", "2-8", count="J"),
    long("E", "G", "2-8", count="K"),
), sep=","),
sheet("great-plains-xlsx-merged-house", """
Macrobotanical Remains, Lodge 2||||||||
Provenience|Hearth|||Cache pit 3|||Post 7|
|Ct|Wt (g)|Ubiq.|Ct|Wt (g)|Ubiq.|Ct|Wt (g)
Liters|14|||22|||2|
Corn kernels|120|2.41|1.0|88|1.90|1.0|2|0.04
Corn cupules|300|1.12|1.0|140|0.66|1.0|1|0.01
Corn embryos|12|0.10|0.5|3|0.02|0.5||
Beans|4|0.22|0.3|31|2.60|1.0||
Sunflower|1|0.01|0.1|12|0.08|0.8||
Marsh elder|||0.0|5|0.02|0.2||
Wild plum pits|2|0.61|0.3||||1|0.30
Ground cherry|11|||104||||
""", cols_are_samples(2, "A", "5-12", "B-C,E-F,H-I", mass="C,F,I", fill=True), merge=("A1:I1", "B2:D2", "E2:G2", "H2:I2", "B4:D4", "E4:G4", "H4:I4")),
sheet("korean-flotation", """
유적,유구,시료번호,시대,토양량(L),벼,조,기장,보리,밀,콩,팥,미동정
가람동,1호 주거지,1,청동기,10,12,44,3,,,8,2,5
가람동,1호 주거지,2,청동기,8,3,12,,,,1,,
가람동,3호 수혈,3,삼국,20,101,8,1,33,12,22,14,9
가람동,5호 구,4,삼국,5,,,,2,1,,,1
""", rows_are_samples("C", 1, "2-5", "F-M", volume="E"), sep=","),
sheet("tropics-phytolith-free-macro-with-cm-levels", """
Rock shelter Unit 2
Level (cm),0-10,10-20,20-30,30-40,40-50
Layer,I,I,II,II,III
Sediment (L),12,12,10,14,8
Arecaceae endocarp (ct),12,33,44,8,2
Arecaceae endocarp (g),1.22,3.40,5.01,0.77,0.12
Canarium shell (ct),4,8,12,2,
Canarium shell (g),0.40,0.88,1.31,0.20,
Dioscorea tuber frag (ct),,2,1,,
Dioscorea tuber frag (g),,0.10,0.04,,
Musa seed,,,1,,
Poaceae,3,1,,1,
Wood charcoal >2mm (g),22.1,18.4,30.2,9.9,2.2
""", cols_are_samples(2, "A", "5-13", "B-F", massrows="6,8,10,13", volume=4), sep=","),
sheet("codes-and-slash-values-in-key", """
Lab sheet 4 - whole/frags given as w/f
Taxon|A/1|A/2|A/5|B/1|B/4
vol|10|10|12|8|10
Triticum dicoccum grain|12/4|3/1|0/2||8/10
Hordeum grain|30/11|1/0|4/4|2/0|
Lens|2/1|||1/0|
Vitis pip|0/3|1/1||0/1|4/9
Rumex|3/0|||1/0|
""", cols_are_samples(2, "A", "4-8", "B-F", volume=3)),
sheet("french-silos-rang-effectif", """
Commune : Exempleville - Etude carpologique - carbonisé
N° de fait;N° de prélèvement;Type;Litrage;Taxon;Type de reste;NR;NMI;Remarque
F12;3;silo;20;Triticum dicoccum;caryopse;12;10;
F12;3;silo;20;Triticum dicoccum;base de glume;104;;
F12;3;silo;20;Hordeum vulgare;caryopse;33;29;germé
F15;7;silo;15;Lens culinaris;graine;8;8;
F15;7;silo;15;Galium aparine;graine;14;14;
F22;11;foyer;5;Corylus avellana;péricarpe;41;1;fragments
""", long("B", "E", "3-8", count="G", volume="D"), sep=";"),
sheet("summary-site-by-century", """
Mineralised and charred plant remains from cesspits, Market Street
Date|12th c.|12th c.|13th c.|14th c.|15th c.
Cesspit|C1|C2|C2|C5|C9
Sample no.|14|18|19|33|41
Sample vol. (ml)|1000|1000|500|1000|2000
Charred|||||
Triticum aestivum|3|1||2|
Avena sativa|1|||4|1
Mineralised|||||
Prunus domestica s.l.|12|3|1|8|22
Vitis vinifera|4||2|11|30
Ficus carica|100+|33|12|500+|1000+
Malus/Pyrus|8|1||3|12
Waterlogged|||||
Sambucus nigra|2|14|3||5
Conium maculatum||1|||2
""", cols_are_samples(4, "A", "7-8,10-13,15-16", "B-F", phase=2)),
sheet("taxon-first-sample-pairs-with-total-middle", """
Taxon,Feature 2 Level 1,Feature 2 Level 2,Feature 2 Total,Feature 5 Level 1,Feature 5 Level 2,Feature 5 Total,Site Total
Soil volume (liters),10,12,22,9,8,17,39
Acorn shell,40,22,62,8,3,11,73
Hickory shell,310,120,430,88,41,129,559
Maize,4,1,5,12,8,20,25
Sumac,2,,2,1,,1,3
Grape,,1,1,3,4,7,8
Purslane,14,3,17,,2,2,19
""", cols_are_samples(1, "A", "3-8", "B-C,E-F", volume=2), sep=","),
sheet("roman-military-per-context-list-side-notes", """
Fort granary, plant macrofossils (all charred)
Context|Sample|Soil (litres)|Item|Number|Comment
501|5|20|Spelt grain|402|well preserved
||| Spelt glume bases|88|
|||Barley grain|12|2 sprouted
|||Corncockle|33|
502|6|30|Spelt grain|41|
|||Brome|8|
|||Heath-grass|14|
510|9|10|Barley grain|3|
""", long("B", "D", "3-10", count="E", fills=True, volume="C", context="A")),
)  # fmt: skip
