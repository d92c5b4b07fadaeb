"""What of `claims.json` is taken over from the last run is what would be written anew."""

from __future__ import annotations

import os
import random
import shutil
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from narrate.deposit.argument_texts import ArgumentTexts
from narrate.deposit.claims_file import claims_json
from narrate.judging.judge import judge
from narrate.model.claims import Claims
from narrate.model.packs import Packs
from narrate.pipeline.kept_claims import LIST, write_claims
from narrate.reading.packs import read_packs
from tests.judging.edited import EDITS, a_small_dig

GROUND = "program and packs"


@pytest.fixture(scope="module")
def packs() -> Packs:
    """The packs of the East with every sixth rule."""
    whole = read_packs(("eastern-north-america",))[0]
    assert whole is not None
    return replace(whole, rules=dict(list(whole.rules.items())[::6]))


@pytest.fixture(scope="module")
def claims(packs: Packs) -> Claims:
    return judge(a_small_dig(random.Random(1)), packs, replicates=5)


def test_after_edits_the_file_is_that_of_a_fresh_run(packs: Packs, tmp_path: Path) -> None:
    """Edits of all sorts, and other claims cited: every byte is the same, whatever was taken over."""
    draw = random.Random(4)
    project, cited = a_small_dig(draw), set()
    for _ in range(25):
        name = draw.choice(sorted(EDITS))
        project = EDITS[name](project, draw)
        claims = judge(project, packs, replicates=5)
        cited ^= {draw.choice([claim.id for claim in claims])}
        write_claims(tmp_path, claims, cited, GROUND)

        assert (tmp_path / "out" / "claims.json").read_text(encoding="utf-8") == claims_json(claims, cited), name


def test_rows_that_move_in_a_sheet_are_written_anew(packs: Packs, claims: Claims, tmp_path: Path) -> None:
    """A line put in above others changes nothing that is judged, and the lines that the file names."""
    project = a_small_dig(random.Random(1))
    write_claims(tmp_path, claims, (), GROUND)
    lower = [replace(row, place=replace(row.place, line=row.place.line + 1)) for row in project.counts]
    moved = judge(replace(project, counts=tuple(lower)), packs, replicates=5)
    write_claims(tmp_path, moved, (), GROUND)

    assert (tmp_path / "out" / "claims.json").read_text(encoding="utf-8") == claims_json(moved)


def _a_letter(out: Path) -> None:
    """A letter turned over, and the list left true of the times and the size."""
    path, before = out / "claims.json", (out / "claims.json").stat()
    raw = bytearray(path.read_bytes())
    raw[len(raw) // 2] ^= 1
    with path.open("r+b") as file:
        file.write(raw)
    os.utime(path, ns=(before.st_atime_ns, before.st_mtime_ns))
    text = (out / LIST).read_text()
    head, _, body = text.partition("\n")
    body = body.replace(str(before.st_ctime_ns), str(path.stat().st_ctime_ns))
    (out / LIST).write_text(head.replace(_sum(text.partition("\n")[2]), _sum(body)) + "\n" + body)


def _sum(body: str) -> str:
    from narrate.deposit.claims_pieces import sum_of

    return sum_of(body.encode())


def _a_copy(out: Path) -> None:
    shutil.copytree(out, out.parent / "copy", copy_function=shutil.copy2)
    shutil.rmtree(out)
    os.replace(out.parent / "copy", out)


DOUBTS: dict[str, Callable[[Path], object]] = {
    "another letter": _a_letter,
    "a copy of the folder": _a_copy,
    "a list cut short": lambda out: os.truncate(out / LIST, 100),
    "no list": lambda out: (out / LIST).unlink(),
    "no file": lambda out: (out / "claims.json").unlink(),
    "a file cut short": lambda out: os.truncate(out / "claims.json", 1000),
}


@pytest.mark.parametrize("doubt", DOUBTS)
def test_on_any_doubt_all_is_written_anew(claims: Claims, tmp_path: Path, doubt: str) -> None:
    """A damaged or foreign file, or a damaged list, is not taken over."""
    write_claims(tmp_path, claims, (), GROUND)
    DOUBTS[doubt](tmp_path / "out")
    write_claims(tmp_path, claims, (), GROUND)

    assert (tmp_path / "out" / "claims.json").read_text(encoding="utf-8") == claims_json(claims)


def test_what_did_not_change_is_not_made_again(claims: Claims, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Where nothing changed no argument is written anew, on another ground all are."""
    write_claims(tmp_path, claims, (), GROUND)
    written: list[str] = []
    of = ArgumentTexts.of
    monkeypatch.setattr(ArgumentTexts, "of", lambda self, claim: written.append(claim.id) or of(self, claim))
    write_claims(tmp_path, claims, (), GROUND)
    again = len(written)
    write_claims(tmp_path, claims, (), "other packs")

    assert (again, len(written)) == (0, len(claims.by_id))
