"""Every layout of the generator is worked out without a hint, and reads back as what was written."""

from __future__ import annotations

from collections import Counter
from functools import cache
from pathlib import Path

import pytest

from narrate.model.packs import Packs
from narrate.problems import ProblemList
from narrate.reading.intake.layout_file import read_layout
from narrate.reading.intake.layout_written import layout_text
from narrate.reading.intake.project_intake import naming_packs
from narrate.reading.intake.take_in import TakenIn, take_in
from narrate.reading.source_text import SourceText
from tests.reading.intake.sheets import LAYOUTS, RECORDED, Dig, File, a_dig, as_csv, as_xlsx

SEEDS = (0, 3, 5)


@cache
def packs() -> Packs:
    return naming_packs(("eastern-north-america",))


def taken(folder: Path, file: File, ending: str) -> TakenIn:
    path = folder / f"lab{ending}"
    path.write_bytes(as_xlsx(file) if ending == ".xlsx" else as_csv(file))
    return take_in(path, packs())


def counts_of(found: TakenIn) -> Counter[tuple[str, str, str]]:
    counts: Counter[tuple[str, str, str]] = Counter()
    given = found.layout.names if found.layout is not None else {}
    for row in found.rows:
        if row.count.number:
            written = given.get(row.identification.written, row.identification.written)
            name = written.lower().removesuffix(f" {row.part}").removeprefix("cf. ")
            qualifier = "cf. " if row.identification.qualifier == "cf." else ""
            counts[str(row.sample), qualifier + name, str(row.part)] += row.count.number
    return counts


def counts_in(dig: Dig) -> Counter[tuple[str, str, str]]:
    return Counter({(s, p[0].lower(), p[1]): n for (s, p), n in dig.counts.items()})


def wrong_facts(found: TakenIn, dig: Dig) -> list[str]:
    wrong = []
    for sample in dig.samples:
        facts = found.facts.get(sample, {})
        for role, expected in (("context", dig.context[sample]), ("phase", dig.phase[sample])):
            wrong += [f"{sample}: {role}"] if [said.text for said in facts.get(role, [])][:1] != [expected] else []
        wrong += (
            [f"{sample}: volume"]
            if [float(s.text) for s in facts.get("volume", [])][:1] != [dig.volume[sample]]
            else []
        )
    return wrong


def can_be_text(name: str) -> bool:
    file = LAYOUTS[name](a_dig(0))
    return len(file.sheets) == 1 and not file.merged


CASES = [
    (name, ending, seed)
    for name in LAYOUTS
    for ending in ((".xlsx", ".csv") if can_be_text(name) else (".xlsx",))
    for seed in SEEDS
]


@pytest.mark.parametrize(("name", "ending", "seed"), CASES)
def test_a_layout_is_worked_out_without_a_hint(tmp_path: Path, name: str, ending: str, seed: int) -> None:
    """Every count comes back with its sample, its name and its part, and every record that the sheet carries."""
    dig = a_dig(seed, samples=3 + seed % 6, plants=5 + seed)
    file = LAYOUTS[name](dig)
    found = taken(tmp_path, file, ending)

    assert counts_of(found) == counts_in(dig)
    assert name not in RECORDED or wrong_facts(found, dig) == []


@pytest.mark.parametrize("name", LAYOUTS)
def test_a_layout_as_text_is_the_same_layout(tmp_path: Path, name: str) -> None:
    """What is written beside a sheet is read back as it was meant."""
    found = taken(tmp_path, LAYOUTS[name](a_dig(2)), ".xlsx")
    problems = ProblemList()
    assert found.layout is not None
    back = read_layout(SourceText("lab.xlsx.layout.yaml", found.text), problems)

    assert problems.found == []
    assert back is not None
    assert layout_text(back, "lab.xlsx") == found.text


@pytest.mark.parametrize("name", LAYOUTS)
def test_stored_totals_that_agree_are_not_told(tmp_path: Path, name: str) -> None:
    """Totals, shares, densities and ubiquities that are right give no warning."""
    found = taken(tmp_path, LAYOUTS[name](a_dig(4)), ".xlsx")

    assert [p.message for p in found.problems if p.code == "N317"] == []
