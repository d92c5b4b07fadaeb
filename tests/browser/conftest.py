"""A browser and the sites of the example project. A missing browser is an error, never a skip."""

from __future__ import annotations

import os
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, sync_playwright

CHROMIUM = os.environ.get("NARRATE_CHROMIUM", "/usr/bin/chromium")


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    with sync_playwright() as playwright:
        started = playwright.chromium.launch(
            executable_path=CHROMIUM, args=["--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage"]
        )
        yield started
        started.close()


@pytest.fixture(scope="session")
def sites(told_example: Path) -> Path:
    """The folder that holds both sites of the example project."""
    return told_example / "out"
