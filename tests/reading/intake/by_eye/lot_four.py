"""Invented sheets, lot four: each with what a person who looks at it reads. Written before any of them was tried."""

# ruff: noqa: E501

from __future__ import annotations

from tests.reading.intake.by_eye.expectations import Sheet, both, cols_are_samples, long, rows_are_samples, sheet

SHEETS: tuple[Sheet, ...] = (
sheet("phase-summary", """
Phase|Taxon|Part|No. of samples|Ubiquity %|Total count
1|Hordeum vulgare|grain|4|80|112
1|Triticum spelta|glume base|5|100|400
1|Avena|grain|2|40|9
2|Hordeum vulgare|grain|6|60|41
2|Secale cereale|grain|8|80|333
2|Pisum sativum|seed|1|10|2
""", long("A", "B", "2-7", count="F")),
sheet("rotated-uk", """
Sample No.|Context|Cut|Feature|Date|Vol (L)|Barley grain|Wheat grain|Oat grain|Indet cereal|Glume base|Rachis|Brome|Dock|Vetch|Hazel NS|TOTAL
<1>|(205)|[204]|Ditch|RB|40|2|14|1|30|88|3|12|1|2||153
<2>|(207)|[206]|Pit|RB|40|1|6||11|30||4|||1|53
<5>|(233)|[230]|Oven|RB|30|6|120|4|200|802|9|99|3|8||1251
<8>|(251)|[250]|Grave|Saxon|20||2||1|||||1||4
""", rows_are_samples("A", 1, "2-5", "G-P", volume="F", context="B")),
sheet("sample-col-in-middle", """
Project,Area,Square,Locus,Bag,Type,Date,Count,Taxon,Identified by,Sample,Liters
TQ,III,12,1207,33,flot,2004-06-01,14,Hordeum distichum,NM,TQ-33,6
TQ,III,12,1207,33,flot,2004-06-01,2,Pisum,NM,TQ-33,6
TQ,III,12,1207,34,flot,2004-06-03,40,Triticum dicoccum gb,NM,TQ-34,8
TQ,III,13,1310,41,flot,2004-06-09,1,Ficus carica,NM,TQ-41,6.5
TQ,III,13,1310,41,flot,2004-06-09,8,Hordeum distichum,NM,TQ-41,6.5
TQ,III,13,1311,42,flot,2004-06-09,3,Lolium,RS,TQ-42,7
""", long("K", "I", "2-7", count="H", volume="L"), sep=","),
sheet("taxa-in-two-column-blocks", """
Table 2: Plants identified (counts), Samples 1-4
Taxon|1|2|3|4||Taxon|1|2|3|4
Zea mays|3|1||20||Rubus|1||2|
Cucurbita||2|1|||Sambucus||4|1|
Phaseolus|1|||4||Vitis|2|||1
Helianthus|5|1||||Rhus|||3|2
""", both(cols_are_samples(2, "A", "3-6", "B-E"), cols_are_samples(2, "G", "3-6", "H-K"))),
sheet("header-words-below", """
Taxon|Hearth 1|Hearth 2|Pit 6|Pit 11|Midden
Chenopodium quinoa|104|20|3|8|77
Chenopodium sp.|30|2|1||12
Solanum tuberosum tuber frag.|4||||1
Zea mays kernel|2|9||1|3
Zea mays cob frag.|1|4|||
Phaseolus sp.|||1||
Malvaceae|12|3|||5
Wood (g)|4.2|3.3|0.4|0.9|10.1
Volume (l)|5|5|8|10|20
Seeds per litre|29.6|7|0.6|0.9|4.9
Total|153|38|5|9|98
""", cols_are_samples(1, "A", "2-9", "B-F", massrows="9", volume=10)),
sheet("japanese-long", """
遺跡名,遺構,試料番号,処理量(L),分類群,部位,個数,重量(g),備考
上野台,3号住居,No.1,5,イネ,炭化種子,12,0.15,
上野台,3号住居,No.1,5,アワ,炭化種子,44,0.04,
上野台,3号住居,No.2,4.5,オニグルミ,内果皮破片,31,2.20,
上野台,7号土坑,No.5,8,クリ,果皮破片,6,0.31,破片
上野台,7号土坑,No.5,8,イネ,籾殻,2,,
""", long("C", "E", "2-6", count="G", mass="H", volume="D"), sep=","),
sheet("volume-bottom-nohead", """
|US 1012|US 1014|US 1020|US 1033
Hordeum vulgare, caryopse|14|3|2|
Triticum aestivum/durum, caryopse|30||8|1
Triticum dicoccum, base de glume|4||1|
Lens culinaris, graine|2|1||
Vitis vinifera, pépin|1|12||8
Olea europaea, noyau (frag.)|||6|22
Galium sp., fruit|3||1|
Total restes|54|16|18|31
Volume (L)|20|15|10|12
Densité|2.7|1.07|1.8|2.58
""", cols_are_samples(1, "A", "2-8", "B-E", volume=10)),
sheet("rank-abundance-key", """
Sample|101|102|103|104|105
Period|Roman|Roman|Saxon|Saxon|Medieval
Cereals|||||
Wheat|A|B|C|-|C
Barley|B|-|C|C|-
Chaff|||||
Glume bases|A*|C|-|-|-
Weeds|||||
Brome|B|C|-|C|-
Stinking mayweed|-|-|C|A|B
Key: C = 1-5, B = 6-20, A = 21-100, A* = 100+
""", cols_are_samples(1, "A", "4-5,7,9-10", "B-F", phase=2)),
sheet("samples-as-rows-multi-header-units", """
|||Cereals||||Pulses||Wild|
|||Barley||Wheat||Lentil|Pea|Canary grass|Goosefoot
Sample|Area|Vol.|grain|rachis|grain|gl. base|seed|seed|seed|seed
|||(n)|(n)|(n)|(n)|(n)|(n)|(n)|(n)
201|North|12|20|4|12|60|1||9|3
202|North|10|11|1|4|22||2|4|
207|South|15|3||30|90|6|1|12|40
208|South|9|||2|1||||5
""", rows_are_samples("A", 2, "5-8", "D-K", fill=True, volume="C")),
sheet("mni-nisp", """
Provenience|Zea mays||Prosopis sp.||Phaseolus sp.||Lagenaria sp.||TOTAL NISP
|NISP|Wt.|NISP|Wt.|NISP|Wt.|NISP|Wt.|
Cut 1 Lev. 3|12|3.3|8|0.4|2|0.3|||22
Cut 1 Lev. 4|4|1.0|16|0.9|||1|2.1|21
Cut 2 Lev. 1|31|9.2|2|0.1|5|0.8|||38
Cut 2 Lev. 2|||7|0.3|||||7
""", rows_are_samples("A", 1, "3-6", "B-I", mass="C,E,G,I", fill=True)),
)  # fmt: skip
