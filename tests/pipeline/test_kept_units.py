"""What a run leaves of single units is believed by the next one only while nothing speaks against it."""

from __future__ import annotations

import json
import os
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from narrate.judging.kept_units import KeptUnits
from narrate.pipeline.kept_units import JUDGED, forget_units, keep, kept_before

VALUES, LIST = f"{JUDGED}.bin", f"{JUDGED}.json"

KEY = bytes(range(16))
GROUND = "program and packs"


@pytest.fixture
def dig(tmp_path: Path) -> Path:
    folder = tmp_path / "dig"
    (folder / "out").mkdir(parents=True)
    keep(folder, GROUND, _holding(b"draws"))
    return folder


def _holding(value: bytes) -> KeptUnits:
    kept = KeptUnits()
    kept.add(KEY, value)
    return kept


def test_what_was_kept_is_found_on_the_same_ground(dig: Path) -> None:
    """The next run with the same program and packs finds it, one with others does not."""
    assert kept_before(dig, GROUND).found(KEY) == b"draws"
    assert kept_before(dig, "other packs").found(KEY) is None
    assert kept_before(dig, "").found(KEY) is None


def _a_bit(dig: Path) -> None:
    raw = bytearray((dig / "out" / VALUES).read_bytes())
    raw[-1] ^= 1
    (dig / "out" / VALUES).write_bytes(raw)


def _same_bytes_from_elsewhere(dig: Path) -> None:
    (dig / "out" / "copy").write_bytes((dig / "out" / VALUES).read_bytes())
    about = (dig / "out" / VALUES).stat()
    os.replace(dig / "out" / "copy", dig / "out" / VALUES)
    os.utime(dig / "out" / VALUES, ns=(about.st_atime_ns, about.st_mtime_ns))


def _a_link(dig: Path) -> None:
    shutil.move(dig / "out" / VALUES, dig / "elsewhere")
    (dig / "out" / VALUES).symlink_to(dig / "elsewhere")


def _deep(dig: Path) -> None:
    (dig / "out" / LIST).write_text("[" * 100_000)


def _of_another_format(dig: Path) -> None:
    said = json.loads((dig / "out" / LIST).read_text())
    (dig / "out" / LIST).write_text(json.dumps(said | {"format": "narrate judged 0"}))


DOUBTS: dict[str, Callable[[Path], object]] = {
    "a bit turned over": _a_bit,
    "the same bytes put there by somebody": _same_bytes_from_elsewhere,
    "a link": _a_link,
    "a list cut short": lambda dig: os.truncate(dig / "out" / LIST, 40),
    "a list without an end": _deep,
    "another format": _of_another_format,
    "values that are gone": lambda dig: (dig / "out" / VALUES).unlink(),
    "values cut short": lambda dig: os.truncate(dig / "out" / VALUES, 20),
}


@pytest.mark.parametrize("doubt", DOUBTS)
def test_on_any_doubt_nothing_is_believed(dig: Path, doubt: str) -> None:
    """Damaged, foreign or old: it is ignored, and what is kept next stands again."""
    DOUBTS[doubt](dig)
    assert kept_before(dig, GROUND).found(KEY) is None

    if doubt != "a link":
        keep(dig, GROUND, _holding(b"anew"))
        assert kept_before(dig, GROUND).found(KEY) == b"anew"


def test_a_copy_of_the_folder_is_judged_anew(dig: Path, tmp_path: Path) -> None:
    """What came with a folder, times and all, is not believed."""
    shutil.copytree(dig, tmp_path / "copy", copy_function=shutil.copy2)

    assert kept_before(tmp_path / "copy", GROUND).found(KEY) is None


def test_where_there_is_doubt_nothing_is_left(dig: Path) -> None:
    """A run that does not know on what ground it stood takes away what was kept."""
    keep(dig, "", _holding(b"draws"))

    assert list((dig / "out").iterdir()) == []
    forget_units(dig)
