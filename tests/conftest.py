"""Fixtures that several rooms share: the example project, told once a session."""

from __future__ import annotations

import os
import shutil
import time
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from playwright.sync_api import Browser

    from narrate.pipeline.judged import Judged

ROOT = Path(__file__).parents[1]
EXAMPLE = ROOT / "example_project"
MOST_SECONDS = 600
"""For the example to be told by another worker."""
CHROMIUM = os.environ.get("NARRATE_CHROMIUM", "/usr/bin/chromium")


LONG = (
    "tests/browser/test_site.py",
    "tests/readings/test_readings.py",
    "tests/test_wheel.py",
    "tests/hostile/test_pages.py",
    "tests/pipeline/test_faults.py",
    "tests/pipeline/test_tell.py",
    "tests/pipeline/test_edits.py",
    "tests/reading/intake/test_outside_tables.py",
    "tests/reading/intake/test_damaged_cells.py",
    "tests/pipeline/test_everywhere.py",
    "tests/trials/test_other_worlds.py",
    "tests/reading/intake/test_blind.py",
    "tests/trials/test_record.py",
    "tests/pipeline/test_bad_input.py",
    "tests/pipeline/test_compare.py",
    "tests/judging/test_turning.py",
    "tests/documents/test_open_copy.py",
    "tests/documents/test_report_command.py",
)
"""Files that take longest, the longest first: begun last, one of them would run alone while the other worker waits."""


def pytest_configure(config: pytest.Config) -> None:
    """Workers are given the files in the order below, and not those with most tests first, however fast these are."""
    if hasattr(config.option, "loadscopereorder"):
        config.option.loadscopereorder = False


def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    """On several workers long files begin first; within a file nothing changes place."""
    if hasattr(config, "workerinput"):
        rank = {name: place for place, name in enumerate(LONG)}
        items.sort(key=lambda item: rank.get(item.nodeid.partition("::")[0], len(LONG)))


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption("--refresh-golden", action="store_true", help="write tests/golden/ and the example's drafts anew")


@pytest.fixture(scope="session")
def example_copy(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The example project as a fresh clone has it, in a folder of its own."""
    target = tmp_path_factory.mktemp("example") / "example_project"
    shutil.copytree(EXAMPLE, target, ignore=shutil.ignore_patterns("out"))
    return target


@pytest.fixture(scope="session")
def told_example(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The example project after the main job, with the section, told once for all workers; nobody writes in it."""
    own = tmp_path_factory.getbasetemp()
    folder = (own.parent if "PYTEST_XDIST_WORKER" in os.environ else own) / "told_example"
    done = folder.with_suffix(".done")
    try:
        folder.mkdir()
    except FileExistsError:  # another worker tells it
        until = time.monotonic() + MOST_SECONDS
        while not done.exists():
            assert time.monotonic() < until, f"{folder} was not told"
            time.sleep(0.2)
        assert done.read_text(encoding="utf-8") == ""
        return folder
    try:
        _tell_example(folder)
    except BaseException as fault:
        done.write_text(repr(fault), encoding="utf-8")
        raise
    done.touch()
    return folder


def _tell_example(folder: Path) -> None:
    from narrate.pipeline.report import report
    from narrate.pipeline.tell import tell

    shutil.copytree(EXAMPLE, folder, ignore=shutil.ignore_patterns("out"), dirs_exist_ok=True)
    told = tell(folder, version="test")
    assert told.is_written, told.problems
    for medium in ("markdown", "html"):
        path, problems = report(folder, version="test", medium=medium)
        assert path is not None, problems


@pytest.fixture(scope="session")
def judged_example(example_copy: Path) -> Judged:
    """The example project read, measured and judged for the team."""
    from narrate.pipeline.judged import judged, read

    reading = read(example_copy)
    assert reading.project is not None and reading.packs is not None, reading.problems
    return judged(reading.project, reading.packs)


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """One browser for all tests, since a process can drive but one. A missing browser is an error, never a skip."""
    from playwright.sync_api import sync_playwright

    with sync_playwright() as playwright:
        started = playwright.chromium.launch(
            executable_path=CHROMIUM, args=["--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage"]
        )
        yield started
        started.close()
