"""A run that would find nothing changed says what the last one said, and any doubt makes it run."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from narrate.pipeline.begin import begin
from narrate.pipeline.tell import tell
from narrate.pipeline.told import Told
from narrate.pipeline.unchanged import LIST, as_told_before, marks_of, program_of, remember


@pytest.fixture(scope="module")
def told_twice(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, tuple[bool, bool], Told]:
    """The project that `begin` lays out, told twice; whether each run left a list, and what the second told."""
    folder = tmp_path_factory.mktemp("unchanged") / "dig"
    begin(folder)
    tell(folder, version="test")
    first = (folder / "out" / LIST).exists()
    told = tell(folder, version="test")
    return folder, (first, (folder / "out" / LIST).exists()), told


@pytest.fixture
def dig(told_twice: tuple[Path, tuple[bool, bool], Told], tmp_path: Path) -> Path:
    """A copy of it, with a list of its own."""
    folder = tmp_path / "dig"
    shutil.copytree(told_twice[0], folder)
    remember(folder, marks_of(folder), program_of("test", ()), told_twice[2])
    assert as_told_before(folder, (), "test") is not None
    return folder


def test_drafts_that_were_written_are_read_by_a_second_run(
    told_twice: tuple[Path, tuple[bool, bool], Told],
) -> None:
    """A run that wrote drafts leaves no list, because the next one reads them; that one leaves it."""
    assert told_twice[1] == (False, True)


def test_nothing_changed_is_told_as_before(told_twice: tuple[Path, tuple[bool, bool], Told]) -> None:
    """With nothing changed the same is told, problems and all, without a run."""
    folder, _, told = told_twice

    assert as_told_before(folder, (), "test") == told


def _edited_within_a_tick(folder: Path) -> None:
    """The same size and the same time of change."""
    path = folder / "project.yaml"
    about = path.stat()
    path.write_bytes(path.read_bytes().replace(b"e", b"a", 1))
    os.utime(path, ns=(about.st_atime_ns, about.st_mtime_ns))


_YEAR_NS = 365 * 24 * 3600 * 10**9


def _edited_with_the_clock_set_back(folder: Path) -> None:
    """The same size, and a time of change a year before anything else was written."""
    path = folder / "project.yaml"
    path.write_bytes(path.read_bytes().replace(b"e", b"a", 1))
    os.utime(path, ns=(path.stat().st_atime_ns - _YEAR_NS, path.stat().st_mtime_ns - _YEAR_NS))


def _edited_after_the_clock_was_ahead(folder: Path) -> None:
    """The list seems to be of next year: whatever is written now is older than it."""
    ahead = (folder / "out" / LIST).stat().st_mtime_ns + _YEAR_NS
    os.utime(folder / "out" / LIST, ns=(ahead, ahead))
    path = folder / "project.yaml"
    path.write_bytes(path.read_bytes().replace(b"e", b"a", 1))


def _a_pack_added(folder: Path) -> None:
    (folder / "packs").mkdir()
    (folder / "packs" / "sources.yaml").write_text("sources: []\n", encoding="utf-8")


def _a_sheet_renamed(folder: Path) -> None:
    sheet = next((folder / "counts").glob("*.csv"))
    sheet.rename(sheet.with_name("renamed.csv"))


def _damaged(folder: Path) -> None:
    path = folder / "out" / LIST
    raw = path.read_bytes()
    path.write_bytes(raw.replace(b'"claims": ', b'"claims": 1', 1))


CHANGES: dict[str, Callable[[Path], object]] = {
    "a record is edited": lambda folder: (folder / "records" / "new.yaml").write_text("samples: []\n"),
    "an edit keeps size and time": _edited_within_a_tick,
    "an edit while the clock is set back": _edited_with_the_clock_set_back,
    "an edit after the clock was ahead": _edited_after_the_clock_was_ahead,
    "a sheet is renamed": _a_sheet_renamed,
    "a sheet is deleted": lambda folder: next((folder / "counts").glob("*.csv")).unlink(),
    "a draft is edited": lambda folder: next((folder / "narratives").rglob("*.md")).write_text("Mine.\n"),
    "a pack is added": _a_pack_added,
    "a page is deleted": lambda folder: (folder / "out" / "public" / "index.html").unlink(),
    "a page is edited": lambda folder: (folder / "out" / "review" / "index.html").write_text("x"),
    "the measures are deleted": lambda folder: shutil.rmtree(folder / "out" / "measures"),
    "the list is damaged": _damaged,
    "the list is cut short": lambda folder: os.truncate(folder / "out" / LIST, 200),
    "the list is of another kind": lambda folder: (folder / "out" / LIST).write_text('[1]\n{"read": {}}'),
    "the list is gone": lambda folder: (folder / "out" / LIST).unlink(),
    "a record is a link": lambda folder: (folder / "records" / "link.yaml").symlink_to(folder / "project.yaml"),
}


@pytest.mark.parametrize("change", CHANGES)
def test_any_change_makes_it_run(dig: Path, change: str) -> None:
    """Whatever was read, written or left as a list is not as it was: the run is done."""
    CHANGES[change](dig)

    assert as_told_before(dig, (), "test") is None


def test_another_version_or_option_makes_it_run(dig: Path) -> None:
    """The list of another version, or of a run with other options, is not believed."""
    assert as_told_before(dig, (), "other") is None
    assert as_told_before(dig, ("strict",), "test") is None


def test_a_file_touched_and_not_changed_makes_nothing_run(dig: Path) -> None:
    """What a file holds decides, not its time."""
    (dig / "project.yaml").touch()

    assert as_told_before(dig, (), "test") is not None


HEAVY = ("numpy", "matplotlib", "jinja2", "markdown_it", "markupsafe", "yaml", "openpyxl", "pandas", "PIL", "docx")


@pytest.mark.parametrize("arguments", [["--help"], ["tell", "--help"]])
def test_help_loads_nothing_heavy(arguments: list[str]) -> None:
    """Help is told without any package but the one of the command line."""
    assert _loaded(arguments) == []


def test_with_nothing_changed_nothing_heavy_is_loaded(dig: Path) -> None:
    """A run that has nothing to do ends before it loads what it would work with."""
    from narrate import __version__

    tell(dig, version=__version__)

    assert _loaded(["tell", str(dig)], *HEAVY, "click") == []


def test_an_answer_without_the_command_line_is_the_same(dig: Path) -> None:
    """What is said where nothing changed is what the command line would say."""
    from narrate import __version__

    tell(dig, version=__version__)
    run = [sys.executable, "-c", "import sys; from {} import main; sys.argv = ['narrate', 'tell', {!r}]; main()"]
    said = [
        subprocess.run([*run[:2], run[2].format(module, str(dig))], capture_output=True, text=True, check=True).stdout
        for module in ("narrate.__main__", "narrate.cli")
    ]

    assert said[0] == said[1]
    assert "No problems found." in said[0]


def _loaded(arguments: list[str], *heavy: str) -> list[str]:
    """Heavy packages that a command loads."""
    code = (
        "import sys\nfrom narrate.__main__ import main\n"
        f"sys.argv = ['narrate', *{arguments!r}]\n"
        "try:\n    main()\nexcept SystemExit:\n    pass\n"
        f"print('loaded:', *[name for name in {heavy or HEAVY!r} if name in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    return done.stdout.rpartition("loaded:")[2].split()
