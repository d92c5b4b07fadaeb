"""What is asked of seasons, and what the seasons of phases hang on."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import TYPE_CHECKING

import pytest

from narrate.model.claims import Claims
from narrate.model.ids import Subject
from narrate.model.narrative import Narrative
from narrate.telling.tell import narratives
from tests.telling.told_once import ToldOnce

if TYPE_CHECKING:
    from narrate.pipeline.judged import Judged

Told = Mapping[str, Mapping[Subject, Narrative]]


def _season(told: Told, level: str, id: str) -> str:
    sections = told["report"][Subject(level=level, id=id)].sections  # type: ignore[arg-type]
    return " ".join(s.text for section in sections if section.id == "season" for p in section.paragraphs for s in p)


@pytest.mark.parametrize(("level", "id"), [("phase", "early"), ("phase", "late"), ("site", "site")])
def test_seasons_open_with_what_is_asked(told_of_example: ToldOnce, level: str, id: str):
    """Nuts and crops were had in autumn whenever they burned: what is asked is whether that was repeated."""
    first = _season(told_of_example, level, id).split(". ")[0]

    assert "hickory nuts" in first.lower()
    assert "in autumn whenever they burned" in first
    assert "whether such work was repeated" in first


def test_an_oven_full_of_shell_says_so_before_its_soft_fruit(told_of_example: ToldOnce):
    """C03 held 511 pieces of nutshell, had in autumn alone, and four seeds of soft fruit."""
    text = _season(told_of_example, "context", "C03")

    assert text.startswith("Hickory nuts, acorns, and black walnuts were gathered in autumn whenever they burned")
    assert text.lower().index("whenever they burned") < text.lower().index("was charred (4 seeds)")


def test_what_all_keeps_is_asked_no_such_thing(told_of_example: ToldOnce):
    """C05 held nothing but what keeps: that its season stays open is said once."""
    text = told_of_example["report"][Subject(level="context", id="C05")].text

    assert "whenever" not in text


def test_a_season_of_soft_fruit_alone_says_so(told_of_example: ToldOnce):
    """Late summer in C16 and of the Late hamlet rests on elderberry, autumn on what keeps as well."""
    assert "the repeated gathering of soft fruit in late summer" in _season(told_of_example, "phase", "late")
    assert "repeated gathering of soft fruit in autumn" not in _season(told_of_example, "phase", "late")


def test_then_names_one_season(told_of_example: ToldOnce):
    """Of two seasons in one sentence 'then' would name neither."""
    text = _season(told_of_example, "phase", "late")

    assert "in autumn, as seeds, grain or shell of plants that ripen then, chiefly hickory nuts and acorns" in text


def test_seasons_of_phases_hang_on_their_plants(told_of_example: ToldOnce):
    """Bramble, of June to August, falls between the seasons named: 3 and then 8 samples hold it charred (counts/)."""
    text = _season(told_of_example, "site", "site")

    assert "hangs on its plants" in text
    assert "three samples of the Early hamlet and eight samples of the Late hamlet" in text


def test_a_context_firmer_than_its_phase_is_so_as_one_deposit(judged_example: Judged):
    """The phase holds the same seeds and more: were C06 firmer, then for their lying together, and that is said."""
    whole = judged_example
    firm = {
        subject: tuple(
            replace(c, grade="supports", limits=(), stability=0.9) if c.id == "C06/season.autumn" else c
            for c in whole.claims.about(subject)
        )
        for subject in whole.claims.by_subject
    }
    claims = Claims(by_id={c.id: c for group in firm.values() for c in group}, by_subject=firm)
    told = narratives(whole.project, whole.packs, whole.findings, claims, "report", ("phase",))

    text = told[Subject(level="phase", id="early")].text
    assert "In C06, one deposit by itself, soft fruit" in text
    assert "firmer than over the phase, which is judged by the number of samples" in text
