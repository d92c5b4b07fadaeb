"""
Sheets as publications and databases give them away: what a right reading of each shape is.

Sheets that stand in this file are invented, in the shape of tables that are published as open data; names, places and
numbers are made up. One is an open data set, tables/charcoal_with_shares_below.csv: "Alamgirpur_charcoal.csv" of
C. Lancelotti (2018), "Not all that burns is wood", PLOS ONE, from the repository cl379/papers_supl_materials on GitHub,
folder Lancelotti2018_PLOS, licence CC BY 4.0, unchanged.
"""

# ruff: noqa: E501

from __future__ import annotations

from collections import Counter
from functools import cache
from pathlib import Path

from narrate.model.packs import Packs
from narrate.reading.folder import read_folder
from narrate.reading.intake.project_intake import naming_packs
from narrate.reading.intake.take_in import TakenIn, take_in


@cache
def packs() -> Packs:
    return naming_packs(("temperate-europe",))


def taken(tmp_path: Path, text: str) -> TakenIn:
    file = tmp_path / "sheet.csv"
    file.write_text(text, encoding="utf-8")
    return take_in(file, packs())


def counted(found: TakenIn) -> dict[tuple[str, str, str], int]:
    """Sample, name as written and part -> the sum of what was counted."""
    sums: Counter[tuple[str, str, str]] = Counter()
    for row in found.rows:
        if row.count.number is not None:
            sums[row.sample, row.identification.written, row.part] += row.count.number
    return dict(sums)


PERIODS = """Year,Sample,Feature,Period,Type,Vol,Total no,Density,Panicum miliaceum,Hordeum vulgare,Galium
2011,101,Trench 2 pit 4,Late Lower,Pit,6,11,1.83,1,,10
2011,102,Trench 2 pit 7,Mid/L Low,Pit,4,17,4.25,6,5,6
2011,103,Trench 2 hearth,Early Upper,Hearth,5,12,2.40,10,1,1
2011,104,Trench 3 floor,E/L Upper,House,8,13,1.63,4,4,5
"""
"""Invented: short forms of periods that hold '/L', which are no 'per litre'."""


def test_a_period_in_short_is_no_density(tmp_path: Path) -> None:
    """The samples of 'Mid/L Low' and 'E/L Upper' are read like the others."""
    found = taken(tmp_path, PERIODS)

    assert sorted({row.sample for row in found.rows}) == ["101", "102", "103", "104"]
    assert [p.message for p in found.problems if p.code == "N317"] == []


RECORDS = """RecordID,Spcode,OriginalTaxon,IDlevel,PlantPart,Preservation,Scored,ScoringSystem,NumberInd,MNPP
MILL-1,1,Triticum dicoccum,sp,grain,c,1,MNI,68.00,68
MILL-1,2,Triticum dicoccum,sp,glume base,c,1,MNI,84.00,84
MILL-1,3,Hordeum vulgare,sp,grain,c,1,MNI,20.00,20
MILL-1,4,Lens culinaris,sp,seed,c,1,MNI by weight,1.2e+03,1200
MILL-2,5,Triticum dicoccum,sp,grain,c,1,MNI,24.00,24
MILL-2,6,Galium,G,seed,c,1,MNI,8.00,8
FORD-1,7,Hordeum vulgare,sp,grain,c,1,MNI,32.00,32
FORD-1,8,Pisum sativum,sp,seed,c,1,fragments,4.00,4
FORD-1,9,Corylus avellana,sp,shell,c,0,abundance,,1
"""
"""Invented: a list of finds whose key of samples is headed as a record, and a second count that says the first again."""


def test_a_key_that_stands_beside_several_names_is_the_sample(tmp_path: Path) -> None:
    """'RecordID' is beside several taxa each time; the running number of the line is not, and is no count either."""
    found = taken(tmp_path, RECORDS)

    assert {row.sample for row in found.rows} == {"MILL-1", "MILL-2", "FORD-1"}
    assert counted(found)["MILL-1", "Triticum dicoccum", "grain"] == 68
    assert any("each 'RecordID' stands beside several names" in doubt for doubt in found.doubts)


def test_a_second_count_that_says_the_first_again_is_read_once(tmp_path: Path) -> None:
    """NumberInd and MNPP agree in every line: the one that is given in more lines is read, and that is told."""
    found = taken(tmp_path, RECORDS)

    assert sum(counted(found).values()) == 68 + 84 + 20 + 1200 + 24 + 8 + 32 + 4 + 1
    assert any("it says the counts of 'MNPP' again" in doubt for doubt in found.doubts)


def test_a_code_of_the_plant_is_no_sample(tmp_path: Path) -> None:
    """A code that stands beside one name each time, however often, is a code of the plant."""
    lines = [f"T{n % 3 + 1},{('Galium', 'Lens culinaris', 'Avena')[n % 3]},seed,{n + 1}" for n in range(9)]
    found = taken(tmp_path, "Code,Taxon,Part,Count\n" + "\n".join(lines) + "\n")

    assert not {row.sample for row in found.rows} & {"T1", "T2", "T3"}


SHARES = """Site,Phase,Taxon,Family,Proportion_per_Phase,Ubquity
Millford,MF_1,Avena sp.,Poaceae,8,20
Millford,MF_1,Triticum dicoccum grains,Poaceae,38,60
Millford,MF_1,Lens sp.,Fabaceae,54,100
Millford,MF_2,Avena sp.,Poaceae,3,50
Millford,MF_2,Hordeum vulgare grain (hulled),Poaceae,97,100
Weirby,WE,Galium sp.,Rubiaceae,1,9
Weirby,WE,Vitis vinifera pips,Vitaceae,99,77
"""
"""Invented: shares and ubiquities of whole phases, no counts among them; one head is misspelt."""


def test_a_list_of_shares_is_told_and_not_read_as_counts(tmp_path: Path) -> None:
    """Nothing becomes a count, and the reader hears why."""
    found = taken(tmp_path, SHARES)

    assert found.rows == ()
    assert [p.code for p in found.problems] == ["N311"]
    assert "give 'Proportion_per_Phase' and 'Ubquity' of each taxon, and no counts" in found.problems[0].message


EXPORT = """fid,id,context,species_orig_pub,taxon,cf_genus,s_type,s_foss,s_part,sample_number,quantity,weight_g,context_id,taxon_id,new_taxon_id,qt,parent_context_id,Family
810,,"fill - SU 3, SU 9",Quercus sp.,Quercus sp.,false,wood,charred,stem,,,,5272,,12106,3,5270,Fagaceae
811,,"fill - SU 3, SU 9",Carpinus betulus,Carpinus betulus L.,false,wood,charred,stem,,,,5272,,3801,5,5270,Betulaceae
812,,pit - SU 63,Quercus sp.,Quercus sp.,false,wood,charred,stem,,,,5274,,12106,1,5270,Fagaceae
813,,pit - SU 63,Prunus sp.,Prunus sp.,false,wood,charred,stem,,,,5274,,12777,4,5270,Rosaceae
814,,pit - SU 63,Leguminosae,,false,wood,charred,stem,,,,5274,,,11,5270,
815,,SU 120,Ulmus sp.,Ulmus sp.,false,wood,charred,stem,,,,5277,20,12907,2,5270,Ulmaceae
816,,jar,Quercus sp.,Quercus sp.,false,wood,charring,stem,jar 4,1,,5299,211,12106,,5270,Fagaceae
"""
"""Invented: an export of a database: keys of other tables beside the counts, and a count in either of two columns."""


def test_keys_of_a_database_are_no_samples(tmp_path: Path) -> None:
    """Each context is a sample; 'context_id' and 'parent_context_id' are keys, and 'qt' holds the counts."""
    found = taken(tmp_path, EXPORT)

    assert {row.sample for row in found.rows} == {"fill - SU 3, SU 9", "pit - SU 63", "SU 120", "jar"}
    assert sum(counted(found).values()) == 3 + 5 + 1 + 4 + 11 + 2 + 1
    assert {row.condition for row in found.rows} == {"charred"}


WRONG_TOTAL = """Taxon,S1,S2,TOT,RN %
Quercus sp.,40,11,51,25.50
Pinus sp.,60,9,69,34.50
Ulmus sp.,30,10,40,20.00
Fagus sylvatica,25,5,30,15.00
Alnus sp.,15,15,30,15.00
TOT,150,50,200,100
"""
"""Invented: the counts of S1 add up to 170; its total says 150, so does the grand total, and the shares are of that."""


def test_a_wrong_total_is_told_once_and_not_at_each_share_of_it(tmp_path: Path) -> None:
    """The two totals are told; the five shares agree with what the grand total says."""
    found = taken(tmp_path, WRONG_TOTAL)

    assert [(p.place.cell, p.message.split(", expected")[0]) for p in found.problems if p.code == "N317"] == [
        ("B7", "the stored TOT is 150, and the counts in B2 to B6 give 170"),
        ("D7", "the stored TOT is 200, and the counts in B2 to C6 give 220"),
    ]


def test_a_share_of_no_total_is_told_still(tmp_path: Path) -> None:
    """One share that neither the counts nor the stored total gives stands out."""
    found = taken(tmp_path, WRONG_TOTAL.replace("34.50", "43.50"))

    assert "E3" in [p.place.cell for p in found.problems if p.code == "N317"]


def test_an_open_data_set_with_shares_below_is_read_to_its_own_totals() -> None:
    """The counts of each sample add up to the total that the authors give (397 in all), and their shares are left out."""
    found = take_in(Path(__file__).parent / "tables" / "charcoal_with_shares_below.csv", packs())
    sums: Counter[str] = Counter()
    for (sample, _, _), number in counted(found).items():
        sums[sample] += number

    assert dict(sums) == dict(zip(
        ("5", "7", "9", "11", "14", "16", "18", "20", "22", "24", "30", "32", "38", "42", "44"),
        (11, 29, 26, 22, 24, 8, 2, 2, 35, 12, 6, 45, 105, 36, 34), strict=True,
    ))  # fmt: skip
    assert sum(sums.values()) == 397
    assert found.layout is not None
    assert found.layout.tables[0].columns[0].name == "group"  # 'WOOD', 'EXOTIC' and 'NON-WOODY' go over several lines
    assert {row.identification.taxon for row in found.rows if row.identification.written == "Undetermined"} == {
        "Indeterminate"
    }
    assert [p.message for p in found.problems if p.code == "N317"] == []


UNSAID_GROUP = """Sample,Charcoal (g),Vol,Total seeds,Millets,Bean,Millet %,Bean %,Panicum miliaceum,Setaria italica,Vicia sp.,Galium sp.
1,2.5,10,10,8,1,80%,10%,5,3,1,1
2,0.6,10,12,12,0,100%,0%,6,6,0,0
3,*,12,22,17,2,77%,9%,9,8,2,3
4,0.9,10,7,7,0,100%,0%,4,3,0,0
5,0.1,8,6,4,0,67%,0%,2,2,1,1
"""
"""Invented: a sum of a few taxa that nobody names, behind a column of weights, one of which is a sign."""


def test_a_sum_of_counts_is_not_held_against_weights(tmp_path: Path) -> None:
    """'Bean' is below the grams of charcoal before it, and that says nothing."""
    found = taken(tmp_path, UNSAID_GROUP)

    assert [p.message for p in found.problems if p.code == "N317"] == []


UNLIKE_NAMES = """Sample,Vol (L),Amaranthaceae,Chenopodiaceae,Hordeum internode,Hordeum rachis,Lens culinaris
200,10,2,3,4,5,6
206,12,1,2,1,1,3
"""
"""Invented: two pairs of columns that are read as one family, and as one part of one plant."""


def test_unlike_names_that_mean_one_thing_are_kept_and_told_once(tmp_path: Path) -> None:
    """Both columns are kept and told; a project that holds the sheet has no error for it."""
    found = taken(tmp_path, UNLIKE_NAMES)
    told = [p.message for p in found.problems if p.code == "N316"]

    assert sum(n for (sample, _, _), n in counted(found).items() if sample == "200") == 20
    assert len(told) == 2
    assert told[1].startswith("'Hordeum internode' and 'Hordeum rachis' are both read as ")


def test_unlike_names_are_no_error_of_the_project(tmp_path: Path) -> None:
    """What intake takes in, check does not refuse."""
    (tmp_path / "counts").mkdir()
    (tmp_path / "records").mkdir()
    taken(tmp_path / "counts", UNLIKE_NAMES)
    (tmp_path / "counts" / "sheet.csv.layout.yaml").write_text(
        taken(tmp_path / "counts", UNLIKE_NAMES).text, encoding="utf-8"
    )
    (tmp_path / "records" / "all.yaml").write_text(
        "contexts: [{id: C1, kind: other}]\n"
        "samples: [{id: '200', context: C1, volume_l: 10}, {id: '206', context: C1, volume_l: 12}]\n",
        encoding="utf-8",
    )
    (tmp_path / "project.yaml").write_text(
        "title: A dig\nauthors: [{name: A. Analyst}]\nregion_packs: [temperate-europe]\n", encoding="utf-8"
    )

    assert {p.code for p in read_folder(tmp_path).problems if p.severity == "error"} == set()


LOCI = """Sample,Unit,Locus,Vol_L,Context,Period,Hordeum vulgare,Triticum sp.,Lens culinaris,Galium
200,BP48,18,22,Surface,Middle,3,1,2,0
203,BP48,18,17,Surface,Middle,3,0,2,4
204,BP48,24,5,Fill,Middle,1,1,2,5
206,BR44,18,30,Surface,Late,3,1,7,0
208,BR41,45,62,Fill,Late,4,5,2,1
"""
"""Invented: loci are numbered within each square, and 'Context' says what was dug."""


def test_a_locus_is_one_of_its_square(tmp_path: Path) -> None:
    """Two loci of one square are two contexts, and so is one number in two squares; 'Surface' is what was dug."""
    found = taken(tmp_path, LOCI)
    assert found.layout is not None
    roles = {c: role.name for c, role in found.layout.tables[0].columns.items()}
    contexts = {id: " ".join(said.text for said in facts["context"]) for id, facts in found.facts.items()}

    assert (roles[1], roles[2], roles[4]) == ("context", "context", "kind")
    assert len(set(contexts.values())) == 4


ANSWERS = """FN,Feat_num,Volume,Intramural,Hordeum,Zea mays,Vitis,Portulaca
221,3316,5,N,0,3,1,4
224,3324,6,N,1,2,0,2
225,3325,6,Y,1,2,0,2
226,3326,6,N,5,2,0,2
"""
"""Invented: 'N' for no under a heading that nobody knows, which is no 'n' over counts."""


def test_answers_under_an_unknown_heading_are_told(tmp_path: Path) -> None:
    """'Intramural' is not read, and the reader hears of it."""
    found = taken(tmp_path, ANSWERS)

    assert any("'Intramural'" in doubt and "nothing known" in doubt for doubt in found.doubts)


def test_a_total_less_what_nobody_could_name_is_checked(tmp_path: Path) -> None:
    """'tot - undetermined' is the total without that line, and not the total of it."""
    sheet = "Taxon,S1,S2\nQuercus sp.,40,11\nPinus sp.,60,9\nUndetermined,7,5\nTOT,107,25\ntot - undetermined,{},20\n"

    assert [p.code for p in taken(tmp_path, sheet.format(100)).problems if p.code == "N317"] == []
    wrong = tmp_path / "wrong"
    wrong.mkdir()
    assert [p.place.cell for p in taken(wrong, sheet.format(90)).problems if p.code == "N317"] == ["B6"]
