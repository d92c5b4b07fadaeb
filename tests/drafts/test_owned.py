"""Narrative files of a folder: what is written, what is kept, and what a person is asked to look at."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from narrate.drafts.basis import differences, figures, name_of
from narrate.drafts.owned import alike_keys, draft_path, own_words, tell_unowned
from narrate.model.standing import Standing, standing
from narrate.problems import ProblemList, written
from tests.drafts.told import REFS, a_ground, a_narrative, rewrite, tell


def test_the_figures_behind_a_sentence_go_by_references() -> None:
    """Grades, values and counts carry names that no other wording of narrate changes."""
    assert figures(REFS, a_ground(60)) == {
        "C1/fuel.maize-cob": "supports",
        "C1/fuel.maize-cob#kpc": "0",
        "C1/found.zea-mays.cupule": "60",
    }


def test_figures_are_told_by_names_that_a_person_knows() -> None:
    """A claim by its title, a find by plant and part; a reference that leads nowhere by itself."""
    keys = ("C1/fuel.maize-cob", "C1/fuel.maize-cob#kpc", "C1/found.zea-mays.cupule", "C9/gone")

    assert [name_of(key, a_ground(60)) for key in keys] == [
        "Maize cobs as fuel",
        "kpc behind 'Maize cobs as fuel'",
        "maize cupules",
        "C9/gone",
    ]


def test_what_changed_is_told_in_words() -> None:
    """A fall of the grade, a changed count, a thing that came and one that went."""
    before = {"Maize cobs as fuel": "supports", "maize cupules": "12", "gone": "3"}
    now = {"Maize cobs as fuel": "suggests", "maize cupules": "19", "new": "4"}

    assert differences(before, now) == (
        "'Maize cobs as fuel' fell from supports to suggests",
        "gone: 3, now not there",
        "maize cupules: 12, now 19",
        "new: new, 4",
    )


def test_an_untouched_narrative_is_the_draft_itself(tmp_path: Path) -> None:
    """Without an edit the narrative that is told is the draft, section ids and all."""
    tell(tmp_path, 60)
    again, problems = tell(tmp_path, 60)

    assert again == a_narrative("Cob parts (60) were burned.")
    assert problems == []


def test_an_edited_sentence_is_told_with_its_standing_and_its_references(tmp_path: Path) -> None:
    """Her words stand on the page, tied to the same claims."""
    tell(tmp_path, 60)
    hers = rewrite(tmp_path, "Cob parts (60) were burned.", "Cobs were the fuel here.")
    told, problems = tell(tmp_path, 60)

    assert [(s.text, s.standing, s.refs) for s in told.sentences()] == [("Cobs were the fuel here.", "edited", REFS)]
    assert told.is_edited and problems == []
    assert draft_path(tmp_path, "report", "C1").read_text(encoding="utf-8") == hers


def test_a_stale_sentence_is_a_warning_with_the_figures(tmp_path: Path) -> None:
    """The counts changed under her words: file, line, what it was and what it is."""
    tell(tmp_path, 60)
    rewrite(tmp_path, "Cob parts (60) were burned.", "Cobs were the fuel here.")
    told, problems = tell(tmp_path, 64)

    assert told.sentences()[0].stale == ("maize cupules: 60, now 64",)
    assert problems == [
        "narratives/report/C1.md:3:1: warning N109: an edited sentence rests on what has changed since: "
        "maize cupules: 60, now 64\n"
        "    3 | Cobs were the fuel here.\n"
        "        ^\n"
        "      help: reword it, or touch it once you have seen that it still holds"
    ]


def test_a_number_that_agrees_with_nothing_is_a_warning(tmp_path: Path) -> None:
    """She typed 50 where the sheets say 60."""
    tell(tmp_path, 60)
    rewrite(tmp_path, "Cob parts (60) were burned.", "Some 50 cupules of about AD 1300 were burned.")
    _, problems = tell(tmp_path, 60)

    assert [p.splitlines()[0] for p in problems] == [
        "narratives/report/C1.md:3:1: warning N111: edited text says 50, expected figures behind the sentence: "
        "Maize cobs as fuel supports; kpc behind 'Maize cobs as fuel' 0; maize cupules 60"
    ]


def test_her_own_line_refers_to_the_file(tmp_path: Path) -> None:
    """A line without a mark rests on her words alone, and the reference leads to the files."""
    tell(tmp_path, 60)
    rewrite(tmp_path, "## Fuel\n", "## Fuel\n\nI saw pale ash.\n")
    told, _ = tell(tmp_path, 60)

    assert [(s.standing, s.refs) for s in told.sentences()] == [("own", ("C1/words",)), ("drafted", REFS)]
    assert [place.row for place in own_words(tmp_path, "C1")] == ["narratives/report/C1.md:1"]


def test_an_approval_is_told_and_lapses(tmp_path: Path) -> None:
    """Approved narratives say by whom and when; a change of figures lapses the approval, with a warning."""
    tell(tmp_path, 60)
    path = draft_path(tmp_path, "report", "C1")
    path.write_text(
        "---\napproved: {by: A. Analyst, on: 2026-11-25}\n---\n" + path.read_text(encoding="utf-8"), encoding="utf-8"
    )
    signed, none = tell(tmp_path, 60)
    lapsed, problems = tell(tmp_path, 64)

    assert (signed.approved_by, signed.approved_on, signed.has_lapsed, none) == ("A. Analyst", "2026-11-25", False, [])
    assert lapsed.has_lapsed
    assert problems == [
        "narratives/report/C1.md:1: warning N110: approved by A. Analyst on 2026-11-25, and what it rests on has "
        "changed since: maize cupules: 60, now 64\n      help: read it again and write a new date into 'approved'",
        "narratives/report/C1.md:6: warning N116: 1 of 1 sentence is not approved\n"
        "    6 | Cob parts (64) were burned.\n"
        "      help: read the narrative, then write approved: {by: NAME, on: DATE} between two lines '---' at its "
        "head, or a new date",
    ]


def test_a_lost_side_file_makes_every_line_hers_and_says_so(tmp_path: Path) -> None:
    """Nothing is renewed where nobody knows what was drafted."""
    tell(tmp_path, 60)
    (tmp_path / "narratives" / "report" / ".drafted" / "C1.json").unlink()
    told, problems = tell(tmp_path, 64)

    assert told.sentences()[0].text == "Cob parts (60) were burned."
    assert "N112" in problems[0]


ODD_IDS = ["../../etc/pass wd", "C 1/2", "", "..", "窯", "CON?*", "nul", "aux.old", "C" * 300, "窯" * 200]


@pytest.mark.parametrize("key", ODD_IDS)
def test_ids_make_names_that_every_system_takes(tmp_path: Path, key: str) -> None:
    """Slashes, dots and signs of an id do not climb out of the folder."""
    path = draft_path(tmp_path, "report", key)

    assert path.parent == tmp_path / "narratives" / "report"
    assert not set(path.name) & set('/\\:*?"<>|')
    assert len(path.with_suffix(".json").name.encode()) < 200
    assert path.stem.partition(".")[0].lower() not in {"con", "nul", "aux"}


def test_ids_that_differ_in_capitals_alone_have_files_of_their_own(tmp_path: Path) -> None:
    """On a system that takes c1.md and C1.md for one file, neither narrative writes over the other."""
    keys = ["c1", "C1", "C2"]
    names = [draft_path(tmp_path, "report", key, alike_keys(keys)).name.casefold() for key in keys]

    assert len(set(names)) == 3
    assert names[2] == "c2.md"


def test_a_run_that_changes_nothing_writes_nothing(tmp_path: Path) -> None:
    """Files keep their times when their text stays."""
    tell(tmp_path, 60)
    before = {p: p.stat().st_mtime_ns for p in tmp_path.rglob("*") if p.is_file()}
    tell(tmp_path, 60)

    assert before == {p: p.stat().st_mtime_ns for p in tmp_path.rglob("*") if p.is_file()}


def test_a_file_under_a_name_that_is_no_subject_is_told_with_the_near_name(tmp_path: Path) -> None:
    """Renamed by hand: it is kept, and the name it should bear is offered."""
    tell(tmp_path, 60)
    path = draft_path(tmp_path, "report", "C1")
    path.rename(path.with_name("C1-old.md"))
    problems = ProblemList()
    tell_unowned(tmp_path, "report", ["C1", "site"], problems)

    assert [written(problem) for problem in problems.sorted()] == [
        "narratives/report/C1-old.md: warning N118: the narrative 'C1-old' is of no context, phase or site, expected a "
        "file named for one; it is kept and on no page\n"
        "      help: move its words to C1.md, or delete it"
    ]


def test_a_side_file_of_the_first_form_is_read_as_if_nothing_had_changed(tmp_path: Path) -> None:
    """It named figures in words: her edit and her deletion stand, and nothing is stale."""
    texts = ("Cob parts ({}) were burned.", "The pit held {} items.")
    tell(tmp_path, 60, *(text.format(60) for text in texts))
    side = tmp_path / "narratives" / "report" / ".drafted" / "C1.json"
    said = json.loads(side.read_text(encoding="utf-8"))
    for sentence in said["sentences"]:
        sentence["figures"] = {"maize cupules": "60"}
    first = {"format": "narrate drafts 1", "sentences": said["sentences"], "told": said["told"], "latest": {}}
    side.write_text(json.dumps(first | {"seen": {}, "approved": None}), encoding="utf-8")
    path = draft_path(tmp_path, "report", "C1")
    rows = path.read_text(encoding="utf-8").replace("Cob parts (60) were burned.", "Cobs were the fuel.").split("\n")
    path.write_text("\n".join(row for row in rows if "The pit" not in row), encoding="utf-8")
    told, problems = tell(tmp_path, 60, *(text.format(60) for text in texts))

    assert [(s.text, s.standing, s.stale) for s in told.sentences()] == [("Cobs were the fuel.", "edited", ())]
    assert problems == []


def test_the_standing_of_narratives_is_counted(tmp_path: Path) -> None:
    """One sentence edited, one her own, one as drafted; none approved."""
    tell(tmp_path, 60, "Cob parts (60) were burned.", "The pit held 60 items.")
    rewrite(tmp_path, "Cob parts (60) were burned.", "Cobs were the fuel.")
    rewrite(tmp_path, "## Fuel\n", "## Fuel\n\nI saw pale ash.\n")
    told, _ = tell(tmp_path, 64, "Cob parts (64) were burned.", "The pit held 64 items.")

    assert standing((told,)) == Standing(
        narratives=1, sentences=3, drafted=1, edited=1, own=1, approved=0, stale=1, lapsed=0
    )


def test_large_figures_are_told_without_powers_of_ten() -> None:
    """A stored figure of 3.55e+03 is told as about 3,550."""
    before, now = {"C05/food.burned-store#seeds": "550"}, {"C05/food.burned-store#seeds": "3.55e+03"}

    assert differences(before, now, lambda key: "seeds") == ("seeds: 550, now about 3,550",)
