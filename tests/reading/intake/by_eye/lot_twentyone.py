"""Invented sheets, lot twenty-one: each with what a person reads in it. Written before any of them was tried."""

# ruff: noqa: E501

from __future__ import annotations

from tests.reading.intake.by_eye.expectations import Sheet, cols_are_samples, rows_are_samples, sheet

SHEETS: tuple[Sheet, ...] = (
sheet("online-resource-two-sites-stacked", """
Online Resource 3 Plant macrofossil counts from Lower Ford and Upper Ford,,,,,,,
Site,,,Lower Ford,Lower Ford,Lower Ford,Upper Ford,Upper Ford
Date range,,,1st-2nd c. AD,1st-2nd c. AD,3rd c. AD,3rd c. AD,4th c. AD
Context type,,,ditch,pit,corn-dryer,corn-dryer,pit
Context number,,,201,214,233,1107,1120
Sample number,,,7,9,15,102,108
Sample size (L),,,40,20,40,10,30
Flot size (ml),,,50,25,400,310,12
Seeds per litre of sediment,,,2.1,1.7,18.9,22.0,0.4
Scientific name,English name,Plant part,,,,,
Triticum spelta,spelt wheat,grain,12,4,201,33,2
Triticum spelta,spelt wheat,germinated grain,3,,88,12,
Triticum spelta,spelt wheat,glume base,44,20,310,104,4
Triticum cf. spelta,?spelt wheat,spikelet fork,2,1,31,9,
Hordeum vulgare,hulled barley,tail grain,1,,4,,
Cereal,,detached coleoptile,4,,55,41,
Avena/Bromus,oat/brome,caryopsis,3,2,18,4,1
Rumex sp(p).,docks,nutlet,8,3,12,2,
Vicia/Lathyrus <2mm,vetch/pea,seed,2,1,6,,1
Tripleurospermum inodorum,scentless mayweed,achene,5,3,31,15,4
""", cols_are_samples(6, "A", "11-20", "D-H", volume=7, context=5, phase=3), sep=","),
sheet("repository-underscored-lower-case", """
context,sample,phase,feature_class,soil_l,flot_ml,hv_hulled_grain,tri_dic_grain,tri_dic_gb,tri_spelta_gb,cereal_indet,avena_sp,bromus_sp,galium_aparine,rumex_sp,indet_seed
1002,1,MIA,pit,40,60,12,4,20,0,33,2,4,1,3,6
1004,2,MIA,pit,30,35,3,1,8,2,12,0,2,0,1,2
1011,5,LIA,ditch,40,20,1,0,4,11,6,1,1,0,0,3
1020,8,LIA,posthole,10,5,0,0,1,3,2,0,0,1,0,0
""", rows_are_samples("B", 1, "2-5", "G-P", volume="E", context="A", phase="C"), sep=","),
sheet("southeast-us-count-weight-by-level", """
Provenience|Vol (L)|Plant Wt. (g)|Wood Wt. (g)|Taxon|N|Wt. (g)
N12E8 Lv. 2|10|14.20|9.81|Acorn|33|0.22
||||Hickory|102|2.91
||||Maize cupule|14|0.12
||||Bottle gourd rind|2|0.01
||||Unidentified seed|3|
N12E8 Lv. 3|10|8.11|6.02|Hickory|55|1.30
||||Maize kernel|4|0.06
||||Maypop|1|
Feature 9|22|31.90|22.40|Acorn|12|0.08
||||Hickory|201|6.30
||||Persimmon|2|0.11
""", lambda grid: (
    {f"{c}{r}": (next(grid[k][0] for k in range(r - 1, 0, -1) if grid[k][0]), grid[r - 1][4], "n" if c == "F" else "g")
     for r in range(2, 13) for c, k in (("F", 5), ("G", 6)) if grid[r - 1][k]},
    {("N12E8 Lv. 2", "volume"): "10", ("Feature 9", "volume"): "22"},
)),
sheet("french-thesis-taxons-en-lignes", """
Tableau 12 : carporestes carbonisés (NR);;;;;;
N° US;;1005;1005;1012;2003;
N° prélèvement;;1;2;4;9;Total
Vol. tamisé (L);;10;20;15;30;75
Phase;;1a;1a;1b;2;
Céréales;;;;;;
Hordeum vulgare;grain;12;8;3;44;67
Triticum dicoccum;grain;4;6;1;8;19
Triticum dicoccum;base de glume;11;20;4;31;66
Cerealia;frag.;33;41;8;102;184
Légumineuses;;;;;;
Lens culinaris;graine;;2;1;4;7
Fruits;;;;;;
Corylus avellana;frag. coquille;4;1;;12;17
Vitis vinifera;pépin;;;;3;3
Adventices;;;;;;
Galium aparine;graine;1;2;;6;9
Indéterminés;;8;4;1;12;25
Total NR;;73;84;18;222;397
NR/L;;7,3;4,2;1,2;7,4;5,3
""", cols_are_samples(3, "A", "7-10,12,14-15,17-18", "C-F", volume=4, context=2, phase=5), sep=";"),
sheet("desert-southwest-parts-and-ubiquity-columns", """
Taxon,Part,Room 4 hearth,Room 4 floor,Room 7 hearth,Kiva fill,No. of samples,Ubiquity
,,PD 20,PD 22,PD 31,PD 40,,
Zea mays,cupule,44,3,102,12,4,100%
Zea mays,kernel,2,,8,1,3,75%
Phaseolus vulgaris,cotyledon,1,,,,1,25%
Cheno-am,seed,33,12,201,8,4,100%
Portulaca,seed,4,,31,2,3,75%
Opuntia (prickly pear),seed,,1,2,,2,50%
Pinus edulis,nutshell,,2,,1,2,50%
Juniperus,charcoal,20,20,18,12,4,100%
Sphaeralcea,seed,1,,,,1,25%
""", cols_are_samples(2, "A", "3-11", "C-F"), sep=","),
sheet("sieve-fractions-as-column-pairs", """
Sample|S1|S1|S2|S2|S3|S3
Fraction|>1 mm|0.3-1 mm|>1 mm|0.3-1 mm|>1 mm|0.3-1 mm
Volume (l)|12|12|20|20|8|8
% sorted|100|25|100|50|100|100
Hordeum vulgare grain|22|1|31||4|
Triticum dicoccum glume base|12|33|8|41|1|6
Chenopodium album||104|1|33||12
Lolium temulentum|8|2|12|4|3|1
Malva sp.|3||2|||1
""", lambda grid: (
    {f"{'ABCDEFG'[c]}{r}": (grid[0][c], grid[r - 1][0], "n") for r in range(5, 10) for c in range(1, 7) if grid[r - 1][c]},
    {("S1", "volume"): "12", ("S2", "volume"): "20"},
)),
sheet("title-merged-then-rows-of-contexts-no-sample", """
Appendix 2 - environmental samples|||||||||
Ctx|Feature|Fill of|Period|Vol (ltr)|Wheat|Barley|Oat/brome|Chaff|Weed seeds
103|Pit|[102]|EIA|20|14|3|1|22|9
107|Pit|[106]|EIA|20|2|1||4|3
115|Ditch|[114]|RB|40|31|8|12|104|55
122|Gully|[121]|RB|30||1||2|4
""", rows_are_samples("A", 2, "3-6", "F-J", volume="E", phase="D")),
sheet("waterlogged-semi-quantitative-with-letters", """
Sample|3|4|7|9
Context|1201|1204|1210|1222
Volume (l)|2|2|2|1
Alnus glutinosa (cone)|R|F|O|
Corylus avellana (nut)|R||R|
Juncus spp. (seed)|A|A|F|O
Ranunculus sceleratus (achene)|O|F||R
Urtica dioica (achene)|F|A|O|O
Carex spp. (nutlet)|O|O|R|
Sphagnum (leaf)|||F|A
Key: R = rare (1-3); O = occasional (4-10); F = frequent (11-50); A = abundant (>50)
""", lambda grid: (
    {f"{'ABCDE'[c]}{r}": (grid[0][c], grid[r - 1][0], "x") for r in range(4, 11) for c in range(1, 5) if grid[r - 1][c]},
    {("3", "volume"): "2", ("9", "volume"): "1", ("3", "context"): "1201"},
)),
sheet("long-database-codes-and-uncertain", """
SampleCode;LocusNr;TaxonName;Uncertain;PlantPart;PreservationMode;Count;EstimatedCount;Fragments
TH18-04;1203;Hordeum vulgare;N;grain;charred;14;;8
TH18-04;1203;Triticum dicoccum;Y;glume base;charred;33;;
TH18-04;1203;Lens culinaris;N;seed;charred;2;;1
TH18-11;1220;Ficus carica;N;seed;mineralised;104;;
TH18-11;1220;Vitis vinifera;N;pip;charred;3;;
TH18-15;1305;Hordeum vulgare;N;rachis;charred;8;;
""", lambda grid: (
    {f"{c}{r}": (grid[r - 1][0], grid[r - 1][2], "n")
     for r in range(2, 8) for c, k in (("G", 6), ("I", 8)) if grid[r - 1][k]},
    {("TH18-04", "context"): "1203", ("TH18-15", "context"): "1305"},
), sep=";"),
sheet("nutshell-table-with-density-rows-between", """
|F12|F14|F20|F31
Soil volume (l)|20|18|30|9
Carya (N)|102|44|301|8
Carya (g)|3.12|1.02|9.44|0.20
Carya density (g/l)|0.156|0.057|0.315|0.022
Juglans nigra (N)|4|1|22|
Juglans nigra (g)|0.31|0.08|2.20|
Juglans density (g/l)|0.016|0.004|0.073|
Quercus (N)|31|8|12|2
Quercus (g)|0.12|0.03|0.06|0.01
Wood charcoal (g)|22.10|14.00|31.20|2.20
""", cols_are_samples(1, "A", "3-4,6-7,9-11", "B-E", volume=2, massrows="4,7,10-11")),
sheet("polish-table", """
Nr próby;1;2;3;5
Obiekt;12;12;15;22
Objętość (l);10;10;8;12
Takson;;;;
Triticum dicoccon - ziarniak;12;4;31;2
Triticum dicoccon - widełki kłosków;33;8;102;
Hordeum vulgare - ziarniak;4;1;12;3
Pisum sativum - nasiono;;1;2;
Chenopodium album - nasiono;104;22;301;41
Fallopia convolvulus - owoc;3;;8;1
Suma;156;36;456;47
""", cols_are_samples(1, "A", "5-10", "B-E", volume=3), sep=";"),
sheet("sum-rows-by-category-at-top", """
Sample ID,TP1-3,TP1-5,TP2-2,TP2-4
Depth (cm),20-30,40-50,10-20,30-40
Litres floated,5,5,5,5
Total grain,14,6,25,3
Total chaff,9,2,17,
Total weeds,11,4,8,2
Barley grain,8,4,11,1
Wheat grain,6,2,14,2
Emmer glume base,9,2,17,
Goosefoot,8,3,5,1
Ryegrass,3,1,3,1
Indeterminate,2,,4,1
""", cols_are_samples(1, "A", "7-12", "B-E", volume=3), sep=","),
)  # fmt: skip
