"""Numbers that no table takes in and heads that nobody knows are told."""

from __future__ import annotations

from pathlib import Path

from narrate.reading.intake.take_in import TakenIn, take_in
from tests.reading.intake.test_by_eye import packs


def read(folder: Path, text: str) -> TakenIn:
    path = folder / "lab.csv"
    path.write_text(text, encoding="utf-8")
    return take_in(path, packs())


def test_numbers_outside_every_table_are_told(tmp_path: Path) -> None:
    """Lines with names and numbers far below a table are doubtful, and the doubt names their rows."""
    table = "Sample,S1,S2,S3\nCarya sp.,12,3,1\nZea mays,4,5,2\nJuglans nigra,1,2,1\n"
    sheet = table + "\n\n\nqqq rrr,x y z,u v w,12\nqqq sss,a b c,d e f,3\n"

    doubts = read(tmp_path, sheet).doubts

    assert (
        "DOUBTFUL: rows 8, 9 (from 'qqq rrr') hold numbers and belong to no table; add them under rows of a table "
        "in the layout if they are finds"
    ) in doubts


def test_a_row_of_words_under_an_unknown_heading_is_told(tmp_path: Path) -> None:
    """A head that no word list knows is named, so that it can be given a role."""
    sheet = "Sample,S1,S2,S3\nGlorp,red,blue,green\nCarya sp.,12,3,1\nZea mays,4,5,2\nJuglans nigra,1,2,1\n"

    doubts = read(tmp_path, sheet).doubts

    assert (
        "row 2 ('Glorp'): its heading says nothing known; give it a role in the layout if it says something of the "
        "samples or the finds"
    ) in doubts


def test_words_of_headings_as_ids_are_doubtful(tmp_path: Path) -> None:
    """Where 'Layer' would be the id of a sample, the sheet may be read the wrong way round."""
    sheet = "Sample,S1,Layer,S3\nCarya sp.,12,3,1\nZea mays,4,5,2\nJuglans nigra,1,2,1\n"

    doubts = read(tmp_path, sheet).doubts

    assert (
        "DOUBTFUL: 'Layer' read as the id of a sample, and are words of headings; look whether the sheet is read "
        "the right way round"
    ) in doubts


def test_a_label_that_can_be_no_id_is_left_out_and_told(tmp_path: Path) -> None:
    """What stands under 'Litres' among the ids of samples is no sample's."""
    sheet = "Sample,S1,Litres,S3\nCarya sp.,12,3,1\nZea mays,4,5,2\nJuglans nigra,1,2,1\n"

    doubts = read(tmp_path, sheet).doubts

    assert (
        "DOUBTFUL: 'Litres' stands among the ids of samples and is a label of one; what is under it is left out: write "
        "the id of the sample in its place, or give its row and column their roles"
    ) in doubts
