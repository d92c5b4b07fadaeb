"""Small invented sheets of the shapes in which strangers' sheets were once read wrongly."""

# ruff: noqa: E501

from __future__ import annotations

from pathlib import Path

from narrate.model.counts import CountRow
from narrate.reading.intake.take_in import TakenIn, take_in
from tests.reading.intake.test_blind import packs

_BLOCK = """Sample: S-01,Op. 3,Lot 12,Phase: Late Woodland,Volume: 10 L,Context: midden
No.,Taxon,Part,State,Whole,Frag.,Weight (g)
1,Zea mays,cupule,C,17,6,0.87
2,Phaseolus vulgaris,cotyledon,C,3,,
3,Cucurbita sp.,rind,C,,4,0.1
4,Chenopodium berlandieri,seed,NC,40,1,
Total,,,,60,11,0.97

Sample: S-02,Op. 3,Lot 13,Phase: Late Woodland,Volume: 8.5 L,Context: pit
No.,Taxon,Part,State,Whole,Frag.,Weight (g)
1,Zea mays,kernel,C,5,9,0.4
2,Helianthus annuus,achene,C,3,,
3,Polygonum erectum,seed,C,30,2,
4,Iva annua,achene,C,2,1,
Total,,,,40,12,0.40

C = charred; NC = not charred
"""
_CLASSES = """Sample,S1,S2,S3
Volume (l),10,10,20
Hordeum vulgare grain,x,xx,cf. x
Triticum dicoccum glume base,xxx,xx,-
Chenopodium album seed [uc],x,xx,xxx
Lens culinaris seed,x,-,x
Galium aparine seed,-,x,cf. xx
"Key: x = 1-5 per litre; xx = 6-20 per litre; xxx = more than 20 per litre; [uc] = uncharred, all others charred"
"""
_STACKED = """Operation,A,,B
Locus,12,14,5
Sample no. (SF),4,9,11
Volume (L),10,12,5
Charcoal >2 mm (g),0.53,0.35,2.09
Seed >2 mm (g),0.25,0.12,0.81
CEREALS AND FRUITS (weight in g),,,
Hordeum,1.70,,0.60
Triticum,0.19,0.1,0.12
Lens,,,
Vitis (seed),0.03,,0.04
WILD TAXA (number),,,
Beta,,,
Chenopodium,1,,4
Silene,29,3,
Galium,3,,1
Appendix continued,,,
Operation,C,,
Locus,7,8,8
Sample no. (SF),20,21,22
Volume (L),10,4,4
Charcoal >2 mm (g),0.4,0.3,1.1
Seed >2 mm (g),0.8,1.3,0.7
CEREALS AND FRUITS (weight in g),,,
Hordeum,0.70,1.2,0.6
Triticum,,0.1,0.1
Lens,0.1,,
Vitis (seed),,0.02,
WILD TAXA (number),,,
Beta,2,,
Chenopodium,,5,4
Silene,2,3,8
Galium,,,1
"""
_BESIDE_LATIN = """样品号,单位,年代,土量（升）,粟 Setaria italica,黍 Panicum miliaceum,水稻 Oryza sativa（小穗轴）,核桃壳 Juglans sp.,藜 Chenopodium sp.,木炭（克）
F-1,H1,早期,10,12,3,,1,5,0.53
F-2,H2,早期,12,40,,3,,,1.2
F-3,H3,晚期,8,,5,7,2,1,0.11
F-4,H4,晚期,10,9,1,,,,2.04
合计,,,,61,9,10,3,6,3.88
绝对数量百分比（%）,,,,68.5,10.1,11.2,3.4,6.7,
出土概率（%）,,,,75,75,50,50,50,
"""
_REMARKS = """Probe;Befund;Entnahmedatum;Vol. (l);Taxon;Rest;Anz.;Bemerkung
P1;3;06.07.2016;10;Corylus avellana;Schale;13;nur Fragmente
P1;3;06.07.2016;10;Hordeum vulgare;RhG;4;
P1;3;06.07.2016;10;Bromus secalinus-Typ;S;2;fragmentiert, cf.
P2;4;07.07.2016;8;Hordeum vulgare;K;9;gekeimt
P2;4;07.07.2016;8;Holzkohle indet.;HK;20;
;;;;;;;
"K = Korn, S = Same, RhG = Rhachisglied, HK = Holzkohle";;;;;;;
"""
_UNDER_PLANTS = """Taxon,S1,S2,S3
MAIZE (Zea mays),,,
Kernel,3,1,
Cupule,9,2,4
OTHER,,,
Wood charcoal (g),1.2,0.4,2.2
Hickory nutshell,12,30,5
"""
_PARTS = """Taxon,Part,S1,S2
Oryza sativa,"spikelet base, domesticated type",3,1
Oryza sativa,caryopsis,9,2
Pinus pinea,scale,1,1
Zea mays,gluma,2,1
Lagenaria siceraria,shell,2,1
Juglans nigra,shell,12,5
Secale cereale,zemelen,4,1
Vicia faba,navel,2,1
"""

_UNTOLD = """Taxon,S1,S2
Cerealia indeterminado,3,1
Cereali indet.,9,2
Getreide indet.,1,1
Poaceae indéterminée,2,1
"""

_PAIRS = """Amostra,,Am. 1,,Am. 2,,Am. 3,
Contexto,,UE 101,,UE 102,,UE 110,
Volume (l),,10,,"12,5",,8,
Táxon,Tipo de resto,int.,fragm.,int.,fragm.,int.,fragm.
CARBONIZADOS,,,,,,,
Hordeum vulgare,cariopse,12,3,4,,1,
Triticum dicoccum,base de gluma,5,,9,,,
Quercus sp.,cotilédone,,3,,2,,5
NÃO CARBONIZADOS,,,,,,,
Chenopodium album,semente,7,,14,,3,
Total,,24,6,27,2,4,5
"""

_LITRES = """Species,SU 12 (10 L),SU 14 (8 L),SU 15 (22.5 L)
Hordeum vulgare,4,2,
Triticum dicoccum,12,,3
Lens culinaris,1,1,1
"""

_WHOLE_OF_MANY = """Campione,US,Fase,Litri,Taxa,Parte,N. interi,N. frammenti,Stato,Note
C1,101,I,10,Hordeum vulgare,cariosside,12,4,C,
C1,101,I,10,Vitis vinifera,vinacciolo,3,,C,
C1,101,I,10,Olea europaea,nocciolo,,7,C,
C2,102,I,8,Ficus carica,achenio,22,,M,
C2,102,I,8,Vicia faba,seme,1,2,C,cf.
C3,103,II,12,Sambucus ebulus,seme,5,,I,
"C = carbonizzato; M = mineralizzato; I = imbibito",,,,,,,,,
"""

_NUMBER_OF_CONTEXTS = """Taxon,Type of remain,Ctx 101,Ctx 102,Ctx 110,N contexts
Triticum spelta,glume bases,40,12,,2
Triticum spelta,grains,12,3,1,3
Rumex acetosella,nutlets,5,,9,2
Litres,,20,10,40,
"""
_DASHES = """Nr próby;Obiekt;Objętość (l);Takson;Rodzaj szczątków;Stan;Liczba;Uwagi
12;7;10;Triticum aestivum;ziarniak;s;14;
12;7;10;Chenopodium album;nasiono;n;12;
13;9;8;Secale cereale;ziarniak;s;5;fragm.
13;9;8;Cerealia indet.;ziarniak;s;22;
s - spalone, n - niespalone;;;;;;;
"""
_PIECES_BESIDE = """試料番号,遺構,処理量（L）,イネ 穎果 Oryza sativa,イネ 穎果（破片） Oryza sativa,アワ Setaria italica,オニグルミ 核 破片 Juglans
1,SK01,10,12,5,3,4
2,SK02,8,4,,,12
3,SK05,12,,2,9,
"""
_AMONG_RECORDS = """Minta,Ismeretlenum,Térfogat (l),Triticum dicoccum szem,Triticum dicoccum pelyvatalp,Gabona indet.
1,12,10,4,22,5
2,14,8,,12,1
3,15,12,7,,9
"""


def taken(folder: Path, text: str) -> TakenIn:
    (folder / "sheet.csv").write_text(text, encoding="utf-8")
    return take_in(folder / "sheet.csv", packs())


def found(sheet: TakenIn) -> dict[str, CountRow]:
    """What was found, by cell."""
    return {str(row.place.cell): row for row in sheet.rows if "absent" not in row.count.amount}


def told(sheet: TakenIn, code: str) -> list[str]:
    return [problem.place.cell for problem in sheet.problems if problem.code == code]


def test_running_numbers_before_the_names_are_no_counts(tmp_path: Path) -> None:
    """Blocks of samples with 'No.' before 'Taxon': whole and fragments are counted, totals agree, labels are said."""
    sheet = taken(tmp_path, _BLOCK)
    rows = found(sheet)

    assert sum(row.count.number or 0 for row in rows.values()) == 60 + 11 + 40 + 12
    assert told(sheet, "N316") == told(sheet, "N317") == told(sheet, "N314") == []
    assert (rows["F5"].completeness, rows["F5"].mass_g, rows["E6"].condition) == ("fragment", 0.1, "uncharred")
    said = {role: one[0].text for role, one in sheet.facts["S-02"].items()}
    assert {key: said[key] for key in ("context", "phase", "kind")} == {
        "context": "Lot 13", "phase": "Late Woodland", "kind": "pit",
    }  # fmt: skip


def test_classes_a_litre_say_nothing_of_how_many_are_in_a_sample(tmp_path: Path) -> None:
    """'x = 1-5 per litre' gives presence; 'cf. x' is a sign in doubt; '[uc]' is a state by the key."""
    rows = found(taken(tmp_path, _CLASSES))

    assert {(row.count.at_least, row.count.at_most) for row in rows.values()} == {(None, None)}
    assert (rows["D3"].identification.qualifier, rows["D7"].count.amount) == ("cf.", "noted as present")
    assert {row.condition for cell, row in rows.items() if cell.endswith("5")} == {"uncharred"}
    assert {row.condition for cell, row in rows.items() if not cell.endswith("5")} == {"charred"}


def test_a_second_part_under_all_its_heads_again_is_of_other_samples(tmp_path: Path) -> None:
    """Genera that were found in no sample of a part head no section, and the weight of all seeds is no find."""
    sheet = taken(tmp_path, _STACKED)
    rows = found(sheet)

    assert {str(row.sample) for row in rows.values()} == {"4", "9", "11", "20", "21", "22"}
    assert (rows["B9"].mass_g, rows["B11"].mass_g, rows["B15"].count.number) == (0.19, 0.03, 29)
    assert (str(rows["B27"].sample), rows["B27"].mass_g, rows["B30"].count.number) == ("20", 0.1, 2)
    assert not {"B6", "C6", "B23"} & rows.keys()
    assert any("weight of all seeds" in doubt for doubt in sheet.doubts)
    assert {id: said["volume"][0].text for id, said in sheet.facts.items()}["22"] == "4"


def test_east_asian_names_beside_latin_ones_are_read_by_the_latin_ones(tmp_path: Path) -> None:
    """Parts stand in the other name, litres and grams behind double brackets, and shares below are no samples."""
    sheet = taken(tmp_path, _BESIDE_LATIN)
    rows = found(sheet)

    assert {str(row.sample) for row in rows.values()} == {"F-1", "F-2", "F-3", "F-4"}
    assert [rows[cell].identification.taxon for cell in ("E2", "F2", "I2")] == [
        "Setaria italica", "Panicum miliaceum", "Chenopodium",
    ]  # fmt: skip
    assert [str(rows[cell].part) for cell in ("G3", "H2", "J2")] == ["rice spikelet base", "nutshell", "charcoal"]
    assert (rows["J3"].mass_g, sheet.facts["F-2"]["volume"][0].text) == (1.2, "12")
    assert told(sheet, "N317") == []


def test_remarks_that_say_pieces_alone_say_them_of_the_find(tmp_path: Path) -> None:
    """'nur Fragmente' and 'fragmentiert, cf.'; the key has the short words of parts, the day is no count."""
    sheet = taken(tmp_path, _REMARKS)
    rows = found(sheet)

    assert [rows[cell].completeness for cell in ("G2", "G4", "G5")] == ["fragment", "fragment", "whole"]
    assert [str(rows[cell].part) for cell in ("G3", "G6")] == ["rachis internode", "charcoal"]
    assert (rows["G4"].identification.taxon, rows["G6"].identification.taxon) == ("Bromus secalinus", "Indeterminate")
    assert not any("Entnahme" in doubt for doubt in sheet.doubts)


def test_parts_alone_are_of_the_plant_over_them(tmp_path: Path) -> None:
    """'Kernel' under 'MAIZE (Zea mays)' is of maize; charcoal and what names a plant are not."""
    rows = found(taken(tmp_path, _UNDER_PLANTS))

    assert [(rows[c].identification.taxon, str(rows[c].part)) for c in ("B3", "B4", "B6", "B7")] == [
        ("Zea mays", "kernel"), ("Zea mays", "cupule"), ("Indeterminate", "charcoal"), ("Carya", "nutshell"),
    ]  # fmt: skip


def test_wide_words_for_parts_are_read_by_their_plant(tmp_path: Path) -> None:
    """Scales of a pine, the shell of a gourd, glumes of maize; bran is seed coat, and a hilum no part of the list."""
    sheet = taken(tmp_path, _PARTS)
    rows = found(sheet)

    assert [str(rows[f"C{n}"].part) for n in range(2, 10)] == [
        "rice spikelet base", "grain", "cone scale", "glume", "rind", "nutshell", "seed coat", "indeterminate",
    ]  # fmt: skip
    assert told(sheet, "N402") == ["B9"]


def test_words_for_what_nobody_could_tell_are_known_in_other_languages(tmp_path: Path) -> None:
    """Cereals and grasses with 'indeterminado', 'indét.' and the like; no name of them is told as unknown."""
    sheet = taken(tmp_path, _UNTOLD)

    assert [row.identification.taxon for cell, row in found(sheet).items() if cell.startswith("B")] == [
        "Cerealia indet.", "Cerealia indet.", "Cerealia indet.", "Poaceae",
    ]  # fmt: skip
    assert told(sheet, "N401") == []


def test_ids_over_pairs_of_whole_and_broken_are_no_line_of_labels(tmp_path: Path) -> None:
    """'Amostra, Am. 1, Am. 2, Am. 3' are three samples, and no form of the first."""
    sheet = taken(tmp_path, _PAIRS)
    rows = found(sheet)

    assert [(str(rows[c].sample), rows[c].completeness) for c in ("C6", "D6", "E6", "H8")] == [
        ("Am. 1", "whole"), ("Am. 1", "fragment"), ("Am. 2", "whole"), ("Am. 3", "fragment"),
    ]  # fmt: skip
    assert {row.condition for cell, row in rows.items() if cell.endswith("10")} == {"uncharred"}
    assert told(sheet, "N317") == told(sheet, "N316") == []
    assert {id: said["volume"][0].text for id, said in sheet.facts.items()} == {"Am. 1": "10", "Am. 2": "12,5", "Am. 3": "8"}


def test_litres_behind_the_ids_of_samples_are_volumes(tmp_path: Path) -> None:
    """'SU 12 (10 L)' heads a sample of ten litres, whatever the word before its number."""
    sheet = taken(tmp_path, _LITRES)

    assert [said["volume"][0].text for said in sheet.facts.values()] == ["10 L", "8 L", "22.5 L"]


def test_numbers_of_whole_ones_head_counts_as_those_of_fragments_do(tmp_path: Path) -> None:
    """'N. interi' beside 'N. frammenti' in a list, with the state of each find in letters that its key explains."""
    rows = found(taken(tmp_path, _WHOLE_OF_MANY))

    assert {cell: (row.count.number, row.completeness, row.condition) for cell, row in rows.items() if cell[1:] in "2457"} == {
        "G2": (12, "whole", "charred"), "H2": (4, "fragment", "charred"), "H4": (7, "fragment", "charred"),
        "G5": (22, "whole", "mineralised"), "G7": (5, "whole", "waterlogged"),
    }  # fmt: skip


def test_the_number_of_contexts_with_a_plant_is_no_sample(tmp_path: Path) -> None:
    """'N contexts' behind the contexts is ubiquity, and checked as such."""
    sheet = taken(tmp_path, _NUMBER_OF_CONTEXTS)

    assert {str(row.sample) for row in sheet.rows} == {"Ctx 101", "Ctx 102", "Ctx 110"}
    assert told(sheet, "N317") == []


def test_a_key_of_states_may_be_written_with_dashes(tmp_path: Path) -> None:
    """'s - spalone, n - niespalone' under a list, whose column of states has 's' and 'n'."""
    rows = found(taken(tmp_path, _DASHES))

    assert [rows[c].condition for c in ("G2", "G3", "G4")] == ["charred", "uncharred", "charred"]
    assert [rows[c].completeness for c in ("G2", "G4", "G5")] == ["whole", "fragment", "whole"]


def test_words_for_pieces_stand_in_east_asian_names(tmp_path: Path) -> None:
    """'イネ 穎果（破片） Oryza sativa' is a piece of a grain, and 'オニグルミ 核 破片' of a stone."""
    rows = found(taken(tmp_path, _PIECES_BESIDE))

    assert [(str(rows[c].part), rows[c].completeness) for c in ("D2", "E2", "G2")] == [
        ("grain", "whole"), ("grain", "fragment"), ("fruit stone", "fragment"),
    ]  # fmt: skip


def test_numbers_between_the_ids_and_the_litres_are_no_counts(tmp_path: Path) -> None:
    """A word that nobody knows and that ends as genera do, between two heads of records, names no plant."""
    rows = found(taken(tmp_path, _AMONG_RECORDS))

    assert not [cell for cell in rows if cell.startswith("B")]
    assert [(rows[c].identification.taxon, str(rows[c].part)) for c in ("D2", "E2", "F2")] == [
        ("Triticum dicoccum", "grain"), ("Triticum dicoccum", "glume base"), ("Cerealia indet.", "grain"),
    ]  # fmt: skip
