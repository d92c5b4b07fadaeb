"""An audience is one file: it is drafted, checked, and put on the pages of its site, with no change of code."""

from __future__ import annotations

import re
import shutil
from pathlib import Path

import pytest
from click.testing import CliRunner

from narrate.cli import commands

PUBLIC = Path(__file__).resolve().parents[2] / "narrate/packs/audiences/public.yaml"
STRANGE = "project.yaml: error N601: audiences names 'publico', which no pack holds, expected one of "


def run(*arguments: str) -> tuple[int, str]:
    result = CliRunner().invoke(commands, list(arguments))
    return result.exit_code, result.output


def begun(folder: Path, *asked: str) -> Path:
    """A small whole project that asks for some audiences."""
    assert run("begin", str(folder))[0] == 0
    file = folder / "project.yaml"
    if asked:
        file.write_text(f"{file.read_text(encoding='utf-8')}\naudiences: [{', '.join(asked)}]\n", encoding="utf-8")
    return folder


@pytest.fixture(scope="module")
def told(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A project that asks for Spanish, and has an audience of its own."""
    folder = begun(tmp_path_factory.mktemp("audiences") / "dig", "public-es")
    own = PUBLIC.read_text(encoding="utf-8").replace("id: public\n", "id: school\n")
    own = re.sub(r"(?m)^title: .*$", "title: For schools", own)
    (folder / "packs" / "audiences").mkdir(parents=True, exist_ok=True)
    (folder / "packs" / "audiences" / "school.yaml").write_text(own, encoding="utf-8")
    code, output = run("tell", str(folder))
    assert code == 0, output
    return folder


def test_an_audience_of_the_projects_packs_is_drafted(told: Path) -> None:
    """One file more, and every subject has a narrative for it."""
    drafted = {path.name for path in (told / "narratives" / "school").glob("*.md")}

    assert drafted == {path.name for path in (told / "narratives" / "public").glob("*.md")} != set()


def test_a_second_language_is_drafted_where_the_project_asks_for_it(told: Path, tmp_path: Path) -> None:
    """Spanish comes with narrate and is told on request; without the request no file of it is written."""
    plain = begun(tmp_path / "dig")
    assert run("tell", str(plain))[0] == 0

    assert "litros" in "".join(p.read_text("utf-8") for p in (told / "narratives" / "public-es").glob("*.md"))
    assert not (plain / "narratives" / "public-es").exists()


def test_further_audiences_stand_on_the_pages_of_their_site_in_their_language(told: Path) -> None:
    """After the public words, under the audience's own title."""
    pages = sorted((told / "out" / "public" / "contexts").glob("*.html"))
    text = "".join(page.read_text(encoding="utf-8") for page in pages)

    assert '<section class="story public-es" lang="es"' in text
    assert ">For schools</h2>" in text
    assert ">En español, para visitantes</h2>" in text
    assert "<summary>En qué se apoya" in text and ">Borrador. Nadie ha aprobado todavía estas palabras.</p>" in text
    spanish = text.split('<section class="story public-es" lang="es"')[1].split("</section>")[0]
    assert re.search(r'<ol class="inside" start="\d+" lang="en">', spanish)
    assert "rests on" not in spanish.split('<ol class="inside"')[0]
    assert "story school" not in "".join(p.read_text("utf-8") for p in (told / "out" / "review").rglob("*.html"))


def test_the_queue_counts_what_check_counts(told: Path) -> None:
    """All narratives that stand in files, of every audience; texts of samples are none."""
    queue = (told / "out" / "review" / "review-queue.html").read_text(encoding="utf-8")
    checked = run("check", str(told))[1]
    by_check = sum(int(n) for n in re.findall(r"words for .*: [\d,]+ sentences in (\d+) narratives", checked))
    files = len(list((told / "narratives").glob("*/*.md")))

    assert f"{by_check} narratives that nobody has approved" in queue
    assert by_check == files


def test_numbers_typed_into_a_spanish_narrative_are_read(told: Path, tmp_path: Path) -> None:
    """'veintitrés litros' where the records say otherwise is named by `check`."""
    folder = shutil.copytree(told, tmp_path / "dig")
    file, number = next(
        (path, found)
        for path in sorted((folder / "narratives" / "public-es").glob("*.md"))
        for found in [re.search(r"[\d,]+ litros", path.read_text(encoding="utf-8"))]
        if found
    )
    text = file.read_text(encoding="utf-8").replace(number[0], "noventa y tres litros")
    file.write_text(text, encoding="utf-8")

    assert f"{file.name}" in run("check", str(folder))[1]
    assert "warning N111: edited text says noventa y tres" in run("check", str(folder))[1]


def test_an_audience_that_no_pack_holds_is_an_error(tmp_path: Path) -> None:
    """A misspelt name is told, with the names that are known."""
    folder = begun(tmp_path / "dig", "publico")

    code, output = run("tell", str(folder))
    assert code == 1
    assert STRANGE + "label, public, public-es, report, review\n" in output
