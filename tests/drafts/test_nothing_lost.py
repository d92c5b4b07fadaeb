"""Whatever an analyst, her editor or her version control does to a narrative file, no word of hers is lost."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from narrate.drafts.draft_file import draft_text, read_draft
from narrate.drafts.owned import draft_path, owned
from narrate.problems import written
from tests.drafts.told import C1, a_ground, a_narrative, tell

TEXTS = ("Cob parts ({}) were burned.", "The pit held {} items.", "Somebody raked it out.")
HERS = "I saw pale ash 🌽 in the [north half](https://example.org/a_b)."


def drafts(cupules: int) -> tuple[str, ...]:
    return tuple(text.format(cupules) for text in TEXTS)


def file(folder: Path) -> Path:
    return draft_path(folder, "report", "C1")


def side(folder: Path) -> Path:
    return file(folder).parent / ".drafted" / "C1.json"


def marks(folder: Path) -> list[str]:
    rows = file(folder).read_text(encoding="utf-8").splitlines()
    return [row.rpartition("<!-- ")[2].removesuffix(" -->") for row in rows if "<!--" in row]


EDITS: dict[str, Callable[[str], str]] = {
    "a line of her own": lambda text: text + f"\n{HERS}\n",
    "a line between two drafts": lambda text: text.replace("\nThe pit", f"\n{HERS}\nThe pit"),
    "ends of lines of another system": lambda text: (text + f"\n{HERS}\n").replace("\n", "\r\n"),
    "ends of lines of an old system": lambda text: (text + f"\n{HERS}\n").replace("\n", "\r"),
    "a mark at the start of the file": lambda text: "\ufeff" + text + f"\n{HERS}\n",
    "lines between dashes": lambda text: f"---\ntitle: {HERS}\n---\n" + text,
    "a list": lambda text: text + f"\n- one\n  - {HERS}\n- two\n",
    "a numbered list": lambda text: text + f"\n1. one\n2. {HERS}\n",
    "a quotation": lambda text: text + f"\n> {HERS}\n> and more\n",
    "a heading": lambda text: text.replace("## Fuel", f"## Fuel\n\n### {HERS}"),
    "a heading under the drafts": lambda text: text + f"\n#### {HERS}\n",
    "a heading without a space": lambda text: text + f"\n#{HERS}\n",
    "a remark": lambda text: text + f"\n<!-- {HERS} -->\n",
    "a remark over several lines": lambda text: text + f"\n<!--\nto do:\n\n{HERS}\n-->\n",
    "a remark behind a draft": lambda text: text.replace(" -->\nThe pit", f" --> <!-- {HERS} -->\nThe pit"),
    "a table": lambda text: text + f"\n| a | b |\n|---|---|\n| 1 | {HERS} |\n",
    "code": lambda text: text + f"\n```\n{HERS}\n```\n",
    "two drafts in one line": lambda text: text.replace(" -->\nThe pit", f" --> {HERS} The pit"),
    "two drafts in one sentence": lambda text: text.replace(".", f", and {HERS}", 1),
    "a draft split over two lines": lambda text: text.replace("Cob parts (60)", f"Cob parts. {HERS}\n(60)"),
    "all marks deleted": lambda text: "\n".join(row.split(" <!--")[0] for row in text.split("\n")) + f"\n{HERS}\n",
    "one mark in two lines": lambda text: text.replace("Cob", f"{HERS} <!--{text.split('<!--')[1]}Cob", 1),
    "a mark that nobody wrote": lambda text: text + f"\n{HERS} <!-- abcdef -->\n",
    "no end of line at the end": lambda text: text.rstrip() + f"\n\n{HERS}",
    "everything else deleted": lambda text: HERS,
}


@pytest.mark.parametrize("case", EDITS)
def test_her_words_stand_after_every_run(tmp_path: Path, case: str) -> None:
    """Edited, told with the same counts, with others, and again: her words are in the file each time."""
    tell(tmp_path, 60, *drafts(60))
    path = file(tmp_path)
    path.write_bytes(EDITS[case](path.read_text(encoding="utf-8")).encode("utf-8"))

    for cupules in (60, 64, 64, 12, 60):
        tell(tmp_path, cupules, *drafts(cupules))
        assert HERS in path.read_text(encoding="utf-8")


@pytest.mark.parametrize("case", EDITS)
def test_a_run_with_the_same_counts_leaves_her_file_as_it_is(tmp_path: Path, case: str) -> None:
    """Not a byte changes where nothing is to be told anew; marks that were lost are put back, and that alone."""
    tell(tmp_path, 60, *drafts(60))
    path = file(tmp_path)
    before = EDITS[case](path.read_text(encoding="utf-8")).encode("utf-8")
    path.write_bytes(before)
    tell(tmp_path, 60, *drafts(60))

    if case == "all marks deleted":
        assert path.read_text(encoding="utf-8").count("<!--") == 3
    else:
        assert path.read_bytes() == before


@pytest.mark.parametrize("case", ["ends of lines of another system", "a mark at the start of the file"])
def test_new_drafts_come_in_her_manner_of_writing_files(tmp_path: Path, case: str) -> None:
    """Lines end as hers do, and the mark at the start stays."""
    tell(tmp_path, 60, *drafts(60))
    path = file(tmp_path)
    path.write_bytes(EDITS[case](path.read_text(encoding="utf-8")).encode("utf-8"))
    tell(tmp_path, 64, *drafts(64))
    raw = path.read_bytes()

    assert b"Cob parts (64)" in raw
    assert raw.startswith(b"\xef\xbb\xbf") == (case == "a mark at the start of the file")
    assert (b"\r\n" in raw) == (case == "ends of lines of another system")
    assert raw.count(b"\n") in (0, raw.count(b"\r\n"), raw.count(b"\n") * (b"\r\n" not in raw))


def test_marks_that_an_editor_dropped_are_put_back(tmp_path: Path) -> None:
    """Her words are tied to their claims as before: nothing is offered twice, and drafts are renewed."""
    tell(tmp_path, 60, *drafts(60))
    path = file(tmp_path)
    text = path.read_text(encoding="utf-8").replace("The pit held 60 items.", "The pit was full.")
    path.write_text(text, encoding="utf-8")
    tell(tmp_path, 60, *drafts(60))
    marks_before = marks(tmp_path)
    path.write_text("\n".join(row.split(" <!--")[0] for row in text.split("\n")), encoding="utf-8")
    told, _ = tell(tmp_path, 64, *drafts(64))

    assert marks(tmp_path) == marks_before
    assert [s.text for s in told.sentences()] == ["Cob parts (64) were burned.", "The pit was full.", TEXTS[2]]
    assert told.sentences()[1].stale == ("Items: 60, now 64",)


def test_a_sentence_that_an_editor_broke_over_lines_is_one_sentence(tmp_path: Path) -> None:
    """Wrapped and not changed: it is a draft still, and renewed."""
    tell(tmp_path, 60, *drafts(60))
    path = file(tmp_path)
    path.write_text(path.read_text(encoding="utf-8").replace("Cob parts ", "Cob parts\n"), encoding="utf-8")
    same, _ = tell(tmp_path, 60, *drafts(60))
    wrapped = path.read_text(encoding="utf-8")
    told, _ = tell(tmp_path, 64, *drafts(64))

    assert "Cob parts\n(60)" in wrapped
    assert not same.is_edited
    assert told.sentences()[0].text == "Cob parts (64) were burned." and not told.is_edited


def test_a_list_of_drafts_is_renewed_as_a_list(tmp_path: Path) -> None:
    """She made list items of two drafts without changing a word: they stay items, and their figures follow."""
    tell(tmp_path, 60, *drafts(60))
    path = file(tmp_path)
    text = path.read_text(encoding="utf-8").replace("Cob parts", "- Cob parts").replace("The pit", "- The pit")
    path.write_text(text, encoding="utf-8")
    told, _ = tell(tmp_path, 64, *drafts(64))

    assert "\n- Cob parts (64) were burned. <!--" in path.read_text(encoding="utf-8")
    assert [s.text for s in told.sentences()][:2] == ["Cob parts (64) were burned.", "The pit held 64 items."]


def test_a_remark_behind_a_draft_stays_behind_the_new_draft(tmp_path: Path) -> None:
    """Her note to self outlives the sentence, and is on no page."""
    tell(tmp_path, 60, *drafts(60))
    path = file(tmp_path)
    text = path.read_text(encoding="utf-8").replace(" -->\nThe pit", " --> <!-- ask B. -->\nThe pit")
    path.write_text(text, encoding="utf-8")
    told, _ = tell(tmp_path, 64, *drafts(64))

    assert "Cob parts (64) were burned. <!--" in path.read_text(encoding="utf-8")
    assert "<!-- ask B. -->" in path.read_text(encoding="utf-8")
    assert not any("ask B." in sentence.text for sentence in told.sentences())


def test_remarks_over_several_lines_are_on_no_page(tmp_path: Path) -> None:
    """What she put out of sight stays out of sight, blank lines and all."""
    tell(tmp_path, 60, *drafts(60))
    path = file(tmp_path)
    path.write_text(EDITS["a remark over several lines"](path.read_text(encoding="utf-8")), encoding="utf-8")
    told, _ = tell(tmp_path, 60, *drafts(60))

    assert not any("to do" in s.text or HERS in s.text for s in told.sentences())


def test_a_split_sentence_with_its_mark_on_both_lines_stays_stale(tmp_path: Path) -> None:
    """Both halves are hers; the second run after the change lists them as the first did."""
    tell(tmp_path, 60, *drafts(60))
    path = file(tmp_path)
    text = path.read_text(encoding="utf-8")
    mark = marks(tmp_path)[0]
    two = f"There were cobs. <!-- {mark} -->\nThey were burned."
    path.write_text(text.replace("Cob parts (60) were burned.", two), encoding="utf-8")
    tell(tmp_path, 60, *drafts(60))
    tell(tmp_path, 64, *drafts(64))
    told, _ = tell(tmp_path, 64, *drafts(64))

    assert [bool(s.stale) for s in told.sentences()] == [True, True, False, False]


def test_a_renamed_file_is_kept_and_a_new_draft_written(tmp_path: Path) -> None:
    """The words stay under the name that she gave; under the old one stands a draft."""
    tell(tmp_path, 60, *drafts(60))
    path = file(tmp_path)
    path.write_text(path.read_text(encoding="utf-8") + f"\n{HERS}\n", encoding="utf-8")
    path.rename(path.with_name("C1 old.md"))
    tell(tmp_path, 64, *drafts(64))

    assert HERS in path.with_name("C1 old.md").read_text(encoding="utf-8")
    assert "Cob parts (64)" in path.read_text(encoding="utf-8")


DAMAGE = (b"", b"{", b"\xff\xfe", b"[1]", b'{"format": "narrate drafts 2"}', b"<<<<<<< HEAD\n{}")


@pytest.mark.parametrize("damage", DAMAGE)
def test_a_damaged_side_file_loses_nothing_and_is_told(tmp_path: Path, damage: bytes) -> None:
    """Every line is hers then, whatever the counts do; the next side file is whole again."""
    tell(tmp_path, 60, *drafts(60))
    path = file(tmp_path)
    path.write_text(path.read_text(encoding="utf-8") + f"\n{HERS}\n", encoding="utf-8")
    before = path.read_text(encoding="utf-8")
    side(tmp_path).write_bytes(damage)
    _, problems = tell(tmp_path, 64, *drafts(64))
    _, after = tell(tmp_path, 64, *drafts(64))

    assert path.read_text(encoding="utf-8") == before
    assert [p.split(": ")[1] for p in problems if "N112" in p] == ["warning N112"]
    assert not any("N112" in p for p in after)


def test_an_approval_whose_side_file_is_lost_is_no_approval(tmp_path: Path) -> None:
    """Nobody knows what it was approved on: it has lapsed, and the reason says so."""
    tell(tmp_path, 60, *drafts(60))
    path = file(tmp_path)
    text = path.read_text(encoding="utf-8")
    path.write_text("---\napproved: {by: A. Analyst, on: 2026-11-25}\n---\n" + text, encoding="utf-8")
    tell(tmp_path, 60, *drafts(60))
    side(tmp_path).unlink()
    told, _ = tell(tmp_path, 60, *drafts(60))

    assert told.lapses == ("what it was approved on is not known",)
    assert not any(sentence.is_approved for sentence in told.sentences())


REFUSED = {
    "another encoding": (
        "## Fuel\n\nCafé.\n".encode("cp1252"),
        "narratives/report/C1.md:3: error N114: the narrative holds a byte 0xe9 that is not UTF-8, expected UTF-8 "
        "text; nothing of it was touched\n      help: save it as UTF-8 in your editor",
    ),
    "two bytes a letter": (
        "## Fuel\n".encode("utf-16"),
        "narratives/report/C1.md:1: error N114: the narrative holds a byte 0xff that is not UTF-8, expected UTF-8 "
        "text; nothing of it was touched\n      help: save it as UTF-8 in your editor",
    ),
    "an unfinished merge": (
        b"Hers.\n<<<<<<< HEAD\nOne.\n=======\nOther.\n>>>>>>> main\n",
        "narratives/report/C1.md:2: error N114: the narrative holds the marks of an unfinished merge, expected one "
        "text; nothing of it was touched\n    2 | <<<<<<< HEAD\n      help: keep the lines that are meant and delete "
        "'<<<<<<<', '=======' and '>>>>>>>'",
    ),
}


@pytest.mark.parametrize("case", REFUSED)
def test_a_file_that_cannot_be_read_whole_is_not_touched(tmp_path: Path, case: str) -> None:
    """An error with the line; the file is not among those to write."""
    tell(tmp_path, 60, *drafts(60))
    raw, message = REFUSED[case]
    file(tmp_path).write_bytes(raw)
    found = owned(tmp_path, {C1: a_narrative(*drafts(60))}, a_ground(60))

    assert [written(problem) for problem in found.problems] == [message]
    assert found.files == {}


@pytest.mark.parametrize("case", EDITS)
def test_every_edit_is_written_as_it_was_read(tmp_path: Path, case: str) -> None:
    """Reading and writing a file changes no row that holds words."""
    tell(tmp_path, 60, *drafts(60))
    text = EDITS[case](file(tmp_path).read_text(encoding="utf-8")).lstrip("\ufeff")
    rows = [row for row in text.replace("\r\n", "\n").replace("\r", "\n").split("\n") if row.strip()]

    assert [row for row in draft_text(read_draft(text)).split("\n") if row.strip()] == rows
