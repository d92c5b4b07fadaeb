"""The wheel holds everything that the main job needs, and runs it in an environment of its own."""

from __future__ import annotations

import os
import subprocess
import sys
import tomllib
import venv
import zipfile
from pathlib import Path

import pytest

from tests.conftest import ROOT


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A wheel built from the sources that are in the checkout."""
    out = tmp_path_factory.mktemp("wheel")
    command = [sys.executable, "-m", "build", "--wheel", "--no-isolation", "--outdir", str(out), str(ROOT)]
    subprocess.run(command, check=True, capture_output=True, text=True)
    (built,) = out.glob("*.whl")
    return built


def test_the_wheel_holds_templates_packs_and_types(wheel: Path) -> None:
    """Templates, packs, the starter project and py.typed are inside; tests and the example are not."""
    names = zipfile.ZipFile(wheel).namelist()

    assert "narrate/py.typed" in names
    assert "narrate/_templates/base.html" in names
    assert any(name.startswith("narrate/packs/rules/") for name in names)
    assert "narrate/starter/project.yaml" in names
    assert not any(name.startswith(("tests/", "example_project/")) for name in names)


IS_OLDEST_PYTHON = sys.version_info[:2] == (3, 11)
"""Bounds are those of the oldest Python: newer ones need newer builds of the same packages, and take them."""


@pytest.mark.parametrize("versions", ["oldest" if IS_OLDEST_PYTHON else "newest"])
def test_the_main_job_runs_from_the_wheel(wheel: Path, tmp_path: Path, versions: str) -> None:
    """In a clean environment outside the checkout all is made; the suite itself runs with the newest versions."""
    clean = tmp_path / "clean"
    venv.create(clean, with_pip=False, system_site_packages=False)
    python = clean / ("Scripts/python.exe" if os.name == "nt" else "bin/python")
    # What is imported is compiled when it is first imported, and kept; most of what is installed never is.
    ours = ("PYTHONPATH", "PYTHONHOME", "PYTHONDONTWRITEBYTECODE")
    environment = {k: v for k, v in os.environ.items() if k not in ours}
    install = [sys.executable, "-m", "pip", "--python", python, "install", "-q", "--no-compile", str(wheel)]
    if versions == "oldest":
        bounds = tmp_path / "oldest.txt"
        bounds.write_text("\n".join(_oldest()), encoding="utf-8")
        install += ["-c", str(bounds)]
    subprocess.run(install, check=True, env=environment, capture_output=True)
    project = tmp_path / "dig"
    run = [python, "-c", "from narrate.cli import main; main()"]
    for order in (["begin", str(project)], ["tell", str(project)], ["report", str(project), "--to", "pdf"]):
        done = subprocess.run([*run, *order], env=environment, cwd=tmp_path, capture_output=True, text=True)
        assert done.returncode == 0, done.stderr

    assert (project / "out" / "public" / "index.html").is_file()
    assert (project / "out" / "report" / "section.pdf").is_file()


def _oldest() -> list[str]:
    """Each package that is needed, at the lower bound that pyproject.toml gives it."""
    needed = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]["dependencies"]
    return [line.partition(",")[0].replace(">=", "==") for line in needed]


def test_an_editable_install_finds_the_templates_of_the_checkout() -> None:
    """In the checkout, where no `_templates` folder exists inside the package, site_templates/ beside it is used."""
    from narrate.web.templates import templates_folder

    assert (templates_folder() / "base.html").is_file()
