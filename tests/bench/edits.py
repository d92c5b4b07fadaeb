"""
A project edited at random again and again: telling it each time leaves what a fresh build would.

    OMP_NUM_THREADS=1 python -m tests.bench.edits --times 500 --seed 1
    OMP_NUM_THREADS=1 python -m tests.bench.edits --times 20 --samples 60

Each round edits, adds, renames or deletes something, or nothing; tells the project as a person would, on what the last
round left; and compares every byte of `out/` and of the drafts with a build of the same files in an empty folder. The
project is the one that `narrate begin` lays out, or an invented one of so many samples; 40 and more are told by two
processes.
"""

from __future__ import annotations

import argparse
import random
import shutil
import tempfile
from collections.abc import Callable, Mapping
from pathlib import Path

from narrate.pipeline.begin import begin
from narrate.pipeline.tell import tell
from narrate.pipeline.unchanged import as_told_before
from tests.bench.synthetic import write_project

NEW = ("Diospyros virginiana", "Helianthus annuus", "Rhus sp.", "Phytolacca americana", "Sambucus sp.", "Vitis sp.")
Edit = Callable[[Path, random.Random], None]


def differences(scratch: Path, *, times: int, seed: int, samples: int = 0) -> tuple[list[str], int]:
    """
    Files that came out otherwise than in a fresh build, with the edit before; and how many runs were not needed.

    An edit that makes an error ends it and counts as a difference: the edits here are made not to.

    samples:  of an invented project; 0 takes the one that `narrate begin` lays out.
    """
    draw = random.Random(seed)
    dig = scratch / "dig"
    if samples:
        write_project(dig, samples)
    else:
        begin(dig)
    tell(dig, version="test")
    found, spared = [], 0
    for number in range(times):
        name = draw.choice(sorted(EDITS))
        EDITS[name](dig, draw)
        fresh = scratch / "fresh"
        shutil.rmtree(fresh, ignore_errors=True)
        shutil.copytree(dig, fresh, ignore=shutil.ignore_patterns("out"))
        if as_told_before(dig, (), "test") is None:
            tell(dig, version="test")
        else:
            spared += 1
        if not tell(fresh, version="test").is_written:
            found.append(f"{number}, {name}: made an error, so that nothing was built")
            break
        ours, wanted = _content(dig), _content(fresh)
        found += [
            f"{number}, {name}: {path}"
            for path in sorted(ours.keys() | wanted.keys())
            if ours.get(path) != wanted.get(path)
        ]
    return found, spared


def _content(folder: Path) -> dict[str, bytes]:
    # What a run leaves for the next one is its own affair.
    paths = (path for path in folder.rglob("*") if path.is_file() and not path.name.startswith(".narrate-"))
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in paths}


def _changed(path: Path, change: Callable[[list[str]], list[str]]) -> None:
    path.write_text("\n".join(change(path.read_text(encoding="utf-8").splitlines())) + "\n", encoding="utf-8")


def _a_count(folder: Path, draw: random.Random) -> None:
    def change(lines: list[str]) -> list[str]:
        counted = [n for n, line in enumerate(lines) if n and line.split(",")[3].isdigit()]
        at = draw.choice(counted)
        cells = lines[at].split(",")
        cells[3] = str(draw.randrange(1, 60))
        return [*lines[:at], ",".join(cells), *lines[at + 1 :]]

    _changed(_sheet(folder, draw), change)


def _a_row_more(folder: Path, draw: random.Random) -> None:
    """Of a plant that no sheet names yet, so that no row is written twice."""
    path = _sheet(folder, draw)
    lines = path.read_text(encoding="utf-8").splitlines()
    sample, _, _, _, *rest = lines[-1].split(",")
    new = next((f"{plant},seed" for plant in NEW if plant not in "".join(lines)), "")
    if not new:
        return
    path.write_text("\n".join([*lines, ",".join([sample, new, "3", *[""] * len(rest)])]) + "\n", encoding="utf-8")


def _a_row_fewer(folder: Path, draw: random.Random) -> None:
    def change(lines: list[str]) -> list[str]:
        at = draw.randrange(1, len(lines))
        return lines if len(lines) < 4 else [*lines[:at], *lines[at + 1 :]]

    _changed(_sheet(folder, draw), change)


def _a_volume(folder: Path, draw: random.Random) -> None:
    path = draw.choice(sorted((folder / "records").glob("*.yaml")))
    text = path.read_text(encoding="utf-8")
    before = text[text.find("volume_l:") :].splitlines()[0]
    if not before.startswith("volume_l:"):
        return
    path.write_text(text.replace(before, f"volume_l: {draw.randrange(2, 20)}.5", 1), encoding="utf-8")


def _another_title(folder: Path, draw: random.Random) -> None:
    def change(lines: list[str]) -> list[str]:
        return [f"title: Dig {draw.randrange(9)}" if line.startswith("title:") else line for line in lines]

    _changed(folder / "project.yaml", change)


def _a_sheet_renamed(folder: Path, draw: random.Random) -> None:
    _sheet(folder, draw).rename(folder / "counts" / f"sheet-{draw.randrange(1000)}.csv")


def _records_renamed(folder: Path, draw: random.Random) -> None:
    """There and back again, so that other edits find it; every line keeps its place."""
    path = draw.choice(sorted((folder / "records").glob("*.yaml")))
    path.rename(path.with_name("moved.yaml"))
    path.with_name("moved.yaml").rename(path)


def _her_words(folder: Path, draw: random.Random) -> None:
    path = draw.choice(sorted((folder / "narratives").rglob("*.md")))
    path.write_text(path.read_text(encoding="utf-8") + f"\nSeen again on day {draw.randrange(99)}.\n", encoding="utf-8")


def _a_draft_deleted(folder: Path, draw: random.Random) -> None:
    draw.choice(sorted((folder / "narratives").rglob("*.md"))).unlink()


def _a_page_deleted(folder: Path, draw: random.Random) -> None:
    draw.choice(sorted((folder / "out").rglob("*.html"))).unlink()


def _nothing(folder: Path, draw: random.Random) -> None:
    """Nobody touches anything."""


def _sheet(folder: Path, draw: random.Random) -> Path:
    return draw.choice(sorted((folder / "counts").glob("*.csv")))


EDITS: Mapping[str, Edit] = {
    "a count": _a_count,
    "a row more": _a_row_more,
    "a row fewer": _a_row_fewer,
    "a volume": _a_volume,
    "another title": _another_title,
    "a sheet renamed": _a_sheet_renamed,
    "records renamed and back": _records_renamed,
    "her words": _her_words,
    "a draft deleted": _a_draft_deleted,
    "a page deleted": _a_page_deleted,
    "nothing": _nothing,
}


def main() -> None:
    asked = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    asked.add_argument("--times", type=int, default=500)
    asked.add_argument("--seed", type=int, default=1)
    asked.add_argument("--samples", type=int, default=0)
    options = asked.parse_args()
    with tempfile.TemporaryDirectory() as scratch:
        found, spared = differences(Path(scratch), times=options.times, seed=options.seed, samples=options.samples)
    print(f"{options.times} edits, {spared} runs not needed, {len(found)} files otherwise than in a fresh build")
    print("\n".join(found))


if __name__ == "__main__":
    main()
