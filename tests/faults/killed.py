"""
Runs killed at random moments, or out of room on the disk, and what is left of the project then.

    python -m tests.faults.killed --times 200 --seed 1

Half of the runs are killed by the clock, wherever they are; half in the middle of a write, with half of its bytes on
the disk. Each begins from a told project in which a count was changed and the analyst has a sentence of her own.
"""

from __future__ import annotations

import argparse
import errno
import os
import random
import shutil
import signal
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path

from narrate.pipeline.begin import begin
from narrate.pipeline.deposit import deposit
from narrate.pipeline.report import report
from narrate.pipeline.tell import tell

ROOT = Path(__file__).parents[2]
COMMANDS: Mapping[str, Callable[[Path], object]] = {
    "tell": lambda folder: tell(folder, version="test"),
    "report": lambda folder: report(folder, version="test", medium="markdown"),
    "deposit": lambda folder: deposit(folder, version="test", bag=True),
}
HERS = "\nThe ash was still loose when it was lifted.\n"


@dataclass(frozen=True, slots=True, kw_only=True)
class Trouble:
    """What a killed run left wrong."""

    when: str
    path: str
    what: str


def killed_at_random(
    told: Path, command: str, *, times: int, seed: int, scratch: Path, is_disk_full: bool = False
) -> list[Trouble]:
    """
    Kills a command again and again, and looks each time.

    told:          a project folder from `begin`, told; it is copied and stays as it is.
    is_disk_full:  no run is killed; each finds the disk full in the middle of a write, and every write after it.
    scratch:       a folder for the copies.
    """
    chance = random.Random(f"{command} {seed}")
    COMMANDS[command](told)
    before = scratch / "before"
    shutil.copytree(told, before)
    _edit(before)
    after = scratch / "after"
    shutil.copytree(before, after)
    started = time.monotonic()
    writes = _run(after, command, "none")
    took = time.monotonic() - started
    troubles: list[Trouble] = []
    for number in range(times):
        tried = scratch / "tried"
        shutil.copytree(before, tried)
        if is_disk_full:
            at = f"full {chance.randrange(writes)}"
            _run(tried, command, at)
        elif number % 2:
            at = f"write {chance.randrange(writes)}"
            _run(tried, command, at)
        else:
            seconds = chance.uniform(0, took)
            at = f"{seconds:.3f} s"
            _run(tried, command, "none", seconds)
        troubles += _seen(tried, _content(before), _content(after), at)
        COMMANDS[command](tried)
        troubles += _differs(_content(tried, hidden=True), _content(after, hidden=True), at)
        shutil.rmtree(tried)
    return troubles


def _edit(folder: Path) -> None:
    sheet = folder / "counts" / "first-sheet.csv"
    sheet.write_text(sheet.read_text(encoding="utf-8").replace("cupule,42", "cupule,142"), encoding="utf-8")
    for audience in ("report", "public"):
        path = folder / "narratives" / audience / "C1.md"
        path.write_text(path.read_text(encoding="utf-8") + HERS, encoding="utf-8")


def _run(folder: Path, command: str, write: str, seconds: float | None = None) -> int:
    """Runs a command in a process of its own, killed at a write or after seconds; gives how often it wrote."""
    order = [sys.executable, "-m", "tests.faults.killed", "--one", command, str(folder), "--at", write]
    with subprocess.Popen(order, cwd=ROOT, stdout=subprocess.PIPE, text=True) as run:
        try:
            said, _ = run.communicate(timeout=seconds)
        except subprocess.TimeoutExpired:
            run.kill()
            said, _ = run.communicate()
    if run.returncode not in (0, -signal.SIGKILL):
        raise RuntimeError(f"{command} ended by itself with {run.returncode}")
    return int(said.split()[-1]) if said.split() else 0


def _one(folder: Path, command: str, at: str) -> None:
    """The process that is cut short: it counts what it writes, and ends in the middle of the write that is named."""
    count = 0
    kind, _, which = at.partition(" ")
    whole = Path.write_bytes

    def write_bytes(self: Path, raw: bytes) -> int:
        nonlocal count
        if kind == "write" and count == int(which):
            whole(self, raw[: len(raw) // 2])
            os.kill(os.getpid(), signal.SIGKILL)
        if kind == "full" and count >= int(which):
            whole(self, raw[: len(raw) // 2])
            raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))
        count += 1
        return whole(self, raw)

    Path.write_bytes = write_bytes  # type: ignore[method-assign]
    COMMANDS[command](folder)
    print(count)


def _content(folder: Path, *, hidden: bool = False) -> dict[str, bytes]:
    """Every file that somebody would look at; with hidden ones, all but the lists of times, never alike."""
    found = {}
    for path in sorted(folder.rglob("*")):
        name = path.relative_to(folder)
        is_begun = any(part.endswith(".unfinished") for part in name.parts)
        is_list = path.name.startswith((".narrate-told", ".narrate-pages-", ".narrate-judged", ".narrate-words", ".narrate-claims"))
        if path.is_file() and not is_list and (hidden or not is_begun):
            found[name.as_posix()] = path.read_bytes()
    return found


def _seen(tried: Path, before: Mapping[str, bytes], after: Mapping[str, bytes], at: str) -> list[Trouble]:
    """Every file is as it was before or as the run would have left it: nothing half, nothing lost."""
    found = _content(tried)
    troubles = []
    for name in sorted(before.keys() | after.keys() | found.keys()):
        allowed = [state.get(name) for state in (before, after)]
        is_list = name.endswith(".narrate-site.json")  # names what stood there and what is coming
        if found.get(name) not in allowed and not (is_list and found.get(name, b"").endswith(b"}\n")):
            troubles.append(Trouble(when=at, path=name, what="is neither as before nor as after"))
    if HERS.strip().encode() not in found["narratives/report/C1.md"]:
        troubles.append(Trouble(when=at, path="narratives/report/C1.md", what="has lost her sentence"))
    return troubles


def _differs(found: Mapping[str, bytes], wanted: Mapping[str, bytes], at: str) -> list[Trouble]:
    names = sorted(name for name in found.keys() | wanted.keys() if found.get(name) != wanted.get(name))
    return [Trouble(when=at, path=name, what="differs after the next run") for name in names]


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--times", type=int, default=200)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--one", nargs=2, metavar=("COMMAND", "FOLDER"), help="for the process that is killed")
    parser.add_argument("--at", default="none")
    parser.add_argument("--full", action="store_true", help="let each run find the disk full, killing none")
    asked = parser.parse_args()
    if asked.one:
        _one(Path(asked.one[1]), asked.one[0], asked.at)
        return
    with tempfile.TemporaryDirectory() as scratch:
        told = Path(scratch, "dig")
        begin(told)
        tell(told, version="test")
        share = -(-asked.times // len(COMMANDS))
        for command in COMMANDS:
            troubles = killed_at_random(
                told,
                command,
                times=share,
                seed=asked.seed,
                scratch=Path(scratch, command),
                is_disk_full=asked.full,
            )
            print(f"{command}: cut short {share} times, {len(troubles)} troubles")
            for trouble in troubles:
                print(f"  {trouble.when}: {trouble.path} {trouble.what}")


if __name__ == "__main__":
    main()
