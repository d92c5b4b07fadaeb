"""Files of a project: listed, decoded, and never outside the folder."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from narrate.problems import ProblemList
from narrate.reading.files import decoded, listed, read_text
from tests.reading.folders import told_by, write


def decode(content: bytes) -> tuple[str | None, str]:
    problems = ProblemList()
    source = decoded("counts/a.csv", content, problems)
    return source.text if source else None, told_by(problems)


def test_a_byte_order_mark_is_no_part_of_the_text() -> None:
    """A sheet saved as 'CSV UTF-8' begins with a mark that is not read."""
    assert decode(b"\xef\xbb\xbfsample") == ("sample", "")


def test_windows_1252_is_named_with_byte_line_and_letter() -> None:
    """The first byte that is not UTF-8 is shown with the letter it would be in the usual other encoding."""
    assert decode("sample,note\nS1,très petit\n".encode("cp1252"))[1] == (
        "counts/a.csv:2:6: error N102: byte 0xE8 is not UTF-8 text; in Windows-1252, which is likely, it would be 'è', "
        "expected UTF-8\n"
        "    2 | S1,tr\ufffds petit\n"
        "             ^\n"
        "      help: save the file again as 'CSV UTF-8', or as UTF-8 in the editor"
    )


MESSAGES = [
    (
        b"PK\x03\x04rest",
        "counts/a.csv: error N102: the file is an office document or an archive, expected UTF-8 text\n"
        "      help: open it and save the sheet as 'CSV UTF-8'",
    ),
    (
        "sample".encode("utf-16"),
        "counts/a.csv: error N102: the file is text saved as UTF-16, expected UTF-8 text\n"
        "      help: save it again as 'CSV UTF-8', or as UTF-8 in the editor",
    ),
    (
        bytes(range(256)),
        "counts/a.csv:1: error N102: the file holds the byte 0x00 at position 1, so it is not text, expected UTF-8 "
        "text\n"
        "      help: if it is a spreadsheet, open it and save the sheet as 'CSV UTF-8'",
    ),
    (
        "a\nb\u200b\u2028c".encode(),
        "counts/a.csv:2:3: error N102: the file holds the character U+2028, which cannot be seen, expected plain text\n"
        "    2 | b\u200b\u2028c\n"
        "          ^\n"
        "      help: delete the character; it often comes from pasting out of another program",
    ),
]


@pytest.mark.parametrize(("content", "expected"), MESSAGES, ids=["zip", "utf-16", "binary", "line separator"])
def test_what_is_not_text_is_named(content: bytes, expected: str) -> None:
    """Each kind of file that is no text is told as what it is."""
    assert decode(content) == (None, expected)


@given(content=st.binary(max_size=200))
def test_no_bytes_raise(content: bytes) -> None:
    """Whatever bytes a file holds, it gives a text or one problem."""
    text, told = decode(content)

    assert (text is None) == bool(told)


def test_files_are_listed_sorted_with_forward_slashes(tmp_path: Path) -> None:
    """Files of all folders below are listed by their path; an editor's own files are passed over."""
    write(tmp_path, {f"records/{name}": "" for name in ("b.yaml", "a/z.YAML", ".hidden.yaml", "~$b.yaml", "notes.txt")})
    problems = ProblemList()

    assert listed(tmp_path, "records", (".yaml",), problems) == ("records/a/z.YAML", "records/b.yaml")
    assert problems.found == []


def test_a_link_that_leads_out_is_refused(tmp_path: Path) -> None:
    """What a link outside the project folder points to is never read."""
    write(tmp_path, {"secret.yaml": "a: 1", "dig/records/.keep": ""})
    (tmp_path / "dig" / "records" / "a.yaml").symlink_to(tmp_path / "secret.yaml")
    problems = ProblemList()

    assert read_text(tmp_path / "dig", "records/a.yaml", problems) is None
    assert told_by(problems) == (
        "records/a.yaml: error N106: this is a link that leads out of the project folder, expected files inside the "
        "project folder\n"
        "      help: copy what it points to into the project folder"
    )


def test_a_linked_folder_is_not_followed(tmp_path: Path) -> None:
    """A folder behind a link is told and not listed, so that no loop can arise."""
    write(tmp_path, {"dig/records/a.yaml": "a: 1"})
    (tmp_path / "dig" / "records" / "loop").symlink_to(tmp_path / "dig" / "records")
    problems = ProblemList()

    assert listed(tmp_path / "dig", "records", (".yaml",), problems) == ("records/a.yaml",)
    assert "error N106: this is a link to a folder" in told_by(problems)


def test_a_huge_file_is_not_read(tmp_path: Path) -> None:
    """A file above the bound is refused before it is read."""
    write(tmp_path, {"records/a.yaml": "a: 1"})
    problems = ProblemList()

    assert read_text(tmp_path, "records/a.yaml", problems, at_most_bytes=3) is None
    assert "error N107" in told_by(problems)


def test_a_project_reached_through_a_link_is_read(tmp_path: Path) -> None:
    """The project folder itself may be a link."""
    write(tmp_path, {"dig/records/a.yaml": "a: 1"})
    (tmp_path / "link").symlink_to(tmp_path / "dig")
    source = read_text(tmp_path / "link", "records/a.yaml", ProblemList())

    assert source is not None
    assert source.text == "a: 1"
