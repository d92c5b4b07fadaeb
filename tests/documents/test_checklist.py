"""The reviewer's checklist held against the published lists that it is made from."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from narrate.documents.blocks import Paragraph, Table
from narrate.documents.checklist import CIFA, ITEMS, SECTIONS
from narrate.documents.inline import plain
from narrate.documents.outline import outline
from narrate.model.edition import Edition
from narrate.model.ids import Subject
from narrate.model.narrative import Narrative, Section, Sentence
from narrate.pipeline.editions import bare_edition
from narrate.pipeline.judged import Judged

PUBLISHED = {
    # Chartered Institute for Archaeologists, toolkit for specialist reporting, checklist
    # (archaeologists.net/work/toolkits/specialist-reporting/checklist): overall project report
    "quantification by weight": "Size of the assemblage: weights",
    "recovery strategy": "Recovery strategy",
    "sampling strategy": "Sampling strategy",
    "selection strategy": "Selection strategy",
    "location of the final archive, with accession number": "Place of the archive, with accession number",
    "interpretation with local and wider context": "Interpretation, local and wider",
    # document information
    "title with subject and project": "Title with subject and project",
    "author": "Author",
    "qualifications": "Author's qualifications",
    "date of data collection": "Date of the data collection",
    "date of analysis or report": "Date of the analysis or report",
    # introduction
    "nature and significance": "Nature and significance",
    "overall size by count": "Size of the assemblage: counts",
    "aims": "Aims",
    "context and feature types in summary": "Contexts and features in summary",
    "date range and phases": "Date range and phases",
    # the headings that follow, whose items were not seen
    "methodology, results, discussion, recommendations": "Method, results, discussion, recommendations",
}
DEFINED = {
    # isgap.org.uk/docs/18, definitions of project report sections
    "non-technical summary": "Summary in plain words",
    "restrictions on reporting or access to records": "Restrictions on reporting and access",
    "variation to the agreed design": "Departures from the plan",
}


def edition(judged: Judged, told: dict[tuple[str, Subject], Narrative] | None = None, **changes: object) -> Edition:
    whole = replace(judged, project=replace(judged.project, **changes))  # type: ignore[arg-type]
    return bare_edition("review", whole, told or {}, (), "test", approved_only=told is not None)


def answers(whole: Edition) -> dict[str, str]:
    table = next(block for block in outline(whole) if isinstance(block, Table) and block.anchor == "checklist")
    return {plain(row[0]): plain(row[3]) for row in table.rows}


@pytest.mark.parametrize(("source", "published"), [(CIFA, PUBLISHED), (SECTIONS, DEFINED)])
def test_every_published_item_is_asked_once(source: str, published: dict[str, str]) -> None:
    """Each item of the published list, as far as it was read, is one of ours under its source, and no other is."""
    asked = [item.asks for item in ITEMS if item.source == source]

    assert sorted(asked) == sorted(published.values())


def test_the_example_meets_every_item_but_three(judged_example: Judged) -> None:
    """That its works were checked is for its author to say; some samples have no size classes, some dates no δ13C."""
    open_items = {asked: answer for asked, answer in answers(edition(judged_example)).items() if answer != "met"}
    works = open_items.pop("Works checked before signing")

    assert works.startswith("missing: ")
    assert open_items == {
        "Radiocarbon dates in full": "missing: δ13C not recorded; program of the calibration not recorded.",
        "Share sorted of every size class": "missing: size classes not recorded for 8 of 51\u00a0samples; no class "
        "below 0.5\u00a0mm recorded for 42, of a finer mesh.",
    }


@pytest.mark.parametrize(("key", "asked"), [("fieldwork", "data collection"), ("date", "analysis or report")])
def test_a_date_without_a_year_is_missing(judged_example: Judged, key: str, asked: str) -> None:
    """'Spring' is no date; common practice, no source."""
    report = {**judged_example.project.report, key: "one spring"}

    assert answers(edition(judged_example, report=report))[f"Date of the {asked}"] == (
        f"missing: no year in it; write one in report: {key} in project.yaml."
    )


@pytest.mark.parametrize(
    ("key", "asked"),
    [
        ("aims", "Aims"),
        ("significance", "Nature and significance"),
        ("sampling_strategy", "Sampling strategy"),
        ("selection_strategy", "Selection strategy"),
        ("departures", "Departures from the plan"),
        ("archive", "Place of the archive, with accession number"),
        ("wider_context", "Interpretation, local and wider"),
        ("nomenclature", "Names followed"),
        ("identification", "Magnification and keys"),
        ("reference_collection", "Reference collection"),
        ("qualifications", "Author's qualifications"),
        ("fieldwork", "Date of the data collection"),
        ("date", "Date of the analysis or report"),
    ],
)
def test_what_the_project_does_not_say_is_missing(judged_example: Judged, key: str, asked: str) -> None:
    """The item names the key, and the place in the text is marked; nothing is made up in its stead."""
    report = {k: text for k, text in judged_example.project.report.items() if k != key}
    whole = edition(judged_example, report=report)
    marked = [b.text for b in outline(whole) if isinstance(b, Paragraph) and b.kind == "missing"]
    in_title = {"qualifications", "fieldwork", "date"}

    assert answers(whole)[asked] == f"missing: not given; write report: {key} in project.yaml."
    assert key in in_title or any(f"report: {key}." in text for text in marked)


def test_sentences_that_wait_are_missed_by_a_copy_of_approved_words(judged_example: Judged) -> None:
    """Some of a phase are approved and three wait: the items say how many."""
    subject = Subject(level="phase", id="early")
    said = Sentence(text="Nutshell was found.", refs=("early/record",))
    section = Section(id="s", heading="", paragraphs=((said,),))
    part = Narrative(subject=subject, audience="report", title="Early", summary=None, sections=(section,), left_out=3)
    found = answers(edition(judged_example, {("report", subject): part}))

    assert found["Method, results, discussion, recommendations"] == "missing: 3 sentences wait for approval."
    assert found["Interpretation, local and wider"] == "missing: 3 sentences wait for approval."


def test_no_section_of_a_law_is_printed(judged_example: Judged) -> None:
    """Numbers of laws were not read by the makers, so none stands in the section: it defers to the law that applies."""
    law = re.compile(r"\b\d+\s?(?:CFR|FR|USC|U\.S\.C)|§|\b(?:Section|section|sec\.) \d|\b(?:NHPA|ARPA|NAGPRA)\b")
    whole = edition(judged_example)
    shown = [block for block in outline(whole) if getattr(block, "kind", "") != "reference"]
    texts = [text for b in shown for text in (getattr(b, "text", ""), getattr(b, "note", ""))]
    found = [text for text in texts if law.search(text)]

    assert [text for text in found if "ISGAP, section 18" not in text] == []
    assert any("follows the laws and consultation that apply where the work was done" in text for text in texts)
