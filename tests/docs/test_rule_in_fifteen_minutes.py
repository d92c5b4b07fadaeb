"""The rule and the changes that DEVELOPERS.md teaches are sound as they stand there."""

from __future__ import annotations

import re
from pathlib import Path

import yaml
from click.testing import CliRunner

from narrate.cli import commands
from tests.conftest import ROOT

TEXT = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")


def block_after(heading: str) -> str:
    """The first YAML block under a heading."""
    found = re.search(r"```yaml\n(.*?)```", TEXT.split(heading, 1)[1], re.DOTALL)
    assert found is not None
    return found[1]


def a_project(folder: Path) -> Path:
    assert CliRunner().invoke(commands, ["begin", str(folder)]).exit_code == 0
    return folder


def test_the_rule_of_the_manual_passes_its_own_examples(tmp_path: Path) -> None:
    """Copied into a project as the manual says, the rule gives no problem."""
    folder = a_project(tmp_path / "dig")
    file = folder / "packs" / "rules" / "fuel" / "cobs_in_most_samples.yaml"
    file.parent.mkdir(parents=True)
    file.write_text(block_after("### A rule of one's own in fifteen minutes"), encoding="utf-8")
    checked = CliRunner().invoke(commands, ["check", str(folder)])

    assert (checked.exit_code, checked.stderr) == (0, "")


def test_the_changes_of_the_manual_have_the_shape_that_is_read() -> None:
    """Every key of the manual's changes is one that the reader knows."""
    from narrate.reading.changes import _FIELDS

    changes = yaml.safe_load(block_after("### A project's own packs"))

    assert set(changes) == set(_FIELDS) == {"retire", "set"}
    assert all("because" in entry for entries in changes.values() for entry in entries)
    assert all("sources" in entry for entry in changes["set"])
