"""What stands in a sheet beside its finds: questions, sizes, words for places, what is no plant. Sheets are invented."""
# ruff: noqa: E501

from pathlib import Path

from narrate.reading.intake.project_intake import intake_packs
from narrate.reading.intake.records_draft import draft_records
from narrate.reading.intake.summary import summary
from narrate.reading.intake.take_in import TakenIn, take_in
from narrate.reading.intake.told import Told


def taken(folder: Path, text: str) -> TakenIn:
    sheet = folder / "lab.csv"
    sheet.write_text(text, encoding="utf-8")
    return take_in(sheet, intake_packs(None))


def contexts(found: TakenIn) -> dict[str, str]:
    """Sample -> the context that is drafted for it."""
    ids = {str(row.sample) for row in found.rows}
    draft = draft_records(found.facts, ids, intake_packs(None).words, Told())
    return {id: fields["context"] for id, fields in draft.samples.items()}


SCAN = """Sample,Context,Volume (l),Hordeum vulgare grain,Triticum spelta glume base,Avena sp. grain,Suitable for 14C?,Dated
1,101,10,++,+,,Y,N
2,104,12,+,,+,N,N
3,107,8,+++,+,,Y,Y
4,110,9,+,,++,?,N
"""


def test_columns_of_yes_and_no_are_remarks_on_the_sample(tmp_path: Path) -> None:
    """A question is no plant, and its answers are no finds."""
    found = taken(tmp_path, SCAN)

    assert {row.identification.taxon for row in found.rows} == {"Hordeum vulgare", "Triticum spelta", "Avena"}
    assert [(one.unit, one.text) for one in found.facts["1"]["sample note"]] == [("Suitable for 14C?", "Y"), ("Dated", "N")]


def test_a_plant_that_nobody_knows_keeps_its_signs(tmp_path: Path) -> None:
    """'Y' for a plant is presence, whatever the plant: no question is asked."""
    found = taken(
        tmp_path,
        "Sample,Volume (l),Hordeum vulgare,Kuttuganda,Avena sp.\n1,10,4,y,\n2,12,7,,2\n3,8,,y,3\n4,9,1,y,2\n",
    )

    assert "Kuttuganda" in {row.identification.written for row in found.rows}


PLACES = """Sample,Study Unit,Feature,Phase,Volume (l),Zea mays kernel,Chenopodium seed
1-1,Midden 1,refuse,Early,1,4,8
1-2,Midden 1,refuse,Early,1,3,12
2-1,Midden 2,refuse,Late,2,5,9
2-2,Room 4,F. 2 hearth,Late,1,6,14
"""


def test_places_that_share_a_word_of_kind_are_two(tmp_path: Path) -> None:
    """'refuse' of one midden is another than 'refuse' of the next; samples of one place stay together."""
    found = taken(tmp_path, PLACES)

    assert contexts(found) == {
        "1-1": "Midden 1 refuse", "1-2": "Midden 1 refuse", "2-1": "Midden 2 refuse", "2-2": "F. 2 hearth",
    }  # fmt: skip


def test_words_of_two_phases_are_two_contexts(tmp_path: Path) -> None:
    """Where nothing but the phase parts them, it stands behind the word."""
    found = taken(tmp_path, PLACES.replace("Study Unit,", "").replace("Midden 1,", "").replace("Midden 2,", "").replace("Room 4,", ""))

    assert contexts(found) == {
        "1-1": "refuse (Early)", "1-2": "refuse (Early)", "2-1": "refuse (Late)", "2-2": "F. 2 hearth",
    }  # fmt: skip


WOOD = """{title}
Taxon,1,2,3
Quercus,12,8,3
Pinus,4,,9
Fraxinus,1,2,
Total,17,10,12
N.º mínimo de taxones,3,2,2
{note}
"""


def test_the_size_of_a_title_is_the_size_of_its_finds(tmp_path: Path) -> None:
    """'Charcoal >4 mm' over a table, or said of all fragments under it; two sizes are nobody's."""
    titled = taken(tmp_path, WOOD.format(title="Table 2. Wood charcoal >4 mm by sample", note=""))
    noted = taken(tmp_path, WOOD.format(title="Tabla 2. Carbones", note="UE: unidad. Fragmentos > 4 mm."))
    neither = taken(tmp_path, WOOD.format(title="Table 2. Wood charcoal of flots >1 mm and residues >4 mm", note=""))

    assert {row.size_class for row in titled.rows} == {">4 mm"} == {row.size_class for row in noted.rows}
    assert {row.size_class for row in neither.rows} == {""}
    assert any(">4 mm" in doubt for doubt in titled.doubts)


def test_a_number_of_taxa_is_worked_out_and_no_find(tmp_path: Path) -> None:
    """'N.º mínimo de taxones' under the total counts nothing."""
    found = taken(tmp_path, WOOD.format(title="Tabla 2. Carbones", note=""))

    assert sum(row.count.number or 0 for row in found.rows) == 39
    assert not [problem for problem in found.problems if problem.code == "N317"]


def test_what_is_left_out_is_told_with_its_words(tmp_path: Path) -> None:
    """A title and a note under the table stand in the list as they were written."""
    said = summary(taken(tmp_path, WOOD.format(title="Tabla 2. Carbones de la cova", note="Leída por segunda vez en otoño")))

    assert "'Tabla 2. Carbones de la cova'" in said
    assert "'Leída por segunda vez en otoño'" in said
    assert "row 7: worked out (derived)" in said


WET = """Bijlage 2: onverkoolde (waterverzadigde) resten,,,
Taxon,resttype,V1,V2
Juncus,zaad,12,4
Carex,vrucht,3,8
Sambucus nigra,zaad,5,1
houtskool,,+,++
botfragmenten,,+,
eischaal,,,+
"""


def test_charcoal_is_charred_in_a_table_of_waterlogged_remains(tmp_path: Path) -> None:
    """Whatever the title says of the other remains; it is told."""
    found = taken(tmp_path, WET)

    assert {row.condition for row in found.rows if row.part == "charcoal"} == {"charred"}
    assert {row.condition for row in found.rows if row.part != "charcoal"} == {"waterlogged"}
    assert any("is charcoal; it is taken as charred" in problem.message for problem in found.problems)


def test_bone_and_eggshell_are_set_aside_in_the_language_of_the_sheet(tmp_path: Path) -> None:
    """'botfragmenten' and 'eischaal' are no seeds."""
    found = taken(tmp_path, WET)

    assert {row.identification.taxon for row in found.rows} >= {"Juncus", "Carex", "Sambucus nigra"}
    assert not {"botfragmenten", "eischaal"} & {row.identification.written for row in found.rows}
    assert len([p for p in found.problems if p.code == "N315" and "set aside" in p.message]) == 2


def test_the_size_of_a_section_stays_with_its_finds(tmp_path: Path) -> None:
    """'CHARCOAL >4 mm' over a few lines of a table: it is kept in their notes."""
    found = taken(tmp_path, "Taxon,1,2\nHordeum vulgare grain,4,9\nAvena sp. grain,2,3\nCHARCOAL >4 mm,,\nQuercus,12,8\nPinus,4,7\n")

    notes = {row.identification.written: row.note for row in found.rows}
    assert notes["Quercus"] == notes["Pinus"] == "under a head that says >4 mm"
    assert not notes["Hordeum vulgare grain"]


LISTED = """{head}
A1,101,pit,10,7.92
A2,104,ditch,12,
A3,107,pit,8.5,<0.1
"""


def test_weights_of_charcoal_in_a_list_of_samples_are_read(tmp_path: Path) -> None:
    """'Charcoal >4 mm (g)' beside litres is a find of each sample; '<0.1' is there and is no weight."""
    found = taken(tmp_path, LISTED.format(head="Sample,Context,Feature type,Volume (l),Charcoal >4 mm (g)"))

    assert [(row.sample, row.part, row.mass_g, row.size_class) for row in found.rows if row.mass_g] == [
        ("A1", "charcoal", 7.92, ">4 mm")
    ]
    assert {id: said["volume"][0].text for id, said in found.facts.items()} == {"A1": "10", "A2": "12", "A3": "8.5"}


def test_weights_of_no_plant_in_a_list_of_samples_are_told(tmp_path: Path) -> None:
    """'Bone (g)' is no find of a plant: its column is left out, and the list says so."""
    found = taken(tmp_path, LISTED.format(head="Sample,Context,Feature type,Volume (l),Bone (g)"))

    assert not found.rows
    assert any("'Bone (g)'" in line for line in (*found.left_out, *found.doubts))
