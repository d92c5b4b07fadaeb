"""The same project gives the same bytes whatever the language, clock, seed, line ends and folder of the machine."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from narrate.pipeline.begin import begin

RUN = [sys.executable, "-c", "from narrate.cli import main; main()"]
MACHINES = {
    "turkish, far east": {"LC_ALL": "tr_TR.UTF-8", "TZ": "Pacific/Kiritimati", "PYTHONHASHSEED": "1"},
    "no language, no utf-8 mode, old": {
        "LC_ALL": "C", "PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0", "PYTHONHASHSEED": "2", "TZ": "UTC+12",
        "SOURCE_DATE_EPOCH": "0",
    },
}  # fmt: skip


def _told(folder: Path, **variables: str) -> dict[str, bytes]:
    environment = {k: v for k, v in os.environ.items() if not k.startswith(("LC_", "LANG", "PYTHON"))} | variables
    for order in (["tell"], ["report", "--to", "word"], ["deposit"], ["measure"]):
        done = subprocess.run([*RUN, order[0], str(folder), *order[1:]], env=environment, capture_output=True)
        assert done.returncode == 0, done.stderr.decode("utf-8", "replace")
    made = (*(folder / "out").rglob("*"), *(folder / "narratives").rglob("*"))
    # What a run leaves for the next one holds times of files.
    kept = [path for path in made if path.is_file() and not path.name.startswith(".narrate-")]
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in kept}


@pytest.fixture(scope="module")
def plain(tmp_path_factory: pytest.TempPathFactory) -> dict[str, bytes]:
    folder = tmp_path_factory.mktemp("plain") / "dig"
    begin(folder)
    return _told(folder)


def _differing(one: dict[str, bytes], other: dict[str, bytes]) -> list[str]:
    return sorted(name for name in one.keys() | other.keys() if one.get(name) != other.get(name))


@pytest.mark.parametrize("machine", sorted(MACHINES))
def test_the_machine_changes_no_byte(plain: dict[str, bytes], tmp_path: Path, machine: str) -> None:
    """Language, time zone, hash seed and folder change no byte of sites, drafts, section, package and tables."""
    folder = tmp_path / "été 掘 dig"
    begin(folder)

    assert _differing(plain, _told(folder, **MACHINES[machine])) == []


def test_line_ends_of_windows_change_no_word(plain: dict[str, bytes], tmp_path: Path) -> None:
    """Records and sheets with line ends of Windows are told in the same words; only copies of the sheets differ."""
    folder = tmp_path / "dig"
    begin(folder)
    for path in folder.rglob("*.*"):
        if path.is_file():
            path.write_bytes(path.read_bytes().replace(b"\n", b"\r\n"))
    told = _told(folder)

    assert [name for name in _differing(plain, told) if not name.startswith("out/deposit/")] == []
