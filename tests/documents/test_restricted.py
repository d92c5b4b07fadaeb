"""A copy that holds restricted contexts says so wherever they stand, and an open one never does."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

import pytest

from narrate.documents.blocks import Block, Figure, Foot, Heading, Paragraph, Table, foot_of
from narrate.documents.outline import outline
from narrate.documents.restricted import MARK, marked
from narrate.model.edition import Edition
from narrate.model.project import Disclosure
from narrate.pipeline.editions import edition_of
from narrate.pipeline.judged import Judged
from narrate.telling.tell import narratives


def _texts(blocks: Sequence[Block]) -> list[str]:
    found: list[str] = []
    for block in blocks:
        if isinstance(block, Heading | Paragraph):
            found.append(block.text)
        elif isinstance(block, Table):
            found += [block.caption, block.note, *block.columns, *(cell for row in block.rows for cell in row)]
        elif isinstance(block, Figure):
            found += [block.caption, block.note, block.alt, *re.findall(r">([^<>]+)<", block.svg)]
    return found


@pytest.fixture(scope="module")
def edition(judged_example: Judged) -> Edition:
    w = judged_example
    made = narratives(w.project, w.packs, w.findings, w.claims, "report")
    told = {("report", subject): narrative for subject, narrative in made.items()}
    return edition_of("review", w, told, (), "test")


def test_every_naming_of_a_restricted_context_is_marked(edition: Edition) -> None:
    """Sentences, headings, heads and rows of tables, captions and the labels of drawings, of its samples as well."""
    project = edition.project
    ids = ["C19", *(sample.id for sample in project.samples if sample.context == "C19")]
    texts = _texts(outline(edition))
    named = re.compile(rf"(?<![\w-])(?:{'|'.join(ids)})(?![\w-])( \{MARK})?")
    found = [(match[1], text) for text in texts for match in named.finditer(text)]

    assert len(ids) == 3 and len(found) > 30
    assert [text for mark, text in found if not mark] == []
    assert "C19 [restricted] other" in texts
    assert not any(f"{MARK} {MARK}" in text for text in texts)


def test_the_cover_and_the_foot_say_that_the_copy_is_restricted(edition: Edition) -> None:
    """The cover names the mark, and what the mark cannot show: that totals and shares hold the remains as well."""
    blocks = outline(edition)
    (cover,) = (b.text for b in blocks if isinstance(b, Paragraph) and b.text.startswith("**This copy holds"))

    assert "marked [restricted] wherever it is named" in cover
    assert "the totals, shares and figures of their phase and of the whole dig" in cover
    assert foot_of(blocks) == "Restricted copy, for the team alone. Draft for a specialist's signature."


def test_a_copy_without_restricted_contexts_bears_no_mark(edition: Edition) -> None:
    """Nothing is marked, and the foot is that of any draft."""
    blocks = outline(replace(edition, project=replace(edition.project, disclosure=Disclosure())))

    assert not any("[restricted]" in text for text in _texts(blocks))
    assert foot_of(blocks) == "Draft for a specialist's signature."


def test_an_id_that_is_a_number_is_no_count() -> None:
    """In heads, rows and captions a number alone is an id; among numbers and in sentences it may be a count."""
    table = Table(caption="Counts: 12.", columns=("Plant", "12", "S1"), rows=(("12", "12", "3"), ("11, 12", "1", "12")),
                  numbers=(1, 2))  # fmt: skip
    said = [Heading(level=2, text="12, burial"), Paragraph(text="Of 12 samples 3 are of 12."), table, Foot(text="12")]
    heading, sentence, found, foot = marked(said, ["12"])

    assert heading == replace(said[0], text="12 [restricted], burial")
    assert (sentence, foot) == (said[1], said[3])
    assert isinstance(found, Table) and found.columns == ("Plant", "12 [restricted]", "S1")
    assert found.rows == (("12 [restricted]", "12", "3"), ("11, 12 [restricted]", "1", "12"))
