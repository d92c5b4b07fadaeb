"""
Damaged input by the hundred thousand: readers, rules, layouts and the merge answer with problems, never a traceback.

    python -m tests.hostile.damaged --times 100000 --seed 1

Each input is a sound file with a few damages: lines lost, doubled or exchanged, signs put in, bytes broken, values of a
kind that was not meant. An input is named by its kind and number, so that one can be tried again alone.
"""

from __future__ import annotations

import argparse
import random
import tempfile
import time
import traceback
from collections.abc import Callable, Mapping
from dataclasses import replace
from functools import cache
from pathlib import Path

from narrate.drafts.base_file import base_text, read_base
from narrate.drafts.draft_file import draft_text, read_draft
from narrate.drafts.merge import merged
from narrate.drafts.offered import Drafted
from narrate.judging.check_rules import check_rules
from narrate.judging.judge import judge
from narrate.measures.findings import find
from narrate.problems import has_errors, written
from narrate.reading.folder import read_folder
from narrate.reading.intake.take_in import take_in
from narrate.reading.pack_files import PackFolder
from narrate.reading.packs import read_packs
from tests.hostile.payloads import payloads
from tests.reading.folders import PACKS, WHOLE, packs_in, write

SIGNS = (
    *("- ", ": ", "{", "}", "[", "]", "&a ", "*a", "!!python/object:os.system ", "<<: ", "| ", "> ", "? ", "%", "@"),
    *("#", ",", ";", "\t", '"', "'", "\\", "\n", "\r\n", "\r", "null", "~", "yes", "no", "true", "0", "-1", "1e999"),
    *("NaN", ".inf", "-.inf", "9" * 400, "0x1F", "1_000", "12:30:00", "2026-13-45", "-99999", "½", "٣", "−3", "1/0"),
    *("1/3", "cf. ", "/", " indet.", "x", "+++", ">100", "<1", "c. 200", "12 (3)", "Zea mays", "kernel", "charred"),
    *("S1", "C1", "early", "valley", "items", "ratio", "[" * 300, "{a: " * 300, "é", "\u202e", "\ufeff", "\x00"),
)
SHEETS = (
    "Sample,S1,S2,S3\nContext,C1,C1,C2\nVolume (l),10,8,\nZea mays kernel,3,-,\nZea mays cupule,9,4,0\nTotal,12,4,1\n",
    "sample\ttaxon\tpart\tcount\nS1\tZea mays\tkernel\t3\nS2\tcf. Chenopodium\tseed\t+++\n",
    "Hollow\n\nTaxon;Part;S1;S2\nGRASSES;;;\nZea mays;kernel;3;x\n;cupule;12;>100\nHordeum pusillum;grain;1,5;\n",
    "ID,Litres,Zea mays kernel,Zea mays cupule,Chenopodium seed\nS1,10,3,12,5\nS2,<1,0,4,c. 200\nSum,,3,16,205\n",
)
DRAFTS = tuple(
    Drafted(
        key=f"{n:x}a", text=f"Draft {n} says {n + 3} kernels.", refs=(f"C1/{n}",), figures={f"C1/{n}": str(n + 3)},
        heading="AB"[n % 2], paragraph=n // 2,
    )
    for n in range(6)
)  # fmt: skip


def damaged(text: str, chance: random.Random) -> bytes:
    """The text with a few damages."""
    for _ in range(chance.randrange(1, 5)):
        text = chance.choice(_WAYS)(text, chance)
    raw = text.encode("utf-8", "surrogatepass")
    if chance.random() < 0.1 and raw:
        at = chance.randrange(len(raw))
        raw = raw[:at] + bytes(chance.randrange(256) for _ in range(chance.randrange(1, 4))) + raw[at:]
    if chance.random() < 0.05:
        raw = raw[: chance.randrange(len(raw) + 1)]
    return raw


def _put_in(text: str, chance: random.Random) -> str:
    at = chance.randrange(len(text) + 1)
    return text[:at] + chance.choice(SIGNS) + text[at:]


def _put_for(text: str, chance: random.Random) -> str:
    words = text.split(" ")
    words[chance.randrange(len(words))] = chance.choice(SIGNS)
    return " ".join(words)


def _put_typed(text: str, chance: random.Random) -> str:
    at = chance.randrange(len(text) + 1)
    return text[:at] + chance.choice(payloads(200))[:300] + text[at:]


def _cut(text: str, chance: random.Random) -> str:
    at = chance.randrange(len(text) + 1)
    return text[:at] + text[at + chance.randrange(1, 12) :]


def _lines(text: str, chance: random.Random) -> str:
    lines = text.splitlines(keepends=True) or [""]
    at, other = chance.randrange(len(lines)), chance.randrange(len(lines))
    match chance.randrange(4):
        case 0:
            del lines[at]
        case 1:
            lines.insert(at, lines[other])
        case 2:
            lines[at], lines[other] = lines[other], lines[at]
        case _:
            lines[at] = " " * chance.randrange(5) + lines[at].lstrip(" ")
    return "".join(lines)


_WAYS = (_put_in, _put_for, _put_typed, _cut, _lines, _lines)


def _project(folder: Path, chance: random.Random) -> None:
    """Project file, records and count sheets, read; what can be read whole is measured and judged."""
    hurt = chance.choice(sorted(WHOLE))
    project = write(folder / "dig", {**WHOLE, hurt: damaged(WHOLE[hurt], chance)})
    found = read_folder(project, shipped=PackFolder(root=folder, base="shipped"))
    _told(found.problems)
    if found.project is not None and found.packs is not None and not has_errors(found.problems):
        find(found.project, found.packs)
        judge(found.project, found.packs, replicates=5)


def _rules(folder: Path, chance: random.Random) -> None:
    """Packs, and the rules of them tried on their own examples."""
    hurt = chance.choice(sorted(PACKS))
    files = PackFolder(root=write(folder / "packs", {**{f"shipped/{p}": t for p, t in PACKS.items()}}), base="shipped")
    write(folder / "packs", {f"shipped/{hurt}": damaged(PACKS[hurt], chance)})
    packs, problems = read_packs(("valley",), shipped=files)
    _told(problems)
    if packs is not None:
        _told(check_rules(packs))


def _sheet(folder: Path, chance: random.Random) -> None:
    """A laboratory's sheet, its layout worked out; then the layout itself damaged, and obeyed."""
    sheet = folder / "sheet.csv"
    beside = folder / "sheet.csv.layout.yaml"
    beside.unlink(missing_ok=True)
    sound = chance.choice(SHEETS)
    sheet.write_bytes(damaged(sound, chance))
    taken = take_in(sheet, _packs(folder))
    _told(taken.problems)
    if taken.text:
        beside.write_bytes(damaged(taken.text, chance))
        _told(take_in(sheet, _packs(folder)).problems)


def _merge(folder: Path, chance: random.Random) -> None:
    """A narrative and its side file, damaged by hand, met by another draft."""
    first = merged(None, None, DRAFTS)
    hers = damaged(draft_text(first.file), chance).decode("utf-8", "replace")
    side = damaged(base_text(first.base), chance).decode("utf-8", "replace")
    base = read_base(side if chance.random() < 0.3 else base_text(first.base))
    kept = [one for one in DRAFTS if chance.random() < 0.8]
    now = [replace(one, figures={r: str(chance.randrange(9)) for r in one.refs}) for one in kept]
    result = merged(base, read_draft(hers), now)
    again = draft_text(result.file)
    lost = _words(hers) - _words(again) - _words(draft_text(first.file))
    if lost:
        raise AssertionError(f"words of hers are lost: {sorted(lost)[:5]}")


KINDS: Mapping[str, Callable[[Path, random.Random], None]] = {
    "project": _project,
    "rules": _rules,
    "sheet": _sheet,
    "merge": _merge,
}


def tried(kind: str, number: int, seed: int, folder: Path) -> str:
    """Tries one input; gives the traceback, or nothing where there is none."""
    try:
        KINDS[kind](folder, random.Random(f"{kind} {number} {seed}"))
    except Exception:
        return traceback.format_exc(limit=-4)
    return ""


def _told(problems: object) -> None:
    for problem in problems:  # type: ignore[attr-defined]
        written(problem)


def _words(text: str) -> set[str]:
    return {word for word in text.split() if word.isalnum()}


@cache
def _packs(folder: Path):  # type: ignore[no-untyped-def]
    packs, problems = read_packs(("valley",), shipped=packs_in(folder / "sound"))
    assert packs is not None, problems
    return packs


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--times", type=int, default=100_000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--kinds", nargs="*", default=sorted(KINDS), choices=sorted(KINDS))
    asked = parser.parse_args()
    share = -(-asked.times // len(asked.kinds))
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        packs_in(folder)
        for kind in asked.kinds:
            started, faults = time.monotonic(), 0
            for number in range(share):
                fault = tried(kind, number, asked.seed, folder)
                if fault:
                    faults += 1
                    print(f"{kind} {number}:\n{fault}", flush=True)
            print(f"{kind}: {share} inputs, {faults} faults, {time.monotonic() - started:.0f} s", flush=True)


if __name__ == "__main__":
    main()
