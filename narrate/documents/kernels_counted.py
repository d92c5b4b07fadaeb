"""What a number of kernels is in the text, and how the ratio to cupules moves when whole kernels alone are counted."""

from __future__ import annotations

from collections.abc import Iterator

from narrate.documents.blocks import Block, Paragraph
from narrate.documents.inline import literal
from narrate.documents.leads import is_shown
from narrate.model.edition import Edition
from narrate.model.ids import Subject
from narrate.telling import english

ENOUGH = 10
"""Kernels of a context below which a ratio is not told (judgement of the makers)."""


def kernels_told(edition: Edition) -> Iterator[Block]:
    """One paragraph; nothing where no context holds kernels in pieces beside cupules."""
    shown, turned, below = [], [], []
    ears = [1 / line.low for line in edition.packs.words.ears if "kernel" in line.grain and line.low == line.high]
    for context in edition.project.contexts:
        found = edition.findings.subjects.get(Subject(level="context", id=context.id))
        values = found.measurements if found is not None else {}
        number, every, whole = (
            m.value if (m := values.get(name)) is not None else None
            for name in ("kernels", "kernels_per_cupule", "whole_kernels_per_cupule")
        )
        if number is None or every is None or whole is None or number < ENOUGH or every == whole:
            continue
        shown.append(f"{literal(context.id)} {_ratio(every)} and {_ratio(whole)}")
        if every >= 1 > whole:
            turned.append(literal(context.id))
        if ears and every >= ears[0] > whole:
            below.append(literal(context.id))
    if not shown:
        return
    text = (
        "A number of kernels, as of other seeds, takes whole ones and counted pieces together, in the text and in "
        "every ratio that is not said to be of whole ones. Kernels per cupule, so counted and by whole ones of both "
        f"alone: {'; '.join(shown)}."
    )
    if turned:
        where = english.listed(turned)
        text += f" Of these, by whole ones alone cupules outnumber kernels in {where}, which they do not by all."
    if below:
        where = english.listed(below)
        text += f" In {where} whole ones alone fall below the {ears[0]:g} kernels to a cupule of whole ears."
    yield Paragraph(text=text + (" {measures} gives both." if is_shown(edition, "measures") else ""))


def _ratio(value: float) -> str:
    return f"{value:.1f}" if value >= 10 else f"{value:.2f}"
