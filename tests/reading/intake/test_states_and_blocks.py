"""States in pairs of columns, in bands and in columns of letters; blocks of one sample each. All sheets are invented."""

# ruff: noqa: E501

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest
from openpyxl import Workbook

from narrate.model.packs import Packs
from narrate.reading.intake.header_words import heading
from narrate.reading.intake.project_intake import intake_packs
from narrate.reading.intake.take_in import TakenIn, take_in


@cache
def packs() -> Packs:
    return intake_packs(None)


def taken(folder: Path, text: str) -> TakenIn:
    sheet = folder / "lab.tsv"
    sheet.write_text(text.strip("\n").replace("|", "\t") + "\n", encoding="utf-8")
    return take_in(sheet, packs())


def finds(found: TakenIn) -> list[str]:
    rows = [row for row in found.rows if row.count.amount not in ("looked for and absent", "not looked for")]
    return sorted(
        f"{row.sample} {row.identification.written} {row.condition} "
        + (f"{row.count.number:g}" if row.count.number is not None else row.count.written)
        for row in rows
    )


def wrong_totals(found: TakenIn) -> list[str]:
    return [problem.place.cell for problem in found.problems if problem.code == "N317"]


PAIRS = """
Sample|S1||S2||S3||
Liters screened|4||6||5||
Taxon|{a}|{b}|{a}|{b}|{a}|{b}|Total
Zea mays|2|24||5|3|1|35
Lagenaria siceraria|7|||2|4||13
Cucurbita pepo|1|3|2||5|6|17
Amaranthus sp.|9||8|1||2|20
Total|19|27|10|8|12|9|85
Sample total|46||18||21||
{key}
"""


@pytest.mark.parametrize(
    ("a", "b", "key", "first", "second"),
    [
        ("D", "C", "D = desiccated; C = charred", "desiccated", "charred"),
        ("W", "C", "W: waterlogged, C: charred", "waterlogged", "charred"),
        ("v", "o", "v = verkoold, o = onverkoold", "charred", "uncharred"),
        ("U", "V", "U = unverkohlt, V = verkohlt", "uncharred", "charred"),
        ("S", "C", "S = desecado; C = carbonizado", "desiccated", "charred"),
        ("M", "C", "M = minéralisé ; C = carbonisé", "mineralised", "charred"),
        ("Min.", "Carb.", "", "mineralised", "charred"),
        ("desiccated", "charred", "", "desiccated", "charred"),
    ],
)
def test_pairs_of_states_under_each_sample_are_told_apart_beside_a_column_of_totals(
    tmp_path: Path, a: str, b: str, key: str, first: str, second: str
) -> None:
    """The column 'Total' behind the pairs hides nothing of them, and a total over both columns is right."""
    found = taken(tmp_path, PAIRS.format(a=a, b=b, key=key))

    assert [one for one in finds(found) if "Zea" in one] == sorted([
        f"S1 Zea mays {first} 2", f"S1 Zea mays {second} 24", f"S2 Zea mays {second} 5", f"S3 Zea mays {first} 3",
        f"S3 Zea mays {second} 1",
    ])  # fmt: skip
    assert wrong_totals(found) == []
    assert [found.facts[s]["volume"][0].text for s in ("S1", "S2", "S3")] == ["4", "6", "5"]


def test_a_total_over_both_columns_of_a_sample_that_is_wrong_is_told(tmp_path: Path) -> None:
    """46 is right, and 64 is told at its cell."""
    sheet = PAIRS.format(a="D", b="C", key="D = desiccated; C = charred").replace("Sample total|46", "Sample total|64")

    assert wrong_totals(taken(tmp_path, sheet)) == ["B9"]


BANDS = (
    ("Sample", "", "", "", "S1", "S2", "S3"),
    ("Taxon", "Common name", "Part", "Habitat", "", "", ""),
    ("{first}",),
    ("Rubus idaeus", "raspberry", "seed", "HS", 4, 2, 1),
    ("Rumex acetosella", "sheep's sorrel", "", "-", 7, None, 3),
    ("Linum usitatissimum", "flax", "capsule", "E", 1, 5, None),
    ("{count}", "", "", "", 3, 2, 2),
    ("{second}",),
    ("Hordeum vulgare", "barley", "grain", "", 12, None, 2),
    ("Avena sp.", "oat", "grain", "", 3, 6, None),
    ("Corylus avellana", "hazel", "nutshell", "H", None, 6, 1),
)


def banded(folder: Path, first: str, second: str, count: str, is_merged: bool) -> TakenIn:
    book = Workbook()
    sheet = book.active
    assert sheet is not None
    for n, row in enumerate(BANDS, start=1):
        sheet.append([v.format(first=first, second=second, count=count) if isinstance(v, str) else v for v in row])
        if len(row) == 1 and is_merged:
            sheet.merge_cells(start_row=n, start_column=1, end_row=n, end_column=7)
    book.save(folder / "lab.xlsx")
    return take_in(folder / "lab.xlsx", packs())


@pytest.mark.parametrize("is_merged", [True, False])
@pytest.mark.parametrize(
    ("first", "second", "count", "states"),
    [
        ("WATERLOGGED", "CHARRED", "Number of waterlogged taxa", ("waterlogged", "charred")),
        ("Charred", "Waterlogged", "No. of charred taxa", ("charred", "waterlogged")),
        ("Mineralised remains", "Charred remains", "Number of taxa", ("mineralised", "charred")),
        ("Unverkohlt", "Verkohlt", "Anzahl unverkohlter Arten", ("uncharred", "charred")),
        ("Carbonizado", "Mineralizado", "Número de táxones carbonizados", ("charred", "mineralised")),
        ("Verkoold", "Onverkoold", "Aantal verkoolde taxa", ("charred", "uncharred")),
        ("Imbibé", "Carbonisé", "Nombre de taxons imbibés", ("waterlogged", "charred")),
    ],
)  # fmt: skip
def test_a_band_of_a_state_at_once_under_the_heads_is_a_section(
    tmp_path: Path, first: str, second: str, count: str, states: tuple[str, str], is_merged: bool
) -> None:
    """It says the state of what is under it, and makes no column of names or parts one of states."""
    found = banded(tmp_path, first, second, count, is_merged)

    assert [problem for problem in found.problems if problem.severity == "error"] == []
    assert finds(found) == sorted([
        f"S1 Rubus idaeus {states[0]} 4", f"S2 Rubus idaeus {states[0]} 2", f"S3 Rubus idaeus {states[0]} 1",
        f"S1 Rumex acetosella {states[0]} 7", f"S3 Rumex acetosella {states[0]} 3",
        f"S1 Linum usitatissimum {states[0]} 1", f"S2 Linum usitatissimum {states[0]} 5",
        f"S1 Hordeum vulgare {states[1]} 12", f"S3 Hordeum vulgare {states[1]} 2", f"S1 Avena sp. {states[1]} 3",
        f"S2 Avena sp. {states[1]} 6", f"S2 Corylus avellana {states[1]} 6", f"S3 Corylus avellana {states[1]} 1",
    ])  # fmt: skip


BLOCK = """
{sample}|2|{context}|1008|{volume}|20||
{feature}|pit fill|{phase}|3|{by}|KD|{day}|
{taxon}|{part}|{state}|>2|>1|>0.5|{total}|{notes}
Hordeum vulgare|grain|{ch}|3|1||4|
Rumex acetosella|seed|{un}||7||7|one sprouted
{total}|||3|8||11|

{sample}|14|{context}|1090|{volume}|8||
{feature}|hearth|{phase}|?|{by}|RB|{day}|
{taxon}|{part}|{state}|>2|>1|>0.5|{total}|{notes}
Avena sp.|grain|{ch}|1|||1|
Galium aparine|seed|{ch}||4|2|6|
{total}|||1|4|2|7|
"""
ENGLISH = {
    "sample": "Sample", "context": "Context", "volume": "Vol (L)", "feature": "Feature", "phase": "Phase", "by": "By",
    "day": "2021-11-03", "taxon": "Taxon", "part": "Part", "state": "ch/un", "total": "Total", "notes": "Notes",
    "ch": "ch", "un": "un",
}  # fmt: skip


@pytest.mark.parametrize(
    "words",
    [
        {},
        {"day": ""},
        {"by": "Sorted by", "state": "charred/uncharred", "ch": "charred", "un": "uncharred"},
        {"state": "C/U", "ch": "C", "un": "U", "volume": "Litres screened"},
        {"sample": "Probe", "context": "Kontext", "volume": "Vol. (l)", "feature": "Befund", "phase": "Phase", "by": "Bearb.",
         "taxon": "Art", "part": "Rest", "state": "verk./unverk.", "total": "Summe", "notes": "Bemerkungen",
         "ch": "verkohlt", "un": "unverkohlt"},
        {"sample": "Échantillon", "context": "US", "volume": "Volume (l)", "feature": "Structure", "by": "Tri",
         "taxon": "Taxon", "part": "Partie", "state": "État", "notes": "Remarques", "ch": "carbonisé",
         "un": "non carbonisé"},
        {"sample": "Muestra", "context": "UE", "volume": "Litros cribados", "feature": "Estructura", "phase": "Fase", "by": "Por",
         "taxon": "Taxón", "part": "Parte", "state": "Estado", "notes": "Observaciones", "ch": "carbonizado",
         "un": "no carbonizado"},
        {"sample": "Monster", "context": "Spoor", "volume": "Volume (l)", "feature": "Structuur", "phase": "Fase", "by": "Door",
         "taxon": "Taxon", "part": "Onderdeel", "state": "Conservering", "total": "Totaal", "notes": "Opmerkingen",
         "ch": "verkoold", "un": "onverkoold"},
    ],
)  # fmt: skip
def test_blocks_under_each_other_carry_their_sample_in_pairs_of_labels(
    tmp_path: Path, words: dict[str, str]
) -> None:
    """Sieve classes head the counts, a day stands without a label, and no label is taken for a sample."""
    found = taken(tmp_path, BLOCK.format(**{**ENGLISH, **words}))

    assert finds(found) == sorted([
        "2 Hordeum vulgare charred 3", "2 Hordeum vulgare charred 1", "2 Rumex acetosella uncharred 7",
        "14 Avena sp. charred 1", "14 Galium aparine charred 4", "14 Galium aparine charred 2",
    ])  # fmt: skip
    assert {id: found.facts[id]["volume"][0].text for id in ("2", "14")} == {"2": "20", "14": "8"}
    assert wrong_totals(found) == []


@pytest.mark.parametrize(
    ("text", "role"),
    [
        ("Number of waterlogged taxa (rows)", "derived"), ("No. of wild taxa", "derived"), ("Anzahl verkohlter Arten", "derived"),
        ("Nombre de taxons carbonisés", "derived"), ("Número de especies carbonizadas", "derived"),
        ("Numero di taxa carbonizzati", "derived"), ("Aantal verkoolde soorten", "derived"),
        ("Liczba zwęglonych taksonów", "derived"), ("Número de táxons carbonizados", "derived"),
        ("Liters screened", "volume"), ("Liter gesiebt", "volume"), ("Litres tamisés", "volume"), ("Litros cribados", "volume"),
        ("Litri setacciati", "volume"), ("Liters gezeefd", "volume"), ("Litry przesiane", "volume"), ("Litros crivados", "volume"),
        ("ch/un", "condition"), ("verk./unverk.", "condition"), ("charred or waterlogged", "condition"),
        ("carbonisé/non carbonisé", "condition"), ("Number of seeds", "count"), ("w/f", "completeness"),
    ],
)  # fmt: skip
def test_heads_say_what_is_counted_and_what_was_processed(text: str, role: str) -> None:
    """In eight languages, and neighbours of them stay what they are."""
    assert heading(text) == role


LABELS_IN_CELLS = """
Sample: 2|Context: 1008|Vol (L): 20|||
Taxon|Part|State|>2|>1|Total
Hordeum vulgare|grain|ch|3|1|4
Rumex acetosella|seed|un||7|7
Total|||3|8|11

Sample: 14|Context: 1090|Vol (L): 8|||
Taxon|Part|State|>2|>1|Total
Avena sp.|grain|ch|1||1
Galium aparine|seed|ch||4|4
"""
LABELS_OVER_EACH_OTHER = """
Sample no.|2||||
Context|1008||||
Volume (l)|20||||
Taxon|Part|ch/un|2 mm|1 mm|Total
Hordeum vulgare|grain|ch|3|1|4
Rumex acetosella|seed|un||7|7

Sample no.|14||||
Context|1090||||
Volume (l)|8||||
Taxon|Part|ch/un|2 mm|1 mm|Total
Avena sp.|grain|ch|1||1
Galium aparine|seed|ch||4|4
"""


@pytest.mark.parametrize("sheet", [LABELS_IN_CELLS, LABELS_OVER_EACH_OTHER])
def test_the_labels_of_a_block_may_stand_in_the_cells_or_over_each_other(tmp_path: Path, sheet: str) -> None:
    """What stands behind the label is the value, and a column of nothing but 'ch' is still one of states."""
    found = taken(tmp_path, sheet)

    assert finds(found) == sorted([
        "2 Hordeum vulgare charred 3", "2 Hordeum vulgare charred 1", "2 Rumex acetosella uncharred 7",
        "14 Avena sp. charred 1", "14 Galium aparine charred 4",
    ])  # fmt: skip
    assert {id: (of["context"][0].text, of["volume"][0].text, "site" in of) for id, of in found.facts.items()} == {
        "2": ("1008", "20", False), "14": ("1090", "8", False),
    }  # fmt: skip


ONLY_SIEVES = """
Flot|2|Ctx|1008|Litres|{litres}
Species|>2mm|1-2mm|0.5-1mm|Sum|
Hordeum vulgare|3|1||4|
Rumex acetosella||7|1|8|
Sum|3|8|1|12|

Flot|5|Ctx|1011|Litres|12
Species|>2mm|1-2mm|0.5-1mm|Sum|
Avena sp.|3|||3|
Galium aparine||2|4|6|
Sum|3|2|4|9|
"""


@pytest.mark.parametrize("litres", ["20", ""])
def test_a_block_of_names_and_sieve_classes_alone_is_one_of_its_sample(tmp_path: Path, litres: str) -> None:
    """Neither 'Ctx' nor '1008' is an id, and a label with nothing behind it says nothing."""
    found = taken(tmp_path, ONLY_SIEVES.format(litres=litres))

    assert finds(found) == sorted([
        "2 Hordeum vulgare charred 3", "2 Hordeum vulgare charred 1", "2 Rumex acetosella charred 7",
        "2 Rumex acetosella charred 1", "5 Avena sp. charred 3", "5 Galium aparine charred 2", "5 Galium aparine charred 4",
    ])  # fmt: skip
    assert {id: sorted({one.text for one in of.get("volume", [])}) for id, of in found.facts.items()} == {
        "2": [litres] if litres else [], "5": ["12"],
    }  # fmt: skip
    assert wrong_totals(found) == []


def test_pairs_that_no_key_explains_are_told_as_doubtful(tmp_path: Path) -> None:
    """'D' and 'C' may be states, or counts and densities: nobody can tell, and the analyst is asked."""
    found = taken(tmp_path, PAIRS.format(a="D", b="C", key=""))

    assert [doubt for doubt in found.doubts if "recur" in doubt] == [
        "DOUBTFUL: small headings recur over the columns (D, C) and are not all known; they are taken for notes, and the "
        "amounts of a sample under them are added: if they are states or the like, give their row that role and write "
        "under conditions what they mean"
    ]


@pytest.mark.parametrize(
    ("first", "second", "of_first", "of_second"),
    [
        ("Charred", "Waterlogged", "Number of charred taxa", "Number of waterlogged taxa"),
        ("Verkohlt", "Unverkohlt", "Anzahl verkohlter Arten", "Anzahl unverkohlter Arten"),
        ("Carbonisé", "Minéralisé", "Nombre de taxons carbonisés", "Nombre de taxons minéralisés"),
        ("Carbonizado", "Desecado", "Número de taxones carbonizados", "Número de taxones desecados"),
        ("Carbonizzato", "Mineralizzato", "Numero di taxa carbonizzati", "Numero di taxa mineralizzati"),
        ("Verkoold", "Onverkoold", "Aantal verkoolde taxa", "Aantal onverkoolde taxa"),
    ],
)
def test_numbers_of_taxa_of_one_state_are_worked_out_again(
    tmp_path: Path, first: str, second: str, of_first: str, of_second: str
) -> None:
    """Each is of the lines of its state; the one number that is wrong is told, and no other."""
    found = taken(
        tmp_path,
        f"Taxon|S1|S2|S3\n{first}|||\nHordeum vulgare|2|24|\nAvena sp.|7||\nSecale cereale|1|3|2\n{second}|||\n"
        f"Rubus idaeus|1|3|2\nSambucus nigra||4|2\n{of_first}|3|2|1\n{of_second}|1|2|3\n",
    )

    assert wrong_totals(found) == ["D10"]


def test_a_key_under_the_finds_of_a_block_is_no_find(tmp_path: Path) -> None:
    """'v = verkohlt; u = unverkohlt' explains the letters, and nothing is told of it."""
    sheet = LABELS_OVER_EACH_OTHER.replace("ch/un", "v/u").replace("|ch|", "|v|").replace("|un|", "|u|")
    found = taken(tmp_path, sheet.replace("7|7\n", "7|7\nv = verkohlt; u = unverkohlt\n"))

    assert [one.split()[-2:] for one in finds(found) if one.startswith("2 ")] == [
        ["charred", "1"], ["charred", "3"], ["uncharred", "7"],
    ]  # fmt: skip
    assert [problem.code for problem in found.problems] == []


LETTERS = ["C", "U", "U", "D"]
ROWS = ("Zea mays", "Rubus sp.", "Chenopodium sp.", "Phalaris sp.")
READ = ["charred", "uncharred", "uncharred", "desiccated"]


@pytest.mark.parametrize("head", ["State", "Status"])
@pytest.mark.parametrize("words", [LETTERS, READ])
@pytest.mark.parametrize("is_list", [False, True])
def test_states_under_state_or_status_are_no_parts_of_a_country(
    tmp_path: Path, head: str, words: list[str], is_list: bool
) -> None:
    """In a list and across; the samples are of no site 'C', and the word over the column makes no site of 'S1'."""
    lines = [f"Taxon|{head}|S1|S2", *(f"{name}|{w}|3|4" for name, w in zip(ROWS, words, strict=True))]
    if is_list:
        lines = [f"Sample|Taxon|{head}|Count"]
        lines += [f"{s}|{name}|{w}|{n}" for s, n in (("S1", 3), ("S2", 4)) for name, w in zip(ROWS, words, strict=True)]

    found = taken(tmp_path, "\n".join(lines))

    by_name = zip(ROWS, READ, strict=True)
    assert finds(found) == sorted(f"{s} {name} {w} {n}" for name, w in by_name for s, n in (("S1", 3), ("S2", 4)))
    assert not any("site" in facts for facts in found.facts.values())


def test_parts_of_a_country_under_state_stay_places(tmp_path: Path) -> None:
    """Ohio and Kentucky, by name and by letters, and 'DE' and 'MD', are no states of remains."""
    for words in (("Ohio", "Kentucky"), ("OH", "KY"), ("DE", "MD")):
        rows = [f"S{n}|{word}|{name}|3" for n, word in enumerate(words, 1) for name in ROWS]
        found = taken(tmp_path, "\n".join(["Sample|State|Taxon|Count", *rows]))

        assert {s: facts["site"][0].text for s, facts in found.facts.items()} == {"S1": words[0], "S2": words[1]}
