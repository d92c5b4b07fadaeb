"""Sites and reports built from approved words alone, and how the words stand in `check`."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from narrate.cli import commands
from narrate.pipeline.begin import begin
from narrate.pipeline.tell import tell

SIGNED = "---\napproved: {by: A. Analyst, on: 2026-11-25}\n---\n"


def run(*words: str) -> Result:
    return CliRunner().invoke(commands, list(words))


@pytest.fixture(scope="module")
def told_starter(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A new project after its first run."""
    folder = tmp_path_factory.mktemp("starter") / "dig"
    begin(folder)
    assert tell(folder, version="test").is_written
    return folder


@pytest.fixture
def dig(told_starter: Path, tmp_path: Path) -> Path:
    return Path(shutil.copytree(told_starter, tmp_path / "dig"))


def sign(folder: Path, audience: str, key: str) -> list[str]:
    """Approves a narrative; gives its sentences."""
    path = folder / "narratives" / audience / f"{key}.md"
    text = path.read_text(encoding="utf-8")
    path.write_text(SIGNED + text, encoding="utf-8")
    return [row.split(" <!--")[0] for row in text.splitlines() if "<!--" in row]


def test_the_public_site_holds_approved_sentences_alone(dig: Path) -> None:
    """C1 was approved and the whole dig was not: every sentence of the one and none of the other is on a page."""
    approved = sign(dig, "public", "C1")
    waiting = (dig / "narratives" / "public" / "site.md").read_text(encoding="utf-8")
    waiting_words = [row.split(" <!--")[0] for row in waiting.splitlines() if "<!--" in row]
    result = run("tell", str(dig), "--approved-only")
    pages = "\n".join(path.read_text(encoding="utf-8") for path in sorted((dig / "out" / "public").rglob("*.html")))

    assert result.exit_code == 0
    assert approved and waiting_words
    assert all(_plain(sentence) in pages for sentence in approved)
    assert not any(_plain(sentence) in pages for sentence in set(waiting_words) - set(approved))


def test_a_page_says_that_sentences_are_left_out(dig: Path) -> None:
    """The story of the dig, which waits, says how many sentences do; an approved page says by whom."""
    sign(dig, "public", "C1")
    waiting = (dig / "narratives" / "public" / "site.md").read_text(encoding="utf-8").count("<!--")
    assert run("tell", str(dig), "--approved-only").exit_code == 0
    story, context = (
        (dig / "out" / "public" / page).read_text(encoding="utf-8") for page in ("story.html", "contexts/c1.html")
    )

    assert f"{waiting} sentence{'s' * (waiting != 1)} that nobody has approved" in story
    assert "Approved by A. Analyst on 2026-11-25." in context


def test_each_sentence_of_a_page_says_who_answers_for_it(dig: Path) -> None:
    """For the team: one sentence edited after the approval, the others as drafted and approved."""
    sign(dig, "report", "C1")
    assert run("tell", str(dig)).exit_code == 0
    path = dig / "narratives" / "report" / "C1.md"
    path.write_text(path.read_text(encoding="utf-8") + "\nI saw pale ash.\n", encoding="utf-8")
    assert run("tell", str(dig)).exit_code == 0
    page = (dig / "out" / "review" / "contexts" / "c1.html").read_text(encoding="utf-8")

    assert page.count("The analyst&#39;s own words. Not approved.") == 1
    assert page.count("As drafted. Approved by A. Analyst on 2026-11-25.") >= 2


def test_the_project_may_ask_for_approved_sentences_itself(dig: Path) -> None:
    """The key of project.yaml does what the option does; labels stand on the public site."""
    project = dig / "project.yaml"
    project.write_text(project.read_text(encoding="utf-8") + "\napproved_only: [public, report]\n", encoding="utf-8")
    result = run("check", str(dig))
    told = [row for row in result.stderr.splitlines() if "N116" in row]

    assert {row.split("/")[1] for row in told} == {"public", "label", "report"}
    assert all("not approved and left out of what is built from approved words" in row for row in told)


def test_the_report_says_that_sentences_wait(dig: Path) -> None:
    """One line under the title; the text of the narrative that was approved stands, the others are gone."""
    approved = sign(dig, "report", "C1")
    waiting = (dig / "narratives" / "report" / "site.md").read_text(encoding="utf-8")
    result = run("report", str(dig), "--approved-only")
    # Units do not part from their numbers in a report: its blanks are other ones there.
    section = (dig / "out" / "report" / "section.md").read_text(encoding="utf-8").replace("\u00a0", " ")

    assert result.exit_code == 0
    assert "for approval are left out." in section or "for approval is left out." in section
    assert all(sentence in section for sentence in approved)
    assert not any(row.split(" <!--")[0] in section for row in waiting.splitlines() if "<!--" in row)


def test_check_says_how_the_words_stand(dig: Path) -> None:
    """Nothing is edited and one narrative is approved: the line of each audience says so."""
    approved = sign(dig, "public", "C1")
    lines = [row for row in run("check", str(dig)).stdout.splitlines() if row.startswith("words for public")]

    assert len(lines) == 1
    assert f"0 in the analyst's words, {len(approved)} approved, " in lines[0]


def test_a_narrative_in_another_encoding_stops_the_run_untouched(dig: Path) -> None:
    """Saved as Windows-1252: an error with the line; nothing is written and every byte stays."""
    path = dig / "narratives" / "public" / "C1.md"
    raw = path.read_bytes().replace(b"##", "## Café\n\n##".encode("cp1252"), 1)
    path.write_bytes(raw)
    result = run("tell", str(dig))

    assert result.exit_code == 1
    assert "error N114: the narrative holds a byte 0xe9 that is not UTF-8" in result.stderr
    assert path.read_bytes() == raw


def test_words_that_claim_too_much_are_named_with_their_line(dig: Path) -> None:
    """She wrote 'proves': file, line, and what may be said instead."""
    path = dig / "narratives" / "report" / "C1.md"
    path.write_text(path.read_text(encoding="utf-8") + "\nThe ash proves it.\n", encoding="utf-8")
    line = len(path.read_text(encoding="utf-8").splitlines())
    told = [row for row in run("check", str(dig)).stderr.splitlines() if "N117" in row]

    assert [row.split(" warning")[0] for row in told] == [f"narratives/report/C1.md:{line}:1:"]
    assert "'proves' claims more than the evidence bears" in told[0]


def _plain(sentence: str) -> str:
    """A stretch of the sentence that no markup interrupts."""
    return max(sentence.replace("&", "*").replace("'", "*").replace('"', "*").split("*"), key=len).strip()
