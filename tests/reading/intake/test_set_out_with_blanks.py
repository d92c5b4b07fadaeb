"""Listings of fixed width: columns that blanks part, heads over them, pages, keys. Invented."""

# ruff: noqa: E501

from __future__ import annotations

import time
from collections.abc import Callable
from pathlib import Path

import pytest

from narrate.problems import ProblemList
from narrate.reading.intake.cell_marks import looks_like_amount
from narrate.reading.intake.grids import grids_of
from narrate.reading.intake.lines_set_out import lines_of
from narrate.reading.intake.take_in import TakenIn, take_in
from tests.reading.intake.test_blind import HERE, packs


def rows(text: str, name: str = "lab.txt", *codes: str) -> list[list[str]]:
    """The cells of each line that holds any; what is told besides the blanks must be `codes`."""
    problems = ProblemList()
    grids = grids_of(name, text.encode("utf-8"), problems)
    told = [p.message for p in problems.found if "the columns are parted by blanks" not in p.message]
    assert [next((code for code in codes if code in message), message) for message in told] == list(codes)
    (grid,) = grids
    found = [[grid.text(r, c) for c in range(grid.columns)] for r in range(grid.rows)]
    return [cells for cells in found if any(cells)]


def taken(folder: Path, text: str, name: str = "lab.txt") -> TakenIn:
    (folder / name).write_text(text, encoding="utf-8")
    return take_in(folder / name, packs())


def counts(found: TakenIn) -> list[tuple[str, str, str, str, int]]:
    return [
        (str(row.sample), str(row.identification.taxon or row.identification.written), str(row.part), row.completeness,
         row.count.number)
        for row in found.rows if row.count.number
    ]  # fmt: skip


LISTING = """EAST MOUND - PLANT REMAINS - LISTING 2
COUNTS PER SAMPLE, ALL CHARRED

                        HOVU  TRDI  TRDI  CERE  LECU  TOTAL
SAMPLE   AREA  LITRES     GR    GR    GB    GF    SE      N
-----------------------------------------------------------
EM/001   K12     12.5     25     .    51    11     .     87
EM/002   K12       12      .    21     .     3     2     26
EM/007   K14      9.5      .     1    10     .     .     11
EM/011   M02       20     16     .     7     6     1     30
-----------------------------------------------------------
TOTAL                     41    22    68    20     3    154

TAXON CODES
  HOVU  Hordeum vulgare
  TRDI  Triticum dicoccum
  CERE  Cerealia indet.
  LECU  Lens culinaris

PART CODES
  GR    grain
  GB    glume base
  GF    grain fragment
  SE    seed

.  = NONE.  CODES OF PARTS STAND UNDER CODES OF TAXA.
"""


def test_a_listing_with_lists_of_codes_is_read(tmp_path: Path) -> None:
    """Codes of taxa over codes of parts, in two lines of heads; totals are held against the counts; lists explain."""
    found = taken(tmp_path, LISTING)

    assert counts(found)[:3] == [
        ("EM/001", "Hordeum vulgare", "grain", "whole", 25), ("EM/001", "Triticum dicoccum", "glume base", "whole", 51),
        ("EM/001", "Cerealia indet.", "grain", "fragment", 11),
    ]  # fmt: skip
    assert sum(number for *_, number in counts(found)) == 154
    assert {said.text for said in found.facts["EM/001"]["volume"]} == {"12.5"}
    assert [p.code for p in found.problems if p.severity == "error" or p.code in ("N317", "N402")] == []
    told = [p for p in found.problems if p.code == "N312"]
    assert [p.message for p in told] == [
        "the columns are parted by blanks and are read so; expected commas, semicolons or tabs between them"
    ]
    assert [row.place.cell for row in found.rows][:1] == ["D7"]
    assert [row.place.line for row in found.rows][:1] == [7]


def test_numbers_with_one_blank_between_are_parted_under_heads() -> None:
    """A single blank parts columns where each has a head; a name of two words keeps its blank."""
    text = "Taxon            S1   S2 S3\nOats             12 1034  5\nWild oats 2       1  200 15\nRye            1034    3 12\nPea               1    1  .\n"
    assert rows(text)[1:3] == [["Oats", "12", "1034", "5"], ["Wild oats 2", "1", "200", "15"]]


def test_numbers_within_ids_are_not_parted() -> None:
    """'Pit 4' is one cell, although the blank in it stands at one place in every line, because one head is over it."""
    text = "Feature   Oats   Rye\nPit 1        4     1\nPit 2       14     .\nPit 7        .    22\nPit 9        3     1\n"
    assert [cells[0] for cells in rows(text)] == ["Feature", "Pit 1", "Pit 2", "Pit 7", "Pit 9"]


def test_blank_cells_and_ragged_ends_keep_their_columns() -> None:
    """A blank for none, no blanks behind the last number, a name alone, a name one blank before its number."""
    lines = [
        "Taxon                     A1    A2    A3", "Triticum aestivum/durum 1042     3", "Wheat chaff", "Rye                              4",
        "Wild oats                  1           7", "Pea                        2     2     2", "Lentil                                 9",
    ]  # fmt: skip
    assert rows("\n".join(lines))[1:] == [
        ["Triticum aestivum/durum", "1042", "3", ""], ["Wheat chaff", "", "", ""], ["Rye", "", "4", ""], ["Wild oats", "1", "", "7"],
        ["Pea", "2", "2", "2"], ["Lentil", "", "", "9"],
    ]  # fmt: skip


def test_heads_over_the_other_side_of_their_column_are_heads_of_it() -> None:
    """Words begin on the left and numbers end on the right of a column, and need not overlap."""
    text = "Sample  Taxon        Ct          Wt\nA1      Wild oats          12    0.5\nA1      Rye                 3    0.1\nA2      Pea                 1    0.2\nA2      Oats              104    2.5\n"
    assert rows(text)[0] == ["Sample", "Taxon", "Ct", "Wt"]
    assert rows(text)[1] == ["A1", "Wild oats", "12", "0.5"]


def test_tabs_among_blanks_are_blanks(tmp_path: Path) -> None:
    """Some gaps were shortened with tabs; where tabs part all cells the file is one of tabs, as before."""
    text = "Taxon       S1      S2      S3\nOats        12       1       5\nRye          1       .       3\nWild oats    .      14       2\nPea          1       1       1\n"
    assert rows(text.replace("Rye          1", "Rye\t     1").replace("Pea          1       1", "Pea\t     1\t     1")) == rows(text)
    tabs = "Taxon\tS1\tS2\tS3\nOats\t12\t1\t5\nRye\t1\t\t3\nBarley\t\t14\t2\nPea\t1\t1\t1\n"
    assert rows(tabs, "lab.tsv") == [line.split("\t") for line in tabs.splitlines()]


def test_pages_with_their_heads_again_are_one_table(tmp_path: Path) -> None:
    """A form feed is no line of its own, and a head that is printed again is no sample."""
    head = "EAST MOUND                   PAGE {}\n\nSAMPLE   Hordeum   Triticum   Lens\n         vulgare   dicoccum   culinaris\n\n"
    body = ["A1            3          .      1\nA2            5         12      .\nA3            .          7     14\n", "B1           11          2      .\nB2            .          5      3\n"]
    found = taken(tmp_path, "".join(f"\f{head.format(n)}{lines}\n" for n, lines in enumerate(body, 1)))

    assert sorted({sample for sample, *_ in counts(found)}) == ["A1", "A2", "A3", "B1", "B2"]
    assert sum(number for *_, number in counts(found)) == 63
    assert {name for _, name, *_ in counts(found)} == {"Hordeum vulgare", "Triticum dicoccum", "Lens culinaris"}
    assert [row.place.line for row in found.rows if row.sample == "B1"][:1] == [15]


@pytest.mark.parametrize("width", [lambda s: len(s), lambda s: 2 * len(s), lambda s: len(s.encode())])
def test_letters_may_take_two_places(width: Callable[[str], int]) -> None:
    """Programs fill up by letters, by places on the screen, or by bytes."""
    listed = [("种类", "S1", "S2"), ("粟", "12", "3"), ("野生大豆", "1", "140"), ("黍", ".", "5"), ("狗尾草属", "7", ".")]
    text = "\n".join(f"{name}{' ' * (16 - width(name))}{a:>5}{b:>5}" for name, a, b in listed)
    assert rows(text) == [list(cells) for cells in listed]


def test_a_line_out_of_its_columns_is_told_and_not_counted(tmp_path: Path) -> None:
    """One of thirteen lines has slipped; the others are read."""
    lines = [f"Oats {n:<6}   {n:>4}    {2 * n:>4}" for n in range(1, 14)]
    lines[6] = "Oats 7 and what else there was   7   14"
    text = "Taxon           A1      A2\n" + "\n".join(lines)
    found = rows(text, "lab.txt", "does not stand in the columns of the lines around it")

    assert found[7] == ["Oats 7 and what else there was 7 14", "", ""]
    assert found[8] == ["Oats 8", "8", "16"]


SLIPPED = """Taxon   A1   A2   A3
Oats   1   12    4
Wild oats and rye   104   2   1
Rye      3   1111   5
Hordeum vulgare   1    12   3
Pea 4    1         1
"""


def test_columns_that_do_not_line_up_are_refused(tmp_path: Path) -> None:
    """What was tried is said, with the first line, and nothing is counted."""
    found = taken(tmp_path, SLIPPED)

    assert found.rows == ()
    assert [(p.code, p.severity, p.place.line) for p in found.problems] == [("N311", "error", 0), ("N312", "warning", 2)]
    assert "it was tried to part columns there" in found.problems[1].message


@pytest.mark.parametrize(
    "text",
    [
        "Taxon ,  S1,  S2\nOats  ,   1,   3\nRye   ,   2,   .\nPea   ,  11,   1\nEmmer ,   4,   2\n",
        "Taxon;S1;S2\nOats;1;3\nRye;2;\nPea;11;1\nEmmer;4;2\n;;\nTaxon   S1   S2\nOats     1    3\nRye      2    .\nPea     11    1\nEmmer    4    2\n",
    ],
)
def test_cells_with_separators_are_parted_there_alone(text: str) -> None:
    """Blanks that fill up cells, or a few lines set out below, make no listing of a file with separators."""
    sign = ";" if ";" in text else ","
    assert [len(cells) for cells in rows(text)] == [3] * len(rows(text))
    assert rows(text)[1] == [cell.strip() for cell in text.splitlines()[1].split(sign)]


def test_heads_and_labels_wider_than_their_numbers_stay_whole() -> None:
    """Two blanks part heads of several words; a label such as 'Pit 1005' is one cell; a head over several stands first."""
    text = (
        "                          Cereals                    Weeds\n"
        "Sample  Volume brut (L)   Hordeum vulgare  Secale    Galium sp.\n"
        "A1                   20                3       .             1\n"
        "A2                   10               12       4             .\n"
        "Place             Pit 4       Ditch 1005   Pit 7     Posthole 2\n"
        "A3                    5                .       2            18\n"
        "A4                  7.5                1       9             3\n"
    )
    assert rows(text)[:2] == [["", "", "Cereals", "", "Weeds"], ["Sample", "Volume brut (L)", "Hordeum vulgare", "Secale", "Galium sp."]]
    assert rows(text)[4] == ["Place", "Pit 4", "Ditch 1005", "Pit 7", "Posthole 2"]


def test_single_blanks_between_heads_of_several_words_are_refused() -> None:
    """Nobody can tell whether 'Vol' is of the column before it."""
    lines = ["Phase Soil vol. (L) Oats grain", "I               20          3", "II              10         12", "III              5          .", "IV             7.5          1"]
    assert rows("\n".join(lines), "lab.txt", "it was tried to part columns there")[0] == [lines[0]]


@pytest.mark.parametrize("name", ["a02.csv", "f02.csv", "l05.csv", "n02.csv", "n12.tsv", "p09.csv"])
def test_sheets_come_back_from_a_listing(name: str) -> None:
    """Sheets of strangers printed with two blanks between the columns, names on the left and numbers on the right."""
    (grid,) = grids_of(name, (HERE / name).read_bytes(), ProblemList())
    cells = [[grid.text(r, c) for c in range(grid.columns)] for r in range(grid.rows)]
    full = [row for row in cells if sum(map(bool, row)) > 1]
    widths = [max(len(row[c]) for row in full) for c in range(grid.columns)]
    right = [sum(looks_like_amount(row[c]) for row in full) >= sum(bool(row[c]) for row in full) / 2 for c in range(grid.columns)]
    lines = []
    for row in cells:
        printed = (text.rjust(w) if is_right else text.ljust(w) for text, w, is_right in zip(row, widths, right, strict=True) if w)
        lines.append("  ".join(printed).rstrip() if sum(map(bool, row)) > 1 else "".join(row))

    found = [[text for text in row if text] for row in rows("\n".join(lines))]
    assert found == [[text for text in row if text] for row in cells if any(row)]


def test_hostile_listings_are_bounded() -> None:
    """A line without end, and lines without end: told, and no slower than so many cells parted by commas."""
    line = "Oats             12     3     4\n"
    table = "Taxon            S1    S2    S3\n" + 6 * line
    problems = ProblemList()
    began = time.perf_counter()
    grids_of("lab.txt", (table + "x " * 10_000_000).encode(), problems)
    grids_of("lab.txt", (table + 300_000 * line).encode(), problems)
    of_blanks = time.perf_counter() - began
    began = time.perf_counter()
    grids_of("lab.csv", ("Taxon,S1,S2,S3\n" + 300_000 * "Oats,12,3,4\n").encode(), problems)

    assert [p.message.split(",")[0] for p in problems.found if p.code == "N310"] == [
        "a cell holds more than 131", "the sheet holds more than 1", "the sheet holds more than 1",
    ]  # fmt: skip
    assert of_blanks < 8 * (time.perf_counter() - began)


TYPED = """
TABLE 3.  PLANT REMAINS

Sample                          1      2      3
Litres                          8      8     16
------------------------------------------------
Crops
  Zea mays, kernels ......      5      -      7
  Zea mays, kernel
    fragments ............     21     34     22
  Phaseolus vulgaris .....      -      1      1
Weeds
  Polygonum sp. (knotweed or
    smartweed) ...........      3      -      2
  Chenopodium sp. ........     12      5      -
  Amaranthus sp. (pigweed       4      2      1
    or amaranth)
Other material
  Wood charcoal (gm) .....    1.3    1.1    4.9
------------------------------------------------

* Identification tentative.
x Present, not counted.   - None.
"""


def test_dots_that_lead_to_numbers_and_names_over_two_lines_are_typed_tables(tmp_path: Path) -> None:
    """Leading dots are no part of a name; a name that goes on in the next line is one; signs at the foot are no column."""
    found = taken(tmp_path, TYPED)
    of_first = [one[1:] for one in counts(found) if one[0] == "1"]

    assert of_first == [
        ("Zea mays", "kernel", "whole", 5), ("Zea mays", "kernel", "fragment", 21),
        ("Polygonum s.l.", "seed", "whole", 3), ("Chenopodium", "seed", "whole", 12), ("Amaranthus", "seed", "whole", 4),
    ]  # fmt: skip
    assert [(str(row.sample), row.mass_g) for row in found.rows if row.mass_g] == [("1", 1.3), ("2", 1.1), ("3", 4.9)]
    assert {id: facts["volume"][0].text for id, facts in found.facts.items()} == {"1": "8", "2": "8", "3": "16"}


def test_several_parts_under_their_plant_stay_lines_of_their_own(tmp_path: Path) -> None:
    """Parts in small letters, set in under a plant, are no ends of its name."""
    lines = ["Sample            S1    S2", "Zea mays", "   kernels         4     2", "   cupules        31     8"]
    lines += ["Galium             2     1", "Rubus sp.         12     5", "Carya, shell       8     3"]
    found = taken(tmp_path, "\n".join(lines))

    assert [one[1:] for one in counts(found) if one[0] == "S1"] == [
        ("Zea mays", "kernel", "whole", 4), ("Zea mays", "cupule", "whole", 31), ("Galium", "seed", "whole", 2),
        ("Rubus", "seed", "whole", 12), ("Carya", "nutshell", "whole", 8),
    ]  # fmt: skip


TWO_PAGES = """
Sample                  1     2
Zea mays, kernels       5     7
Galium sp.              2     1
Chenopodium sp.        12     5
Wood charcoal (g)     1.3   4.9


Sample                  3     4   Total
Zea mays, kernels       1     2      15
Galium sp.              -     4       {galium}
Chenopodium sp.         3     3      23
Wood charcoal (g)     0.5   1.2     {charcoal}
"""


@pytest.mark.parametrize(
    ("galium", "charcoal", "told"), [("7", "7.9", []), ("9", "7.9", ["D11"]), ("7", "8.8", ["D13"])]
)
def test_totals_over_two_pages_hold_for_grams_too(tmp_path: Path, galium: str, charcoal: str, told: list[str]) -> None:
    """A total behind the second page adds up both; a wrong one is told, of counts and of grams."""
    found = taken(tmp_path, TWO_PAGES.format(galium=galium, charcoal=charcoal))

    assert [p.place.cell for p in found.problems if p.code == "N317"] == told


def test_heads_over_one_line_stay_heads(tmp_path: Path) -> None:
    """'Grasses' over 'oats' is no beginning of its name, and a title is none of the line under it."""
    lines = ["Waterlogged plant remains", "     sample       S1    S2    S3", "Grasses", "  oats             4    15     6"]
    lines += ["Cereals", "  barley          12     3     1", "  rye              2     2     5", "Pulses", "  peas             1     4     8"]
    found = taken(tmp_path, "\n".join(lines))
    written = [str(row.identification.written) for row in found.rows if row.sample == "S1"]

    assert written == ["oats", "barley", "rye", "peas"]


@pytest.mark.parametrize(
    "line", ["Hordeum        ..       8      19", "Secale          3      ..      ..", "Oats           12      ..       3"]
)
def test_dots_in_place_of_numbers_are_no_leading_dots(line: str) -> None:
    """Where a listing writes '..' for something, it stays there, though names of other lines are led to their numbers."""
    led = [f"{name} {'.' * (20 - len(name))}       1       2       3" for name in ("Rye", "Pea", "Lentil", "Vetch")]

    assert lines_of("\n".join([line, "Rye             1       2       3"]))[0] == line
    assert lines_of("\n".join([*led, line]))[-1] == line


def test_a_line_of_dots_takes_no_longer_than_its_length() -> None:
    """A hundred thousand dots are passed over once."""
    started = time.process_time()
    rows("A" + "." * 100_000 + "x\nTaxon,S1\nOats,2", "lab.csv")

    assert time.process_time() - started < 5
