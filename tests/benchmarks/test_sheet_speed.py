"""How long large sheets of a laboratory take to be worked out and read."""

from __future__ import annotations

import gc
import random
import time
from pathlib import Path

import openpyxl

from narrate.model.packs import Packs
from narrate.reading.intake.project_intake import naming_packs
from narrate.reading.intake.take_in import TakenIn, take_in


def test_a_sheet_of_two_hundred_by_two_hundred_in_three_seconds(tmp_path: Path) -> None:
    """Layout proposed, 40,000 cells read and totals checked in under 3 s of one core."""
    packs = naming_packs(("eastern-north-america",))
    chance = random.Random(1)
    species = [taxon.id for taxon in packs.taxa.values() if taxon.rank == "species"]
    names = [f"{id} {part}" for part in ("seed", "achene") for id in species][:200]
    book = openpyxl.Workbook()
    book.active.append(["Sample", *(f"S{n}" for n in range(200))])
    for name in names:
        book.active.append([name, *(chance.choice([None, None, 3, 1, 20, "x"]) for _ in range(200))])
    path = tmp_path / "large.xlsx"
    book.save(path)

    found, seconds = _taken_in(path, packs)
    print(f"200 x 200: {len(found.rows)} finds: {seconds:.2f} s")

    assert len(found.rows) > 20_000
    assert seconds < 3


def test_a_list_of_eight_thousand_finds_in_ten_seconds(tmp_path: Path) -> None:
    """One row a find, of 400 samples: the time grows with the rows and not with their square."""
    packs = naming_packs(("eastern-north-america",))
    chance = random.Random(1)
    species = [taxon.id for taxon in packs.taxa.values() if taxon.rank == "species"]
    lines = [
        f"S{n // 20},{chance.choice(species)},{chance.choice(('seed', 'grain'))},charred,{chance.randint(1, 40)}"
        for n in range(8_000)
    ]
    path = tmp_path / "list.csv"
    path.write_text("\n".join(["Sample,Taxon,Part,Condition,Count", *lines]), encoding="utf-8")

    found, seconds = _taken_in(path, packs)
    print(f"8,000 rows: {len(found.rows)} finds: {seconds:.2f} s")

    assert len(found.rows) > 7_000
    assert seconds < 10


def _taken_in(path: Path, packs: Packs) -> tuple[TakenIn, float]:
    """What a sheet gives, and the seconds of the processor that it takes."""
    gc.collect()
    gc.freeze()  # what other tests of this process left behind is no part of the work
    began = time.process_time()
    found = take_in(path, packs)
    seconds = time.process_time() - began
    gc.unfreeze()
    return found, seconds
