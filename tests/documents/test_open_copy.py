"""`narrate report --open`: made from what may be disclosed alone, in every medium, with secrets planted everywhere."""

from __future__ import annotations

import io
import re
import shutil
import subprocess
import zipfile
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import CliRunner
from PIL import Image, PngImagePlugin

from narrate.cli import commands
from narrate.pipeline import report as report_in

FILES = {"word": "section-open.docx", "pdf": "section-open.pdf", "html": "section-open.html", "markdown": "section-open.md"}  # fmt: skip  # noqa: E501
SECRET = re.compile(
    r"zqx(?:description|note|deep|caption|credit|alt|camera|permit|asks|block|site)|\bC19\b|\bS045\b|\bS046\b|\bF19\b|1081[.,]77|2233[.,]88",
    re.IGNORECASE,
)
"""What was planted, what the example restricts, and its place."""


def picture(note: str) -> bytes:
    """A picture with a note inside, as cameras write them."""
    notes = PngImagePlugin.PngInfo()
    notes.add_text("Comment", note)
    out = io.BytesIO()
    Image.new("RGB", (40, 20), "navy").save(out, "PNG", pnginfo=notes)
    return out.getvalue()


def planted(example: Path, folder: Path) -> Path:
    """The example with secrets in the restricted context, in report texts, in a photograph and in edited narratives."""
    shutil.copytree(example, folder, ignore=shutil.ignore_patterns("out"))
    records = folder / "records" / "restricted.yaml"
    text = records.read_text(encoding="utf-8")
    photo = "\n    images: [{file: images/zqxdeep.png, caption: zqxcaption, credit: zqxcredit, alt: zqxalt}]"
    assert "    kind: other\n" in text
    text = text.replace(
        "    kind: other\n", f"    kind: other\n    description: zqxdescription\n    note: zqxnote{photo}\n"
    )
    records.write_text(text, encoding="utf-8")
    (folder / "images" / "zqxdeep.png").write_bytes(picture("zqxdeepnote"))
    (folder / "images" / "maize-kernel.png").write_bytes(picture("zqxcamera"))
    project = folder / "project.yaml"
    text = project.read_text(encoding="utf-8")
    text = text.replace('  number: "WH-7"\n', '  number: "WH-7"\n  permit: as for C19 zqxpermit\n')
    text += "report_checklist:\n  - {asks: zqxasks of C19}\n  - {asks: Signed by the keeper}\n"
    text += "report_blocks:\n  - {block: limits, text: zqxblock at C19}\n"
    project.write_text(text, encoding="utf-8")
    for name in ("site", "late"):
        path = folder / "narratives" / "report" / f"{name}.md"
        text = path.read_text(encoding="utf-8")
        path.write_text(text.rstrip() + "\n\nThe zqxsite sentence of the analyst.\n", encoding="utf-8")
    return folder


def once(step: Callable[..., object]) -> Callable[..., object]:
    """The same step, which gives again what it gave where it is asked the same: four media are made of one folder."""
    given: list[tuple[object, object]] = []

    def remembered(of: object, **more: object) -> object:
        found = [made for asked, made in given if asked is of or asked == of]
        if not found:
            found = [step(of, **more)]
            given.append((of, found[0]))
        return found[0]

    return remembered


@pytest.fixture(scope="module")
def copies(told_example: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """out/report of the planted example with an open copy in each medium."""
    folder = planted(told_example, tmp_path_factory.mktemp("open") / "example")
    with pytest.MonkeyPatch.context() as patch:
        for step in ("judged_folder", "disclosed_part"):
            patch.setattr(report_in, step, once(getattr(report_in, step)))
        for medium in FILES:
            result = CliRunner().invoke(commands, ["report", str(folder), "--to", medium, "--open"])
            assert result.exit_code == 0, result.output
            assert result.stdout.strip().endswith(FILES[medium])
    (folder / "said.txt").write_text(result.stderr, encoding="utf-8")
    return folder / "out" / "report"


def text_of(path: Path) -> str:
    """Everything in a file: the parts of a Word document unzipped, the text and the bytes of a PDF, else the bytes."""
    if path.suffix == ".docx":
        with zipfile.ZipFile(path) as parts:
            held = b"\n".join(parts.read(name) for name in parts.namelist()).decode("utf-8", "replace")
        return held + re.sub(r"<[^>]+>", "", held)
    raw = path.read_bytes().decode("utf-8", "replace")
    if path.suffix == ".pdf":
        raw += subprocess.run(["pdftotext", str(path), "-"], capture_output=True, check=True, text=True).stdout
    return raw


def test_no_open_copy_holds_a_secret(copies: Path) -> None:
    """No byte of Word (unzipped), PDF, HTML, Markdown or its figures tells what is restricted."""
    held = [path for path in copies.rglob("*") if path.is_file()]
    assert len(held) > 8

    assert [(path.name, found[0]) for path in held if (found := SECRET.search(text_of(path)))] == []


@pytest.mark.parametrize("medium", FILES)
def test_an_open_copy_says_that_something_is_withheld(copies: Path, medium: str) -> None:
    """A reader must know that totals are not those of the whole dig."""
    said = " ".join(text_of(copies / FILES[medium]).split())

    assert "Something is withheld from it: contexts or fields of records that the project restricts" in said


@pytest.mark.parametrize("medium", FILES)
def test_an_open_copy_says_that_words_of_the_analyst_are_left_out(copies: Path, medium: str) -> None:
    """Two narratives were edited with the restricted context in view: the copy and the problems say so."""
    said = " ".join(text_of(copies / FILES[medium]).replace("\u00a0", " ").split())
    told = (copies.parents[1] / "said.txt").read_text(encoding="utf-8")

    assert "Words that the analyst wrote or approved are left out of 2 texts of this copy" in said
    for key in ("site", "late"):
        assert (
            f"narratives/report/{key}.md: warning N210: 1 sentence that the analyst wrote or approved of '{key}' is "
            "left out of the open copy, because something restricted was in view when it was written"
        ) in told


@pytest.fixture(scope="module")
def section(copies: Path) -> str:
    """The copy of the team, in Markdown."""
    result = CliRunner().invoke(commands, ["report", str(copies.parents[1])])
    assert result.exit_code == 0, result.output
    return (copies / "section.md").read_text(encoding="utf-8")


def test_the_copy_of_the_team_holds_what_was_planted(section: str) -> None:
    """Otherwise the tests above would prove nothing."""
    for secret in ("C19", "S045", "zqxpermit", "zqxcaption", "zqxalt", "zqxasks", "zqxblock", "zqxsite"):
        assert secret in section


def test_the_section_says_how_near_its_edge_a_reading_lies(section: str) -> None:
    """Of the floor C15 the narrative says so: 23 cob parts to 2 kernels, and a heavy fraction that was not sorted."""
    assert "Two more maize kernels would unsettle maize cobs as fuel; the heavy fraction of S036" in section
