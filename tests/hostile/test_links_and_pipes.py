"""Links, pipes and endless numbers in a project: nothing outside the folder is read or written, and nothing hangs."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from narrate.files import _unfinished, write, write_in_pieces
from narrate.pipeline.begin import begin
from narrate.pipeline.intake import intake
from narrate.pipeline.tell import tell


@pytest.fixture
def dig(tmp_path: Path) -> Path:
    begin(tmp_path / "dig")
    return tmp_path / "dig"


@pytest.mark.parametrize("how", [write, lambda path, raw: write_in_pieces(path, [raw])])
def test_nothing_is_written_through_a_link_that_waits_where_a_file_is_begun(  # type: ignore[no-untyped-def]
    tmp_path: Path, how
) -> None:
    (tmp_path / "outside").write_text("as it was", encoding="utf-8")
    (tmp_path / "dig").mkdir()
    target = tmp_path / "dig" / "C1.md"
    _unfinished(target).symlink_to(tmp_path / "outside")

    how(target, b"new")

    assert (tmp_path / "outside").read_text(encoding="utf-8") == "as it was"
    assert target.read_bytes() == b"new" and not target.is_symlink()


@pytest.mark.parametrize(
    "place", ["narratives", "narratives/report", "narratives/report/C1.md", "out", "out/measures"]
)
def test_a_link_among_what_is_written_is_refused_with_its_place(dig: Path, tmp_path: Path, place: str) -> None:
    (tmp_path / "outside").mkdir()
    (tmp_path / "outside" / "secret.md").write_text("A secret.\n", encoding="utf-8")
    (dig / place).parent.mkdir(parents=True, exist_ok=True)
    (dig / place).symlink_to(tmp_path / "outside" / "secret.md" if place.endswith(".md") else tmp_path / "outside")

    told = tell(dig, version="test")

    assert not told.is_written
    assert any(problem.code == "N108" and problem.place.path == place for problem in told.problems)
    assert sorted(path.name for path in (tmp_path / "outside").iterdir()) == ["secret.md"]


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="the system has no named pipes")
@pytest.mark.parametrize("place", ["notes", "records/more.yaml", "counts/more.csv"])
def test_a_pipe_in_the_project_is_never_waited_for(dig: Path, place: str) -> None:
    os.mkfifo(dig / place)

    run = subprocess.run(
        [sys.executable, "-m", "narrate", "tell", str(dig)], capture_output=True, timeout=120, check=False
    )

    assert run.returncode in (0, 1) and b"Traceback" not in run.stderr


@pytest.mark.parametrize("volume", ["1e308", "1e30", "9" * 40])
def test_litres_beyond_all_measure_are_refused(dig: Path, volume: str) -> None:
    records = next((dig / "records").glob("*.yaml"))
    text = records.read_text(encoding="utf-8")
    begun = text.index("volume_l: ")
    records.write_text(text[:begun] + f"volume_l: {volume} #" + text[begun + 10 :], encoding="utf-8")

    told = tell(dig, version="test")

    assert not told.is_written and any("volume_l" in problem.message for problem in told.problems)


@pytest.mark.parametrize("linked", ["lab.csv", "lab.csv.layout.yaml"])
def test_a_sheet_of_the_laboratory_is_not_read_through_a_link(dig: Path, tmp_path: Path, linked: str) -> None:
    outside = tmp_path / "outside"
    outside.mkdir()
    (outside / "lab.csv").write_text("ID,Vitis seed,Rubus seed\nS1,777,5\n", encoding="utf-8")
    intake(outside / "lab.csv", None)
    for name in ("lab.csv", "lab.csv.layout.yaml"):
        if name == linked:
            (dig / "counts" / name).symlink_to(outside / name)
        else:
            (dig / "counts" / name).write_bytes((outside / name).read_bytes())

    told = tell(dig, version="test")

    assert not told.is_written
    assert [p.place.path for p in told.problems if p.code == "N106"] == [f"counts/{linked}"]
