"""Words that a page sets around a narrative, in the language that it is told in."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from narrate.model.packs import Packs

ENGLISH = {
    "page draft": "Draft. Nobody has approved these words yet.",
    "page rests one": "What this sentence rests on",
    "page rests": "What these {count} sentences rest on",
    "page mark": "What sentence {count} rests on",
}
"""What is said of a narrative and of what stands behind it; a language pack has the same among its `sentences`."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PageWords:
    """Of one narrative: its heading, that nobody has approved it, and what its sentences rest on."""

    heading: str
    """The audience's own title."""
    said: Mapping[str, str]
    foreign: str
    """The language of these words, where it is not that of the narrative; else empty."""

    @property
    def draft(self) -> str:
        return self.said["page draft"]

    def rests(self, sentences: int) -> str:
        return self.said["page rests one" if sentences == 1 else "page rests"].replace("{count}", str(sentences))

    def mark(self, number: int) -> str:
        return self.said["page mark"].replace("{count}", str(number))


def page_words(packs: Packs, audience: str) -> PageWords:
    """The words of the audience's language; in English where its pack lacks some."""
    reader = packs.audiences.get(audience)  # type: ignore[call-overload]
    title, language = (audience, "en") if reader is None else (reader.title, reader.language)
    known = packs.languages.get(language)
    own = known.sentences if known is not None and language != "en" else {}
    if language == "en" or any(name not in own for name in ENGLISH):
        return PageWords(heading=title, said=ENGLISH, foreign="" if language == "en" else "en")
    return PageWords(heading=title, said={name: own[name][0] for name in ENGLISH}, foreign="")
