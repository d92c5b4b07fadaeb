"""Exhibit labels: a page of all, and a page of each with its figure, for visitors alone."""

from __future__ import annotations

import re
from dataclasses import replace

from narrate.model.ids import Subject
from narrate.model.narrative import Narrative, Section, Sentence
from narrate.web.pages import pages
from narrate.web.templates import templates_folder
from tests.web.editions import an_edition

C1 = Subject(level="context", id="C1")


def labelled(audience: str, **changed: object) -> dict[str, str]:
    edition = an_edition(audience)
    sentences = (
        Sentence(text="Hearth C1 burned *Zea mays*.", refs=("C1/record",), is_approved=True),
        Sentence(text="So it did.", refs=(), is_approved=True),
    )
    label = Narrative(
        subject=C1, audience="label", title="", summary=None,
        sections=(Section(id="one", heading="", paragraphs=(sentences,)),), is_edited=False,
    )  # fmt: skip
    narratives = {**edition.narratives, ("label", C1): replace(label, **changed)}  # type: ignore[arg-type]
    made = pages(replace(edition, narratives=narratives), templates_folder(), None)
    return {name: raw.decode() for name, raw in made.items() if name.endswith(".html")}


def test_a_label_stands_on_a_page_of_its_own_with_its_figure() -> None:
    """The words as told, the figure of what the context held, and the way to its whole story."""
    page = labelled("public")["labels/c1.html"]

    assert 'Hearth C1 burned <i lang="la">Zea mays</i>. So it did.' in page
    assert page.count('<figure class="chart"') == 1 and 'id="composition"' in page
    assert 'href="../contexts/c1.html"' in page


def test_the_page_of_labels_tells_words_and_approval() -> None:
    """Each label with its number of words, and whether somebody approved it."""
    drafted = labelled("public")["labels/index.html"]
    approved = labelled("public", approved_by="A. Analyst", approved_on="2026-01-02")["labels/index.html"]

    assert "8 words. Not yet approved." in drafted
    assert "8 words. Approved by A. Analyst on 2026-01-02." in approved


def test_an_approval_that_has_lapsed_is_none() -> None:
    """Where what a label rests on has changed since, it counts as not approved."""
    page = labelled("public", approved_by="A. Analyst", lapses=("a count",))["labels/index.html"]

    assert "Not yet approved." in page


def test_a_label_stands_on_no_other_page_of_words() -> None:
    """It is not told again beside the words for visitors, and the site for the team has no such page."""
    assert not re.search("So it did", labelled("public")["contexts/c1.html"])
    assert not [name for name in labelled("review") if name.startswith("labels/")]


def test_without_labels_the_page_says_so() -> None:
    """A project without labels has the page all the same, so that no link is broken."""
    page = pages(an_edition("public"), templates_folder(), None)["labels/index.html"].decode()

    assert "No label was written." in page
