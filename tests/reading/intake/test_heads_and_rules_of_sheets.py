"""
Heads of groups, estimates, brackets and rules that ordinary sheets write in words, read as a person reads them.

All sheets are invented; what is expected is written beside each, before it was tried.
"""

# ruff: noqa: E501

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from narrate.model.packs import Packs
from narrate.reading.intake.project_intake import naming_packs
from narrate.reading.intake.take_in import TakenIn, take_in


@cache
def packs() -> Packs:
    return naming_packs(("temperate-europe",))


def taken(folder: Path, text: str) -> TakenIn:
    (folder / "lab.csv").write_text(text.strip() + "\n", encoding="utf-8")
    return take_in(folder / "lab.csv", packs())


def wrong_totals(found: TakenIn) -> list[str]:
    return [problem.place.cell for problem in found.problems if problem.code == "N317"]


GROUPS = """
Taxon,Part,S1,S2,S3
{0},,,,
Triticum spelta,grain,4,5,2
Hordeum vulgare,grain,1,3,6
Total {0},,5,8,8
{1},,,,
Chenopodium album,seed,3,1,2
Rumex sp.,seed,2,2,4
Total {1},,5,3,6
"""


@pytest.mark.parametrize(
    ("first", "second"),
    [
        ("Cereal grain", "Other edible plants"), ("Crops", "Fruit seeds"), ("Céréales", "Plantes sauvages"),
        ("Getreide", "Sonstige Wildpflanzen"), ("Cereales", "Plantas silvestres"), ("Cereali", "Piante spontanee"),
        ("Granen", "Overige wilde planten"), ("Zboża", "Rośliny dzikie"), ("Cultigens", "Ruderal communities"),
    ],
)  # fmt: skip
def test_a_head_of_a_group_is_no_species_in_any_language(tmp_path: Path, first: str, second: str) -> None:
    """Two words of which the second is written small look like a species; the totals of both groups hold."""
    found = taken(tmp_path, GROUPS.format(first, second))

    assert found.layout is not None
    assert [found.layout.tables[0].rows[row].name for row in (1, 5)] == ["section", "section"]
    assert wrong_totals(found) == []


def test_a_group_whose_total_is_wrong_is_told_at_that_cell_alone(tmp_path: Path) -> None:
    """The 6 of the last line made 9."""
    sheet = GROUPS.format("Céréales", "Plantes sauvages").replace("5,3,6", "5,3,9")

    assert wrong_totals(taken(tmp_path, sheet)) == ["E9"]


def test_a_species_without_finds_stays_a_species(tmp_path: Path) -> None:
    """A line of a known plant that is blank in all samples is no head of those below it."""
    sheet = GROUPS.format("Cereals", "Weeds").replace("Rumex sp.,seed,2,2,4", "Agrostemma githago,seed,,,\nRumex sp.,seed,2,2,4")
    found = taken(tmp_path, sheet)

    assert found.layout is not None
    assert found.layout.tables[0].rows[7].name == "counts"
    assert wrong_totals(found) == []


@pytest.mark.parametrize(
    "written",
    [
        "env. 450", "environ 450", "ca 450", "ca. 450", "circa 450", "cca. 450", "~450", "± 450", "+/- 450", "about 450",
        "ungefähr 450", "ungef. 450", "etwa 450", "aprox. 450", "unos 450", "alrededor de 450", "cerca de 450",
        "all'incirca 450", "ong. 450", "ongeveer 450", "ok. 450", "około 450", "450 env.", "450 (ca.)", "450 (est.)",
        "450 (geschätzt)", "450 (estimés)", "450±",
    ],
)  # fmt: skip
def test_an_estimate_is_its_number_with_a_note_in_any_language(tmp_path: Path, written: str) -> None:
    """450, kept as written, with the note that it is estimated; and that is told."""
    found = taken(tmp_path, f"Taxon,Part,S1,S2\nPanicum miliaceum,grain,{written},3\nRumex sp.,seed,2,1\nAvena sp.,grain,4,1")
    first = next(row for row in found.rows if str(row.sample) == "S1")

    assert (first.count.number, first.count.written) == (450, written)
    assert first.note == f"estimated: {written}"
    assert [p.message for p in found.problems] == [f"'{written}' is an estimate, taken as 450 with a note, expected a count"]


BRACKETS = """
Taxon,Part,S1,S2,S3,S4,Total
Chenopodium album,seed,12 (3),4,2,(5),18
Rumex sp.,seed,2,(6),4,1,7
Avena sp.,grain,1,3 (1),6,8,18
Total,,15,7,12,9,43
{}
"""


@pytest.mark.parametrize(
    "key",
    [
        "Numbers in parentheses are uncharred", "Counts are of charred items; numbers in brackets are modern and left out of totals",
        "charred (uncharred)", "(n) = uncharred", "Zahlen in Klammern: unverkohlt", "Entre parenthèses : restes non carbonisés",
        "Entre paréntesis: sin carbonizar", "Tra parentesi i resti non carbonizzati", "Tussen haakjes: onverkoold",
        "W nawiasach: niezwęglone", "verkohlt (unverkohlt)",
    ],
)  # fmt: skip
def test_numbers_in_brackets_have_the_condition_that_the_sheet_gives_them(tmp_path: Path, key: str) -> None:
    """'12 (3)' is twelve charred and three that are not; '(5)' is none that is charred; the totals hold without them."""
    found = taken(tmp_path, BRACKETS.format(key))

    assert sum(row.count.number or 0 for row in found.rows if row.condition == "charred") == 43
    assert [(row.count.number, row.place.cell) for row in found.rows if row.condition == "uncharred"] == [
        (3, "C2"), (5, "F2"), (6, "D3"), (1, "D4"),
    ]  # fmt: skip
    assert found.problems == ()


def test_a_wrong_total_beside_brackets_is_told_alone(tmp_path: Path) -> None:
    """The 18 of the oats made 19, with the uncharred seeds left out as in all other totals."""
    sheet = BRACKETS.format("Uncharred seeds in brackets").replace("6,8,18", "6,8,19")

    assert wrong_totals(taken(tmp_path, sheet)) == ["G4"]


def test_brackets_may_hold_some_of_those_before_them(tmp_path: Path) -> None:
    """'12 (3)' under 'of which uncharred in brackets' is nine and three."""
    sheet = "Taxon,Part,S1,S2\nChenopodium album,seed,12 (3),4\nRumex sp.,seed,2,1\nAvena sp.,grain,1,3\nOf which uncharred in brackets"
    first = [row for row in taken(tmp_path, sheet).rows if row.place.cell == "C2"]

    assert [(row.count.number, row.condition) for row in first] == [(9, "charred"), (3, "uncharred")]


UNCHARRED_LEFT_OUT = """
Taxon,Part,S1,S2,S3,S4
Weeds,,,,,
Chenopodium album,seed,12,4,2,5
Sambucus nigra (uncharred),seed,,3,1,2
Total weeds,,12,4,2,5
Cereals,,,,,
Avena sp.,grain,3,1,2,2
Hordeum vulgare,grain,1,,2,4
Total cereals,,4,1,4,6
Total,,16,5,6,11
"""


def test_totals_of_groups_may_leave_out_what_is_not_charred(tmp_path: Path) -> None:
    """Elder that is not charred is in no total of the sheet, with no word of it, and no total is told."""
    assert wrong_totals(taken(tmp_path, UNCHARRED_LEFT_OUT)) == []


def test_a_wrong_total_of_a_group_that_leaves_out_the_uncharred_is_told(tmp_path: Path) -> None:
    """The 4 of the second sample made 7, which is what it would be with the elder."""
    sheet = UNCHARRED_LEFT_OUT.replace("Total weeds,,12,4,2,5", "Total weeds,,12,7,2,5")

    assert wrong_totals(taken(tmp_path, sheet)) == ["D5"]


@pytest.mark.parametrize(
    ("part", "unit"),
    [
        ("fragments (g)", 1.0), ("fragments, weight (mg)", 0.001), ("Bruchstücke, Gewicht [g]", 1.0), ("frags wt", 1.0),
        ("fragments (poids, g)", 1.0), ("fragmentos (peso en g)", 1.0), ("frammenti, peso (g)", 1.0),
        ("fragmenten, gewicht (g)", 1.0),
    ],
)  # fmt: skip
def test_a_part_with_a_unit_of_mass_is_weighed(tmp_path: Path, part: str, unit: float) -> None:
    """A line of weights among lines of counts: pieces of cereals in grams, which no total of counts takes in."""
    sheet = f"Taxon;Part;S1;S2;S3\nHordeum vulgare;grain;12;4;3\nCereal indet.;{part};0.12;<0.01;0.4\nRumex sp.;seed;2;1;6\nTotal;;14;5;9"
    found = taken(tmp_path, sheet)
    weighed = [row for row in found.rows if row.mass_g]

    assert [(row.mass_g, row.completeness) for row in weighed] == [
        (pytest.approx(0.12 * unit), "fragment"), (pytest.approx(0.4 * unit), "fragment"),
    ]  # fmt: skip
    assert sum(row.count.number or 0 for row in found.rows) == 28
    assert wrong_totals(found) == []


CHAFF_APART = """
Taxon,Part,S1,S2,S3,S4
CEREALS,,,,,
Hordeum vulgare,grain,15,21,,7
CEREAL CHAFF,,,,,
Triticum dicoccum,glume base,7,2,8,4
Cereal indet.,culm node,,3,1,
WILD PLANTS,,,,,
Aegilops sp.,grain,9,,3,1
Aegilops sp.,glume base,,4,,2
Lolium sp.,seed,10,28,1,8
{},,34,49,4,16
Total chaff,,7,9,9,6
"""


@pytest.mark.parametrize("label", ["Total seeds and grains", "Total fruits and seeds", "Total seeds", "Total graines et fruits"])
def test_a_total_of_seeds_is_of_all_but_chaff(tmp_path: Path, label: str) -> None:
    """Grain of cereals and seeds of wild plants in one total, glume bases of both and nodes of straw in the other."""
    assert wrong_totals(taken(tmp_path, CHAFF_APART.format(label))) == []


def test_a_wrong_total_of_seeds_beside_chaff_is_told_alone(tmp_path: Path) -> None:
    """The 49 made 52."""
    sheet = CHAFF_APART.format("Total seeds and grains").replace("34,49,4,16", "34,52,4,16")

    assert wrong_totals(taken(tmp_path, sheet)) == ["D11"]


@pytest.mark.parametrize("note", ["f = fragment; fragments are counted one each", "f: fragments, one each in the totals"])
def test_two_keys_that_say_one_thing_in_other_words_agree(tmp_path: Path, note: str) -> None:
    """'f = fragments' in the title and 'f = fragment' below are one key."""
    sheet = f"Carbonised remains. Figures are whole items; f = fragments.,,,\nTaxon,Part,S1,S2\nOryza sativa,grain,6+2f,4\nRumex sp.,seed,2f,1\nAvena sp.,grain,1,3\n{note}"
    found = taken(tmp_path, sheet)

    assert sum(row.count.number or 0 for row in found.rows if row.completeness == "fragment") == 4
    assert [problem.message for problem in found.problems if "neither is used" in problem.message] == []


def bracketed(*, adds: bool, last: str = "") -> str:
    """Numbers in brackets that no key explains, and totals that add them or leave them out."""
    totals = ("21", "14", "20", "10") if adds else ("18", "7", "18", "5")
    rows = ["Taxon,Part,S1,S2,S3,S4", "Hordeum vulgare,grain,3,1,8,", "Chenopodium album,seed,12 (3),4,10 (2),(5)"]
    rows += ["Rumex sp.,seed,2,(6),,1", "Avena sp.,grain,1,2 (1),,4", f"Total,,{','.join(totals)}"]
    return "\n".join(rows).replace(totals[0], last or totals[0], 1)


def test_totals_tell_that_numbers_in_brackets_are_added(tmp_path: Path) -> None:
    """12 (3) is fifteen where all totals say so; that it is taken so is told."""
    found = taken(tmp_path, bracketed(adds=True))

    assert sum(row.count.number or 0 for row in found.rows) == 65
    assert wrong_totals(found) == []
    assert [doubt[:61] for doubt in found.doubts] == ["the totals of the sheet add what stands in brackets, as '3' i"]


def test_totals_tell_that_numbers_in_brackets_are_left_out(tmp_path: Path) -> None:
    """12 (3) is twelve, and (5) alone no count, where all totals say so; what it is nobody says, and that is told."""
    found = taken(tmp_path, bracketed(adds=False))

    assert sum(row.count.number or 0 for row in found.rows) == 48
    assert [row.count.amount for row in found.rows if row.count.written == "(5)"] == ["noted as present"]
    assert wrong_totals(found) == []
    assert [doubt[:67] for doubt in found.doubts] == ["DOUBTFUL: the totals of the sheet leave out what stands in brackets"]


@pytest.mark.parametrize("adds", [True, False])
def test_one_wrong_total_does_not_turn_what_the_others_say_of_brackets(tmp_path: Path, adds: bool) -> None:
    """The first total made 29: told at its cell and nowhere else."""
    assert wrong_totals(taken(tmp_path, bracketed(adds=adds, last="29"))) == ["C6"]


@pytest.mark.parametrize(
    ("written", "part"),
    [
        ("Kornfragment", "grain"), ("Kornbruch", "grain"), ("frag. de caryopse", "grain"), ("fragments de coque", "nutshell"),
        ("fragmento de cáscara", "nutshell"), ("frammenti di guscio", "nutshell"), ("graanfragmenten", "grain"),
        ("Fragment (Korn)", "grain"), ("frags of nutshell", "nutshell"), ("Schalenfragmente", "nutshell"),
    ],
)  # fmt: skip
def test_pieces_of_a_part_are_that_part_in_pieces(tmp_path: Path, written: str, part: str) -> None:
    """Whether the word for pieces stands before the part, behind it or in one word with it."""
    found = taken(tmp_path, f"Taxon,Part,S1,S2\nHordeum vulgare,grain,4,2\nCorylus avellana,{written},3,\nRumex sp.,seed,2,1")
    pieces = next(row for row in found.rows if row.place.line == 3)

    assert (str(pieces.part), pieces.completeness) == (part, "fragment")


def test_a_name_of_two_parts_is_no_seed(tmp_path: Path) -> None:
    """'Tuber/rhizome' without a part is of a part that nobody can tell, and that is told."""
    found = taken(tmp_path, "Taxon,Part,S1,S2\nHordeum vulgare,grain,4,2\nTuber/rhizome,,3,1\nRumex sp.,seed,2,1")

    assert {str(row.part) for row in found.rows if row.place.line == 3} == {"indeterminate"}
    assert "2 finds name no part; the layout takes them as indeterminate for 2, expected a part for each" in [
        problem.message for problem in found.problems
    ]


@pytest.mark.parametrize(
    "written",
    [
        "12+4f", "12 + 4 f", "12+4 frag.", "12 + 4 fr.", "12 (+4 fr.)", "12 ent. + 4 frag.", "12 ganze + 4 Fragmente",
        "12/4f", "12w 4f", "12 int. + 4 framm.", "12 hele + 4 fragm.", "12 całe + 4 fragm.", "12 en 4 frag", "12 y 4 frag.",
        "12 u. 4 Frag.",
    ],
)  # fmt: skip
def test_whole_ones_and_pieces_in_one_cell_are_two_finds(tmp_path: Path, written: str) -> None:
    """Twelve whole ones and four pieces, in any language."""
    found = taken(tmp_path, f"Taxon,Part,S1,S2\nHordeum vulgare,grain,{written},2\nRumex sp.,seed,2,1\nAvena sp.,grain,1,1")
    first = [row for row in found.rows if row.place.cell == "C2"]

    assert [(row.count.number, row.completeness) for row in first] == [(12, "whole"), (4, "fragment")]


def test_pieces_that_nobody_counted_beside_whole_ones_are_in_no_sum(tmp_path: Path) -> None:
    """'12 + frags' is twelve, and pieces as presence, which is told; the total of 15 holds."""
    found = taken(tmp_path, "Taxon,Part,S1,S2\nHordeum vulgare,grain,12 + frags,2\nRumex sp.,seed,2,1\nAvena sp.,grain,1,1\nTotal,,15,4")
    first = [row for row in found.rows if row.place.cell == "C2"]

    assert [(row.count.number, row.completeness) for row in first] == [(12, "whole"), (None, "fragment")]
    assert [problem.message for problem in found.problems] == [
        "'12 + frags' says that pieces were there and not how many; they are kept as presence, expected a number"
    ]


def test_numbers_in_brackets_may_be_in_doubt(tmp_path: Path) -> None:
    """'Numbers in brackets are cf. identifications': twelve, and three that are like it."""
    sheet = "Taxon,Part,S1,S2\nHordeum vulgare,grain,12 (3),2\nRumex sp.,seed,2,(1)\nAvena sp.,grain,1,1\nNumbers in brackets are cf. identifications"
    found = taken(tmp_path, sheet)

    doubted = [(row.count.number, row.place.cell) for row in found.rows if row.identification.qualifier == "cf."]
    assert doubted == [(3, "C2"), (1, "D3")]


CHAFF_ELSEWHERE = """
Campione,,C1,C2,C3,C4
Volume (litri),,10,20,5,8
CEREALI,,,,,
Hordeum vulgare,cariosside,15,21,,7
PULA,,,,,
Triticum dicoccum,base di gluma,7,2,8,4
PIANTE SPONTANEE,,,,,
Aegilops sp.,base di gluma,,4,3,2
Lolium sp.,seme,10,28,1,8
Totale pula,,7,6,11,{}
Resti carbonizzati per litro,,3.2,2.75,2.4,2.63
"""


def test_a_total_named_as_a_section_may_take_in_its_kind_of_other_sections(tmp_path: Path) -> None:
    """Glume bases of goat grass stand among the wild plants and are added to the chaff; the density is one of all."""
    found = taken(tmp_path, CHAFF_ELSEWHERE.format(6))

    assert wrong_totals(found) == []
    assert found.layout is not None
    assert found.layout.tables[0].rows[10].name == "density"
    assert wrong_totals(taken(tmp_path, CHAFF_ELSEWHERE.format(8))) == ["F10"]


@pytest.mark.parametrize("head", ["Presentie", "Präsenz", "Obecność", "Fundproben"])
def test_a_column_of_shares_of_the_samples_is_a_ubiquity_under_any_word(tmp_path: Path, head: str) -> None:
    """'3/4' beside four samples; one that is wrong is told."""
    rows = ["Taxon,Part,S1,S2,S3,S4,Total,{}", "Hordeum vulgare,grain,3,1,8,,12,3/4", "Avena sp.,grain,1,,2,,3,2/4"]
    rows += ["Rumex sp.,seed,2,4,1,1,8,4/4", "Galium aparine,seed,,,2,,2,{}"]
    sheet = "\n".join(rows)

    assert wrong_totals(taken(tmp_path, sheet.format(head, "1/4"))) == []
    assert wrong_totals(taken(tmp_path, sheet.format(head, "3/4"))) == ["H5"]


@pytest.mark.parametrize(
    "title",
    [
        "Restos por contexto; entre paréntesis: restos no carbonizados", "Plant remains. Uncharred seeds in brackets",
        "Szczątki roślin (spalone; w nawiasach niespalone)", "Pflanzenreste. In Klammern unverkohlte",
    ],
)  # fmt: skip
def test_a_title_that_says_what_is_in_brackets_says_nothing_of_the_rest(tmp_path: Path, title: str) -> None:
    """Only what stands in brackets is uncharred; the rest is charred, as in any list that says nothing."""
    found = taken(tmp_path, f'"{title}",,,\nTaxon,Part,S1,S2\nHordeum vulgare,grain,12 (3),2\nRumex sp.,seed,2,(1)\nAvena sp.,grain,1,1')

    assert {row.place.cell for row in found.rows if row.condition == "uncharred"} == {"C3", "D4"}
    assert sum(row.count.number or 0 for row in found.rows if row.condition == "charred") == 18


def test_a_state_that_reads_as_a_statistic_is_a_state_beside_a_blank_name(tmp_path: Path) -> None:
    """'min' is mineralised here, and no minimum: the line without a name is of the plant above it, and in the total."""
    rows = ["Taxon,Part,Pres.,S1,S2", "Agrostemma githago,seed,ch,2,6", ",seed frag.,min,4,1", "Rumex sp.,nutlet,ch,,3"]
    rows += ["Urtica dioica,seed,wl,9,nc", "Total,,,15,10", '"ch = charred, min = mineralised, wl = waterlogged; nc = not counted, not in totals"']
    found = taken(tmp_path, "\n".join(rows))

    mineralised = [(row.identification.taxon, row.count.number) for row in found.rows if row.condition == "mineralised"]
    assert mineralised == [("Agrostemma githago", 4), ("Agrostemma githago", 1)]
    assert [row.count.amount for row in found.rows if row.count.written == "nc"] == ["noted as present"]
    assert found.problems == ()


@pytest.mark.parametrize("words", ["not counted", "nicht gezählt", "non compté", "no contado", "non contati", "niet geteld", "nie policzone"])
def test_letters_that_stand_for_what_was_not_counted_are_presence(tmp_path: Path, words: str) -> None:
    """'nc' with a key in any language."""
    found = taken(tmp_path, f"Taxon,Part,S1,S2\nUrtica dioica,seed,nc,6\nRumex sp.,seed,2,1\nAvena sp.,grain,1,1\nnc = {words}")

    assert [row.count.amount for row in found.rows if row.count.written == "nc"] == ["noted as present"]
    assert [problem.severity for problem in found.problems if problem.severity == "error"] == []
