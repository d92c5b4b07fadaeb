"""What stands beside the firmest readings in the summary of a report."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import pytest

from narrate.documents.blocks import Heading, Paragraph
from narrate.documents.outline import outline
from narrate.model.ids import SITE, Subject
from narrate.model.narrative import Narrative
from narrate.pipeline.editions import edition_of
from narrate.telling.tell import narratives

if TYPE_CHECKING:
    from narrate.pipeline.judged import Judged

WHOLE = Subject(level="site", id=SITE)


def _told(judged: Judged, audience: str = "report") -> Narrative:
    made = narratives(judged.project, judged.packs, judged.findings, judged.claims, audience, levels=("site",))
    return made[WHOLE]


@pytest.fixture(scope="module")
def account(judged_example: Judged) -> list[str]:
    sections = [section for section in _told(judged_example).sections if section.id == "summary"]
    return [s.text for section in sections for paragraph in section.paragraphs for s in paragraph]


def test_the_change_is_counted_otherwise_too(account: list[str], judged_example: Judged):
    """By context, where maize alone would not be significant, and by number, recounted from the sheets."""
    phase_of = {c.id: c.phase for c in judged_example.project.contexts}
    phase_of_sample = {s.id: phase_of[s.context] for s in judged_example.project.samples}
    maize = {"early": 0, "late": 0, "None": 0}  # one layer belongs to no phase
    for row in judged_example.project.counts:
        if row.identification.taxon == "Zea mays" and row.condition == "charred":
            maize[str(phase_of_sample[row.sample])] += row.count.number or 0

    assert "maize in 5 of 10 and later in 10 of 11 (p 0.063, not significant by itself)" in account[0]
    assert (maize["early"], maize["late"]) == (9, 2100)
    assert "and maize from nine to 2,100 (in 191 and 216 litres)" in account[0]


def test_woods_stores_dates_and_what_is_open_are_named(account: list[str]):
    """One sentence each; the finds of maize that nobody dated are among what stays open."""
    text = " ".join(account)

    assert "pine (6 of 16 samples, then 21 of 22)" in text
    assert "the burning of stored food where it was kept in C05 and C17" in text
    assert "Seven radiocarbon dates were taken; of crops chenopod, maize, and common bean were dated" in text
    assert account[-1].startswith("What stays open is why the Early hamlet ended or why the Late hamlet began")
    assert account[-1].endswith(
        "whether the finds of maize in the Early hamlet, of which none was dated, belong there."
    )


def test_it_stands_in_the_summary_and_not_in_the_discussion(account: list[str], judged_example: Judged):
    """Whatever id a file of drafts has given to its section, and with its letters of citations."""
    told = _told(judged_example)
    told = replace(told, sections=tuple(replace(s, id=f"part-{n}") for n, s in enumerate(told.sections)))
    blocks = outline(edition_of("review", judged_example, {("report", WHOLE): told}, (), "test"))
    headings = [n for n, b in enumerate(blocks) if isinstance(b, Heading) and b.level == 2]
    held = [n for n, b in enumerate(blocks) if isinstance(b, Paragraph) and account[0].split(",")[0] in b.text]

    assert "Counted by context" in account[0]
    summary = next(n for n in headings if blocks[n].text == "Summary")  # type: ignore[union-attr]
    assert summary < held[0] < next(n for n in headings if n > summary)
    assert not any(isinstance(b, Heading) and b.text == "The account in short" for b in blocks)


@pytest.mark.parametrize("audience", ["public", "review"])
def test_audiences_without_a_heading_for_it_are_not_told_it(audience: str, judged_example: Judged):
    """The sites have pages for each of these."""
    assert not any(section.id == "summary" for section in _told(judged_example, audience).sections)
