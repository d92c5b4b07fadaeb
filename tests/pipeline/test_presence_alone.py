"""A sheet that says only what was there: no density comes of it, and no words say that nothing was found; invented."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from narrate.pipeline.intake import intake
from narrate.pipeline.tell import tell

SHEET = """\
Sample,Litres,Zea mays kernel,Carya nutshell,Vitis seed,Iva annua achene
S1,10,x,,x,x
S2,8,x,x,,
S3,9,,x,x,x
"""


@pytest.fixture(scope="module")
def told(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("presence")
    (folder / "lab.csv").write_text(SHEET, encoding="utf-8")
    intake(folder / "lab.csv", folder / "dig")
    assert tell(folder / "dig", version="test").is_written
    return folder / "dig"


@pytest.mark.parametrize("audience", ["public", "report", "review"])
def test_what_was_noted_and_not_counted_is_told_as_found(told: Path, audience: str) -> None:
    text = (told / "narratives" / audience / "site.md").read_text(encoding="utf-8")

    assert "no burned plants" not in text and "no charred" not in text and "0.00" not in text
    assert "nutshell" in text and "counted" in text


def test_presence_alone_has_no_density(told: Path) -> None:
    claims = json.loads((told / "out" / "claims.json").read_text(encoding="utf-8"))
    looked_at = [
        one
        for claim in claims["claims"]
        for argument in claim["arguments"]
        for one in argument["evidence"]
        if one["measure"] == "density"
    ]

    assert all(one["value"] is None for one in looked_at)
    assert all("0.00" not in path.read_text(encoding="utf-8") for path in (told / "narratives").rglob("*.md"))
