"""Files and folders put in place whole or not at all."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from narrate.files import Busy, alone, leftovers, put_back, write, write_folder, write_in_pieces


def test_a_file_is_written_with_the_folders_it_needs(tmp_path: Path) -> None:
    """A file is written with the folders it needs, and nothing is left beside it."""
    write(tmp_path / "a" / "b.txt", "é\n")

    assert (tmp_path / "a" / "b.txt").read_bytes() == "é\n".encode()
    assert [path.name for path in (tmp_path / "a").iterdir()] == ["b.txt"]


def test_a_file_that_holds_the_same_is_left_alone(tmp_path: Path) -> None:
    """A file that holds the same is left alone, to its time."""
    path = tmp_path / "a.txt"
    path.write_text("same")
    os.utime(path, (1, 1))

    write(path, "same")

    assert path.stat().st_mtime == 1


def test_a_write_that_fails_leaves_what_stood_there(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A write that fails leaves what stood there, and no piece of the new file."""
    path = tmp_path / "a.txt"
    path.write_text("before")

    def full(self: Path, raw: bytes) -> int:
        with open(self, "wb") as file:
            file.write(raw[:2])
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(Path, "write_bytes", full)
    with pytest.raises(OSError, match="No space left"):
        write(path, "after")

    assert path.read_text() == "before"
    assert os.listdir(tmp_path) == ["a.txt"]


def test_a_name_as_long_as_the_system_allows_is_written(tmp_path: Path) -> None:
    """A name as long as the system allows is written."""
    path = tmp_path / ("n" * 255)

    write(path, "x")

    assert path.read_text() == "x"


@pytest.mark.parametrize("at_once", [True, False], ids=["in one step", "in two steps"])
def test_a_folder_takes_the_place_of_another(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, at_once: bool) -> None:
    """A folder takes the place of another as a whole: no file of before is among the new ones."""
    if not at_once:
        monkeypatch.setattr(sys, "platform", "other")
    target = tmp_path / "package"
    write_folder(target, {"a.txt": b"1", "deep/b.txt": b"2"})

    write_folder(target, {"c.txt": b"3"})

    assert {p.relative_to(tmp_path).as_posix() for p in tmp_path.rglob("*")} == {"package", "package/c.txt"}


def test_a_folder_lost_between_two_steps_comes_back(tmp_path: Path) -> None:
    """A folder that a dead run had moved aside comes back."""
    (tmp_path / ".package.before").mkdir()
    (tmp_path / ".package.before" / "a.txt").write_text("1")

    put_back(tmp_path / "package")

    assert (tmp_path / "package" / "a.txt").read_text() == "1"
    assert not (tmp_path / ".package.before").exists()


def test_leftovers_are_not_looked_for_through_links(tmp_path: Path) -> None:
    """What a dead run left is found, though not through a link that leads elsewhere."""
    elsewhere, folder = tmp_path / "elsewhere", tmp_path / "out"
    elsewhere.mkdir()
    folder.mkdir()
    (elsewhere / ".1.unfinished").write_text("")
    (folder / ".2.unfinished").write_text("")
    (folder / "link").symlink_to(elsewhere)

    assert leftovers(folder) == (folder / ".2.unfinished",)


def test_a_second_run_is_refused_until_the_first_ends(tmp_path: Path) -> None:
    """A second run is refused until the first has ended."""
    with alone(tmp_path), pytest.raises(Busy), alone(tmp_path):
        pass

    with alone(tmp_path):
        pass


def test_a_run_that_was_killed_holds_nothing(tmp_path: Path) -> None:
    """A run that was killed holds nothing any more."""
    holds = f"""
import pathlib, time
from narrate.files import alone
with alone(pathlib.Path({str(tmp_path)!r})):
    print("held", flush=True)
    time.sleep(60)
"""
    with subprocess.Popen([sys.executable, "-c", holds], stdout=subprocess.PIPE, text=True) as run:
        assert run.stdout is not None
        assert run.stdout.readline() == "held\n"
        with pytest.raises(Busy), alone(tmp_path):
            pass
        run.kill()

    with alone(tmp_path):
        pass


def test_a_long_text_is_written_as_it_comes(tmp_path: Path) -> None:
    """What comes in pieces is written whole, and left alone where it says the same again."""
    path = tmp_path / "a" / "b.txt"
    write_in_pieces(path, iter([b"\xc3", b"\xa9\n"]))
    os.utime(path, (1, 1))
    write_in_pieces(path, iter([b"", "é\n".encode()]))

    assert path.read_bytes() == "é\n".encode()
    assert path.stat().st_mtime == 1
    assert os.listdir(path.parent) == ["b.txt"]


def test_a_long_text_cut_short_leaves_what_stood_there(tmp_path: Path) -> None:
    """Where the pieces end in a fault, what stood there stays, and nothing lies beside it."""
    path = tmp_path / "a.txt"
    path.write_text("before")

    def pieces() -> Iterator[bytes]:
        yield b"af"
        raise OSError(28, "No space left on device")

    with pytest.raises(OSError, match="No space left"):
        write_in_pieces(path, pieces())

    assert path.read_text() == "before"
    assert os.listdir(tmp_path) == ["a.txt"]
