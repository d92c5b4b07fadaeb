"""Runs that are cut short, stand in each other's way, or find no room: what was there before stays whole."""

from __future__ import annotations

import ctypes
import errno
import os
import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import CliRunner

from narrate.cli import commands
from narrate.deposit.claims_file import claims_json
from narrate.files import alone
from narrate.pipeline import tell as told_in
from narrate.pipeline.begin import begin
from narrate.pipeline.deposit import deposit
from narrate.pipeline.report import report
from narrate.pipeline.tell import tell
from narrate.problems import written
from tests.faults.killed import COMMANDS, Trouble, killed_at_random

BUSY = (
    "out: error N120: another run of narrate is writing here, expected one at a time; nothing was written\n"
    "      help: wait until it has ended, or end it (a preview builds too), then run this again"
)


@pytest.fixture
def dig(tmp_path: Path) -> Path:
    """A folder that `narrate begin` laid out."""
    folder = tmp_path / "dig"
    begin(folder)
    return folder


@pytest.fixture
def told(dig: Path) -> Path:
    assert tell(dig, version="test").is_written
    return dig


@pytest.fixture(scope="module")
def told_starter(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Such a folder, told once for all that only copy it."""
    folder = tmp_path_factory.mktemp("faults") / "dig"
    begin(folder)
    assert tell(folder, version="test").is_written
    return folder


@pytest.fixture
def told_copy(told_starter: Path, tmp_path: Path) -> Path:
    return Path(shutil.copytree(told_starter, tmp_path / "copied"))


def _content(folder: Path) -> dict[str, bytes]:
    return {p.relative_to(folder).as_posix(): p.read_bytes() for p in sorted(folder.rglob("*")) if p.is_file()}


def test_a_second_run_says_that_it_is_the_second(told: Path) -> None:
    """While one run writes, tell, report and deposit say so, write nothing, and go on once it has ended."""
    before = _content(told)
    with alone(told):
        refused = tell(told, version="test")
        found = [refused.problems, report(told, version="test")[1], deposit(told, version="test")[1]]

    assert refused.is_busy
    assert [[written(problem) for problem in problems] for problems in found] == [[BUSY]] * 3
    assert _content(told) == before
    assert tell(told, version="test").is_written


def test_a_narrative_saved_while_narrate_works_stays_as_it_was_saved(
    told: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """What the analyst saves in her editor while a run is under way is not written over, and the next run takes it."""
    path = next((told / "narratives" / "report").glob("[!s]*.md"))

    def saves(claims: object) -> str:
        return claims_json(claims)  # type: ignore[arg-type]

    writes = told_in.write_files

    def after_her(files):  # type: ignore[no-untyped-def]
        if path in files:
            path.write_text(path.read_text(encoding="utf-8") + "\nHer own sentence.\n", encoding="utf-8")
        return writes(files)

    monkeypatch.setattr(told_in, "write_files", after_her)
    found = tell(told, version="test")

    assert path.read_text(encoding="utf-8").endswith("\nHer own sentence.\n")
    assert [written(problem) for problem in found.problems if problem.code == "N121"] == [
        f"narratives/report/{path.name}: warning N121: the narrative was saved while narrate was at work; it is as you "
        "saved it, and the pages show it as it was before\n      help: run narrate tell again"
    ]
    monkeypatch.undo()
    tell(told, version="test")
    assert "Her own sentence." in path.read_text(encoding="utf-8")


@pytest.mark.skipif(os.name == "nt", reason="folders of Windows have no such mode")
def test_an_output_folder_that_cannot_be_written_is_a_problem(told: Path) -> None:
    """Where out/ cannot be written the run says so and changes nothing; tried as far as this user is bound by modes."""
    before = _content(told)
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(os, "replace", _refuses)
        (told / "records" / "first-samples.yaml").write_text(
            (told / "records" / "first-samples.yaml").read_text(encoding="utf-8").replace("10", "11"), encoding="utf-8"
        )
        found = tell(told, version="test")

    assert not found.is_written
    assert [problem.code for problem in found.problems if problem.severity == "error"] == ["N108"]
    after = _content(told)
    before.pop("records/first-samples.yaml"), after.pop("records/first-samples.yaml")
    assert after == before


def _refuses(*paths: object) -> None:
    raise OSError(30, "Read-only file system")


def test_a_narrative_that_goes_while_it_is_read_is_named(told: Path) -> None:
    """The run says which file went, not that the output cannot be written; the next run drafts it anew."""
    path = next((told / "narratives" / "report").glob("[!s]*.md"))

    def goes(at: Path) -> bytes:
        if at == path:
            path.unlink(missing_ok=True)
        return reads(at)

    reads = Path.read_bytes
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(Path, "read_bytes", goes)
        (told / "project.yaml").touch()
        found = tell(told, version="test")

    assert not found.is_written
    assert [written(problem) for problem in found.problems if problem.severity == "error"] == [
        f"narratives/report/{path.name}: error N101: the file cannot be opened (no such file or directory) although it "
        "could be when the run began, expected it to stay\n      help: check that it is there, and run this again"
    ]
    assert tell(told, version="test").is_written
    assert path.is_file()


@pytest.mark.skipif(os.name == "nt", reason="folders of Windows have no such mode")
@pytest.mark.parametrize(
    ("place", "says"),
    [
        ("out", "out/review' could not be written: Permission denied"),
        ("narratives/report", "narratives/report: error N108: the folder cannot be written here: Permission denied"),
    ],
)
def test_a_folder_of_a_read_only_mode_is_named(told: Path, place: str, says: str) -> None:
    """In a process that modes bind, whoever its user is; what stood there stays, and a later run goes on."""
    lost = next((told / place).glob("[!s]*.*"))
    lost.unlink()
    before = _content(told / "narratives")
    os.chmod(told / place, 0o555)
    command = [sys.executable, "-m", "narrate", "tell", str(told)]
    found = subprocess.run(command, capture_output=True, text=True, preexec_fn=_bound_by_modes, check=False)
    os.chmod(told / place, 0o755)

    assert found.returncode == 1
    assert says in found.stderr
    assert _content(told / "narratives") == before
    assert tell(told, version="test").is_written


def _bound_by_modes() -> None:
    """Before a program begins: root, too, is bound by the modes of files (Linux: CAP_DAC_OVERRIDE, 1, is dropped)."""
    if os.geteuid() == 0:
        drop_from_bounding_set, dac_override = 24, 1
        ctypes.CDLL(None).prctl(drop_from_bounding_set, dac_override, 0, 0, 0)


@pytest.mark.parametrize("command", COMMANDS)
def test_a_full_disk_leaves_everything_whole(told_copy: Path, tmp_path: Path, command: str) -> None:
    """The disk full at a random write: every file is whole, hers is untouched, and the next run ends as a fresh one."""
    scratch = tmp_path / "scratch"

    assert killed_at_random(told_copy, command, times=1, seed=3, scratch=scratch, is_disk_full=True) == []


def test_a_disk_full_among_the_pages_is_told(told: Path) -> None:
    """Where the disk is full in the middle of the pages, the run says which site, and that not all was written."""
    (told / "records" / "first-samples.yaml").write_text(
        (told / "records" / "first-samples.yaml").read_text(encoding="utf-8").replace("10", "11"), encoding="utf-8"
    )
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(Path, "write_bytes", _has_room_for(6, Path.write_bytes))
        found = CliRunner().invoke(commands, ["tell", str(told)])

    assert found.exit_code == 1
    said = found.stderr.splitlines()
    assert f"review: error N108: '{told}/out/review' could not be written: No space left on device" in said
    assert found.stdout.splitlines()[-1] == (
        "Not all was written: mend this and tell again. Every file there is whole, of this run or of the one before."
    )


def _has_room_for(files: int, write: Callable[[Path, bytes], int]) -> Callable[[Path, bytes], int]:
    written = iter(range(files))

    def written_while_there_is_room(path: Path, raw: bytes) -> int:
        if next(written, None) is None:
            raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))
        return write(path, raw)

    return written_while_there_is_room


@pytest.mark.parametrize("command", COMMANDS)
def test_a_run_killed_at_any_moment_leaves_everything_whole(told_copy: Path, tmp_path: Path, command: str) -> None:
    """Killed at random moments: every file is whole, hers is untouched, and the next run ends as a fresh one; more are
    tried by `python -m tests.faults.killed`."""
    troubles: list[Trouble] = killed_at_random(told_copy, command, times=2, seed=7, scratch=tmp_path / "scratch")

    assert troubles == []
