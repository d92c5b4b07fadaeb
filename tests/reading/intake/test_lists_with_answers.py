"""Yes and no beside names and phases are no amounts. All sheets are invented."""

from __future__ import annotations

from pathlib import Path

from tests.reading.intake.test_silent_faults import finds, problems, taken

CODES = """
PHASE,TAXON,INTRUSIVE
I,HORVULG,No
I,TRIDICO,No
I,LENSCUL,Yes
II,HORVULG,No
II,CORAVEL,Yes
II,TRIDICO,No
III,HORVULG,Yes
"""


def test_codes_by_phase_are_a_list_of_presences(tmp_path: Path) -> None:
    """Each line says that a taxon was there, and the answers beside it are kept in notes with their head."""
    found = taken(tmp_path, CODES)

    assert [sample for sample, *_ in finds(found)] == ["I", "I", "I", "II", "II", "II", "III"]
    assert {r.count.amount for r in found.rows} == {"noted as present"}
    assert [r.note for r in found.rows][:3] == ["INTRUSIVE: No", "INTRUSIVE: No", "INTRUSIVE: Yes"]
    assert problems(found, "N402") == []
    told = (
        "DOUBTFUL: column C ('INTRUSIVE') says yes or no of each line and is no amount; what it asks is not known: it "
        "is kept as a note of the finds; take the lines out that it says are none"
    )
    assert told in found.doubts


def test_answers_beside_phases_are_no_sample(tmp_path: Path) -> None:
    """Where the list is too short to be known for one it is refused: its head is no sample, and no phase a part."""
    found = taken(tmp_path, "\n".join(CODES.strip().splitlines()[:4]))

    assert found.rows == ()
    assert [one.code for one in found.problems] == ["N311"]
