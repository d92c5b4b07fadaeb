"""The section as a tagged PDF (PDF/UA-1), and pictures of its figures; typst sets both and is loaded when needed."""

from __future__ import annotations

import re
import tempfile
from collections.abc import Mapping, Sequence
from pathlib import Path

from narrate.documents.blocks import Block, Contents, Figure, Foot, Heading, Table, Unfit, foot_of, on_wide_pages
from narrate.documents.inline import labels, plain, runs, tied

DPI = 300
JPEG = b"\xff\xd8"


def pictures(blocks: Sequence[Block]) -> dict[str, bytes]:
    """Anchor of each figure -> its picture: drawings as PNG at 300 dpi, photographs as they are."""
    return {block.anchor: block.photograph or _png(block) for block in blocks if isinstance(block, Figure)}


def file_name(anchor: str, picture: bytes) -> str:
    """Name of a picture by its kind."""
    return f"{anchor}.{'jpg' if picture.startswith(JPEG) else 'png'}"


def _png(figure: Figure) -> bytes:
    import typst

    with tempfile.TemporaryDirectory() as folder:
        Path(folder, "drawing.svg").write_text(figure.svg, encoding="utf-8")
        source = Path(folder, "page.typ")
        source.write_text(
            f"#set page(width: {figure.width_mm}mm, height: auto, margin: 0mm, fill: white)\n"
            '#image("drawing.svg", width: 100%)\n',
            encoding="utf-8",
        )
        found = typst.compile(str(source), format="png", ppi=DPI)
    return found if isinstance(found, bytes) else found[0]


def pdf(blocks: Sequence[Block], pictures: Mapping[str, bytes]) -> bytes:
    """
    The pages, tagged.

    Raises Unfit with the engine's own words where it refuses: an alternative text or the title is missing.
    """
    import typst

    with tempfile.TemporaryDirectory() as folder:
        for anchor, picture in pictures.items():
            Path(folder, anchor).write_bytes(picture)
        source = Path(folder, "section.typ")
        source.write_text(typst_source(blocks), encoding="utf-8")
        try:
            return bytes(typst.compile(str(source), format="pdf", pdf_standards="ua-1"))
        except typst.TypstError as refused:
            raise Unfit(f"the PDF cannot be tagged for readers: {str(refused).splitlines()[0]}") from refused


_HEAD = """#set document(title: {title}, date: none)
#set page(paper: "a4", margin: 22mm, numbering: "1", footer:
  context text(size: 9pt)[{footer} Page #counter(page).display()])
#set text(lang: "en", size: 10pt)
#set par(justify: false, leading: 0.62em, spacing: 0.9em)
#show title: set text(size: 17pt)
#show heading: set block(above: 1.3em, below: 0.7em)
#show heading.where(level: 1): set text(size: 13.5pt)
#show figure: set block(breakable: false)
#show figure.where(kind: table): set block(breakable: true)
#show figure.where(kind: table): set figure.caption(position: top)
#set figure.caption(separator: [. ])
#show figure.caption: it => block(sticky: it.kind == table, width: 100%, align(left)[
  #strong[#it.supplement~#context it.counter.display(it.numbering)#it.separator]#it.body])
#show table.cell: set text(size: 8pt, number-width: "tabular")
#show table.cell: set par(leading: 0.5em)
#show link: underline
"""


def typst_source(blocks: Sequence[Block]) -> str:
    known = labels(blocks)
    names = iter(known)
    title = next((plain(b.text) for b in blocks if isinstance(b, Heading) and b.level == 1), "")
    parts = [_HEAD.format(title=_quoted(title), footer=_escaped(foot_of(blocks)))]
    is_wide, floats = False, True
    for block, wants_wide in zip(blocks, on_wide_pages(blocks), strict=True):
        # Neighbouring wide tables share their landscape pages.
        if wants_wide != is_wide:
            parts.append(f"#set page(flipped: {'true' if wants_wide else 'false'})")
            is_wide = wants_wide
        if isinstance(block, Heading):
            text = _inline(block.text, known)
            listing = "" if block.is_listed else ", outlined: false"
            heading = f"#heading(level: {block.level - 1}{listing})[{text}]"
            floats = not block.holds_figures
            parts.append("#title()" if block.level == 1 else heading)
        elif isinstance(block, Table):
            parts.append(_table(block, next(names), known))
        elif isinstance(block, Figure):
            alt = f", width: {block.width_mm}mm" + (f", alt: {_quoted(block.alt)}" if block.alt else "")
            caption = _inline(f"{block.caption} {block.note}".strip(), known)
            # It floats to the head or foot of a page, so that text fills the room before it.
            picture = f'image("{block.anchor}"{alt})'
            parts.append(f"#figure({picture}, caption: [{caption}]{', placement: auto' if floats else ''}) <{next(names)}>")
        elif isinstance(block, Contents):
            parts.append("#outline(title: none, depth: 2)")
        elif not isinstance(block, Foot):
            text = _KINDS[block.kind].format(_inline(block.text, known))
            if block.kind == "item" and parts[-1].startswith("#list["):
                parts[-1] += text.removeprefix("#list")
            else:
                parts.append(text)
    return "\n\n".join(parts) + "\n"


_KINDS = {
    "body": "#par[{}]",
    "byline": "#par[{}]",
    "notice": '#block(stroke: (left: 2.5pt + rgb("#8a4b00")), inset: (left: 8pt, y: 3pt))[{}]',
    "missing": "#block(stroke: (left: 2.5pt + luma(90)), inset: (left: 8pt, y: 3pt))[{}]",
    "reference": "#[#set text(size: 9pt); #par(hanging-indent: 1.5em, spacing: 0.7em)[{}]]",
    "item": "#list[{}]",
    "pointer": "#block(sticky: true)[#set text(size: 8.5pt); #par[{}]]",
}


_LONG_CELL = 1200
"""Letters of a cell that may be higher than a page, and whose row must therefore be allowed to break."""


def _table(table: Table, anchor: str, known: Mapping[str, str]) -> str:
    relative = widths_of(table)
    widths = ", ".join(f"{w:.4g}fr" for w in relative)
    aligns = ", ".join("right" if number in table.numbers else "left" for number in range(len(table.columns)))
    share = share_of(table, relative)
    box = f"align(left, block(width: {share:.0%})[#" if share < 1 else ""
    head = ", ".join(f"[#strong[{_inline(c, known)}]]" for c in table.columns)
    rows = ",\n  ".join(", ".join(f"[{_inline(c, known)}]" for c in row) for row in table.rows)
    note = f"\n\n#par(spacing: 0.6em)[#text(size: 8.5pt)[{_inline(table.note, known)}]]" if table.note else ""
    figure = (
        f"#figure(caption: [{_inline(table.caption, known)}], {box}table(columns: ({widths},), align: ({aligns},), "
        f"inset: (x: 4pt, y: {'1.5pt' if table.is_dense else '3pt'}),\n  stroke: (x: none, y: 0.4pt + luma(120)),\n"
        f"  table.header({head}),\n  {rows}{',' if rows else ''}\n){'])' if box else ''}) <{anchor}>"
    )
    rules = ""
    if all(len(cell) < _LONG_CELL for row in table.rows for cell in row):
        rules += "#set table.cell(breakable: false)\n"
    return _ROOM + (f"#[{rules}{figure}]" if rules else figure) + note


_ROOM = "#block(above: 1.1em, below: 0pt, breakable: false, height: 32mm)\n#v(-32mm)\n"
"""Room for a caption, the head and some rows; where a page has less, the table begins on the next one."""


def widths_of(table: Table) -> tuple[float, ...]:
    """
    Relative widths of the columns; by their longest words and texts where the table gives none.

    A column of numbers is as wide as the longest that it holds in one piece; many of them are alike.
    """
    if table.widths:
        return table.widths
    columns = [[column, *(row[number] for row in table.rows)] for number, column in enumerate(table.columns)]
    widths = [_text_width(cells) for cells in columns]
    longest = {n: max(len(piece) for cell in columns[n] for piece in tied(cell).split(" ")) for n in table.numbers}
    for number, own in longest.items():
        letters = max(longest.values()) if len(longest) > _FEW else own
        widths[number] = max(4.0, 1.1 * letters + 1)
    return tuple(widths)


def _text_width(cells: Sequence[str]) -> float:
    """Small letters are narrower than figures and capitals."""
    longest_word = max(len(word) for cell in cells for word in (cell.split() or [""]))
    return 0.6 + 0.9 * max(3, min(longest_word, 24) + 1, min(max(map(len, cells)), 26))


_FEW = 4
"""Columns of numbers that have each their own width."""


_LETTERS_ACROSS = {False: 100, True: 155}
"""Letters of 8 points that stand side by side on a portrait and on a landscape page, in the wider of the two types."""


def share_of(table: Table, widths: Sequence[float]) -> float:
    """
    How much of the breadth of the page the table takes: one with few narrow columns of numbers is not pulled apart.
    """
    if table.widths or not table.numbers:
        return 1.0
    letters = sum(width + 1.5 for width in widths)
    return min(1.0, round(letters / _LETTERS_ACROSS[table.is_wide], 2))


_SPECIAL = re.compile(r"([\\#*_`$<>@\[\]~=/+\-.:;('\"])")
"""A semicolon or bracket right behind a piece in italics would be taken for the end of the call, or for its values."""


def _inline(text: str, known: Mapping[str, str]) -> str:
    pieces = []
    for run in runs(text, known):
        shown = _escaped(run.text)
        if run.anchor:
            pieces.append(f"#link(<{run.anchor}>)[{shown}]")
        elif run.style:
            pieces.append(f"#{'strong' if run.style == 'strong' else 'emph'}[{shown}]")
        else:
            pieces.append(f"#box[{shown}]" if run.is_whole else shown)
    return "".join(pieces)


def _escaped(text: str) -> str:
    return _SPECIAL.sub(r"\\\1", text).replace("\n", " ")


def _quoted(text: str) -> str:
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"').replace("\n", " ") + '"'
