"""The sites of the example project, for tests in a browser."""

from __future__ import annotations

from pathlib import Path

import pytest


@pytest.fixture(scope="session")
def sites(told_example: Path) -> Path:
    """The folder that holds both sites of the example project."""
    return told_example / "out"
