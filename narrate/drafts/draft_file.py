"""
The text of one draft file, and a narrative read back from it.

    <!-- narrate draft 5c1f0e…: edit freely; a changed file is kept. Delete it to have a new draft. -->

    ## Fuel

    Cob parts outnumber kernels. <!-- C12/fuel.maize-cob C12/measure.kernels_per_cupule -->
    Wood was burned too. <!-- C12/fuel.wood -->

One line is one sentence (or several, if the analyst joins them), a blank line ends a paragraph, and the mark at the end
of a line ties it to what it rests on. The number in the first line tells whether anything below it was changed.
"""

from __future__ import annotations

import hashlib
import re
from dataclasses import replace

from narrate.model.narrative import Narrative, Section, Sentence

_FIRST_LINE = re.compile(r"\A<!-- narrate draft ([0-9a-f]{16}):[^\n]*-->\n?")
_MARK = re.compile(r"<!--(.*?)-->")


def draft_text(narrative: Narrative) -> str:
    """The file of a draft."""
    blocks: list[str] = []
    for section in narrative.sections:
        if section.heading:
            blocks.append(f"## {section.heading}")
        for paragraph in section.paragraphs:
            blocks.append("\n".join(f"{s.text} <!-- {' '.join(s.refs)} -->" for s in paragraph))
    body = "\n" + "\n\n".join(blocks) + "\n"
    note = "edit freely; a changed file is kept. Delete it to have a new draft."
    return f"<!-- narrate draft {_fingerprint(body)}: {note} -->\n{body}"


def is_untouched(text: str) -> bool:
    """True if nothing below the first line changed since narrate wrote it. Newline habits of editors do not count."""
    text = text.replace("\r\n", "\n")
    first = _FIRST_LINE.match(text)
    return first is not None and first[1] == _fingerprint(text[first.end() :])


def edited(text: str, drafted: Narrative, own_words: str) -> Narrative:
    """
    The narrative with the analyst's text in place of the draft's.

    own_words:  reference given to lines without a mark: they are hers alone.
    """
    text = _FIRST_LINE.sub("", text.replace("\r\n", "\n"))
    sections: list[Section] = []
    heading, paragraphs = "", []
    for block in re.split(r"\n\s*\n", text.strip("\n")):
        if block.lstrip().startswith("#"):
            first, _, rest = block.strip().partition("\n")
            if heading or paragraphs:
                sections.append(_section(heading, paragraphs, len(sections)))
            heading, paragraphs = first.lstrip("# ").strip(), []
            block = rest
        sentences = tuple(s for s in (_sentence(line, own_words) for line in block.split("\n")) if s is not None)
        if sentences:
            paragraphs.append(sentences)
    if heading or paragraphs:
        sections.append(_section(heading, paragraphs, len(sections)))
    return replace(drafted, sections=tuple(sections), is_edited=True)


def _section(heading: str, paragraphs: list[tuple[Sentence, ...]], number: int) -> Section:
    return Section(id=f"part-{number + 1}", heading=heading, paragraphs=tuple(paragraphs))


def _sentence(line: str, own_words: str) -> Sentence | None:
    refs = tuple(dict.fromkeys(ref for mark in _MARK.findall(line) for ref in mark.split()))
    words = " ".join(_MARK.sub(" ", line).split())
    if not words:
        return None
    return Sentence(text=words, refs=refs or (own_words,))


def _fingerprint(body: str) -> str:
    return hashlib.blake2b(body.strip().encode("utf-8"), digest_size=8).hexdigest()
