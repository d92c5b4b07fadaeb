"""Templates as they were compiled are kept, and believed only while everything they were made of stands."""

from __future__ import annotations

from pathlib import Path

import pytest

from narrate.web import compiled
from narrate.web.templates import environment
from narrate.web.writing import Writing


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setattr(compiled, "FOLDER", tmp_path / "kept")
    (tmp_path / "page.html").write_text('{{ "litres" | unit }} of {{ what }}', encoding="utf-8")
    return tmp_path


def filled(folder: Path, writing: Writing | None = None) -> str:
    return environment(folder, writing).get_template("page.html").render(what="<soil>")


def kept(folder: Path) -> list[Path]:
    return sorted((folder / "kept").iterdir())


def test_a_template_is_compiled_once(folder: Path) -> None:
    """The second environment takes what the first one kept."""
    first = filled(folder)
    made = [path.stat().st_mtime_ns for path in kept(folder)]

    assert filled(folder) == first == "litres of &lt;soil&gt;"
    assert [path.stat().st_mtime_ns for path in kept(folder)] == made


def test_ways_of_writing_keep_their_own(folder: Path) -> None:
    """A constant is worked out as a template is compiled, so each way of writing has a file of its own."""
    assert filled(folder) == "litres of &lt;soil&gt;"
    assert filled(folder, Writing(litre="L", litres="L")) == "L of &lt;soil&gt;"
    assert len(kept(folder)) == 2


def test_a_template_that_changed_is_compiled_anew(folder: Path) -> None:
    """The text of the template decides, not its time."""
    filled(folder)
    (folder / "page.html").write_text("{{ what }}", encoding="utf-8")

    assert filled(folder) == "&lt;soil&gt;"


@pytest.mark.parametrize("content", [b"", b"x", b"other\nx", None])
def test_a_damaged_file_is_not_believed(folder: Path, content: bytes | None) -> None:
    """What is cut, foreign or damaged is written over."""
    filled(folder)
    path = kept(folder)[0]
    path.write_bytes(path.read_bytes()[:60] if content is None else content)

    assert filled(folder) == "litres of &lt;soil&gt;"


def test_other_code_is_not_believed(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A file made with other code than now is compiled anew and takes the place of the old one."""
    filled(folder)
    before = kept(folder)[0].read_bytes()
    monkeypatch.setattr(compiled, "_code", lambda: "other")

    filled(folder)

    assert len(kept(folder)) == 1
    assert kept(folder)[0].read_bytes() != before


def test_a_folder_that_cannot_be_written_stops_nothing(folder: Path) -> None:
    """Where nothing can be kept, the template is filled all the same."""
    (folder / "kept").write_text("in the way", encoding="utf-8")

    assert filled(folder) == "litres of &lt;soil&gt;"
