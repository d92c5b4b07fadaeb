"""
Years, numbers and units as a project chooses to write them.

Eras: AD before and BC behind the year, CE and BCE behind it (The Chicago Manual of Style, 17th ed., 9.34; from
memory); cal BP counted back from AD 1950 (Stuiver, M. & Polach, H. A. 1977, Radiocarbon 19:355–363; from memory).
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from narrate.model.ids import Subject
from narrate.model.style import Style
from narrate.telling import numbers
from narrate.telling.tell import narratives

C12 = Subject(level="context", id="C12")


@pytest.mark.parametrize(
    ("start", "end", "dates", "era", "told"),
    [
        (950, 1050, "cal AD", "AD", "cal AD 950–1050"),
        (950, 1050, "cal AD", "CE", "950–1050 cal CE"),
        (950, 1050, "cal AD", "BP", "1000–900 cal BP"),
        (950, 1050, "AD", "BP", "AD 950–1050"),
        (-1200, -1100, "cal BC", "CE", "1200–1100 cal BCE"),
        (-1200, -1100, "cal BC", "BP", "3149–3049 cal BP"),
        (-100, 50, "cal", "CE", "100 cal BCE–50 cal CE"),
        (-100, 50, "cal", "AD", "100 cal BC–cal AD 50"),
        (None, 900, "cal AD", "CE", "until 900 cal CE"),
        (950, 950, "AD", "CE", "950 CE"),
    ],
)
def test_years_bear_the_era_of_the_project(start: int | None, end: int | None, dates: str, era: str, told: str):
    """There is no year 0: 1200 BC is 3149 years before AD 1950; years that are not calibrated are never called BP."""
    assert numbers.years(start, end, dates, era=era) == told


@pytest.mark.parametrize(
    ("style", "holds", "lacks"),
    [
        (Style(era="CE"), "1250–1350 cal CE", "AD 1250"),
        (Style(litre="liter"), "liters", "litre"),
        (Style(litre="L"), " L)", "litre"),
        (Style(dash="hyphen"), "AD 1250-1350", "–"),
    ],
)
def test_a_report_keeps_the_style_of_its_project(
    style: Style, holds: str, lacks: str, project, packs, findings, claims
):
    """What project.yaml says under style goes before the audience's own manner."""
    told = narratives(replace(project, style=style), packs, findings, claims, "report")[C12].text

    assert holds in told
    assert lacks not in told


def test_visitors_read_years_before_1950_in_words(project, packs, findings, claims):
    """'cal BP' is no word for visitors."""
    phases = tuple(replace(phase, dates="cal AD") for phase in project.phases)
    styled = replace(project, phases=phases, style=Style(era="BP"))
    told = narratives(styled, packs, findings, claims, "public")[C12].text

    assert "about 700 to 600 years before AD 1950" in told


def test_thousands_are_set_apart_as_chosen():
    """A comma, a narrow space or nothing."""
    assert [numbers.about(1402, thousands=mark) for mark in (",", "\u202f", "")] == [
        "about 1,400",
        "about 1\u202f400",
        "about 1400",
    ]
