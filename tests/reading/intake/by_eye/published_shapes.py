"""Invented sheets with the quirks of published tables and open data files, each with what a person reads in it."""

# ruff: noqa: E501

from __future__ import annotations

from tests.reading.intake.by_eye.expectations import Sheet, cols_are_samples, rows_are_samples, sheet

SHEETS: tuple[Sheet, ...] = (
sheet("charcoal-counts-over-relative-numbers", """
||Absolute numbers||||||
|Context type|Pits||Floors||Hearths||
|Period|IIA||IIA|IIB|IIB||
|Lot|31-2|63-1|47-1|45-1|65|TOT|
|Feature|38|70|78|43a|41|AN|RN %
RIVERSIDE|Salix sp.|13|2|36|3||54|20.5
|Populus sp.||5|5||1|11|4.2
|Alnus sp.|8||1|7|2|18|6.8
||||||||
UPLAND|Quercus sp.|22|6|13|41|30|112|42.4
|Carya sp.|15|2|29|1|5|52|19.7
||||||||
|Undetermined|4|3|3|6|1|17|6.4
|TOT|62|18|87|58|39|264|100
||||||||
||Relative numbers (%)||||||
|Context type|Pits||Floors||Hearths||
|Lot|31-2|63-1|47-1|45-1|65||
|Feature|38|70|78|43a|41||
RIVERSIDE|Salix sp.|21|11|41|5|||
|Alnus sp.|13||1|12|5||
UPLAND|Quercus sp.|35|33|15|71|77||
""", cols_are_samples(4, "B", "6-8,10-11,13", "C-G", context=4, phase=3)),
sheet("sums-and-shares-under-short-heads", """
||Pit||Hearth|||
||MB 02 P1|MB 02 P2|MB 02 H1|MB 02 H2|AN|RN
SHORE|Acer negundo|4|7|12|1|24|16.3
|Platanus occidentalis||8|3|2|13|8.8
HILL|Quercus alba|31|12|20|8|71|48.3
|Carya ovata|10|5|6|9|30|20.4
|Pinus echinata|2||7||9|6.1
""", cols_are_samples(2, "B", "3-7", "C-F")),
sheet("derived-columns-before-the-counts", """
Season,Original sample no,Feature,Period,Feature Type,Light fraction wt.,Vol,Total Seed no,Total Seed Density,Cereals,Pulse,Cereals %,Pulse %,Barley,Wheat,pea,lentil,Chenopod,Other grass,wild pulse,Unknown seed,0.5 mm Done %
2002,056,H21,Late,Pit,4.4,5,158,31.6,113,13,72%,8%,105,8,2,3,24,,8,8,
2002,286,H68,Late,Pit,3.1,8,53,6.6,42,3,79%,6%,41,1,1,,7,2,2,,
2002,356,H68,Late,Pit,2.0,6,31,5.2,19,2,61%,6%,18,1,,1,7,1,1,2,
2005,324,F2,Early,House,9.3,6,53,8.8,32,3,60%,6%,22,10,1,2,14,4,,,18%
2005,332,F2,Early,House,1.7,8,68,8.5,48,1,71%,1%,27,21,,1,8,15,,-4,
2005,351,F3,Early,House,2.2,4,37,9.3,27,4,73%,11%,18,9,2,1,3,,1,3,65%
""".replace(",-4,", ",,"), rows_are_samples("B", 1, "2-7", "N-U", volume="G", phase="D"), sep=","),
sheet("groups-as-empty-columns-and-answers", """
LF,Mesh,x,y,Unit,Locus,Vol_L,Phasing,Context,Period,Indoors,DOMESTICATE_COUNTS,Zea_mays,Phaseolus_vulgaris,Cucurbita_sp,DOMESTICATE_WEIGHTS,Zea_mays_wt,FAMILIES,Poaceae,Asteraceae_mineralized,WEEDS_AND_WILD,Chenopodium,Polygonum,cf_Iva,Charcoal_wt,Data_Source,Analyst_Team
200,0.5,237.50,206.75,BP48,18,22,,Floor,Late Hamlet,N,0,3,0,1,0,0.02,0,27,1,0,60,2,0,0,Report 3,North team
200,2,237.50,206.75,BP48,18,22,,Floor,Late Hamlet,N,0,12,1,0,0,0.41,0,2,0,0,15,0,1,0.46,Report 3,North team
201,0.5,211.00,219.10,BR47,16,20,2B,Pit,Early Hamlet,Y,0,0,0,0,0,0,0,3,0,0,12,4,0,0,Report 3,North team
201,2,211.00,219.10,BR47,16,20,2B,Pit,Early Hamlet,Y,0,5,2,1,0,0.11,0,0,0,0,1,0,2,2.49,Report 4,South team
206,0.5,217.24,218.93,BR44,35,30,,Midden,Early Hamlet,N,0,1,0,3,0,0.04,0,31,2,0,36,0,0,0,Report 4,South team
206,2,217.24,218.93,BR44,35,30,,Midden,Early Hamlet,N,0,8,3,2,0,0.20,0,3,0,0,4,2,1,4.03,Report 4,South team
""", rows_are_samples("A", 1, "2-7", "M-O,Q,S-T,V-Y", mass="Q,Y", volume="G", phase="J"), sep=","),
)  # fmt: skip
