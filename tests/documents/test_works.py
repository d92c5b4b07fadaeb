"""Works of the list: letters behind years that read alike, and what the author has yet to check in print."""

from __future__ import annotations

from dataclasses import replace

from narrate.documents.blocks import Block, Paragraph, Table
from narrate.documents.html import html
from narrate.documents.inline import plain
from narrate.documents.markdown import markdown
from narrate.documents.outline import outline
from narrate.documents.pdf import pictures
from narrate.documents.references import listed_works
from narrate.model.edition import Edition
from narrate.model.ids import Subject
from narrate.model.narrative import Narrative, Section, Sentence
from narrate.model.packs import Source
from narrate.pipeline.editions import bare_edition
from narrate.pipeline.judged import Judged
from tests.documents.test_media import text_of_pdf, text_of_word, word

EARLY = Subject(level="phase", id="early")


def edition(judged: Judged, said: str = "", works: tuple[Source, ...] = (), **report: str) -> Edition:
    """The example with further works in its packs, and one sentence told of its first phase."""
    packs = replace(judged.packs, sources={**judged.packs.sources, **{work.key: work for work in works}})
    project = replace(judged.project, report={**judged.project.report, **report})
    sentence = Sentence(text=said or "Nothing.", refs=("early/record",))
    section = Section(id="s", heading="", paragraphs=((sentence,),))
    told = Narrative(subject=EARLY, audience="report", title="Early", summary=None, sections=(section,))
    return bare_edition("review", replace(judged, packs=packs, project=project), {("report", EARLY): told}, (), "test")


def a_work(judged: Judged, key: str, title: str, authors: str = "Smith, B. D.", year: str = "1992") -> Source:
    place = next(iter(judged.packs.sources.values())).place
    return Source(key=key, authors=authors, year=year, title=title, container="Papers 1", known="read", place=place)  # type: ignore[arg-type]


def texts(blocks: tuple[Block, ...], kind: str) -> list[str]:
    return [plain(block.text) for block in blocks if isinstance(block, Paragraph) and block.kind == kind]


def test_two_works_of_one_author_and_year_have_letters(judged_example: Judged) -> None:
    """Smith 1992 becomes 1992a and 1992b by title, 'The' passed over; text and list of all four outputs have them."""
    other = a_work(judged_example, "smith-1992-acorns", "The acorns of the east")
    whole = edition(judged_example, "Acorns were eaten (see Smith 1992a; Smith 1992b).", (other,))
    blocks = outline(whole)
    kept = tuple(b for b in blocks if isinstance(b, Paragraph) and b.kind in ("reference", "body", "item"))
    kept = (blocks[0], *(b for b in kept if "Smith" in b.text))
    drawn = pictures(blocks)

    listed = [line for line in texts(blocks, "reference") if "Smith, B. D. 1992" in line]
    assert listed[0].startswith("Smith, B. D. 1992a. The acorns of the east.")
    assert listed[1].startswith("Smith, B. D. 1992b. Rivers of Change")
    assert len(listed) == 2
    read = (markdown(kept), html(kept, drawn), text_of_word(word(kept, drawn)), text_of_pdf(kept, drawn))
    for text in read:
        assert "see Smith 1992a; Smith 1992b" in " ".join(text.replace("\\", "").split())
        assert "Smith, B. D. 1992a. " in text and "Smith, B. D. 1992b. " in text


def test_works_behind_readings_have_the_letters_of_the_list(judged_example: Judged) -> None:
    """The pack's Smith 1992, behind readings that hold, is named 1992b once the list has an earlier title."""
    other = a_work(judged_example, "smith-1992-acorns", "Acorns of the east")
    whole = edition(judged_example, "Acorns were eaten (see Smith 1992a).", (other,))
    behind = [text for text in texts(outline(whole), "item") if "Smith 1992" in text]

    assert behind and all("Smith 1992b" in text for text in behind)


def test_a_letter_without_its_fellow_is_not_set(judged_example: Judged) -> None:
    """Drafts tell two works of the packs apart; where the section lists one of them, nobody looks for the other."""
    works = (
        a_work(judged_example, "roe-a", "Acorns", "Roe, A.", "1991"),
        a_work(judged_example, "roe-b", "Beans", "Roe, A.", "1991"),
    )
    blocks = outline(edition(judged_example, "Beans were grown (see Roe 1991b).", works))

    assert "Beans were grown (see Roe 1991)." in texts(blocks, "body")
    assert [line for line in texts(blocks, "reference") if "Roe" in line] == ["Roe, A. 1991. Beans. Papers 1."]


def test_a_text_older_than_the_letters_lists_both_works(judged_example: Judged) -> None:
    """'Roe 1991' may mean either: both are in the list, so that no citation leads nowhere."""
    works = (
        a_work(judged_example, "roe-a", "Acorns", "Roe, A.", "1991"),
        a_work(judged_example, "roe-b", "Beans", "Roe, A.", "1991"),
    )
    whole = edition(judged_example, "Beans were grown (see Roe 1991).", works)

    assert [e.cited for e in listed_works(whole) if "Roe" in e.cited] == ["Roe 1991a", "Roe 1991b"]


def test_a_work_of_the_project_that_reads_like_another_is_told(judged_example: Judged) -> None:
    """The project cites a Smith 1992 of its own: the checklist says so; with a letter of its own it is met."""
    asked = "Each citation leads to one work"
    alike = edition(judged_example, references="- Smith, B. D. 1992. Acorns. *Papers* 1.")
    apart = edition(judged_example, references="- Smith, B. D. 1992a. Acorns. *Papers* 1.")

    assert answers(alike)[asked] == (
        "missing: two works of the list are cited as 'Smith 1992'; put a letter behind the year of the project's own, "
        "in report: references and in its words."
    )
    assert answers(apart)[asked] == "met"


def answers(whole: Edition) -> dict[str, str]:
    table = next(block for block in outline(whole) if isinstance(block, Table) and block.anchor == "checklist")
    return {plain(row[0]): plain(row[3]) for row in table.rows}


def test_works_to_be_checked_are_counted_at_the_head_and_listed_once(judged_example: Judged) -> None:
    """One notice says how many are marked in the list; the checklist has a row for each, in the order of the list."""
    blocks = outline(edition(judged_example))
    marked = [line for line in texts(blocks, "reference") if line.endswith("]")]
    (said,) = (b.text for b in blocks if isinstance(b, Paragraph) and "Works to be checked before signing" in b.text)
    table = next(b for b in blocks if isinstance(b, Table) and b.anchor == "works-to-check")
    works = len(texts(blocks, "reference"))

    assert said.startswith(f"**Works to be checked before signing: {len(marked)} of the {works} that are cited.**")
    assert blocks.index(next(b for b in blocks if getattr(b, "text", "") == said)) < 8
    assert said.endswith("each is marked in the list of references and listed in {works-to-check}.")
    assert [row[0] for row in table.rows] == [str(n) for n in range(1, len(marked) + 1)]
    assert len(marked) > 20
    for row, line in zip(table.rows, marked, strict=True):
        assert row[1].split()[0] in line and row[1][-4:] in line


def test_each_row_says_what_there_is_to_check(judged_example: Judged) -> None:
    """The entry too where it is from memory, and the questions that the readings behind it are about."""
    whole = edition(judged_example)
    table = next(b for b in outline(whole) if isinstance(b, Table) and b.anchor == "works-to-check")
    found = {plain(row[1]): row[2:] for row in table.rows}

    assert found["Binford 1967"] == ("what it is cited for and the entry itself", "fuel")
    assert found["Asch and Asch 1985"] == ("what it is cited for", "food, season")


def test_a_work_that_the_author_checked_loses_its_mark(judged_example: Judged) -> None:
    """`report: works_checked` names works as the text cites them; what it names in vain is told, never passed over."""
    before, after = edition(judged_example), edition(judged_example, works_checked="Binford 1967; Roe 1901")
    line = next(text for text in texts(outline(after), "reference") if "Binford" in text)
    waiting = {e.cited for e in listed_works(before) if e.mark} - {e.cited for e in listed_works(after) if e.mark}

    assert line.startswith("Binford, L. R. 1967.")
    assert waiting == {"Binford 1967"}
    assert any("1 work was checked by the author of the section." in text for text in texts(outline(after), "body"))
    assert answers(after)["Works checked before signing"].endswith(
        "report: works_checked names Roe 1901, which the list does not hold."
    )


def test_a_section_whose_works_were_all_checked_is_free_of_the_notice(judged_example: Judged) -> None:
    """Neither the head nor the list marks anything, and the item is met."""
    every = "; ".join(entry.cited for entry in listed_works(edition(judged_example)) if entry.mark)
    whole = edition(judged_example, works_checked=every)
    blocks = outline(whole)

    assert not any("Works to be checked" in getattr(b, "text", "") for b in blocks)
    assert not any(isinstance(b, Table) and b.anchor == "works-to-check" for b in blocks)
    assert answers(whole)["Works checked before signing"] == "met"
