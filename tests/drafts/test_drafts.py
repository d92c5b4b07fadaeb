"""Drafts are renewed until somebody changes a word; from then on they are hers."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from narrate.drafts.draft_file import draft_text, edited, is_untouched
from narrate.drafts.owned import draft_path, merged, own_words, write_drafts
from narrate.model.ids import Subject
from narrate.model.narrative import Narrative, Section, Sentence
from tests.measures.digs import a_dig

SUBJECT = Subject(level="context", id="C1")


def a_narrative(*texts: str, heading: str = "Fuel") -> Narrative:
    sentences = tuple(Sentence(text=text, refs=("C1/fuel.wood", "C1/measure.density")) for text in texts)
    return Narrative(
        subject=SUBJECT,
        audience="report",
        title="C1, hearth",
        summary=None,
        sections=(Section(id="fuel", heading=heading, paragraphs=(sentences,)),),
    )


def told(folder: Path, narrative: Narrative) -> Narrative:
    """One run: what the page shows, and the drafts written."""
    dig = a_dig([[]])
    shown = merged(folder, dig, {SUBJECT: narrative})[SUBJECT]
    write_drafts(folder, dig, {SUBJECT: narrative})
    return shown


def test_a_draft_has_one_sentence_a_line_with_its_marks() -> None:
    """The file is plain Markdown; each line ends with what the sentence rests on."""
    lines = draft_text(a_narrative("Wood was burned.", "So were cobs.")).splitlines()

    assert lines[2:] == [
        "## Fuel",
        "",
        "Wood was burned. <!-- C1/fuel.wood C1/measure.density -->",
        "So were cobs. <!-- C1/fuel.wood C1/measure.density -->",
    ]


def test_an_untouched_draft_follows_the_claims(tmp_path: Path) -> None:
    """Nobody changed the file, so the next run writes it anew."""
    told(tmp_path, a_narrative("Wood was burned."))
    told(tmp_path, a_narrative("Oak was burned."))

    assert "Oak was burned." in draft_path(tmp_path, "report", "C1").read_text(encoding="utf-8")


@pytest.mark.parametrize("change", ["reword", "delete", "add", "join"])
def test_a_changed_draft_is_kept_byte_for_byte(tmp_path: Path, change: str) -> None:
    """Rewording, deleting, adding or joining sentences makes the file hers."""
    told(tmp_path, a_narrative("Wood was burned.", "So were cobs."))
    path = draft_path(tmp_path, "report", "C1")
    lines = path.read_text(encoding="utf-8").splitlines()
    if change == "reword":
        lines[4] = lines[4].replace("Wood", "Much wood")
    elif change == "delete":
        del lines[5]
    elif change == "add":
        lines.append("\nI saw ash as well.")
    else:
        lines[4:6] = [f"{lines[4]} {lines[5]}"]
    hers = "\n".join(lines) + "\n"
    path.write_text(hers, encoding="utf-8")
    shown = told(tmp_path, a_narrative("Everything is different now."))

    assert path.read_text(encoding="utf-8") == hers
    assert shown.is_edited
    assert "different" not in shown.text


def test_her_own_sentence_refers_to_the_file(tmp_path: Path) -> None:
    """A line without a mark rests on her words alone, and the reference leads to the draft."""
    text = draft_text(a_narrative("Wood was burned.")) + "\nI saw ash as well.\n"
    shown = edited(text, a_narrative("Wood was burned."), "C1/words")

    assert [s.refs for s in shown.sentences()] == [("C1/fuel.wood", "C1/measure.density"), ("C1/words",)]
    write_drafts(tmp_path, a_dig([[]]), {SUBJECT: a_narrative("Wood was burned.")})
    assert [place.row for place in own_words(tmp_path, "C1")] == ["narratives/report/C1.md:1"]


def test_newlines_of_another_system_are_no_change() -> None:
    """An editor that only changes line ends does not make the draft hers."""
    assert is_untouched(draft_text(a_narrative("Wood was burned.")).replace("\n", "\r\n"))


def test_a_file_that_narrate_did_not_write_is_hers() -> None:
    """Without the first line that narrate writes, a file is the analyst's."""
    assert not is_untouched("# My notes\n\nAll mine.\n")


def test_an_unedited_file_reads_back_as_the_same_narrative() -> None:
    """Writing and reading a draft keeps every sentence and its references."""
    narrative = a_narrative("Wood was burned.", "So were cobs.")
    back = edited(draft_text(narrative), narrative, "C1/words")

    assert back.sentences() == narrative.sentences()


@settings(max_examples=200, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.text(max_size=300))
def test_no_edit_is_lost_and_none_breaks_the_reader(text: str) -> None:
    """Whatever she writes below the first line, it is either the untouched draft or kept, and it can be read."""
    draft = draft_text(a_narrative("Wood was burned."))
    hers = draft + text
    back = edited(hers, a_narrative("x"), "C1/words")

    assert is_untouched(hers) == (not text.strip() or hers.replace("\r\n", "\n").strip() == draft.strip())
    assert back.is_edited


def test_ids_make_file_names_that_every_system_takes(tmp_path: Path) -> None:
    """Slashes, dots and spaces of an id do not climb out of the folder."""
    path = draft_path(tmp_path, "report", "../../etc/pass wd")

    assert path.parent == tmp_path / "narratives" / "report"
