"""Runs and fields of a Word document as XML."""

from __future__ import annotations

from xml.sax.saxutils import escape

SPACE = 'xmlns:w="http://schemas.openxmlformats.org/wordprocessingml/2006/main"'
WORD_JOINER = "\u2060"
"""No line is broken on either side of it (Unicode Standard Annex 14, rule LB11)."""


def field(asks: str, shown: str, *, bare: bool = False) -> tuple[str, ...]:
    space = "" if bare else f" {SPACE}"
    return (
        char("begin", space),
        instruction(asks, space),
        char("separate", space),
        f'<w:r{space}><w:t xml:space="preserve">{xml(shown)}</w:t></w:r>',
        char("end", space),
    )


def char(kind: str, space: str = "") -> str:
    return f'<w:r{space}><w:fldChar w:fldCharType="{kind}"/></w:r>'


def instruction(text: str, space: str = "") -> str:
    return f'<w:r{space}><w:instrText xml:space="preserve"> {xml(text)} </w:instrText></w:r>'


def said(text: str) -> str:
    return f'<w:t xml:space="preserve">{xml(text)}</w:t>'


def whole(text: str) -> str:
    """
    A range that keeps to one line: Word's own hyphen that does not break, and word joiners around a dash.

    >>> whole("0.5-1"), whole("12–19").count(WORD_JOINER)
    ('<w:t xml:space="preserve">0.5</w:t><w:noBreakHyphen/><w:t xml:space="preserve">1</w:t>', 2)
    """
    return "<w:noBreakHyphen/>".join(
        said(part.replace("–", f"{WORD_JOINER}–{WORD_JOINER}")) for part in text.split("-")
    )


def xml(text: str) -> str:
    """Text as XML, without characters that no XML may hold."""
    return escape("".join(c for c in text if c in "\t\n" or (c >= " " and not "\ud800" <= c <= "\udfff")))
