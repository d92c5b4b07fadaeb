"""Packs kept as they were read are those that reading gives, and believed only while nothing changed."""

from __future__ import annotations

import os
from dataclasses import replace
from pathlib import Path

import pytest

from narrate.model.packs import Packs
from narrate.reading import compiled_packs
from narrate.reading import packs as reading_packs
from narrate.reading.compiled_packs import NAMING, keep_packs, packs_kept
from narrate.reading.intake import project_intake
from narrate.reading.intake.project_intake import naming_packs
from narrate.reading.pack_files import shipped_folder
from narrate.reading.packs import read_packs
from narrate.reading.taxon_packs import taxon_regions
from tests.reading.folders import write

EAST = ("eastern-north-america",)


@pytest.fixture(scope="module")
def packs() -> Packs:
    found, problems = read_packs(EAST, shipped=shipped_folder())
    assert problems == ()
    return found


@pytest.fixture
def kept(packs: Packs, tmp_path: Path) -> Path:
    """A folder that holds them."""
    keep_packs(packs, tmp_path)
    return tmp_path


def test_kept_packs_are_those_that_were_read(packs: Packs, kept: Path) -> None:
    """Every taxon, rule, word and source is equal, places in files included, and in the same order."""
    found = packs_kept(EAST, kept)

    assert found == packs
    assert found is not None and list(found.rules) == list(packs.rules) and list(found.taxa) == list(packs.taxa)
    assert type(found.taxa) is type(packs.taxa)


def test_kept_packs_are_those_of_the_regions(kept: Path) -> None:
    """Other regions are read for themselves."""
    assert packs_kept(("temperate-europe",), kept) is None
    assert packs_kept((), kept) is None


def test_packs_for_names_are_kept_apart_from_whole_ones(packs: Packs, kept: Path) -> None:
    """What was read for names alone holds no rule, and stands beside what a project reads."""
    assert packs_kept(EAST, kept, name=NAMING) is None
    keep_packs(replace(packs, rules={}), kept, name=NAMING)
    found = packs_kept(EAST, kept, name=NAMING)

    assert found is not None and found.rules == {} and found.taxa == packs.taxa
    assert packs_kept(EAST, kept) == packs


def test_packs_for_names_are_the_same_when_they_were_kept(monkeypatch: pytest.MonkeyPatch) -> None:
    """Words, taxa and the names they are looked up by are those that reading gives, of one region and of all."""
    for regions in (EAST, taxon_regions((shipped_folder(),))):
        with monkeypatch.context() as forgetful:
            forgetful.setattr(project_intake, "packs_kept", lambda *regions, **name: None)
            read = naming_packs(regions)
        kept = packs_kept(regions, name=NAMING)

        assert kept is not None and kept is not read
        assert naming_packs(regions) == kept == read
        assert read.taxon_lookup and list(kept.taxa) == list(read.taxa)


NAMES = ["Chenopodum berlandieri: Chenopodium berlandieri\n", "Corn of ours: no such plant\n", ""]


@pytest.mark.parametrize("names", NAMES)
def test_packs_with_names_of_a_project_are_those_that_reading_gives(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, names: str
) -> None:
    """A project that accepted names, and has no other packs, does not pay for reading all packs anew."""
    write(tmp_path, {"packs/names.yaml": names})
    with monkeypatch.context() as slowly:
        slowly.setattr(reading_packs, "_with_names", lambda *asked: None)
        whole = read_packs(EAST, tmp_path / "packs")

    assert read_packs(EAST, tmp_path / "packs") == whole
    assert ("chenopodum berlandieri" in whole[0].taxon_lookup) is names.startswith("Cheno")


def test_damaged_packs_are_not_believed(kept: Path) -> None:
    """A file that was cut or holds another bit is read as none."""
    [file] = kept.iterdir()
    raw = file.read_bytes()
    for damaged in (raw[:-1], raw[:20], b"", raw[:-1] + bytes([raw[-1] ^ 1])):
        file.write_bytes(damaged)

        assert packs_kept(EAST, kept) is None


def test_packs_that_changed_are_read_anew(packs: Packs, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A pack file that was touched, added or taken away, and code that reads otherwise, leave nothing to believe."""
    package = tmp_path / "narrate"
    rule = package / "packs" / "rules" / "fuel" / "one.yaml"
    rule.parent.mkdir(parents=True)
    rule.write_text("id: one")
    monkeypatch.setattr(compiled_packs, "_PACKAGE", package)
    found = []
    for change in (
        lambda: None,
        lambda: rule.write_text("id: two"),
        lambda: os.utime(rule, (1, 1)),
        lambda: (rule.parent / "two.yaml").write_text(""),
        rule.unlink,
        lambda: (package / "problems.py").write_text(""),
    ):
        keep_packs(packs, tmp_path)
        change()
        found.append(packs_kept(EAST, tmp_path) is not None)

    assert found == [True, False, False, False, False, False]
