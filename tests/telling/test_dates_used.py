"""Radiocarbon dates of the account are used: beside the phases, for crops that were dated, for what lies between."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from narrate.model.ids import SITE, Subject
from narrate.model.narrative import Narrative
from narrate.model.style import Style
from narrate.telling.tell import narratives

if TYPE_CHECKING:
    from narrate.pipeline.judged import Judged

BEAN = "- AB-24: bean, one, from C12; 690 ± 20 BP; cal AD 1275–1305 (74.7%), 1365–1385 (21.0%)"
NUT = "- AB-17: hickory nutshell, from C03; 1045 ± 20 BP; cal AD 975–985 (2.5%), 985–1060 (93.0%)"


def _told(judged: Judged, audience: str = "report", **report: str) -> Narrative:
    project = replace(judged.project, report={**judged.project.report, **report})
    return narratives(project, judged.packs, judged.findings, judged.claims, audience, levels=("site",))[
        Subject(level="site", id=SITE)
    ]


def _of(told: Narrative, id: str) -> list[str]:
    return [s.text for section in told.sections if section.id == id for p in section.paragraphs for s in p]


def test_a_crop_that_was_dated_itself_gets_a_sentence(judged_example: Judged):
    """The bean with both its ranges and the work on its beginnings; maize with the span of three dates."""
    told = _told(judged_example)
    crops, bean = _of(told, "dates")[-2:]

    assert "common bean of C12 (VRL-0424; cal AD 1275–1305, 74.7%, or cal AD 1365–1385, 21.0%)" in crops
    assert "maize of C13 (VRL-0422), C12 (VRL-0423), and C17 (VRL-0427), with main ranges within cal AD 1265–1310" in crops
    assert "hickory" not in crops
    assert bean.startswith("Common bean is known in the region from AD 1250 on")
    assert "(see Hart et al. 2002)" in bean and bean.endswith("by itself it leaves the later range open.")


def test_dates_stand_beside_the_years_of_their_phase(judged_example: Judged):
    """Main ranges, and how much of the probability given lies outside: 3.7 + 1.6 + 0.4 = 5.7% of VRL-0419."""
    early, late, *_ = _of(_told(judged_example), "dates")

    assert "within cal AD 985–1050" in early
    assert "of the ranges printed 5.7% (VRL-0419, the most of any one of them) lies outside" in early
    assert "within cal AD 1265–1310" in late and "33.1% (VRL-0427, the most" in late


def test_one_date_that_lies_within_its_phase(judged_example: Judged):
    """Said in the singular, and that nothing lies outside."""
    inside = _told(judged_example, radiocarbon=BEAN.replace(", 1365–1385 (21.0%)", ""))
    dates = _of(inside, "dates")

    assert dates[0] == (
        "One radiocarbon date of the Late hamlet has its main range within cal AD 1275–1305, and nothing of what "
        "is given of it lies outside the years of the phase."
    )
    assert dates[1].startswith("One crop was dated by a piece of its own: common bean of C12 (AB-24; cal AD 1275–1305")


def test_the_gap_says_by_what_it_is_reckoned(judged_example: Judged):
    """By the years of the phases, and by the main ranges where both phases have them: 1275 - 1060 = 215."""
    both, one = _told(judged_example, radiocarbon=f"{NUT}\n{BEAN}"), _told(judged_example, radiocarbon=BEAN)

    (open_both,) = [text for text in _of(both, "open") if "no phase fills" in text]
    (open_one,) = [text for text in _of(one, "open") if "no phase fills" in text]
    assert "some 200 years by those given to the phases, and 215 between the main ranges" in open_both
    assert open_one.endswith("some 200 years by those given to the phases.")


def test_dates_that_are_no_list_or_of_other_years_are_not_read(judged_example: Judged):
    """Years BC and BP, and dates in running text, are told in the introduction alone; visitors are told none of it."""
    for account in ("The bean of C12 gave 690 ± 20 BP.", "- AB-24: bean from C12; 690 ± 20 BP; 675–645 cal BP (95%)"):
        told = _of(_told(judged_example, radiocarbon=account), "dates")
        assert not any("main range" in text for text in told)
    assert _of(_told(judged_example, "public"), "dates") == []


def test_every_sentence_of_the_dates_names_what_it_rests_on(judged_example: Judged):
    """The records of the contexts, and the find that was dated."""
    told = _told(judged_example)
    (section,) = (section for section in told.sections if section.id == "dates")
    refs = [set(sentence.refs) for paragraph in section.paragraphs for sentence in paragraph]

    assert {"C03/record", "C05/record"} <= refs[0] and {"C12/record", "C13/record", "C17/record"} <= refs[1]
    assert any(ref.startswith("C12/found.phaseolus-vulgaris") for ref in refs[2] & refs[3])


def test_a_report_gives_dates_of_a_context_in_short(judged_example: Judged):
    """Code, material and age, since the section prints the whole list; an entry without ranges is quoted as it is."""
    c12, w = Subject(level="context", id="C12"), judged_example

    def told(account: str) -> str:
        project = replace(w.project, report={**w.project.report, "radiocarbon": account})
        return narratives(project, w.packs, w.findings, w.claims, "report", levels=("context",))[c12].text

    assert (
        "“VRL-0423: maize kernel, one, from hearth C12; 700 ± 20 BP”; “VRL-0424: bean cotyledon, one, from hearth C12; "
        "690 ± 20 BP”, of which the calibrated ranges stand with the dates of the project."
    ) in told(w.project.report["radiocarbon"])
    assert "“AB-24: bean, one, from C12; 690 ± 20 BP”" in told("- AB-24: bean, one, from C12; 690 ± 20 BP")


def test_years_are_written_as_the_project_has_them(judged_example: Judged):
    """Before present and with hyphens: 1950 - 1265 = 685, 1950 - 1310 = 640; the pack's year for the bean as well."""
    w = judged_example
    project = replace(w.project, style=Style(era="BP", dash="hyphen"))
    told = narratives(project, w.packs, w.findings, w.claims, "report", levels=("site",))[
        Subject(level="site", id=SITE)
    ]
    text = " ".join(_of(told, "dates"))

    assert "main ranges within 685-640 cal BP" in text and "known in the region from 700 cal BP on" in text
    assert "AD" not in text and "–" not in text
