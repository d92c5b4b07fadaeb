"""Invented sheets, lot eight: each with what a person who looks at it reads. Written before any of them was tried."""

# ruff: noqa: E501

from __future__ import annotations

from tests.reading.intake.by_eye.expectations import Sheet, both, cols_are_samples, rows_are_samples, sheet

SHEETS: tuple[Sheet, ...] = (
sheet("site-bag-lot-multi", """
Site,Unit,Locus,Basket,Lab no,Bag no,Period,Liters,Hordeum,Triticum,Lens,Vicia,Pisum,Vitis,Olea,Ficus,Malva,Lolium,n taxa
TR,A4,104,1022,TRB-01,12,MB II,6,12,30,1,0,0,3,2,40,0,8,7
TR,A4,104,1024,TRB-02,13,MB II,8,4,11,0,2,0,0,1,12,1,3,7
TR,A4,110,1040,TRB-03,15,LB I,5,0,2,0,0,1,1,0,4,0,0,4
TR,B7,203,2011,TRB-04,31,LB I,10,88,140,12,6,3,9,22,310,4,41,10
""", rows_are_samples("E", 1, "2-5", "I-R", volume="H"), sep=","),
sheet("title-in-middle-units-row", """
||||Charred plant remains (count)||||||Charcoal
Sample|Context|Vol|Flot|Grain|Glume|Rachis|Weed|Nut|Tuber|>2mm
||(L)|(ml)|(n)|(n)|(n)|(n)|(n)|(n)|(g)
A1|10|20|30|12|4|0|3|1|0|2.1
A2|11|20|15|4|0|1|0|0|0|0.8
A3|15|10|60|40|22|6|31|2|1|9.9
B1|22|30|25|2|1|0|1|12|0|4.0
""", rows_are_samples("A", 2, "4-7", "E-K", mass="K", volume="C", context="B")),
sheet("multi-page-continued", """
Table 6. Plant remains by sample
Taxon|14|15|16
Avena sp.|3||12
Hordeum vulgare|22|4|30
Triticum sp.|8|1|9

Table 6 (continued)
Taxon|17|18|19
Avena sp.|1|2|
Hordeum vulgare|5|11|4
Triticum sp.||6|1
""", both(cols_are_samples(2, "A", "3-5", "B-D"), cols_are_samples(8, "A", "9-11", "B-D"))),
sheet("names-latin-common-combined", """
Common name (Latin)|Plant part|Pit House 1, floor|Pit House 1, hearth|Pit House 3, fill
Goosefoot (Chenopodium sp.)|seed|30|112|4
Maize (Zea mays)|cupule|4|60|12
Maize (Zea mays)|kernel frag.|1|3|
Tansy mustard (Descurainia sp.)|seed|200|14|
Saltbush (Atriplex sp.)|fruit|1||2
Juniper (Juniperus sp.)|twig|9|2|1
Unknown|seed|3|1|1
Total|(all)|248|192|20
Taxa||6|6|4
""", cols_are_samples(1, "A", "2-8", "C-E")),
sheet("total-column-first-pct", """
Taxon,Total NISP,% NISP,Ubiquity (n=4),TP1-L2,TP1-L3,TP2-L1,TP2-L4
Acorn,312,52.0,4,100,40,160,12
Pine nut,12,2.0,2,4,,8,
Manzanita,88,14.7,3,20,,60,8
Brodiaea bulb,5,0.8,2,1,4,,
Grass,140,23.3,4,12,33,90,5
Clover,43,7.2,3,3,10,30,
""", cols_are_samples(1, "A", "2-7", "E-H"), sep=","),
sheet("mesh-row-blocks", """
Sample|S-4||||S-5|||
Size (mm)|4.0|2.0|1.0|0.5|4.0|2.0|1.0|0.5
Oryza sativa|12|30|1||4|8||
Oryza spikelet base|||22|140|||9|33
Coix lacryma-jobi|1||||2|||
Perilla||4|31|||1|8|
Job's tears frag.|3|2|||1|||
""", cols_are_samples(1, "A", "3-7", "B-I", fill=True)),
sheet("decimal-commas-tsv", """
Nr\tBefund\tVolumen [l]\tFlot [ml]\tGerste\tEmmer\tDinkel\tHirse\tLinse\tUnkräuter\tHolzkohle [g]
1\tGrube 12\t10,5\t20\t12\t3\t40\t\t1\t22\t1,2
2\tGrube 12\t9\t15\t2\t\t11\t1\t\t9\t0,8
3\tPfosten 3\t4,5\t5\t\t\t1\t\t\t\t0,1
4\tGraben\t12\t30\t1\t1\t3\t14\t\t30\t3,3
""", rows_are_samples("A", 1, "2-5", "E-K", mass="K", volume="C"), sep="\t"),
sheet("phase-block-rows", """
Period|Sample|Litres|Barley|Wheat|Rye|Oat|Pea|Flax
Phase I|1|20|12|3||1||
|2|20|4|1||||2
|3|10|||1|||
Phase I total||50|16|4|1|1||2
Phase II|7|30|40|12|30|4|1|
|8|15|11|2|8|||1
Phase II total||45|51|14|38|4|1|1
Phase III|11|20|2||60|22||
Grand total||115|69|18|99|27|1|3
""", rows_are_samples("B", 1, "2-4,6-7,9", "D-I", volume="C", phase="A")),
sheet("sorted-fraction-counts-x", """
Flot sample|FL1|FL2|FL3
Fraction analysed|1/4|1|1/2
Soil (l)|40|20|30
Taxon|raw|raw|raw
Hordeum vulgare grain|12|4|33
Hordeum vulgare rachis|2||8
Triticum aestivum grain|40|1|61
Triticum aestivum rachis|||12
Agrostemma githago|3||1
""", cols_are_samples(1, "A", "5-9", "B-D", volume=3)),
sheet("two-id-rows-unlabelled", """
|Midden||||House
|N12|N13|N14|N14|H2
|0-10 cm|0-10 cm|0-10 cm|10-20 cm|floor
Walnut|12|30|4|9|
Chestnut|3|1||2|20
Barnyard millet|||14|31|102
Buckwheat|1||||4
Hemp||2||1|9
""", cols_are_samples((2, 3), "A", "4-8", "B-F")),
)  # fmt: skip
