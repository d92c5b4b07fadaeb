"""Language packs, read from folders."""

from __future__ import annotations

from pathlib import Path

from narrate.reading.packs import read_packs


def _written(folder: Path, text: str) -> Path:
    packs = folder / "packs"
    (packs / "languages" / "en").mkdir(parents=True)
    (packs / "languages" / "en" / "ours.yaml").write_text(text, encoding="utf-8")
    return packs


def test_a_project_adds_phrases_of_its_own(tmp_path: Path):
    """A phrase of a project's own packs stands beside those that come with narrate."""
    own = "language: en\noverclaims:\n  - {says: blatantly, sort: certainty, why: it shouts, instead: the figures}\n"
    shipped = read_packs(())[0].languages["en"].overclaims

    packs, problems = read_packs((), _written(tmp_path, own))

    assert problems == ()
    assert [phrase.pattern for phrase in packs.languages["en"].overclaims[len(shipped) :]] == ["blatantly"]


def test_a_phrase_that_is_no_regular_expression_is_told(tmp_path: Path):
    """An open bracket is named with its line and how to mend it."""
    own = "language: en\noverclaims:\n  - {says: '(proves', sort: certainty, why: x, instead: y}\n"

    _, problems = read_packs((), _written(tmp_path, own))

    assert [(p.code, p.place.path, p.place.line) for p in problems] == [("N602", "packs/languages/en/ours.yaml", 3)]
    assert problems[0].message == (
        "phrase '(proves': says is '(proves', expected a regular expression "
        "(missing ), unterminated subpattern at position 0)"
    )
    assert problems[0].help == "put a backslash before each bracket that stands for itself"
