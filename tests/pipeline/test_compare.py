"""`narrate compare`: what changed between two states of a project, from two folders or from revisions in git."""

from __future__ import annotations

import json
import re
import shutil
import subprocess
from dataclasses import replace
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from narrate.cli import commands
from narrate.drafts.owned import write_files
from narrate.model.changes import Change, Changes
from narrate.pipeline.begin import begin
from narrate.pipeline.changed_data import changed_counts, changed_records, renamed
from narrate.pipeline.changes_text import in_one_line
from narrate.pipeline.compare import compare
from narrate.pipeline.editions import all_told
from narrate.pipeline.judged import judged, read
from tests.measures.digs import a_dig

SHEET, RECORDS = "counts/first-sheet.csv", "records/first-samples.yaml"


def run(*words: str) -> Result:
    return CliRunner().invoke(commands, list(words))


def git(folder: Path, *words: str) -> str:
    who = ("-c", "user.name=A", "-c", "user.email=a@example.org", "-c", "commit.gpgsign=false")
    done = subprocess.run(["git", "-C", str(folder), *who, *words], capture_output=True, text=True, check=True)
    return done.stdout


def edit(folder: Path, file: str, before: str, after: str) -> None:
    path = folder / file
    text = path.read_text(encoding="utf-8")
    assert before in text
    path.write_text(text.replace(before, after, 1), encoding="utf-8")


def part(changes: Changes, title: str) -> tuple[Change, ...]:
    return next((p.changes for p in changes.parts if p.title == title), ())


@pytest.fixture(scope="module")
def told_starter(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A new project with its drafts, without `out/`."""
    folder = tmp_path_factory.mktemp("starter") / "dig"
    begin(folder)
    reading = read(folder)
    assert reading.project is not None and reading.packs is not None, reading.problems
    whole = judged(reading.project, reading.packs)
    for words in all_told(folder, whole, whole).values():
        write_files(words.files)
    return folder


@pytest.fixture
def dig(told_starter: Path, tmp_path: Path) -> Path:
    return Path(shutil.copytree(told_starter, tmp_path / "dig"))


@pytest.fixture
def changed(dig: Path, tmp_path: Path) -> Path:
    """The same with more kernels, more litres, and a sentence of the analyst's."""
    folder = Path(shutil.copytree(dig, tmp_path / "changed"))
    edit(folder, SHEET, "Zea mays,kernel,3,", "Zea mays,kernel,30,")
    edit(folder, RECORDS, "volume_l: 10 ", "volume_l: 12 ")
    path = folder / "narratives" / "report" / "C1.md"
    text = re.sub(r"^[A-Z].*? <!--", "Nobody drafted this. <!--", path.read_text(encoding="utf-8"), count=1, flags=re.M)
    path.write_text(text, encoding="utf-8")
    return folder


def test_a_folder_and_itself_differ_in_nothing(dig: Path) -> None:
    """Two names of one state: nothing changed, and that is said."""
    assert compare(str(dig), str(dig)).is_nothing
    assert run("compare", str(dig), str(dig)).stdout.splitlines()[-1] == "Nothing changed."


def test_a_record_and_a_count_are_told_with_both_values_and_places(dig: Path, changed: Path) -> None:
    """Litres 10 and 12, kernels 3 and 30, each with its file and line."""
    changes = compare(str(dig), str(changed))

    assert part(changes, "Records") == (
        Change(
            kind="changed",
            subject="sample S1",
            what="volume_l",
            before="10",
            after="12",
            before_at=f"{RECORDS}:10",
            after_at=f"{RECORDS}:10",
        ),
    )
    assert part(changes, "Counts") == (
        Change(
            kind="changed",
            subject="S1, Zea mays, kernel",
            before="3",
            after="30",
            before_at=f"{SHEET}:3",
            after_at=f"{SHEET}:3",
        ),
    )


def test_a_claim_that_fell_has_its_reason_in_figures(dig: Path, changed: Path) -> None:
    """Ten times the kernels: what spoke for cobs as fuel holds no more, with the figures that it held on."""
    found = next(c for c in part(compare(str(dig), str(changed)), "Claims") if c.subject == "S1/fuel.maize-cob")

    assert (found.kind, found.before, found.after) == ("changed", "strongly supports", "suggests")
    assert [r for r in found.reasons if r.startswith("holds no more: cob parts far outnumber kernels (42 to 3)")]


def test_an_edited_sentence_is_told_with_whose_it_is(dig: Path, changed: Path) -> None:
    """Old and new words, drafted then, the analyst's now, and what moved behind them."""
    found = next(c for c in part(compare(str(dig), str(changed)), "Words for report") if "Nobody" in c.after)

    assert (found.kind, found.subject) == ("changed", "C1")
    assert (found.before_at, found.after_at) == ("drafted", "edited by the analyst")
    assert "Items counted: 62, now 89" in found.reasons


def test_an_approval_alone_is_a_change_of_words(dig: Path, tmp_path: Path) -> None:
    """The same sentences, approved since: each is told with who answers for it, and nothing else is."""
    signed = Path(shutil.copytree(dig, tmp_path / "signed"))
    path = signed / "narratives" / "report" / "C1.md"
    head = "---\napproved: {by: A. Analyst, on: 2026-11-25}\n---\n"
    path.write_text(head + path.read_text(encoding="utf-8"), encoding="utf-8")
    changes = compare(str(dig), str(signed))

    assert [p.title for p in changes.parts if p.changes] == ["Words for report"]
    assert {(c.before_at, c.after_at) for c in part(changes, "Words for report")} == {
        ("drafted", "drafted, approved by A. Analyst on 2026-11-25")
    }
    assert all(c.before == c.after for c in part(changes, "Words for report"))


def test_two_revisions_of_a_folder_are_compared_and_the_checkout_stays(dig: Path, changed: Path) -> None:
    """The folder lies deep in a repository; neither files nor index nor branch are touched."""
    top = dig.parent / "repository"
    inside = top / "digs" / "one"
    shutil.copytree(dig, inside)
    git(top, "init", "-q", "-b", "main")
    git(top, "add", "-A")
    git(top, "commit", "-q", "-m", "counts: first")
    shutil.copytree(changed, inside, dirs_exist_ok=True)
    git(top, "commit", "-q", "-a", "-m", "counts: second look")
    (inside / "project.yaml").write_text("nothing of this was committed\n", encoding="utf-8")
    before = git(top, "status", "--porcelain"), (top / ".git" / "index").read_bytes()
    changes = compare(f"{inside}@HEAD~1", f"{inside}@main")

    assert [c.after for c in part(changes, "Counts")] == ["30"]
    assert re.fullmatch(
        rf"{re.escape(str(inside))} at [0-9a-f]{{7,}} \(\d{{4}}-\d\d-\d\d, counts: first\)", changes.old.name
    )
    assert (git(top, "status", "--porcelain"), (top / ".git" / "index").read_bytes()) == before
    assert git(top, "worktree", "list").count("\n") == 1


def test_one_revision_is_set_beside_the_folder_as_it_stands(dig: Path) -> None:
    """FOLDER@HEAD alone: what has changed since the last commit."""
    git(dig, "init", "-q")
    git(dig, "add", "-A")
    git(dig, "commit", "-q", "-m", "first")
    edit(dig, SHEET, "Zea mays,cupule,42,", "Zea mays,cupule,43,")
    result = run("compare", f"{dig}@HEAD")

    assert result.exit_code == 0
    assert "  S1, Zea mays, cupule: 42, now 43\n" in result.stdout


REFUSED = {
    "no git": ("{dig}@HEAD", "'{dig}' lies in no git repository, so it has no revision 'HEAD'; compare two folders"),
    "no such revision": (
        "{tracked}@v9",
        "the repository of '{tracked}' has no revision 'v9'; 'git log --oneline' lists them",
    ),
    "a revision that is an option": (
        "{tracked}@--output=x",
        "the repository of '{tracked}' has no revision '--output=x'; 'git log --oneline' lists them",
    ),
    "not there then": ("{later}@HEAD", "'{later}' was not there in revision 'HEAD'"),
    "no such folder": (
        "{dig}/nowhere@HEAD",
        "'{dig}/nowhere@HEAD' is no folder, expected a project folder, or FOLDER@REVISION for git's",
    ),
    "alone": ("{dig}", "'{dig}' stands alone, expected OLD and NEW, or FOLDER@REVISION to set beside FOLDER"),
}


@pytest.mark.parametrize("case", REFUSED)
def test_what_is_not_there_is_named(dig: Path, tmp_path: Path, case: str) -> None:
    """Called wrongly: status 2, what was asked for, what was expected."""
    tracked = Path(shutil.copytree(dig, tmp_path / "tracked"))
    git(tracked, "init", "-q")
    git(tracked, "add", "-A")
    git(tracked, "commit", "-q", "-m", "first")
    later = Path(shutil.copytree(dig, tracked / "later"))
    names = {"dig": dig, "tracked": tracked, "later": later}
    asked, message = (text.format(**names) for text in REFUSED[case])
    result = run("compare", asked)

    assert result.exit_code == 2
    assert result.stderr.splitlines()[-1] == f"Error: {message}"


def test_a_state_with_errors_is_said_and_the_rest_compared(dig: Path, changed: Path) -> None:
    """Litres that cannot be read: the error with its place, the counts compared, claims and words not."""
    edit(changed, RECORDS, "volume_l: 12 ", "volume_l: twelve ")
    result = run("compare", str(dig), str(changed))

    assert result.exit_code == 1
    assert (
        f"     1 error, the first: {RECORDS}:12:15: sample 'S1': volume_l is 'twelve', expected a number above 0\n"
    ) in result.stdout
    assert "Counts: 1 change; what could not be read counts as not there" in result.stdout
    assert "Claims and words: not compared: records with errors are not judged" in result.stdout


def test_folders_that_are_no_projects_are_said_to_be_none(tmp_path: Path) -> None:
    """Two empty folders: an error each, and nothing is compared."""
    one, other = tmp_path / "one", tmp_path / "other"
    one.mkdir()
    other.mkdir()
    result = run("compare", str(one), str(other))

    assert result.exit_code == 1
    assert result.stdout.count("     1 error, the first: ") == 2
    assert "Data: not compared: project.yaml could not be read" in result.stdout


def test_nothing_is_written_into_either_state(dig: Path, changed: Path) -> None:
    """Both folders hold the same files with the same bytes afterwards."""
    before = {p: p.read_bytes() for f in (dig, changed) for p in f.rglob("*") if p.is_file()}
    compare(str(dig), str(changed))

    assert {p: p.read_bytes() for f in (dig, changed) for p in f.rglob("*") if p.is_file()} == before


def test_the_page_needs_no_other_file_and_says_for_whom_it_is(dig: Path, changed: Path, tmp_path: Path) -> None:
    """One file, no script, no link out, a policy that lets in its own style alone; words are escaped."""
    path = changed / "narratives" / "report" / "C1.md"
    path.write_text(path.read_text(encoding="utf-8").replace("Nobody", "<script>x</script> Nobody"), encoding="utf-8")
    page = tmp_path / "changes.html"
    result = run("compare", str(dig), str(changed), "--page", str(page))
    text = page.read_text(encoding="utf-8")

    assert result.exit_code == 0
    assert "for the team, not for the public" in text and "noindex" in text
    assert "<script" not in text and "&lt;script&gt;x&lt;/script&gt; Nobody" in text
    assert not re.search(r"(?:src|href)=\"(?!#)", text) and "url(" not in text
    assert "default-src 'none'; style-src 'sha256-" in text


def test_the_changes_are_given_as_data(dig: Path, changed: Path) -> None:
    """With --json standard output is JSON and nothing else."""
    said = json.loads(run("compare", str(dig), str(changed), "--json").stdout)

    assert said["format"] == "narrate changes 1"
    assert [p["title"] for p in said["parts"]][:4] == ["Records", "Counts", "The project's own packs", "Claims"]


def test_a_pack_of_the_project_that_changed_is_named(dig: Path, tmp_path: Path) -> None:
    """A new file of words in packs/ may be why claims changed."""
    other = Path(shutil.copytree(dig, tmp_path / "other"))
    (other / "packs").mkdir()
    (other / "packs" / "changes.yaml").write_text("retire: []\n", encoding="utf-8")

    assert part(compare(str(dig), str(other)), "The project's own packs") == (
        Change(kind="added", subject="packs/changes.yaml"),
    )


def test_a_sample_with_another_id_and_the_same_counts_is_renamed() -> None:
    """S1 became S01: one change, and no count came or went."""
    old = a_dig([[("Zea mays", "cupule", 12)], [("Zea mays", "kernel", 3)]])
    first = old.samples[0].id
    new = replace(
        old,
        samples=tuple(replace(s, id=f"{s.id}-new") if s.id == first else s for s in old.samples),
        counts=tuple(replace(r, sample=f"{r.sample}-new") if r.sample == first else r for r in old.counts),
    )
    names = renamed(old, new)

    assert [in_one_line(change) for change in changed_records(old, new, names)] == [
        f"sample {first} is now {first}-new"
    ]
    assert changed_counts(old, new, names) == ()


def test_samples_that_cannot_be_told_apart_are_not_called_renamed() -> None:
    """Two samples with the same counts went and two came: which is which is not guessed."""
    old = a_dig([[("Zea mays", "cupule", 12)], [("Zea mays", "cupule", 12)]])
    new = replace(
        old,
        samples=tuple(replace(s, id=f"{s.id}-new") for s in old.samples),
        counts=tuple(replace(r, sample=f"{r.sample}-new") for r in old.counts),
    )
    kinds = [change.kind for change in changed_records(old, new, renamed(old, new))]

    assert sorted(kinds) == ["added", "added", "removed", "removed"]


def test_a_sample_that_went_takes_its_counts_along_in_one_line() -> None:
    """What it held is told in short, not row by row."""
    old = a_dig([[("Zea mays", "cupule", 12)], [("Zea mays", "kernel", 3), ("Zea mays", "cupule", 1)]])
    last = old.samples[-1].id
    new = replace(old, samples=old.samples[:-1], counts=tuple(r for r in old.counts if r.sample != last))
    names = renamed(old, new)

    assert [in_one_line(change) for change in changed_records(old, new, names)] == [
        f"sample {last}: gone, 4 items in 2 rows"
    ]
    assert changed_counts(old, new, names) == ()
