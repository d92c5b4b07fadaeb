"""What was once read wrongly without a word: each is read rightly or told at its cell. All sheets are invented."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest
from openpyxl import Workbook

from narrate.model.packs import Packs
from narrate.reading.intake.project_intake import intake_packs
from narrate.reading.intake.records_draft import draft_records
from narrate.reading.intake.take_in import TakenIn, take_in
from narrate.reading.intake.told import Told


@cache
def packs() -> Packs:
    return intake_packs(None)


def taken(folder: Path, text: str) -> TakenIn:
    sheet = folder / "lab.csv"
    sheet.write_text(text.strip("\n") + "\n", encoding="utf-8")
    return take_in(sheet, packs())


DEPTHS = {
    "list": "Sample,{h},Taxon,Count\nS1,10,Zea mays kernel,3\nS2,20,Zea mays kernel,4\nS2,20,Rubus seed,4",
    "samples down": "Sample,{h},Litres,Zea mays kernel,Rubus seed\nS1,10,9,3,0\nS2,20,9,4,4",
    "samples across": "Sample,S1,S2\n{h},10,20\nZea mays kernel,3,4\nRubus seed,,4",
}


@pytest.mark.parametrize("head", ["Depth (cm)", "Depth cm", "Tiefe (cm)"])
@pytest.mark.parametrize("shape", DEPTHS)
def test_a_depth_is_no_site(tmp_path: Path, shape: str, head: str) -> None:
    """It is kept in the note of its sample with the words over it, and that is told."""
    found = taken(tmp_path, DEPTHS[shape].format(h=head))

    assert not any("site" in facts for facts in found.facts.values())
    samples = draft_records(found.facts, ["S1", "S2"], packs().words, Told()).samples
    assert {id: sample["note"] for id, sample in samples.items()} == {"S1": f"{head}: 10", "S2": f"{head}: 20"}
    assert [doubt for doubt in found.doubts if f"'{head}': a depth is no site" in doubt] != []


def problems(found: TakenIn, code: str) -> list[tuple[str, str]]:
    return [(one.place.cell, one.message) for one in found.problems if one.code == code]


def finds(found: TakenIn) -> list[tuple[str, str, str, float | None]]:
    return [(str(r.sample), r.identification.taxon, str(r.condition), r.count.number) for r in found.rows]


@pytest.mark.parametrize("letter", ["U", "u"])
def test_a_letter_for_uncharred_behind_a_name_is_read_and_told(tmp_path: Path, letter: str) -> None:
    """In brackets it is uncharred; where the key of the sheet says so itself, there is nothing to tell."""
    sheet = f"Taxon,S1\nSambucus ({letter}),3\nRubus sp. ({letter}),2\nZea mays kernel,4"
    read = [("S1", "Sambucus", "uncharred", 3), ("S1", "Rubus", "uncharred", 2), ("S1", "Zea mays", "charred", 4)]

    found = taken(tmp_path, sheet)
    assert finds(found) == read
    assert [cell for cell, message in problems(found, "N313") if "is taken as uncharred" in message] == ["A2"]

    explained = taken(tmp_path, f"{sheet}\n{letter} = uncharred; C = charred")
    assert (finds(explained), problems(explained, "N313")) == (read, [])


@pytest.mark.parametrize("letter", ["W", "M", "d"])
def test_a_letter_behind_a_name_that_nobody_explains_is_told(tmp_path: Path, letter: str) -> None:
    """Nothing is read of it, and its cell is named."""
    found = taken(tmp_path, f"Taxon,S1\nSambucus ({letter}),3\nZea mays kernel,4")

    assert [(cell, f"'{letter}' in" in message) for cell, message in problems(found, "N313")] == [("A2", True)]


DATES = {
    "down": "Sample,Date,Zea mays kernel,Rubus seed\n" + "\n".join(f"S{n},{{{n - 1}}},{n},2" for n in range(1, 6)),
    "across": "Sample,S1,S2,S3,S4,S5\nDate,{0},{1},{2},{3},{4}\nZea mays kernel,1,2,3,4,5\nRubus seed,2,2,2,2,2",
}


@pytest.mark.parametrize("shape", DATES)
@pytest.mark.parametrize(
    ("dates", "read"),
    [
        (("AD 1100", "AD 1100", "", "", ""), ("AD 1100", "AD 1100", "", "", "")),
        (("AD 1100", "", "", "", ""), ("AD 1100", "", "", "", "")),
        (("AD 1100", "", "AD 1200", "", ""), ("AD 1100", "AD 1100", "AD 1200", "AD 1200", "AD 1200")),
    ],
)
def test_a_blank_date_is_that_of_the_sample_before_only_in_groups(
    tmp_path: Path, shape: str, dates: tuple[str, ...], read: tuple[str, ...]
) -> None:
    """Who writes a date twice leaves the next one blank on purpose; where groups are filled, that is told."""
    found = taken(tmp_path, DATES[shape].format(*dates))

    phases = [[one.text for one in found.facts[f"S{n}"].get("phase", [])] for n in range(1, 6)]
    assert phases == [[phase] if phase else [] for phase in read]
    assert any("blank ones are taken as of the one before" in doubt for doubt in found.doubts) == (dates != read)


REMARKS = {
    "words": ("FS 1", ["3 eroded", "100 sprouted", "5 worm-eaten", "7"], ["B2", "B3", "B4"]),
    "letters": ("S1", ["3a", "100b", "5", "7"], ["B2", "B3"]),
}


@pytest.mark.parametrize("kind", REMARKS)
def test_numbers_that_carry_words_under_an_id_are_counts(tmp_path: Path, kind: str) -> None:
    """The sample does not vanish: its numbers are read, and the remarks are told at their cells."""
    head, cells, told = REMARKS[kind]
    names = ["Zea mays kernel", "Chenopodium seed", "Rubus seed", "Zea mays cupule"]
    lines = [f"Taxon,{head},{head[:-1]}2", *(f"{name},{cell},4" for name, cell in zip(names, cells, strict=True))]

    found = taken(tmp_path, "\n".join(lines))

    read = [number for sample, _, _, number in finds(found) if sample == head]
    assert read == [3, 100, 5, 7]
    assert [cell for cell, message in problems(found, "N313") if "carries the remark" in message] == told


def test_codes_with_letters_under_a_word_are_no_counts(tmp_path: Path) -> None:
    """'3a' under 'Habitat' says where a plant grows."""
    sheet = "Taxon,Habitat,S1,S2\nZea mays kernel,3a,3,4\nRubus seed,5b,1,2\nVitis seed,5,2,2"

    assert {sample for sample, _, _, _ in finds(taken(tmp_path, sheet))} == {"S1", "S2"}


@pytest.mark.parametrize(("merged", "lost"), [("B2:B3", {"B2", "B3"}), ("B2:C2", {"B2", "C2"})])
def test_a_count_merged_over_two_cells_is_given_to_neither(tmp_path: Path, merged: str, lost: set[str]) -> None:
    """It is an error at its cell; the layout says whose it is, and it is counted once."""
    rows = [["Taxon", "S1", "S2"], ["Zea mays kernel", 7, 5], ["Zea mays cupule", 6, 4], ["Rubus seed", 1, 2]]
    book = Workbook()
    for row in rows:
        book.active.append(row)
    book.active.merge_cells(merged)
    sheet = tmp_path / "lab.xlsx"
    book.save(sheet)
    own = sorted(rows[r][c] for r in (1, 2, 3) for c in (1, 2) if f"{'ABC'[c]}{r + 1}" not in lost)

    found = take_in(sheet, packs())
    assert sorted(number for *_, number in finds(found)) == own
    told = [one for one in found.problems if f"merged over {merged}" in one.message]
    assert [(one.place.cell, one.severity) for one in told] == [("B2", "error")]

    layout = Path(f"{sheet}.layout.yaml")
    layout.write_text(found.text.replace("mend: {}", 'mend: {"B2": "7"}'), encoding="utf-8")
    mended = take_in(sheet, packs())
    assert sorted(number for *_, number in finds(mended)) == sorted([7, *own])
    assert not any("merged over" in problem.message for problem in mended.problems)


SCALED = "Taxon,S1,S2,S3\nZea mays kernel,1,2,3\nChenopodium seed,4,3,3\nRubus seed,1,0,2\n\n{key}"
SCALES = {
    "Key: 1 = 1-5; 2 = 6-20; 3 = 21-50; 4 = >50": (1, 5),
    "1: <5  2: 5-25  3: 26-100  4: >100": (None, 4),
    '"Abundance: 1 = rare, 2 = occasional, 3 = frequent, 4 = abundant"': (None, None),
    "Scale 1-4 (1=few; 4=very many)": (None, None),
    "Key\n1,1-5\n2,6-20\n3,21-50\n4,>50": (1, 5),
    "Key: 1 = 1-5 items; 2 = 6-25; 3 = 26-100; 4 = more than 100. A = high, B = moderate, C = low potential.": (1, 5),
    '"Abundance: 1 = occasional (1-5), 2 = common (6-25), 3 = abundant (26-100), 4 = super-abundant (>100)"': (1, 5),
    '"Quantities: 1 (1-5), 2 (6-25), 3 (26-100), 4 (100+)"': (1, 5),
    "Semi-quantitative: 1 - 1-5 items; 2 - 6-25 items; 3 - 26-100 items; 4 - over 100 items": (1, 5),
    "Key:\n1 = 1-5\n2 = 6-25\n3 = 26-100\n4 = over 100": (1, 5),
}


@pytest.mark.parametrize("key", SCALES)
def test_numbers_that_the_sheet_explains_as_classes_are_no_counts(tmp_path: Path, key: str) -> None:
    """A 1 is a class, wherever its meaning is written; that is told, and a 0 is nothing found."""
    found = taken(tmp_path, SCALED.format(key=key))

    counts = {(str(row.sample), row.identification.taxon): row.count for row in found.rows}
    assert not any(count.amount == "counted" for count in counts.values())
    assert counts["S2", "Rubus"].amount == "looked for and absent"
    least, most = SCALES[key]
    assert (counts["S1", "Rubus"].at_least, counts["S1", "Rubus"].at_most) == (least, most)
    assert [doubt for doubt in found.doubts if "explains its numbers as classes" in doubt] != []


@pytest.mark.parametrize(
    "key",
    [
        "Sample 1: few seeds; Sample 2: many; Sample 3: rare",
        "Sieves: 1 = 2-4 mm; 2 = 1-2 mm; 3 = <1 mm; 4 = <0.5 mm",
        "Phases: 1 = Early; 2 = Middle; 3 = Late; 4 = Modern",
        "Key: 1 = 1-5; 2 = 6-20; 3 = >20",
        '"Contexts: 1 (2-4), 2 (5-7), 3 (8-9), 4 (10-12)"',
    ],
)
def test_numbers_that_nobody_explains_stay_counts(tmp_path: Path, key: str) -> None:
    """Words of samples, sieves and phases make no classes of counts; nor does a scale that ends below a count."""
    found = taken(tmp_path, SCALED.format(key=key))

    assert sorted(number for *_, number in finds(found) if number) == [1, 1, 2, 2, 3, 3, 3, 4]
