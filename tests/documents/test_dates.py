"""Radiocarbon dates of the section: what is given, and what is said to be lacking."""

from __future__ import annotations

from dataclasses import replace

import pytest

from narrate.documents.blocks import Paragraph
from narrate.documents.dates import dates_lacking, dates_told, items_of
from narrate.model.edition import Edition
from narrate.pipeline.editions import edition_of
from narrate.pipeline.judged import Judged

FULL = (
    "- AB-123: maize kernel; 700 ± 20 BP; cal AD 1275–1305\n\n"
    "δ13C -9.8 ‰. Calibrated against IntCal20 by our own program."
)


def edition(judged: Judged, radiocarbon: str) -> Edition:
    report = {**judged.project.report, "radiocarbon": radiocarbon}
    return edition_of("review", replace(judged, project=replace(judged.project, report=report)), {}, (), "test")


def test_dates_stand_one_an_item(judged_example: Judged) -> None:
    """A line that begins with a hyphen is a date, with the lines that go on with it; what stands around is text."""
    found = list(dates_told(edition(judged_example, f"Two dates.\n{FULL}")))

    assert [(block.kind, block.text) for block in found if isinstance(block, Paragraph)] == [
        ("body", "Two dates."),
        ("item", "AB-123: maize kernel; 700 ± 20 BP; cal AD 1275–1305"),
        ("body", "δ13C -9.8 ‰. Calibrated against IntCal20 by our own program."),
    ]


def test_a_date_without_its_laboratory_code_says_so(judged_example: Judged) -> None:
    """Millard 2014 asks for the code of every determination; the item itself says that it is not there."""
    found = list(dates_told(edition(judged_example, "- maize kernel; 700 ± 20 BP; cal AD 1275–1305")))

    assert found == [
        Paragraph(text="maize kernel; 700 ± 20 BP; cal AD 1275–1305 (laboratory code not recorded)", kind="item")
    ]


def test_phases_with_years_and_no_dates_lack_every_code(judged_example: Judged) -> None:
    """What has to be written is marked in the text."""
    (found,) = dates_told(edition(judged_example, ""))

    assert isinstance(found, Paragraph) and found.kind == "missing"
    assert found.text.startswith("To be written: laboratory code not recorded of any date behind the phases.")


@pytest.mark.parametrize(
    ("text", "lacking"),
    [
        (FULL, ""),
        ("", "laboratory code not recorded of any date behind the phases; write report: radiocarbon"),
        (
            "- AB-123: maize; 700 ± 20 BP\n- maize; 690 BP\n\nAll calibrated.",
            "laboratory code not recorded of 1 of 2 dates; "
            "conventional age with its error not recorded of 1 of 2 dates; "
            "δ13C not recorded; program of the calibration not recorded",
        ),
        ("- AB-123: maize; 700 ± 20 BP", "calibration not recorded; δ13C not recorded"),
        ("Two dates of maize.", "laboratory code not recorded; conventional age with its error not recorded; "
         "calibration not recorded; δ13C not recorded"),
    ],
)  # fmt: skip
def test_the_checklist_says_what_dates_lack(judged_example: Judged, text: str, lacking: str) -> None:
    """Code, age with its error, and calibration, as Millard 2014 asks (Radiocarbon 56, 555–559)."""
    assert dates_lacking(edition(judged_example, text)) == lacking


def test_the_dates_of_the_example_lack_ratio_and_program(judged_example: Judged) -> None:
    """As many as the phases say that they rest on, three and four; what is not on record is told (Millard 2014)."""
    assert len(items_of(judged_example.project.report["radiocarbon"])) == 7
    assert dates_lacking(edition_of("review", judged_example, {}, (), "test")) == (
        "δ13C not recorded; program of the calibration not recorded"
    )


@pytest.mark.parametrize(
    ("dates", "basis", "asked"),
    [
        ("cal AD", "pottery of one style", True),
        ("cal AD", "two AMS dates", False),
        ("AD", "pottery of one style", False),
    ],
)
def test_cal_is_said_of_radiocarbon_years_alone(judged_example: Judged, dates: str, basis: str, asked: bool) -> None:
    """Years by pottery are calendar years (Millard 2014, Radiocarbon 56, 555–559, from memory): the section asks."""
    first, *others = judged_example.project.phases
    phases = (replace(first, dates=dates, basis=basis), *others)
    whole = edition_of(
        "review", replace(judged_example, project=replace(judged_example.project, phases=phases)), {}, (), "test"
    )
    found = [block.text for block in dates_told(whole) if isinstance(block, Paragraph) and block.kind == "missing"]

    assert found == (
        [
            "To be written: what the calibrated years of Early hamlet rest on. 'cal' is said of radiocarbon dates alone "
            "(Millard 2014): name them in the basis of the phase, or write dates: AD where pottery or coins give the "
            "years."
        ]
        if asked
        else []
    )
