"""Lists of codes that give the name, the part and the state of preservation. Invented."""

from pathlib import Path

import openpyxl
import pytest

from narrate.reading.intake.take_in import TakenIn, take_in
from tests.reading.intake.test_blind import packs

COUNTS = [["code", "S1", "S2"], ["HOV1", 3, 4], ["HOV2", 5, None], ["TRD1", 2, 7], ["CHA1", 9, 1], ["COA1", 0.5, 1.25]]


def read(listed: list[list[object]], folder: Path, *notes: str) -> TakenIn:
    book = openpyxl.Workbook()
    for name, rows in (("Notes", [[note] for note in notes]), ("Codes", listed), ("Counts", COUNTS)):
        sheet = book.create_sheet(name)
        for row in rows:
            sheet.append(row)
    del book["Sheet"]
    book.save(folder / "coded.xlsx")
    return take_in(folder / "coded.xlsx", packs())


def listed(head: str, *states: str) -> list[list[object]]:
    names = (
        ("HOV1", "Hordeum vulgare", "grain"), ("HOV2", "Hordeum vulgare", "rachis internode"),
        ("TRD1", "Triticum dicoccum", "glume base"), ("CHA1", "Chenopodium album", "seed"), ("COA1", "Corylus avellana", "nutshell"),
    )  # fmt: skip
    return [head.split(","), *([*name, state] for name, state in zip(names, states, strict=True))]


@pytest.mark.parametrize(
    ("head", "states", "note"),
    [
        ("code,taxon,part,preservation", ("C", "W", "C", "W", "C"), "preservation C = charred, W = waterlogged"),
        ("code,taxon,part,preservation", ("charred", "waterlogged", "charred", "waterlogged", "charred"), ""),
        ("Code,Taxon,Rest,Erhaltung", ("v", "f", "v", "f", "v"), "v = verkohlt, f = Feuchtbodenerhaltung"),
        ("code,soort,deel,conservering", ("verkoold", "waterverzadigd", "verkoold", "waterverzadigd", "verkoold"), ""),
        ("code,taxon,partie,conservation", ("carbonisé", "imbibé", "carbonisé", "imbibé", "carbonisé"), ""),
        ("código,taxón,parte,conservación", ("carbonizado", "saturado", "carbonizado", "saturado", "carbonizado"), ""),
    ],
)
def test_codes_give_name_part_and_condition(head: str, states: tuple[str, ...], note: str, tmp_path: Path) -> None:
    """A code of what was waterlogged is of nothing charred."""
    rows = read(listed(head, *states), tmp_path, note).rows

    found = {row.identification.written: (str(row.part), str(row.condition)) for row in rows}
    assert {code: found[code] for code in ("HOV1", "HOV2", "TRD1", "CHA1")} == {
        "HOV1": ("grain", "charred"), "HOV2": ("rachis internode", "waterlogged"),
        "TRD1": ("glume base", "charred"), "CHA1": ("seed", "waterlogged"),
    }  # fmt: skip


def test_codes_of_what_was_weighed_are_weights(tmp_path: Path) -> None:
    """A column of units in the list of codes holds for the counts."""
    rows = read(listed("code,taxon,part,unit", "n", "n", "n", "n", "g"), tmp_path).rows

    assert [row.mass_g for row in rows if row.identification.written == "COA1"] == [0.5, 1.25]


def test_codes_of_pieces_are_fragments(tmp_path: Path) -> None:
    """A column of whole and fragment in the list of codes holds for the counts."""
    rows = read(listed("code,taxon,part,completeness", *["whole", "whole", "fragment", "whole", "whole"]), tmp_path).rows

    found = {row.identification.written: str(row.completeness) for row in rows}
    assert (found["HOV1"], found["TRD1"]) == ("whole", "fragment")


def test_a_condition_of_codes_that_nobody_knows_is_told_loudly(tmp_path: Path) -> None:
    """Nothing becomes charred unsaid."""
    found = read(listed("code,taxon,part,preservation", *["charred", "zz", "charred", "charred", "charred"]), tmp_path)

    assert [doubt for doubt in found.doubts if "of the condition of codes" in doubt] == [
        "DOUBTFUL: sheet Codes says 'zz' of the condition of codes, which nobody knows; their finds are taken as the table says: "
        "mend the names in the layout"
    ]
