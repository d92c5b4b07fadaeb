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
import re
import shutil
import sys
import tempfile
from collections.abc import Callable, Mapping
from pathlib import Path

from narrate.pipeline.begin import begin
from narrate.pipeline.tell import tell
from narrate.pipeline.unchanged import as_told_before
from tests.bench.synthetic import DEPOSITS, KINDS, SECURITIES, write_project

EXAMPLE = Path(__file__).parents[2] / "example_project"
FACTS = {"kind": KINDS, "deposit": DEPOSITS, "security": SECURITIES}
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
        if number and number % 25 == 0:
            print(f"{number} of {times}: {len(found)} files otherwise, {spared} not needed", file=sys.stderr, flush=True)
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


def _a_sentence_gone(folder: Path, draw: random.Random) -> None:
    """She strikes a line of a draft, or writes another word into it."""
    path = draw.choice(sorted((folder / "narratives").rglob("*.md")))
    lines = path.read_text(encoding="utf-8").split("\n")
    hers = [n for n, line in enumerate(lines) if line.endswith("-->") and " " in line and not line.startswith("<!--")]
    if not hers:
        return
    at = draw.choice(hers)
    lines[at : at + 1] = [] if draw.random() < 0.5 else [lines[at].replace(" the ", " this ", 1)]
    path.write_text("\n".join(lines), encoding="utf-8")


def _a_fact(folder: Path, draw: random.Random) -> None:
    """What a record says of a context: its kind, its deposit or how well it was sealed."""

    def change(lines: list[str]) -> list[str]:
        named = [n for n, line in enumerate(lines) if line.strip().partition(":")[0] in FACTS]
        at = draw.choice(named)
        key = lines[at].partition(":")[0]
        return [*lines[:at], f"{key}: {draw.choice(FACTS[key.strip()])}", *lines[at + 1 :]]

    _changed(_records(folder, draw), change)


def _a_sample_renamed(folder: Path, draw: random.Random) -> None:
    old, new = draw.choice(_ids(folder, "samples:")), f"T{draw.randrange(100000)}"
    for path in (*(folder / "records").glob("*.yaml"), *(folder / "counts").glob("*.csv")):
        text = path.read_text(encoding="utf-8")
        path.write_text(re.sub(rf"^(  - id: )?{old}(?=[,\n])", rf"\g<1>{new}", text, flags=re.M), encoding="utf-8")


def _a_context_renamed(folder: Path, draw: random.Random) -> None:
    """Her drafts of the old name stay where they are."""
    old, new = draw.choice(_ids(folder, "contexts:")), f"K{draw.randrange(100000)}"
    for path in (*(folder / "records").glob("*.yaml"), folder / "project.yaml"):
        text = path.read_text(encoding="utf-8")
        path.write_text(re.sub(rf"\b{old}\b", new, text), encoding="utf-8")


def _a_sample_gone(folder: Path, draw: random.Random) -> None:
    ids = _ids(folder, "samples:")
    if len(ids) < 8:
        return
    gone = draw.choice(ids)
    for path in (folder / "records").glob("*.yaml"):
        text = path.read_text(encoding="utf-8")
        path.write_text(re.sub(rf"^  - id: {gone}\n(?:    .*\n)*", "", text, flags=re.M), encoding="utf-8")
    for path in (folder / "counts").glob("*.csv"):
        _changed(path, lambda lines: [line for line in lines if not line.startswith(f"{gone},")])


def _a_sample_more(folder: Path, draw: random.Random) -> None:
    """One more of a context that has one: what is written of it is written again under a new id."""
    old, new = draw.choice(_ids(folder, "samples:")), f"N{draw.randrange(100000)}"
    for path in (folder / "records").glob("*.yaml"):
        text = path.read_text(encoding="utf-8")
        block = re.search(rf"^  - id: {old}\n(?:    .*\n)*", text, flags=re.M)
        if block:
            path.write_text(text + block[0].replace(f"id: {old}", f"id: {new}"), encoding="utf-8")
    for path in (folder / "counts").glob("*.csv"):
        _changed(
            path, lambda lines: [*lines, *(new + line[len(old) :] for line in lines if line.startswith(f"{old},"))]
        )


def _another_style(folder: Path, draw: random.Random) -> None:
    _one_line(folder, "style:", draw.choice(("{units: L}", "{era: cal CE}", "{thousands: space, dash: hyphen}", "{}")))


def _another_phase_name(folder: Path, draw: random.Random) -> None:
    path = folder / "project.yaml"
    text = path.read_text(encoding="utf-8")
    path.write_text(re.sub(r"(id: early, name: )[^,]*", rf"\g<1>Hamlet {draw.randrange(9)}", text), encoding="utf-8")


def _another_secret(folder: Path, draw: random.Random) -> None:
    """Another context is kept from the public, or none is."""
    kept = draw.choice(("", draw.choice(_ids(folder, "contexts:"))))
    path = folder / "project.yaml"
    if "restricted_contexts: [" in (text := path.read_text(encoding="utf-8")):
        path.write_text(
            re.sub(r"restricted_contexts: \[.*?\]", f"restricted_contexts: [{kept}]", text), encoding="utf-8"
        )
    else:
        _one_line(folder, "disclosure:", f"{{restricted_contexts: [{kept}], restricted_fields: [location]}}")


def _a_rule_of_its_own(folder: Path, draw: random.Random) -> None:
    """A rule and a statement of the project come or go."""
    own = folder / "packs"
    if own.exists():
        shutil.rmtree(own)
    else:
        shutil.copytree(EXAMPLE / "packs", own)


def _one_line(folder: Path, key: str, said: str) -> None:
    def change(lines: list[str]) -> list[str]:
        return [*(line for line in lines if not line.startswith(key)), f"{key} {said}"]

    _changed(folder / "project.yaml", change)


def _records(folder: Path, draw: random.Random) -> Path:
    return draw.choice(sorted((folder / "records").glob("*.yaml")))


def _ids(folder: Path, what: str) -> list[str]:
    """Ids of all contexts or samples, in the order of the files."""
    found, under = [], ""
    for path in sorted((folder / "records").glob("*.yaml")):
        for line in path.read_text(encoding="utf-8").splitlines():
            if line.endswith("s:") and not line.startswith(" "):
                under = line
            elif line.startswith("  - id: ") and under == what:
                found.append(line.removeprefix("  - id: ").split(" ")[0])
    return found


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
    "a sentence gone": _a_sentence_gone,
    "a fact": _a_fact,
    "a sample renamed": _a_sample_renamed,
    "a context renamed": _a_context_renamed,
    "a sample gone": _a_sample_gone,
    "a sample more": _a_sample_more,
    "another style": _another_style,
    "another phase name": _another_phase_name,
    "another secret": _another_secret,
    "a rule of its own": _a_rule_of_its_own,
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
