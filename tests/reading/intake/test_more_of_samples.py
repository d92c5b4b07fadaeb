"""What is said of samples beside their own lines: sections, blocks below, notes, ids that stand twice. All invented."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from narrate.model.packs import Packs
from narrate.reading.intake.take_in import TakenIn, take_in
from narrate.reading.packs import read_packs


@cache
def packs() -> Packs:
    return read_packs(("eastern-north-america",))[0]


def read(folder: Path, text: str) -> TakenIn:
    sheet = folder / "sheet.csv"
    sheet.write_text(text, encoding="utf-8")
    return take_in(sheet, packs())


def said(taken: TakenIn, role: str) -> dict[str, str]:
    """Sample -> what the sheet says first in a role; empty where it says nothing."""
    return {id: next((one.text for one in facts.get(role, [])), "") for id, facts in taken.facts.items()}


SECTIONS = """Sample,Litres,Zea mays kernel,Zea mays cupule,Rubus sp. seed,Carya sp. nutshell
Phase II (late),,,,,
3,10,4,2,,1
4,10,1,,3,
Phase I,,,,,
7,20,9,1,2,
Unphased,,,,,
8,8,,,1,4
"""


def test_a_line_between_samples_says_the_phase_of_those_below(tmp_path: Path) -> None:
    """Until the next such line, and 'Unphased' says none."""
    found = said(read(tmp_path, SECTIONS), "phase")

    assert found == {"3": "Phase II (late)", "4": "Phase II (late)", "7": "Phase I", "8": ""}


def test_a_line_between_samples_may_name_a_house(tmp_path: Path) -> None:
    """What its first word is a heading of, it says of the samples."""
    taken = read(tmp_path, SECTIONS.replace("Phase II (late)", "House 2").replace("Phase I,", "House 1,"))

    assert said(taken, "feature") == {"3": "House 2", "4": "House 2", "7": "House 1", "8": ""}


BELOW = """Taxon,P1,P2,P3,n
Zea mays,x,x,?,2
Rubus sp.,x,,x,2
Carya sp.,,x,x,2
No. of taxa,2,2,2,
,,,,
More on the pits,,,,
Feature,P1,P2,P3,
Phase,Early,Early,Late,
Soil (litres),10,8.5,n/a,
No. of flots,2,3,1,
"""


def test_a_block_below_that_repeats_the_ids_says_more_of_the_samples(tmp_path: Path) -> None:
    """Each in the column of its own id."""
    taken = read(tmp_path, BELOW)

    assert said(taken, "phase") == {"P1": "Early", "P2": "Early", "P3": "Late"}
    assert said(taken, "volume") == {"P1": "10", "P2": "8.5", "P3": "n/a"}


def test_a_question_mark_may_be_counted_or_not(tmp_path: Path) -> None:
    """The number of finds leaves '?' out and the number of taxa takes it in: neither is told to be wrong."""
    assert [p.message for p in read(tmp_path, BELOW).problems if p.code == "N317"] == []


TWICE = """Taxon,,,,,,
Context,101,102,105,107,109,110
Sample,21,22,22,23,24,25
Zea mays kernel,4,1,9,,2,1
Rubus sp. seed,,3,2,1,2,
Carya sp. nutshell,1,,,4,,7
"""


def test_an_id_over_two_contexts_is_two_samples(tmp_path: Path) -> None:
    """The others keep the ids that they have, and it is told."""
    taken = read(tmp_path, TWICE)

    assert list(taken.facts) == ["21", "102/22", "105/22", "23", "24", "25"]
    assert taken.doubts == (
        "DOUBTFUL: the id '22' stands over 2 columns or rows of different contexts (102, 105); they are taken for "
        "samples of their own, with the context before the id; see 'mend' in the layout, and write the id alone there "
        "if they are one sample",
    )


def test_an_id_over_one_context_twice_stays_one_sample(tmp_path: Path) -> None:
    """Its counts are added, and that is told as before."""
    taken = read(tmp_path, TWICE.replace("105", "102"))

    assert list(taken.facts) == ["21", "22", "23", "24", "25"]
    assert any("the sample id '22' stands here and in C3" in problem.message for problem in taken.problems)


FILLS = """Sample,1,2,3,4
Feature,F1,F1,F2,F3
Layer,upper,lower,upper,
Phase,Late,Late,Early,
Zea mays kernel,4,1,9,2
Rubus sp. seed,1,3,2,1
Carya sp. nutshell,1,,,4
"""


def test_a_blank_means_nothing_where_repeated_words_are_written_out(tmp_path: Path) -> None:
    """'Late' stands twice; so the blank of sample 4 is no 'Early'."""
    assert said(read(tmp_path, FILLS), "phase") == {"1": "Late", "2": "Late", "3": "Early", "4": ""}


def test_a_layer_does_not_go_on_into_another_feature(tmp_path: Path) -> None:
    """The blank of sample 4 is of F3, and the upper layer before it of F2."""
    assert said(read(tmp_path, FILLS), "context") == {"1": "upper", "2": "lower", "3": "upper", "4": ""}


EXPORT = """OBJ_NO,PROV_FLOT_BAG,PROV_NOTES,MAT,OBJ_NAME,OBJ_ELEMENT,OBJ_QTY,OBJ_WT_G
1,Fl 1,"pit, upper; 8 L floated",BOTANICAL,Zea mays,Kernel,15,0.7
2,Fl 1,"pit, upper; 8 L floated",BOTANICAL,Carya sp.,Nutshell,1 vial,1.2
3,Fl 1,"pit, upper; 8 L floated",LITHIC,Chert piece,Flake,17,3.3
4,Fl 2,"pit, base; 2.5 L floated",BOTANICAL,Zea mays,Cupule,6,
5,Fl 2,"pit, base; 2.5 L floated",BOTANICAL,Rubus sp.,Seed,many,
6,Fl 3,"hearth; vol. not recorded",BOTANICAL,Zea mays,Kernel,3,
6,Fl 3,"hearth; vol. not recorded",BOTANICAL,Zea mays,Kernel,3,
7,Fl 3,"hearth; vol. not recorded",BOTANICAL,Rubus sp.,Seed,2,
8,Fl 3,"hearth; vol. not recorded",BOTANICAL,Carya sp.,Nutshell,1,0.1
9,Fl 3,"hearth; vol. not recorded",FAUNAL,Fish,Vertebra,4,
10,Fl 3,"hearth; vol. not recorded",BOTANICAL,Carya sp.,Nutmeat,1,0.1
"""


def test_heads_are_read_behind_the_names_of_their_tables(tmp_path: Path) -> None:
    """'OBJ_QTY' is a quantity, 'PROV_FLOT_BAG' the bag of a flot; no column is taken for a sample."""
    taken = read(tmp_path, EXPORT)

    assert taken.layout is not None
    assert taken.layout.tables[0].shape == "long"
    names = [role.name for role in taken.layout.tables[0].columns.values()]
    assert names == ["ignored", "sample", "sample note", "group", "taxon", "part", "count", "mass"]


def test_litres_are_found_in_the_notes_of_samples(tmp_path: Path) -> None:
    """Where one note stands in all lines of a sample; depths and meshes are no litres."""
    assert said(read(tmp_path, EXPORT), "volume") == {"Fl 1": "8", "Fl 2": "2.5", "Fl 3": ""}


def test_a_class_of_other_finds_sets_a_line_aside(tmp_path: Path) -> None:
    """A flake of chert is no plant, whatever its name; its class says so."""
    assert "Chert piece" not in {row.identification.written for row in read(tmp_path, EXPORT).rows}


def test_words_for_a_number_are_presence(tmp_path: Path) -> None:
    """One vial is not one nutshell."""
    rows = {row.count.written: row.count for row in read(tmp_path, EXPORT).rows}

    assert [(rows[word].amount, rows[word].number) for word in ("1 vial", "many")] == [("noted as present", None)] * 2


def test_a_line_written_out_twice_is_told(tmp_path: Path) -> None:
    """With its own number the same in both."""
    assert any(
        doubt.startswith("DOUBTFUL: row 8 is row 7 again in every cell") for doubt in read(tmp_path, EXPORT).doubts
    )


PAIRS = """Sample,,S1,,S2,,S3,,,
Taxon,Part,n,mg,n,mg,n,mg,Total n,Total wt (mg)
Zea mays,kernel,4,33,1,9,2,11,7,53
Zea mays,cupule,2,3,,,6,8,8,11
Carya sp.,nutshell,,,3,40,,,3,40
Nut:wood (wt),,,,1.511,,0.331,,,
"""


def test_totals_among_pairs_are_no_sample_and_are_checked_in_their_unit(tmp_path: Path) -> None:
    """'Total n' and 'Total wt (mg)' stand under no id; the weights agree with them in milligrams."""
    taken = read(tmp_path, PAIRS)

    assert list(taken.facts) == ["S1", "S2", "S3"]
    assert [problem.message for problem in taken.problems if problem.code == "N317"] == []
    assert not any("Nut" in row.identification.written for row in taken.rows)


def test_what_was_sorted_of_one_sieve_class_is_a_note_of_the_sample(tmp_path: Path) -> None:
    """'% of <2 mm sorted' is no share of the counts, and scales none of them up."""
    text = "Sample,S1,S2,S3\nLitres,10,10,8\n% of <2 mm sorted,100,50,25\nZea mays kernel,3,4,1\nRubus seed,12,5,2\n"
    (tmp_path / "lab.csv").write_text(text, encoding="utf-8")
    found = take_in(tmp_path / "lab.csv", packs())

    assert [one.text for one in found.facts["S3"]["sample note"]] == ["25"]
    assert {row.proportion_sorted for row in found.rows} == {1.0}
    assert [problem.code for problem in found.problems if problem.code == "N317"] == []


WORK = """Flot #,Wood n,Wood g,Rubus sp.,Vitis sp.,Init.,Date
17,7,0.26,3,,TJ,9/3
18,1,0.04,,2,EO,9/4
19,5,0.14,1,1,McB,14/9/21
"""


def test_who_sorted_a_sample_and_when_is_no_find_and_no_phase(tmp_path: Path) -> None:
    """Initials and days are notes of the sample, under their own heads."""
    found = read(tmp_path, WORK)

    assert sum(row.count.number or 0 for row in found.rows) == 20
    assert {problem.code for problem in found.problems if problem.severity == "error"} == set()
    assert said(found, "phase") == {"17": "", "18": "", "19": ""}
    notes = {id: [(one.unit, one.text) for one in facts["sample note"]] for id, facts in found.facts.items()}
    assert notes["19"] == [("Init.", "McB"), ("Date", "14/9/21")]
