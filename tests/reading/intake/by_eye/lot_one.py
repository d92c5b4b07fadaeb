"""Invented sheets, lot one: each with what a person who looks at it reads. Written before any of them was tried."""

# ruff: noqa: E501

from __future__ import annotations

from tests.reading.intake.by_eye.expectations import Sheet, cols_are_samples, long, rows_are_samples, sheet

SHEETS: tuple[Sheet, ...] = (
sheet("uk-appendix", """
Table A4.2: Charred plant remains from the Late Iron Age pits at Cold Harrow Farm
||Pit|Pit|Pit|Ditch|Posthole
Feature||1012|1012|1044|1102|1130
Context||1013|1015|1045|1103|1131
Sample||4|5|9|12|17
Volume floated (litres)||10|20|20|15|5
Flot size (ml)||25|60|40|10|5
CEREAL GRAIN||||||
Triticum spelta L.|spelt wheat|3|12|-|1|-
Triticum spelta/dicoccum|spelt/emmer|8|21|4|-|-
Hordeum sp. (hulled)|barley|2|5|-|-|1
Cereal indet.|cereal|14|30|6|2|1
CHAFF||||||
T. spelta glume base|spelt wheat|20|64|9|3|-
Triticum sp. glume base|emmer/spelt|31|102|12|2|2
WEEDS||||||
Bromus sp.|brome|4|11|1|-|-
Chenopodium album L.|fat hen|-|2|-|-|1
Rumex sp.|dock|1|3|-|-|-
Total||83|250|32|8|5
Items per litre||8.3|12.5|1.6|0.53|1
Key: - = absent. Nomenclature follows the usual flora.
""", cols_are_samples(5, "A", "9-12,14-15,17-19", "C-G", volume=6, context=4)),
sheet("levant-rows", """
Locus,Basket,Sample,Area,Stratum,Vol_L,Flot_g,Hordeum_vulgare_grain,Hordeum_vulgare_rachis,Triticum_dicoccum_grain,Triticum_dicoccum_glume_base,Lens_culinaris,Vitis_vinifera_pip,Olea_europaea_stone,Lolium_sp,Phalaris_sp,Unidentified
L.304,B.3011,S-101,A,IVb,8.5,12.3,14,2,3,22,1,0,5,9,4,3
L.304,B.3019,S-102,A,IVb,7,4.5,2,0,0,3,0,0,1,2,0,1
L.311,B.3102,S-107,A,V,10,30.1,41,6,12,80,3,1,0,22,11,9
L.402,B.4007,S-118,B,IVb,5,2.2,0,0,0,1,0,2,14,0,0,0
L.402,B.4015,S-119,B,V,6,8.0,5,0,1,6,0,0,2,3,2,1
""", rows_are_samples("C", 1, "2-6", "H-Q", volume="F"), sep=","),
sheet("midwest-pairs", """
Table 7. Plant remains recovered from flotation samples
Taxon|Feature 3|||Feature 8|||Feature 14||
|n||wt (g)|n||wt (g)|n||wt (g)
Hickory nutshell|412||8.31|36||.62|95||1.71
Acorn nutshell|55||.22|3||.01|120||.44
Black walnut nutshell|2||.11|||||
Zea mays kernel|14||.20|6||.08|||
Zea mays cupule|88||.71|12||.10|1||.01
Chenopodium berlandieri|203|||14|||7||
Phalaris caroliniana|31|||2|||||
Wood charcoal|||22.40|||4.11|||9.03
""", cols_are_samples(2, "A", "4-11", "B-J", mass="D,G,J", fill=True), merge=("B2:D2", "E2:G2", "H2:J2")),
sheet("sw-export", """
RecID;Site;Unit;Level;FS;Feature;PD;Flot_Vol_L;Taxon;Part;Condition;Qty;Wt_g;Analyst_Notes
1;5XX118;N12E4;3;12.1;4;118;4.0;Zea mays;cupule;charred;23;0.14;
2;5XX118;N12E4;3;12.1;4;118;4.0;Zea mays;kernel;charred;2;0.05;fragmentary
3;5XX118;N12E4;3;12.1;4;118;4.0;Cheno-am;seed;charred;144;;
4;5XX118;N12E4;3;12.1;4;118;4.0;Portulaca;seed;charred;6;;
5;5XX118;N14E4;2;15.1;6;122;3.5;Juniperus;seed;charred;1;;
6;5XX118;N14E4;2;15.1;6;122;3.5;Zea mays;cupule;charred;4;0.02;
7;5XX118;N14E4;2;15.2;6;122;3.0;Physalis;seed;uncharred;3;;modern?
8;5XX118;N14E4;2;15.2;6;122;3.0;Opuntia;seed;charred;1;;
""", long("E", "I", "2-9", count="L", mass="M", volume="H"), sep=";"),
sheet("german", """
Befund;;12;12;27;31
Probe;;P3;P4;P11;P15
Volumen (l);;10;8,5;12;10
Taxon;Resttyp;;;;
Kulturpflanzen;;;;;
Hordeum vulgare;Korn;12;4;33;1
Triticum dicoccum;Korn;5;;18;
Triticum dicoccum;Hüllspelzenbasis;48;7;160;2
Linum usitatissimum;Same;;1;;
Wildpflanzen;;;;;
Chenopodium album;Same;22;5;104;7
Galium aparine;Frucht;1;;6;
Polygonum convolvulus;Frucht;3;1;12;
Summe;;91;18;333;10
""", cols_are_samples(2, "A", "6-9,11-13", "C-F", volume=3, context=1), sep=";"),
sheet("japan", """
出土種子一覧
Site|Kamiyama|||Ueno||
Sample No.|1|2|3|1|2|3
Layer|IV|IV|V|II|III|III
Oryza sativa (grain)|12|3||40|8|5
Oryza sativa (spikelet base)|5|||22|1|
Setaria italica|2|1||6||
Panicum miliaceum||||3||
Juglans mandshurica (endocarp frag.)|33|10|87||2|
Castanea crenata (shell)|4||12|||1
Sambucus sp.|||2|1||
""", cols_are_samples((2, 3), "A", "5-11", "B-G", fill=True)),
sheet("peru", """
|||||DOMESTICATES||||||WILD||||
Specimen|Sector|Unit|Context|Volume (L)|Zea mays (cob)|Zea mays (kernel)|Phaseolus vulgaris|Gossypium seed|Capsicum sp.|Total domesticates|Cyperaceae|Poaceae|Chenopodium quinoa|Prosopis sp.|Total wild
M-001|Norte|U1|Piso 2|6|2|11|3|40|1|57|9|12||5|26
M-002|Norte|U1|Relleno 3|5|1|4||22||27|4|3|||7
M-003|Norte|U2|Fogón 1|4||30||2||32||2|19|1|22
M-004|Sur|U7|Piso 1|8|3|5|1|61|4|74|20|8||2|30
Total||||23|6|50|4|125|5|190|33|25|19|8|85
""", rows_are_samples("A", 2, "3-6", "F-J,L-O", volume="E")),
sheet("stats-right", """
Appendix B
Macroremains by flotation sample. Counts are of charred specimens; MNI not calculated.

Family|Taxon|Type|FL-01|FL-02|FL-03|FL-04|FL-05|Sum|%|Ubiquity (%)|Mean density
Amaranthaceae|Amaranthus sp.|seed|3||7|1||11|6.0|60|0.2
|Chenopodium sp.|seed|22|4|50|2|6|84|45.7|100|1.5
Asteraceae|Helianthus annuus|achene||1|3|||4|2.2|40|0.1
|Iva annua|achene|5||11|||16|8.7|40|0.3
Poaceae|Zea mays|kernel frag.|2||9||1|12|6.5|60|0.2
|Zea mays|cupule|10|1|40||2|53|28.8|80|1.0
Fagaceae|Quercus sp.|nutshell|1|||3||4|2.2|40|0.1
|Total||43|6|120|6|9|184|100||
|Soil volume (L)||12|10|12|10|11|55|||
Notes: FL-03 was only half sorted.
""", cols_are_samples(4, "B", "5-11", "D-H", volume=13)),
sheet("abundance", """
Table 5 Assessment of flots
Sample|Context|Feature type|Vol (l)|Flot (ml)|Grain|Chaff|Weed seeds|Hazelnut|Charcoal >4mm|Comments
1|104|Pit fill|40|15|++|+|+|-|+++|Spelt glume bases
2|107|Ditch fill|40|5|+|-|-|-|+|
3|112|Hearth|20|30|+|-|-|++|++++|Hazel shell frequent
4|115|Posthole|10|2|-|-|-|-|+|Modern roots

Key: + = 1-5, ++ = 6-25, +++ = 26-100, ++++ = >100
""", rows_are_samples("A", 2, "3-6", "F-J", volume="D", context="B")),
sheet("cf-column", """
Genus|cf.|Species|Part|Context 3001 <100>|Context 3004 <101>|Context 3010 <105>|Context 3010 <106>
Triticum||aestivum|grain|4|12||1
T.|cf.|spelta|grain|1|||
T.||aestivum|rachis node|2|6||
Avena||sp.|grain|9|14|2|
Avena|cf.|sativa|floret base|1|||
Vicia/Lathyrus|||seed|3|1||1
Rumex|cf.|crispus|nutlet|||5|
""", cols_are_samples(1, "D", "2-8", "E-H")),
)  # fmt: skip
