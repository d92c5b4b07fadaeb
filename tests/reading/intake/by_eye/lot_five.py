"""Invented sheets, lot five: each with what a person who looks at it reads. Written before any of them was tried."""

# ruff: noqa: E501

from __future__ import annotations

from tests.reading.intake.by_eye.expectations import Sheet, cells, cols_are_samples, long, rows_are_samples, sheet

SHEETS: tuple[Sheet, ...] = (
sheet("uk-assessment2", """
Appendix 3: Bulk sample assessment, Trench 2
Sample|Context|Spot date|Processed vol (L)|Flot vol (ml)|% roots|Charred cereal grain|Charred chaff|Charred seeds|Charcoal|Molluscs|Bone|Potential|Notes
200|2003|C2-3|40|30|60|C|-|C|25|A||P|barley, wheat
201|2008|C2-3|36|120|10|A|B|B|200|B|yes|C, P|hulled wheat, glume bases
204|2015|C4|10|15|80|-|-|C|5|A|||
207|2022||20|60|20|B|C|C|80|C||P|
Key: A = >10, B = 5-9, C = <5 items; charcoal in ml
""", rows_are_samples("A", 2, "3-6", "G-J", volume="D", context="B")),
sheet("phase-subtotals", """
Taxon|Authority|Phase 1|||Phase 1 total|Phase 2|||Phase 2 total
||S3|S7|S8||S11|S12|S20|
Poaceae||||||||
Hordeum vulgare|L.|4|12|1|17|30|2|8|40
Triticum dicoccum|Schübl.|20|41|3|64|12||5|17
Panicum miliaceum|L.|||||140|33|21|194
Fabaceae||||||||
Lens culinaris|Medik.|2|1||3|6|||6
Vicia ervilia|(L.) Willd.||3||3||1||1
Polygonaceae||||||||
Rumex crispus type||1|||1|4||2|6
""", cols_are_samples(2, "A", "4-6,8-9,11", "C-E,G-I")),
sheet("two-name-rows", """
FS|Feature|Stratum|Liters|Carya sp.|Juglans nigra|Quercus sp.|Zea mays|Zea mays|Chenopodium berlandieri|Polygonum erectum|Phalaris caroliniana
||||hickory|black walnut|acorn|kernel|cupule|goosefoot|erect knotweed|maygrass
1022|14|A|10|52|3|11|2|9|120|31|14
1023|14|B|10|40||6||4|88|12|9
1040|15|A|8|12|1|||1|14||2
1051|22|A|12|101|9|40|6|22|310|77|60
""", rows_are_samples("A", 1, "3-6", "E-L", volume="D")),
sheet("charcoal-ids", """
Wood charcoal identifications
Taxon|Pit 1 (n)|Pit 1 (g)|Pit 4 (n)|Pit 4 (g)|Hearth 2 (n)|Hearth 2 (g)
Quercus (white group)|12|1.20|4|0.31|20|2.22
Quercus (red group)|3|0.22|||1|0.08
Carya|8|0.91|11|1.40||
Pinus|1|0.02||||
Ring porous|4|0.20|5|0.33|3|0.10
Indeterminate|2|0.05|||1|0.01
Total|30|2.60|20|2.04|25|2.41
""", cols_are_samples(2, "A", "3-8", "B-G", mass="C,E,G", cut=" (")),
sheet("long-codes", """
SampleNo,CtxNo,TaxonCode,Taxon,Cert,Component,Preservation,Quantity,Estimated,Weight_mg
1001,34,HORVUL,Hordeum vulgare,,grain,charred,45,,
1001,34,HORVUL,Hordeum vulgare,,rachis,charred,3,,
1001,34,TRIDIC,Triticum dicoccum,cf.,grain,charred,2,,
1002,36,CORAVE,Corylus avellana,,nutshell,charred,12,y,410
1002,36,CHEALB,Chenopodium album,,seed,uncharred,200,y,
1003,41,RUBFRU,Rubus fruticosus agg.,,seed,waterlogged,8,,
""", long("A", "D", "2-7", count="H", mass="J", context="B"), sep=","),
sheet("total-on-top", """
Taxa|Sum|Sondage A, sq. 4, 20-30 cm|Sondage A, sq. 4, 30-40 cm|Sondage B, sq. 1, 10-20 cm|Sondage B, hearth
Total identified|1,652|404|213|18|1,017
Triticum dicoccum (grain)|1,204|310|120|4|770
Hordeum vulgare (grain)|301|60|44|11|186
Pisum sativum|88|21|12||55
Linum usitatissimum|59|13|37|3|6
""", cols_are_samples(1, "A", "3-6", "C-F")),
sheet("taxa-cols-abbrev", """
Smp;Ph;HV gr;TD gr;TD gb;TM gr;TM gb;Len;Pis;Vit;Ind. cer.
12;1;4;10;31;;2;1;;;9
14;1;2;6;12;1;;;1;;4
19;2;8;1;;;;3;;12;6
23;2;5;;2;;;;2;4;3
25;3;11;2;;;;;;31;8
""", rows_are_samples("A", 1, "2-6", "C-K", phase="B"), sep=";"),
sheet("sample-sections", """
Sample 14, context 203 (20 litres)
Hordeum vulgare grain|12
Triticum spelta glume base|40
Bromus sp.|3
Sample 15, context 207 (10 litres)
Triticum spelta grain|4
Corylus avellana nutshell frag.|11
Sample 22, context 230 (30 litres)
Avena sp. grain|55
Secale cereale grain|8
Anthemis cotula|2
""", cells(B2=("14", "Hordeum", "n"), B3=("14", "Triticum", "n"), B4=("14", "Bromus", "n"), B6=("15", "Triticum", "n"), B7=("15", "Corylus", "n"), B9=("22", "Avena", "n"), B10=("22", "Secale", "n"), B11=("22", "Anthemis", "n"))),
sheet("whole-frag-merged", """
Context|Vol. (L)|Barley grain||Wheat grain||Lentil||Olive stone||Indeterminate
||W|F|W|F|W|F|W|F|
L101|10|12|30|4|11|2|1|0|22|40
L104|8|3|5|0|2|0|0|0|4|11
L110|10|40|61|9|20|7|5|1|31|88
L115|12|1|0|0|0|0|0|0|60|5
""", rows_are_samples("A", 1, "3-6", "C-K", fill=True, volume="B"), merge=("C1:D1", "E1:F1", "G1:H1", "I1:J1")),
sheet("words-presence", """
Plant|Common name|House 1|House 3|Midden N|Midden S|Cave
Zea mays|maize|abundant|present|present||rare
Phaseolus vulgaris|common bean|present||||present
Cucurbita sp.|squash||present|rare||
Lagenaria siceraria|bottle gourd|present|||rare|abundant
Gossypium barbadense|cotton|||present|present|
""", cols_are_samples(1, "A", "2-6", "C-G")),
)  # fmt: skip
