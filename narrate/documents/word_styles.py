"""The empty Word document of a section: a template's styles and page or our own, and the styles that we add."""

from __future__ import annotations

import zipfile
from pathlib import Path
from typing import TYPE_CHECKING, Any

from narrate.documents.blocks import Unfit

if TYPE_CHECKING:
    from docx.document import Document

NEEDED = ("Title", "Heading 1", "Heading 2", "Heading 3", "Heading 4", "Caption", "Normal")
"""Styles that a template must have; those of our own are added to it."""


def opened(template: Path | None) -> Document:
    import docx
    from docx.opc.exceptions import PackageNotFoundError
    from docx.oxml.ns import qn

    try:
        document = docx.Document(None if template is None else str(template))
    except (KeyError, ValueError, OSError, zipfile.BadZipFile, PackageNotFoundError) as fault:
        raise Unfit(f"the template {template} cannot be opened as a Word document (.docx)") from fault
    names = {style.name for style in document.styles}
    lacking = [name for name in NEEDED if name not in names]
    if lacking:
        raise Unfit(f"the template {template} lacks the styles {', '.join(lacking)}; add them to it")
    for element in list(document.element.body):
        if element.tag != qn("w:sectPr"):
            document.element.body.remove(element)
    if template is None:
        _plain_fonts(document)
    _own_styles(document)
    return document


def _plain_fonts(document: Document) -> None:
    from docx.oxml.ns import qn
    from docx.shared import Mm, Pt, RGBColor

    for name, size in (("Normal", 10.5), ("Title", 18), ("Heading 1", 14), ("Heading 2", 12.5), ("Heading 3", 11.5),
                       ("Heading 4", 10.5), ("Heading 5", 10.5), ("Caption", 9.5)):  # fmt: skip
        style: Any = document.styles[name]
        fonts = style.element.get_or_add_rPr().get_or_add_rFonts()
        for key in list(fonts.attrib):
            del fonts.attrib[key]
        for key in ("ascii", "hAnsi", "cs", "eastAsia"):
            fonts.set(qn(f"w:{key}"), "Arial")
        style.font.size = Pt(size)
        style.font.color.rgb = RGBColor(0x1A, 0x1A, 0x1A)
    section = document.sections[0]
    section.page_width, section.page_height = Mm(210), Mm(297)
    section.left_margin = section.right_margin = section.top_margin = section.bottom_margin = Mm(22)


def _own_styles(document: Document) -> None:
    from docx.enum.style import WD_STYLE_TYPE
    from docx.enum.text import WD_ALIGN_PARAGRAPH
    from docx.shared import Mm, Pt

    styles: Any = document.styles
    have = {style.name for style in styles}

    def added(name: str, kind: Any) -> Any:
        if name in have:
            return None
        style = styles.add_style(name, kind)
        if kind is WD_STYLE_TYPE.PARAGRAPH:
            style.base_style = styles["Normal"]
        return style

    if latin := added("Latin name", WD_STYLE_TYPE.CHARACTER):
        latin.font.italic = True
    if title := added("Title of a work", WD_STYLE_TYPE.CHARACTER):
        title.font.italic = True
    if strong := added("Strong word", WD_STYLE_TYPE.CHARACTER):
        strong.font.bold = True
    if cell := added("Table text", WD_STYLE_TYPE.PARAGRAPH):
        cell.font.size = Pt(8)
        cell.paragraph_format.space_after = cell.paragraph_format.space_before = Pt(0)
    if head := added("Table head", WD_STYLE_TYPE.PARAGRAPH):
        head.base_style = styles["Table text"]
        head.font.bold = True
    for name in ("Table text", "Table head"):
        if number := added(name.replace("text", "number").replace("head", "number head"), WD_STYLE_TYPE.PARAGRAPH):
            number.base_style = styles[name]
            number.paragraph_format.alignment = WD_ALIGN_PARAGRAPH.RIGHT
    if figure := added("Figure", WD_STYLE_TYPE.PARAGRAPH):
        figure.paragraph_format.keep_with_next = True
        figure.paragraph_format.space_before, figure.paragraph_format.space_after = Pt(6), Pt(3)
    if pointer := added("Pointer", WD_STYLE_TYPE.PARAGRAPH):
        pointer.font.size = Pt(8.5)
        pointer.paragraph_format.space_after = Pt(3)
        pointer.paragraph_format.keep_with_next = True
    if note := added("Table note", WD_STYLE_TYPE.PARAGRAPH):
        note.font.size = Pt(8.5)
        note.paragraph_format.space_before = Pt(3)
        note.paragraph_format.keep_together = True
    added("Byline", WD_STYLE_TYPE.PARAGRAPH)
    for name, colour in (("Notice", "8A4B00"), ("To be written", "5A5A5A")):
        if marked := added(name, WD_STYLE_TYPE.PARAGRAPH):
            marked.paragraph_format.left_indent = Mm(4)
            marked.font.italic = name == "To be written"
            _ruled_at_the_left(marked, colour)
    if reference := added("Reference", WD_STYLE_TYPE.PARAGRAPH):
        reference.paragraph_format.left_indent = Mm(8)
        reference.paragraph_format.first_line_indent = Mm(-8)
        reference.font.size = Pt(9.5)
        reference.paragraph_format.space_after = Pt(4)
    added("List Bullet", WD_STYLE_TYPE.PARAGRAPH)
    added("Heading 5", WD_STYLE_TYPE.PARAGRAPH)
    _contents_styles(document)


def _ruled_at_the_left(style: Any, colour: str) -> None:
    """A bar beside the paragraph, as the other media have it."""
    from docx.oxml import parse_xml
    from docx.oxml.ns import nsdecls

    border = f'<w:pBdr {nsdecls("w")}><w:left w:val="single" w:sz="18" w:space="6" w:color="{colour}"/></w:pBdr>'
    style.element.get_or_add_pPr().insert_element_before(
        parse_xml(border), "w:shd", "w:tabs", "w:spacing", "w:ind", "w:jc", "w:outlineLvl"
    )


def _contents_styles(document: Document) -> None:
    """Lines of the contents: the page number stands at the right margin behind dots; its heading is not in it."""
    from docx.enum.style import WD_STYLE_TYPE
    from docx.enum.text import WD_TAB_ALIGNMENT, WD_TAB_LEADER
    from docx.oxml import OxmlElement
    from docx.oxml.ns import qn
    from docx.shared import Mm, Pt

    styles: Any = document.styles
    section: Any = document.sections[0]
    for level in (1, 2):
        if f"toc {level}" not in {style.name for style in styles}:
            line = styles.add_style(f"toc {level}", WD_STYLE_TYPE.PARAGRAPH, builtin=True)
            line.base_style = styles["Normal"]
            line.paragraph_format.left_indent = Mm(6 * (level - 1))
            line.paragraph_format.space_before, line.paragraph_format.space_after = Pt(0), Pt(2)
            room = section.page_width - section.left_margin - section.right_margin
            line.paragraph_format.tab_stops.add_tab_stop(room, WD_TAB_ALIGNMENT.RIGHT, WD_TAB_LEADER.DOTS)
    if "TOC Heading" not in {style.name for style in styles}:
        head = styles.add_style("TOC Heading", WD_STYLE_TYPE.PARAGRAPH, builtin=True)
        head.base_style = styles["Heading 1"]
        level = OxmlElement("w:outlineLvl")
        level.set(qn("w:val"), "9")
        head.element.get_or_add_pPr().append(level)
