"""The section as a Word document that an editor can work in: styles, fields and sections, no formatting by hand."""

from __future__ import annotations

import io
import os
import zipfile
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Any

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
from narrate.documents.inline import labels, plain, runs
from narrate.documents.pdf import share_of, widths_of
from narrate.documents.word_styles import opened
from narrate.documents.word_xml import SPACE, char, field, instruction, said, whole, xml

if TYPE_CHECKING:
    from docx.document import Document

_STYLES = {
    "body": "Normal",
    "byline": "Byline",
    "notice": "Notice",
    "missing": "To be written",
    "reference": "Reference",
    "item": "List Bullet",
    "pointer": "Pointer",
}


_NO_PAGES_YET = (
    "Page numbers come in, and this line goes, when fields are updated: "
    "on opening, or by selecting all and pressing F9."
)

_KEEP = "<w:keepNext/>"
_FIRST_ROWS = range(3)
"""They stay with the head of their table, so that no head stands alone at the foot of a page."""

_MOST_OF_A_PAGE = 0.8
"""Of the height of a page that a picture takes, so that its caption stands with it."""


def word(blocks: Sequence[Block], pictures: Mapping[str, bytes], template: Path | None = None) -> bytes:
    """
    The document.

    template:  a Word document whose styles and page are taken and whose text is not.
    Raises Unfit where the template cannot be opened or lacks a needed style, or a picture has no alternative text.
    """
    document = opened(template)
    writer = _Writer(document, blocks, pictures)
    writer.write()
    return _saved(document, writer.tables)


class _Writer:
    """
    Writes blocks one after the other.

    Tables may have tens of thousands of rows: they are put together as text, and an empty element keeps their place
    until the file is saved.
    """

    def __init__(self, document: Document, blocks: Sequence[Block], pictures: Mapping[str, bytes]) -> None:
        self.document = document
        self.blocks = blocks
        self.pictures = pictures
        self.known = labels(blocks)
        self.names = iter(self.known)
        self.ids = {style.name: style.style_id for style in document.styles}
        self.bookmarks = 0
        self.contents = listed(blocks)
        self.places = {id(heading): number for number, heading in enumerate(self.contents, start=1)}
        self.bookmark_of = {a: f"n{n}_{a.replace('-', '_')}"[:40] for n, a in enumerate(self.known, start=1)}
        self.is_wide = False
        self.section: Any = document.sections[-1]
        self.set: dict[str, str] = {}
        """Text -> its runs as XML."""
        self.tables: list[str] = []

    def write(self) -> None:
        self._properties()
        self._furniture()
        for block, is_wide in zip(self.blocks, on_wide_pages(self.blocks), strict=True):
            self._turn(is_wide)
            self._block(block)
        self._turn(False)

    def _properties(self) -> None:
        from docx.oxml import parse_xml

        title = next((plain(b.text) for b in self.blocks if isinstance(b, Heading)), "Plant remains")
        core = self.document.core_properties
        core.title, core.author, core.language, core.comments = title, "", "en", ""
        core.created = core.modified = datetime(2000, 1, 1)
        # Word asks once, when the file is opened, whether fields (contents, numbers) shall be brought up to date.
        self.document.settings.element.append(parse_xml(f'<w:updateFields {SPACE} w:val="true"/>'))

    def _furniture(self) -> None:
        from docx.oxml import parse_xml

        footer = self.document.sections[0].footer.paragraphs[0]
        footer.text = f"{foot_of(self.blocks)} Page "
        for run in field("PAGE", "1"):
            footer._p.append(parse_xml(run))

    def _turn(self, is_wide: bool) -> None:
        """Begins a section of landscape or portrait pages where the next block needs it."""
        if is_wide == self.is_wide:
            return
        from docx.enum.section import WD_ORIENT, WD_SECTION

        section = self.document.add_section(WD_SECTION.NEW_PAGE)
        section.page_width, section.page_height = section.page_height, section.page_width
        section.orientation = WD_ORIENT.LANDSCAPE if is_wide else WD_ORIENT.PORTRAIT
        self.is_wide, self.section = is_wide, section

    def _block(self, block: Block) -> None:
        if isinstance(block, Heading):
            self._heading(block)
        elif isinstance(block, Paragraph):
            self._add(_STYLES[block.kind], self._runs(block.text))
        elif isinstance(block, Table):
            self._caption("Table", next(self.names), block.caption, is_above=True)
            self._table(block)
            self._add("Table note", self._runs(block.note or ""))
        elif isinstance(block, Figure):
            self._figure(block)
        elif not isinstance(block, Foot):
            self._contents(block)

    def _heading(self, heading: Heading) -> None:
        if heading.level == 1:
            self._add("Title", self._runs(heading.text))
        elif not heading.is_listed:
            self._add("TOC Heading", self._runs(heading.text))
        else:
            self._add(f"Heading {min(heading.level - 1, 5)}", self._marked(self._runs(heading.text), heading))

    def _marked(self, runs: str, heading: Heading) -> str:
        """The heading within the bookmark to which the contents lead."""
        if id(heading) not in self.places:
            return runs
        self.bookmarks += 1
        name = f"_Toc{self.places[id(heading)]:06}"
        start = f'<w:bookmarkStart w:id="{self.bookmarks}" w:name="{name}"/>'
        return f'{start}{runs}<w:bookmarkEnd w:id="{self.bookmarks}"/>'

    def _add(self, style: str, runs: str, extra: str = "") -> None:
        from docx.oxml import parse_xml

        body = self.document.element.body
        line = f'<w:p {SPACE}><w:pPr><w:pStyle w:val="{self.ids[style]}"/>{extra}</w:pPr>{runs}</w:p>'
        body.insert(len(body) - 1, parse_xml(line))

    def _runs(self, text: str) -> str:
        # Cells repeat a few words over thousands of rows.
        if text not in self.set:
            self.set[text] = "".join(
                self._run(run.text, run.style, run.anchor, is_whole=run.is_whole) for run in runs(text, self.known)
            )
        return self.set[text]

    def _run(self, text: str, style: str = "", anchor: str = "", *, is_whole: bool = False) -> str:
        if anchor:
            return "".join(field(f"REF {self.bookmark_of[anchor]} \\h", text, bare=True))
        name = {"latin": "Latin name", "strong": "Strong word", "title": "Title of a work"}.get(style)
        props = f'<w:rPr><w:rStyle w:val="{self.ids[name]}"/></w:rPr>' if name else ""
        return f"<w:r>{props}{whole(text) if is_whole else said(text)}</w:r>"

    def _caption(self, label: str, anchor: str, text: str, *, is_above: bool) -> None:
        self.bookmarks += 1
        number = self.known[anchor].rpartition("\u00a0")[2]
        name = self.bookmark_of[anchor]
        start = f'<w:bookmarkStart w:id="{self.bookmarks}" w:name="{name}"/>'
        end = f'<w:bookmarkEnd w:id="{self.bookmarks}"/>'
        numbered = self._run(f"{label}\u00a0") + "".join(field(f"SEQ {label} \\* ARABIC", number, bare=True))
        keep = _KEEP if is_above else ""
        self._add("Caption", f"{start}{numbered}{end}{self._run('. ')}{self._runs(text)}", keep)

    def _table(self, table: Table) -> None:
        from docx.oxml import OxmlElement

        section = self.section
        room = int((section.page_width - section.left_margin - section.right_margin) / 635)
        relative = widths_of(table)
        across = room * share_of(table, relative) / sum(relative)
        widths = [int(across * width) for width in relative]
        body = self.document.element.body
        body.insert(len(body) - 1, OxmlElement("w:tbl"))
        self.tables.append("".join(self._table_xml(table, widths)))

    def _table_xml(self, table: Table, widths: Sequence[int]) -> Iterator[str]:
        rule = '<w:{} w:val="single" w:sz="4" w:space="0" w:color="808080"/>'
        edges = "".join(rule.format(edge) for edge in ("top", "bottom", "insideH"))
        summary = xml(plain(table.caption, self.known)).replace('"', "&quot;")
        yield f'<w:tbl><w:tblPr><w:tblW w:w="{sum(widths)}" w:type="dxa"/><w:tblBorders>{edges}</w:tblBorders>'
        yield '<w:tblLayout w:type="fixed"/>'
        yield '<w:tblCellMar><w:left w:w="50" w:type="dxa"/><w:right w:w="50" w:type="dxa"/>'
        yield f'</w:tblCellMar><w:tblLook w:firstRow="1"/><w:tblDescription w:val="{summary}"/></w:tblPr><w:tblGrid>'
        yield "".join(f'<w:gridCol w:w="{width}"/>' for width in widths)
        yield "</w:tblGrid>"
        numbers = [column in table.numbers for column in range(len(table.columns))]
        heads = [self.ids["Table number head" if is_number else "Table head"] for is_number in numbers]
        yield self._row(table.columns, widths, heads, "<w:cantSplit/><w:tblHeader/>", _KEEP)
        styles = [self.ids["Table number" if is_number else "Table text"] for is_number in numbers]
        last = len(table.rows) - 1
        for number, row in enumerate(table.rows):
            is_kept = number in _FIRST_ROWS or (number == last and bool(table.note))
            yield self._row(row, widths, styles, "<w:cantSplit/>", _KEEP if is_kept else "")
        yield "</w:tbl>"

    def _row(
        self, cells: Sequence[str], widths: Sequence[int], styles: Sequence[str], props: str, keep: str = ""
    ) -> str:
        return f"<w:tr><w:trPr>{props}</w:trPr>" + "".join(
            f'<w:tc><w:tcPr><w:tcW w:w="{width}" w:type="dxa"/></w:tcPr><w:p><w:pPr><w:pStyle w:val="{style}"/>{keep}'
            f"</w:pPr>{self._runs(cell)}</w:p></w:tc>"
            for cell, width, style in zip(cells, widths, styles, strict=True)
        ) + "</w:tr>"  # fmt: skip

    def _figure(self, figure: Figure) -> None:
        from docx.shared import Emu, Mm

        if not figure.alt.strip():
            raise Unfit(f"the figure '{figure.caption}' has no alternative text")
        paragraph = self.document.add_paragraph(style="Figure")
        section = self.section
        room = section.page_width - section.left_margin - section.right_margin
        shape = paragraph.add_run().add_picture(
            io.BytesIO(self.pictures[figure.anchor]), width=min(room, Mm(figure.width_mm))
        )
        most = int((section.page_height - section.top_margin - section.bottom_margin) * _MOST_OF_A_PAGE)
        if shape.height > most:
            shape.width, shape.height = Emu(int(shape.width * most / shape.height)), Emu(most)
        shape._inline.docPr.set("descr", figure.alt)
        anchor = next(self.names)
        self._caption("Figure", anchor, figure.caption, is_above=False)
        if figure.note:
            self._add("Table note", self._runs(figure.note))

    def _contents(self, block: Contents) -> None:
        """
        A field that Word fills; its text until then are the headings themselves, each a link, and why they have no
        numbers of pages: where a page ends is known to the program alone that opens the document.
        """
        begin = char("begin") + instruction('TOC \\o "1-2" \\h \\z \\u') + char("separate")
        for number, heading in enumerate(self.contents, start=1):
            link = f'<w:hyperlink w:anchor="_Toc{number:06}" w:history="1">{self._runs(heading.text)}</w:hyperlink>'
            self._add(f"toc {heading.level - 1}", f"{begin if number == 1 else ''}{link}")
        if self.contents:
            self._add("Table note", self._run(_NO_PAGES_YET) + char("end"))


def _saved(document: Document, tables: Sequence[str]) -> bytes:
    """The file with its tables, and with fixed dates inside, so that the same section gives the same bytes."""
    raw, out = io.BytesIO(), io.BytesIO()
    with _later_than_1980():
        document.save(raw)
    with zipfile.ZipFile(raw) as found, zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as kept:
        for name in sorted(found.namelist(), key=lambda name: (name != "[Content_Types].xml", name)):
            info = zipfile.ZipInfo(name, (2000, 1, 1, 0, 0, 0))
            part = found.read(name)
            kept.writestr(info, _filled(part, tables) if name == "word/document.xml" else part, zipfile.ZIP_DEFLATED)
    return out.getvalue()


@contextmanager
def _later_than_1980() -> Iterator[None]:
    """From Python 3.14 on archives take their time from SOURCE_DATE_EPOCH, and cannot hold one before 1980."""
    epoch = os.environ.pop("SOURCE_DATE_EPOCH", None)
    try:
        yield
    finally:
        if epoch is not None:
            os.environ["SOURCE_DATE_EPOCH"] = epoch


def _filled(part: bytes, tables: Sequence[str]) -> bytes:
    """The text of the document with each table in its place."""
    first, *others = part.split(b"<w:tbl/>")
    return first + b"".join(t.encode("utf-8") + after for t, after in zip(tables, others, strict=True))
