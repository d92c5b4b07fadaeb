"""The section as one page of HTML that needs no other file and no network."""

from __future__ import annotations

import base64
import re
from collections.abc import Mapping, Sequence
from html import escape

from narrate.documents.blocks import Block, Contents, Figure, Foot, Heading, Table, foot_of, listed
from narrate.documents.inline import labels, plain, runs
from narrate.documents.pdf import JPEG

_STYLE = """
body{font:1rem/1.5 Georgia,serif;color:#1a1a1a;background:#fff;max-width:52rem;margin:2rem auto;padding:0 1rem}
table{border-collapse:collapse;font:.85rem/1.35 Arial,sans-serif}
th,td{border-bottom:1px solid #8a8a8a;padding:.2rem .5rem;text-align:left;vertical-align:top}
th.n,td.n{text-align:right;font-variant-numeric:tabular-nums}.whole{white-space:nowrap}
tbody th{font-weight:normal}caption{text-align:left;font-weight:bold;padding:.4rem 0}
.pointer{font-size:.85rem;margin-top:0}
.scroll{overflow-x:auto;margin:1.2rem 0 .4rem}.note{font-size:.85rem}
.notice{border-left:.3rem solid #8a4b00;padding:.3rem .8rem;background:#fff6e8}
.missing{border-left:.3rem solid #5a5a5a;padding:.3rem .8rem;font-style:italic}
.reference{padding-left:2rem;text-indent:-2rem;margin:.3rem 0}img{max-width:100%}figure{margin:1.2rem 0}
footer{border-top:1px solid #8a8a8a;margin-top:2rem;padding-top:.3rem;font-size:.85rem}
@media print{@page wide{size:landscape}.wide{page:wide}thead{display:table-header-group}tr{break-inside:avoid}}
"""


def html(blocks: Sequence[Block], pictures: Mapping[str, bytes]) -> str:
    """pictures: anchor of a figure -> PNG."""
    known = labels(blocks)
    names = iter(known.items())
    title = next((plain(b.text) for b in blocks if isinstance(b, Heading)), "Plant remains")
    body: list[str] = []
    for number, block in enumerate(blocks):
        if isinstance(block, Heading):
            anchor = block.anchor or f"h-{number}"
            body.append(f'<h{block.level} id="{anchor}">{_inline(block.text, known)}</h{block.level}>')
        elif isinstance(block, Table):
            anchor, name = next(names)
            body.append(_table(block, anchor, name, known))
        elif isinstance(block, Figure):
            anchor, name = next(names)
            kind = "jpeg" if pictures[block.anchor].startswith(JPEG) else "png"
            data = base64.b64encode(pictures[block.anchor]).decode()
            caption = _inline(f"{block.caption} {block.note}".strip(), known)
            body.append(
                f'<figure id="{anchor}"><img alt="{escape(block.alt)}" src="data:image/{kind};base64,{data}">'
                f"<figcaption>{escape(name)}. {caption}</figcaption></figure>"
            )
        elif isinstance(block, Contents):
            places = {id(b): b.anchor or f"h-{n}" for n, b in enumerate(blocks) if isinstance(b, Heading)}
            links = (
                f'<li style="margin-left:{b.level - 2}rem"><a href="#{places[id(b)]}">{_inline(b.text, known)}</a></li>'
                for b in listed(blocks)
            )
            body.append(f'<nav aria-label="Contents"><ul>{"".join(links)}</ul></nav>')
        elif isinstance(block, Foot):
            continue
        elif block.kind == "item":
            body.append(f"<ul><li>{_inline(block.text, known)}</li></ul>")
        else:
            body.append(f'<p class="{block.kind}">{_inline(block.text, known)}</p>')
    style = _STYLE + _on_paper(foot_of(blocks))
    text = "\n".join(body).replace("</ul>\n<ul>", "\n")
    return (
        f'<!doctype html>\n<html lang="en"><head><meta charset="utf-8"><title>{escape(title)}</title>'
        f'<meta name="viewport" content="width=device-width,initial-scale=1"><style>{style}</style></head>\n'
        f"<body><main>\n{text}\n</main>\n<footer>{escape(foot_of(blocks))}</footer></body></html>\n"
    )


def _on_paper(foot: str) -> str:
    """The foot of every page that a browser prints, with its number; on the screen it stands at the end."""
    text = re.sub(r"""["'\\\n<&]""", lambda sign: f"\\{ord(sign[0]):x} ", foot)
    box = f'@bottom-left{{content:"{text} Page " counter(page);font-size:9pt}}'
    return f"@media print{{@page{{margin:18mm 16mm 22mm;{box}}}}}"


def _table(table: Table, anchor: str, name: str, known: Mapping[str, str]) -> str:
    marks = [' class="n"' if number in table.numbers else "" for number in range(len(table.columns))]
    head = "".join(
        f'<th scope="col"{mark}>{_inline(c, known)}</th>' for c, mark in zip(table.columns, marks, strict=True)
    )
    rows = "\n".join(
        f'<tr><th scope="row"{marks[0]}>{_inline(row[0], known)}</th>'
        + "".join(f"<td{mark}>{_inline(c, known)}</td>" for c, mark in zip(row[1:], marks[1:], strict=True))
        + "</tr>"
        for row in table.rows
    )
    note = f'<p class="note">{_inline(table.note, known)}</p>' if table.note else ""
    return (
        f'<div class="scroll{" wide" if table.is_wide else ""}" tabindex="0" role="region" aria-label="{escape(name)}">'
        f'<table id="{anchor}"><caption>{escape(name)}. {_inline(table.caption, known)}</caption>'
        f"<thead><tr>{head}</tr></thead><tbody>{rows}</tbody></table></div>{note}"
    )


_MARKS = {"": "{}", "latin": '<i lang="la">{}</i>', "strong": "<strong>{}</strong>", "title": "<cite>{}</cite>"}


def _inline(text: str, known: Mapping[str, str]) -> str:
    pieces = []
    for run in runs(text, known):
        shown = _MARKS[run.style].format(escape(run.text))
        shown = f'<span class="whole">{shown}</span>' if run.is_whole else shown
        pieces.append(f'<a href="#{run.anchor}">{shown}</a>' if run.anchor else shown)
    return "".join(pieces)
