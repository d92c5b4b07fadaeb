"""The section in Word, PDF, HTML and Markdown: one text, tags, fields and styles; read by libraries from outside."""

from __future__ import annotations

import io
import re
import subprocess
import tempfile
import zipfile
from collections.abc import Sequence
from html import escape
from html.parser import HTMLParser
from pathlib import Path

import docx
import pikepdf
import pytest
from docx.oxml.ns import qn
from PIL import Image as Picture

from narrate.documents.blocks import (
    Block,
    Contents,
    Figure,
    Foot,
    Heading,
    Paragraph,
    Table,
    Unfit,
    foot_of,
    listed,
    on_wide_pages,
)
from narrate.documents.html import html
from narrate.documents.inline import labels, plain
from narrate.documents.markdown import markdown
from narrate.documents.outline import outline
from narrate.documents.pdf import pdf, pictures, typst_source
from narrate.documents.word import word
from narrate.model.report_blocks import ReportBlock
from narrate.pipeline.editions import edition_of
from narrate.pipeline.judged import Judged
from narrate.telling.tell import narratives

DRAWING = (
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 60 20"><rect width="40" height="10" fill="#123456"/></svg>'
)
SMALL: tuple[Block, ...] = (
    Heading(level=1, text="Plant remains: a dig"),
    Contents(),
    Heading(level=2, text="Results", anchor="results"),
    Paragraph(text="*Zea mays* weighed 12 g; see {counts} and {bars}. 3 \\* 4, #5, $6, [7] <8> @nine _ten_ ~ `e`"),
    Paragraph(text="1. not a list", kind="item"),
    Paragraph(text="*Zea mays*; *Carya*(shell) {counts}; 12–19; 0.5-1(b) **strong**; 7–9[c]"),
    Table(
        caption="Counts.",
        columns=("Plant", "C1"),
        rows=(("*Zea mays*", "5 cf."),),
        note="n.",
        anchor="counts",
        is_wide=True,
    ),
    Figure(caption="Bars.", alt="One bar of 40.", svg=DRAWING, anchor="bars"),
    Heading(level=3, text="After"),
    Paragraph(text="The end.", kind="missing"),
)


@pytest.fixture(scope="module")
def section(judged_example: Judged) -> tuple[Block, ...]:
    """The blocks of the example, with drafts as the rules make them."""
    told = {
        (audience, subject): narrative
        for audience in ("report", "public")
        for subject, narrative in narratives(
            judged_example.project, judged_example.packs, judged_example.findings, judged_example.claims, audience
        ).items()
    }
    return outline(edition_of("review", judged_example, told, (), "test"))


@pytest.fixture(scope="module")
def drawn(section: tuple[Block, ...]) -> dict[str, bytes]:
    return pictures(section)


@pytest.fixture(scope="module")
def document(section: tuple[Block, ...], drawn: dict[str, bytes]) -> bytes:
    return word(section, drawn)


@pytest.fixture(scope="module")
def pages(section: tuple[Block, ...], drawn: dict[str, bytes]) -> bytes:
    return pdf(section, drawn)


def said(blocks: Sequence[Block]) -> list[str]:
    """Every text of the outline in order, but the contents and alternative texts: what all media must say."""
    known = labels(blocks)
    names = iter(known.values())
    found = []
    for block in blocks:
        if isinstance(block, (Heading, Paragraph)):
            found.append(plain(block.text, known))
        elif isinstance(block, Table):
            found.append(f"{next(names)}. {plain(block.caption, known)}")
            found += [plain(cell, known) for row in (block.columns, *block.rows) for cell in row]
            found.append(plain(block.note, known))
        elif isinstance(block, Figure):
            found.append(f"{next(names)}. {plain(f'{block.caption} {block.note}'.strip(), known)}")
    return found


def bare(text: str) -> str:
    """Letters and signs alone: lines are broken, kept together and words set apart as the medium needs it."""
    return re.sub(r"[\s\u2060]+", "", text)


class _Texts(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.found: list[str] = []
        self.skipped = 0

    def handle_starttag(self, tag: str, attrs: object) -> None:
        self.skipped += tag in ("style", "title", "nav")

    def handle_endtag(self, tag: str) -> None:
        self.skipped -= tag in ("style", "title", "nav")

    def handle_data(self, data: str) -> None:
        if not self.skipped:
            self.found.append(data)


def text_of_html(blocks: Sequence[Block], png: dict[str, bytes]) -> str:
    reader = _Texts()
    reader.feed(html(blocks, png))
    return "".join(reader.found)


def text_of_word(raw: bytes) -> str:
    """All text of the body as python-docx holds it, without the contents, whose field spans paragraphs."""
    body = docx.Document(io.BytesIO(raw)).element.body
    found, in_contents, depth = [], False, 0
    for paragraph in body.iter(qn("w:p")):
        pieces = paragraph.iter(qn("w:t"), qn("w:noBreakHyphen"))
        text = "".join("-" if piece.tag == qn("w:noBreakHyphen") else piece.text or "" for piece in pieces)
        instructions = "".join(i.text or "" for i in paragraph.iter(qn("w:instrText")))
        in_contents = in_contents or "TOC" in instructions
        if not in_contents:
            found.append(text)
        kinds = [c.get(qn("w:fldCharType")) for c in paragraph.iter(qn("w:fldChar"))]
        depth += kinds.count("begin") - kinds.count("end")
        in_contents = in_contents and depth > 0
    return "\n".join(found)


def test_word_says_what_the_outline_says(section: tuple[Block, ...], document: bytes) -> None:
    """Every heading, sentence, cell and caption stands in the Word document, in order and nothing else."""
    assert bare(text_of_word(document)) == bare("".join(said(section)))


def test_html_says_what_the_outline_says(section: tuple[Block, ...], drawn: dict[str, bytes]) -> None:
    """The page of HTML, read by Python's own parser, says the same in the same order."""
    assert bare(text_of_html(section, drawn)) == bare("".join([*said(section), foot_of(section)]))


def test_markdown_says_what_the_outline_says(section: tuple[Block, ...]) -> None:
    """Markdown without its marks says the same; escapes are those of CommonMark (any ASCII punctuation)."""
    text = markdown([block for block in section if not isinstance(block, Contents)])
    lines = [line for line in text.splitlines() if not re.fullmatch(r"[|\s:-]+", line) and not line.startswith("![")]
    text = "\n".join(re.sub(r"^(#+ |- |\| )", "", line) for line in lines)
    text = re.sub(r"(?<!\\)(\*\*|\*| \| | \|$)", "", text, flags=re.MULTILINE)
    text = re.sub(r"\\([!-/:-@\[-`{-~])", r"\1", text)

    assert bare(text) == bare("".join([*said(section), foot_of(section)]))


def test_pdf_says_what_the_outline_says(pages: bytes, section: tuple[Block, ...], tmp_path: Path) -> None:
    """Poppler finds every heading and every paragraph of the outline in the PDF, where no page break parts it."""
    path = tmp_path / "section.pdf"
    path.write_bytes(pages)
    found = subprocess.run(["pdftotext", "-raw", str(path), "-"], capture_output=True, check=True, text=True).stdout
    # Words are hyphenated at the ends of lines nowhere; page numbers stand between pages.
    text = bare(re.sub(rf"\n{re.escape(foot_of(section))} Page \d+\n?\f", "\n", found))
    known = labels(section)
    wanted = [plain(b.text, known) for b in section if isinstance(b, (Heading, Paragraph))]
    drawings = [bare(plain(f"{b.caption} {b.note}".strip(), known)) for b in section if isinstance(b, Figure)]

    assert drawings and [one for one in drawings if one not in text] == []
    for number, one in enumerate(drawings, start=1):
        # A figure may stand at the head of a page, amid a paragraph that goes on there.
        text = text.replace(f"Figure{number}.{one}", "")

    assert [one for one in wanted if bare(one) not in text] == []


def test_every_page_says_that_it_is_a_restricted_draft(pages: bytes, tmp_path: Path) -> None:
    """A page that is copied alone still says for whom it is, that it waits for a signature, and its number."""
    path = tmp_path / "section.pdf"
    path.write_bytes(pages)
    found = subprocess.run(["pdftotext", "-raw", str(path), "-"], capture_output=True, check=True, text=True).stdout
    printed = found.rstrip("\f").split("\f")
    foot = "Restricted copy, for the team alone. Draft for a specialist's signature."

    assert len(printed) > 20
    assert [n for n, page in enumerate(printed, start=1) if not page.rstrip().endswith(f"{foot} Page {n}")] == []


def _printed_foot(page: str) -> str:
    """The string of the margin box, its escapes read as CSS has them (CSS Syntax Module Level 3, 4.3.7)."""
    (written,) = re.findall(r'@bottom-left\{content:"([^"]*)" counter\(page\)', page)
    return re.sub(r"\\([0-9a-f]+) ", lambda sign: chr(int(sign[1], 16)), written)


@pytest.mark.parametrize("foot", ["Draft for a specialist's signature.", 'Team\'s "own" <b> & \\ draft *1*.'])
def test_the_foot_of_the_outline_stands_in_every_medium(foot: str) -> None:
    """On every page of Word and PDF with its number, at the end of HTML and Markdown; a browser prints it on each."""
    blocks = (*SMALL[:1], Foot(text=foot), *SMALL[1:]) if foot != foot_of(SMALL) else SMALL
    png = pictures(blocks)
    document = docx.Document(io.BytesIO(word(blocks, png)))
    page = html(blocks, png)

    assert {section.footer.paragraphs[0].text for section in document.sections} == {f"{foot} Page 1"}
    assert f"{foot} Page 1" in text_of_pdf(blocks, png)
    assert f"<footer>{escape(foot)}</footer></body>" in page and _printed_foot(page) == f"{foot} Page "
    text = re.sub(r"\\([!-/:-@\[-`{-~])", r"\1", markdown(blocks))
    assert text.endswith(f"\n\n---\n\n{foot}\n")


def test_tables_of_the_pdf_say_what_the_outline_says(pages: bytes, section: tuple[Block, ...], tmp_path: Path) -> None:
    """Every row, cell after cell, every caption and every note of every table is found by poppler in the PDF."""
    path = tmp_path / "section.pdf"
    path.write_bytes(pages)
    found = subprocess.run(["pdftotext", "-raw", str(path), "-"], capture_output=True, check=True, text=True).stdout
    text = bare(re.sub(rf"\n{re.escape(foot_of(section))} Page \d+\n?\f", "\n", found))
    known = labels(section)
    tables = [block for block in section if isinstance(block, Table)]
    rows = [bare("".join(plain(cell, known) for cell in row)) for t in tables for row in (t.columns, *t.rows)]
    rows += [bare(plain(said, known)) for t in tables for said in (t.caption, t.note)]

    assert len(rows) > 1000
    assert [row for row in rows if row not in text] == []


def text_of_pdf(blocks: Sequence[Block], png: dict[str, bytes]) -> str:
    with tempfile.NamedTemporaryFile(suffix=".pdf") as file:
        file.write(pdf(blocks, png))
        file.flush()
        command = ["pdftotext", "-raw", file.name, "-"]
        return subprocess.run(command, capture_output=True, check=True, text=True).stdout


READERS = {
    "word": lambda blocks, png: text_of_word(word(blocks, png)),
    "html": text_of_html,
    "markdown": lambda blocks, png: markdown(blocks),
    "pdf": text_of_pdf,
}


@pytest.mark.parametrize("medium", READERS)
def test_a_sentence_lost_in_one_medium_is_found(medium: str) -> None:
    """The comparisons above can fail: what reads each medium finds a paragraph, and does not once it was left out."""
    less = tuple(block for block in SMALL if block != Paragraph(text="The end.", kind="missing"))
    read = READERS[medium]

    assert "Theend." in bare(read(SMALL, pictures(SMALL)))
    assert "Theend." not in bare(read(less, pictures(less)))


def test_the_contents_of_word_lead_to_their_headings(document: bytes, section: tuple[Block, ...]) -> None:
    """Each entry is a link to a bookmark that spans a heading of the same words."""
    root = docx.Document(io.BytesIO(document)).element.body
    asked = [link.get(qn("w:anchor")) for link in root.iter(qn("w:hyperlink"))]
    spanned = {
        mark.get(qn("w:name")): "".join(t.text or "" for t in mark.getparent().iter(qn("w:t"))).replace("\u2060", "")
        for mark in root.iter(qn("w:bookmarkStart"))
    }

    assert [spanned[name] for name in asked] == [plain(heading.text) for heading in listed(section)]
    assert "Contents" not in [spanned[name] for name in asked]


def test_contents_without_page_numbers_say_so(document: bytes) -> None:
    """Until Word is asked to update its fields no dots lead to nothing; the line that says so lies within the field."""
    root = docx.Document(io.BytesIO(document)).element.body
    entries = [p for p in root.iter(qn("w:p")) if p.find(qn("w:hyperlink")) is not None]
    after = entries[-1].getnext()

    assert not any(list(entry.iter(qn("w:tab"))) for entry in entries)
    assert "".join(t.text or "" for t in after.iter(qn("w:t"))) == (
        "Page numbers come in, and this line goes, when fields are updated: "
        "on opening, or by selecting all and pressing F9."
    )
    assert [c.get(qn("w:fldCharType")) for c in after.iter(qn("w:fldChar"))] == ["end"]


def test_no_head_of_a_table_stands_alone_in_word(document: bytes) -> None:
    """Caption, head and the first rows are kept with what follows, and the last row with the note."""
    tables = list(docx.Document(io.BytesIO(document)).element.body.iter(qn("w:tbl")))
    rows = [[row.find(f".//{qn('w:keepNext')}") is not None for row in t.iter(qn("w:tr"))] for t in tables]

    assert tables and all(kept[:2] == [True, True] for kept in rows)
    assert any(kept[4:-1] and not any(kept[4:-1]) and kept[-1] for kept in rows)


@pytest.mark.parametrize("lines", range(39, 45))
def test_no_head_of_a_table_stands_alone_in_pdf(lines: int) -> None:
    """However much text stands above it, the caption of a table and its third row are on one page."""
    rows = tuple((f"row {n} of it",) for n in range(9))
    above = tuple(Paragraph(text="A line.") for _ in range(lines))
    blocks = (Heading(level=1, text="T"), *above, Table(caption="The caption.", columns=("a",), rows=rows))
    pages = text_of_pdf(blocks, {}).split("\f")

    assert ["The caption" in page for page in pages] == ["row 2 of it" in page for page in pages]


def test_a_heading_turns_with_the_wide_table_below_it() -> None:
    """A heading right above a wide table stands on the landscape page, not alone at the foot of the page before."""
    table = Table(caption="c", columns=("a",), rows=(("b",),), is_wide=True)
    blocks = (Heading(level=1, text="T"), Paragraph(text="p"), Heading(level=2, text="H"), table, Paragraph(text="q"))

    assert on_wide_pages(blocks) == [False, False, True, True, False]
    body = docx.Document(io.BytesIO(word(blocks, {}))).element.body
    first = next(p for p in body.iter(qn("w:p")) if p.find(f".//{qn('w:sectPr')}") is not None)
    assert [p.text for p in body.iter(qn("w:p"))].index("H") > list(body.iter(qn("w:p"))).index(first)


def test_a_tall_drawing_fits_its_page() -> None:
    """A drawing that is higher than a page is set at most at four fifths of it, with its proportions kept."""
    tall = DRAWING.replace("0 0 60 20", "0 0 60 600")
    blocks = (Heading(level=1, text="T"), Figure(caption="c", alt="a", svg=tall, anchor="tall"))
    (shape,) = docx.Document(io.BytesIO(word(blocks, pictures(blocks)))).inline_shapes

    assert shape.height / 36000 < 0.8 * 297
    assert shape.height / shape.width == pytest.approx(10, rel=0.02)


def test_signs_of_every_markup_are_text_in_every_medium() -> None:
    """Signs that Typst, HTML, Word or Markdown would take for markup come out as they were written."""
    png = pictures(SMALL)
    expected = bare("".join(said(SMALL)))

    assert bare(text_of_html(SMALL, png)) == expected + bare(foot_of(SMALL))
    assert bare(text_of_word(word(SMALL, png))) == expected
    assert "Zeamays;Carya(shell)Table1;12–19;0.5-1(b)strong;7–9[c]" in bare(text_of_pdf(SMALL, png))


def test_the_pdf_is_tagged(pages: bytes) -> None:
    """ISO 14289-1 (PDF/UA-1): marked, with a structure tree, a language, a title that is shown, and its mark in XMP."""
    with pikepdf.open(io.BytesIO(pages)) as found:
        assert found.Root.MarkInfo.Marked is pikepdf.Object.parse(b"true") or bool(found.Root.MarkInfo.Marked)
        assert str(found.Root.Lang).startswith("en")
        assert bool(found.Root.ViewerPreferences.DisplayDocTitle)
        with found.open_metadata() as meta:
            assert meta["pdfuaid:part"] == "1"
            assert meta["dc:title"] == "Plant remains: Wend Hollow road improvement"


def test_every_figure_of_the_pdf_has_an_alternative_text(pages: bytes, section: tuple[Block, ...]) -> None:
    """The structure tree, walked by pikepdf, has the alternative text of every figure, and tables have header cells."""
    kinds: list[str] = []
    texts: list[str] = []

    def walk(node: pikepdf.Object) -> None:
        if isinstance(node, pikepdf.Array):
            for one in node:
                walk(one)
        elif isinstance(node, pikepdf.Dictionary):
            if "/S" in node:
                kinds.append(str(node.S))
                if str(node.S) == "/Figure":
                    texts.append(str(node.get("/Alt", "")))
            if "/K" in node:
                walk(node.K)

    with pikepdf.open(io.BytesIO(pages)) as found:
        walk(found.Root.StructTreeRoot)

    alts = [" ".join(b.alt.split()) for b in section if isinstance(b, Figure)]
    assert [" ".join(text.split()) for text in texts if text] == alts
    assert kinds.count("/TH") >= sum(len(b.columns) for b in section if isinstance(b, Table))


def test_items_that_follow_each_other_are_one_list_of_the_pdf() -> None:
    """Somebody who hears the page is told how many items a list has (ISO 32000-1, 14.8.4.3.3: L holds its LI)."""
    items = tuple(Paragraph(text=text, kind="item") for text in ("one", "two", "three"))
    blocks = (Heading(level=1, text="T"), *items, Paragraph(text="p"), *items[:1])
    opened = pikepdf.open(io.BytesIO(pdf(blocks, {})))
    waiting: list[object] = [opened.Root.StructTreeRoot]
    lists: list[int] = []
    while waiting:
        node = waiting.pop()
        if isinstance(node, pikepdf.Dictionary):
            held = node.get("/K", pikepdf.Array())
            held = list(held) if isinstance(held, pikepdf.Array) else [held]
            waiting.extend(held)
            if node.get("/S") == "/L":
                lists.append(sum(isinstance(one, pikepdf.Dictionary) and one.get("/S") == "/LI" for one in held))

    assert sorted(lists) == [1, 3]


def test_a_pdf_is_refused_where_an_alternative_text_is_missing() -> None:
    """The engine itself refuses PDF/UA without it."""
    blocks = [
        b if not isinstance(b, Figure) else Figure(caption="x", alt="", svg=DRAWING, anchor="bars") for b in SMALL
    ]

    with pytest.raises(Unfit, match=r"the PDF cannot be tagged for readers: .*alt text"):
        pdf(blocks, pictures(blocks))


def test_headings_of_word_are_styles(document: bytes, section: tuple[Block, ...]) -> None:
    """Every heading has a heading style, so that an agency's template restyles it."""
    found = [
        (p.style.name, p.text.replace("\u2060", ""))
        for p in docx.Document(io.BytesIO(document)).paragraphs
        if p.style.name.startswith(("Heading", "Title", "TOC Heading"))
    ]
    wanted = [
        ("Title" if b.level == 1 else f"Heading {b.level - 1}" if b.is_listed else "TOC Heading", plain(b.text))
        for b in section
        if isinstance(b, Heading)
    ]

    assert found == wanted


def test_numbers_of_word_are_fields(document: bytes, section: tuple[Block, ...]) -> None:
    """Captions are numbered by SEQ, references are REF to bookmarks that exist, and the contents are a TOC."""
    root = docx.Document(io.BytesIO(document)).element.body
    instructions = [i.text.split() for i in root.iter(qn("w:instrText"))]
    marks = {b.get(qn("w:name")) for b in root.iter(qn("w:bookmarkStart"))}
    tables = sum(isinstance(b, Table) for b in section)

    assert sum(i[:2] == ["SEQ", "Table"] for i in instructions) == tables
    assert any(i[0] == "TOC" for i in instructions)
    assert {i[1] for i in instructions if i[0] == "REF"} <= marks
    assert any(i[0] == "REF" for i in instructions)


def test_nothing_in_word_is_formatted_by_hand(document: bytes) -> None:
    """Runs of the body name styles alone: no bold, italic, font or size of their own."""
    root = docx.Document(io.BytesIO(document)).element.body
    by_hand = {child.tag for props in root.iter(qn("w:rPr")) for child in props if child.tag != qn("w:rStyle")}

    assert by_hand <= {qn("w:noProof")}


def test_latin_names_of_word_have_a_character_style(document: bytes) -> None:
    """'Zea mays' is set in the style 'Latin name', which is italic."""
    found = docx.Document(io.BytesIO(document))

    assert found.styles["Latin name"].font.italic
    assert any(r.style.name == "Latin name" and r.text == "Zea mays" for p in found.paragraphs for r in p.runs)


def test_header_rows_of_word_repeat(document: bytes) -> None:
    """Every table has one header row that is repeated on each page."""
    for table in docx.Document(io.BytesIO(document)).tables:
        marked = [row._tr.find(f".//{qn('w:tblHeader')}") is not None for row in table.rows]
        assert marked[0] and not any(marked[1:])


def test_pictures_of_word_have_300_dpi_and_words(document: bytes, drawn: dict[str, bytes]) -> None:
    """Pixels over the width in print (EMU, 914,400 an inch: ECMA-376), and the alternative text of every picture."""
    opened = docx.Document(io.BytesIO(document))
    assert len(opened.inline_shapes) == len(drawn) == 2
    for shape in opened.inline_shapes:
        part = opened.part.related_parts[shape._inline.graphic.graphicData.pic.blipFill.blip.embed]
        with Picture.open(io.BytesIO(part.blob)) as picture:
            dpi = picture.width / (shape.width / 914_400)

        assert shape._inline.docPr.get("descr")
        assert dpi == pytest.approx(300, abs=2)


def test_a_phase_of_many_contexts_has_several_tables(section: tuple[Block, ...]) -> None:
    """Ten contexts stand side by side on a landscape page at most, and no context is in two tables or in none."""
    tables = [b for b in section if isinstance(b, Table) and b.anchor.startswith("counts-late-")]
    across = [[c for c in table.columns[2:] if re.fullmatch(r"C\d+( \[restricted\])?", c)] for table in tables]

    assert len(tables) == 2 and all(table.is_wide for table in tables)
    assert max(map(len, across)) <= 10
    assert [id for ids in across for id in ids] == [
        *(f"C{n}" for n in range(11, 19)), "C19 [restricted]", "C20", "C22"
    ]  # fmt: skip
    assert ["Total" in table.columns for table in tables] == [False, True]


def test_wide_tables_of_word_stand_on_landscape_pages(document: bytes) -> None:
    """Sections turn to landscape for wide tables and back."""
    found = [section.orientation for section in docx.Document(io.BytesIO(document)).sections]

    assert found[0] == 0 and 1 in found and found[-1] == 0


def test_the_same_section_gives_the_same_bytes(section: tuple[Block, ...], drawn: dict[str, bytes]) -> None:
    """Word and PDF carry no clock."""
    assert word(section, drawn) == word(section, drawn)
    assert pdf(section, drawn) == pdf(section, drawn)


def test_a_template_lends_its_styles(tmp_path: Path) -> None:
    """The heading style of an agency's template is the one of the section, and its text is not taken."""
    template = docx.Document()
    template.styles["Heading 1"].font.name = "Courier New"
    template.add_paragraph("boilerplate")
    template.save(tmp_path / "agency.docx")

    found = docx.Document(io.BytesIO(word(SMALL, pictures(SMALL), tmp_path / "agency.docx")))

    assert found.styles["Heading 1"].font.name == "Courier New"
    assert "boilerplate" not in [p.text for p in found.paragraphs]


def test_a_template_without_a_needed_style_is_refused(tmp_path: Path) -> None:
    """The message names the style."""
    template = docx.Document()
    template.styles["Caption"].delete()
    path = tmp_path / "poor.docx"
    template.save(path)

    with pytest.raises(Unfit) as refused:
        word(SMALL, pictures(SMALL), path)
    assert str(refused.value) == f"the template {path} lacks the styles Caption; add them to it"


def test_a_template_that_is_no_word_document_is_refused(tmp_path: Path) -> None:
    """A text file, and a zip file that is no document."""
    (tmp_path / "a.docx").write_text("no")
    with zipfile.ZipFile(tmp_path / "b.docx", "w") as other:
        other.writestr("x", "y")

    for name in ("a.docx", "b.docx"):
        with pytest.raises(Unfit, match="cannot be opened as a Word document"):
            word(SMALL, pictures(SMALL), tmp_path / name)


def test_four_hundred_taxa_with_names_of_eighty_letters_are_set() -> None:
    """A wide and long table with long names is set in every medium."""
    names = [f"{'N' * 76}{n:04}" for n in range(400)]
    table = Table(caption="c", columns=("Plant", *(f"C{n}" for n in range(10))), rows=tuple((n, *"0123456789") for n in names), is_wide=True)  # fmt: skip  # noqa: E501
    blocks = (Heading(level=1, text="T"), table)

    text = text_of_word(word(blocks, {}))

    assert all(name in text for name in names)
    assert pdf(blocks, {}).startswith(b"%PDF")


def test_a_reference_that_leads_nowhere_is_refused() -> None:
    """A text that speaks of a table which is not there is a fault, not a blank."""
    with pytest.raises(Unfit, match="refers to 'nowhere', which is no table or figure"):
        markdown([Paragraph(text="see {nowhere}")])


def test_report_blocks_exchange_places() -> None:
    """Blocks that are named take each other's places; one that is not shown is gone."""
    from narrate.model.report_blocks import BLOCKS, arranged

    found = [b.block for b in arranged((ReportBlock(block="discussion"), ReportBlock(block="results", title="R")))]
    default = list(BLOCKS)
    at = default.index("results")

    assert found == [*default[:at], "discussion", "results", *default[at + 2 :]]
    assert "checklist" not in [b.block for b in arranged((ReportBlock(block="checklist", shown=False),))]


NUMBERS = Table(
    caption="Numbers.",
    columns=("Plant", "C1", "C2"),
    rows=(("*Zea mays*", "5", "1,289"), ("Beans", "12", "0.5 g")),
    anchor="numbers",
    numbers=(1, 2),
)


def test_numbers_stand_to_the_right_and_text_to_the_left_in_word() -> None:
    """The styles of the cells say so, heads included (ECMA-376, 17.18.44, ST_Jc: right); no cell is set by hand."""
    found = docx.Document(io.BytesIO(word((Heading(level=1, text="T"), NUMBERS), {})))
    sides = [
        [str(cell.paragraphs[0].style.paragraph_format.alignment) for cell in row.cells] for row in found.tables[0].rows
    ]

    assert sides == [["None", "RIGHT (2)", "RIGHT (2)"]] * 3
    assert found.tables[0]._tbl.findall(f".//{qn('w:jc')}") == []


def test_numbers_stand_to_the_right_and_text_to_the_left_in_html() -> None:
    """Cells of numbers have the class that the style sets to the right; Markdown's rulers say the same (GFM, 4.10)."""
    page = html((Heading(level=1, text="T"), NUMBERS), {})
    text = markdown((Heading(level=1, text="T"), NUMBERS))

    assert re.findall(r'<t[hd](?: scope="(?:col|row)")?( class="n")?>', page) == ["", ' class="n"', ' class="n"'] * 3
    assert "th.n,td.n{text-align:right" in page
    assert "| --- | --: | --: |" in text


def test_numbers_stand_to_the_right_and_text_to_the_left_in_the_pdf(tmp_path: Path) -> None:
    """Poppler's boxes of words: numbers of one column end at one place, words of the first begin at one place."""
    path = tmp_path / "numbers.pdf"
    path.write_bytes(pdf((Heading(level=1, text="T"), NUMBERS), {}))
    command = ["pdftotext", "-bbox", str(path), "-"]
    found = subprocess.run(command, capture_output=True, check=True, text=True).stdout
    boxes = {
        word: (float(a), float(b)) for a, b, word in re.findall(r'xMin="(.+?)".*?xMax="(.+?)".*?>(.+?)</word>', found)
    }

    assert boxes["5"][1] == pytest.approx(boxes["12"][1], abs=0.1) == pytest.approx(boxes["C1"][1], abs=0.5)
    assert boxes["1,289"][1] == pytest.approx(boxes["g"][1], abs=0.1)
    assert boxes["5"][0] > boxes["12"][0] + 2
    assert boxes["Zea"][0] == pytest.approx(boxes["Beans"][0], abs=0.5)


def test_every_table_of_the_example_sets_its_numbers_to_the_right(section: tuple[Block, ...]) -> None:
    """A column whose cells all begin with a figure is a column of numbers, and no column of words is."""
    for table in (block for block in section if isinstance(block, Table)):
        for number, head in enumerate(table.columns):
            cells = [row[number] for row in table.rows if row[number] not in ("", "–", "x", "none", "not recorded")]
            are_numbers = all(re.match(r"\d", cell) for cell in cells)
            if cells and are_numbers:
                assert number in table.numbers, (table.caption, head)
            if number in table.numbers:
                assert sum(bool(re.match(r"\d|[x+]|open|<0", cell)) for cell in cells) == len(cells), (
                    table.caption,
                    head,
                )


RANGES = " ".join(f"{'a' * (n % 9 + 1)} {n}–{n + 7}% and 0.5-1 mm," for n in range(120))
"""Ranges at every place of a line, many of which would be parted at the dash."""
PARTED = re.compile(r"\d[–-]\u2060?$", re.MULTILINE)


def test_no_range_is_parted_between_lines_of_the_pdf(tmp_path: Path) -> None:
    """Poppler's lines: none ends in a dash; with a letter before each figure, where it is no range, some do."""
    path = tmp_path / "ranges.pdf"

    def lines(text: str) -> str:
        path.write_bytes(pdf((Heading(level=1, text="T"), Paragraph(text=text)), {}))
        return subprocess.run(
            ["pdftotext", "-layout", str(path), "-"], capture_output=True, check=True, text=True
        ).stdout

    assert PARTED.search(lines(RANGES)) is None
    assert PARTED.search(lines(re.sub(r"(?<= )(?=\d)", "x", RANGES))) is not None


def test_no_range_is_parted_between_lines_of_word(tmp_path: Path) -> None:
    """LibreOffice sets the lines: none ends in a dash; with a letter before each figure some do."""

    def lines(name: str, text: str) -> str:
        (tmp_path / f"{name}.docx").write_bytes(word((Heading(level=1, text="T"), Paragraph(text=text)), {}))
        home = f"-env:UserInstallation=file://{tmp_path / 'profile'}"
        command = ["soffice", home, "--headless", "--convert-to", "pdf", "--outdir", str(tmp_path)]
        subprocess.run([*command, str(tmp_path / f"{name}.docx")], check=True, capture_output=True, timeout=180)
        command = ["pdftotext", "-layout", str(tmp_path / f"{name}.pdf"), "-"]
        return subprocess.run(command, capture_output=True, check=True, text=True).stdout

    assert PARTED.search(lines("kept", RANGES)) is None
    assert PARTED.search(lines("parted", re.sub(r"(?<= )(?=\d)", "x", RANGES))) is not None


def test_a_range_of_html_keeps_to_its_line() -> None:
    """It stands in an element whose style forbids breaks; its text is as it was, so that a search finds it."""
    page = html((Heading(level=1, text="T"), Paragraph(text="in 79–99% of 0.5-1 mm, of VRL-0417")), {})

    assert 'in <span class="whole">79–99%</span> of <span class="whole">0.5-1</span>\u00a0mm, of VRL-0417' in page
    assert ".whole{white-space:nowrap}" in page


def test_no_table_is_set_smaller_than_eight_points(document: bytes, pages: bytes, tmp_path: Path) -> None:
    """Word: every style of table text, its bases read too; PDF: poppler's sizes of all text on the pages."""
    found = docx.Document(io.BytesIO(document))
    for style in found.styles:
        size, base = getattr(getattr(style, "font", None), "size", None), style
        while size is None and getattr(base, "base_style", None) is not None:
            base = base.base_style
            size = base.font.size
        if style.name.startswith("Table") and style.type == 1:
            assert size is not None and size.pt >= 8, style.name
    path = tmp_path / "section.pdf"
    path.write_bytes(pages)
    command = ["pdftohtml", "-xml", "-i", "-stdout", "-zoom", "1", str(path)]
    xml = subprocess.run(command, capture_output=True, check=True, text=True).stdout
    sizes = [int(size) for size in re.findall(r'<fontspec [^>]*size="(\d+)"', xml)]

    assert sizes and min(sizes) >= 8


def test_figures_that_a_heading_is_about_stand_below_it() -> None:
    """In the PDF photographs of finds float to the head or foot of a page; the figures of the results do not, so that
    none comes before their heading."""
    source = typst_source(
        (
            Heading(level=1, text="Plant remains"),
            Figure(caption="A seed", alt="a seed", photograph=b"1", anchor="seed"),
            Heading(level=2, text="Figures and tables of the results", holds_figures=True),
            Figure(caption="Density", alt="density", svg="<svg/>", anchor="density"),
            Heading(level=2, text="Discussion"),
            Figure(caption="A cupule", alt="a cupule", photograph=b"2", anchor="cupule"),
        )
    )

    floating = {line.split('"')[1]: "placement: auto" in line for line in source.splitlines() if "#figure(" in line}
    assert floating == {"seed": True, "density": False, "cupule": True}
