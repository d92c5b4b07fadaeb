"""`narrate report`: what stands in the way is said, and the file of before stays."""

from __future__ import annotations

import os
import re
import subprocess
from pathlib import Path

import docx
import pikepdf
import pytest
from click.testing import CliRunner, Result

from narrate.cli import commands


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A project as `narrate begin` lays it out."""
    path = tmp_path / "dig"
    assert CliRunner().invoke(commands, ["begin", str(path)]).exit_code == 0
    return path


def reported(folder: Path, *options: str) -> Result:
    return CliRunner().invoke(commands, ["report", str(folder), *options])


@pytest.mark.parametrize(
    ("medium", "name"),
    [("word", "section.docx"), ("pdf", "section.pdf"), ("html", "section.html"), ("markdown", "section.md")],
)
def test_every_medium_is_written(folder: Path, medium: str, name: str) -> None:
    """The path is said on standard output."""
    result = reported(folder, "--to", medium)

    assert result.exit_code == 0, result.output
    assert result.stdout.strip() == str(folder / "out" / "report" / name)
    assert (folder / "out" / "report" / name).stat().st_size > 1000


def test_a_template_without_styles_leaves_the_old_output(folder: Path, tmp_path: Path) -> None:
    """The problem names template and styles; the Word document of before is as it was."""
    template = docx.Document()
    template.styles["Heading 2"].delete()
    template.save(tmp_path / "poor.docx")
    assert reported(folder, "--to", "word").exit_code == 0
    before = (folder / "out" / "report" / "section.docx").read_bytes()

    result = reported(folder, "--to", "word", "--template", str(tmp_path / "poor.docx"))

    assert result.exit_code == 1
    poor = tmp_path / "poor.docx"
    assert f"{poor}: error N119: the template {poor} lacks the styles Heading 2; add them to it" in result.stderr
    assert (folder / "out" / "report" / "section.docx").read_bytes() == before


def test_a_file_that_cannot_be_replaced_stays(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """An output that another program holds open refuses to be replaced (as Windows does): told, and left whole."""
    target = folder / "out" / "report" / "section.docx"
    target.parent.mkdir(parents=True)
    target.write_bytes(b"old")

    def refuse(source: object, aim: object) -> None:
        raise PermissionError(13, "Permission denied")

    with monkeypatch.context() as patched:
        patched.setattr(os, "replace", refuse)
        result = reported(folder, "--to", "word")

    assert result.exit_code == 1
    assert "out/report/section.docx: error N108: the section cannot be written here: Permission denied" in result.stderr
    assert [path.name for path in target.parent.iterdir()] == ["section.docx"]
    assert target.read_bytes() == b"old"


@pytest.mark.parametrize(
    ("lock", "why"),
    [
        ("", "it is read-only"),
        (".~lock.section.docx#", "another program has it open (it left '.~lock.section.docx#')"),
        ("~$ction.docx", "another program has it open (it left '~$ction.docx')"),
    ],
)
def test_a_section_that_is_read_only_or_open_is_not_replaced(folder: Path, lock: str, why: str) -> None:
    """Where the system would let it be replaced all the same: told, and every byte of before is there."""
    target = folder / "out" / "report" / "section.docx"
    target.parent.mkdir(parents=True)
    target.write_bytes(b"old")
    if lock:
        target.with_name(lock).write_bytes(b"")
    else:
        target.chmod(0o444)

    result = reported(folder, "--to", "word")

    assert result.exit_code == 1
    assert f"out/report/section.docx: error N108: the section cannot be written here: {why}\n" in result.stderr
    assert target.read_bytes() == b"old"


def test_a_template_is_for_word_alone(folder: Path, tmp_path: Path) -> None:
    """Asked for with another medium, the command was called wrongly."""
    docx.Document().save(tmp_path / "house.docx")

    assert reported(folder, "--to", "pdf", "--template", str(tmp_path / "house.docx")).exit_code == 2


def test_blocks_are_renamed_filled_and_left_out(folder: Path) -> None:
    """What project.yaml says of a block is in the section, and an unknown block is a problem with the near match."""
    project = folder / "project.yaml"
    text = project.read_text(encoding="utf-8")
    blocks = (
        "report_blocks:\n"
        "  - {block: laboratory, title: Methods, text: All by A.}\n"
        "  - {block: checklist, shown: false}\n"
    )
    project.write_text(text + "\n" + blocks, encoding="utf-8")

    assert reported(folder).exit_code == 0
    section = (folder / "out" / "report" / "section.md").read_text(encoding="utf-8")
    assert "## Methods\n\nAll by A.\n" in section
    assert "## Reviewer's checklist" not in section and "## Laboratory method" not in section

    project.write_text(text + "\nreport_blocks:\n  - {block: labratory}\n", encoding="utf-8")
    refused = reported(folder)
    assert refused.exit_code == 1
    assert "labratory" in refused.stderr and "laboratory" in refused.stderr


def test_a_phase_without_samples_is_said(folder: Path) -> None:
    """A phase from which nothing was taken has its heading and a sentence."""
    project = folder / "project.yaml"
    text = project.read_text(encoding="utf-8")
    assert "phases:\n" in text
    phase = "phases:\n  - {id: empty, name: Empty phase}\n"
    project.write_text(text.replace("phases:\n", phase, 1), encoding="utf-8")

    assert reported(folder).exit_code == 0
    section = (folder / "out" / "report" / "section.md").read_text(encoding="utf-8")
    assert "### Empty phase\n\nNo samples were taken from this phase." in section


def test_pandoc_takes_the_markdown(folder: Path) -> None:
    """Pandoc reads the section without a warning and finds its headings and tables."""
    assert reported(folder).exit_code == 0
    where = folder / "out" / "report"
    command = ["pandoc", "--fail-if-warnings", "-f", "markdown", "-t", "html", "section.md"]
    found = subprocess.run(command, cwd=where, capture_output=True, text=True)

    assert found.returncode == 0, found.stderr
    text = (where / "section.md").read_text(encoding="utf-8")
    rulers = [line for line in text.splitlines() if re.match(r"\| -[-:]", line)]
    assert found.stdout.count("<table") == len(rulers) > 4


def test_another_office_program_makes_pages_of_the_word_document(folder: Path, tmp_path: Path) -> None:
    """LibreOffice opens it: every heading and caption is on its pages, and wide pages stand among the others."""
    assert reported(folder, "--to", "word").exit_code == 0
    path = folder / "out" / "report" / "section.docx"
    home = f"-env:UserInstallation=file://{tmp_path / 'profile'}"
    command = ["soffice", home, "--headless", "--convert-to", "pdf", "--outdir", str(tmp_path), str(path)]
    subprocess.run(command, check=True, capture_output=True, timeout=180)
    pages = pikepdf.open(tmp_path / "section.pdf").pages
    shapes = {float(page.mediabox[2]) > float(page.mediabox[3]) for page in pages}
    read = subprocess.run(["pdftotext", "-raw", str(tmp_path / "section.pdf"), "-"], capture_output=True, text=True)
    text = re.sub(r"[\s\u2060]+", "", read.stdout)
    opened = docx.Document(str(path))
    styled = [(p.text, p.style.name) for p in opened.paragraphs if p.style is not None]
    headed = [text for text, style in styled if style.startswith(("Heading", "Caption"))]

    assert len(headed) > 20
    assert [one for one in headed if re.sub(r"[\s\u2060]+", "", one) not in text] == []
    assert shapes == {True, False}
