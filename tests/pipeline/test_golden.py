"""The example project's claims and words against what was last read and found right."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from narrate.pipeline.judged import Judged
from tests.conftest import EXAMPLE, ROOT

CLAIMS = ROOT / "tests" / "golden" / "claims.txt"


def test_the_claims_of_the_example_are_those_last_read(judged_example: Judged, request: pytest.FixtureRequest) -> None:
    """Every claim that holds, with grade, support and stability, is as it stands in tests/golden/claims.txt."""
    lines = [
        f"{claim.id}: {claim.grade}, support {claim.support:.2f}, stays {claim.stability:.2f}"
        + "".join(f"\n    {limit.says}" for limit in claim.limits)
        for claim in judged_example.claims
        if claim.verdict == "holds"
    ]
    text = "\n".join(lines) + "\n"
    if request.config.getoption("--refresh-golden"):
        CLAIMS.parent.mkdir(exist_ok=True)
        CLAIMS.write_text(text, encoding="utf-8")

    assert text == CLAIMS.read_text(encoding="utf-8")


def test_the_drafts_of_the_example_are_those_last_read(told_example: Path, request: pytest.FixtureRequest) -> None:
    """The narratives that `tell` writes are, word for word, those that stand in the example project."""
    if request.config.getoption("--refresh-golden"):
        shutil.rmtree(EXAMPLE / "narratives", ignore_errors=True)
        shutil.copytree(told_example / "narratives", EXAMPLE / "narratives")
    written = {p.relative_to(told_example).as_posix(): p.read_text(encoding="utf-8") for p in drafts(told_example)}
    kept = {p.relative_to(EXAMPLE).as_posix(): p.read_text(encoding="utf-8") for p in drafts(EXAMPLE)}

    assert written.keys() == kept.keys()
    assert [name for name in written if written[name] != kept[name]] == []


def drafts(folder: Path) -> list[Path]:
    return sorted((folder / "narratives").rglob("*.md"))
